//! Constants of Wileman, Choudhury and Green's member stiffness.

use crate::cite::{Cite, Flag, Source};

/// Constants of `k_m = E d A exp(B d / l)`, both members of one material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WilemanConstants {
    id: &'static str,
    a: f64,
    b: f64,
}

impl WilemanConstants {
    /// Id: `steel`, `aluminium`, `copper`, `cast-iron`, `general`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// `A`, dimensionless.
    #[must_use]
    pub const fn a(&self) -> f64 {
        self.a
    }

    /// `B`, dimensionless.
    #[must_use]
    pub const fn b(&self) -> f64 {
        self.b
    }

    /// Source.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        Cite::new(Source::Shigley9e, "Table 8-8", Flag::Read)
    }
}

static CONSTANTS: [WilemanConstants; 5] = [
    WilemanConstants {
        id: "steel",
        a: 0.787_15,
        b: 0.628_73,
    },
    WilemanConstants {
        id: "aluminium",
        a: 0.796_70,
        b: 0.638_16,
    },
    WilemanConstants {
        id: "copper",
        a: 0.795_68,
        b: 0.635_53,
    },
    WilemanConstants {
        id: "cast-iron",
        a: 0.778_71,
        b: 0.616_16,
    },
    WilemanConstants {
        id: "general",
        a: 0.789_52,
        b: 0.629_14,
    },
];

/// The constants for every material listed.
#[must_use]
pub fn wileman_constants() -> &'static [WilemanConstants] {
    &CONSTANTS
}

/// The constants for the material with this id.
#[must_use]
pub fn wileman(id: &str) -> Option<&'static WilemanConstants> {
    CONSTANTS.iter().find(|row| row.id == id)
}
