//! The member behind its last bolt as a section, with and without the holes of one line of bolts.

use crate::mechanics::member_shear::{
    FREE_EDGE, HELD_AT_BOTH_EDGES, ShearAreas, flat, part, round_share, wall_share,
};
use crate::mechanics::net_section::TubeSection;
use crate::mechanics::open_section::{OpenSection, Rectangle, shear_lag};
use crate::mechanics::twist::{TwistedSection, channel_shear_center};
use crate::quantity::{InUnits, Length, Stress, mm, newton};
use crate::scenario::{MemberKind, Mount, Scenario};
use crate::support;

/// A section that takes a pull and bending both ways.
pub(crate) enum MemberSection {
    Tube(TubeSection),
    /// With the share of it that a pull can use.
    Open(OpenSection, f64),
}

impl MemberSection {
    /// Largest stress; `None` where the holes have used the section up.
    pub(crate) fn stress(&self, pull: f64, up: f64, side: f64) -> Option<Stress> {
        match self {
            Self::Tube(section) => section.stress(newton(pull), up, side),
            Self::Open(section, used) => section.stress(newton(pull / used), up, side),
        }
    }
}

/// Gross and net section with holes of a size.
pub(crate) fn member_section(s: &Scenario, hole: Length) -> (MemberSection, MemberSection) {
    if s.member.is_open() {
        open(s, hole)
    } else {
        let (gross, net) = tube(s, hole);
        (MemberSection::Tube(gross), MemberSection::Tube(net))
    }
}

/// The whole section as it takes a twist.
pub(crate) fn twisted_section(s: &Scenario) -> TwistedSection {
    let t = &s.tube;
    if s.member.is_open() {
        let parts = match s.member.kind {
            // Web and two flanges, or two legs.
            MemberKind::Channel if s.bolting.mount == Mount::FromTop => [
                (t.depth, s.member.outstanding),
                (2.0 * (t.width - s.member.outstanding), t.design_wall),
            ],
            MemberKind::Channel => [
                (t.width, t.design_wall),
                (2.0 * (t.depth - t.design_wall), s.member.outstanding),
            ],
            _ => [
                (t.width, t.design_wall),
                (t.depth - t.design_wall, s.member.outstanding),
            ],
        };
        let constant = |(long, thick): (Length, Length)| long.si() * thick.si().powi(3) / 3.0;
        return TwistedSection::Open {
            constant_m4: parts.into_iter().map(constant).sum(),
            thickest: t.design_wall.max(s.member.outstanding),
        };
    }
    let solid = !support::of(s).is_hollow();
    match (s.member.is_round(), solid) {
        (true, _) => TwistedSection::Round {
            diameter: t.width,
            wall: if solid { t.width * 0.5 } else { t.design_wall },
        },
        (false, true) => TwistedSection::Bar {
            height: t.depth,
            width: t.width,
        },
        (false, false) => TwistedSection::Closed {
            height: t.depth,
            width: t.width,
            wall: t.design_wall,
        },
    }
}

/// Upright and sideways, from along the faces that the bolts clamp and the other way.
fn turn<T>(from_top: bool, along: T, beside: T) -> (T, T) {
    if from_top {
        (beside, along)
    } else {
        (along, beside)
    }
}

