//! Pressure under head and nut: how wide it is where it meets each ply, and what the plies take.

use super::build::{Builder, WASHER_YIELD_MPA, stack_pressed};
use super::model::Limit;
use super::{is_welded, of};
use crate::catalog::{Family, Material};
use crate::mechanics::solve::find_root;
use crate::mechanics::surface_pressure;
use crate::mechanics::washer::{dishing_load, spread};
use crate::quantity::{InUnits, Length, Stress, mpa};
use crate::scenario::SupportKind;
use std::f64::consts::FRAC_PI_4;

/// A ply under the washer, from outside in.
#[derive(Clone, Copy, Debug)]
struct Layer {
    thickness: Length,
    /// What its surface takes.
    pressure: Stress,
    family: Family,
    hole: Length,
    /// Widest circle about the bolt that lies on it.
    reach: Length,
}

/// Where the pressure is too much first, and what it may come to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pressed {
    /// Clamp force, N.
    pub(super) load: f64,
    /// Outside diameter of what is pressed.
    pub(super) diameter: Length,
    /// Hole in it.
    pub(super) hole: Length,
    pub(super) pressure: Stress,
    /// Of the metal that is pressed.
    pub(super) family: Family,
    /// Whether the washer gives way over a hole that is wider than the nut.
    pub(super) dishes: bool,
}

