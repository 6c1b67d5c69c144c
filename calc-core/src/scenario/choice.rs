//! A choice made in the program: a typed value that knows which field it fills, so that a slip of the pen
//! does not compile.

use super::choices::{
    BoltFinish, Exposure, FittingSides, FreeKind, GapFilling, JointKind, MemberKind, Mount, Seen,
    SupportKind, TowSprings, TubeEnd, WallBasis, YesNo,
};
use super::fields::{Field, Input};
use crate::catalog::{
    BoltGrade, LoadRule, Material, NutFactor, Sleeve, SlipSurface, Thread, TighteningMethod,
    WasherSeries,
};

/// A field and one of the names that it takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    field: Field,
    name: &'static str,
}

impl Choice {
    /// The field.
    #[must_use]
    pub const fn field(self) -> Field {
        self.field
    }

    /// The name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.name
    }
}

impl Input {
    /// Makes a choice.
    ///
    /// ```
    /// use calc_core::Input;
    /// use calc_core::scenario::{SleeveWelded, SupportKind, YesNo};
    ///
    /// let mut input = Input::default();
    /// input.choose(SupportKind::ThroughSleeve);
    /// input.choose(SleeveWelded(YesNo::Yes));
    /// assert_eq!((&*input.support, &*input.sleeve_welded), ("through-sleeve", "yes"));
    /// ```
    pub fn choose(&mut self, choice: impl Into<Choice>) {
        let Choice { field, name } = choice.into();
        self.set_choice(field, name);
    }
}

/// Values of which each fills one field.
macro_rules! fills {
    ($($Type:ty, $name:ident => $field:ident;)*) => {
        $(impl From<$Type> for Choice {
            fn from(value: $Type) -> Self {
                Self { field: Field::$field, name: value.$name() }
            }
        })*
    };
}

fills! {
    MemberKind, name => Member;
    Mount, name => Mount;
    FittingSides, name => FittingSides;
    WallBasis, name => WallBasis;
    TubeEnd, name => TubeEnd;
    SupportKind, name => Support;
    JointKind, name => Joint;
    BoltFinish, name => BoltFinish;
    FreeKind, name => FreeKind;
    Exposure, name => Exposure;
    GapFilling, name => GapFilling;
    TowSprings, name => TowSprings;
    WasherSeries, id => Washer;
    &'static Thread, id => Bolt;
    &'static BoltGrade, id => Grade;
    &'static NutFactor, id => Lubrication;
    &'static TighteningMethod, id => Method;
    &'static SlipSurface, id => Surface;
    &'static Sleeve, id => Sleeve;
    &'static LoadRule, id => LoadRule;
}

/// Values that several fields take: each field has a type of its own that says which is meant.
macro_rules! one_of_several {
    ($($(#[$doc:meta])* $Name:ident($Value:ty, $name:ident);)*) => {
        $($(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $Name(pub $Value);

        impl From<$Name> for Choice {
            fn from(value: $Name) -> Self {
                Self { field: Field::$Name, name: value.0.$name() }
            }
        })*
    };
}

one_of_several! {
    /// Whether a weld lies near the bolt.
    WeldNear(YesNo, name);
    /// Whether the fitting spreads the washer's load to the side walls.
    FittingSpreads(YesNo, name);
    /// Whether the sleeve is welded at both ends.
    SleeveWelded(YesNo, name);
    /// Whether a washer made to fit lies on a sloping or curved face.
    ShapedWasher(YesNo, name);
    /// Whether a crack was found.
    FoundCrack(Seen, name);
    /// Whether a hole was found oval, or a bolt loose in it.
    FoundOval(Seen, name);
    /// Whether a nut turns without end.
    FoundSpin(Seen, name);
    /// Whether trails of rust or dust were found.
    FoundTrails(Seen, name);
    /// Whether a face was found dished in.
    FoundHollow(Seen, name);
    /// Material of the tube.
    TubeMaterial(&'static Material, id);
    /// Material of the fitting.
    FittingMaterial(&'static Material, id);
    /// Material of the spreader plate.
    SpreaderMaterial(&'static Material, id);
    /// Material of the sleeve.
    SleeveMaterial(&'static Material, id);
    /// Material of the insert.
    InsertMaterial(&'static Material, id);
}

#[cfg(test)]
mod tests {
    use super::super::choices::options;
    use super::super::fields::Kind;
    use super::*;
    use crate::catalog;

    /// One of every type.
    fn all() -> Vec<Choice> {
        let material = catalog::material("a36").unwrap();
        vec![
            MemberKind::Angle.into(),
            Mount::FromTop.into(),
            FittingSides::One.into(),
            WallBasis::Nominal.into(),
            TubeEnd::Capped.into(),
            SupportKind::Spreader.into(),
            JointKind::Free.into(),
            BoltFinish::Plain.into(),
            FreeKind::Proof.into(),
            Exposure::Wet.into(),
            GapFilling::Packing.into(),
            TowSprings::Air.into(),
            WasherSeries::Wide.into(),
            catalog::thread("m12").unwrap().into(),
            catalog::bolt_grade("iso-8.8").unwrap().into(),
            catalog::nut_factor("dry").unwrap().into(),
            catalog::tightening_method("turn").unwrap().into(),
            catalog::slip_surface("painted").unwrap().into(),
            catalog::sleeves().first().unwrap().into(),
            catalog::load_rule("adr-62").unwrap().into(),
            WeldNear(YesNo::Yes).into(),
            FittingSpreads(YesNo::Yes).into(),
            SleeveWelded(YesNo::Yes).into(),
            ShapedWasher(YesNo::Yes).into(),
            FoundCrack(Seen::Yes).into(),
            FoundOval(Seen::Yes).into(),
            FoundSpin(Seen::Yes).into(),
            FoundTrails(Seen::Yes).into(),
            FoundHollow(Seen::Yes).into(),
            TubeMaterial(material).into(),
            FittingMaterial(material).into(),
            SpreaderMaterial(material).into(),
            SleeveMaterial(material).into(),
            InsertMaterial(material).into(),
        ]
    }

    #[test]
    fn every_choice_can_be_made_by_type_and_takes_a_name_of_its_field() {
        let all = all();
        for &field in Field::ALL {
            let is_choice = matches!(field.kind(), Kind::Choice { .. });
            let typed: Vec<_> = all.iter().filter(|c| c.field() == field).collect();
            assert_eq!(typed.len(), usize::from(is_choice), "{}", field.name());
        }
        for choice in all {
            assert!(options(choice.field()).contains(&choice.name()));
            let mut input = Input::default();
            input.choose(choice);
            assert_eq!(input.choice(choice.field()), Some(choice.name()));
        }
    }
}
