//! Lines of working that several supports share.

use super::model::{Limit, SERVICE_SHARE, SupportModel};
use crate::cite::{Cite, Flag};
use crate::quantity::Dimension::{Force, Length, Stress};
use crate::quantity::InUnits;
use crate::report::substituted;
use crate::report::working::Working;
use crate::scenario::Scenario;

/// The two faces under their washers, where they carry.
pub(super) fn faces(w: &mut Working, s: &Scenario, model: &SupportModel) {
    if model.sides().is_none() {
        return;
    }
    let tube = &s.tube;
    w.step(
        &(
            "d_w",
            "washer diameter that counts (a thin washer dishes)",
            "from washer and face together",
        ),
        substituted![
            ("outside", s.bolting.washer.outer.si(), Length),
            ("thickness", s.bolting.washer.thickness_min.si(), Length),
        ],
        (model.effective_washer.si(), Length),
        Cite::new("own-derivation", "dishing of a washer", Flag::Computed),
    );
    w.step(
        &(
            "F_1%",
            "clamp at which each face is in by 1 % of its width",
            "0.90·F(δ = 0.01·b)",
        ),
        substituted![
            ("b", tube.width.si(), Length),
            ("h", tube.depth.si(), Length),
            ("t", tube.design_wall.si(), Length),
            ("d_w", model.effective_washer.si(), Length),
            ("f_y", tube.yield_least.si(), Stress),
            ("E", tube.modulus.si(), Stress),
        ],
        (model.force_at_share(SERVICE_SHARE), Force),
        Cite::new("fe-tube-face", "fitted face curve", Flag::Computed),
    );
}

/// Pressure under the washer on something solid.
pub(super) fn pressed(w: &mut Working, s: &Scenario, governs: &Limit) {
    w.step(
        &("R", "pressure under the washer", "1.8·f_y·A_w"),
        substituted![
            ("d_w", s.washer_on_metal().si(), Length),
            ("d_h", s.bolting.hole.si(), Length),
        ],
        (governs.load, Force),
        Cite::new("aisc-360-22", "J7", Flag::Read),
    );
}
