//! Lines of working that several supports share.

use super::build::group_factor;
use super::model::{Limit, SERVICE_SHARE, SupportModel};
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{Count, Ratio, newton};
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
            what: "washer diameter that counts (a thin washer dishes)",
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
        w.line(
            &Line {
                symbol: "ψ",
                what: "part of the face that one bolt has, beside the others and near an open end",
                formula: "from spacing, rows and end distance together",
            },
            substituted![
                ("bolts", Count(s.bolting.along as f64)),
                ("p", s.bolting.spacing_along),
                ("rows", Count(s.bolting.rows as f64)),
                ("e", tube.end_distance),
                ("b", tube.width),
                ("h", tube.depth),
            ],
            Ratio(share),
            Cite::new(
                Source::FeTubeFace,
                "rows of bolts; beyond them a lower bound",
                Flag::Computed,
            ),
        );
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

/// Pressure under the washer on something solid.
pub(super) fn pressed(w: &mut Working, s: &Scenario, governs: &Limit) {
    w.line(
        &Line {
            symbol: "R",
            what: "pressure under the washer",
            formula: "1.8·f_y·A_w",
        },
        substituted![("d_w", s.washer_on_metal()), ("d_h", s.bolting.hole),],
        newton(governs.load),
        Cite::new(Source::Aisc360_22, "J7", Flag::Read),
    );
}
