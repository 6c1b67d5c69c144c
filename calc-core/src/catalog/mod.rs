//! The published tables: threads, bolt grades, washers, holes, materials, sleeve stock, friction.
//!
//! Rows stand as they are printed, inches as inches and ksi as ksi; the accessors give typed
//! quantities. Every row has an `id` that never changes (`a-z 0-9 . -`), used in links and JSON, a
//! `label` for people, and a [`Cite`](crate::cite::Cite). Where two sources disagree the safer value
//! stands in the row and the other in its note.

mod alloys;
mod bolts;
mod case_name;
mod drills;
mod endurance;
mod fillers;
mod friction;
mod galvanic;
mod hex;
mod holes;
mod load_rules;
mod material;
mod pretension;
mod printed;
mod scatter;
mod steels;
mod threads;
mod tubes;
mod washers;
mod wileman;
mod zinc_coat;

pub use bolts::{BoltGrade, BoltStrength, ThreadShear, bolt_grade, bolt_grades};
pub use case_name::CaseName;
pub use drills::{Drill, drill_for};
pub use endurance::{
    ALUMINIUM_SHARE, BoltEndurance, Category, Detail, FatigueCategory, bolt_endurance,
    fatigue_categories, fatigue_category,
};
pub use fillers::{Filler, filler, filler_between, fillers};
pub use friction::{
    LaboratoryFriction, NutFactor, SlipSurface, Treatment, default_slip_surface, not_for_design,
    nut_factor, nut_factor_on, nut_factors, slip_surface, slip_surface_between, slip_surface_of,
    slip_surfaces,
};
pub use galvanic::{
    GalvanicLimit, GalvanicMetal, Metal, Surroundings, galvanic_limits, galvanic_metal,
    galvanic_metals,
};
pub use hex::Hex;
pub use holes::{ClearanceHole, HoleFit, clearance_hole};
pub(crate) use load_rules::CHAIN_OF_WEIGHT;
pub use load_rules::{
    Chain, ChainShares, LEAST_TONGUE, LoadKind, LoadRule, RuleCase, RuleClass, Size, Trailer,
    load_rule, load_rules,
};
pub use material::{Family, Material, ProductForm, Strength, Welded, material, materials};
pub use pretension::{MinimumPretension, PretensionGroup, aisc_pretension};
pub use scatter::{TighteningMethod, tightening_method, tightening_methods};
pub use threads::{System, Thread, thread, threads};
pub use tubes::{Sleeve, SleeveForm, sleeve, sleeves};
pub use washers::{Washer, WasherSeries, washer, washers};
pub use wileman::{WilemanConstants, wileman, wileman_constants};
pub use zinc_coat::ZincCoat;
