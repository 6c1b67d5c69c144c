//! The clamped length, the springs in it, and what is left of the clamp in service.

use super::preload::Preload;
use super::support::Support;
use crate::mechanics::{losses, stiffness};
use crate::quantity::{InUnits, Length, Stiffness, TemperatureInterval, mm, newton};
use crate::report::LossesReport;
use crate::scenario::Scenario;
use crate::support::{self, Grip};

/// Share of the clamp lost by initial relaxation between bare plies, and between coated ones.
///
/// # Sources
/// RCSC commentary (citing Munse 1967): 2.5 % uncoated, 6.5 % galvanized.
const RELAXATION: (f64, f64) = (0.025, 0.065);

/// The clamped length and its springs.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ResidualClamp {
    /// Clamped length under head and nut.
    pub(crate) length: Length,
    /// Bolt stiffness.
    pub(crate) bolt: Stiffness,
    /// Stiffness of what is clamped, at the reached clamp.
    pub(crate) members: Stiffness,
    /// Stiffness of the plies beside the tube.
    pub(crate) plies: Stiffness,
    /// Share of an outside pull that the bolt feels, at the least: by which the clamp on the faces falls most.
    pub(crate) load_factor: f64,
    /// The same at the most: what counts for the bolt.
    pub(crate) bolt_share: f64,
    /// Shank length in the grip.
    pub(crate) shank: Length,
    /// Least clamp right after tightening, N.
    pub(crate) fresh_min: f64,
    pub(crate) relaxation: f64,
    pub(crate) embedding: f64,
    pub(crate) temperature: f64,
    /// Least clamp left, N.
    pub(crate) left_min: f64,
}

impl ResidualClamp {
    pub(crate) fn new(s: &Scenario, preload: &Preload, support: &Support) -> Self {
        let b = &s.bolting;
        // A fitting lies at every slip plane.
        let plies = b.slip_planes();
        let grip = support::of(s).grip(s);
        let plate = grip.thickness;
        let fitting = s.fitting.thickness * plies;
        let length = s.grip();
        let bolt_length = s.bolt_length();
        let shank = (bolt_length - b.thread.thread_length(bolt_length))
            .max(mm(0.0))
            .min(length);
        let bolt = stiffness::bolt(
            b.grade.modulus(),
            b.thread.shank_area(),
            b.thread.stress_area(),
            shank,
            length - shank,
        );
        // What is not there gives nothing.
        let ply = |thickness: Length, modulus| {
            if thickness.si() > 0.0 {
                stiffness::frustum(modulus, b.thread.major(), b.washer.outer, thickness)
            } else {
                Stiffness::of_si(f64::INFINITY)
            }
        };
        let beside = stiffness::in_series(&[
            ply(b.washer.thickness * 2.0, b.grade.modulus()),
            ply(fitting, s.fitting.material.modulus()),
            ply(plate, grip.material.modulus()),
        ]);
        let model = &support.least;
        let working = model
            .approach(support.reached)
            .unwrap_or_else(|| model.approach_end());
        let members = stiffness::in_series(&[Stiffness::of_si(model.spring_rate(working)), beside]);
        let soft = soft_members(s, model.spring_rate(working));

        let fresh_min = preload.min.si().min(model.limit());
        // Under head and nut, and beside the member at every ply of the fitting.
        let interfaces = 2.0 + plies + grip.interfaces;
        let embedding = losses::embedding(losses::flattening(interfaces), bolt, members).si();
        let relaxation = fresh_min
            * if s.tightening.coated() {
                RELAXATION.1
            } else {
                RELAXATION.0
            };
        let temperature = losses::thermal(
            expansion(s, fitting, &grip, length),
            b.grade.expansion().value,
            TemperatureInterval::new::<uom::si::temperature_interval::kelvin>(
                s.loads.temperature_swing,
            ),
            length,
            bolt,
            members,
        )
        .si()
        .abs();
        let left = (fresh_min - relaxation - embedding - temperature).max(0.0);
        Self {
            length,
            bolt,
            members,
            plies: beside,
            load_factor: stiffness::load_factor(bolt, members),
            bolt_share: stiffness::load_factor(bolt, soft.min(members)),
            shank,
            fresh_min,
            relaxation,
            embedding,
            temperature,
            left_min: newton(left).si(),
        }
    }

    pub(crate) const fn losses(&self) -> LossesReport {
        LossesReport {
            relaxation_n: self.relaxation,
            embedding_n: self.embedding,
            temperature_n: self.temperature,
            left_min_n: self.left_min,
        }
    }
}

/// What is clamped as soft as it may be: from head and nut one cone each through all plies, to the middle of a solid
/// stack, or to the member where that has a spring of its own, N/m.
fn soft_members(s: &Scenario, member_spring: f64) -> Stiffness {
    let b = &s.bolting;
    let none = mm(0.0);
    let solid = s.member.is_open() || !support::of(s).is_hollow();
    let (nut_fitting, nut_plate) = match (b.slip_planes() > 1.0, s.member.is_open()) {
        (true, _) => (s.fitting.thickness, s.plates() * 0.5),
        (false, false) => (none, s.plates() * 0.5),
        (false, true) => (none, s.plates()),
    };
    let head_plate = s.plates() - nut_plate;
    let (washer, fitting) = (b.grade.modulus(), s.fitting.material.modulus());
    let plate = s.spreader.material.modulus();
    let plies = [
        (b.washer.thickness, washer),
        (s.fitting.thickness, fitting),
        (head_plate, plate),
        (if solid { s.clamped() } else { none }, s.tube.modulus),
        (nut_plate, plate),
        (nut_fitting, fitting),
        (b.washer.thickness, washer),
    ];
    let mut turned = plies;
    turned.reverse();
    let [from_head, from_nut] = if solid {
        [s.grip() * 0.5; 2]
    } else {
        [
            b.washer.thickness + s.fitting.thickness + head_plate,
            b.washer.thickness + nut_fitting + nut_plate,
        ]
    };
    let (d, face) = (b.thread.major(), b.thread.bearing_diameter());
    let face = face.min(b.washer.outer);
    let cones = stiffness::cone(&plies, d, face, from_head)
        + stiffness::cone(&turned, d, face, from_nut)
        + if solid { 0.0 } else { 1.0 / member_spring };
    Stiffness::of_si(1.0 / cones)
}

/// Mean thermal expansion of what is clamped, by length.
fn expansion(s: &Scenario, fitting: Length, grip: &Grip, length: Length) -> f64 {
    let between = support::of(s).between(s);
    let washers = s.bolting.washer.thickness * 2.0;
    let sum = between.expansion().value * s.clamped().si()
        + s.fitting.material.expansion().value * fitting.si()
        + grip.material.expansion().value * grip.thickness.si()
        + s.bolting.grade.expansion().value * washers.si();
    sum / length.si()
}
