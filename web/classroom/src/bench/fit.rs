//! What the readings come to: friction in the threads, strength of the wall, friction between the faces, each with how
//! far it may be off, the readings that decide it, and those that do not fit.

use calc_core::Scenario;
use calc_core::inspection::{Bench, Seen, pressed};
use calc_core::quantity::{Angle, InUnits, Length, Stress, Torque};
use calc_core::scenario::Strength;

use super::joint::factor;
use super::least_squares::{Model, Solved, solve};
use super::{Column, Notes, SetUp, Threads, scenario};

/// What a torque wrench is off by, as a share of what it shows.
///
/// ISO 6789-1 allows ±4 % from 20 % of its range (from memory).
const WRENCH: f64 = 0.04;

/// The same of the largest torque read: below a fifth of its range nobody promises anything.
const WRENCH_LEAST: f64 = 0.01;

/// What a scale and the moment of slipping are off by, as a share. An assumption.
const SCALE: f64 = 0.08;

/// What a dent read with a straightedge and feelers is off by, m. An assumption.
const DENT_OFF: f64 = 0.05e-3;

/// What a turn from snug is off by, rad: snug is found by hand. An assumption.
const TURN_OFF: f64 = 0.07;

/// A reading is odd from so many times on what it may be off by.
const ODD: f64 = 2.5;

/// An unknown counts as decided up to this standard error, as a share.
const DECIDED: f64 = 0.15;

/// The wall is fitted only where its strength moves a torque by this share of its own change.
const TELLS_OF_WALL: f64 = 0.3;

/// Two standard errors: 19 times in 20, if readings scatter as errors do.
const TWO: f64 = 2.0;

/// Why a reading does not fit: what to look for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Odd {
    /// More torque than the others say.
    High,
    /// Less torque than the others say.
    Low,
    /// The strap held more than the others say.
    HeldMore,
    /// The strap held less than the others say.
    HeldLess,
    /// Further than the curve was checked.
    Beyond,
}

impl Odd {
    /// Key of what to say.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::High => "odd.high",
            Self::Low => "odd.low",
            Self::HeldMore => "odd.held-more",
            Self::HeldLess => "odd.held-less",
            Self::Beyond => "odd.beyond",
        }
    }
}

/// A number that was fitted.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimate {
    /// The value.
    pub value: f64,
    /// Two standard errors below and above, as shares of it.
    pub low: f64,
    /// Likewise.
    pub high: f64,
    /// Whether the readings decide it.
    pub decided: bool,
    /// The readings that tell most of it, most first: together at least half.
    pub rows: Vec<usize>,
}

impl Estimate {
    fn new(value: f64, error: f64, parts: &[f64], rows: &[usize]) -> Self {
        let spread = (TWO * error.min(3.0)).exp();
        let mut order: Vec<(f64, usize)> =
            parts.iter().copied().zip(rows.iter().copied()).collect();
        order.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut told = 0.0;
        let telling = order.into_iter().take_while(|(part, _)| {
            let wanted = told < 0.5 && *part > 0.0;
            told += part;
            wanted
        });
        Self {
            value,
            low: value / spread,
            high: value * spread,
            decided: error <= DECIDED,
            rows: telling.map(|(_, row)| row).take(4).collect(),
        }
    }
}

/// What the readings come to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fit {
    /// Nut factor of dry and of waxed threads.
    pub nut_factor: [Option<Estimate>; 2],
    /// Yield strength of the wall, Pa.
    pub wall: Option<Estimate>,
    /// Slip coefficient.
    pub slip: Option<Estimate>,
    /// Whether the slip coefficient rests on a nut factor out of a table.
    pub slip_by_table: bool,
    /// Readings that do not fit, by row. They are left out of the fit where enough others are left.
    pub odd: Vec<(usize, Odd)>,
    /// Readings that counted.
    pub counted: usize,
}

impl Fit {
    /// The nut factor that a slip coefficient rests on, its standard error as a share, and whether it is that of the
    /// table, because the readings do not decide it.
    fn factor_of(&self, threads: Threads) -> Option<(f64, f64, bool)> {
        let fitted = self.nut_factor.get(threads as usize)?.as_ref();
        if let Some(estimate) = fitted.filter(|estimate| estimate.decided) {
            let error = (estimate.high / estimate.value).ln() / TWO;
            return Some((estimate.value, error, false));
        }
        let table = factor(threads)?;
        // The published range as two standard errors either way.
        let error = (table.high() / table.low()).ln() / (2.0 * TWO);
        Some((table.typical(), error, true))
    }
}

