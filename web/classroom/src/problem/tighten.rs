//! Torque and clamp load, stretch of the bolt, waxed threads.

use calc_core::catalog::{BoltGrade, NutFactor, Thread, bolt_grade, nut_factor, thread};
use calc_core::mechanics::stiffness;
use calc_core::mechanics::thread::load_at;
use calc_core::mechanics::tightening::{clamp_from, torque_for};
use calc_core::quantity::{Area, Dimension, Force, InUnits, Length, Stress, Torque, UnitSystem};

use super::{Add, Kind, Level, Stock, Wrong};
use crate::picture::{Arrow, Shape};
use crate::words::message;

/// Share of the proof load that a bolt is tightened to.
///
/// # Sources
/// Shigley 9e, Eq. 8-31, for joints that are taken apart again.
const SHARE: f64 = 0.75;

/// Finishes that a shop meets, as the catalog names them.
const FINISHES: [&str; 6] = ["dry", "oiled", "waxed-zinc", "moly", "cadmium", "black"];

/// Dry finishes, and what is put on them.
const WAXED: [(&str, &str); 4] = [
    ("dry", "waxed-zinc"),
    ("black", "oiled"),
    ("black", "anti-seize"),
    ("dry", "moly"),
];

/// A bolt of the stock.
#[derive(Clone, Copy)]
struct Bolt {
    thread: &'static Thread,
    grade: &'static BoltGrade,
    proof: Force,
}

fn bolts(stock: &Stock) -> Vec<Bolt> {
    let threads = stock.bolts.iter().filter_map(|id| thread(id));
    let mut all = Vec::new();
    for thread in threads {
        for grade in stock.grades.iter().filter_map(|id| bolt_grade(id)) {
            let length = thread.major() * 6.0;
            let proof = grade.strength(thread, length).and_then(|s| s.proof);
            all.extend(proof.map(|proof| Bolt {
                thread,
                grade,
                proof: load_at(proof, thread.stress_area()),
            }));
        }
    }
    all
}

/// What a torque comes to where its lever is left in inches, or in mm.
fn slipped(units: UnitSystem) -> f64 {
    match units {
        UnitSystem::Us => 12.0,
        UnitSystem::Metric => 1000.0,
    }
}

fn finish(id: &str) -> Option<(&'static NutFactor, String)> {
    let row = nut_factor(id)?;
    Some((row, message(&format!("finish.{id}")).into()))
}

fn stack(bolt: Bolt) -> Shape {
    Shape::stack(bolt.thread, 2.4 * bolt.thread.major().si())
}

pub(super) fn torque(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for bolt in bolts(stock) {
        for (factor, name) in FINISHES.iter().filter_map(|id| finish(id)) {
            match level {
                Level::Easy => {
                    for share in [0.4, 0.5, 0.6] {
                        add(wanted_torque(stock, bolt, (factor, &name), share));
                    }
                }
                Level::Middle => add(proof_torque(stock, bolt, (factor, &name))),
                Level::Hard => {
                    for share in [0.4, 0.55] {
                        add(reached(stock, bolt, (factor, &name), share));
                    }
                }
            }
        }
    }
}

fn wanted_torque(
    stock: &Stock,
    bolt: Bolt,
    (factor, name): (&NutFactor, &str),
    share: f64,
) -> Option<super::Problem> {
    let mut draft = stock.draft(Kind::Torque, Level::Easy);
    let d = draft.bolt(bolt.thread);
    draft.says("finish", name);
    let k = draft.gives("k", factor.typical(), Dimension::Ratio);
    let clamp = stock.round(bolt.proof.si() * share, Dimension::Force);
    let clamp = draft.gives("clamp", clamp, Dimension::Force);
    draft.shows(
        stack(bolt)
            .with_diameter(draft.text("d"))
            .with(Arrow::Clamp, format!("F = {}", draft.text("clamp"))),
    );
    let answer = torque_for(k, Length::of_si(d), Force::of_si(clamp)).si();
    draft.asks(
        answer,
        Dimension::Torque,
        &[
            (Wrong::Radius, answer / 2.0),
            (Wrong::NoK, answer / k),
            (Wrong::Unit, answer * slipped(stock.units)),
        ],
    )
}

