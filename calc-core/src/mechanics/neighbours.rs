//! Bolts that press on the same face: each has less of it than one that stands alone.

use crate::quantity::{InUnits, Length};

/// How far a neighbour is felt, in `b^⅔·h^⅓`.
const REACH: f64 = 2.2;

/// Most slender face that rows were run on, b/t.
pub const CHECKED_WALL: f64 = 32.0;

/// Flattest section that rows were run on, h/b; a flatter one is taken as this.
const CHECKED_HEIGHT: f64 = 0.5;

/// Widest washer that rows were run with, d_w/b; a wider one counts as this beside a neighbour, and so is never
/// worth less than a narrower one.
pub const CHECKED_WASHER: f64 = 0.58;

/// Bolts on a face: a row along the tube, and rows side by side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Group {
    /// Bolts in a row along the tube.
    pub along: usize,
    /// Their distance.
    pub pitch: Length,
    /// Rows side by side.
    pub rows: usize,
    /// Bolts of a row that are so near an open end that the face has half of its strength there.
    pub near_end: usize,
}

/// What a face carries under each bolt of an endless row, against one bolt alone at the same indentation.
///
/// ```text
/// φ = 1 − (1 − x/2.2)²  for x < 2.2, else 1,   x = p/(b^⅔·h^⅓)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `p` | distance of the bolts along the tube | m |
/// | `b`, `h` | width of the face, depth along the bolt | m |
///
/// A lower bound at 1 % and 3 % of the width (runs of b/t 13–32, h/b 0.5–3, d_w/b 0.24–0.58): no run lies below 0.97
/// of it. `h` is taken as `b/2` at least.
///
/// # Sources
/// Own finite-element runs, `tests/reference/fe/neighbours.csv`.
#[must_use]
pub fn row(pitch: Length, width: Length, depth: Length) -> f64 {
    let b = width.si();
    let h = depth.si().max(CHECKED_HEIGHT * b);
    let x = pitch.si() / (b * b * h).cbrt();
    let short = (1.0 - x / REACH).clamp(0.0, 1.0);
    1.0 - short * short
}

/// What a face carries under each bolt of a group, against one bolt alone and away from the end.
///
/// ```text
/// ψ = 1, (1 + φ)/2, φ            for one, two, more bolts in a row
/// ψ ≥ 1/(1 + m)                  m neighbours within reach (x < 2.2); no more than that for b/t > 32
/// near an open end               ½ for one bolt; for more the lesser of ψ/2 and ½·ψ'/(½ + ψ'), ψ' of the others by
///                                themselves, halved where they are near the end too
/// n rows side by side            the whole over n
/// ```
///
/// Within the runs the row is theirs. The rest was not run and is a lower bound: a face that carries `F₁` under one
/// bolt and `F₂` under others by themselves carries `λ·F₁` and `(1 − λ)·F₂` together, since what a body carries without
/// yielding through is convex, and where it is elastic a neighbour's load lowers a bolt by less than its own would. So
/// every further row counts as if it stood on the first one, in the middle of the face, where the face is weakest; on
/// slender faces every neighbour does; and a bolt near an open end shares with its row.
///
/// # Sources
/// Row: own finite-element runs. Half near an end: AISC 360-22 K1.4 (see [`super::face::near_open_end`]). Bounds: lower
/// bound theorem of plasticity and superposition; own derivation.
#[must_use]
pub fn group(g: &Group, width: Length, depth: Length, wall: Length) -> f64 {
    let phi = row(g.pitch, width, depth);
    let slender = width.si() / wall.si() > CHECKED_WALL * (1.0 + 1e-6);
    let of_row = |bolts: usize| -> f64 {
        if bolts < 2 || phi >= 1.0 {
            1.0
        } else {
            let shared = 1.0 / (1.0 + within_reach(g.pitch, width, depth, bolts));
            let of_runs = if bolts == 2 { (1.0 + phi) / 2.0 } else { phi };
            if slender { shared } else { of_runs.max(shared) }
        }
    };
    let alone = of_row(g.along);
    let in_row = if g.near_end == 0 {
        alone
    } else if g.along < 2 || phi >= 1.0 {
        alone / 2.0
    } else {
        let near_too = if g.near_end > 1 { 0.5 } else { 1.0 };
        let others = of_row(g.along - 1) * near_too;
        (alone / 2.0).min(0.5 * others / (0.5 + others))
    };
    in_row / g.rows.max(1) as f64
}

