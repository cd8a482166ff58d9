# SPDX-License-Identifier: GPL-3.0-or-later
"""A random forest by scikit-learn on left-out months of the air quality data; prints case, quantity, value.

Usage: python3 forest.py FOLDER-OF-REFERENCE-DATA > forest.csv
"""
import csv
import sys

import numpy as np
from sklearn.ensemble import RandomForestRegressor

with open(sys.argv[1] + "/r-datasets/airquality.csv") as file:
    rows = [row for row in csv.DictReader(file) if "NA" not in row.values()]
x = np.array([[float(row[name]) for name in ("Solar.R", "Wind", "Temp")] for row in rows])
y = np.array([float(row["Ozone"]) for row in rows])
month = np.array([row["Month"] for row in rows])
print("case,quantity,value")
for name, model in (("mean", None), ("forest", RandomForestRegressor(2000, max_features=1, min_samples_split=5, random_state=1))):
    squares = 0.0
    for left in np.unique(month):
        train = month != left
        predicted = y[train].mean() if model is None else model.fit(x[train], y[train]).predict(x[~train])
        squares += ((y[~train] - predicted) ** 2).sum()
    print(f"air quality,error of {name} on left-out months,{(squares / len(y)) ** 0.5:.15g}")
    if model is not None:
        for feature, share in zip(("solar", "wind", "temperature"), model.fit(x, y).feature_importances_):
            print(f"air quality,importance of {feature},{share:.15g}")
