#!/usr/bin/env python3
"""Times opening a logbook, the features of all batches and the first chart, beside the raw reading of the same files in pandas.

Both run as whole processes, in turn, several times; the median is what to quote and the ratio is what to compare. Peak memory is what
the system says of each finished process. Use:

    ./parchment test            (once, so that the classes are built)
    python3 src/benchmarks/open_logbook.py --classpath "kernel-ext/target/lib/*" [--logbook datasets/harbour] [--runs 9]

The pandas side reads every CSV file of the folder into a data frame and does nothing else; it needs pandas.
"""
import argparse
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time

PANDAS = """
import glob, sys, pandas
frames = [pandas.read_csv(f) for f in sorted(glob.glob(sys.argv[1] + '/*.csv'))]
curves = [pandas.read_csv(f) for f in sorted(glob.glob(sys.argv[1] + '/curves/*.csv'))]
print(len(curves), sum(len(c) for c in curves))
"""


def run(command):
    """Runs a command to its end; returns wall seconds, peak memory in MB and what it printed."""
    with tempfile.TemporaryFile() as out:
        begin = time.perf_counter()
        child = subprocess.Popen(command, stdout=out, stderr=subprocess.DEVNULL)
        _, status, usage = os.wait4(child.pid, 0)
        seconds = time.perf_counter() - begin
        child.returncode = os.waitstatus_to_exitcode(status)
        out.seek(0)
        if child.returncode:
            sys.exit("failed: " + " ".join(command))
        return seconds, usage.ru_maxrss / 1024, out.read().decode().strip()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--classpath", required=True)
    parser.add_argument("--logbook", default="datasets/harbour")
    parser.add_argument("--runs", type=int, default=9)
    parser.add_argument("--python", default=sys.executable)
    parser.add_argument("--java", default="java")
    given = parser.parse_args()
    here = os.path.dirname(os.path.abspath(__file__))
    with tempfile.TemporaryDirectory() as classes:
        subprocess.run(["javac", "-cp", given.classpath, "-d", classes, os.path.join(here, "OpenAndChart.java")], check=True)
        java = [given.java, "-Djava.awt.headless=true", "-cp", classes + os.pathsep + given.classpath, "OpenAndChart", given.logbook]
        pandas = [given.python, "-c", PANDAS, given.logbook]
        run(java), run(pandas)
        ours, theirs = [], []
        for _ in range(given.runs):
            ours.append(run(java))
            theirs.append(run(pandas))
    parts = [json.loads(o[2]) for o in ours]
    print("runs of each, in turn:", given.runs, "after one that is not counted")
    print("ours:", parts[0]["batches"], "batches,", parts[0]["features"], "features; pandas:", theirs[0][2].split()[0], "curve files,",
          theirs[0][2].split()[1], "rows")
    print()
    print("| whole process | median s | min-max s | peak memory, median MB |")
    print("| --- | --- | --- | --- |")
    for name, rows in (("open, all features, first chart", ours), ("pandas, reading only", theirs)):
        seconds = sorted(r[0] for r in rows)
        print(f"| {name} | {statistics.median(seconds):.2f} | {seconds[0]:.2f}-{seconds[-1]:.2f} "
              f"| {statistics.median(r[1] for r in rows):.0f} |")
    ratios = sorted(o[0] / t[0] for o, t in zip(ours, theirs))
    print(f"\nRatio of times, pair by pair: median {statistics.median(ratios):.2f}, {ratios[0]:.2f} to {ratios[-1]:.2f}.")
    print("Within ours, median seconds: start and open %.2f, features %.2f, chart %.2f."
          % tuple(statistics.median(p[k] for p in parts) for k in ("open", "features_s", "chart")))


if __name__ == "__main__":
    main()
