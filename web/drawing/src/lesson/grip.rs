//! Friction carries the load: two plates, a bolt that squeezes them, a load that wants to part them.

use super::DRAWING_WIDTH;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint};
use super::control::{Choice, Control, ControlKind, State};
use super::model::{Handle, Look, Model, Outcome, Picture, value};
use crate::parts::{
    ForceScale, Strip, StripField, bolt_head, force_arrow, nut, threaded_shank, washer_cut,
};
use crate::scene::{Anchor, Hatch, Lean, Mark, Material, Placed, Scene};
use crate::units::Lettering;
use calc_core::Input;
use calc_core::catalog::{slip_surface, thread};
use calc_core::mechanics::slip::resistance;
use calc_core::quantity::{Dimension, InUnits, Unit, newton};

/// The lesson.
pub(super) struct Grip;

const CLAMP: usize = 0;
const LOAD: usize = 1;
const SURFACE: usize = 2;

const SURFACES: &[Choice] = &[
    Choice {
        key: "bare-clean",
        name: "bare, clean steel",
    },
    Choice {
        key: "painted",
        name: "painted",
    },
];

const CONTROLS: &[Control] = &[
    Control {
        key: "clamp",
        label: "clamp of the bolt",
        kind: ControlKind::Number {
            dimension: Dimension::Force,
            unit: Unit::Kilonewton,
            min: 0.0,
            max: 40.0,
            step: 0.5,
            start: 30.0,
        },
    },
    Control {
        key: "load",
        label: "load along the plates",
        kind: ControlKind::Number {
            dimension: Dimension::Force,
            unit: Unit::Kilonewton,
            min: 0.0,
            max: 12.0,
            step: 0.1,
            start: 0.0,
        },
    },
    Control {
        key: "surface",
        label: "What lies between the plates?",
        kind: ControlKind::Choices {
            of: SURFACES,
            start: 0,
        },
    },
];

/// Largest load that the figure goes to, N: the end of the plot's axis.
const MOST_LOAD: f64 = 12e3;
/// Bolt and hole of the figure: M12 in its normal clearance hole, mm.
const BOLT: &str = "m12";
const HOLE_MM: f64 = 13.5;

struct Numbers {
    clamp: f64,
    load: f64,
    mu: f64,
    grips: f64,
    friction: f64,
    on_bolt: f64,
    play: f64,
    slides: bool,
}

/// What friction holds of a clamp, N.
fn held(mu: f64, clamp: f64) -> f64 {
    resistance(1.0, mu, newton(clamp), newton(0.0), 0.0).si()
}

/// The clamp whose friction just holds a load, N: what is held grows in proportion to the clamp.
fn needed(load: f64, mu: f64) -> f64 {
    load / held(mu, 1.0)
}

fn numbers(state: &State) -> Option<Numbers> {
    let surface = slip_surface(SURFACES.get(state.choice(SURFACE))?.key)?;
    let (clamp, load) = (state.number(CLAMP) * 1e3, state.number(LOAD) * 1e3);
    let mu = surface.mu();
    let grips = held(mu, clamp);
    let slides = load > grips;
    Some(Numbers {
        clamp,
        load,
        mu,
        grips,
        // Once it slides friction still pulls back with what it has; the bolt takes the rest.
        friction: load.min(grips),
        on_bolt: (load - grips).max(0.0),
        play: HOLE_MM * 1e-3 - thread(BOLT)?.major().si(),
        slides,
    })
}

