//! What nobody knows: names that stand for several values, and the joints that such a joint may be.
//!
//! A joint with such a name is every joint in which it is settled to one of its values; what is asked of it is asked of
//! all of them, and the worst answer counts.

use super::Scenario;
use super::check::settled;
use super::choices::{BoltFinish, MemberKind, SupportKind};
use super::fields::{Field, Input};
use crate::catalog::{self, BoltGrade, Family, Material, ProductForm};
use crate::order::sorted;
use crate::quantity::Stress;
use serde::Serialize;

/// Not known at all.
pub const UNKNOWN: &str = "unknown";
/// Aluminium of an alloy that is not known.
pub const UNKNOWN_ALUMINIUM: &str = "unknown-aluminum";
/// Carbon steel of a grade that is not known: a magnet sticks to it.
pub const UNKNOWN_STEEL: &str = "unknown-steel";

/// The names of metals that are not known.
pub(super) const METALS: [&str; 3] = [UNKNOWN_ALUMINIUM, UNKNOWN_STEEL, UNKNOWN];

/// Choices of which somebody may not know what they are. Threads and what is on them are another thing: there a band
/// of nut factors counts ([`nut_factor_band`](super::Tightening::nut_factor_band)).
const FIELDS: [Field; 5] = [
    Field::TubeMaterial,
    Field::WallBasis,
    Field::FittingMaterial,
    Field::Grade,
    Field::Surface,
];

/// Most joints that one joint may be. With more, only the ends of each set are taken: the weakest and the strongest, of
/// metals of each family, and the softest and the stiffest of them.
pub const MOST: usize = 128;

/// Walls that tubes and shapes of trailers are sold with, mm: aluminium 1/16, 3/32, 1/8, 3/16, 1/4 in, steel 16, 14 and
/// 11 gauge of tube, 3/16, 1/4 in. Common practice, no source. Those for which a joint has no room it is not made of.
const WALLS: [[f64; 5]; 2] = [
    [1.5875, 2.381_25, 3.175, 4.7625, 6.35],
    [1.651, 2.108_2, 3.048, 4.7625, 6.35],
];

/// What is not known, settled.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub enum Settled {
    /// A choice by name.
    #[serde(rename = "name")]
    Name(&'static str),
    /// A wall, mm, as sold.
    #[serde(rename = "wall_mm")]
    Wall(f64),
}

impl Settled {
    /// Settles a field of an input.
    pub fn put(self, input: &mut Input, field: Field) {
        match self {
            Self::Name(name) => input.set_choice(field, name),
            Self::Wall(wall) => {
                input.tube_wall_mm = wall;
                input.choose(super::WallBasis::Nominal);
            }
        }
    }
}

/// Whether a name stands for values that nobody knows.
#[must_use]
pub fn is_unknown(name: &str) -> bool {
    name == UNKNOWN || METALS.contains(&name)
}

/// The fields of which a joint does not know what they are, where they count.
pub(super) fn fields(input: &Input) -> Vec<Field> {
    FIELDS
        .into_iter()
        .filter(|field| input.choice(*field).is_some_and(is_unknown) && field.applies(input))
        .collect()
}