/// Neighbours that the bolt in the middle of a row feels.
fn within_reach(pitch: Length, width: Length, depth: Length, bolts: usize) -> f64 {
    let h = depth.si().max(CHECKED_HEIGHT * width.si());
    let reach = REACH * (width.si().powi(2) * h).cbrt();
    // Strictly within: a neighbour at the reach itself is not felt.
    let each_side = (reach / pitch.si().max(1e-6)).ceil() - 1.0;
    let others = bolts as f64 - 1.0;
    (2.0 * each_side).clamp(1.0, others.max(1.0))
}

/// Length of a plate that one bolt is credited with: to the middle between it and the next bolt and to the end of the
/// tube, as much on both sides of the bolt as on the shorter one.
///
/// ```text
/// l = 2·min(l_p/2, p/2, e)
/// ```
///
/// Finite-element runs of one plate over an endless row (`tests/reference/fe/shared_plates.csv`, p = 0.6·l_p) lie at
/// 0.92 to 1.08 of the curve with `l = p`, whether the plate is cut between the bolts or not.
///
/// # Sources
/// Own finite-element runs; the end: own derivation, what reaches past the tube presses on nothing.
#[must_use]
pub fn plate_length(plate: Length, pitch: Option<Length>, end_distance: Length) -> Length {
    let half = pitch.map_or(plate * 0.5, |p| (plate * 0.5).min(p * 0.5));
    half.min(end_distance) * 2.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::mm;

    fn at(along: usize, pitch: f64, rows: usize, near_end: usize) -> f64 {
        let pitch = mm(pitch);
        let g = Group {
            along,
            pitch,
            rows,
            near_end,
        };
        group(&g, mm(76.2), mm(76.2), mm(4.76))
    }

    #[test]
    fn one_bolt_has_the_face_to_itself() {
        assert_eq!([at(1, 10.0, 1, 0), at(1, 10.0, 1, 1)], [1.0, 0.5]);
        assert_eq!(at(6, 170.0, 1, 0), 1.0);
    }

    #[test]
    fn two_feel_one_neighbour_and_more_feel_two() {
        // x = 1, φ = 1 − (1.2/2.2)²
        let phi = 1.0 - (1.2f64 / 2.2).powi(2);
        assert!((at(3, 76.2, 1, 0) - phi).abs() < 1e-12);
        assert!((at(2, 76.2, 1, 0) - (1.0 + phi) / 2.0).abs() < 1e-12);
        assert!((at(3, 76.2, 2, 0) - phi / 2.0).abs() < 1e-12);
    }

    #[test]
    fn closer_is_never_more() {
        for along in 2..7 {
            for rows in 1..4 {
                for near_end in [0, 1, 2] {
                    let mut last = 0.0;
                    for pitch in 1..250 {
                        let now = at(along, f64::from(pitch), rows, near_end);
                        assert!(now >= last - 1e-12, "{along} {rows} {near_end} {pitch}");
                        last = now;
                    }
                }
            }
        }
    }

    #[test]
    fn a_bolt_more_a_row_more_and_an_end_are_never_more() {
        for pitch in [15.0, 40.0, 90.0, 160.0] {
            for along in 1..6 {
                let here = at(along, pitch, 1, 0);
                assert!(at(along + 1, pitch, 1, 0) <= here);
                assert!(at(along, pitch, 2, 0) <= here);
                assert!(at(along, pitch, 1, 1) <= here / 2.0 + 1e-12);
            }
        }
    }

    #[test]
    fn a_slender_face_shares_what_is_within_reach() {
        let g = |along, pitch| Group {
            along,
            pitch: mm(pitch),
            rows: 1,
            near_end: 0,
        };
        let slender = |along, pitch| group(&g(along, pitch), mm(100.0), mm(100.0), mm(3.0));
        assert!((slender(2, 90.0) - 0.5).abs() < 1e-12);
        // Reach 220 mm: two of them to either side at 90 mm, but there are only five others.
        assert!((slender(6, 90.0) - 0.2).abs() < 1e-12);
        assert_eq!(slender(6, 220.0), 1.0);
    }

    #[test]
    fn a_plate_ends_at_the_next_one_and_at_the_tube_s_end() {
        let l = |p: Option<f64>, e| plate_length(mm(300.0), p.map(mm), mm(e)).si() * 1e3;
        assert!((l(None, 1000.0) - 300.0).abs() < 1e-9);
        assert!((l(Some(40.0), 1000.0) - 40.0).abs() < 1e-9);
        assert!((l(Some(90.0), 30.0) - 60.0).abs() < 1e-9);
    }
}
