//! Where every part lies, and what does not fit.
//!
//! Coordinates are those of the face under the washers: `x` along the member from the end nearest the bolts, `y` across
//! it from one edge (from the back of the web or upright leg where a flange or a leg stands free), both in the plane
//! of the face. `places` puts the bolts there, `face` says which part of the face is flat, and the other files
//! ask one question each of what stands there: holes, washers, sleeves, plates, wrench.

mod face;
mod fit;
mod holes;
mod places;
mod plates;
mod sleeves;
mod washers;
mod wrench;

pub use face::Face;
pub(crate) use face::root_fillet;
pub(crate) use fit::Fit;
pub(crate) use holes::holes;
pub use places::{Place, bolts};
pub(crate) use plates::{plate_on_fillet, plates};
pub(crate) use sleeves::sleeves;
pub(crate) use washers::washers;
pub use wrench::SOCKET;
pub(crate) use wrench::{across_flats, wrench};

#[cfg(test)]
mod tests;
