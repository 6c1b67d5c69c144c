//! What the readings come to: plots on the expected band, friction and wall strength with how sure they are, what does
//! not fit.

use calc_core::Scenario;
use calc_core::catalog::nut_factor;
use calc_core::quantity::{Dimension, InUnits, Stress, write};
use classroom::bench::{
    Column, Estimate, Fit, Notes, SetUp, Threads, curve_band, fit, fitted_line, scenario, slip_line,
};
use classroom::words::{filled, find, message};
use drawing::Scene;
use drawing::lesson::{Axis, Band, Chart, Curve, CurveKind, KeyPoint};
use leptos::prelude::*;

use super::bench::Desk;
use super::heads;
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// What a plot shows.
#[derive(Clone, Copy)]
struct Plot {
    id: &'static str,
    set_up: SetUp,
    dents: bool,
}

const PLOTS: [Plot; 3] = [
    Plot {
        id: "plot.dent",
        set_up: SetUp::Bare,
        dents: true,
    },
    Plot {
        id: "plot.turn",
        set_up: SetUp::Bare,
        dents: false,
    },
    Plot {
        id: "plot.turn-sleeve",
        set_up: SetUp::Sleeve,
        dents: false,
    },
];

pub(super) fn results(desk: Desk) -> El {
    let fitted = Memo::new_owning(move |_| (fit(&desk.notes.read()), true));
    let plots = PLOTS.map(|plot| {
        let scene = Signal::derive(move || {
            let fitted = fitted.read();
            let fitted = fitted.as_ref().ok();
            plot.scene(&desk.notes.read(), fitted)
                .unwrap_or_else(|| empty(plot.id))
        });
        sheet(scene, plot.id)
    });
    let slips = Signal::derive(move || {
        let fitted = fitted.read();
        let fitted = fitted.as_ref().ok();
        fitted
            .and_then(|fit| slip_scene(&desk.notes.read(), fit))
            .unwrap_or_else(|| empty(SLIP))
    });
    let slipped = move || fitted.read().as_ref().is_ok_and(|fit| fit.slip.is_some());
    let slips = sheet(slips, SLIP).flag("hidden", move || !slipped());
    let body = move || {
        let fitted = fitted.read();
        match &*fitted {
            Ok(fit) => said(fit, &desk.notes.read()),
            Err(why) => vec![el("p").text(why.as_str())],
        }
    };
    el("section")
        .child(el("h2").text(message("bench.results")))
        .child(classed("div", "plots").children(plots).child(slips))
        .child(classed("div", "came-out").live_children(body))
}

/// Id of the plot of the strap.
const SLIP: &str = "plot.slip";

fn sheet(scene: Signal<Scene>, id: &str) -> El {
    classed("figure", "sheet")
        .child(drawing(scene))
        .child(el("figcaption").text(message(id)))
}

/// An empty sheet, where the pieces make no joint.
fn empty(id: &str) -> Scene {
    Scene {
        id: id.replace('.', "-"),
        width: 340.0,
        height: 40.0,
        title: message(id).into(),
        description: String::new(),
        marks: Vec::new(),
    }
}

/// Slip load over torque, dry threads, as it was fitted.
fn slip_scene(notes: &Notes, fit: &Fit) -> Option<Scene> {
    let read = pairs(notes, SetUp::Strap, [Column::Torque, Column::Slip]);
    let to = read.iter().map(|p| p.0).fold(0.0, f64::max) * 1.25;
    let up = read.iter().map(|p| p.1).fold(0.0, f64::max);
    let [low, value, high] = slip_line(notes, fit, to)?;
    let line = |end: f64| vec![(0.0, 0.0), (to, end)];
    let count = read.len().to_string();
    let chart = Chart {
        title: message(SLIP).into(),
        x: Axis {
            name: axis_name("plot.y"),
            dimension: Dimension::Torque,
            from: 0.0,
            to,
        },
        y: Axis {
            name: axis_name("plot.y-slip"),
            dimension: Dimension::Force,
            from: 0.0,
            to: high.max(up) * 1.1,
        },
        band: Some(Band {
            lower: line(low),
            upper: line(high),
            name: String::new(),
        }),
        curves: vec![Curve {
            points: line(value),
            kind: CurveKind::This,
            name: message("plot.fitted").into(),
            part: "",
        }],
        levels: Vec::new(),
        points: dots(read),
        units: notes.units,
    };
    let mut scene = chart.scene(&SLIP.replace('.', "-"));
    scene.description = filled("plot.told-slip", &[("n", &count)]);
    Some(scene)
}

