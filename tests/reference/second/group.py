"""From the load on the bolt group to the force on each bolt.

In the faying plane: direct and torsion, elastic vector method (Shigley 8-12). Along the bolt: the larger of linear
about the middle of the group (clamped) and turning about the edges on which the fitting is pressed. Beside that the
least that equilibrium asks of a rigid plate on a rigid face, which nobody may stay below.
"""

import itertools
import math


def bolt_forces(j, case):
    """Of each bolt, N: force in the plane, pull, and the pull that statics of a rigid plate ask for at least."""
    fx, fy, fz = case.force
    mx, my, mz = (m * 1e3 for m in case.moment_about_group())
    if j.through_sides:
        # Plane x-z, bolts along y. Turning from x towards z is against y.
        plane, twist, out, about_along, about_across = (fx, fz), -my, fy, mx, mz
    else:
        plane, twist, out, about_along, about_across = (fx, fy), mz, fz, mx, my
    bolts = j.positions()
    n = len(bolts)
    polar = sum(a * a + c * c for a, c in bolts)
    roll_share = 0.0
    if j.planes == 2:
        # A cheek on each side: turning about the tube is a pair of forces across, one on each cheek. The cheek that
        # has more decides, and counts for both.
        roll_share = 2 * abs(about_along) / j.depth_on_bolt / n
        about_along = 0.0
    shears = []
    for a, c in bolts:
        va = plane[0] / n - (twist * c / polar if polar else 0.0)
        vc = plane[1] / n + (twist * a / polar if polar else 0.0)
        shears.append(math.hypot(va, abs(vc) + roll_share))
    if not j.through_sides and j.joint == "spring-hanger":
        # A hanger lies against the underside: what lifts elsewhere presses here.
        out, about_along, about_across = -out, -about_along, -about_across
    # The moments that lift the fitting at positive coordinates, by the right-hand rule.
    if j.through_sides:
        opens_along, opens_across = about_across, -about_along
    else:
        opens_along, opens_across = -about_across, about_along
    # Through the sides head and nut side take turns, or nobody has said on which side of a web the fitting lies.
    ways = itertools.product((out, -out), (1, -1)) if j.through_sides else [(out, 1)]
    pulls, least = [0.0] * n, [0.0] * n
    for away, turned in ways:
        load = (away, turned * opens_along, turned * opens_across)
        pulls = [max(p) for p in zip(pulls, _linear(j, bolts, *load), _about_edges(j, bolts, *load))]
        if j.planes == 2 or (away, turned) == (out, 1):
            least = [max(p) for p in zip(least, _rigid_plate(j, bolts, *load))]
    return list(zip(shears, pulls, least))


def pushed_across(j, case):
    """Of each bolt, where it stands along and its force across the member in the faying plane, N, without the pair of two
    cheeks."""
    _, fy, fz = case.force
    _, my, mz = (m * 1e3 for m in case.moment_about_group())
    direct, twist = (fz, -my) if j.through_sides else (fy, mz)
    bolts = j.positions()
    polar = sum(a * a + c * c for a, c in bolts)
    return [(a, direct / len(bolts) + (twist * a / polar if polar else 0.0)) for a, _ in bolts]


def _linear(j, bolts, out, along, across):
    """About the middle; a moment that the pattern has no lever for there, about its edge."""
    (_, front), (_, high) = outline(j)
    total = [out / len(bolts)] * len(bolts)
    for moment, edge, axis in ((along, front, 0), (across, high, 1)):
        squares = sum(place[axis] ** 2 for place in bolts)
        if squares:
            total = [t + moment * place[axis] / squares for t, place in zip(total, bolts)]
        elif edge:
            total = [t + abs(moment) / (len(bolts) * edge) for t in total]
    return total


