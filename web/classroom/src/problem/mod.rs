//! A problem: what it gives, what it asks, the answer, and the usual mistakes with what each would come to.

mod hollow;
mod slip;
mod tighten;

use calc_core::catalog::Thread;
use calc_core::quantity::{Dimension, Unit, UnitSystem, read, unit_for, write, write_in};
use calc_core::report::Amount;

use crate::picture::Shape;
use crate::words::{fill, message};

/// How far an answer may be off: rounding on the way, not a wrong step. As in the lessons.
pub const TOLERANCE: f64 = 0.03;

/// By how much a length that is cut may be off, m: 0.003 in. A share of it would let a sleeve pass that is cut short.
pub const CUT: f64 = 0.003 * 0.0254;

macro_rules! keyed {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident $key:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $name { $($(#[$vdoc])* $variant,)+ }

        impl $name {
            /// All, in order.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// Its key, in addresses and in the table of words.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key,)+ }
            }

            /// The one of a key.
            #[must_use]
            pub fn of(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.key() == key)
            }
        }
    };
}
pub(crate) use keyed;

keyed! {
    /// How hard.
    Level {
        /// One formula, which stands on the sheet.
        Easy "easy",
        /// Two steps, the formulas at the head of the sheet.
        Middle "middle",
        /// More steps, no formulas.
        Hard "hard",
    }
}

keyed! {
    /// What a problem is about, in the order of the lessons.
    Kind {
        /// Torque and clamp load.
        Torque "torque",
        /// Stretch of a bolt.
        Stretch "stretch",
        /// The same torque on waxed threads.
        Wax "wax",
        /// What friction holds.
        Slip "slip",
        /// How many bolts.
        Bolts "bolts",
        /// What of a pull the bolt feels.
        Share "share",
        /// What a hollow wall takes.
        Crush "crush",
        /// A loose sleeve, and one cut short.
        Sleeve "sleeve",
        /// Clamp load lost by settling, by cold.
        Loss "loss",
    }
}

keyed! {
    /// A usual mistake.
    Wrong {
        /// The radius for the diameter.
        Radius "radius",
        /// A unit slipped.
        Unit "unit",
        /// The proof load for the preload.
        Proof "proof",
        /// K left out.
        NoK "no-k",
        /// The division turned around.
        Turned "turned",
        /// Multiplied where it had to be divided.
        Times "times",
        /// Nothing changed.
        Same "same",
        /// The dry nut factor.
        Dry "dry",
        /// The area of the shank for that of the thread.
        ShankArea "shank-area",
        /// The area of the thread for that of the shank.
        ThreadArea "thread-area",
        /// One pair of faces where there are two.
        OneFace "one-face",
        /// Two pairs of faces where there is one.
        TwoFaces "two-faces",
        /// One bolt where there are more.
        OneBolt "one-bolt",
        /// The clamp load for the friction.
        NoFriction "no-friction",
        /// The pull left out.
        NoPull "no-pull",
        /// The whole pull taken off.
        WholePull "whole-pull",
        /// The bolt's share for that of the parts, or the other way around.
        OtherShare "other-share",
        /// One stiffness divided by the other.
        Ratio "ratio",
        /// Rounded down.
        Down "down",
        /// The factor of safety left out.
        NoFactor "no-factor",
        /// The loss left out.
        NoLoss "no-loss",
        /// The loss for what is left.
        LossOnly "loss-only",
        /// The next row of the table.
        Row "row",
        /// The wanted clamp load for that of the wall.
        Wanted "wanted",
        /// The clamp load of the wall for what is missing.
        Wall "wall",
        /// One wall taken off where there are two.
        OneWall "one-wall",
        /// No wall taken off.
        NoWall "no-wall",
        /// Nothing added to file off.
        NoOver "no-over",
        /// What is to be filed off taken off at once.
        OverOff "over-off",
        /// Both faces for one.
        BothFaces "both-faces",
        /// The spring of the bolt alone.
        BoltOnly "bolt-only",
        /// The spring of the parts alone.
        PartsOnly "parts-only",
        /// The bolt's own shrinking left out.
        NoSteel "no-steel",
    }
}

/// Something that a problem gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Value {
    /// Its name in the text.
    pub name: &'static str,
    /// As it is printed.
    pub text: String,
    /// What is printed, in SI; `None` for words.
    pub si: Option<f64>,
    /// What it measures.
    pub dimension: Dimension,
}

/// A problem.
#[derive(Clone, Debug)]
pub struct Problem {
    /// What it is about.
    pub kind: Kind,
    /// How hard.
    pub level: Level,
    /// Units of its stock and its numbers.
    pub units: UnitSystem,
    /// What it gives.
    pub values: Vec<Value>,
    /// Rows of its table, as printed: what, and what belongs to it.
    pub table: Vec<[String; 2]>,
    /// The answer.
    pub answer: Amount,
    /// Usual mistakes, each with what it comes to.
    pub wrong: Vec<(Wrong, f64)>,
    /// What its picture shows.
    pub shape: Shape,
}

