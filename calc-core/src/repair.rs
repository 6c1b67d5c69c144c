//! Repairs: candidates from the catalogue, each evaluated by the same path as the joint itself, those
//! that do not hold dropped, the rest ranked by margin, work and cost.

use crate::catalog::{self, Family, Material};
use crate::evaluate::judge;
use crate::quantity::InUnits;
use crate::report::{CheckId, Verdict};
use crate::scenario::{Field, Input, Scenario, SupportKind};
use serde::{Deserialize, Serialize};

/// The reader's own rates. The defaults are assumptions, to be changed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Rates {
    /// Money for an hour of work.
    pub hour: f64,
    /// Money for a kilogram of steel.
    pub steel_kg: f64,
    /// Money for a kilogram of aluminium.
    pub aluminium_kg: f64,
    /// Money for a kilogram of stainless steel.
    pub stainless_kg: f64,
    /// Money for one bolt with nut and washers.
    pub bolt: f64,
    /// Minutes for a hole drilled or opened up.
    pub minutes_hole: f64,
    /// Minutes for a cut squared off.
    pub minutes_cut: f64,
    /// Minutes for one weld round a sleeve end, with preparation.
    pub minutes_weld: f64,
    /// Minutes to loosen and retighten one bolt.
    pub minutes_bolt: f64,
}

impl Default for Rates {
    fn default() -> Self {
        Self {
            hour: 90.0,
            steel_kg: 5.0,
            aluminium_kg: 12.0,
            stainless_kg: 15.0,
            bolt: 4.0,
            minutes_hole: 6.0,
            minutes_cut: 5.0,
            minutes_weld: 12.0,
            minutes_bolt: 4.0,
        }
    }
}

/// Work and material that a repair adds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Work {
    /// Holes to drill or open up.
    pub holes: u32,
    /// Cuts to make.
    pub cuts: u32,
    /// Welds to lay.
    pub welds: u32,
    /// Minutes of work by the rates.
    pub minutes: f64,
    /// Added mass.
    pub mass_kg: f64,
    /// Cost by the rates, work and material.
    pub cost: f64,
}

/// What kind of change a repair is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum RepairKind {
    /// Nothing new under the bolt: another torque or another bolt.
    Tightening,
    /// A thicker, larger washer.
    ThickWasher,
    /// Plates on both faces.
    Spreader,
    /// Sleeve between the inside faces.
    LooseSleeve,
    /// Sleeve through both faces, not welded.
    ThroughSleeve,
    /// Sleeve through both faces, welded at both ends.
    WeldedSleeve,
    /// Block in the tube.
    SolidInsert,
}

/// One repair.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Repair {
    /// Kind.
    pub kind: RepairKind,
    /// The joint as repaired.
    pub input: Input,
    /// The fields that differ from the joint as it is.
    pub changed: Vec<Field>,
    /// Verdict of the repaired joint.
    pub verdict: Verdict,
    /// Check that decides.
    pub weakest: CheckId,
    /// Its utilisation.
    pub utilisation: Option<f64>,
    /// Torque to set.
    pub torque_nm: f64,
    /// Clamp that is reached.
    pub clamp_reached_n: f64,
    /// Work, mass and cost.
    pub work: Work,
}

/// The candidates that hold, and the three that are named.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Repairs {
    /// How many were evaluated.
    pub tried: usize,
    /// Those that hold or are close, best of each kind first, then by cost.
    pub list: Vec<Repair>,
    /// Index of the cheapest that holds.
    pub cheapest: Option<usize>,
    /// Index of the one with the most in hand.
    pub strongest: Option<usize>,
    /// Index of the cheapest without a weld.
    pub without_welding: Option<usize>,
}

/// Thicknesses of plate, mm (3/16, 1/4, 3/8, 1/2 in). Common stock, no source.
const PLATES_MM: [f64; 4] = [4.7625, 6.35, 9.525, 12.7];

/// Length error of a sleeve cut and filed to fit, mm. An assumption.
const FITTED_SHORT_MM: f64 = 0.1;

