#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs a notebook's cells again and again in one kernel and watches what it keeps: memory, classes, threads, open files.

    mkdir -p /tmp/k && ./parchment install --prefix /tmp/k
    JUPYTER_PATH=/tmp/k/share/jupyter PARCHMENT_LOGBOOK=datasets/harbour \\
        /usr/bin/python3 kernel-ext/src/benchmarks/many_cells.py --cells 1000

Twenty cells of the kinds a roaster writes (tables, charts, an answer, variables defined anew, a method, a mistake) are run in turn.
Every hundred cells the Java machine collects its garbage (jcmd GC.run) and the figures are read off it. The first line is the idle
kernel, the second the kernel with the demo logbook open and nothing else done.
"""
import argparse
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_client.manager import KernelManager

CELLS = [
    "var logbook = Logbook.open();\nlogbook",
    "logbook.problems()",
    "CalendarStrip.of(logbook)",
    "var batch = logbook.lastWithCurve();",
    "BatchChart.of(batch)",
    "Phases.of(batch)",
    "PaceChart.of(logbook).withHighlight(batch.name())",
    "OverlayChart.of(logbook, Clock.SINCE_CHARGE)",
    "PhaseTable.of(logbook)",
    "BatchTable.of(logbook, dropTemperature(), dropTime(), developmentTime())",
    'var answer = Evidence.of("sweetness", dropTemperature(), logbook);',
    "answer",
    "int number = 40 + 2",
    'String words = "a" + number;\nwords',
    "double half(double x) {\n    return x / 2;\n}\nhalf(number)",
    "record Pair(int a, int b) {}\nnew Pair(1, 2)",
    "for (int i = 0; i < 100; i++) System.out.println(i);",
    "logbook.bachtes()",
    "1 / 0",
    "IntStream.range(0, 1000).boxed().toList()",
]
FAILING = {"logbook.bachtes()", "1 / 0"}
PATIENCE = 300


def run(client, code):
    reply = client.execute_interactive(code, timeout=PATIENCE, output_hook=lambda message: None)["content"]["status"]
    wanted = "error" if code in FAILING else "ok"
    if reply != wanted:
        sys.exit(f"A cell ended with {reply}, not {wanted}: {code}")


def jcmd(tool, pid, *command):
    return subprocess.run([tool, str(pid), *command], capture_output=True, text=True, check=True).stdout


def figures(tool, pid):
    """Heap after a collection, resident memory, loaded classes, threads, open files."""
    jcmd(tool, pid, "GC.run")
    time.sleep(0.3)
    heap = sum(int(k) for k in re.findall(r"^ *(?:def new generation|tenured generation|garbage-first heap|\w+ generation) .*?used (\d+)K",
                                          jcmd(tool, pid, "GC.heap_info"), re.MULTILINE))
    status = Path(f"/proc/{pid}/status").read_text()
    resident = int(re.search(r"VmRSS:\s+(\d+)", status)[1])
    threads = int(re.search(r"Threads:\s+(\d+)", status)[1])
    classes = int(re.search(r"(\d+)", jcmd(tool, pid, "VM.class_hierarchy").count("\n").__str__())[1])
    files = len(list(Path(f"/proc/{pid}/fd").iterdir()))
    return heap / 1024, resident / 1024, classes, threads, files


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--cells", type=int, default=1000)
    options = parser.parse_args()
    java = KernelSpecManager().get_kernel_spec("parchment").argv[0]
    tool = shutil.which("jcmd", path=str(Path(java).parent)) or shutil.which("jcmd")
    manager = KernelManager(kernel_name="parchment")
    manager.start_kernel()
    client = manager.client()
    client.start_channels()
    try:
        client.wait_for_ready(timeout=PATIENCE)
        pid = manager.provisioner.pid

        def line(what):
            heap, resident, classes, threads, files = figures(tool, pid)
            print(f"| {what} | {heap:.1f} | {resident:.0f} | {classes} | {threads} | {files} |", flush=True)

        print("| after | heap in use, MB | resident, MB | classes | threads | open files |")
        print("| --- | ---: | ---: | ---: | ---: | ---: |")
        run(client, "1 + 1")
        time.sleep(3)  # What the kernel prepares in the background is done by then.
        line("a first cell")
        run(client, CELLS[0])
        line("the demo logbook opened")
        begun = time.perf_counter()
        for count in range(1, options.cells + 1):
            run(client, CELLS[(count - 1) % len(CELLS)])
            if count % 100 == 0 or count == len(CELLS):
                line(f"{count} cells")
        print(f"\n{options.cells} cells in {time.perf_counter() - begun:.0f} s.")
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)


if __name__ == "__main__":
    main()
