"""Write ../formulas_computed.toml: formulas by another way than calc-core's.

    pip install numpy scipy shapely sectionproperties
    python tests/reference/formulas/regenerate.py

exact-screw     torque of a screw with its lead angle, where calc-core takes a small one
principal       von Mises from the principal stresses of the tensor, torsion of the core by finite elements
friction        friction at a nut factor: root of the exact screw's torque
dishing         limit load of an annular plate: linear programme of its equilibrium (lower bound)
covered, mean   areas and widths of shapes cut by a geometry library
holed           section properties by a finite-element library
prism           a bar under its load, by its energy
pin, european   the published conditions, solved for the load factor by bisection
root            roots by another solver
oval, play      geometry by coordinates
"""

import pathlib

import numpy as np
import shapely
import shapely.affinity
from scipy.optimize import brentq, linprog
from sectionproperties.analysis import Section
from sectionproperties.pre import CompoundGeometry, Geometry
from sectionproperties.pre import library as shapes

OUT = pathlib.Path(__file__).parent.parent / "formulas_computed.toml"
rows = []


def row(name, topic, case, place, value, rel=1e-6, **inputs):
    def text(v):
        return f'"{v}"' if isinstance(v, str) else repr(float(v))

    given = "".join(f", {k} = {text(v)}" for k, v in inputs.items())
    rows.append(
        f'[[row]]\nid = "{name}"\nsource = "own-derivation"\nplace = "{place}"\nflag = "computed"\n'
        f'origin = "own"\ninput = {{ topic = "{topic}", case = "{case}"{given} }}\n'
        f"expect = {{ value = {float(value)!r} }}\nrel = {rel}\n"
    )


def screw(d, pitch, collar, mu_thread, mu_face):
    """Torque per unit of clamp of a 60 degree thread with its lead angle."""
    dm = d - 0.649519 * pitch
    lead = np.arctan(pitch / (np.pi * dm))
    # Flank angle in the section square to the helix.
    flank = np.arctan(np.tan(np.radians(30)) * np.cos(lead))
    return dm / 2 * np.tan(lead + np.arctan(mu_thread / np.cos(flank))) + mu_face * collar / 2


# Tightening. 1/2-13, mm.
D, P = 12.7, 25.4 / 13
for mu in (0.10, 0.15, 0.25):
    row(f"exact-screw-{mu}", "tightening", "nut-factor", "screw with its lead angle, 1/2-13, collar 1.25 d",
        screw(D, P, 1.25 * D, mu, mu) / D, 0.012, thread="unc-1.2", friction=mu, collar_d=1.25)
for k in (0.15, 0.20, 0.30):
    mu = brentq(lambda m: screw(D, P, 1.25 * D, m, m) / D - k, 0.01, 1)
    row(f"friction-at-k-{k}", "tightening", "implied-friction", "root of the torque of a screw with its lead angle",
        mu, 0.02, thread="unc-1.2", k=k, collar_d=1.25)

area = np.pi / 4 * (D - 0.9743 * P) ** 2
ds = np.sqrt(4 * area / np.pi)
bar = Section(shapes.circular_section(d=ds, n=256).create_mesh([0.15]))
bar.calculate_geometric_properties()
bar.calculate_warping_properties()
j = bar.get_j()
for clamp, torque in ((40e3, 40e3), (60e3, 90e3)):
    sigma, tau = clamp / area, torque * (ds / 2) / j
    s = np.linalg.eigvalsh(np.array([[sigma, tau, 0], [tau, 0, 0], [0, 0, 0]]))
    mises = np.sqrt(((s[0] - s[1]) ** 2 + (s[1] - s[2]) ** 2 + (s[2] - s[0]) ** 2) / 2)
    row(f"torsion-{clamp / 1e3:.0f}-kn", "tightening", "combined-stress",
        "principal stresses; torsion constant by finite elements, MPa", mises, 2e-3,
        thread="unc-1.2", clamp_n=clamp, torque_nmm=torque)


def dishing(fy, t, outer, bore, nut, reaction, n=4000):
    """Largest load: |M_r|, |M_t| <= m, d(r M_r)/dr - M_t = r Q, no moment at the rims. Diameters."""
    m = fy * t**2 / 4
    r = np.linspace(bore / 2, outer / 2, n + 1)
    h, mid = r[1] - r[0], (r[1:] + r[:-1]) / 2
    loaded = ((mid > nut / 2) & (mid < reaction / 2)).astype(float)
    # Unknowns: F, then y = r M_r at the nodes, then M_t at the middles.
    size = 1 + (n + 1) + n
    from scipy.sparse import lil_matrix

    eq = lil_matrix((n + 2, size))
    for i in range(n):
        eq[i, 1 + i], eq[i, 2 + i] = -1 / h, 1 / h
        eq[i, 1 + n + 1 + i] = -1
        # Turned by the load: F/(2 pi) where the shear is.
        eq[i, 0] = loaded[i] / (2 * np.pi)
    eq[n, 1], eq[n + 1, 1 + n] = 1, 1
    bounds = [(0, None)] + [(-m * ri, m * ri) for ri in r] + [(-m, m)] * n
    got = linprog([-1] + [0] * (size - 1), A_eq=eq.tocsr(), b_eq=np.zeros(n + 2), bounds=bounds, method="highs")
    return -got.fun


