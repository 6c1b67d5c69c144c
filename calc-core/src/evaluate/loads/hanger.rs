//! Spring hanger: wheel load, braking and side force at the ground.

use super::case::LoadCase;
use crate::catalog::{CaseName, LoadKind};
use crate::quantity::{InUnits, STANDARD_GRAVITY};
use crate::scenario::{Mount, Scenario};

/// What hangs on a spring, axle, wheels and brakes, as a share of what the wheels carry. An assumption: of light
/// trailers it is about 0.10 to 0.15 (from memory), and more is the safe side.
const UNSPRUNG: f64 = 0.2;

/// The service cases of the road; rules for couplings say nothing about hangers.
///
/// - Wheel load: what the axles carry, equally on all wheels, times the bump factor and this hanger's
///   share of its spring.
/// - Braking: the whole trailer's, equally on all wheels, all of a wheel's on this hanger (a shackle or
///   slipper takes none). The spring passes on its moment, ground force times tyre radius, as a couple on
///   its two eyes: down in front, up behind; an eye turns freely and takes no moment itself.
/// - Braking while backing up: the same the other way round, too slow for the bump. Surge brakes cannot; electric ones
///   do it as well.
/// - Side force: by what the axles carry, this hanger's share, acting at the ground. Taking the whole
///   lever to the ground on the hanger is the safe side: part of it goes across the axle to the other
///   spring.
/// - Braking in a bend: both at once and in full, as for a coupler.
/// - Rebound: as the frame is thrown up, the axle hangs on its springs. No source was found; its weight times
///   the bump factor is taken. Through the sides up and down ask the same, and that is less than the bump.
pub(super) fn cases(s: &Scenario) -> Vec<LoadCase> {
    let (l, h) = (&s.loads, &s.loads.hanger);
    let wheels = 2.0 * h.axles as f64;
    let carried = l.mass.si() * (1.0 - l.tongue_share) / wheels;
    let rest = carried * STANDARD_GRAVITY * h.share;
    let bump = rest * l.vertical_factor;
    let brake = l.mass.si() * l.braking.si() / wheels;
    let couple = brake * h.tyre_radius.si() / h.spring_length.si();
    let side = carried * l.side.si() * h.share;
    let eye = (h.offset.si(), h.height.si());
    let ground = (h.offset.si(), (h.height + h.tyre_radius).si());
    let at = |case, point, (along, up, side)| LoadCase {
        along,
        up,
        side,
        on_top: false,
        ..LoadCase::at(case, LoadKind::Service, point)
    };
    let bent = |case, up| LoadCase {
        about: [side * l.hanger.tyre_radius.si(), 0.0, 0.0],
        ..at(case, eye, (-brake, up, side))
    };
    let mut cases = vec![
        at(CaseName::WheelOverABump, eye, (0.0, bump, 0.0)),
        at(CaseName::BrakingRearEye, eye, (-brake, bump + couple, 0.0)),
        at(CaseName::BrakingFrontEye, eye, (-brake, rest - couple, 0.0)),
        at(CaseName::BackingRearEye, eye, (brake, rest - couple, 0.0)),
        at(CaseName::BackingFrontEye, eye, (brake, rest + couple, 0.0)),
        at(CaseName::CorneringLeft, ground, (0.0, bump, side)),
        at(CaseName::CorneringRight, ground, (0.0, bump, -side)),
        at(CaseName::CorneringUnloaded, ground, (0.0, 0.0, side)),
        bent(CaseName::BendRearEye, bump + couple),
        bent(CaseName::BendFrontEye, rest - couple),
    ];
    if s.bolting.mount == Mount::FromTop {
        cases.push(at(CaseName::AxleHangs, eye, (0.0, -UNSPRUNG * bump, 0.0)));
    }
    cases
}
