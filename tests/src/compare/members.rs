//! Channels, angles and round tubes: formulas against printed values and other ways to the same value.

use calc_core::cite::Flag;
use calc_core::mechanics::flange::{self, Held, Turning};
use calc_core::mechanics::member_shear::{ShearAreas, round_share, wall_share};
use calc_core::mechanics::net_section::Block;
use calc_core::mechanics::open_section::{OpenSection, Rectangle, shear_lag};
use calc_core::mechanics::ring::Ring;
use calc_core::mechanics::twist::{TwistedSection, channel_shear_center};
use calc_core::quantity::{InUnits, Length, Moment, inch, mm, mpa, newton};
use calc_core::report::{Check as Answer, CheckId, Report};
use calc_core::{Input, Scenario, evaluate};

use crate::check::{Check, Record};
use crate::compare::tube_face::{in_folder, number};
use crate::reference::{Origin, Row, rows};

/// Formulas of these members, and their sections behind the bolts.
pub(super) fn members() -> Check {
    let mut check = Check::new();
    for row in rows("members.toml") {
        if let Some(values) = values(&row) {
            check.row(&row, &values);
        }
    }
    check
}

/// Runs of legs and flanges: what a service load may use is below first yield at the root and below the load at 1 % of the
/// gauge, and a leg that turns with its upright part is no softer than our strips.
pub(super) fn flange_runs() -> Check {
    let mut check = Check::new();
    let cases = in_folder("fe_flange", "cases.csv");
    for result in in_folder("fe_flange", "results.csv") {
        let case = cases
            .iter()
            .find(|case| case["id"] == result["base"])
            .unwrap();
        let length = |name: &str| mm(number(case, name));
        let arm = length("gauge") - length("tw");
        let pitch = Some(length("pitch")).filter(|pitch| *pitch > mm(0.0));
        let width = flange::tributary(arm, pitch, mm(1e4));
        let fy = mpa(number(case, "fy"));
        let strip = flange::strip(fy, length("t"), width, arm).si() / flange::OMEGA;
        let upright = length("upright");
        let limit = flange::at_service_limit(&Turning {
            modulus: mpa(number(case, "E")),
            width,
            thickness: [length("t"), length("tw")],
            upright: (upright - length("t")).max(mm(0.0)),
            arm,
            lever: arm,
            gauge: length("gauge"),
        });
        let service = strip.min(limit.si());
        for (what, theirs, ours, at_least) in [
            ("first_yield_n", "first_yield_n", service, 0.20),
            ("F_1pct_n", "F_1pct", service, 0.15),
            ("F_1pct_n of strips", "F_1pct", limit.si(), 0.50),
        ] {
            // At its root a flange is as stiff as its strip only while nothing shears or yields.
            if ours > service && upright <= mm(0.0) {
                continue;
            }
            let theirs = number(&result, theirs);
            check.push(Record {
                value: format!("{} {what}", result["base"].to_lowercase()),
                published: theirs,
                ours,
                allowed: [theirs * (1.0 - at_least), 0.0],
                source: "fe-tube-face".to_owned(),
                place: case["section"].clone(),
                flag: Flag::Computed,
                origin: Origin::Own,
            });
        }
    }
    check
}

/// Moments of an elastic plate under the pull of a bolt against those of our strip. With its factor of
/// safety the strip has to stay below the first yield of the plate, and it may not be so safe that it says
/// nothing.
pub(super) fn plates() -> Check {
    let mut check = Check::new();
    for row in rows("members.toml") {
        let ours = match row.text("case") {
            "root-moment-at-most" => counted(mm(row.number("arm_mm"))),
            "web-moment-at-most" => {
                let span = mm(row.number("span_mm"));
                let middle = span * 0.5;
                let lever = flange::lever(&[middle], Held::OnBothSides(span));
                let width = flange::tributary(middle, None, mm(1e4)) - mm(row.number("hole_mm"));
                lever.si() / width.si()
            }
            _ => continue,
        };
        let plate = row
            .expect
            .get("moment_per_pull")
            .copied()
            .unwrap_or(f64::NAN);
        check.push(Record {
            value: format!("{} moment_per_pull", row.id),
            published: plate,
            ours,
            allowed: [plate * (1.0 - flange::SHAPE / flange::OMEGA), plate],
            source: row.source.clone(),
            place: row.place.clone(),
            flag: row.flag,
            origin: row.origin,
        });
    }
    check
}

fn answer(report: &Report, id: CheckId) -> Option<&Answer> {
    report.check(id)
}

fn rectangles(text: &str, unit: impl Fn(f64) -> Length) -> Vec<Rectangle> {
    text.split(';')
        .filter(|part| !part.trim().is_empty())
        .map(|part| {
            let n: Vec<f64> = part.split(',').map(|x| x.trim().parse().unwrap()).collect();
            let [up, across, high, wide] = n[..] else {
                panic!("four numbers: {part}");
            };
            let [up, across, high, wide] = [up, across, high, wide].map(&unit);
            Rectangle {
                up,
                across,
                high,
                wide,
            }
        })
        .collect()
}