for name, a in {
    "n-washer": (250, 1.9, 27.0, 13.5, 19.05, 24.0),
    "wide-washer": (250, 2.5, 37.0, 13.0, 18.0, 33.0),
}.items():
    row(f"dishing-{name}", "tightening", "dishing", "limit load of an annular plate by a linear programme, N",
        dishing(*a), 2e-3, fy_mpa=a[0], t_mm=a[1], outer_mm=a[2], bore_mm=a[3], nut_mm=a[4], reaction_mm=a[5])

# Supports.
def disc(d):
    return shapely.Point(0, 0).buffer(d / 2, quad_segs=4096)


for name, (o, i, wo, wi) in {
    "all": (21.3, 15.8, 28.0, 13.5),
    "small-washer": (33.4, 26.6, 30.0, 13.5),
    "wide-bore": (21.3, 15.8, 28.0, 17.0),
}.items():
    both = disc(o).difference(disc(i)).intersection(disc(wo).difference(disc(wi)))
    row(f"covered-end-{name}", "springs", "covered-end", "overlap of two rings by a geometry library, mm2",
        both.area, 1e-6, outer_mm=o, inner_mm=i, washer_mm=wo, bore_mm=wi)
ring = Section(shapes.circular_section(d=20, n=192).create_mesh([0.4]))
ring.calculate_geometric_properties()
# A bar that stores F²L/(2EA): k = F²/(2U).
energy = 1e3**2 * 50 / (2 * 200e3 * ring.get_area())
row("bar-20-by-50", "springs", "prism", "area by finite elements, stiffness by energy, N/mm",
    1e3**2 / (2 * energy), 1e-3, modulus_mpa=200e3, d_mm=20, length_mm=50)
for thread, d, p in (("m12", 12, 1.75), ("unc-1.2", D, P)):
    a = np.pi / 4 * (d - (0.938194 if thread == "m12" else 0.9743) * p) ** 2
    row(f"equal-circle-{thread}", "springs", "equal-circle", "root of the area of a circle, mm",
        brentq(lambda x: disc(2 * x).area - a, 1, d) * 2, 1e-5, thread=thread)
row("root-of-a-stiff-curve", "springs", "root", "another root finder: 1/(1 + (x/3)^-1.9)^(1/1.9)·x = 2",
    brentq(lambda x: x / (1 + (x / 3) ** 1.9) ** (1 / 1.9) - 2, 0.1, 50), 1e-7)

# Strength.
six = shapely.Polygon([(np.cos(t), np.sin(t)) for t in np.arange(6) * np.pi / 3])
for s in (19.0, 30.0):
    hexagon = shapely.affinity.scale(six, s / np.sqrt(3), s / np.sqrt(3))
    x0, y0, x1, y1 = hexagon.bounds
    row(f"hexagon-{s:.0f}", "slipped", "mean-width", "bounds of a hexagon, mm", ((x1 - x0) + (y1 - y0)) / 2, 1e-9,
        flats_mm=s)


def load_factor(holds):
    """How many times the load is carried, by bisection of the published condition."""
    return brentq(lambda x: holds(x) - 1, 1e-6, 1e6, xtol=1e-13)


for v, t in ((0.4, 0.5), (0.9, 0.1), (0.05, 0.7)):
    row(f"en-together-{v}-{t}", "slipped", "european", "Table 3.4 of EN 1993-1-8, solved for the load factor",
        1 / load_factor(lambda x: max(x * v + x * t / 1.4, x * t)), 1e-9, shear=v, tension=t)
    row(f"pin-together-{v}-{t}", "slipped", "pin", "square condition for pins, solved for the load factor",
        1 / load_factor(lambda x: (x * v) ** 2 + (x * t) ** 2), 1e-9, shear=v, tension=t)
    def left(x):
        """What shear leaves of the tension; the condition is that the tension is below it."""
        fnt = 90.0
        frv = x * v * 54 / 2
        return min(1.3 * fnt - 2 * fnt / 54 * frv, fnt)
    by_tension = brentq(lambda x: x * t * 90 - left(x), 1e-6, 1e3, xtol=1e-13)
    row(f"us-together-{v}-{t}", "slipped", "aisc", "J3.8 of AISC 360-22, solved for the load factor",
        max(1 / by_tension, v), 1e-9, shear=v, tension=t)
