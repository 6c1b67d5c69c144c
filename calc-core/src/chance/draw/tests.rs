//! Tests of the drawing.

use super::*;
use crate::chance::surface::{exact, support_of};
use crate::evaluate;
use crate::report::{CheckId, Message};
use crate::scenario::Input;
use crate::support;

fn joint(change: impl FnOnce(&mut Input)) -> Scenario {
    let mut input = Input::default();
    change(&mut input);
    Scenario::new(&input).unwrap()
}

fn run(s: &Scenario, seed: u64, n: usize) -> Chance {
    let mut sampler = Sampler::new(s, seed, n);
    assert!(sampler.step(n).finished());
    sampler.result()
}

/// Joints of every support, both mounts, both metals, both wall bases.
fn variety() -> Vec<Scenario> {
    let set = |support: &'static str| {
        move |i: &mut Input| {
            i.support = support.into();
            i.bolt = "unc-3.8".into();
        }
    };
    vec![
        joint(|_| {}),
        joint(|i| {
            i.mount = "from-top".into();
            i.fitting_spreads = "yes".into();
        }),
        joint(|i| {
            i.tube_material = "a500-b".into();
            i.wall_basis = "nominal".into();
            i.preload_share = 0.3;
        }),
        joint(set("spreader")),
        joint(set("loose-sleeve")),
        joint(|i| {
            set("loose-sleeve")(i);
            i.sleeve_short_mm = 1.0;
        }),
        joint(|i| {
            set("loose-sleeve")(i);
            i.sleeve_short_mm = -0.1;
            i.preload_share = 0.9;
        }),
        joint(set("through-sleeve")),
        joint(|i| {
            set("through-sleeve")(i);
            i.sleeve_material = "6061-t6".into();
            i.sleeve_welded = "yes".into();
        }),
        joint(set("solid-insert")),
        joint(set("solid")),
    ]
}

#[test]
fn the_same_seed_gives_the_same_joints_however_they_are_sliced() {
    let s = joint(|_| {});
    let whole = run(&s, 7, 3_000);
    let mut sampler = Sampler::new(&s, 7, 3_000);
    while !sampler.step(701).finished() {}
    assert_eq!(whole, sampler.result());
    assert_ne!(whole.clamp, run(&s, 8, 3_000).clamp);
    assert_eq!(whole.drawn, 3_000);
}

/// The fast path against the exact support curves, on random joints.
#[test]
fn the_net_is_within_one_percent_of_the_exact_curves() {
    let scenarios = variety();
    let (mut compared, mut largest) = (0, 0.0_f64);
    for s in &scenarios {
        let mut sampler = Sampler::new(s, 3, 0);
        for _ in 0..40 {
            let (drawn, _) = sampler.draw();
            let wanted = sampler.first.fixed.wanted(&drawn);
            let asked = wanted.min(sampler.first.fixed.yields(&drawn));
            let curve = support_of(
                s,
                drawn[3],
                drawn[4],
                drawn[7] / sampler.first.distributions[7].middle.si,
                Some(drawn[8]),
            );
            // At the last thousandth of the range, taken or not is a matter of rounding.
            let end = curve.force(curve.approach_end());
            if (asked / end - 1.0).abs() < 2e-3 {
                continue;
            }
            let slow = sampler
                .first
                .fixed
                .outcome(&drawn, wanted, &exact(&curve, asked));
            let fast = sampler.first.one(&drawn);
            assert_eq!(fast.clicks, slow.clicks, "{:?} {drawn:?}", s.support);
            for (what, a, b, floor) in [
                ("clamp", fast.clamp, slow.clamp, 0.0),
                ("approach", fast.approach, slow.approach, 0.0),
                ("dent", fast.dent, slow.dent, 1e-6),
                ("left", fast.left, slow.left, 0.1e-3),
                ("clamp use", fast.clamp_use, slow.clamp_use, 0.0),
                ("slip use", fast.slip_use, slow.slip_use, 0.0),
            ] {
                let off = (a - b).abs() / b.abs().max(floor).max(1e-12);
                largest = largest.max(off);
                assert!(off < 0.01, "{:?} {what}: {a} for {b}, {drawn:?}", s.support);
            }
            compared += 1;
        }
    }
    assert!(compared >= 200, "{compared}");
    assert!(largest > 0.0);
}

