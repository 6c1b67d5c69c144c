//! Names of load cases.

use crate::keys::keys;

/// The table: every name that the road or a rule gives a case.
macro_rules! case_names {
    ($($name:ident = $key:literal,)+) => {
        keys! {
            /// Name of a load case by key.
            pub enum CaseName {
                $(#[doc = concat!("`", $key, "`")] $name = $key,)+
            }
        }
    };
}

case_names! {
    BrakingOverABump = "braking-over-a-bump",
    PullingOverABump = "pulling-over-a-bump",
    CorneringOverABump = "cornering-over-a-bump",
    TowBarPulled = "tow-bar-pulled",
    TowBarPushed = "tow-bar-pushed",
    TowBarBentUp = "tow-bar-bent-up",
    TowBarBentDown = "tow-bar-bent-down",
    TowBarBentAside = "tow-bar-bent-aside",
    ClassPulled = "class-pulled",
    ClassPushed = "class-pushed",
    ClassAside = "class-aside",
    ClassPressedUp = "class-pressed-up",
    ClassPulledDown = "class-pulled-down",
    AdrPulled = "adr-pulled",
    AdrPushed = "adr-pushed",
    AdrAside = "adr-aside",
    AdrUp = "adr-up",
    AdrDown = "adr-down",
    DValuePulled = "d-value-pulled",
    DValuePushed = "d-value-pushed",
    DTestPulled = "d-test-pulled",
    DTestPushed = "d-test-pushed",
    DLinePulled = "d-line-pulled",
    DLinePushed = "d-line-pushed",
    WheelOverABump = "wheel-over-a-bump",
    BrakingRearEye = "braking-rear-eye",
    BrakingFrontEye = "braking-front-eye",
    BackingRearEye = "backing-rear-eye",
    BackingFrontEye = "backing-front-eye",
    CorneringLeft = "cornering-left",
    CorneringRight = "cornering-right",
    CorneringUnloaded = "cornering-unloaded",
    ChainPullsUp = "chain-pulls-up",
    ChainPullsDown = "chain-pulls-down",
    ChainPullsAside = "chain-pulls-aside",
    ChainPullsAlong = "chain-pulls-along",
    ChainPullsStraightUp = "chain-pulls-straight-up",
    ChainPullsStraightDown = "chain-pulls-straight-down",
    FreeLoad = "free-load",
    HitchTestPressed = "hitch-test-pressed",
    HitchTestPulled = "hitch-test-pulled",
    HitchTestPushed = "hitch-test-pushed",
    HitchTestAside = "hitch-test-aside",
    VValuePressedUp = "v-value-pressed-up",
    VValuePulledDown = "v-value-pulled-down",
    VTestPressedUp = "v-test-pressed-up",
    VTestPulledDown = "v-test-pulled-down",
    VValuePressedUpPushed = "v-value-pressed-up-pushed",
    VValuePulledDownPushed = "v-value-pulled-down-pushed",
    VTestPressedUpPushed = "v-test-pressed-up-pushed",
    VTestPulledDownPushed = "v-test-pulled-down-pushed",
    BrakingAfterABump = "braking-after-a-bump",
    PullingAfterABump = "pulling-after-a-bump",
    BrakingInABend = "braking-in-a-bend",
    BrakingInABendAfterABump = "braking-in-a-bend-after-a-bump",
    PullingInABend = "pulling-in-a-bend",
    PullingInABendAfterABump = "pulling-in-a-bend-after-a-bump",
    BendRearEye = "bend-rear-eye",
    BendFrontEye = "bend-front-eye",
    AxleHangs = "axle-hangs",
    None = "none",
}
