//! A sleeve round the bolt between the inside faces, cut with a length error.

use super::build::Builder;
use super::model::{Limit, SupportModel};
use super::parts::{
    self, Cutting, Pieces, can_be_brought_in, inside_and_short, length_error, said, seam,
    through_the_end,
};
use super::pulled::{self, Pulled};
use super::{AddedPart, ClampSupport, PartMetal, RepairKind, lines, of, sleeves};
use crate::catalog::Material;
use crate::mechanics::sleeve::{self, SleeveCurve};
use crate::mechanics::stiffness;
use crate::quantity::{InUnits, Length};
use crate::report::working::Working;
use crate::report::{Part, Said, Sentence, say};
use crate::scenario::{Input, Scenario, SupportKind, YesNo};

/// It has to be wider than the hole, or it stands in the hole and not on the wall: by 1 mm all round. An
/// assumption.
const SEAT: f64 = 2e-3;

pub(super) struct LooseSleeve;

impl ClampSupport for LooseSleeve {
    fn model(&self, b: &Builder<'_>) -> SupportModel {
        let s = b.s;
        let tube = s.tube.face(b.strength);
        let effective = b.effective_washer(&tube);
        let sides = b.sides(&tube, effective);
        let length = s.tube.depth - s.tube.wall * 2.0;
        let yield_ = b.added_part_yield(s.sleeve.material, false);
        let modulus = s.sleeve.material.modulus();
        let area = sleeve::area(s.sleeve.outer, s.sleeve.inner);
        let core = SleeveCurve::new(
            stiffness::prism(modulus, area, length),
            sleeve::off_center_strength(
                yield_,
                modulus,
                [s.sleeve.outer, s.sleeve.inner],
                length,
                sleeves::counted_off_center(b),
            ),
            s.sleeve_short,
        );
        let mut model = b.between_faces(
            (sides, effective),
            core,
            (Part::Sleeve, say::LimitSleeve1pct),
        );
        model.limits.push(Limit {
            part: Part::Sleeve,
            load: model.force(core.yields_at_si().min(model.approach_end())),
            omega: Some(1.67),
            code: say::LimitSleeveSquashes,
        });
        // The end of the sleeve presses on the inside of the wall, which may be the softer metal, only where the hole
        // leaves any, and only as far as the pressure from nut or head has spread: into a wider bore the wall
        // bends and bears on its rim.
        let reaches = b.pressed_inside().max(s.sleeve.inner + s.tube.wall * 2.0);
        let seat = sleeve::covered_end(s.sleeve.outer, s.sleeve.inner, reaches, s.bolting.hole);
        let pressure = [
            b.surface(s.sleeve.material, false) * b.added_part,
            b.member_surface(),
        ];
        model.limits.push(sleeves::bites(pressure, seat, b));
        model.limits.extend(b.over_bore(true).map(|load| Limit {
            part: Part::Face,
            load,
            omega: Some(1.67),
            code: say::LimitOverBore,
        }));
        model
    }

    fn is_firm(&self) -> bool {
        false
    }

    fn passes_by(&self, s: &Scenario) -> Option<Sentence<0>> {
        parts::too_long(s, self.longest_over(s))
    }

    /// A pull on the washer below reaches the face above through the sleeve.
    fn pulled(&self, b: &Builder<'_>, least: &SupportModel) -> Pulled {
        let other = (b.s.sleeve.outer, b.s.sleeve_short);
        pulled::with_the_other_face(b, least, Some(other))
    }

    fn longest_over(&self, s: &Scenario) -> Option<Length> {
        Some(parts::longest_over(s, s.sleeve.outer))
    }

    fn working(&self, w: &mut Working, s: &Scenario, model: &SupportModel, governs: &Limit) {
        lines::faces(w, s, model);
        sleeves::working(w, s, governs);
    }

    fn between(&self, s: &Scenario) -> &'static Material {
        s.sleeve.material
    }

    fn metal(&self, s: &Scenario) -> Option<PartMetal> {
        Some(PartMetal {
            material: s.sleeve.material,
            welded: false,
        })
    }

    fn holds_water(&self) -> bool {
        true
    }

    fn notes(&self, s: &Scenario) -> Vec<Said> {
        length_error(s)
    }

    fn part(&self) -> Option<&'static dyn AddedPart> {
        Some(&Self)
    }
}

impl AddedPart for LooseSleeve {
    fn kind(&self, _s: &Scenario) -> RepairKind {
        RepairKind::LooseSleeve
    }

    /// Cut to another length, it is another piece.
    fn differs(&self, before: &Scenario, after: &Scenario) -> bool {
        before.sleeve != after.sleeve || before.sleeve_short != after.sleeve_short
    }

    fn pieces(&self, s: &Scenario, bolts: u32) -> Option<Pieces> {
        let length = sleeve::between_walls(s.tube.depth, s.tube.wall, s.sleeve_short);
        Some(sleeves::pieces(s, bolts, length.si()))
    }

    fn cutting(&self, s: &Scenario, _pieces: &Pieces) -> Cutting {
        let figures = inside_and_short(s);
        let [_, short] = figures;
        Cutting {
            // Any length between the shortness that was assumed and the exact space.
            plus: short,
            minus: 0.0,
            notes: [
                said(say::CutMeasureInside, figures),
                said(say::CutDeburr, []),
                through_the_end(s),
            ]
            .into_iter()
            .chain(seam(s))
            .collect(),
        }
    }

    fn candidates(&self, s: &Scenario, all: &mut Vec<Input>) {
        if !can_be_brought_in(s) {
            return;
        }
        let there = of(s);
        let hole = there.hole_in_wall(s).si();
        for stock in sleeves::stock(s) {
            if stock.0.outer_diameter().si() >= hole + SEAT {
                let mut input = sleeves::with(s, SupportKind::LooseSleeve, stock, YesNo::No);
                there.leaves_behind(s, &mut input);
                all.push(input);
            }
        }
    }
}
