//! Random joints for laws that are tried with shrinking: the same moves as everywhere, drawn by proptest.

use calc_core::scenario::Field;
use calc_core::{Input, Scenario};
use outside_checks::joints::{Move, moved};
use proptest::prelude::*;

/// Default joints with up to fifteen fields changed to anything that the field takes by itself.
pub(crate) fn inputs() -> impl Strategy<Value = Input> {
    let share = prop_oneof![3 => 0.0..=1.0_f64, 1 => Just(0.0), 1 => Just(1.0)];
    let fields = u64::try_from(Field::ALL.len()).unwrap_or(1);
    let one = (0..fields, share, any::<u64>()).prop_map(|(at, share, lot)| Move { at, share, lot });
    prop::collection::vec(one, 0..16).prop_map(|moves| moved(Input::default(), &moves))
}

/// The scenario of an input; those that contradict themselves are passed over, once they name a field.
pub(crate) fn scenario(input: &Input) -> Result<Scenario, TestCaseError> {
    Scenario::new(input).map_err(|errors| {
        let named = !errors.is_empty() && errors.iter().all(|e| e.field().is_some());
        if named && errors.iter().all(|e| e.code() == "contradiction") {
            TestCaseError::reject("contradiction")
        } else {
            TestCaseError::fail(format!("{errors:?}"))
        }
    })
}
