//! What the holes leave of tube and fitting, and what head and nut are pulled through.

use super::demand::Demand;
use super::{Resistance, Working, said};
use crate::catalog::Family;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::evaluate::member_section::{
    MemberSection, member_section, shear_center_aside, sheared_section, twisted_section,
    upright_lever,
};
use crate::mechanics::member_shear::ShearAreas;
use crate::mechanics::net_section::{Block, block_shear, effective_hole, omegas};
use crate::mechanics::twist::TwistedSection;
use crate::mechanics::{en_bolt, shear};
use crate::quantity::{Count, InUnits, Length, Moment, Stress, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Said, Verdict, say, substituted};
use crate::scenario::{JointKind, MemberKind};
use crate::support;

/// A ply with a group of holes.
#[derive(Clone, Copy)]
struct Pulled {
    fy: Stress,
    fu: Stress,
    hole: Length,
    thickness: Length,
    end: Length,
}

/// Share used from which an open section that nothing holds would come near to staying twisted: somewhat less than its
/// factor on yield, 1.65 or 1.67. Own assumption.
const TWISTS_FOR_GOOD: f64 = 1.5;

/// Whether anything else keeps an open section from twisting.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Twists {
    /// Nothing: it turns about its shear center.
    Alone,
    /// It turns no farther than the load beside the faces asks for.
    Held,
}

/// What the member has to carry behind its last bolt.
#[derive(Clone, Copy)]
pub(super) struct OnMember {
    /// Pull, N.
    pull: f64,
    /// Moments about the sideways and the upright line, N·m.
    up: f64,
    side: f64,
    /// Moment about the member's own axis, N·m.
    twist: f64,
    /// Shear across it, upright and sideways, N.
    pub(super) across: [f64; 2],
}

/// The member behind its last bolt, in the case that decides.
struct Behind {
    forces: OnMember,
    /// Shear stress of the whole section under the twist.
    twisted: Stress,
    /// Areas that take the shear across the member, whole and with the holes out, and the stress of each.
    sheared: [(ShearAreas, Stress); 2],
    /// Stress of the whole section, and of what the holes leave.
    on_gross: Stress,
    on_net: Stress,
    /// What a service load may use of each.
    allowed_on_gross: Stress,
    allowed_on_net: Stress,
}

