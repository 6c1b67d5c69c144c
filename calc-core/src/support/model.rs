//! The curve of a support at one of the two strengths: clamp force against the approach of the two washers,
//! and the loads that it may not pass.

use super::build::Builder;
use super::model_of;
use crate::mechanics::face::{CHECKED_TO, FaceCurve};
use crate::mechanics::plate::PlateCurve;
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::solve::{between, find_root};
use crate::quantity::{InUnits, Length};
use crate::report::{Part, Sentence, Strength, say};
use crate::scenario::Scenario;

/// A dent that a caliper shows: what is called lasting, in metres. An assumption.
pub(crate) const VISIBLE: f64 = 0.1e-3;

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
            Self::Washer(face) => face.left_after(Length::of_si(delta)).si(),
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
    pub(super) fn lasting_at(&self, end: f64) -> f64 {
        match self {
            Self::Washer(face) => face.lasting_at_si(VISIBLE, end),
            Self::Plate(plate, _) => find_root(0.0, end, 1e-7, |d| {
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
    pub(crate) code: Sentence<2>,
}

/// What the clamp stands on, at one strength.
#[derive(Clone, Debug)]
pub(crate) struct SupportModel {
    pub(super) sides: Option<[Side; 2]>,
    pub(super) core: Option<SleeveCurve>,
    pub(super) width: f64,
    /// Approach that a sleeve which is too long keeps off the faces, m.
    pub(super) face_gap: f64,
    pub(crate) limits: Vec<Limit>,
    /// Washer diameter that counts on a bare face: smaller than the washer where it dishes.
    pub(crate) effective_washer: Length,
}

impl SupportModel {
    /// Builds it.
    pub(crate) fn new(s: &Scenario, strength: Strength) -> Self {
        Self::with_added_part(s, strength, 1.0)
    }

    /// Builds it with another yield strength of the plate, sleeve or block that was put in, as a factor.
    pub(crate) fn with_added_part(s: &Scenario, strength: Strength, added_part: f64) -> Self {
        model_of(&Builder {
            s,
            strength,
            added_part,
        })
    }

    /// Largest approach of the washers that was checked.
    pub(crate) fn approach_end(&self) -> f64 {
        match (&self.sides, self.core) {
            (Some(_), _) => self.approach_at_share(CHECKED_TO),
            (None, core) => core.map_or(0.0, |c| 3.0 * c.yields_at_si()),
        }
    }

    /// Approach of the washers at which the first of the two faces is in by a share of the width.
    pub(crate) fn approach_at_share(&self, share: f64) -> f64 {
        let most = share * self.width;
        let pair = match &self.sides {
            Some([a, b]) if a != b => {
                let (soft, stiff) = if a.force(most) < b.force(most) {
                    (a, b)
                } else {
                    (b, a)
                };
                let force = soft.force(most);
                most + find_root(0.0, most, 1e-7, |d| stiff.force(d) - force)
            }
            _ => 2.0 * most,
        };
        pair + self.face_gap
    }

    /// The two sides, where faces carry.
    pub(crate) const fn sides(&self) -> Option<&[Side; 2]> {
        self.sides.as_ref()
    }

    /// Approach that a sleeve which is too long keeps off the faces, m.
    pub(crate) const fn face_gap(&self) -> f64 {
        self.face_gap
    }

    /// What carries between the faces, where something does.
    pub(crate) const fn core(&self) -> Option<SleeveCurve> {
        self.core
    }

    /// The faces alone at an approach: force, stiffness against small changes, dent of the face that
    /// gives more, what stays of the worst dent. `None` where no face carries.
    pub(crate) fn faces_at(&self, approach: f64) -> Option<[f64; 4]> {
        let [a, b] = self.sides.as_ref()?;
        let [x, y] = self.split(approach);
        let spring = 1.0 / (1.0 / a.spring_rate(x) + 1.0 / b.spring_rate(y));
        let left = a.left_after(x).max(b.left_after(y));
        Some([a.force(x), spring, x.max(y), left])
    }

    /// Indentation of the two faces at an approach of the washers.
    pub(crate) fn split(&self, approach: f64) -> [f64; 2] {
        let approach = (approach - self.face_gap).max(0.0);
        match &self.sides {
            None => [0.0, 0.0],
            Some([a, b]) if a == b => [approach / 2.0; 2],
            Some([a, b]) => {
                let first = find_root(0.0, approach, 1e-7, |d| a.force(d) - b.force(approach - d));
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
        let most = self.force(end);
        if most < force {
            return None;
        }
        if force <= 0.0 {
            return Some(0.0);
        }
        Some(between((0.0, -force), (end, most - force), 1e-7, |x| {
            self.force(x) - force
        }))
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
        self.force(self.approach_at_share(share))
    }

    /// Clamp force from which a visible dent stays, or the core is squashed.
    pub(crate) fn lasting_from(&self) -> f64 {
        let faces = self.sides.as_ref().map(|[a, b]| {
            let end = CHECKED_TO * self.width;
            let at = a.lasting_at(end);
            let force = if a == b {
                a.force(at)
            } else {
                a.force(at).min(b.force(b.lasting_at(end)))
            };
            (2.0 * at + self.face_gap, force)
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
                code: say::LimitStackPressed,
            })
    }

    /// The least of the limits of use: how far faces may come in; `None` where none is set.
    pub(crate) fn limit_of_use(&self) -> Option<f64> {
        let limits = self.limits.iter().filter(|l| l.omega.is_none());
        limits.map(|l| l.load).reduce(f64::min)
    }

    /// The least of the limits that do not depend on how well a piece between the walls fits, without factors.
    pub(crate) fn limit_whatever_fit(&self) -> f64 {
        let of_fit = [
            say::LimitSleeve1pct,
            say::LimitInsert1pct,
            say::LimitSleeveSquashes,
        ];
        self.limits
            .iter()
            .filter(|limit| !of_fit.contains(&limit.code))
            .map(|limit| limit.load)
            .fold(f64::INFINITY, f64::min)
    }

    /// The least of the limits, without factors.
    pub(crate) fn limit(&self) -> f64 {
        self.limits
            .iter()
            .map(|l| l.load)
            .fold(f64::INFINITY, f64::min)
    }
}