fn proof_torque(
    stock: &Stock,
    bolt: Bolt,
    (factor, name): (&NutFactor, &str),
) -> Option<super::Problem> {
    let mut draft = stock.draft(Kind::Torque, Level::Middle);
    let d = draft.bolt(bolt.thread);
    draft.says("grade", bolt.grade.label());
    draft.says("finish", name);
    let k = draft.gives("k", factor.typical(), Dimension::Ratio);
    let proof = draft.gives("proof", bolt.proof.si(), Dimension::Force);
    draft.gives("share", SHARE, Dimension::Share);
    draft.shows(
        stack(bolt)
            .with_diameter(draft.text("d"))
            .with(Arrow::Clamp, "F = ?"),
    );
    let answer = torque_for(k, Length::of_si(d), Force::of_si(proof * SHARE)).si();
    draft.asks(
        answer,
        Dimension::Torque,
        &[
            (Wrong::Proof, answer / SHARE),
            (Wrong::Radius, answer / 2.0),
            (Wrong::Unit, answer * slipped(stock.units)),
            (Wrong::NoK, answer / k),
        ],
    )
}

fn reached(
    stock: &Stock,
    bolt: Bolt,
    (factor, name): (&NutFactor, &str),
    share: f64,
) -> Option<super::Problem> {
    let mut draft = stock.draft(Kind::Torque, Level::Hard);
    let d = draft.bolt(bolt.thread);
    draft.says("finish", name);
    let k = draft.gives("k", factor.typical(), Dimension::Ratio);
    let torque = torque_for(k, Length::of_si(d), bolt.proof * share).si();
    let torque = stock.round(torque, Dimension::Torque);
    let torque = draft.gives("torque", torque, Dimension::Torque);
    draft.shows(
        stack(bolt)
            .with_diameter(draft.text("d"))
            .with(Arrow::Clamp, "F = ?"),
    );
    let answer = clamp_from(k, Length::of_si(d), Torque::of_si(torque)).si();
    draft.asks(
        answer,
        Dimension::Force,
        &[
            (Wrong::Radius, answer * 2.0),
            (Wrong::Times, answer * k * k),
            (Wrong::NoK, answer * k),
            (Wrong::Unit, answer / slipped(stock.units)),
        ],
    )
}

pub(super) fn stretch(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for bolt in bolts(stock) {
        for grip in stock.grips {
            match level {
                Level::Easy => add(pulled(stock, bolt, *grip)),
                Level::Middle => add(to_proof(stock, bolt, *grip)),
                Level::Hard => add(two_parts(stock, bolt, *grip)),
            }
        }
    }
}

fn area_and_modulus(draft: &mut super::Draft, bolt: Bolt) -> (f64, f64) {
    let area = draft.gives("area", bolt.thread.stress_area().si(), Dimension::Area);
    let modulus = draft.gives("modulus", bolt.grade.modulus().si(), Dimension::Stress);
    (area, modulus)
}

/// Stretch of a length under a force.
fn stretched(force: f64, length: f64, area: f64, modulus: f64) -> f64 {
    let spring = stiffness::prism(
        Stress::of_si(modulus),
        Area::of_si(area),
        Length::of_si(length),
    );
    force / spring.si()
}

fn pulled(stock: &Stock, bolt: Bolt, grip: f64) -> Option<super::Problem> {
    let mut draft = stock.draft(Kind::Stretch, Level::Easy);
    draft.says("bolt", bolt.thread.label());
    let clamp = stock.round(bolt.proof.si() * 0.6, Dimension::Force);
    let clamp = draft.gives("clamp", clamp, Dimension::Force);
    let length = draft.gives("length", stock.length(grip), Dimension::Length);
    let (area, modulus) = area_and_modulus(&mut draft, bolt);
    let shank = bolt.thread.shank_area().si();
    draft.shows(
        Shape::stack(bolt.thread, length)
            .with_grip(format!("L = {}", draft.text("length")))
            .with(Arrow::Clamp, format!("F = {}", draft.text("clamp"))),
    );
    let answer = stretched(clamp, length, area, modulus);
    draft.asks(
        answer,
        Dimension::Length,
        &[
            (Wrong::ShankArea, stretched(clamp, length, shank, modulus)),
            (Wrong::Unit, answer * 1000.0),
        ],
    )
}

fn to_proof(stock: &Stock, bolt: Bolt, grip: f64) -> Option<super::Problem> {
    let mut draft = stock.draft(Kind::Stretch, Level::Middle);
    draft.says("bolt", bolt.thread.label());
    draft.says("grade", bolt.grade.label());
    let proof = draft.gives("proof", bolt.proof.si(), Dimension::Force);
    draft.gives("share", SHARE, Dimension::Share);
    let length = draft.gives("length", stock.length(grip), Dimension::Length);
    let (area, modulus) = area_and_modulus(&mut draft, bolt);
    let shank = bolt.thread.shank_area().si();
    draft.shows(
        Shape::stack(bolt.thread, length)
            .with_grip(format!("L = {}", draft.text("length")))
            .with(Arrow::Clamp, "F = ?"),
    );
    let of = |force, area| stretched(force, length, area, modulus);
    draft.asks(
        of(proof * SHARE, area),
        Dimension::Length,
        &[
            (Wrong::Proof, of(proof, area)),
            (Wrong::ShankArea, of(proof * SHARE, shank)),
            (Wrong::Unit, of(proof * SHARE, area) * 1000.0),
        ],
    )
}

