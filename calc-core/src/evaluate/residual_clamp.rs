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
    /// The same at the softest, with cones that begin at the bearing faces.
    pub(crate) soft: Stiffness,
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
    /// What the bolt has stretched for good where heat pulls it past its yield load, or what it presses on has given way
    /// past its limit, N of clamp.
    pub(crate) set: f64,
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
        // Of the shortest bolt; what packing adds is left out here, as in the clamped length.
        let bolt_length = s.bolt_length() - s.fitting.packing * plies;
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
        let soft = soft_members(s, model.spring_rate(working)).min(members);

        let fresh_min = preload.min.si().min(model.limit());
        // Under head and nut, and beside the member at every ply of the fitting.
        let (shaped, _) = s.shaped_washers();
        let interfaces = 2.0 + plies + grip.interfaces + shaped;
        let embedding = losses::embedding(losses::flattening(interfaces), bolt, members).si();
        let relaxed = if s.tightening.coated() {
            RELAXATION.1
        } else {
            RELAXATION.0
        };
        let relaxation = fresh_min * relaxed;
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
        // What heat takes past its yield a bolt does not give back: it has stretched by so much; nor does what it presses
        // on, past the limit of that. The tightest bolt may have less left than the loosest.
        let gives = preload.yields.si().min(model.limit());
        let after_heat = |fresh: f64| {
            let set = (fresh + temperature - gives).max(0.0);
            fresh * (1.0 - relaxed) - embedding - temperature - set
        };
        let fresh_max = preload.max.si().min(model.limit()).max(fresh_min);
        let plain = fresh_min - relaxation - embedding - temperature;
        let left = after_heat(fresh_min).min(after_heat(fresh_max)).max(0.0);
        Self {
            length,
            bolt,
            members,
            soft,
            plies: beside,
            load_factor: stiffness::load_factor(bolt, members),
            bolt_share: stiffness::load_factor(bolt, soft),
            shank,
            fresh_min,
            relaxation,
            embedding,
            temperature,
            set: (plain.max(0.0) - left).max(0.0),
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
    let (count, shaped) = s.shaped_washers();
    // The nut has the only one of a flange.
    let at_nut = shaped * count.min(1.0);
    let at_head = shaped * (count - 1.0).max(0.0);
    let plies = [
        (b.washer.thickness, washer),
        (at_head, s.tube.modulus),
        (s.fitting.thickness, fitting),
        (head_plate, plate),
        (if solid { s.clamped() } else { none }, s.tube.modulus),
        (nut_plate, plate),
        (nut_fitting, fitting),
        (at_nut, s.tube.modulus),
        (b.washer.thickness, washer),
    ];
    let mut turned = plies;
    turned.reverse();
    let [from_head, from_nut] = if solid {
        [s.grip() * 0.5; 2]
    } else {
        [
            b.washer.thickness + at_head + s.fitting.thickness + head_plate,
            b.washer.thickness + at_nut + nut_fitting + nut_plate,
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
    // What stands between the walls leaves the walls themselves in the grip.
    let walls = if s.member.is_open() || support::of(s).passes_wall() || !support::of(s).is_hollow()
    {
        Length::default()
    } else {
        (s.tube.wall * 2.0).min(s.clamped())
    };
    let sum = between.expansion().value * (s.clamped() - walls).si()
        + s.tube.material.expansion().value * walls.si()
        + s.fitting.material.expansion().value * fitting.si()
        + grip.material.expansion().value * grip.thickness.si()
        + s.bolting.grade.expansion().value * washers.si();
    sum / length.si()
}

#[cfg(test)]
mod tests {
    use crate::evaluate::analysis::Analysis;
    use crate::mechanics::stiffness;
    use crate::quantity::{InUnits, Length, inch};
    use crate::scenario::{Input, Scenario};

    fn joint(change: impl FnOnce(&mut Input)) -> Scenario {
        let mut input = Input {
            tube_material: "a36".into(),
            ..Input::default()
        };
        change(&mut input);
        Scenario::new(&input).unwrap()
    }

    /// What the bolt is counted to feel is never less than what the faces are counted to be spared.
    #[test]
    fn the_bolt_feels_at_least_what_the_faces_are_spared() {
        for (member, support) in [
            ("rectangular-tube", "bare"),
            ("rectangular-tube", "spreader"),
            ("rectangular-tube", "loose-sleeve"),
            ("rectangular-tube", "solid"),
            ("solid-bar", "solid"),
            ("channel", "bare"),
            ("channel", "spreader"),
        ] {
            for mount in ["through-sides", "from-top"] {
                let s = joint(|i| {
                    i.member = member.into();
                    i.support = support.into();
                    i.mount = mount.into();
                });
                let r = Analysis::new(&s).residual;
                assert!(
                    r.load_factor <= r.bolt_share && r.bolt_share < 1.0,
                    "{member} {support} {mount}: {} {}",
                    r.load_factor,
                    r.bolt_share
                );
            }
        }
    }

    /// A stack of steel between equal faces: two cones from the bearing faces of head and nut, Shigley 9e Eq. 8-21.
    #[test]
    fn a_stack_of_steel_has_two_cones() {
        let s = joint(|i| i.support = "solid".into());
        let r = Analysis::new(&s).residual;
        let thread = s.bolting.thread;
        let whole =
            |e| stiffness::solid_stack(e, thread.major(), thread.bearing_diameter(), s.grip()).si();
        let [soft, stiff] = [s.tube.modulus, s.bolting.grade.modulus()].map(whole);
        assert!((soft.min(stiff)..=soft.max(stiff)).contains(&r.soft.si()));
        assert!(r.soft < r.members);
    }

    /// By hand: 76.2 + 2·12 mm, two washers, a nut of 7/16 in, two threads; packing on both sides comes on top.
    #[test]
    fn packing_makes_the_bolt_longer() {
        let of = |gap: f64| {
            let s = joint(|i| {
                i.tube_depth_mm = 76.2;
                i.fitting_thickness_mm = 12.0;
                i.fitting_gap_mm = Some(gap);
                i.gap_filling = "packing".into();
            });
            let b = &s.bolting;
            let rest = b.washer.thickness * 2.0 + b.thread.pitch() * 2.0 + inch(7.0 / 16.0);
            s.bolt_length() - rest
        };
        for (gap, long) in [(0.0, 100.2), (5.0, 110.2)] {
            assert!(
                (of(gap) - Length::of_si(long * 1e-3)).abs() < Length::of_si(2e-4),
                "{gap}"
            );
        }
    }
}
