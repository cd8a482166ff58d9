# SPDX-License-Identifier: GPL-3.0-or-later
"""The launcher for Windows: what it looks at, everywhere; how it acts, where Wine's cmd runs it (wine64 and gcc-mingw-w64-x86-64)."""

import os
import re
import shutil
import subprocess
import tempfile
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[4]
SCRIPT = PROJECT / "parchment.cmd"
STAND_IN = PROJECT / "kernel-ext" / "src" / "test" / "resources" / "windows" / "java.c"
WINE = shutil.which("wine64") or next((p for p in ("/usr/lib/wine/wine64",) if os.access(p, os.X_OK)), None)
COMPILER = shutil.which("x86_64-w64-mingw32-gcc")
PATIENCE = 120

MAVEN = """@echo off
echo Maven in "%cd%" with "%JAVA_HOME%": %*
if defined FAIL exit /b 1
mkdir kernel-ext\\target 2>nul
type nul >kernel-ext\\target\\parchment-kernel.jar
"""


def crlf(text):
    return re.sub(r"\r?\n", "\r\n", text)


class Text(unittest.TestCase):
    def setUp(self):
        self.text = SCRIPT.read_bytes().decode("ascii")
        self.code = [line for line in self.text.splitlines() if not line.lower().startswith("rem ")]

    def test_has_the_line_ends_of_windows(self):
        self.assertEqual(self.text.count("\n"), self.text.count("\r\n"))

    def test_needs_no_program_but_those_of_every_windows(self):
        self.assertNotIn("findstr", "\n".join(self.code))
        self.assertNotIn("where ", "\n".join(line for line in self.code if "echo" not in line))

    def test_asks_with_no_quote_in_the_command(self):
        asked = [re.search(r"in \('(.*)'\) do", line).group(1) for line in self.code if "for /f" in line]
        self.assertTrue(asked)
        for command in asked:
            self.assertNotIn('"', command)

    def test_takes_the_same_sources_for_newer_as_the_script_for_other_systems(self):
        shell = (PROJECT / "parchment").read_text()
        looked_at = re.search(r'find ("\$home/.*?) *\\?\n.*?-newer', shell, re.S).group(0)
        shells = {path.replace("/", "\\") for path in re.findall(r'"\$home/([^"]+)"', looked_at)}
        ours = set(re.findall(r"'([^']+)'", re.search(r"foreach \(\$p in (.*?)\)", self.text).group(1)))
        self.assertEqual(shells, ours)
        self.assertEqual(len(ours), 8)


