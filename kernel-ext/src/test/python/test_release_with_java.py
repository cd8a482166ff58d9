# SPDX-License-Identifier: GPL-3.0-or-later
"""The release with a Java of its own, made, unpacked into a folder with a blank and an accent, and used where there is neither Java nor Maven."""

import hashlib
import json
import os
import re
import shutil
import stat
import subprocess
import sys
import tempfile
import unittest
import zipfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[4]
ZIPS = sorted((PROJECT / "kernel-ext" / "target").glob("parchment-*.zip"))
PATIENCE = 400
NUMBER = re.compile(r"-?[0-9]+(?:\.[0-9]+)?")
WORDS = re.compile(r'>[^<]+<|aria-label="[^"]*"')


def jupyter():
    for place in [shutil.which("jupyter"), "/usr/bin/jupyter"]:
        if place and subprocess.run([place, "nbconvert", "--version"], capture_output=True).returncode == 0:
            return place
    return None


def listing(folder):
    return sorted(str(entry.relative_to(folder)) for entry in Path(folder).rglob("*"))


def unpack(file, folder):
    """As a roaster does; where the program is not there, with the rights that the file gives, as it does."""
    program = shutil.which("unzip")
    if program:
        subprocess.run([program, "-q", str(file), "-d", str(folder)], check=True, env={**os.environ, "LC_ALL": "C.UTF-8"})
        return
    with zipfile.ZipFile(file) as archive:
        for entry in archive.infolist():
            made = Path(archive.extract(entry, folder))
            if not entry.is_dir():
                made.chmod(entry.external_attr >> 16 & 0o777)


