//! Stretch, squeeze and turn of the lesson against each other.

use super::*;

use calc_core::quantity::UnitSystem;

const UNITS: [UnitSystem; 2] = [UnitSystem::Us, UnitSystem::Metric];

fn is(text: &str, units: UnitSystem) -> Numbers {
    numbers(&State::parse(CONTROLS, text, units).unwrap()).unwrap()
}

fn at(text: &str) -> Numbers {
    is(text, UnitSystem::Metric)
}

/// Worked by hand with Shigley's Table 8-7 and Eq. 8-21: M12 in 40 mm of steel with 2.5 mm washers.
/// Grip 45, bolt 45 + 10.8 + 3.5 = 59.3, thread 2·12 + 6 = 30, shank 29.3, thread in the grip 15.7 mm:
/// k_b = 113.1·84.27·207/(113.1·15.7 + 84.27·29.3) = 464.8 kN/mm.
#[test]
fn the_spring_is_as_stiff_as_by_hand() {
    let n = at("turn=10 stack=40");
    assert!(
        (n.this.bolt.si() * 1e-6 / 464.8 - 1.0).abs() < 3e-3,
        "{:?}",
        n.this.bolt
    );
    // Clamp is stiffness times stretch.
    assert!((n.this.bolt.si() * n.now.stretch_mm * 1e-3 / n.now.clamp_n - 1.0).abs() < 1e-6);
    // The nut's way is all of stretch and squeeze: 1.75 mm · 10/360.
    assert!((n.now.stretch_mm + n.squeeze - 1.75 * 10.0 / 360.0).abs() < 1e-9);
}

/// By hand as above, in inches: 1/2-13 in 1-3/4 in of steel with washers of the SAE series, 0.095 in thick. Grip 1.94,
/// nut 7/16, two threads: 1.94 + 0.438 + 0.154 = 2.532 long, thread 1.25, shank 1.282, thread in the grip 0.658 in:
/// k_b = 0.1963·0.1419·30e6/(0.1963·0.658 + 0.1419·1.282) = 2.69e6 lbf/in.
#[test]
fn the_inch_spring_is_as_stiff_as_by_hand() {
    let n = is("turn=10 stack=1.75", UnitSystem::Us);
    let per_inch = n.this.bolt.si() * 0.0254 / 4.448_222;
    assert!((per_inch / 2.69e6 - 1.0).abs() < 1e-2, "{per_inch}");
    assert!((n.now.stretch_mm + n.squeeze - 25.4 / 13.0 * 10.0 / 360.0).abs() < 1e-6);
}

#[test]
fn the_short_bolt_pulls_harder_and_loses_more() {
    for (units, bolt) in UNITS
        .into_iter()
        .flat_map(|u| BOLTS.iter().map(move |b| (u, b.key)))
    {
        let Range { min, max, .. } = *STACKS.of(units);
        let short = is(&format!("turn=20 stack={min} bolt={bolt}"), units);
        let long = is(&format!("turn=20 stack={max} bolt={bolt}"), units);
        assert!(short.now.clamp_n > 2.0 * long.now.clamp_n, "{bolt}");
        assert!(short.lost > 2.0 * long.lost, "{bolt}");
        // Longer is not weaker: both yield at the same pull.
        let (a, b) = (short.this.yields.clamp_n, long.this.yields.clamp_n);
        assert!((a / b - 1.0).abs() < 1e-3, "{bolt}");
        // What stands beside is what the other stack gives.
        assert!((short.other_now.clamp_n - long.now.clamp_n).abs() < 1e-6);
    }
}

#[test]
fn stronger_steel_is_no_stiffer() {
    let (soft, hard) = (at("turn=20"), at("turn=20 bolt=hard"));
    assert!((soft.now.clamp_n / hard.now.clamp_n - 1.0).abs() < 1e-3);
    assert!(hard.this.yields.clamp_n > 1.4 * soft.this.yields.clamp_n);
}

#[test]
fn no_state_runs_past_the_curve() {
    for (units, bolt) in UNITS
        .into_iter()
        .flat_map(|u| BOLTS.iter().map(move |b| (u, b.key)))
    {
        let Range { min, max, .. } = *STACKS.of(units);
        for stack in [min, max] {
            let mut n = is(&format!("stack={stack} bolt={bolt}"), units);
            let last = n.this.curve.points.pop().unwrap();
            assert!(last.turn_deg > 60.0, "{bolt} {stack}: {}", last.turn_deg);
        }
    }
}
