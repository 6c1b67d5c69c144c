//! Fatigue of bolt and hole under the cases that come again and again and a road that is assumed.

use super::analysis::Analysis;
use super::loads::{BoltLoads, Cases, LoadCase};
use super::member_section::member_section;
use super::pried::pull_on_bolt;
use crate::catalog::{
    BoltEndurance, Category, Detail, Family, FatigueCategory, LoadKind, bolt_endurance,
    fatigue_categories, fatigue_category,
};
use crate::cite::{Cite, Flag, Source};
use crate::mechanics::fatigue::{
    Curve, TWO_MILLION, bolt_amplitude, damage_per_mile, equivalent_share, goodman, vdi_amplitude,
};
use crate::mechanics::section::{HoledTube, hole_stress};
use crate::quantity::{InUnits, Stress, ksi, mpa, newton, newton_metre};
use crate::report::{
    Amount, BoltEnduranceView, EnduranceView, FatigueReport, HoleView, Life, RoadSpectrum, Said,
    Sentence, say,
};
use crate::scenario::{JointKind, MemberKind, Mount, Scenario};
use crate::support::{self, seat};

/// Slope by which loads of many heights are summed for the bolt.
const SLOPE: f64 = 3.0;

/// Factor of the band about a life, to either side: the load is known to about a third and counts by
/// its third power, the road to about a factor of two. An assumption.
const LIFE_BAND: f64 = 5.0;

/// Sizes that the VDI formula is for, mm.
const VDI_SIZES: std::ops::RangeInclusive<f64> = 8.0..=39.0;

/// Category of bolts in the steel code.
const CODE_CATEGORY: EnduranceView = EnduranceView::SteelCode;

/// The road of a scenario; unless the reader changed it: the full load once in a hundred miles, seven
/// tenths of it every third mile, four tenths ten times and two tenths a hundred times on each mile.
#[must_use]
pub fn road(s: &Scenario) -> RoadSpectrum {
    let road = &s.loads.road;
    RoadSpectrum {
        blocks: road.blocks.to_vec(),
        miles: road.miles,
        cite: Cite::new(Source::OwnAssumption, "road spectrum", Flag::Assumption),
    }
}

/// Whether a road never brings anything: nobody has said what it is like.
pub(crate) fn no_road(road: &RoadSpectrum) -> bool {
    let mut blocks = road.blocks.iter();
    blocks.all(|block| block.per_mile * block.share <= 0.0)
}

/// The published views of a bolt, at most three.
pub(crate) struct BoltViews([Option<BoltEnduranceView>; 3]);

impl BoltViews {
    pub(crate) fn new(analysis: &Analysis<'_>, pull: f64, road: &RoadSpectrum) -> Self {
        let Analysis {
            s,
            preload,
            residual,
            ..
        } = analysis;
        let thread = s.bolting.thread;
        let area = thread.stress_area();
        let on_road = equivalent_share(&road.blocks, road.miles, SLOPE);
        let view = |view, share: f64, endured: Stress, two_million: Stress, cite| {
            let stress = bolt_amplitude(newton(pull), share, area);
            let amplitude = stress.si();
            BoltEnduranceView {
                view,
                load_factor: share,
                amplitude: Amount::of(stress),
                endured: Amount::of(endured),
                endured_two_million: Amount::of(two_million),
                used_at_full: amplitude / endured.si().max(1.0),
                used_on_the_road: on_road * amplitude / two_million.si().max(1.0),
                cite,
            }
        };
        // The steel code lets the joint's stiffness relieve the bolt only where all of the grip is
        // steel and the bolt pretensioned.
        let part = support::of(s).metal(s).map(|part| part.material.family());
        let all_steel = s
            .tightening
            .metals
            .into_iter()
            .chain(part)
            .all(|family| family == Family::Steel)
            && s.bolting.grade.may_be_pretensioned();
        let relief = if all_steel { residual.bolt_share } else { 1.0 };
        let code = fatigue_category(CODE_CATEGORY.key()).map(|row| {
            let curve = curve(row);
            view(
                CODE_CATEGORY,
                relief,
                curve.threshold() * 0.5,
                curve.range_at(TWO_MILLION) * 0.5,
                row.cite,
            )
        });
        let d = thread.major().si() * 1e3;
        let vdi = VDI_SIZES.contains(&d).then(|| {
            let endured = vdi_amplitude(thread.major());
            view(
                EnduranceView::Guideline,
                residual.bolt_share,
                endured,
                endured,
                Cite::new(Source::Vdi2230, "endurance of rolled threads", Flag::Memory),
            )
        });
        let preload = mpa(preload.max.si() / area.si() * 1e-6);
        let table = bolt_endurance(s.bolting.grade, thread).map(|row| {
            let endured = goodman(row.stress(), s.bolting.strength.tensile, preload);
            view(
                EnduranceView::Handbook,
                residual.bolt_share,
                endured,
                endured,
                BoltEndurance::CITE,
            )
        });
        Self([code, vdi, table])
    }

