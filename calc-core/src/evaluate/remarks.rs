//! Things to say about a joint that are no verdict: how far it slips, how it corrodes.

use super::preload::Preload;
use crate::catalog::{
    Family, LEAST_TONGUE, Material, Metal, Surroundings, ZincCoat, galvanic_limits, nut_factor,
    slip_surface,
};
use crate::mechanics::corrosion::{Couple, couple};
use crate::mechanics::pin::slip_travel;
use crate::quantity::{Acceleration, InUnits, Length, Ratio, STANDARD_GRAVITY, Share, Stress, mm};
use crate::report::{Said, Sentence, say};
use crate::scenario::{BoltFinish, Exposure, Field, JointKind, Scenario};
use crate::support;

/// All of them.
pub(super) fn remarks(s: &Scenario, preload: &Preload) -> Vec<Said> {
    let mut said: Vec<Said> = [
        softened(s),
        long_bolt(s),
        long_stainless(s),
        hard_bolt(s),
        matching_nut(s),
        set_torque(s),
        threads(s, preload),
        scatter(s),
        friction(s),
        own_strength(s),
        light_road(s),
        light_tongue(s),
        packing(s),
    ]
    .into_iter()
    .flatten()
    .chain(own_shape(s))
    .collect();
    said.extend([travel(s), protrusion(s)]);
    said.extend(corrosion(s));
    said
}

fn plain(sentence: Sentence<0>) -> Said {
    Said::new(sentence, ())
}

/// A yield strength of the reader's own that a weld has taken away.
fn softened(s: &Scenario) -> Option<Said> {
    let own = s.input.number(Field::TubeYield)? * 1e6;
    let counts = s.tube.yield_least;
    (s.tube.weld_near && counts.si() < own * (1.0 - 1e-9))
        .then(|| Said::new(say::NoteOwnYieldSoftened, (counts,)))
}

/// A bolt that is weaker than shorter ones of its grade.
fn long_bolt(s: &Scenario) -> Option<Said> {
    let b = &s.bolting;
    let weaker = b.grade.strength(b.thread, Length::default()) != Some(b.strength);
    weaker.then(|| Said::new(say::NoteLongBoltWeaker, (s.bolt_length(),)))
}

/// Tensile strength from which a plain nut or a mild washer is clearly the weaker part.
const STRONG_BOLT_MPA: f64 = 1000.0;

/// The nut is taken to be no weaker than the bolt, and the washer no softer than it: nobody asks.
fn matching_nut(s: &Scenario) -> Option<Said> {
    let strong = s.bolting.strength.tensile.si() >= STRONG_BOLT_MPA * 1e6;
    strong.then(|| plain(say::NoteMatchingNut))
}

/// Torque that is set where turn or stretch was to tell.
fn set_torque(s: &Scenario) -> Option<Said> {
    let t = &s.tightening;
    let both = !t.method.by_torque() && t.torque.is_some();
    both.then(|| Said::new(say::NoteTorqueSetsClamp, (Share(t.scatter),)))
}

/// A stainless bolt longer than what older standards warrant its strength for.
fn long_stainless(s: &Scenario) -> Option<Said> {
    let b = &s.bolting;
    let most = b.thread.major() * 8.0;
    let long = b.grade.stainless() && s.bolt_length() > most;
    long.then(|| Said::new(say::NoteLongStainless, (s.bolt_length(), most)))
}

/// A hard bolt that is zinc coated, which its standard lets pass.
fn hard_bolt(s: &Scenario) -> Option<Said> {
    let zinc = s.bolting.finish == BoltFinish::Zinc;
    let hard = s.bolting.grade.zinc_coat() == ZincCoat::WithCare;
    (zinc && hard).then(|| plain(say::NoteHardBoltZinc))
}

/// A spread of the reader's own, less than anybody has published for that way of tightening.
fn scatter(s: &Scenario) -> Option<Said> {
    let (own, counts) = (s.input.number(Field::Scatter)?, s.tightening.scatter);
    let less = own < counts - 1e-9;
    less.then(|| Said::new(say::NoteScatterLeast, (Share(own), Share(counts))))
}

