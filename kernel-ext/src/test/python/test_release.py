# SPDX-License-Identifier: GPL-3.0-or-later
"""The release zip, unpacked elsewhere and used without Maven and with an empty home."""

import json
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import unittest
import urllib.error
import urllib.request
import zipfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[4]
ZIPS = sorted((PROJECT / "kernel-ext" / "target").glob("parchment-*.zip"))
PATIENCE = 120


def jupyter():
    for place in [shutil.which("jupyter"), "/usr/bin/jupyter"]:
        if place and subprocess.run([place, "nbconvert", "--version"], capture_output=True).returncode == 0:
            return place
    return None


def listing(folder):
    return sorted(str(entry.relative_to(folder)) for entry in Path(folder).rglob("*"))


def left_in_temp():
    names = ("rehearsal", "parchment")
    return {entry for entry in os.listdir(tempfile.gettempdir()) if entry.startswith(names)}


@unittest.skipUnless(ZIPS, "there is no release zip: mvn verify makes it")
@unittest.skipUnless(os.name == "posix", "uses the launcher for Linux and macOS")
class Release(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.base = Path(tempfile.mkdtemp(prefix="release test "))
        folder = cls.base / "Röstung der Woche"
        with zipfile.ZipFile(ZIPS[-1]) as archive:
            for entry in archive.infolist():
                made = Path(archive.extract(entry, folder))
                if not entry.is_dir():
                    made.chmod(entry.external_attr >> 16 & 0o777)
        cls.home = next(folder.iterdir())
        cls.empty = cls.base / "home"
        cls.empty.mkdir()
        programs = cls.base / "bin"
        programs.mkdir()
        for place in os.environ["PATH"].split(os.pathsep) + ["/usr/bin"]:
            if os.path.isdir(place):
                for name in os.listdir(place):
                    target = programs / name
                    if not name.startswith("mvn") and not target.is_symlink():
                        target.symlink_to(os.path.join(place, name))
        cls.environment = {
            "PATH": str(programs),
            "HOME": str(cls.empty),
            # What Jupyter itself leaves is none of ours.
            "JUPYTER_CONFIG_DIR": str(cls.base / "config"),
            "JUPYTER_RUNTIME_DIR": str(cls.base / "runtime"),
            "IPYTHONDIR": str(cls.base / "ipython"),
            "PYTHONDONTWRITEBYTECODE": "1",
            "LANG": "C.UTF-8",
        }
        if "JAVA_HOME" in os.environ:
            cls.environment["JAVA_HOME"] = os.environ["JAVA_HOME"]

    @classmethod
    def tearDownClass(cls):
        shutil.rmtree(cls.base)

    def run_here(self, *command, code=0):
        done = subprocess.run(
            command, env=self.environment, cwd=self.base, capture_output=True, text=True, timeout=PATIENCE
        )
        self.assertEqual(done.returncode, code, done.stdout + done.stderr)
        return done.stdout + done.stderr

    def java(self):
        home = self.environment.get("JAVA_HOME")
        return os.path.join(home, "bin", "java") if home else "java"

    def notebook(self, name, *cells):
        path = self.base / name
        cells = [
            {"cell_type": "code", "metadata": {}, "outputs": [], "execution_count": None, "source": cell, "id": f"c{i}"}
            for i, cell in enumerate(cells)
        ]
        spec = {"kernelspec": {"name": "parchment", "language": "java", "display_name": "Parchment (Java)"}}
        path.write_text(json.dumps({"nbformat": 4, "nbformat_minor": 5, "metadata": spec, "cells": cells}))
        return path

    def test_holds_what_a_roaster_needs(self):
        for name in ["parchment", "parchment.cmd", "parchment-kernel.jar", "notebooks/tour.ipynb", "README.md", "LICENSE",
                     "THIRD-PARTY.md", "datasets/harbour/batches.csv", "docs/safety.md", "sources/pom.xml",
                     "DEVELOPERS.md", "classes/parchment/logbook/Logbook.html", "classes/legal/jquery.md"]:
            self.assertTrue((self.home / name).is_file(), name)
        self.assertTrue(os.access(self.home / "parchment", os.X_OK))

    def test_makes_the_whole_handbook(self):
        out = self.base / "hand book"
        said = self.run_here(str(self.home / "parchment"), "handbook", "--no-browser", "--to", str(out))
        self.assertIn(str(out / "index.html"), said)
        self.assertIn(str(self.home / "classes" / "index.html"), said)
        made = {str(page.relative_to(out).with_suffix("")) for page in out.rglob("*.html")}
        docs = self.home / "docs"
        written = {str(page.relative_to(docs).with_suffix("")) for page in docs.rglob("*.md")} - {"README"}
        self.assertEqual(made, written | {"index", "project/readme", "project/developers"})

    def test_names_the_licence_of_every_jar(self):
        notice = (self.home / "THIRD-PARTY.md").read_text()
        licences = dict(re.findall(r"^\| (\S+) \| [^|]+ \| (licences/\S+) \|$", notice, re.M))
        for jar in (self.home / "lib").iterdir():
            name = re.sub(r"-\d.*\.jar$", "", jar.name)
            if name not in ("parchment", "parchment-roastery"):
                self.assertIn(name, licences, f"{jar.name}: add a row to kernel-ext/src/main/assembly/THIRD-PARTY.md")
                self.assertTrue((self.home / licences[name]).is_file(), licences[name])

    def test_runs_a_notebook_without_maven_and_without_a_home(self):
        self.assertIsNone(shutil.which("mvn", path=self.environment["PATH"]))
        out = self.base / "out put"
        book = self.notebook("small ü.ipynb", "var logbook = Logbook.open();\nlogbook", "BatchChart.of(logbook.batches().get(0))")
        self.run_here(str(self.home / "parchment"), "run", str(book), "--out", str(out))
        self.assertIn("<svg", (out / "small ü.html").read_text())

    @unittest.skipUnless(jupyter(), "needs Jupyter with nbconvert")
    def test_installs_runs_under_jupyter_and_leaves_nothing(self):
        before, temp = listing(self.empty), left_in_temp()
        jar = str(self.home / "parchment-kernel.jar")
        said = self.run_here(self.java(), "-jar", jar, "install", "--user", "--logbook", str(self.home / "datasets/harbour"),
                             "--heap", "512m")
        self.assertIn("Next: start Jupyter", said)
        self.assertIn("To take it away again: java -jar", said)
        self.assertIn("parchment", self.run_here(jupyter(), "kernelspec", "list"))
        book = self.notebook("asked.ipynb", "Logbook.open().batches().size()", "Runtime.getRuntime().maxMemory() <= 512L << 20")
        self.run_here(jupyter(), "nbconvert", "--to", "notebook", "--execute", str(book), "--output", "answered.ipynb")
        cells = json.loads((self.base / "answered.ipynb").read_text())["cells"]
        shown = [
            "".join(output["data"]["text/plain"])
            for cell in cells
            for output in cell["outputs"]
            if output["output_type"] == "execute_result"
        ]
        self.assertGreater(int(shown[0]), 100)
        self.assertEqual(shown[1], "true")
        said = self.run_here(self.java(), "-jar", jar, "uninstall", "--user")
        self.assertIn("nothing of it is left", said)
        self.assertEqual(listing(self.empty), before)
        self.assertEqual(left_in_temp(), temp)

    def test_keeps_to_its_prefix_and_leaves_others_there_alone(self):
        prefix = self.base / "environment"
        other = prefix / "share" / "jupyter" / "kernels" / "other"
        other.mkdir(parents=True)
        before = listing(prefix)
        jar = str(self.home / "parchment-kernel.jar")
        self.run_here(self.java(), "-jar", jar, "install", "--prefix", str(prefix))
        spec = json.loads((other.parent / "parchment" / "kernel.json").read_text())
        self.assertEqual(spec["display_name"], "Parchment (Java)")
        self.assertIn("It was there already", self.run_here(self.java(), "-jar", jar, "install", "--prefix", str(prefix)))
        self.run_here(self.java(), "-jar", jar, "uninstall", "--prefix", str(prefix))
        self.assertEqual(listing(prefix), before)

    @unittest.skipUnless(jupyter(), "needs Jupyter")
    def test_open_serves_this_machine_only_and_asks_for_a_token(self):
        server = subprocess.Popen(
            [str(self.home / "parchment"), "open", "--no-browser"],
            env=self.environment, cwd=self.base, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
            start_new_session=True,
        )
        try:
            address = None
            for line in server.stdout:
                found = re.search(r"http://127\.0\.0\.1:(\d+)/\S*\?token=([0-9a-f]{30,})", line)
                if found:
                    address, port, token = found.group(0), int(found.group(1)), found.group(2)
                    break
            self.assertIsNotNone(address, "no address with a token was printed")
            self.assertEqual(self.answer(port, ""), 403)
            self.assertEqual(self.answer(port, "?token=" + token), 200)
            for other in {entry[4][0] for entry in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)}:
                if not other.startswith("127."):
                    with self.assertRaises(OSError):
                        socket.create_connection((other, port), timeout=2).close()
        finally:
            os.killpg(server.pid, 15)
            server.wait(20)
            server.stdout.close()
            self.run_here(self.java(), "-jar", str(self.home / "parchment-kernel.jar"), "uninstall")

    def answer(self, port, query):
        deadline = time.time() + 10
        while True:
            try:
                return urllib.request.urlopen(f"http://127.0.0.1:{port}/api/kernels{query}", timeout=10).status
            except urllib.error.HTTPError as refused:
                return refused.code
            except OSError:
                if time.time() > deadline:
                    raise
                time.sleep(0.2)


if __name__ == "__main__":
    unittest.main()
