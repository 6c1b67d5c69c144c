"""Write ../bolt_groups.toml, ../prying.toml and ../free_loads.toml: solved apart from calc-core.

    pip install numpy scipy
    python tests/reference/loads/regenerate.py

Bolt groups, elastic: the stiffness matrix of equal springs in the plane, solved for the motion of the
group (no vector formula). Instantaneous centre: search for the centre itself (two unknowns) from many
starts, the deformation of each bolt in proportion to its distance from it; accepted only where force
and moment agree. Flanges: linear programmes of the plastic equilibrium (no formula for prying). Free
loads: the six components carried to the middle of the group by a cross product, then springs in the
plane and along the bolts; along the bolts also a stiff plate turning about its edge, the larger counts; what a single row has no
springs apart for comes about the edge in both.
"""

import pathlib

import numpy as np
from scipy.optimize import linprog, minimize, root

HERE = pathlib.Path(__file__).parent
DMAX, RATE, EXPONENT = 0.34 * 25.4, 10 / 25.4, 0.55  # mm


def pattern(along, across, px, py):
    xs = (np.arange(along) - (along - 1) / 2) * px
    ys = (np.arange(across) - (across - 1) / 2) * py
    return np.array([(x, y) for x in xs for y in ys])


def elastic(p, force, twist):
    k = np.zeros((3, 3))
    maps = []
    for x, y in p:
        b = np.array([[1, 0, -y], [0, 1, x]])
        maps.append(b)
        k += b.T @ b
    q = np.linalg.solve(k, np.array([*force, twist]))
    return np.array([b @ q for b in maps])


def law(d):
    return (1 - np.exp(-RATE * d)) ** EXPONENT


def instantaneous(p, force, twist):
    """Largest multiple of the load with every bolt of unit strength."""
    size = np.hypot(*force)
    reach = np.hypot(p[:, 0], p[:, 1]).max()

    def bolts(c, turn):
        r = p - c
        d = np.hypot(r[:, 0], r[:, 1])
        strength = law(DMAX * d / d.max()) / law(DMAX)
        # Against the motion of a turn about c; the load is balanced by it.
        with np.errstate(invalid="ignore", divide="ignore"):
            unit = np.where(d[:, None] > 0, np.c_[-r[:, 1], r[:, 0]] / d[:, None], 0)
        f = turn * strength[:, None] * unit
        return f, f.sum(axis=0), (p[:, 0] * f[:, 1] - p[:, 1] * f[:, 0]).sum()

    turn = 1.0 if twist >= 0 else -1.0
    if size == 0:
        wanted = None
    else:
        wanted = twist / size

    def miss(c):
        _, total, moment = bolts(c, turn)
        if wanted is None:
            return total
        # The resultant has the load's direction and the load's lever.
        across = (total[0] * force[1] - total[1] * force[0]) / size
        along = (total[0] * force[0] + total[1] * force[1]) / size
        return [across, (moment - wanted * along) / reach]

    best = None
    rng = np.random.default_rng(1)
    def found(c):
        return np.abs(miss(c)).max() <= 1e-8

    def solve(start):
        got = root(miss, start, method="hybr", tol=1e-13)
        if found(got.x):
            return got.x
        # Close to a bolt the law is steep: creep up on the centre without slopes.
        x = got.x if np.abs(miss(got.x)).max() < np.abs(miss(start)).max() else start
        for _ in range(4):
            x = minimize(
                lambda c: np.square(miss(c)).sum(),
                x,
                method="Nelder-Mead",
                options={"xatol": 1e-14, "fatol": 1e-28, "maxiter": 4000},
            ).x
        return x if found(x) else None

    # Pure twist of a pattern with a middle bolt or none: the middle is a candidate of its own.
    for start in [np.zeros(2), *rng.normal(size=(12, 2)) * reach, *rng.normal(size=(8, 2)) * 10 * reach]:
        centre = solve(start)
        if centre is None:
            continue
        _, total, moment = bolts(centre, turn)
        multiple = moment / twist if size == 0 else (total @ np.array(force)) / size**2
        if multiple <= 0:
            continue
        if best is not None and abs(best / multiple - 1) > 1e-7:
            raise SystemExit(f"two centres: {best} and {multiple}")
        best = multiple
    if best is None:
        raise SystemExit("no centre found")
    return best


