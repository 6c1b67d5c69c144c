//! Bench day: what is typed in, the joints that it was read on, and what the readings come to.

pub mod file;
pub mod fit;
mod joint;
mod least_squares;

pub use file::{Refusal, csv, read_csv};
pub use fit::{Estimate, Fit, Odd, fit, slip_line};
pub use joint::{
    Line, SLEEVE_METAL, curve_band, fitted_line, judged, past_stop, scenario, stop_torques,
};

use calc_core::quantity::{Dimension, ReadError, Typed, UnitSystem, read, unit_for};

use crate::problem::keyed;

keyed! {
    /// What the bolt is tightened through.
    SetUp {
        /// The tube alone.
        Bare "bare",
        /// A plate on each face.
        Plates "plates",
        /// A sleeve between the walls, cut to the room there.
        Sleeve "sleeve",
        /// A sleeve cut short.
        Short "short",
        /// A strap clamped between plates and pulled until it slips.
        Strap "strap",
    }
}

keyed! {
    /// How the threads were.
    Threads {
        /// As they come, clean and dry.
        Dry "dry",
        /// Waxed.
        Waxed "waxed",
    }
}

keyed! {
    /// What is read; the columns of the table.
    Column {
        /// Turn of the nut from snug.
        Turn "turn",
        /// Torque on the wrench.
        Torque "torque",
        /// Dent of one face under load.
        Dent "dent",
        /// Load at which the strap slipped.
        Slip "slip",
    }
}

impl Column {
    /// What it measures.
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::Turn => Dimension::Angle,
            Self::Torque => Dimension::Torque,
            Self::Dent => Dimension::Length,
            Self::Slip => Dimension::Force,
        }
    }

    /// The largest number that anybody can mean, in SI.
    #[must_use]
    pub const fn most(self) -> f64 {
        match self {
            // Ten turns.
            Self::Turn => 62.9,
            Self::Torque => 3000.0,
            Self::Dent => 0.05,
            Self::Slip => 1e6,
        }
    }
}

keyed! {
    /// What is said once of the pieces on the bench.
    Piece {
        /// Width of the tube under the washer.
        Width "width",
        /// Depth of the tube along the bolt.
        Depth "depth",
        /// Wall.
        Wall "wall",
        /// Thickness of the plates.
        Plate "plate",
        /// How much the short sleeve is short.
        Short "short",
    }
}

keyed! {
    /// What is chosen once.
    Choice {
        /// Bolt size.
        Bolt "bolt",
        /// Grade of the bolt.
        Grade "grade",
        /// Metal of the tube.
        Metal "metal",
        /// What the sleeves are cut from.
        Sleeve "sleeve",
        /// Pairs of faces at the strap.
        Planes "planes",
    }
}

/// A line of the table, as it was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What the bolt was tightened through.
    pub set_up: SetUp,
    /// How the threads were.
    pub threads: Threads,
    /// In the order of [`Column::ALL`].
    pub cells: [String; 4],
}

impl Row {
    /// A line without readings.
    #[must_use]
    pub fn empty(set_up: SetUp, threads: Threads) -> Self {
        Self {
            set_up,
            threads,
            cells: Default::default(),
        }
    }

    /// What was typed in a column.
    #[must_use]
    pub fn typed(&self, column: Column) -> &str {
        self.cells.get(column as usize).map_or("", String::as_str)
    }

    /// A reading in SI; `None` where nothing was typed.
    ///
    /// # Errors
    /// What is no such amount, or larger than anything that can be meant.
    pub fn reading(&self, column: Column, units: UnitSystem) -> Result<Option<f64>, String> {
        let text = self.typed(column);
        if text.trim().is_empty() {
            return Ok(None);
        }
        let typed = amount(text, column.dimension(), units).map_err(|error| error.to_string())?;
        if typed.si < 0.0 || typed.si > column.most() {
            let most = calc_core::quantity::write(column.most(), column.dimension(), units);
            return Err(crate::words::filled("bench.range", &[("most", &most)]));
        }
        Ok(Some(typed.si))
    }
}

/// Reads an amount; a number alone is in the units of the page.
///
/// # Errors
/// As [`read`].
pub fn amount(text: &str, dimension: Dimension, units: UnitSystem) -> Result<Typed, ReadError> {
    read(text, dimension, unit_for(dimension, units))
}

/// Everything that is typed on the page.
#[derive(Clone, Debug, PartialEq)]
pub struct Notes {
    /// Units of numbers without one.
    pub units: UnitSystem,
    /// Whether the readings are invented.
    pub demo: bool,
    /// In the order of [`Piece::ALL`].
    pub pieces: [String; 5],
    /// In the order of [`Choice::ALL`].
    pub choices: [String; 5],
    /// The readings.
    pub rows: Vec<Row>,
}

impl Notes {
    /// Before anything is typed: pieces that a shop has lying about, and empty lines.
    #[must_use]
    pub fn fresh(units: UnitSystem) -> Self {
        let (pieces, choices) = match units {
            UnitSystem::Us => (
                ["2 in", "2 in", "1/8 in", "1/4 in", "0.04 in"],
                ["unc-1.2", "sae-5", "a500-b", "rt-0.750x0.120", "2"],
            ),
            UnitSystem::Metric => (
                ["50 mm", "50 mm", "3 mm", "6 mm", "1 mm"],
                ["m12", "iso-8.8", "s235", "rt-0.750x0.120", "2"],
            ),
        };
        let lines = [SetUp::Bare, SetUp::Bare, SetUp::Sleeve, SetUp::Strap];
        Self {
            units,
            demo: false,
            pieces: pieces.map(String::from),
            choices: choices.map(String::from),
            rows: lines
                .map(|set_up| Row::empty(set_up, Threads::Dry))
                .to_vec(),
        }
    }

    /// What was typed of a piece.
    #[must_use]
    pub fn piece(&self, piece: Piece) -> &str {
        self.pieces.get(piece as usize).map_or("", String::as_str)
    }

    /// What was chosen.
    #[must_use]
    pub fn choice(&self, choice: Choice) -> &str {
        self.choices.get(choice as usize).map_or("", String::as_str)
    }

    /// Pairs of faces at the strap.
    #[must_use]
    pub fn planes(&self) -> f64 {
        if self.choice(Choice::Planes) == "1" {
            1.0
        } else {
            2.0
        }
    }
}
