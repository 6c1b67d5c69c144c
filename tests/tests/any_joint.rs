//! Whatever joint comes in, what is drawn, worked back and counted stays finite and in order.

use crate::drawn::{inputs, scenario};
use calc_core::chance::{Distribution, Sampler};
use calc_core::evaluate;
use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::quantity::{mm, newton_metre};
use proptest::prelude::*;

fn in_order(d: &Distribution) -> bool {
    d.quantiles.iter().all(|q| q.is_finite() && *q >= 0.0)
        && d.quantiles.windows(2).all(|w| w[0] <= w[1])
        && d.bars.iter().sum::<usize>() > 0
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, max_global_rejects: 20_000, ..ProptestConfig::default() })]

    #[test]
    fn drawn_joints_are_finite(input in inputs()) {
        let s = scenario(&input)?;
        let mut sampler = Sampler::new(&s, 1, 60);
        sampler.step(60);
        let c = sampler.result();
        for d in [&c.clamp, &c.approach, &c.dent, &c.dent_left, &c.clamp_use, &c.slip_use] {
            prop_assert!(in_order(d), "{d:?}");
        }
        for share in [c.reaches, c.bolt_yields, c.dents, c.slips] {
            prop_assert!((0.0..=1.0).contains(&share));
        }
        for list in [&c.matters_for_clamp, &c.matters_for_dent, &c.matters_for_slip] {
            let sum: f64 = list.iter().map(|m| m.share).sum();
            prop_assert!(sum == 0.0 || (sum - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn readings_are_finite_and_in_order(
        input in inputs(),
        narrower in 0.0..20.0_f64,
        torque in 0.1..3000.0_f64,
        hole in (5.0..60.0_f64, 0.0..20.0_f64),
    ) {
        let s = scenario(&input)?;
        let reading = dent(&s, mm(narrower));
        prop_assert!(!reading.said.is_empty());
        if let Some(band) = reading.clamp {
            prop_assert!(0.0 < band.low.si && band.low.si <= band.likely.si);
            prop_assert!(band.likely.si <= band.high.si && band.high.si.is_finite());
        }
        for said in &reading.said {
            prop_assert!(said.amounts.iter().all(|a| a.si.is_finite()), "{said:?}");
        }
        let stop = torque_stop(&s, newton_metre(torque));
        let [low, high] = stop.implied_nut_factor;
        prop_assert!(low <= high && high.is_finite() && low > 0.0);
        prop_assert!(stop.clamp_range[0].si <= stop.clamp_range[1].si);
        let o = oval(&s, mm(hole.0 + hole.1), mm(hole.0));
        prop_assert!(o.slipped_by.si >= 0.0 && o.play.si >= 0.0 && !o.said.is_empty());
    }

    #[test]
    fn fatigue_is_finite_and_a_slipping_joint_has_no_life(input in inputs()) {
        let s = scenario(&input)?;
        use calc_core::report::{CheckId, Verdict};
        let report = evaluate(&s);
        let fatigue = &report.fatigue;
        prop_assert!(fatigue.hole_range.si.is_finite() && fatigue.hole_range.si >= 0.0);
        for view in &fatigue.bolt {
            prop_assert!(view.used_at_full.is_finite() && view.used_on_the_road.is_finite());
        }
        // A chain bracket counts on no friction, so it has no slip check; nor has it a life.
        let slip = report.check(CheckId::Slip);
        if !slip.is_some_and(|c| matches!(c.verdict, Verdict::Holds | Verdict::Close)) {
            prop_assert!(fatigue.life.is_none());
        }
    }
}