/// A torque with what was read beside it.
#[derive(Clone, Copy)]
struct Reading {
    row: usize,
    set_up: usize,
    threads: Threads,
    torque: f64,
    seen: Seen,
    off: f64,
}

/// The unknowns of a fit, in the order of the logarithms.
struct Torques {
    joints: Vec<Scenario>,
    readings: Vec<Reading>,
    /// Which threads were read.
    threads: Vec<Threads>,
    fits_wall: bool,
    /// Strength where it is not fitted.
    wall: f64,
}

impl Torques {
    fn wall(&self, logs: &[f64]) -> f64 {
        let fitted = logs.get(self.threads.len()).filter(|_| self.fits_wall);
        // No metal is softer or harder.
        fitted
            .map_or(self.wall, |log| log.exp())
            .clamp(20e6, 1200e6)
    }

    fn benches(&self, wall: f64) -> Vec<Bench> {
        let joints = self.joints.iter();
        joints.map(|s| Bench::new(s, Stress::of_si(wall))).collect()
    }

    /// Torque expected at a reading with a nut factor of 1.
    fn lever(benches: &[Bench], reading: &Reading) -> Option<(f64, bool)> {
        let bench = benches.get(reading.set_up)?;
        let expected = bench.expected(reading.seen)?;
        Some((bench.torque(1.0, expected.clamp).si(), expected.on_curve))
    }

    fn factor(&self, logs: &[f64], threads: Threads) -> f64 {
        let at = self.threads.iter().position(|known| *known == threads);
        at.and_then(|at| logs.get(at)).map_or(0.2, |log| log.exp())
    }

    fn start(&self) -> Vec<f64> {
        let factors = self
            .threads
            .iter()
            .map(|threads| factor(*threads).map_or(0.2, |row| row.typical()).ln());
        let wall = self.fits_wall.then(|| self.wall.ln());
        factors.chain(wall).collect()
    }
}

impl Model for Torques {
    fn residuals(&self, logs: &[f64]) -> Vec<f64> {
        let benches = self.benches(self.wall(logs));
        self.readings
            .iter()
            .map(|reading| {
                let (lever, _) = Self::lever(&benches, reading).unwrap_or_default();
                let expected = self.factor(logs, reading.threads) * lever;
                (reading.torque - expected) / reading.off
            })
            .collect()
    }
}

/// Fits what was read.
///
/// # Errors
/// What of the pieces cannot be.
pub fn fit(notes: &Notes) -> Result<Fit, String> {
    let mut fit = Fit::default();
    let Some(mut torques) = torques(notes, &mut fit)? else {
        return Ok(fit);
    };
    let mut solved = solved(&mut torques);
    // The worst of those that do not fit is left out, while enough are left to tell which is the odd one.
    while let Some(found) = &solved {
        let worst = found
            .residuals
            .iter()
            .enumerate()
            .max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
        let Some((at, residual)) = worst.filter(|(_, r)| r.abs() > ODD) else {
            break;
        };
        let why = if *residual > 0.0 { Odd::High } else { Odd::Low };
        let few = torques.readings.len() <= found.logs.len() + 2;
        if few || fit.odd.len() >= torques.readings.len() / 3 {
            let odd = found.residuals.iter().zip(&torques.readings);
            let odd = odd.filter(|(r, _)| r.abs() > ODD);
            fit.odd.extend(
                odd.map(|(r, reading)| (reading.row, if *r > 0.0 { Odd::High } else { Odd::Low })),
            );
            break;
        }
        fit.odd.push((torques.readings.remove(at).row, why));
        solved = self::solved(&mut torques);
    }
    if let Some(solved) = solved {
        fit.counted = torques.readings.len();
        take(&torques, &solved, &mut fit);
    }
    slipped(notes, &mut fit)?;
    fit.odd.sort_by_key(|(row, _)| *row);
    Ok(fit)
}

