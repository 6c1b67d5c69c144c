//! Things to say about a joint that are no verdict: how far it slips, how it corrodes.

use crate::catalog::{Family, GalvanicMetal, Material, galvanic_limits, galvanic_metal};
use crate::mechanics::corrosion::{Couple, couple};
use crate::mechanics::pin::slip_travel;
use crate::quantity::{Dimension, InUnits};
use crate::report::{Amount, Said};
use crate::scenario::{BoltFinish, Exposure, Scenario};
use crate::support;

/// All of them.
pub(super) fn remarks(s: &Scenario) -> Vec<Said> {
    let mut said = vec![travel(s), protrusion(s)];
    said.extend(corrosion(s));
    said
}

fn plain(code: &'static str) -> Said {
    Said {
        code,
        amounts: Vec::new(),
    }
}

/// How far the joint moves when it slips from one end of its play to the other.
fn travel(s: &Scenario) -> Said {
    let in_tube = support::of(s).bore(s);
    let play = slip_travel(s.bolting.thread.major(), in_tube, s.fitting.hole);
    Said {
        code: "note-slip-travel",
        amounts: vec![Amount::new(play.si(), Dimension::Length)],
    }
}

/// Two pitches past the nut: what the bolt length is reckoned with.
fn protrusion(s: &Scenario) -> Said {
    let two = s.bolting.thread.pitch() * 2.0;
    Said {
        code: "note-protrusion",
        amounts: vec![Amount::new(two.si(), Dimension::Length)],
    }
}

fn metal_of(material: &Material) -> Option<&'static GalvanicMetal> {
    galvanic_metal(match material.family() {
        Family::Aluminium => "aluminium",
        Family::Steel => "steel",
        Family::Stainless => "stainless",
    })
}

/// Who is eaten where two metals touch; the same couple is said once.
fn corrosion(s: &Scenario) -> Vec<Said> {
    let bolt = galvanic_metal(match s.bolting.finish {
        BoltFinish::Zinc => "zinc",
        BoltFinish::Plain => "steel",
        BoltFinish::Stainless => "stainless",
    });
    let (tube, fitting) = (metal_of(s.tube.material), metal_of(s.fitting.material));
    let support = support::of(s);
    let inside = support.metal(s).and_then(|part| metal_of(part.material));
    let limit = galvanic_limits()
        .iter()
        .find(|row| row.exposure == s.exposure.name())
        .map_or(0.0, |row| row.gap_mv);
    let mut notes: Vec<Said> = Vec::new();
    for (a, b) in [
        (bolt, tube),
        (bolt, fitting),
        (fitting, tube),
        (inside, tube),
        (inside, bolt),
    ] {
        let Some(pair) = a.zip(b).and_then(|(a, b)| couple(a, b)) else {
            continue;
        };
        if pair.exceeds(limit)
            && let Some(code) = code(&pair)
            && notes.iter().all(|note| note.code != code)
        {
            notes.push(plain(code));
        }
    }
    if notes.is_empty() {
        return notes;
    }
    // Under a roof there is no water to seal out.
    if s.exposure != Exposure::Dry {
        notes.push(plain("note-galvanic-isolate"));
        if inside.is_some() && support.holds_water() {
            notes.push(plain("note-galvanic-drain"));
        }
    }
    notes
}

/// The sentence for a couple, by who is eaten.
fn code(pair: &Couple) -> Option<&'static str> {
    Some(match (pair.anode.id(), pair.cathode.id()) {
        ("zinc", "aluminium") => "note-galvanic-zinc-spares-aluminium",
        ("zinc", "steel") => "note-galvanic-zinc-spares-steel",
        ("zinc", "stainless") => "note-galvanic-zinc-by-stainless",
        ("aluminium", "steel") => "note-galvanic-steel-eats-aluminium",
        ("aluminium", "stainless") => "note-galvanic-stainless-eats-aluminium",
        ("steel", "stainless") => "note-galvanic-stainless-eats-steel",
        _ => return None,
    })
}