/// Root moment of our strip for each unit of pull.
fn counted(arm: Length) -> f64 {
    let width = flange::tributary(arm, None, mm(1e4));
    flange::lever(&[arm], Held::OnOneSide).si() / width.si()
}

/// Shear stress of a twist of 1 N·m, MPa; of a bar also as the coefficient that tables list, `τ = T/(α·b·t²)`.
fn twisted(row: &Row) -> Vec<(&'static str, f64)> {
    let length = |name: &str| mm(row.number(name));
    let stress = |section: TwistedSection| section.shear_stress(Moment(1.0)).si() * 1e-6;
    match row.text("case") {
        "twist-bar" => {
            let (height, width) = (length("long_mm"), length("short_mm"));
            let of_one = stress(TwistedSection::Bar { height, width });
            let [long, short] = [height, width].map(|side| side.si() * 1e3);
            vec![("coefficient", 1e3 / (of_one * long * short * short))]
        }
        "twist-round" => {
            let (diameter, wall) = (length("diameter_mm"), length("wall_mm"));
            vec![(
                "per_moment_mpa",
                stress(TwistedSection::Round { diameter, wall }),
            )]
        }
        _ => {
            let (height, width) = (length("height_mm"), length("width_mm"));
            let closed = TwistedSection::Closed {
                height,
                width,
                wall: length("wall_mm"),
            };
            vec![("per_moment_mpa", stress(closed))]
        }
    }
}

/// Areas that take shear, mm², and what a thin wall keeps of its area.
fn sheared(row: &Row) -> Vec<(&'static str, f64)> {
    let length = |name: &str| mm(row.number(name));
    let areas = |section: ShearAreas| section.areas().map(|area| area.si() * 1e6);
    let metal = || (mpa(row.number("modulus_mpa")), mpa(row.number("fy_mpa")));
    let wall = length("wall_mm");
    match row.text("case") {
        "shear-tube" => {
            let sides = [length("height_mm"), length("width_mm")];
            let [up, side] = areas(ShearAreas::rectangular(sides, wall, length("corner_mm")));
            vec![("up_mm2", up), ("side_mm2", side)]
        }
        "shear-round" => {
            let [up, _] = areas(ShearAreas::round(length("diameter_mm"), wall));
            vec![("up_mm2", up)]
        }
        "shear-wall" => {
            let share = wall_share(length("flat_mm"), wall, row.number("k_v"), metal());
            vec![("share", share)]
        }
        _ => vec![("share", round_share(length("diameter_mm"), wall, metal()))],
    }
}

/// Stress of pull and bending, Pa, without the shear between the bolts that is put to it: `σ_v² − 3·τ_V²`.
fn bent_alone(check: &Answer, symbols: [&str; 2]) -> f64 {
    let [all, sheared] = symbols.map(|symbol| {
        let step = check.steps.iter().find(|s| s.symbol == symbol);
        step.unwrap().result.si
    });
    (all * all - 3.0 * sheared * sheared).sqrt()
}

