//! The calculation beside values that it did not produce, as HTML.
//!
//! The comparisons are made while the pages are built, by the same functions that the tests judge. The
//! page of the method has a line a topic; every value stands on a page of its own.

use std::fmt::Write as _;
use std::sync::OnceLock;

use outside_checks::check::Record;
use outside_checks::reference::Origin;
use outside_checks::table::{Table, tables};

use crate::gauntlet;
use crate::register::{Register, escape};

/// Name of the page with every value.
pub const FILE: &str = "checks.html";

/// Comparing takes seconds in an unoptimised program, so it is done once.
fn compared() -> &'static [Table] {
    static TABLES: OnceLock<Vec<Table>> = OnceLock::new();
    TABLES.get_or_init(tables)
}

/// A line a topic, behind a summary.
#[must_use]
pub fn overview(caption: &str) -> String {
    let mut html = format!(
        "<details class=\"checks\" id=\"outside-checks\">\n<summary>{}</summary>\n\
         <table class=\"restack\"><thead><tr><th>Topic</th><th class=\"n\">Values</th>\
         <th class=\"n\">Printed by their source</th><th class=\"n\">Ours, from … to …</th></tr></thead>\n<tbody>\n",
        escape(caption)
    );
    for table in compared() {
        let differences = || table.records.iter().map(Record::difference);
        let least = differences().fold(f64::INFINITY, f64::min);
        let most = differences().fold(f64::NEG_INFINITY, f64::max);
        let _ = writeln!(
            html,
            "<tr><th><a href=\"{FILE}#{}\">{}</a></th>\
             <td class=\"n\" data-name=\"Values\">{}</td>\
             <td class=\"n\" data-name=\"Printed by their source\">{}</td>\
             <td class=\"n\" data-name=\"Ours, from … to …\">{} to {}</td></tr>",
            table.id,
            escape(table.title),
            table.records.len(),
            table.printed(),
            percent(least),
            percent(most),
        );
    }
    html.push_str(&gauntlet::line());
    let count: usize = compared().iter().map(|table| table.records.len()).sum();
    let _ = write!(
        html,
        "</tbody></table>\n<p><a href=\"{FILE}\">All {count} values, each with ours, the difference and \
         its source</a></p>\n</details>\n"
    );
    html
}

/// What the page with every value is called.
pub const TITLE: &str = "The calculation beside other values";

/// The page with every value, folded by topic.
#[must_use]
pub fn page(register: &Register) -> String {
    let mut body = String::new();
    for table in compared() {
        let _ = writeln!(
            body,
            "<details class=\"fold\" id=\"{}\"><summary><h2>{}</h2></summary>\n<table class=\"compared\"><thead><tr><th>Value</th><th class=\"n\">Theirs</th>\
             <th class=\"n\">Ours</th><th class=\"n\">Difference</th><th>Source</th></tr></thead>\n<tbody>",
            table.id,
            escape(table.title)
        );
        for record in &table.records {
            let (name, unit) = name_and_unit(&record.value);
            let _ = writeln!(
                body,
                "<tr><th>{}</th><td class=\"n\">{}{unit}</td><td class=\"n\">{}</td>\
                 <td class=\"n\">{}</td><td>{}</td></tr>",
                escape(&name),
                digits(record.published),
                digits(record.ours),
                percent(record.difference()),
                source(record, register),
            );
        }
        body.push_str("</tbody></table></details>\n");
    }
    body.push_str(&gauntlet::section());
    format!(
        "<section id=\"checks\" aria-labelledby=\"checks-heading\">\n<h1 id=\"checks-heading\">{TITLE}</h1>\n\
         <p>Each line was compared when this page was built. <i>Printed</i> means that the source prints the \
         value; <i>another way</i> means that it was worked out apart from this calculation, by another \
         program, by finite elements or by hand. Half a unit of the last printed digit is allowed, more \
         where the source rounds on the way or where finite elements stand against a formula. Plates and \
         side walls lie below the runs on purpose.</p>\n{body}</section>\n"
    )
}

fn source(record: &Record, register: &Register) -> String {
    let title = register
        .sources
        .iter()
        .find(|source| source.id == record.source)
        .map_or(record.source.as_str(), |source| source.title.as_str());
    let made = match record.origin {
        Origin::Published => "printed",
        Origin::Own => "another way",
        Origin::Practice => "practice",
    };
    format!(
        "{}, {}; {made}, {}",
        escape(title),
        escape(&record.place),
        record.flag.words()
    )
}

