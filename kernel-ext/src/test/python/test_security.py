# SPDX-License-Identifier: GPL-3.0-or-later
"""Who may reach a kernel, and what opening a logbook may not do."""
import csv
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import unittest

import zmq
from jupyter_client.manager import start_new_kernel
from jupyter_client.session import Session

PATIENCE = 60
MARK = "parchment-security-mark"


class Reach(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.manager, cls.client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)
        cls.folder = tempfile.mkdtemp()

    @classmethod
    def tearDownClass(cls):
        cls.client.stop_channels()
        cls.manager.shutdown_kernel()
        shutil.rmtree(cls.folder)

    def send(self, key, name):
        """Sends a cell that would leave a file, signed with the key, and returns the file's path."""
        left = os.path.join(self.folder, name)
        info = self.manager.get_connection_info()
        context = zmq.Context()
        try:
            socket = context.socket(zmq.DEALER)
            socket.connect(f"tcp://{info['ip']}:{info['shell_port']}")
            content = {
                "code": f'Files.writeString(Path.of("{left}"), "ran")',
                "silent": False,
                "store_history": False,
                "user_expressions": {},
                "allow_stdin": False,
                "stop_on_error": False,
            }
            session = Session(key=key, signature_scheme="hmac-sha256")
            session.send(socket, "execute_request", content)
            # The kernel takes requests in turn, so when this one is answered the one before has been dealt with.
            self.client.execute_interactive("1 + 1", timeout=PATIENCE, output_hook=lambda m: None)
            time.sleep(0.3)
        finally:
            context.destroy(linger=1000)
        return left

    def test_a_message_with_the_right_key_runs(self):
        self.assertTrue(os.path.exists(self.send(self.manager.session.key, "right")))

    def test_a_message_with_a_wrong_key_is_ignored(self):
        self.assertFalse(os.path.exists(self.send(b"a key that is not the kernel's", "wrong")))

    def test_a_message_without_a_signature_is_ignored(self):
        self.assertFalse(os.path.exists(self.send(b"", "unsigned")))

    @unittest.skipUnless(sys.platform.startswith("linux"), "reads the table of sockets that Linux keeps")
    def test_the_sockets_are_bound_to_this_machine_alone(self):
        ports = {port for name, port in self.manager.get_connection_info().items() if name.endswith("_port")}
        bound = {}
        for table in ("/proc/net/tcp", "/proc/net/tcp6"):
            with open(table) as lines:
                for line in list(lines)[1:]:
                    fields = line.split()
                    address, port = fields[1].split(":")
                    if fields[3] == "0A" and int(port, 16) in ports:  # 0A: listening
                        bound.setdefault(int(port, 16), set()).add(address)
        self.assertEqual(set(bound), ports, "all five sockets are found")
        # 127.0.0.1, as the kernel writes it: four bytes from the last to the first, alone or mapped into IPv6.
        loopback = {"0100007F", "0000000000000000FFFF00000100007F"}
        for port, addresses in bound.items():
            self.assertLessEqual(addresses, loopback, f"port {port}")

    def refused(self, **changes):
        info = dict(self.manager.get_connection_info())
        info = {k: v.decode() if isinstance(v, bytes) else v for k, v in info.items()}
        for name in info:
            if name.endswith("_port"):
                info[name] = 0
        info.update(changes)
        path = os.path.join(self.folder, "connection.json")
        pathlib.Path(path).write_text(json.dumps(info))
        command = [part.replace("{connection_file}", path) for part in self.manager.kernel_spec.argv]
        done = subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=PATIENCE)
        self.assertNotEqual(done.returncode, 0)
        return done.stdout.decode()

    def test_a_kernel_that_others_could_reach_does_not_start(self):
        self.assertIn("other machines can reach", self.refused(ip="0.0.0.0"))

    def test_a_kernel_without_a_key_does_not_start(self):
        self.assertIn("has no key", self.refused(key=""))


