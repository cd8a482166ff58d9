# SPDX-License-Identifier: GPL-3.0-or-later
"""Live controls under a real Jupyter client, by the widget messaging protocol (messages.md of the npm package @jupyter-widgets/schema)."""
import json
import queue
import time
import unittest
import uuid

from jupyter_client.manager import start_new_kernel

PATIENCE = 60
VIEW = "application/vnd.jupyter.widget-view+json"
WIDGET = "jupyter.widget"


class Controls(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.manager, cls.client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)

    @classmethod
    def tearDownClass(cls):
        cls.client.stop_channels()
        cls.manager.shutdown_kernel()

    def setUp(self):
        self.states = {}

    # What a client does.

    def take_note(self, message):
        content = message["content"]
        if message["msg_type"] == "comm_open":
            self.assertEqual(content["target_name"], WIDGET)
            self.assertEqual(message["metadata"], {"version": "2.1.0"})
            self.states[content["comm_id"]] = content["data"]["state"]
        elif message["msg_type"] == "comm_msg" and content["data"].get("method") in ("update", "echo_update"):
            self.states.setdefault(content["comm_id"], {}).update(content["data"]["state"])
        elif message["msg_type"] == "comm_close":
            self.states.pop(content["comm_id"], None)

    def run_cell(self, code):
        heard = []
        reply = self.client.execute_interactive(code, timeout=PATIENCE, output_hook=heard.append)
        for message in heard:
            self.take_note(message)
        self.assertEqual(reply["content"]["status"], "ok", reply["content"])
        return heard

    def shown(self, code):
        """Runs a cell and returns the data of its value."""
        return [m for m in self.run_cell(code) if m["msg_type"] == "execute_result"][0]["content"]["data"]

    def send(self, kind, **content):
        """Sends a message of a comm on the shell channel and returns its id."""
        message = self.client.session.msg(kind, content)
        self.client.shell_channel.send(message)
        return message["header"]["msg_id"]

    def until_idle(self, sent):
        """Returns all that the kernel says in answer to a message."""
        heard = []
        while True:
            message = self.client.get_iopub_msg(timeout=PATIENCE)
            if message["parent_header"].get("msg_id") != sent:
                continue
            self.take_note(message)
            if message["msg_type"] == "status":
                if message["content"]["execution_state"] == "idle":
                    return heard
            else:
                heard.append(message)

    def update(self, comm, **state):
        return self.send("comm_msg", comm_id=comm, data={"method": "update", "state": state, "buffer_paths": []})

    def model(self, name):
        """Returns the id of the one model of a kind."""
        found = [i for i, s in self.states.items() if s["_model_name"] == name + "Model"]
        self.assertEqual(len(found), 1, self.states)
        return found[0]

    def outputs(self):
        return self.states[self.model("Output")]["outputs"]

    def printed(self):
        return "".join(o.get("text", "") for o in self.outputs())

    # What must hold.

    def test_a_control_opens_its_models_and_shows_itself_in_words_beside_them(self):
        data = self.shown('Slider.of("drop temperature", 196, 212).withUnit("°C").onChange(v -> {})')
        self.assertEqual(data["text/plain"], "Drop temperature is 204.0 °C, on a slider from 196.0 to 212.0 °C.")
        self.assertIn("It cannot be changed on this page.", data["text/html"])
        view = data[VIEW]
        self.assertEqual((view["version_major"], view["version_minor"]), (2, 0))
        box = self.states[view["model_id"]]
        self.assertEqual(box["_model_name"], "VBoxModel")
        self.assertEqual(box["children"], ["IPY_MODEL_" + self.model("FloatSlider"), "IPY_MODEL_" + self.model("Output")])
        slider = self.states[self.model("FloatSlider")]
        self.assertEqual(slider["description"], "drop temperature, °C")
        self.assertEqual((slider["min"], slider["max"], slider["value"], slider["step"]), (196, 212, 204, 0.2))
        for reference in (slider["style"], slider["layout"]):
            self.assertIn(reference.removeprefix("IPY_MODEL_"), self.states)

    def test_every_model_is_open_before_another_names_it(self):
        known = set()
        for message in self.run_cell(
            'ControlBox.row(Slider.of("a", 0, 1), Choice.of("b", "x", "y"), ControlBox.column(CheckBox.of("c"), Button.of("d")))'
        ):
            if message["msg_type"] == "comm_open":
                state = message["content"]["data"]["state"]
                named = state.get("children", []) + [state[k] for k in ("layout", "style") if k in state]
                self.assertLessEqual({n.removeprefix("IPY_MODEL_") for n in named}, known)
                known.add(message["content"]["comm_id"])

    def test_a_change_calls_the_callback_whose_output_goes_to_the_control(self):
        self.run_cell(
            'var slider = Slider.of("drop temperature", 196, 212).onChange(v -> { System.out.println("now " + v);'
            " Display.show(Temperature.of(v, TemperatureUnit.CELSIUS)); });\nslider"
        )
        heard = self.until_idle(self.update(self.model("FloatSlider"), value=207.5))
        self.assertEqual({m["msg_type"] for m in heard}, {"comm_msg"}, "nothing strays into another cell")
        methods = [m["content"]["data"]["method"] for m in heard]
        self.assertEqual((methods[0], set(methods[1:])), ("echo_update", {"update"}), "the value, then the output")
        first, second = self.outputs()
        self.assertEqual(first, {"output_type": "stream", "name": "stdout", "text": "now 207.5\n"})
        self.assertEqual(second["output_type"], "display_data")
        self.assertIn("207.5", second["data"]["text/plain"])
        self.assertEqual(self.shown("slider.value()")["text/plain"], "207.5")
        self.until_idle(self.update(self.model("FloatSlider"), value=200))
        self.assertTrue(self.printed().startswith("now 200.0"), "the last output gives way to the new one")

    def test_a_whole_number_that_comes_for_a_real_one_is_taken(self):
        self.run_cell('var whole = Slider.of("a", 0, 10).onChange(v -> System.out.println(v));\nwhole')
        self.until_idle(self.update(self.model("FloatSlider"), value=3))
        self.assertEqual(self.printed(), "3.0\n")

    def test_every_kind_of_value_comes_back(self):
        self.run_cell("""
            var seen = new ArrayList<String>();
            ControlBox.column(
                CountSlider.of("count", 1, 9).onChange(v -> seen.add("count " + v)),
                RangeSlider.of("range", 0, 10).onChange(v -> seen.add("range " + v.from() + " " + v.to())),
                Choice.of("choice", "x", "y").onChange(v -> seen.add("choice " + v)),
                Choices.of("choices", "p", "q", "r").onChange(v -> seen.add("choices " + v)),
                CheckBox.of("box").onChange(v -> seen.add("box " + v)),
                TextField.of("text").onChange(v -> seen.add("text " + v)),
                Button.of("button").onPress(() -> seen.add("pressed")))""")
        for name, state in [
            ("IntSlider", {"value": 4}),
            ("FloatRangeSlider", {"value": [2, 3.5]}),
            ("Dropdown", {"index": 1}),
            ("SelectMultiple", {"index": [2, 0]}),
            ("Checkbox", {"value": True}),
            ("Text", {"value": "caf\u00e9"}),
        ]:
            self.until_idle(self.update(self.model(name), **state))
        self.until_idle(
            self.send("comm_msg", comm_id=self.model("Button"), data={"method": "custom", "content": {"event": "click"}}))
        self.assertEqual(
            self.shown('String.join("; ", seen)')["text/plain"],
            "count 4; range 2.0 3.5; choice y; choices [p, r]; box true; text caf\u00e9; pressed")

    def test_a_value_that_the_control_cannot_have_is_put_right_and_calls_nobody(self):
        self.run_cell('var low = Slider.of("a", 0, 10).onChange(v -> System.out.println("called"));\nlow')
        for wrong in (11, -0.1, "many", None, [1], {}):
            heard = self.until_idle(self.update(self.model("FloatSlider"), value=wrong))
            self.assertEqual([m["content"]["data"] for m in heard], [
                {"method": "update", "state": {"value": 5.0}, "buffer_paths": []}])
        self.assertEqual(self.outputs(), [])
        self.assertEqual(self.shown("low.value()")["text/plain"], "5.0")

    def test_a_page_sets_the_value_and_nothing_else_of_a_control(self):
        self.run_cell('var only = CountSlider.of("a", 0, 9);\nonly')
        model = self.model("IntSlider")
        heard = self.until_idle(self.update(model, value=5, min=-5, _model_name="Other"))
        self.assertEqual([m["content"]["data"] for m in heard if m["content"]["comm_id"] == model], [
            {"method": "echo_update", "state": {"value": 5}, "buffer_paths": []},
            {"method": "update", "state": {"_model_name": "IntSliderModel", "min": 0}, "buffer_paths": []}])

    def test_places_named_twice_are_one_choice(self):
        self.run_cell('var few = Choices.of("a", "x", "y", "z");\nfew')
        heard = self.until_idle(self.update(self.model("SelectMultiple"), index=[1, 0, 0, 1]))
        self.assertEqual(heard[0]["content"]["data"]["state"], {"index": [0, 1]})

    def test_what_java_sets_reaches_the_page_and_calls_nobody(self):
        self.run_cell('var set = Choice.of("a", "x", "y").onChange(v -> System.out.println("called"));\nset')
        self.run_cell('set.set("y")')
        self.assertEqual(self.states[self.model("Dropdown")]["index"], 1)
        self.assertEqual(self.outputs(), [])
        self.run_cell('var area = OutputArea.empty();\nControlBox.column(area, HtmlNote.ofText("a < b"))')
        self.run_cell('area.show(Temperature.of(200, TemperatureUnit.CELSIUS))')
        self.assertIn("200", json.dumps([s["outputs"] for s in self.states.values() if s["_model_name"] == "OutputModel"]))
        self.assertEqual(self.states[self.model("HTML")]["value"], "<p>a &lt; b</p>")

    def test_of_many_quick_moves_only_the_last_calls_a_slow_callback(self):
        self.run_cell(
            'var calls = new ArrayList<Double>();\nvar quick = Slider.of("a", 0, 100).onChange(v -> { calls.add(v);'
            " try { Thread.sleep(300); } catch (InterruptedException e) { } });\nquick"
        )
        slider = self.model("FloatSlider")
        began = time.time()
        sent = [self.update(slider, value=v) for v in range(1, 41)]
        echoed = []
        for one in sent:
            echoed += [m["content"]["data"]["state"]["value"] for m in self.until_idle(one)
                       if m["content"]["data"]["method"] == "echo_update"]
        self.assertEqual(echoed, list(range(1, 41)), "every move is echoed")
        calls = self.shown("calls")["text/plain"].strip("[]").split(", ")
        self.assertEqual(calls[-1], "40.0")
        self.assertLess(len(calls), 10)
        self.assertLess(time.time() - began, 8, "forty callbacks one after the other would take twelve seconds")

    def test_a_cell_between_two_moves_finds_the_first(self):
        self.run_cell('var calls2 = new ArrayList<Double>();\nvar s2 = Slider.of("a", 0, 100).onChange(calls2::add);\ns2')
        slider = self.model("FloatSlider")
        self.client.execute("Thread.sleep(500)")
        self.update(slider, value=1)
        self.client.execute("var between = s2.value();")
        self.until_idle(self.update(slider, value=2))
        self.assertEqual(self.shown('between + " " + calls2')["text/plain"], "1.0 [1.0, 2.0]")

    def test_an_error_in_a_callback_is_said_there_and_the_session_goes_on(self):
        self.run_cell('var failing = Slider.of("drop temperature", 0, 10).onChange(v -> Double.parseDouble("x" + v));\nfailing')
        self.until_idle(self.update(self.model("FloatSlider"), value=7))
        error, = self.outputs()
        self.assertEqual(error["output_type"], "error")
        self.assertEqual(error["traceback"][0], "What 'drop temperature' was to do ended early:")
        self.assertIn("x7.0", error["evalue"])
        self.until_idle(self.update(self.model("FloatSlider"), value=8))
        self.assertIn("x8.0", self.outputs()[0]["evalue"])
        self.run_cell('var exits = Button.of("end").onPress(() -> System.exit(3));\nexits')
        self.assertEqual(self.shown("1 + 1")["text/plain"], "2")

    def test_an_exit_in_a_callback_ends_the_callback_alone(self):
        self.run_cell('Button.of("end").onPress(() -> System.exit(3))')
        self.until_idle(
            self.send("comm_msg", comm_id=self.model("Button"), data={"method": "custom", "content": {"event": "click"}}))
        self.assertEqual(self.outputs()[0]["output_type"], "error")
        self.assertEqual(self.shown("1 + 1")["text/plain"], "2")

    def test_a_callback_without_end_is_stopped_by_an_interrupt(self):
        self.run_cell('Slider.of("a", 0, 10).onChange(v -> { while (true) { } })')
        sent = self.update(self.model("FloatSlider"), value=7)
        time.sleep(0.7)
        began = time.time()
        self.manager.interrupt_kernel()
        self.until_idle(sent)
        self.assertLess(time.time() - began, 5)
        self.assertEqual(self.outputs()[0]["output_type"], "error")
        self.assertEqual(self.shown("1 + 1")["text/plain"], "2")

    def test_what_is_shown_of_a_value_is_there_at_once_and_follows(self):
        data = self.shown('CountSlider.of("n", 1, 9).showing(n -> "n squared is " + n * n)')
        self.assertEqual(data["text/plain"], "N is 1, on a slider from 1 to 9.\nn squared is 1")
        self.assertIn("n squared is 1", data["text/html"])
        self.assertEqual([o["data"]["text/plain"] for o in self.outputs()], ["n squared is 1"])
        self.until_idle(self.update(self.model("IntSlider"), value=3))
        self.assertEqual([o["data"]["text/plain"] for o in self.outputs()], ["n squared is 9"])

    def test_a_client_gets_the_state_of_one_model_and_of_all(self):
        self.run_cell('var told = Slider.of("a", 0, 10);\ntold.set(3);\ntold')
        slider = self.model("FloatSlider")
        self.run_cell("told.set(4)")
        answer, = self.until_idle(self.send("comm_msg", comm_id=slider, data={"method": "request_state"}))
        self.assertEqual(answer["content"]["data"]["method"], "update")
        self.assertEqual(answer["content"]["data"]["state"], self.states[slider])
        control = uuid.uuid4().hex
        self.assertEqual(self.until_idle(self.send(
            "comm_open", comm_id=control, target_name="jupyter.widget.control", data={})), [])
        answer, = self.until_idle(self.send("comm_msg", comm_id=control, data={"method": "request_states"}))
        data = answer["content"]["data"]
        self.assertEqual((data["method"], data["buffer_paths"]), ("update_states", []))
        self.assertEqual(data["states"][slider], {
            "model_name": "FloatSliderModel", "model_module": "@jupyter-widgets/controls", "model_module_version": "2.0.0",
            "state": self.states[slider]})
        self.assertEqual(data["states"][slider]["state"]["value"], 4)
        self.client.comm_info(target_name=WIDGET)
        open_comms = self.comm_info()
        self.assertEqual(open_comms[slider], {"target_name": WIDGET})
        self.assertNotIn(control, open_comms)

    def comm_info(self):
        while True:
            reply = self.client.get_shell_msg(timeout=PATIENCE)
            if reply["msg_type"] == "comm_info_reply":
                self.assertEqual(reply["content"]["status"], "ok")
                return reply["content"]["comms"]

    def test_a_line_to_an_unknown_target_is_closed_and_an_unknown_line_left_aside(self):
        for target in ("nothing.like.it", WIDGET):
            comm = uuid.uuid4().hex
            answer, = self.until_idle(self.send("comm_open", comm_id=comm, target_name=target, data={}))
            self.assertEqual((answer["msg_type"], answer["content"]), ("comm_close", {"comm_id": comm, "data": {}}))
            self.assertEqual(self.until_idle(self.update(comm, value=1)), [])
            self.assertEqual(self.until_idle(self.send("comm_close", comm_id=comm, data={})), [])

    def test_a_client_of_protocol_one_hears_which_version_is_needed(self):
        comm = uuid.uuid4().hex
        answer, = self.until_idle(self.send("comm_open", comm_id=comm, target_name="jupyter.widget.version", data={}))
        self.assertEqual(answer["content"], {"comm_id": comm, "data": {"version": ">=3.0.0"}})
        self.assertEqual(self.until_idle(self.send("comm_msg", comm_id=comm, data={"validated": False})), [])

    def test_a_control_that_a_client_closes_is_forgotten_and_comes_back_when_shown_anew(self):
        self.run_cell('var gone = Slider.of("a", 0, 10);\ngone')
        slider = self.model("FloatSlider")
        self.assertEqual(self.until_idle(self.send("comm_close", comm_id=slider, data={})), [])
        self.client.comm_info(target_name=WIDGET)
        open_comms = self.comm_info()
        self.assertFalse(set(self.states) & set(open_comms), "what belongs to it went with it")
        self.states = {}
        self.run_cell("gone.set(2);\ngone")
        self.assertEqual(self.states[self.model("FloatSlider")]["value"], 2)

    def test_the_same_control_shown_twice_is_the_same(self):
        first = self.shown('var same = Slider.of("a", 0, 10);\nsame')[VIEW]
        self.assertEqual(self.shown("same")[VIEW], first)
        self.assertEqual(self.states[self.model("FloatSlider")]["value"], 5)

    def test_the_oldest_controls_give_way_in_words(self):
        self.run_cell('for (int i = 0; i < 200; i++) Display.show(CheckBox.of("tick " + i));')
        heard = self.run_cell('CheckBox.of("one more")')
        closed = [m for m in heard if m["msg_type"] == "comm_close"]
        self.assertTrue(closed)
        said = "".join(m["content"]["text"] for m in heard if m["msg_type"] == "stream")
        self.assertRegex(said, r"^More than 200 controls are alive on these pages, so the oldest no longer answers \(.*\)\. "
                               r"Run its cell again to bring it back\.\n")

    def test_the_choice_made_in_the_explorer_is_a_logbook_in_the_next_cell(self):
        heard = self.run_cell(
            'var logbook = Logbook.open("datasets/harbour").only("H001", "H003", "H012");\nvar explorer = Explorer.of(logbook);\nexplorer')
        result = [m for m in heard if m["msg_type"] == "execute_result"][0]["content"]["data"]
        self.assertNotIn(VIEW, result, "the explorer itself is HTML")
        beside, = [m["content"]["data"] for m in heard if VIEW in m["content"].get("data", {})]
        self.assertEqual(self.states[beside[VIEW]["model_id"]]["_model_name"], "VBoxModel")
        field = self.model("Text")
        place, = self.states[field]["_dom_classes"]
        self.assertIn(f'data-back="{place}"', result["text/html"])
        self.assertEqual(json.loads(self.states[field]["value"]), {"told": 0, "chosen": []})
        reply = self.client.execute_interactive("explorer.chosen()", timeout=PATIENCE, output_hook=lambda m: None)
        self.assertIn("No choice has come back from the explorer", reply["content"]["evalue"])
        self.until_idle(self.update(field, value=json.dumps({"told": 1, "chosen": ["H012", "no such batch", "H003"]})))
        self.assertIn("2 batches are chosen below", self.states[self.model("HTML")]["value"])
        self.assertEqual(
            self.shown("explorer.chosen().batches().stream().map(b -> b.name()).toList()")["text/plain"], "[H003, H012]")
        self.until_idle(self.update(field, value=json.dumps({"told": 2, "chosen": []})))
        reply = self.client.execute_interactive("explorer.chosen()", timeout=PATIENCE, output_hook=lambda m: None)
        self.assertIn("No batch is chosen in the explorer.", reply["content"]["evalue"])
        self.until_idle(self.send("comm_close", comm_id=field, data={}))
        reply = self.client.execute_interactive("explorer.chosen()", timeout=PATIENCE, output_hook=lambda m: None)
        self.assertIn("cannot bring a choice back", reply["content"]["evalue"])
        self.assertIn('logbook.only("H001")', reply["content"]["evalue"])


class Restart(unittest.TestCase):
    def test_a_restart_leaves_no_line_open(self):
        manager, client = start_new_kernel(kernel_name="parchment", startup_timeout=PATIENCE)
        try:
            client.execute_interactive('Slider.of("a", 0, 10)', timeout=PATIENCE, output_hook=lambda m: None)
            self.assertTrue(self.comms(client))
            manager.restart_kernel(now=True)
            client.wait_for_ready(timeout=PATIENCE)
            self.assertEqual(self.comms(client), {})
        finally:
            client.stop_channels()
            manager.shutdown_kernel()

    @staticmethod
    def comms(client):
        while True:
            try:
                client.get_shell_msg(timeout=0)
            except queue.Empty:
                break
        client.comm_info()
        while True:
            reply = client.get_shell_msg(timeout=PATIENCE)
            if reply["msg_type"] == "comm_info_reply":
                return reply["content"]["comms"]


if __name__ == "__main__":
    unittest.main()