/// Share of the clamp limit that less torque aims at, so that the check does not end on the line.
const AIM: f64 = 0.79;

/// Finds the repairs of a joint.
#[must_use]
pub fn repairs(s: &Scenario, rates: &Rates) -> Repairs {
    let mut found: Vec<Repair> = Vec::new();
    let mut tried = 0;
    for (kind, input) in candidates(s) {
        let Ok(candidate) = Scenario::new(&input) else {
            continue;
        };
        tried += 1;
        let judged = judge(&candidate, false);
        let (weakest, verdict) = judged.weakest();
        if !matches!(verdict, Verdict::Holds | Verdict::Close) {
            continue;
        }
        found.push(Repair {
            kind,
            changed: Field::ALL
                .iter()
                .copied()
                .filter(|&f| {
                    input.number(f) != s.input.number(f) || input.choice(f) != s.input.choice(f)
                })
                .collect(),
            verdict,
            weakest,
            utilisation: judged.checks.first().and_then(|c| c.utilisation),
            torque_nm: judged.tight.torque.si(),
            clamp_reached_n: judged.stands.reached,
            work: work(s, &candidate, kind, rates),
            input,
        });
    }
    found.sort_by(|a, b| {
        a.verdict
            .cmp(&b.verdict)
            .then(a.work.cost.total_cmp(&b.work.cost))
    });
    let list = best_of_each(found);
    let by = |keep: &dyn Fn(&Repair) -> bool, score: &dyn Fn(&Repair) -> f64| {
        list.iter()
            .enumerate()
            .filter(|(_, r)| keep(r))
            .min_by(|a, b| score(a.1).total_cmp(&score(b.1)))
            .map(|(i, _)| i)
    };
    // A repair that holds comes before any that is only close.
    let cost = |r: &Repair| {
        r.work.cost
            + if r.verdict == Verdict::Holds {
                0.0
            } else {
                1e6
            }
    };
    let used = |r: &Repair| r.utilisation.unwrap_or(f64::INFINITY);
    Repairs {
        tried,
        cheapest: by(&|_| true, &cost),
        strongest: by(&|_| true, &used),
        without_welding: by(&|r| r.work.welds == 0, &cost),
        list,
    }
}

/// Keeps, of each kind, the cheapest that holds and the one with the most in hand.
fn best_of_each(found: Vec<Repair>) -> Vec<Repair> {
    let mut kept: Vec<Repair> = Vec::new();
    for repair in found {
        let same: Vec<&Repair> = kept.iter().filter(|k| k.kind == repair.kind).collect();
        let margin = |r: &Repair| r.utilisation.unwrap_or(f64::INFINITY);
        let better = same.iter().all(|k| margin(&repair) < margin(k) - 0.02);
        if same.len() < 3 && better {
            kept.push(repair);
        }
    }
    kept
}

/// Candidates: every bolt worth trying on every stand, each also with the torque it can take.
fn candidates(s: &Scenario) -> Vec<(RepairKind, Input)> {
    if s.support == SupportKind::Solid {
        return Vec::new();
    }
    let mut all = Vec::new();
    for base in bolts(s) {
        let Ok(base) = Scenario::new(&base) else {
            continue;
        };
        for (kind, input) in stands(&base) {
            let eased = with_less_torque(&input);
            all.push((kind, input));
            all.extend(eased.map(|eased| (kind, eased)));
        }
    }
    all
}