impl Analysis<'_> {
    /// How far the line of the load passes the shear center of the member, m, on whichever side it is the farther. A tube
    /// and a bar have it in their middle.
    fn twist_lever(&self, twists: Twists) -> f64 {
        let s = self.s;
        match twists {
            Twists::Alone if s.member.is_open() => s.aside() + shear_center_aside(s).si(),
            _ => s.aside(),
        }
    }

    /// The same upright: an open section that is held turns about whatever holds it, not about its shear center.
    fn upright_lever(&self, below: f64, on_top: bool, twists: Twists) -> f64 {
        match twists {
            Twists::Held if self.s.member.is_open() => below.abs(),
            _ => upright_lever(self.s, below, on_top),
        }
    }

    /// Pull, bending, twist and shear of the member at its last bolt in a case; what counts against each other is
    /// added up.
    fn on_member(&self, loads: &BoltLoads, twists: Twists) -> OnMember {
        let (s, case) = (self.s, &loads.case);
        let half = 0.5 * (s.bolting.along as f64 - 1.0) * s.bolting.spacing_along.si();
        let ahead = case.ahead.abs() + half;
        let [about_along, about_side, about_up] = case.about.map(f64::abs);
        let (along, side, up) = (case.along.abs(), case.side.abs(), case.up.abs());
        // A pull beside the middle of the section bends it. Of an open section the share of it that is pulled counts for
        // that, see `open_section::shear_lag`.
        let below = self.upright_lever(case.below, case.on_top, twists);
        let pulled = if s.member.is_open() {
            case.below.abs()
        } else {
            below
        };
        OnMember {
            pull: along,
            up: up * ahead + along * pulled + about_side,
            side: side * ahead + along * s.aside() + about_up,
            twist: side * below + up * self.twist_lever(twists) + about_along,
            across: self.across_member(loads),
        }
    }

    /// A hanger brings its load in along the length of a rail, and what the rail has to carry depends on the rest of the
    /// frame. Whatever that is, each moment and each force that comes in goes on to the two sides, so one of them has at
    /// least half of it. Which side has which is not known: each is asked alone.
    fn at_least(&self, loads: &BoltLoads) -> [OnMember; 6] {
        let case = &loads.case;
        let half = 0.5 * (self.s.bolting.along as f64 - 1.0) * self.s.bolting.spacing_along.si();
        // The force itself bends the rail as a whole; only what turns about the joint is certain.
        let whole = self.on_member(loads, Twists::Held);
        let none = OnMember {
            pull: 0.0,
            up: 0.0,
            side: 0.0,
            twist: 0.0,
            across: [0.0; 2],
        };
        let up = (whole.up - case.up.abs() * half) * 0.5;
        let side = (whole.side - case.side.abs() * half) * 0.5;
        // What comes up from the ground may go across the axle to the other spring; the height of the hanger may not.
        let height = self.s.loads.hanger.height.si();
        let height = self.upright_lever(height, case.on_top, Twists::Held);
        let twist = case.side.abs() * height + case.up.abs() * self.s.aside();
        [
            OnMember {
                pull: whole.pull * 0.5,
                ..none
            },
            OnMember { up, ..none },
            OnMember { side, ..none },
            OnMember {
                twist: twist * 0.5,
                ..none
            },
            OnMember {
                across: [case.up.abs() * 0.5, 0.0],
                ..none
            },
            OnMember {
                across: [0.0, case.side.abs() * 0.5],
                ..none
            },
        ]
    }

    /// Pull, bending, twist and shear of the member at its last bolt.
    ///
    /// ```text
    /// σ_v = √(σ² + 3·(τ + τ_V)²)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `σ` | stress of pull and bending at the worst corner | Pa |
    /// | `τ` | shear stress under the twist | Pa |
    /// | `τ_V` | mean shear stress across the member, see [`ShearAreas::stress`] | Pa |
    ///
    /// Against `f_y/1.67` of the whole section and `F_u/2.00` of what the holes leave: `1/√3` is a little less than the
    /// 0.60 of AISC 360-22 G1 and J4.2, with the same factors. That the worst of each meets at one place is on the
    /// safe side.
    ///
    /// At a hanger only what is certain of it, see [`Self::at_least`]. A channel or an angle that would twist too far by
    /// itself is close: a coupler on two of them, or cross members, may hold it, and nobody says so.
    pub(super) fn net_section(&self) -> Option<Check> {
        let alone = self.section_check(Twists::Alone)?;
        if alone.verdict != Verdict::DoesNotHold || !self.s.member.is_open() {
            return Some(alone);
        }
        let held = self.section_check(Twists::Held)?;
        if held.verdict == Verdict::DoesNotHold {
            return Some(alone);
        }
        let (demand, capacity) = (alone.demand, alone.capacity);
        // Past its yield it stands only if it is held, and nobody says that it is.
        let far = alone.utilisation.is_none_or(|used| used > TWISTS_FOR_GOOD);
        Some(Check {
            verdict: if far {
                Verdict::NotChecked
            } else {
                Verdict::Close
            },
            reason: Said::of(say::SectionTwistsAlone, [demand, capacity]),
            ..alone
        })
    }

    fn section_check(&self, twists: Twists) -> Option<Check> {
        let s = self.s;
        let hanger = s.loads.joint == JointKind::SpringHanger;
        let hole = effective_hole(self.hole_in_tube());
        let (gross, net) = member_section(s, hole);
        let [whole_across, net_across] = sheared_section(s, hole);
        let (gross, net) = ((gross, whole_across), (net, net_across));
        let twisted = twisted_section(s);
        let together = |(section, across): &(MemberSection, ShearAreas), on: OnMember| {
            let bent = section.stress(on.pull, on.up, on.side)?.si();
            let [up, side] = on.across.map(newton);
            let sheared =
                twisted.shear_stress(Moment(on.twist)).si() + across.stress(up, side)?.si();
            Some(bent.hypot(sheared * 3.0_f64.sqrt()))
        };
        // What decides of the whole section and of what the holes leave, with its stress.
        let deciding = |loads: &BoltLoads| {
            let one = |on: OnMember| [&gross, &net].map(|section| (on, together(section, on)));
            if !hanger {
                return one(self.on_member(loads, twists));
            }
            let [first, others @ ..] = self.at_least(loads);
            let mut most = one(first);
            for on in others {
                for (most, next) in most.iter_mut().zip(one(on)) {
                    if next.1 > most.1 {
                        *most = next;
                    }
                }
            }
            most
        };
        let all = &self.cases().all;
        let mut each = Vec::with_capacity(all.len());
        for loads in all {
            let [(_, on_gross), (forces, on_net)] = deciding(loads);
            let Some((on_gross, on_net)) = on_gross.zip(on_net) else {
                return Some(self.section_used_up());
            };
            each.push((forces, [on_gross, on_net]));
        }
        let found = |loads: &BoltLoads| {
            let same = |(case, _): &(&BoltLoads, _)| std::ptr::eq(*case, loads);
            all.iter().zip(&each).find(same).map(|(_, found)| *found)
        };
        let (fy, fu) = self.tube_strengths();
        let aluminium = s.tube.material.family() == Family::Aluminium;
        let (omega_yield, omega_rupture) = omegas(aluminium);
        // Reached by a bent tube, the yield strength of the whole section is its end, so an ultimate case
        // may not pass it either.
        let whole = Resistance::allowable(fy.si(), omega_yield, fy.si());
        let holed = Resistance::allowable(fu.si(), omega_rupture, fy.si());
        let yields = self.governing_demand(&[whole], &|loads| {
            found(loads).map_or(0.0, |(_, [on_gross, _])| on_gross)
        })?;
        let breaks = self.governing_demand(&[holed], &|loads| {
            found(loads).map_or(0.0, |(_, [_, on_net])| on_net)
        })?;
        let (resistance, demand) = most_used(breaks, yields);
        let (forces, [on_gross, on_net]) = found(demand.loads)?;
        let [up, side] = forces.across.map(newton);
        let sheared = |areas: ShearAreas| (areas, areas.stress(up, side).unwrap_or_default());
        let behind = Behind {
            forces,
            twisted: twisted.shear_stress(Moment(forces.twist)),
            sheared: [whole_across, net_across].map(sheared),
            on_gross: Stress::of_si(on_gross),
            on_net: Stress::of_si(on_net),
            allowed_on_gross: fy / omega_yield,
            allowed_on_net: fu / omega_rupture,
        };
        let told = if hanger {
            [say::RailTooWeak, say::RailFineSoFar]
        } else {
            [say::SectionTooWeak, say::SectionFine]
        };
        Some(
            demand
                .against::<Stress>(CheckId::NetSection, resistance.capacity)
                .says(told)
                .working(self.explained(|w| self.section_lines(w, &behind))),
        )
    }

    fn section_lines(&self, w: &mut Working, behind: &Behind) {
        let s = self.s;
        let OnMember {
            pull,
            up,
            side,
            twist,
            across,
        } = behind.forces;
        let bending = Cite::new(
            Source::Elementary,
            "bending, with shear by √(σ² + 3·τ²)",
            Flag::Computed,
        );
        if twist > 0.0 {
            w.line(
                &Line {
                    symbol: "τ",
                    what: "shear stress of the whole section under the twist",
                    formula: match twisted_section(s) {
                        TwistedSection::Closed { .. } => "T/(2·A_m·t)",
                        TwistedSection::Round { .. } => "T·D/(2·J)",
                        TwistedSection::Bar { .. } => {
                            "T/(α·b·t²), α from 0.208 (square) to 1/3 (flat)"
                        }
                        TwistedSection::Open { .. } => "T·t_max/Σ(b·t³/3)",
                    },
                },
                substituted![("T", Moment(twist))],
                behind.twisted,
                Cite::new(
                    Source::HandbookRecalled,
                    "twist of bars and tubes",
                    Flag::Memory,
                ),
            );
        }
        let [(whole_across, on_whole), (net_across, on_rest)] = behind.sheared;
        if across != [0.0; 2] {
            for (symbol, what, areas, stress) in [
                (
                    "τ_V",
                    "shear stress of the whole section across the member, between the bolts or behind them",
                    whole_across,
                    on_whole,
                ),
                ("τ_V,n", "the same with the holes out", net_across, on_rest),
            ] {
                self.across_line(w, (symbol, what), (across, areas.areas()), stress);
            }
        }
        w.line(
            &Line {
                symbol: "σ_g",
                what: "stress of the whole section behind the last bolt",
                formula: match s.member.kind {
                    MemberKind::Channel | MemberKind::Angle => {
                        "√(σ² + 3·(τ + τ_V)²), σ = N/A + bending at the worst corner of a section without symmetry"
                    }
                    MemberKind::RoundTube => {
                        "√(σ² + 3·(τ + τ_V)²), σ = N/A + D/2·√((M_1/I_1)² + (M_2/I_2)²)"
                    }
                    _ => "√(σ² + 3·(τ + τ_V)²), σ = N/A + M_1·h/(2·I_1) + M_2·b/(2·I_2)",
                },
            },
            substituted![
                ("N", newton(pull)),
                ("M_1", Moment(up)),
                ("M_2", Moment(side)),
                ("τ", behind.twisted),
                ("τ_V", on_whole)
            ],
            behind.on_gross,
            bending,
        );
        w.line(
            &Line {
                symbol: "σ_n",
                what: "stress of the section with the holes out",
                formula: if s.member.is_open() {
                    "the same with the holes out, N over the share of it that is pulled, U·A"
                } else {
                    "the same with the holes out"
                },
            },
            substituted![
                ("N", newton(pull)),
                ("M_1", Moment(up)),
                ("M_2", Moment(side)),
                ("τ", behind.twisted),
                ("τ_V,n", on_rest),
                ("d_h", effective_hole(self.hole_in_tube()))
            ],
            behind.on_net,
            bending,
        );
        let (fy, fu) = self.tube_strengths();
        let cite = if s.tube.material.family() == Family::Aluminium {
            Cite::new(Source::Adm2020, "chapter D", Flag::Read)
        } else {
            Cite::new(Source::Aisc360_22, "D2, B4.3b", Flag::Read)
        };
        w.line(
            &Line {
                symbol: "f_y/Ω",
                what: "allowed on the whole section under a service load",
                formula: "f_y/Ω",
            },
            substituted![("f_y", fy)],
            behind.allowed_on_gross,
            cite,
        );
        w.line(
            &Line {
                symbol: "F_u/Ω",
                what: "allowed on the section with the holes out under a service load",
                formula: "F_u/Ω",
            },
            substituted![("F_u", fu)],
            behind.allowed_on_net,
            cite,
        );
    }

    /// Holes that leave nothing of the tube.
    fn section_used_up(&self) -> Check {
        let hole = effective_hole(self.hole_in_tube());
        Check::of(CheckId::NetSection, hole, Length::default())
            .stands(Verdict::DoesNotHold)
            .without_share()
            .reason(said(say::SectionUsedUp, (hole,)))
    }

    /// Only with more than one row, as a single row tears out bolt by bolt; beside the free edge of a flange
    /// or a leg a single row takes a block with it as well.
    pub(super) fn block_shear(&self) -> Option<Check> {
        let s = self.s;
        let b = &s.bolting;
        if b.rows < 2 && s.free_edge().is_none() {
            return None;
        }
        let (fy, fu) = self.tube_strengths();
        let tube = Pulled {
            fy,
            fu,
            hole: self.hole_in_tube(),
            thickness: self.pressed_depth(),
            end: s.tube.end_distance,
        };
        let fitting = Pulled {
            fy: s.fitting.yield_least,
            fu: s.fitting.ultimate_least,
            hole: s.fitting.hole,
            thickness: s.fitting.thickness,
            end: s.fitting.edge,
        };
        let fitting = (s.fitting.thickness.si() > 0.0)
            .then_some(("block torn out of one plate of the bracket", fitting));
        let between = |(what, ply): (&'static str, Pulled)| {
            let block = Block::between_rows(
                (b.along, b.rows),
                ply.end,
                (b.spacing_along, b.spacing_across),
                effective_hole(ply.hole),
                ply.thickness,
            );
            (what, ply, block)
        };
        let to_edge = s.free_edge().map(|edge| {
            let block = Block::to_edge(
                (b.along, b.rows),
                tube.end,
                (b.spacing_along, b.spacing_across),
                edge,
                effective_hole(tube.hole),
                tube.thickness,
            );
            ("block torn out to the free edge", tube, block)
        });
        let rows = [("block torn out of one wall", tube)]
            .into_iter()
            .chain(fitting)
            .filter(|_| b.rows > 1)
            .map(between);
        // The forces along the tube, added up without regard to their sign.
        let along = |loads: &BoltLoads| loads.shares.iter().map(|x| x.along.abs()).sum::<f64>();
        let mut found: Option<(Resistance, Demand<'_>)> = None;
        let mut w = self.sheet();
        for (what, ply, block) in rows.chain(to_edge) {
            let force = block_shear(ply.fy, ply.fu, &block).si();
            w.line(
                &Line {
                    symbol: "R",
                    what,
                    formula: "min(0.60·F_u·A_nv, 0.60·f_y·A_gv) + F_u·A_nt",
                },
                substituted![
                    ("F_u", ply.fu),
                    ("f_y", ply.fy),
                    ("e", ply.end),
                    ("rows", Count(b.rows as f64))
                ],
                newton(force),
                Cite::new(Source::Aisc360_22, "J4.3", Flag::Read),
            );
            let resistance =
                Resistance::allowable(force, shear::OMEGA, force * ply.fy.si() / ply.fu.si());
            let this =
                self.governing_demand(&[resistance], &|loads| along(loads) / b.slip_planes())?;
            found = Some(found.map_or(this, |other| most_used(other, this)));
        }
        let (resistance, demand) = found?;
        Some(Self::of_resistance(
            CheckId::BlockShear,
            (&resistance, &demand),
            [say::BlockTears, say::BlockFine],
            w,
        ))
    }

    pub(super) fn pull_through(&self) -> Option<Check> {
        let s = self.s;
        let bolt = newton(self.pull_strength());
        let flats = s
            .bolting
            .thread
            .width_across_flats()
            .min(s.bolting.thread.hex().nut_width_across_flats());
        let width = en_bolt::mean_width(flats);
        let (fy, fu) = self.tube_strengths();
        let fitting = (s.fitting.thickness.si() > 0.0).then_some((
            "punching of the bracket under head or nut",
            [s.fitting.yield_least, s.fitting.ultimate_least],
            s.fitting.thickness,
        ));
        // From the top the nut lies on the far face, as on the far side of a single ply. Between cheeks
        // only the cheeks are pulled.
        let face = (s.bolting.slip_planes() < 2.0 && support::of(s).is_hollow()).then_some((
            "punching of the face under the nut",
            [fy, fu],
            s.tube.design_wall,
        ));
        let mut w = self.sheet();
        let mut found: Option<(Resistance, Demand<'_>)> = None;
        for (what, [fy, fu], thickness) in fitting.into_iter().chain(face) {
            let eu = en_bolt::punching(fu, width, thickness).si();
            w.line(
                &Line {
                    symbol: "B_p,Rd",
                    what,
                    formula: "0.6·π·d_m·t_p·f_u/γ_M2",
                },
                substituted![("d_m", width), ("t_p", thickness), ("f_u", fu)],
                newton(eu),
                Cite::new(Source::En1993_1_8, "Table 3.4", Flag::Read),
            );
            let us = eu * crate::mechanics::bearing::GAMMA_M2;
            w.line(
                &Line {
                    symbol: "R",
                    what: "the same as shear rupture around the head",
                    formula: "0.60·F_u·π·d_m·t_p",
                },
                substituted![("B_p,Rd", newton(eu))],
                newton(us),
                Cite::new(Source::Aisc360_22, "J4.2, J3.13", Flag::Read),
            );
            let yields = us * fy.si() / fu.si();
            let resistances = [
                Resistance::allowable(us, shear::OMEGA, yields),
                Resistance::design(eu, yields),
            ];
            let this = self.governing_demand(&resistances, &|loads| {
                self.pull_on_bolt(loads.largest_pull.max(0.0), bolt)
            })?;
            found = Some(found.map_or(this, |other| most_used(other, this)));
        }
        let (resistance, demand) = found?;
        Some(Self::of_resistance(
            CheckId::PullThrough,
            (&resistance, &demand),
            [say::PullThroughPulls, say::PullThroughFine],
            w,
        ))
    }
}

/// Of two parts the one that is used more.
pub(super) fn most_used<'a>(
    a: (Resistance, Demand<'a>),
    b: (Resistance, Demand<'a>),
) -> (Resistance, Demand<'a>) {
    if b.1.used(b.0.capacity) > a.1.used(a.0.capacity) {
        b
    } else {
        a
    }
}
