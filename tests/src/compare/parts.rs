//! Washers, holes, pipe and tube as other sources print them.

use calc_core::catalog::{self, HoleFit, WasherSeries};
use calc_core::quantity::{InUnits, inch, mm, pound_force};

use crate::check::Check;
use crate::reference::rows;

/// Washers.
pub(super) fn washers() -> Check {
    let mut check = Check::new();
    for row in rows("washers.toml") {
        let thread = catalog::thread(row.text("thread")).unwrap();
        let series = WasherSeries::from_id(row.text("series")).unwrap();
        let washer = catalog::washer(thread, series).unwrap();
        let inches = |length: calc_core::quantity::Length| length.si() / inch(1.0).si();
        let mut ours = vec![
            ("inner_in", inches(washer.inner())),
            ("outer_in", inches(washer.outer())),
            ("thickness_in", inches(washer.thickness_nominal())),
        ];
        if row.expect.contains_key("thickness_min_in") {
            ours.push(("thickness_min_in", inches(washer.thickness_min())));
        }
        check.row(&row, &ours);
    }
    check
}

/// Clearance holes.
pub(super) fn holes() -> Check {
    let mut check = Check::new();
    for row in rows("holes.toml") {
        let thread = catalog::thread(row.text("thread")).unwrap();
        let fit = HoleFit::from_id(row.text("fit")).unwrap();
        let hole = catalog::clearance_hole(thread, fit).unwrap();
        check.row(&row, &[("diameter_mm", hole.diameter.si() / mm(1.0).si())]);
    }
    check
}

/// Pipe sizes.
pub(super) fn pipe() -> Check {
    let mut check = Check::new();
    let rows = rows("pipe_fluids.toml");
    for row in &rows {
        let sleeve = catalog::sleeve(row.text("sleeve")).unwrap();
        check.row(
            row,
            &[
                ("outer_mm", sleeve.outer_diameter().si() / mm(1.0).si()),
                ("wall_mm", sleeve.wall().si() / mm(1.0).si()),
            ],
        );
    }
    for sleeve in catalog::sleeves() {
        let checked = rows.iter().any(|row| row.text("sleeve") == sleeve.id());
        assert_eq!(checked, sleeve.id().starts_with("nps-"), "{}", sleeve.id());
    }
    check
}

/// Areas and squash loads of sleeves.
pub(super) fn sleeve_areas() -> Check {
    let mut check = Check::new();
    for row in rows("sleeve_areas.toml") {
        let sleeve = catalog::sleeve(row.text("sleeve")).unwrap();
        let material = catalog::material(row.text("material")).unwrap();
        assert!(sleeve.materials().contains(&material.id()));
        let squash = sleeve.area().si() * material.least().yield_strength().si();
        check.row(
            &row,
            &[
                (
                    "area_in2",
                    sleeve.area().si() / (inch(1.0) * inch(1.0)).si(),
                ),
                ("squash_kip", squash / pound_force(1e3).si()),
            ],
        );
    }
    check
}
