"""The tube behind the bolts: stress of the whole section and with the holes out, MPa, with the shear of a twist (Bredt) put to
it as Huber and von Mises do.

A rectangular tube with its round corners, as it is rolled: outside radius as given, inside radius that less the wall.
"""

import math


def _box(b, h, r):
    """Area and second moment about the middle line parallel to b of a rectangle with round corners."""
    area = b * h - (4 - math.pi) * r * r
    # Corner squares less quarter circles: own second moment and distance of their middle.
    square = r * r
    quarter = math.pi * r * r / 4
    square_at = h / 2 - r / 2
    quarter_at = h / 2 - r + 4 * r / (3 * math.pi)
    square_i = r**4 / 12 + square * square_at**2
    quarter_i = (math.pi / 16 - 4 / (9 * math.pi)) * r**4 + quarter * quarter_at**2
    return area, b * h**3 / 12 - 4 * (square_i - quarter_i)


def tube(b, h, t, r):
    """Area, I about the line parallel to b."""
    inner = max(r - t, 0.0)
    a1, i1 = _box(b, h, r)
    a2, i2 = _box(b - 2 * t, h - 2 * t, inner)
    return a1 - a2, i1 - i2


def stresses(j, case):
    """At the bolt farthest from the load: whole and net. Everything ahead of it counts as bending."""
    last = max(a for a, _ in j.positions())
    (fx, fy, fz), (x, y, z), (gx, gy, gz) = case.force, case.point, case.moment
    # Nobody has said that one part relieves another (braking under a ball that stands low takes from the tongue's
    # moment): parts are added by size.
    # The middle of the tube lies half its depth behind the face that the bolts clamp: below it, or above where the fitting
    # hangs from it. It counts where it makes the lever longer.
    to_middle = 0.0 if j.through_sides else (0.5 if j.joint == "spring-hanger" else -0.5) * j.tube_depth_mm
    z = max(abs(z), abs(z - to_middle))
    m_up = abs(z * fx) + (abs(x) + last) * abs(fz) + abs(gy) * 1e3
    m_side = (abs(x) + last) * abs(fy) + abs(gz) * 1e3
    t, r = j.wall, j.corner
    width, depth = j.tube_width_mm, j.tube_depth_mm
    high, broad = (width, depth) if j.through_sides else (depth, width)
    area, i_up = tube(broad, high, t, r)
    _, i_side = tube(high, broad, t, r)
    # Holes: one more sixteenth of an inch, AISC 360-22 B4.3b; of each row one in each wall under a washer.
    hole = j.hole + 25.4 / 16
    rows = sorted({c for _, c in j.positions()})
    walls = 2
    out_area, out_up, out_side = 0.0, 0.0, 0.0
    for c in rows:
        for side in (-1, 1)[:walls]:
            cut = hole * t
            out_area += cut
            if j.through_sides:  # holes in the upright walls at height c
                out_up += t * hole**3 / 12 + cut * c * c
                out_side += hole * t**3 / 12 + cut * (broad / 2 - t / 2) ** 2
            else:  # holes in top and bottom at c to the side
                out_up += hole * t**3 / 12 + cut * (high / 2 - t / 2) ** 2
                out_side += t * hole**3 / 12 + cut * c * c
    whole = abs(fx) / area + m_up * high / 2 / i_up + m_side * broad / 2 / i_side
    net = (
        abs(fx) / (area - out_area)
        + m_up * high / 2 / (i_up - out_up)
        + m_side * broad / 2 / (i_side - out_side)
    )
    if j.joint == "spring-hanger":
        # The force bends the rail as the frame has it; of each couple that comes in one side has at least half.
        half = [
            abs(fx) / 2,
            (m_up - last * abs(fz)) / 2,
            (m_side - last * abs(fy)) / 2,
            (abs(z * fy) + abs(y * fz) + abs(gx) * 1e3) / 2,
        ]
        tau = math.sqrt(3) * half[3] / (2 * (high - t) * (broad - t) * t)

        def greatest(a, i, k):
            return max(half[0] / a, half[1] * high / 2 / i, half[2] * broad / 2 / k, tau)

        return greatest(area, i_up, i_side), greatest(area - out_area, i_up - out_up, i_side - out_side)
    # Twist about the tube's own axis: shear flow round the middle line of the wall.
    twist = abs(z * fy) + abs(y * fz) + abs(gx) * 1e3
    tau = twist / (2 * (high - t) * (broad - t) * t)
    return math.hypot(whole, math.sqrt(3) * tau), math.hypot(net, math.sqrt(3) * tau)
