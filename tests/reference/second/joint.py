"""A joint as the program's input JSON gives it, with what was left out filled in."""

import tables

DEFAULTS = {
    "tube_width_mm": 50.8, "tube_depth_mm": 76.2, "tube_wall_mm": 3.175, "fitting_thickness_mm": 5.0, "bolts_along": 2,
    "bolt_rows": 1, "spacing_along_mm": 90.0, "spacing_across_mm": 40.0, "preload_share": 0.75, "sleeve_short_mm": 0.25, "spreader_thickness_mm": 6.35,
    "trailer_mass_kg": 750.0, "tongue_share": 0.125, "vertical_factor": 3.0, "braking_g": 0.5, "side_g": 0.3,
    "ball_ahead_mm": 130.0, "ball_below_mm": 30.0, "temperature_swing_k": 35.0, "towing_mass_kg": 2000.0, "axles": 1,
    "tyre_radius_mm": 330.0, "hanger_height_mm": 100.0, "hanger_offset_mm": 0.0, "hanger_share": 0.5,
    "spring_length_mm": 650.0, "chain_angle_deg": 30.0, "chain_share": 1.0, "free_along_n": 0.0, "free_up_n": 0.0,
    "free_side_n": 0.0, "free_about_along_nm": 0.0, "free_about_side_nm": 0.0, "free_about_up_nm": 0.0,
    "fitting_edge_mm": 25.0, "end_distance_mm": 60.0, "mount": "through-sides", "tube_material": "6061-t6",
    "wall_basis": "measured", "weld_near": "no", "tube_end": "open", "fitting_material": "a36", "fitting_spreads": "no",
    "bolt": "unc-1.2", "bolt_grade": "sae-5", "washer": "narrow", "lubrication": "zinc", "tightening": "wrench",
    "faying_surface": "bare-clean", "support": "bare", "sleeve": "rt-0.750x0.120", "sleeve_material": "a513-1020",
    "sleeve_welded": "no", "joint": "coupler", "load_rule": "road-service", "free_kind": "service",
    "bolt_finish": "zinc", "member": "rectangular-tube",
}


class Joint:
    """Inputs by their own names (units in the names), and what follows from them."""

    def __init__(self, given):
        self.given = given
        for name, value in DEFAULTS.items():
            setattr(self, name, given.get(name, value))
        self.system, self.d, self.pitch, self.size = tables.THREADS[self.bolt]
        outer, thick = tables.washer(self.size, self.washer)
        self.washer_outer = given.get("washer_outer_mm", outer)
        self.washer_thickness = given.get("washer_thickness_mm", thick)
        self.hole = given.get("hole_mm", tables.hole(self.size))
        self.fitting_hole = given.get("fitting_hole_mm", self.hole)
        fy, fu, fyw, fuw, self.modulus, self.poisson, self.expansion, share = tables.METALS[self.tube_material]
        near = self.weld_near == "yes"
        self.fy, self.fu = (fyw, fuw) if near else (fy, fu)
        self.wall = self.tube_wall_mm * (share if self.wall_basis == "nominal" else 1.0)
        # The weld is near the bolt, so it is near what is bolted on as well.
        self.fit_fy, self.fit_fu = tables.METALS[self.fitting_material][2 if near else 0 : 4 if near else 2]
        self.aluminium = self.tube_material in tables.ALUMINIUM
        self.corner = given.get("tube_corner_radius_mm", (1.5 if self.aluminium else 2.0) * self.tube_wall_mm)
        self.nut_factor = given.get("nut_factor", tables.NUT_FACTORS.get(self.lubrication))
        # A torque on the wrench has the spread of a wrench, whatever else was to be measured.
        by_wrench = tables.SCATTER["wrench"] if "torque_nm" in given else 0.0
        self.scatter = given.get("scatter_share", max(tables.SCATTER[self.tightening], by_wrench))
        self.mu = min(given.get("faying_friction", 1.0), self.published_friction)
        outer, wall = tables.sleeve(self.sleeve)
        self.sleeve_outer = given.get("sleeve_outer_mm", outer)
        self.sleeve_wall = given.get("sleeve_wall_mm", wall)

        self.proof, self.bolt_yield, self.bolt_tensile = tables.bolt_strength(self.bolt_grade, self.d, self.bolt_length)

    @property
    def bolt_length(self):
        """Under the head, two pitches past the nut, mm."""
        return self.grip + tables.nut_height(self.size) + 2.0 * self.pitch

    @property
    def nut_factors(self):
        """Least and greatest that count, where the threads decide: a factor typed in that nobody has published for this
        state counts beside the usual one."""
        k = self.nut_factor
        if "nut_factor" not in self.given or self.tightening == "turn" and "torque_nm" not in self.given:
            return k, k
        ranges = tables.STAINLESS_RANGES if self.stainless else tables.NUT_FACTOR_RANGES
        low, usual, high = ranges[self.lubrication]
        return (k, k) if low <= k <= high else (min(k, usual), max(k, usual))

    @property
    def published_friction(self):
        """Between the metals that meet: what was found for steel does not carry over to aluminium."""
        metals = [self.tube_material, self.fitting_material]
        if self.support == "spreader" and not self.open_section:
            metals.append(self.given.get("spreader_material", "a36"))
        if self.support == "through-sleeve":
            metals.append(self.given.get("sleeve_material", "a513-1020"))
        surface = self.faying_surface
        classes = surface.startswith(("en-", "steel-"))
        if any(m in tables.ALUMINIUM for m in metals) and (classes or surface == "bare-clean"):
            return 0.10
        return tables.FRICTION[surface]

    @property
    def stainless(self):
        return self.bolt_grade in ("a2-70", "a4-80")

    @property
    def hollow(self):
        """Two walls with nothing firm between them but what stands round the bolt."""
        return self.member in ("rectangular-tube", "round-tube") and self.support != "solid"

    @property
    def open_section(self):
        return self.member in ("channel", "angle")

    @property
    def through_sides(self):
        return self.mount == "through-sides"

    @property
    def planes(self):
        """Faces on which the fitting could slip: a cheek on each side, or one fitting on one side."""
        return 2 if self.through_sides and not self.open_section else 1

    @property
    def depth_on_bolt(self):
        """What of the member lies in the grip."""
        if self.open_section:
            return self.wall
        return self.tube_width_mm if self.member == "round-tube" else self.tube_depth_mm

    @property
    def grip(self):
        plates = 2.0 * self.spreader_thickness_mm if self.support == "spreader" else 0.0
        return self.depth_on_bolt + self.planes * self.fitting_thickness_mm + plates + 2.0 * self.washer_thickness

    def positions(self):
        """Bolts as (along, across) from the middle of the group, mm."""
        na, nr = int(self.bolts_along), int(self.bolt_rows)
        return [
            ((i - (na - 1) / 2) * self.spacing_along_mm, (k - (nr - 1) / 2) * self.spacing_across_mm)
            for i in range(na)
            for k in range(nr)
        ]
