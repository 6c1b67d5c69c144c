//! Lines of working that several supports share.

use super::build::{Builder, group_factor};
use super::model::{Limit, SERVICE_SHARE, SupportModel};
use crate::catalog::Family;
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{Count, Ratio, newton};
use crate::report::Strength;
use crate::report::substituted;
use crate::report::working::{Line, Working};
use crate::scenario::Scenario;

/// The two faces under their washers, where they carry.
pub(super) fn faces(w: &mut Working, s: &Scenario, model: &SupportModel) {
    if model.sides().is_none() {
        return;
    }
    let tube = &s.tube;
    w.line(
        &Line {
            symbol: "d_w",
            what: "washer diameter that counts (a thin washer cups)",
            formula: "from washer and face together",
        },
        substituted![
            ("outside", s.bolting.washer.outer),
            ("thickness", s.bolting.washer.thickness_min),
        ],
        model.effective_washer,
        Cite::new(Source::OwnDerivation, "dishing of a washer", Flag::Computed),
    );
    let share = group_factor(s, tube.design_wall);
    if share < 1.0 {
        let b = &s.bolting;
        let (bolts, rows) = (Count(b.along as f64), Count(b.rows as f64));
        let line = Line {
            symbol: "ψ",
            what: "part of the face that one bolt has, beside the others and near an open end",
            formula: "from spacing, rows and end distance together",
        };
        let cite = Cite::new(
            Source::FeTubeFace,
            "rows of bolts; beyond them a lower bound",
            Flag::Computed,
        );
        let (e, width, share) = (tube.end_distance, tube.width, Ratio(share));
        // Beside no other there is no distance.
        if b.along > 1 {
            w.line(
                &line,
                substituted![
                    ("bolts", bolts),
                    ("p", b.spacing_along),
                    ("rows", rows),
                    ("e", e),
                    ("b", width),
                    ("h", tube.depth),
                ],
                share,
                cite,
            );
        } else {
            w.line(
                &line,
                substituted![("bolts", bolts), ("rows", rows), ("e", e), ("b", width)],
                share,
                cite,
            );
        }
    }
    w.line(
        &Line {
            symbol: "F_1%",
            what: "clamp at which each face is in by 1 % of its width",
            formula: "0.90·ψ·F(δ = 0.01·b)",
        },
        substituted![
            ("ψ", Ratio(share)),
            ("b", tube.width),
            ("h", tube.depth),
            ("t", tube.design_wall),
            ("d_w", model.effective_washer),
            ("f_y", tube.yield_least),
            ("E", tube.modulus),
        ],
        newton(model.force_at_share(SERVICE_SHARE)),
        Cite::new(Source::FeTubeFace, "fitted face curve", Flag::Computed),
    );
}

/// Pressure under the washers on something solid: `block` where one stands under the wall.
pub(super) fn pressed(w: &mut Working, s: &Scenario, governs: &Limit, block: bool) {
    let b = Builder {
        s,
        strength: Strength::Least,
        added_part: 1.0,
    };
    let pressed = b.pressed(block.then(|| b.block_surface()));
    w.line(
        &Line {
            symbol: "d_p",
            what: "width of the pressure from head or nut where it is too much first",
            formula: "d_n + 1.6·t through washer and plies, at most d_w under the washer",
        },
        substituted![
            ("d_n", s.bolting.thread.bearing_diameter()),
            ("t", s.bolting.washer.thickness_min),
            ("d_w", s.bolting.washer.outer),
        ],
        pressed.diameter,
        Cite::new(
            Source::Vdi2230,
            "0.8·t to either side under a washer; in plies alike",
            Flag::Memory,
        ),
    );
    w.line(
        &Line {
            symbol: "R",
            what: "pressure under the washer",
            formula: if pressed.dishes {
                "p·(π/4)·(d_p² − d_h²), where the washer cups over the hole"
            } else {
                "p·(π/4)·(d_p² − d_h²)"
            },
        },
        substituted![
            ("p", pressed.pressure),
            ("d_p", pressed.diameter),
            ("d_h", pressed.hole),
        ],
        newton(governs.load),
        match pressed.family {
            Family::Aluminium => Cite::new(
                Source::Vdi2230,
                "limiting surface pressure, 0.9·f_u",
                Flag::ReadSecondHand,
            ),
            _ => Cite::new(Source::Aisc360_22, "J7, 1.8·f_y", Flag::Read),
        },
    );
}
