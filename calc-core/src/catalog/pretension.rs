//! Minimum bolt pretension of structural practice.

use super::threads::Thread;
use crate::cite::{Cite, Flag};
use crate::quantity::{Force, newton, pound_force};

/// Strength group of a structural bolt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum PretensionGroup {
    /// Group 120: A325.
    Group120,
    /// Group 150: A490.
    Group150,
}

/// A minimum pretension with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MinimumPretension {
    /// Least tension in the installed bolt, `0.70 F_u A_t` rounded as printed.
    pub force: Force,
    /// Source.
    pub cite: Cite,
}

// Kip in the first table, kN in the second; Group 120, Group 150.
static INCH: [(&str, [f64; 2]); 5] = [
    ("1.2", [12.0, 15.0]),
    ("5.8", [19.0, 24.0]),
    ("3.4", [28.0, 35.0]),
    ("7.8", [39.0, 49.0]),
    ("1", [51.0, 64.0]),
];
static METRIC: [(&str, [f64; 2]); 5] = [
    ("m12", [49.0, 72.0]),
    ("m16", [91.0, 114.0]),
    ("m20", [142.0, 179.0]),
    ("m22", [176.0, 221.0]),
    ("m24", [205.0, 257.0]),
];

/// Minimum pretension of AISC 360-22 Tables J3.1 and J3.1M; coarse threads only.
#[must_use]
pub fn aisc_pretension(thread: &Thread, group: PretensionGroup) -> Option<MinimumPretension> {
    if thread.fine() {
        return None;
    }
    let value = |table: &'static [(&str, [f64; 2])]| {
        let (_, [group_120, group_150]) = table.iter().find(|(size, _)| *size == thread.size())?;
        Some(match group {
            PretensionGroup::Group120 => *group_120,
            PretensionGroup::Group150 => *group_150,
        })
    };
    if let Some(kip) = value(&INCH) {
        return Some(MinimumPretension {
            force: pound_force(kip * 1e3),
            cite: Cite::new("aisc-360-22", "Table J3.1", Flag::Read),
        });
    }
    value(&METRIC).map(|kn| MinimumPretension {
        force: newton(kn * 1e3),
        cite: Cite::new("aisc-360-22", "Table J3.1M", Flag::Read),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::thread;
    use crate::quantity::{InUnits, ksi, mpa};

    /// The printed pretensions are 0.70 of tensile strength on the stress area, rounded to the kip
    /// or the kN (AISC 360-22 Table J3.1, note).
    #[test]
    fn printed_pretension_is_seventy_per_cent_of_tensile() {
        for (size, kip) in ["unc-1.2", "unc-5.8", "unc-3.4", "unc-7.8", "unc-1"]
            .iter()
            .zip([12.0, 19.0, 28.0, 39.0, 51.0])
        {
            let bolt = thread(size).unwrap();
            let ours = 0.7 * ksi(120.0).si() * bolt.stress_area().si() / pound_force(1e3).si();
            assert!((ours - kip).abs() <= 0.52, "{size}: {ours}");
        }
        let m20 = 0.7 * mpa(830.0).si() * thread("m20").unwrap().stress_area().si();
        assert!((m20 / 1e3 - 142.0).abs() < 0.5);
    }
}
