//! What comes out about fatigue.

use super::Message;
use super::{Amount, Said};
use crate::catalog::Detail;
use crate::cite::Cite;
use crate::keys::keys;
use crate::mechanics::fatigue::Block;
use serde::Serialize;

/// What a published view says the bolt endures, and what this bolt sees in that view.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BoltEnduranceView {
    /// Which view.
    pub view: EnduranceView,
    /// Share of the outside pull that this view lets the bolt feel.
    #[serde(rename = "bolt_share")]
    pub load_factor: f64,
    /// Stress amplitude at the full pull.
    pub amplitude: Amount,
    /// Stress amplitude that is endured for good.
    pub endured: Amount,
    /// Amplitude of two million equal cycles that are endured, for loads of many heights.
    pub endured_two_million: Amount,
    /// Full amplitude against what is endured for good.
    #[serde(rename = "used_at_full_share")]
    pub used_at_full: f64,
    /// Amplitude of two million cycles that do what the road does, against what is endured.
    #[serde(rename = "used_on_the_road_share")]
    pub used_on_the_road: f64,
    /// Source.
    #[serde(flatten)]
    pub cite: Cite,
}

keys! {
    /// A published view of what a bolt endures.
    pub enum EnduranceView {
        /// The category of the steel code, on the stress area.
        SteelCode = "aisc-g",
        /// The guideline for highly stressed bolts.
        Guideline = "vdi",
        /// The handbook's table with the line of a mean stress.
        Handbook = "goodman",
    }
}

/// What a published category says about the hole in the tube.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct HoleView {
    /// Id of the category.
    pub category: &'static str,
    /// What kind of place.
    pub detail: Detail,
    /// Whether it is this joint's kind of place.
    pub applies: bool,
    /// Range at two million cycles.
    pub range_two_million: Amount,
    /// Range below which nothing happens, zero where none is published.
    pub threshold: Amount,
    /// Way to the end in miles, by order of magnitude, by key.
    pub life: Message,
    /// Source.
    #[serde(flatten)]
    pub cite: Cite,
}

/// How far the joint goes, as an order of magnitude. Never a date.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Life {
    /// The likely order, by key: hundreds of miles, thousands …
    pub likely: Message,
    /// Low end of the band.
    pub low: Message,
    /// High end of the band.
    pub high: Message,
    /// What ends it: the bolt or the hole.
    pub ends_at: Detail,
}

/// How rough the road is: an assumption that can be changed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RoadSpectrum {
    /// Cycles by height.
    pub blocks: Vec<Block>,
    /// Way that the bolt check asks for, miles.
    pub miles: f64,
    /// How it is held.
    #[serde(flatten)]
    pub cite: Cite,
}

/// Fatigue of bolt and hole under the cases that come again and again.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FatigueReport {
    /// The road that it was computed for.
    pub road: RoadSpectrum,
    /// All published views of the bolt; empty where nothing pulls along it.
    pub bolt: Vec<BoltEnduranceView>,
    /// Nominal stress range at the worst hole for the full load; zero where it is not known.
    pub hole_range: Amount,
    /// All published views of the hole; empty where its stress is not known.
    pub hole: Vec<HoleView>,
    /// Order of magnitude; `None` where the joint slips or opens (it fails the method, and no life is
    /// given), where no load comes again, and at a hanger, whose tube is bent by the whole frame.
    pub life: Option<Life>,
    /// What to say.
    pub said: Vec<Said>,
}
