//! The face curve, plates and side walls against finite-element runs, and the published yield-line load
//! against its hand values.

use std::collections::BTreeMap;

use calc_core::cite::Flag;
use calc_core::mechanics::face::{FaceCurve, FaceTube, LOWER_BOUND, out_of_range};
use calc_core::mechanics::neighbours::{self, Group};
use calc_core::mechanics::plate::{Plate, PlateCurve};
use calc_core::mechanics::side_wall;
use calc_core::mechanics::sleeve::{self, SleeveCurve};
use calc_core::mechanics::stiffness;
use calc_core::mechanics::yield_line::{Patch, chord_face};
use calc_core::quantity::{InUnits, Length, mm, mpa, newton};

use crate::check::{Check, Record};
use crate::reference::{Origin, folder, rows};

/// Largest difference of one run from the face curve, as a share.
const EACH: f64 = 0.12;

/// A plate may count as little as this of what a run of it carries: safe, but not so safe that every
/// plate would be refused.
const LEAST_OF_A_PLATE: f64 = 0.49;

/// How far a bolt with neighbours may count below its run, and above it: a lower bound that was fitted to
/// these rows and more, least run over formula 0.97.
const LEAST_OF_A_GROUP: f64 = 0.40;
const MOST_OF_A_GROUP: f64 = 0.03;

/// Largest difference of a lasting dent from a run, as a share of the dent under load: 0.10 on a slender
/// face, which springs back less than its elastic line, 0.06 on the others.
const LEFT_OFF: f64 = 0.10;

/// Files of cases and of results.
const FITTED: [&str; 2] = ["cases.csv", "variants.csv"];
const AFTERWARDS: [&str; 2] = ["cases_blind.csv", "blind.csv"];

pub(super) type CsvRow = BTreeMap<String, String>;

fn table(name: &str) -> Vec<CsvRow> {
    in_folder("fe", name)
}

pub(super) fn in_folder(inside: &str, name: &str) -> Vec<CsvRow> {
    let mut reader = csv::Reader::from_path(folder().join(inside).join(name)).unwrap();
    reader.deserialize().map(Result::unwrap).collect()
}

pub(super) fn number(row: &CsvRow, name: &str) -> f64 {
    row[name]
        .parse()
        .unwrap_or_else(|_| panic!("{row:?}: no number {name}"))
}

/// A run: its case and its result.
struct Run {
    name: String,
    case: CsvRow,
    result: CsvRow,
}

fn runs([cases, results]: [&str; 2], load: &str) -> Vec<Run> {
    let cases: BTreeMap<String, CsvRow> = table(cases)
        .into_iter()
        .map(|row| (row["id"].clone(), row))
        .collect();
    let found: Vec<Run> = table(results)
        .into_iter()
        // Refined meshes and other options are checks of the runs themselves.
        .filter(|row| row["load"] == load && row.get("opts").is_none_or(String::is_empty))
        .map(|result| Run {
            name: result["name"].clone(),
            case: cases[&result["base"]].clone(),
            result,
        })
        .collect();
    assert!(!found.is_empty(), "{results}: no {load} run");
    found
}

fn tube(case: &CsvRow) -> FaceTube {
    FaceTube {
        width: mm(number(case, "b")),
        depth: mm(number(case, "h")),
        wall: mm(number(case, "t")),
        corner_radius: mm(number(case, "ro")),
        modulus: mpa(number(case, "E")),
        poisson: number(case, "nu"),
        yield_strength: mpa(number(case, "fy")),
    }
}

fn washer(case: &CsvRow) -> Length {
    mm(number(case, "dw"))
}

fn record(run: &Run, what: &str, published: f64, ours: f64, allowed: [f64; 2]) -> Record {
    Record {
        value: format!("{} {what}", run.name.to_lowercase()),
        published,
        ours,
        allowed,
        source: "fe-tube-face".to_owned(),
        place: run.case["section"].clone(),
        flag: Flag::Computed,
        origin: Origin::Own,
    }
}

/// The face against the runs that it was fitted to and those made afterwards.
pub(super) fn face() -> Check {
    let mut check = Check::new();
    for files in [FITTED, AFTERWARDS] {
        for run in runs(files, "ring") {
            let tube = tube(&run.case);
            assert!(
                out_of_range(&tube, washer(&run.case)).is_empty(),
                "{}: out of range",
                run.name
            );
            let curve = FaceCurve::new(&tube, washer(&run.case), 1.0);
            for (share, name) in [(0.01, "F_1pct"), (0.03, "F_3pct")] {
                let theirs = number(&run.result, name);
                let ours = curve.force_at_share(share).si();
                // The share is of ours, as the factor of verdicts is: 0.88 ≤ run/curve ≤ 1.12.
                let allowed = [1.0 - 1.0 / (1.0 + EACH), 1.0 / (1.0 - EACH) - 1.0];
                let allowed = allowed.map(|share| share * theirs);
                check.push(record(&run, &format!("{name}_n"), theirs, ours, allowed));
            }
        }
    }
    check
}

