# SPDX-License-Identifier: GPL-3.0-or-later
"""What a person at a notebook sees, under a real Jupyter client."""
import base64
import os
import re
import signal
import time
import unittest

from jupyter_client.manager import start_new_kernel

PATIENCE = 60
TOOK = re.compile(r"took \d+(\.\d)? (s|min).*$")


def alive(pid):
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    with open(f"/proc/{pid}/stat") as stat:
        return stat.read().rsplit(")", 1)[1].split()[0] != "Z"


if signal.getsignal(signal.SIGINT) == signal.SIG_IGN:
    # Whoever is started in the background is deaf to it, and would make the kernel deaf, too.
    signal.signal(signal.SIGINT, signal.default_int_handler)


class Session(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.manager, cls.client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)

    @classmethod
    def tearDownClass(cls):
        cls.client.stop_channels()
        cls.manager.shutdown_kernel()

    def run_cell(self, code, **options):
        outputs = []
        reply = self.client.execute_interactive(
            code, timeout=PATIENCE, output_hook=lambda m: outputs.append((m["msg_type"], m["content"])), **options
        )
        shown = [o for o in outputs if o[0] not in ("status", "execute_input")]
        self.times = [o for o in shown if TOOK.match(o[1].get("data", {}).get("text/plain", ""))]
        return reply["content"], [o for o in shown if o not in self.times]  # On a busy machine any cell may be slow.

    def test_a_first_cell_needs_no_import(self):
        reply, outputs = self.run_cell("Temperature.of(200, TemperatureUnit.CELSIUS)")
        self.assertEqual(reply["status"], "ok")
        self.assertEqual(outputs[0][0], "execute_result")
        self.assertIn("200", outputs[0][1]["data"]["text/plain"])

    def test_prints_arrive_in_order_and_whole(self):
        _, outputs = self.run_cell('for (int i = 0; i < 500; i++) System.out.println("line " + i + " \u2615")')
        text = "".join(c["text"] for kind, c in outputs if kind == "stream")
        self.assertEqual(text, "".join(f"line {i} \u2615\n" for i in range(500)))

    def test_what_was_shown_under_a_name_changes_from_a_later_cell(self):
        _, first = self.run_cell('Display.show("count", 1);')
        _, later = self.run_cell('Display.update("count", Display.as("text/html", "<b>2</b>"));')
        self.assertEqual([kind for kind, _ in first + later], ["display_data", "update_display_data"])
        self.assertEqual([c["transient"]["display_id"] for _, c in first + later], ["count", "count"])
        self.assertEqual(later[0][1]["data"]["text/html"], "<b>2</b>")

    def test_json_goes_as_json_and_a_chart_of_dots_beside_its_html(self):
        _, outputs = self.run_cell('Display.as("application/json", "{\\"cups\\": [1, 2]}")')
        self.assertEqual(outputs[0][1]["data"]["application/json"], {"cups": [1, 2]})
        _, outputs = self.run_cell('new org.knowm.xchart.XYChartBuilder().width(200).height(100).build()')
        data = outputs[0][1]["data"]
        self.assertEqual(set(data), {"text/plain", "text/html", "image/png"})
        self.assertTrue(base64.b64decode(data["image/png"]).startswith(b"\x89PNG"))

    def test_an_error_names_the_line_and_the_closest_name(self):
        reply, outputs = self.run_cell("int a = 1;\nTemprature.of(1, null)")
        self.assertEqual(reply["status"], "error")
        shown = "\n".join(outputs[0][1]["traceback"])
        self.assertIn("Line 2:", shown)
        self.assertIn("Did you mean `Temperature`?", shown)

    def test_many_cells_that_wait_are_answered_in_order(self):
        cells = int(os.environ.get("PARCHMENT_QUEUED_CELLS", "200"))
        begin = time.monotonic()
        asked = [self.client.execute(f"{i} + 1") for i in range(cells)]
        shown, ended = [], []
        while len(ended) < cells:
            message = self.client.get_iopub_msg(timeout=PATIENCE)
            if message["msg_type"] == "execute_result":
                shown.append(message["content"]["data"]["text/plain"])
            elif message["msg_type"] == "status" and message["content"]["execution_state"] == "idle":
                ended += [one for one in asked if one == message["parent_header"].get("msg_id")]
        self.assertEqual(shown, [str(i + 1) for i in range(cells)])
        self.assertEqual(ended, asked)
        replies = [self.client.get_shell_msg(timeout=PATIENCE) for _ in asked]
        self.assertEqual([reply["parent_header"]["msg_id"] for reply in replies], asked)
        if cells > 200:
            print(f"{cells} cells that waited were answered in {time.monotonic() - begin:.1f} s")

    def test_what_waits_after_an_error_is_not_run(self):
        self.client.execute("Thread.sleep(300); throw new RuntimeException(\"first\");")
        second = self.client.execute('System.out.println("must not run")')
        deadline = time.time() + PATIENCE
        while time.time() < deadline:
            reply = self.client.get_shell_msg(timeout=PATIENCE)
            if reply["parent_header"].get("msg_id") == second:
                self.assertEqual(reply["content"]["status"], "aborted")
                return
        self.fail("no reply to the second cell")

    def stops(self, code, ask):
        message = self.client.execute(code)
        while self.client.get_iopub_msg(timeout=PATIENCE)["msg_type"] != "execute_input":
            pass
        time.sleep(0.7)
        asked = time.time()
        ask()
        while True:
            reply = self.client.get_shell_msg(timeout=PATIENCE)
            if reply["parent_header"].get("msg_id") == message:
                break
        self.assertEqual(reply["content"]["ename"], "Interrupted")
        self.assertLess(time.time() - asked, 1.5)
        # What arrives in the same moment as the error still counts as waiting behind it, and is not run.
        time.sleep(0.5)
        self.assertEqual(self.run_cell("1 + 1")[0]["status"], "ok")

    def test_an_endless_loop_stops_when_interrupted(self):
        self.stops("while (true) { }", self.manager.interrupt_kernel)

    def test_a_loop_that_swallows_everything_stops(self):
        self.stops("while (true) { try { Thread.sleep(5); } catch (Throwable t) { } }", self.manager.interrupt_kernel)

    def test_recursion_stops_when_interrupted(self):
        self.run_cell("int fib(int n) { return n < 2 ? n : fib(n - 1) + fib(n - 2); }")
        self.stops("fib(60)", self.manager.interrupt_kernel)

    def test_an_endless_stream_of_lambdas_stops_when_interrupted(self):
        self.stops("Stream.iterate(1, i -> i + 1).mapToLong(i -> i).sum()", self.manager.interrupt_kernel)

    def test_an_endless_stream_of_method_references_stops_when_interrupted(self):
        self.stops("Stream.generate(Math::random).mapToDouble(Double::doubleValue).sum()", self.manager.interrupt_kernel)

    def test_what_cannot_be_stopped_is_left_behind_and_the_next_cell_runs(self):
        self.stops("new Random(1).doubles(400_000_000).sum()", self.manager.interrupt_kernel)

    def test_a_long_cell_says_how_long_it_took(self):
        _, outputs = self.run_cell("Thread.sleep(1200);\n6 * 7")
        self.assertEqual([kind for kind, _ in outputs], ["execute_result"])
        self.assertEqual([kind for kind, _ in self.times], ["display_data"])

    def test_a_silent_cell_says_nothing_of_its_time(self):
        _, outputs = self.run_cell("Thread.sleep(1200);", silent=True)
        self.assertEqual((outputs, self.times), ([], []))

    def test_what_is_printed_past_a_pages_bound_is_counted_and_the_cell_goes_on(self):
        reply, outputs = self.run_cell('for (int i = 0; i < 30_000; i++) System.out.println("line");\n6 * 7')
        self.assertEqual(reply["status"], "ok")
        text = "".join(c["text"] for kind, c in outputs if kind == "stream")
        self.assertTrue(text.endswith("line\n... and 50,000 more characters in 10,000 lines, not shown\n"), text[-100:])
        self.assertIn("42", [c["data"]["text/plain"] for kind, c in outputs if kind == "execute_result"])

    def test_clients_get_the_values_of_their_own_expressions(self):
        reply, outputs = self.run_cell(
            "int asked = 6;",
            user_expressions={
                "good": "asked * 7",
                "rich": 'Table.titled("Batch 112")',
                "wrong": "noSuchName",
                "failing": 'Integer.parseInt("ten")',
                "defining": "int sneaked = 1;",
            },
        )
        self.assertEqual((reply["status"], outputs), ("ok", []))
        values = reply["user_expressions"]
        self.assertEqual(values["good"], {"status": "ok", "data": {"text/plain": "42"}, "metadata": {}})
        self.assertIn("text/html", values["rich"]["data"])
        self.assertEqual((values["wrong"]["status"], values["wrong"]["ename"]), ("error", "Not valid Java"))
        self.assertEqual(values["failing"]["ename"], "NumberFormatException")
        self.assertIn("ten", values["failing"]["evalue"])
        self.assertTrue(values["failing"]["traceback"])
        self.assertEqual(values["defining"]["status"], "error")
        self.assertEqual(self.run_cell("sneaked")[0]["status"], "error")

    def test_clients_get_no_values_where_the_cell_failed(self):
        reply, _ = self.run_cell("noSuchName", user_expressions={"good": "6 * 7"})
        self.assertNotIn("user_expressions", reply)

    @unittest.skipUnless(hasattr(os, "kill") and os.name == "posix", "signals are a POSIX matter")
    def test_the_interrupt_signal_stops_a_cell_too(self):
        self.stops("while (true) { }", lambda: self.manager.signal_kernel(signal.SIGINT))

    def test_long_work_of_the_library_stops_when_interrupted(self):
        self.run_cell(
            "import parchment.stats.resample.*;\n"
            'var rows = Permutation.withinBlocks(Collections.nCopies(200, "a"), 1);'
        )
        self.stops(
            "PermutationTest.run(rows, 3_000_000, order -> new double[] {order[0]})", self.manager.interrupt_kernel
        )

    def test_progress_moves_in_one_place(self):
        messages = []
        self.client.execute_interactive(
            'for (int i : Progress.over(List.of(1, 2, 3, 4, 5), "counting slowly")) Thread.sleep(600);',
            timeout=PATIENCE,
            output_hook=lambda m: messages.append((m["msg_type"], m["content"])),
        )
        shown = [(kind, content) for kind, content in messages if content.get("transient", {}).get("display_id")]
        self.assertEqual([kind for kind, _ in shown][:2], ["display_data", "update_display_data"])
        self.assertEqual({kind for kind, _ in shown[1:]}, {"update_display_data"})
        self.assertEqual(len({content["transient"]["display_id"] for _, content in shown}), 1)
        self.assertLessEqual(len(shown), 7, "at most four a second")
        self.assertIn("<progress", shown[0][1]["data"]["text/html"])
        self.assertEqual(shown[-1][1]["data"]["text/plain"], "counting slowly: all 5 in 3 seconds")

    def test_short_work_shows_no_progress(self):
        _, outputs = self.run_cell('for (int i : Progress.over(List.of(1, 2), "counting")) Thread.sleep(20);')
        self.assertEqual(outputs, [])

    def test_an_exit_by_reflection_ends_the_cell_only(self):
        reply, _ = self.run_cell('Class.forName("java.lang.System").getMethod("exit", int.class).invoke(null, 3)')
        self.assertEqual(reply["ename"], "Exit refused")
        self.assertEqual(self.run_cell("1 + 1")[0]["status"], "ok")

    def test_an_exit_ends_the_cell_only(self):
        reply, _ = self.run_cell("System.exit(1)")
        self.assertEqual(reply["ename"], "Exit refused")
        self.assertEqual(self.run_cell("1 + 1")[0]["status"], "ok")

    def test_input_is_asked_for(self):
        def answer(message):
            self.client.input("Santos")

        outputs = []
        self.client.execute_interactive(
            "new Scanner(System.in).nextLine()",
            timeout=PATIENCE,
            allow_stdin=True,
            stdin_hook=answer,
            output_hook=lambda m: outputs.append((m["msg_type"], m["content"])),
        )
        results = [c["data"]["text/plain"] for kind, c in outputs if kind == "execute_result"]
        self.assertEqual(results, ["Santos"])

    def test_the_cursor_counts_whole_characters(self):
        code = 'var c = "\U0001F600"; Math.flo'
        self.client.complete(code, len(code))
        while True:
            reply = self.client.get_shell_msg(timeout=PATIENCE)
            if reply["header"]["msg_type"] == "complete_reply":
                break
        self.assertIn("floor(", reply["content"]["matches"])
        self.assertEqual(code[reply["content"]["cursor_start"] : reply["content"]["cursor_end"]], "flo")

    def ask(self, kind, message):
        while True:
            reply = self.client.get_shell_msg(timeout=PATIENCE)
            if reply["parent_header"].get("msg_id") == message:
                self.assertEqual(reply["header"]["msg_type"], kind)
                return reply["content"]

    def inspected(self, code, cursor=None):
        return self.ask("inspect_reply", self.client.inspect(code, len(code) if cursor is None else cursor))

    def test_shift_tab_shows_the_meaning_the_units_and_an_example(self):
        code = 'var cup = "\U0001F600"; Evidence.of("sweetness", dropTemperature(), null)'
        reply = self.inspected(code, code.index("dropTemperature") + 4)
        self.assertTrue(reply["found"])
        text = reply["data"]["text/plain"]
        self.assertTrue(text.startswith("Feature Features.dropTemperature()"), text)
        self.assertIn("unit: \u00b0C", text)
        self.assertIn("BatchTable.of(logbook, dropTemperature())", text)
        self.assertIn("<dt><code>unit</code></dt><dd>\u00b0C</dd>", reply["data"]["text/html"])

    def test_shift_tab_inside_a_call_shows_the_call(self):
        reply = self.inspected('Evidence.of("sweetness", ')
        text = reply["data"]["text/plain"]
        self.assertTrue(text.startswith("Evidence Evidence.of(String attribute, Feature feature, Logbook logbook)"), text)
        self.assertIn("Fails with:", text)

    def test_shift_tab_on_nothing_finds_nothing(self):
        for code in ("noSuchName", "// dropTemperature", "", "x.y.z("):
            reply = self.inspected(code)
            self.assertEqual((reply["status"], reply["found"], reply["data"]), ("ok", False, {}), code)

    def test_a_shift_tab_takes_less_than_a_blink_once_warm(self):
        code = 'Evidence.of("sweetness", dropTemperature(), null)'
        times = []
        for _ in range(9):
            start = time.time()
            self.inspected(code, 10)
            times.append(time.time() - start)
        self.assertLess(min(times), 0.3)

    def test_completion_offers_ours_first(self):
        reply = self.ask("complete_reply", self.client.complete("dropT"))
        self.assertEqual(reply["matches"], ["dropTemperature()", "dropTime()"])

    def test_a_picture_comes_as_html_and_as_svg(self):
        _, outputs = self.run_cell(
            "record Dot(int r) implements Showable {\n"
            '    public Optional<String> svg() { return Optional.of("<svg/>"); }\n}\nnew Dot(1)'
        )
        data = outputs[0][1]["data"]
        self.assertEqual(sorted(data), ["image/svg+xml", "text/html", "text/plain"])