class Opening(unittest.TestCase):
    """Everything in a logbook's folder is text to be read, whatever it looks like."""

    def test_opening_a_logbook_runs_nothing_from_it(self):
        home = pathlib.Path(__file__).resolve().parents[4]
        folder = pathlib.Path(tempfile.mkdtemp())
        try:
            logbook = folder / "logbook"
            shutil.copytree(home / "datasets" / "hillside", logbook)
            mark = folder / MARK
            self.spoil(logbook, mark)
            before = {p: p.stat().st_mtime_ns for p in logbook.rglob("*")}
            manager, client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE, cwd=str(logbook))
            try:
                outputs = []
                reply = client.execute_interactive(
                    f'var logbook = Logbook.open("{logbook}");\n'
                    "Display.show(logbook);\nDisplay.show(BatchTable.of(logbook));\nPhaseTable.of(logbook)",
                    timeout=PATIENCE,
                    output_hook=lambda m: outputs.append(m),
                )
                self.assertEqual(reply["content"]["status"], "ok", reply["content"])
                shown = [m["content"]["data"] for m in outputs if m["msg_type"] in ("display_data", "execute_result")]
                # On a busy machine the cell says how long it took.
                shown = [data for data in shown if not data["text/plain"].startswith("took ")]
                self.assertEqual(len(shown), 4, "three values, and under them that the demo's machine is invented")
                self.assertTrue(shown[3]["text/plain"].startswith("Invented machine: do not roast."), shown[3])
                for data in shown:
                    html = data.get("text/html", "")
                    self.assertNotIn("<script>alert(1)", html)
                    self.assertNotIn("<img src=x", html)
                again = client.execute_interactive("logbook.batches().size()", timeout=PATIENCE, output_hook=lambda m: None)
                self.assertEqual(again["content"]["status"], "ok", "the session is alive")
            finally:
                client.stop_channels()
                manager.shutdown_kernel()
            self.assertFalse(mark.exists(), "something from the folder ran")
            self.assertEqual({p: p.stat().st_mtime_ns for p in logbook.rglob("*")}, before, "the folder is untouched")
        finally:
            shutil.rmtree(folder)

    @staticmethod
    def spoil(logbook, mark):
        """Puts what runs elsewhere into cells, names and files of the folder."""
        evil = [
            "System.exit(1)",
            f'=CMD|"/c touch {mark}"!A1',
            "${jndi:ldap://127.0.0.1:9/x}",
            f"$(touch {mark})",
            f"`touch {mark}`",
            "#{T(java.lang.Runtime).getRuntime().exit(1)}",
            "<script>alert(1)</script>",
            "<img src=x onerror=alert(1)>",
        ]
        batches = next(logbook.glob("batches*.csv"))
        with open(batches, newline="", encoding="utf-8-sig") as source:
            text = source.read()
        delimiter = ";" if text.splitlines()[0].count(";") > text.splitlines()[0].count(",") else ","
        rows = list(csv.reader(text.splitlines(), delimiter=delimiter))
        rows[0].append("remark")
        for i, row in enumerate(rows[1:]):
            row.append(evil[i % len(evil)])
        with open(batches, "w", newline="", encoding="utf-8") as out:
            csv.writer(out, delimiter=delimiter).writerows(rows)
        java = f'public class Batches {{ static {{ try {{ new java.io.File("{mark}").createNewFile(); }} catch (Exception e) {{ }} }} }}'
        (logbook / "Batches.java").write_text(java)
        (logbook / "Logbook.class").write_bytes(b"\xca\xfe\xba\xbe not a class")
        (logbook / "startup.jsh").write_text(f'new java.io.File("{mark}").createNewFile();')
        (logbook / "evil.ipynb").write_text(
            json.dumps(
                {
                    "nbformat": 4,
                    "nbformat_minor": 5,
                    "metadata": {},
                    "cells": [{"cell_type": "code", "id": "a", "metadata": {}, "execution_count": None, "outputs": [],
                               "source": f'new java.io.File("{mark}").createNewFile()'}],
                }
            )
        )
        services = logbook / "META-INF" / "services"
        services.mkdir(parents=True)
        (services / "java.nio.file.spi.FileSystemProvider").write_text("Batches\n")


if __name__ == "__main__":
    unittest.main()