/// The fast path against `evaluate` of a joint with the drawn inputs typed in.
#[test]
fn a_drawn_joint_is_the_joint_that_evaluate_knows() {
    let mut compared = 0;
    for s in variety() {
        let mut sampler = Sampler::new(&s, 11, 0);
        for _ in 0..80 {
            let (mut drawn, _) = sampler.draw();
            // Nobody can type in another strength of bolt or sleeve.
            drawn[6] = s.bolting.yield_strength().si();
            drawn[7] = sampler.first.distributions[7].middle.si;
            let fast = sampler.first.one(&drawn);
            let mut input = s.input.clone();
            // A solid bar has no wall to type in.
            if support::of(&s).is_hollow() {
                input.tube_wall_mm = drawn[3] * 1e3;
            }
            input.wall_basis = "measured".into();
            input.tube_corner_radius_mm = Some(s.tube.corner_radius.si() * 1e3);
            input.tube_yield_mpa = Some(drawn[4] * 1e-6);
            input.sleeve_short_mm = drawn[8] * 1e3;
            // Drawn about the likely strength, it may pass the least tensile strength.
            let ultimate = s.tube.ultimate_least.si().max(drawn[4]);
            input.tube_ultimate_mpa = Some(ultimate * 1e-6);
            input.torque_nm = Some(sampler.first.fixed.torque);
            input.nut_factor = Some(drawn[0] / drawn[1]);
            let typed = Scenario::new(&input).unwrap();
            let report = evaluate(&typed);
            let wanted = report.tightening.clamp_nominal_n;
            assert!((wanted / sampler.first.fixed.wanted(&drawn) - 1.0).abs() < 1e-9);
            let limit = report.support.likely.limit_n;
            let off = fast.clamp_use * limit / wanted - 1.0;
            assert!(
                off.abs() < 0.01 || fast.clamp_use >= 10.0,
                "{:?} {off} {drawn:?}",
                s.support
            );
            if let Some(approach) = report.support.approach_at_wanted_clamp_mm
                && wanted < report.tightening.yield_load_n
            {
                let off = fast.approach * 1e3 / approach - 1.0;
                assert!(off.abs() < 0.01, "{:?} {off}", s.support);
                compared += 1;
            }
        }
    }
    assert!(compared >= 200, "{compared}");
}

/// Without any spread the slip utilisation is that of the check, which carries a factor besides.
#[test]
fn slip_agrees_with_the_check_where_both_use_the_same_strength() {
    let mut s = joint(|i| {
        i.support = "solid".into();
        i.preload_share = 0.5;
    });
    s.tightening.scatter = 0.0;
    let sampler = Sampler::new(&s, 1, 0);
    let drawn = sampler.first.distributions.map(|of| of.middle.si);
    let report = evaluate(&s);
    let check = report.check(CheckId::Slip).unwrap();
    let ours = sampler.first.one(&drawn).slip_use;
    let theirs = check.utilisation.unwrap() / check.factor;
    assert!((ours / theirs - 1.0).abs() < 1e-6, "{ours} {theirs}");
}

/// On something solid the clamp is T/(K·d): quantiles of a lognormal.
#[test]
fn quantiles_of_the_linear_case_are_those_of_the_lognormal() {
    let s = joint(|i| {
        i.support = "solid".into();
        i.nut_factor = Some(0.2);
        i.scatter_share = Some(0.25);
        i.preload_share = 0.4;
    });
    let chance = run(&s, 5, 100_000);
    let median = evaluate(&s).tightening.clamp_nominal_n;
    let z = [-1.644_854, -0.674_490, 0.0, 0.674_490, 1.644_854];
    for (got, z) in chance.clamp.quantiles.iter().zip(z) {
        let want = median * (0.125_f64 * z).exp();
        // Standard error of an outer quantile at 100,000 draws: 0.09 %.
        assert!((got / want - 1.0).abs() < 0.004, "{z}: {got} {want}");
    }
    assert!(chance.reaches > 0.99 && chance.dents == 0.0);
    assert_eq!(chance.matters_for_clamp[0].variable, Variable::Tightening);
    assert!(chance.matters_for_clamp[0].share > 0.99);
}

/// F = T/(K·d) with K between published ends: the triangle's quantiles, without other scatter.
#[test]
fn quantiles_with_a_triangular_nut_factor() {
    let mut s = joint(|i| {
        i.support = "solid".into();
        i.preload_share = 0.4;
    });
    s.tightening.scatter = 0.0;
    let chance = run(&s, 5, 100_000);
    let (low, mode, high) = (0.17, 0.20, 0.35);
    // Inverse of the triangle's distribution.
    let triangle = |p: f64| {
        let rise: f64 = (mode - low) / (high - low);
        if p < rise {
            low + (p * (high - low) * (mode - low)).sqrt()
        } else {
            high - ((1.0 - p) * (high - low) * (high - mode)).sqrt()
        }
    };
    let solid = evaluate(&s).tightening.clamp_nominal_n * 0.20;
    for (got, p) in chance
        .clamp
        .quantiles
        .iter()
        .zip([0.05, 0.25, 0.5, 0.75, 0.95])
    {
        let want = solid / triangle(1.0 - p);
        assert!((got / want - 1.0).abs() < 0.005, "{p}: {got} {want}");
    }
}

