//! Joints whose verdict was worked out by hand, with what the calculation says of them, as HTML.

use std::fmt::Write as _;

use calc_core::report::Verdict;
use outside_checks::gauntlet::{Joint, Outcome, joints};
use outside_checks::reference::Origin;

use crate::checks::FILE;
use crate::register::escape;

/// Where they stand on the page of checks.
const ID: &str = "judged-by-hand";

const TITLE: &str = "Joints judged by hand";

/// A line of the overview.
#[must_use]
pub(crate) fn line() -> String {
    let joints = joints();
    let printed = joints.iter().filter(|j| j.origin == Origin::Published);
    format!(
        "<tr><th><a href=\"{FILE}#{ID}\">{TITLE}</a></th>\
         <td class=\"n\" data-name=\"Values\">{}</td>\
         <td class=\"n\" data-name=\"Printed by their source\">{}</td>\
         <td class=\"n\" data-name=\"Ours, from … to …\">{} of {} as they may be</td></tr>\n",
        joints.len(),
        printed.count(),
        joints.iter().filter(|joint| is_as_it_may_be(joint)).count(),
        joints.len(),
    )
}

/// All of them, with the reason.
#[must_use]
pub(crate) fn section() -> String {
    let mut html = format!(
        "<details class=\"fold\" id=\"{ID}\"><summary><h2>{TITLE}</h2></summary>\n<p>What each may come to was worked out by hand before it was calculated, from \
         published rules or common practice. Made up; nobody's trailer.</p>\n\
         <table class=\"judged\"><thead><tr><th>Joint</th><th>May be</th><th>Comes out</th><th>Why</th></tr></thead>\n<tbody>"
    );
    for joint in joints() {
        let may_be = if joint.best == joint.worst {
            words(joint.best)
        } else {
            format!("{} to {}", words(joint.best), words(joint.worst))
        };
        let comes_out = match joint.outcome() {
            Outcome::Judged {
                verdict, weakest, ..
            } => format!("{}, by {}", words(verdict), weakest.key().replace('-', " ")),
            Outcome::Refused(_) => String::from("refused"),
        };
        let _ = writeln!(
            html,
            "<tr><td>{}</td><td>{may_be}</td><td>{comes_out}</td><td>{}</td></tr>",
            escape(&joint.what),
            escape(&joint.why),
        );
    }
    html.push_str("</tbody></table></details>\n");
    html
}

fn words(verdict: Verdict) -> String {
    verdict.key().replace('-', " ")
}

fn is_as_it_may_be(joint: &Joint) -> bool {
    match joint.outcome() {
        Outcome::Judged { verdict, .. } => (joint.best..=joint.worst).contains(&verdict),
        Outcome::Refused(_) => !joint.refused.is_empty(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_joint_has_its_line_and_comes_out_as_it_may() {
        let count = joints().len();
        assert_eq!(section().matches("<tr><td>").count(), count);
        assert!(line().contains(&format!("{count} of {count} as they may be")));
    }
}
