"""Writes ../members.toml: channels, angles and round tubes, solved apart from calc-core.

    pip install numpy scipy scikit-fem
    python tests/reference/members/regenerate.py

flange     elastic plate, clamped along one side and long, pulled at a disc: its largest root moment for
           each unit of pull (Morley elements); a web hinged along both sides likewise, moment at the disc
lever      largest moment of a hinged strip, from a beam of small elements
ring       a ring of straight beams under two opposite loads: how far it closes, its moment under the load
section    angle and channel with holes cut into small cells: area, centroid, second moments, and the
           largest stress from the plane of strain that balances a pull and two moments, every sign tried
block      net and gross areas of a block torn out to the edge, counted cell by cell
"""

import itertools
import pathlib

import numpy as np
import skfem
from scipy.sparse import lil_matrix
from scipy.sparse.linalg import spsolve
from skfem.helpers import dd, ddot, eye, trace

HERE = pathlib.Path(__file__).parent
NU = 0.3


def plate(width, at, radius, clamped):
    """Largest bending moment for each unit of pull; width from support to edge or to support."""
    reach = 5.0 * width
    fine = width / 26
    ys = np.concatenate(
        [np.arange(0, 1.2 * width, fine), np.geomspace(1.2 * width, reach, 26)]
    )
    xs = np.linspace(0, width, 27)  # cells as broad as they are long near the load
    mesh = skfem.MeshTri.init_tensor(xs, ys)
    basis = skfem.Basis(mesh, skfem.ElementTriMorley(), intorder=4)

    def bend(c):
        return (1 - NU) * c + NU * eye(trace(c), 2)

    @skfem.BilinearForm
    def stiff(u, v, _):
        return ddot(bend(dd(u)), dd(v))

    @skfem.LinearForm
    def pull(v, w):
        x, y = w.x
        inside = (x - at) ** 2 + y**2 < radius**2
        return inside * v

    k, f = stiff.assemble(basis), pull.assemble(basis)
    # Half of the plate carries half of the pull.
    one = skfem.LinearForm(
        lambda v, w: ((w.x[0] - at) ** 2 + w.x[1] ** 2 < radius**2) * v
    ).assemble(skfem.Basis(mesh, skfem.ElementTriP1(), intorder=4))
    f = 0.5 * f / one.sum()
    support = basis.get_dofs(lambda x: np.isclose(x[0], 0))
    middle = basis.get_dofs(lambda x: np.isclose(x[1], 0))
    fixed = [middle.all("u_n"), support.all("u")]
    if clamped:
        fixed.append(support.all("u_n"))
    else:
        fixed.append(basis.get_dofs(lambda x: np.isclose(x[0], width)).all("u"))
    u = skfem.solve(*skfem.condense(k, f, D=np.unique(np.concatenate(fixed))))
    second = basis.interpolate(u).hess
    moment = np.abs(second[0, 0] + NU * second[1, 1]).mean(axis=1)
    x, y = mesh.p[:, mesh.t].mean(axis=1)
    if clamped:
        # Cells of the first two columns, carried to the root in a straight line.
        peaks = []
        for i in (0, 1):
            column = (x > i * fine) & (x < (i + 1) * fine) & (y < 0.6 * width)
            cell = np.floor(y[column] / fine).astype(int)
            whole = np.bincount(cell) == 2
            mean = np.bincount(cell, moment[column])[whole] / 2
            peaks.append(mean.max())
        return peaks[0] + 0.5 * (peaks[0] - peaks[1])
    under = (x - at) ** 2 + y**2 < (0.5 * radius) ** 2
    return moment[under].mean()