/// The joint with the bolt it has, with a stronger grade, and with the next larger size of that grade.
fn bolts(s: &Scenario) -> Vec<Input> {
    let mut inputs = vec![s.input.clone()];
    let stronger = match s.bolting.thread.system() {
        catalog::System::Inch => "sae-8",
        catalog::System::Metric => "iso-10.9",
    };
    let mut with = |thread: &catalog::Thread| {
        let mut input = s.input.clone();
        input.bolt = String::from(thread.id());
        input.bolt_grade = String::from(stronger);
        if thread.id() != s.bolting.thread.id() {
            // Another size brings its own hole, washer and torque.
            input.hole_mm = None;
            input.washer_outer_mm = None;
            input.washer_thickness_mm = None;
        }
        input.torque_nm = None;
        if input != s.input {
            inputs.push(input);
        }
    };
    with(s.bolting.thread);
    let larger = catalog::threads()
        .iter()
        .filter(|t| t.system() == s.bolting.thread.system() && t.fine() == s.bolting.thread.fine())
        .filter(|t| t.major() > s.bolting.thread.major() * 1.19)
        .min_by(|a, b| a.major().si().total_cmp(&b.major().si()));
    if let Some(thread) = larger {
        with(thread);
    }
    inputs
}

/// Everything that the clamp of a joint could be made to stand on.
fn stands(s: &Scenario) -> Vec<(RepairKind, Input)> {
    let mut all = vec![(RepairKind::Tightening, s.input.clone())];
    for thick in PLATES_MM {
        for share in [0.45, 0.6, 0.75] {
            let mut input = s.input.clone();
            input.support = String::from(SupportKind::Bare.name());
            input.washer_outer_mm = Some(round_half(share * s.tube.width.si() * 1e3));
            input.washer_thickness_mm = Some(thick);
            all.push((RepairKind::ThickWasher, input));
        }
    }
    for material in ["a36", "6061-t6"] {
        for thick in PLATES_MM {
            for times in [1.0, 1.5, 2.5] {
                let mut input = s.input.clone();
                input.support = String::from(SupportKind::Spreader.name());
                input.spreader_material = String::from(material);
                input.spreader_thickness_mm = thick;
                input.spreader_length_mm = round_half(times * s.tube.width.si() * 1e3);
                input.spreader_width_mm = None;
                all.push((RepairKind::Spreader, input));
            }
        }
    }
    for (sleeve, material) in fitting_sleeves(s) {
        let with = |support: SupportKind, welded: &str| {
            let mut input = s.input.clone();
            input.support = String::from(support.name());
            input.sleeve = String::from(sleeve.id());
            input.sleeve_material = String::from(material.id());
            input.sleeve_welded = String::from(welded);
            input.sleeve_outer_mm = None;
            input.sleeve_wall_mm = None;
            input.sleeve_short_mm = FITTED_SHORT_MM;
            input
        };
        all.push((
            RepairKind::LooseSleeve,
            with(SupportKind::LooseSleeve, "no"),
        ));
        all.push((
            RepairKind::ThroughSleeve,
            with(SupportKind::ThroughSleeve, "no"),
        ));
        let weldable = (material.family() == Family::Aluminium)
            == (s.tube.material.family() == Family::Aluminium);
        if weldable {
            all.push((
                RepairKind::WeldedSleeve,
                with(SupportKind::ThroughSleeve, "yes"),
            ));
        }
    }
    for material in ["6061-t6", "a36"] {
        let mut input = s.input.clone();
        input.support = String::from(SupportKind::SolidInsert.name());
        input.insert_material = String::from(material);
        input.sleeve_short_mm = FITTED_SHORT_MM;
        all.push((RepairKind::SolidInsert, input));
    }
    all
}

/// Half millimetres: what a saw and a rule give.
fn round_half(mm: f64) -> f64 {
    (mm * 2.0).round() / 2.0
}

/// The same joint with the torque that its support can take, where that is less than wanted.
fn with_less_torque(input: &Input) -> Option<Input> {
    let scenario = Scenario::new(input).ok()?;
    let judged = judge(&scenario, false);
    let clamp = judged.checks.iter().find(|c| c.id == CheckId::Clamp)?;
    let used = clamp.utilisation?;
    if used <= AIM {
        return None;
    }
    let torque = judged.tight.torque.si() * AIM / used;
    // Whole newton metres, downwards: a wrench is set, not computed.
    let set = torque.floor();
    let (least, _) = Field::Torque.range()?;
    (set >= least).then(|| {
        let mut eased = input.clone();
        eased.torque_nm = Some(set);
        eased
    })
}