/// The readings with a torque and something beside it.
fn torques(notes: &Notes, fit: &mut Fit) -> Result<Option<Torques>, String> {
    let through = [SetUp::Bare, SetUp::Plates, SetUp::Sleeve, SetUp::Short];
    let mut joints = Vec::new();
    let mut place = [None; 4];
    for (at, set_up) in through.iter().enumerate() {
        if notes.rows.iter().any(|row| row.set_up == *set_up) {
            if let Some(place) = place.get_mut(at) {
                *place = Some(joints.len());
            }
            joints.push(scenario(notes, *set_up)?);
        }
    }
    let Some(first) = joints.first() else {
        // Only a strap: its joint is looked at all the same.
        scenario(notes, SetUp::Strap)?;
        return Ok(Some(Torques {
            joints: Vec::new(),
            readings: Vec::new(),
            threads: Vec::new(),
            fits_wall: false,
            wall: 0.0,
        }));
    };
    let wall = first.tube.yield_strength(Strength::Likely).si();
    let read = |row: &super::Row, column| row.reading(column, notes.units).ok().flatten();
    let most = notes
        .rows
        .iter()
        .filter_map(|row| read(row, Column::Torque))
        .fold(0.0, f64::max);
    let mut torques = Torques {
        joints,
        readings: Vec::new(),
        threads: Vec::new(),
        fits_wall: false,
        wall,
    };
    let benches = torques.benches(wall);
    for (index, row) in notes.rows.iter().enumerate() {
        let set_up = through.iter().position(|s| *s == row.set_up);
        let Some(set_up) = set_up.and_then(|at| place.get(at).copied().flatten()) else {
            continue;
        };
        let Some(torque) = read(row, Column::Torque).filter(|torque| *torque > 0.0) else {
            continue;
        };
        // A dent tells more than a turn, whose beginning nobody knows well.
        let dent = read(row, Column::Dent)
            .filter(|dent| *dent > 0.0)
            .map(|dent| {
                (
                    Seen::Dent(Length::of_si(dent)),
                    Seen::Dent(Length::of_si(dent + DENT_OFF)),
                )
            });
        let turn = read(row, Column::Turn)
            .filter(|turn| *turn > 0.0)
            .map(|turn| {
                (
                    Seen::Turn(Angle::of_si(turn)),
                    Seen::Turn(Angle::of_si(turn + TURN_OFF)),
                )
            });
        let Some((seen, moved)) = dent.or(turn) else {
            continue;
        };
        let mut reading = Reading {
            row: index,
            set_up,
            threads: row.threads,
            torque,
            seen,
            off: 1.0,
        };
        let Some((lever, on_curve)) = Torques::lever(&benches, &reading) else {
            continue;
        };
        if !on_curve {
            fit.odd.push((index, Odd::Beyond));
            continue;
        }
        let further = Torques::lever(
            &benches,
            &Reading {
                seen: moved,
                ..reading
            },
        );
        let slope = further.map_or(0.0, |(further, _)| (further - lever) / lever.max(1e-9));
        reading.off = (WRENCH * torque)
            .hypot(WRENCH_LEAST * most)
            .hypot(slope.clamp(0.0, 1.0) * torque);
        torques.readings.push(reading);
        if !torques.threads.contains(&row.threads) {
            torques.threads.push(row.threads);
        }
    }
    Ok(Some(torques))
}

/// Fits, with the strength of the wall where the readings tell of it.
fn solved(torques: &mut Torques) -> Option<Solved> {
    if torques.readings.is_empty() {
        return None;
    }
    let (weaker, stronger) = (
        torques.benches(torques.wall * 0.95),
        torques.benches(torques.wall * 1.05),
    );
    let tells = torques.readings.iter().any(|reading| {
        let pair = (
            Torques::lever(&weaker, reading),
            Torques::lever(&stronger, reading),
        );
        matches!(pair, (Some((a, _)), Some((b, _))) if (b / a).ln() > 0.1 * TELLS_OF_WALL)
    });
    torques.fits_wall = tells && torques.readings.len() > torques.threads.len() + 1;
    // Threads of which no reading is left.
    let left: Vec<Threads> = torques
        .threads
        .iter()
        .copied()
        .filter(|threads| torques.readings.iter().any(|r| r.threads == *threads))
        .collect();
    torques.threads = left;
    solve(&*torques, &torques.start())
}