/// What takes shear across the member, of the whole section and of what the holes leave.
///
/// The holes weaken the walls that they go through: through the sides the upright ones, from the top the level ones. A hole
/// through a bar takes as much both ways.
pub(crate) fn sheared_section(s: &Scenario, hole: Length) -> [ShearAreas; 2] {
    let t = &s.tube;
    let metal = (t.modulus, t.yield_least);
    let from_top = s.bolting.mount == Mount::FromTop;
    let rows = s.bolting.rows as f64;
    let none = part(mm(0.0), t.wall);
    let (whole, (up, side), out) = if s.member.is_open() {
        let (pierced, upright) = (t.design_wall, s.member.outstanding);
        let channel = s.member.kind == MemberKind::Channel;
        // Of a channel two parts run one way, the flanges, and one the other, the web.
        let (count, beside_count) = match (channel, from_top) {
            (true, true) => (2.0, 1.0),
            (true, false) => (1.0, 2.0),
            _ => (1.0, 1.0),
        };
        let held = |count: f64| {
            if channel && count < 2.0 {
                HELD_AT_BOTH_EDGES
            } else {
                FREE_EDGE
            }
        };
        let (up, side) = turn(
            from_top,
            part(t.width, pierced) * count,
            part(t.depth, upright) * beside_count,
        );
        let share = turn(
            from_top,
            wall_share(t.width, pierced, held(count), metal),
            wall_share(t.depth, upright, held(beside_count), metal),
        );
        (
            ShearAreas::apart(up, side),
            share,
            turn(from_top, part(hole, pierced) * rows, none),
        )
    } else if !support::of(s).is_hollow() {
        let out = part(hole, t.depth) * rows;
        let whole = ShearAreas::solid(t.depth, t.width, s.member.is_round());
        (whole, (1.0, 1.0), (out, out))
    } else if s.member.is_round() {
        // Half of the area counts, and so half of what two holes take of it, for each row.
        let out = part(hole, t.design_wall) * rows;
        let share = round_share(t.width, t.design_wall, metal);
        let whole = ShearAreas::round(t.width, t.design_wall);
        (whole, (share, share), (out, out))
    } else {
        let (height, width) = turn(from_top, t.width, t.depth);
        let wall = t.design_wall;
        let share = |along| {
            let flat = flat(along, wall, t.corner_radius);
            wall_share(flat, wall, HELD_AT_BOTH_EDGES, metal)
        };
        let [up, side] = turn(from_top, part(hole, wall) * 2.0 * rows, none).into();
        let whole = ShearAreas::rectangular([height, width], wall, t.corner_radius);
        return [
            whole.times(share(height), share(width)),
            ShearAreas::torn([height, width], wall).without(up, side),
        ];
    };
    [whole.times(up, side), whole.without(out.0, out.1)]
}

/// From the line of a load at the bolts to the shear center of an open section: at the heel of an angle, behind the web of
/// a channel.
pub(crate) fn shear_center_aside(s: &Scenario) -> Length {
    let (t, upright) = (&s.tube, s.member.outstanding);
    let from_top = s.bolting.mount == Mount::FromTop;
    let out = s.farthest_gauge().unwrap_or(t.width * 0.5) - upright * 0.5;
    match (s.member.kind, from_top) {
        (MemberKind::Channel, true) => {
            let flange = [t.width - upright * 0.5, t.design_wall];
            out + channel_shear_center(flange, [t.depth - t.design_wall, upright])
        }
        (MemberKind::Channel, false) => {
            let flange = [t.depth - t.design_wall * 0.5, upright];
            let web = [t.width - upright, t.design_wall];
            t.design_wall * 0.5 + channel_shear_center(flange, web)
        }
        (_, true) => out,
        (_, false) => t.design_wall * 0.5,
    }
}

/// How far the line of a load that acts `below` the bolts passes the shear center of the member, upright, m; never less
/// than it passes the bolts.
///
/// From the top the center lies below the face that the bolts clamp, or above it where the fitting hangs from it: at half
/// the depth, of an angle in its level leg. Through the sides it is level with the bolts where these are at the middle;
/// nobody says which way the heel of an angle points, so its gauge counts the worse way.
pub(crate) fn upright_lever(s: &Scenario, below: f64, on_top: bool) -> f64 {
    let t = &s.tube;
    if s.bolting.mount == Mount::FromTop {
        let down = match s.member.kind {
            MemberKind::Angle => t.design_wall.si() * 0.5,
            _ => t.depth.si() * 0.5,
        };
        let down = if on_top { down } else { -down };
        return below.abs().max((below - down).abs());
    }
    let centre = middle_of_rows(s).si();
    let off = match s.member.kind {
        MemberKind::Angle => centre - s.member.outstanding.si() * 0.5,
        MemberKind::Channel => centre - t.width.si() * 0.5,
        _ => 0.0,
    };
    below.abs() + off.abs()
}

/// The middle of the rows of bolts from the back of the upright part, or across the face.
fn middle_of_rows(s: &Scenario) -> Length {
    match (s.member.gauge, s.farthest_gauge()) {
        (Some(near), Some(far)) => (near + far) * 0.5,
        _ => s.tube.width * 0.5,
    }
}

/// Places of the rows from the middle of the group, across.
fn rows(s: &Scenario) -> impl Iterator<Item = Length> {
    let (count, apart) = (s.bolting.rows, s.bolting.spacing_across);
    (0..count).map(move |row| (row as f64 - (count as f64 - 1.0) / 2.0) * apart)
}

