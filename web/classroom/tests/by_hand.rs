//! Every problem worked by the plain formula from the numbers that are printed, without calc-core.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::expect_used,
    reason = "tests stop where something is wrong"
)]

use calc_core::quantity::{Dimension, UnitSystem, read, unit_for};
use classroom::words::message;
use classroom::{Kind, Level, Problem};

/// Rounding of printed numbers may move an answer by this share: a third of what a student may be off.
const ROUNDING: f64 = 0.01;

const SYSTEMS: [UnitSystem; 2] = [UnitSystem::Us, UnitSystem::Metric];

fn every() -> impl Iterator<Item = Problem> {
    let kinds = Kind::ALL.iter();
    kinds.flat_map(|kind| {
        Level::ALL.iter().flat_map(move |level| {
            SYSTEMS
                .into_iter()
                .flat_map(move |units| Problem::all(*kind, *level, units))
        })
    })
}

/// A printed number in SI.
fn number(text: &str, dimension: Dimension, units: UnitSystem) -> f64 {
    let bare = unit_for(dimension, units);
    read(text, dimension, bare)
        .unwrap_or_else(|error| panic!("{text}: {error}"))
        .si
}

fn by_hand(p: &Problem) -> f64 {
    let text = |name: &str| {
        let value = p.values.iter().find(|value| value.name == name);
        &value
            .unwrap_or_else(|| panic!("{name} in {}", p.told()))
            .text
    };
    let of = |name: &str| {
        let value = p.values.iter().find(|value| value.name == name).unwrap();
        number(&value.text, value.dimension, p.units)
    };
    let faces = || {
        if text("planes") == message("planes.2") {
            2.0
        } else {
            1.0
        }
    };
    let row = |what: f64, dimension: Dimension| {
        let found = p
            .table
            .iter()
            .find(|[left, _]| (number(left, dimension, p.units) / what - 1.0).abs() < 1e-6);
        let [_, amount] = found.unwrap_or_else(|| panic!("a row of {what} in {}", p.told()));
        number(amount, Dimension::Force, p.units)
    };
    let spring = || of("kb") * of("km") / (of("kb") + of("km"));
    use Kind::{Bolts, Crush, Loss, Share, Sleeve, Slip, Stretch, Torque, Wax};
    use Level::{Easy, Hard, Middle};
    match (p.kind, p.level) {
        (Torque, Easy) => of("k") * of("d") * of("clamp"),
        (Torque, Middle) => of("k") * of("d") * of("share") * of("proof"),
        (Torque, Hard) => of("torque") / (of("k") * of("d")),
        (Stretch, Easy) => of("clamp") * of("length") / (of("area") * of("modulus")),
        (Stretch, Middle) => {
            of("share") * of("proof") * of("length") / (of("area") * of("modulus"))
        }
        (Stretch, Hard) => {
            let parts = of("shank") / of("shank-area") + of("thread") / of("area");
            of("clamp") / of("modulus") * parts
        }
        (Wax, Easy) => of("clamp") * of("k") / of("k2"),
        (Wax, Middle) => of("torque") / (of("k2") * of("d")) / of("proof"),
        (Wax, Hard) => of("torque") * of("k2") / of("k"),
        (Slip, Easy) => faces() * of("mu") * of("clamp"),
        (Slip, Middle) => of("bolts") * faces() * of("mu") * of("clamp"),
        (Slip, Hard) => faces() * of("mu") * (of("clamp") - (1.0 - of("share")) * of("pull")),
        (Bolts, Easy) => (of("load") / of("each")).ceil(),
        (Bolts, Middle) => (of("omega") * of("load") / (faces() * of("mu") * of("clamp"))).ceil(),
        (Bolts, Hard) => {
            let each = faces() * of("mu") * (of("clamp") - of("lost"));
            (of("omega") * of("load") / each).ceil()
        }
        (Share, Easy) => of("kb") / (of("kb") + of("km")),
        (Share, Middle) => of("pull") * of("kb") / (of("kb") + of("km")),
        (Share, Hard) => of("clamp") - of("pull") * of("km") / (of("kb") + of("km")),
        (Crush, Easy) => row(of("wall"), Dimension::Length) / of("wanted"),
        (Crush, Middle) => of("k") * of("d") * row(of("wall"), Dimension::Length),
        (Crush, Hard) => of("torque") / (of("k") * of("d")) - row(of("wall"), Dimension::Length),
        (Sleeve, Easy) => of("depth") - 2.0 * of("wall") + of("over"),
        (Sleeve, Middle) => (of("depth") - 2.0 * of("wall") - of("length")) / 2.0,
        (Sleeve, Hard) => row(of("short") / 2.0, Dimension::Length) / of("wanted"),
        (Loss, Easy) => of("settled") * spring(),
        (Loss, Middle) => of("clamp") - of("settled") * spring(),
        (Loss, Hard) => {
            let degrees = match p.units {
                UnitSystem::Us => of("step") * 1.8,
                UnitSystem::Metric => of("step"),
            };
            (of("parts") - of("steel")) * 1e-6 * degrees * of("length") * spring()
        }
    }
}

