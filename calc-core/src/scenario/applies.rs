//! What counts together: which fields a joint makes use of, and which names make sense for a choice.
//!
//! A field that does not apply may hold anything within its range without changing an answer; a test tries
//! that with joints drawn by lot, and that every field which changes one applies.

use super::Scenario;
use super::choices::{
    FittingSides, JointKind, MemberKind, Mount, SupportKind, WallBasis, YesNo, options,
};
use super::error::InputError;
use super::fields::{Field, Input};
use crate::catalog::{self, BoltGrade, LoadRule};

/// The choices that decide which fields apply. A name that is unknown is refused elsewhere; here its
/// default stands in.
struct Situation {
    member: MemberKind,
    mount: Mount,
    on_both: bool,
    support: SupportKind,
    joint: JointKind,
    rule: Option<&'static LoadRule>,
    grade: Option<&'static BoltGrade>,
}

impl Situation {
    fn of(input: &Input) -> Self {
        let member = MemberKind::by_name(&input.member).unwrap_or(MemberKind::RectangularTube);
        let support = if member == MemberKind::SolidBar {
            SupportKind::Solid
        } else {
            SupportKind::by_name(&input.support).unwrap_or(SupportKind::Bare)
        };
        Self {
            member,
            mount: Mount::by_name(&input.mount).unwrap_or(Mount::ThroughSides),
            on_both: input.fitting_sides != FittingSides::One.name(),
            support,
            joint: JointKind::by_name(&input.joint).unwrap_or(JointKind::Coupler),
            rule: catalog::load_rule(&input.load_rule),
            grade: catalog::bolt_grade(&input.bolt_grade),
        }
    }

    /// A channel or an angle.
    fn is_open(&self) -> bool {
        matches!(self.member, MemberKind::Channel | MemberKind::Angle)
    }

    fn is_round(&self) -> bool {
        self.member == MemberKind::RoundTube
    }

    /// Whether the bolts go through the sloping flange of a channel.
    fn through_flange(&self) -> bool {
        self.member == MemberKind::Channel && self.mount == Mount::FromTop
    }

    /// Whether the bolts run through both sides of a tube or a bar.
    fn through_walls(&self) -> bool {
        !self.is_open() && self.mount == Mount::ThroughSides
    }

    fn two_cheeks(&self) -> bool {
        self.through_walls() && self.on_both
    }

    fn is_solid(&self) -> bool {
        self.support.is_solid()
    }
}

impl Field {
    /// Whether a joint makes use of a field: a plate's thickness counts only where there is a plate.
    #[must_use]
    pub fn applies(self, input: &Input) -> bool {
        let s = Situation::of(input);
        match self {
            Self::Support => s.member != MemberKind::SolidBar,
            Self::TubeDepth => !s.is_round(),
            Self::TubePoisson => !s.is_open() && !s.is_round(),
            // What goes in by the end needs it open; faces near an open end give way sooner.
            Self::TubeEnd => !s.is_open() && !s.is_solid(),
            Self::OutstandingWall => s.is_open(),
            Self::BoltGauge => s.member == MemberKind::Angle || s.through_flange(),
            Self::FlangeSlope => s.member == MemberKind::Channel,
            Self::ShapedWasher => s.through_flange() || s.is_round() && !s.support.passes_walls(),
            Self::BoltRows => !s.is_round() || input.bolt_rows > 1.0,
            Self::SpacingAcross => input.bolt_rows > 1.0,
            // Two cheeks stand on both sides of the load.
            Self::LoadOffset => !s.two_cheeks(),
            Self::FittingSides => s.through_walls(),
            Self::SpacingAlong => input.bolts_along > 1.0,
            Self::SpreaderThickness
            | Self::SpreaderLength
            | Self::SpreaderWidth
            | Self::SpreaderMaterial => s.support.has_plates(),
            Self::Sleeve | Self::SleeveOuter | Self::SleeveWall | Self::SleeveMaterial => {
                s.support.has_sleeve()
            }
            // Beside a sleeve between the walls only to be taken back.
            Self::SleeveWelded => {
                s.support.passes_walls()
                    || s.support.ends_inside() && input.sleeve_welded == YesNo::Yes.name()
            }
            Self::SleeveShort => s.support.may_be_short(),
            Self::InsertMaterial => s.support.has_block(),
            Self::PreloadShare => input.torque_nm.is_none(),
            Self::BoltFinish => !s.grade.is_some_and(BoltGrade::stainless),
            Self::GapFilling => input
                .fitting_gap_mm
                .is_some_and(|gap| gap > plate_in_gap(input)),
            Self::TubeWall => !s.is_solid() && input.wall_basis != WallBasis::Unknown.name(),
            Self::WallBasis => !s.is_solid(),
            Self::CornerRadius | Self::FittingSpreads => {
                !s.is_solid() && !s.is_open() && !s.is_round()
            }
            _ => s.has_load(self),
        }
    }
}

