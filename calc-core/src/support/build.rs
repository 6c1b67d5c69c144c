//! Builds the stand of each kind of support.

use super::{Limit, SERVICE_SHARE, Side, SupportModel};
use crate::catalog::Family;
use crate::mechanics::face::{self, FaceCurve, FaceTube, LOWER_BOUND};
use crate::mechanics::plate::{Plate, PlateCurve};
use crate::mechanics::ring::Ring;
use crate::mechanics::sleeve::{self, SleeveCurve};
use crate::mechanics::solve::find_root;
use crate::mechanics::{stiffness, washer};
use crate::quantity::{InUnits, Length, Stress, mm, mpa, newton};
use crate::report::{Part, Sentence, Strength, say};
use crate::scenario::{Mount, Scenario, SupportKind};
use crate::support::seat;
use std::f64::consts::FRAC_PI_4;

/// Yield strength of common flat washers; low-carbon steel, no strength is specified. An assumption.
const WASHER_YIELD_MPA: f64 = 250.0;

pub(super) struct Builder<'a> {
    pub(super) s: &'a Scenario,
    pub(super) strength: Strength,
    /// Factor on the yield strength of the plate, sleeve or block that was put in; the fitting is no
    /// such part.
    pub(super) added_part: f64,
}

impl Builder<'_> {
    pub(super) fn build(&self) -> SupportModel {
        if self.s.member.is_open() {
            return self.one_ply();
        }
        if seat::round_wall_carries(self.s) {
            return self.round_wall();
        }
        match self.s.support {
            SupportKind::Bare | SupportKind::Spreader => self.on_faces(),
            SupportKind::LooseSleeve => self.loose_sleeve(),
            SupportKind::ThroughSleeve => self.through_sleeve(),
            SupportKind::SolidInsert => self.solid_insert(),
            SupportKind::Solid => self.solid(),
        }
    }

    /// Factor on face curves: lower bound for verdicts, half near an open end.
    fn face_factor(&self) -> f64 {
        let bound = match self.strength {
            Strength::Least => LOWER_BOUND,
            Strength::Likely => 1.0,
        };
        bound * washer_end_factor(self.s)
    }

    fn face(&self, tube: &FaceTube, washer: Length) -> FaceCurve {
        FaceCurve::new(tube, washer, self.face_factor())
    }

    /// Where a bare face pushes back on a washer that dishes: the diameter at which face and washer
    /// carry the same.
    fn effective_washer(&self, tube: &FaceTube) -> Length {
        let w = &self.s.bolting.washer;
        let nut = self.s.bolting.thread.bearing_diameter().min(w.outer);
        let thickness = match self.strength {
            Strength::Least => w.thickness_min,
            Strength::Likely => w.thickness,
        };
        let diameter = find_root(nut.si(), w.outer.si(), 1e-6, |d| {
            let at = Length::of_si(d);
            let face = self.face(tube, at).force_at_share(SERVICE_SHARE);
            let dish =
                washer::dishing_load(mpa(WASHER_YIELD_MPA), thickness, w.outer, w.bore, nut, at);
            face.si() - dish.si()
        });
        Length::of_si(diameter)
    }

    fn plate_side(&self, tube: &FaceTube, plate: &Plate, washer: Length, face: FaceCurve) -> Side {
        let bound = match self.strength {
            Strength::Least => LOWER_BOUND,
            Strength::Likely => 1.0,
        };
        let end = end_factor(self.s, plate.width.min(plate.length));
        Side::Plate(PlateCurve::new(tube, plate, washer, bound * end), face)
    }

    fn yield_of(&self, material: &crate::catalog::Material, welded: bool) -> Stress {
        let row = match (self.strength, material.welded()) {
            (Strength::Least, Some(w)) if welded => &w.least,
            (Strength::Likely, Some(w)) if welded => &w.likely,
            (Strength::Least, _) => material.least(),
            (Strength::Likely, _) => material.likely(),
        };
        row.compressive_yield_strength()
    }

    /// Yield strength of the plate, sleeve or block that was put in.
    fn added_part_yield(&self, material: &crate::catalog::Material, welded: bool) -> Stress {
        self.yield_of(material, welded) * self.added_part
    }

    /// The two sides as they bear: fitting that spreads, spreader plate, or washer.
    fn sides(&self, tube: &FaceTube, effective: Length) -> [Side; 2] {
        let s = self.s;
        let bare = self.face(tube, effective);
        let plate_on = |plate: &Plate| self.plate_side(tube, plate, s.bolting.washer.outer, bare);
        if s.support == SupportKind::Spreader {
            let side = plate_on(&Plate {
                thickness: s.spreader.thickness,
                length: s.spreader.length,
                width: s.spreader.width,
                modulus: s.spreader.material.modulus(),
                yield_strength: self.added_part_yield(s.spreader.material, false),
            });
            return [side, side];
        }
        if !s.fitting.spreads || s.fitting.thickness.si() < 0.5e-3 {
            return [Side::Washer(bare); 2];
        }
        let cheek = plate_on(&Plate {
            thickness: s.fitting.thickness,
            // A fitting is longer than this; a longer plate would not be credited with more.
            length: s.tube.width * 1.5,
            width: s.tube.width,
            modulus: s.fitting.material.modulus(),
            yield_strength: self.yield_of(s.fitting.material, false),
        });
        match s.bolting.mount {
            Mount::ThroughSides => [cheek, cheek],
            Mount::FromTop => [cheek, Side::Washer(bare)],
        }
    }

    fn face_limits(&self, sides: &[Side; 2], effective: Length) -> Vec<Limit> {
        let at = SERVICE_SHARE * self.s.tube.width.si();
        let mut limits: Vec<Limit> = Vec::new();
        for side in sides {
            match side {
                Side::Washer(face) => {
                    let dishes = effective.si() < 0.98 * self.s.bolting.washer.outer.si();
                    limits.push(Limit {
                        part: if dishes { Part::Washer } else { Part::Face },
                        load: face.force_si(at),
                        omega: None,
                        code: if dishes {
                            say::LimitWasherDishes
                        } else {
                            say::LimitFace1pct
                        },
                    });
                }
                Side::Plate(plate, _) => {
                    limits.push(Limit {
                        part: Part::Face,
                        load: side.force(at),
                        omega: None,
                        code: say::LimitPlate1pct,
                    });
                    let l = plate.limits();
                    for (part, load, omega, code) in [
                        (Part::Plate, l.plate, 1.50, say::LimitPlateBends),
                        (Part::Corner, l.corner, 1.50, say::LimitCornerFolds),
                        (Part::SideWall, l.wall_yielding, 1.50, say::LimitWallYields),
                        (
                            Part::SideWall,
                            l.wall_crippling,
                            2.00,
                            say::LimitWallCripples,
                        ),
                        (Part::SideWall, l.wall_buckling, 1.67, say::LimitWallBuckles),
                    ] {
                        limits.push(Limit {
                            part,
                            load: load.si(),
                            omega: Some(omega),
                            code,
                        });
                    }
                }
            }
            if sides[0] == sides[1] {
                break;
            }
        }
        limits
    }

    fn on_faces(&self) -> SupportModel {
        let tube = self.s.tube.face(self.strength);
        let effective = self.effective_washer(&tube);
        let sides = self.sides(&tube, effective);
        SupportModel {
            limits: self.face_limits(&sides, effective),
            sides: Some(sides),
            core: None,
            width: self.s.tube.width.si(),
            face_gap: 0.0,
            effective_washer: effective,
        }
    }

    /// Faces with something cut to length between them, and the limit of use of the two together.
    fn between_faces(
        &self,
        (sides, effective): ([Side; 2], Length),
        core: SleeveCurve,
        (part, code): (Part, Sentence<2>),
    ) -> SupportModel {
        let mut model = SupportModel {
            sides: Some(sides),
            core: Some(core),
            width: self.s.tube.width.si(),
            face_gap: (-self.s.sleeve_short.si()).max(0.0),
            limits: Vec::new(),
            effective_washer: effective,
        };
        let service = model.approach_at_share(SERVICE_SHARE);
        model.limits.push(Limit {
            part: if core.yields_at_si() > service {
                Part::Face
            } else {
                part
            },
            load: model.force(service),
            omega: None,
            code,
        });
        model
    }

    fn loose_sleeve(&self) -> SupportModel {
        let s = self.s;
        let tube = s.tube.face(self.strength);
        let effective = self.effective_washer(&tube);
        let sides = self.sides(&tube, effective);
        let length = s.tube.depth - s.tube.wall * 2.0;
        let yield_ = self.added_part_yield(s.sleeve.material, false);
        let modulus = s.sleeve.material.modulus();
        let area = sleeve::area(s.sleeve.outer, s.sleeve.inner);
        let core = SleeveCurve::new(
            stiffness::prism(modulus, area, length),
            sleeve::strength(yield_, modulus, s.sleeve.outer, s.sleeve.inner, length),
            s.sleeve_short,
        );
        let mut model = self.between_faces(
            (sides, effective),
            core,
            (Part::Sleeve, say::LimitSleeve1pct),
        );
        model.limits.push(Limit {
            part: Part::Sleeve,
            load: model.force(core.yields_at_si().min(model.approach_end())),
            omega: Some(1.67),
            code: say::LimitSleeveSquashes,
        });
        // The end of the sleeve presses on the inside of the wall, which may be the softer metal, and only
        // where the hole leaves any.
        let seat = sleeve::area(
            s.sleeve.outer,
            s.sleeve.inner.max(s.bolting.hole).min(s.sleeve.outer),
        );
        model.limits.push(Limit {
            part: Part::Stack,
            load: 1.8 * tube.yield_strength.min(yield_).si() * seat.si(),
            omega: Some(2.00),
            code: say::LimitSleeveBites,
        });
        model
    }

    fn through_sleeve(&self) -> SupportModel {
        let s = self.s;
        let welded = s.sleeve.welded;
        let yield_ = self.added_part_yield(s.sleeve.material, welded);
        let modulus = s.sleeve.material.modulus();
        let (outer, inner, length) = (s.sleeve.outer, s.sleeve.inner, s.tube.depth);
        let w = &s.bolting.washer;
        // A cheek or plate between washer and tube covers the whole end.
        let covered = if s.fitting.thickness.si() >= 2e-3 && s.bolting.mount == Mount::ThroughSides
        {
            sleeve::area(outer, inner)
        } else {
            sleeve::covered_end(outer, inner, w.outer, w.bore)
        };
        let squash = sleeve::strength(yield_, modulus, outer, inner, length)
            .min(newton(yield_.si() * covered.si()));
        let core = SleeveCurve::new(
            stiffness::prism(modulus, sleeve::area(outer, inner), length),
            squash,
            mm(0.0),
        );
        // Welded, the faces hang on the sleeve and give way with it, at the strength next to a weld.
        // Unwelded they are pressed only where the washer reaches past the sleeve; not counted for
        // verdicts.
        let mut tube = s.tube.face(self.strength);
        if welded
            && s.input.tube_yield_mpa.is_none()
            && s.tube.material.family() == Family::Aluminium
        {
            tube.yield_strength = self.yield_of(s.tube.material, true);
        }
        let ring = if welded { outer } else { w.outer };
        // No curve was made for the wall of a round tube: it is not counted on.
        let counts = !s.member.is_round()
            && (welded || (self.strength == Strength::Likely && w.outer > outer * 1.1));
        let usable = counts && face::out_of_range(&tube, ring).is_empty();
        let sides = usable.then(|| [Side::Washer(self.face(&tube, ring)); 2]);
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
            omega: Some(1.67),
            code: if covered.si() < 0.999 * sleeve::area(outer, inner).si() {
                say::LimitSleeveEnd
            } else {
                say::LimitSleeveSquashes
            },
        });
        // The end of the sleeve presses on the fitting or the washer, which may be the softer metal.
        let beside = if s.fitting.thickness.si() >= 2e-3 {
            self.yield_of(s.fitting.material, false)
                .min(mpa(WASHER_YIELD_MPA))
        } else {
            mpa(WASHER_YIELD_MPA)
        };
        model.limits.push(Limit {
            part: Part::Stack,
            load: 1.8 * beside.min(yield_).si() * covered.si(),
            omega: Some(2.00),
            code: say::LimitSleeveBites,
        });
        model
    }

    /// Pressed area under the washer and what it may carry: bearing of flat contact faces.
    fn pressed(&self, softer: Stress) -> f64 {
        let outer = self.s.washer_on_metal().si();
        let area = FRAC_PI_4 * (outer.powi(2) - self.s.bolting.hole.si().powi(2)).max(0.0);
        1.8 * softer.si() * area
    }

    fn solid_insert(&self) -> SupportModel {
        let s = self.s;
        let tube = s.tube.face(self.strength);
        let softer = self
            .added_part_yield(s.insert_material, false)
            .min(tube.yield_strength);
        let depth = s.tube.depth - s.tube.wall * 2.0;
        let core = SleeveCurve::new(
            stiffness::solid_stack(
                s.insert_material.modulus(),
                s.bolting.thread.major(),
                s.bolting.washer.outer,
                depth,
            ),
            newton(self.pressed(softer)),
            s.sleeve_short,
        );
        let pressed = Limit {
            part: Part::Insert,
            load: core.strength_si(),
            omega: Some(2.00),
            code: say::LimitInsertPressed,
        };
        if s.member.is_round() {
            return self.only(core, vec![pressed]);
        }
        let effective = self.effective_washer(&tube);
        let sides = self.sides(&tube, effective);
        let mut model = self.between_faces(
            (sides, effective),
            core,
            (Part::Insert, say::LimitInsert1pct),
        );
        model.limits.push(pressed);
        model
    }

    fn solid(&self) -> SupportModel {
        let s = self.s;
        let load = self.pressed(s.tube.yield_strength(self.strength));
        let core = SleeveCurve::new(
            stiffness::solid_stack(
                s.tube.modulus,
                s.bolting.thread.major(),
                s.bolting.washer.outer,
                s.tube.depth,
            ),
            newton(load),
            mm(0.0),
        );
        self.only(core, vec![stack_pressed(load)])
    }

    /// Something that carries without any face.
    fn only(&self, core: SleeveCurve, limits: Vec<Limit>) -> SupportModel {
        SupportModel {
            sides: None,
            core: Some(core),
            width: self.s.tube.width.si(),
            face_gap: 0.0,
            limits,
            effective_washer: self.s.bolting.washer.outer,
        }
    }

    /// One ply of an open section between fitting and washer: nothing to crush. A washer made to fit
    /// makes the grip longer; not counted, so that the bolt is a little too stiff and loses a little
    /// more.
    fn one_ply(&self) -> SupportModel {
        let s = self.s;
        let member = s.tube.yield_strength(self.strength);
        // Under each washer lies the fitting, the member or a plate on it.
        let mut softer = if s.support == SupportKind::Spreader {
            self.yield_of(s.spreader.material, false)
        } else {
            member
        };
        softer = softer.min(if s.fitting.thickness.si() > 0.0 {
            self.yield_of(s.fitting.material, s.tube.weld_near)
        } else {
            member
        });
        let load = self.pressed(softer);
        let core = SleeveCurve::new(
            stiffness::solid_stack(
                s.tube.modulus,
                s.bolting.thread.major(),
                s.bolting.washer.outer,
                s.clamped(),
            ),
            newton(load),
            mm(0.0),
        );
        self.only(core, vec![stack_pressed(load)])
    }

    /// The wall of a round tube by itself: a strip as long as the washer, as a ring up to first yield. A
    /// stand-in that keeps the numbers finite, far on the soft and weak side; no verdict rests on it, see
    /// [`seat::clamp_unknown`].
    fn round_wall(&self) -> SupportModel {
        let s = self.s;
        let ring = Ring {
            diameter: s.tube.width,
            wall: s.tube.wall_at(self.strength),
            length: s.bolting.washer.outer,
        };
        let load = ring.first_yield(s.tube.yield_strength(self.strength));
        let core = SleeveCurve::new(ring.stiffness(s.tube.modulus), load, mm(0.0));
        let limit = Limit {
            part: Part::Face,
            load: load.si(),
            omega: None,
            code: say::LimitRoundWall,
        };
        self.only(core, vec![limit])
    }
}

const fn stack_pressed(load: f64) -> Limit {
    Limit {
        part: Part::Stack,
        load,
        omega: Some(2.00),
        code: say::LimitStackPressed,
    }
}

/// Half where a washer is near an open end, otherwise one. The smallest patch a washer can have, the
/// bearing face of the nut, asks for the most distance; a washer that dishes is no larger.
pub(crate) fn washer_end_factor(s: &Scenario) -> f64 {
    end_factor(s, s.bolting.thread.bearing_diameter())
}

/// Half near an open end, otherwise one.
pub(crate) fn end_factor(s: &Scenario, patch: Length) -> f64 {
    if s.tube.open_end && face::near_open_end(s.tube.end_distance, s.tube.width, patch) {
        0.5
    } else {
        1.0
    }
}