class Ending(unittest.TestCase):
    def test_nothing_is_left_after_a_shutdown(self):
        manager, client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)
        client.execute_interactive("1 + 1", timeout=PATIENCE)
        pid = manager.provisioner.pid
        client.stop_channels()
        start = time.time()
        manager.shutdown_kernel()
        self.assertLess(time.time() - start, 3)
        self.assertFalse(alive(pid))

    def test_a_restart_gives_a_fresh_session(self):
        manager, client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)
        try:
            client.execute_interactive("int kept = 1;", timeout=PATIENCE)
            manager.restart_kernel()
            client.wait_for_ready(timeout=PATIENCE)
            reply = client.execute_interactive("kept", timeout=PATIENCE, output_hook=lambda m: None)
            self.assertEqual(reply["content"]["status"], "error")
        finally:
            client.stop_channels()
            manager.shutdown_kernel()

    @unittest.skipUnless(os.name == "posix", "forks a client and kills it")
    def test_the_kernel_ends_when_its_client_dies(self):
        read, write = os.pipe()
        child = os.fork()
        if child == 0:
            try:
                manager, client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)
                os.write(write, str(manager.provisioner.pid).encode())
                os.close(write)
                time.sleep(PATIENCE)
            finally:
                os._exit(0)
        os.close(write)
        pid = int(os.read(read, 20))
        os.close(read)
        self.assertTrue(alive(pid))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        deadline = time.time() + 10
        while alive(pid) and time.time() < deadline:
            time.sleep(0.1)
        self.assertFalse(alive(pid), "the kernel outlived its client")


if __name__ == "__main__":
    unittest.main()