def t_stub(t, b, a, p, d, hole, fu, bolt, pull):
    """Capacity, and the bolt's pull at `pull`, from plastic equilibrium. N and mm."""
    b1, a1 = b - d / 2, min(a, 1.25 * b) + d / 2
    mp = p * t**2 * fu / 4
    net = (1 - hole / p) * mp
    # Unknowns T, Q: bolt, flange at the upright part, flange at the bolt line.
    rows = [[1, 1], [b1, -a1], [0, a1]]
    limits = [bolt, mp, net]
    most = linprog([-1, 0], A_ub=rows, b_ub=limits, bounds=[(0, None), (0, None)])
    least = linprog([1], A_ub=[[-a1]], b_ub=[mp - pull * b1], bounds=[(0, net / a1)])
    return -most.fun, pull + (least.x[0] if least.success else net / a1)


def free(mount, na, nr, px, py, ahead, below, force, moment, edge, width, depth, mirrored=False):
    """First and last bolt: along, across, pull. x forward, y to the left, z up; N and mm."""
    p = pattern(na, nr, px, py)
    n = len(p)
    f = np.array(force, float)
    m = np.array(moment, float) + np.cross([ahead, 0, -below], f)
    if mount == "from-top":
        # Plane x, y; bolts along z; a pull N at (x, y) has the moment (y·N, -x·N, 0).
        plane, twist, pull, by_x, by_y, couple = (f[0], f[1]), m[2], f[2], -m[1], m[0], 0.0
    else:
        # Plane x, z seen from the right; turning x towards z is against the y axis. Bolts along y; a pull
        # N at (x, z) has the moment (-z·N, 0, x·N), of which the part about x goes into the two cheeks.
        plane, twist, pull, by_x, by_y = (f[0], f[2]), -m[1], abs(f[1]), m[2], 0.0
        couple = 2 * abs(m[0]) / depth / n
        by_x = -by_x if mirrored else by_x
    shares = elastic(p, plane, twist)
    shares[:, 1] += np.where(shares[:, 1] >= 0, couple, -couple)
    basis = np.c_[np.ones(n), p]
    motion = np.linalg.lstsq(basis.T @ basis, np.array([pull, by_x, by_y]), rcond=None)[0]
    about_middle = basis @ motion
    half = [np.abs(p[:, 0]).max() + edge, min(np.abs(p[:, 1]).max() + edge, width / 2)]
    about_edge = np.full(n, pull / n)
    for axis, turning in ((0, by_x), (1, by_y)):
        lift = half[axis] + np.sign(turning) * p[:, axis]
        lifted = np.abs(turning) * lift / (lift @ lift)
        about_edge += lifted
        if not p[:, axis].any():
            about_middle = about_middle + lifted
    pulls = np.maximum(about_middle, about_edge)
    if mount == "through-sides" and not mirrored:
        # A bolt goes through both cheeks; the other one is lifted where this one is pressed.
        other = free(mount, na, nr, px, py, ahead, below, force, moment, edge, width, depth, mirrored=True)
        return [*shares[0], max(pulls[0], other[2]), *shares[-1], max(pulls[-1], other[5])]
    return [*shares[0], pulls[0], *shares[-1], pulls[-1]]


FREE = [
    # mount, along, rows, px, py, ahead, below, (Fx, Fy, Fz), (mx, my, mz), edge, tube width, depth
    ("from-top", 2, 2, 90, 30, 130, 30, (3000, 500, 2500), (60e3, -40e3, 25e3), 19, 76, 50),
    ("from-top", 3, 2, 60, 40, 200, -50, (-4000, -900, -1500), (-30e3, 80e3, -90e3), 25, 100, 60),
    ("from-top", 2, 1, 90, 40, 130, 30, (2000, 300, 2000), (20e3, 0, 0), 19, 76, 50),
    ("through-sides", 2, 1, 90, 40, 130, 30, (3700, 250, 2700), (0, 0, 0), 19, 50.8, 76.2),
    ("through-sides", 2, 2, 90, 40, 250, 60, (-3000, -800, -1200), (15e3, 50e3, -35e3), 20, 100, 60),
]

