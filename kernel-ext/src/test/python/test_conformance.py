# SPDX-License-Identifier: GPL-3.0-or-later
"""The general suite for Jupyter kernels (jupyter_kernel_test), against the installed kernel."""
import unittest

import jupyter_kernel_test


class ParchmentConformance(jupyter_kernel_test.KernelTests):
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
    invalid_code_samples = ["int x = = 3;", 'String s = "open']
    code_generate_error = "1 / 0"
    code_execute_result = [
        {"code": "6 * 7", "result": "42"},
        {"code": "var t = 5\nt + 1", "result": "6"},
        {"code": "6 * 7", "result": "42"},
        {"code": "6 * 7", "result": "42"},
    ]
    code_display_data = [
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
    # code_page_something stays empty: the kernel has no pager; what is shown goes to the page.


if __name__ == "__main__":
    unittest.main()
