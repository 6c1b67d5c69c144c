//! What both sleeves have in common: section, working, stock, candidates.

use super::model::Limit;
use super::parts::{FITTED_SHORT_MM, Pieces, Shape};
use crate::catalog::{self, Material, Sleeve};
use crate::cite::{Cite, Flag, Source};
use crate::mechanics::sleeve;
use crate::quantity::{InUnits, Stress, newton};
use crate::report::substituted;
use crate::report::working::{Line, Working};
use crate::scenario::{Input, Scenario, SleeveMaterial, SleeveWelded, SupportKind, YesNo};

/// Section of the sleeve and what it carries with the faces.
pub(super) fn working(w: &mut Working, s: &Scenario, governs: &Limit) {
    let area = sleeve::area(s.sleeve.outer, s.sleeve.inner);
    w.line(
        &Line {
            symbol: "A",
            what: "section of the sleeve",
            formula: "(π/4)·(D² − d²)",
        },
        substituted![("D", s.sleeve.outer), ("d", s.sleeve.inner),],
        area,
        Cite::new(Source::Elementary, "circle ring", Flag::Computed),
    );
    w.line(
        &Line {
            symbol: "N_s",
            what: "what the sleeve by itself carries when it is squashed",
            formula: "f_y·A",
        },
        substituted![("f_y", yield_strength(s)), ("A", area)],
        newton(yield_strength(s).si() * area.si()),
        Cite::new(Source::Aisc360_22, "J4.4", Flag::Read),
    );
    w.line(
        &Line {
            symbol: "R",
            what: "limit that governs: sleeve with faces, its length as a column, its ends, or what it presses on",
            formula: "least of them; see the method page",
        },
        substituted![("N_s", newton(yield_strength(s).si() * area.si()))],
        newton(governs.load),
        Cite::new(Source::Aisc360_22, "E3, J4.4, J7", Flag::Read),
    );
}

fn yield_strength(s: &Scenario) -> Stress {
    let material = s.sleeve.material;
    match material.welded() {
        Some(both) if super::is_welded(s) => both.least.compressive_yield_strength(),
        _ => material.least().compressive_yield_strength(),
    }
}

/// One sleeve a bolt.
pub(super) fn pieces(s: &Scenario, bolts: u32, length: f64) -> Pieces {
    Pieces {
        count: bolts,
        shape: Shape::Sleeve {
            outer: s.sleeve.outer.si(),
            inner: s.sleeve.inner.si(),
            length,
        },
        material: s.sleeve.material,
    }
}

/// Sleeves of all stock that goes into the tube and passes the bolt, and is not so wide that the bolt rattles:
/// up to 4 mm of play.
pub(super) fn stock(s: &Scenario) -> impl Iterator<Item = (&'static Sleeve, &'static Material)> {
    let d = s.bolting.thread.major().si();
    let room = s.tube.width - s.tube.wall * 2.0;
    catalog::sleeves()
        .iter()
        .filter(move |row| {
            let play = row.inner_diameter().si() - d;
            (0.0002..=0.004).contains(&play) && row.outer_diameter() <= room
        })
        .flat_map(|row| {
            row.materials()
                .iter()
                .filter_map(move |id| catalog::material(id).map(|m| (row, m)))
        })
}

/// The same joint on a sleeve of this stock.
pub(super) fn with(
    s: &Scenario,
    kind: SupportKind,
    (row, material): (&'static Sleeve, &'static Material),
    welded: YesNo,
) -> Input {
    let mut input = s.input.clone();
    input.choose(kind);
    input.choose(row);
    input.choose(SleeveMaterial(material));
    input.choose(SleeveWelded(welded));
    input.sleeve_outer_mm = None;
    input.sleeve_wall_mm = None;
    input.sleeve_short_mm = FITTED_SHORT_MM;
    input
}
