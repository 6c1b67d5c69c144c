//! One file per physical idea: formulas only, no scenario, no words.
//!
//! Public functions take and give typed quantities; inside, SI numbers carry their meaning in their
//! names.

pub mod bearing;
pub mod bolt_group;
pub mod corrosion;
pub mod edge_tension;
pub mod en_bolt;
pub mod face;
pub mod fatigue;
pub mod flange;
pub mod instantaneous_centre;
pub mod interaction;
pub mod loosening;
pub mod losses;
pub mod member_shear;
pub mod neighbours;
pub mod net_section;
pub mod open_section;
pub mod opening;
pub mod pin;
pub mod plate;
pub mod prying;
pub mod range;
pub mod ring;
pub mod seat;
pub mod section;
pub mod shear;
pub mod side_wall;
pub mod sleeve;
pub mod slip;
pub mod solve;
pub mod stiffness;
pub mod surface_pressure;
pub mod thread;
pub mod tightening;
pub mod twist;
pub mod washer;
pub mod weld;
pub mod yield_line;
