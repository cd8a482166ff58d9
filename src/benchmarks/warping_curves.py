#!/usr/bin/env python3
"""Writes invented curves for the warping benchmark: 800 points each, as 8-byte numbers, lowest byte first. Fixed seed.

Rising curves with an early dip, noise and a bent clock. The draws that no curve uses are kept, so that the first hundred are the
curves of the timings taken earlier and elsewhere. Use: warping_curves.py COUNT FILE
"""
import sys

import numpy as np

draw = np.random.default_rng(20240501)
t = np.arange(800.0)
even = np.linspace(0, 1, 800)
curves = []
for _ in range(int(sys.argv[1])):
    rate = 0.0025 * np.exp(draw.normal(0, 0.1))
    top = 230 + draw.normal(0, 8)
    dip = 90 * np.exp(-t / (45 + draw.normal(0, 4)))
    curve = top - (top - 25) * np.exp(-rate * t) + dip * np.exp(-rate * t) + draw.normal(0, 0.3, 800)
    draw.normal(0, 0.5, 800)
    draw.normal(0, 1)
    draw.uniform(0.5, 1)
    curves.append(np.interp(even ** np.exp(draw.normal(0, 0.15)), even, curve))
np.round(np.array(curves), 6).astype("<f8").tofile(sys.argv[2])
