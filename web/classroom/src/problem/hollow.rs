//! What a hollow wall takes, sleeves between walls, and clamp load that is lost.

use calc_core::catalog::{WasherSeries, bolt_grade, material, thread, washer};
use calc_core::mechanics::face::{FaceCurve, FaceTube, LOWER_BOUND, out_of_range};
use calc_core::mechanics::losses::{embedding, flattening, thermal};
use calc_core::mechanics::sleeve::between_walls;
use calc_core::mechanics::thread::load_at;
use calc_core::mechanics::tightening::{clamp_from, torque_for};
use calc_core::quantity::{
    Dimension, Force, InUnits, Length, Stiffness, TemperatureInterval, Torque, Unit, UnitSystem,
};

use super::slip::give_springs;
use super::{Add, Draft, Kind, Level, Problem, Stock, Wrong};
use crate::picture::{Arrow, Shape};

/// Share of the width at which a face counts as caved in.
const CAVED_IN: f64 = 0.01;

/// A tube of the stock with a bolt through it.
#[derive(Clone, Copy)]
struct Through {
    bolt: &'static calc_core::catalog::Thread,
    width: f64,
    depth: f64,
    /// Clamp load that the bolt is to reach.
    wanted: f64,
}

fn through(stock: &Stock) -> Vec<Through> {
    let mut all = Vec::new();
    let grade = stock.grades.first().and_then(|id| bolt_grade(id));
    for bolt in stock.bolts.iter().filter_map(|id| thread(id)) {
        for &(width, depth) in stock.tubes {
            let proof = grade
                .and_then(|grade| grade.strength(bolt, bolt.major() * 6.0))
                .and_then(|strength| strength.proof);
            let Some(proof) = proof else { continue };
            let wanted = load_at(proof, bolt.stress_area()).si() * 0.75;
            all.push(Through {
                bolt,
                width: stock.length(width),
                depth: stock.length(depth),
                wanted: stock.round(wanted, Dimension::Force),
            });
        }
    }
    all
}

/// The face of a tube under a washer, the least that it takes; nothing where that was not checked.
fn face(stock: &Stock, joint: Through, wall: f64) -> Option<FaceCurve> {
    let steel = material(stock.tube_steel)?;
    let pressed = washer(joint.bolt, WasherSeries::Narrow)?.outer();
    let wall = wall * steel.design_wall_factor();
    let tube = FaceTube {
        width: Length::of_si(joint.width),
        depth: Length::of_si(joint.depth),
        wall: Length::of_si(wall),
        corner_radius: Length::of_si(wall * steel.corner_radius_factor()),
        modulus: steel.modulus(),
        poisson: steel.poisson(),
        yield_strength: steel.least().yield_strength(),
    };
    out_of_range(&tube, pressed)
        .is_empty()
        .then(|| FaceCurve::new(&tube, pressed, LOWER_BOUND))
}

/// Gives the tube and shows it with its bolt.
fn tube(draft: &mut Draft, joint: Through, wall: f64) -> (f64, f64) {
    draft.says("bolt", joint.bolt.label());
    draft.gives("width", joint.width, Dimension::Length);
    let depth = draft.gives("depth", joint.depth, Dimension::Length);
    let wall = draft.gives("wall", wall, Dimension::Length);
    (depth, wall)
}

fn picture(draft: &Draft, joint: Through, wall: f64) -> Shape {
    Shape::tube(joint.bolt, [joint.width, joint.depth, wall])
        .with_depth(draft.text("depth"))
        .with_wall(draft.text("wall"))
}

pub(super) fn crush(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for joint in through(stock) {
        for index in 0..stock.walls.len() {
            for k in [0.15, 0.2] {
                // The nut factor counts only where a torque is set.
                if level != Level::Easy || k > 0.19 {
                    add(caves_in(stock, level, joint, index, k));
                }
            }
        }
    }
}