impl Model for Grip {
    fn id(&self) -> &'static str {
        "grip"
    }

    fn words(&self) -> &'static str {
        include_str!("../../../../content/30-grip.toml")
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        let n = numbers(state)?;
        let said = if n.load == 0.0 {
            "start"
        } else if n.clamp == 0.0 {
            "loose"
        } else if n.slides {
            "slides"
        } else if n.load > 0.8 * n.grips {
            "nearly"
        } else {
            "grips"
        };
        let force = Dimension::Force;
        let bare = slip_surface(SURFACES.first()?.key)?.mu();
        Some(Outcome {
            said,
            values: vec![
                value("mu", n.mu, Dimension::Ratio),
                value("grips", n.grips, force),
                value("friction", n.friction, force),
                value("bolt-load", n.on_bolt, force),
                value("play", n.play, Dimension::Length),
                // The wrong ideas that an answer may come from.
                value("all-of-it", n.clamp, force),
                value("needed-clamp", needed(n.load, n.mu), force),
                value("needed-bare", needed(n.load, bare), force),
                value("times-mu", held(n.mu, n.load), force),
            ],
            joint: Input {
                faying_surface: String::from(SURFACES.get(state.choice(SURFACE))?.key),
                ..Input::default()
            },
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        Some(Picture {
            drawing: drawing(&n, look),
            plot: Some(plot(&n, look)),
            handles: vec![Handle {
                control: LOAD,
                at: (TIP_FROM + scale(look).length(n.load), UPPER),
                along: (scale(look).length(1e3), 0.0),
            }],
        })
    }
}

/// Middle of the bolt, the plane between the plates, half the thickness of a plate as drawn, units.
const BOLT_X: f64 = 150.0;
const PLANE: f64 = 150.0;
const PLATE: f64 = 34.0;
const UPPER: f64 = PLANE - PLATE / 2.0;
const LOWER: f64 = PLANE + PLATE / 2.0;
/// Where the load's arrow begins.
const TIP_FROM: f64 = 232.0;
/// Drawing units in a millimetre: the bolt and its hole are in true proportion.
const PER_MM: f64 = 3.4;
const HEIGHT: f64 = 320.0;

fn scale(look: &Look<'_>) -> ForceScale {
    ForceScale::fitting(40e3, 86.0, look.units)
}

/// Largest arrow of the clamp scale would make the side loads dots: they have a scale of their own.
fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let scale = scale(look);
    let (d, hole) = (12.0 * PER_MM, HOLE_MM * PER_MM);
    let slid = if n.slides { (hole - d) / 2.0 } else { 0.0 };
    let mut marks = Vec::new();
    // The upper plate goes right by the play once it slides; the bolt leans on both edges.
    marks.extend(plate(
        40.0 + slid,
        246.0 + slid,
        PLANE - PLATE,
        BOLT_X + slid,
        hole,
        Lean::Right,
    ));
    marks.extend(plate(
        40.0 - slid,
        232.0,
        PLANE,
        BOLT_X - slid,
        hole,
        Lean::Left,
    ));
    marks.push(Mark::group(Placed::default(), "p-bolt", bolt(d)));
    marks.push(Mark::line((24.0, PLANE), (262.0, PLANE), "cutting"));
    // The clamp presses the plates together.
    let clamp = scale.length(n.clamp);
    let mut squeeze = force_arrow(
        (96.0, PLANE - PLATE - clamp),
        (96.0, PLANE - PLATE),
        "clamp",
    );
    squeeze.extend(force_arrow(
        (96.0, PLANE + PLATE + clamp),
        (96.0, PLANE + PLATE),
        "clamp",
    ));
    marks.push(Mark::group(Placed::default(), "p-clamp", squeeze));
    marks.push(Mark::text(
        (14.0, 34.0),
        format!("clamp {}", look.units.force(n.clamp)),
        "t clamp halo",
        Anchor::Start,
    ));
    // The load and what holds it.
    let load = scale.length(n.load);
    let mut pulls = force_arrow((TIP_FROM, UPPER), (TIP_FROM + load, UPPER), "load");
    pulls.extend(force_arrow(
        (40.0, LOWER),
        (40.0 - load.min(34.0), LOWER),
        "load",
    ));
    pulls.push(Mark::circle((TIP_FROM + load, UPPER), 13.0, "grip"));
    marks.push(Mark::group(Placed::default(), "p-load", pulls));
    marks.push(Mark::text(
        (326.0, UPPER - 26.0),
        format!("load {}", look.units.force(n.load)),
        "t load halo",
        Anchor::End,
    ));
    let words = if n.slides {
        format!("slides: {} on the bolt", look.units.force(n.on_bolt))
    } else {
        format!("friction holds up to {}", look.units.force(n.grips))
    };
    marks.push(Mark::text(
        (326.0, PLANE + PLATE + 26.0),
        words.clone(),
        "t halo",
        Anchor::End,
    ));
    let strip = Strip {
        fields: vec![
            StripField::new("drawing", "two plates and an M12 bolt, cut"),
            StripField::scale(scale.text()),
        ],
    };
    let top = HEIGHT - strip.height(DRAWING_WIDTH);
    marks.extend(strip.marks(DRAWING_WIDTH, top));
    Scene {
        id: look.id.into(),
        width: DRAWING_WIDTH,
        height: HEIGHT,
        title: String::from("Two plates held by a bolt"),
        description: format!(
            "Clamp {}, load {}: {words}.",
            look.units.force(n.clamp),
            look.units.force(n.load)
        ),
        marks,
    }
}