@unittest.skipUnless(ZIPS, "there is no release zip: mvn verify makes it")
@unittest.skipUnless(os.name == "posix", "uses the launcher for Linux and macOS")
class ReleaseWithJava(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.base = Path(tempfile.mkdtemp(prefix="with java "))
        made = cls.base / "made"
        # Not by the script, which might build anew beneath the other tests.
        java = os.path.join(os.environ["JAVA_HOME"], "bin", "java") if "JAVA_HOME" in os.environ else "java"
        jar = PROJECT / "kernel-ext" / "target" / "parchment-kernel.jar"
        done = subprocess.run(
            [java, f"-Dparchment.home={PROJECT}", "-jar", str(jar), "release", "--skip-build", "--to", str(made)],
            cwd=cls.base, capture_output=True, text=True, timeout=PATIENCE,
        )
        if done.returncode != 0:
            raise AssertionError(done.stdout + done.stderr)
        cls.file = next(made.glob("*.zip"))
        folder = cls.base / "Kaffeerösterei am Hafen"
        folder.mkdir()
        unpack(cls.file, folder)
        cls.folder = next(folder.iterdir())
        cls.program = str(cls.folder / "parchment")
        cls.home = cls.base / "home"
        cls.home.mkdir()
        programs = cls.base / "bare"
        programs.mkdir()
        for name in "sh cat sed head grep find locale dirname readlink env uname mkdir rm chmod".split():
            (programs / name).symlink_to(shutil.which(name))
        cls.environment = {
            "PATH": str(programs),
            "HOME": str(cls.home),
            "JUPYTER_CONFIG_DIR": str(cls.base / "config"),
            "JUPYTER_RUNTIME_DIR": str(cls.base / "runtime"),
            "IPYTHONDIR": str(cls.base / "ipython"),
            "PYTHONDONTWRITEBYTECODE": "1",
            "LANG": "C.UTF-8",
        }

    @classmethod
    def tearDownClass(cls):
        shutil.rmtree(cls.base)

    def run_here(self, *command, code=0):
        done = subprocess.run(
            command, env=self.environment, cwd=self.home, capture_output=True, text=True, timeout=PATIENCE,
            stdin=subprocess.DEVNULL,
        )
        self.assertEqual(done.returncode, code, done.stdout + done.stderr)
        return done.stdout + done.stderr

    def test_has_neither_java_nor_maven_to_lean_on(self):
        for name in ("java", "javac", "mvn"):
            self.assertIsNone(shutil.which(name, path=self.environment["PATH"]))
        self.assertNotIn("JAVA_HOME", self.environment)

    def test_is_named_by_version_and_system_with_its_sum_beside_it(self):
        plain = ZIPS[-1].name.removesuffix(".zip")
        self.assertRegex(self.file.name, "^" + re.escape(plain) + r"-(linux|macos)-[a-z0-9_]+\.zip$")
        total, name = Path(str(self.file) + ".sha256").read_text().split()
        self.assertEqual(name, self.file.name)
        self.assertEqual(total, hashlib.sha256(self.file.read_bytes()).hexdigest())

    def test_holds_the_release_unchanged_and_says_of_each_file_whether_it_runs(self):
        with zipfile.ZipFile(ZIPS[-1]) as plain, zipfile.ZipFile(self.file) as file:
            entries = {entry.filename: entry for entry in file.infolist()}
            for entry in plain.infolist():
                self.assertEqual(entries[entry.filename].CRC, entry.CRC, entry.filename)
                self.assertEqual(entries[entry.filename].external_attr, entry.external_attr, entry.filename)
            for entry in entries.values():
                kind = stat.S_IFMT(entry.external_attr >> 16)
                self.assertEqual(kind, stat.S_IFDIR if entry.is_dir() else stat.S_IFREG, entry.filename)
        for name in ("parchment", "java/bin/java", "java/lib/jspawnhelper"):
            self.assertTrue(os.access(self.folder / name, os.X_OK), name)
        self.assertFalse(os.access(self.folder / "java" / "lib" / "modules", os.X_OK))

    def test_brings_the_licences_of_its_java(self):
        legal = self.folder / "java" / "legal"
        modules = re.search('MODULES="([^"]*)"', (self.folder / "java" / "release").read_text())[1].split()
        for module in modules:
            self.assertTrue(any((legal / module).iterdir()), module)
        self.assertIn("GNU General Public License", (legal / "java.base" / "LICENSE").read_text())
        self.assertIn("java/legal/", (self.folder / "THIRD-PARTY.md").read_text())

    def test_runs_the_tour_which_says_what_the_published_one_says(self):
        docs = self.folder / "docs"
        published, pictures = (docs / "tour.md").read_text(), self.pictures(docs)
        self.assertEqual(published, (PROJECT / "docs" / "tour.md").read_text())
        out = self.home / "out"
        self.run_here(self.program, "run", "--out", str(out), "--markdown", str(docs))
        page = (out / "tour.html").read_text()
        self.assertIn("<svg", page)
        self.assertIn("do not roast", page)
        older = "docs/tour.md is older than the tour or the demo logbook. Run: ./parchment run --markdown docs"
        self.assertEqual(published.splitlines(), (docs / "tour.md").read_text().splitlines(), older)
        now = self.pictures(docs)
        self.assertEqual(pictures.keys(), now.keys(), older)
        for name, before in pictures.items():
            self.assertEqual(WORDS.findall(before), WORDS.findall(now[name]), f"{name}: {older}")
            self.assertEqual(NUMBER.sub("0", before), NUMBER.sub("0", now[name]), f"{name}: {older}")
            # Versions of Java round some functions differently.
            for one, other in zip(NUMBER.findall(before), NUMBER.findall(now[name])):
                self.assertAlmostEqual(float(one), float(other), delta=0.0501, msg=f"{name}: {older}")

    @staticmethod
    def pictures(docs):
        return {picture.name: picture.read_text() for picture in (docs / "pictures" / "tour").iterdir()}

    def test_gathers_logger_files_and_writes_the_week(self):
        files = self.home / "Logger files"
        files.mkdir()
        for number in range(1, 7):
            shutil.copy(self.folder / "datasets" / "harbour" / "curves" / f"H00{number}.csv", files)
        said = self.run_here(self.program, "gather", "Logger files", "--to", "My Roasts")
        self.assertIn("Wrote 6 batches (6 with a curve)", said)
        week = self.home / "week.html"
        self.run_here(
            self.program, "week", "--logbook", str(self.folder / "datasets" / "hillside"), "--out", str(week))
        self.assertIn("<title>", week.read_text())

    def test_gives_back_the_right_to_run_that_an_unpacker_lost(self):
        java = self.folder / "java"
        runnable = [file for file in [*(java / "bin").iterdir(), java / "lib" / "jspawnhelper"]]
        for file in runnable:
            file.chmod(0o644)
        self.assertIn("Parchment", self.run_here("sh", self.program, "--version"))
        for file in runnable:
            self.assertTrue(os.access(file, os.X_OK), file)

    def test_says_what_the_system_said_where_its_java_does_not_run(self):
        folder = self.base / "made for another system"
        (folder / "java" / "bin").mkdir(parents=True)
        shutil.copy(self.folder / "parchment", folder)
        java = folder / "java" / "bin" / "java"
        java.write_text("#!/bin/sh\necho 'libz.so.1: cannot open shared object file' >&2\nexit 127\n")
        java.chmod(0o755)
        said = self.run_here(str(folder / "parchment"), "--version", code=2)
        self.assertIn(f"The Java that came with Parchment, {java}, may not run from where it lies.", said)
        self.assertIn("The system says: libz.so.1: cannot open shared object file", said)
        self.assertIn("made for another kind of machine", said)

    @unittest.skipUnless(jupyter(), "needs Jupyter with nbconvert")
    def test_runs_under_jupyter_with_a_class_archive_and_leaves_nothing(self):
        before = listing(self.home)
        said = self.run_here(self.program, "install", "--user")
        self.assertIn(f"The kernel runs on the Java in {self.folder / 'java'}: leave that folder where it is", said)
        self.assertIn(f'To take it away again: "{self.program}" uninstall --user', said)
        spec = json.loads(next(self.home.rglob("kernel.json")).read_text())
        self.assertEqual(spec["argv"][0], str(self.folder / "java" / "bin" / "java"))
        self.assertTrue([word for word in spec["argv"] if re.match("-XX:(SharedArchiveFile|AOTCache)=", word)], spec["argv"])
        book = self.base / "asked.ipynb"
        cell = {"cell_type": "code", "metadata": {}, "outputs": [], "execution_count": None, "id": "c1", "source": "6 * 7"}
        names = {"kernelspec": {"name": "parchment", "language": "java", "display_name": "Parchment (Java)"}}
        book.write_text(json.dumps({"nbformat": 4, "nbformat_minor": 5, "metadata": names, "cells": [cell]}))
        self.run_here(jupyter(), "nbconvert", "--to", "notebook", "--execute", str(book), "--output", "answered.ipynb")
        outputs = json.loads((self.base / "answered.ipynb").read_text())["cells"][0]["outputs"]
        self.assertIn("42", "".join(outputs[0]["data"]["text/plain"]))
        self.run_here(self.program, "uninstall", "--user")
        self.assertEqual(listing(self.home), before)


if __name__ == "__main__":
    unittest.main()
