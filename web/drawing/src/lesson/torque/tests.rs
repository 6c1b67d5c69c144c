//! The parts of the torque add up, and the wrench can be dragged.

use super::*;

use calc_core::quantity::UnitSystem;

fn is(text: &str, units: UnitSystem) -> Numbers {
    numbers(&State::parse(CONTROLS, text, units).unwrap()).unwrap()
}

fn at(text: &str) -> Numbers {
    is(text, UnitSystem::Metric)
}

/// By hand: 45 lb-ft on 1/2 in with K = 0.20 aims at 45·12/(0.2·0.5) = 5400 lbf; ± 25 %. Of it 1/13/(2π·0.1)
/// = 12.2 % stretches the bolt.
#[test]
fn the_same_by_hand_in_pounds_and_inches() {
    let n = is("torque=45", UnitSystem::Us);
    for (value, by_hand) in [
        (n.clamp, 5400.0 * 4.448_222),
        (n.low, 4050.0 * 4.448_222),
        (n.high, 6750.0 * 4.448_222),
        (n.report.share_stretch, 0.122_43),
    ] {
        assert!((value / by_hand - 1.0).abs() < 1e-3, "{value} {by_hand}");
    }
}

/// By hand: 60 N·m on M12 with K = 0.20 aims at 60/(0.2·0.012) = 25 kN; ± 25 % of it is 18.75 to
/// 31.25 kN. What stretches the bolt is P/(2π·K·d) = 1.75/(2π·2.4) = 11.6 %, whatever the face.
#[test]
fn aim_scatter_and_shares_are_those_worked_by_hand() {
    let n = at("torque=60");
    for (value, by_hand) in [
        (n.clamp, 25e3),
        (n.low, 18.75e3),
        (n.high, 31.25e3),
        (n.report.share_stretch * 1e5, 0.116_05 * 1e5),
    ] {
        assert!((value / by_hand - 1.0).abs() < 1e-3, "{value} {by_hand}");
    }
    let r = &n.report;
    let all = r.share_stretch + r.share_thread_friction + r.share_face_friction;
    assert!((all - 1.0).abs() < 1e-9);
}

#[test]
fn slippery_threads_clamp_more_at_the_same_torque() {
    let (dry, oiled, waxed) = (
        at("torque=60"),
        at("torque=60 threads=oiled"),
        at("torque=60 threads=waxed"),
    );
    assert!(dry.clamp < oiled.clamp && oiled.clamp < waxed.clamp);
    // "By a lot": 0.20/0.12.
    assert!((waxed.clamp / dry.clamp - 5.0 / 3.0).abs() < 1e-6);
    assert!((waxed.dry - dry.clamp).abs() < 1e-6);
    assert!(waxed.report.share_stretch > 1.5 * dry.report.share_stretch);
}

#[test]
fn more_torque_is_not_always_more_clamp() {
    let (a, b) = (
        at("torque=100 threads=waxed"),
        at("torque=120 threads=waxed"),
    );
    assert!(a.yields() && b.yields());
    assert!((a.clamp - b.clamp).abs() < 1e-9);
    assert!(!at("torque=120 threads=dry").yields());
}

/// What is drawn and said is what the calculator says of the lesson's joint.
#[test]
fn the_aim_is_the_calculators() {
    let n = at("torque=70 threads=oiled method=feel");
    let r = &n.report;
    assert!((n.clamp / r.clamp_nominal_n - 1.0).abs() < 1e-9);
    assert!((n.low / r.clamp_min_n - 1.0).abs() < 1e-9);
    assert!((n.k - r.nut_factor).abs() < 1e-12);
}
