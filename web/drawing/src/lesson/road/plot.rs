//! The hardest loaded bolt against the distance.

use super::super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint};
use super::{DISTANCES, Jolt, Kind, Look, Numbers, largest, numbers};
use calc_core::quantity::Dimension;

/// Where a curve is computed, as a share of the farthest: closer together where it bends.
const COMPUTED_AT: [f64; 6] = [0.0, 0.1, 0.225, 0.4, 0.65, 1.0];
/// Where the curves are named and compared, as a share: nearer than the figure goes, so that it stays clear.
const NAMED_AT: f64 = 0.35;

fn point(name: &str, x: f64, y: f64) -> KeyPoint {
    KeyPoint {
        name: name.into(),
        x,
        y,
        here: false,
    }
}

pub(super) fn plot(n: &Numbers, look: &Look<'_>) -> Option<Chart> {
    let farthest = DISTANCES.of(look.units).max * look.one(Dimension::Length) * 1e3;
    let curve = |kind: Kind| -> Option<Vec<(f64, f64)>> {
        COMPUTED_AT
            .into_iter()
            .map(|share| {
                let distance = share * farthest;
                let there = numbers(n.stock, kind, n.jolt, distance)?;
                Some((distance * 1e-3, there.hardest()))
            })
            .collect()
    };
    let mut curves = Vec::new();
    let mut points = Vec::new();
    let span = [0.0, farthest * 1e-3];
    if n.loaded() {
        let share = largest(&n.alike);
        let alike = if n.kind == Kind::Third {
            "a third each"
        } else {
            "half each"
        };
        points.push(point(alike, 0.0, share));
        curves.push(Curve {
            points: span.map(|x| (x, share)).to_vec(),
            kind: CurveKind::Beside,
            name: String::new(),
            part: "",
        });
    }
    if n.loaded() && n.kind.coupler() {
        // Three bolts lie so near to two that their names could not be told apart: theirs is drawn only
        // as the figure's own, which has its ring and no name.
        let others = [Kind::Apart, Kind::Close];
        for kind in others.into_iter().filter(|k| *k != n.kind) {
            // Standing still they lie too close together for their names.
            if n.jolt != Jolt::Still {
                let there = numbers(n.stock, kind, n.jolt, NAMED_AT * farthest)?;
                points.push(point(
                    kind.name(),
                    NAMED_AT * farthest * 1e-3,
                    there.hardest(),
                ));
            }
            curves.push(Curve {
                points: curve(kind)?,
                kind: CurveKind::Beside,
                name: String::new(),
                part: "",
            });
        }
    }
    curves.push(Curve {
        points: curve(n.kind)?,
        kind: CurveKind::This,
        name: String::new(),
        part: "p-bolt",
    });
    points.push(KeyPoint {
        here: true,
        ..point("now", n.distance_mm * 1e-3, n.hardest())
    });
    Some(Chart {
        title: String::from("The most heavily loaded bolt against the distance"),
        x: Axis {
            name: "from the bolts to the load",
            dimension: Dimension::Length,
            from: 0.0,
            to: farthest * 1e-3,
        },
        y: Axis {
            name: "most heavily loaded bolt",
            dimension: Dimension::Force,
            from: 0.0,
            to: n.stock.most_on_plot,
        },
        band: None,
        curves,
        levels: Vec::new(),
        points,
        units: look.units,
    })
}
