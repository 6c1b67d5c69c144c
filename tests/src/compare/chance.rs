//! Drawn joints against closed distributions.

use calc_core::chance::Sampler;
use calc_core::{Input, Scenario};

use crate::check::Check;
use crate::reference::rows;

/// Quantiles and shares of drawn joints against closed distributions.
pub(super) fn quantiles() -> Check {
    let mut check = Check::new();
    for row in rows("chance.toml") {
        let mut scenario = Scenario::new(&Input {
            support: "solid".into(),
            // Steel under a wide washer outlasts the bolt.
            tube_material: "a36".into(),
            washer: "wide".into(),
            torque_nm: Some(row.number("torque_nm")),
            nut_factor: row.maybe_number("nut_factor"),
            ..Input::default()
        })
        .unwrap();
        // The formula's own spread, smaller than any that was published.
        scenario.tightening.scatter = row.number("scatter");
        let mut sampler = Sampler::new(&scenario, 20, 100_000);
        while !sampler.step(10_000).finished() {}
        let chance = sampler.result();
        if row.text("case") == "yields" {
            check.row(&row, &[("bolts_that_yield", chance.bolt_yields)]);
            continue;
        }
        let got = match row.text("case") {
            "clamp" => chance.clamp.quantiles,
            "slip" => {
                let median = chance.slip_use.quantiles[2];
                chance.slip_use.quantiles.map(|q| q / median)
            }
            other => panic!("{}: no case {other}", row.id),
        };
        let names = ["q05", "q25", "q50", "q75", "q95"];
        let ours: Vec<_> = names.into_iter().zip(got).collect();
        check.row(&row, &ours);
    }
    check
}
