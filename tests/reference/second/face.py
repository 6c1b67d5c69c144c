"""The face of a rectangular tube under a washer: the curve fitted to finite elements, as published with that fit.

Coefficients `ring` (a washer can only push); 0.90 bounds all cases of the fit from below. Washer taken as rigid.
"""

import math

A, M, K, S, N, CY, C1, C2 = 0.2505, 1.81, 1.441, 1.49, 1.867, 0.764, 0.184, 0.143
LOWER_BOUND = 0.90


def in_range(j):
    """Where the curve was fitted."""
    b, t, h = j.tube_width_mm, j.wall, j.tube_depth_mm
    flat = 0.92 * (b / 2 - j.corner)
    return (
        8 <= b / t <= 48
        and 0.33 <= h / b <= 3
        and 0.16 <= j.washer_outer / b <= 0.75
        and j.washer_outer / 2 <= flat
        and 1.7 <= j.washer_outer / j.hole <= 5.6
    )


def curve(j):
    """Initial stiffness, N/mm, and force at an indentation, N, of one face."""
    b, t, h, dw, fy = j.tube_width_mm, j.wall, j.tube_depth_mm, j.washer_outer, j.fy
    b0 = b - t
    beta = dw / b0
    a = 0.886 * dw / b0
    yield_line = fy * t * t / (1 - a) * (2 * a + 4 * math.sqrt(1 - a))
    punching = math.pi * dw * t * fy / math.sqrt(3)
    plastic = ((CY * yield_line) ** -2 + punching**-2) ** -0.5
    stiffness = j.modulus * t / (
        A * (1 - beta) ** M * (1 - j.poisson**2) * (b0 / t) ** 2 * (1 + K * (h / (b + h) - 0.5)) + S * (1 - beta)
    )

    def force(delta):
        z = delta / t
        elastic = stiffness * delta * (1 + C1 * z * z)
        return (elastic**-N + (plastic * (1 + C2 * z)) ** -N) ** (-1 / N)

    return stiffness, force


def at_share(j, share):
    """Lower bound of the force on one face at an indentation of a share of the width; ends not counted."""
    return LOWER_BOUND * curve(j)[1](share * j.tube_width_mm)


def near_open_end(j):
    """AISC 360-22 K1.4: full strength from b sqrt(1 - beta) to the end of the tube on, measured from the near side of
    what presses (here the washer's rim); half before, unless the end is capped."""
    if j.tube_end == "capped":
        return 1.0
    beta = j.washer_outer / j.tube_width_mm
    wanted = j.tube_width_mm * math.sqrt(max(1 - beta, 0.0))
    return 1.0 if j.end_distance_mm - j.washer_outer / 2 >= wanted else 0.5
