//! Every input by name: what it is, in which unit it is stored, what range it takes, what it is when
//! nobody says otherwise.
//!
//! One table makes the JSON form, the ranges, the link keys and the form on the page, so that they
//! cannot disagree.

use crate::quantity::{Dimension, Unit};
use serde::Serialize;

/// How a field is filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A number; limits and default in the unit of the field's name.
    Number {
        /// What it measures.
        dimension: Dimension,
        /// Unit of the name, and of a number typed without one.
        unit: Unit,
        /// Lowest value taken.
        min: f64,
        /// Highest value taken.
        max: f64,
        /// Value when nobody says otherwise; `None`: derived from the other fields.
        default: Option<f64>,
    },
    /// One of a list of short names.
    Choice {
        /// Value when nobody says otherwise.
        default: &'static str,
    },
}

macro_rules! fields {
    (
        numbers { $($(#[$nd:meta])* $Num:ident $num:ident $nkey:literal $dim:ident * $unit:ident = $ndef:literal in $min:literal .. $max:literal;)* }
        derived { $($(#[$dd:meta])* $Der:ident $der:ident $dkey:literal $ddim:ident * $dunit:ident in $dmin:literal .. $dmax:literal;)* }
        choices { $($(#[$cd:meta])* $Cho:ident $cho:ident $ckey:literal = $cdef:literal;)* }
    ) => {
        /// An input of a scenario.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Field { $($(#[$nd])* $Num,)* $($(#[$dd])* $Der,)* $($(#[$cd])* $Cho,)* }

        impl Field {
            /// All fields, in the order of links and lists.
            pub const ALL: &'static [Self] = &[$(Self::$Num,)* $(Self::$Der,)* $(Self::$Cho,)*];

            /// The name in JSON, with its unit.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$Num => stringify!($num),)*
                    $(Self::$Der => stringify!($der),)*
                    $(Self::$Cho => stringify!($cho),)*
                }
            }

            /// The key in links; never reused with another meaning.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$Num => $nkey,)* $(Self::$Der => $dkey,)* $(Self::$Cho => $ckey,)* }
            }

            /// How it is filled.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self {
                    $(Self::$Num => Kind::Number { dimension: Dimension::$dim, unit: Unit::$unit, min: $min, max: $max, default: Some($ndef) },)*
                    $(Self::$Der => Kind::Number { dimension: Dimension::$ddim, unit: Unit::$dunit, min: $dmin, max: $dmax, default: None },)*
                    $(Self::$Cho => Kind::Choice { default: $cdef },)*
                }
            }
        }

        /// What a reader set: plain numbers in the unit that each name says, nothing checked yet.
        ///
        /// JSON keeps these names; what is left out takes its default. [`Scenario::new`] checks it.
        ///
        /// [`Scenario::new`]: super::Scenario::new
        #[derive(Clone, Debug)]
        pub struct Input {
            /// Version of the meaning of all fields and defaults.
            pub version: u32,
            $($(#[$nd])* pub $num: f64,)*
            $($(#[$dd])* pub $der: Option<f64>,)*
            $($(#[$cd])* pub $cho: String,)*
        }

        impl Default for Input {
            fn default() -> Self {
                Self {
                    version: super::VERSION,
                    $($num: $ndef,)*
                    $($der: None,)*
                    $($cho: String::from($cdef),)*
                }
            }
        }

        impl Input {
            /// Names in JSON: the version and all fields.
            pub(super) const NAMES: &'static [&'static str] = &["version", $(stringify!($num),)* $(stringify!($der),)* $(stringify!($cho),)*];

            /// The number in a field, in the unit of its name; `None` for choices and for what is
            /// derived.
            #[must_use]
            pub fn number(&self, field: Field) -> Option<f64> {
                match field { $(Field::$Num => Some(self.$num),)* $(Field::$Der => self.$der,)* $(Field::$Cho => None,)* }
            }

            /// Sets a number, in the unit of the field's name; `None` goes back to the default. Does
            /// nothing to a choice.
            pub fn set_number(&mut self, field: Field, value: Option<f64>) {
                match field {
                    $(Field::$Num => self.$num = value.unwrap_or($ndef),)*
                    $(Field::$Der => self.$der = value,)*
                    $(Field::$Cho => {})*
                }
            }

            /// The chosen name in a field; `None` for numbers.
            #[must_use]
            pub fn choice(&self, field: Field) -> Option<&str> {
                match field { $(Field::$Cho => Some(&self.$cho),)* _ => None }
            }

            /// Sets a choice. Does nothing to a number.
            pub fn set_choice(&mut self, field: Field, value: &str) {
                match field { $(Field::$Cho => self.$cho = String::from(value),)* _ => {} }
            }
        }
    };
}

fields! {
    numbers {
        /// Outside width of the face that the washer presses on, across the bolt; of a round tube its outside
        /// diameter; of a channel or an angle the width of the flange, web or leg that the bolts go through.
        TubeWidth tube_width_mm "b" Length * Millimetre = 50.8 in 15.0 .. 400.0;
        /// Outside depth of the tube along the bolt; of a channel or an angle its depth that way.
        TubeDepth tube_depth_mm "h" Length * Millimetre = 76.2 in 5.0 .. 400.0;
        /// Wall thickness as measured or ordered; of a channel or an angle at the bolt.
        TubeWall tube_wall_mm "t" Length * Millimetre = 3.175 in 0.8 .. 25.0;
        /// Thickness of the fitting (coupler cheek, bracket) under each washer it passes.
        FittingThickness fitting_thickness_mm "ft" Length * Millimetre = 5.0 in 0.0 .. 40.0;
        /// Bolts in a row along the tube.
        BoltsAlong bolts_along "na" Count * One = 2.0 in 1.0 .. 6.0;
        /// Rows of bolts across the tube.
        BoltRows bolt_rows "nr" Count * One = 1.0 in 1.0 .. 3.0;
        /// Distance between bolts along the tube.
        SpacingAlong spacing_along_mm "sa" Length * Millimetre = 90.0 in 10.0 .. 600.0;
        /// Distance between rows across the tube.
        SpacingAcross spacing_across_mm "sr" Length * Millimetre = 40.0 in 10.0 .. 400.0;
        /// Wanted clamp as a share of the bolt's proof load; used when no torque is given.
        PreloadShare preload_share "ps" Share * One = 0.75 in 0.05 .. 1.0;
        /// Thickness of the spreader plate.
        SpreaderThickness spreader_thickness_mm "pt" Length * Millimetre = 6.35 in 1.0 .. 40.0;
        /// Length of the spreader plate along the tube.
        SpreaderLength spreader_length_mm "pl" Length * Millimetre = 76.2 in 10.0 .. 600.0;
        /// How much shorter the loose sleeve or insert is than the space between the walls; negative: longer.
        SleeveShort sleeve_short_mm "sg" Length * Millimetre = 0.25 in -3.0 .. 10.0;
        /// Mass of the loaded trailer.
        TrailerMass trailer_mass_kg "m" Mass * Kilogram = 750.0 in 50.0 .. 4500.0;
        /// Share of the trailer's weight that rests on the coupler.
        TongueShare tongue_share "ts" Share * One = 0.125 in 0.0 .. 0.5;
        /// Factor on the resting weight for bumps.
        VerticalFactor vertical_factor "vf" Ratio * One = 3.0 in 1.0 .. 6.0;
        /// Deceleration in braking (and pull-away), in g, that the coupler passes on from the whole trailer.
        Braking braking_g "bg" Acceleration * Gravity = 0.5 in 0.0 .. 2.0;
        /// Sideways acceleration in g acting on the tongue load.
        Side side_g "lg" Acceleration * Gravity = 0.3 in 0.0 .. 2.0;
        /// Ball centre (or chain eye, or point of a free load) ahead of the middle of the bolt group.
        BallAhead ball_ahead_mm "ba" Length * Millimetre = 130.0 in 0.0 .. 1500.0;
        /// Ball centre (or chain eye, or point of a free load) below the middle of the bolt group; negative:
        /// above.
        BallBelow ball_below_mm "bb" Length * Millimetre = 30.0 in -500.0 .. 500.0;
        /// How much colder or hotter than at tightening the joint gets.
        TemperatureSwing temperature_swing_k "dt" TemperatureStep * CelsiusStep = 35.0 in 0.0 .. 100.0;
        /// Mass of the towing vehicle: for rules that compare the two masses.
        TowingMass towing_mass_kg "tv" Mass * Kilogram = 2000.0 in 500.0 .. 40000.0;
        /// Axles of the trailer: for a spring hanger.
        Axles axles "ax" Count * One = 1.0 in 1.0 .. 3.0;
        /// Ground to wheel centre: for a spring hanger.
        TyreRadius tyre_radius_mm "tr" Length * Millimetre = 330.0 in 100.0 .. 700.0;
        /// Spring eye below the middle of the bolt group.
        HangerHeight hanger_height_mm "hh" Length * Millimetre = 100.0 in 0.0 .. 600.0;
        /// Spring eye ahead of the middle of the bolt group; negative: behind.
        HangerOffset hanger_offset_mm "ho" Length * Millimetre = 0.0 in -400.0 .. 400.0;
        /// Share of one spring's load on this hanger: half at a spring's end, the whole under an equaliser
        /// between two springs.
        HangerShare hanger_share "hs" Ratio * One = 0.5 in 0.2 .. 1.5;
        /// Length of the spring from eye to eye.
        SpringLength spring_length_mm "sn" Length * Millimetre = 650.0 in 300.0 .. 1500.0;
        /// Angle between a safety chain that pulls and the tube.
        ChainAngle chain_angle_deg "ca" Angle * Degree = 30.0 in 0.0 .. 90.0;
        /// Share of the strength required of all chains together that this bracket takes.
        ChainShare chain_share "cs" Share * One = 1.0 in 0.5 .. 1.0;
        /// Free load: along the tube, forward positive.
        FreeAlong free_along_n "xl" Force * Newton = 0.0 in -500000.0 .. 500000.0;
        /// Free load: upward.
        FreeUp free_up_n "xu" Force * Newton = 0.0 in -500000.0 .. 500000.0;
        /// Free load: sideways, to the left.
        FreeSide free_side_n "xs" Force * Newton = 0.0 in -500000.0 .. 500000.0;
        /// Free load: moment about the tube, turning left towards up.
        FreeAboutAlong free_about_along_nm "ya" Moment * NewtonMetre = 0.0 in -50000.0 .. 50000.0;
        /// Free load: moment about the sideways line, turning up towards forward.
        FreeAboutSide free_about_side_nm "yb" Moment * NewtonMetre = 0.0 in -50000.0 .. 50000.0;
        /// Free load: moment about the upright line, turning forward towards left.
        FreeAboutUp free_about_up_nm "yc" Moment * NewtonMetre = 0.0 in -50000.0 .. 50000.0;
        /// From the middle of the bolt to the nearest edge of the fitting; past the outermost bolts the
        /// fitting is taken to touch the tube that far.
        FittingEdge fitting_edge_mm "fe" Length * Millimetre = 25.0 in 3.0 .. 500.0;
        /// From the middle of the bolt nearest the end to the end of the tube.
        EndDistance end_distance_mm "ed" Length * Millimetre = 60.0 in 5.0 .. 5000.0;
        /// How often a mile brings the full load.
        RoadFull road_full_per_mile "rf" Ratio * One = 0.01 in 0.0 .. 1000.0;
        /// How often a mile brings hard bumps.
        RoadHard road_hard_per_mile "rh" Ratio * One = 0.3 in 0.0 .. 1000.0;
        /// Height of hard bumps as a share of the full load.
        RoadHardShare road_hard_share "sh" Share * One = 0.7 in 0.0 .. 1.0;
        /// How often a mile brings middling bumps.
        RoadMiddle road_middle_per_mile "rd" Ratio * One = 10.0 in 0.0 .. 10000.0;
        /// Height of middling bumps as a share of the full load.
        RoadMiddleShare road_middle_share "sd" Share * One = 0.4 in 0.0 .. 1.0;
        /// How often a mile brings light bumps.
        RoadLight road_light_per_mile "rl" Ratio * One = 100.0 in 0.0 .. 10000.0;
        /// Height of light bumps as a share of the full load.
        RoadLightShare road_light_share "sq" Share * One = 0.2 in 0.0 .. 1.0;
        /// Way that the bolts have to endure.
        RoadMiles road_miles "rm" Ratio * One = 50000.0 in 100.0 .. 2000000.0;
    }
    derived {
        /// Outside corner radius; left out: 1.5 × wall (aluminium) or 2 × wall (steel).
        CornerRadius tube_corner_radius_mm "ro" Length * Millimetre in 0.0 .. 60.0;
        /// Yield strength of the tube as the reader knows it; left out: the material's row.
        TubeYield tube_yield_mpa "fy" Stress * Megapascal in 20.0 .. 1200.0;
        /// Tensile strength of the tube as the reader knows it; left out: the material's row.
        TubeUltimate tube_ultimate_mpa "fu" Stress * Megapascal in 40.0 .. 1500.0;
        /// Modulus of elasticity of the tube; left out: the material's row.
        TubeModulus tube_modulus_gpa "em" Stress * Gigapascal in 40.0 .. 230.0;
        /// Poisson's ratio of the tube; left out: the material's row.
        TubePoisson tube_poisson "nu" Ratio * One in 0.2 .. 0.4;
        /// Hole in the tube; left out: the normal clearance hole of the bolt.
        Hole hole_mm "dh" Length * Millimetre in 5.0 .. 80.0;
        /// Outside diameter of the washer; left out: the washer's row.
        WasherOuter washer_outer_mm "wo" Length * Millimetre in 8.0 .. 200.0;
        /// Thickness of the washer; left out: the washer's row.
        WasherThickness washer_thickness_mm "wt" Length * Millimetre in 0.5 .. 30.0;
        /// Torque on the wrench; left out: what the wanted clamp needs.
        Torque torque_nm "tq" Torque * NewtonMetre in 0.5 .. 3000.0;
        /// Nut factor K; left out: the lubrication's row.
        NutFactor nut_factor "nf" Ratio * One in 0.05 .. 0.6;
        /// Scatter of the clamp about its nominal; left out: the method's row.
        Scatter scatter_share "sc" Share * One in 0.0 .. 0.6;
        /// Friction coefficient between the clamped faces; left out: the surface's row.
        FayingFriction faying_friction "mu" Ratio * One in 0.02 .. 0.8;
        /// Width of the spreader plate across the face; left out: the full width of the tube.
        SpreaderWidth spreader_width_mm "pw" Length * Millimetre in 10.0 .. 400.0;
        /// Outside diameter of a sleeve that is not in the list; left out: the sleeve's row.
        SleeveOuter sleeve_outer_mm "so" Length * Millimetre in 6.0 .. 120.0;
        /// Wall of a sleeve that is not in the list; left out: the sleeve's row.
        SleeveWall sleeve_wall_mm "sw" Length * Millimetre in 0.5 .. 40.0;
        /// Bolt centre to the upright part of a flange that can bend; left out: the fitting is judged only
        /// where it is stiff with the longest arm that there is room for.
        FlangeArm flange_arm_mm "fa" Length * Millimetre in 3.0 .. 200.0;
        /// Sideways from the plane where fitting and member meet to the line of the load, for a fitting on one
        /// side; where the bolts stand upright, from their middle. Left out: from the top none; through one
        /// ply it is not known, and the joint is not judged.
        LoadOffset load_offset_mm "lo" Length * Millimetre in 0.0 .. 500.0;
        /// Hole in the fitting; left out: as large as the hole in the tube.
        FittingHole fitting_hole_mm "fh" Length * Millimetre in 5.0 .. 80.0;
        /// Gap or packing between the fitting and the wall of the tube; left out: none, or the spreader plate.
        FittingGap fitting_gap_mm "fg" Length * Millimetre in 0.0 .. 100.0;
        /// Length of the load bed, for a trailer above 3.5 t; left out: as long as from ball to axles.
        BedLength bed_length_mm "lb" Length * Millimetre in 500.0 .. 15000.0;
        /// Ball to the middle of the axles, for a trailer above 3.5 t; left out: as long as the bed.
        BallToAxle ball_to_axle_mm "la" Length * Millimetre in 500.0 .. 15000.0;
        /// Back of the web of a channel or outstanding leg of an angle to the middle of the nearest bolt; left out: six
        /// tenths of the width to the middle of the bolts.
        BoltGauge bolt_gauge_mm "gg" Length * Millimetre in 4.0 .. 400.0;
        /// Thickness of the part of a channel or an angle that the bolts do not go through; left out: as the
        /// part that they go through.
        OutstandingWall upright_wall_mm "tw" Length * Millimetre in 0.8 .. 40.0;
        /// Rise of the inside of a channel's flange towards its web, over its run; left out: 2 in 12.
        FlangeSlope flange_slope "fl" Share * One in 0.0 .. 0.25;
    }
    choices {
        /// Which way the bolts run: through the sides (cross-bolted; through a web) or from the top (through a
        /// flange).
        Mount mount "mt" = "through-sides";
        /// Material of the tube.
        TubeMaterial tube_material "tm" = "6061-t6";
        /// Whether the wall was measured or is the nominal of the size ordered.
        WallBasis wall_basis "wb" = "measured";
        /// Whether a weld lies within 25 mm (1 in) of the bolt.
        WeldNear weld_near "wn" = "no";
        /// Whether the tube end nearest the bolt is open or closed by a welded cap.
        TubeEnd tube_end "te" = "open";
        /// Material of the fitting.
        FittingMaterial fitting_material "fm" = "a36";
        /// Whether the fitting lies between washer and tube and reaches over both side walls.
        FittingSpreads fitting_spreads "fs" = "no";
        /// What fills the gap between fitting and member, beyond a spreader plate that is entered.
        GapFilling gap_filling "gf" = "air";
        /// Bolt size.
        Bolt bolt "d" = "unc-1.2";
        /// Bolt strength grade or class.
        Grade bolt_grade "cl" = "sae-5";
        /// Washer series under head and nut.
        Washer washer "ws" = "narrow";
        /// State of threads and faces: gives the nut factor.
        Lubrication lubrication "lu" = "zinc";
        /// How the clamp is controlled: gives the scatter.
        Method tightening "tg" = "wrench";
        /// State of the clamped faces: gives the friction coefficient.
        Surface faying_surface "su" = "bare-clean";
        /// What the clamp stands on.
        Support support "sp" = "bare";
        /// Material of the spreader plate.
        SpreaderMaterial spreader_material "pm" = "a36";
        /// Sleeve stock.
        Sleeve sleeve "sl" = "rt-0.750x0.120";
        /// Material of the sleeve.
        SleeveMaterial sleeve_material "sm" = "a513-1020";
        /// Whether the sleeve is welded to the tube at both ends.
        SleeveWelded sleeve_welded "wd" = "no";
        /// Material of the solid insert.
        InsertMaterial insert_material "im" = "6061-t6";
        /// What is bolted on.
        Joint joint "jt" = "coupler";
        /// Published loads to check on top of the road's.
        LoadRule load_rule "lr" = "road-service";
        /// What a free load asks for.
        FreeKind free_kind "fk" = "service";
        /// What the bolt is coated with; stainless grades are stainless whatever stands here.
        BoltFinish bolt_finish "bf" = "zinc";
        /// How wet and how salty the joint lives.
        Exposure exposure "ex" = "road-salt";
        /// What the towing vehicle rides on, for a trailer above 3.5 t.
        TowSprings tow_springs "ty" = "steel";
        /// What the bolts go through.
        Member member "mb" = "rectangular-tube";
        /// Whether a washer made to fit lies where the surface is not square to the bolt: a tapered one on a
        /// sloping flange, a saddle on a round tube.
        ShapedWasher shaped_washer "bw" = "no";
        /// On which sides of a tube or a bar the fitting lies, where the bolts run through its sides.
        FittingSides fitting_sides "fo" = "both";
        /// Whether there is a crack at a hole, a weld or a corner.
        FoundCrack found_crack "zc" = "not-looked";
        /// Whether a hole is oval, or a bolt can be moved by hand; the hole's long way is then the hole.
        FoundOval found_oval "zo" = "not-looked";
        /// Whether a nut turns without end and never gets tight.
        FoundSpin found_spin "zn" = "not-looked";
        /// Whether rust or dust trails run from the joint.
        FoundTrails found_trails "zr" = "not-looked";
        /// Whether a face is hollow under its washer.
        FoundHollow found_hollow "zh" = "not-looked";
    }
}

impl Field {
    /// Lowest and highest value in the unit of the name; `None` for choices.
    #[must_use]
    pub const fn range(self) -> Option<(f64, f64)> {
        match self.kind() {
            Kind::Number { min, max, .. } => Some((min, max)),
            Kind::Choice { .. } => None,
        }
    }

    /// Unit of the name, and of a number typed without one; the plain unit for choices.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self.kind() {
            Kind::Number { unit, .. } => unit,
            Kind::Choice { .. } => Unit::One,
        }
    }

    /// The field with this JSON name.
    #[must_use]
    pub fn by_name(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|f| f.name() == name)
    }

    /// The field with this link key.
    #[must_use]
    pub fn by_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|f| f.key() == key)
    }
}

impl Serialize for Field {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

impl PartialEq for Input {
    fn eq(&self, other: &Self) -> bool {
        self.version == other.version
            && Field::ALL
                .iter()
                .all(|f| self.number(*f) == other.number(*f) && self.choice(*f) == other.choice(*f))
    }
}

impl Input {
    /// The default with some fields set, each in the unit of its name.
    #[must_use]
    pub fn with(numbers: &[(Field, f64)], choices: &[(Field, &str)]) -> Self {
        let mut input = Self::default();
        for (field, value) in numbers {
            input.set_number(*field, Some(*value));
        }
        for (field, value) in choices {
            input.set_choice(*field, value);
        }
        input
    }

    /// Whether a field stands at its default.
    #[must_use]
    pub fn is_default(&self, field: Field) -> bool {
        match field.kind() {
            Kind::Number { default, .. } => self.number(field) == default,
            Kind::Choice { default } => self.choice(field) == Some(default),
        }
    }

    /// Puts a field back to its default.
    pub fn reset(&mut self, field: Field) {
        match field.kind() {
            Kind::Number { default, .. } => self.set_number(field, default),
            Kind::Choice { default } => self.set_choice(field, default),
        }
    }

    /// The fields that differ from their defaults, in list order.
    pub fn changed(&self) -> impl Iterator<Item = Field> + '_ {
        Field::ALL.iter().copied().filter(|f| !self.is_default(*f))
    }
}