/// The name of a row and its value in words, and the unit that the value's name ends in.
fn name_and_unit(value: &str) -> (String, &'static str) {
    const UNITS: [(&str, &str); 13] = [
        ("_lbf_ft", " lb-ft"),
        ("_mlbf_in", " Mlbf/in"),
        ("_in2", " in²"),
        ("_mm2", " mm²"),
        ("_mpa", " MPa"),
        ("_ksi", " ksi"),
        ("_kip", " kip"),
        ("_lbf", " lbf"),
        ("_kn", " kN"),
        ("_mm", " mm"),
        ("_in", " in"),
        ("_n", " N"),
        ("_nm", " N·m"),
    ];
    let (row, name) = value.split_once(' ').unwrap_or((value, ""));
    let unit = UNITS.iter().find(|(end, _)| name.ends_with(end));
    let name = unit.map_or(name, |(end, _)| name.strip_suffix(end).unwrap_or(name));
    let name = name.replace('_', " ");
    let words = row.split('-').map(fractions).collect::<Vec<_>>().join(" ");
    let full = if name.is_empty() || name == "value" {
        words
    } else {
        format!("{words}: {name}")
    };
    (full, unit.map_or("", |(_, unit)| unit))
}

/// Ids write fractions of an inch with a point: `1.2` for 1/2, also in sizes such as `2x2x1.8`.
fn fractions(word: &str) -> String {
    let fraction = |part: &str| {
        let (above, below) = part.split_once('.')?;
        let number: u8 = above.parse().ok()?;
        let of: u8 = below.parse().ok()?;
        let inches = [2, 4, 8, 16, 32].contains(&of) && number % 2 == 1 && number < of;
        inches.then(|| format!("{above}/{below}"))
    };
    let parts = word
        .split('x')
        .map(|part| fraction(part).unwrap_or_else(|| part.to_owned()));
    parts.collect::<Vec<_>>().join("x")
}

/// Six significant digits without zeros at the end.
fn digits(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    #[allow(
        clippy::cast_possible_truncation,
        reason = "an exponent of ten of a finite number"
    )]
    let places = 5 - value.abs().log10().floor() as i32;
    let text = match usize::try_from(places) {
        Ok(places) if places <= 12 => format!("{value:.places$}"),
        Ok(_) => return format!("{value:.5e}"),
        Err(_) => format!("{value:.0}"),
    };
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// A share in percent with its sign; two digits behind the point, or none where it would be zero.
fn percent(share: f64) -> String {
    let percent = 100.0 * share;
    if percent.abs() < 0.005 {
        return String::from("0 %");
    }
    let sign = if percent < 0.0 { "−" } else { "+" };
    let places = if percent.abs() < 9.995 { 2 } else { 0 };
    format!("{sign}{:.places$} %", percent.abs())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_six_digits_and_no_idle_zeros() {
        assert_eq!(digits(0.141_900), "0.1419");
        assert_eq!(digits(17_601.63), "17601.6");
        assert_eq!(digits(1_234_567.8), "1234568");
        assert_eq!(digits(-12.5), "-12.5");
        assert_eq!(digits(0.0), "0");
        assert_eq!(digits(3e-20), "3.00000e-20");
    }

    #[test]
    fn differences_carry_their_sign() {
        assert_eq!(percent(0.0), "0 %");
        assert_eq!(percent(-0.001_23), "−0.12 %");
        assert_eq!(percent(0.5), "+50 %");
        assert_eq!(percent(1e-9), "0 %");
    }

    #[test]
    fn units_stand_behind_the_value() {
        let (name, unit) = name_and_unit("unc-1.2 stress_area_in2");
        assert_eq!((name.as_str(), unit), ("unc 1/2: stress area", " in²"));
        assert_eq!(name_and_unit("bolt-m10 value"), ("bolt m10".into(), ""));
        assert_eq!(name_and_unit("x torque_lbf_ft").1, " lb-ft");
        assert_eq!(
            name_and_unit("slip-m12-8.8-0.2 value").0,
            "slip m12 8.8 0.2"
        );
        assert_eq!(name_and_unit("c5-2x2x1.8 load_n").0, "c5 2x2x1/8: load");
    }

    /// Every value is on its page, and the overview counts them.
    #[test]
    fn nothing_is_left_out() {
        let html = page(&Register::default());
        let count: usize = compared().iter().map(|table| table.records.len()).sum();
        assert_eq!(
            html.matches("<tr><th>").count(),
            // The head of the joints that were judged by hand is one more.
            count + compared().len() + 1,
            "rows and heads"
        );
        let short = overview("Checked");
        for table in compared() {
            assert!(html.contains(&format!("<details class=\"fold\" id=\"{}\">", table.id)));
            assert!(short.contains(&format!("{FILE}#{}", table.id)));
        }
        assert!(short.contains(&format!("All {count} values")));
    }
}
