//! The readings as a file: what the page saves, opens, and keeps on the device.

use calc_core::quantity::UnitSystem;
use csv_core::{ReadRecordResult, Reader};

use super::{Choice, Column, Notes, Piece, Row, SetUp, Threads};
use crate::answers::line;
use crate::words::filled;

/// What such a file says of itself.
const MARK: &str = "clampwright-bench";
const VERSION: &str = "1";

/// Largest file, in bytes, and most readings.
const LARGEST: usize = 65_536;
const MOST_ROWS: usize = 200;

/// Longest text of a cell that is taken.
const LONGEST: usize = 60;

/// Why a file was not opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Not such a file.
    Foreign,
    /// Larger than any.
    TooLarge,
    /// Written by a newer version.
    Newer,
    /// A line that is not understood, counted from 1.
    Line(usize),
}

impl Refusal {
    /// What to say.
    #[must_use]
    pub fn said(&self) -> String {
        let (key, at) = match self {
            Self::Foreign => ("file.foreign", 0),
            Self::TooLarge => ("file.too-large", 0),
            Self::Newer => ("file.newer", 0),
            Self::Line(at) => ("file.line", *at),
        };
        filled(key, &[("line", &at.to_string())])
    }
}

/// The file's text.
#[must_use]
pub fn csv(notes: &Notes) -> String {
    let mut out = line(&[MARK, VERSION]);
    out += &line(&[
        "units",
        if notes.units == UnitSystem::Us {
            "us"
        } else {
            "metric"
        },
    ]);
    if notes.demo {
        out += &line(&["invented", "yes"]);
    }
    for choice in Choice::ALL {
        out += &line(&[choice.key(), notes.choice(*choice)]);
    }
    for piece in Piece::ALL {
        out += &line(&[piece.key(), notes.piece(*piece)]);
    }
    out += &line(&["set-up", "threads", "turn", "torque", "dent", "slip"]);
    for row in &notes.rows {
        let [turn, torque, dent, slip] = &row.cells;
        out += &line(&[
            row.set_up.key(),
            row.threads.key(),
            turn,
            torque,
            dent,
            slip,
        ]);
    }
    out
}

/// Cells by line.
fn records(text: &str) -> Vec<Vec<String>> {
    let mut reader = Reader::new();
    let mut input = text.as_bytes();
    let mut all = Vec::new();
    let (mut out, mut ends) = (vec![0; text.len() + 1], vec![0; 64]);
    loop {
        let (mut written, mut cells) = (0, 0);
        let done = loop {
            let (result, read, wrote, ended) = reader.read_record(
                input,
                out.get_mut(written..).unwrap_or_default(),
                ends.get_mut(cells..).unwrap_or_default(),
            );
            input = input.get(read..).unwrap_or_default();
            written += wrote;
            cells += ended;
            match result {
                ReadRecordResult::InputEmpty => {}
                ReadRecordResult::OutputFull | ReadRecordResult::OutputEndsFull => break true,
                ReadRecordResult::Record => break false,
                ReadRecordResult::End => break true,
            }
        };
        if done {
            return all;
        }
        let mut from = 0;
        let record = ends.iter().take(cells).map(|&to| {
            let cell = out.get(from..to).unwrap_or_default();
            from = to;
            String::from_utf8_lossy(cell).trim().to_owned()
        });
        all.push(record.collect());
    }
}

/// Reads such a file.
///
/// # Errors
/// Why it is none, or which line is not understood.
pub fn read_csv(text: &str) -> Result<Notes, Refusal> {
    if text.len() > LARGEST {
        return Err(Refusal::TooLarge);
    }
    let records = records(text.trim_start_matches('\u{feff}'));
    let mut lines = records.iter().enumerate();
    let head = lines.next().map(|(_, head)| head.as_slice());
    match head {
        Some([mark, version, ..]) if mark == MARK => {
            if version != VERSION {
                return Err(Refusal::Newer);
            }
        }
        _ => return Err(Refusal::Foreign),
    }
    let mut notes = Notes::fresh(UnitSystem::Us);
    notes.rows.clear();
    let mut in_table = false;
    for (index, record) in lines {
        let refused = Refusal::Line(index + 1);
        if record
            .iter()
            .any(|cell| cell.chars().nth(LONGEST).is_some())
        {
            return Err(refused);
        }
        let cell = |at: usize| record.get(at).map_or("", String::as_str);
        match (in_table, cell(0)) {
            (_, "") if record.iter().all(String::is_empty) => {}
            (false, "set-up") => in_table = true,
            (false, "units") => {
                notes.units = match cell(1) {
                    "us" => UnitSystem::Us,
                    "metric" => UnitSystem::Metric,
                    _ => return Err(refused),
                };
            }
            (false, "invented") => notes.demo = true,
            (false, key) => {
                let text = cell(1).to_owned();
                if let Some(place) = Choice::of(key).and_then(|c| notes.choices.get_mut(c as usize))
                {
                    *place = text;
                } else if let Some(place) =
                    Piece::of(key).and_then(|p| notes.pieces.get_mut(p as usize))
                {
                    *place = text;
                } else {
                    return Err(refused);
                }
            }
            (true, key) => {
                let (Some(set_up), Some(threads)) = (SetUp::of(key), Threads::of(cell(1))) else {
                    return Err(refused);
                };
                let mut row = Row::empty(set_up, threads);
                for (column, place) in Column::ALL.iter().zip(&mut row.cells) {
                    *place = cell(2 + *column as usize).to_owned();
                }
                notes.rows.push(row);
                if notes.rows.len() > MOST_ROWS {
                    return Err(Refusal::TooLarge);
                }
            }
        }
    }
    Ok(notes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_back() {
        let mut notes = Notes::fresh(UnitSystem::Metric);
        notes.demo = true;
        notes.rows = vec![Row {
            set_up: SetUp::Short,
            threads: Threads::Waxed,
            cells: [
                "1/4 turn".into(),
                "12,5 N·m".into(),
                "\"0.2\" mm".into(),
                String::new(),
            ],
        }];
        assert_eq!(read_csv(&csv(&notes)), Ok(notes.clone()));
        // As a spreadsheet gives it back.
        let other = format!("\u{feff}{}", csv(&notes).replace("\r\n", "\n"));
        assert_eq!(read_csv(&other), Ok(notes));
    }

    #[test]
    fn what_is_no_such_file_is_refused_with_its_reason() {
        assert_eq!(read_csv(""), Err(Refusal::Foreign));
        assert_eq!(read_csv("a,b\n1,2"), Err(Refusal::Foreign));
        assert_eq!(read_csv("clampwright-bench,2\n"), Err(Refusal::Newer));
        let good = csv(&Notes::fresh(UnitSystem::Us));
        assert_eq!(
            read_csv(&good.replace("bare,dry", "bore,dry")),
            Err(Refusal::Line(14))
        );
        assert_eq!(
            read_csv(&good.replace("units,us", "units,uk")),
            Err(Refusal::Line(2))
        );
        assert_eq!(read_csv(&"x".repeat(70_000)), Err(Refusal::TooLarge));
        let many = "bare,dry,,,,\r\n".repeat(300);
        assert_eq!(read_csv(&(good + &many)), Err(Refusal::TooLarge));
        for key in ["file.foreign", "file.too-large", "file.newer", "file.line"] {
            assert_ne!(crate::words::message(key), "?");
        }
    }
}
