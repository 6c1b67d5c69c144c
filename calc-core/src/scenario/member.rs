//! What the bolts go through: the way in for members other than the rectangular tube.

use super::check::Reader;
use super::checked::{Bolting, Member, Scenario, Tube};
use super::choices::{MemberKind, Mount, SupportKind};
use super::fields::Field;
use crate::quantity::{InUnits, Length, mm};

/// Slope of the inside of a rolled channel's flange, 2 in 12; taken where nobody gives one.
///
/// # Sources
/// American standard channels, second-hand; parallel flanges are common too, but a slope that is there
/// and not counted bends the bolt.
const CHANNEL_SLOPE: f64 = 2.0 / 12.0;

/// Bolt line of a flange or a leg from the back of the upright part, as a share of its width.
///
/// # Sources
/// Usual gauges of angles are 0.55 to 0.63 of the leg; from memory.
const USUAL_GAUGE: f64 = 0.6;

/// What the clamp stands on; refuses what a member has no room for. A bar is solid whatever is chosen.
pub(super) fn support(r: &mut Reader<'_>, kind: MemberKind) -> Option<SupportKind> {
    let chosen = r.row(Field::Support, SupportKind::by_name)?;
    match kind {
        MemberKind::SolidBar => Some(SupportKind::Solid),
        MemberKind::Channel | MemberKind::Angle => {
            r.refuse_if(
                !chosen.fits_in(kind),
                Field::Support,
                "a channel or an angle has no hollow for that: choose nothing, or a plate",
            );
            Some(chosen)
        }
        MemberKind::RectangularTube | MemberKind::RoundTube => Some(chosen),
    }
}

/// Whether a wall leaves a member of this kind.
pub(super) fn check_walls(
    r: &mut Reader<'_>,
    kind: MemberKind,
    hollow: bool,
    (width, depth, wall): (Length, Length, Length),
) {
    r.refuse_if(
        kind != MemberKind::SolidBar && hollow && depth < mm(15.0),
        Field::TubeDepth,
        "less than 0.6 in (15 mm) is no tube or shape that was checked: give its depth, or choose a solid bar",
    );
    match kind {
        MemberKind::Channel | MemberKind::Angle => r.refuse_if(
            wall * 2.0 > width || wall * 2.0 > depth,
            Field::TubeWall,
            "this thick, the section is a solid bar: give a thinner wall, or choose a solid bar",
        ),
        _ => r.refuse_if(
            hollow && (wall * 2.5 > width || wall * 2.5 > depth),
            Field::TubeWall,
            "the two walls leave no hollow: give a thinner wall, or choose a solid bar",
        ),
    }
}

/// From the first row to the last.
fn rows_span(bolting: &Bolting) -> Length {
    bolting.spacing_across * (bolting.rows as f64 - 1.0)
}

/// Refuses holes that run out of the sides of a tube or a bar, and sleeves that the side walls have no room for.
pub(super) fn check_rows(
    r: &mut Reader<'_>,
    tube: &Tube,
    bolting: &Bolting,
    sleeve: Option<Length>,
) {
    let span = rows_span(bolting);
    let several = bolting.rows > 1;
    r.refuse_if(
        span + bolting.hole >= tube.width,
        if several {
            Field::SpacingAcross
        } else {
            Field::Hole
        },
        if several {
            "the outer rows lie outside the member: give the distance between rows, the rows and the width of the face"
        } else {
            "the hole is as wide as the member: give the hole's diameter and the width of the face"
        },
    );
    r.refuse_if(
        several && sleeve.is_some_and(|outer| span + outer > tube.width - tube.wall * 2.0),
        Field::SpacingAcross,
        "the sleeves do not fit side by side between the walls of the tube: take smaller ones, fewer rows, or bring the rows closer",
    );
}

/// Reads what a member has besides its measures.
pub(super) fn member(
    r: &mut Reader<'_>,
    kind: MemberKind,
    tube: &Tube,
    bolting: &Bolting,
) -> Option<Member> {
    let shaped_washer = r.yes(Field::ShapedWasher)?;
    let mut member = Member {
        kind,
        outstanding: tube.wall,
        gauge: None,
        slope: 0.0,
        shaped_washer,
    };
    r.refuse_if(
        member.is_round() && bolting.rows > 1,
        Field::BoltRows,
        "bolts through the middle of a round tube stand in one row: give 1",
    );
    if !member.is_open() {
        // Given or not they are read, so that a number out of range is told of.
        for field in [Field::BoltGauge, Field::OutstandingWall, Field::FlangeSlope] {
            r.given(field);
        }
        return Some(member);
    }
    let flange = bolting.mount == Mount::FromTop;
    member.outstanding = Length::of_si(r.or_derived(Field::OutstandingWall, tube.wall.si()));
    r.refuse_if(
        member.outstanding * 2.0 > tube.width,
        Field::OutstandingWall,
        "thicker than half of the width beside it: give the thickness of the part that the bolts do not go through",
    );
    if kind == MemberKind::Channel {
        member.slope = r.or_derived(Field::FlangeSlope, CHANNEL_SLOPE);
    } else {
        r.given(Field::FlangeSlope);
    }
    let rows = rows_span(bolting).si();
    if kind == MemberKind::Channel && !flange {
        r.given(Field::BoltGauge);
        let beside = 0.5 * ((tube.width - member.outstanding * 2.0).si() - rows);
        r.refuse_if(
            beside < 0.5 * bolting.hole.si(),
            if bolting.rows > 1 {
                Field::SpacingAcross
            } else {
                Field::TubeWidth
            },
            "the holes cut into the flanges at the edges of the web: give the width of the web and the distance between rows",
        );
        return Some(member);
    }
    let usual = USUAL_GAUGE * tube.width.si() - 0.5 * rows;
    let gauge = r.or_derived(Field::BoltGauge, usual);
    let (near, far) = (gauge - member.outstanding.si(), gauge + rows);
    r.refuse_if(
        near < 0.5 * bolting.hole.si(),
        Field::BoltGauge,
        "the hole cuts into the upright part: give the distance from its back to the middle of the nearest bolt",
    );
    r.refuse_if(
        tube.width.si() - far < 0.5 * bolting.hole.si(),
        Field::BoltGauge,
        "the hole runs out of the free edge: give the distance from the back of the upright part to the middle of the nearest bolt",
    );
    member.gauge = Some(Length::of_si(gauge));
    Some(member)
}

/// Thickness of a saddle over the crown of a round tube, m (1/4 in). An assumption.
const SADDLE: f64 = 6.35e-3;

/// Thickness of a tapered washer at the bolt, m (5/16 in). ASTM F436, square beveled washers for bolts from 1/2 to 1 in,
/// from memory.
const TAPERED: f64 = 7.94e-3;

impl Scenario {
    /// Washers made to fit that one bolt has, and their thickness at the bolt: two saddles on the wall of a round tube, one
    /// tapered washer on a flange that slopes.
    #[must_use]
    pub fn shaped_washers(&self) -> (f64, Length) {
        let round = self.member.is_round() && !self.support.passes_walls();
        let flange = self.member.kind == MemberKind::Channel
            && self.bolting.mount == Mount::FromTop
            && self.member.slope > 0.0;
        match self.member.shaped_washer {
            true if round => (2.0, Length::of_si(SADDLE)),
            true if flange => (1.0, Length::of_si(TAPERED)),
            _ => (0.0, Length::default()),
        }
    }
}
