//! What friction holds, how many bolts it takes, and what of a pull each bolt feels.

use calc_core::catalog::{Thread, bolt_grade, slip_surface, thread, wileman};
use calc_core::mechanics::slip::{OMEGA, bolts_for, resistance};
use calc_core::mechanics::stiffness;
use calc_core::mechanics::thread::load_at;
use calc_core::quantity::{Dimension, Force, InUnits, Length, Stiffness};

use super::{Add, Draft, Kind, Level, Problem, Stock, Wrong};
use crate::picture::{Arrow, Shape};
use crate::words::message;

/// Faces that a shop meets, as the catalog names them.
const FACES: [&str; 4] = ["bare-clean", "painted", "steel-mill-scale", "en-c"];

/// A bolt with the clamp load that it is tightened to.
fn clamped(stock: &Stock, share: f64) -> Vec<(&'static Thread, f64)> {
    let grade = stock.grades.first().and_then(|id| bolt_grade(id));
    let threads = stock.bolts.iter().filter_map(|id| thread(id));
    let of = |thread: &'static Thread| {
        let proof = grade?.strength(thread, thread.major() * 6.0)?.proof?;
        let load = load_at(proof, thread.stress_area()).si() * share;
        Some((thread, stock.round(load, Dimension::Force)))
    };
    threads.filter_map(of).collect()
}

/// Gives the clamp load, the faces and how many pairs of them there are.
fn faces(draft: &mut Draft, clamp: f64, face: &str, planes: u32) -> Option<(f64, f64)> {
    let clamp = draft.gives("clamp", clamp, Dimension::Force);
    let surface = slip_surface(face)?;
    draft.says("face", message(&format!("face.{face}")));
    let mu = draft.gives("mu", surface.mu(), Dimension::Ratio);
    draft.says("planes", message(&format!("planes.{planes}")));
    Some((clamp, mu))
}

fn holds(planes: f64, mu: f64, clamp: f64) -> f64 {
    resistance(planes, mu, Force::of_si(clamp), Force::of_si(0.0), 0.0).si()
}

fn plates(thread: &'static Thread, planes: u32) -> Shape {
    let plies = if planes == 2 { 3 } else { 2 };
    Shape::stack(thread, 2.6 * thread.major().si()).with_plies(plies)
}

/// The mistake of counting pairs of faces.
fn miscounted(planes: u32, right: f64) -> (Wrong, f64) {
    if planes == 2 {
        (Wrong::OneFace, right / 2.0)
    } else {
        (Wrong::TwoFaces, right * 2.0)
    }
}

pub(super) fn slip(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for share in [0.45, 0.6] {
        for (thread, clamp) in clamped(stock, share) {
            for face in FACES {
                for planes in [1, 2] {
                    match level {
                        Level::Easy => add(one_bolt(stock, thread, clamp, face, planes)),
                        Level::Middle => {
                            for bolts in [2, 3, 4, 6] {
                                add(more_bolts(stock, thread, clamp, face, (planes, bolts)));
                            }
                        }
                        Level::Hard => add(with_pull(stock, thread, clamp, face, planes)),
                    }
                }
            }
        }
    }
}

fn one_bolt(
    stock: &Stock,
    thread: &'static Thread,
    clamp: f64,
    face: &str,
    planes: u32,
) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Slip, Level::Easy);
    draft.says("bolt", thread.label());
    let (clamp, mu) = faces(&mut draft, clamp, face, planes)?;
    draft.shows(
        plates(thread, planes)
            .with(Arrow::Clamp, format!("F = {}", draft.text("clamp")))
            .with(Arrow::Load, "?"),
    );
    let answer = holds(f64::from(planes), mu, clamp);
    draft.asks(
        answer,
        Dimension::Force,
        &[
            miscounted(planes, answer),
            (Wrong::NoFriction, clamp),
            (Wrong::Turned, clamp / mu),
        ],
    )
}

