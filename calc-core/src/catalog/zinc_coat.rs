//! Zinc on hard bolts.

/// Whether bolts of a grade may be zinc plated or galvanized: pickling and plating leave hydrogen in the steel, and
/// hard steel breaks by it under its clamp, days later.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ZincCoat {
    /// Too soft for that.
    Usual,
    /// By a proven process; not hot-dip galvanized. ISO 4042:2018 asks for no baking up to a greatest hardness of
    /// 390 HV (class 10.9 and grade 8: 380 HV, 39 HRC, from memory); ASTM F2329 names a least hardness of 33 HRC as the
    /// begin of the risk in hot dip. Both second-hand.
    WithCare,
    /// Only if baked afterwards, which nobody sees on the bolt: ISO 4042:2018, greatest hardness above 390 HV (class
    /// 12.9: 435 HV, from memory). Second-hand.
    Baked,
    /// Neither plated nor galvanized: ASTM A490, 5.4 (now Grade A490 of F3125). Second-hand.
    Never,
}
