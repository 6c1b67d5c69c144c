//! What the clamp stands on, built from a scenario at one of the two strengths: clamp force against
//! the approach of the two washers.

use crate::catalog::Family;
use crate::mechanics::face::{self, CHECKED_TO, FaceCurve, FaceTube, LOWER_BOUND};
use crate::mechanics::plate::{Plate, PlateCurve};
use crate::mechanics::sleeve::{self, SleeveCurve};
use crate::mechanics::solve::rising_root;
use crate::mechanics::{stiffness, washer};
use crate::quantity::{InUnits, Length, Stress, mm, mpa, newton};
use crate::report::{Part, Strength};
use crate::scenario::{Mount, Scenario, SupportKind};
use std::f64::consts::FRAC_PI_4;

/// A dent that a caliper shows: what is called lasting, in metres. An assumption.
pub(crate) const VISIBLE: f64 = 0.1e-3;

/// Yield strength of common flat washers; low-carbon steel, no strength is specified. An assumption.
const WASHER_YIELD_MPA: f64 = 250.0;

/// Share of the width at which a face has reached its serviceability limit.
pub(crate) const SERVICE_SHARE: f64 = 0.01;

/// One face with what lies on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Side {
    /// The washer presses on the face.
    Washer(FaceCurve),
    /// A plate carries the load to the side walls; the bare face is never weaker than without it.
    Plate(PlateCurve, FaceCurve),
}

impl Side {
    pub(crate) fn force(&self, delta: f64) -> f64 {
        match self {
            Self::Washer(face) => face.force_si(delta),
            Self::Plate(plate, face) => plate.force_si(delta).max(face.force_si(delta)),
        }
    }

    /// Indentation that stays after the clamp at `delta` is taken off.
    pub(crate) fn left_after(&self, delta: f64) -> f64 {
        match self {
            Self::Washer(face) => face.left_after(mm(delta * 1e3)).si(),
            Self::Plate(plate, _) => (delta - self.force(delta) / plate.elastic_si(1.0)).max(0.0),
        }
    }

    /// Stiffness against small changes, N/m.
    fn spring_rate(&self, delta: f64) -> f64 {
        match self {
            Self::Washer(face) => face.spring_rate_si(delta),
            Self::Plate(plate, _) => plate.elastic_si(1.0),
        }
    }

    /// Indentation after whose clamp a visible dent stays.
    fn lasting_at(&self, end: f64) -> f64 {
        match self {
            Self::Washer(face) => face.lasting_at_si(VISIBLE, end),
            Self::Plate(plate, _) => rising_root(0.0, end, 1e-6, |d| {
                plate.elastic_si(d - VISIBLE) - self.force(d)
            }),
        }
    }
}

/// A load that the support may not pass, and how it is guarded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Limit {
    pub(crate) part: Part,
    /// Clamp force, N.
    pub(crate) load: f64,
    /// `None`: a limit of use, met by the largest clamp of the scatter. `Some(Ω)`: a strength, met by
    /// the nominal clamp times Ω.
    pub(crate) omega: Option<f64>,
    pub(crate) code: &'static str,
}

/// What the clamp stands on, at one strength.
#[derive(Clone, Debug)]
pub(crate) struct Stand {
    sides: Option<[Side; 2]>,
    core: Option<SleeveCurve>,
    width: f64,
    pub(crate) limits: Vec<Limit>,
    /// Washer diameter that counts on a bare face: smaller than the washer where it dishes.
    pub(crate) effective_washer: Length,
}

impl Stand {
    /// Builds it.
    pub(crate) fn new(s: &Scenario, strength: Strength) -> Self {
        Builder { s, strength }.build()
    }

    /// Largest approach of the washers that was checked.
    pub(crate) fn approach_end(&self) -> f64 {
        let faces = if self.sides.is_some() {
            2.0 * CHECKED_TO * self.width
        } else {
            0.0
        };
        let core = self.core.map_or(0.0, |c| 3.0 * c.yields_at_si());
        if self.sides.is_some() { faces } else { core }
    }

    /// The two sides, where faces carry.
    pub(crate) const fn sides(&self) -> Option<&[Side; 2]> {
        self.sides.as_ref()
    }

    /// Indentation of the two faces at an approach of the washers.
    pub(crate) fn split(&self, approach: f64) -> [f64; 2] {
        match &self.sides {
            None => [0.0, 0.0],
            Some([a, b]) if a == b => [approach / 2.0; 2],
            Some([a, b]) => {
                let first =
                    rising_root(0.0, approach, 1e-7, |d| a.force(d) - b.force(approach - d));
                [first, approach - first]
            }
        }
    }

    /// Clamp force at an approach of the washers.
    pub(crate) fn force(&self, approach: f64) -> f64 {
        let faces = self
            .sides
            .as_ref()
            .map_or(0.0, |[a, _]| a.force(self.split(approach)[0]));
        faces + self.core.map_or(0.0, |core| core.force_si(approach))
    }

