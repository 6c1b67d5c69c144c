//! What the questions rest on, for those who ask only a little.

use super::analysis::Analysis;
use crate::report::{Check, LoadsReport, LossesReport, TighteningReport};
use crate::scenario::Scenario;

/// The parts of a [`Report`](crate::report::Report) that no other check goes into, each the same as there. A program
/// that asks for no more holds no more of the calculation.
#[derive(Clone, Debug)]
pub struct Basis {
    /// Torque, clamp and their spread.
    pub tightening: TighteningReport,
    /// What is left of the clamp.
    pub losses: LossesReport,
    /// What the trailer asks, bolt by bolt.
    pub loads: LoadsReport,
    /// Whether what lies between head and nut takes the clamp.
    pub clamp: Check,
}

/// Computes the basis of a joint's report.
#[must_use]
pub fn basis(s: &Scenario) -> Basis {
    let analysis = Analysis::new(s);
    Basis {
        tightening: analysis.preload.report(s),
        losses: analysis.residual.losses(),
        loads: analysis.cases().report(s, analysis.service()),
        clamp: analysis.clamp(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::CheckId;
    use crate::{Input, evaluate};

    #[test]
    fn it_is_what_the_report_says() {
        let s = Scenario::new(&Input::default()).unwrap();
        let (report, basis) = (evaluate(&s), basis(&s));
        assert_eq!(report.check(CheckId::Clamp), Some(&basis.clamp));
        assert_eq!(report.tightening, basis.tightening);
        assert_eq!(report.losses, basis.losses);
        assert_eq!(report.loads, basis.loads);
    }
}
