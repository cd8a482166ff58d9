# SPDX-License-Identifier: GPL-3.0-or-later
"""Full disks, killed commands, folders that may not be written, and commands that meet: the later one works, and says in words what was."""

import hashlib
import json
import os
import re
import shutil
import signal
import subprocess
import tempfile
import time
import unittest
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[4]
JAR = PROJECT / "kernel-ext" / "target" / "parchment-kernel.jar"
PATIENCE = 240
NOBODY = 65534
CLASS_NAME = re.compile(r"\b\w+(?:Exception|Error)\b")


def can_mount():
    place = tempfile.mkdtemp()
    try:
        if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", place], capture_output=True).returncode:
            return False
        subprocess.run(["umount", place], check=True)
        return True
    except OSError:
        return False
    finally:
        os.rmdir(place)


MOUNTS = os.name == "posix" and os.getuid() == 0 and can_mount()


class Commands(unittest.TestCase):
    def setUp(self):
        self.base = Path(tempfile.mkdtemp(prefix="writing test "))
        self.addCleanup(shutil.rmtree, self.base)
        self.base.chmod(0o755)

    def command(self, *arguments):
        return ["java", "-Djava.awt.headless=true", "-Dfile.encoding=UTF-8", f"-Dparchment.home={PROJECT}", "-jar", str(JAR),
                *map(str, arguments)]

    def start(self, *arguments, **options):
        return subprocess.Popen(self.command(*arguments), cwd=self.base, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                                text=True, env={**os.environ, "LC_ALL": "C.UTF-8"}, **options)

    def run_here(self, *arguments, code=0, **options):
        process = self.start(*arguments, **options)
        said = process.communicate(timeout=PATIENCE)[0]
        self.assertEqual(process.returncode, code, said)
        self.assertIsNone(CLASS_NAME.search(said), said)
        return said

    def notebook(self, *cells):
        file = self.base / "note.ipynb"
        file.write_text(json.dumps({"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
            {"cell_type": "code", "metadata": {}, "outputs": [], "execution_count": None, "source": cell} for cell in cells]}))
        return file

    @staticmethod
    def listing(folder):
        return {str(p.relative_to(folder)): hashlib.sha256(p.read_bytes()).hexdigest() for p in folder.rglob("*") if p.is_file()}


@unittest.skipUnless(JAR.exists(), "the project is not built: mvn package")
@unittest.skipUnless(MOUNTS, "only root can mount a small disk here")
class FullDisk(Commands):
    def small(self, kilobytes):
        disk = self.base / "disk"
        disk.mkdir()
        subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={kilobytes}k", "tmpfs", str(disk)], check=True)
        self.addCleanup(subprocess.run, ["umount", str(disk)], check=True)
        return disk

    def fill(self, disk, left=0):
        with open(disk / "filler", "wb", buffering=0) as filler:
            try:
                while True:
                    filler.write(b"x" * 4096)
            except OSError:
                pass
        if left:
            os.truncate(disk / "filler", (disk / "filler").stat().st_size - left)

    def test_prepare_leaves_no_empty_seeds_and_works_once_there_is_room(self):
        disk = self.small(256)
        teacher = disk / "teacher"
        teacher.mkdir()
        self.fill(disk)
        said = self.run_here("class", "prepare", "--students", "3", "--teacher", teacher, code=1)
        self.assertIn("the disk is full", said)
        self.assertEqual(list(teacher.iterdir()), [])
        (disk / "filler").unlink()
        self.run_here("class", "prepare", "--students", "3", "--teacher", teacher)
        self.assertEqual(len([x for x in (teacher / "seeds.properties").read_text().splitlines() if "=" in x]), 3)

    def test_run_leaves_the_good_notebook_of_before(self):
        disk = self.small(256)
        out = disk / "out"
        book = self.notebook("1 + 1")
        self.run_here("run", book, "--out", out)
        before = self.listing(out)
        self.notebook("1 + 1", 'System.out.println("x".repeat(60_000))')
        self.fill(disk, left=8192)
        said = self.run_here("run", book, "--out", out, code=1)
        self.assertIn("the disk is full", said)
        self.assertEqual(self.listing(out), before)
        (disk / "filler").unlink()
        self.run_here("run", book, "--out", out)
        self.assertNotEqual(self.listing(out), before)

    def test_week_leaves_the_good_page_of_before(self):
        disk = self.small(1024)
        page = disk / "week.html"
        week = ("week", "--logbook", PROJECT / "datasets" / "hillside", "--out", page)
        self.run_here(*week)
        before = self.listing(disk)["week.html"]
        self.fill(disk)
        self.assertIn("the disk is full", self.run_here(*week, code=1))
        self.assertEqual(self.listing(disk)["week.html"], before)
        self.assertEqual(sorted(p.name for p in disk.iterdir()), ["filler", "week.html"])

    def test_a_logbook_that_does_not_fit_leaves_nothing_and_the_next_one_works(self):
        disk = self.small(128)
        year = disk / "year"
        said = self.run_here("roastery", "--batches", "20", "--out", year, code=1)
        self.assertIn("the disk is full", said)
        self.assertEqual(list(disk.iterdir()), [])
        subprocess.run(["mount", "-o", "remount,size=8m", str(disk)], check=True)
        self.run_here("roastery", "--batches", "20", "--out", year)
        self.assertTrue((year / "batches.csv").exists())

    def test_gather_leaves_nothing_and_the_next_one_works(self):
        disk = self.small(16)
        old = self.base / "logger"
        old.mkdir()
        for n in range(3):
            rows = "".join(f"{t},{95 + t / 6:.1f},{200 - t / 20:.1f}\n" for t in range(0, 600))
            (old / f"2026-01-0{n + 1} roast.csv").write_text("time [s],bean temperature [°C],air temperature [°C]\n" + rows)
        said = self.run_here("gather", old, "--to", disk / "new", code=1, stdin=subprocess.DEVNULL)
        self.assertIn("the disk is full", said)
        self.assertEqual(list(disk.iterdir()), [])
        subprocess.run(["mount", "-o", "remount,size=8m", str(disk)], check=True)
        self.run_here("gather", old, "--to", disk / "new", stdin=subprocess.DEVNULL)
        self.assertTrue((disk / "new" / "batches.csv").exists())

    def test_install_leaves_nothing_half_and_works_once_there_is_room(self):
        disk = self.small(20 * 1024)
        said = self.run_here("install", "--prefix", disk, code=1)
        self.assertIn("the disk is full", said)
        kernels = disk / "share" / "jupyter" / "kernels" / "parchment"
        self.assertEqual([p for p in kernels.iterdir() if p.is_dir()], [])
        subprocess.run(["mount", "-o", "remount,size=400m", str(disk)], check=True)
        self.assertIn("Done;", self.run_here("install", "--prefix", disk))