fn caves_in(stock: &Stock, level: Level, joint: Through, index: usize, k: f64) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Crush, level);
    let own = stock.length(*stock.walls.get(index)?);
    tube(&mut draft, joint, own);
    let mut takes = Vec::new();
    for wall in stock.walls {
        let wall = stock.length(*wall);
        let load = face(stock, joint, wall)?.force_at_share(CAVED_IN).si();
        let load = stock.round(load, Dimension::Force);
        let [_, load] = draft.row((wall, Dimension::Length), (load, Dimension::Force));
        takes.push(load);
    }
    let wall = *takes.get(index)?;
    let next = *takes
        .get(index + 1)
        .or_else(|| takes.get(index.checked_sub(1)?))?;
    // A wall that takes what the bolt wants does not cave in.
    if wall > 0.9 * joint.wanted {
        return None;
    }
    if level == Level::Easy {
        let wanted = draft.gives("wanted", joint.wanted, Dimension::Force);
        draft.shows(picture(&draft, joint, own).with(Arrow::Clamp, "?"));
        return draft.asks(
            wall / wanted,
            Dimension::Share,
            &[(Wrong::Row, next / wanted), (Wrong::Turned, wanted / wall)],
        );
    }
    let d = Length::of_si(draft.gives("d", joint.bolt.major().si(), Dimension::Length));
    let k = draft.gives("k", k, Dimension::Ratio);
    let to = |clamp: f64| torque_for(k, d, Force::of_si(clamp)).si();
    if level == Level::Middle {
        let wanted = draft.gives("wanted", joint.wanted, Dimension::Force);
        draft.shows(picture(&draft, joint, own).with(Arrow::Clamp, "?"));
        let answer = to(wall);
        return draft.asks(
            answer,
            Dimension::Torque,
            &[
                (Wrong::Wanted, to(wanted)),
                (Wrong::Row, to(next)),
                (Wrong::Radius, answer / 2.0),
            ],
        );
    }
    let torque = stock.round(to(joint.wanted), Dimension::Torque);
    let torque = draft.gives("torque", torque, Dimension::Torque);
    draft.shows(picture(&draft, joint, own).with(Arrow::Clamp, "?"));
    let wanted = clamp_from(k, d, Torque::of_si(torque)).si();
    draft.asks(
        wanted - wall,
        Dimension::Force,
        &[
            (Wrong::Wanted, wanted),
            (Wrong::Wall, wall),
            (Wrong::Row, wanted - next),
            (Wrong::Radius, 2.0 * wanted - wall),
        ],
    )
}

/// How much a sleeve was cut short, mm or in.
const fn shorts(units: UnitSystem) -> [f64; 3] {
    match units {
        UnitSystem::Us => [0.02, 0.04, 0.06],
        UnitSystem::Metric => [0.4, 0.8, 1.2],
    }
}

pub(super) fn sleeve(stock: &Stock, level: Level, add: &mut Add<'_>) {
    for joint in through(stock) {
        for wall in stock.walls {
            let wall = stock.length(*wall);
            match level {
                Level::Easy => {
                    for short in [0.0, 1.0, 2.0] {
                        add(cut_length(stock, joint, wall, short));
                    }
                }
                Level::Middle => {
                    for short in shorts(stock.units) {
                        add(pressed_in(stock, joint, wall, stock.length(short)));
                    }
                }
                Level::Hard => add(used_up(stock, joint, wall)),
            }
        }
    }
}

fn between(depth: f64, wall: f64, short: f64) -> f64 {
    between_walls(
        Length::of_si(depth),
        Length::of_si(wall),
        Length::of_si(short),
    )
    .si()
}

/// `steps` of what a file takes off are left for fitting.
fn cut_length(stock: &Stock, joint: Through, wall: f64, steps: f64) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Sleeve, Level::Easy);
    let (depth, wall) = tube(&mut draft, joint, wall);
    let over = match stock.units {
        UnitSystem::Us => Unit::Inch.to_si(0.01),
        UnitSystem::Metric => Unit::Millimetre.to_si(0.2),
    };
    let over = draft.gives("over", over * (1.0 + steps), Dimension::Length);
    draft.shows(
        picture(&draft, joint, wall)
            .with_sleeve(between(depth, wall, 0.0))
            .with_inside("?"),
    );
    draft.asks(
        between(depth, wall, -over),
        Dimension::Length,
        &[
            (Wrong::OneWall, depth - wall + over),
            (Wrong::NoWall, depth + over),
            (Wrong::NoOver, between(depth, wall, 0.0)),
            (Wrong::OverOff, between(depth, wall, over)),
        ],
    )
}

fn pressed_in(stock: &Stock, joint: Through, wall: f64, short: f64) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Sleeve, Level::Middle);
    let (depth, wall) = tube(&mut draft, joint, wall);
    let room = between(depth, wall, 0.0);
    let length = draft.gives("length", room - short, Dimension::Length);
    draft.shows(
        picture(&draft, joint, wall)
            .with_sleeve(length)
            .with_inside(draft.text("length")),
    );
    let each = |depth: f64, wall: f64| between(depth, wall, length) / 2.0;
    draft.asks(
        each(depth, wall),
        Dimension::Length,
        &[
            (Wrong::BothFaces, between(depth, wall, length)),
            (Wrong::OneWall, each(depth - wall, 0.0)),
            (Wrong::NoWall, each(depth, 0.0)),
        ],
    )
}

