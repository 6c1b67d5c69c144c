//! What both sleeves have in common: section, working, stock, candidates.

use super::build::Builder;
use super::model::Limit;
use super::parts::{FITTED_SHORT_MM, Pieces, Shape, goes_with};
use crate::catalog::{self, Material, Sleeve, SleeveForm};
use crate::cite::{Cite, Flag, Source};
use crate::mechanics::sleeve;
use crate::quantity::{Area, InUnits, Length, Stress, newton};
use crate::report::working::{Line, Working};
use crate::report::{Part, say, substituted};
use crate::scenario::{
    Field, Input, Scenario, SleeveMaterial, SleeveWelded, Strength, SupportKind, YesNo,
};

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
            what: "what the sleeve by itself carries when it is crushed",
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
            formula: "least of them, pressed off center by e; see the method page",
        },
        substituted![
            ("N_s", newton(yield_strength(s).si() * area.si())),
            ("e", off_center(s)),
        ],
        newton(governs.load),
        Cite::new(Source::Aisc360_22, "E3, H1, J4.4, J7", Flag::Read),
    );
}

fn yield_strength(s: &Scenario) -> Stress {
    let row = s.sleeve.material.least_beside(super::is_welded(s));
    row.compressive_yield_strength()
}

/// How far the bolt may be from the middle of its sleeve: as far as its play lets it.
pub(crate) fn off_center(s: &Scenario) -> Length {
    (s.sleeve.inner - s.bolting.thread.major()) * 0.5
}

/// The same at a strength: on the bench a sleeve is put in the middle.
pub(super) fn counted_off_center(b: &Builder<'_>) -> Length {
    match b.strength {
        Strength::Least => off_center(b.s),
        Strength::Likely => Length::default(),
    }
}

/// Part of an even pressure on a ring that is left where its near side has the most.
///
/// ```text
/// k/(k + e)
/// ```
pub(super) fn evenness(b: &Builder<'_>) -> f64 {
    let core = sleeve::kern(b.s.sleeve.outer, b.s.sleeve.inner).si();
    core / (core + counted_off_center(b).si())
}

/// Pressure between the end of a sleeve and what it stands against, over the part of the end that is pressed.
pub(super) fn bites(pressure: [Stress; 2], pressed: Area, b: &Builder<'_>) -> Limit {
    let [end, beside] = pressure;
    Limit {
        part: Part::Stack,
        load: end.min(beside).si() * pressed.si() * evenness(b),
        omega: None,
        code: say::LimitSleeveBites,
    }
}

/// Whether the sleeve is bored from bar: of the list, and with the measures that stand there.
fn is_bored(s: &Scenario) -> bool {
    let own = s.is_given(Field::SleeveOuter) || s.is_given(Field::SleeveWall);
    !own && s.sleeve_stock.form() == SleeveForm::BoredBar
}

/// One sleeve a bolt.
pub(super) fn pieces(s: &Scenario, bolts: u32, length: f64) -> Pieces {
    Pieces {
        count: bolts,
        shape: Shape::Sleeve {
            outer: s.sleeve.outer.si(),
            inner: s.sleeve.inner.si(),
            length,
            bored: is_bored(s),
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
        .flat_map(move |row| {
            row.materials()
                .iter()
                .filter_map(|id| catalog::material(id))
                .filter(move |material| goes_with(s, material))
                .map(move |material| (row, material))
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
