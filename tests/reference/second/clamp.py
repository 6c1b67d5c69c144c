"""What is left of the clamp: first days, roughness, heat; springs of bolt and grip."""

import math

import bolt
import sleeve
import tables

STEEL = 29000 * tables.KSI


def layers(j):
    """From head to nut: (thickness, modulus, expansion in 1e-6/K)."""
    washer = (j.washer_thickness, STEEL, 11.7)
    metal = tables.METALS[j.fitting_material]
    fitting = (j.fitting_thickness_mm, metal[4], metal[6])
    member = (j.depth_on_bolt, j.modulus, j.expansion)
    inner = [fitting, member, fitting] if j.planes == 2 else [fitting, member]
    return [washer, *inner, washer]


def frusta(stack, d, start):
    """Two cones of 30 degrees from head and nut, meeting in the middle (Shigley 9e Eq. 8-20), N/mm."""
    total = sum(t for t, *_ in stack)
    flex = 0.0
    at = 0.0
    for thickness, modulus, *_ in stack:
        for low, high in _halves(at, at + thickness, total / 2):
            t = high - low
            if t <= 0:
                continue
            near = low if high <= total / 2 + 1e-9 else total - high
            wide = start + 2 * near * math.tan(math.radians(30))
            x = 1.155 * t
            k = (0.5774 * math.pi * modulus * d) / math.log(
                ((x + wide - d) * (wide + d)) / ((x + wide + d) * (wide - d))
            )
            flex += 1 / k
        at += thickness
    return 1 / flex


def _halves(low, high, middle):
    return [(low, min(high, middle)), (max(low, middle), high)]


def member_stiffness(j):
    """Spring of what is clamped, N/mm; None where it hangs on how a washer dishes or a plate bends."""
    start = 1.5 * j.d
    if j.support == "solid" or j.member == "solid-bar" or j.open_section:
        return frusta(layers(j), j.d, start)
    if j.support == "through-sleeve":
        modulus = tables.METALS[j.sleeve_material][4]
        tube = modulus * sleeve.section(j) / j.depth_on_bolt
        ends = [layer for layer in layers(j) if layer[0] != j.depth_on_bolt]
        return 1 / (1 / tube + 1 / frusta(ends, j.d, start))
    return None


def interfaces(j):
    """Faces that bed in, beside thread and the two under head and nut: washers on fitting, fitting on member."""
    return 4 if j.planes == 2 else 3


def embedding(j):
    """Sum of what the faces flatten, mm: VDI 2230 table 5, loaded in shear, Rz 10 to 40 (from memory)."""
    return (3.0 + 2 * 4.5 + 2.5 * interfaces(j)) / 1e3


def heat(j):
    """Change of clamp by heat or cold, N: the layers' expansion beside the bolt's, over the springs."""
    alpha = 16.0 if j.stainless else 11.7
    strain = abs(sum(t * (a - alpha) for t, _, a in layers(j))) * 1e-6
    return strain * j.temperature_swing_k / (1 / bolt.stiffness(j) + 1 / member_stiffness(j))


def left(j):
    """Least clamp left, N, what was lost, N, and the bolt's share of an outside pull; None where the grip's spring is
    not ours, or a sleeve does not carry the clamp with ease."""
    km = member_stiffness(j)
    if km is None or j.support == "through-sleeve" and sleeve.squash(j) < 2 * bolt.clamp(j)[2]:
        return None
    kb = bolt.stiffness(j)
    least = bolt.clamp(j)[1]
    relaxed = 0.025 * least  # Munse 1967, bare plies; RCSC commentary
    spring = 1 / (1 / kb + 1 / km)
    bedded = embedding(j) * spring
    stainless = j.stainless
    lost = relaxed + bedded + heat(j)
    return max(least - lost, 0.0), lost, kb / (kb + km)