/// What a field that is not known may be in a joint, weakest first: the worst of these counts.
///
/// | field | stands for |
/// |---|---|
/// | metals | those of the catalogue that are sold in such a form; of steel without stainless, to which no magnet sticks |
/// | wall | what tubes are sold with |
/// | bolt | what has no marks, or is sold without: SAE grade 2 and A307, classes 4.6 and 4.8; if stainless, those |
/// | faces | painted, or bare and clean |
///
/// A grade that is stronger is no worse at the same torque, and the torque is that of the weakest.
#[must_use]
pub fn stands_for(field: Field, input: &Input) -> Vec<Settled> {
    let names = |names: &[&'static str]| names.iter().copied().map(Settled::Name).collect();
    match field {
        Field::TubeMaterial | Field::FittingMaterial => metals(field, input)
            .map(|metal| Settled::Name(metal.id()))
            .collect(),
        Field::WallBasis => {
            let walls = families(input)
                .into_iter()
                .flat_map(|family| walls(family).to_vec())
                .collect();
            let mut walls = sorted(walls, &|a: &f64, b: &f64| a.total_cmp(b));
            walls.dedup();
            walls.into_iter().map(Settled::Wall).collect()
        }
        Field::Grade => names(&grades(input)),
        Field::Surface => names(&["painted", "bare-clean"]),
        _ => Vec::new(),
    }
}

/// What somebody may find who looks: what a field stands for, and bolts whose marks can be read.
#[must_use]
pub fn may_be(field: Field, input: &Input) -> Vec<Settled> {
    let mut all = match field {
        Field::Lubrication => ["dry", "zinc", "oiled", "waxed-zinc"]
            .map(Settled::Name)
            .to_vec(),
        _ => stands_for(field, input),
    };
    if field == Field::Grade {
        let marked = ["sae-5", "sae-8", "iso-8.8", "iso-10.9"];
        let stainless = input.bolt_finish == BoltFinish::Stainless.name();
        let fits = |id: &&str| !stainless && fits(input, id);
        all.extend(marked.into_iter().filter(fits).map(Settled::Name));
    }
    all
}

/// Metals that a part may be made of, aluminium first, the weaker before the stronger.
fn metals(field: Field, input: &Input) -> impl Iterator<Item = &'static Material> {
    let name = input.choice(field).unwrap_or_default();
    let family = match name {
        UNKNOWN_ALUMINIUM => Some(Family::Aluminium),
        UNKNOWN_STEEL => Some(Family::Steel),
        _ => None,
    };
    let forms = forms(field, input);
    // A name that is known stands for itself.
    let known = !is_unknown(name);
    let all: Vec<&'static Material> = catalog::materials()
        .iter()
        .filter(|m| match known {
            true => m.id() == name,
            false => {
                family.is_none_or(|family| m.family() == family)
                    && m.forms().iter().any(|form| forms.contains(form))
            }
        })
        .collect();
    // Aluminium, steel, stainless: as in the catalogue.
    let yields = |m: &Material| m.least().yield_strength().value;
    let order = |a: &&'static Material, b: &&'static Material| {
        let families = (a.family() as u8).cmp(&(b.family() as u8));
        families.then(yields(a).total_cmp(&yields(b)))
    };
    sorted(all, &order).into_iter()
}

/// Forms in which the metal of a part is sold: a bar and a fitting may be anything.
fn forms(field: Field, input: &Input) -> &'static [ProductForm] {
    use ProductForm::{Pipe, Plate, RoundTube, Section};
    let solid = [&input.member, &input.support]
        .into_iter()
        .any(|name| *name == MemberKind::SolidBar.name() || *name == SupportKind::Solid.name());
    match field {
        Field::TubeMaterial if solid => &[Section, Plate, RoundTube],
        Field::TubeMaterial if input.member == MemberKind::RoundTube.name() => &[RoundTube, Pipe],
        Field::TubeMaterial => &[Section],
        _ => &[Section, Plate],
    }
}

fn families(input: &Input) -> Vec<Family> {
    let mut all: Vec<Family> = metals(Field::TubeMaterial, input)
        .map(Material::family)
        .collect();
    all.dedup();
    all
}

const fn walls(family: Family) -> &'static [f64; 5] {
    let [aluminium, steel] = &WALLS;
    match family {
        Family::Aluminium => aluminium,
        Family::Steel | Family::Stainless => steel,
    }
}

fn fits(input: &Input, grade: &str) -> bool {
    catalog::bolt_grade(grade)
        .zip(catalog::thread(&input.bolt))
        .is_some_and(|(grade, thread)| grade.fits(thread))
}

/// Bolts without marks, weakest first; stainless ones where they are stainless and made in this size.
fn grades(input: &Input) -> Vec<&'static str> {
    let stainless = input.bolt_finish == BoltFinish::Stainless.name();
    let stainless = catalog::bolt_grades()
        .iter()
        .filter(|grade| stainless && grade.stainless())
        .map(BoltGrade::id)
        .filter(|id| fits(input, id));
    let all: Vec<_> = stainless.collect();
    if !all.is_empty() {
        return all;
    }
    let unmarked = ["a307", "sae-2", "iso-4.6", "iso-4.8"];
    unmarked.into_iter().filter(|id| fits(input, id)).collect()
}

/// The joints that a joint may be, each with all settled, made as they are asked for.
pub(super) struct Members {
    input: Input,
    axes: Vec<(Field, Vec<Settled>)>,
    next: usize,
    count: usize,
    /// Whether a value was left out for which the joint has no room.
    left_out: bool,
}

