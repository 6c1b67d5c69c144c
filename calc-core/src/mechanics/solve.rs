//! Root of a rising function: the one numeric tool that the supports need.

/// Where a continuous function that does not fall crosses zero in `low..=high`.
///
/// Inverse quadratic interpolation wherever the last three points allow it, bisection wherever they do
/// not: cannot leave the bracket and cannot loop for ever. Gives the nearer end where there is no sign
/// change.
///
/// | symbol | meaning |
/// |---|---|
/// | `f` | function that does not fall from `low` to `high` |
/// | `relative` | wanted width of the last bracket, relative to `high` |
///
/// # Sources
/// Chandrupatla, T. R. (1997), "A new hybrid quadratic/bisection algorithm for finding the zero of a
/// nonlinear function without using derivatives", Advances in Engineering Software 28, 145–149; the
/// steps from memory.
pub fn find_root(low: f64, high: f64, relative: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let at_low = f(low);
    if at_low >= 0.0 {
        return low;
    }
    let at_high = f(high);
    if at_high <= 0.0 {
        return high;
    }
    between((low, at_low), (high, at_high), relative, f)
}

/// The same where the values at both ends are known, the first below zero and the second above.
pub(crate) fn between(
    low: (f64, f64),
    high: (f64, f64),
    relative: f64,
    mut f: impl FnMut(f64) -> f64,
) -> f64 {
    let width = relative * high.0.abs();
    // The newest point, the one across the root from it, and the one that was given up.
    let ((mut a, mut fa), (mut b, mut fb)) = (high, low);
    let mut part = 0.5;
    for _ in 0..80 {
        let x = a + part * (b - a);
        let fx = f(x);
        let (c, fc) = if (fx < 0.0) == (fa < 0.0) {
            (a, fa)
        } else {
            let gone = (b, fb);
            (b, fb) = (a, fa);
            gone
        };
        (a, fa) = (x, fx);
        let least = 0.5 * width / (b - a).abs();
        if fa == 0.0 || least > 0.5 {
            break;
        }
        let (place, height) = ((a - b) / (c - b), (fa - fb) / (fc - fb));
        let smooth = height * height < place && (1.0 - height).powi(2) < 1.0 - place;
        part = if smooth {
            fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
        } else {
            0.5
        };
        // So far past the root that the bracket closes from both sides.
        part = part.clamp(least, 1.0 - least);
    }
    if fa.abs() < fb.abs() { a } else { b }
}

#[cfg(test)]
mod tests {
    use super::find_root;

    #[test]
    fn finds_roots_of_stiff_and_flat_functions() {
        for (f, root) in [
            (
                &(|x: f64| x * x * x - 2.0) as &dyn Fn(f64) -> f64,
                2.0_f64.cbrt(),
            ),
            (&|x: f64| (x - 0.25).max(-1e-3), 0.25),
            (&|x: f64| (x - 0.9).signum() * (x - 0.9).abs().sqrt(), 0.9),
        ] {
            let got = find_root(0.0, 3.0, 1e-10, f);
            assert!((got - root).abs() < 1e-8, "got {got}, want {root}");
        }
    }

    #[test]
    fn stays_at_the_nearer_end_without_a_crossing() {
        assert_eq!(find_root(1.0, 2.0, 1e-9, |_| 1.0), 1.0);
        assert_eq!(find_root(1.0, 2.0, 1e-9, |_| -1.0), 2.0);
    }
}
