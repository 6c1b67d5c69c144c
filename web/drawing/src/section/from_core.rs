//! A section's state from a checked scenario and its torque–turn curve.

use super::state::{Bolt, Layout, Ply, SectionState, Support, Tube, Washer};
use crate::scene::CutMetal;
use calc_core::Scenario;
use calc_core::catalog::Family;
use calc_core::evaluate::TorqueTurn;
use calc_core::quantity::{InUnits, Length, UnitSystem, mm};
use calc_core::scenario::SupportKind;

fn millimetres(length: Length) -> f64 {
    length.si() * 1e3
}

impl From<Family> for CutMetal {
    fn from(family: Family) -> Self {
        match family {
            Family::Aluminium => Self::Aluminium,
            Family::Steel | Family::Stainless => Self::Steel,
        }
    }
}

impl SectionState {
    /// The joint as its curve says it stands after a turn; labelled, with its title strip, as an invented
    /// example. Force scale and exaggeration suit the whole curve, so they hold while the wrench turns.
    #[must_use]
    pub fn from_core(
        id: &str,
        scenario: &Scenario,
        curve: &TorqueTurn,
        turn_deg: f64,
        units: UnitSystem,
        layout: Layout,
    ) -> Self {
        let now = curve.at_turn(turn_deg);
        let most = |of: fn(&calc_core::evaluate::TurnPoint) -> f64| {
            curve
                .points
                .iter()
                .map(of)
                .filter(|v| v.is_finite())
                .fold(0.0, f64::max)
        };
        let s = scenario;
        let (thread, tube) = (s.bolting.thread, &s.tube);
        let washer = &s.bolting.washer;
        let both_sides = s.bolting.two_cheeks;
        let flat = millimetres(tube.width) - 2.0 * millimetres(tube.corner_radius);
        let fitting = Ply {
            thickness_mm: millimetres(s.fitting.thickness),
            width_mm: if s.fitting.spreads {
                millimetres(tube.width)
            } else {
                flat
            },
            material: s.fitting.material.family().into(),
            both_sides,
        };
        let length = fitting.thickness_mm * if both_sides { 2.0 } else { 1.0 }
            + millimetres(tube.depth)
            + 2.0 * millimetres(washer.thickness)
            + millimetres(thread.nut_height());
        Self {
            id: id.into(),
            name: String::from("section through the bolt"),
            tube: Tube {
                width_mm: millimetres(tube.width),
                depth_mm: millimetres(tube.depth),
                wall_mm: millimetres(tube.wall),
                corner_radius_mm: millimetres(tube.corner_radius),
                material: tube.material.family().into(),
            },
            bolt: Bolt {
                diameter_mm: millimetres(thread.major()),
                flats_mm: millimetres(thread.width_across_flats()),
                head_mm: millimetres(thread.head_height()),
                nut_mm: millimetres(thread.nut_height()),
                hole_mm: millimetres(s.bolting.hole),
                thread_mm: millimetres(thread.thread_length(mm(length))),
            },
            washer: Washer {
                outer_mm: millimetres(washer.outer),
                thickness_mm: millimetres(washer.thickness),
            },
            fitting: (fitting.thickness_mm > 0.0).then_some(fitting),
            support: support(s),
            turn_deg,
            clamp_n: now.map_or(0.0, |p| p.clamp_n),
            clamp_largest_n: most(|p| p.clamp_n),
            clamp_wanted_n: None,
            dent_each_mm: now.map_or(0.0, |p| p.dent_mm),
            dent_left_mm: now.map(|p| p.dent_left_mm),
            dent_largest_mm: most(|p| p.dent_mm),
            units,
            labels: true,
            example: true,
            layout,
            strip: true,
        }
    }
}

fn support(s: &Scenario) -> Support {
    let outer_mm = millimetres(s.sleeve.outer);
    let wall_mm = (outer_mm - millimetres(s.sleeve.inner)) / 2.0;
    let short_mm = millimetres(s.sleeve_short);
    let material = s.sleeve.material.family().into();
    match s.support {
        SupportKind::Bare => Support::Bare,
        SupportKind::Spreader => Support::Spreader(Ply {
            thickness_mm: millimetres(s.spreader.thickness),
            width_mm: millimetres(s.spreader.width),
            material: s.spreader.material.family().into(),
            both_sides: true,
        }),
        SupportKind::LooseSleeve => Support::LooseSleeve {
            outer_mm,
            wall_mm,
            short_mm,
            material,
        },
        SupportKind::ThroughSleeve => Support::ThroughSleeve {
            outer_mm,
            wall_mm,
            material,
        },
        SupportKind::SolidInsert => Support::SolidInsert {
            short_mm,
            material: s.insert_material.family().into(),
        },
        SupportKind::Solid => Support::Solid,
    }
}