/// Packing, whose faces count as those that were asked for.
fn packing(s: &Scenario) -> Option<Said> {
    let packed = s.fitting.touches && s.fitting.packing > Length::of_si(1e-5);
    packed.then(|| plain(say::NotePackingFaces))
}

/// Threads whose nut factor is not what the condition would be on steel, or that nobody knows.
fn threads(s: &Scenario, preload: &Preload) -> Option<Said> {
    let t = &s.tightening;
    let [low, high] = t.nut_factor_band;
    if low < high && s.is_given(Field::NutFactor) {
        let usual = t.lubrication.typical();
        return Some(Said::new(
            say::NoteNutFactorOutside,
            (Ratio(t.nut_factor), Ratio(usual), preload.min, preload.max),
        ));
    }
    if low < high && t.lubrication.id() != "unknown" {
        return Some(Said::new(
            say::NoteThreadsNotZinc,
            (preload.min, preload.max),
        ));
    }
    if low < high {
        return Some(Said::new(
            say::NoteThreadsUnknown,
            (preload.min, preload.max),
        ));
    }
    let counts = s.tightening.lubrication;
    let on_steel = nut_factor(s.input.choice(Field::Lubrication)?)?;
    let differs = (counts.typical() - on_steel.typical()).abs() > 1e-9;
    (s.bolting.grade.stainless() && differs && s.input.number(Field::NutFactor).is_none()).then(
        || {
            let factors = (Ratio(counts.typical()), Ratio(on_steel.typical()));
            Said::new(say::NoteStainlessThreads, factors)
        },
    )
}

/// A strength of the reader's own above what the metal must have.
fn own_strength(s: &Scenario) -> Option<Said> {
    s.input.number(Field::TubeYield)?;
    let (own, least) = (s.tube.yield_least, s.tube.material.least().yield_strength());
    (own > least).then(|| Said::new(say::NoteOwnStrength, (own, least)))
}

/// A stiffness or a corner of the reader's own that this metal cannot have.
fn own_shape(s: &Scenario) -> impl Iterator<Item = Said> {
    let t = &s.tube;
    let modulus = s
        .input
        .number(Field::TubeModulus)
        .map(|gpa| Stress::of_si(gpa * 1e9));
    let modulus = modulus
        .filter(|own| (own.si() - t.modulus.si()).abs() > 1.0)
        .map(|own| Said::new(say::NoteModulusTyped, (own, t.modulus)));
    let corner = s.input.number(Field::CornerRadius).map(mm);
    let corner = corner
        .filter(|own| own.si() + 1e-9 < t.corner_radius.si())
        .map(|own| Said::new(say::NoteCornerTyped, (own, t.corner_radius)));
    [modulus, corner].into_iter().flatten()
}

/// Bump factor, and braking and cornering in g, below which road loads are light. Own assumption; what is started from is 3,
/// 0.5 and 0.3.
const LIGHTEST_ROAD: [f64; 3] = [2.0, 0.3, 0.2];

/// Road loads that are lighter than anyone takes for a road.
fn light_road(s: &Scenario) -> Option<Said> {
    let l = &s.loads;
    let on_road = matches!(l.joint, JointKind::Coupler | JointKind::SpringHanger);
    let [bump, braking, side] = LIGHTEST_ROAD;
    let [braking, side] = [braking, side].map(|g| Acceleration::of_si(g * STANDARD_GRAVITY));
    let light = l.vertical_factor < bump || l.braking < braking || l.side < side;
    let usual = (Ratio(bump), braking, side);
    (on_road && light).then(|| Said::new(say::NoteLightRoad, usual))
}

/// A trailer that rests on its coupler with less than is counted.
fn light_tongue(s: &Scenario) -> Option<Said> {
    let l = &s.loads;
    let light = l.joint == JointKind::Coupler && l.tongue_share < LEAST_TONGUE - 1e-9;
    light.then(|| {
        Said::new(
            say::NoteLightTongue,
            (Share(l.tongue_share), Share(LEAST_TONGUE)),
        )
    })
}