#[test]
fn better_inputs_make_better_shares() {
    let n = 4_000;
    let at = |wall: f64, share: f64| {
        joint(|i| {
            i.tube_wall_mm = wall;
            i.preload_share = share;
        })
    };
    let chance = run(&joint(|_| {}), 2, n);
    let (thin, thick) = (run(&at(3.0, 0.2), 2, n), run(&at(3.4, 0.2), 2, n));
    assert!(thick.dent.quantiles[2] < thin.dent.quantiles[2]);
    assert!(
        thick.dents <= thin.dents && thick.clamp_use.quantiles[2] < thin.clamp_use.quantiles[2]
    );
    let thicker = run(&at(5.0, 0.75), 2, n);
    assert!(thicker.reaches > chance.reaches);
    let smoother = run(&joint(|i| i.faying_friction = Some(0.05)), 2, n);
    assert!(smoother.slips >= chance.slips);
    assert!(smoother.slip_use.quantiles[2] > chance.slip_use.quantiles[2]);
    let heavier = run(&joint(|i| i.trailer_mass_kg = 1500.0), 2, n);
    assert!(heavier.slips >= chance.slips);
    assert!(heavier.slip_use.quantiles[1] > chance.slip_use.quantiles[1]);
    let looser = run(&joint(|i| i.preload_share = 0.1), 2, n);
    assert!(looser.dents <= chance.dents && looser.reaches >= chance.reaches);
    let sleeved = run(
        &joint(|i| {
            i.support = "loose-sleeve".into();
            i.sleeve_short_mm = 0.0;
            i.sleeve_wall_mm = Some(4.0);
            i.sleeve_outer_mm = Some(25.0);
        }),
        2,
        n,
    );
    assert!(sleeved.reaches > 0.9, "{}", sleeved.reaches);
    assert!(sleeved.slips < chance.slips);
}

#[test]
fn outside_the_checked_range_it_says_so() {
    let thick = run(&joint(|i| i.tube_wall_mm = 9.0), 1, 100);
    assert!(!thick.out_of_range.is_empty());
    assert!(
        thick
            .said
            .iter()
            .any(|s| s.code == Message::ChanceOutsideChecked)
    );
    let none = Sampler::new(&joint(|_| {}), 1, 100).result();
    assert_eq!((none.drawn, none.slips), (0, 0.0));
}

/// Where a sleeve carries the clamp, its strength matters; where it does not, it has no say.
#[test]
fn strengths_of_bolt_and_sleeve_are_ranked() {
    let share = |chance: &Chance, variable| {
        let list = &chance.matters_for_clamp;
        list.iter().find(|m| m.variable == variable).unwrap().share
    };
    let bare = run(&joint(|_| {}), 4, 4_000);
    assert_eq!(share(&bare, Variable::AddedPart), 0.0);
    // A thin sleeve, tightened far beyond what it takes.
    let thin = |share: f64| {
        joint(|i| {
            i.support = "through-sleeve".into();
            i.sleeve_welded = "no".into();
            i.sleeve_outer_mm = Some(16.0);
            i.sleeve_wall_mm = Some(1.5);
            i.preload_share = share;
            i.bolt_grade = "sae-8".into();
        })
    };
    let squashed = run(&thin(0.95), 4, 4_000);
    assert!(share(&squashed, Variable::AddedPart) > 0.2, "{squashed:?}");
    assert!(squashed.reaches < 0.5);
    // On something solid a torque that is far too high leaves the bolt's strength alone to decide.
    let stretched = run(
        &joint(|i| {
            i.support = "solid".into();
            i.tube_material = "a500-b".into();
            i.torque_nm = Some(400.0);
            i.nut_factor = Some(0.15);
            i.bolt_grade = "sae-2".into();
        }),
        4,
        4_000,
    );
    assert!(share(&stretched, Variable::Bolt) > 0.95, "{stretched:?}");
    assert!(stretched.bolt_yields > 0.99);
}

/// Share of bolts that yield before the click: both lognormal, so a normal of the logarithms.
#[test]
fn the_share_of_bolts_that_yield_is_that_of_two_lognormals() {
    let s = joint(|i| {
        i.support = "solid".into();
        i.tube_material = "a36".into();
        i.bolt_grade = "sae-2".into();
        i.nut_factor = Some(0.2);
        i.scatter_share = Some(0.3);
        i.preload_share = 1.0;
    });
    let report = evaluate(&s);
    let likely = report.tightening.yield_load_n * 1.10;
    let sigma = 0.15_f64.hypot(1.10_f64.ln() / 2.0);
    let z = (report.tightening.clamp_nominal_n / likely).ln() / sigma;
    // Integral of the bell from −8 to z by Simpson's rule.
    let bell = |x: f64| (-0.5 * x * x).exp() / (2.0 * std::f64::consts::PI).sqrt();
    let n = 2000;
    let h = (z + 8.0) / f64::from(n);
    let sum: f64 = (0..=n)
        .map(|i| {
            let weight = if i == 0 || i == n {
                1.0
            } else if i % 2 == 1 {
                4.0
            } else {
                2.0
            };
            weight * bell(-8.0 + h * f64::from(i))
        })
        .sum();
    let want = sum * h / 3.0;
    let got = run(&s, 9, 100_000).bolt_yields;
    assert!(want > 0.05 && want < 0.95, "{want}");
    assert!((got - want).abs() < 0.006, "{got} {want}");
}

