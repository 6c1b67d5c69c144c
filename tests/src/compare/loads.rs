//! Loads of the joint and their share per bolt against values from elsewhere.

use calc_core::catalog::{Trailer, load_rule};
use calc_core::mechanics::bolt_group::{GroupLoad, Place, elastic, pattern};
use calc_core::mechanics::instantaneous_centre::{InPlane, multiple_of_load};
use calc_core::mechanics::prying::{Flange, t_stub};
use calc_core::quantity::{InUnits, Unit, kilogram, mm, mpa, newton, pound_force};
use calc_core::report::Report;
use calc_core::scenario::Field;
use calc_core::{Input, Scenario, evaluate};

use crate::check::Check;
use crate::reference::{Row, rows};

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap())
}

fn group(row: &Row) -> (Vec<Place>, GroupLoad) {
    let n = |name: &str| row.number(name);
    let whole = |name: &str| (1..20).find(|&i| f64::from(i) == n(name)).unwrap() as usize;
    let places = pattern(
        whole("along"),
        whole("across"),
        n("pitch_x_mm") * 1e-3,
        n("pitch_y_mm") * 1e-3,
    );
    let load = GroupLoad {
        along: n("fx_n"),
        across: n("fy_n"),
        twist: n("twist_nm"),
        ..GroupLoad::default()
    };
    (places, load)
}

fn in_plane(load: &GroupLoad) -> InPlane {
    InPlane {
        along: load.along,
        across: load.across,
        twist: load.twist,
    }
}

/// Elastic shares and instantaneous centre of groups.
pub(super) fn bolt_groups() -> Check {
    let mut check = Check::new();
    for row in rows("bolt_groups.toml") {
        let (places, load) = group(&row);
        let (shares, _) = elastic(&places, &load);
        let largest = shares.iter().map(|s| s.in_plane()).fold(0.0, f64::max);
        let multiple = multiple_of_load(&places, &in_plane(&load), 1.0).unwrap();
        check.row(
            &row,
            &[
                ("largest_n", largest),
                ("first_along_n", shares[0].along),
                ("multiple_per_newton", multiple),
            ],
        );
    }
    check
}

/// An eccentrically loaded bracket of a textbook.
pub(super) fn textbook_bracket() -> Check {
    let mut check = Check::new();
    for row in rows("bolt_group_textbook.toml") {
        let (places, load) = group(&row);
        let forces = || {
            elastic(&places, &load)
                .0
                .into_iter()
                .map(|s| s.in_plane() * 1e-3)
        };
        check.row(
            &row,
            &[
                ("largest_kn", forces().fold(0.0, f64::max)),
                ("least_kn", forces().fold(f64::INFINITY, f64::min)),
            ],
        );
    }
    check
}

/// Prying of a flange.
pub(super) fn prying() -> Check {
    let mut check = Check::new();
    for row in rows("prying.toml") {
        let n = |name: &str| row.number(name);
        let flange = Flange {
            thickness: mm(n("t_mm")),
            arm: mm(n("b_mm")),
            edge: mm(n("a_mm")),
            tributary: mm(n("p_mm")),
            bolt: mm(n("d_mm")),
            hole: mm(n("hole_mm")),
            tensile: mpa(n("fu_mpa")),
        };
        let pried = t_stub(&flange, newton(n("pull_n")), newton(n("bolt_n")));
        check.row(
            &row,
            &[
                ("capacity_n", pried.capacity.si()),
                ("bolt_pull_n", pried.bolt_pull.si()),
            ],
        );
    }
    check
}

/// Published loads of couplings.
pub(super) fn coupling_loads() -> Check {
    let mut check = Check::new();
    for row in rows("coupling_loads.toml") {
        let mass = row
            .maybe_number("mass_kg")
            .unwrap_or_else(|| Unit::Pound.to_si(row.number("mass_lb")));
        let trailer = Trailer {
            mass: kilogram(mass),
            towing: kilogram(row.maybe_number("towing_kg").unwrap_or(2000.0)),
            tongue_share: row.maybe_number("tongue_share").unwrap_or(0.1),
            bed_over_arm: row.maybe_number("bed_over_arm").unwrap_or(1.0),
            tow_on_air: row.maybe_number("air").unwrap_or(0.0) > 0.5,
        };
        let class = load_rule(row.text("rule"))
            .unwrap()
            .class(&trailer)
            .unwrap();
        let case = class
            .cases
            .iter()
            .find(|case| case.case.key() == row.text("case"))
            .unwrap();
        let size = match row.text("part") {
            "along" => case.along,
            "side" => case.side,
            "up" => case.up,
            "other" => case.other_reading.unwrap(),
            part => panic!("{}: no part {part}", row.id),
        };
        let unit = match row.text("unit") {
            "kN" => 1e3,
            "lbf" => pound_force(1.0).si(),
            unit => panic!("{}: no unit {unit}", row.id),
        };
        check.row(&row, &[("value", trailer.force(size) / unit)]);
    }
    check
}

/// Six components at a point, shared by a whole joint.
pub(super) fn free_loads() -> Check {
    let mut check = Check::new();
    for row in rows("free_loads.toml") {
        let mut input = Input {
            joint: "free".into(),
            mount: row.text("mount").into(),
            ..Input::default()
        };
        for name in row.input.keys().filter(|name| *name != "mount") {
            let field = Field::by_name(name).unwrap();
            input.set_number(field, Some(row.number(name)));
        }
        let loads = report(&input).loads;
        let (first, last) = (loads.bolts[0], loads.bolts[loads.bolts.len() - 1]);
        check.row(
            &row,
            &[
                ("first_along_n", first.force_along_n),
                ("first_across_n", first.force_across_n),
                ("first_pull_n", first.pull_n),
                ("last_along_n", last.force_along_n),
                ("last_across_n", last.force_across_n),
                ("last_pull_n", last.pull_n),
            ],
        );
    }
    check
}