fn plate(left: f64, right: f64, top: f64, hole_at: f64, hole: f64, lean: Lean) -> Vec<Mark> {
    let hatch = Some(Hatch::new(Material::Steel, lean));
    let bottom = top + PLATE;
    vec![
        Mark::rect((left, top), (hole_at - hole / 2.0, bottom), "edge", hatch),
        Mark::rect((hole_at + hole / 2.0, top), (right, bottom), "edge", hatch),
    ]
}

fn bolt(d: f64) -> Vec<Mark> {
    let (top, foot) = (PLANE - PLATE - 8.0, PLANE + PLATE + 8.0);
    let mut marks = threaded_shank(BOLT_X, d, foot, top - 46.0, 60.0);
    marks.extend(washer_cut(
        BOLT_X,
        24.0 * PER_MM,
        d,
        top,
        PLANE - PLATE,
        Lean::Left,
    ));
    marks.extend(washer_cut(
        BOLT_X,
        24.0 * PER_MM,
        d,
        PLANE + PLATE,
        foot,
        Lean::Right,
    ));
    marks.extend(nut(BOLT_X, top, 18.0 * PER_MM, 10.8 * PER_MM, true));
    marks.extend(bolt_head(BOLT_X, foot, 18.0 * PER_MM, 7.5 * PER_MM, false));
    marks
}

/// What friction can hold against the clamp, and the load that is there.
fn plot(n: &Numbers, look: &Look<'_>) -> Chart {
    let most = 40e3;
    let line = |mu: f64| vec![(0.0, 0.0), (most, mu * most)];
    let other = SURFACES
        .iter()
        .filter_map(|c| Some((c.name, slip_surface(c.key)?.mu())))
        .filter(|(_, mu)| (mu - n.mu).abs() > 1e-9);
    let mut curves: Vec<Curve> = other
        .map(|(name, mu)| Curve {
            points: line(mu),
            kind: CurveKind::Beside,
            name: name.into(),
            part: "",
        })
        .collect();
    curves.push(Curve {
        points: line(n.mu),
        kind: CurveKind::This,
        name: String::from("friction holds"),
        part: "p-clamp",
    });
    Chart {
        title: String::from("What friction holds against the clamp"),
        x: Axis {
            name: "clamp",
            dimension: Dimension::Force,
            from: 0.0,
            to: most,
        },
        y: Axis {
            name: "load along the plates",
            dimension: Dimension::Force,
            from: 0.0,
            to: MOST_LOAD,
        },
        band: None,
        curves,
        levels: Vec::new(),
        points: vec![
            KeyPoint {
                name: String::from("where it slides"),
                x: n.clamp,
                y: n.grips,
                here: false,
            },
            KeyPoint {
                name: String::from("now"),
                x: n.clamp,
                y: n.load,
                here: true,
            },
        ],
        units: look.units,
    }
}