impl Builder<'_> {
    /// What the surface of a metal takes.
    pub(super) fn surface(&self, material: &Material, welded: bool) -> Stress {
        let row = self.row_of(material, welded);
        surface_pressure::limit(
            material.family(),
            row.compressive_yield_strength(),
            row.ultimate_strength(),
        )
    }

    /// What the surface of a block under the wall takes.
    pub(super) fn block_surface(&self) -> Stress {
        self.surface(self.s.insert_material, false) * self.added_part
    }

    /// What the surface of the member takes.
    pub(super) fn member_surface(&self) -> Stress {
        let tube = &self.s.tube;
        surface_pressure::limit(
            tube.material.family(),
            tube.yield_strength(self.strength),
            tube.ultimate_least,
        )
    }

    /// Thickness of the fitting between washer and wall on the side that has less of it.
    pub(super) fn cheek(&self) -> Length {
        if self.s.bolting.two_cheeks {
            self.s.fitting.thickness
        } else {
            Length::default()
        }
    }

    /// Width of the pressure from head or nut where it comes out inside the wall of a tube.
    pub(super) fn pressed_inside(&self) -> Length {
        let w = &self.s.bolting.washer;
        let nut = self.s.bolting.thread.bearing_diameter().min(w.outer);
        let washer = spread(nut, self.washer_thickness()).min(w.outer);
        spread(washer, self.cheek() + self.s.tube.wall)
    }

    /// Clamp at which washer, cheek and, where it lies between, the wall bend together into the bore of a sleeve that is
    /// wider than head or nut; `None` where it is not. A wall bends over the rim of the bore, a washer bears on the middle of
    /// what it covers.
    pub(super) fn over_bore(&self, on_wall: bool) -> Option<f64> {
        let s = self.s;
        let (w, bore) = (&s.bolting.washer, s.sleeve.inner);
        let nut = s.bolting.thread.bearing_diameter().min(w.outer);
        let (wall, reaction) = if on_wall {
            (s.tube.design_wall, bore)
        } else {
            let covered = w.outer.min(s.sleeve.outer).max(bore);
            (Length::default(), (bore + covered) * 0.5)
        };
        let fitting = self.yield_of(s.fitting.material, s.tube.weld_near && !is_welded(s));
        let plies = [
            (
                mpa(WASHER_YIELD_MPA),
                self.washer_thickness(),
                w.outer,
                w.bore,
            ),
            (fitting, self.cheek(), reaction, s.fitting.hole),
            (
                s.tube.yield_strength(self.strength),
                wall,
                reaction,
                s.bolting.hole,
            ),
        ];
        (bore > nut).then(|| {
            let bends = |(fy, thickness, outer, hole)| {
                dishing_load(fy, thickness, outer, hole, nut, reaction).si()
            };
            plies.into_iter().map(bends).sum()
        })
    }

    /// Pressure of the washers on the fitting or a plate over a hollow tube, where the wall is judged by itself.
    pub(super) fn on_top(&self) -> Option<Limit> {
        let pressed = self.pressed(None);
        pressed.load.is_finite().then(|| stack_pressed(&pressed))
    }

    /// The least of both sides of a joint; `block` is what the surface of a block under the wall takes. The wall of a
    /// hollow tube is not among the plies: what it takes is asked of its face.
    pub(super) fn pressed(&self, block: Option<Stress>) -> Pressed {
        let s = self.s;
        let tube = &s.tube;
        let fitting = (s.fitting.thickness.si() > 0.0).then(|| Layer {
            thickness: s.fitting.thickness,
            // The weld of a sleeve is in the wall, and the fitting is laid on it afterwards.
            pressure: self.surface(s.fitting.material, tube.weld_near && !is_welded(s)),
            family: s.fitting.material.family(),
            hole: s.fitting.hole,
            reach: s.fitting.edge * 2.0,
        });
        let b = &s.bolting;
        let beside = tube.width - b.spacing_across * (b.rows as f64 - 1.0);
        let on_member = s.free_edge().map_or(beside, |edge| edge * 2.0);
        let layer = |thickness, pressure, material: &Material| Layer {
            thickness,
            pressure,
            family: material.family(),
            hole: b.hole,
            reach: on_member,
        };
        let plate =
            (s.support == SupportKind::Spreader && s.spreader.thickness.si() > 0.0).then(|| {
                let metal = s.spreader.material;
                layer(s.spreader.thickness, self.surface(metal, false), metal)
            });
        let hollow = of(s).is_hollow() && !s.member.is_open() && block.is_none();
        let wall = (!hollow).then(|| layer(tube.wall, self.member_surface(), tube.material));
        let block = block.map(|pressure| layer(tube.depth, pressure, s.insert_material));
        let side = |above: [Option<Layer>; 2]| {
            let plies = above.into_iter().flatten().chain(wall).chain(block);
            self.least(plies)
        };
        // The fitting lies under both washers of two cheeks, else under one.
        let on_tube = plate.filter(|_| !s.member.is_open());
        let head = side([fitting, on_tube]);
        let nut = match (s.bolting.two_cheeks, s.member.is_open()) {
            (true, _) => return head,
            (_, true) => side([plate, None]),
            (false, false) => side([on_tube, None]),
        };
        if nut.load < head.load { nut } else { head }
    }

    /// From ply to ply the pressure grows wider, and each takes what it can.
    fn least(&self, plies: impl Iterator<Item = Layer>) -> Pressed {
        let w = &self.s.bolting.washer;
        let thickness = self.washer_thickness();
        let nut = self.s.bolting.thread.bearing_diameter().min(w.outer);
        let mut diameter = spread(nut, thickness).min(w.outer);
        let mut least: Option<Pressed> = None;
        for (depth, ply) in plies.enumerate() {
            diameter = diameter.min(ply.reach);
            let mut here = Pressed {
                load: bearing(ply.pressure, diameter, ply.hole),
                diameter,
                hole: ply.hole,
                pressure: ply.pressure,
                family: ply.family,
                dishes: false,
            };
            // Over a hole wider than the nut the washer is a bridge, not a strut.
            if depth == 0 && ply.hole > nut {
                // No more than as the hole reached the nut: a wider one never presses less.
                let at_nut = bearing(ply.pressure, diameter, nut);
                here = self.over_hole(&ply, nut, thickness);
                here.load = here.load.min(at_nut);
            }
            if least.is_none_or(|l| here.load < l.load) {
                least = Some(here);
            }
            diameter = spread(diameter, ply.thickness);
        }
        least.unwrap_or(Pressed {
            load: f64::INFINITY,
            diameter,
            hole: self.s.bolting.hole,
            pressure: mpa(0.0),
            family: self.s.tube.material.family(),
            dishes: false,
        })
    }

    /// A washer that is pushed in the middle of a hole: as wide as it presses without dishing.
    fn over_hole(&self, ply: &Layer, nut: Length, thickness: Length) -> Pressed {
        let w = &self.s.bolting.washer;
        let outer = w.outer.min(ply.reach);
        let pressing = |d: Length| bearing(ply.pressure, d, ply.hole);
        let dishing = |d: Length| {
            let reaction = (ply.hole + d) * 0.5;
            dishing_load(
                mpa(WASHER_YIELD_MPA),
                thickness,
                w.outer,
                w.bore,
                nut,
                reaction,
            )
            .si()
        };
        let diameter = if outer <= ply.hole {
            outer
        } else {
            Length::of_si(find_root(ply.hole.si(), outer.si(), 1e-6, |d| {
                let d = Length::of_si(d);
                pressing(d) - dishing(d)
            }))
        };
        let load = pressing(diameter).min(dishing(diameter));
        Pressed {
            load,
            diameter,
            hole: ply.hole,
            pressure: ply.pressure,
            family: ply.family,
            dishes: pressing(outer) > dishing(outer),
        }
    }
}

/// What the surface of a common washer takes.
pub(super) fn washer_surface() -> Stress {
    surface_pressure::limit(Family::Steel, mpa(WASHER_YIELD_MPA), mpa(WASHER_YIELD_MPA))
}

/// Force of a pressure on a ring, N.
fn bearing(pressure: Stress, outer: Length, hole: Length) -> f64 {
    let area = FRAC_PI_4 * (outer.si().powi(2) - hole.si().powi(2)).max(0.0);
    pressure.si() * area
}