/// Joints that a choice from each of the lists makes.
fn product(axes: &[(Field, Vec<Settled>)]) -> usize {
    axes.iter().map(|(_, values)| values.len()).product()
}

impl Members {
    /// Every combination; with more than [`MOST`] of them the ends of each list; with more still, of bolt and faces the
    /// worst alone.
    pub(super) fn new(input: &Input, fields: &[Field]) -> Self {
        let mut axes: Vec<(Field, Vec<Settled>)> = fields
            .iter()
            .map(|&field| (field, stands_for(field, input)))
            .collect();
        let mut left_out = false;
        if product(&axes) > MOST {
            // The ends of what there is room for.
            let before = product(&axes);
            axes = axes
                .iter()
                .map(|axis| fitting(axis, input, &axes))
                .collect();
            left_out = product(&axes) < before;
            for (_, values) in &mut axes {
                *values = ends(values);
            }
        }
        if product(&axes) > MOST {
            for (field, values) in &mut axes {
                if matches!(field, Field::Grade | Field::Surface) {
                    values.truncate(1);
                }
            }
        }
        Self {
            input: input.clone(),
            count: product(&axes),
            axes,
            next: 0,
            left_out,
        }
    }

    /// Whether there is no room for something that it may be.
    pub(super) fn may_not_fit(self) -> bool {
        self.left_out || { self }.any(|input| settled(&input).is_err())
    }
}

/// The values of one list with which there is a joint while all else is at the beginning of its list, or all at the end.
fn fitting(
    (field, values): &(Field, Vec<Settled>),
    input: &Input,
    axes: &[(Field, Vec<Settled>)],
) -> (Field, Vec<Settled>) {
    let others = [true, false].map(|at_the_beginning| {
        let mut input = input.clone();
        for (field, values) in axes {
            let end = if at_the_beginning {
                values.first()
            } else {
                values.last()
            };
            if let Some(value) = end {
                value.put(&mut input, *field);
            }
        }
        input
    });
    let fits = |value: &&Settled| {
        others.iter().any(|input| {
            let mut input = input.clone();
            value.put(&mut input, *field);
            settled(&input).is_ok()
        })
    };
    let kept: Vec<_> = values.iter().filter(fits).copied().collect();
    (
        *field,
        if kept.is_empty() {
            values.clone()
        } else {
            kept
        },
    )
}

/// First and last of a list, of metals of each family, and of those the softest, the stiffest, and the one whose wall
/// counts least.
fn ends(values: &[Settled]) -> Vec<Settled> {
    let metal = |value: &Settled| match value {
        Settled::Name(name) => catalog::material(name),
        Settled::Wall(_) => None,
    };
    let family = |value: &Settled| metal(value).map(Material::family);
    let keys: [fn(&Material) -> f64; 3] = [
        |m| m.modulus().value,
        |m| -m.modulus().value,
        Material::design_wall_factor,
    ];
    let keeps = |(place, value): &(usize, &Settled)| {
        let others = || {
            let all = values.iter().enumerate();
            all.filter(|(other, v)| other != place && family(v) == family(value))
        };
        let least = |key: fn(&Material) -> f64| {
            let own = metal(value).map_or(0.0, key);
            others().all(|(other, v)| {
                let its = metal(v).map_or(0.0, key);
                own < its || (own <= its && *place < other)
            })
        };
        others().all(|(other, _)| other > *place)
            || others().all(|(other, _)| other < *place)
            || keys.into_iter().any(least)
    };
    let kept = values.iter().enumerate().filter(keeps);
    kept.map(|(_, value)| *value).collect()
}

impl Iterator for Members {
    type Item = Input;

    fn next(&mut self) -> Option<Input> {
        if self.next >= self.count {
            return None;
        }
        let mut rest = self.next;
        self.next += 1;
        let mut input = self.input.clone();
        for (field, values) in &self.axes {
            let value = values.get(rest.checked_rem(values.len())?)?;
            rest /= values.len();
            value.put(&mut input, *field);
        }
        Some(input)
    }
}

