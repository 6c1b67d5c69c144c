//! A sleeve through both faces, ends flush with the outside, welded at both ends or not.

use super::build::Builder;
use super::model::{Limit, Side, SupportModel};
use super::parts::{Cutting, Pieces, said};
use super::pressed::washer_surface;
use super::pulled::{self, Pulled};
use super::{AddedPart, ClampSupport, PartMetal, RepairKind, lines, of, sleeves};
use crate::catalog::{Family, Material};
use crate::mechanics::face::{self, FaceTube};
use crate::mechanics::sleeve::{self, SleeveCurve};
use crate::mechanics::stiffness;
use crate::mechanics::washer::spread;
use crate::quantity::{InUnits, Length, Share, Stress, mm, newton};
use crate::report::working::Working;
use crate::report::{Part, Said, Sentence, Strength, say};
use crate::scenario::{Input, Scenario, SupportKind, YesNo};

/// It may be left this much proud, m (0.010 in). Common practice, no source.
const PROUD: f64 = 0.254e-3;

/// Play that it may have in its hole unwelded, m (1/64 in). Common practice, no source.
const PLAY: f64 = 0.397e-3;

/// Rim that a washer has to reach past the sleeve's hole before the wall counts as held, in bolt diameters:
/// as past any hole. An assumption.
const RIM: f64 = 0.2;

/// Slenderness up to which a sleeve is squashed before it bows out, and factor against the strength of a column.
const STOCKY: f64 = 25.0;
const OMEGA_COLUMN: f64 = 1.67;

pub(super) struct ThroughSleeve;

/// Factor against the strength of the sleeve; `None`: its yield is a limit of use, met by the largest clamp of the
/// scatter.
///
/// ```text
/// L/r ≤ 25:  none,   rising to 1.67 at L/r = 50 and beyond
/// ```
///
/// A stocky sleeve that yields under the wrench goes on carrying what it carried: the clamp stops rising, as on a face,
/// and nothing collapses (the runs in `tests/reference/fe_sleeve` show no peak up to 1.5 mm). A slender one bows out and
/// lets go, which the factor of AISC 360-22 E1 is for.
///
/// # Sources
/// 25 and 1.67: AISC 360-22 J4.4 and E1. That the yield of a stocky sleeve is a limit of use, and the straight line
/// between: assumptions.
fn squash_factor(s: &Scenario) -> Option<f64> {
    let (out, inn) = (s.sleeve.outer.si(), s.sleeve.inner.si());
    let slenderness = 4.0 * s.tube.depth.si() / out.hypot(inn).max(1e-9);
    let least = 1.0 + s.tightening.scatter;
    let share = ((slenderness - STOCKY) / STOCKY).min(1.0);
    (share > 0.0).then(|| least + share * (OMEGA_COLUMN - least).max(0.0))
}

/// The tube as its faces are next to the weld of the sleeve: of what the reader gave and what is left
/// beside a weld, the lower.
fn welded_tube(b: &Builder<'_>) -> FaceTube {
    let mut tube = b.s.tube.face(b.strength);
    if b.s.tube.material.family() == Family::Aluminium {
        // Sleeve and face lie at the same weld: drawn by lot, they are softened alike.
        let softened = b.added_part_yield(b.s.tube.material, true);
        tube.yield_strength = tube.yield_strength.min(softened);
    }
    tube
}

