//! What a factor on a demand is.

use crate::keys::keys;

keys! {
    /// What the factor of a check is.
    pub enum Factor {
        /// No factor.
        None = "factor-none",
        /// Own choice, where no code gives one.
        Own = "factor-own",
        /// Scatter of the tightening.
        Scatter = "factor-scatter",
        /// On slip under a service load.
        Slip = "factor-slip",
        /// Ω on a nominal strength.
        Strength = "factor-strength",
        /// Brings a strength down to the onset of yield.
        Yield = "factor-yield",
        /// Against breaking: none.
        Breaking = "factor-breaking",
        /// Of a proof load: none.
        Proof = "factor-proof",
        /// Partial factor on the load.
        Load = "factor-load",
        /// Already inside the shares.
        Inside = "factor-inside",
    }
}
