# SPDX-License-Identifier: GPL-3.0-or-later
"""The file for a memory stick, unpacked and used in an empty home, without a network, and without the machine's Java and Python."""

import os
import shutil
import subprocess
import sys
import tempfile
import unittest
import zipfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[4]
ZIPS = sorted((PROJECT / "kernel-ext" / "target").glob("parchment-*.zip"))
PATIENCE = 400
NOBODY = 65534

# What follows these words runs without a network.
ALONE = ["unshare", "--net"] if os.name == "posix" and os.getuid() == 0 else ["unshare", "--net", "--map-root-user"]


def can_be_alone():
    try:
        return subprocess.run(ALONE + ["true"], capture_output=True).returncode == 0
    except OSError:
        return False


def unpack_release(folder):
    with zipfile.ZipFile(ZIPS[-1]) as archive:
        for entry in archive.infolist():
            made = Path(archive.extract(entry, folder))
            if not entry.is_dir():
                made.chmod(entry.external_attr >> 16 & 0o777)
    return next(folder.iterdir())


@unittest.skipUnless(ZIPS, "there is no release zip: mvn verify makes it")
@unittest.skipUnless(sys.platform == "linux", "a stick is packed on Linux only")
@unittest.skipUnless(can_be_alone(), "this machine allows no network namespaces")
class Stick(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.base = Path(tempfile.mkdtemp(prefix="stick test "))
        cls.base.chmod(0o755)
        cls.release = unpack_release(cls.base / "release")
        cls.without_jupyter = None
        done = cls.pack("stick", environment={"PIP_RETRIES": "0", "PIP_DEFAULT_TIMEOUT": "10"})
        if done.returncode != 0 and "--without-jupyter" in done.stderr:
            cls.without_jupyter = done.stderr.splitlines()[0]
            done = cls.pack("stick", "--without-jupyter")
        if done.returncode != 0:
            raise AssertionError(done.stdout + done.stderr)

    @classmethod
    def tearDownClass(cls):
        shutil.rmtree(cls.base)

    @classmethod
    def pack(cls, name, *options, environment=None):
        stick = cls.base / name
        stick.mkdir(exist_ok=True)
        return subprocess.run(
            [str(cls.release / "parchment"), "stick", "--to", str(stick), *options],
            env={**os.environ, **(environment or {})}, capture_output=True, text=True, timeout=PATIENCE,
        )

    def home_with_stick(self, name):
        """Unpacks the only file of the stick as its user would, in a home that holds nothing else."""
        home = self.base / name
        home.mkdir()
        if os.getuid() == 0:
            os.chown(home, NOBODY, NOBODY)
        self.alone(home, "tar", "-xzf", str(next((self.base / "stick").iterdir())))
        return home, next(home.iterdir())

    def command(self, *command):
        """Returns the command as run without a network but for loopback, which is down at first, and without root's rights."""
        drop = ["setpriv", f"--reuid={NOBODY}", f"--regid={NOBODY}", "--clear-groups"] if os.getuid() == 0 else []
        return ALONE + ["sh", "-c", 'ip link set lo up; exec "$@"', "sh", *drop, *command]

    def environment(self, home):
        """A search path with what a bare system has, and neither a Java nor a Python."""
        programs = self.base / "bare"
        if not programs.exists():
            programs.mkdir()
            names = "sh tar gzip ls cat sed head grep find locale dirname readlink setpriv env ldd uname ip"
            for name in names.split():
                found = shutil.which(name, path=os.environ["PATH"] + ":/usr/sbin:/sbin")
                if found:
                    (programs / name).symlink_to(found)
        return {"PATH": str(programs), "HOME": str(home), "LANG": "C.UTF-8"}

    def alone(self, home, *command):
        unshare = shutil.which("unshare")
        done = subprocess.run(
            [unshare] + self.command(*command)[1:], env=self.environment(home), cwd=home, capture_output=True, text=True,
            timeout=PATIENCE,
        )
        self.assertEqual(done.returncode, 0, done.stdout + done.stderr)
        return done.stdout

    def test_runs_a_lesson_where_there_is_no_java_and_no_network(self):
        home, folder = self.home_with_stick("my höme")
        self.assertIsNone(shutil.which("java", path=self.environment(home)["PATH"]))
        lessons = folder / "notebooks" / "lessons"
        self.assertTrue((lessons / "0-start-here.ipynb").exists())
        self.assertFalse((lessons / "teacher").exists(), "the answers stay behind")
        lesson = home / "0-start-here-teacher.ipynb"
        shutil.copy(self.release / "notebooks" / "lessons" / "teacher" / lesson.name, lesson)
        lesson.chmod(0o644)
        self.alone(home, str(folder / "parchment"), "run", str(lesson), "--out", str(home / "out"))
        page = (home / "out" / "0-start-here-teacher.html").read_text()
        self.assertIn("<svg", page)
        self.assertIn("Right.", page)

    def test_says_what_to_do_where_its_java_may_not_run(self):
        folder = self.base / "no right to run"
        (folder / "java" / "bin").mkdir(parents=True)
        shutil.copy(self.release / "parchment", folder)
        (folder / "java" / "bin" / "java").write_text("")
        done = subprocess.run(["sh", str(folder / "parchment"), "run"], capture_output=True, text=True)
        self.assertEqual(done.returncode, 2)
        self.assertIn("may not run from where it lies", done.stderr)
        self.assertIn("tar -xzf", done.stderr)

    def test_opens_the_lessons_with_a_jupyter_of_its_own(self):
        if self.without_jupyter:
            self.skipTest("Jupyter cannot be packed here: " + self.without_jupyter)
        home, folder = self.home_with_stick("another höme")
        # One shell, for the server is only to be seen from the inside of its network.
        script = (
            '"$1"/parchment open --no-browser > said.txt 2>&1 & server=$!\n'
            'for each in $(/usr/bin/seq 400); do grep -q "token=" said.txt && break; /usr/bin/sleep 0.2; done\n'
            '"$1"/python/bin/python3 -I - <<END\n'
            "import json, re, urllib.request\n"
            "address = re.search(r'(http://127.0.0.1:[0-9]+)/\\S*token=([0-9a-f]+)', open('said.txt').read())\n"
            "read = lambda path: json.load(urllib.request.urlopen(address[1] + path + '?token=' + address[2]))\n"
            "print(sorted(read('/api/kernelspecs')['kernelspecs']))\n"
            "print([entry['name'] for entry in read('/api/contents/lessons')['content']])\n"
            "END\n"
            'kill "$server"; "$1"/python/bin/python3 -I -m notebook stop > stopped.txt 2>&1; wait\n'
        )
        said = self.alone(home, "sh", "-c", script, "sh", str(folder))
        self.assertIn("parchment", said)
        self.assertIn("0-start-here.ipynb", said)


if __name__ == "__main__":
    unittest.main()