    /// Approach at a clamp force; `None` beyond the checked range.
    pub(crate) fn approach(&self, force: f64) -> Option<f64> {
        let end = self.approach_end();
        if self.force(end) < force {
            return None;
        }
        Some(rising_root(0.0, end, 1e-8, |x| self.force(x) - force))
    }

    /// Stiffness against small changes at an approach, N/m: how it springs back, not how it gives way.
    /// What a yielding support has lost in slope on the way in, it does not lose on the way out; the
    /// stiffer value makes the losses larger, which is the safe side.
    pub(crate) fn spring_rate(&self, approach: f64) -> f64 {
        let split = self.split(approach);
        let faces = self.sides.as_ref().map_or(0.0, |[a, b]| {
            1.0 / (1.0 / a.spring_rate(split[0]) + 1.0 / b.spring_rate(split[1]))
        });
        let core = self.core.map_or(0.0, |core| core.spring_rate_si(approach));
        (faces + core).max(1.0)
    }

    /// Clamp force at a share of the width on each face.
    pub(crate) fn force_at_share(&self, share: f64) -> f64 {
        match (&self.sides, self.core) {
            (Some(_), _) => self.force(2.0 * share * self.width),
            (None, core) => core.map_or(0.0, |c| c.force_si(2.0 * share * self.width)),
        }
    }

    /// Clamp force from which a visible dent stays, or the core is squashed.
    pub(crate) fn lasting_from(&self) -> f64 {
        let faces = self.sides.as_ref().map(|[a, b]| {
            let end = CHECKED_TO * self.width;
            let at = a.lasting_at(end);
            let force = a.force(at);
            if a == b {
                (2.0 * at, force)
            } else {
                (2.0 * at, force.min(b.force(b.lasting_at(end))))
            }
        });
        match (faces, self.core) {
            (Some((_, force)), None) => force,
            (Some((at, _)), Some(core)) => self.force(at.min(core.yields_at_si())),
            (None, Some(core)) => core.strength_si(),
            (None, None) => 0.0,
        }
    }

    /// The limit that governs a nominal clamp with a scatter: the largest utilisation.
    pub(crate) fn governing(&self, scatter: f64) -> Limit {
        let use_of = |l: &Limit| l.omega.unwrap_or(1.0 + scatter) / l.load;
        self.limits
            .iter()
            .copied()
            .max_by(|a, b| use_of(a).total_cmp(&use_of(b)))
            .unwrap_or(Limit {
                part: Part::Stack,
                load: f64::NAN,
                omega: None,
                code: "none",
            })
    }

    /// The least of the limits, without factors.
    pub(crate) fn limit(&self) -> f64 {
        self.limits
            .iter()
            .map(|l| l.load)
            .fold(f64::INFINITY, f64::min)
    }
}

struct Builder<'a> {
    s: &'a Scenario,
    strength: Strength,
}