@unittest.skipUnless(WINE and COMPILER, "no Wine or no compiler for Windows here")
class UnderWine(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.base = Path(tempfile.mkdtemp(prefix="windows test "))
        cls.addClassCleanup(shutil.rmtree, cls.base, ignore_errors=True)
        cls.java = cls.base / "java.exe"
        subprocess.run([COMPILER, "-O1", "-o", str(cls.java), str(STAND_IN)], check=True, capture_output=True)
        cls.environment = {key: value for key, value in os.environ.items() if key not in ("JAVA_HOME", "FAIL", "DISPLAY")}
        cls.environment.update(WINEPREFIX=str(cls.base / "prefix"), WINEDEBUG="-all")

    def setUp(self):
        self.place = Path(tempfile.mkdtemp(prefix="case (1) & ", dir=self.base))

    def jdk(self, name, version="17.0.15", compiler=True):
        folder = self.place / name / "bin"
        folder.mkdir(parents=True)
        shutil.copy(self.java, folder)
        (folder / "version.txt").write_text(version)
        if not compiler:
            (folder / "nojshell").write_text("")
        return self.windows(self.place / name)

    @staticmethod
    def windows(path):
        return "Z:" + str(path).replace("/", "\\")

    def home(self, clone=False):
        home = self.place / "a clone"
        home.mkdir()
        shutil.copy(SCRIPT, home)
        if clone:
            for folder in ("src/library/main", "src/roastery/main", "kernel-ext/src/main"):
                (home / folder).mkdir(parents=True)
            for file in ("pom.xml", "src/pom.xml", "src/library/pom.xml", "src/roastery/pom.xml", "kernel-ext/pom.xml", "src/library/main/A.java"):
                (home / file).write_text("")
        else:
            (home / "parchment-kernel.jar").write_text("")
        return home

    def maven(self):
        folder = self.place / "maven"
        folder.mkdir()
        (folder / "mvn.cmd").write_bytes(crlf(MAVEN).encode())
        return self.windows(folder)

    def run_here(self, home, *arguments, code, java_home=None, path=(), **more):
        environment = {**self.environment, **more}
        if path:
            environment["WINEPATH"] = ";".join(path)
        if java_home:
            environment["JAVA_HOME"] = java_home
        done = subprocess.run([WINE, "cmd", "/c", "parchment.cmd", *arguments], cwd=home, env=environment, capture_output=True, text=True,
                              timeout=PATIENCE)
        said = done.stdout + done.stderr
        self.assertEqual(done.returncode, code, said)
        return said

    def test_starts_the_java_of_a_folder_with_blanks_brackets_and_an_ampersand_and_hands_every_word_on(self):
        home = self.home()
        said = self.run_here(home, "run", "my notebook.ipynb", "--to=x", code=7, java_home=self.jdk("Programs (x86) & more"))
        self.assertIn("Java 17.0.15 in " + self.windows(home), said)
        self.assertIn("[-Dparchment.home=%s]" % self.windows(home), said)
        self.assertIn("[-jar]\n[%s\\parchment-kernel.jar]\n[run]\n[my notebook.ipynb]\n[--to=x]\n" % self.windows(home), said)
        self.assertNotIn("native-access", said)

    def test_goes_on_to_the_path_where_java_home_is_too_old_or_has_no_compiler(self):
        home = self.home()
        path = (self.jdk("good", "21.0.1") + "\\bin",)
        for java_home in (self.jdk("old", "1.8.0"), self.jdk("ten", "10.0.2"), self.jdk("plain", compiler=False), "Z:\\nowhere"):
            self.assertIn("Java 21.0.1", self.run_here(home, code=7, java_home=java_home, path=path))

    def test_takes_java_home_before_the_path_also_written_with_quotes(self):
        home = self.home()
        path = (self.jdk("other", "21.0.1") + "\\bin",)
        said = self.run_here(home, code=7, java_home='"%s"' % self.jdk("named", "25.0.1"), path=path)
        self.assertIn("Java 25.0.1", said)
        self.assertIn("[--enable-native-access=ALL-UNNAMED]", said)

    def test_takes_the_java_that_came_with_a_release_first(self):
        home = self.home()
        (home / "java" / "bin").mkdir(parents=True)
        shutil.copy(self.java, home / "java" / "bin")
        self.assertIn("Java 17.0.15", self.run_here(home, code=7, java_home=self.jdk("named", "25.0.1")))

    def test_names_what_it_found_where_nothing_fits(self):
        said = self.run_here(self.home(), code=2, java_home=self.jdk("old", "1.8.0"), path=(self.jdk("plain", "21", False) + "\\bin",))
        self.assertIn("Parchment needs a Java development kit (JDK), version 17 or later", said)
        self.assertRegex(said, r"Found only: .*old\\bin\\java\.exe \(version 8 or earlier\) .*plain\\bin\\java\.exe \(version 21\)")

    def test_builds_with_the_java_it_found_and_not_again(self):
        home = self.home(clone=True)
        java_home, path = self.jdk("new", "25.0.1"), (self.maven(),)
        said = self.run_here(home, "one two", code=7, java_home=java_home, path=path)
        self.assertIn('Maven in "%s" with "C:\\Where it lives\\jdk (x86)": -q -B -DskipTests' % self.windows(home), said)
        self.assertIn("[%s\\kernel-ext\\target\\parchment-kernel.jar]\n[one two]\n" % self.windows(home), said)
        self.assertTrue((home / "kernel-ext" / "target" / "built").is_file())
        self.assertFalse((home / "target" / "unfinished").exists())
        self.assertNotIn("Maven in", self.run_here(home, code=7, java_home=java_home, path=path))

    def test_says_so_where_a_build_fails_or_maven_is_not_there(self):
        home = self.home(clone=True)
        java_home = self.jdk("new")
        self.assertIn("that needs Apache Maven", self.run_here(home, code=2, java_home=java_home))
        self.assertIn("The build failed", self.run_here(home, code=2, java_home=java_home, path=(self.maven(),), FAIL="yes"))
        self.assertFalse((home / "target" / "unfinished").exists())


if __name__ == "__main__":
    unittest.main()