fn tube(s: &Scenario, hole: Length) -> (TubeSection, TubeSection) {
    let t = &s.tube;
    let solid = !support::of(s).is_hollow();
    let through_sides = s.bolting.mount == Mount::ThroughSides;
    let (height, width) = if through_sides {
        (t.width, t.depth)
    } else {
        (t.depth, t.width)
    };
    let wall = if solid {
        0.5 * height.max(width)
    } else {
        t.design_wall
    };
    let gross = if s.member.is_round() {
        TubeSection::round(t.width, wall)
    } else {
        TubeSection::gross(height, width, wall).rounded(wall, t.corner_radius)
    };
    let mut net = gross;
    for place in rows(s) {
        // Through a solid the hole is one, as deep as the bar; through a tube one in each wall.
        let through = if solid { t.depth } else { wall };
        let off = 0.5 * (t.depth - through);
        let ways: &[f64] = if solid { &[0.0] } else { &[1.0, -1.0] };
        for &way in ways {
            net = if through_sides {
                net.without([hole, through], [place, off * way])
            } else {
                net.without([through, hole], [off * way, place])
            };
        }
    }
    (gross, net)
}

/// Strips that a flange of uneven thickness is cut into.
const STRIPS: usize = 8;

/// A flange between two edges, thicker towards the first one by a slope; `at` is its thickness and where
/// that was measured. One strip where both faces are parallel.
fn strips(
    [from, to]: [Length; 2],
    (thick, at): (Length, Length),
    slope: f64,
) -> impl Iterator<Item = ([Length; 2], Length)> {
    let count = if slope > 0.0 { STRIPS } else { 1 };
    let step = (to - from) / count as f64;
    (0..count).map(move |i| {
        let edges = [from + step * i as f64, from + step * (i + 1) as f64];
        let middle = (edges[0] + edges[1]) * 0.5;
        let here = thick - slope * (middle - at);
        (edges, here.max(thick * 0.3))
    })
}

/// Channel or angle. The pierced part lies level at the top where the bolts stand upright, and upright at
/// the side where they lie level.
fn open(s: &Scenario, hole: Length) -> (MemberSection, MemberSection) {
    let t = &s.tube;
    let (pierced, outstanding) = (t.design_wall, s.member.outstanding);
    let from_top = s.bolting.mount == Mount::FromTop;
    // In a frame of its own: the pierced part runs along `u` from the back of the upright part, `v` is
    // the depth behind its outer face.
    let part = |u: [Length; 2], v: [Length; 2]| {
        let middle = |[from, to]: [Length; 2]| (from + to) * 0.5;
        let size = |[from, to]: [Length; 2]| to - from;
        if from_top {
            Rectangle {
                up: middle(v),
                across: middle(u),
                high: size(v),
                wide: size(u),
            }
        } else {
            Rectangle {
                up: middle(u),
                across: middle(v),
                high: size(u),
                wide: size(v),
            }
        }
    };
    let nought = mm(0.0);
    let mut parts = Vec::with_capacity(2 * STRIPS + 1);
    match (s.member.kind, from_top) {
        (MemberKind::Channel, true) => {
            parts.push(part([nought, outstanding], [nought, t.depth]));
            let bolt = s.member.gauge.unwrap_or(t.width * 0.5);
            for (u, thick) in strips([outstanding, t.width], (pierced, bolt), s.member.slope) {
                parts.push(part(u, [nought, thick]));
                parts.push(part(u, [t.depth - thick, t.depth]));
            }
        }
        (MemberKind::Channel, false) => {
            parts.push(part([nought, t.width], [nought, pierced]));
            let middle = (pierced + t.depth) * 0.5;
            for (v, thick) in strips([pierced, t.depth], (outstanding, middle), s.member.slope) {
                parts.push(part([nought, thick], v));
                parts.push(part([t.width - thick, t.width], v));
            }
        }
        _ => {
            parts.push(part([nought, t.width], [nought, pierced]));
            parts.push(part([nought, outstanding], [pierced, t.depth]));
        }
    }
    let centre = middle_of_rows(s);
    let holes: Vec<Rectangle> = rows(s)
        .map(|place| {
            let at = centre + place;
            part([at - hole * 0.5, at + hole * 0.5], [nought, pierced])
        })
        .collect();
    let gross = OpenSection::new(&parts, &[]);
    let net = OpenSection::new(&parts, &holes);
    let [up, across] = gross.middle();
    let off = if from_top { up } else { across };
    let length = (s.bolting.along as f64 - 1.0) * s.bolting.spacing_along;
    let connected = t.width.si() * pierced.si() / gross.area().si().max(1e-12);
    let used = shear_lag(off, length, connected);
    (
        MemberSection::Open(gross, 1.0),
        MemberSection::Open(net, used),
    )
}