impl Problem {
    /// What is asked.
    #[must_use]
    pub fn asked(&self) -> String {
        let key = format!("ask.{}.{}", self.kind.key(), self.level.key());
        let value = |name: &str| {
            let value = self.values.iter().find(|value| value.name == name);
            value.map(|value| value.text.clone())
        };
        let text = fill(message(&key), |name| match name {
            // M8 is spoken with a vowel first, 1/2 without.
            "a-bolt" => Some(fill(
                message(match self.units {
                    UnitSystem::Us => "a-bolt.us",
                    UnitSystem::Metric => "a-bolt.metric",
                }),
                value,
            )),
            _ => value(name),
        });
        // An equation stays on one line.
        text.replace(" = ", "\u{a0}=\u{a0}")
    }

    /// The answer as written.
    #[must_use]
    pub fn answered(&self) -> String {
        self.written(self.answer.si)
    }

    /// An amount of the kind of the answer as written: three digits, however small.
    #[must_use]
    pub fn written(&self, si: f64) -> String {
        write_in(si, self.unit(), if self.is_cut() { 4 } else { 3 })
    }

    /// The unit that the answer is asked in.
    #[must_use]
    pub fn unit(&self) -> Unit {
        match self.answer.dimension {
            Dimension::Share => Unit::Percent,
            dimension => unit_for(dimension, self.units),
        }
    }

    /// Lowest and highest answer that is taken as right.
    #[must_use]
    pub fn accepted(&self) -> [f64; 2] {
        let off = self.off(self.answer.si);
        [self.answer.si - off, self.answer.si + off]
    }

    /// Whether it asks for a length to be cut.
    fn is_cut(&self) -> bool {
        self.kind == Kind::Sleeve && self.level == Level::Easy
    }

    /// By how much an amount may be off and still count as this one.
    fn off(&self, si: f64) -> f64 {
        if self.is_cut() {
            CUT
        } else if self.answer.dimension == Dimension::Count {
            0.0
        } else {
            TOLERANCE * si.abs()
        }
    }

    /// Whether two amounts of its kind count as the same.
    #[must_use]
    pub fn same(&self, a: f64, b: f64) -> bool {
        (a - b).abs() <= self.off(b).max(1e-12)
    }

    /// Everything that is printed of it, for digests and for telling two apart.
    #[must_use]
    pub fn told(&self) -> String {
        let mut told = format!("{}/{}", self.kind.key(), self.level.key());
        for value in &self.values {
            told += &format!("|{}={}", value.name, value.text);
        }
        for [what, amount] in &self.table {
            told += &format!("|{what}:{amount}");
        }
        told += &format!("|answer={}", self.answered());
        for (wrong, si) in &self.wrong {
            told += &format!("|{}={}", wrong.key(), self.written(*si));
        }
        told
    }

    /// Every problem of a kind, in the order of the catalog.
    #[must_use]
    pub fn all(kind: Kind, level: Level, units: UnitSystem) -> Vec<Self> {
        let mut all = Vec::new();
        let mut seen = Vec::new();
        let stock = Stock::of(units);
        let mut add = |problem: Option<Self>| {
            let Some(problem) = problem else { return };
            let told = crate::draw::hash(&problem.told());
            if !seen.contains(&told) {
                seen.push(told);
                all.push(problem);
            }
        };
        match kind {
            Kind::Torque => tighten::torque(&stock, level, &mut add),
            Kind::Stretch => tighten::stretch(&stock, level, &mut add),
            Kind::Wax => tighten::wax(&stock, level, &mut add),
            Kind::Slip => slip::slip(&stock, level, &mut add),
            Kind::Bolts => slip::bolts(&stock, level, &mut add),
            Kind::Share => slip::share(&stock, level, &mut add),
            Kind::Crush => hollow::crush(&stock, level, &mut add),
            Kind::Sleeve => hollow::sleeve(&stock, level, &mut add),
            Kind::Loss => hollow::loss(&stock, level, &mut add),
        }
        all
    }
}

/// Where a problem goes once it is made; one that does not work out is left.
pub(crate) type Add<'a> = dyn FnMut(Option<Problem>) + 'a;

/// What is bought in a reader's country, by the ids of the catalog and in its units.
pub(crate) struct Stock {
    pub(crate) units: UnitSystem,
    pub(crate) bolts: &'static [&'static str],
    pub(crate) grades: &'static [&'static str],
    /// Width and depth of tubes, mm or in.
    pub(crate) tubes: &'static [(f64, f64)],
    /// Walls of tubes, mm or in.
    pub(crate) walls: &'static [f64],
    pub(crate) tube_steel: &'static str,
    /// Lengths between head and nut, mm or in.
    pub(crate) grips: &'static [f64],
}