/// What a spreader plate that is entered fills of the gap between fitting and member, mm. On a flange it lies
/// under the nut, on the other side.
fn plate_in_gap(input: &Input) -> f64 {
    let s = Situation::of(input);
    if s.support.has_plates() && !s.is_open() {
        input.spreader_thickness_mm
    } else {
        0.0
    }
}

impl Situation {
    /// Whether the loads of the joint are counted from a field; true for what is no load.
    fn has_load(&self, field: Field) -> bool {
        use JointKind::{ChainBracket, Coupler, Free, SpringHanger};
        match field {
            Field::TrailerMass => self.joint != Free,
            Field::VerticalFactor | Field::Braking | Field::Side => {
                matches!(self.joint, Coupler | SpringHanger)
            }
            Field::TongueShare => matches!(self.joint, Coupler | SpringHanger),
            Field::TowingMass => {
                self.joint == Coupler && self.rule.is_some_and(LoadRule::compares_masses)
            }
            Field::BedLength | Field::BallToAxle | Field::TowSprings => {
                self.joint == Coupler && self.rule.is_some_and(LoadRule::has_vertical_value)
            }
            Field::BallAhead | Field::BallBelow => self.joint != SpringHanger,
            Field::Axles
            | Field::TyreRadius
            | Field::HangerHeight
            | Field::HangerOffset
            | Field::HangerShare
            | Field::SpringLength => self.joint == SpringHanger,
            Field::ChainAngle => self.joint == ChainBracket,
            Field::ChainShare => {
                self.joint == ChainBracket && self.rule.is_none_or(LoadRule::chains_share)
            }
            Field::FreeAlong
            | Field::FreeUp
            | Field::FreeSide
            | Field::FreeAboutAlong
            | Field::FreeAboutSide
            | Field::FreeAboutUp
            | Field::FreeKind => self.joint == Free,
            _ => true,
        }
    }
}

/// The names that make sense for a choice in a joint: all that the joint does not refuse for themselves.
/// Where it refuses every one, the fault lies elsewhere, and all are offered.
#[must_use]
pub fn offered(field: Field, input: &Input) -> Vec<&'static str> {
    let all = options(field);
    let may_be_refused = matches!(
        field,
        Field::Support | Field::Grade | Field::Washer | Field::Sleeve | Field::SleeveWelded
    );
    if !may_be_refused {
        return all;
    }
    let mut tried = input.clone();
    let taken: Vec<_> = all
        .iter()
        .copied()
        .filter(|name| {
            tried.set_choice(field, name);
            !refuses(&tried, field) && is_known(field, &tried)
        })
        .collect();
    if taken.is_empty() { all } else { taken }
}

/// Whether a joint refuses a choice that can be made in another joint.
fn refuses(input: &Input, field: Field) -> bool {
    Scenario::new(input).is_err_and(|errors| {
        errors
            .iter()
            .any(|e| e.field() == Some(field) && matches!(e, InputError::Contradiction { .. }))
    })
}

/// Whether anything is known of what is chosen: plates and what stands between the walls lean on the wall
/// of a round tube, for which there is no formula. It is taken from a link, and not checked.
fn is_known(field: Field, input: &Input) -> bool {
    let s = Situation::of(input);
    field != Field::Support || !s.is_round() || s.support.is_known_in_round()
}
