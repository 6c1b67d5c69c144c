//! Things to say about a joint that are no verdict: how far it slips, how it corrodes.

use super::preload::Preload;
use crate::catalog::{
    Family, Material, Metal, Surroundings, galvanic_limits, nut_factor, slip_surface,
};
use crate::mechanics::corrosion::{Couple, couple};
use crate::mechanics::pin::slip_travel;
use crate::quantity::{InUnits, Ratio};
use crate::report::{Said, Sentence, say};
use crate::scenario::{BoltFinish, Exposure, Field, Scenario};
use crate::support;

/// All of them.
pub(super) fn remarks(s: &Scenario, preload: &Preload) -> Vec<Said> {
    let mut said: Vec<Said> = [softened(s), threads(s, preload), friction(s)]
        .into_iter()
        .flatten()
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

/// Threads whose nut factor is not what the condition would be on steel, or that nobody knows.
fn threads(s: &Scenario, preload: &Preload) -> Option<Said> {
    let [low, high] = s.tightening.nut_factor_band;
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

/// Friction that goes by the metals and not by what was found for steel.
fn friction(s: &Scenario) -> Option<Said> {
    let counts = s.tightening.surface.mu();
    let found_for_steel = slip_surface(s.input.choice(Field::Surface)?)?.mu();
    let own = s.input.number(Field::FayingFriction).is_some();
    if own || (counts - found_for_steel).abs() < 1e-9 {
        return None;
    }
    let metals = [s.tube.material.family(), s.fitting.material.family()];
    let code = if metals.contains(&Family::Aluminium) {
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