/// A hundred joints are spoken of only where enough were drawn, all is known and within what was checked.
#[test]
fn the_owner_is_told_only_what_can_be_stood_for() {
    let told = |s: &Scenario, n: usize| {
        let chance = run(s, 3, n);
        let owner = chance.said.iter().find(|said| {
            let key = said.code.key();
            key.starts_with("chance-owner")
        });
        (owner.cloned(), chance.slips)
    };
    // Clamped hard on something solid, under a load that some joints hold and some do not.
    let of = |mass: f64| {
        joint(|i| {
            i.support = "solid".into();
            i.tube_material = "a36".into();
            i.trailer_mass_kg = mass;
        })
    };
    let (some, slips) = told(&of(1500.0), 4_000);
    assert!(slips > 0.02 && slips < 0.98, "{slips}");
    let some = some.unwrap();
    assert_eq!(some.code, Message::ChanceOwner);
    assert_eq!(some.amounts[0].si, (slips * 100.0).round());
    let (few, slips) = told(&of(50.0), 4_000);
    assert!(slips < 0.005);
    assert_eq!(few.unwrap().code, Message::ChanceOwnerHardly);
    let (all, _) = told(&joint(|_| {}), 4_000);
    assert_eq!(all.unwrap().code, Message::ChanceOwnerNearlyAll);
    assert_eq!(told(&of(1500.0), 500).0, None);
    let outside = joint(|i| i.tube_wall_mm = 9.0);
    let not_known = joint(|i| i.tube_material = "unknown-aluminum".into());
    for s in [outside, not_known] {
        let (owner, _) = told(&s, 1_000);
        assert_eq!(owner.unwrap().code, Message::ChanceOwnerNot);
    }
    // A chain counts on no friction: nothing is said of slipping.
    assert_eq!(
        told(&joint(|i| i.joint = "chain-bracket".into()), 1_000).0,
        None
    );
}

/// Softened metal spreads as far as was published, and decides where a welded sleeve is squashed.
#[test]
fn softened_metal_is_drawn_from_what_was_published() {
    let welded = joint(|i| {
        i.support = "through-sleeve".into();
        i.sleeve = "nps-1.2-40".into();
        i.sleeve_material = "6061-t6".into();
        i.sleeve_welded = "yes".into();
        i.bolt_grade = "sae-8".into();
    });
    let sampler = Sampler::new(&welded, 1, 0);
    let (low, high) = sampler.first.distributions[7].limits();
    let ksi = 6.894_757e6;
    assert!((low / ksi - 11.0).abs() < 0.01 && (high / ksi - 22.0).abs() < 0.01);
    let chance = run(&welded, 4, 4_000);
    let first = chance.matters_for_clamp[0];
    assert_eq!(first.variable, Variable::AddedPart, "{first:?}");
    // Beside a weld of another part the tube's own strength spreads as far.
    let beside = joint(|i| i.weld_near = "yes".into());
    let (low, high) = Sampler::new(&beside, 1, 0).first.distributions[4].limits();
    assert!((low / ksi - 11.0).abs() < 0.01 && (high / ksi - 22.0).abs() < 0.01);
}

/// A piece that comes out shorter lets the faces come in: the fit is drawn, and ranked for the dent.
#[test]
fn the_fit_of_a_sleeve_makes_a_difference_to_the_dent() {
    let sleeved = |short: f64| {
        joint(|i| {
            i.support = "loose-sleeve".into();
            i.sleeve = "rt-1.000x0.250".into();
            i.bolt = "unc-3.8".into();
            i.sleeve_outer_mm = Some(25.4);
            i.sleeve_wall_mm = Some(7.0);
            i.sleeve_short_mm = short;
        })
    };
    let chance = run(&sleeved(0.3), 4, 4_000);
    let share = |chance: &Chance| {
        let mut list = chance.matters_for_dent.iter();
        list.find(|m| m.variable == Variable::Fit).unwrap().share
    };
    assert!(share(&chance) > 0.2, "{:?}", chance.matters_for_dent);
    assert_eq!(share(&run(&sleeved(0.0), 4, 2_000)), 0.0);
}