GROUPS = [
    # along, across, px, py, Fx, Fy, twist (mm, N, N·mm)
    (2, 1, 90, 40, 3677.5, 2758.1, 468.9e3),
    (2, 2, 150, 120, 0, 16000, 6800e3),
    (2, 2, 80, 50, -5000, 2000, -300e3),
    (3, 2, 75, 75, 0, 10000, 2000e3),
    (4, 1, 76.2, 1, 0, 10000, 1016e3),
    (6, 3, 70, 60, 4000, -9000, 900e3),
    (3, 1, 60, 1, 1000, 0, 500e3),
    (2, 3, 60, 45, 100, 100, 800e3),
    (1, 2, 1, 65, 8000, 500, 30e3),
    (4, 2, 60, 60, 0, 0, 500e3),
]
FLANGES = [
    # t, b, a, p, d, hole, Fu, bolt, pull
    (8, 40, 35, 80, 16, 18, 400, 90e3, 12e3),
    (12, 40, 35, 80, 16, 18, 400, 90e3, 30e3),
    (18, 40, 35, 80, 16, 18, 400, 90e3, 60e3),
    (22, 40, 35, 80, 16, 18, 400, 90e3, 80e3),
    (40, 40, 35, 80, 16, 18, 400, 90e3, 60e3),
    (9.525, 38.1, 31.75, 76.2, 12.7, 14.3, 400, 78.6e3, 20e3),
    (6, 25, 60, 60, 12, 13.5, 260, 50e3, 10e3),
]


def main():
    text = "# Written by loads/regenerate.py; not by hand.\n"
    for i, (na, nr, px, py, fx, fy, m) in enumerate(GROUPS, 1):
        p = pattern(na, nr, px, py)
        shares = elastic(p, (fx, fy), m)
        largest = np.hypot(shares[:, 0], shares[:, 1]).max()
        try:
            multiple = instantaneous(p, (fx, fy), m)
        except SystemExit as error:
            raise SystemExit(f"group {i}: {error}") from error
        text += f"""
[[row]]
id = "group-{i}-{na}x{nr}"
source = "own-derivation"
place = "loads/regenerate.py"
flag = "computed"
origin = "own"
input = {{ along = {na}, across = {nr}, pitch_x_mm = {px}, pitch_y_mm = {py}, fx_n = {fx}, fy_n = {fy}, twist_nm = {m / 1e3} }}
expect = {{ largest_n = {largest:.9g}, first_along_n = {shares[0, 0]:.9g}, multiple_per_newton = {multiple:.9g} }}
half_unit = {{ first_along_n = 1e-3 }}
rel = 1e-6
"""
    (HERE.parent / "bolt_groups.toml").write_text(text, encoding="utf-8")
    text = "# Written by loads/regenerate.py; not by hand.\n"
    for i, row in enumerate(FLANGES, 1):
        capacity, pull = t_stub(*row)
        names = "t_mm b_mm a_mm p_mm d_mm hole_mm fu_mpa bolt_n pull_n".split()
        values = ", ".join(f"{n} = {v}" for n, v in zip(names, row))
        text += f"""
[[row]]
id = "flange-{i}"
source = "own-derivation"
place = "loads/regenerate.py"
flag = "computed"
origin = "own"
input = {{ {values} }}
expect = {{ capacity_n = {capacity:.9g}, bolt_pull_n = {pull:.9g} }}
rel = 1e-6
"""
    (HERE.parent / "prying.toml").write_text(text, encoding="utf-8")
    text = "# Written by loads/regenerate.py; not by hand.\n"
    for i, row in enumerate(FREE, 1):
        mount, na, nr, px, py, ahead, below, force, moment, edge, width, depth = row
        got = free(*row)
        names = [f"{end}_{part}_n" for end in ("first", "last") for part in ("along", "across", "pull")]
        expect = ", ".join(f"{n} = {float(v):.9g}" for n, v in zip(names, got))
        half = ", ".join(f"{n} = 1e-3" for n in names)
        text += f"""
[[row]]
id = "free-{i}"
source = "own-derivation"
place = "loads/regenerate.py"
flag = "computed"
origin = "own"
[row.input]
mount = "{mount}"
bolts_along = {na}
bolt_rows = {nr}
spacing_along_mm = {px}
spacing_across_mm = {py}
ball_ahead_mm = {ahead}
ball_below_mm = {below}
free_along_n = {force[0]}
free_side_n = {force[1]}
free_up_n = {force[2]}
free_about_along_nm = {moment[0] / 1e3}
free_about_side_nm = {moment[1] / 1e3}
free_about_up_nm = {moment[2] / 1e3}
fitting_edge_mm = {edge}
tube_width_mm = {width}
tube_depth_mm = {depth}
[row.expect]
{expect.replace(", ", chr(10))}
[row.half_unit]
{half.replace(", ", chr(10))}
"""
    (HERE.parent / "free_loads.toml").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
