//! What a pull along the bolt hangs on where the fitting sits on one face of a tube.
//!
//! A bolt through both faces has its nut under the far one: the washer there is pulled inward as the clamp
//! pulls it. What is welded into both faces pulls them outward. The curve of a face that is pressed in
//! serves for both ways: finite-element runs of faces that are pulled out (`tests/reference/fe_pull`) lie
//! at 0.95 to 1.19 of it.

use super::build::Builder;
use super::model::{SERVICE_SHARE, Side, SupportModel};
use super::of;
use crate::mechanics::face::{CHECKED_TO, FaceCurve, FaceTube, out_of_range};
use crate::mechanics::washer::spread;
use crate::quantity::{InUnits, Length};
use crate::report::{Sentence, say};
use crate::scenario::{Scenario, Strength};

/// Share of the width at which a face has reached its strength.
///
/// # Sources
/// Hollow-section practice: 3 % of the face's width.
const STRENGTH_SHARE: f64 = 0.03;

/// Factor on the strength of a face under a service load.
///
/// # Sources
/// AISC 360-22 chapter K, plastification of a chord's wall (Ω 1.50), from memory.
const OMEGA: f64 = 1.50;

/// Largest hole that the finite-element runs had, as a share of the washer on it.
const LARGEST_HOLE: f64 = 0.59;

/// What holds a pull along the bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Pulled {
    /// Two cheeks hold each other, one ply or something solid is judged elsewhere: no hollow face is pulled
    /// at by itself.
    Elsewhere,
    /// Nothing reaches over metal of the tube: fitting, bolt and what is round it lift out as one.
    Nothing,
    /// Nobody knows, and why.
    Unknown(Sentence<0>),
    /// Faces that give way.
    Faces(PulledFaces),
}

/// Loads of what holds a pull.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct PulledFaces {
    /// At 1 % and at 3 % of the width, N.
    pub(crate) service: f64,
    pub(crate) ultimate: f64,
    /// From which a dent stays, N.
    pub(crate) lasting: f64,
    /// What a service load may use, N.
    pub(crate) allowed: f64,
    /// What presses or pulls on the face.
    pub(crate) patch: Length,
    /// How many faces give way together.
    pub(crate) faces: f64,
}

impl PulledFaces {
    /// From a curve of force against how far the faces move, and where a dent begins to stay.
    fn of_curve(
        s: &Scenario,
        force: impl Fn(f64) -> f64,
        lasting_at: f64,
        (patch, faces): (Length, f64),
    ) -> Pulled {
        let width = s.tube.width.si();
        let [service, ultimate] = [SERVICE_SHARE, STRENGTH_SHARE].map(|share| force(share * width));
        Pulled::Faces(Self {
            service,
            ultimate,
            lasting: force(lasting_at),
            allowed: service.min(ultimate / OMEGA),
            patch,
            faces,
        })
    }
}

/// What holds a pull along the bolts of a joint.
pub(crate) fn pulled(s: &Scenario, least: &SupportModel) -> Pulled {
    let one_face = s.bolting.slip_planes() < 2.0 && !s.member.is_open() && of(s).is_hollow();
    if !one_face {
        return Pulled::Elsewhere;
    }
    let b = Builder {
        s,
        strength: Strength::Least,
        added_part: 1.0,
    };
    match of(s).pulled(&b, least) {
        Pulled::Nothing => Pulled::Nothing,
        // The published forms for round walls are for braces that are welded on.
        _ if s.member.is_round() => Pulled::Unknown(say::FacePullRoundWall),
        found => found,
    }
}

/// The face under the nut, by what lies on it there.
pub(super) fn under_the_nut(b: &Builder<'_>, least: &SupportModel) -> Pulled {
    with_the_other_face(b, least, None)
}

/// The same with a part between the faces, that hands on what reaches it to the face under the fitting: a
/// patch on that one, and how far the faces come together before it touches.
pub(super) fn with_the_other_face(
    b: &Builder<'_>,
    least: &SupportModel,
    other: Option<(Length, Length)>,
) -> Pulled {
    let s = b.s;
    let Some([_, side]) = least.sides() else {
        return Pulled::Unknown(say::FacePullOutside);
    };
    let tube = s.tube.face(b.strength);
    let bare = matches!(side, Side::Washer(_));
    if bare && !out_of_range(&tube, s.bolting.washer.outer).is_empty() {
        return Pulled::Unknown(say::FacePullOutside);
    }
    let other = other
        .filter(|(patch, _)| out_of_range(&tube, *patch).is_empty())
        .map(|(patch, short)| (b.face(&tube, patch), short.si().max(0.0)));
    let force = |delta: f64| {
        let above = other.map_or(0.0, |(face, short)| face.force_si(delta - short));
        side.force(delta) + above
    };
    let lasting_at = side.lasting_at(CHECKED_TO * s.tube.width.si());
    let faces = if other.is_some() { 2.0 } else { 1.0 };
    let mut found = PulledFaces::of_curve(s, force, lasting_at, (least.effective_washer, faces));
    if let (Pulled::Faces(found), Side::Plate(plate, _)) = (&mut found, side) {
        // The parts under a plate have factors of their own.
        for (load, omega) in plate.limits().guarded() {
            found.allowed = found.allowed.min(load.si() / omega);
        }
    }
    found
}

/// Both faces, pulled outward by what is welded into them.
pub(super) fn by_welds(b: &Builder<'_>, tube: &FaceTube, patch: Length) -> Pulled {
    if !out_of_range(tube, patch).is_empty() {
        return Pulled::Unknown(say::FacePullOutside);
    }
    let face = b.face(tube, patch);
    PulledFaces::of_curve(
        b.s,
        |delta| 2.0 * face.force_si(delta),
        lasting_at(b.s, &face),
        (patch, 2.0),
    )
}

/// The face under the nut by the rim of a washer that reaches past a part which stands free in the walls;
/// `rim` is the least that it has to reach past the hole.
pub(super) fn by_a_rim(b: &Builder<'_>, hole: Length, rim: Length) -> Pulled {
    let s = b.s;
    let tube = s.tube.face(b.strength);
    let washer = b.effective_washer(&tube);
    // A softer face lets the washer dish less, which is no reason to reach farther: how far it reaches goes by the
    // washer alone.
    let nut = s.bolting.thread.bearing_diameter();
    let reaches = spread(nut, b.washer_thickness()).min(s.bolting.washer.outer);
    if (reaches.min(washer) - hole) * 0.5 < rim {
        return Pulled::Nothing;
    }
    let outside = !out_of_range(&tube, s.bolting.washer.outer).is_empty();
    if outside || hole.si() > LARGEST_HOLE * washer.si() {
        return Pulled::Unknown(say::FacePullOutside);
    }
    let face = b.face(&tube, washer);
    PulledFaces::of_curve(
        s,
        |delta| face.force_si(delta),
        lasting_at(s, &face),
        (washer, 1.0),
    )
}

fn lasting_at(s: &Scenario, face: &FaceCurve) -> f64 {
    face.lasting_at_si(super::VISIBLE, CHECKED_TO * s.tube.width.si())
}