fn used_up(stock: &Stock, joint: Through, wall: f64) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Sleeve, Level::Hard);
    let (depth, wall) = tube(&mut draft, joint, wall);
    let curve = face(stock, joint, wall)?;
    let step = match stock.units {
        UnitSystem::Us => Unit::Inch.to_si(0.01),
        UnitSystem::Metric => Unit::Millimetre.to_si(0.2),
    };
    let mut takes = Vec::new();
    for times in [1.0, 2.0, 3.0, 4.0] {
        let dent = step * times;
        let load = curve.force(Length::of_si(dent)).si();
        let load = stock.round(load, Dimension::Force);
        let [_, load] = draft.row((dent, Dimension::Length), (load, Dimension::Force));
        takes.push(load);
    }
    // Short by two steps: each face goes in by one.
    let short = draft.gives("short", step * 2.0, Dimension::Length);
    let wanted = draft.gives("wanted", joint.wanted, Dimension::Force);
    let (one, both) = (*takes.first()?, *takes.get(1)?);
    if both > 0.95 * wanted {
        return None;
    }
    draft.shows(
        picture(&draft, joint, wall)
            .with_sleeve(between(depth, wall, short))
            .with(Arrow::Clamp, "?"),
    );
    draft.asks(
        one / wanted,
        Dimension::Share,
        &[
            (Wrong::BothFaces, both / wanted),
            (Wrong::Turned, wanted / one),
            (Wrong::LossOnly, 1.0 - one / wanted),
        ],
    )
}

pub(super) fn loss(stock: &Stock, level: Level, add: &mut Add<'_>) {
    let bolts = stock.bolts.iter().filter_map(|id| thread(id));
    for bolt in bolts {
        for grip in stock.grips {
            for much in [1.0, 2.0, 3.0, 4.0, 5.0] {
                add(match level {
                    Level::Hard => cold(stock, bolt, *grip, much),
                    _ => settles(stock, level, bolt, *grip, much),
                });
            }
        }
    }
}

type Thread = &'static calc_core::catalog::Thread;

fn settles(stock: &Stock, level: Level, bolt: Thread, grip: f64, faces: f64) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Loss, level);
    draft.says("bolt", bolt.label());
    let length = stock.length(grip);
    let (kb, km) = give_springs(stock, &mut draft, bolt, length, 1.0)?;
    let settled = flattening(faces).si();
    let settled = draft.gives(
        "settled",
        stock.round(settled, Dimension::Length),
        Dimension::Length,
    );
    let lost = embedding(Length::of_si(settled), kb, km).si();
    let alone = |spring: Stiffness| settled * spring.si();
    let shape = Shape::stack(bolt, length).with(Arrow::Clamp, "F");
    if level == Level::Easy {
        draft.shows(shape);
        return draft.asks(
            lost,
            Dimension::Force,
            &[(Wrong::BoltOnly, alone(kb)), (Wrong::PartsOnly, alone(km))],
        );
    }
    let clamp = stock.round(lost * (2.0 + faces), Dimension::Force);
    let clamp = draft.gives("clamp", clamp, Dimension::Force);
    draft.shows(shape);
    draft.asks(
        clamp - lost,
        Dimension::Force,
        &[
            (Wrong::LossOnly, lost),
            (Wrong::BoltOnly, clamp - alone(kb)),
            (Wrong::PartsOnly, clamp - alone(km)),
        ],
    )
}

/// Millionths of its length that a metal shrinks by for a degree of the reader's scale, to a tenth.
fn millionths(per_kelvin: f64, units: UnitSystem) -> f64 {
    let per_degree = match units {
        UnitSystem::Us => per_kelvin * Unit::FahrenheitStep.to_si(1.0),
        UnitSystem::Metric => per_kelvin,
    };
    (per_degree * 1e7).round() / 10.0
}

fn cold(stock: &Stock, bolt: Thread, grip: f64, much: f64) -> Option<Problem> {
    let mut draft = stock.draft(Kind::Loss, Level::Hard);
    draft.says("bolt", bolt.label());
    let length = draft.gives("length", stock.length(grip), Dimension::Length);
    let (kb, km) = give_springs(stock, &mut draft, bolt, length, 3.0)?;
    let degree = match stock.units {
        UnitSystem::Us => Unit::FahrenheitStep,
        UnitSystem::Metric => Unit::CelsiusStep,
    };
    let step = draft.gives(
        "step",
        degree.to_si(20.0 + 10.0 * much),
        Dimension::TemperatureStep,
    );
    let parts = material("6061-t6")?.expansion().value;
    let steel = bolt_grade("sae-5")?.expansion().value;
    let mut give = |name, per_kelvin| {
        let number = millionths(per_kelvin, stock.units);
        draft.gives(name, number, Dimension::Ratio) * 1e-6 / degree.to_si(1.0)
    };
    let (parts, steel) = (give("parts", parts), give("steel", steel));
    draft.shows(Shape::stack(bolt, length).with_grip(format!("L = {}", draft.text("length"))));
    let change = |steel: f64, kb: Stiffness, km: Stiffness| {
        let step = TemperatureInterval::of_si(step);
        thermal(parts, steel, step, Length::of_si(length), kb, km).si()
    };
    let stiff = Stiffness::of_si(f64::INFINITY);
    draft.asks(
        change(steel, kb, km),
        Dimension::Force,
        &[
            (Wrong::NoSteel, change(0.0, kb, km)),
            (Wrong::BoltOnly, change(steel, kb, stiff)),
            (Wrong::PartsOnly, change(steel, stiff, km)),
        ],
    )
}
