//! The marked rule: how much of what it has is used.
//!
//! Verdicts are told apart by dash and end, not by colour alone: holds is solid, close is dashed, does not
//! hold ends in an arrow, not checked is a dotted line with no bar.

use super::lines::arrow_tip;
use crate::scene::{Anchor, Draw, Mark, Scene};
use calc_core::report::Verdict;

const WIDTH: f64 = 220.0;
const LEFT: f64 = 3.0;
const RIGHT: f64 = WIDTH - 3.0;
const LINE: f64 = 24.0;
/// Share at the right end of the rule.
const FULL: f64 = 1.5;

/// The rule from 0 to 150 %; the long tick at 100 % is what it has. Above 150 % the bar runs to the edge.
#[must_use]
pub fn marked_rule(id: &str, utilisation: Option<f64>, verdict: Verdict) -> Scene {
    let at = |share: f64| LEFT + (RIGHT - LEFT) * share.clamp(0.0, FULL) / FULL;
    let mut marks = vec![Mark::line((LEFT, LINE), (RIGHT, LINE), "thin")];
    for tenth in (0..=15_u8).filter(|t| *t != 10) {
        let tall = if tenth % 5 == 0 { 8.0 } else { 4.0 };
        let x = at(f64::from(tenth) / 10.0);
        marks.line((x, LINE), (x, LINE - tall), "thin");
    }
    let share = utilisation.filter(|u| u.is_finite() && *u >= 0.0);
    let words = match (verdict, share) {
        (Verdict::NotChecked, _) | (_, None) => {
            marks.line((LEFT, LINE), (RIGHT, LINE), "bar dotted");
            String::from("not checked")
        }
        (Verdict::Holds, Some(u)) => {
            marks.line((LEFT, LINE), (at(u), LINE), "bar");
            format!("{:.0} % used: holds", u * 100.0)
        }
        (Verdict::Close, Some(u)) => {
            marks.line((LEFT, LINE), (at(u), LINE), "bar dashed");
            format!("{:.0} % used: close", u * 100.0)
        }
        (Verdict::DoesNotHold, Some(u)) => {
            marks.line((LEFT, LINE), (at(u) - 9.0, LINE), "bar load");
            marks.push(arrow_tip((at(u), LINE), (1.0, 0.0), 13.0, "force-tip load"));
            format!("{:.0} % used: does not hold", u * 100.0)
        }
    };
    // Last, so that the bar never hides it.
    marks.line((at(1.0), LINE + 7.0), (at(1.0), 3.0), "capacity");
    marks.text((at(1.0) - 5.0, 11.0), "100\u{a0}%", "t s", Anchor::End);
    Scene {
        id: id.into(),
        width: WIDTH,
        height: 34.0,
        title: String::from("share of capacity used"),
        description: words,
        marks,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ends(scene: &Scene, wanted: &str) -> Vec<f64> {
        scene
            .marks
            .iter()
            .filter_map(|m| match m {
                Mark::Line { to, class, .. } if class.split(' ').next() == Some(wanted) => {
                    Some(to.0)
                }
                _ => None,
            })
            .collect()
    }

    #[test]
    fn the_bar_ends_short_of_the_capacity_tick_only_below_one() {
        for (u, verdict) in [
            (0.39, Verdict::Holds),
            (0.89, Verdict::Close),
            (0.999, Verdict::Close),
        ] {
            let scene = marked_rule("r", Some(u), verdict);
            assert!(ends(&scene, "bar") < ends(&scene, "capacity"));
        }
        let over = marked_rule("r", Some(3.22), Verdict::DoesNotHold);
        assert!(ends(&over, "bar") > ends(&over, "capacity"));
    }

    #[test]
    fn every_verdict_has_a_sign_that_is_not_colour() {
        let sign = |verdict| {
            let scene = marked_rule("r", Some(0.9), verdict);
            let dash = scene.marks.iter().find_map(|m| match m {
                Mark::Line { class, .. } if class.starts_with("bar") => Some(*class),
                _ => None,
            });
            let arrow = scene.marks.iter().any(|m| matches!(m, Mark::Path { .. }));
            (dash, arrow)
        };
        let all = [
            Verdict::Holds,
            Verdict::Close,
            Verdict::DoesNotHold,
            Verdict::NotChecked,
        ]
        .map(sign);
        for (i, a) in all.iter().enumerate() {
            assert!(all.iter().skip(i + 1).all(|b| a != b));
        }
    }

    #[test]
    fn what_is_not_a_number_is_not_checked() {
        assert_eq!(
            marked_rule("r", Some(f64::NAN), Verdict::Holds).description,
            "not checked"
        );
    }
}