fn two_parts(stock: &Stock, bolt: Bolt, grip: f64) -> Option<super::Problem> {
    let mut draft = stock.draft(Kind::Stretch, Level::Hard);
    draft.says("bolt", bolt.thread.label());
    let clamp = stock.round(bolt.proof.si() * 0.65, Dimension::Force);
    let clamp = draft.gives("clamp", clamp, Dimension::Force);
    let length = stock.length(grip);
    // A share of the grip that is a size of a ruler.
    let thread = draft.gives("thread", length * 0.4, Dimension::Length);
    let shank = draft.gives("shank", length - thread, Dimension::Length);
    let (area, modulus) = area_and_modulus(&mut draft, bolt);
    let shank_area = bolt.thread.shank_area().si();
    let shank_area = draft.gives("shank-area", shank_area, Dimension::Area);
    draft.shows(
        Shape::stack(bolt.thread, thread + shank)
            .with_thread(thread)
            .with(Arrow::Clamp, format!("F = {}", draft.text("clamp"))),
    );
    let spring = stiffness::bolt(
        Stress::of_si(modulus),
        Area::of_si(shank_area),
        Area::of_si(area),
        Length::of_si(shank),
        Length::of_si(thread),
    );
    let answer = clamp / spring.si();
    let whole = thread + shank;
    draft.asks(
        answer,
        Dimension::Length,
        &[
            (Wrong::ThreadArea, stretched(clamp, whole, area, modulus)),
            (
                Wrong::ShankArea,
                stretched(clamp, whole, shank_area, modulus),
            ),
            (Wrong::Unit, answer * 1000.0),
        ],
    )
}

pub(super) fn wax(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for bolt in bolts(stock) {
        for (dry, wet) in WAXED {
            for share in [0.35, 0.45, 0.5] {
                add(waxed(stock, level, bolt, (dry, wet), share));
            }
        }
    }
}

fn waxed(
    stock: &Stock,
    level: Level,
    bolt: Bolt,
    (dry, wet): (&str, &str),
    share: f64,
) -> Option<super::Problem> {
    let ((dry, dry_name), (wet, wet_name)) = (finish(dry)?, finish(wet)?);
    let mut draft = stock.draft(Kind::Wax, level);
    let d = Length::of_si(draft.bolt(bolt.thread));
    draft.says("finish", dry_name);
    draft.says("finish2", wet_name);
    let k = draft.gives("k", dry.typical(), Dimension::Ratio);
    let k2 = draft.gives("k2", wet.typical(), Dimension::Ratio);
    let clamp = stock.round(bolt.proof.si() * share, Dimension::Force);
    if level == Level::Easy {
        let clamp = draft.gives("clamp", clamp, Dimension::Force);
        let set = torque_for(k, d, Force::of_si(clamp));
        let answer = clamp_from(k2, d, set).si();
        draft.shows(
            stack(bolt)
                .with_diameter(draft.text("d"))
                .with(Arrow::Clamp, "F = ?"),
        );
        return draft.asks(
            answer,
            Dimension::Force,
            &[(Wrong::Turned, clamp * k2 / k), (Wrong::Same, clamp)],
        );
    }
    let torque = torque_for(k, d, Force::of_si(clamp)).si();
    let torque = stock.round(torque, Dimension::Torque);
    let torque = draft.gives("torque", torque, Dimension::Torque);
    let set = Torque::of_si(torque);
    if level == Level::Hard {
        draft.shows(
            stack(bolt)
                .with_diameter(draft.text("d"))
                .with(Arrow::Clamp, "F"),
        );
        let answer = torque_for(k2, d, clamp_from(k, d, set)).si();
        return draft.asks(
            answer,
            Dimension::Torque,
            &[(Wrong::Turned, torque * k / k2), (Wrong::Same, torque)],
        );
    }
    draft.says("grade", bolt.grade.label());
    let proof = draft.gives("proof", bolt.proof.si(), Dimension::Force);
    draft.shows(
        stack(bolt)
            .with_diameter(draft.text("d"))
            .with(Arrow::Clamp, "F = ?"),
    );
    let part = |k: f64| clamp_from(k, d, set).si() / proof;
    draft.asks(
        part(k2),
        Dimension::Share,
        &[
            (Wrong::Dry, part(k)),
            (Wrong::Radius, part(k2) * 2.0),
            (Wrong::Unit, part(k2) / slipped(stock.units)),
            (Wrong::Turned, 1.0 / part(k2)),
        ],
    )
}