def beam(span, rows):
    """Largest moment of a hinged strip with a unit pull at each row, by small elements."""
    n = 2000
    h = span / n
    size = 2 * (n + 1)
    element = (
        np.array(
            [
                [12, 6 * h, -12, 6 * h],
                [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                [-12, -6 * h, 12, -6 * h],
                [6 * h, 2 * h * h, -6 * h, 4 * h * h],
            ]
        )
        / h**3
    )
    big = lil_matrix((size, size))
    for i in range(n):
        at = slice(2 * i, 2 * i + 4)
        big[at, at] = big[at, at].toarray() + element
    force = np.zeros(size)
    for row in rows:
        force[2 * round(row / h)] += 1
    free = [i for i in range(size) if i not in (0, size - 2)]
    move = np.zeros(size)
    move[free] = spsolve(big.tocsr()[free][:, free], force[free])
    ends = [(element @ move[2 * i : 2 * i + 4] - 0)[3] for i in range(n)]
    return np.abs(ends).max()


def ring(radius, modulus, second, area):
    """Closing and largest moment of a quarter of a ring with half of a unit load at its top."""
    n = 400
    turn = np.linspace(0, np.pi / 2, n + 1)
    x, y = radius * np.sin(turn), radius * np.cos(turn)
    size = 3 * (n + 1)
    big = lil_matrix((size, size))
    stiffnesses = []
    for i in range(n):
        dx, dy = x[i + 1] - x[i], y[i + 1] - y[i]
        length = np.hypot(dx, dy)
        c, s = dx / length, dy / length
        a, b = modulus * area / length, modulus * second / length**3
        own = np.zeros((6, 6))
        own[np.ix_([0, 3], [0, 3])] = a * np.array([[1, -1], [-1, 1]])
        own[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] = b * np.array(
            [
                [12, 6 * length, -12, 6 * length],
                [6 * length, 4 * length**2, -6 * length, 2 * length**2],
                [-12, -6 * length, 12, -6 * length],
                [6 * length, 2 * length**2, -6 * length, 4 * length**2],
            ]
        )
        way = np.zeros((6, 6))
        for j in (0, 3):
            way[j : j + 3, j : j + 3] = [[c, s, 0], [-s, c, 0], [0, 0, 1]]
        at = slice(3 * i, 3 * i + 6)
        big[at, at] = big[at, at].toarray() + way.T @ own @ way
        stiffnesses.append((own, way))
    force = np.zeros(size)
    force[1] = -0.5
    # Symmetry: the top moves down only, the side moves outwards only, neither turns.
    fixed = {0, 2, size - 2, size - 1}
    free = [i for i in range(size) if i not in fixed]
    move = np.zeros(size)
    move[free] = spsolve(big.tocsr()[free][:, free], force[free])
    own, way = stiffnesses[0]
    moment = abs((own @ way @ move[:6])[2])
    return 2 * abs(move[1]), moment


def cells(parts, holes, step):
    """Middles of the cells of rectangles (up, across, high, wide) less the holes."""
    points = []
    for up, across, high, wide in parts:
        n, m = round(high / step), round(wide / step)
        ys = up - high / 2 + (np.arange(n) + 0.5) * high / n
        xs = across - wide / 2 + (np.arange(m) + 0.5) * wide / m
        grid = np.array(list(itertools.product(ys, xs)))
        points.append(np.c_[grid, np.full(len(grid), high * wide / (n * m))])
    p = np.concatenate(points)
    for up, across, high, wide in holes:
        out = (np.abs(p[:, 0] - up) > high / 2) | (np.abs(p[:, 1] - across) > wide / 2)
        p = p[out]
    return p


def section(parts, holes, pull, up, side):
    p = cells(parts, holes, 0.1)
    y, x, a = p.T
    area = a.sum()
    cy, cx = (a * y).sum() / area, (a * x).sum() / area
    i1, i2 = (a * (y - cy) ** 2).sum(), (a * (x - cx) ** 2).sum()
    i12 = (a * (y - cy) * (x - cx)).sum()
    corners = np.array(
        [
            (u + i * h / 2, c + j * w / 2)
            for u, c, h, w in parts
            for i in (1, -1)
            for j in (1, -1)
        ]
    )
    most = 0.0
    for one, two in itertools.product((1, -1), repeat=2):
        # Plane of stress s = s0 + ky·y + kx·x that balances the three.
        basis = np.c_[np.ones(len(a)), y - cy, x - cx]
        balance = np.array([(a[:, None] * basis * basis[:, [i]]).sum(axis=0) for i in range(3)])
        s = np.linalg.solve(balance, [pull, one * up, two * side])
        at = np.c_[np.ones(len(corners)), corners - [cy, cx]]
        most = max(most, np.abs(at @ s).max())
    return area, cy, cx, i1, i2, i12, most


def round_section(diameter, wall, hole, pull, up, side):
    """Largest stress of a round tube with a hole drilled through it level, from cells of a ring."""
    turns, rings = 7200, 24
    inner = diameter / 2 - wall
    r = inner + (np.arange(rings) + 0.5) * wall / rings
    turn = (np.arange(turns) + 0.5) * 2 * np.pi / turns
    r, turn = (g.reshape(-1) for g in np.meshgrid(r, turn))
    a = r * (2 * np.pi / turns) * (wall / rings)
    y, x = r * np.sin(turn), r * np.cos(turn)
    there = np.abs(y) > hole / 2
    y, x, a = y[there], x[there], a[there]
    basis = np.c_[np.ones(len(a)), y, x]
    balance = np.array([(a[:, None] * basis * basis[:, [i]]).sum(axis=0) for i in range(3)])
    s = np.linalg.solve(balance, [pull, up, side])
    rim = (np.arange(3600) + 0.5) * 2 * np.pi / 3600
    at = np.c_[np.ones(3600), diameter / 2 * np.sin(rim), diameter / 2 * np.cos(rim)]
    return (at @ s).max()


def block(along, rows, end, pitch, gauge, edge, hole, t):
    """Areas of the block to the edge by cells of 0.1 mm along both lines."""
    step = 0.05
    length = end + (along - 1) * pitch
    s = (np.arange(round(length / step)) + 0.5) * step
    centres = end + pitch * np.arange(along)
    cut = np.min(np.abs(s[:, None] - centres), axis=1) > hole / 2
    across = edge + (rows - 1) * gauge
    q = (np.arange(round(across / step)) + 0.5) * step
    middles = edge + gauge * np.arange(rows)
    left = np.min(np.abs(q[:, None] - middles), axis=1) > hole / 2
    return len(s) * step * t, cut.sum() * step * t, left.sum() * step * t


ROWS = []


def row(name, source, flag, origin, place, given, expect, tolerance):
    def number(v):
        return f"{v:.7g}" if isinstance(v, float) else repr(v)

    def table(d):
        return "{ " + ", ".join(f"{k} = {number(v)}" for k, v in d.items()) + " }"

    given = {k: f'"{v}"' if isinstance(v, str) else v for k, v in given.items()}
    text = "{ " + ", ".join(
        f"{k} = {v if isinstance(v, str) else number(v)}" for k, v in given.items()
    ) + " }"
    ROWS.append(
        f"""
[[row]]
id = "{name}"
source = "{source}"
place = "{place}"
flag = "{flag}"
origin = "{origin}"
input = {text}
expect = {table(expect)}
{tolerance}
"""
    )


def own(name, given, expect, rel):
    row(
        name,
        "own-derivation",
        "computed",
        "own",
        "members/regenerate.py",
        given,
        {k: float(v) for k, v in expect.items()},
        f"rel = {rel}",
    )


def main():
    # A clamped long plate with a force at its edge, as printed.
    row(
        "flange-edge-load",
        "timoshenko-plates",
        "memory",
        "published",
        "cantilever plates, long, force at the free edge",
        {"case": "root-moment", "arm_mm": 40.0},
        {"moment_per_pull": 0.509},
        "rel = 0.03",
    )
    for edge, radius in ((0.05, 2.0), (0.25, 10.0), (0.5, 10.0), (1.0, 10.0)):
        arm = 40.0
        m = plate(arm * (1 + edge), arm, radius, True)
        own(
            f"flange-inside-{edge}",
            {"case": "root-moment-at-most", "arm_mm": arm, "edge_mm": arm * edge},
            {"moment_per_pull": m},
            1e-3,
        )
    for span, radius in ((100.0, 12.0), (150.0, 12.0), (150.0, 18.0)):
        m = plate(span, span / 2, radius, False)
        own(
            f"web-{span:.0f}-{radius:.0f}",
            {"case": "web-moment-at-most", "span_mm": span, "hole_mm": 14.0},
            {"moment_per_pull": m},
            1e-3,
        )
    for i, (span, rows) in enumerate(
        [(100.0, [50.0]), (100.0, [30.0]), (120.0, [40.0, 80.0]), (120.0, [20.0, 60.0, 100.0])]
    ):
        given = {"case": "web-lever", "span_mm": span}
        given |= {f"row_{j}_mm": x for j, x in enumerate(rows)}
        own(f"web-lever-{i + 1}", given, {"lever_mm": beam(span, rows)}, 2e-3)
    # Rings: as printed, and by beams.
    row(
        "ring-closing",
        "roark",
        "memory",
        "published",
        "circular rings, two opposite loads",
        {"case": "ring-coefficients"},
        {"closing": 0.1488, "moment": 0.3183},
        "half_unit = { closing = 0.00005, moment = 0.00005 }",
    )
    for diameter, wall, length in ((60.3, 3.0, 24.0), (48.3, 4.0, 30.0)):
        radius, second = (diameter - wall) / 2, length * wall**3 / 12
        closing, moment = ring(radius, 200e3, second, length * wall * 1e4)
        own(
            f"ring-{diameter}x{wall}",
            {
                "case": "ring",
                "diameter_mm": diameter,
                "wall_mm": wall,
                "length_mm": length,
                "e_mpa": 200e3,
                "fy_mpa": 250.0,
            },
            {
                "stiffness_n_mm": 1 / closing,
                "first_yield_n": 250.0 * length * wall**2 / 6 / moment,
            },
            2e-4,
        )
    # Sections: rectangles as up, across, high, wide.
    angle = [(40.0, 3.0, 80.0, 6.0), (77.0, 33.0, 6.0, 54.0)]
    hole_top = [(77.0, 36.0, 6.0, 15.0)]
    channel = [
        (50.0, 2.5, 100.0, 5.0),
        (96.0, 27.5, 8.0, 45.0),
        (4.0, 27.5, 8.0, 45.0),
    ]
    hole_flange = [(96.0, 30.0, 8.0, 15.0)]
    hole_web = [(50.0, 2.5, 15.0, 5.0)]
    for name, member, mount, parts, holes, sizes in [
        ("angle", "angle", "from-top", angle, hole_top, (60.0, 80.0, 6.0, 6.0, 36.0)),
        ("channel-flange", "channel", "from-top", channel, hole_flange, (50.0, 100.0, 8.0, 5.0, 30.0)),
        ("channel-web", "channel", "through-sides", channel, hole_web, (100.0, 50.0, 5.0, 8.0, 0.0)),
    ]:
        pull, up, side = 5000.0, 600e3, 250e3
        area, cy, cx, i1, i2, i12, most = section(parts, [], pull, up, side)
        *_, net = section(parts, holes, pull, up, side)
        flat = "; ".join(",".join(f"{v:g}" for v in r) for r in parts)
        cut = "; ".join(",".join(f"{v:g}" for v in r) for r in holes)
        own(
            f"section-{name}",
            {
                "case": "section",
                "parts": flat,
                "holes": cut,
                "pull_n": pull,
                "up_nmm": up,
                "side_nmm": side,
            },
            {
                "area_mm2": area,
                "up_mm": cy,
                "across_mm": cx,
                "i1_mm4": i1,
                "i2_mm4": i2,
                "gross_mpa": most,
                "net_mpa": net,
            },
            1e-3,
        )
    # Handbook shapes, from memory; their fillets and sloping flanges are in the printed values.
    for name, parts, expect in [
        (
            "L4x4x1/2",
            [(2.0, 0.25, 4.0, 0.5), (3.75, 2.25, 0.5, 3.5)],
            {"area_in2": 3.75, "from_back_in": 1.18, "i_in4": 5.52},
        ),
        (
            "L3x3x1/4",
            [(1.5, 0.125, 3.0, 0.25), (2.875, 1.625, 0.25, 2.75)],
            {"area_in2": 1.44, "from_back_in": 0.836, "i_in4": 1.23},
        ),
        (
            "C8x11.5",
            # Flanges 2 in 12, in strips; 0.39 in thick in the middle.
            [(4.0, 0.11, 8.0, 0.22)]
            + [
                (side + way * thick / 2, 0.22 + 2.04 * (i + 0.5) / 16, thick, 2.04 / 16)
                for i in range(16)
                for thick in [0.39 + (7.5 - i) / 16 * 2.04 / 6]
                for side, way in [(0.0, 1), (8.0, -1)]
            ],
            {"area_in2": 3.37, "from_back_in": 0.572, "i_in4": 32.5},
        ),
    ]:
        flat = "; ".join(",".join(f"{v:g}" for v in r) for r in parts)
        row(
            f"shape-{name}",
            "aisc-manual",
            "memory",
            "published",
            "Part 1, dimensions and properties",
            {"case": "shape", "parts": flat},
            expect,
            "rel = 0.03",
        )
    for mount, sizes in [
        ("from-top", {"width": 2.26, "depth": 8.0, "wall": 0.39, "upright": 0.22, "gauge": 1.24}),
        ("through-sides", {"width": 8.0, "depth": 2.26, "wall": 0.22, "upright": 0.39}),
    ]:
        row(
            f"joint-C8x11.5-{mount}",
            "aisc-manual",
            "memory",
            "published",
            "Part 1, section moduli of C8x11.5",
            {"case": "joint-moduli", "mount": mount} | {f"{k}_in": v for k, v in sizes.items()},
            {"sx_in3": 8.14, "sy_in3": 0.775},
            "rel = 0.03",
        )
    row(
        "joint-pipe-2-40",
        "handbook-recalled",
        "memory",
        "published",
        "pipe 2 schedule 40, section modulus",
        {"case": "round-modulus", "diameter_in": 2.375, "wall_in": 0.154},
        {"s_in3": 0.561},
        "half_unit = { s_in3 = 0.0006 }",
    )
    for i, (diameter, wall, hole, pull, up, side) in enumerate(
        [(60.3, 3.9, 14.3, 4000.0, 500e3, 0.0), (76.2, 5.0, 17.5, 9000.0, 600e3, 300e3)]
    ):
        given = {
            "case": "round-net",
            "diameter_mm": diameter,
            "wall_mm": wall,
            "hole_mm": hole,
            "pull_n": pull,
            "up_nm": up / 1e3,
            "side_nm": side / 1e3,
        }
        most = round_section(diameter, wall, hole + 25.4 / 16, pull, up, side)
        own(f"round-net-{i + 1}", given, {"net_mpa": most}, 0.02)
    row(
        "shear-lag-L4x4x1/2",
        "aisc-manual",
        "memory",
        "published",
        "design example, single angle in tension, four bolts 3 in apart",
        {"case": "shear-lag", "off_in": 1.18, "length_in": 9.0, "connected": 0.5},
        {"u": 0.869},
        "half_unit = { u = 0.0005 }",
    )
    row(
        "block-L4x4x1/2",
        "aisc-manual",
        "memory",
        "published",
        "design example, single angle in tension, block shear",
        {
            "case": "block",
            "along": 4,
            "rows": 1,
            "end_mm": 38.1,
            "pitch_mm": 76.2,
            "gauge_mm": 0.0,
            "edge_mm": 38.1,
            "hole_mm": 22.225,
            "t_mm": 12.7,
        },
        {"gross_in2": 5.25, "net_in2": 3.72, "tension_in2": 0.531},
        "half_unit = { gross_in2 = 0.005, net_in2 = 0.005, tension_in2 = 0.0005 }",
    )
    for i, case in enumerate(
        [(2, 1, 40.0, 60.0, 0.0, 25.0, 15.0, 6.0), (3, 2, 35.0, 50.0, 40.0, 22.0, 14.0, 8.0)]
    ):
        names = ("along", "rows", "end_mm", "pitch_mm", "gauge_mm", "edge_mm", "hole_mm", "t_mm")
        gross, net, tension = (v / 25.4**2 for v in block(*case))
        own(
            f"block-edge-{i + 1}",
            {"case": "block"} | dict(zip(names, case)),
            {"gross_in2": gross, "net_in2": net, "tension_in2": tension},
            3e-3,
        )
    text = "# Written by members/regenerate.py; not by hand.\n" + "".join(ROWS)
    (HERE.parent / "members.toml").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
