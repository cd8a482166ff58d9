# SPDX-License-Identifier: GPL-3.0-or-later
"""The launcher's script: builds that were stopped, builds that meet, and paths that Java does not take; with a Maven that only copies."""

import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[4]
BUILT = PROJECT / "kernel-ext" / "target"
PATIENCE = 120

if signal.getsignal(signal.SIGINT) == signal.SIG_IGN:
    # Whoever is started in the background is deaf to it, and would make the launcher deaf, too.
    signal.signal(signal.SIGINT, signal.default_int_handler)

# Builds as Maven does, one thing after the other, and can be told to stop between two of them or to take its time.
MAVEN = """#!/bin/sh
echo built >>"$PWD/../builds"
mkdir -p src/library/target kernel-ext/target
[ -f kernel-ext/target/parchment-kernel.jar ] || cp -p "$JARS/parchment-kernel.jar" kernel-ext/target/
[ -z "${STOP:-}" ] || kill -9 $PPID $$
[ -z "${FAIL:-}" ] || exit 1
[ -z "${EDIT:-}" ] || { sleep 1; echo changed >>src/library/main/A.java; sleep 1; }
[ -z "${SLOW:-}" ] || sleep "$SLOW"
mkdir -p kernel-ext/target/lib
cp -p "$JARS"/lib/* kernel-ext/target/lib/
"""


