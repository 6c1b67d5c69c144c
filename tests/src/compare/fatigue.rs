//! Fatigue against worked examples, printed thresholds and sums made elsewhere.

use calc_core::catalog::{Category, fatigue_category};
use calc_core::mechanics::fatigue::{
    Block, Curve, TWO_MILLION, bolt_amplitude, damage_per_mile, equivalent_share, gerber, goodman,
    vdi_amplitude,
};
use calc_core::mechanics::stiffness;
use calc_core::quantity::{InUnits, Stress, inch, ksi, mm, mm2, mpa, newton_per_mm, pound_force};

use crate::check::Check;
use crate::reference::{Row, rows};

fn in_ksi(stress: Stress) -> f64 {
    stress.si() / ksi(1.0).si()
}

fn curve(row: &Row) -> Curve {
    match fatigue_category(row.text("id")).unwrap().category {
        Category::Constant {
            constant,
            threshold_ksi,
        } => Curve::aisc(constant, ksi(threshold_ksi)),
        Category::Named { .. } => panic!("{}: not of this form", row.id),
    }
}

fn blocks(row: &Row) -> Vec<Block> {
    let list = row.input["blocks"].as_array().unwrap();
    list.iter()
        .map(|pair| {
            let number = |i: usize| pair.as_array().unwrap()[i].as_float().unwrap();
            Block {
                share: number(0),
                per_mile: number(1),
            }
        })
        .collect()
}

/// Fatigue of bolt and hole.
pub(super) fn fatigue() -> Check {
    let mut check = Check::new();
    for row in rows("fatigue.toml") {
        let n = |name: &str| row.number(name);
        match row.text("case") {
            "goodman" => {
                let share = stiffness::load_factor(newton_per_mm(n("kb")), newton_per_mm(n("km")));
                let area = mm2(n("area_in2") * inch(1.0).si().powi(2) * 1e6);
                let preload = ksi(n("clamp_kip") / n("area_in2"));
                let endured = goodman(ksi(n("endurance_ksi")), ksi(n("tensile_ksi")), preload);
                // Amplitude is in proportion to the pull: one kip of pull tells how many are endured.
                let by_one_kip = bolt_amplitude(pound_force(1e3), share, area);
                check.row(
                    &row,
                    &[
                        ("share", share),
                        ("amplitude_ksi", in_ksi(endured)),
                        ("pull_kip", endured.si() / by_one_kip.si() / n("factor")),
                    ],
                );
            }
            "gerber" => {
                let preload = ksi(n("preload_ksi"));
                let endured = gerber(ksi(n("endurance_ksi")), ksi(n("tensile_ksi")), preload);
                check.row(&row, &[("amplitude_ksi", in_ksi(endured))]);
            }
            "gerber-metric" => {
                let preload = mpa(n("preload_mpa"));
                let endured = gerber(mpa(n("endurance_mpa")), mpa(n("tensile_mpa")), preload);
                check.row(&row, &[("amplitude_mpa", endured.si() * 1e-6)]);
            }
            "named" => {
                let curve = Curve::named(mpa(n("at_two_million_mpa")), n("slope"));
                let range = curve.range_at(n("cycles"));
                let back = curve.cycles_at(range);
                assert!((back / n("cycles") - 1.0).abs() < 1e-9, "{}", row.id);
                check.row(&row, &[("range_mpa", range.si() * 1e-6)]);
            }
            "category" => {
                let range = curve(&row).range_at(TWO_MILLION);
                check.row(&row, &[("range_ksi", in_ksi(range))]);
            }
            "threshold" => {
                let threshold = curve(&row).threshold();
                check.row(&row, &[("threshold_ksi", in_ksi(threshold))]);
            }
            "rolled" => {
                let amplitude = vdi_amplitude(mm(n("d_mm")));
                check.row(&row, &[("amplitude_mpa", amplitude.si() * 1e-6)]);
            }
            "miner" => {
                let damage = damage_per_mile(&curve(&row), ksi(n("full_ksi")), &blocks(&row));
                check.row(&row, &[("damage_per_mile", damage)]);
            }
            "equivalent" => {
                let share = equivalent_share(&blocks(&row), n("miles"), n("slope"));
                check.row(&row, &[("share", share)]);
            }
            other => panic!("{}: no case {other}", row.id),
        }
    }
    check
}
