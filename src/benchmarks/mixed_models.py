#!/usr/bin/env python3
"""Times mixed models beside lme4 with one and two threads of its linear algebra, in turn; writes docs/measurements/mixed-models.md.

Fits only: start and reading of files are not counted, each program warms up first. Use:

    ./parchment test            (once, so that the classes are built)
    python3 src/benchmarks/mixed_models.py --classpath "kernel-ext/target/lib/*" [--rounds 3] [--page docs/measurements/mixed-models.md]

Needs R with lme4.
"""
import argparse
import gzip
import os
import statistics
import subprocess
import tempfile

# Job, words, warm-up fits of ours (R's code does not get faster by running), timed fits.
JOBS = (
    ("panel", "12,000 scores, 3 covariates, (1|taster) + (1|session) + (1|batch)", 3, 5),
    ("interaction", "the same + (1|taster:session), whose true variance is 0", 2, 1),
    ("insteval-two", "InstEval, 73,421 ratings, (1|s) + (1|d)", 2, 1),
    ("insteval", "InstEval, service + (1|s) + (1|d) + (1|dept) + (1|dept:service)", 2, 1),
)


def lines(command, threads=None):
    env = dict(os.environ)
    if threads:
        env["OPENBLAS_NUM_THREADS"] = str(threads)
    text = subprocess.run(command, env=env, check=True, capture_output=True, text=True).stdout
    rows = [line.split(",") for line in text.split()]
    return [float(row[1]) for row in rows], [float(row[2]) for row in rows]


def shown(seconds):
    return f"{statistics.median(seconds):.3g} ({min(seconds):.3g}-{max(seconds):.3g})"


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--classpath", required=True)
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--java", default="java")
    parser.add_argument("--page", default="docs/measurements/mixed-models.md")
    given = parser.parse_args()
    here = os.path.dirname(os.path.abspath(__file__))
    script = os.path.join(here, "mixed_models.R")
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(["javac", "-cp", given.classpath, "-d", folder, os.path.join(here, "MixedModelSpeed.java")], check=True)
        java = [given.java, "-cp", folder + os.pathsep + given.classpath, "MixedModelSpeed"]
        panel, ratings = os.path.join(folder, "panel.csv"), os.path.join(folder, "insteval.csv")
        packed = os.path.join(here, "..", "test", "resources", "reference", "panel", "panel.csv.gz")
        with gzip.open(packed, "rb") as source, open(panel, "wb") as target:
            target.write(source.read())
        subprocess.run(["Rscript", script, "export", ratings], check=True)
        table = []
        for job, words, warm, runs in JOBS:
            file = ratings if job.startswith("insteval") else panel
            took = {"ours": [], 1: [], 2: []}
            numbers = {"ours": [], 1: [], 2: []}
            for _ in range(given.rounds):
                for who in took:
                    r_warm = min(warm, 1) if runs > 1 else 0
                    seconds, found = (
                        lines(java + [job, file, str(warm), str(runs)])
                        if who == "ours"
                        else lines(["Rscript", script, job, file, str(r_warm), str(runs)], who)
                    )
                    took[who] += seconds
                    numbers[who] += found
            ratio = min(statistics.median(took[1]), statistics.median(took[2])) / statistics.median(took["ours"])
            gap = numbers["ours"][0] - min(numbers[1][0], numbers[2][0])
            table.append(f"| {words} | {shown(took['ours'])} | {shown(took[1])} | {shown(took[2])} | {ratio:.1f} | {gap:+.1e} |")
            print(table[-1], flush=True)
        screen, _ = lines(java + ["screen", "none", "1", "3"])
        permutation, _ = lines(["Rscript", script, "permutation", panel, "1", "5"], 1)
    load = os.getloadavg()[0]
    page = f"""# Mixed models beside lme4

Seconds for a fit, median (least-most), of {given.rounds} rounds in which the programs ran in turn; ours warmed up first (two or three fits), start and reading of files not
counted. lme4 1.1-31 with its default optimiser in R 4.2.2, OpenBLAS 0.3.21 with one and with two threads; ours runs on one thread. Ratio: the
faster lme4 beside ours. Criterion: ours minus lme4's (REML). Virtual machine with {os.cpu_count()} processors, Debian 12, load {load:.1f} when the run ended.

```
./parchment test            (builds)
python3 src/benchmarks/mixed_models.py --classpath "kernel-ext/target/lib/*" --rounds {given.rounds}
```

| fit | ours | lme4, 1 thread | lme4, 2 threads | ratio | criterion |
| --- | --- | --- | --- | --- | --- |
""" + "\n".join(table) + f"""

## A screen

40 features, 6 attributes, 300 batches on 75 days with 5 cups each, 1,000 shuffles of whole feature rows within days, the largest statistic of each
shuffle kept; the six fits and the products that replace refits are counted: {shown(screen)} s on one thread.

R's fastest way for 1,000 permutations of a single least-squares coefficient (2,000 rows, 7 columns; one QR, one product, one BLAS thread):
{shown(permutation)} s; the screen does 240 coefficients of mixed models.
"""
    with open(given.page, "w", encoding="utf-8") as out:
        out.write(page)


if __name__ == "__main__":
    main()
