//! Load cases as they are reported and drawn.

use super::{BoltLoads, Cases, Service};
use crate::catalog::CaseName;
use crate::mechanics::bolt_group::{Place, Share};
use crate::report::{BoltShare, CaseReport, LoadsReport};
use crate::scenario::Scenario;

impl Cases {
    /// All cases, and the one that is drawn: that which slips first, or the hardest on one bolt where
    /// none counts on friction.
    pub(crate) fn report(&self, s: &Scenario, service: Option<&Service>) -> LoadsReport {
        let drawn = service
            .and_then(|service| self.all.iter().find(|loads| loads.case == service.ball))
            .or_else(|| {
                self.governing(&|loads| Some(loads.largest_in_plane))
                    .map(|(loads, _)| loads)
            });
        let case = drawn.map(|loads| &loads.case);
        LoadsReport {
            case: case.map_or(CaseName::None, |c| c.case),
            longitudinal_n: case.map_or(0.0, |c| c.along),
            vertical_n: case.map_or(0.0, |c| c.up),
            transverse_n: case.map_or(0.0, |c| c.side),
            bolts: drawn.map_or_else(Vec::new, |loads| bolts(&self.places, &loads.shares)),
            joint: s.loads.joint,
            rule: s.loads.rule.id(),
            cases: self
                .all
                .iter()
                .map(|loads| self.case_report(loads))
                .collect(),
        }
    }

    fn case_report(&self, loads: &BoltLoads) -> CaseReport {
        let (case, group) = (&loads.case, &loads.group);
        CaseReport {
            case: case.case,
            kind: case.kind,
            longitudinal_n: case.along,
            vertical_n: case.up,
            transverse_n: case.side,
            point_ahead_mm: case.ahead * 1e3,
            point_below_mm: case.below * 1e3,
            other_reading_n: case.other_reading,
            twist_nm: group.twist,
            pitch_nm: group.pitch,
            roll_nm: group.roll,
            bolts: bolts(&self.places, &loads.shares),
            cite: case.cite,
        }
    }
}

fn bolts(places: &[Place], shares: &[Share]) -> Vec<BoltShare> {
    places
        .iter()
        .zip(shares)
        .map(|(place, share)| BoltShare {
            along_mm: place.x * 1e3,
            across_mm: place.y * 1e3,
            force_along_n: share.along,
            force_across_n: share.across,
            pull_n: share.pull,
        })
        .collect()
}
