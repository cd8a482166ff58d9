# SPDX-License-Identifier: GPL-3.0-or-later
"""The general suite for Jupyter kernels (jupyter_kernel_test), against the installed kernel."""
import unittest

import jupyter_kernel_test


class ParchmentConformance(jupyter_kernel_test.KernelTests):
    """Fills in every sample of the suite that a Java kernel can have, and counts what ran."""

    passed = []
    failed = []
    skipped = []

    kernel_name = "parchment"
    language_name = "java"
    file_extension = ".java"

    code_hello_world = 'System.out.println("hello, world")'
    code_stderr = 'System.err.println("aside")'
    completion_samples = [
        {"text": "Math.hyp", "matches": {"hypot("}},
        {"text": "TemperatureUnit.CEL", "matches": {"CELSIUS"}},
    ]
    complete_code_samples = ["1 + 1", "int x = 3;", "for (int i = 0; i < 3; i++) { }", "// a comment"]
    incomplete_code_samples = ["for (int i = 0; i < 3; i++) {", "foo(1,", "class A {"]
    invalid_code_samples = ["int x = = 3;", 'String s = "open', "int int", "!ls"]
    code_generate_error = "1 / 0"
    code_execute_result = [
        {"code": "Table.titled(\"Lots\").withText(\"lot\", List.of(\"Moth Field\"), l -> l)", "mime": "text/html"},
        {
            "code": "record Ring(int r) implements Showable {\n"
            '    public Optional<String> svg() { return Optional.of("<svg/>"); }\n}\nnew Ring(1)',
            "mime": "image/svg+xml",
        },
        {"code": "6 * 7", "result": "42"},
        {"code": "var t = 5\nt + 1", "result": "6"},
        {"code": "6 * 7", "result": "42"},
        {"code": "6 * 7", "result": "42"},
    ]
    code_display_data = [
        {"code": "Display.show(Table.titled(\"Batch 112\"))", "mime": "text/html"},
        {"code": 'Display.show("shown")', "mime": "text/plain"},
        {
            "code": "record Dot(int r) implements Showable {\n"
            '    public Optional<String> svg() { return Optional.of("<svg/>"); }\n}\n'
            "Display.show(new Dot(1));",
            "mime": "image/svg+xml",
        },
    ]
    code_history_pattern = "6 * ?"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "Math.max"
    code_clear_output = "Display.clear()"

    def test_pager(self):
        self.skipTest(
            "no line of Java asks for a pager (in IPython it is ?name); documentation comes by inspect, beside the cursor"
        )

    def run(self, result=None):
        result = result if result is not None else self.defaultTestResult()
        bad, left = len(result.failures) + len(result.errors), len(result.skipped)
        super().run(result)
        if len(result.failures) + len(result.errors) > bad:
            self.failed.append(self._testMethodName)
        elif len(result.skipped) > left:
            reasons = {reason for _, reason in result.skipped[left:]}
            self.skipped.append(f"{self._testMethodName}: {'; '.join(sorted(reasons)) or 'no reason given'}")
        else:
            self.passed.append(self._testMethodName)
        return result

    @classmethod
    def tearDownClass(cls):
        super().tearDownClass()
        ran = len(cls.passed) + len(cls.failed)
        print(f"jupyter_kernel_test: {len(cls.passed)} of {ran} pass, {len(cls.skipped)} skipped", flush=True)
        for name in cls.skipped:
            print(f"  skipped {name}", flush=True)


if __name__ == "__main__":
    unittest.main()
