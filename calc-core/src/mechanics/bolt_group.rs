//! How a group of bolts shares a load.

/// A bolt's place in the faying plane, from the middle of the group, in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Along the tube.
    pub x: f64,
    /// Across the tube.
    pub y: f64,
}

/// Force on a bolt, in newtons.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Share {
    /// In the plane, along the tube.
    pub along: f64,
    /// In the plane, across the tube.
    pub across: f64,
    /// Along the bolt, opening positive.
    pub pull: f64,
}

impl Share {
    /// Size of the force in the plane.
    #[must_use]
    pub fn in_plane(&self) -> f64 {
        self.along.hypot(self.across)
    }
}

/// Load on the whole group about its middle, in newtons and newton metres.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct GroupLoad {
    /// In the plane, along the tube.
    pub along: f64,
    /// In the plane, across the tube.
    pub across: f64,
    /// Moment in the plane, turning `along` towards `across`.
    pub twist: f64,
    /// Along the bolts, opening positive.
    pub pull: f64,
    /// Moment that pulls the bolts in front (x positive) and presses those behind.
    pub pitch: f64,
    /// Moment that pulls the bolts at y positive and presses the others.
    pub roll: f64,
}

/// A rectangular pattern about its middle.
pub fn pattern(along: usize, across: usize, pitch_x: f64, pitch_y: f64) -> Vec<Place> {
    let centre = |n: usize| (n as f64 - 1.0) / 2.0;
    (0..along)
        .flat_map(|i| {
            (0..across).map(move |j| Place {
                x: (i as f64 - centre(along)) * pitch_x,
                y: (j as f64 - centre(across)) * pitch_y,
            })
        })
        .collect()
}

/// Share of each bolt by the elastic vector method, the group clamped all over.
///
/// ```text
/// in plane:  F_x = V_x/n − M·y/J,   F_y = V_y/n + M·x/J,   J = Σ(x² + y²)
/// along:     N   = N_0/n + M_p·x/Σx² + M_r·y/Σy²
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `x`, `y` | place of the bolt from the middle of the group | m |
/// | `V`, `M` | force and twist in the plane | N, N·m |
/// | `N_0`, `M_p`, `M_r` | pull, pitch and roll | N, N·m |
///
/// Holds while the faces stay together. A moment that the pattern cannot take (a single bolt, a single
/// row) is returned in `not_taken`: the caller must not count on it.
///
/// # Sources
/// Elastic vector method, Shigley 9e section 8-12.
pub fn elastic(places: &[Place], load: &GroupLoad) -> (Vec<Share>, NotTaken) {
    let n = places.len().max(1) as f64;
    let sum = |f: fn(&Place) -> f64| places.iter().map(f).sum::<f64>();
    let (xx, yy) = (sum(|p| p.x * p.x), sum(|p| p.y * p.y));
    let polar = xx + yy;
    let over = |moment: f64, inertia: f64| if inertia > 0.0 { moment / inertia } else { 0.0 };
    let (twist, pitch, roll) = (
        over(load.twist, polar),
        over(load.pitch, xx),
        over(load.roll, yy),
    );
    let shares = places
        .iter()
        .map(|p| Share {
            along: load.along / n - twist * p.y,
            across: load.across / n + twist * p.x,
            pull: load.pull / n + pitch * p.x + roll * p.y,
        })
        .collect();
    let missing = |moment: f64, inertia: f64| if inertia > 0.0 { 0.0 } else { moment };
    (
        shares,
        NotTaken {
            twist: missing(load.twist, polar),
            pitch: missing(load.pitch, xx),
            roll: missing(load.roll, yy),
        },
    )
}

/// Moments that a pattern has no lever for, in newton metres.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct NotTaken {
    /// In the plane.
    pub twist: f64,
    /// Pulling the front.
    pub pitch: f64,
    /// Pulling one side.
    pub roll: f64,
}

impl NotTaken {
    /// Of each the larger.
    #[must_use]
    pub fn worse(self, other: Self) -> Self {
        let larger = |a: f64, b: f64| if b.abs() > a.abs() { b } else { a };
        Self {
            twist: larger(self.twist, other.twist),
            pitch: larger(self.pitch, other.pitch),
            roll: larger(self.roll, other.roll),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_add_up_to_the_load() {
        let places = pattern(2, 2, 0.08, 0.04);
        let load = GroupLoad {
            along: 4e3,
            across: -1e3,
            twist: 150.0,
            pull: 800.0,
            pitch: 90.0,
            roll: 20.0,
        };
        let (shares, left) = elastic(&places, &load);
        let sum = |f: &dyn Fn(&Place, &Share) -> f64| {
            places
                .iter()
                .zip(&shares)
                .map(|(p, s)| f(p, s))
                .sum::<f64>()
        };
        for (got, want) in [
            (sum(&|_, s| s.along), load.along),
            (sum(&|_, s| s.across), load.across),
            (sum(&|p, s| p.x * s.across - p.y * s.along), load.twist),
            (sum(&|_, s| s.pull), load.pull),
            (sum(&|p, s| p.x * s.pull), load.pitch),
            (sum(&|p, s| p.y * s.pull), load.roll),
        ] {
            assert!(
                (got - want).abs() < 1e-9 * want.abs(),
                "{got} against {want}"
            );
        }
        assert_eq!(left, NotTaken::default());
    }

    #[test]
    fn one_bolt_has_no_lever() {
        let (_, left) = elastic(
            &pattern(1, 1, 0.1, 0.1),
            &GroupLoad {
                twist: 5.0,
                ..GroupLoad::default()
            },
        );
        assert_eq!(left.twist, 5.0);
    }
}
