//! Distances.

use super::{Joint, amount, said};
use crate::cite::{Cite, Flag};
use crate::quantity::Dimension::Length;
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, Verdict};

impl Joint<'_> {
    pub(super) fn end_distance(&self) -> Option<Check> {
        let s = self.s;
        let given = s.tube.end_distance?;
        let needed = 1.5 * s.bolting.thread.major().si();
        let utilisation = needed / given.si();
        let mut w = self.sheet();
        w.step(
            ("e_min", "least distance from bolt to end", "1.5·d"),
            &[("d", s.bolting.thread.major().si(), Length)],
            (needed, Length),
            Cite::new("aisc-360-22", "Table J3.4 (about 1.5 d)", Flag::Read),
        );
        Some(Check {
            id: CheckId::EndDistance,
            // A distance is there or it is not: nothing between.
            verdict: if utilisation > 1.0 {
                Verdict::DoesNotHold
            } else {
                Verdict::Holds
            },
            demand: amount(needed, Length),
            capacity: amount(given.si(), Length),
            factor: 1.0,
            factor_is: "factor-none",
            utilisation: Some(utilisation),
            case: None,
            reason: said(
                if utilisation > 1.0 {
                    "end-too-near"
                } else {
                    "end-far-enough"
                },
                &[(needed, Length), (given.si(), Length)],
            ),
            steps: w.finish(),
        })
    }
}
