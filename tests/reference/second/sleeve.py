"""A sleeve round the bolt: section, squash load, and what its weld carries."""

import math

import face
import tables


def section(j):
    outer = j.sleeve_outer
    inner = outer - 2 * j.sleeve_wall
    return math.pi / 4 * (outer**2 - inner**2)


def squash(j):
    """F_y A (AISC 360-22 J4.4, L/r <= 25). Aluminium that is welded at both ends has welded strength all over where
    no place is farther than 25 mm from a weld, and at its ends anyway."""
    fy, _, fyw, _ = tables.METALS[j.sleeve_material][:4]
    welded = j.support == "through-sleeve" and j.sleeve_welded == "yes"
    stress = fyw if welded else fy
    outer, inner = j.sleeve_outer, j.sleeve_outer - 2 * j.sleeve_wall
    slender = length(j) / (math.sqrt(outer**2 + inner**2) / 4)
    if slender > 25:  # AISC 360-22 E3, pinned ends
        euler = math.pi**2 * tables.METALS[j.sleeve_material][4] / slender**2
        stress *= 0.658 ** (stress / euler) if stress / euler <= 2.25 else 0.877 * euler / stress
    alone = off_center(j, section(j) * stress, stress if slender <= 25 else (fyw if welded else fy), slender)
    stress = alone / section(j)
    if j.member != "rectangular-tube":
        return alone
    # The faces come in by half of what the sleeve shortens, and by the gap where it is short.
    short = j.sleeve_short_mm if j.support == "loose-sleeve" else 0.0
    shortening = stress * length(j) / tables.METALS[j.sleeve_material][4]
    faces = face.LOWER_BOUND * face.curve(j)[1](max((shortening + short) / 2, 1e-6)) * face.near_open_end(j)
    return alone + faces


def off_center(j, column, fy, slender):
    """The bolt stands at one side of the bore: thrust and bending with it reach yield on the near side, with the bending
    amplified by the thrust. AISC 360-22 H1 as a straight line with the elastic moment; found by halving."""
    outer, inner = j.sleeve_outer, j.sleeve_outer - 2 * j.sleeve_wall
    beside = (inner - j.d) / 2
    modulus = math.pi * (outer**4 - inner**4) / (32 * outer)
    euler = math.pi**2 * tables.METALS[j.sleeve_material][4] * section(j) / slender**2
    low, high = 0.0, min(column, 0.999999 * euler)
    for _ in range(80):
        mid = (low + high) / 2
        used = mid / column + mid * beside / (1 - mid / euler) / (modulus * fy)
        low, high = (mid, high) if used <= 1 else (low, mid)
    return low


def length(j):
    """A loose sleeve stands between the walls, a through sleeve ends flush with their outsides."""
    if j.support == "loose-sleeve":
        return j.depth_on_bolt - 2 * j.wall - j.sleeve_short_mm
    return j.depth_on_bolt
