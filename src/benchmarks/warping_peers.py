#!/usr/bin/env python3
"""Times dynamic time warping compiled by numba, and prints "job,median in ms,answer" for each. Use: warping_peers.py FILE"""
import statistics
import sys
import time

import numba
import numpy as np

curves = np.fromfile(sys.argv[1]).reshape(-1, 800)
a, b = curves[0], curves[1]


@numba.njit
def distance(a, b, radius):
    n, m = len(a), len(b)
    before, row = np.full(m + 1, np.inf), np.empty(m + 1)
    before[0] = 0.0
    for i in range(1, n + 1):
        row[:] = np.inf
        for j in range(max(1, i - radius), min(m, i + radius) + 1):
            least = before[j - 1]
            if before[j] < least:
                least = before[j]
            if row[j - 1] < least:
                least = row[j - 1]
            row[j] = abs(a[i - 1] - b[j - 1]) + least
        before, row = row, before
    return before[m]


@numba.njit
def with_path(a, b):
    n, m = len(a), len(b)
    sums = np.full((n + 1, m + 1), np.inf)
    sums[0, 0] = 0.0
    for i in range(1, n + 1):
        for j in range(1, m + 1):
            sums[i, j] = abs(a[i - 1] - b[j - 1]) + min(sums[i - 1, j - 1], min(sums[i - 1, j], sums[i, j - 1]))
    i, j = n, m
    path = [(i, j)]
    while i > 1 or j > 1:
        slanted, over, left = sums[i - 1, j - 1], sums[i - 1, j], sums[i, j - 1]
        if slanted <= over and slanted <= left:
            i -= 1
            j -= 1
        elif over <= left:
            i -= 1
        else:
            j -= 1
        path.append((i, j))
    return sums[n, m], path


def timed(job, call):
    for _ in range(30):
        answer = call()
    times = []
    for _ in range(101):
        start = time.perf_counter()
        call()
        times.append(1e3 * (time.perf_counter() - start))
    print(f"{job},{statistics.median(times):.6f},{answer:.6f}")


timed("full", lambda: distance(a, b, 800))
timed("path", lambda: with_path(a, b)[0])
timed("band", lambda: distance(a, b, 80))
