//! Joints that have slipped: formulas against worked examples and against other ways to the same value.

use calc_core::mechanics::bearing::{self, HolePlace};
use calc_core::mechanics::net_section::{Block, TubeSection, block_shear};
use calc_core::mechanics::{en_bolt, interaction, loosening, pin, shear};
use calc_core::quantity::{Force, InUnits, Length, inch, ksi, mm, mm2, mpa, newton, pound_force};

use crate::check::Check;
use crate::reference::{Row, rows};

/// Joints that have slipped.
pub(super) fn slipped_joints() -> Check {
    let mut check = Check::new();
    for row in rows("slipped.toml") {
        check.row(&row, &[("value", value(&row))]);
    }
    check
}

fn kip(force: Force) -> f64 {
    force.si() / pound_force(1000.0).si()
}

fn kn(force: Force) -> f64 {
    force.si() * 1e-3
}

fn value(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let maybe = |name: &str| row.maybe_number(name).map(mm);
    let lever = || pin::lever(mm(n("cheek_mm")), mm(n("gap_mm")), mm(n("wall_mm")));
    match row.text("case") {
        "en-shear" => kn(en_bolt::shear(
            n("alpha_v"),
            mpa(n("fub_mpa")),
            mm2(n("area_mm2")),
        )),
        "packed" => shear::packed(mm(n("d_mm")), mm(n("packing_mm"))),
        "en-tension" => kn(en_bolt::tension(mpa(n("fub_mpa")), mm2(n("area_mm2")))),
        "en-punching" => kn(en_bolt::punching(
            mpa(n("fu_mpa")),
            mm(n("mean_mm")),
            mm(n("thickness_mm")),
        )),
        "firm-ply" => kip(bearing::firm_ply(
            ksi(n("fu_ksi")),
            inch(n("d_in")),
            inch(n("thickness_in")),
        )),
        "sheet-ply" => kip(bearing::sheet_ply(
            ksi(n("fu_ksi")),
            inch(n("d_in")),
            inch(n("thickness_in")),
        )),
        "tear-out" => {
            let clear = bearing::clear_to_edge(inch(n("edge_in")), inch(n("hole_in")));
            kip(bearing::tear_out(
                ksi(n("fu_ksi")),
                clear,
                inch(n("thickness_in")),
            ))
        }
        "aluminium-ply" => kn(bearing::aluminium_ply(
            mpa(n("fu_mpa")),
            mm(n("d_mm")),
            mm(n("thickness_mm")),
            maybe("edge_mm"),
        )),
        "en-bearing" => {
            let place = HolePlace {
                end: maybe("end_mm"),
                pitch: maybe("pitch_mm"),
                edge: maybe("edge_mm"),
                gauge: maybe("gauge_mm"),
            };
            kn(bearing::en_ply(
                (mpa(n("fu_mpa")), mpa(n("fub_mpa"))),
                (mm(n("d_mm")), mm(n("hole_mm"))),
                mm(n("thickness_mm")),
                &place,
            ))
        }
        "tension-left" => {
            let left = interaction::tension_left(
                ksi(n("fnt_ksi")),
                ksi(n("fnv_ksi")),
                ksi(n("frv_ksi")),
                1.0 / n("phi"),
            );
            left.si() / ksi(1.0).si()
        }
        "pin-moment" => pin::moment(newton(n("force_n")), lever()).si(),
        "pin-near-wall" => kn(pin::near_wall(
            newton(n("force_n")),
            lever(),
            mm(n("span_mm")),
        )),
        "pin-first-yield" => pin::first_yield(mpa(n("fy_mpa")), mm(n("d_mm"))).si(),
        "pin-plastic" => pin::plastic(mpa(n("fy_mpa")), mm(n("d_mm"))).si(),
        "pin-bow" => {
            let beam = (lever(), mm(n("span_mm")));
            let bolt = (mpa(n("modulus_mpa")), mm(n("d_mm")));
            pin::bow(newton(n("force_n")), beam, bolt, mm(n("at_mm"))).si() * 1e3
        }
        "block" => {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "counts of bolts in the rows are small whole numbers"
            )]
            let count = |name: &str| n(name) as usize;
            let block = Block::between_rows(
                (count("along"), count("rows")),
                inch(n("end_in")),
                (inch(n("pitch_in")), inch(n("gauge_in"))),
                inch(n("hole_in")),
                inch(n("thickness_in")),
            );
            kip(block_shear(ksi(n("fy_ksi")), ksi(n("fu_ksi")), &block))
        }
        "net-section" => net_section_mpa(row),
        "loosening" => {
            let one =
                loosening::transverse_limit(n("mu"), pound_force(n("clamp_lbf")), newton(0.0), 0.3);
            n("bolts") * one.si() / pound_force(1.0).si()
        }
        other => panic!("{}: no case {other}", row.id),
    }
}

fn net_section_mpa(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let (height, width, wall) = (mm(n("height_mm")), mm(n("width_mm")), mm(n("wall_mm")));
    let hole = mm(n("hole_mm"));
    let middle = |outside: Length| 0.5 * (outside - wall);
    let mut section = TubeSection::gross(height, width, wall);
    for way in [1.0, -1.0] {
        section = if n("sides") > 0.5 {
            section.without([hole, wall], [mm(0.0), middle(width) * way])
        } else {
            section.without([wall, hole], [middle(height) * way, mm(0.0)])
        };
    }
    let stress = section.stress(newton(n("pull_n")), n("up_nm"), n("side_nm"));
    stress.unwrap().si() * 1e-6
}