pin = Section(shapes.circular_section(d=12, n=256).create_mesh([0.2]))
pin.calculate_geometric_properties()
wxx = min(pin.get_z()[:2])
row("pin-strength-12", "slipped", "pin-strength", "elastic modulus by finite elements, 1.5 W f_y, N mm",
    1.5 * wxx * 640, 1e-3, d_mm=12, fy_mpa=640)


def tube(h, b, t):
    return shapely.box(-b / 2, -h / 2, b / 2, h / 2).difference(
        shapely.box(-b / 2 + t, -h / 2 + t, b / 2 - t, h / 2 - t))


def stress(shape, pull, about_x, about_y, at):
    """Stress at a place, from area and second moments by finite elements."""
    made = CompoundGeometry([Geometry(p) for p in shape.geoms]) if hasattr(shape, "geoms") else Geometry(shape)
    s = Section(made.create_mesh([1.0]))
    s.calculate_geometric_properties()
    ixx, iyy, _ = s.get_ic()
    return pull / s.get_area() + about_x * at[1] / ixx + about_y * at[0] / iyy


t60 = tube(60, 40, 3)
side_holes = t60.difference(shapely.box(-21, -6, 21, 6))
top_holes = t60.difference(shapely.box(-6, -31, 6, 31))
two_rows = t60.difference(shapely.unary_union([shapely.box(-21, y - 5, 21, y + 5) for y in (-15, 15)]))
for name, shape, hole, holes, spacing, top, rim in (
    ("sides", side_holes, 12, 1, 0, 0, 6),
    ("faces", top_holes, 12, 1, 0, 1, 30),
    ("two-rows", two_rows, 10, 2, 30, 0, 20),
):
    row(f"hole-stress-{name}", "slipped", "hole-stress", "60 × 40 × 3 with holes, second moments by finite elements, MPa",
        # calc-core leaves out the second moment that a hole in a face has about itself.
        stress(shape, 5e3, 500e3, 0, (0, rim)), 1e-3 if top else 1e-6, hole_mm=hole, holes=holes, spacing_mm=spacing, top=top)
row("net-section-sides-finite-elements", "slipped", "net-section",
    "60 × 40 × 3, 12 mm holes in the sides, by finite elements, MPa",
    stress(side_holes, 5e3, 400e3, 90e3, (20, 30)), 1e-6, hole_mm=12)
# A bolt of 12 in holes of 13.5 and 14: from the place where it touches on one side to the other.
touch = lambda hole: (hole - 12) / 2
row("slip-travel", "slipped", "slip-travel", "places of touching, mm",
    2 * touch(13.5) + 2 * touch(14.0), 1e-9, d_mm=12, first_mm=13.5, second_mm=14.0)
row("pressure-on-a-rim", "slipped", "pressure", "force over the shadow of the bolt, MPa",
    8e3 / (shapely.box(0, 0, 12, 4).area), 1e-9, force_n=8e3, d_mm=12, t_mm=4)
row("clear-between-holes", "slipped", "clear-between", "distance of two discs, mm",
    disc(14).distance(shapely.affinity.translate(disc(14), 40, 0)), 1e-6, distance_mm=40, hole_mm=14)

# Readings. An oval hole: two discs of the short diameter apart, hull; the tube's end 60 mm from the first.
slot = shapely.unary_union([disc(14.3), shapely.affinity.translate(disc(14.3), 3, 0)]).convex_hull
x0, y0, x1, y1 = slot.bounds
row("oval-slipped-by", "readings", "oval-slipped", "length less width of a slot, mm", (x1 - x0) - (y1 - y0), 1e-9,
    long_mm=x1 - x0, short_mm=y1 - y0)
row("oval-play", "readings", "oval-play", "room of a 12.7 mm disc in the slot, mm",
    brentq(lambda x: shapely.affinity.translate(disc(12.7), x1 - 6.35 - x, 0).bounds[0] - x0, 0, 10), 1e-9,
    long_mm=x1 - x0, short_mm=y1 - y0)
moved = 60 - 3
row("oval-edge-left", "readings", "oval-edge", "from the middle of the far end to the tube's end, mm", moved, 1e-9,
    long_mm=x1 - x0, short_mm=y1 - y0, end_mm=60)

OUT.write_text("# Written by formulas/regenerate.py; not by hand.\n\n" + "\n".join(rows), encoding="utf-8")
print(len(rows), "rows")
