//! A member's section from a checked scenario.

use super::{MemberState, Profile, Shape};
use crate::section::{Bolt, Washer};
use calc_core::Scenario;
use calc_core::quantity::{InUnits, Length, UnitSystem};
use calc_core::scenario::SupportKind;

fn millimetres(length: Length) -> f64 {
    length.si() * 1e3
}

impl MemberState {
    /// The joint; `None` for what the section of the rectangular tube shows.
    #[must_use]
    pub fn from_core(id: &str, s: &Scenario, units: UnitSystem) -> Option<Self> {
        let shape = Shape::of(s.member.kind, s.bolting.mount)?;
        let (thread, tube) = (s.bolting.thread, &s.tube);
        let width = millimetres(tube.width);
        let rows = millimetres(s.bolting.spacing_across) * (s.bolting.rows as f64 - 1.0);
        let gauge = s.member.gauge.map_or((width - rows) / 2.0, millimetres);
        let bare_round = shape == Shape::Round;
        let core = match s.support {
            SupportKind::ThroughSleeve if bare_round => Some((
                millimetres(s.sleeve.outer),
                millimetres(s.sleeve.inner),
                s.sleeve.material.family().into(),
                true,
            )),
            SupportKind::LooseSleeve if bare_round => Some((
                millimetres(s.sleeve.outer),
                millimetres(s.sleeve.inner),
                s.sleeve.material.family().into(),
                false,
            )),
            SupportKind::SolidInsert if bare_round => Some((
                width - 2.0 * millimetres(tube.wall),
                millimetres(s.bolting.hole),
                s.insert_material.family().into(),
                false,
            )),
            SupportKind::Solid if bare_round => Some((
                width,
                millimetres(s.bolting.hole),
                tube.material.family().into(),
                false,
            )),
            _ => None,
        };
        let fitting = millimetres(s.fitting.thickness);
        Some(Self {
            id: id.into(),
            name: String::from("section through the bolt"),
            profile: Profile {
                shape,
                width_mm: width,
                depth_mm: millimetres(tube.depth),
                wall_mm: millimetres(tube.wall),
                upright_mm: millimetres(s.member.outstanding),
                gauge_mm: gauge,
                slope: s.member.slope,
            },
            material: tube.material.family().into(),
            bolt: Bolt {
                diameter_mm: millimetres(thread.major()),
                flats_mm: millimetres(thread.width_across_flats()),
                head_mm: millimetres(thread.head_height()),
                nut_mm: millimetres(thread.nut_height()),
                hole_mm: millimetres(s.bolting.hole),
                thread_mm: millimetres(thread.thread_length(s.clamped())),
            },
            washer: Washer {
                outer_mm: millimetres(s.bolting.washer.outer),
                thickness_mm: millimetres(s.bolting.washer.thickness),
            },
            shaped_washer: s.member.shaped_washer,
            fitting: (fitting > 0.0).then(|| (fitting, s.fitting.material.family().into())),
            both_sides: s.bolting.two_cheeks,
            offset_mm: s
                .bolting
                .one_sided()
                .then_some(s.loads.offset)
                .flatten()
                .map(millimetres),
            plate: (s.support.has_plates() && s.bolting.single_ply).then(|| {
                (
                    millimetres(s.spreader.thickness),
                    s.spreader.material.family().into(),
                )
            }),
            core,
            units,
            example: true,
        })
    }
}