fn take(torques: &Torques, solved: &Solved, fit: &mut Fit) {
    let rows: Vec<usize> = torques.readings.iter().map(|reading| reading.row).collect();
    let estimate = |at: usize| -> Option<Estimate> {
        Some(Estimate::new(
            solved.logs.get(at)?.exp(),
            *solved.errors.get(at)?,
            solved.parts.get(at)?,
            &rows,
        ))
    };
    for (at, threads) in torques.threads.iter().enumerate() {
        if let Some(place) = fit.nut_factor.get_mut(*threads as usize) {
            *place = estimate(at);
        }
    }
    if torques.fits_wall {
        fit.wall = estimate(torques.threads.len());
    }
}

/// The slip coefficient: slip load over what presses the faces together, a line through zero.
fn slipped(notes: &Notes, fit: &mut Fit) -> Result<(), String> {
    let joint = scenario(notes, SetUp::Strap)?;
    let mut points = Vec::new();
    let mut rough = 0.0_f64;
    for (index, row) in notes.rows.iter().enumerate() {
        let read = |column| row.reading(column, notes.units).ok().flatten();
        if row.set_up != SetUp::Strap {
            continue;
        }
        let (Some(torque), Some(slip)) = (read(Column::Torque), read(Column::Slip)) else {
            continue;
        };
        if torque <= 0.0 || slip <= 0.0 {
            continue;
        }
        let Some((k, error, by_table)) = fit.factor_of(row.threads) else {
            continue;
        };
        fit.slip_by_table |= by_table;
        rough = rough.max(error);
        let press = pressed(&joint, k, notes.planes(), Torque::of_si(torque)).si();
        points.push((index, press, slip));
    }
    while let Some(line) = Line::through(&points) {
        let off = |&(_, press, slip): &(usize, f64, f64)| {
            (slip - line.slope * press) / (SCALE * line.slope * press)
        };
        let worst = points
            .iter()
            .enumerate()
            .max_by(|a, b| off(a.1).abs().total_cmp(&off(b.1).abs()))
            .map(|(at, point)| (at, off(point)));
        if let Some((at, residual)) = worst.filter(|(_, r)| r.abs() > ODD)
            && points.len() > 2
        {
            let why = if residual > 0.0 {
                Odd::HeldMore
            } else {
                Odd::HeldLess
            };
            fit.odd.push((points.remove(at).0, why));
            continue;
        }
        let rows: Vec<usize> = points.iter().map(|(row, ..)| *row).collect();
        fit.counted += rows.len();
        fit.slip = Some(Estimate {
            // Each pull tells as much as any other.
            rows: rows.clone(),
            ..Estimate::new(line.slope, line.error.hypot(rough), &[], &rows)
        });
        break;
    }
    Ok(())
}

/// Slip load at a torque with dry threads, as fitted: lowest, likely, highest.
#[must_use]
pub fn slip_line(notes: &Notes, fit: &Fit, torque: f64) -> Option<[f64; 3]> {
    let joint = scenario(notes, SetUp::Strap).ok()?;
    let slip = fit.slip.as_ref()?;
    let (k, ..) = fit.factor_of(Threads::Dry)?;
    let press = pressed(&joint, k, notes.planes(), Torque::of_si(torque)).si();
    Some([slip.low, slip.value, slip.high].map(|mu| mu * press))
}

/// A line through zero whose points are off by a share of what they are.
struct Line {
    slope: f64,
    /// Standard error, as a share.
    error: f64,
}

impl Line {
    /// With errors in proportion to the values the weights make the slope the mean of the points' own.
    fn through(points: &[(usize, f64, f64)]) -> Option<Self> {
        let n = points.len() as f64;
        let own = points.iter().map(|(_, press, slip)| slip / press);
        let slope = own.clone().sum::<f64>() / n;
        if !(slope.is_finite() && slope > 0.0) {
            return None;
        }
        let spread: f64 = own.map(|s| ((s / slope - 1.0) / SCALE).powi(2)).sum();
        let scatter = if n > 1.0 {
            (spread / (n - 1.0)).max(1.0)
        } else {
            1.0
        };
        Some(Self {
            slope,
            error: SCALE * (scatter / n).sqrt(),
        })
    }
}
