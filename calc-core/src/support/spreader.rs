//! Plates on the faces that carry the load to the side walls; under the nut of a flange, one plate.

use super::build::{Builder, own_length};
use super::model::{Limit, SupportModel};
use super::parts::{
    Cutting, Pieces, Shape, count, plate_materials, plates_mm, round_half, row_length, said,
};
use super::{AddedPart, ClampSupport, Grip, PartMetal, RepairKind, with_support};
use crate::cite::{Cite, Flag, Source};
use crate::layout::root_fillet;
use crate::mechanics::plate::Plate;
use crate::quantity::{InUnits, newton};
use crate::report::working::{Line, Working};
use crate::report::{say, substituted};
use crate::scenario::{Input, Scenario, SupportKind};

/// Length of plates in widths of the tube.
const LENGTHS: [f64; 4] = [1.0, 1.5, 2.0, 3.0];

pub(super) struct SpreaderPlate;

/// On both faces of a tube, under the nut of a flange.
const fn faces(s: &Scenario) -> u32 {
    if s.member.is_open() { 1 } else { 2 }
}

impl ClampSupport for SpreaderPlate {
    fn model(&self, b: &Builder<'_>) -> SupportModel {
        let p = &b.s.spreader;
        let tube = b.s.tube.face(b.strength);
        let effective = b.effective_washer(&tube);
        let plate = Plate {
            thickness: p.thickness,
            length: p.length,
            width: p.width,
            modulus: p.material.modulus(),
            yield_strength: b.added_part_yield(p.material, false),
        };
        let side = b.plate_on(&tube, &plate, b.face(&tube, effective));
        b.on_faces([side, side], effective)
    }

    fn working(&self, w: &mut Working, s: &Scenario, _model: &SupportModel, governs: &Limit) {
        let p = &s.spreader;
        w.line(
            &Line {
                symbol: "R",
                what: "least of plate, corner and side walls, or the 1 % limit",
                formula: "see the method page",
            },
            substituted![
                ("t_p", p.thickness),
                ("l_p", own_length(s, p.length)),
                ("f_yp", p.material.least().yield_strength()),
                ("t", s.tube.design_wall),
            ],
            newton(governs.load),
            Cite::new(
                Source::Aisc360_22,
                "J10 with K1; plate by beam theory",
                Flag::Read,
            ),
        );
    }

    fn plate(&self) -> Option<&'static str> {
        Some("spreader")
    }

    fn grip(&self, s: &Scenario) -> Grip {
        let plates = f64::from(faces(s));
        let thickness = s.plates();
        Grip {
            thickness,
            material: s.spreader.material,
            interfaces: if thickness.si() > 0.0 { plates } else { 0.0 },
        }
    }

    fn metal(&self, s: &Scenario) -> Option<PartMetal> {
        Some(PartMetal {
            material: s.spreader.material,
            welded: false,
        })
    }

    fn bends_with_face(&self) -> bool {
        true
    }

    fn part(&self) -> Option<&'static dyn AddedPart> {
        Some(&Self)
    }
}

impl AddedPart for SpreaderPlate {
    fn kind(&self, _s: &Scenario) -> RepairKind {
        RepairKind::Spreader
    }

    fn differs(&self, before: &Scenario, after: &Scenario) -> bool {
        before.spreader != after.spreader
    }

    fn lengthens_grip(&self) -> bool {
        true
    }

    fn pieces(&self, s: &Scenario, bolts: u32) -> Option<Pieces> {
        let (b, p) = (&s.bolting, &s.spreader);
        // Plates that would overlap become one; those of two rows are one anyway.
        let joined = b.along > 1 && p.length > b.spacing_along;
        let on_a_face = if joined {
            bolts.min(1)
        } else {
            bolts.div_ceil(count(b.rows).max(1))
        };
        Some(Pieces {
            count: faces(s) * on_a_face,
            shape: Shape::Plate {
                length: p.length.si() + if joined { row_length(s) } else { 0.0 },
                width: p.width.si(),
                thick: p.thickness.si(),
                bolts: bolts / on_a_face.max(1),
                hole: b.hole.si(),
            },
            material: p.material,
        })
    }

    fn cutting(&self, s: &Scenario, pieces: &Pieces) -> Cutting {
        let mut notes = Vec::new();
        if pieces.shape.holes() > 1 && s.bolting.along > 1 {
            notes.push(said(say::CutPlateJoined, [s.bolting.spacing_along.si()]));
        }
        notes.push(said(say::CutEdges, []));
        if s.member.is_open() {
            notes.push(said(say::CutPlateFillet, [root_fillet(s).si()]));
        }
        let end = s.tube.end_distance.si();
        // Of one plate under several bolts as of one for each half of its own length reaches past the last bolt.
        if s.spreader.length.si() / 2.0 > end {
            notes.push(said(say::CutPlateOverhang, [end]));
        }
        Cutting::outline(notes)
    }

    fn candidates(&self, s: &Scenario, all: &mut Vec<Input>) {
        for material in plate_materials(s) {
            for thick in plates_mm(s) {
                for times in LENGTHS {
                    let mut input = with_support(s, SupportKind::Spreader);
                    input.spreader_material = String::from(material);
                    input.spreader_thickness_mm = thick;
                    input.spreader_length_mm = round_half(times * s.tube.width.si() * 1e3);
                    input.spreader_width_mm = None;
                    all.push(input);
                }
            }
        }
    }
}