fn values(row: &Row) -> Option<Vec<(&'static str, f64)>> {
    let n = |name: &str| row.number(name);
    Some(match row.text("case") {
        "root-moment" => vec![("moment_per_pull", counted(mm(n("arm_mm"))))],
        "web-lever" => {
            let places: Vec<Length> = (0..6)
                .filter_map(|i| row.maybe_number(&format!("row_{i}_mm")))
                .map(mm)
                .collect();
            let lever = flange::lever(&places, Held::OnBothSides(mm(n("span_mm"))));
            vec![("lever_mm", lever.si() * 1e3)]
        }
        "twist-bar" | "twist-round" | "twist-closed" => twisted(row),
        "shear-tube" | "shear-round" | "shear-wall" | "shear-round-wall" => sheared(row),
        "shear-center" => {
            let [depth, web, flange, thick] =
                ["depth_in", "web_in", "flange_in", "thick_in"].map(|name| inch(n(name)));
            let from_middle =
                channel_shear_center([flange - web * 0.5, thick], [depth - thick, web]);
            let outside = from_middle - web * 0.5;
            vec![("outside_in", outside.si() / inch(1.0).si())]
        }
        "ring-coefficients" => {
            // A ring of unit radius and unit stiffness.
            let unit = Ring {
                diameter: mm(2.1),
                wall: mm(0.1),
                length: mm(12e3),
            };
            let k = unit.stiffness(mpa(1.0)).si() * 1e-3;
            let yields = unit.first_yield(mpa(1.0)).si();
            vec![("closing", 1.0 / k), ("moment", 12e3 * 0.01 / 6.0 / yields)]
        }
        "ring" => {
            let ring = Ring {
                diameter: mm(n("diameter_mm")),
                wall: mm(n("wall_mm")),
                length: mm(n("length_mm")),
            };
            vec![
                (
                    "stiffness_n_mm",
                    ring.stiffness(mpa(n("e_mpa"))).si() * 1e-3,
                ),
                ("first_yield_n", ring.first_yield(mpa(n("fy_mpa"))).si()),
            ]
        }
        "section" => {
            let (parts, holes) = (
                rectangles(row.text("parts"), mm),
                rectangles(row.text("holes"), mm),
            );
            let gross = OpenSection::new(&parts, &[]);
            let net = OpenSection::new(&parts, &holes);
            let stress = |s: &OpenSection| {
                let most = s.stress(
                    newton(n("pull_n")),
                    n("up_nmm") * 1e-3,
                    n("side_nmm") * 1e-3,
                );
                most.unwrap().si() * 1e-6
            };
            let [up, across] = gross.middle().map(|x| x.si() * 1e3);
            let [i1, i2, _] = gross.second_moments().map(|i| i * 1e12);
            vec![
                ("area_mm2", gross.area().si() * 1e6),
                ("up_mm", up),
                ("across_mm", across),
                ("i1_mm4", i1),
                ("i2_mm4", i2),
                ("gross_mpa", stress(&gross)),
                ("net_mpa", stress(&net)),
            ]
        }
        "shape" => {
            let s = OpenSection::new(&rectangles(row.text("parts"), inch), &[]);
            let one = inch(1.0).si();
            vec![
                ("area_in2", s.area().si() / one.powi(2)),
                ("from_back_in", s.middle()[1].si() / one),
                ("i_in4", s.second_moments()[0] / one.powi(4)),
            ]
        }
        "joint-moduli" => {
            // Bent by itself behind the bolts, a channel shows its section moduli.
            let one = inch(1.0).si() * 1e3;
            let bent = |up: f64, side: f64| {
                let s = Scenario::new(&Input {
                    member: "channel".into(),
                    mount: row.text("mount").into(),
                    tube_material: "a36".into(),
                    tube_width_mm: n("width_in") * one,
                    tube_depth_mm: n("depth_in") * one,
                    tube_wall_mm: n("wall_in") * one,
                    upright_wall_mm: Some(n("upright_in") * one),
                    bolt_gauge_mm: row.maybe_number("gauge_in").map(|g| g * one),
                    joint: "free".into(),
                    free_about_side_nm: up,
                    free_about_up_nm: side,
                    ..Input::default()
                });
                let report = evaluate(&s.unwrap());
                let check = answer(&report, CheckId::NetSection).unwrap();
                1000.0 / bent_alone(check, ["σ_g", "τ_V"]) / inch(1.0).si().powi(3)
            };
            vec![("sx_in3", bent(1000.0, 0.0)), ("sy_in3", bent(0.0, 1000.0))]
        }
        "round-modulus" | "round-net" => {
            let size = |name: &str| {
                row.maybe_number(&format!("{name}_mm"))
                    .or_else(|| row.maybe_number(&format!("{name}_in")).map(|x| x * 25.4))
            };
            let net = row.text("case") == "round-net";
            let of = |name: &str| if net { n(name) } else { 0.0 };
            let s = Scenario::new(&Input {
                member: "round-tube".into(),
                support: "solid-insert".into(),
                tube_material: "a36".into(),
                tube_width_mm: size("diameter").unwrap(),
                tube_wall_mm: size("wall").unwrap(),
                hole_mm: size("hole"),
                ball_ahead_mm: 0.0,
                ball_below_mm: 0.0,
                joint: "free".into(),
                free_along_n: of("pull_n"),
                free_about_side_nm: if net { n("up_nm") } else { 600.0 },
                // The same moment as a sum of two: a round tube does not care about its way.
                free_about_up_nm: if net { n("side_nm") } else { 800.0 },
                ..Input::default()
            });
            let report = evaluate(&s.unwrap());
            let check = answer(&report, CheckId::NetSection).unwrap();
            if net {
                let stress = bent_alone(check, ["σ_n", "τ_V,n"]);
                vec![("net_mpa", stress * 1e-6)]
            } else {
                let modulus = 1000.0 / bent_alone(check, ["σ_g", "τ_V"]) / inch(1.0).si().powi(3);
                vec![("s_in3", modulus)]
            }
        }
        "shear-lag" => vec![(
            "u",
            shear_lag(inch(n("off_in")), inch(n("length_in")), n("connected")),
        )],
        "block" => {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "whole numbers of bolts"
            )]
            let count = |name: &str| n(name) as usize;
            let block = Block::to_edge(
                (count("along"), count("rows")),
                mm(n("end_mm")),
                (mm(n("pitch_mm")), mm(n("gauge_mm"))),
                mm(n("edge_mm")),
                mm(n("hole_mm")),
                mm(n("t_mm")),
            );
            let square = inch(1.0).si().powi(2);
            vec![
                ("gross_in2", block.shear_gross.si() / square),
                ("net_in2", block.shear_net.si() / square),
                ("tension_in2", block.tension_net.si() / square),
            ]
        }
        _ => return None,
    })
}
