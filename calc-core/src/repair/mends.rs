//! What the damage that was found asks of a repair: the numbers did not see it coming, so the same again is no repair.

use super::changed;
use crate::evaluate::loads::grip_of_all;
use crate::evaluate::{Analysis, checks_of, may_be_stretched};
use crate::report::{Check, CheckId, Verdict};
use crate::scenario::{FOUND, Field, Scenario};

/// Most that a repair may use of its slip resistance, as a share of what the joint used that has slid. An own assumption:
/// a fifth less, as the scatter of a wrench and of the slip coefficient is that large at the least.
const SLIDES_LESS: f64 = 0.8;

/// Two shares used that are alike but for rounding.
const SAME: f64 = 1.0 + 1e-9;

/// In a set of damage, beside what was found: bolts that are stretched.
const STRETCHED: u8 = 1 << 7;

/// The damage that was found, as a set, and what the numbers say of the bolts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Damage(u8);

impl Damage {
    pub(super) fn of(s: &Scenario) -> Self {
        let places = FOUND.iter().enumerate();
        let found = |field: &Field| s.input.found().any(|found| found == *field);
        Self(
            places
                .filter(|(_, field)| found(field))
                .fold(0, |set, (place, _)| set | 1 << place),
        )
    }

    /// The same with bolts that the torque which was set may have stretched for good.
    pub(super) fn with_stretched(self, sound: &Scenario) -> Self {
        let stretched = if may_be_stretched(sound) {
            STRETCHED
        } else {
            0
        };
        Self(self.0 | stretched)
    }

    /// Whether bolts may have been stretched for good.
    pub(super) const fn stretched(self) -> bool {
        self.0 & STRETCHED != 0
    }

    /// Whether no bolt that was there may go back in: its thread, its length or its shank is not what it was.
    pub(super) fn spoils_bolts(self) -> bool {
        self.stretched() || self.has(Field::FoundSpin) || self.has(Field::FoundOval)
    }

    pub(super) fn has(self, field: Field) -> bool {
        let place = FOUND.iter().position(|other| *other == field);
        place.is_some_and(|place| self.0 & 1 << place != 0)
    }

    /// The parts have slid at the clamp that they had: trails run out of it, or worse, a hole is oval.
    pub(super) fn has_slid(self) -> bool {
        self.has(Field::FoundTrails) || self.has(Field::FoundOval)
    }
}

/// What has to be under the nuts afterwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Under {
    /// What there is.
    Anything,
    /// Bolts of another size or grade, or another part under them.
    OtherBolts,
    /// A face has given way: another part.
    OtherSeat,
}

/// What a repair has to change besides the damage itself.
#[derive(Clone, Copy, Debug)]
pub(super) struct Mends {
    under: Under,
    /// Most that may be used of the slip resistance, see [`slides`].
    pub(super) slides_below: Option<f64>,
    /// Most that may be used of what the clamp is pressed into, see [`seat_used`]: a seat that has given way is not
    /// replaced by a weaker one.
    seat_below: Option<f64>,
    /// All bolts are new anyhow: that is a change.
    renewed: bool,
}

impl Mends {
    /// Of a joint with its damage, and the same as it was drilled.
    pub(super) fn of(damage: Damage, sound: &Scenario) -> Self {
        let spun = damage.has(Field::FoundSpin);
        let under = if damage.has(Field::FoundHollow) {
            Under::OtherSeat
        } else if !spun || (has_firm_seat(sound) && takes_its_torque(sound)) {
            // On a seat that takes the torque it was the thread that gave way.
            Under::Anything
        } else if sound.support.is_solid() {
            Under::OtherBolts
        } else {
            Under::OtherSeat
        };
        Self {
            under,
            // Nobody knows how good the joint was at which it slid: the best that it may be.
            slides_below: damage.has_slid().then(|| {
                let [_, least] = slides_between(sound);
                least * SLIDES_LESS
            }),
            seat_below: damage.has(Field::FoundHollow).then(|| {
                let used =
                    |s: &Scenario| seat_used(&checks_of(&Analysis::without_working(s), |_| false));
                let members = sound.members().filter_map(|member| used(&member));
                members.chain(used(sound)).fold(f64::INFINITY, f64::min)
            }),
            renewed: spun,
        }
    }

    /// Whether what the clamp is pressed into has no less in hand than what has given way.
    pub(super) fn seats(self, checks: &[Check]) -> bool {
        self.seat_below
            .is_none_or(|most| seat_used(checks).is_none_or(|used| used <= most * SAME))
    }

    /// Whether the same joint with nothing but new bolts is to be tried too.
    pub(super) fn tries_the_same(self) -> bool {
        self.renewed && self.under == Under::Anything
    }

    /// Whether a joint grips as much better as it has to.
    pub(super) fn grips(self, slides: f64) -> bool {
        self.slides_below
            .is_none_or(|most| slides.is_finite() && slides <= most)
    }

    /// The same of all that it may be.
    pub(super) fn surely_grips(self, s: &Scenario) -> bool {
        self.slides_below.is_none() || self.grips(slides_between(s)[0])
    }

    /// Whether a candidate has what has to be under its nuts, or else something of its own.
    pub(super) fn by(self, before: &Scenario, after: &Scenario, puts_in: bool) -> bool {
        let of_bolts = [Field::Bolt, Field::Grade];
        let counts = |field: &Field| {
            *field != Field::SleeveShort
                && (field.applies(&after.input) || field.applies(&before.input))
        };
        let changes = || {
            let all = changed(&after.input, &before.input);
            all.into_iter().filter(counts)
        };
        match self.under {
            Under::Anything => puts_in || self.renewed || changes().next().is_some(),
            Under::OtherBolts => puts_in || changes().any(|field| of_bolts.contains(&field)),
            Under::OtherSeat => puts_in,
        }
    }
}

/// Share that a joint uses of its slip resistance, whether the check can be judged or not: where the clamp is not known,
/// that of the bolt alone stands, which the joint had at most. Where nothing counts on friction, as in a chain's bracket,
/// it is that of a load of 1 N along the faces. Without any grip it is infinite.
pub(super) fn slides(analysis: &Analysis<'_>) -> f64 {
    let used = analysis.service().map(|service| {
        let demand = service.worst_share().in_plane();
        service.factor * demand / service.resistance
    });
    used.filter(|used| *used > 0.0)
        .unwrap_or_else(|| 1.0 / grip_of_all(analysis.s, &analysis.residual))
}

/// The same, worst and best of all that a joint may be.
fn slides_between(s: &Scenario) -> [f64; 2] {
    let used = |member: &Scenario| slides(&Analysis::without_working(member));
    let members = s.members().map(|member| used(&member));
    let own = used(s);
    members.fold([own, own], |[most, least], used| {
        [most.max(used), least.min(used)]
    })
}

/// Share that the clamp uses of what it is pressed into; `None` where that is not judged.
fn seat_used(checks: &[Check]) -> Option<f64> {
    let mut clamp = checks.iter().filter(|check| check.id == CheckId::Clamp);
    clamp.find_map(|check| check.utilisation)
}

/// Whether nothing hollow gives way under the nut.
fn has_firm_seat(s: &Scenario) -> bool {
    let filled = s.support.has_sleeve() || s.support.has_block() || s.support.is_solid();
    filled || s.member.is_open()
}

/// Whether by the numbers the seat takes the torque that was set.
fn takes_its_torque(s: &Scenario) -> bool {
    let checks = checks_of(&Analysis::without_working(s), |_| false);
    let mut clamp = checks.iter().filter(|check| check.id == CheckId::Clamp);
    clamp.all(|check| check.verdict == Verdict::Holds)
}