@unittest.skipUnless((BUILT / "lib").is_dir(), "the project is not built: mvn package")
@unittest.skipUnless(os.name == "posix", "the script for Windows is another")
class Clone(unittest.TestCase):
    def setUp(self):
        self.base = Path(tempfile.mkdtemp(prefix="launcher test "))
        self.addCleanup(shutil.rmtree, self.base)
        programs = self.base / "programs"
        programs.mkdir()
        maven = programs / "mvn"
        maven.write_text(MAVEN)
        maven.chmod(0o755)
        self.environment = {**os.environ, "PATH": f"{programs}:{os.environ['PATH']}", "JARS": str(BUILT), "LC_ALL": "C.UTF-8"}

    def clone(self, name="clone"):
        home = self.base / name
        for folder in ("src/library/main", "src/roastery/main", "kernel-ext/src/main"):
            (home / folder).mkdir(parents=True)
        for file in ("pom.xml", "src/pom.xml", "src/library/pom.xml", "src/roastery/pom.xml", "kernel-ext/pom.xml", "src/library/main/A.java"):
            (home / file).write_text("")
        shutil.copy(PROJECT / "parchment", home)
        shutil.copytree(PROJECT / "datasets" / "hillside", home / "datasets" / "harbour")
        return home

    def start(self, home, *arguments, **more):
        return subprocess.Popen([str(home / "parchment"), *arguments], env={**self.environment, **more}, cwd=self.base,
                                stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)

    def run_here(self, home, *arguments, code=0, **more):
        process = self.start(home, *arguments, **more)
        out, err = process.communicate(timeout=PATIENCE)
        self.assertEqual(process.returncode, code, out + err)
        return out + err

    def builds(self):
        said = self.base / "builds"
        return len(said.read_text().splitlines()) if said.exists() else 0

    def test_builds_once_and_again_when_a_source_is_newer(self):
        home = self.clone()
        self.assertIn("not built yet", self.run_here(home, "--version"))
        self.assertNotIn("Building", self.run_here(home, "--version"))
        self.assertEqual(self.builds(), 1)
        later = time.time() + 5
        os.utime(home / "src" / "library" / "main" / "A.java", (later, later))
        self.assertIn("sources changed", self.run_here(home, "--version"))

    def test_a_build_that_was_killed_between_the_jar_and_its_library_heals(self):
        home = self.clone()
        self.start(home, "--version", STOP="yes").communicate(timeout=PATIENCE)
        self.assertTrue((home / "kernel-ext/target/parchment-kernel.jar").exists())
        self.assertFalse((home / "kernel-ext/target/lib").exists())
        said = self.run_here(home, "--version")
        self.assertIn("the last build was stopped", said)
        self.assertIn("Parchment 0", said)
        self.assertNotIn("Building", self.run_here(home, "--version"))

    def test_a_source_that_is_changed_during_a_build_is_built_next_time(self):
        home = self.clone()
        self.run_here(home, "--version", EDIT="yes")
        self.assertIn("sources changed", self.run_here(home, "--version"))
        self.assertNotIn("Building", self.run_here(home, "--version"))

    def test_a_build_that_failed_was_not_stopped(self):
        home = self.clone()
        self.assertIn("The build failed", self.run_here(home, "--version", code=2, FAIL="yes"))
        said = self.run_here(home, "--version")
        self.assertIn("no whole build yet", said)
        self.assertNotIn("was stopped", said)
        later = time.time() + 5
        os.utime(home / "src" / "library" / "main" / "A.java", (later, later))
        self.run_here(home, "--version", code=2, FAIL="yes")
        os.utime(home / "src" / "library" / "main" / "A.java", (1, 1))
        self.assertIn("no whole build yet", self.run_here(home, "--version"))

    def test_nothing_of_a_build_that_was_stopped_is_trusted(self):
        home = self.clone()
        self.start(home, "--version", STOP="yes").communicate(timeout=PATIENCE)
        (home / "kernel-ext/target/parchment-kernel.jar").write_bytes(b"half a jar")
        self.assertIn("Parchment 0", self.run_here(home, "--version"))

    def test_a_jar_without_its_library_from_another_build_heals_too(self):
        home = self.clone()
        (home / "kernel-ext/target").mkdir()
        shutil.copy(BUILT / "parchment-kernel.jar", home / "kernel-ext/target")
        said = self.run_here(home, "--version")
        self.assertIn("no whole build yet", said)
        self.assertIn("Parchment 0", said)

    def test_of_two_starts_at_once_one_builds_and_the_other_waits(self):
        home = self.clone()
        first = self.start(home, "--version", SLOW="3")
        while self.builds() == 0:
            time.sleep(0.05)
        said = self.run_here(home, "--version")
        out, err = first.communicate(timeout=PATIENCE)
        self.assertEqual(first.returncode, 0, out + err)
        self.assertIn("Another build of Parchment is at work; waiting for it", said)
        self.assertIn(f"remove the folder {home / 'target' / 'building'}", said)
        self.assertIn("Parchment 0", said)
        self.assertEqual(self.builds(), 1)
        self.assertEqual([p.name for p in (home / "target").iterdir()], [])

    def test_a_build_ended_by_hand_leaves_no_lock(self):
        home = self.clone()
        first = subprocess.Popen([str(home / "parchment"), "--version"], env={**self.environment, "SLOW": "20"}, cwd=self.base,
                                 stderr=subprocess.PIPE, start_new_session=True)
        while self.builds() == 0:
            time.sleep(0.05)
        os.killpg(first.pid, signal.SIGINT)
        first.communicate(timeout=PATIENCE)
        self.assertFalse((home / "target" / "building").exists())
        self.assertIn("Parchment 0", self.run_here(home, "--version"))

    def interrupted(self, home, until, *arguments, **more):
        """Starts a command as from a terminal, presses Ctrl-C once it is so far, and returns what was said and the exit code."""
        process = subprocess.Popen([str(home / "parchment"), *arguments], env={**self.environment, **more}, cwd=self.base,
                                   stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, start_new_session=True)
        self.addCleanup(lambda: process.poll() is None and os.killpg(process.pid, signal.SIGKILL))
        said = until(process)
        os.killpg(process.pid, signal.SIGINT)
        more_said, _ = process.communicate(timeout=PATIENCE)
        return said + more_said, process.returncode

    def test_a_run_that_is_stopped_leaves_no_page_and_no_folder(self):
        home = self.clone()
        book = self.base / "note.ipynb"
        book.write_text('{"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[{"cell_type":"code","metadata":{},"outputs":[],'
                        '"source":"Thread.sleep(100_000)"}]}')

        def in_the_cell(process):
            said = process.stdout.readline()
            while "Running" not in said and said:
                said += process.stdout.readline()
            while "1 of 1" not in said and process.poll() is None:
                said += process.stdout.read(1)
            return said

        said, code = self.interrupted(home, in_the_cell, "run", str(book), "--out", str(self.base / "new" / "out"))
        self.assertEqual(code, 130, said)
        self.assertIn("Stopped. Nothing of ", said)
        self.assertFalse((self.base / "new").exists())
        kept = self.base / "kept"
        kept.mkdir()
        said, code = self.interrupted(home, in_the_cell, "run", str(book), "--out", str(kept))
        self.assertEqual((code, list(kept.iterdir())), (130, []), said)

    def test_a_server_that_is_stopped_while_it_starts_ends_in_silence(self):
        home = self.clone()
        started = self.base / "started"
        jupyter = self.base / "programs" / "jupyter"
        jupyter.write_text('#!/bin/sh\ncase "$*" in *--version*) echo 7.4.2; exit;; esac\n'
                           f"exec '{sys.executable}' -c 'import sys, time; open(sys.argv[1], \"w\"); time.sleep(60)' \"$STARTED\"\n")
        jupyter.chmod(0o755)

        def begun(process):
            end = time.monotonic() + PATIENCE
            while not started.exists() and process.poll() is None and time.monotonic() < end:
                time.sleep(0.05)
            return ""

        said, code = self.interrupted(home, begun, "open", "--no-browser", STARTED=str(started),
                                      JUPYTER_DATA_DIR=str(self.base / "jupyter"))
        self.assertTrue(started.exists(), said)
        self.assertEqual(code, 130, said)
        self.assertNotIn("Traceback", said)
        self.assertNotIn("KeyboardInterrupt", said)

    def test_says_that_nothing_can_be_written_where_it_would_build(self):
        home = self.clone()
        (home / "target").write_text("a file stands here")
        self.assertIn("nothing can be written in", self.run_here(home, "--version", code=2))

    def test_starts_from_a_path_with_an_emoji_and_works_in_one(self):
        home = self.clone("my ☕ \U0001F642 clone")
        before = {p.name for p in Path("/tmp").glob("parchment-*")}
        page = self.base / "page \U0001F600.html"
        said = self.run_here(home, "week", "--out", str(page))
        self.assertIn("Page:", said)
        self.assertIn("<table", page.read_text())
        book = self.base / "note \U0001F680.ipynb"
        book.write_text('{"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[{"cell_type":"code","metadata":{},"outputs":[],'
                        '"source":"Logbook.open().batches().size()"}]}')
        self.run_here(home, "run", str(book), "--out", str(self.base / "out \U0001F680"))
        self.assertTrue((self.base / "out \U0001F680" / "note \U0001F680.html").exists())
        self.run_here(home, "week", "--logbook", "none", code=1)
        self.assertEqual({p.name for p in Path("/tmp").glob("parchment-*")}, before, "the copy of the jars was taken away")


if __name__ == "__main__":
    unittest.main()
