//! Work sheets that were followed by hand from the stock to the last turn of the wrench: counts, lengths, drills,
//! bolts and minutes are those of `reference/sheets.toml`.

use calc_core::repair::sheet::{WorkSheet, work_sheet};
use calc_core::repair::{Need, Rates, RepairKind};
use calc_core::report::Amount;
use calc_core::{Input, Scenario};
use outside_checks::reference::folder;
use serde::Deserialize;
use std::collections::BTreeMap;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    sheet: Vec<Followed>,
}

/// A sheet, with what a hand found.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Followed {
    id: String,
    /// The joint as it is.
    before: toml::Table,
    /// What the repair changes.
    after: toml::Table,
    /// The calculation by hand.
    why: String,
    kind: String,
    #[serde(default)]
    cut: Vec<Cut>,
    #[serde(default)]
    hole: Vec<Hole>,
    #[serde(default)]
    weld: Option<Weld>,
    /// Materials by key: how many.
    buy: BTreeMap<String, u32>,
    bolt_mm: f64,
    bolt_sold_mm: f64,
    order: Vec<usize>,
    /// Steps by key: how many, minutes.
    steps: BTreeMap<String, (u32, f64)>,
    minutes: f64,
    needs: Vec<String>,
    /// Side effects by key.
    effects: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Cut {
    what: String,
    count: u32,
    length_mm: f64,
    /// How much longer and shorter it may be.
    plus_minus_mm: [f64; 2],
    /// Width and thickness, or the outside diameter.
    section_mm: Vec<f64>,
    fit: Option<String>,
    rough_mm: f64,
    stock_mm: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Hole {
    place: String,
    count: u32,
    from_mm: Option<f64>,
    to_mm: f64,
    drill_in: f64,
    deep_mm: Option<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Weld {
    joint: String,
    count: u32,
    length_mm: f64,
    depth_mm: f64,
    filler: String,
}

fn followed() -> Vec<Followed> {
    let text = std::fs::read_to_string(folder().join("sheets.toml")).unwrap();
    toml::from_str::<File>(&text).unwrap().sheet
}

fn joint(fields: &toml::Table) -> Scenario {
    let json = serde_json::to_value(fields).unwrap();
    let input: Input = serde_json::from_value(json).unwrap();
    Scenario::new(&input).unwrap()
}

impl Followed {
    fn sheet(&self) -> WorkSheet {
        let mut changed = self.before.clone();
        changed.extend(self.after.clone());
        let after = joint(&changed);
        work_sheet(&joint(&self.before), &after, &Rates::default())
    }

    /// A hand rounds to hundredths.
    fn near(&self, what: &str, ours: f64, hand: f64) {
        let id = &self.id;
        assert!(
            (ours - hand).abs() < 0.011,
            "{id}: {what} is {ours}, by hand {hand}"
        );
    }

    fn near_mm(&self, what: &str, ours: Amount, hand: f64) {
        self.near(what, ours.si * 1e3, hand);
    }

    fn same<T: PartialEq + std::fmt::Debug>(&self, what: &str, ours: T, hand: T) {
        assert_eq!(ours, hand, "{}: {what}", self.id);
    }
}

#[test]
fn sheets_are_those_that_a_hand_followed() {
    for row in followed() {
        assert!(row.why.len() > 80, "{}: the hand's calculation", row.id);
        let sheet = row.sheet();
        row.same("kind", sheet.kind.key(), &row.kind);
        cuts(&row, &sheet);
        holes(&row, &sheet);
        welds(&row, &sheet);
        let bought = sheet
            .materials
            .iter()
            .map(|m| (m.what.key().to_owned(), m.count));
        row.same("to buy", bought.collect(), row.buy.clone());
        let plan = &sheet.tightening;
        row.near_mm("bolt", plan.bolt_length, row.bolt_mm);
        row.near_mm("bolt as sold", plan.bolt_stock, row.bolt_sold_mm);
        for line in sheet
            .materials
            .iter()
            .filter(|m| m.what.key() == "piece-bolt")
        {
            row.near_mm("bolt to buy", line.length.unwrap(), row.bolt_sold_mm);
        }
        row.same("order", &plan.order, &row.order);
        let steps = sheet.operations.iter();
        let ours: BTreeMap<_, _> = steps
            .map(|o| (o.what.key(), (o.count, o.minutes)))
            .collect();
        row.same(
            "steps",
            ours.keys().copied().collect(),
            row.steps.keys().map(String::as_str).collect::<Vec<_>>(),
        );
        for (step, (count, minutes)) in &row.steps {
            row.same(step, ours[step.as_str()].0, *count);
            row.near(step, ours[step.as_str()].1, *minutes);
        }
        row.near("minutes", sheet.work.minutes, row.minutes);
        row.same(
            "needs",
            sheet.needs.iter().map(Need::key).collect(),
            row.needs.iter().map(String::as_str).collect::<Vec<_>>(),
        );
        let effects = sheet.effects.iter().map(|said| said.code.key());
        row.same(
            "effects",
            effects.collect(),
            row.effects.iter().map(String::as_str).collect::<Vec<_>>(),
        );
    }
}

fn cuts(row: &Followed, sheet: &WorkSheet) {
    row.same("pieces", sheet.cuts.len(), row.cut.len());
    for (ours, hand) in sheet.cuts.iter().zip(&row.cut) {
        row.same(
            "piece",
            (ours.what.key(), ours.count),
            (&*hand.what, hand.count),
        );
        row.near_mm("length", ours.length, hand.length_mm);
        row.near_mm("plus", ours.plus, hand.plus_minus_mm[0]);
        row.near_mm("minus", ours.minus, hand.plus_minus_mm[1]);
        let section: Vec<_> = match ours.outer {
            Some(outer) => vec![outer],
            None => [ours.width, ours.thickness].into_iter().flatten().collect(),
        };
        row.same(
            "measures of the section",
            section.len(),
            hand.section_mm.len(),
        );
        for (ours, hand) in section.iter().zip(&hand.section_mm) {
            row.near_mm("section", *ours, *hand);
        }
        row.same(
            "fit",
            ours.fit.map(calc_core::repair::Fit::key),
            hand.fit.as_deref(),
        );
        row.near_mm("stock for one", ours.rough, hand.rough_mm);
        row.near_mm("stock", ours.stock_length, hand.stock_mm);
    }
}

fn holes(row: &Followed, sheet: &WorkSheet) {
    row.same("kinds of hole", sheet.holes.len(), row.hole.len());
    for (ours, hand) in sheet.holes.iter().zip(&row.hole) {
        row.same(
            "holes",
            (ours.place.key(), ours.count),
            (&*hand.place, hand.count),
        );
        row.same("opened", ours.from.is_some(), hand.from_mm.is_some());
        for (from, hand) in ours.from.into_iter().zip(hand.from_mm) {
            row.near_mm("from", from, hand);
        }
        row.near_mm("hole", ours.to, hand.to_mm);
        row.near(
            "drill",
            ours.drill_inch.unwrap().diameter.si / 0.0254,
            hand.drill_in,
        );
        row.same("deep", ours.deep.is_some(), hand.deep_mm.is_some());
        for (deep, hand) in ours.deep.into_iter().zip(hand.deep_mm) {
            row.near_mm("depth", deep, hand);
        }
    }
}

fn welds(row: &Followed, sheet: &WorkSheet) {
    row.same("welded", sheet.weld.is_some(), row.weld.is_some());
    for (ours, hand) in sheet.weld.iter().zip(&row.weld) {
        row.same(
            "weld",
            (ours.joint.key(), ours.count),
            (&*hand.joint, hand.count),
        );
        row.near_mm("length of weld", ours.length, hand.length_mm);
        row.near_mm("depth of weld", ours.depth, hand.depth_mm);
        row.same("filler", ours.filler.id, &hand.filler);
    }
}

/// At least three of every kind, and every member.
#[test]
fn every_kind_of_repair_was_followed_on_several_members() {
    let rows = followed();
    for kind in RepairKind::ALL {
        let of_kind = rows.iter().filter(|row| row.kind == kind.key());
        assert!(of_kind.count() >= 3, "{}", kind.key());
    }
    for member in ["round-tube", "channel", "angle"] {
        let on = |row: &&Followed| {
            row.before.get("member").and_then(toml::Value::as_str) == Some(member)
        };
        assert!(rows.iter().any(|row| on(&row)), "{member}");
    }
}
