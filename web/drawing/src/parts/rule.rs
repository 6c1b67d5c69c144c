//! The marked rule: how much of what it has is used.

use super::lines::arrow_tip;
use crate::scene::{Anchor, Mark, Scene};

/// How a check stands, as the rule draws it: told apart by dash and end, not by colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Solid bar.
    Holds,
    /// Dashed bar.
    Close,
    /// Bar with an arrow end.
    DoesNotHold,
    /// Dotted line over the whole rule, no bar.
    NotChecked,
}

const WIDTH: f64 = 220.0;
const LEFT: f64 = 3.0;
const RIGHT: f64 = WIDTH - 3.0;
const LINE: f64 = 24.0;
/// Share at the right end of the rule.
const FULL: f64 = 1.5;

/// The rule from 0 to 150 %; the long tick at 100 % is what it has. Above 150 % the bar runs to the edge.
#[must_use]
pub fn marked_rule(id: &str, utilisation: Option<f64>, standing: Standing) -> Scene {
    let at = |share: f64| LEFT + (RIGHT - LEFT) * share.clamp(0.0, FULL) / FULL;
    let mut marks = vec![Mark::line((LEFT, LINE), (RIGHT, LINE), "thin")];
    for tenth in (0..=15_u8).filter(|t| *t != 10) {
        let tall = if tenth % 5 == 0 { 8.0 } else { 4.0 };
        let x = at(f64::from(tenth) / 10.0);
        marks.push(Mark::line((x, LINE), (x, LINE - tall), "thin"));
    }
    let share = utilisation.filter(|u| u.is_finite() && *u >= 0.0);
    let words = match (standing, share) {
        (Standing::NotChecked, _) | (_, None) => {
            marks.push(Mark::line((LEFT, LINE), (RIGHT, LINE), "bar dotted"));
            String::from("not checked")
        }
        (Standing::Holds, Some(u)) => {
            marks.push(Mark::line((LEFT, LINE), (at(u), LINE), "bar"));
            format!("{:.0} % used: holds", u * 100.0)
        }
        (Standing::Close, Some(u)) => {
            marks.push(Mark::line((LEFT, LINE), (at(u), LINE), "bar dashed"));
            format!("{:.0} % used: close", u * 100.0)
        }
        (Standing::DoesNotHold, Some(u)) => {
            marks.push(Mark::line((LEFT, LINE), (at(u) - 9.0, LINE), "bar load"));
            marks.push(arrow_tip((at(u), LINE), (1.0, 0.0), 13.0, "force-tip load"));
            format!("{:.0} % used: does not hold", u * 100.0)
        }
    };
    // Last, so that the bar never hides it.
    marks.push(Mark::line(
        (at(1.0), LINE + 7.0),
        (at(1.0), 3.0),
        "capacity",
    ));
    marks.push(Mark::text(
        (at(1.0) - 5.0, 11.0),
        "100\u{a0}%",
        "t s",
        Anchor::End,
    ));
    Scene {
        id: id.into(),
        width: WIDTH,
        height: 34.0,
        title: String::from("share of what it has"),
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
        for (u, standing) in [
            (0.39, Standing::Holds),
            (0.89, Standing::Close),
            (0.999, Standing::Close),
        ] {
            let scene = marked_rule("r", Some(u), standing);
            assert!(ends(&scene, "bar") < ends(&scene, "capacity"));
        }
        let over = marked_rule("r", Some(3.22), Standing::DoesNotHold);
        assert!(ends(&over, "bar") > ends(&over, "capacity"));
    }

    #[test]
    fn every_standing_has_a_sign_that_is_not_colour() {
        let sign = |standing| {
            let scene = marked_rule("r", Some(0.9), standing);
            let dash = scene.marks.iter().find_map(|m| match m {
                Mark::Line { class, .. } if class.starts_with("bar") => Some(*class),
                _ => None,
            });
            let arrow = scene.marks.iter().any(|m| matches!(m, Mark::Path { .. }));
            (dash, arrow)
        };
        let all = [
            Standing::Holds,
            Standing::Close,
            Standing::DoesNotHold,
            Standing::NotChecked,
        ]
        .map(sign);
        for (i, a) in all.iter().enumerate() {
            assert!(all.iter().skip(i + 1).all(|b| a != b));
        }
    }

    #[test]
    fn what_is_not_a_number_is_not_checked() {
        assert_eq!(
            marked_rule("r", Some(f64::NAN), Standing::Holds).description,
            "not checked"
        );
    }
}