def _about_edges(j, bolts, out, along, across):
    """Both moments each about the edge that it presses, as if the plate had come off everywhere else, added."""
    (_, front), (_, high) = outline(j)
    total = [out / len(bolts)] * len(bolts)
    for moment, edge, axis in ((along, front, 0), (across, high, 1)):
        side = -1 if moment < 0 else 1
        arms = [max(edge + side * place[axis], 0.0) for place in bolts]
        squares = sum(s * s for s in arms)
        if squares:
            total = [t + abs(moment) * s / squares for t, s in zip(total, arms)]
    return total


def outline(j):
    """Where fitting and member touch: (rear, front), (low, high) from the middle of the group, mm."""
    bolts = j.positions()
    front, side = max(a for a, _ in bolts), max(c for _, c in bolts)
    reach = max(min(side + j.fitting_edge_mm, _beside(j)), side)
    # No pressure where the member has ended, nor farther out than half way to the neighbouring bolt.
    pressed = j.spacing_along_mm / 2 if j.bolts_along > 1 else _beside(j)
    along = front + min(j.fitting_edge_mm, j.end_distance_mm, pressed)
    return (-along, along), (-reach, reach)


def _beside(j):
    """From the middle of the group to the nearer edge of the face, leg or flange."""
    width = j.tube_width_mm
    if j.member == "round-tube" and j.support == "through-sleeve":
        return j.sleeve_outer / 2  # a flat fitting stands on the end of the sleeve
    if j.member == "channel" and j.through_sides or not j.open_section:
        return width / 2
    gauge = j.given.get("bolt_gauge_mm", 0.6 * width)
    return min(gauge, width - gauge)


def _rigid_plate(j, bolts, out, along, across):
    """Pulls where bolts only pull and corners of the outline only push, plate rigid.

    The plate lifts by u = p + q a + r c. Bolts are springs of one stiffness, the member is rigid: u >= 0 at each
    corner, and a corner pushes only where u = 0. All sets of pressed corners are tried.
    """
    (rear, front), (low, high) = outline(j)
    corners = [(rear, low), (rear, high), (front, low), (front, high)]
    load = (out, along, across)
    for count in (0, 1, 2):
        for pressed in itertools.combinations(corners, count):
            # Stationarity: sum over bolts of phi phi^T u - sum of phi_c c = load, and u = 0 where pressed.
            size = 3 + count
            matrix = [[0.0] * size for _ in range(size)]
            right = [*load, *([0.0] * count)]
            for a, c in bolts:
                phi = (1.0, a, c)
                for r in range(3):
                    for s in range(3):
                        matrix[r][s] += phi[r] * phi[s]
            for k, (a, c) in enumerate(pressed):
                for r, value in enumerate((1.0, a, c)):
                    matrix[r][3 + k] -= value
                    matrix[3 + k][r] -= value
            for r in range(3):  # a row of bolts has no stiffness about itself
                matrix[r][r] += 1e-9 * (1.0 if r == 0 else 1e3)
            solved = _solve(matrix, right)
            if solved is None:
                continue
            p, q, r = solved[:3]
            pulls = [p + q * a + r * c for a, c in bolts]
            scale = max(1.0, abs(out), *(abs(pull) for pull in pulls))
            lifted = all(p + q * a + r * c >= -1e-6 * scale for a, c in corners)
            if lifted and all(push >= -1e-6 * scale for push in solved[3:]):
                return pulls
    return [0.0] * len(bolts)


def _solve(matrix, right):
    n = len(right)
    m = [row[:] + [b] for row, b in zip(matrix, right)]
    for col in range(n):
        pivot = max(range(col, n), key=lambda r: abs(m[r][col]))
        if abs(m[pivot][col]) < 1e-14:
            return None
        m[col], m[pivot] = m[pivot], m[col]
        for r in range(n):
            if r != col and m[r][col]:
                f = m[r][col] / m[col][col]
                m[r] = [x - f * y for x, y in zip(m[r], m[col])]
    return [m[r][n] / m[r][r] for r in range(n)]
