"""The weld of a through sleeve at one face: a groove bevelled into the edge of the hole, sleeve behind it.

Strength: weld metal on its throat (AISC 360-22 J2.4, 0.60 F_EXX with 70 ksi filler; aluminium filler 4043, the lower of
the usual two, 11.5 ksi in longitudinal shear, from memory) and the metal beside it, 0.60 F_u on its thickness (J4.2),
softened where it is aluminium. Demand: what the bolt brings to the wall beside the fitting and the whole pull, as if
nothing else helped.
"""

import math

import slipped
import tables

DEEPEST = 6.35  # a deeper groove gains nothing on walls of trailers


def strength(j):
    """Nominal, N."""
    length = math.pi * j.sleeve_outer
    throat = min(j.wall, DEEPEST)
    filler = 11.5 * tables.KSI if j.aluminium else 0.60 * 70 * tables.KSI
    beside = 0.60 * min(
        tables.METALS[j.tube_material][3] * j.wall, tables.METALS[j.sleeve_material][3] * throat
    )
    return length * min(filler * throat, beside)


def use(j, kind, shear, pull):
    """Of a service or an ultimate load."""
    factor = 1.0 if kind == "ultimate" else 1.95 if j.aluminium else 2.0
    return factor * math.hypot(slipped.wall_push(j, shear) / j.planes, pull) / strength(j)