/// Two columns of the readings of a set-up with dry threads.
fn pairs(notes: &Notes, set_up: SetUp, [x, y]: [Column; 2]) -> Vec<(f64, f64)> {
    let rows = notes.rows.iter();
    rows.filter(|row| row.set_up == set_up && row.threads == Threads::Dry)
        .filter_map(|row| {
            let of = |column| row.reading(column, notes.units).ok().flatten();
            Some((of(x)?, of(y)?))
        })
        .collect()
}

fn dots(read: Vec<(f64, f64)>) -> Vec<KeyPoint> {
    let dots = read.into_iter().map(|(x, y)| KeyPoint {
        name: String::new(),
        x,
        y,
        here: false,
    });
    dots.collect()
}

/// A text that lives as long as the program, for an axis.
fn axis_name(key: &str) -> &'static str {
    find(key).unwrap_or("?")
}

impl Plot {
    fn scene(self, notes: &Notes, fitted: Option<&Fit>) -> Option<Scene> {
        let joint = scenario(notes, self.set_up).ok()?;
        let [low, likely, high] = curve_band(&joint, Threads::Dry, self.dents)?;
        let read = self.read(notes);
        let most = |of: fn(&(f64, f64)) -> f64| read.iter().map(of).fold(0.0, f64::max);
        let (far, up) = (most(|p| p.0), most(|p| p.1));
        let end = |line: &[(f64, f64)]| line.last().map_or(0.0, |p| p.0);
        // A part of the curve that a class turns to, or as far as was read.
        let to = if far > 0.0 {
            far * 1.25
        } else {
            end(&likely) * 0.4
        };
        let within = |line: &[(f64, f64)]| {
            line.iter()
                .filter(|p| p.0 <= to)
                .map(|p| p.1)
                .fold(0.0, f64::max)
        };
        let line = fitted.and_then(|fit| self.fitted(&joint, fit));
        let beside = if line.is_some() {
            CurveKind::Beside
        } else {
            CurveKind::This
        };
        let curve = |points: Vec<(f64, f64)>, kind, key| Curve {
            points,
            kind,
            name: message(key).into(),
            part: "",
        };
        let mut curves = vec![curve(likely.clone(), beside, "plot.expected")];
        let fitted_up = line.as_deref().map_or(0.0, within);
        curves.extend(line.map(|line| curve(line, CurveKind::This, "plot.fitted")));
        let count = read.len().to_string();
        let chart = Chart {
            title: message(self.id).into(),
            x: Axis {
                name: axis_name(if self.dents {
                    "plot.x-dent"
                } else {
                    "plot.x-turn"
                }),
                dimension: if self.dents {
                    Dimension::Length
                } else {
                    Dimension::Angle
                },
                from: 0.0,
                to,
            },
            y: Axis {
                name: axis_name("plot.y"),
                dimension: Dimension::Torque,
                from: 0.0,
                to: (up.max(within(&high)).max(fitted_up) * 1.1).max(1.0),
            },
            band: Some(Band {
                lower: low,
                upper: high,
                name: String::new(),
            }),
            curves,
            levels: Vec::new(),
            points: dots(read),
            units: notes.units,
        };
        let mut scene = chart.scene(&self.id.replace('.', "-"));
        scene.description = filled("plot.told", &[("n", &count)]);
        Some(scene)
    }

    /// The readings of this plot, dry threads.
    fn read(self, notes: &Notes) -> Vec<(f64, f64)> {
        let column = if self.dents {
            Column::Dent
        } else {
            Column::Turn
        };
        pairs(notes, self.set_up, [column, Column::Torque])
    }

