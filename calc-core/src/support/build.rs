//! What the curves of supports are put together from: strengths, faces with what lies on them, cores.

use super::model::{Limit, SERVICE_SHARE, Side, SupportModel};
use super::pressed::Pressed;
use crate::catalog::{self, Material};
use crate::mechanics::face::{self, FaceCurve, FaceTube, LOWER_BOUND};
use crate::mechanics::neighbours::{self, CHECKED_WASHER, Group};
use crate::mechanics::plate::{Plate, PlateCurve};
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::solve::find_root;
use crate::mechanics::washer;
use crate::quantity::{InUnits, Length, Stress, mpa};
use crate::report::{Part, Sentence, Strength, say};
use crate::scenario::Scenario;

/// Yield strength of common flat washers; low-carbon steel, no strength is specified. An assumption.
pub(super) const WASHER_YIELD_MPA: f64 = 250.0;

/// A joint at one of the two strengths, with what every support is built from.
pub(crate) struct Builder<'a> {
    pub(super) s: &'a Scenario,
    pub(super) strength: Strength,
    /// Factor on the yield strength of the plate, sleeve or block that was put in; the fitting is no
    /// such part.
    pub(super) added_part: f64,
}

impl Builder<'_> {
    /// Factor on what was fitted to runs: a lower bound for verdicts.
    const fn bound(&self) -> f64 {
        match self.strength {
            Strength::Least => LOWER_BOUND,
            Strength::Likely => 1.0,
        }
    }

    /// Thickness of a washer at this strength.
    pub(super) const fn washer_thickness(&self) -> Length {
        let w = &self.s.bolting.washer;
        match self.strength {
            Strength::Least => w.thickness_min,
            Strength::Likely => w.thickness,
        }
    }

    /// A face with a washer on it, and others beside it.
    pub(super) fn face(&self, tube: &FaceTube, washer: Length) -> FaceCurve {
        let factor = self.bound() * group_factor(self.s, tube.wall);
        FaceCurve::new(tube, counted_washer(self.s, washer), factor)
    }

    /// Where a bare face pushes back on a washer that dishes: the diameter at which face and washer
    /// carry the same.
    pub(super) fn effective_washer(&self, tube: &FaceTube) -> Length {
        let w = &self.s.bolting.washer;
        let nut = self.s.bolting.thread.bearing_diameter().min(w.outer);
        let thickness = self.washer_thickness();
        let diameter = find_root(nut.si(), w.outer.si(), 1e-6, |d| {
            let at = Length::of_si(d);
            let face = self.face(tube, at).force_at_share(SERVICE_SHARE);
            let dish =
                washer::dishing_load(mpa(WASHER_YIELD_MPA), thickness, w.outer, w.bore, nut, at);
            face.si() - dish.si()
        });
        Length::of_si(diameter)
    }

    /// A plate on one face, under the washer; without it the face would carry as `bare`. Of a plate that several bolts
    /// share, or that reaches past the end, each has its own length; of two rows under one plate each has half of it and
    /// of the two side walls.
    pub(super) fn plate_on(&self, tube: &FaceTube, plate: &Plate, bare: FaceCurve) -> Side {
        let own = Plate {
            length: own_length(self.s, plate.length),
            ..*plate
        };
        let end = end_factor(self.s, own.width.min(own.length));
        let washer = self.s.bolting.washer.outer;
        let factor = self.bound() * end / self.s.bolting.rows as f64;
        let alone = !feels_neighbour(self.s);
        Side::Plate(PlateCurve::new(tube, &own, washer, factor, alone), bare)
    }

    /// Yield strength of a material at this strength, in compression.
    pub(super) fn yield_of(&self, material: &Material, welded: bool) -> Stress {
        self.row_of(material, welded).compressive_yield_strength()
    }

    /// Strengths of a material at this strength.
    pub(super) fn row_of<'m>(&self, material: &'m Material, welded: bool) -> &'m catalog::Strength {
        match self.strength {
            Strength::Least => material.least_beside(welded),
            Strength::Likely => material.likely_beside(welded),
        }
    }

    /// Yield strength of the plate, sleeve or block that was put in.
    pub(super) fn added_part_yield(&self, material: &Material, welded: bool) -> Stress {
        self.yield_of(material, welded) * self.added_part
    }

    /// The two sides as they bear where no plate was put in: fitting that spreads, or washer.
    pub(super) fn sides(&self, tube: &FaceTube, effective: Length) -> [Side; 2] {
        let s = self.s;
        let bare = self.face(tube, effective);
        let washer = Side::Washer(bare);
        if !s.fitting.spreads || s.fitting.thickness.si() < 0.5e-3 {
            return [washer; 2];
        }
        let cheek = self.plate_on(
            tube,
            &Plate {
                thickness: s.fitting.thickness,
                // No longer plate is credited with more. What reaches over both side walls has its nearest edge, where
                // that is nearer, along the tube.
                length: (s.tube.width * 1.5).min(s.fitting.edge * 2.0),
                width: s.tube.width,
                modulus: s.fitting.material.modulus(),
                yield_strength: self.yield_of(s.fitting.material, false),
            },
            bare,
        );
        [cheek, if s.bolting.two_cheeks { cheek } else { washer }]
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
                    let what = [
                        (Part::Plate, say::LimitPlateBends),
                        (Part::Corner, say::LimitCornerFolds),
                        (Part::SideWall, say::LimitWallYields),
                        (Part::SideWall, say::LimitWallCripples),
                        (Part::SideWall, say::LimitWallBuckles),
                    ];
                    for ((part, code), (load, omega)) in what.into_iter().zip(l.guarded()) {
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

    /// Nothing but the two faces, with what lies on them.
    pub(super) fn on_faces(&self, sides: [Side; 2], effective: Length) -> SupportModel {
        let mut limits = self.face_limits(&sides, effective);
        limits.extend(self.on_top());
        SupportModel {
            limits,
            sides: Some(sides),
            core: None,
            width: self.s.tube.width.si(),
            face_gap: 0.0,
            effective_washer: effective,
        }
    }

    /// Faces with something cut to length between them, and the limit of use of the two together.
    pub(super) fn between_faces(
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
        model.limits.extend(self.on_top());
        model
    }

    /// Something that carries without any face.
    pub(super) fn only(&self, core: SleeveCurve, limits: Vec<Limit>) -> SupportModel {
        SupportModel {
            sides: None,
            core: Some(core),
            width: self.s.tube.width.si(),
            face_gap: 0.0,
            limits,
            effective_washer: self.s.bolting.washer.outer,
        }
    }
}

/// Pressure in a stack of plates without a hollow.
pub(super) const fn stack_pressed(pressed: &Pressed) -> Limit {
    under_washer(pressed, (Part::Stack, say::LimitStackPressed))
}

/// Pressure under the washers on something that does not give; where the washer itself gives way first, that is
/// said.
pub(super) const fn under_washer(pressed: &Pressed, (part, code): (Part, Sentence<2>)) -> Limit {
    let (part, code) = if pressed.dishes {
        (Part::Washer, say::LimitWasherBridges)
    } else {
        (part, code)
    };
    Limit {
        part,
        load: pressed.load,
        omega: None,
        code,
    }
}

/// What of a face one bolt of the group has, near an open end or not; 1 for one bolt away from it.
pub(crate) fn group_factor(s: &Scenario, wall: Length) -> f64 {
    let b = &s.bolting;
    let patch = b.thread.bearing_diameter();
    let near = |bolt: &usize| is_near_end(s, b.spacing_along * *bolt as f64, patch);
    let group = Group {
        along: b.along,
        pitch: b.spacing_along,
        rows: b.rows,
        near_end: (0..b.along).filter(near).count(),
    };
    neighbours::group(&group, s.tube.width, s.tube.depth, wall)
}

/// Whether a bolt has less of the face for another in its row or beside it.
fn feels_neighbour(s: &Scenario) -> bool {
    let b = &s.bolting;
    b.rows > 1 || b.along > 1 && neighbours::row(b.spacing_along, s.tube.width, s.tube.depth) < 1.0
}

/// The washer that a face is counted with: beside a neighbour no wider than rows were run with.
fn counted_washer(s: &Scenario, washer: Length) -> Length {
    if feels_neighbour(s) {
        washer.min(s.tube.width * CHECKED_WASHER)
    } else {
        washer
    }
}

/// Length that one bolt has of a plate so long on each bolt.
pub(super) fn own_length(s: &Scenario, plate: Length) -> Length {
    let b = &s.bolting;
    let pitch = (b.along > 1).then_some(b.spacing_along);
    neighbours::plate_length(plate, pitch, s.tube.end_distance)
}

/// Half where a washer is near an open end, otherwise one. The smallest patch a washer can have, the
/// bearing face of the nut, asks for the most distance; a washer that dishes is no larger.
pub(crate) fn washer_end_factor(s: &Scenario) -> f64 {
    end_factor(s, s.bolting.thread.bearing_diameter())
}

/// Half near an open end, otherwise one.
fn end_factor(s: &Scenario, patch: Length) -> f64 {
    if is_near_end(s, Length::default(), patch) {
        0.5
    } else {
        1.0
    }
}

/// Whether a bolt so much farther in than the first is near an open end.
fn is_near_end(s: &Scenario, further: Length, patch: Length) -> bool {
    let distance = s.tube.end_distance + further;
    s.tube.open_end && face::near_open_end(distance, s.tube.width, patch)
}
