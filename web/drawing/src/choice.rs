//! Small drawings of what can be chosen first: what is bolted on, to what, and which way the bolts run.

use crate::scene::{CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use calc_core::scenario::{Field, MemberKind};

const WIDTH: f64 = 150.0;
const HEIGHT: f64 = 74.0;

/// Lines of a drawing: the class of each and its path.
type Lines = &'static [(&'static str, &'static str)];

const COUPLER: Lines = &[
    ("edge part", "M6 26H78V52H6Z"),
    ("edge", "M36 22H92Q128 20 130 40V50H98L82 56H36Z"),
    ("thin", "M126 50a12 12 0 1 1-24 0"),
];
const HANGER: Lines = &[
    ("edge part", "M12 4H138V26H12Z"),
    ("edge", "M54 26V58H96V26"),
    ("edge", "M75 46a6 6 0 1 0 .1 0"),
    ("thin", "M12 60Q46 70 75 52M75 52Q104 70 138 60"),
];
const CHAIN: Lines = &[
    ("edge part", "M8 20H92V48H8Z"),
    ("edge", "M56 24H112Q126 34 112 44H56Z"),
    ("edge", "M108 29a5 5 0 1 0 .1 0"),
    ("thin", "M112 34q8-9 14 0t12 0M119 38q8 9 14 0"),
];
const FREE: Lines = &[
    ("edge part", "M20 30H130V54H20Z"),
    ("edge", "M56 14H94V30H56Z"),
    ("thin", "M75 2V14M100 22H118M112 17l6 5-6 5"),
];

/// The drawing of a name that a field can take. `upright` is the way that the bolts run.
#[must_use]
pub fn choice_scene(
    field: Field,
    name: &str,
    member: Option<MemberKind>,
    upright: bool,
    id: &str,
) -> Scene {
    let mut marks: Vec<Mark> = Vec::new();
    match field {
        Field::Joint => {
            let (lines, bolts): (Lines, [f64; 2]) = match name {
                "coupler" => (COUPLER, [48.0, 70.0]),
                "spring-hanger" => (HANGER, [63.0, 87.0]),
                "chain-bracket" => (CHAIN, [66.0, 84.0]),
                _ => (FREE, [65.0, 85.0]),
            };
            for (class, d) in lines {
                marks.path((*d).into(), class);
            }
            // From the side: level bolts are seen on their heads, upright ones along.
            let (top, foot) = match name {
                "spring-hanger" => (4.0, 26.0),
                "chain-bracket" => (20.0, 48.0),
                "free" => (30.0, 54.0),
                _ => (26.0, 52.0),
            };
            for x in bolts {
                let y = f64::midpoint(top, foot);
                if upright {
                    marks.line((x, top - 4.0), (x, foot + 4.0), "edge");
                    marks.line((x - 4.0, top - 4.0), (x + 4.0, top - 4.0), "edge");
                    marks.line((x - 4.0, foot + 4.0), (x + 4.0, foot + 4.0), "edge");
                } else {
                    marks.circle((x, y), 4.0, "edge");
                }
            }
        }
        Field::Member => section(&mut marks, MemberKind::by_name(name)),
        _ => {
            section(&mut marks, member);
            bolt(&mut marks, name == "from-top");
        }
    }
    Scene {
        id: id.into(),
        width: WIDTH,
        height: HEIGHT,
        title: String::new(),
        description: String::new(),
        marks,
    }
}

/// A member from its end.
fn section(marks: &mut Vec<Mark>, member: Option<MemberKind>) {
    let d = match member {
        Some(MemberKind::Channel) => "M54 12H98V20H63V54H98V62H54Z",
        Some(MemberKind::Angle) => "M54 12H63V53H98V62H54Z",
        Some(MemberKind::RoundTube) => "M75 11a26 26 0 1 0 .1 0ZM75 18a19 19 0 1 1-.1 0Z",
        Some(MemberKind::SolidBar) => "M56 18H94V56H56Z",
        _ => {
            "M57 11H93Q101 11 101 19V55Q101 63 93 63H57Q49 63 49 55V19Q49 11 57 11ZM59 18Q56 18 56 21V53Q56 56 59 56H91Q94 56 94 53V21Q94 18 91 18Z"
        }
    };
    marks.push(Mark::Path {
        d: d.into(),
        class: "edge evenodd",
        hatch: Some(Hatch::new(CutMetal::Aluminium, Lean::Right)),
    });
}

/// A bolt through the middle of it.
fn bolt(marks: &mut Vec<Mark>, upright: bool) {
    let mut along = Vec::new();
    along.line((-48.0, 0.0), (48.0, 0.0), "centre");
    along.rect((-40.0, -4.0), (40.0, 4.0), "edge part", None);
    along.rect((-42.0, -9.0), (-35.0, 9.0), "edge part", None);
    along.rect((33.0, -9.0), (40.0, 9.0), "edge part", None);
    marks.group(
        Placed {
            x: 75.0,
            y: 37.0,
            degrees: if upright { 90.0 } else { 0.0 },
        },
        "",
        along,
    );
}
