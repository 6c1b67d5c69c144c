//! Drills, welds and masses that work sheets give, as other sources print them.

use calc_core::catalog::{self, System, drill_for};
use calc_core::mechanics::weld;
use calc_core::quantity::{InUnits, inch, kilogram, ksi, mm, pound_force};
use calc_core::repair::Rates;
use calc_core::repair::sheet::{WorkSheet, work_sheet};
use calc_core::{Input, Scenario};

use crate::check::Check;
use crate::reference::rows;

/// The drill for a hole.
pub(super) fn drills() -> Check {
    let mut check = Check::new();
    for row in rows("drills.toml") {
        let wanted = row.number("wanted");
        let (unit, system) = match row.text("system") {
            "inch" => (inch(1.0), System::Inch),
            _ => (mm(1.0), System::Metric),
        };
        let drill = drill_for(unit * wanted, system).unwrap();
        check.row(&row, &[("diameter", drill.diameter.si() / unit.si())]);
    }
    check
}

/// Sizes and strength of welds.
pub(super) fn welds() -> Check {
    let mut check = Check::new();
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
    check
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

/// Mass of sleeves by length.
pub(super) fn sleeve_masses() -> Check {
    let mut check = Check::new();
    for row in rows("sleeve_masses.toml") {
        let sheet = sleeved(row.text("sleeve"), row.text("material"));
        let cut = &sheet.cuts[0];
        let mass = sheet.materials[0].mass.si / (f64::from(cut.count) * cut.length.si);
        let pound_per_foot = kilogram(0.453_592_37).si() / inch(12.0).si();
        check.row(&row, &[("mass_lb_ft", mass / pound_per_foot)]);
    }
    check
}
