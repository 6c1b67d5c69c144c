//! What a pull along the bolt hangs on where the fitting sits on one face of a tube.
//!
//! A bolt through both faces has its nut under the far one: the washer there is pulled inward as the clamp
//! pulls it. What is welded into both faces pulls them outward. The curve of a face that is pressed in
//! serves for both ways: finite-element runs of faces that are pulled out (`tests/reference/fe_pull`) lie
//! at 0.95 to 1.19 of it.
//!
//! Two side plates that are pushed sideways press on the wall beside one of them: the same face, pushed in. Something
//! between the walls hands part of it on to the other wall.

use super::build::Builder;
use super::model::{SERVICE_SHARE, Side, SupportModel};
use super::of;
use crate::mechanics::face::{FaceCurve, FaceTube, STRONGEST, out_of_range};
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

/// Thickest wall against its face, widest patch against face and flat, deepest tube against its face, that were run; see
/// [`FaceCurve`](crate::mechanics::face::FaceCurve).
const THICKEST: f64 = 8.0;
const WIDEST: f64 = 0.75;
const DEEPEST: f64 = 3.0;
const WIDEST_ON_FLAT: f64 = 0.92;

/// What holds a pull along the bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Pulled {
    /// One ply or something solid is judged elsewhere: no hollow face is pulled at by itself. Nor is the round wall between
    /// two cheeks, for which there is no curve.
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
    /// From which a dent stays, N; no more than at 1 %, which is asked anyhow.
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
    if s.member.is_open() || !of(s).is_hollow() {
        return Pulled::Elsewhere;
    }
    let b = Builder {
        s,
        strength: Strength::Least,
        added_part: 1.0,
    };
    if s.bolting.two_cheeks {
        return pushed_aside(&b, least);
    }
    match of(s).pulled(&b, least) {
        Pulled::Nothing => Pulled::Nothing,
        // The published forms for round walls are for braces that are welded on.
        _ if s.member.is_round() => Pulled::Unknown(say::FacePullRoundWall),
        found => found,
    }
}

/// The wall beside a cheek that is pushed against it.
///
/// What the cheek presses is a round patch, as wide as the pressure from the nut has spread through washer and cheek, and
/// no wider than the cheek. Cheeks that reach over the side walls bear on those. A welded sleeve pushes both walls; one
/// that is not leaves the wall to the cheek alone.
///
/// # Sources
/// The face curve for a washer, read as this patch: our assumption. The patch: [`spread`].
fn pushed_aside(b: &Builder<'_>, least: &SupportModel) -> Pulled {
    let s = b.s;
    if s.member.is_round() {
        return Pulled::Elsewhere;
    }
    if !of(s).passes_wall() || s.sleeve.welded {
        return of(s).pulled(b, least);
    }
    let tube = within_reach(s.tube.face(b.strength));
    let patch = under_cheek(b, &tube);
    if !is_known(&tube, patch) || of(s).hole_in_wall(s) > patch * LARGEST_HOLE {
        return Pulled::Unknown(say::FacePullOutside);
    }
    let face = b.face(&tube, patch);
    PulledFaces::of_curve(
        s,
        |delta| face.force_si(delta),
        lasting_at(s, &face),
        (patch, 1.0),
    )
}

/// Walls thicker and stronger than any that was run count as the thickest and strongest that was.
fn within_reach(tube: FaceTube) -> FaceTube {
    FaceTube {
        wall: tube.wall.min(tube.width / THICKEST),
        yield_strength: tube.yield_strength.min(tube.modulus * STRONGEST),
        ..tube
    }
}

/// Whether the curve goes for a wall under a cheek. Of a tube deeper than any that was run it goes on: its side walls turn
/// more easily, which the curve has in it. Our assumption.
fn is_known(tube: &FaceTube, patch: Length) -> bool {
    let no_deeper = FaceTube {
        depth: tube.depth.min(tube.width * DEEPEST),
        ..*tube
    };
    out_of_range(&no_deeper, patch).is_empty()
}

/// How wide a cheek presses on the wall under it, no wider than the curve was checked for.
fn under_cheek(b: &Builder<'_>, tube: &FaceTube) -> Length {
    let s = b.s;
    let washer = &s.bolting.washer;
    let nut = s.bolting.thread.bearing_diameter().min(washer.outer);
    let under_washer = spread(nut, b.washer_thickness()).min(washer.outer);
    let flat = tube.width - tube.corner_radius * 2.0;
    spread(under_washer, b.cheek())
        .min((s.fitting.edge * 2.0).max(under_washer))
        .min(tube.width * WIDEST)
        .min(flat * WIDEST_ON_FLAT)
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
    let cheeks = s.bolting.two_cheeks;
    let tube = s.tube.face(b.strength);
    let tube = if cheeks { within_reach(tube) } else { tube };
    let bare = matches!(side, Side::Washer(_));
    let patch = if cheeks {
        under_cheek(b, &tube)
    } else {
        s.bolting.washer.outer
    };
    let known = if cheeks {
        is_known(&tube, patch)
    } else {
        out_of_range(&tube, patch).is_empty()
    };
    if bare && !known {
        return Pulled::Unknown(say::FacePullOutside);
    }
    let (side, patch) = if cheeks && bare {
        (Side::Washer(b.face(&tube, patch)), patch)
    } else {
        (*side, least.effective_washer)
    };
    let other = other
        .filter(|(patch, _)| out_of_range(&tube, *patch).is_empty())
        .map(|(patch, short)| (b.face(&tube, patch), short.si().max(0.0)));
    let force = |delta: f64| {
        let above = other.map_or(0.0, |(face, short)| face.force_si(delta - short));
        side.force(delta) + above
    };
    let lasting_at = side.lasting_at(SERVICE_SHARE * s.tube.width.si());
    let faces = if other.is_some() { 2.0 } else { 1.0 };
    let mut found = PulledFaces::of_curve(s, force, lasting_at, (patch, faces));
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
    face.lasting_at_si(super::VISIBLE, SERVICE_SHARE * s.tube.width.si())
}
