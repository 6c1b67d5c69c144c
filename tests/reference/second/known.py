"""The script against printed values, and against sums that are done another way. Silent when all is well."""

import math

import bolt
import clamp
import face
import loads
import section
import slipped
import tables
from joint import Joint


def near(got, want, rel, what):
    assert abs(got / want - 1) <= rel, f"{what}: {got} instead of {want}"


def main():
    inch2, lbf = tables.INCH**2, tables.LBF
    # Shigley 9e Table 8-2.
    for name, area in (("unc-3.8", 0.0775), ("unc-1.2", 0.1419), ("unf-1.2", 0.1599), ("unc-3.4", 0.334)):
        near(bolt.stress_area(Joint({"bolt": name})) / inch2, area, 0.003, name)
    # ISO 898-1.
    for name, area in (("m8", 36.6), ("m10", 58.0), ("m12", 84.3), ("m16", 157.0), ("m20", 245.0)):
        near(bolt.stress_area(Joint({"bolt": name, "bolt_grade": "iso-8.8"})), area, 0.004, name)
    # 3/8-16 grade 5 to three quarters of proof: 4,940 lbf; K 0.20 takes 30.9 lbf ft.
    j = Joint({"bolt": "unc-3.8"})
    near(bolt.clamp(j)[0] / lbf, 4940, 0.001, "clamp")
    near(bolt.torque(j) / (lbf * tables.INCH * 12 / 1e3), 30.9, 0.002, "torque")
    # M20 of class 4.6 in shear through its threads, one plane: 47.04 kN (EN 1993-1-8 sheet, A_s rounded to 245).
    j = Joint({"bolt": "m20", "bolt_grade": "iso-4.6", "mount": "from-top", "tube_depth_mm": 15, "tube_wall_mm": 2})
    assert bolt.threads_in_plane(j)
    near(bolt.shear_en(j), 47040, 0.002, "shear")
    # AISC: 1/2 bolt, 1/8 A36, edge 3/4 in, hole 9/16: tear-out 4.08 kip.
    near(slipped.tear_out(19.05, 9 / 16 * 25.4, 3.175, 58 * tables.KSI) / (1000 * lbf), 4.08, 0.002, "tear-out")
    # HSS 2 x 2 x 1/8 A500 B, through-bolt, both walls of 0.116 in: 9.63 kip (printed to three figures).
    j = Joint({"tube_wall_mm": 0.116 * 25.4, "tube_material": "a500-b", "tube_depth_mm": 50.8})
    near(slipped.wall_bearing(j) / (1000 * lbf), 9.63, 0.003, "through-bolt")
    # One frustum of Shigley's solutions 8-24: d 0.5, D 0.75, t 0.5 in, 30 Mpsi: 33.30 Mlbf/in; two of them in series
    # are a stack of 1 in.
    stack = [(25.4, 30e3 * tables.KSI)]
    near(clamp.frusta(stack, 12.7, 19.05) / (1e6 * lbf / 25.4), 33.30 / 2, 0.003, "frusta")
    # D-value of 3.5 t and 2.0 t: 12.49 kN. 49 CFR 393.71 at 7,000 lb: 9,100 and 4,200 lbf.
    j = Joint({"load_rule": "un-r55", "towing_mass_kg": 3500, "trailer_mass_kg": 2000})
    near(next(c for c in loads.cases(j) if c.name == "d-value-pulled").force[0], 12490, 0.001, "D")
    j = Joint({"load_rule": "us-tow-bar", "trailer_mass_kg": 7000 * tables.LB})
    named = {c.name: c.force for c in loads.cases(j)}
    near(named["tow-bar-pulled"][0] / lbf, 9100, 1e-6, "tow-bar")
    near(named["tow-bar-bent-up"][2] / lbf, 4200, 1e-6, "tow-bar, bent")
    # A rectangle with round corners, summed in thin layers.
    b, h, r, n = 80.0, 60.0, 12.0, 4000
    area = inertia = 0.0
    for i in range(n):
        z = -h / 2 + (i + 0.5) * h / n
        inner = h / 2 - abs(z)
        wide = b if inner >= r else b - 2 * r + 2 * math.sqrt(r * r - (r - inner) ** 2)
        area += wide * h / n
        inertia += wide * z * z * h / n
    near(section._box(b, h, r)[0], area, 1e-4, "area")
    near(section._box(b, h, r)[1], inertia, 1e-4, "inertia")
    # Square tubes 40 x 40 x 4 and 60 x 60 x 3 of EN 10219-2, outside radius two walls: 5.35 cm2 and 11.1 cm4, 6.61 and
    # 35.1 (tables, from memory). With sharp corners it would be 5.76 and 12.6, 6.84 and 37.1.
    for (size, wall), (square, fourth) in {(40, 4): (5.35, 11.1), (60, 3): (6.61, 35.1)}.items():
        a, i = section.tube(size, size, wall, 2 * wall)
        near(a / 100, square, 0.002, "table, area")
        near(i / 1e4, fourth, 0.004, "table, inertia")
    # The fitted face grows with indentation and begins at its stiffness.
    j = Joint({"tube_width_mm": 80, "tube_depth_mm": 60, "tube_wall_mm": 4, "bolt": "m12", "bolt_grade": "iso-8.8"})
    stiffness, force = face.curve(j)
    near(force(1e-5) / 1e-5, stiffness, 0.01, "face")
    assert force(0.5) < force(1.0) < force(2.0)


if __name__ == "__main__":
    main()