impl ClampSupport for ThroughSleeve {
    fn model(&self, b: &Builder<'_>) -> SupportModel {
        let s = b.s;
        let welded = s.sleeve.welded;
        let yield_ = b.added_part_yield(s.sleeve.material, welded);
        let modulus = s.sleeve.material.modulus();
        let (outer, inner, length) = (s.sleeve.outer, s.sleeve.inner, s.tube.depth);
        let w = &s.bolting.washer;
        // From the nut through washer and cheek, no wider than it spreads; a bore wider than the nut is bridged.
        let nut = s.bolting.thread.bearing_diameter().min(w.outer);
        let washer = spread(nut.max(inner), b.washer_thickness()).min(w.outer);
        let hole = if b.cheek() > mm(0.0) {
            s.fitting.hole
        } else {
            w.bore
        };
        let covered = sleeve::covered_end(outer, inner, spread(washer, b.cheek()), hole);
        let off = sleeves::counted_off_center(b);
        let squash = sleeve::off_center_strength(yield_, modulus, [outer, inner], length, off)
            .min(newton(yield_.si() * covered.si() * sleeves::evenness(b)));
        let core = SleeveCurve::new(
            stiffness::prism(modulus, sleeve::area(outer, inner), length),
            squash,
            mm(0.0),
        );
        // Welded, the faces hang on the sleeve and give way with it, at the strength next to a weld.
        // Unwelded they are pressed only where the washer reaches past the sleeve; not counted for
        // verdicts.
        let tube = if welded {
            welded_tube(b)
        } else {
            s.tube.face(b.strength)
        };
        let ring = if welded { outer } else { w.outer };
        // No curve was made for the wall of a round tube: it is not counted on.
        let counts = !s.member.is_round()
            && (welded || (b.strength == Strength::Likely && w.outer > outer * 1.1));
        let usable = counts && face::out_of_range(&tube, ring).is_empty();
        let sides = usable.then(|| [Side::Washer(b.face(&tube, ring)); 2]);
        let mut model = SupportModel {
            sides,
            core: Some(core),
            width: s.tube.width.si(),
            face_gap: 0.0,
            limits: Vec::new(),
            effective_washer: ring,
        };
        model.limits.push(Limit {
            part: Part::Sleeve,
            load: model.force(core.yields_at_si()),
            omega: squash_factor(s),
            code: if covered.si() < 0.999 * sleeve::area(outer, inner).si() {
                say::LimitSleeveEnd
            } else {
                say::LimitSleeveSquashes
            },
        });
        // The end of the sleeve presses on the fitting or the washer, which may be the softer metal.
        let washer = washer_surface();
        let beside = if s.fitting.thickness.si() >= 2e-3 {
            b.surface(s.fitting.material, false).min(washer)
        } else {
            washer
        };
        let end = b.surface(s.sleeve.material, welded) * b.added_part;
        model.limits.push(sleeves::bites([end, beside], covered, b));
        model.limits.extend(b.on_top());
        // Over a bore that is wider than the nut, washer and cheek bend into it.
        model.limits.extend(b.over_bore(false).map(|load| Limit {
            part: Part::Washer,
            load,
            omega: Some(2.00),
            code: say::LimitWasherBridges,
        }));
        model
    }

    fn working(&self, w: &mut Working, s: &Scenario, model: &SupportModel, governs: &Limit) {
        lines::faces(w, s, model);
        sleeves::working(w, s, governs);
    }

    fn passes_by(&self, s: &Scenario) -> Option<Sentence<0>> {
        (!s.sleeve.welded).then_some(say::SlipSleeveNotWelded)
    }

    /// Welded it pulls both faces with it. Not welded nothing holds it in the tube but the washer below,
    /// as far as it reaches over the wall.
    fn pulled(&self, b: &Builder<'_>, _least: &SupportModel) -> Pulled {
        let s = b.s;
        if s.sleeve.welded {
            return pulled::by_welds(b, &welded_tube(b), s.sleeve.outer);
        }
        let hole = s.sleeve.outer + self.play_in_wall(s);
        pulled::by_a_rim(b, hole, s.bolting.thread.major() * RIM)
    }

    /// The bolt presses on the wall of the sleeve, which spreads it at 45°.
    fn pin_in_wall(&self, s: &Scenario) -> (Length, Stress) {
        let d = s.bolting.thread.major();
        if s.sleeve.welded {
            return (d, s.tube.yield_least);
        }
        let spread = d + (s.sleeve.outer - s.sleeve.inner);
        let yields = s.sleeve.material.least().yield_strength();
        (spread.min(s.sleeve.outer), yields.min(s.tube.yield_least))
    }

