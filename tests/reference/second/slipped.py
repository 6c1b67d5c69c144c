"""If it slips: bearing of the walls and of the fitting, tear-out."""

import math

import bolt
import tables


def walls(j):
    """Walls that one bolt pushes: both where a cheek lies on each side, the one under the fitting otherwise."""
    return 2 if j.hollow and j.through_sides else 1


def wall_bearing(j):
    """Nominal: a bolt through a hollow 1.8 F_y d t a wall (AISC 360-22 J3.11b, J7); one squeezed ply 2.4 d t F_u
    (J3.11a), of aluminium 2 d t F_tu (Aluminum Design Manual J.3, from memory)."""
    if j.open_section:
        return (2.0 if j.aluminium else 2.4) * j.fu * j.d * j.wall
    return walls(j) * 1.8 * j.fy * j.d * j.wall


def wall_push(j, shear):
    """Force that the walls have from one bolt, N. With a fitting on one side the bolt is a beam over both walls of a
    hollow: the wall beside the fitting carries more than the load, V (1 + a/h)."""
    if walls(j) == 2 or not j.hollow:
        return shear
    arm = (j.fitting_thickness_mm + j.wall) / 2 + gap(j)
    return shear * (1 + arm / (j.depth_on_bolt - j.wall))


def gap(j):
    """Between fitting and wall: what is given, or the plate that lies there."""
    plate = j.spreader_thickness_mm if j.support == "spreader" else 0.0
    return j.given.get("fitting_gap_mm", plate)


def fitting_bearing(j):
    """Nominal, one ply. Where nothing firm stands behind the face the plies are not squeezed: 1.8 F_y d t (AISC
    360-22 J3.11b); else 2.4 d t F_u (J3.11a), for aluminium 2 d t F_tu (Aluminum Design Manual J.3, from memory)."""
    size = j.d * j.fitting_thickness_mm
    if j.hollow and j.support in ("bare", "loose-sleeve"):
        return 1.8 * j.fit_fy * size
    return (2.0 if j.fitting_material in tables.ALUMINIUM else 2.4) * j.fit_fu * size


def fitting_bearing_en(j, edges):
    """Design bearing resistance of one ply, EN 1993-1-8 Table 3.4, load in any direction: the least of all spacings,
    and of all edges where asked, both ways. Edges belong to tear-out."""
    d0, fu = j.fitting_hole, j.fit_fu
    spacings = [j.spacing_along_mm] * (j.bolts_along > 1) + [j.spacing_across_mm] * (j.bolt_rows > 1)
    edge = j.fitting_edge_mm if edges else math.inf
    alpha = min(1.0, edge / (3 * d0), j.bolt_tensile / fu, *(p / (3 * d0) - 0.25 for p in spacings))
    k = min(2.5, 2.8 * edge / d0 - 1.7, *(1.4 * p / d0 - 1.7 for p in spacings))
    return k * alpha * fu * j.d * j.fitting_thickness_mm / 1.25


def fitting_allowable(j, kind):
    """The safer of AISC, over 2.00 (aluminium 1.95) for a service load and nominal for an ultimate one, and EN, over
    1.5 and as it is."""
    firm = not j.hollow or j.support not in ("bare", "loose-sleeve")
    factor, load = _factors(kind, firm and j.fitting_material in tables.ALUMINIUM)
    return min(fitting_bearing(j) / factor, fitting_bearing_en(j, edges=False) / load)


def _factors(kind, aluminium):
    """On a nominal strength, and on a design resistance."""
    if kind == "ultimate":
        return 1.0, 1.0
    return (1.95 if aluminium else 2.0), 1.5


def tear_out(e, hole, thickness, ultimate):
    """1.2 l_c t F_u (AISC 360-22 J3.11a), nominal, one ply."""
    return 1.2 * max(e - hole / 2, 0.0) * thickness * ultimate


def tube_tear_out(j):
    """To the end of the tube or to the next hole, whichever is nearer."""
    out = tear_out(j.end_distance_mm, j.hole, j.wall, j.fu)
    if j.bolts_along > 1:
        out = min(out, 1.2 * (j.spacing_along_mm - j.hole) * j.wall * j.fu)
    if j.bolt_rows > 1:
        out = min(out, 1.2 * (j.spacing_across_mm - j.hole) * j.wall * j.fu)
    return out


def fitting_tear_out(j):
    """To the edge of the fitting or to the next hole."""
    hole = j.fitting_hole
    out = tear_out(j.fitting_edge_mm, hole, j.fitting_thickness_mm, j.fit_fu)
    if j.bolts_along > 1:
        out = min(out, 1.2 * (j.spacing_along_mm - hole) * j.fitting_thickness_mm * j.fit_fu)
    if j.bolt_rows > 1:
        out = min(out, 1.2 * (j.spacing_across_mm - hole) * j.fitting_thickness_mm * j.fit_fu)
    return out


def tube_tear_out_allowable(j, kind):
    return tube_tear_out(j) / _factors(kind, j.aluminium)[0]


def wall_bearing_allowable(j, kind):
    """AISC; for one squeezed ply the safer of it and EN 1993-1-8 Table 3.4 with its spacings."""
    factor, load = _factors(kind, j.open_section and j.aluminium)
    aisc = wall_bearing(j) / factor
    if not j.open_section:
        return aisc
    spacings = [j.spacing_along_mm] * (j.bolts_along > 1) + [j.spacing_across_mm] * (j.bolt_rows > 1)
    alpha = min(1.0, j.bolt_tensile / j.fu, *(p / (3 * j.hole) - 0.25 for p in spacings))
    k = min(2.5, *(1.4 * p / j.hole - 1.7 for p in spacings)) if spacings else 2.5
    return min(aisc, k * alpha * j.fu * j.d * j.wall / 1.25 / load)


def fitting_tear_out_allowable(j, kind):
    """The safer of AISC (for aluminium ADM too) and EN with its edges."""
    aluminium = j.fitting_material in tables.ALUMINIUM
    factor, load = _factors(kind, aluminium)
    least = fitting_tear_out(j)
    if aluminium:  # d_e t F_tu <= 2 d t F_tu, ADM J.3 (from memory)
        least = min(least, min(j.fitting_edge_mm, 2 * j.d) * j.fitting_thickness_mm * j.fit_fu)
    return min(least / factor, fitting_bearing_en(j, edges=True) / load)
