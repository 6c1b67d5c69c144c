"""Rows of ../chance.toml: quantiles of F = T/(K*d) from the distributions of SciPy.

    python3 regenerate.py     (needs scipy)

K is lognormal with median 0.2, cut at three standard deviations of its logarithm (the mass beyond is
put on the ends, which does not move the quantiles from 5 to 95 %), or triangular.
"""

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
