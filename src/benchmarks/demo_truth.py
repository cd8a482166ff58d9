#!/usr/bin/env python3
"""Prints where sweetness truly is best in the demo logbooks, as read on today's probe: the top of a least-squares square over the batches'
true scores, without any noise, for each lot. A line over the batches of today's probe turns the beans' own temperature at the drop into a reading.

Run in the project's folder: python3 src/benchmarks/demo_truth.py (needs numpy)."""

import base64
import csv
import json

import numpy

for name, today in (("harbour", "2024-10-07"), ("hillside", "2025-01-01")):
    with open(f"datasets/{name}-truth.json", encoding="utf-8") as file:
        sealed = json.load(file)["sealed"]
    batches = json.loads(b"".join(base64.b64decode(part) for part in sealed))["batches"]
    with open(f"datasets/{name}/batches.csv", encoding="utf-8", newline="") as file:
        days = {row["batch"]: row["roasted at"][:10] for row in csv.DictReader(file)}
    late = [batch for batch in batches if days[batch["batch"]] >= today]
    slope, level = numpy.polyfit(
        [batch["drop reading [°C]"] for batch in late], [batch["end temperature [°C]"] for batch in late], 1)
    for lot in sorted({batch["lot"] for batch in batches}):
        own = [batch for batch in batches if batch["lot"] == lot]
        readings = numpy.array([(batch["end temperature [°C]"] - level) / slope for batch in own])
        square, line, _ = numpy.polyfit(readings - 200, [batch["true sweetness"] for batch in own], 2)
        best = 200 - line / 2 / square
        print(f"{name}, {lot}: {len(own)} batches, best at {best:.1f} °C ({best * 1.8 + 32:.1f} °F)")
