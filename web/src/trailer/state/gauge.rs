//! Thickness as sheet metal is spoken of: by gauge number, or in thousandths of an inch.

use calc_core::catalog::{self, Family};
use calc_core::quantity::{Dimension, Typed, Unit, parse_number};
use drawing::words::key;

/// What a text says, if it says a gauge or thousandths: `11 ga`, `14 gauge`, `120 thou`.
pub(super) fn read(text: &str, dimension: Dimension, metal: &str) -> Option<Typed> {
    if dimension != Dimension::Length {
        return None;
    }
    let (number, gauge) = parts(text)?;
    let inches = if gauge {
        inches(number, steel(metal))?
    } else {
        number / 1000.0
    };
    Typed::set(inches, Unit::Inch)
}

/// Whether a text says a gauge number.
pub(super) fn is_one(text: &str) -> bool {
    matches!(parts(text), Some((_, true)))
}

/// Key of the words for the sheet that a gauge number counts in.
pub(super) fn name(metal: &str) -> &'static str {
    if steel(metal) {
        key::GAUGE_STEEL
    } else {
        key::GAUGE_ALUMINUM
    }
}

/// The number, and whether it counts gauges.
fn parts(text: &str) -> Option<(f64, bool)> {
    let text = text.trim().trim_end_matches('.');
    let at = text.find(|c: char| c.is_ascii_alphabetic())?;
    let (number, unit) = text.split_at(at);
    let gauge = match unit.to_ascii_lowercase().as_str() {
        "ga" | "gauge" | "gage" => true,
        "thou" => false,
        _ => return None,
    };
    Some((parse_number(number.trim())?, gauge))
}

/// Whether the metal is known to be steel. What is not known counts as aluminum, whose sheet is the thinner one.
fn steel(metal: &str) -> bool {
    metal == "unknown-steel"
        || catalog::material(metal).is_some_and(|metal| metal.family() != Family::Aluminium)
}

/// Thickness of a gauge from 3 to 20, in.
///
/// Steel: weight per square foot by 15 U.S.C. 206 (5 lb at gauge 11, five eighths of a pound a gauge down to 14), over
/// 41.82 lb per square foot and inch, as Manufacturers' Standard Gauge has it (from memory). Mechanical tube is also sold
/// by the Birmingham gauge, which is as thick or thicker: the thinner counts. Aluminum: 0.005 in × 92^((36 − n)/39),
/// the American wire gauge (ASTM B258, from memory).
fn inches(gauge: f64, steel: bool) -> Option<f64> {
    if gauge.fract() != 0.0 || !(3.0..=20.0).contains(&gauge) {
        return None;
    }
    let exact = if steel {
        let pounds = match gauge {
            g if g <= 14.0 => 10.0 - 0.625 * (g - 3.0),
            g if g <= 16.0 => 2.8125 - 0.3125 * (g - 15.0),
            g => 2.25 - 0.25 * (g - 17.0),
        };
        // Gauge 10 of the Birmingham gauge is the thinner of the two.
        (pounds / 41.82).min(if gauge == 10.0 { 0.134 } else { 1.0 })
    } else {
        0.005 * 92f64.powf((36.0 - gauge) / 39.0)
    };
    // Tables print ten-thousandths.
    Some((exact * 1e4).floor() / 1e4)
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn thickness(text: &str, metal: &str) -> Option<f64> {
        read(text, Dimension::Length, metal).map(|typed| typed.value)
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn gauges_are_what_tables_print_rounded_down() {
        // Manufacturers' Standard Gauge and American wire gauge as printed in trade tables (from memory).
        for (gauge, steel, aluminum) in [
            ("7 ga", 0.1793, 0.1443),
            ("10 gauge", 0.1340, 0.1019),
            ("11 ga.", 0.1196, 0.0907),
            ("12ga", 0.1046, 0.0808),
            ("14 Ga", 0.0747, 0.0641),
            ("16 gage", 0.0598, 0.0508),
            ("18 ga", 0.0478, 0.0403),
            ("20 ga", 0.0359, 0.0320),
        ] {
            let (s, a) = (thickness(gauge, "a500-b"), thickness(gauge, "6061-t6"));
            assert!(
                (s.unwrap() - steel).abs() < 1.01e-4 && s.unwrap() <= steel,
                "{gauge} {s:?}"
            );
            assert!(
                (a.unwrap() - aluminum).abs() < 1.01e-4 && a.unwrap() <= aluminum,
                "{gauge} {a:?}"
            );
        }
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn what_is_not_known_is_the_thinner_metal_and_what_is_no_gauge_is_none() {
        assert_eq!(thickness("11 ga", "unknown"), thickness("11 ga", "6061-t6"));
        assert_eq!(
            thickness("11 ga", "unknown-steel"),
            thickness("11 ga", "a500-b")
        );
        assert_eq!(thickness("120 thou", "a500-b"), Some(0.12));
        for text in ["11", "11 in", "11.5 ga", "2 ga", "60 ga", "ga", "x ga"] {
            assert_eq!(thickness(text, "a500-b"), None, "{text}");
        }
    }
}
