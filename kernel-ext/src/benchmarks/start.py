#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Measures how long a kernel lets its user wait, beside ipykernel with pandas and matplotlib, in one run.

    mkdir -p /tmp/k && ./parchment install --prefix /tmp/k && JUPYTER_PATH=/tmp/k/share/jupyter /usr/bin/python3 kernel-ext/src/benchmarks/start.py

For each kernel, several times in turn: the process is started and a first trivial cell is run; the process is started anew and a
first cell draws a chart from nothing (for Python that includes importing pandas and matplotlib); the process is started anew, and
after two cells to warm up, the same trivial cell is run again and again. Medians, with the smallest and largest in brackets.
"""
import argparse
import os
import platform
import statistics
import subprocess
import sys
import time

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_client.manager import KernelManager

PATIENCE = 120
os.environ["PYDEVD_DISABLE_FILE_VALIDATION"] = "1"  # Else ipykernel prints a warning at every start.
KERNELS = {
    "Parchment": {
        "name": "parchment",
        "trivial": "1 + 1",
        "chart": """var seconds = new double[601];
var celsius = new double[601];
for (int i = 0; i <= 600; i++) {
    seconds[i] = i;
    celsius[i] = 90 + 110 * (1 - Math.exp(-i / 250.0));
}
Plot.of("Temperatures", Axis.clock("time since charge"), Axis.number("temperature", "°C"))
    .with(Line.of("bean temperature", seconds, celsius))""",
        "logbook": """var logbook = Logbook.open();
BatchChart.of(logbook.lastWithCurve())""",
    },
    "ipykernel, pandas, matplotlib": {
        "name": "python3",
        "trivial": "1 + 1",
        "chart": """%matplotlib inline
import numpy as np, pandas as pd
frame = pd.DataFrame({"seconds": np.arange(601.0)})
frame["celsius"] = 90 + 110 * (1 - np.exp(-frame.seconds / 250))
frame.plot(x="seconds", y="celsius");""",
    },
}


def start(name):
    manager = KernelManager(kernel_name=name)
    begun = time.perf_counter()
    manager.start_kernel()
    client = manager.client()
    client.start_channels()
    return manager, client, begun


def run(client, code):
    """Returns the outputs' media types; fails if the cell does."""
    types = []

    def keep(message):
        if message["msg_type"] in ("execute_result", "display_data"):
            types.extend(message["content"]["data"])

    reply = client.execute_interactive(code, timeout=PATIENCE, output_hook=keep)
    if reply["content"]["status"] != "ok":
        sys.exit(f"A cell failed: {reply['content']}")
    return types


def end(manager, client):
    client.stop_channels()
    manager.shutdown_kernel(now=True)


def from_start_to(kernel, code, picture):
    manager, client, begun = start(kernel["name"])
    try:
        client.wait_for_ready(timeout=PATIENCE)
        types = run(client, code)
        took = time.perf_counter() - begun
        if picture and not any(t.startswith("image/") for t in types):
            sys.exit(f"No picture came: {types}")
        return took
    finally:
        end(manager, client)


def repeats(kernel, count):
    manager, client, _ = start(kernel["name"])
    try:
        client.wait_for_ready(timeout=PATIENCE)
        run(client, kernel["trivial"])
        run(client, kernel["trivial"])
        times = []
        for _ in range(count):
            begun = time.perf_counter()
            run(client, kernel["trivial"])
            times.append(time.perf_counter() - begun)
        with open(f"/proc/{manager.provisioner.pid}/status") as status:
            memory = next(int(l.split()[1]) / 1024 for l in status if l.startswith("VmRSS"))
        return statistics.median(times), times[-20:], memory
    finally:
        end(manager, client)


def cell(values, digits=2):
    return f"{statistics.median(values):.{digits}f} ({min(values):.{digits}f} to {max(values):.{digits}f})"


def processor():
    with open("/proc/cpuinfo") as info:
        return next((l.split(":", 1)[1].strip() for l in info if l.startswith("model name")), platform.machine())


def java_version():
    java = KernelSpecManager().get_kernel_spec("parchment").argv[0]
    said = subprocess.run([java, "-version"], capture_output=True, text=True).stderr
    return "Java " + said.split('"')[1]


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--runs", type=int, default=9, help="starts of each kernel for each figure (at least 7)")
    parser.add_argument("--repeats", type=int, default=200, help="cells in the repeated run")
    options = parser.parse_args()
    measured = {title: {"first cell": [], "first chart": [], "logbook": []} for title in KERNELS}
    latency = {title: [] for title in KERNELS}
    for round_ in range(options.runs + 1):
        for title, kernel in KERNELS.items():
            figures = {
                "first cell": from_start_to(kernel, kernel["trivial"], False),
                "first chart": from_start_to(kernel, kernel["chart"], True),
            }
            if "logbook" in kernel:
                figures["logbook"] = from_start_to(kernel, kernel["logbook"], True)
            if round_ > 0:  # The first round only brings the files into memory.
                for what, took in figures.items():
                    measured[title][what].append(took)
    for title, kernel in KERNELS.items():
        latency[title] = repeats(kernel, options.repeats)

    print(f"Machine: {processor()}, {len(os.sched_getaffinity(0))} processors; {platform.system()}; "
          f"Python {platform.python_version()}; {java_version()}.")
    print(f"{options.runs} starts each, in turn; {options.repeats} repeated cells.\n")
    print("| from process start to the reply, seconds | " + " | ".join(KERNELS) + " |")
    print("| --- |" + " ---: |" * len(KERNELS))
    for what, words in (("first cell", "first cell"), ("first chart", "first chart"),
                        ("logbook", "demo logbook read, first batch drawn")):
        row = [cell(measured[t][what]) if measured[t][what] else "" for t in KERNELS]
        print(f"| {words} | " + " | ".join(row) + " |")
    print("| an ordinary cell once warm, milliseconds | "
          + " | ".join(f"{latency[t][0] * 1000:.0f} (last 20: {statistics.median(latency[t][1]) * 1000:.0f})" for t in KERNELS) + " |")
    print("| memory after it, MB | " + " | ".join(f"{latency[t][2]:.0f}" for t in KERNELS) + " |")


if __name__ == "__main__":
    main()
