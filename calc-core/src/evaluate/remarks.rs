//! Things to say about a joint that are no verdict: how far it slips, how it corrodes.

use crate::catalog::{Family, GalvanicMetal, Material, galvanic_limits, galvanic_metal};
use crate::mechanics::corrosion::{Couple, couple};
use crate::mechanics::pin::slip_travel;
use crate::report::{Said, Sentence, say};
use crate::scenario::{BoltFinish, Exposure, Scenario, SupportKind};

/// All of them.
pub(super) fn remarks(s: &Scenario) -> Vec<Said> {
    let mut said = vec![travel(s), protrusion(s)];
    said.extend(corrosion(s));
    said
}

fn plain(sentence: Sentence<0>) -> Said {
    Said::new(sentence, ())
}

/// How far the joint moves when it slips from one end of its play to the other.
fn travel(s: &Scenario) -> Said {
    let in_tube = if s.support == SupportKind::ThroughSleeve {
        s.sleeve.inner
    } else {
        s.bolting.hole
    };
    let play = slip_travel(s.bolting.thread.major(), in_tube, s.fitting.hole);
    Said::new(say::NoteSlipTravel, (play,))
}

/// Two pitches past the nut: what the bolt length is reckoned with.
fn protrusion(s: &Scenario) -> Said {
    let two = s.bolting.thread.pitch() * 2.0;
    Said::new(say::NoteProtrusion, (two,))
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
    let inside = match s.support {
        SupportKind::LooseSleeve | SupportKind::ThroughSleeve => metal_of(s.sleeve.material),
        SupportKind::SolidInsert => metal_of(s.insert_material),
        SupportKind::Spreader => metal_of(s.spreader.material),
        SupportKind::Bare | SupportKind::Solid => None,
    };
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
        if inside.is_some() && s.support != SupportKind::Spreader {
            notes.push(plain(say::NoteGalvanicDrain));
        }
    }
    notes
}

/// The sentence for a couple, by who is eaten.
fn code(pair: &Couple) -> Option<Sentence<0>> {
    Some(match (pair.anode.id(), pair.cathode.id()) {
        ("zinc", "aluminium") => say::NoteGalvanicZincSparesAluminium,
        ("zinc", "steel") => say::NoteGalvanicZincSparesSteel,
        ("zinc", "stainless") => say::NoteGalvanicZincByStainless,
        ("aluminium", "steel") => say::NoteGalvanicSteelEatsAluminium,
        ("aluminium", "stainless") => say::NoteGalvanicStainlessEatsAluminium,
        ("steel", "stainless") => say::NoteGalvanicStainlessEatsSteel,
        _ => return None,
    })
}
