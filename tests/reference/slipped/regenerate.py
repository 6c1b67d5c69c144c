"""Prints reference values for joints that have slipped, by other ways than closed formulas.

Usage: python3 regenerate.py   (needs numpy and scipy)

pin        beam of small elements on two supports, solved for its largest moment and near reaction
plastic    plastic and elastic modulus of a round bar, summed over thin strips
section    a tube with holes cut into strips: largest stress under a pull and two moments
block      area of a block, counted cell by cell
en         the published bearing formula in exact fractions
"""

from fractions import Fraction as F

import numpy as np
from scipy.sparse import lil_matrix
from scipy.sparse.linalg import spsolve


def beam(span, overhang, load, elements, both=False):
    """Largest moment and left reaction of a beam with a load on an overhang (on both if `both`)."""
    total = span + overhang * (2 if both else 1)
    n = elements
    h = total / n
    ei = 1.0
    size = 2 * (n + 1)
    k = np.array(
        [
            [12, 6 * h, -12, 6 * h],
            [6 * h, 4 * h * h, -6 * h, 2 * h * h],
            [-12, -6 * h, 12, -6 * h],
            [6 * h, 2 * h * h, -6 * h, 4 * h * h],
        ]
    ) * (ei / h**3)
    big = lil_matrix((size, size))
    for i in range(n):
        at = slice(2 * i, 2 * i + 4)
        big[at, at] = big[at, at].toarray() + k
    force = np.zeros(size)
    force[0] = load
    left = round(overhang / h)
    right = round((overhang + span) / h)
    if both:
        force[2 * n] = load
    full = big.tocsc()
    held = [2 * left, 2 * right]
    free = [i for i in range(size) if i not in held]
    u = np.zeros(size)
    u[free] = spsolve(full[np.ix_(free, free)], force[free])
    reaction = -(full @ u - force)[2 * left]
    moments = [abs((k @ u[2 * i : 2 * i + 4])[1]) for i in range(n)]
    return max(moments), reaction


def round_bar(d, strips=400_000):
    y = (np.arange(strips) + 0.5) / strips * d - d / 2
    width = 2 * np.sqrt(d * d / 4 - y * y)
    dy = d / strips
    plastic = float(np.sum(np.abs(y) * width) * dy)
    elastic = float(np.sum(y * y * width) * dy / (d / 2))
    return plastic, elastic


def tube(height, width, wall, holes, pull, up, side, cells=0.05):
    """Holes: (half-length along the wall, place up, place side); each a rectangle through one wall."""
    ys = np.arange(-height / 2 + cells / 2, height / 2, cells)
    xs = np.arange(-width / 2 + cells / 2, width / 2, cells)
    y, x = np.meshgrid(ys, xs, indexing="ij")
    solid = (np.abs(y) > height / 2 - wall) | (np.abs(x) > width / 2 - wall)
    for half, at_up, at_side in holes:
        if abs(at_side) > width / 2 - wall:  # in a side wall
            cut = (np.abs(y - at_up) < half) & (np.sign(x) == np.sign(at_side)) & (np.abs(x) > width / 2 - wall)
        else:
            cut = (np.abs(x - at_side) < half) & (np.sign(y) == np.sign(at_up)) & (np.abs(y) > height / 2 - wall)
        solid &= ~cut
    da = cells * cells
    area = solid.sum() * da
    i_up = (y[solid] ** 2).sum() * da
    i_side = (x[solid] ** 2).sum() * da
    return pull / area + up * height / 2 / i_up + side * width / 2 / i_side


def block(along, rows, end, pitch, gauge, hole, thickness):
    """Lengths in sixteenths of an inch as whole numbers; walks the cut line cell by cell."""
    length = end + (along - 1) * pitch
    middles = [end + i * pitch for i in range(along)]
    half = F(hole, 2)
    free = sum(1 for c in range(8 * length) if all(abs(F(2 * c + 1, 16) - m) > half for m in middles))
    shear = 2 * F(free, 8)
    across = [j * gauge for j in range(rows)]
    tension = sum(
        1
        for c in range(8 * gauge * (rows - 1))
        if all(abs(F(2 * c + 1, 16) - m) > half for m in across)
    )
    in16 = F(1, 256) * thickness
    return 2 * length * in16, shear * in16, F(tension, 8) * in16


def en_bearing(d, d0, t, fu, fub, e1=None, p1=None, e2=None, p2=None):
    d, d0, t, fu, fub = map(F, (d, d0, t, fu, fub))
    alphas = [F(1), fub / fu]
    alphas += [F(e1) / (3 * d0)] if e1 else []
    alphas += [F(p1) / (3 * d0) - F(1, 4)] if p1 else []
    ks = [F(5, 2)]
    ks += [F(28, 10) * F(e2) / d0 - F(17, 10)] if e2 else []
    ks += [F(14, 10) * F(p2) / d0 - F(17, 10)] if p2 else []
    return min(ks) * min(alphas) * fu * d * t / F(5, 4)


if __name__ == "__main__":
    # Overhang and span are whole numbers of elements.
    print("pin one fitting    5.0 + 4.0 mm, span 75 mm, 3 kN:", beam(75.0, 4.5, 3000.0, 1590))
    print("pin two cheeks     same, 3 kN in each plane:", beam(75.0, 4.5, 3000.0, 1680, True))
    print("round bar 10 mm:", round_bar(10.0))
    print(
        "tube 50 x 80 x 4, two side holes 14 wide, 5 kN, 400 and 90 N m:",
        tube(50, 80, 4, [(7, 0, 39), (7, 0, -39)], 5e3, 400e3, 90e3),
    )
    print(
        "tube 80 x 50 x 4, two holes 14 wide top and bottom:",
        tube(80, 50, 4, [(7, 38, 0), (7, -38, 0)], 5e3, 400e3, 90e3),
    )
    gv, nv, nt = block(3, 2, 20, 48, 40, 10, 2)
    strength = min(F(6, 10) * 58 * nv, F(6, 10) * 36 * gv) + 58 * nt
    print("block 3 x 2, e 1 1/4, p 3, g 2 1/2, hole 5/8, t 1/8 in, A36:", float(gv), float(nv), float(nt), float(strength))
    print("EN M12 8.8 in S235 5 mm, far from edges:", float(en_bearing(12, 13, 5, 360, 800)) / 1e3)
    print("EN same, e1 20 e2 18:", float(en_bearing(12, 13, 5, 360, 800, e1=20, e2=18)) / 1e3)
    print("EN same, p1 35 p2 30:", float(en_bearing(12, 13, 5, 360, 800, p1=35, p2=30)) / 1e3)