/// Proof strength of the weakest bolt that it may be, by which it is tightened.
pub(super) fn weakest_proof(s: &Scenario, input: &Input) -> Stress {
    grades(input)
        .into_iter()
        .filter_map(|id| catalog::bolt_grade(id)?.strength(s.bolting.thread, s.bolt_length()))
        .map(super::checked::proof_of)
        .fold(s.bolting.proof_strength(), Stress::min)
}

#[cfg(test)]
mod tests {
    use super::super::choices::options;
    use super::*;

    fn names(field: Field, input: &Input) -> Vec<&'static str> {
        stands_for(field, input)
            .into_iter()
            .filter_map(|value| match value {
                Settled::Name(name) => Some(name),
                Settled::Wall(_) => None,
            })
            .collect()
    }

    #[test]
    fn metals_are_those_of_the_form() {
        let of = |name: &str, member: &str| {
            let input = Input {
                tube_material: name.into(),
                member: member.into(),
                ..Input::default()
            };
            names(Field::TubeMaterial, &input)
        };
        let tube = "rectangular-tube";
        assert_eq!(
            of(UNKNOWN_ALUMINIUM, tube),
            ["6063-t5", "6063-t6", "6005a-t6", "6061-t6"]
        );
        assert_eq!(
            of(UNKNOWN_STEEL, tube),
            ["s235", "a36", "a500-b", "a500-c", "s355"]
        );
        assert_eq!(of(UNKNOWN_STEEL, "round-tube"), ["a53-b", "a513-1020"]);
        assert_eq!(of(UNKNOWN, tube).len(), 9);
        assert_eq!(of(UNKNOWN, "solid-bar").len(), 13);
    }

    #[test]
    fn every_bolt_has_an_unmarked_grade() {
        for thread in catalog::threads() {
            for &finish in BoltFinish::NAMES {
                let mut input = Input::default();
                input.choose(thread);
                input.set_choice(Field::BoltFinish, finish);
                assert!(!names(Field::Grade, &input).is_empty(), "{}", thread.id());
            }
        }
    }

    #[test]
    fn there_are_never_too_many() {
        let all = [UNKNOWN_ALUMINIUM, UNKNOWN_STEEL, UNKNOWN];
        for &member in MemberKind::NAMES {
            for (tube, fitting, finish) in all
                .into_iter()
                .flat_map(|a| all.map(|b| (a, b)))
                .flat_map(|(a, b)| ["zinc", "stainless"].map(|c| (a, b, c)))
            {
                let input = Input {
                    member: member.into(),
                    tube_material: tube.into(),
                    fitting_material: fitting.into(),
                    bolt: "m12".into(),
                    bolt_grade: UNKNOWN.into(),
                    bolt_finish: finish.into(),
                    faying_surface: UNKNOWN.into(),
                    wall_basis: UNKNOWN.into(),
                    ..Input::default()
                };
                let fields = fields(&input);
                let members: Vec<Input> = Members::new(&input, &fields).collect();
                assert!((2..=MOST).contains(&members.len()), "{}", members.len());
                for (place, one) in members.iter().enumerate() {
                    assert!(super::fields(one).is_empty());
                    assert!(!members[..place].contains(one));
                }
            }
        }
    }

    #[test]
    fn every_choice_that_offers_not_knowing_is_settled() {
        for &field in Field::ALL {
            for name in options(field).into_iter().filter(|name| is_unknown(name)) {
                let mut input = Input::default();
                input.set_choice(field, name);
                let settled = may_be(field, &input);
                assert!(settled.len() > 1, "{} {name}", field.name());
                for value in settled {
                    let mut known = input.clone();
                    value.put(&mut known, field);
                    assert!(!is_unknown(known.choice(field).unwrap()));
                }
            }
        }
    }

    #[test]
    fn a_bolt_that_nobody_knows_is_tightened_as_the_weakest() {
        let joint = |grade: &str| {
            Scenario::new(&Input {
                bolt: "m12".into(),
                bolt_grade: grade.into(),
                ..Input::default()
            })
            .unwrap()
        };
        let wanted = |s: &Scenario| s.bolting.proof_strength() * s.tightening.preload_share;
        let weakest = wanted(&joint("iso-4.6"));
        let unknown = joint(UNKNOWN);
        assert_eq!(wanted(&unknown), weakest);
        assert_eq!(unknown.members().count(), 2);
        for member in unknown.members() {
            assert!((wanted(&member) / weakest).value - 1.0 < 1e-12);
        }
    }
}
