//! The load factor of the lesson against its two springs.

use super::*;
use calc_core::{Scenario, evaluate};

use calc_core::quantity::UnitSystem;

fn is(text: &str, units: UnitSystem) -> Numbers {
    numbers(&State::parse(CONTROLS, text, units).unwrap()).unwrap()
}

fn at(text: &str) -> Numbers {
    is(text, UnitSystem::Metric)
}

/// By hand, Shigley Table 8-7 and Eq. 8-22: grip 50 + 2·8 + 2·2.5 = 71 mm, bolt 71 + 10.8 + 3.5 = 85.3,
/// thread 30, shank 55.3, thread in the grip 15.7: k_b = 113.1·84.27·207/(113.1·15.7 + 84.27·55.3)
/// = 306.5 kN/mm. Shigley's own joints of this kind have C of 0.2 to 0.3 with thinner stacks.
#[test]
fn on_solid_the_bolt_feels_an_eighth() {
    let n = at("pull=8 clamp=12");
    assert!((n.sprung.bolt.si() * 1e-6 / 306.5 - 1.0).abs() < 2e-3);
    assert!((0.08..0.2).contains(&n.share), "{}", n.share);
    assert!((n.bolt - n.faces - n.pull).abs() < 1e-6);
    assert!(n.bolt - n.clamp < 0.15 * n.pull);
}

#[test]
fn on_a_bare_tube_it_feels_most_of_it() {
    let n = at("pull=8 clamp=12 on=tube");
    assert!(n.share > 0.75, "{}", n.share);
    assert!(n.bolt - n.clamp > 5.0 * (at("pull=8 clamp=12").bolt - n.clamp));
    let inch = is("pull=1600 clamp=2400 on=tube", UnitSystem::Us);
    assert!(inch.share > 0.75, "{}", inch.share);
    let bar = is("pull=1600 clamp=2400", UnitSystem::Us);
    assert!((0.08..0.2).contains(&bar.share), "{}", bar.share);
}

#[test]
fn parted_or_loose_it_feels_all() {
    let parted = at("pull=20 clamp=12");
    assert!(parted.pull > parted.parts && (parted.bolt - parted.pull).abs() < 1e-9);
    assert!(parted.gap > 0.0 && parted.faces == 0.0);
    let loose = at("pull=5 clamp=0");
    assert!((loose.bolt - 5e3).abs() < 1e-9 && loose.parts == 0.0);
}

#[test]
fn the_tube_stands_the_clamps_of_the_figure() {
    for (state, units) in [
        ("pull=0 clamp=16 on=tube", UnitSystem::Metric),
        ("pull=0 clamp=3200 on=tube", UnitSystem::Us),
    ] {
        let most = is(state, units);
        let report = evaluate(&Scenario::new(&most.joint).unwrap());
        let limit = report.support.least.limit_n;
        assert!(limit >= most.clamp, "{limit}");
        assert!((report.tightening.clamp_nominal_n / most.clamp - 1.0).abs() < 1e-9);
    }
}
