//! What it says when the wrench stops rising before it clicks.

use crate::evaluate::clamp_unknown;
use crate::evaluate::preload::{Preload, mean_face};
use crate::mechanics::tightening::implied_friction;
use crate::quantity::Dimension::{Force, Ratio, Torque as Tq};
use crate::quantity::{InUnits, Torque};
use crate::report::{Amount, Said, Strength, say};
use crate::scenario::{Field, Scenario};
use crate::support::SupportModel;
use serde::Serialize;

/// What a torque says at which the wrench turned on without rising.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StopReading {
    /// The torque, as observed.
    pub torque: Amount,
    /// Clamp at the nut factor of the scenario.
    pub clamp: Amount,
    /// Clamp with the least and the greatest published nut factor of this finish: low, high.
    pub clamp_range: [Amount; 2],
    /// Clamp that the support is likely to take: from 1 % of the width on each face to the end of the
    /// checked range, or to the bolt's yield load where that comes first.
    pub support_range: [Amount; 2],
    /// Nut factor that makes the observed torque fit the support as computed: low, high.
    pub implied_nut_factor: [f64; 2],
    /// Friction in threads and under the turned face that goes with those nut factors.
    pub implied_friction: [f64; 2],
    /// What to say, most important first.
    pub said: Vec<Said>,
}

/// Works back from the torque at which the clamp stopped growing.
///
/// ```text
/// F = T/(K·d),   K_implied = T/(F_support·d)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `torque` | `T` at which the wrench turned on without rising | N·m |
/// | `F_support` | clamp that the support, or the bolt, takes with likely strength | N |
/// | `K` | nut factor; published range of the finish, or the reader's own value ± nothing | 1 |
///
/// One observation cannot tell friction from support: it says which nut factor would make the support
/// as computed right, and which support would make the published nut factors right.
///
/// # Sources
/// Shigley 9e Eq. 8-27 turned round; ranges of K in the catalogue.
///
/// Where something is not known the support, and with it the nut factors, range over all joints that it may be.
#[must_use]
pub fn torque_stop(s: &Scenario, torque: Torque) -> StopReading {
    let all: Vec<Scenario> = s.members().collect();
    of_all(s, &all, torque)
}

/// What a support takes, N.
#[derive(Clone, Copy)]
struct Range {
    /// From 1 % of the width.
    first: f64,
    /// To the end of the checked range, or to the bolt's yield load.
    most: f64,
    /// End of the checked range.
    end: f64,
    /// Yield load of the bolt.
    yields: f64,
}

impl Range {
    fn of(s: &Scenario) -> Self {
        let model = SupportModel::new(s, Strength::Likely);
        let yields = Preload::new(s).yields.si();
        let end = model.force(model.approach_end());
        let most = end.min(yields).max(1.0);
        let first = model.force_at_share(0.01).clamp(1.0, most);
        Self {
            first,
            most,
            end,
            yields,
        }
    }

    /// Where nobody knows which of two it is.
    const fn or(self, other: Self) -> Self {
        Self {
            first: self.first.min(other.first),
            most: self.most.max(other.most),
            end: self.end.max(other.end),
            yields: self.yields.min(other.yields),
        }
    }
}

