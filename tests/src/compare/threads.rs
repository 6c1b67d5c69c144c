//! Threads: diameters, areas, preload aims and minimum pretensions as other sources print them.

use calc_core::catalog::{self, PretensionGroup, Thread, aisc_pretension, bolt_grade};
use calc_core::quantity::{InUnits, inch, ksi, mm, mm2, mpa, newton, pound_force};

use crate::check::Check;
use crate::reference::{Row, rows};

fn thread(row: &Row) -> &'static Thread {
    catalog::thread(row.text("thread")).unwrap()
}

/// Areas of inch threads.
pub(super) fn inch_areas() -> Check {
    let mut check = Check::new();
    let in2 = (inch(1.0) * inch(1.0)).si();
    for row in rows("thread_areas_inch.toml") {
        let thread = thread(&row);
        let minor = thread.minor_diameter().si();
        check.row(
            &row,
            &[
                ("stress_area_in2", thread.stress_area().si() / in2),
                (
                    "minor_area_in2",
                    core::f64::consts::FRAC_PI_4 * minor * minor / in2,
                ),
            ],
        );
        let printed = row.expect["stress_area_in2"];
        let tabulated = thread.tabulated_stress_area().unwrap().si() / in2;
        assert!((tabulated - printed).abs() < 1e-9, "{}", row.id);
    }
    check
}

/// Diameters and areas of metric threads.
pub(super) fn metric_diameters_and_areas() -> Check {
    let mut check = Check::new();
    for row in rows("thread_areas_metric.toml") {
        let thread = thread(&row);
        check.row(
            &row,
            &[
                (
                    "pitch_diameter_mm",
                    thread.pitch_diameter().si() / mm(1.0).si(),
                ),
                (
                    "minor_diameter_mm",
                    thread.minor_diameter().si() / mm(1.0).si(),
                ),
                ("stress_area_mm2", thread.stress_area().si() / mm2(1.0).si()),
            ],
        );
        let tabulated = thread.tabulated_stress_area().unwrap().si() / mm2(1.0).si();
        assert!(
            (tabulated - row.expect["stress_area_mm2"]).abs() < 1e-9,
            "{}",
            row.id
        );
    }
    check
}

/// Clamp aimed at: 75 % of proof.
pub(super) fn preload_aims() -> Check {
    let mut check = Check::new();
    for row in rows("preload_aims.toml") {
        let thread = thread(&row);
        let grade = bolt_grade(row.text("grade")).unwrap();
        let proof = grade.strength(thread, inch(2.0)).unwrap().proof.unwrap();
        let aim = 0.75 * proof.si() * thread.stress_area().si();
        check.row(&row, &[("aim_lbf", aim / pound_force(1.0).si())]);
    }
    check
}

/// Minimum pretensions of the steel code.
pub(super) fn minimum_pretensions() -> Check {
    let mut check = Check::new();
    for row in rows("pretension_aisc.toml") {
        let thread = thread(&row);
        let (name, unit) = if row.expect.contains_key("force_kip") {
            ("force_kip", pound_force(1e3))
        } else {
            ("force_kn", newton(1e3))
        };
        let tensile = row
            .maybe_number("tensile_ksi")
            .map_or_else(|| mpa(row.number("tensile_mpa")), ksi);
        let ours = 0.70 * tensile.si() * thread.stress_area().si() / unit.si();
        check.row(&row, &[(name, ours)]);

        let group = match row.text("group") {
            "group-120" => PretensionGroup::Group120,
            "group-150" => PretensionGroup::Group150,
            other => panic!("{}: {other}", row.id),
        };
        let listed = aisc_pretension(thread, group).unwrap().force.si() / unit.si();
        assert!((listed - row.expect[name]).abs() < 1e-9, "{}", row.id);
    }
    check
}

/// Nut factors that published aircraft torques imply.
pub(super) fn nut_factors_that_aircraft_torques_imply() -> Check {
    let mut check = Check::new();
    let cadmium = catalog::nut_factor("cadmium").unwrap();
    for row in rows("nut_factor_aircraft.toml") {
        let thread = thread(&row);
        let torque = row.number("torque_lbf_in") * pound_force(1.0).si() * inch(1.0).si();
        let force = ksi(row.number("stress_ksi")).si() * thread.stress_area().si();
        let k = torque / (thread.major().si() * force);
        check.row(&row, &[("k", k)]);
        assert!(
            k > cadmium.low() - 0.001 && k < cadmium.high(),
            "{}: {k}",
            row.id
        );
    }
    check
}