    fn fitted(self, joint: &Scenario, fit: &Fit) -> Option<Vec<(f64, f64)>> {
        let k = fit.nut_factor.first()?.as_ref()?;
        let wall = fit.wall.as_ref().map(|wall| Stress::of_si(wall.value));
        Some(fitted_line(joint, k.value, wall, self.dents))
    }
}

fn said(fit: &Fit, notes: &Notes) -> Vec<El> {
    if fit.counted == 0 && fit.odd.is_empty() {
        return vec![el("p").text(message("bench.none"))];
    }
    let count = fit.counted.to_string();
    let mut all = vec![
        el("p").text(filled("bench.counted", &[("n", &count)])),
        estimates(fit, notes),
        el("p").text(message("bench.two")),
    ];
    let undecided = |estimate: &Option<Estimate>| estimate.as_ref().is_some_and(|e| !e.decided);
    let torque = fit.nut_factor.iter().any(Option::is_some);
    if fit.nut_factor.iter().any(undecided) {
        all.push(el("p").text(message("bench.undecided-k")));
    }
    if torque && (fit.wall.is_none() || undecided(&fit.wall)) {
        all.push(el("p").text(message("bench.undecided-wall")));
    }
    if undecided(&fit.slip) {
        all.push(el("p").text(message("bench.undecided-mu")));
    }
    if fit.slip.is_some() && fit.slip_by_table {
        all.push(el("p").text(message("bench.by-table")));
    }
    all.push(el("h3").text(message("bench.odd")));
    if fit.odd.is_empty() {
        all.push(el("p").text(message("bench.all-fit")));
    } else {
        let lines = fit.odd.iter().map(|(row, why)| {
            let number = (row + 1).to_string();
            el("li").text(filled(why.key(), &[("n", &number)]))
        });
        all.push(el("ul").children(lines));
        all.push(el("p").text(message("bench.left-out")));
    }
    all
}

fn estimates(fit: &Fit, notes: &Notes) -> El {
    let [dry, waxed] = &fit.nut_factor;
    let published = |id: &str| {
        nut_factor(id).map_or_else(String::new, |row| format!("{} … {}", row.low(), row.high()))
    };
    let wall = scenario(notes, SetUp::Bare).map_or_else(
        |_| String::new(),
        |joint| {
            use calc_core::scenario::Strength;
            let of = |strength| {
                let strength = joint.tube.yield_strength(strength).si();
                write(strength, Dimension::Stress, notes.units)
            };
            format!("{} … {}", of(Strength::Least), of(Strength::Likely))
        },
    );
    let rows = [
        ("bench.k-dry", dry, Dimension::Ratio, published("dry")),
        (
            "bench.k-waxed",
            waxed,
            Dimension::Ratio,
            published("waxed-zinc"),
        ),
        ("bench.wall", &fit.wall, Dimension::Stress, wall),
        ("bench.mu", &fit.slip, Dimension::Ratio, String::new()),
    ];
    let rows = rows
        .into_iter()
        .filter_map(|(key, estimate, dimension, table)| {
            let estimate = estimate.as_ref()?;
            let number = |si| write(si, dimension, notes.units);
            let value = if estimate.decided {
                number(estimate.value)
            } else {
                String::from(message("bench.undecided"))
            };
            let lines: Vec<String> = estimate
                .rows
                .iter()
                .map(|row| (row + 1).to_string())
                .collect();
            let cell = |key, text: String| el("td").attr("data-name", message(key)).text(text);
            Some(
                el("tr")
                    .child(el("th").attr("scope", "row").text(message(key)))
                    .child(cell("bench.value", value))
                    .child(cell(
                        "bench.between",
                        format!("{} … {}", number(estimate.low), number(estimate.high)),
                    ))
                    .child(cell("bench.rows", lines.join(", ")))
                    .child(cell("bench.published", table)),
            )
        });
    classed("table", "restack")
        .child(classed("caption", "visually-hidden").text(message("bench.results")))
        .child(heads(&[
            "bench.what",
            "bench.value",
            "bench.between",
            "bench.rows",
            "bench.published",
        ]))
        .child(el("tbody").children(rows))
}
