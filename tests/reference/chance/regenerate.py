"""Rows of ../chance.toml: quantiles of F = T/(K*d) from the distributions of SciPy.

    python3 regenerate.py     (needs scipy)

K is lognormal with median 0.2, cut at three standard deviations of its logarithm (the mass beyond is
put on the ends, which does not move the quantiles from 5 to 95 %), or triangular.
"""

import math

from scipy import stats

TORQUE, DIAMETER = 60.0, 0.0127
SOLID = TORQUE / DIAMETER
PROBABILITIES = [0.05, 0.25, 0.5, 0.75, 0.95]

lognormal = stats.lognorm(s=0.15, scale=0.2)
print("lognormal", [SOLID / lognormal.ppf(1 - p) for p in PROBABILITIES])

low, mode, high = 0.17, 0.20, 0.35
triangle = stats.triang(c=(mode - low) / (high - low), loc=low, scale=high - low)
print("triangle", [SOLID / triangle.ppf(1 - p) for p in PROBABILITIES])

# Slip utilisation of a joint whose clamp does not scatter: load / friction, both lognormal.
ratio = stats.lognorm(s=(0.15**2 + 0.21**2) ** 0.5, scale=1.0)
print("ratio to the median", [float(ratio.ppf(p)) for p in PROBABILITIES])

# Share of bolts that yield before the click, 1/2-13 grade 5 (92 ksi, likely a tenth more): the ratio of
# two lognormals.
KSI, INCH = 6.894757293168e6, 0.0254
area = 3.141592653589793 / 4 * (0.5 - 0.9743 / 13) ** 2 * INCH**2
likely = 1.10 * 92 * KSI * area
for torque in (150.0, 165.0, 190.0):
    spread = math.hypot(0.15, math.log(1.10) / 2)
    ratio = math.log(torque / (0.2 * DIAMETER) / likely)
    print("yields at", torque, float(stats.norm.cdf(ratio / spread)))
