//! A thicker, larger washer on the bare face.

use super::parts::{Cutting, Pieces, Shape, plates_mm, round_half, said};
use super::{AddedPart, RepairKind, with_support};
use crate::catalog::{self, WasherSeries};
use crate::quantity::InUnits;
use crate::report::say;
use crate::scenario::{Field, Input, Scenario, SupportKind};

/// Outside diameter of thick washers as a share of the width of the tube.
const SHARES: [f64; 4] = [0.45, 0.6, 0.75, 0.9];

/// Its curve is that of the bare face under it.
pub(super) struct ThickWasher;

impl AddedPart for ThickWasher {
    fn kind(&self, _s: &Scenario) -> RepairKind {
        RepairKind::ThickWasher
    }

    /// Washers that are not those of the bolt's table.
    fn differs(&self, before: &Scenario, after: &Scenario) -> bool {
        let washer = |s: &Scenario| (s.bolting.washer.outer, s.bolting.washer.thickness);
        after.is_given(Field::WasherThickness) && washer(before) != washer(after)
    }

    fn lengthens_grip(&self) -> bool {
        true
    }

    fn pieces(&self, s: &Scenario, bolts: u32) -> Option<Pieces> {
        Some(Pieces {
            count: 2 * bolts,
            shape: Shape::Washer {
                outer: s.bolting.washer.outer.si(),
                thick: s.bolting.washer.thickness.si(),
                hole: s.bolting.hole.si(),
            },
            material: catalog::material("a36")?,
        })
    }

    fn cutting(&self, _s: &Scenario, _pieces: &Pieces) -> Cutting {
        Cutting::outline(vec![said(say::CutWasher, [])])
    }

    fn candidates(&self, s: &Scenario, all: &mut Vec<Input>) {
        // Never smaller than the one that is there, nor than a hardened one, which is as wide as the narrow series.
        let b = &s.bolting;
        let usual = catalog::washer(b.thread, WasherSeries::Narrow).map(catalog::Washer::outer);
        let least = usual.map_or(b.washer.outer, |outer| outer.max(b.washer.outer));
        let least = (least.si() * 2e3 - 1e-6).ceil() / 2.0;
        let mut sizes = SHARES.map(|share| round_half(share * s.tube.width.si() * 1e3).max(least));
        sizes.sort_by(f64::total_cmp);
        for thick in plates_mm(s) {
            for (place, outer) in sizes.into_iter().enumerate() {
                if place > 0 && sizes.get(place - 1) == Some(&outer) {
                    continue;
                }
                let mut input = with_support(s, SupportKind::Bare);
                input.washer_outer_mm = Some(outer);
                input.washer_thickness_mm = Some(thick);
                all.push(input);
            }
        }
    }
}
