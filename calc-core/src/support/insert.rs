//! A block or plug that fills the tube round the bolts.

use super::build::{Builder, under_washer};
use super::model::{Limit, SERVICE_SHARE, SupportModel};
use super::parts::{
    self, Cutting, FITTED_SHORT_MM, Pieces, Shape, can_be_brought_in, inside_and_short,
    length_error, plate_materials, row_length, said, seam, through_the_end,
};
use super::pulled::{self, Pulled};
use super::{AddedPart, ClampSupport, PartMetal, RepairKind, lines, with_support};
use crate::catalog::Material;
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::stiffness;
use crate::quantity::{InUnits, Length, newton};
use crate::report::working::Working;
use crate::report::{Part, Said, Sentence, say};
use crate::scenario::{Input, Scenario, SupportKind};

/// Length past the outermost bolts, both ends together, in widths of the tube: so that it fills the tube under
/// every washer. An assumption.
const OVERHANG: f64 = 1.5;

/// Play across it, so that it slides in from the end, m. An assumption.
const SLIDES: f64 = 0.5e-3;

pub(super) struct SolidInsert;

impl ClampSupport for SolidInsert {
    fn model(&self, b: &Builder<'_>) -> SupportModel {
        let s = b.s;
        let tube = s.tube.face(b.strength);
        let under = b.pressed(Some(b.block_surface()));
        let depth = s.tube.depth - s.tube.wall * 2.0;
        let core = SleeveCurve::new(
            stiffness::solid_stack(
                s.insert_material.modulus(),
                s.bolting.thread.major(),
                s.bolting.washer.outer,
                depth,
            ),
            newton(under.load),
            s.sleeve_short,
        );
        let pressed = under_washer(&under, (Part::Insert, say::LimitInsertPressed));
        if s.member.is_round() {
            return b.only(core, vec![pressed]);
        }
        let effective = b.effective_washer(&tube);
        let sides = b.sides(&tube, effective);
        let mut model = b.between_faces(
            (sides, effective),
            core,
            (Part::Insert, say::LimitInsert1pct),
        );
        model.limits.push(pressed);
        model
    }

    fn leaves_gap(&self) -> bool {
        false
    }

    fn passes_by(&self, s: &Scenario) -> Option<Sentence<0>> {
        parts::too_long(s, self.longest_over(s))
    }

    /// A pull on the washer below reaches the face above through the block, which is taken to be no wider
    /// there than the washer.
    fn pulled(&self, b: &Builder<'_>, least: &SupportModel) -> Pulled {
        let other = (b.s.bolting.washer.outer, b.s.sleeve_short);
        pulled::with_the_other_face(b, least, Some(other))
    }

    fn longest_over(&self, s: &Scenario) -> Option<Length> {
        Some(parts::longest_over(s, s.bolting.washer.outer))
    }

    fn working(&self, w: &mut Working, s: &Scenario, model: &SupportModel, governs: &Limit) {
        lines::faces(w, s, model);
        lines::pressed(w, s, governs, true);
    }

    /// A plug that is too short lets the wall come in first.
    fn leans_on_round_wall(&self, s: &Scenario) -> bool {
        s.sleeve_short.si() > SERVICE_SHARE * s.tube.width.si()
    }

    fn between(&self, s: &Scenario) -> &'static Material {
        s.insert_material
    }

    fn metal(&self, s: &Scenario) -> Option<PartMetal> {
        Some(PartMetal {
            material: s.insert_material,
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

impl AddedPart for SolidInsert {
    fn kind(&self, _s: &Scenario) -> RepairKind {
        RepairKind::SolidInsert
    }

    /// Cut to another length, it is another piece.
    fn differs(&self, before: &Scenario, after: &Scenario) -> bool {
        before.sleeve_short != after.sleeve_short || before.insert_material != after.insert_material
    }

    /// One for all of them; a bolt more goes through the block that is there.
    fn one_a_bolt(&self) -> bool {
        false
    }

    fn pieces(&self, s: &Scenario, bolts: u32) -> Option<Pieces> {
        let wall = s.tube.wall.si();
        Some(Pieces {
            count: 1,
            shape: Shape::Block {
                length: row_length(s) + OVERHANG * s.tube.width.si(),
                width: s.tube.width.si() - 2.0 * wall - SLIDES,
                depth: s.tube.depth.si() - 2.0 * wall - s.sleeve_short.si(),
                bolts,
                hole: s.bolting.hole.si(),
                round: s.member.is_round(),
            },
            material: s.insert_material,
        })
    }

    fn cutting(&self, s: &Scenario, _pieces: &Pieces) -> Cutting {
        let figures = inside_and_short(s);
        let [inside, _] = figures;
        let mut notes = vec![said(say::CutBlockFit, figures)];
        if s.member.is_round() {
            notes.push(said(say::CutBlockRound, [inside]));
        }
        let corner = (s.tube.corner_radius - s.tube.wall).si().max(0.0);
        if corner > 0.0 {
            notes.push(said(say::CutBlockCorners, [corner]));
        }
        notes.push(through_the_end(s));
        notes.extend(seam(s));
        Cutting::outline(notes)
    }

    fn candidates(&self, s: &Scenario, all: &mut Vec<Input>) {
        if !can_be_brought_in(s) {
            return;
        }
        for material in plate_materials(s) {
            let mut input = with_support(s, SupportKind::SolidInsert);
            input.insert_material = String::from(material);
            input.sleeve_short_mm = FITTED_SHORT_MM;
            all.push(input);
        }
    }
}
