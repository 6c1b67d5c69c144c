//! Least squares by Levenberg and Marquardt's method: weighted residuals of any model of positive numbers, and how well
//! the readings decide each of them.

use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::storage::Owned;
use nalgebra::{DMatrix, DVector, Dyn};

/// A model: residuals, each divided by what it may be off by, at the logarithms of the unknowns.
pub(super) trait Model {
    /// Residuals in the order of the readings.
    fn residuals(&self, logs: &[f64]) -> Vec<f64>;
}

/// Step of a logarithm for derivatives: the curves are made of straight pieces, so it reaches over several.
const STEP: f64 = 0.02;

struct Problem<'a, M> {
    model: &'a M,
    at: DVector<f64>,
}

impl<M: Model> Problem<'_, M> {
    fn at(&self, logs: &DVector<f64>) -> DVector<f64> {
        DVector::from_vec(self.model.residuals(logs.as_slice()))
    }

    fn slopes(&self) -> DMatrix<f64> {
        let columns: Vec<DVector<f64>> = (0..self.at.len())
            .map(|i| {
                let moved = |way: f64| {
                    let mut logs = self.at.clone();
                    if let Some(log) = logs.get_mut(i) {
                        *log += way * STEP;
                    }
                    self.at(&logs)
                };
                (moved(1.0) - moved(-1.0)) / (2.0 * STEP)
            })
            .collect();
        DMatrix::from_columns(&columns)
    }
}

impl<M: Model> LeastSquaresProblem<f64, Dyn, Dyn> for Problem<'_, M> {
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;
    type ParameterStorage = Owned<f64, Dyn>;

    fn set_params(&mut self, x: &DVector<f64>) {
        self.at.copy_from(x);
    }

    fn params(&self) -> DVector<f64> {
        self.at.clone()
    }

    fn residuals(&self) -> Option<DVector<f64>> {
        Some(self.at(&self.at))
    }

    fn jacobian(&self) -> Option<DMatrix<f64>> {
        Some(self.slopes())
    }
}

/// What came out.
pub(super) struct Solved {
    /// Logarithms of the unknowns.
    pub(super) logs: Vec<f64>,
    /// Standard error of each, as a share of its value; infinite where the readings do not decide it.
    pub(super) errors: Vec<f64>,
    /// Residuals there.
    pub(super) residuals: Vec<f64>,
    /// For each unknown what each reading adds to knowing it, as a share of all.
    pub(super) parts: Vec<Vec<f64>>,
}

/// Fits a model from a start.
///
/// Readings that scatter more than they may be off make every error larger, by the square root of the residuals' mean
/// square; readings that scatter less make none smaller.
pub(super) fn solve(model: &impl Model, start: &[f64]) -> Option<Solved> {
    let problem = Problem {
        model,
        at: DVector::from_row_slice(start),
    };
    let (solved, _) = LevenbergMarquardt::new()
        .with_patience(40)
        .minimize(problem);
    let residuals = solved.at(&solved.at);
    let slopes = solved.slopes();
    let finite = |v: &DVector<f64>| v.iter().all(|x| x.is_finite());
    if !finite(&solved.at) || !finite(&residuals) || !slopes.iter().all(|x| x.is_finite()) {
        return None;
    }
    let spare = residuals.len().saturating_sub(start.len());
    let scatter = if spare > 0 {
        (residuals.norm_squared() / spare as f64).max(1.0)
    } else {
        1.0
    };
    let spread = (slopes.transpose() * &slopes).try_inverse();
    let errors = (0..start.len())
        .map(|i| {
            let own = spread.as_ref().and_then(|m| m.get((i, i)));
            own.filter(|v| v.is_finite() && **v >= 0.0)
                .map_or(f64::INFINITY, |v| (v * scatter).sqrt())
        })
        .collect();
    // What a reading adds to an unknown when all others are free to follow.
    let told = spread.map(|m| m * slopes.transpose());
    let parts = (0..start.len())
        .map(|i| {
            let row: Vec<f64> = (0..residuals.len())
                .map(|j| {
                    told.as_ref()
                        .and_then(|m| m.get((i, j)))
                        .map_or(0.0, |v| v * v)
                })
                .collect();
            let all: f64 = row.iter().sum();
            row.iter()
                .map(|v| if all > 0.0 { v / all } else { 0.0 })
                .collect()
        })
        .collect();
    Some(Solved {
        logs: solved.at.iter().copied().collect(),
        errors,
        residuals: residuals.iter().copied().collect(),
        parts,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// y = a·x: the closed form of a line through zero.
    struct Line(Vec<(f64, f64)>);

    impl Model for Line {
        fn residuals(&self, logs: &[f64]) -> Vec<f64> {
            let a = logs[0].exp();
            self.0.iter().map(|(x, y)| (y - a * x) / 0.1).collect()
        }
    }

    #[test]
    fn a_line_comes_out_as_by_hand() {
        let points = vec![(1.0, 2.1), (2.0, 3.9), (3.0, 6.2), (4.0, 7.9)];
        let (xx, xy) = points
            .iter()
            .fold((0.0, 0.0), |sum, (x, y)| (sum.0 + x * x, sum.1 + x * y));
        let solved = solve(&Line(points.clone()), &[1.5_f64.ln()]).unwrap();
        let a: f64 = xy / xx;
        assert!((solved.logs[0].exp() / a - 1.0).abs() < 1e-6);
        let spare: f64 = points
            .iter()
            .map(|(x, y)| ((y - a * x) / 0.1).powi(2))
            .sum();
        let error = 0.1 / xx.sqrt() * (spare / 3.0).max(1.0).sqrt() / a;
        assert!(
            (solved.errors[0] / error - 1.0).abs() < 1e-3,
            "{}",
            solved.errors[0]
        );
        assert!((solved.parts[0][3] - 16.0 / 30.0).abs() < 1e-3);
    }

    #[test]
    fn what_nothing_decides_is_said() {
        struct Blind;
        impl Model for Blind {
            fn residuals(&self, logs: &[f64]) -> Vec<f64> {
                vec![logs[0] - 1.0, logs[0] - 1.2]
            }
        }
        let solved = solve(&Blind, &[0.5, 0.5]);
        assert!(solved.is_none_or(|s| s.errors[1] > 1e3));
    }
}
