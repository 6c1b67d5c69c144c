//! How the clamp of many joints is spread: a histogram.

use crate::lesson::{Axis, Chart, Curve, CurveKind};
use calc_core::chance::Chance;
use calc_core::quantity::{Dimension, UnitSystem};

/// Share of the joints by the clamp that they reach, with the clamp that is wanted; `None` where all are
/// alike.
#[must_use]
#[allow(clippy::cast_precision_loss, reason = "counts of joints")]
pub fn clamp_chart(chance: &Chance, wanted_n: f64, units: UnitSystem) -> Option<Chart> {
    let clamp = &chance.clamp;
    let width = (clamp.to - clamp.from) / clamp.bars.len() as f64;
    if clamp.bars.len() < 2 || width <= 0.0 {
        return None;
    }
    let share = |count: &usize| *count as f64 / chance.drawn.max(1) as f64;
    let most = clamp.bars.iter().map(share).fold(0.0, f64::max);
    let mut outline = vec![(clamp.from, 0.0)];
    let mut left = clamp.from;
    for bar in &clamp.bars {
        outline.extend([(left, share(bar)), (left + width, share(bar))]);
        left += width;
    }
    outline.push((clamp.to, 0.0));
    let top = 1.3 * most;
    Some(Chart {
        title: String::from("Clamp load that is reached, over many joints like this"),
        x: Axis {
            name: "clamp",
            dimension: Dimension::Force,
            from: 0.0,
            to: 1.08 * wanted_n.max(clamp.to),
        },
        y: Axis {
            name: "joints",
            dimension: Dimension::Share,
            from: 0.0,
            to: top,
        },
        band: None,
        curves: vec![
            Curve {
                points: vec![(wanted_n, 0.0), (wanted_n, top)],
                kind: CurveKind::Beside,
                name: String::from("target"),
                part: "",
            },
            Curve {
                points: outline,
                kind: CurveKind::This,
                name: String::new(),
                part: "",
            },
        ],
        levels: Vec::new(),
        points: Vec::new(),
        units,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::chance::Sampler;
    use calc_core::{Input, Scenario};

    fn drawn(input: &Input) -> Chance {
        let mut sampler = Sampler::new(&Scenario::new(input).unwrap(), 1, 4_000);
        while !sampler.step(1_000).finished() {}
        sampler.result()
    }

    #[test]
    fn the_outline_holds_every_joint_once() {
        let chance = drawn(&Input::default());
        let chart = clamp_chart(&chance, 30e3, UnitSystem::Us).unwrap();
        let outline = &chart.curves[1].points;
        let bars = outline[1..outline.len() - 1]
            .chunks(2)
            .map(|pair| pair[0].1);
        assert!((bars.sum::<f64>() - 1.0).abs() < 1e-12);
        assert!(outline.windows(2).all(|pair| pair[0].0 <= pair[1].0 + 1e-9));
        let svg = chart.scene("x").to_svg();
        assert!(svg.contains("target") && !svg.contains("NaN"));
    }

    #[test]
    fn joints_that_are_all_alike_have_no_histogram() {
        let chance = Chance {
            clamp: calc_core::chance::distribution(&[5.0; 9], Dimension::Force),
            ..drawn(&Input::default())
        };
        assert_eq!(clamp_chart(&chance, 30e3, UnitSystem::Us), None);
    }
}