impl Stock {
    pub(crate) const fn of(units: UnitSystem) -> Self {
        match units {
            UnitSystem::Us => Self {
                units,
                bolts: &[
                    "unc-3.8", "unc-7.16", "unc-1.2", "unc-9.16", "unc-5.8", "unc-3.4",
                ],
                grades: &["sae-5", "sae-8"],
                tubes: &[
                    (2.0, 2.0),
                    (2.0, 3.0),
                    (2.5, 2.5),
                    (3.0, 3.0),
                    (3.0, 4.0),
                    (4.0, 4.0),
                ],
                walls: &[0.125, 0.1875, 0.25],
                tube_steel: "a500-b",
                grips: &[1.0, 1.5, 2.0, 2.5, 3.0, 4.0],
            },
            UnitSystem::Metric => Self {
                units,
                bolts: &["m8", "m10", "m12", "m14", "m16", "m20"],
                grades: &["iso-8.8", "iso-10.9"],
                tubes: &[
                    (50.0, 50.0),
                    (60.0, 60.0),
                    (60.0, 80.0),
                    (80.0, 80.0),
                    (80.0, 100.0),
                    (100.0, 100.0),
                ],
                walls: &[3.0, 4.0, 5.0, 6.0],
                tube_steel: "s235",
                grips: &[20.0, 30.0, 40.0, 50.0, 60.0, 80.0],
            },
        }
    }

    /// A length of its own unit.
    pub(crate) fn length(&self, number: f64) -> f64 {
        unit_for(Dimension::Length, self.units).to_si(number)
    }

    /// A number rounded to two digits in the units of the sheet, so that it can be worked with by hand.
    pub(crate) fn round(&self, si: f64, dimension: Dimension) -> f64 {
        let unit = unit_for(dimension, self.units);
        read(&write_in(si, unit, 2), dimension, unit).map_or(si, |typed| typed.si)
    }

    pub(crate) fn draft(&self, kind: Kind, level: Level) -> Draft {
        Draft(Problem {
            kind,
            level,
            units: self.units,
            values: Vec::new(),
            table: Vec::new(),
            answer: Amount::new(0.0, Dimension::Ratio),
            wrong: Vec::new(),
            shape: Shape::default(),
        })
    }
}

/// A problem in the making. What it gives is used as it is printed, so that a student who works with the sheet's
/// numbers gets the sheet's answer.
pub(crate) struct Draft(Problem);

impl Draft {
    /// Gives an amount; back comes what was printed.
    pub(crate) fn gives(&mut self, name: &'static str, si: f64, dimension: Dimension) -> f64 {
        let (text, si) = self.printed(si, dimension);
        self.0.values.push(Value {
            name,
            text,
            si: Some(si),
            dimension,
        });
        si
    }

    /// An amount as it is printed, and what that is.
    pub(crate) fn printed(&self, si: f64, dimension: Dimension) -> (String, f64) {
        let units = self.0.units;
        let text = write(si, dimension, units);
        let si = read(&text, dimension, unit_for(dimension, units)).map_or(si, |typed| typed.si);
        (text, si)
    }

    /// Gives words.
    pub(crate) fn says(&mut self, name: &'static str, text: impl Into<String>) {
        self.0.values.push(Value {
            name,
            text: text.into(),
            si: None,
            dimension: Dimension::Ratio,
        });
    }

    /// Gives a bolt: its name and its diameter.
    pub(crate) fn bolt(&mut self, thread: &'static Thread) -> f64 {
        self.says("bolt", thread.label());
        self.gives("d", thread.major().value, Dimension::Length)
    }

    pub(crate) fn row(&mut self, what: (f64, Dimension), amount: (f64, Dimension)) -> [f64; 2] {
        let (left, right) = (
            self.printed(what.0, what.1),
            self.printed(amount.0, amount.1),
        );
        self.0.table.push([left.0, right.0]);
        [left.1, right.1]
    }

    pub(crate) fn text(&self, name: &str) -> String {
        let value = self.0.values.iter().find(|value| value.name == name);
        value.map_or_else(String::new, |value| value.text.clone())
    }

    pub(crate) fn shows(&mut self, shape: Shape) {
        self.0.shape = shape;
    }

    /// With its answer and the usual mistakes. Mistakes that nobody could tell from the answer or from each other are
    /// left out; `None` where fewer than two are left, or no number came out.
    pub(crate) fn asks(
        mut self,
        answer: f64,
        dimension: Dimension,
        wrong: &[(Wrong, f64)],
    ) -> Option<Problem> {
        let count = dimension == Dimension::Count;
        let cut = self.0.is_cut();
        let apart = |a: f64, b: f64| {
            if cut {
                (a - b).abs() > 2.2 * CUT
            } else if count {
                (a - b).abs() > 0.5
            } else {
                // Each may be off by the tolerance.
                (a - b).abs() > 2.2 * TOLERANCE * a.abs().max(b.abs())
            }
        };
        if !(answer.is_finite() && answer > 0.0) {
            return None;
        }
        let mut kept: Vec<(Wrong, f64)> = Vec::new();
        for &(why, si) in wrong {
            let known = kept.iter().all(|(_, other)| apart(si, *other));
            if si.is_finite() && si > 0.0 && apart(si, answer) && known {
                kept.push((why, si));
            }
        }
        self.0.answer = Amount::new(answer, dimension);
        self.0.wrong = kept;
        (self.0.wrong.len() >= 2).then_some(self.0)
    }
}
