//! Stretch, squeeze and turn of the lesson against each other.

use super::*;

fn at(text: &str) -> Numbers {
    numbers(&State::parse(CONTROLS, text).unwrap()).unwrap()
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

#[test]
fn the_short_bolt_pulls_harder_and_loses_more() {
    for bolt in ["m10", "m12", "m12-hard", "m16"] {
        let short = at(&format!("turn=20 stack=40 bolt={bolt}"));
        let long = at(&format!("turn=20 stack=120 bolt={bolt}"));
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
    let (soft, hard) = (at("turn=20"), at("turn=20 bolt=m12-hard"));
    assert!((soft.now.clamp_n / hard.now.clamp_n - 1.0).abs() < 1e-3);
    assert!(hard.this.yields.clamp_n > 1.4 * soft.this.yields.clamp_n);
}

#[test]
fn no_state_runs_past_the_curve() {
    for choice in 0..BOLTS.len() {
        for stack in [SHORT, LONG] {
            let last = Sprung::new(&input(stack, choice))
                .unwrap()
                .curve
                .points
                .pop()
                .unwrap();
            assert!(last.turn_deg > 60.0, "{choice} {stack}: {}", last.turn_deg);
        }
    }
}