/// Of all joints that it may be, the first of which is the joint itself.
fn of_all(s: &Scenario, all: &[Scenario], torque: Torque) -> StopReading {
    let thread = s.bolting.thread;
    let preload = Preload::new(s);
    let (t, d) = (torque.si(), thread.major().si());
    let k = s.tightening.nut_factor;
    let (k_low, k_high) = published(s).unwrap_or((k, k));
    let ranges = all.iter().skip(1).map(Range::of);
    let Range {
        first,
        most,
        end,
        yields,
    } = ranges.fold(Range::of(s), Range::or);
    // A washer that falls into its sleeve presses on nothing: no nut factor fits that.
    let on_nothing = end < 1.0;
    let clamp = t / (k * d);
    let (low, high) = (t / (k_high * d), t / (k_low * d));
    let implied = [t / (d * most), t / (d * first)];
    let friction = implied.map(|k| {
        implied_friction(
            k,
            thread.major(),
            thread.pitch(),
            thread.pitch_diameter(),
            mean_face(s),
        )
    });
    let force = |si| Amount::new(si, Force);
    let ratio = |si| Amount::new(si, Ratio);
    let mut said = Vec::new();
    let support = [force(first), force(most)];
    let unknown = clamp_unknown(s).is_some();
    if unknown {
        said.push(Said::new(say::StopSupportUnknown, ()));
    } else if t >= preload.torque.si() {
        said.push(Said::of(
            say::StopNotBeforeClick,
            [Amount::new(t, Tq), Amount::new(preload.torque.si(), Tq)],
        ));
    }
    if unknown {
        // Nothing to hold the torque against.
    } else if high < first {
        said.push(Said::of(
            say::StopWeakerThanComputed,
            [force(high), support[0]],
        ));
    } else if low > most {
        if end < yields {
            said.push(Said::of(
                say::StopStrongerThanComputed,
                [force(low), support[1]],
            ));
        } else {
            said.push(Said::of(say::StopBoltYields, [force(low), force(yields)]));
        }
    } else if end >= yields && high >= yields {
        said.push(Said::of(
            say::StopBoltMayYield,
            [force(clamp), force(yields)],
        ));
    } else {
        said.push(Said::of(
            say::StopSupportGives,
            [force(clamp), support[0], support[1]],
        ));
    }
    if !on_nothing && !unknown {
        said.push(Said::of(
            say::StopImpliesNutFactor,
            [ratio(implied[0]), ratio(implied[1]), ratio(k)],
        ));
    }
    StopReading {
        torque: Amount::new(t, Tq),
        clamp: force(clamp),
        clamp_range: [force(low), force(high)],
        support_range: support,
        implied_nut_factor: implied,
        implied_friction: friction,
        said,
    }
}

/// Published range of the nut factor; `None` where the reader gave one.
pub(crate) fn published(s: &Scenario) -> Option<(f64, f64)> {
    if s.is_given(Field::NutFactor) {
        return None;
    }
    let row = s.tightening.lubrication;
    Some((row.low(), row.high()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::newton_metre;
    use crate::report::Message;
    use crate::scenario::Input;

    fn joint(change: impl FnOnce(&mut Input)) -> Scenario {
        let mut input = Input::default();
        change(&mut input);
        Scenario::new(&input).unwrap()
    }

    /// A stop at the torque that the support takes at the scenario's own K implies that K.
    #[test]
    fn a_stop_at_the_supports_own_torque_implies_the_own_nut_factor() {
        let s = joint(|i| i.nut_factor = Some(0.2));
        let model = SupportModel::new(&s, Strength::Likely);
        let d = s.bolting.thread.major().si();
        let most = model
            .force(model.approach_end())
            .min(Preload::new(&s).yields.si());
        let r = torque_stop(&s, newton_metre(0.2 * d * most));
        assert!((r.implied_nut_factor[0] - 0.2).abs() < 1e-9, "{r:?}");
        assert!(r.implied_nut_factor[1] > 0.2);
        assert!((r.clamp.si / most - 1.0).abs() < 1e-9);
        assert!((r.implied_friction[0] - Preload::new(&s).friction).abs() < 1e-9);
    }

    #[test]
    fn tells_weak_from_strong() {
        let s = joint(|i| i.torque_nm = Some(100.0));
        let code = |s: &Scenario, t| torque_stop(s, newton_metre(t)).said[0].code;
        assert_eq!(code(&s, 3.0), Message::StopWeakerThanComputed);
        assert_eq!(code(&s, 40.0), Message::StopSupportGives);
        assert_eq!(code(&s, 99.0), Message::StopStrongerThanComputed);
        assert_eq!(code(&s, 120.0), Message::StopNotBeforeClick);
        let open = joint(|i| {
            i.support = "through-sleeve".into();
            i.tube_width_mm = 200.0;
            i.sleeve_outer_mm = Some(80.0);
            i.mount = "from-top".into();
        });
        let r = torque_stop(&open, newton_metre(20.0));
        assert!(r.implied_nut_factor.iter().all(|k| k.is_finite()));
        assert!(
            r.said
                .iter()
                .all(|s| s.code != Message::StopImpliesNutFactor)
        );
        let solid = joint(|i| {
            i.support = "solid".into();
            i.torque_nm = Some(300.0);
        });
        assert_eq!(code(&solid, 290.0), Message::StopBoltYields);
        assert_eq!(code(&solid, 140.0), Message::StopBoltMayYield);
    }
}
