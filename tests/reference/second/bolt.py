"""The bolt: stress area, proof load, torque to clamp, threads at the slip planes, shear strength."""

import math

import tables


def stress_area(j):
    """Inch: ASME B1.1, (pi/4)(d - 0.9743 p)^2; metric: ISO 898-1, the mean of pitch and minor diameter."""
    if j.system == "inch":
        return math.pi / 4 * (j.d - 0.9743 * j.pitch) ** 2
    d2, d3 = j.d - 0.649519 * j.pitch, j.d - 1.226869 * j.pitch
    return math.pi / 4 * ((d2 + d3) / 2) ** 2


def proof_load(j):
    return j.proof * stress_area(j)


def torque(j):
    """T = K d F (Shigley Eq. 8-27), N m; F is the wanted share of the proof load."""
    given = j.given.get("torque_nm")
    return given if given is not None else j.nut_factor * j.d * j.preload_share * proof_load(j) / 1e3


def clamp(j):
    """Nominal, least and largest clamp, N: F = T/(K d), and (1 -/+ scatter) F (NASA-STD-5020B)."""
    nominal, most, least = (torque(j) * 1e3 / (k * j.d) for k in (j.nut_factor, *j.nut_factors))
    return nominal, least * (1 - j.scatter), most * (1 + j.scatter)


def lengths(j):
    """Plain length, threaded length in the grip, whole length, mm (Shigley Table 8-7).

    The shortest bolt that stands two pitches past its nut: of all that fit, the one with most thread in the grip.
    """
    whole = j.bolt_length
    if j.system == "inch":
        thread = 2 * j.d + (0.25 if whole <= 6 * tables.INCH else 0.5) * tables.INCH
    else:
        thread = 2 * j.d + (6 if whole <= 125 else 12 if whole <= 200 else 25)
    plain = max(whole - thread, 0.0)
    plain = min(plain, j.grip)
    return plain, j.grip - plain, whole


def stiffness(j):
    """k_b = A_d A_t E/(A_d l_t + A_t l_d), N/mm (Shigley Table 8-7; E of steel 207 GPa as printed there, austenitic
    stainless 193 GPa)."""
    modulus = 193000.0 if j.stainless else 207000.0
    plain, threaded, _ = lengths(j)
    at, ad = stress_area(j), math.pi / 4 * j.d**2
    return ad * at * modulus / (ad * threaded + at * plain)


def threads_in_plane(j):
    """Whether thread lies in the slip plane that is farthest from the head."""
    plain, _, _ = lengths(j)
    reach = j.washer_thickness + j.fitting_thickness_mm
    last = j.grip - reach if j.planes == 2 else reach
    return plain < last


def beside_packing(j):
    """EN 1993-1-8, 3.6.1(12): of a bolt through packing thicker than a third of it, 9 d/(8 d + 3 t_p); plates between the
    fitting and a tube are packing. Taken for the American strength as well, which has its own in J5.2."""
    between = j.spreader_thickness_mm if j.support == "spreader" and not j.open_section else 0.0
    packing = j.given.get("fitting_gap_mm", between)
    return 9.0 * j.d / (8.0 * j.d + 3.0 * packing) if packing > j.d / 3.0 else 1.0


def shear_aisc(j):
    """Nominal shear strength of one bolt over all its planes: AISC 360-22 Table J3.2."""
    threads = threads_in_plane(j)
    if j.bolt_grade == "a325":
        stress = (54 if threads else 68) * tables.KSI
    elif j.bolt_grade == "a490":
        stress = (68 if threads else 84) * tables.KSI
    else:
        stress = (0.450 if threads else 0.563) * j.bolt_tensile
    return beside_packing(j) * j.planes * stress * math.pi / 4 * j.d**2


def shear_en(j):
    """Design shear resistance of one bolt over all its planes: EN 1993-1-8 Table 3.4.

    Grades that the table does not name take the lower of its factors.
    """
    if threads_in_plane(j):
        factor = 0.6 if j.bolt_grade in ("iso-4.6", "iso-5.6", "iso-8.8") else 0.5
        area = stress_area(j)
    else:
        factor, area = 0.6, math.pi / 4 * j.d**2
    return beside_packing(j) * j.planes * factor * j.bolt_tensile * area / 1.25


def shear_allowable(j, kind):
    """The safer. Service: AISC over 2.00, EN over 1.5 on a variable action; proof, which must leave no set: no more
    than yield in shear, f_y/sqrt 3 over the area that EN takes; ultimate: AISC nominal, EN design."""
    if kind == "service":
        return min(shear_aisc(j) / 2.0, shear_en(j) / 1.5)
    strength = min(shear_aisc(j), shear_en(j))
    if kind == "ultimate":
        return strength
    area = stress_area(j) if threads_in_plane(j) else math.pi / 4 * j.d**2
    return min(strength, beside_packing(j) * j.planes * area * j.bolt_yield / math.sqrt(3))
