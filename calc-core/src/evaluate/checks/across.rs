//! Shear across the member: what bolts and load ask of it, and its lines of working.

use super::Working;
use crate::catalog::Family;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::quantity::{Area, InUnits, Stress, newton};
use crate::report::substituted;
use crate::report::working::Line;
use crate::scenario::{MemberKind, Mount};
use crate::support;

impl Analysis<'_> {
    /// Shear across the member, upright and sideways, N.
    ///
    /// ```text
    /// along the faces   V = max(|F|, |Σ V_i|)
    /// along the bolts   V = max(|F|, Σ (|F|/n + M·x_i/Σx²)),   one line of bolts: max(|F|, Σ N_i)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `F` | force across the member behind the last bolt | N |
    /// | `V_i` | force on a bolt in the faces, across the member; of the bolts on one side of a cut | N |
    /// | `M` | moment that pitches the fitting, whatever turns it added up | N·m |
    /// | `x_i`, `n` | place of a bolt along, from the middle; number of bolts | m, 1 |
    /// | `N_i` | pull on a bolt | N |
    ///
    /// A load ahead of two bolts pushes one up and the other down: between them the member has more shear than behind
    /// them. What pulls at the bolts of one line presses on the member beside them, and goes through it from there.
    ///
    /// # Sources
    /// Statics, the bolts as in the elastic method.
    pub(super) fn across_member(&self, loads: &BoltLoads) -> [f64; 2] {
        let s = self.s;
        let case = &loads.case;
        let [along, up, side] = [case.along, case.up, case.side].map(f64::abs);
        let [_, about_side, about_up] = case.about.map(f64::abs);
        let (ahead, below) = (case.ahead.abs(), case.below.abs());
        let in_faces = self.between_lines(|i| {
            // The couple of two cheeks twists the member and does not shear it.
            let across = loads.shares.get(i).map_or(0.0, |share| share.across);
            across - loads.couple.copysign(across)
        });
        let along_bolts = |force: f64, pitch: f64| {
            if s.bolting.along < 2 {
                return loads.shares.iter().map(|share| share.pull.max(0.0)).sum();
            }
            let places = &self.cases().places;
            let squares: f64 = places.iter().map(|place| place.x * place.x).sum();
            let each = force / places.len().max(1) as f64;
            self.between_lines(|i| {
                let x = places.get(i).map_or(0.0, |place| place.x);
                each + pitch * x / squares.max(1e-12)
            })
        };
        match s.bolting.mount {
            Mount::ThroughSides => {
                let pitch = ahead * side + s.aside() * along + about_up;
                [up.max(in_faces), side.max(along_bolts(side, pitch))]
            }
            Mount::FromTop => {
                let pitch = ahead * up + below * along + about_side;
                [up.max(along_bolts(up, pitch)), side.max(in_faces)]
            }
        }
    }

    /// Most that the bolts on one side of a cut between two lines of them push across the member, N.
    fn between_lines(&self, pushes: impl Fn(usize) -> f64) -> f64 {
        let places = &self.cases().places;
        let half = 0.5 * self.s.bolting.spacing_along.si();
        let beyond = |cut: f64, way: f64| -> f64 {
            let bolts = places.iter().enumerate();
            bolts
                .filter(|(_, place)| way * (place.x - cut) > 0.0)
                .map(|(i, _)| pushes(i))
                .sum()
        };
        places
            .iter()
            .flat_map(|place| [(place.x - half, 1.0), (place.x + half, -1.0)])
            .map(|(cut, way)| beyond(cut, way).abs())
            .fold(0.0, f64::max)
    }

    /// A line of working for the shear of one section.
    pub(super) fn across_line(
        &self,
        w: &mut Working,
        (symbol, what): (&'static str, &'static str),
        ([up, side], [high, broad]): ([f64; 2], [Area; 2]),
        stress: Stress,
    ) {
        let s = self.s;
        let solid = !support::of(s).is_hollow();
        let formula = match s.member.kind {
            MemberKind::RoundTube if !solid => "√(V_1² + V_2²)/A, A half of the section's",
            MemberKind::Channel | MemberKind::Angle => {
                "max(V_1/A_1, V_2/A_2), A of the web, flanges or leg along the force"
            }
            _ if solid => "√(V_1² + V_2²)/A",
            _ => {
                "max(V_1/A_1, V_2/A_2), A = 2·h·t of the walls along the force, flat; with the holes out, from edge to edge"
            }
        };
        let cite = if s.tube.material.family() == Family::Aluminium {
            Cite::new(Source::Adm2020, "chapter G", Flag::Memory)
        } else {
            Cite::new(Source::Aisc360_22, "G2 to G6, J4.2", Flag::Memory)
        };
        w.line(
            &Line {
                symbol,
                what,
                formula,
            },
            substituted![
                ("V_1", newton(up)),
                ("V_2", newton(side)),
                ("A_1", high),
                ("A_2", broad)
            ],
            stress,
            cite,
        );
    }
}
