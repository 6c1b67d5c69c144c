//! Working drawings and plots from reports: pure, for the page and for the static pictures.
//!
//! A figure is a [`Scene`]: plain marks with CSS classes. The page turns the marks into nodes, the
//! static build into text with [`Scene::to_svg`]. Nothing here computes an engineering value: the
//! numbers come in, the drawing places them.

pub mod chances;
pub mod choice;
pub mod face;
pub mod figures;
pub mod group;
pub mod lesson;
pub mod measure;
pub mod member;
pub mod opening;
pub mod parts;
pub mod pen;
pub mod plot;
pub mod scene;
pub mod section;
pub mod svg;
pub mod units;
pub mod words;

pub use figures::static_figure;
pub use scene::{Anchor, CutMetal, Hatch, Lean, Mark, Placed, Scene};
pub use section::{SectionState, section};
pub use units::Lettering;
