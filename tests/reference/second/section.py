"""The tube at the bolts: stress of the whole section and with the holes out, MPa, with the shear of a twist (Bredt) and of
the forces across put to it as Huber and von Mises do.

A rectangular tube with its round corners, as it is rolled: outside radius as given, inside radius that less the wall.
"""

import math

import group


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


def across(j, case):
    """Shear of the tube upright and to the side, N: behind the bolts the load, before that what the bolts ahead of a cut
    push. Along the bolts likewise; of a single line all that is pulled comes through the tube beside it."""
    fx, fy, fz = (abs(f) for f in case.force)
    (x, _, z), (_, gy, gz) = case.point, case.moment
    pushed = group.pushed_across(j, case)
    if j.through_sides:
        out, pitch = fy, abs(x) * fy + abs(gz) * 1e3
    else:
        out, pitch = fz, abs(x) * fz + abs(z) * fx + abs(gy) * 1e3
    places = [a for a, _ in j.positions()]
    squares = sum(a * a for a in places)
    if squares:  # clamped all over, linear about the middle
        pulled = _largest_cut([(a, out / len(places) + pitch * a / squares) for a in places])
    else:
        pulled = sum(max(pull, 0.0) for _, pull, _ in group.bolt_forces(j, case))
    between = _largest_cut(pushed)
    if j.through_sides:
        return max(fz, between), max(fy, pulled)
    return max(fz, pulled), max(fy, between)


def _largest_cut(pushed):
    """Most that the bolts on one side of a line between them push, N."""
    cuts = {a for a, _ in pushed}
    ahead = [sum(v for a, v in pushed if a >= cut) for cut in cuts]
    behind = [sum(v for a, v in pushed if a <= cut) for cut in cuts]
    return max(abs(v) for v in ahead + behind)


def counted(j, along, t, r):
    """Shear area of the two walls of a tube that lie along a force, AISC 360-22 G4 with C_v2 of G2.2 (k_v 5), mm2."""
    flat = along - 2.0 * max(r, t)
    root = math.sqrt(5.0 * j.modulus / j.fy)
    slender = flat / t
    share = 1.0 if slender <= 1.10 * root else 1.10 * root / slender if slender <= 1.37 * root else 1.51 * (root / slender) ** 2
    return 2.0 * flat * t * share


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
    # Shear: yielding of the flat walls; tearing of the walls from edge to edge less the holes (J4.2).
    gross_walls = counted(j, high, t, r), counted(j, broad, t, r)
    torn = 2.0 * len(rows) * hole * t
    net_walls = [2.0 * high * t, 2.0 * broad * t]
    net_walls[0 if j.through_sides else 1] -= torn
    whole = abs(fx) / area + m_up * high / 2 / i_up + m_side * broad / 2 / i_side
    net = (
        abs(fx) / (area - out_area)
        + m_up * high / 2 / (i_up - out_up)
        + m_side * broad / 2 / (i_side - out_side)
    )
    if j.joint == "spring-hanger":
        # The force bends the rail as the frame has it; of each couple that comes in one side has at least half.
        sheared = [abs(fz) / 2, abs(fy) / 2]
        half = [
            abs(fx) / 2,
            (m_up - last * abs(fz)) / 2,
            (m_side - last * abs(fy)) / 2,
            (abs(z * fy) + abs(y * fz) + abs(gx) * 1e3) / 2,
        ]
        tau = math.sqrt(3) * half[3] / (2 * (high - t) * (broad - t) * t)

        def greatest(a, i, k, walls):
            mean = max(v / wall for v, wall in zip(sheared, walls)) * math.sqrt(3)
            return max(half[0] / a, half[1] * high / 2 / i, half[2] * broad / 2 / k, tau, mean)

        return (
            greatest(area, i_up, i_side, gross_walls),
            greatest(area - out_area, i_up - out_up, i_side - out_side, net_walls),
        )
    # Twist about the tube's own axis: shear flow round the middle line of the wall.
    twist = abs(z * fy) + abs(y * fz) + abs(gx) * 1e3
    tau = twist / (2 * (high - t) * (broad - t) * t)
    mean = [max(v / wall for v, wall in zip(across(j, case), walls)) for walls in (gross_walls, net_walls)]
    return tuple(math.hypot(s, math.sqrt(3) * (tau + m)) for s, m in zip((whole, net), mean))