    fn play_in_wall(&self, s: &Scenario) -> Length {
        if s.sleeve.welded {
            return mm(0.0);
        }
        (s.bolting.hole - s.sleeve.outer).max(Length::of_si(PLAY))
    }

    /// The faces help only within their range; the sleeve carries without them.
    fn rests_on_face(&self) -> bool {
        false
    }

    fn leans_on_round_wall(&self, _s: &Scenario) -> bool {
        false
    }

    fn between(&self, s: &Scenario) -> &'static Material {
        s.sleeve.material
    }

    fn metal(&self, s: &Scenario) -> Option<PartMetal> {
        Some(PartMetal {
            material: s.sleeve.material,
            welded: s.sleeve.welded,
        })
    }

    fn holds_water(&self) -> bool {
        true
    }

    fn passes_wall(&self) -> bool {
        true
    }

    fn hole_in_wall(&self, s: &Scenario) -> Length {
        s.sleeve.outer.max(s.bolting.hole)
    }

    fn bore(&self, s: &Scenario) -> Length {
        s.sleeve.inner
    }

    fn hole_fit(&self, s: &Scenario) -> Option<Said> {
        let code = if s.sleeve.welded {
            say::HoleWeldedSleeve
        } else {
            say::HoleSleeveFit
        };
        Some(said(code, [self.hole_in_wall(s).si(), PLAY]))
    }

    fn notes(&self, s: &Scenario) -> Vec<Said> {
        let outer = s.sleeve.outer;
        let taken = Share(outer.si() / s.tube.width.si());
        vec![Said::new(say::NoteSleeveHole, (outer, taken))]
    }

    fn part(&self) -> Option<&'static dyn AddedPart> {
        Some(&Self)
    }

    /// A hole that was opened for it stays as wide.
    fn leaves_behind(&self, s: &Scenario, input: &mut Input) {
        input.fitting_hole_mm = Some(s.fitting.hole.si() * 1e3);
        input.hole_mm = Some(self.hole_in_wall(s).si() * 1e3);
    }
}

impl AddedPart for ThroughSleeve {
    fn kind(&self, s: &Scenario) -> RepairKind {
        if s.sleeve.welded {
            RepairKind::WeldedSleeve
        } else {
            RepairKind::ThroughSleeve
        }
    }

    fn differs(&self, before: &Scenario, after: &Scenario) -> bool {
        before.sleeve != after.sleeve
    }

    fn pieces(&self, s: &Scenario, bolts: u32) -> Option<Pieces> {
        Some(sleeves::pieces(s, bolts, s.tube.depth.si()))
    }

    fn cutting(&self, _s: &Scenario, pieces: &Pieces) -> Cutting {
        Cutting {
            plus: PROUD,
            minus: 0.0,
            notes: vec![
                said(say::CutFlush, [pieces.shape.length(), PROUD]),
                said(say::CutDeburr, []),
            ],
        }
    }

    /// One at each end.
    fn welds(&self, s: &Scenario, bolts: u32) -> u32 {
        if s.sleeve.welded { 2 * bolts } else { 0 }
    }

    fn candidates(&self, s: &Scenario, all: &mut Vec<Input>) {
        let hole = of(s).hole_in_wall(s).si();
        let rows = s.bolting.spacing_across * (s.bolting.rows as f64 - 1.0);
        let flat = s.tube.width - s.tube.corner_radius * 2.0 - rows;
        let is_aluminium = |material: &Material| material.family() == Family::Aluminium;
        for stock in sleeves::stock(s) {
            let outer = stock.0.outer_diameter();
            // It would rattle in the hole that is there, or its end would not lie flush in the rounded corner.
            if outer.si() < hole - 1e-6 || outer > flat {
                continue;
            }
            // Not welded it is no repair: the clamp goes past the wall.
            if is_aluminium(stock.1) == is_aluminium(s.tube.material) {
                all.push(sleeves::with(
                    s,
                    SupportKind::ThroughSleeve,
                    stock,
                    YesNo::Yes,
                ));
            }
        }
    }
}