/// The face that is pulled out: the curve of the inward face with the factor of verdicts, on the safe side of
/// every run and not below three quarters of it.
pub(super) fn pulled_out() -> Check {
    let mut check = Check::new();
    let cases = in_folder("fe_pull", "cases.csv");
    for result in in_folder("fe_pull", "results.csv") {
        let case = cases.iter().find(|case| case["id"] == result["base"]);
        let run = Run {
            name: format!("{}-pull", result["name"]),
            case: case.unwrap().clone(),
            result,
        };
        let curve = FaceCurve::new(&tube(&run.case), washer(&run.case), LOWER_BOUND);
        for (share, name) in [(0.01, "F_1pct"), (0.03, "F_3pct")] {
            let theirs = number(&run.result, name);
            let ours = curve.force_at_share(share).si();
            let allowed = [0.25 * theirs, 0.0];
            check.push(record(&run, &format!("{name}_n"), theirs, ours, allowed));
        }
    }
    check
}

/// An aluminum sleeve that is welded through both faces, the whole sleeve counted as softened as its ends are: with the
/// factor of verdicts on the faces never above a run, and not more than 15 % below.
pub(super) fn welded_sleeve() -> Check {
    sleeve_rows(LOWER_BOUND, [0.15, 0.0], "least")
}

/// The same without that factor: what is likely, within 15 % of every run.
pub(super) fn likely_welded_sleeve() -> Check {
    sleeve_rows(1.0, [0.15; 2], "likely")
}

fn sleeve_rows(bound: f64, allowed: [f64; 2], which: &str) -> Check {
    let (outer, wall, face_wall) = (mm(21.34), mm(2.77), mm(3.175));
    let (modulus, poisson) = (mpa(68_900.0), 0.33);
    let inner = outer - wall * 2.0;
    let mut check = Check::new();
    for row in in_folder("fe_sleeve", "results.csv") {
        let softened = mpa(number(&row, "fy_softened"));
        let length = mm(2.0 * number(&row, "half_length"));
        let tube = FaceTube {
            width: mm(2.0 * number(&row, "face_radius")),
            depth: length,
            wall: face_wall,
            corner_radius: mm(0.0),
            modulus,
            poisson,
            yield_strength: softened,
        };
        let face = FaceCurve::new(&tube, outer, bound);
        let area = sleeve::area(outer, inner);
        let core = SleeveCurve::new(
            stiffness::prism(modulus, area, length),
            newton(softened.si() * area.si()),
            mm(0.0),
        );
        for (approach, name) in [(0.25, "F_0.25"), (0.50, "F_0.50"), (1.0, "F_1.00")] {
            let theirs = number(&row, name);
            let ours = face.force(mm(approach)) + core.force(mm(2.0 * approach));
            check.push(Record {
                value: format!("{} {name}_n, {which}", row["id"]),
                published: theirs,
                ours: ours.si(),
                allowed: allowed.map(|share| share * theirs),
                source: "fe-tube-face".to_owned(),
                place: format!("sleeve softened to {} MPa", row["fy_softened"]),
                flag: Flag::Computed,
                origin: Origin::Own,
            });
        }
    }
    check
}

/// How far a face springs back when the clamp is taken off, against runs that were unloaded; the rest
/// of the dent stays.
pub(super) fn unloading() -> Check {
    let mut check = Check::new();
    for run in runs(["cases.csv", "unloaded.csv"], "ring")
        .into_iter()
        .chain(runs(["cases_blind.csv", "unloaded_blind.csv"], "ring"))
    {
        let curve = FaceCurve::new(&tube(&run.case), washer(&run.case), 1.0);
        let dent = number(&run.result, "delta_max");
        let theirs = dent - number(&run.result, "delta_left");
        let ours = dent - curve.left_after(mm(dent)).si() * 1e3;
        check.push(record(
            &run,
            "springs_back_mm",
            theirs,
            ours,
            [LEFT_OFF * dent; 2],
        ));
    }
    check
}

