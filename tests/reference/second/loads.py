"""Load cases: what road and rules put on ball, spring eye or chain eye.

x forward, y to the left, z up; forces on the trailer's part, N; the point from the middle of the bolt group, mm.
"""

import math
from dataclasses import dataclass, field

from tables import G, LB, LBF

COS_15, SIN_15 = math.cos(math.radians(15)), math.sin(math.radians(15))


@dataclass
class Case:
    name: str
    kind: str  # service, proof, ultimate
    force: tuple
    point: tuple
    moment: tuple = field(default=(0.0, 0.0, 0.0))  # beside the force, N m

    def moment_about_group(self):
        """r x F and what is given beside it, N m about x, y, z."""
        (x, y, z), (fx, fy, fz) = (tuple(c / 1e3 for c in self.point)), self.force
        cross = (y * fz - z * fy, z * fx - x * fz, x * fy - y * fx)
        return tuple(a + b for a, b in zip(cross, self.moment))


def cases(j):
    return {"coupler": _coupler, "spring-hanger": _hanger, "chain-bracket": _chain, "free": _free}[j.joint](j)


def _pounds(j):
    return j.trailer_mass_kg / LB


def _coupler(j):
    at = (j.ball_ahead_mm, 0.0, -j.ball_below_mm)
    weight = j.trailer_mass_kg * G
    # Owner manuals ask for a tenth on the ball at least; one that rests on it with less presses it all the same in braking.
    tongue = weight * max(j.tongue_share, 0.10)
    up, along, aside = tongue * j.vertical_factor, weight * j.braking_g, tongue * j.side_g
    out = [
        Case("braking-over-a-bump", "service", (-along, 0, up), at),
        Case("pulling-over-a-bump", "service", (along, 0, up), at),
        Case("cornering-over-a-bump", "service", (0, aside, up), at),
        Case("braking-in-a-bend", "service", (-along, aside, up), at),  # both in full: an assumption
        Case("pulling-in-a-bend", "service", (along, aside, up), at),
    ]
    if not j.through_sides:
        # The tongue drops after a bump; how much less that is than it rose, no source says.
        out += [
            Case("braking-after-a-bump", "service", (-along, 0, -up), at),
            Case("pulling-after-a-bump", "service", (along, 0, -up), at),
            Case("braking-in-a-bend-after-a-bump", "service", (-along, aside, -up), at),
            Case("pulling-in-a-bend-after-a-bump", "service", (along, aside, -up), at),
        ]
    w = _pounds(j)
    if j.load_rule == "us-tow-bar":  # 49 CFR 393.71(h)(1), new tow-bars: strengths
        pull, beam = (6500.0, 3000.0) if w < 5000 else (1.3 * w, 0.6 * w)
        out += [
            Case("tow-bar-pulled", "ultimate", (pull * LBF, 0, 0), at),
            Case("tow-bar-pushed", "ultimate", (-pull * LBF, 0, 0), at),
            Case("tow-bar-bent-up", "ultimate", (0, 0, beam * LBF), at),
            Case("tow-bar-bent-down", "ultimate", (0, 0, -beam * LBF), at),
            Case("tow-bar-bent-aside", "ultimate", (0, beam * LBF, 0), at),
        ]
    elif j.load_rule == "coupler-classes":  # COMAR 11.13.08.10 Table 1; of 1.3 and 1.4 W the larger
        rows = [(2000, 6000, 2000, 2500), (3500, 10500, 3000, 4500), (5000, 15000, 4000, 7000)]
        long, trans, vert = next((r[1:] for r in rows if w <= r[0]), (3 * w, w, 1.4 * w))
        out += [
            Case("class-pulled", "ultimate", (long * LBF, 0, 0), at),
            Case("class-pushed", "ultimate", (-long * LBF, 0, 0), at),
            Case("class-aside", "ultimate", (0, trans * LBF, 0), at),
            Case("class-pressed-up", "ultimate", (0, 0, vert * LBF), at),
            Case("class-pulled-down", "ultimate", (0, 0, -vert * LBF), at),
        ]
    elif j.load_rule == "hitch-test":  # COMAR 11.13.08.10, on the hitch; the coupler has the reaction
        out += [
            Case("hitch-test-pressed", "proof", (-(0.47 * w + 480) * LBF, 0, (0.47 * w + 480) * LBF), at),
            Case("hitch-test-pulled", "proof", ((0.23 * w + 1530) * LBF, 0, 0.15 * w * LBF), at),
            Case("hitch-test-pushed", "proof", (-(0.23 * w + 1530) * LBF, 0, 0.15 * w * LBF), at),
            Case("hitch-test-aside", "proof", (0, (0.20 * w + 500) * LBF, 0), at),
        ]
    elif j.load_rule == "adr-62":  # ADR 62/02 cl. 12.3.2.1, with 9.81 as printed
        force = 9.81 * j.trailer_mass_kg
        out += [
            Case("adr-pulled", "proof", (1.5 * force, 0, 0), at),
            Case("adr-pushed", "proof", (-1.5 * force, 0, 0), at),
            Case("adr-aside", "proof", (0, 0.5 * force, 0), at),
            Case("adr-up", "proof", (0, 0, 0.5 * force), at),
            Case("adr-down", "proof", (0, 0, -0.5 * force), at),
        ]
    elif j.load_rule == "un-r55" and j.trailer_mass_kg <= 3500:  # D = g T R/(T + R)
        t, r = j.towing_mass_kg, j.trailer_mass_kg
        d = 9.81 * t * r / (t + r)
        rests = tongue  # the static load S acts with it
        out += [
            Case("d-value-pulled", "proof", (d, 0, rests), at),
            Case("d-value-pushed", "proof", (-d, 0, rests), at),
            Case("d-test-pulled", "service", (0.6 * d, 0, rests), at),
            # (EU) 2014/44 annex V division 6: along a line 15 degrees down to the rear.
            Case("d-line-pulled", "service", (0.6 * d * COS_15, 0, 0.6 * d * SIN_15), at),
            Case("d-line-pushed", "service", (-0.6 * d * COS_15, 0, -0.6 * d * SIN_15), at),
            Case("d-test-pushed", "service", (-0.6 * d, 0, rests), at),
        ]
    return out