/// Sleeves that pass the bolt and are not so wide that it rattles: up to 4 mm of play.
fn fitting_sleeves(s: &Scenario) -> Vec<(&'static catalog::Sleeve, &'static Material)> {
    let d = s.bolting.thread.major().si();
    catalog::sleeves()
        .iter()
        .filter(|row| {
            let play = row.inner_diameter().si() - d;
            (0.0002..=0.004).contains(&play)
        })
        .flat_map(|row| {
            row.materials()
                .iter()
                .filter_map(move |id| catalog::material(id).map(|m| (row, m)))
        })
        .collect()
}

fn work(before: &Scenario, after: &Scenario, kind: RepairKind, rates: &Rates) -> Work {
    let bolts = u32::try_from(after.bolting.count()).unwrap_or(u32::MAX);
    let faces = 2 * bolts;
    let hole_area =
        crate::mechanics::sleeve::area(after.bolting.hole, crate::quantity::mm(0.0)).si();
    let plate = |t: f64, w: f64, l: f64| (t * w * l - t * hole_area).max(0.0);
    let sleeve_area = crate::mechanics::sleeve::area(after.sleeve.outer, after.sleeve.inner).si();
    let (depth, wall) = (after.tube.depth.si(), after.tube.wall.si());
    let ball = std::f64::consts::FRAC_PI_4 * after.bolting.washer.outer.si().powi(2);
    let opened = if after.input.bolt == before.input.bolt {
        0
    } else {
        faces
    };
    let (holes, cuts, welds, volume, material) = match kind {
        RepairKind::Tightening => (opened, 0, 0, 0.0, None),
        RepairKind::ThickWasher => (
            opened,
            0,
            0,
            f64::from(faces) * (ball - hole_area).max(0.0) * after.bolting.washer.thickness.si(),
            catalog::material("a36"),
        ),
        RepairKind::Spreader => {
            let p = &after.spreader;
            let one = plate(p.thickness.si(), p.width.si(), p.length.si());
            (
                faces + opened,
                faces,
                0,
                f64::from(faces) * one,
                Some(p.material),
            )
        }
        RepairKind::LooseSleeve => (
            opened,
            bolts,
            0,
            f64::from(bolts) * sleeve_area * (depth - 2.0 * wall),
            Some(after.sleeve.material),
        ),
        RepairKind::ThroughSleeve => (
            faces,
            bolts,
            0,
            f64::from(bolts) * sleeve_area * depth,
            Some(after.sleeve.material),
        ),
        RepairKind::WeldedSleeve => (
            faces,
            bolts,
            faces,
            f64::from(bolts) * sleeve_area * depth,
            Some(after.sleeve.material),
        ),
        RepairKind::SolidInsert => {
            let inside = (after.tube.width.si() - 2.0 * wall) * (depth - 2.0 * wall);
            let length = 1.5 * after.tube.width.si();
            (bolts, 2, 0, inside * length, Some(after.insert_material))
        }
    };
    let mass = material.map_or(0.0, |m| m.density().value * volume);
    let per_kg = material.map_or(0.0, |m| match m.family() {
        Family::Aluminium => rates.aluminium_kg,
        Family::Steel => rates.steel_kg,
        Family::Stainless => rates.stainless_kg,
    });
    let new_bolts = matches!(kind, RepairKind::Spreader | RepairKind::ThickWasher)
        || after.input.bolt != before.input.bolt
        || after.input.bolt_grade != before.input.bolt_grade;
    let minutes = f64::from(holes) * rates.minutes_hole
        + f64::from(cuts) * rates.minutes_cut
        + f64::from(welds) * rates.minutes_weld
        + f64::from(bolts) * rates.minutes_bolt;
    let bolt_cost = if new_bolts {
        f64::from(bolts) * rates.bolt
    } else {
        0.0
    };
    Work {
        holes,
        cuts,
        welds,
        minutes,
        mass_kg: mass,
        cost: minutes / 60.0 * rates.hour + mass * per_kg + bolt_cost,
    }
}
