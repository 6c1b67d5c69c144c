//! The pictures that stand in the page before any script runs.

use crate::measure::Measure;
use crate::opening::{Bench, OPENING_TURN, Stand};
use crate::plot::torque_turn_scene;
use crate::section::{Layout, section};
use calc_core::quantity::UnitSystem;

/// A static figure by name: `"opening"`, `"opening-plot"`, `"measure-1"` … `"measure-5"`. `None` for
/// names that are not known.
///
/// The id prefix is the name, so a picture may stand once on a page. The openings show the default
/// scenario in the units that are the default on the page.
#[must_use]
pub fn static_figure(name: &str) -> Option<String> {
    let scene = match name {
        "opening" | "opening-plot" => {
            let bench = Bench::new()?;
            let units = UnitSystem::default();
            if name == "opening" {
                let layout = Layout::Narrow;
                section(&bench.section(name, Stand::Bare, OPENING_TURN, units, layout))
            } else {
                let plot = bench.plot(Stand::Bare, OPENING_TURN, units);
                torque_turn_scene(name, &plot, 340.0, 300.0)
            }
        }
        _ => {
            let number: usize = name.strip_prefix("measure-")?.parse().ok()?;
            Measure::ALL.get(number.checked_sub(1)?)?.scene(name)
        }
    };
    Some(scene.to_svg())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_named_figure_is_there_and_no_other() {
        for name in [
            "opening",
            "opening-plot",
            "measure-1",
            "measure-2",
            "measure-3",
            "measure-4",
            "measure-5",
        ] {
            let svg = static_figure(name).unwrap();
            assert!(
                svg.starts_with("<svg ") && svg.ends_with("</svg>") && !svg.contains("NaN"),
                "{name}"
            );
            assert!(svg.contains(&format!("id=\"{name}-title\"")));
            assert!(!svg.contains("style="));
        }
        for name in ["", "measure-0", "measure-6", "measure-x", "closing"] {
            assert_eq!(static_figure(name), None, "{name}");
        }
    }

    #[test]
    fn the_opening_says_the_clamp_that_the_curve_gives() {
        use crate::units::Lettering as _;
        let bench = Bench::new().unwrap();
        let at = bench.case(Stand::Bare).curve.at_turn(OPENING_TURN).unwrap();
        let words = format!("clamp {}", UnitSystem::default().force(at.clamp_n));
        assert!(
            static_figure("opening").unwrap().contains(&words),
            "{words}"
        );
    }
}
