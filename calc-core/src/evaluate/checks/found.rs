//! Damage that was found: nothing that is computed outweighs it.

use super::said;
use crate::evaluate::analysis::Analysis;
use crate::quantity::Count;
use crate::report::{Check, CheckId, Said, Verdict, say};
use crate::scenario::{Field, Input};

/// What each damage says, the gravest first.
pub(crate) fn damage(input: &Input) -> impl Iterator<Item = Said> + '_ {
    input.found().map(|field| {
        said(
            match field {
                Field::FoundCrack => say::FoundCrack,
                Field::FoundOval => say::FoundOval,
                Field::FoundSpin => say::FoundSpin,
                Field::FoundHollow => say::FoundHollow,
                _ => say::FoundTrails,
            },
            (),
        )
    })
}

impl Analysis<'_> {
    /// The gravest of the damage that was found; the others are notes.
    pub(super) fn found(&self) -> Option<Check> {
        let input = &self.s.input;
        let gravest = damage(input).next()?;
        #[allow(clippy::cast_precision_loss, reason = "at most five")]
        let count = input.found().count() as f64;
        let judged = Check::of(CheckId::Found, Count(count), Count(0.0))
            .stands(Verdict::DoesNotHold)
            .without_share();
        Some(judged.reason(gravest))
    }
}

#[cfg(test)]
mod tests {
    use crate::evaluate;
    use crate::quantity::mm;
    use crate::repair::{Rates, RepairKind, repairs, sheet::work_sheet};
    use crate::report::{CheckId, Label, Verdict};
    use crate::scenario::{FOUND, Field, Input, Scenario, Seen, SupportKind};

    fn joint(change: impl Fn(&mut Input)) -> Scenario {
        let mut input = Input::default();
        change(&mut input);
        Scenario::new(&input).unwrap()
    }

    #[test]
    fn what_was_found_decides_whatever_the_numbers_say() {
        // A sleeve welded in through both faces of a steel tube.
        let sound = |input: &mut Input| {
            *input = Input::with(
                &[
                    (Field::TubeWidth, 76.2),
                    (Field::TubeWall, 4.7625),
                    (Field::EndDistance, 80.0),
                    (Field::SpacingAlong, 120.0),
                    (Field::BallAhead, 110.0),
                ],
                &[
                    (Field::TubeMaterial, "a500-b"),
                    (Field::Bolt, "unc-5.8"),
                    (Field::Support, SupportKind::ThroughSleeve.name()),
                    (Field::SleeveWelded, "yes"),
                    (Field::Sleeve, "rt-1.250x0.250"),
                ],
            );
        };
        assert_eq!(evaluate(&joint(sound)).verdict, Verdict::Holds);
        for field in FOUND {
            let report = evaluate(&joint(|input| {
                sound(input);
                input.set_choice(field, Seen::Yes.name());
            }));
            assert_eq!(report.verdict, Verdict::DoesNotHold, "{}", field.name());
            assert_eq!(report.weakest, CheckId::Found, "{}", field.name());
            let looked = joint(|input| {
                sound(input);
                input.set_choice(field, Seen::No.name());
            });
            assert_eq!(
                evaluate(&looked).verdict,
                Verdict::Holds,
                "{}",
                field.name()
            );
        }
    }

    #[test]
    fn the_gravest_leads_and_the_others_are_said_too() {
        let report = evaluate(&joint(|input| {
            for field in FOUND {
                input.set_choice(field, Seen::Yes.name());
            }
        }));
        let said = report.checks[0].reason.code.key();
        assert_eq!(said, "found-crack");
        let notes: Vec<_> = report.notes.iter().map(|n| n.code.key()).collect();
        for key in ["found-oval", "found-spin", "found-hollow", "found-trails"] {
            assert!(notes.contains(&key), "{key}: {notes:?}");
        }
    }

    #[test]
    fn repairs_are_found_for_an_oval_hole_that_was_measured() {
        let damaged = joint(|input| {
            input.choose(crate::scenario::TubeMaterial(
                crate::catalog::material("a500-b").unwrap(),
            ));
            input.found_oval = Seen::Yes.name().into();
            input.hole_mm = Some(15.875);
        });
        let found = repairs(&damaged, &Rates::default());
        assert!(!found.list.is_empty());
        for repair in &found.list {
            assert_ne!(repair.input.found_oval, Seen::Yes.name());
            // Nobody drills an oval hole smaller.
            let after = Scenario::new(&repair.input).unwrap();
            assert!(after.bolting.hole >= mm(15.875));
            assert_eq!(evaluate(&after).verdict, repair.verdict);
            // Somebody drills the oval one round, or a sleeve's hole over it.
            assert!(repair.work.holes > 0, "{repair:?}");
            let sheet = work_sheet(&damaged, &after, &Rates::default());
            assert!(!sheet.holes.is_empty());
        }
        assert!(
            found
                .list
                .iter()
                .all(|r| r.changed.contains(&Field::FoundOval))
        );
    }

    #[test]
    fn nothing_here_mends_a_crack_or_an_oval_hole_that_nobody_has_measured() {
        for field in [Field::FoundCrack, Field::FoundOval] {
            let damaged = joint(|input| input.set_choice(field, Seen::Yes.name()));
            assert!(repairs(&damaged, &Rates::default()).list.is_empty());
        }
    }

    #[test]
    fn what_has_given_way_is_not_mended_by_the_same_again() {
        let sleeved = [
            (Field::TubeMaterial, "a500-b"),
            (Field::Bolt, "unc-5.8"),
            (Field::Support, SupportKind::ThroughSleeve.name()),
            (Field::SleeveWelded, "yes"),
            (Field::Sleeve, "rt-1.250x0.250"),
        ];
        let sized = [
            (Field::TubeWidth, 76.2),
            (Field::TubeWall, 4.7625),
            (Field::EndDistance, 80.0),
            (Field::SpacingAlong, 120.0),
        ];
        for field in [Field::FoundSpin, Field::FoundHollow, Field::FoundTrails] {
            let damaged = joint(|input| {
                *input = Input::with(&sized, &sleeved);
                input.set_choice(field, Seen::Yes.name());
            });
            for repair in repairs(&damaged, &Rates::default()).list {
                let puts_in = repair.kind != RepairKind::Tightening;
                let more = repair
                    .changed
                    .iter()
                    .any(|changed| !FOUND.contains(changed) && *changed != Field::SleeveShort);
                // A sleeve that takes its torque is no hollow face: the thread gave way, and all bolts are new.
                let renewed = repair
                    .steps
                    .iter()
                    .any(|step| step.what == Label::WorkNewBolts);
                let mended = match field {
                    Field::FoundSpin => renewed,
                    Field::FoundTrails => more,
                    _ => more && puts_in,
                };
                assert!(mended, "{repair:?}");
            }
        }
    }
}
