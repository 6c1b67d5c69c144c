//! Pull on the bolts of a group that a moment tries to open about one edge of its contact.

/// Pull on each bolt from a moment that opens the joint about its compression edge.
///
/// ```text
/// N_i = |M|·s_i/Σs²
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `places` | place of each bolt along the lever, from the middle | m |
/// | `moment` | moment `M`; positive pulls the bolts at positive places | N·m |
/// | `edge` | from the middle to the edge of the contact, on either side | m |
/// | `s_i` | from the compression edge to bolt `i` | m |
///
/// Holds for a stiff fitting that has come off everywhere but at the edge; the pressure is taken as a
/// line there. It gives a single row the lever that the method about the middle lacks. `None` where the
/// contact does not reach past the bolts (no `s_i` above zero).
///
/// # Sources
/// Statics of a rigid plate on a line support; common in handbooks for brackets.
#[must_use]
pub fn about_edge(places: &[f64], moment: f64, edge: f64) -> Option<Vec<f64>> {
    let side = if moment < 0.0 { -1.0 } else { 1.0 };
    let arms: Vec<f64> = places.iter().map(|x| (edge + side * x).max(0.0)).collect();
    let sum: f64 = arms.iter().map(|s| s * s).sum();
    (sum > 0.0).then(|| arms.iter().map(|s| moment.abs() * s / sum).collect())
}

#[cfg(test)]
mod tests {
    use super::about_edge;

    #[test]
    fn the_moment_about_the_edge_is_balanced() {
        let places = [-0.05, -0.05, 0.05, 0.05];
        for moment in [120.0, -120.0] {
            let pulls = about_edge(&places, moment, 0.07).unwrap();
            let side = moment.signum();
            let got: f64 = places
                .iter()
                .zip(&pulls)
                .map(|(x, n)| n * (0.07 + side * x))
                .sum();
            assert!((got - 120.0_f64).abs() < 1e-9, "{got}");
        }
    }

    #[test]
    fn one_bolt_has_the_edge_as_its_lever() {
        assert_eq!(about_edge(&[0.0], 10.0, 0.02), Some(vec![500.0]));
        assert_eq!(about_edge(&[0.0], 10.0, 0.0), None);
    }
}