    pub(crate) fn all(&self) -> impl Iterator<Item = &BoltEnduranceView> {
        self.0.iter().flatten()
    }
}

fn repeated(cases: &Cases) -> impl Iterator<Item = &BoltLoads> {
    cases
        .all
        .iter()
        .filter(|loads| loads.case.kind == LoadKind::Service)
}

/// Of the cases that come again and again the one that pulls most, and its pull with what a flange adds.
pub(crate) fn repeated_pull<'a>(analysis: &'a Analysis<'_>) -> Option<(&'a BoltLoads, f64)> {
    let (s, proof) = (analysis.s, analysis.preload.proof);
    let most =
        repeated(analysis.cases()).max_by(|a, b| a.largest_pull.total_cmp(&b.largest_pull))?;
    (most.largest_pull > 0.0).then(|| (most, pull_on_bolt(s, most.largest_pull, proof)))
}

/// The view that asks most.
pub(crate) fn governing<'a>(
    views: impl Iterator<Item = &'a BoltEnduranceView>,
) -> Option<&'a BoltEnduranceView> {
    // Views that the full pull does not exceed come after those that need the road to speak for them.
    let most = |view: &BoltEnduranceView| {
        if view.used_at_full > 1.0 {
            1.0 + view.used_on_the_road
        } else {
            view.used_at_full
        }
    };
    views.max_by(|a, b| most(a).total_cmp(&most(b)))
}

fn curve(row: &FatigueCategory) -> Curve {
    match row.category {
        Category::Constant {
            constant,
            threshold_ksi,
        } => Curve::aisc(constant, ksi(threshold_ksi)),
        Category::Named { mpa: range, slope } => Curve::named(mpa(range), slope),
    }
    .scaled(row.factor)
}

/// Nominal stress range at the worst hole: bending from nothing to the full bump, the force along the
/// tube from pulling to braking and back.
fn hole_range(s: &Scenario, case: &LoadCase) -> Stress {
    let b = &s.bolting;
    let hole = support::of(s).hole_in_wall(s);
    // The bolt farthest from the ball sees the longest arm.
    let behind_last = 0.5 * (b.along as f64 - 1.0) * b.spacing_along.si();
    let arm = case.ahead.abs() + behind_last;
    let [_, about_side, _] = case.about;
    let moment = case.up.abs() * arm + case.along.abs() * case.below.abs() + about_side.abs();
    if s.member.kind != MemberKind::RectangularTube {
        // The largest stress anywhere on what the holes leave: at the rim it is no more. Holes that
        // leave nothing have a check of their own; here the strength stands in, which ends soon.
        let (_, net) = member_section(s, hole);
        return net
            .stress(2.0 * case.along, moment, 0.0)
            .unwrap_or(s.tube.ultimate_least);
    }
    let (height, breadth) = match b.mount {
        Mount::ThroughSides => (s.tube.width, s.tube.depth),
        Mount::FromTop => (s.tube.depth, s.tube.width),
    };
    let wall = if support::of(s).is_hollow() {
        s.tube.design_wall
    } else {
        height.min(breadth) * 0.5
    };
    let tube = HoledTube {
        height,
        breadth,
        wall,
        corner: s.tube.corner_radius,
        hole,
        holes: b.rows,
        spacing: b.spacing_across,
        through_flanges: b.mount == Mount::FromTop,
    };
    hole_stress(&tube, newton(2.0 * case.along), newton_metre(moment))
}