fn more_bolts(
    stock: &Stock,
    thread: &'static Thread,
    clamp: f64,
    face: &str,
    (planes, bolts): (u32, u32),
) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Slip, Level::Middle);
    draft.says("bolt", thread.label());
    let (clamp, mu) = faces(&mut draft, clamp, face, planes)?;
    let bolts = draft.gives("bolts", f64::from(bolts), Dimension::Count);
    draft.shows(
        plates(thread, planes)
            .with(Arrow::Clamp, format!("F = {}", draft.text("clamp")))
            .with(Arrow::Load, "?"),
    );
    let answer = holds(f64::from(planes) * bolts, mu, clamp);
    draft.asks(
        answer,
        Dimension::Force,
        &[
            miscounted(planes, answer),
            (Wrong::OneBolt, answer / bolts),
            (Wrong::NoFriction, clamp * bolts),
        ],
    )
}

fn with_pull(
    stock: &Stock,
    thread: &'static Thread,
    clamp: f64,
    face: &str,
    planes: u32,
) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Slip, Level::Hard);
    draft.says("bolt", thread.label());
    let (clamp, mu) = faces(&mut draft, clamp, face, planes)?;
    let pull = stock.round(clamp * 0.4, Dimension::Force);
    let pull = draft.gives("pull", pull, Dimension::Force);
    let (bolt, parts) = springs(thread, stock.length(*stock.grips.get(2)?))?;
    let share = stiffness::load_factor(Stiffness::of_si(bolt), Stiffness::of_si(parts));
    let share = stock.round(share, Dimension::Share);
    let share = draft.gives("share", share, Dimension::Share);
    draft.shows(
        plates(thread, planes)
            .with(Arrow::Clamp, format!("F = {}", draft.text("clamp")))
            .with(Arrow::Load, "?"),
    );
    let planes_ = f64::from(planes);
    let left =
        |share: f64| resistance(planes_, mu, Force::of_si(clamp), Force::of_si(pull), share).si();
    let answer = left(share);
    draft.asks(
        answer,
        Dimension::Force,
        &[
            miscounted(planes, answer),
            (Wrong::NoPull, holds(planes_, mu, clamp)),
            (Wrong::OtherShare, left(1.0 - share)),
            (Wrong::WholePull, left(0.0)),
        ],
    )
}

pub(super) fn bolts(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for share in [0.4, 0.55] {
        for (thread, clamp) in clamped(stock, share) {
            for face in FACES.iter().take(3) {
                for planes in [1, 2] {
                    for times in [2.6, 3.5, 4.4, 5.6] {
                        add(how_many(
                            stock,
                            level,
                            (thread, clamp),
                            (face, planes),
                            times,
                        ));
                    }
                }
            }
        }
    }
}

/// A load that takes a number of bolts, far enough from a whole number that rounding decides nothing.
fn how_many(
    stock: &Stock,
    level: Level,
    (thread, clamp): (&'static Thread, f64),
    (face, planes): (&str, u32),
    times: f64,
) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Bolts, level);
    let many = f64::from(planes);
    let count = |load: f64, each: f64, factor: f64| {
        bolts_for(Force::of_si(load), Force::of_si(each), factor)
    };
    let shape = |draft: &Draft| {
        plates(thread, planes).with(Arrow::Load, format!("P = {}", draft.text("load")))
    };
    if level == Level::Easy {
        let mu = slip_surface(face)?.mu();
        let each = stock.round(holds(many, mu, clamp), Dimension::Force);
        let each = draft.gives("each", each, Dimension::Force);
        let load = draft.gives(
            "load",
            stock.round(each * times, Dimension::Force),
            Dimension::Force,
        );
        draft.shows(shape(&draft));
        let answer = count(load, each, 1.0);
        clear_of_whole(load / each)?;
        return draft.asks(
            answer,
            Dimension::Count,
            &[
                (Wrong::Down, answer - 1.0),
                (Wrong::Turned, count(each, load, 1.0)),
            ],
        );
    }
    draft.says("bolt", thread.label());
    let (clamp, mu) = faces(&mut draft, clamp, face, planes)?;
    let lost = if level == Level::Hard {
        let lost = stock.round(clamp * 0.2, Dimension::Force);
        draft.gives("lost", lost, Dimension::Force)
    } else {
        0.0
    };
    let each = holds(many, mu, clamp - lost);
    let load = stock.round(each * times / OMEGA, Dimension::Force);
    let load = draft.gives("load", load, Dimension::Force);
    draft.gives("omega", OMEGA, Dimension::Ratio);
    draft.shows(shape(&draft).with(Arrow::Clamp, format!("F = {}", draft.text("clamp"))));
    clear_of_whole(load * OMEGA / each)?;
    let (face_wrong, half) = miscounted(planes, each);
    let whole = holds(many, mu, clamp);
    let answer = count(load, each, OMEGA);
    draft.asks(
        answer,
        Dimension::Count,
        &[
            (Wrong::NoFactor, count(load, each, 1.0)),
            (face_wrong, count(load, half, OMEGA)),
            (Wrong::NoLoss, count(load, whole, OMEGA)),
            (Wrong::Down, answer - 1.0),
        ],
    )
}

