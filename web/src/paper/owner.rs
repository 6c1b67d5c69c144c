//! The page for the owner of the trailer, in the owner's words.

use calc_core::repair::sheet::work_sheet;
use calc_core::report::Verdict;
use calc_core::scenario::Field;
use drawing::words::key;

use super::record::Record;
use super::tables::piece;
use super::{Case, head, way_back};
use crate::el::{El, el};
use crate::trailer::kept_rates;
use crate::trailer::words::{self, Words, message};

/// Reasons that are told at most; the others follow from them or come after.
const REASONS: usize = 3;

fn list(lines: impl IntoIterator<Item = String>) -> El {
    el("ul").children(lines.into_iter().map(|line| el("li").text(line)))
}

pub(super) fn page(case: &Case, record: Record) -> Vec<El> {
    let units = case.units;
    let sheet = work_sheet(&case.before.scenario, &case.after.scenario, &kept_rates());
    let found = case
        .before
        .scenario
        .input
        .found()
        .map(|f| String::from(words::label(f)));
    let reasons = case
        .before
        .report
        .checks
        .iter()
        .filter(|check| check.verdict == Verdict::DoesNotHold)
        .take(REASONS)
        .map(|check| words::said(&check.reason, units));
    let wrong: Vec<String> = found.chain(reasons).collect();
    let plan = &sheet.tightening;
    let torque = message(key::PAPER_TORQUE).with(&[
        &words::amount(plan.torque.si, plan.torque.dimension, units),
        &words::choice(Field::Method, &plan.method),
        &words::choice(Field::Lubrication, &plan.lubrication),
    ]);
    let look = plan.look_again.iter().map(|said| words::said(said, units));
    let mut all: Vec<El> = head(case, message(key::PAPER_OWNER_TITLE))
        .into_iter()
        .collect();
    all.push(el("p").text(record.said()));
    if !wrong.is_empty() {
        all.push(el("h3").text(message(key::PAPER_WRONG)));
        all.push(list(wrong));
    }
    all.push(el("h3").text(message(key::PAPER_DONE)));
    let mut done = vec![String::from(words::label(sheet.kind))];
    done.extend(sheet.materials.iter().map(piece));
    done.push(torque);
    all.push(list(done));
    all.push(el("h3").text(message(key::PAPER_LOOK)));
    all.push(list(look));
    all.push(el("p").text(message(key::PAPER_STOP)));
    all.extend(way_back(case));
    all
}
