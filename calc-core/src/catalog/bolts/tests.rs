use super::*;
use crate::catalog::{thread, threads};
use crate::quantity::ksi;

fn inches(length: f64) -> Length {
    Length::of_si(length * 0.0254)
}

#[test]
fn size_ranges_part_where_the_tables_part() {
    let proof = |grade: &str, size: &str| {
        bolt_grade(grade)
            .unwrap()
            .strength(thread(size).unwrap(), inches(5.0))
            .and_then(|strength| strength.proof)
    };
    assert_eq!(proof("sae-2", "unc-3.4"), Some(ksi(55.0)));
    assert_eq!(proof("sae-2", "unc-7.8"), Some(ksi(33.0)));
    assert_eq!(proof("iso-8.8", "m16"), Some(mpa(580.0)));
    assert_eq!(proof("iso-8.8", "m18"), Some(mpa(600.0)));
    assert_eq!(proof("iso-9.8", "m18"), None);
    assert_eq!(proof("sae-5", "m12"), None);
    assert_eq!(proof("a325", "unc-9.16"), None);
    assert_eq!(proof("a325", "unf-1.2"), None);
    assert_eq!(proof("a307", "unc-1.2"), None);
}

/// SAE J429: grade 2 longer than 6 in has the strengths of grade 1; no other grade knows its length.
#[test]
fn long_bolts_of_grade_2_are_weaker() {
    let thread = thread("unc-1.2").unwrap();
    let of = |grade: &str, long| bolt_grade(grade).unwrap().strength(thread, inches(long));
    for (long, proof) in [(5.99, 55.0), (6.0, 55.0), (6.01, 33.0), (12.0, 33.0)] {
        assert_eq!(of("sae-2", long).unwrap().proof, Some(ksi(proof)), "{long}");
    }
    assert_eq!(of("sae-2", 12.0).unwrap().tensile, ksi(60.0));
    for grade in bolt_grades().iter().filter(|g| g.id() != "sae-2") {
        for t in threads() {
            assert_eq!(
                grade.strength(t, inches(2.0)),
                grade.strength(t, inches(20.0))
            );
        }
    }
}

#[test]
fn the_harder_the_bolt_the_less_zinc_it_bears() {
    for grade in bolt_grades().iter().filter(|g| !g.stainless()) {
        let hard = threads()
            .iter()
            .find_map(|t| grade.strength(t, inches(2.0)))
            .unwrap()
            .tensile;
        let usual = grade.zinc_coat() == ZincCoat::Usual;
        assert_eq!(usual, hard < mpa(1000.0), "{}", grade.label());
    }
}

#[test]
fn only_a307_refuses_a_preload() {
    let refused: Vec<_> = bolt_grades()
        .iter()
        .filter(|grade| !grade.may_be_pretensioned())
        .map(BoltGrade::id)
        .collect();
    assert_eq!(refused, ["a307"]);
}

#[test]
fn strengths_rise_from_proof_to_tensile_and_every_grade_fits_something() {
    for grade in bolt_grades() {
        let strengths: Vec<_> = threads()
            .iter()
            .filter_map(|t| grade.strength(t, inches(5.0)))
            .collect();
        assert!(!strengths.is_empty(), "{} fits no thread", grade.label());
        for strength in strengths {
            if let (Some(proof), Some(yield_)) = (strength.proof, strength.yield_) {
                assert!(
                    proof <= yield_ && yield_ < strength.tensile,
                    "{}",
                    grade.label()
                );
            }
        }
    }
}