impl Builder<'_> {
    fn build(&self) -> Stand {
        match self.s.support {
            SupportKind::Bare | SupportKind::Spreader => self.on_faces(),
            SupportKind::LooseSleeve => self.loose_sleeve(),
            SupportKind::ThroughSleeve => self.through_sleeve(),
            SupportKind::SolidInsert => self.solid_insert(),
            SupportKind::Solid => self.solid(),
        }
    }

    /// Factor on face curves: lower bound for verdicts, half near an open end.
    fn face_factor(&self, washer: Length) -> f64 {
        let bound = match self.strength {
            Strength::Least => LOWER_BOUND,
            Strength::Likely => 1.0,
        };
        bound * end_factor(self.s, washer)
    }

    fn face(&self, tube: &FaceTube, washer: Length) -> FaceCurve {
        FaceCurve::new(tube, washer, self.face_factor(washer))
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
        let diameter = rising_root(nut.si(), w.outer.si(), 1e-4, |d| {
            let at = mm(d * 1e3);
            let face = self.face(tube, at).force_at_share(SERVICE_SHARE);
            let dish =
                washer::dishing_load(mpa(WASHER_YIELD_MPA), thickness, w.outer, w.bore, nut, at);
            face.si() - dish.si()
        });
        mm(diameter * 1e3)
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
                yield_strength: self.yield_of(s.spreader.material, false),
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
                            "limit-washer-dishes"
                        } else {
                            "limit-face-1pct"
                        },
                    });
                }
                Side::Plate(plate, _) => {
                    limits.push(Limit {
                        part: Part::Face,
                        load: side.force(at),
                        omega: None,
                        code: "limit-plate-1pct",
                    });
                    let l = plate.limits();
                    for (part, load, omega, code) in [
                        (Part::Plate, l.plate, 1.50, "limit-plate-bends"),
                        (Part::Corner, l.corner, 1.50, "limit-corner-folds"),
                        (Part::SideWall, l.wall_yielding, 1.50, "limit-wall-yields"),
                        (
                            Part::SideWall,
                            l.wall_crippling,
                            2.00,
                            "limit-wall-cripples",
                        ),
                        (Part::SideWall, l.wall_buckling, 1.67, "limit-wall-buckles"),
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

    fn on_faces(&self) -> Stand {
        let tube = self.s.tube.face(self.strength);
        let effective = self.effective_washer(&tube);
        let sides = self.sides(&tube, effective);
        Stand {
            limits: self.face_limits(&sides, effective),
            sides: Some(sides),
            core: None,
            width: self.s.tube.width.si(),
            effective_washer: effective,
        }
    }

    fn loose_sleeve(&self) -> Stand {
        let s = self.s;
        let tube = s.tube.face(self.strength);
        let effective = self.effective_washer(&tube);
        let sides = self.sides(&tube, effective);
        let length = s.tube.depth - s.tube.wall * 2.0;
        let yield_ = self.yield_of(s.sleeve.material, false);
        let modulus = s.sleeve.material.modulus();
        let area = sleeve::area(s.sleeve.outer, s.sleeve.inner);
        let core = SleeveCurve::new(
            stiffness::prism(modulus, area, length),
            sleeve::strength(yield_, modulus, s.sleeve.outer, s.sleeve.inner, length),
            s.sleeve_short,
        );
        let mut stand = Stand {
            sides: Some(sides),
            core: Some(core),
            width: s.tube.width.si(),
            limits: Vec::new(),
            effective_washer: effective,
        };
        let service = 2.0 * SERVICE_SHARE * s.tube.width.si();
        stand.limits.push(Limit {
            part: if core.yields_at_si() > service {
                Part::Face
            } else {
                Part::Sleeve
            },
            load: stand.force(service),
            omega: None,
            code: "limit-sleeve-1pct",
        });
        stand.limits.push(Limit {
            part: Part::Sleeve,
            load: stand.force(core.yields_at_si().min(stand.approach_end())),
            omega: Some(1.67),
            code: "limit-sleeve-squashes",
        });
        stand
    }

    fn through_sleeve(&self) -> Stand {
        let s = self.s;
        let welded = s.sleeve.welded;
        let yield_ = self.yield_of(s.sleeve.material, welded);
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
        let counts = welded || (self.strength == Strength::Likely && w.outer > outer * 1.1);
        let usable = counts && face::out_of_range(&tube, ring).is_empty();
        let sides = usable.then(|| [Side::Washer(self.face(&tube, ring)); 2]);
        let mut stand = Stand {
            sides,
            core: Some(core),
            width: s.tube.width.si(),
            limits: Vec::new(),
            effective_washer: ring,
        };
        stand.limits.push(Limit {
            part: Part::Sleeve,
            load: stand.force(core.yields_at_si()),
            omega: Some(1.67),
            code: if covered.si() < 0.999 * sleeve::area(outer, inner).si() {
                "limit-sleeve-end"
            } else {
                "limit-sleeve-squashes"
            },
        });
        stand
    }

    /// Pressed area under the washer and what it may carry: bearing of flat contact faces.
    fn pressed(&self, softer: Stress) -> f64 {
        let w = &self.s.bolting.washer;
        let area = FRAC_PI_4 * (w.outer.si().powi(2) - self.s.bolting.hole.si().powi(2)).max(0.0);
        1.8 * softer.si() * area
    }

    fn solid_insert(&self) -> Stand {
        let s = self.s;
        let tube = s.tube.face(self.strength);
        let effective = self.effective_washer(&tube);
        let sides = self.sides(&tube, effective);
        let softer = self
            .yield_of(s.insert_material, false)
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
        let mut stand = Stand {
            sides: Some(sides),
            core: Some(core),
            width: s.tube.width.si(),
            limits: Vec::new(),
            effective_washer: effective,
        };
        stand.limits.push(Limit {
            part: if core.yields_at_si() > 2.0 * SERVICE_SHARE * s.tube.width.si() {
                Part::Face
            } else {
                Part::Insert
            },
            load: stand.force(2.0 * SERVICE_SHARE * s.tube.width.si()),
            omega: None,
            code: "limit-insert-1pct",
        });
        stand.limits.push(Limit {
            part: Part::Insert,
            load: core.strength_si(),
            omega: Some(2.00),
            code: "limit-insert-pressed",
        });
        stand
    }

    fn solid(&self) -> Stand {
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
        Stand {
            sides: None,
            core: Some(core),
            width: s.tube.width.si(),
            limits: vec![Limit {
                part: Part::Stack,
                load,
                omega: Some(2.00),
                code: "limit-stack-pressed",
            }],
            effective_washer: s.bolting.washer.outer,
        }
    }
}

/// Half near an open end, otherwise one.
pub(crate) fn end_factor(s: &Scenario, patch: Length) -> f64 {
    match s.tube.end_distance {
        Some(distance) if s.tube.open_end && face::near_open_end(distance, s.tube.width, patch) => {
            0.5
        }
        _ => 1.0,
    }
}
