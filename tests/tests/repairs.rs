//! Repairs: drills, welds and masses as other sources print them, and laws of the list and its sheets.

use calc_core::catalog::{self, System, drill_for};
use calc_core::mechanics::weld;
use calc_core::quantity::{InUnits, inch, kilogram, ksi, mm, pound_force};
use calc_core::repair::sheet::{WorkSheet, work_sheet};
use calc_core::repair::{Rates, RepairKind, repairs};
use calc_core::{Input, Scenario, evaluate};
use outside_checks::check::Check;
use outside_checks::reference::rows;
use proptest::prelude::*;

#[test]
fn drills() {
    let mut check = Check::new("drills");
    for row in rows("drills.toml") {
        let wanted = row.number("wanted");
        let (unit, system) = match row.text("system") {
            "inch" => (inch(1.0), System::Inch),
            _ => (mm(1.0), System::Metric),
        };
        let drill = drill_for(unit * wanted, system).unwrap();
        check.row(&row, &[("diameter", drill.diameter.si() / unit.si())]);
    }
    check.finish();
}

#[test]
fn welds() {
    let mut check = Check::new("welds");
    let inches = |length: calc_core::quantity::Length| length.si() / inch(1.0).si();
    for row in rows("welds.toml") {
        let filler = || catalog::filler(row.text("filler")).unwrap();
        let name = row.expect.keys().next().unwrap().as_str();
        let of = |input| inch(row.number(input));
        let ours = match name {
            "least_fillet_in" => inches(weld::least_fillet(of("thinner_in"))),
            "least_groove_throat_in" => inches(weld::least_groove_throat(of("thinner_in"))),
            "largest_fillet_in" => inches(weld::largest_fillet(of("edge_in"))),
            "throat_in" => inches(weld::groove_throat(of("depth_in"), row.number("angle_deg"))),
            "shear_ksi" => filler().shear_strength().si() / ksi(1.0).si(),
            _ => {
                let throat = weld::fillet_throat(of("leg_in"));
                let shear = filler().shear_strength();
                let strength = weld::throat_strength(shear, throat, of("length_in")).si();
                row.number("phi") * strength / pound_force(1000.0).si()
            }
        };
        check.row(&row, &[(name, ours)]);
    }
    check.finish();
}

/// A joint with a sleeve through both faces, which its sheet then cuts.
fn sleeved(sleeve: &str, material: &str) -> WorkSheet {
    let before = Input {
        tube_width_mm: 76.2,
        bolt: String::from("unc-1.4"),
        tube_material: String::from("a500-b"),
        ..Input::default()
    };
    let after = Input {
        support: String::from("through-sleeve"),
        sleeve: String::from(sleeve),
        sleeve_material: String::from(material),
        ..before.clone()
    };
    let [before, after] = [before, after].map(|input| Scenario::new(&input).unwrap());
    work_sheet(&before, &after, &Rates::default())
}

#[test]
fn sleeve_masses() {
    let mut check = Check::new("sleeve-masses");
    for row in rows("sleeve_masses.toml") {
        let sheet = sleeved(row.text("sleeve"), row.text("material"));
        let cut = &sheet.cuts[0];
        let mass = sheet.materials[0].mass.si / (f64::from(cut.count) * cut.length.si);
        let pound_per_foot = kilogram(0.453_592_37).si() / inch(12.0).si();
        check.row(&row, &[("mass_lb_ft", mass / pound_per_foot)]);
    }
    check.finish();
}

