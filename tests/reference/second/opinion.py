"""Computes every quantity of every joint.

    python3 opinion.py            # reads joints.jsonl, writes opinion.csv
    python3 opinion.py draw       # draws joints.jsonl anew first
"""

import csv
import json
import pathlib
import sys

import bolt
import clamp
import draw
import face
import group
import loads
import section
import sleeve
import slipped
import weld
from joint import Joint

HERE = pathlib.Path(__file__).parent


def opinion(j):
    """Yields (quantity, value, unit)."""
    yield "stress_area", bolt.stress_area(j), "mm2"
    yield "proof_load", bolt.proof_load(j), "N"
    if j.nut_factor is not None:
        yield "torque", bolt.torque(j), "N m"
        for name, value in zip(("nominal", "min", "max"), bolt.clamp(j)):
            yield f"clamp_{name}", value, "N"
    yield "bolt_stiffness", bolt.stiffness(j), "N/mm"
    forces = {}
    for case in loads.cases(j):
        for name, value in zip(("longitudinal", "transverse", "vertical"), case.force):
            yield f"case.{case.name}.{name}", value, "N"
        bolts = group.bolt_forces(j, case)
        forces[case.name] = (case, bolts)
        for name, values in zip(("bolt_shear", "bolt_pull", "bolt_pull_at_least"), zip(*bolts)):
            yield f"case.{case.name}.{name}", max(values), "N"
    by_kind = {kind: [] for kind in ("service", "proof", "ultimate")}
    for case, bolts in forces.values():
        by_kind[case.kind] += [(shear, pull) for shear, pull, _ in bolts]
    service = by_kind["service"]
    if j.member == "rectangular-tube" and j.hollow and j.support in ("bare", "loose-sleeve", "through-sleeve") and face.in_range(j):
        stiffness, _ = face.curve(j)
        yield "face_stiffness", face.LOWER_BOUND * stiffness, "N/mm"
        for percent in (1, 3):
            yield f"face_{percent}pct", face.at_share(j, percent / 100), "N"
        yield "end_factor", face.near_open_end(j), "1"
    if j.support in ("loose-sleeve", "through-sleeve"):
        yield "sleeve_area", sleeve.section(j), "mm2"
        if j.member != "rectangular-tube" or face.in_range(j):
            yield "sleeve_squash", sleeve.squash(j), "N"
    tight = clamp.left(j) if j.nut_factor is not None else None
    if tight is not None:
        left, lost, share = tight
        yield "clamp_lost", lost, "N"
        yield "bolt_share", share, "1"
        pull = max((p for _, p in service), default=0.0)
        if pull > 0:  # Shigley Eq. 8-24
            yield "bolt_service", max(bolt.clamp(j)[2] + share * pull + clamp.heat(j), pull), "N"
        # Where losses take more than half, the small rest says nothing about the formulas that follow.
        if left > 0.5 * bolt.clamp(j)[1]:
            if j.mu is not None and max((s for s, _ in service), default=0.0) > 0:
                grips = (1.5 * s / (j.planes * j.mu * max(left - (1 - share) * p, 1e-9)) for s, p in service)
                yield "use.slip.service", max(grips), "1"
            if pull > 0:  # the whole pull comes off the clamp, nothing is left to the springs (AISC 360-22 J3.10)
                yield "use.opening.service", 1.5 * pull / left, "1"
    yield "bolt_shear_aisc", bolt.shear_aisc(j), "N"
    yield "bolt_shear_en", bolt.shear_en(j), "N"
    welded = j.support == "through-sleeve" and j.sleeve_welded == "yes"
    if welded:
        yield "sleeve_weld", weld.strength(j), "N"
    on_walls = j.hollow and j.support != "through-sleeve"
    if on_walls or j.open_section:
        yield "wall_bearing", slipped.wall_bearing(j), "N"
    if on_walls:
        yield "tube_tear_out", slipped.tube_tear_out(j), "N"
    if j.member != "solid-bar":
        yield "fitting_bearing", slipped.fitting_bearing(j), "N"
    yield "fitting_tear_out", slipped.fitting_tear_out(j), "N"
    for kind, loaded in by_kind.items():
        if not loaded:
            continue
        most = max(s for s, _ in loaded)
        yield f"use.bolt-shear.{kind}", most / bolt.shear_allowable(j, kind), "1"
        if kind == "proof":
            continue
        if welded:
            yield f"use.sleeve-weld.{kind}", max(weld.use(j, kind, s, p) for s, p in loaded), "1"
        if on_walls or j.open_section:
            push = slipped.wall_push(j, most)
            yield f"use.wall-bearing.{kind}", push / slipped.wall_bearing_allowable(j, kind), "1"
        if on_walls:
            one = push / slipped.walls(j)
            yield f"use.tube-tear-out.{kind}", one / slipped.tube_tear_out_allowable(j, kind), "1"
        if j.member != "solid-bar":
            yield f"use.fitting-bearing.{kind}", most / j.planes / slipped.fitting_allowable(j, kind), "1"
        yield f"use.fitting-tear-out.{kind}", most / j.planes / slipped.fitting_tear_out_allowable(j, kind), "1"
    if j.member == "rectangular-tube" and on_walls:
        for case, _ in forces.values():
            for name, value in zip(("gross", "net"), section.stresses(j, case)):
                yield f"section_{name}.{case.name}", value, "MPa"


def main():
    path = HERE / "joints.jsonl"
    if "draw" in sys.argv[1:]:
        path.write_text("".join(json.dumps(j) + "\n" for j in draw.joints()))
    with (HERE / "opinion.csv").open("w", newline="") as out:
        rows = csv.writer(out, lineterminator="\n")
        rows.writerow(["joint", "quantity", "value", "unit"])
        for line in path.read_text().splitlines():
            drawn = json.loads(line)
            for quantity, value, unit in opinion(Joint(drawn["input"])):
                rows.writerow([drawn["joint"], quantity, f"{value:.6g}", unit])


if __name__ == "__main__":
    main()
