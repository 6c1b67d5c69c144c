//! Stock that sleeves are cut from: pipe in nominal sizes, round tube, and round bar that is bored.

use core::f64::consts::PI;

use crate::cite::{Cite, Flag, Source};
use crate::quantity::{Area, Length, inch};

/// What a sleeve is made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SleeveForm {
    /// Pipe in a nominal size.
    Pipe,
    /// Round tube.
    Tube,
    /// Round bar, bored for the bolt in a lathe.
    BoredBar,
}

/// A size of pipe, round tube or bored bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sleeve {
    id: &'static str,
    label: &'static str,
    outer_in: f64,
    wall_in: f64,
    bore_tolerance_in: f64,
    materials: &'static [&'static str],
    form: SleeveForm,
    cite: Cite,
}

impl Sleeve {
    /// Id: `nps-1.2-40`, `rt-0.750x0.120`; of a bored bar its diameter and its bore, `rb-1.250x0.531`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Pipe, tube or bar.
    #[must_use]
    pub const fn form(&self) -> SleeveForm {
        self.form
    }

    /// Outside diameter.
    #[must_use]
    pub fn outer_diameter(&self) -> Length {
        inch(self.outer_in)
    }

    /// Nominal wall thickness.
    #[must_use]
    pub fn wall(&self) -> Length {
        inch(self.wall_in)
    }

    /// Nominal inside diameter.
    #[must_use]
    pub fn inner_diameter(&self) -> Length {
        inch(self.outer_in - 2.0 * self.wall_in)
    }

    /// Smallest inside diameter to expect: drawn tube may be 0.005 in under (A513, 0.5 to 1.699 in
    /// outside). The tolerance of pipe and of aluminium tube was not found; nominal stands for them.
    #[must_use]
    pub fn inner_diameter_min(&self) -> Length {
        self.inner_diameter() - inch(self.bore_tolerance_in)
    }

    /// Source of the bore tolerance of drawn tube.
    pub const BORE_CITE: Cite = Cite::new(
        Source::AstmA513,
        "ID +0.000/−0.005 in",
        Flag::ReadSecondHand,
    );

    /// Area of the nominal cross section.
    #[must_use]
    pub fn area(&self) -> Area {
        0.25 * PI
            * (self.outer_diameter() * self.outer_diameter()
                - self.inner_diameter() * self.inner_diameter())
    }

    /// Ids of the [materials](super::material()) that it is sold in.
    #[must_use]
    pub const fn materials(&self) -> &'static [&'static str] {
        self.materials
    }

    /// Source of the size.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }
}

const PIPE: Cite = Cite::new(Source::AsmeB36_10m, "dimensions", Flag::ReadSecondHand);
const STOCK: Cite = Cite::new(
    Source::TradePractice,
    "common stock list of round tube",
    Flag::Practice,
);
const BAR: Cite = Cite::new(
    Source::AsmeB18_2_8,
    "bore: close clearance hole, 3/8 in normal; diameters of bar: common stock, no source",
    Flag::Practice,
);

// Materials, and how far the bore may lie below nominal, inches.
const DOM: (&[&str], f64) = (&["a513-1020"], 0.005);
const ALUMINIUM: (&[&str], f64) = (&["6061-t6"], 0.0);
const BOTH: (&[&str], f64) = (&["a513-1020", "6061-t6"], 0.005);
const STAINLESS: (&[&str], f64) = (&["a513-1020", "stainless-304"], 0.005);
const ALL: (&[&str], f64) = (&["a513-1020", "6061-t6", "stainless-304"], 0.005);

/// Outside diameter and wall, inches.
const fn pipe(id: &'static str, label: &'static str, size_in: [f64; 2]) -> Sleeve {
    Sleeve {
        id,
        label,
        outer_in: size_in[0],
        wall_in: size_in[1],
        bore_tolerance_in: 0.0,
        // Stainless schedules 40S and 80S have the same sizes as 40 and 80 up to NPS 10.
        materials: &["6061-t6", "a53-b", "stainless-304"],
        form: SleeveForm::Pipe,
        cite: PIPE,
    }
}

/// Outside diameter and wall, inches.
const fn tube(
    id: &'static str,
    label: &'static str,
    size_in: [f64; 2],
    (materials, bore_tolerance_in): (&'static [&'static str], f64),
) -> Sleeve {
    Sleeve {
        id,
        label,
        outer_in: size_in[0],
        wall_in: size_in[1],
        bore_tolerance_in,
        materials,
        form: SleeveForm::Tube,
        cite: STOCK,
    }
}