/// Friction that goes by the metals and not by what was found for steel.
fn friction(s: &Scenario) -> Option<Said> {
    let counts = s.tightening.surface.mu();
    let found_for_steel = slip_surface(s.input.choice(Field::Surface)?)?.mu();
    if let Some(own) = s.input.number(Field::FayingFriction) {
        let less = counts < own;
        return less.then(|| Said::new(say::NoteFrictionTyped, (Ratio(own), Ratio(counts))));
    }
    if (counts - found_for_steel).abs() < 1e-9 {
        return None;
    }
    // A class of other metals, or of thicker joints.
    if s.tightening.surface.id() != s.input.choice(Field::Surface)?
        && s.input.choice(Field::Surface)?.starts_with("al-")
    {
        return Some(Said::new(say::NoteFrictionOther, (Ratio(counts),)));
    }
    let code = if s.tightening.metals.contains(&Family::Aluminium) {
        say::NoteFrictionOfAluminum
    } else {
        say::NoteFrictionOfStainless
    };
    Some(Said::new(code, (Ratio(counts),)))
}

/// How far the joint moves when it slips from one end of its play to the other.
fn travel(s: &Scenario) -> Said {
    let in_tube = support::of(s).bore(s);
    let support = support::of(s);
    let play =
        slip_travel(s.bolting.thread.major(), in_tube, s.fitting.hole) + support.play_in_wall(s);
    Said::new(say::NoteSlipTravel, (play,))
}

/// Two pitches past the nut: assumed in the length of the bolt.
fn protrusion(s: &Scenario) -> Said {
    let two = s.bolting.thread.pitch() * 2.0;
    Said::new(say::NoteProtrusion, (two,))
}

const fn metal_of(material: &Material) -> Metal {
    match material.family() {
        Family::Aluminium => Metal::Aluminium,
        Family::Steel => Metal::Steel,
        Family::Stainless => Metal::Stainless,
    }
}

/// Who is eaten where two metals touch; the same couple is said once.
fn corrosion(s: &Scenario) -> Vec<Said> {
    let bolt = match s.bolting.finish {
        BoltFinish::Zinc => Metal::Zinc,
        BoltFinish::Plain => Metal::Steel,
        BoltFinish::Stainless => Metal::Stainless,
    };
    let (tube, fitting) = (metal_of(s.tube.material), metal_of(s.fitting.material));
    let support = support::of(s);
    let inside = support.metal(s).map(|part| metal_of(part.material));
    let surroundings = match s.exposure {
        Exposure::Dry => Surroundings::Controlled,
        Exposure::Wet => Surroundings::Normal,
        Exposure::RoadSalt => Surroundings::Harsh,
    };
    let limit = galvanic_limits()
        .iter()
        .find(|row| row.surroundings == surroundings)
        .map_or(0.0, |row| row.gap_mv);
    let mut notes: Vec<Said> = Vec::new();
    for (a, b) in [
        (Some(bolt), tube),
        (Some(bolt), fitting),
        (Some(fitting), tube),
        (inside, tube),
        (inside, bolt),
    ] {
        let Some(pair) = a.and_then(|a| couple(a.row(), b.row())) else {
            continue;
        };
        if pair.exceeds(limit)
            && let Some(code) = code(&pair)
            && notes.iter().all(|note| note.code != code.message())
        {
            notes.push(plain(code));
        }
    }
    if notes.is_empty() {
        return notes;
    }
    // Under a roof there is no water to seal out.
    if s.exposure != Exposure::Dry {
        notes.push(plain(say::NoteGalvanicIsolate));
        if inside.is_some() && support.holds_water() {
            notes.push(plain(say::NoteGalvanicDrain));
        }
    }
    notes
}

/// The sentence for a couple, by who is eaten.
fn code(pair: &Couple) -> Option<Sentence<0>> {
    Some(match (pair.anode.metal(), pair.cathode.metal()) {
        (Metal::Zinc, Metal::Aluminium) => say::NoteGalvanicZincSparesAluminium,
        (Metal::Zinc, Metal::Steel) => say::NoteGalvanicZincSparesSteel,
        (Metal::Zinc, Metal::Stainless) => say::NoteGalvanicZincByStainless,
        (Metal::Aluminium, Metal::Steel) => say::NoteGalvanicSteelEatsAluminium,
        (Metal::Aluminium, Metal::Stainless) => say::NoteGalvanicStainlessEatsAluminium,
        (Metal::Steel, Metal::Stainless) => say::NoteGalvanicStainlessEatsSteel,
        _ => return None,
    })
}
