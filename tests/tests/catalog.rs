//! The catalogue as a whole: ids that links can rely on.

use std::collections::BTreeSet;

use calc_core::catalog;

fn assert_ids<'a>(table: &str, ids: impl Iterator<Item = &'a str>) {
    let mut seen = BTreeSet::new();
    for id in ids {
        assert!(seen.insert(id), "{table}: {id} twice");
        assert!(
            !id.is_empty()
                && id.bytes().all(|byte| byte.is_ascii_lowercase()
                    || byte.is_ascii_digit()
                    || b".-".contains(&byte)),
            "{table}: {id} is not made of a-z 0-9 . -"
        );
    }
    assert!(!seen.is_empty(), "{table}: empty");
}

#[test]
fn ids_are_unique_and_safe_in_links() {
    assert_ids(
        "threads",
        catalog::threads().iter().map(catalog::Thread::id),
    );
    assert_ids(
        "bolt grades",
        catalog::bolt_grades().iter().map(catalog::BoltGrade::id),
    );
    assert_ids(
        "washers",
        catalog::washers().iter().map(catalog::Washer::id),
    );
    assert_ids(
        "materials",
        catalog::materials().iter().map(catalog::Material::id),
    );
    assert_ids(
        "sleeves",
        catalog::sleeves().iter().map(catalog::Sleeve::id),
    );
    assert_ids(
        "nut factors",
        catalog::nut_factors().iter().map(catalog::NutFactor::id),
    );
    assert_ids(
        "slip surfaces",
        catalog::slip_surfaces()
            .iter()
            .map(catalog::SlipSurface::id),
    );
    assert_ids(
        "tightening methods",
        catalog::tightening_methods()
            .iter()
            .map(catalog::TighteningMethod::id),
    );
    assert_ids(
        "stiffness constants",
        catalog::wileman_constants()
            .iter()
            .map(catalog::WilemanConstants::id),
    );
}

#[test]
fn lookup_finds_every_row_and_nothing_else() {
    for row in catalog::threads() {
        assert_eq!(catalog::thread(row.id()), Some(row));
    }
    for row in catalog::bolt_grades() {
        assert_eq!(catalog::bolt_grade(row.id()), Some(row));
    }
    for row in catalog::materials() {
        assert_eq!(catalog::material(row.id()), Some(row));
    }
    for row in catalog::sleeves() {
        assert_eq!(catalog::sleeve(row.id()), Some(row));
    }
    for row in catalog::nut_factors() {
        assert_eq!(catalog::nut_factor(row.id()), Some(row));
    }
    for row in catalog::slip_surfaces() {
        assert_eq!(catalog::slip_surface(row.id()), Some(row));
    }
    for row in catalog::tightening_methods() {
        assert_eq!(catalog::tightening_method(row.id()), Some(row));
    }
    assert_eq!(catalog::thread("1/2-13"), None);
    assert_eq!(catalog::material(""), None);
}
