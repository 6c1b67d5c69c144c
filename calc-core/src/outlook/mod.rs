//! Beside the answer: the one with the strength usually found, and the torque at which the wrench should stop.
//!
//! Neither changes a verdict. The first says whether a joint fails for what its metal must have at least or for what it
//! is; the second whether what the support does stand is enough for the road.

mod usual;
mod wrench;

use crate::evaluate::{deciding, may_be_stretched};
use crate::report::{Said, say};
use crate::scenario::Scenario;
use crate::support::parts::said;
use serde::Serialize;

pub use usual::{Metal, UsualAnswer};
pub use wrench::{Setting, WrenchSetting};

/// Both, and what is said of them.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Outlook {
    /// The answer with the strength usually found.
    pub usual: UsualAnswer,
    /// Where the wrench should stop, with the least strength.
    pub wrench: WrenchSetting,
    /// Where it could, with the strength usually found.
    pub wrench_usual: WrenchSetting,
    /// The same in sentences; nothing where the joint holds as it is.
    pub said: Vec<Said>,
}

/// Looks at a joint once more.
///
/// Costs some sixty reports without their working: for a joint that rests, not for each step of a control.
#[must_use]
pub fn outlook(s: &Scenario) -> Outlook {
    let all_known = s.not_known.is_empty();
    // Of all that it may be the one that decides; what makes that one hold may not do for the others, so that no torque
    // is promised and nothing said.
    let s = &*deciding(s);
    let usual = usual::answer(s);
    let mut wrench = wrench::setting(s);
    let mut wrench_usual = wrench::setting(&usual::with_usual(s, usual::Taken::All));
    let mut told = Vec::new();
    if all_known {
        told = wrench.said();
        if wrench.set_to_nm().is_some() && may_be_stretched(s) {
            told.push(said(say::TorqueNewBolts, []));
        }
        told.extend(usual.said());
    } else {
        for setting in [&mut wrench, &mut wrench_usual] {
            (setting.best, setting.band_nm) = (None, None);
        }
    }
    Outlook {
        usual,
        wrench,
        wrench_usual,
        said: told,
    }
}

#[cfg(test)]
mod tests;