/// Diameter of the bar and bore, inches.
const fn bored_bar(id: &'static str, label: &'static str, size_in: [f64; 2]) -> Sleeve {
    Sleeve {
        id,
        label,
        outer_in: size_in[0],
        wall_in: (size_in[0] - size_in[1]) / 2.0,
        // A drill and a boring bar do not cut under size.
        bore_tolerance_in: 0.0,
        materials: &["6061-t6"],
        form: SleeveForm::BoredBar,
        cite: BAR,
    }
}

static SLEEVES: [Sleeve; 52] = [
    pipe("nps-1.4-40", "NPS 1/4 schedule 40", [0.54, 0.088]),
    pipe("nps-1.4-80", "NPS 1/4 schedule 80", [0.54, 0.119]),
    pipe("nps-3.8-40", "NPS 3/8 schedule 40", [0.675, 0.091]),
    pipe("nps-3.8-80", "NPS 3/8 schedule 80", [0.675, 0.126]),
    pipe("nps-1.2-40", "NPS 1/2 schedule 40", [0.84, 0.109]),
    pipe("nps-1.2-80", "NPS 1/2 schedule 80", [0.84, 0.147]),
    pipe("nps-3.4-40", "NPS 3/4 schedule 40", [1.05, 0.113]),
    pipe("nps-3.4-80", "NPS 3/4 schedule 80", [1.05, 0.154]),
    pipe("nps-1-40", "NPS 1 schedule 40", [1.315, 0.133]),
    pipe("nps-1-80", "NPS 1 schedule 80", [1.315, 0.179]),
    pipe("nps-1-1.4-40", "NPS 1-1/4 schedule 40", [1.66, 0.14]),
    pipe("nps-1-1.4-80", "NPS 1-1/4 schedule 80", [1.66, 0.191]),
    tube(
        "rt-0.500x0.065",
        "0.5 x 0.065 in round tube",
        [0.5, 0.065],
        ALUMINIUM,
    ),
    tube(
        "rt-0.625x0.058",
        "0.625 x 0.058 in round tube",
        [0.625, 0.058],
        DOM,
    ),
    tube(
        "rt-0.625x0.065",
        "0.625 x 0.065 in round tube",
        [0.625, 0.065],
        ALUMINIUM,
    ),
    tube(
        "rt-0.625x0.095",
        "0.625 x 0.095 in round tube",
        [0.625, 0.095],
        DOM,
    ),
    tube(
        "rt-0.625x0.120",
        "0.625 x 0.120 in round tube",
        [0.625, 0.12],
        DOM,
    ),
    tube(
        "rt-0.750x0.065",
        "0.75 x 0.065 in round tube",
        [0.75, 0.065],
        ALL,
    ),
    tube(
        "rt-0.750x0.083",
        "0.75 x 0.083 in round tube",
        [0.75, 0.083],
        DOM,
    ),
    tube(
        "rt-0.750x0.095",
        "0.75 x 0.095 in round tube",
        [0.75, 0.095],
        DOM,
    ),
    tube(
        "rt-0.750x0.120",
        "0.75 x 0.120 in round tube",
        [0.75, 0.12],
        STAINLESS,
    ),
    tube(
        "rt-0.750x0.125",
        "0.75 x 0.125 in round tube",
        [0.75, 0.125],
        ALUMINIUM,
    ),
    tube(
        "rt-0.750x0.134",
        "0.75 x 0.134 in round tube",
        [0.75, 0.134],
        DOM,
    ),
    tube(
        "rt-0.750x0.156",
        "0.75 x 0.156 in round tube",
        [0.75, 0.156],
        DOM,
    ),
    tube(
        "rt-0.875x0.065",
        "0.875 x 0.065 in round tube",
        [0.875, 0.065],
        ALUMINIUM,
    ),
    tube(
        "rt-0.875x0.095",
        "0.875 x 0.095 in round tube",
        [0.875, 0.095],
        DOM,
    ),
    tube(
        "rt-0.875x0.120",
        "0.875 x 0.120 in round tube",
        [0.875, 0.12],
        STAINLESS,
    ),
    tube(
        "rt-0.875x0.125",
        "0.875 x 0.125 in round tube",
        [0.875, 0.125],
        ALUMINIUM,
    ),
    tube(
        "rt-0.875x0.156",
        "0.875 x 0.156 in round tube",
        [0.875, 0.156],
        DOM,
    ),
    tube(
        "rt-0.875x0.188",
        "0.875 x 0.188 in round tube",
        [0.875, 0.188],
        DOM,
    ),
    tube(
        "rt-1.000x0.065",
        "1 x 0.065 in round tube",
        [1.0, 0.065],
        ALUMINIUM,
    ),
    tube(
        "rt-1.000x0.095",
        "1 x 0.095 in round tube",
        [1.0, 0.095],
        DOM,
    ),
    tube(
        "rt-1.000x0.120",
        "1 x 0.120 in round tube",
        [1.0, 0.12],
        STAINLESS,
    ),
    tube(
        "rt-1.000x0.125",
        "1 x 0.125 in round tube",
        [1.0, 0.125],
        ALUMINIUM,
    ),
    tube(
        "rt-1.000x0.156",
        "1 x 0.156 in round tube",
        [1.0, 0.156],
        DOM,
    ),
    tube(
        "rt-1.000x0.188",
        "1 x 0.188 in round tube",
        [1.0, 0.188],
        DOM,
    ),
    tube(
        "rt-1.000x0.219",
        "1 x 0.219 in round tube",
        [1.0, 0.219],
        DOM,
    ),
    tube(
        "rt-1.000x0.250",
        "1 x 0.250 in round tube",
        [1.0, 0.25],
        ALL,
    ),
    tube(
        "rt-1.250x0.120",
        "1.25 x 0.120 in round tube",
        [1.25, 0.12],
        STAINLESS,
    ),
    tube(
        "rt-1.250x0.125",
        "1.25 x 0.125 in round tube",
        [1.25, 0.125],
        ALUMINIUM,
    ),
    tube(
        "rt-1.250x0.188",
        "1.25 x 0.188 in round tube",
        [1.25, 0.188],
        DOM,
    ),
    tube(
        "rt-1.250x0.250",
        "1.25 x 0.250 in round tube",
        [1.25, 0.25],
        BOTH,
    ),
    tube(
        "rt-1.250x0.375",
        "1.25 x 0.375 in round tube",
        [1.25, 0.375],
        ALUMINIUM,
    ),
    tube(
        "rt-1.500x0.375",
        "1.5 x 0.375 in round tube",
        [1.5, 0.375],
        ALUMINIUM,
    ),
    bored_bar(
        "rb-1.000x0.406",
        "1 in round bar, bored 13/32 in",
        [1.0, 13.0 / 32.0],
    ),
    bored_bar(
        "rb-1.000x0.531",
        "1 in round bar, bored 17/32 in",
        [1.0, 17.0 / 32.0],
    ),
    bored_bar(
        "rb-1.250x0.531",
        "1.25 in round bar, bored 17/32 in",
        [1.25, 17.0 / 32.0],
    ),
    bored_bar(
        "rb-1.500x0.531",
        "1.5 in round bar, bored 17/32 in",
        [1.5, 17.0 / 32.0],
    ),
    bored_bar(
        "rb-1.250x0.656",
        "1.25 in round bar, bored 21/32 in",
        [1.25, 21.0 / 32.0],
    ),
    bored_bar(
        "rb-1.500x0.656",
        "1.5 in round bar, bored 21/32 in",
        [1.5, 21.0 / 32.0],
    ),
    bored_bar(
        "rb-1.500x0.781",
        "1.5 in round bar, bored 25/32 in",
        [1.5, 25.0 / 32.0],
    ),
    bored_bar(
        "rb-1.750x0.781",
        "1.75 in round bar, bored 25/32 in",
        [1.75, 25.0 / 32.0],
    ),
];

/// All sleeve stock: pipe, then round tube, then bored bar, by rising size.
#[must_use]
pub fn sleeves() -> &'static [Sleeve] {
    &SLEEVES
}

/// The sleeve stock with this id.
#[must_use]
pub fn sleeve(id: &str) -> Option<&'static Sleeve> {
    SLEEVES.iter().find(|sleeve| sleeve.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::material;

    #[test]
    fn every_material_offered_is_a_material() {
        for sleeve in sleeves() {
            for id in sleeve.materials() {
                assert!(material(id).is_some(), "{}: {id}", sleeve.label());
            }
        }
    }
}
