# SPDX-License-Identifier: GPL-3.0-or-later
"""Gaussian processes by scikit-learn, one length per feature, all by maximum likelihood; prints case, quantity, value.

Usage: python3 gaussian_process.py FOLDER-OF-REFERENCE-DATA > gaussian-process.csv
"""
import csv
import sys
import warnings

import numpy as np
from sklearn.gaussian_process import GaussianProcessRegressor
from sklearn.gaussian_process.kernels import RBF, ConstantKernel, Matern, WhiteKernel

warnings.filterwarnings("ignore")
with open(sys.argv[1] + "/r-datasets/airquality.csv") as file:
    rows = [row for row in csv.DictReader(file) if row["Ozone"] != "NA"]
x = np.array([[float(row["Temp"]), float(row["Wind"])] for row in rows])
y = np.array([float(row["Ozone"]) for row in rows])
points = np.array([[60, 12], [80, 8], [90, 7], [75, 10], [95, 6], [85, 15]], float)
print("case,quantity,value")
for name, shape in (
    ("squared exponential", RBF([10, 5], (1e-2, 1e4))),
    ("matern five halves", Matern([10, 5], (1e-2, 1e4), nu=2.5)),
    ("matern three halves", Matern([10, 5], (1e-2, 1e4), nu=1.5)),
):
    kernel = ConstantKernel(1000, (1e-1, 1e6)) * shape + WhiteKernel(300, (1e-1, 1e5))
    process = GaussianProcessRegressor(kernel, alpha=0, n_restarts_optimizer=8, random_state=1).fit(x, y - y.mean())
    best = process.kernel_
    print(f"{name},log likelihood,{process.log_marginal_likelihood_value_:.15g}")
    print(f"{name},surface,{best.k1.k1.constant_value ** 0.5:.15g}")
    print(f"{name},length 1,{best.k1.k2.length_scale[0]:.15g}")
    print(f"{name},length 2,{best.k1.k2.length_scale[1]:.15g}")
    print(f"{name},noise,{best.k2.noise_level ** 0.5:.15g}")
    mean, deviation = process.predict(points, return_std=True)
    for point, height, error in zip(points, mean + y.mean(), deviation):
        at = " ".join(f"{v:g}" for v in point)
        print(f"{name},height {at},{height:.15g}")
        # predict gives the deviation of a new noisy value; the surface's own leaves the noise out.
        print(f"{name},error {at},{(error ** 2 - best.k2.noise_level) ** 0.5:.15g}")
