//! A joint in section, as the wrench leaves it.

use super::words::message;
use calc_core::evaluate::deciding;
use calc_core::quantity::UnitSystem;
use calc_core::scenario::Scenario;
use drawing::Scene;
use drawing::member::{MemberState, member_section};
use drawing::section::{Layout, SectionState, section};
use drawing::words::key;

/// The drawing; of all that the joint may be, the one that decides.
pub(crate) fn picture(
    id: &str,
    scenario: &Scenario,
    units: UnitSystem,
    example: bool,
) -> Option<Scene> {
    let scenario = &*deciding(scenario);
    if let Some(state) = MemberState::from_core(id, scenario, units) {
        return Some(member_section(&MemberState { example, ..state }));
    }
    let curve = calc_core::torque_turn(scenario);
    let at = curve.at_wanted.or(curve.points.last().copied())?;
    let state = SectionState::from_core(id, scenario, &curve, at.turn_deg, units, Layout::Narrow);
    Some(section(&SectionState {
        name: String::from(message(key::PAGE_SECTION_THROUGH_THE_BOLT)),
        example,
        ..state
    }))
}
