//! Formulas against worked examples, at the precision that their source prints.

use calc_core::catalog;
use calc_core::mechanics::{
    losses, opening, shear, side_wall, sleeve, slip, stiffness, thread, tightening,
};
use calc_core::quantity::{
    Force, InUnits, Stiffness, TemperatureInterval, inch, ksi, mm, mm2, mpa, newton, newton_per_mm,
    pound_force, pound_force_foot,
};

use crate::check::Check;
use crate::reference::{Row, rows};

fn kip(force: Force) -> f64 {
    force.si() / pound_force(1000.0).si()
}

/// Millions of pounds-force per inch.
fn mlbf_in(stiffness: Stiffness) -> f64 {
    stiffness.si() * inch(1.0).si() / pound_force(1e6).si()
}

fn proof_load(thread_id: &str, grade: &str) -> Force {
    let thread = catalog::thread(thread_id).unwrap();
    let strength = catalog::bolt_grade(grade)
        .unwrap()
        .strength(thread, inch(2.0))
        .unwrap();
    thread::load_at(strength.proof.unwrap(), thread.stress_area())
}

/// Clamp and torque for a share of the proof load.
pub(super) fn torque_for_a_share_of_proof() -> Check {
    let mut check = Check::new();
    for row in rows("worked_examples.toml") {
        let thread = catalog::thread(row.text("thread")).unwrap();
        let clamp = proof_load(row.text("thread"), row.text("grade")) * row.number("share");
        let torque = tightening::torque_for(row.number("k"), thread.major(), clamp);
        check.row(
            &row,
            &[
                ("clamp_lbf", clamp.si() / pound_force(1.0).si()),
                ("torque_lbf_ft", torque.si() / pound_force_foot(1.0).si()),
            ],
        );
    }
    check
}

fn frustum(row: &Row) -> Stiffness {
    stiffness::frustum(
        ksi(row.number("modulus_mpsi") * 1e3),
        inch(row.number("d_in")),
        inch(row.number("small_in")),
        inch(row.number("t_in")),
    )
}

/// Stiffness of single frusta.
pub(super) fn frusta() -> Check {
    let mut check = Check::new();
    for row in rows("frusta.toml") {
        check.row(&row, &[("stiffness_mlbf_in", mlbf_in(frustum(&row)))]);
    }
    check
}

/// Springs, opening, slip, sleeves, losses and side walls.
pub(super) fn springs_slip_sleeves_and_walls() -> Check {
    let mut check = Check::new();
    for row in rows("springs.toml") {
        check.row(&row, &[("value", value(&row))]);
    }
    check
}

fn value(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let springs = || (newton_per_mm(n("kb") * 1e3), newton_per_mm(n("km") * 1e3));
    match row.text("case") {
        "bolt" => {
            stiffness::bolt(
                mpa(n("modulus_gpa") * 1e3),
                mm2(n("shank_mm2")),
                mm2(n("thread_mm2")),
                mm(n("shank_mm")),
                mm(n("thread_mm")),
            )
            .si()
                * 1e-6
        }
        "series" => {
            let all: Vec<_> = rows("frusta.toml").iter().map(frustum).collect();
            mlbf_in(stiffness::in_series(&all))
        }
        "load-factor" => {
            stiffness::load_factor(newton_per_mm(n("bolt")), newton_per_mm(n("members")))
        }
        "separation" => {
            kip(opening::separation_load(
                pound_force(n("clamp_kip") * 1e3),
                n("share"),
            )) / n("pull_kip")
        }
        "bolt-pull" => {
            let bolt = opening::bolt_pull(
                pound_force(n("clamp_kip") * 1e3),
                n("share"),
                pound_force(n("pull_kip") * 1e3),
            );
            proof_load(row.text("thread"), row.text("grade")).si() / bolt.si()
        }
        "preload" => kip(proof_load(row.text("thread"), row.text("grade")) * 0.75),
        "slip" => {
            // The printed tables start from the rounded areas of their standard.
            let area = catalog::thread(row.text("thread"))
                .unwrap()
                .tabulated_stress_area()
                .unwrap();
            let clamp = thread::load_at(mpa(n("fub_mpa")), area) * n("preload_share");
            slip::resistance(1.0, n("mu"), clamp, newton(0.0), 0.0).si() * 1e-3
        }
        "sleeve" => kip(sleeve::strength(
            ksi(n("fy_ksi")),
            ksi(10_000.0),
            inch(n("outer_in")),
            inch(n("inner_in")),
            inch(n("length_in")),
        )),
        "k-long" => {
            let t = catalog::thread(row.text("thread")).unwrap();
            let parts = tightening::torque_parts(
                t.pitch(),
                t.pitch_diameter(),
                t.major() * 1.25,
                n("friction"),
                n("friction"),
            );
            parts.total() / t.major().si()
        }
        "thermal" => {
            let (kb, km) = springs();
            losses::thermal(
                n("alpha_members"),
                n("alpha_bolt"),
                TemperatureInterval::new::<uom::si::temperature_interval::kelvin>(1.0),
                mm(n("grip_mm")),
                kb,
                km,
            )
            .si()
        }
        "embedding" => {
            let (kb, km) = springs();
            losses::embedding(mm(n("flattening_um") * 1e-3), kb, km).si() * 1e-3
        }
        "shear" => {
            let one = mm2(1.0);
            let load = shear::bolt(ksi(n("tensile_ksi")), one, 1.0, n("threads") > 0.5);
            load.si() / one.si() / ksi(1.0).si()
        }
        "bearing" => kip(shear::wall_bearing(
            ksi(n("fy_ksi")),
            inch(n("d_in")),
            inch(n("wall_in")),
            2.0,
        )),
        "wall-yielding" => {
            kip(side_wall::yielding(
                ksi(n("fy_ksi")),
                inch(n("wall_in")),
                inch(n("corner_in")),
                inch(n("bearing_in")),
            )) / 1.50
        }
        "wall-buckling" => {
            kip(side_wall::buckling(
                ksi(n("fy_ksi")),
                ksi(29_000.0),
                inch(n("wall_in")),
                inch(n("depth_in")),
            )) / 1.67
        }
        "wall-crippling" => {
            kip(side_wall::crippling(
                ksi(n("fy_ksi")),
                ksi(29_000.0),
                inch(n("wall_in")),
                inch(n("depth_in")),
                inch(n("bearing_in")),
            )) / 2.00
        }
        other => panic!("{}: no case {other}", row.id),
    }
}