def _hanger(j):
    """One end of a leaf spring. The axle's load is what does not rest on the coupler."""
    at = (j.hanger_offset_mm, 0.0, -j.hanger_height_mm)
    spring = j.trailer_mass_kg * G * (1 - j.tongue_share) / (2 * j.axles)
    still = spring * j.hanger_share
    # The wheels slow the whole trailer, what rests on the coupler too.
    brake = j.trailer_mass_kg * G * j.braking_g / (2 * j.axles)
    # The brake holds the axle to the spring: force at the ground times the tyre's radius is taken at the eyes.
    couple = brake * j.tyre_radius_mm / j.spring_length_mm
    aside = still * j.side_g
    roll = aside * j.tyre_radius_mm / 1e3
    bump = j.vertical_factor
    # Rebound: the frame is thrown up and the axle, a fifth of the wheels' load at most, hangs on its springs.
    hangs = [] if j.through_sides else [Case("axle-hangs", "service", (0, 0, -0.2 * bump * still), at)]
    return [
        Case("wheel-over-a-bump", "service", (0, 0, bump * still), at),
        Case("braking-rear-eye", "service", (-brake, 0, bump * still + couple), at),
        Case("braking-front-eye", "service", (-brake, 0, still - couple), at),
        # Backing up slowly with brakes that work both ways: mirrored, without the bump.
        Case("backing-rear-eye", "service", (brake, 0, still - couple), at),
        Case("backing-front-eye", "service", (brake, 0, still + couple), at),
        Case("cornering-left", "service", (0, aside, bump * still), at, (roll, 0, 0)),
        Case("cornering-right", "service", (0, -aside, bump * still), at, (-roll, 0, 0)),
        Case("cornering-unloaded", "service", (0, aside, 0), at, (roll, 0, 0)),
        Case("bend-rear-eye", "service", (-brake, aside, bump * still + couple), at, (roll, 0, 0)),
        Case("bend-front-eye", "service", (-brake, aside, still - couple), at, (roll, 0, 0)),
        *hangs,
    ]


def _chain(j):
    """49 CFR 393.70(d) asks the gross weight of the chains, by its guidance of two together; New Hampshire RSA 266:63
    asks it of each. The stricter is taken; a rule that is chosen can only add to it."""
    at = (j.ball_ahead_mm, 0.0, -j.ball_below_mm)
    w = _pounds(j)
    added = []
    if j.load_rule == "adr-62":  # cl. 13.4.2, each attachment, one direction at a time, no lasting harm
        along, upright = 9.81 * j.trailer_mass_kg, 0.5 * 9.81 * j.trailer_mass_kg
        added = [
            Case("chain-pulls-along", "proof", (along, 0, 0), at),
            Case("chain-pulls-straight-up", "proof", (0, 0, upright), at),
            Case("chain-pulls-straight-down", "proof", (0, 0, -upright), at),
        ]
    pull = w * LBF
    if j.load_rule == "us-tow-bar":  # 393.71(h)(10): of all together
        pull = max(pull, (6500 if w < 5000 else 1.3 * w) * LBF * j.chain_share)
    elif j.load_rule == "coupler-classes":  # SAE J684 classes: each chain
        pull = max(pull, next((s for top, s in ((2000, 2000), (3500, 3500), (5000, 5000)) if w <= top), w) * LBF)
    a = math.radians(j.chain_angle_deg)
    x, s = pull * math.cos(a), pull * math.sin(a)
    return [
        *added,
        Case("chain-pulls-up", "ultimate", (x, 0, s), at),
        Case("chain-pulls-down", "ultimate", (x, 0, -s), at),
        Case("chain-pulls-aside", "ultimate", (x, s, 0), at),
    ]


def _free(j):
    at = (j.ball_ahead_mm, 0.0, -j.ball_below_mm)
    return [
        Case(
            "free-load", j.free_kind, (j.free_along_n, j.free_side_n, j.free_up_n), at,
            (j.free_about_along_nm, j.free_about_side_nm, j.free_about_up_nm),
        )
    ]
