"""Draws the joints: seeded, over members, supports, mounts, joints and rules; parts that fit each other."""

import random

import tables

COUNT = 300
SEED = 360_1993

BOLTS = {"inch": ["unc-3.8", "unc-7.16", "unc-1.2", "unf-1.2", "unc-5.8", "unf-5.8", "unc-3.4"],
         "metric": ["m8", "m10", "m12", "m14", "m16", "m20"]}
GRADES = {"inch": ["sae-2", "sae-5", "sae-8", "a325", "a490"],
          "metric": ["iso-5.8", "iso-8.8", "iso-10.9", "a2-70", "a4-80"]}
RULES = {"coupler": ["road-service", "us-tow-bar", "coupler-classes", "hitch-test", "adr-62", "un-r55"],
         "chain-bracket": ["road-service", "us-tow-bar", "coupler-classes", "adr-62"]}
METALS = ["6061-t6", "6063-t5", "6063-t6", "6005a-t6", "a36", "a500-b", "a500-c", "s235", "s355"]


def joints(count=COUNT, seed=SEED):
    r = random.Random(seed)
    return [_joint(r, i) for i in range(count)]


def _between(r, low, high, step=0.5):
    return round(low + step * r.randint(0, int((high - low) / step)), 3)


def _joint(r, index):
    member = r.choice(["rectangular-tube"] * 6 + ["channel", "angle", "solid-bar", "round-tube"])
    joint = r.choice(["coupler", "coupler", "spring-hanger", "chain-bracket", "free"])
    system = r.choice(["inch", "metric"])
    bolt = r.choice(BOLTS[system])
    grade = r.choice(GRADES[system])
    _, d, _, size = tables.THREADS[bolt]
    if grade in ("a325", "a490") and (d < 12.7 - 1e-6 or bolt.startswith("unf")):
        grade = "sae-5"
    series = "narrow" if size == "m14" else r.choice(["narrow", "narrow", "wide"])
    outer, _ = tables.washer(size, series)
    out = {
        "member": member, "joint": joint, "bolt": bolt, "bolt_grade": grade, "washer": series,
        "mount": r.choice(["through-sides", "from-top"]), "tube_material": r.choice(METALS),
        "fitting_material": r.choice(["a36", "s235", "s355", "6061-t6"]), "load_rule": r.choice(RULES.get(joint, ["road-service"])),
        "tightening": r.choice(["feel", "wrench", "turn"]), "faying_surface": r.choice(["en-c", "en-d", "bare-clean"]),
        "temperature_swing_k": r.choice([0, 20, 35, 50]), "tube_end": r.choice(["open", "open", "capped"]),
        "wall_basis": r.choice(["measured", "nominal"]), "weld_near": r.choice(["no", "no", "yes"]),
        "nut_factor": _between(r, 0.14, 0.30, 0.01), "faying_friction": _between(r, 0.10, 0.35, 0.01),
    }
    if r.random() < 0.5:
        del out["nut_factor"]
        out["lubrication"] = r.choice(["zinc", "oiled", "anti-seize"])
    if grade in ("a2-70", "a4-80"):
        out["nut_factor"] = _between(r, 0.20, 0.40, 0.01)
    if r.random() < 0.4:
        out["torque_nm"] = _between(r, 0.25, 0.75, 0.05) * d**3 / 18
        out["torque_nm"] = round(out["torque_nm"], 1)
    else:
        out["preload_share"] = _between(r, 0.4, 0.75, 0.05)
    width = max(_between(r, outer / 0.6, 3.6 * outer + 20, 1.0), 40.0)
    wall = _between(r, 2.5, 6.5, 0.25)
    wall = min(max(wall, round(width / 32, 2)), round(width / 9, 2))
    # Round corners of two walls leave a flat that the washer has room on.
    width = max(width, round(outer + 4 * wall + 4, 1))
    out |= {"tube_width_mm": width, "tube_depth_mm": round(width * r.choice([0.75, 1.0, 1.5]), 1), "tube_wall_mm": wall}
    rows = 1
    rows_room = width - 2 * 2.2 * wall - outer
    if member in ("rectangular-tube", "solid-bar") and rows_room > max(3 * d, outer + 4) and r.random() < 0.3:
        rows = 2
        out["spacing_across_mm"] = round(rows_room * 0.95, 1)
    out["bolt_rows"] = rows
    out["bolts_along"] = r.choice([1, 2, 2, 3, 4] if rows > 1 else [2, 2, 3, 4])
    out["spacing_along_mm"] = _between(r, max(4 * d, 2.2 * width), 320.0, 5.0) if 2.2 * width < 320 else 2.2 * width
    out["fitting_edge_mm"] = _between(r, 1.8 * d, 4 * d, 1.0)
    out["end_distance_mm"] = _between(r, 2.5 * d, 2.5 * width, 5.0)
    out["fitting_thickness_mm"] = _between(r, 5, 12, 0.5)
    support = "bare"
    if member == "rectangular-tube":
        support = r.choice(["bare", "bare", "spreader", "loose-sleeve", "through-sleeve", "through-sleeve", "solid-insert", "solid"])
    elif member == "round-tube":
        support = r.choice(["bare", "through-sleeve"])
    if support in ("loose-sleeve", "through-sleeve"):
        fits = _sleeves(d, min(outer, width - 4 * wall - 4) if support == "through-sleeve" else width - 4 * wall - 4)
        if fits and rows == 1:
            out["sleeve"] = r.choice(fits)
            out["sleeve_material"] = r.choice(["a513-1020", "a36", "6061-t6"])
            out["sleeve_welded"] = r.choice(["yes", "no"])
            if support == "loose-sleeve":
                out["sleeve_welded"] = "no"
                out["sleeve_short_mm"] = r.choice([0.1, 0.2])
            else:
                tube_al, sleeve_al = out["tube_material"] in tables.ALUMINIUM, out["sleeve_material"] in tables.ALUMINIUM
                if tube_al != sleeve_al:
                    out["sleeve_material"] = "6061-t6" if tube_al else "a513-1020"
        else:
            support = "bare"
    if support == "spreader":
        out["spreader_thickness_mm"] = r.choice([6.35, 8.0, 10.0])
        out["spreader_length_mm"] = round(min(1.2 * width, 2 * out["end_distance_mm"], out["spacing_along_mm"] - 2), 1)
    if support == "solid-insert":
        out["sleeve_short_mm"] = 0.1
    out["support"] = support
    if member in ("channel", "angle"):
        out |= {"tube_wall_mm": _between(r, 5, 9, 0.5), "flange_slope": 0.0, "tube_material": r.choice(["a36", "s235", "s355", "6061-t6"]),
                "tube_width_mm": max(width, 2.2 * outer + 20), "tube_depth_mm": max(width, 2.2 * outer + 20) * 1.2}
    if member == "solid-bar":
        out["tube_depth_mm"] = _between(r, 25, 60, 1.0)
    if joint == "spring-hanger" and member != "solid-bar":
        out |= {"axles": r.choice([1, 2]), "hanger_height_mm": _between(r, 40, 160, 5), "hanger_offset_mm": _between(r, -60, 60, 5),
                "hanger_share": r.choice([0.5, 1.0]), "tyre_radius_mm": _between(r, 280, 380, 5), "spring_length_mm": _between(r, 550, 900, 10)}
    elif joint == "spring-hanger":
        out["hanger_height_mm"] = 80.0
    if joint == "chain-bracket":
        out |= {"chain_angle_deg": r.choice([0, 15, 30, 45]), "chain_share": r.choice([0.5, 1.0])}
    if joint == "free":
        out |= {"free_along_n": _between(r, -8000, 8000, 250), "free_up_n": _between(r, -4000, 4000, 250), "free_side_n": _between(r, -2000, 2000, 250),
                "free_about_up_nm": _between(r, -200, 200, 10), "free_about_side_nm": _between(r, -200, 200, 10), "free_about_along_nm": _between(r, -100, 100, 10),
                "free_kind": r.choice(["service", "service", "proof", "ultimate"])}
    else:
        out |= {"trailer_mass_kg": _between(r, 300, 3400, 50), "tongue_share": _between(r, 0.06, 0.18, 0.01), "vertical_factor": r.choice([2.0, 2.5, 3.0]),
                "braking_g": r.choice([0.3, 0.5, 0.6]), "side_g": r.choice([0.2, 0.3, 0.4]), "towing_mass_kg": _between(r, 1200, 4000, 100)}
    out |= {"ball_ahead_mm": _between(r, 60, 400, 10), "ball_below_mm": _between(r, -60, 80, 10)}
    return {"joint": f"j{index:03}", "input": out}


def _sleeves(d, room):
    names = [*tables.PIPES, "rt-0.750x0.120", "rt-0.875x0.156", "rt-0.875x0.188", "rt-1.000x0.188", "rt-1.000x0.250",
             "rt-1.250x0.188", "rt-1.250x0.250"]
    out = []
    for name in names:
        outer, wall = tables.sleeve(name)
        if outer <= room and 0.0 <= outer - 2 * wall - d <= 3.2:
            out.append(name)
    return out