/// Orders of magnitude of a way in miles, by key.
fn order(miles: f64) -> Sentence<0> {
    match miles {
        m if m < 100.0 => say::LifeBelowAHundredMiles,
        m if m < 1e3 => say::LifeHundredsOfMiles,
        m if m < 1e4 => say::LifeThousandsOfMiles,
        m if m < 1e5 => say::LifeTensOfThousandsOfMiles,
        m if m < 1e6 => say::LifeHundredsOfThousandsOfMiles,
        _ => say::LifeAMillionMilesOrMore,
    }
}

fn miles(curve: &Curve, range: Stress, road: &RoadSpectrum) -> f64 {
    1.0 / damage_per_mile(curve, range, &road.blocks)
}

/// The whole section. `gripping`: whether the joint grips and stays shut, which its checks decide.
pub(super) fn report(analysis: &Analysis<'_>, gripping: bool, road: RoadSpectrum) -> FatigueReport {
    let (s, cases) = (analysis.s, analysis.cases());
    let bolt: Vec<BoltEnduranceView> =
        repeated_pull(analysis).map_or_else(Vec::new, |(_, pull)| {
            let views = BoltViews::new(analysis, pull, &road);
            views.all().copied().collect()
        });
    let welded = support::is_welded(s);
    let rim = Rim {
        range: range_of(s, cases),
        here: if welded {
            Detail::WeldedAttachment
        } else if gripping {
            Detail::ClampedHole
        } else {
            Detail::OpenHole
        },
        family: match s.tube.material.family() {
            Family::Aluminium => Family::Aluminium,
            Family::Steel | Family::Stainless => Family::Steel,
        },
    };
    let life = (gripping && rim.range.is_ok() && !no_road(&road)).then(|| rim.life(&bolt, &road));
    FatigueReport {
        hole_range: Amount::of(rim.range.unwrap_or_default()),
        hole: rim.views(&road),
        life,
        said: said(s, &rim, life),
        bolt,
        road,
    }
}

/// The stress range that repeats at the worst hole, or why there is none, by key.
fn range_of(s: &Scenario, cases: &Cases) -> Result<Stress, Sentence<0>> {
    let range = repeated(cases)
        .map(|loads| hole_range(s, &loads.case))
        .reduce(Stress::max)
        .ok_or(say::FatigueNothingRepeats)?;
    // What bends a tube at a hanger depends on the rest of the frame.
    if s.loads.joint == JointKind::SpringHanger {
        return Err(say::FatigueTubeBendingUnknown);
    }
    Ok(range)
}

/// The rim of the worst hole: what repeats there, and which curves are for it.
struct Rim {
    range: Result<Stress, Sentence<0>>,
    here: Detail,
    family: Family,
}

impl Rim {
    /// The published curves for holes in this metal; none where nobody knows the range.
    fn rows(&self) -> impl Iterator<Item = &'static FatigueCategory> {
        fatigue_categories().iter().filter(|row| {
            row.family == self.family && row.detail != Detail::Bolt && self.range.is_ok()
        })
    }

    fn views(&self, road: &RoadSpectrum) -> Vec<HoleView> {
        let range = self.range.unwrap_or_default();
        self.rows()
            .map(|row| {
                let c = curve(row);
                HoleView {
                    category: row.id,
                    detail: row.detail,
                    applies: row.detail == self.here,
                    range_two_million: Amount::of(c.range_at(TWO_MILLION)),
                    threshold: Amount::of(c.threshold()),
                    life: order(miles(&c, range, road)).message(),
                    cite: row.cite,
                }
            })
            .collect()
    }

    /// The way to the first crack, at the hole or in the bolt.
    fn life(&self, bolt: &[BoltEnduranceView], road: &RoadSpectrum) -> Life {
        let range = self.range.unwrap_or_default();
        let hole_miles = self
            .rows()
            .filter(|row| row.detail == self.here)
            .map(|row| miles(&curve(row), range, road))
            .fold(f64::INFINITY, f64::min);
        // The code's curve, without relief where it gives none, is the lowest of the bolt's views.
        let bolt_miles = bolt
            .iter()
            .find(|view| view.view == CODE_CATEGORY)
            .zip(fatigue_category(CODE_CATEGORY.key()))
            .map_or(f64::INFINITY, |(view, row)| {
                miles(&curve(row), Stress::of_si(2.0 * view.amplitude.si), road)
            });
        let far = hole_miles.min(bolt_miles);
        Life {
            likely: order(far).message(),
            low: order(far / LIFE_BAND).message(),
            high: order(far * LIFE_BAND).message(),
            ends_at: if bolt_miles < hole_miles {
                Detail::Bolt
            } else {
                self.here
            },
        }
    }
}