@unittest.skipUnless(JAR.exists(), "the project is not built: mvn package")
@unittest.skipUnless(os.name == "posix", "kills as this system does")
class Killed(Commands):
    def kill_when(self, process, seen):
        deadline = time.time() + PATIENCE
        while not seen():
            self.assertIsNone(process.poll(), "it ended before it could be killed")
            self.assertLess(time.time(), deadline)
            time.sleep(0.005)
        process.send_signal(signal.SIGKILL)
        process.communicate()

    def parts(self, folder):
        return list(folder.glob(".parchment-*.part"))

    def test_a_logbook_half_made_is_in_nobodys_way(self):
        for place in (self.base / "new year", self.base / "there already"):
            if place.name.startswith("there"):
                place.mkdir()
            holder = place if place.exists() else self.base
            process = self.start("roastery", "--batches", "2000", "--out", place)
            self.kill_when(process, lambda: any(list((p / "curves").glob("*.csv")) for p in self.parts(holder)))
            self.assertFalse((place / "batches.csv").exists())
            self.run_here("roastery", "--batches", "5", "--out", place)
            self.assertEqual(len((place / "batches.csv").read_text().splitlines()), 6)

    def test_a_class_half_made_is_in_nobodys_way(self):
        place = self.base / "class"
        process = self.start("roastery", "class", "--students", "30", "--batches", "60", "--out", place)
        self.kill_when(process, lambda: any((p / "students").exists() for p in self.parts(self.base)))
        self.assertFalse(place.exists())
        self.run_here("roastery", "class", "--students", "2", "--batches", "3", "--out", place)
        self.assertEqual(sorted(p.name for p in (place / "students").iterdir()), ["seals.csv", "student-01", "student-02"])

    def test_a_run_killed_in_a_cell_leaves_what_was_there_and_the_next_one_works(self):
        out = self.base / "out"
        book = self.notebook("1 + 1")
        self.run_here("run", book, "--out", out)
        before = self.listing(out)
        self.notebook("1 + 2", "Thread.sleep(60_000)")
        process = self.start("run", book, "--out", out)
        time.sleep(4)
        self.kill_when(process, lambda: True)
        self.assertEqual(self.listing(out), before)
        self.notebook("1 + 2")
        self.run_here("run", book, "--out", out)

    def test_an_install_killed_half_way_is_done_by_the_next(self):
        prefix = self.base / "prefix"
        prefix.mkdir()
        kernel = prefix / "share" / "jupyter" / "kernels" / "parchment"
        process = self.start("install", "--prefix", prefix)
        self.kill_when(process, lambda: kernel.exists() and len(list(kernel.glob("jars-*/lib/*.jar"))) > 3)
        self.assertFalse((kernel / "kernel.json").exists())
        self.assertIn("Done;", self.run_here("install", "--prefix", prefix))
        self.assertIn("It was there already", self.run_here("install", "--prefix", prefix))


