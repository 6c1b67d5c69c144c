//! What the sentences of a figure claim beside their numbers ("most of the turn", "only", "more than the whole load"),
//! held against the numbers in every state that says it.

use super::LESSONS;
use super::every::{at, states};
use super::model::Value;

/// Key of a sentence, and the amounts of its state by name.
struct Of {
    said: &'static str,
    values: Vec<Value>,
}

impl Of {
    fn get(&self, name: &str) -> f64 {
        let found = self.values.iter().find(|v| v.name == name);
        found.unwrap_or_else(|| panic!("no value {name}")).amount.si
    }

    fn below(&self, a: &str, b: &str) -> bool {
        self.get(a) < self.get(b)
    }
}

/// Whether what a sentence claims is so; sentences that only report numbers claim nothing.
fn is_so(lesson: &str, v: &Of) -> bool {
    let get = |name| v.get(name);
    match (lesson, v.said) {
        // "Less than half of what this bolt is rated for"; past the proof load, but not yet yielding; no longer a spring.
        ("spring", "little") => get("clamp") < 0.5 * get("proof"),
        ("spring", "springs") => get("clamp") <= get("proof"),
        ("spring", "past-proof") => v.below("proof", "clamp") && v.below("clamp", "yield"),
        ("spring", "yields") => get("clamp") >= 0.999 * get("yield"),
        // "Only" stretches the bolt: a small part of the torque.
        ("torque", "little") => {
            get("to-stretch") < 0.25 * get("to-face") + 0.25 * get("to-thread")
                && get("clamp") < 0.25 * get("proof")
        }
        ("torque", "dry") => get("to-stretch") < 0.25 * (get("to-face") + get("to-thread")),
        ("torque", "slick") => v.below("dry-clamp", "clamp") && get("high") <= get("proof"),
        ("torque", "may-pass") => v.below("proof", "high"),
        ("torque", "yields") => get("clamp") >= 0.999 * get("yield"),
        ("grip", "grips") => get("bolt-load") == 0.0 && get("load") <= 0.8 * get("grips"),
        ("grip", "nearly") => get("bolt-load") == 0.0 && get("load") <= get("grips"),
        ("grip", "slides") => v.below("grips", "load") && get("bolt-load") > 0.0,
        ("grip", "loose") => get("bolt-load") == get("load"),
        // Below the limit; the blow is what counts, and the parts have a way to run.
        ("slip", "rests" | "oval") => {
            get("pressure") <= get("pressure-allowed") && get("travel") > 0.0
        }
        // "May be the first to go": nearer to its limit than the wall is.
        ("slip", "packed") => v.below("wall-share", "bending-share"),
        ("slip", "wall") => {
            v.below("pressure-allowed", "pressure") && v.below("pull", "shear-allowed")
        }
        ("slip", "bends") => v.below("moment-allowed", "moment"),
        ("slip", "both") => {
            v.below("moment-allowed", "moment")
                && v.below("pressure-allowed", "pressure")
                && v.below("pull", "shear-allowed")
        }
        ("share", "shared" | "nearly") => get("added") < 0.25 * get("pull"),
        ("share", "soft") => get("added") > 0.75 * get("pull") && v.below("other-added", "added"),
        ("share", "parted") => get("pull") >= get("part-at"),
        // "Most of the turn went into bending the tube".
        ("hollow", "rising") => get("dents") > 0.5 * get("travel"),
        ("hollow", "bends" | "dishes") => {
            get("dent") > 0.9999 * get("one-percent") && get("clamp") < 0.95 * get("wanted")
        }
        ("hollow", "late") => {
            get("dent") > 0.9999 * get("one-percent") && v.below("clamp", "wanted")
        }
        ("hollow", "clicks-late") => v.below("one-percent", "dent"),
        ("hollow", "clicks") => get("dent") <= 1.0001 * get("one-percent"),
        ("stand", "washer-gives" | "washer-dishes" | "plate-bends") => {
            get("torque") < 0.75 * get("torque-wanted")
        }
        ("stand", "pipe-gives") => v.below("clamp", "wanted"),
        ("stand", "not-reached") => 2.0 * get("dent") < get("short"),
        // "A little over half of the gap".
        ("stand", "loose-click" | "insert-click") => {
            (0.5..0.7).contains(&(get("dent") / get("short")))
        }
        ("stand", "through-click") => get("dent") == 0.0,
        ("stand", said) if said.ends_with("click") => get("clamp") > 0.999 * get("wanted"),
        ("road", "still") => v.below("share", "hardest"),
        // "More than the whole load", and the pair outweighs the rear bolt's share.
        ("road", "bump") => v.below("load", "hardest") && v.below("share", "pair"),
        ("road", "brakes") => v.below("other", "hardest") && v.below("share-up", "pair"),
        // A third bolt helps little, twice the distance a lot.
        ("road", "third") => {
            let ratio = get("hardest") / get("with-two-close");
            (0.85..1.0).contains(&ratio)
        }
        ("road", "apart") => get("hardest") < 0.75 * get("with-two-close"),
        ("road", "hanger-straight") => get("twist").abs() < 1e-9,
        ("road", "hanger-brakes") => v.below("other", "hardest"),
        ("road", "chain-pulls") => get("hardest") > 0.0,
        // "It counts for a bolt stretched by only so much".
        ("leak", "bare") => get("flattening") > 0.1 * get("stretch") && get("lost") > 0.0,
        ("leak", "cold") => v.below("left", "fresh") && get("heat") > 0.0,
        ("leak", "hot") => get("heat") > 0.0,
        ("look", "dented-weak") => v.below("clamp", "wanted"),
        ("look", "dented-over" | "dented-stiff") => get("clamp") >= get("wanted"),
        ("look", "does-not-fit") => v.below("yields", "clamp"),
        ("look", "slipped" | "slipped-dented") => get("play") > get("play-new"),
        _ => true,
    }
}

#[test]
fn what_a_sentence_claims_is_so_in_every_state_that_says_it() {
    let mut wrong = Vec::new();
    for model in LESSONS {
        for state in states(*model) {
            let outcome = model.outcome(&state).unwrap();
            let of = Of {
                said: outcome.said,
                values: model.values(&state, &outcome),
            };
            if !is_so(model.id(), &of) {
                wrong.push(format!("{}: {}", of.said, at(*model, &state)));
            }
        }
    }
    wrong.truncate(400);
    assert!(wrong.is_empty(), "{wrong:#?}");
}