#[test]
fn the_printed_numbers_give_the_printed_answer() {
    let mut worst = [0.0_f64; 9];
    for problem in every() {
        let hand = by_hand(&problem);
        let off = (hand / problem.answer.si - 1.0).abs();
        let most = if problem.answer.dimension == Dimension::Count {
            1e-9
        } else {
            ROUNDING
        };
        assert!(
            off <= most,
            "{hand} by hand, off by {off}: {}",
            problem.told()
        );
        let place = &mut worst[problem.kind as usize];
        *place = place.max(off);
        // What is printed as the answer is that, too.
        let unit = problem.unit();
        let printed = read(&problem.answered(), problem.answer.dimension, unit).unwrap();
        assert!(
            (printed.si / hand - 1.0).abs() <= ROUNDING,
            "{}",
            problem.told()
        );
    }
    assert!(worst.iter().all(|off| *off < ROUNDING), "{worst:?}");
}

#[test]
fn a_problem_says_all_that_it_needs_in_words() {
    let mut told: Vec<String> = Vec::new();
    for problem in every() {
        let asked = problem.asked();
        assert!(
            !asked.contains(['{', '}', '?'].as_slice()) || asked.ends_with('?'),
            "{asked}"
        );
        for value in &problem.values {
            let key = format!("ask.{}.{}", problem.kind.key(), problem.level.key());
            let said = |slot: String| message(&key).contains(&slot);
            assert!(
                said(format!("{{{}}}", value.name)) || said(format!("{{a-{}}}", value.name)),
                "{key} does not say {}",
                value.name
            );
        }
        assert!((2..=4).contains(&problem.wrong.len()), "{}", problem.told());
        for (wrong, _) in &problem.wrong {
            assert_ne!(message(&format!("wrong.{}", wrong.key())), "?", "{wrong:?}");
        }
        if !problem.table.is_empty() {
            for column in ["what", "amount"] {
                let key = format!("table.{}.{column}", problem.kind.key());
                assert_ne!(message(&key), "?", "{key}");
            }
        }
        for group in ["kind", "formula"] {
            let key = format!("{group}.{}", problem.kind.key());
            assert_ne!(message(&key), "?", "{key}");
        }
        told.push(problem.told());
    }
    let all = told.len();
    told.sort();
    told.dedup();
    assert_eq!(told.len(), all, "each problem once");
}

/// Of every kind there are enough for a class, so that no two students share one.
#[test]
fn there_are_enough_of_every_kind() {
    for kind in Kind::ALL {
        for level in Level::ALL {
            for units in SYSTEMS {
                let count = Problem::all(*kind, *level, units).len();
                assert!(
                    count >= classroom::MOST_STUDENTS,
                    "{kind:?} {level:?} {units:?}: {count}"
                );
            }
        }
    }
}

#[test]
fn pictures_stay_on_their_sheet() {
    use drawing::Mark;
    use drawing::scene::text_bounds;
    for problem in every().step_by(7) {
        let scene = problem.shape.scene("x", "a title", "what it shows");
        assert!(scene.marks.len() > 10, "{}", problem.told());
        for mark in &scene.marks {
            if let Mark::Text {
                at,
                text,
                class,
                anchor,
                turn,
            } = mark
                && *turn == 0.0
            {
                let (left, top, right, bottom) = text_bounds(*at, text, class, *anchor);
                assert!(
                    left >= -1.0
                        && right <= scene.width + 1.0
                        && top >= -2.0
                        && bottom <= scene.height + 2.0,
                    "{text} at {left} {top} {right} {bottom}: {}",
                    problem.told()
                );
            }
        }
        assert!(!scene.to_svg().contains("NaN"));
    }
}
