"""Values of another implementation for core-polynomial.test.ts and core-noise.test.ts (numpy, scipy).

Run it and compare: the tests hold these numbers, they do not run this script.
"""
import numpy as np
from scipy.signal import savgol_coeffs

x = np.array([0, 0.7, 1.1, 2.0, 2.4, 3.5, 4.1, 5.0, 5.2, 6.3])
y = np.array([3.1, 2.9, 3.4, 2.2, 1.7, 0.4, 0.9, 1.3, 0.8, -0.6])
for degree in (1, 3, 4):
    print("polynomial about 2.5, degree", degree, np.polyfit(x - 2.5, y, degree)[::-1].tolist())
for width, degree, derivative in ((7, 3, 1), (9, 4, 2), (11, 5, 1)):
    weights = savgol_coeffs(width, degree, deriv=derivative, use="dot")
    print("even grid", width, degree, derivative, weights.tolist())

t = np.array([0, 1, 2, 4, 7.0])
w = np.array([1, -2, 0.5, 3, -1])
lag = np.abs(t[:, None] - t)
covariance = 0.3 * np.eye(5) + 0.7 * np.exp(-lag / 2) + 0.2 * np.exp(-lag / 50)
print("variance", w @ covariance @ w)
