//! Root of a rising function: the one numeric tool that the supports need.

/// Where a continuous function that does not fall crosses zero in `low..=high`.
///
/// False position with the Illinois correction, closed by bisection: cannot leave the bracket and
/// cannot loop for ever. Gives the nearer end where there is no sign change.
///
/// | symbol | meaning |
/// |---|---|
/// | `f` | function that does not fall from `low` to `high` |
/// | `relative` | wanted width of the last bracket, relative to `high` |
///
/// # Sources
/// Standard numerical analysis; the correction is known as the Illinois rule.
pub fn rising_root(low: f64, high: f64, relative: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let (mut a, mut b) = (low, high);
    let (mut fa, mut fb) = (f(a), f(b));
    if fa >= 0.0 {
        return a;
    }
    if fb <= 0.0 {
        return b;
    }
    let width = relative * high.abs();
    let mut same_side = 0i8;
    for round in 0..80 {
        // Every fourth step halves the bracket, whatever the function looks like.
        let c = if round % 4 == 3 {
            0.5 * (a + b)
        } else {
            (a * fb - b * fa) / (fb - fa)
        };
        let c = if c > a && c < b { c } else { 0.5 * (a + b) };
        let fc = f(c);
        if fc == 0.0 || b - a <= width {
            return c;
        }
        if fc < 0.0 {
            (a, fa) = (c, fc);
            if same_side == -1 {
                fb *= 0.5;
            }
            same_side = -1;
        } else {
            (b, fb) = (c, fc);
            if same_side == 1 {
                fa *= 0.5;
            }
            same_side = 1;
        }
    }
    0.5 * (a + b)
}

#[cfg(test)]
mod tests {
    use super::rising_root;

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
            let got = rising_root(0.0, 3.0, 1e-10, f);
            assert!((got - root).abs() < 1e-8, "got {got}, want {root}");
        }
    }

    #[test]
    fn stays_at_the_nearer_end_without_a_crossing() {
        assert_eq!(rising_root(1.0, 2.0, 1e-9, |_| 1.0), 1.0);
        assert_eq!(rising_root(1.0, 2.0, 1e-9, |_| -1.0), 2.0);
    }
}