/// Plates with the factor of verdicts: on the safe side of every run.
pub(super) fn plates() -> Check {
    let mut check = Check::new();
    for (files, load) in [
        (FITTED, "tie"),
        (AFTERWARDS, "tie"),
        (AFTERWARDS, "contact"),
    ] {
        for run in runs(files, load) {
            let plate = Plate {
                thickness: mm(number(&run.case, "tp")),
                length: mm(number(&run.case, "lp")),
                width: mm(number(&run.case, "b")),
                modulus: mpa(number(&run.case, "Ep")),
                yield_strength: mpa(number(&run.case, "fyp")),
            };
            let curve = PlateCurve::new(
                &tube(&run.case),
                &plate,
                washer(&run.case),
                LOWER_BOUND,
                true,
            );
            for (share, name) in [(0.01, "F_1pct"), (0.03, "F_3pct")] {
                if run.result[name].is_empty() {
                    continue;
                }
                let ours = curve.force(mm(share * number(&run.case, "b"))).si();
                let theirs = number(&run.result, name);
                let allowed = [theirs * (1.0 - LEAST_OF_A_PLATE), 0.0];
                check.push(record(&run, &format!("{name}_n"), theirs, ours, allowed));
            }
        }
    }
    check
}

/// Bolts beside each other against one alone: near the runs and hardly above any.
pub(super) fn neighbours() -> Check {
    let mut check = Check::new();
    for row in table("neighbours.csv") {
        if row["kind"] == "single" {
            continue;
        }
        let b = number(&row, "b");
        let group = Group {
            along: if row["kind"] == "pair" { 2 } else { 3 },
            pitch: mm(number(&row, "p_over_b") * b),
            rows: 1,
            near_end: 0,
        };
        let (depth, wall) = (b * number(&row, "h_over_b"), b / number(&row, "b_over_t"));
        let ours = neighbours::group(&group, mm(b), mm(depth), mm(wall));
        for share in ["r1", "r3"] {
            let theirs = number(&row, share);
            check.push(Record {
                value: format!(
                    "{}-{}-{} {share}",
                    row["case"].to_lowercase(),
                    row["kind"],
                    row["p_over_b"]
                ),
                published: theirs,
                ours,
                allowed: [theirs * LEAST_OF_A_GROUP, theirs * MOST_OF_A_GROUP],
                source: "fe-tube-face".to_owned(),
                place: format!("bolts {} b apart", row["p_over_b"]),
                flag: Flag::Computed,
                origin: Origin::Own,
            });
        }
    }
    check
}

/// One plate under a row of bolts, each with its own length of it, with the factor of verdicts.
pub(super) fn shared_plates() -> Check {
    let cases: BTreeMap<String, CsvRow> = table("cases_neighbours.csv")
        .into_iter()
        .map(|row| (row["id"].clone(), row))
        .collect();
    let mut check = Check::new();
    for result in table("shared_plates.csv") {
        let case = cases[&result["base"]].clone();
        let pitch = (!result["pitch"].is_empty()).then(|| mm(number(&result, "pitch")));
        let far = mm(1000.0);
        let plate = Plate {
            thickness: mm(number(&result, "tp")),
            length: neighbours::plate_length(mm(number(&result, "lp")), pitch, far),
            width: mm(number(&case, "b")),
            modulus: mpa(number(&result, "Ep")),
            yield_strength: mpa(number(&result, "fyp")),
        };
        let curve = PlateCurve::new(
            &tube(&case),
            &plate,
            washer(&case),
            LOWER_BOUND,
            pitch.is_none(),
        );
        let run = Run {
            name: result["name"].clone(),
            case,
            result,
        };
        for (share, name) in [(0.01, "F_1pct"), (0.03, "F_3pct")] {
            let ours = curve.force(mm(share * number(&run.case, "b"))).si();
            let theirs = number(&run.result, name);
            let allowed = [theirs * (1.0 - LEAST_OF_A_PLATE), 0.0];
            check.push(record(&run, &format!("{name}_n"), theirs, ours, allowed));
        }
    }
    check
}

/// Buckling of tall thin side walls under a plate: on the safe side of the peak, and not below half.
pub(super) fn side_walls() -> Check {
    let mut check = Check::new();
    for run in runs(FITTED, "tie") {
        if run.result["F_peak"].is_empty() {
            continue;
        }
        let t = tube(&run.case);
        let ours = side_wall::buckling(t.yield_strength, t.modulus, t.wall, t.depth).si();
        let theirs = number(&run.result, "F_peak");
        check.push(record(&run, "F_peak_n", theirs, ours, [theirs * 0.5, 0.0]));
    }
    check
}

/// Yield-line load of a chord face.
pub(super) fn yield_line() -> Check {
    let mut check = Check::new();
    for row in rows("yield_line.toml") {
        let load = chord_face(
            mpa(row.number("fy_mpa")),
            mm(row.number("wall_mm")),
            mm(row.number("width_mm")),
            mm(row.number("washer_mm")),
            Patch::Circular,
        );
        check.row(&row, &[("load_n", load.si())]);
    }
    check
}