fn joint() -> impl Strategy<Value = Input> {
    (
        prop::sample::select(vec![38.1, 50.8, 76.2, 101.6]),
        prop::sample::select(vec![50.8, 76.2, 101.6]),
        prop::sample::select(vec![3.175, 4.7625, 6.35]),
        prop::sample::select(vec![
            "6061-t6",
            "6063-t6",
            "a500-b",
            "s235",
            "stainless-304",
        ]),
        prop::sample::select(vec![
            ("unc-3.8", "sae-5"),
            ("unc-1.2", "sae-5"),
            ("m12", "iso-8.8"),
        ]),
        prop::sample::select(vec!["through-sides", "from-top"]),
        prop::sample::select(vec!["bare-clean", "painted"]),
        prop::sample::select(vec![
            "bare",
            "bare",
            "spreader",
            "loose-sleeve",
            "through-sleeve",
            "solid-insert",
        ]),
        300.0..1500.0,
    )
        .prop_map(
            |(width, depth, wall, material, (bolt, grade), mount, surface, support, mass)| Input {
                tube_width_mm: width,
                tube_depth_mm: depth,
                tube_wall_mm: wall,
                tube_material: String::from(material),
                bolt: String::from(bolt),
                bolt_grade: String::from(grade),
                mount: String::from(mount),
                faying_surface: String::from(surface),
                support: String::from(support),
                trailer_mass_kg: mass,
                ..Input::default()
            },
        )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_listed_repair_is_what_it_says(input in joint(), hour in 10.0..200.0) {
        let before = Scenario::new(&input).unwrap();
        let rates = Rates { hour, ..Rates::default() };
        let dearer = Rates { hour: hour * 1.5, ..rates };
        let found = repairs(&before, &rates);
        // Where a sleeve has widened the hole already, less is left to try.
        let wide = input.support == "through-sleeve";
        prop_assert!(found.tried >= if wide { 800 } else { 2000 }, "{}", found.tried);
        for repair in &found.list {
            let after = Scenario::new(&repair.input).unwrap();
            let report = evaluate(&after);
            prop_assert_eq!(report.verdict, repair.verdict);
            prop_assert!((report.tightening.torque_nm - repair.torque_nm).abs() < 1e-9);
            let sheet = work_sheet(&before, &after, &rates);
            prop_assert_eq!(sheet.kind, repair.kind);
            prop_assert_eq!(sheet.work, repair.work);
            // A dearer hour never makes work cheaper, and changes nothing else.
            let dear = work_sheet(&before, &after, &dearer);
            prop_assert!(dear.work.cost >= sheet.work.cost);
            prop_assert!(dear.work.cost > sheet.work.cost || sheet.work.minutes == 0.0);
            prop_assert_eq!(&dear.cuts, &sheet.cuts);
            prop_assert_eq!(&dear.holes, &sheet.holes);
            pieces_fit(&after, &sheet)?;
            holes_are_larger(&before, &after, &sheet)?;
            if let Some(weld) = &sheet.weld {
                prop_assert!(weld.utilisation <= 1.0, "{weld:?}");
                prop_assert!(weld.throat_needed.si <= weld.throat.si * 1.0001, "{weld:?}");
                prop_assert!(weld.depth.si <= after.tube.wall.si() + 1e-12);
            }
            let order = &sheet.tightening.order;
            prop_assert_eq!(order.len(), after.bolting.count());
        }
    }

    #[test]
    fn dearer_hours_never_make_the_cheapest_cheaper(input in joint(), hour in 10.0..150.0) {
        let before = Scenario::new(&input).unwrap();
        let cheapest = |hour: f64| {
            let found = repairs(&before, &Rates { hour, ..Rates::default() });
            found.cheapest.and_then(|i| found.list.get(i).map(|r| r.work.cost))
        };
        prop_assert!(cheapest(hour) <= cheapest(hour + 20.0));
    }
}

/// Cut lengths follow from the tube.
fn pieces_fit(after: &Scenario, sheet: &WorkSheet) -> Result<(), TestCaseError> {
    let depth = after.tube.depth.si();
    let inside = depth - 2.0 * after.tube.wall.si();
    for cut in &sheet.cuts {
        let sum = f64::from(cut.count) * cut.length.si;
        prop_assert!(cut.stock_length.si > sum);
        // A saw cut for each piece and one more, 1/8 in each.
        let kerfs = (cut.stock_length.si - sum) / inch(0.125).si();
        prop_assert!((kerfs - f64::from(cut.count) - 1.0).abs() < 1e-6);
        let longest = cut.length.si + cut.plus.si;
        match sheet.kind {
            RepairKind::ThroughSleeve | RepairKind::WeldedSleeve => {
                prop_assert!((cut.length.si - depth).abs() < 1e-12 && cut.minus.si <= 0.0);
            }
            RepairKind::LooseSleeve => {
                prop_assert!(cut.length.si < inside && longest <= inside + 1e-9);
                prop_assert!(cut.outer.unwrap().si > after.bolting.hole.si());
            }
            RepairKind::SolidInsert => {
                prop_assert!(
                    cut.width.unwrap().si < (after.tube.width - after.tube.wall * 2.0).si()
                );
                prop_assert!(cut.thickness.unwrap().si < inside);
            }
            _ => {}
        }
    }
    Ok(())
}

/// Holes pass what goes through them, and nothing is ever drilled smaller.
fn holes_are_larger(
    before: &Scenario,
    after: &Scenario,
    sheet: &WorkSheet,
) -> Result<(), TestCaseError> {
    for hole in &sheet.holes {
        prop_assert!(hole.count > 0);
        prop_assert!(hole.from.is_none_or(|from| from.si < hole.to.si));
        prop_assert!(hole.to.si >= after.bolting.thread.major().si());
        for drill in [hole.drill_inch, hole.drill_metric].into_iter().flatten() {
            prop_assert!(drill.diameter.si > hole.to.si - 1e-7);
        }
        let sleeved = before.input.support == "through-sleeve";
        let wall = if sleeved {
            before.sleeve.outer
        } else {
            before.bolting.hole
        };
        if let Some(from) = hole.from.filter(|_| hole.place == "place-tube-wall") {
            prop_assert!((from.si - wall.si()).abs() < 1e-12);
        }
    }
    Ok(())
}
