//! The work sheet, alone on its page.

use calc_core::repair::sheet::work_sheet;
use drawing::words::key;

use super::tables::tables;
use super::{Case, head, way_back};
use crate::el::El;
use crate::trailer::kept_rates;
use crate::trailer::words::message;

pub(super) fn sheet(case: &Case) -> Vec<El> {
    let sheet = work_sheet(&case.before.scenario, &case.after.scenario, &kept_rates());
    head(case, message(key::PAPER_WORK))
        .into_iter()
        .chain(tables(&sheet, case.units))
        .chain(way_back(case))
        .collect()
}