@unittest.skipUnless(JAR.exists(), "the project is not built: mvn package")
class Together(Commands):
    def test_of_three_installs_at_once_one_works_and_two_find_it(self):
        prefix = self.base / "prefix"
        prefix.mkdir()
        all_said = []
        processes = [self.start("install", "--prefix", prefix) for _ in range(3)]
        for process in processes:
            said = process.communicate(timeout=PATIENCE)[0]
            self.assertEqual(process.returncode, 0, said)
            all_said.append(said)
        self.assertEqual(sum("Done;" in said for said in all_said), 1, all_said)
        self.assertEqual(sum("It was there already" in said for said in all_said), 2, all_said)
        self.run_here("uninstall", "--prefix", prefix)
        self.assertEqual(list(prefix.iterdir()), [])

    def test_of_two_runs_at_once_both_work_and_what_they_leave_is_whole(self):
        out = self.base / "out"
        book = self.notebook(*[f'"{"x" * 20_000}".length() + {n}' for n in range(5)])
        processes = [self.start("run", book, "--out", out) for _ in range(2)]
        for process in processes:
            said = process.communicate(timeout=PATIENCE)[0]
            self.assertEqual(process.returncode, 0, said)
        self.assertEqual(sorted(p.name for p in out.iterdir()), ["note.html", "note.ipynb"])
        self.assertTrue((out / "note.html").read_text().rstrip().endswith("</html>"))
        self.assertEqual(len(json.loads((out / "note.ipynb").read_text())["cells"]), 5)

    def test_of_two_prepares_at_once_one_works_and_the_other_says_why(self):
        teacher = self.base / "teacher"
        processes = [self.start("class", "prepare", "--students", "200", "--teacher", teacher) for _ in range(2)]
        ended = [(p.communicate(timeout=PATIENCE)[0], p.returncode) for p in processes]
        self.assertEqual(sorted(code for _, code in ended), [0, 1], ended)
        for said, code in ended:
            self.assertIsNone(CLASS_NAME.search(said), said)
            if code:
                self.assertRegex(said, "has the seeds of a class already|is there already")


@unittest.skipUnless(JAR.exists(), "the project is not built: mvn package")
@unittest.skipUnless(os.name == "posix", "asks for the rights of this system")
class ReadOnly(Commands):
    """As a user who is not root, whom rights do not hold."""

    def as_user(self, *arguments, code):
        drop = {"user": NOBODY, "group": NOBODY, "extra_groups": []} if os.getuid() == 0 else {}
        process = subprocess.Popen(self.command(*arguments), cwd=self.base, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                                   text=True, env={"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "HOME": str(self.base)}, **drop)
        said = process.communicate(timeout=PATIENCE)[0]
        self.assertEqual(process.returncode, code, said)
        self.assertIsNone(CLASS_NAME.search(said), said)
        return said

    def test_every_writing_command_says_that_it_is_not_permitted(self):
        locked = self.base / "locked"
        locked.mkdir()
        locked.chmod(0o555)
        hillside = PROJECT / "datasets" / "hillside"
        book = self.notebook("1 + 1")
        logger = self.base / "logger"
        logger.mkdir()
        (logger / "1.csv").write_text("time [s],bean temperature [°C]\n" + "".join(f"{t},{100 + t}\n" for t in range(100)))
        for command in (
            ("week", "--logbook", hillside, "--out", locked / "week.html"),
            ("run", book, "--out", locked),
            ("run", book, "--out", locked / "out"),
            ("handbook", "--no-browser", "--to", locked / "book"),
            ("roastery", "--batches", "2", "--out", locked / "year"),
            ("class", "prepare", "--students", "1", "--teacher", locked / "teacher"),
            ("make-datasets", "--to", locked / "datasets"),
            ("install", "--prefix", locked),
        ):
            with self.subTest(" ".join(map(str, command[:1]))):
                self.assertIn("not permitted", self.as_user(*command, code=1))
        self.assertEqual(list(locked.iterdir()), [])


if __name__ == "__main__":
    unittest.main()