/// Nothing where a number is so near a whole one that an answer rounded on the way would come to another.
fn clear_of_whole(number: f64) -> Option<()> {
    ((number - number.round()).abs() > super::TOLERANCE * number).then_some(())
}

/// Stiffness of a bolt threaded over all of its grip, and of steel parts that it clamps.
fn springs(thread: &'static Thread, grip: f64) -> Option<(f64, f64)> {
    let grade = bolt_grade("sae-5")?;
    let steel = wileman("steel")?;
    let length = Length::of_si(grip);
    let bolt = stiffness::prism(grade.modulus(), thread.stress_area(), length);
    let parts = stiffness::wileman(
        grade.modulus(),
        thread.major(),
        length,
        steel.a(),
        steel.b(),
    );
    Some((bolt.si(), parts.si()))
}

/// Gives both springs of a bolt and its parts.
pub(super) fn give_springs(
    stock: &Stock,
    draft: &mut Draft,
    thread: &'static Thread,
    grip: f64,
    soft: f64,
) -> Option<(Stiffness, Stiffness)> {
    let (bolt, parts) = springs(thread, grip)?;
    let mut give = |name, si| {
        let si = stock.round(si, Dimension::Stiffness);
        Stiffness::of_si(draft.gives(name, si, Dimension::Stiffness))
    };
    Some((give("kb", bolt), give("km", parts / soft)))
}

pub(super) fn share(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for (thread, clamp) in clamped(stock, 0.6) {
        for grip in stock.grips {
            // Solid steel, and parts with something soft between them.
            for soft in [1.0, 2.0, 4.0] {
                add(of_a_pull(stock, level, (thread, clamp), *grip, soft));
            }
        }
    }
}

fn of_a_pull(
    stock: &Stock,
    level: Level,
    (thread, clamp): (&'static Thread, f64),
    grip: f64,
    soft: f64,
) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Share, level);
    draft.says("bolt", thread.label());
    let (bolt, parts) = give_springs(stock, &mut draft, thread, stock.length(grip), soft)?;
    let share = stiffness::load_factor(bolt, parts);
    let pull = stock.round(clamp * 0.5, Dimension::Force);
    let shape = Shape::stack(thread, stock.length(grip));
    if level == Level::Easy {
        draft.shows(shape.with(Arrow::Pull, "P"));
        return draft.asks(
            share,
            Dimension::Share,
            &[
                (Wrong::Ratio, bolt.si() / parts.si()),
                (Wrong::OtherShare, 1.0 - share),
            ],
        );
    }
    let pull = draft.gives("pull", pull, Dimension::Force);
    let shape = shape.with(Arrow::Pull, format!("P = {}", draft.text("pull")));
    if level == Level::Middle {
        draft.shows(shape);
        return draft.asks(
            share * pull,
            Dimension::Force,
            &[
                (Wrong::OtherShare, (1.0 - share) * pull),
                (Wrong::WholePull, pull),
                (Wrong::Ratio, bolt.si() / parts.si() * pull),
            ],
        );
    }
    let clamp = draft.gives("clamp", clamp, Dimension::Force);
    draft.shows(shape.with(Arrow::Clamp, format!("F = {}", draft.text("clamp"))));
    // What is left to hold by friction, with faces that would hold all of it.
    let left =
        |share: f64| resistance(1.0, 1.0, Force::of_si(clamp), Force::of_si(pull), share).si();
    draft.asks(
        left(share),
        Dimension::Force,
        &[
            (Wrong::WholePull, left(0.0)),
            (Wrong::OtherShare, left(1.0 - share)),
            (Wrong::NoPull, clamp),
        ],
    )
}