/// What there is to say: how far it goes or why nobody knows, then what that rests on.
fn said(s: &Scenario, rim: &Rim, life: Option<Life>) -> Vec<Said> {
    let plain = |sentence| Said::new(sentence, ());
    let first = match (rim.range, life) {
        (Err(unknown), _) => plain(unknown),
        (Ok(_), Some(life)) => Said {
            code: life.likely,
            amounts: Vec::new(),
        },
        (Ok(_), None) if seat::clamp_unknown(s).is_some() => plain(say::FatigueClampUnknown),
        (Ok(_), None) => plain(say::FatigueNoLife),
    };
    let mut said = vec![
        first,
        plain(say::FatigueRoadAssumed),
        plain(say::FatigueNominalOnly),
    ];
    if rim.family == Family::Aluminium {
        said.push(plain(say::FatigueAluminiumByPractice));
    }
    said
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::evaluate::evaluate;
    use crate::evaluate::fatigue;
    use crate::report::Message;
    use crate::report::{CheckId, Verdict};
    use crate::scenario::Input;

    fn joint(change: impl FnOnce(&mut Input)) -> Scenario {
        let mut input = Input::default();
        change(&mut input);
        Scenario::new(&input).unwrap()
    }

    /// Steel tongue with a sleeve, bolted from the top: grips.
    fn gripping(change: impl FnOnce(&mut Input)) -> Scenario {
        joint(|i| {
            i.tube_material = "a500-b".into();
            i.support = "solid".into();
            i.mount = "from-top".into();
            i.bolts_along = 3.0;
            i.spacing_along_mm = 120.0;
            i.bolt_rows = 2.0;
            i.tube_width_mm = 101.6;
            i.tube_depth_mm = 101.6;
            i.trailer_mass_kg = 500.0;
            i.faying_friction = Some(0.3);
            change(i);
        })
    }

    #[test]
    fn a_joint_that_slips_gets_no_life() {
        let report = evaluate(&joint(|_| {}));
        let slip = report.check(CheckId::Slip).unwrap();
        assert_eq!(slip.verdict, Verdict::DoesNotHold);
        let fatigue = report.fatigue;
        assert_eq!(fatigue.life, None);
        assert_eq!(fatigue.said[0].code, Message::FatigueNoLife);
        assert!(
            fatigue
                .hole
                .iter()
                .any(|h| h.applies && h.detail == Detail::OpenHole)
        );
    }

    #[test]
    fn a_gripping_joint_gets_an_order_of_magnitude() {
        let report = evaluate(&gripping(|_| {}));
        let fatigue = &report.fatigue;
        let life = fatigue.life.expect("grips");
        assert!(life.likely.key().starts_with("life-"));
        let check = report.check(CheckId::BoltFatigue).unwrap();
        assert!(check.utilisation.is_some());
        assert_eq!(fatigue.bolt.len(), 3);
        // Heavier trailers do not go farther.
        let rank = |s: &Scenario| {
            let order = [
                Message::LifeBelowAHundredMiles,
                Message::LifeHundredsOfMiles,
                Message::LifeThousandsOfMiles,
                Message::LifeTensOfThousandsOfMiles,
                Message::LifeHundredsOfThousandsOfMiles,
                Message::LifeAMillionMilesOrMore,
            ];
            let life = evaluate(s).fatigue.life?;
            order.iter().position(|o| *o == life.likely)
        };
        let mut ranks = Vec::new();
        for mass in [100.0, 200.0, 400.0, 800.0, 1200.0, 1600.0] {
            ranks.extend(rank(&gripping(|i| {
                i.tube_material = "6061-t6".into();
                i.tube_depth_mm = 40.0;
                i.trailer_mass_kg = mass;
                i.faying_friction = Some(0.8);
            })));
        }
        assert!(ranks.len() >= 4, "{ranks:?}");
        assert!(ranks.windows(2).all(|w| w[0] >= w[1]), "{ranks:?}");
        assert!(ranks.first() > ranks.last(), "{ranks:?}");
    }

    #[test]
    fn a_rougher_road_ends_sooner() {
        let s = gripping(|i| {
            i.tube_material = "6061-t6".into();
            i.faying_friction = Some(0.8);
            i.trailer_mass_kg = 900.0;
            i.tube_depth_mm = 40.0;
        });
        let as_assumed = fatigue(&s, &road(&s));
        assert_eq!(as_assumed, evaluate(&s).fatigue);
        let mut rough = road(&s);
        for block in &mut rough.blocks {
            block.per_mile *= 1e4;
        }
        let sooner = fatigue(&s, &rough);
        assert!(sooner.life.is_some());
        assert_ne!(sooner.life, as_assumed.life);
        assert!(sooner.bolt[0].used_on_the_road > 10.0 * as_assumed.bolt[0].used_on_the_road);
        // The same road typed in.
        let typed = Scenario::new(&Input {
            road_full_per_mile: 100.0,
            road_hard_per_mile: 1000.0,
            road_middle_per_mile: 10_000.0,
            road_light_per_mile: 10_000.0,
            ..s.input.clone()
        })
        .unwrap();
        let report = evaluate(&typed);
        assert_eq!(report.fatigue, fatigue(&s, &road(&typed)));
        // The check of the bolt takes the same road, where the full pull alone would be too much.
        let demand = |mass: f64, rougher: f64| {
            let road = gripping(|i| {
                i.tube_material = "6061-t6".into();
                i.fitting_material = "6061-t6".into();
                i.temperature_swing_k = 0.0;
                i.faying_friction = Some(0.8);
                i.braking_g = 0.0;
                i.trailer_mass_kg = mass;
                i.road_middle_per_mile *= rougher;
            });
            let report = evaluate(&road);
            let found = report.check(CheckId::BoltFatigue);
            found.unwrap().demand.si
        };
        let follows = |mass: &f64| demand(*mass, 10.0) > 1.1 * demand(*mass, 1.0);
        assert!(!follows(&100.0));
        assert!([900.0, 1400.0, 2500.0, 3500.0].iter().any(follows));
    }

    /// The steel code gives no relief by the joint's stiffness to a grip with aluminium in it.
    #[test]
    fn aluminium_gets_no_relief_in_the_code_view() {
        let view = |s: &Scenario| {
            let fatigue = evaluate(s).fatigue;
            *fatigue
                .bolt
                .iter()
                .find(|v| v.view == CODE_CATEGORY)
                .unwrap()
        };
        assert_eq!(
            view(&gripping(|i| i.tube_material = "6061-t6".into())).load_factor,
            1.0
        );
        assert!(view(&gripping(|_| {})).load_factor < 0.5);
    }

    #[test]
    fn the_verdict_follows_from_the_view_that_asks_most() {
        let check = |s: &Scenario| {
            let report = evaluate(s);
            let found = report.check(CheckId::BoltFatigue).cloned();
            found.map(|c| (c.verdict, c.reason.code))
        };
        // Nothing pulls along the bolts without a force from the side.
        assert_eq!(check(&joint(|i| i.side_g = 0.0)), None);
        let light = gripping(|i| i.trailer_mass_kg = 100.0);
        assert_eq!(
            check(&light),
            Some((Verdict::Holds, Message::BoltFatigueBelow))
        );
        let al = |mass| {
            gripping(move |i| {
                i.tube_material = "6061-t6".into();
                i.fitting_material = "6061-t6".into();
                i.temperature_swing_k = 0.0;
                i.faying_friction = Some(0.8);
                i.braking_g = 0.0;
                i.trailer_mass_kg = mass;
            })
        };
        let codes: Vec<_> = [100.0, 900.0, 1400.0, 2500.0, 3500.0]
            .map(|m| check(&al(m)).unwrap())
            .to_vec();
        assert!(
            codes.contains(&(Verdict::Close, Message::BoltFatigueRoad)),
            "{codes:?}"
        );
        let lost = gripping(|i| {
            i.faying_friction = Some(0.02);
            i.trailer_mass_kg = 2000.0;
        });
        assert_eq!(
            check(&lost),
            Some((Verdict::NotChecked, Message::BoltFatigueClampLost))
        );
    }
}
