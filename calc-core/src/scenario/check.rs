//! The way from the plain input to the checked scenario.

use super::checked::{Bolting, Scenario, Sleeve, Spreader, Tube, Washer};
use super::choices::{
    BoltFinish, Exposure, FittingSides, FreeKind, JointKind, MemberKind, Mount, Seen, SupportKind,
    TowSprings, TubeEnd, WallBasis, YesNo, options,
};
use super::error::InputError;
use super::fields::{Field, Input, Kind};
use super::fitting::fitting;
use super::found::FOUND;
use super::loads::{ChainLoad, FreeLoad, HangerLoad, Loads, Road};
use super::member;
use super::tightening::tightening;
use super::unknown::{self, Members};
use crate::catalog::{self, Family, HoleFit, LoadKind, Material, Thread, WasherSeries};
use crate::mechanics::fatigue::Block;
use crate::quantity::{Acceleration, Angle, InUnits, Length, Stress, kilogram, mm, newton};

/// Collects every refusal, so that a reader sees all of them at once.
pub(super) struct Reader<'a> {
    pub(super) input: &'a Input,
    errors: Vec<InputError>,
    derived: Vec<(Field, f64)>,
}

impl Reader<'_> {
    /// A given number in SI, or `None`; refuses what is not finite or out of range.
    pub(super) fn given(&mut self, field: Field) -> Option<f64> {
        let Kind::Number { unit, min, max, .. } = field.kind() else {
            return None;
        };
        let got = self.input.number(field)?;
        if !got.is_finite() {
            self.errors.push(InputError::NotFinite { field });
            return None;
        }
        if got < min || got > max {
            self.errors.push(InputError::OutOfRange {
                field,
                got,
                min,
                max,
            });
            return None;
        }
        Some(unit.to_si(got))
    }

    /// A number that is always there; the lower limit stands in for a refused one.
    pub(super) fn number(&mut self, field: Field) -> f64 {
        self.given(field).unwrap_or_else(|| {
            field
                .unit()
                .to_si(field.range().map_or(1.0, |(min, _)| min))
        })
    }

    pub(super) fn length(&mut self, field: Field) -> Length {
        Length::of_si(self.number(field))
    }

    /// A given number, or the derived one, which is noted. Both in SI.
    pub(super) fn or_derived(&mut self, field: Field, derive: f64) -> f64 {
        if self.input.number(field).is_some() {
            return self.given(field).unwrap_or(derive);
        }
        self.derived.push((field, field.unit().from_si(derive)));
        derive
    }

    fn count(&mut self, field: Field) -> usize {
        let value = self.number(field);
        if value.fract() != 0.0 {
            self.errors.push(InputError::Contradiction {
                field,
                why: "must be a whole number",
            });
        }
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "the range check keeps it between 1 and 6"
        )]
        let whole = value as usize;
        whole.max(1)
    }

    /// The row with a chosen name; refuses unknown names and goes on with the default.
    pub(super) fn row<T>(&mut self, field: Field, find: impl Fn(&str) -> Option<T>) -> Option<T> {
        let name = self.input.choice(field)?;
        let found = find(name);
        if found.is_none() {
            self.errors.push(InputError::UnknownChoice {
                field,
                got: String::from(name),
                allowed: options(field),
            });
            let Kind::Choice { default } = field.kind() else {
                return None;
            };
            return find(default);
        }
        found
    }

    /// Whether a question is answered with yes.
    pub(super) fn yes(&mut self, field: Field) -> Option<bool> {
        Some(self.row(field, YesNo::by_name)? == YesNo::Yes)
    }

    pub(super) fn refuse_if(&mut self, wrong: bool, field: Field, why: &'static str) {
        if wrong {
            self.errors.push(InputError::Contradiction { field, why });
        }
    }
}

impl Scenario {
    /// Checks an input.
    ///
    /// # Errors
    /// Every refused field: not finite, out of range, unknown name, contradiction, unknown version.
    pub fn new(input: &Input) -> Result<Self, Vec<InputError>> {
        if input.version != super::VERSION {
            return Err(vec![InputError::Version { got: input.version }]);
        }
        let not_known = unknown::fields(input);
        if not_known.is_empty() {
            return settled(input);
        }
        // Of what it may be, what the rest of the input has room for.
        let mut refused = Err(Vec::new());
        for member in Members::new(input, &not_known) {
            match settled_from(&member, input, &not_known) {
                Ok(scenario) => {
                    return Ok(Self {
                        input: input.clone(),
                        not_known,
                        ..scenario
                    });
                }
                Err(errors) if refused.as_ref().is_err_and(Vec::is_empty) => refused = Err(errors),
                Err(_) => {}
            }
        }
        refused
    }

    /// The joints that it may be, where something is not known, at most [`MOST`](unknown::MOST) of them; none where all
    /// is known.
    pub fn members(&self) -> impl Iterator<Item = Self> {
        let members =
            (!self.not_known.is_empty()).then(|| Members::new(&self.input, &self.not_known));
        members
            .into_iter()
            .flatten()
            .filter_map(|input| settled_from(&input, &self.input, &self.not_known).ok())
    }

    /// Whether something that is not known may be what the joint has no room for.
    pub(crate) fn may_not_fit(&self) -> bool {
        !self.not_known.is_empty() && Members::new(&self.input, &self.not_known).may_not_fit()
    }
}

/// A joint of which all is known.
pub(super) fn settled(input: &Input) -> Result<Scenario, Vec<InputError>> {
    let mut r = Reader {
        input,
        errors: Vec::new(),
        derived: Vec::new(),
    };
    match build(&mut r) {
        Some(scenario) if r.errors.is_empty() => Ok(scenario),
        _ => Err(r.errors),
    }
}

/// One of the joints that a joint may be. Nobody can tighten a bolt by a grade that he does not know: all get the clamp
/// of the weakest.
fn settled_from(
    member: &Input,
    input: &Input,
    not_known: &[Field],
) -> Result<Scenario, Vec<InputError>> {
    let mut scenario = settled(member)?;
    if not_known.contains(&Field::Grade) {
        let weakest = unknown::weakest_proof(&scenario, input);
        scenario.tightening.preload_share *= (weakest / scenario.bolting.proof_strength()).value;
    }
    Ok(scenario)
}

fn build(r: &mut Reader<'_>) -> Option<Scenario> {
    let kind = r.row(Field::Member, MemberKind::by_name)?;
    let support = member::support(r, kind)?;
    let tube = tube(r, kind, support)?;
    let bolting = bolting(r, kind)?;
    let member = member::member(r, kind, &tube, &bolting)?;
    let spreader = Spreader {
        thickness: r.length(Field::SpreaderThickness),
        length: r.length(Field::SpreaderLength),
        width: Length::of_si(r.or_derived(Field::SpreaderWidth, {
            let clear = member.room_off_fillet(tube.width, tube.wall);
            // Where the fillets leave nothing, it lies on them, and the check of its place says so.
            clear.max(member.room(tube.width) * 0.25).si()
        })),
        material: r.row(Field::SpreaderMaterial, catalog::material)?,
    };
    // A plate on a flange lies under the nut, on the other side than the fitting.
    let between = if support.has_plates() && !member.is_open() {
        spreader.thickness
    } else {
        mm(0.0)
    };
    let fitting = fitting(r, &tube, &bolting, between)?;
    let (sleeve, sleeve_stock) = sleeve(r, support, &tube, &bolting)?;
    if !member.is_open() {
        let stands_inside = support.has_sleeve();
        let outer = stands_inside.then_some(sleeve.outer);
        member::check_rows(r, &tube, &bolting, outer);
    }
    let sleeve_short = r.length(Field::SleeveShort);
    let insert_material = r.row(Field::InsertMaterial, catalog::material)?;
    let third = match support {
        SupportKind::Spreader if between.si() > 0.0 => spreader.material,
        SupportKind::ThroughSleeve => sleeve.material,
        _ => fitting.material,
    };
    let metals = [tube.material, fitting.material, third].map(catalog::Material::family);
    let wall = if support.is_solid() {
        tube.depth
    } else {
        tube.wall
    };
    let plate = if support.has_plates() {
        spreader.thickness
    } else {
        Length::default()
    };
    let joint = wall + fitting.thickness + plate;
    let tightening = tightening(r, &bolting, metals, joint)?;
    let loads = loads(r)?;
    let mut scenario = Scenario {
        input: r.input.clone(),
        tube,
        member,
        bolting,
        fitting,
        support,
        spreader,
        sleeve,
        sleeve_stock,
        sleeve_short,
        insert_material,
        tightening,
        loads,
        exposure: r.row(Field::Exposure, Exposure::by_name)?,
        derived: std::mem::take(&mut r.derived),
        not_known: Vec::new(),
    };
    let b = &scenario.bolting;
    if let Some(strength) = b.grade.strength(b.thread, scenario.bolt_length()) {
        scenario.bolting.strength = strength;
    }
    Some(scenario)
}

fn road(r: &mut Reader<'_>) -> Road {
    let mut block = |share: Option<Field>, per_mile| Block {
        share: share.map_or(1.0, |field| r.number(field)),
        per_mile: r.number(per_mile),
    };
    Road {
        blocks: [
            block(None, Field::RoadFull),
            block(Some(Field::RoadHardShare), Field::RoadHard),
            block(Some(Field::RoadMiddleShare), Field::RoadMiddle),
            block(Some(Field::RoadLightShare), Field::RoadLight),
        ],
        miles: r.number(Field::RoadMiles),
    }
}

fn loads(r: &mut Reader<'_>) -> Option<Loads> {
    let lengths = r.given(Field::BedLength).zip(r.given(Field::BallToAxle));
    Some(Loads {
        bed_over_arm: lengths.map_or(1.0, |(bed, arm)| bed / arm),
        tow_on_air: r.row(Field::TowSprings, TowSprings::by_name)? == TowSprings::Air,
        road: road(r),
        mass: kilogram(r.number(Field::TrailerMass)),
        tongue_share: r.number(Field::TongueShare),
        vertical_factor: r.number(Field::VerticalFactor),
        braking: acceleration(r.number(Field::Braking)),
        side: acceleration(r.number(Field::Side)),
        ball_ahead: r.length(Field::BallAhead),
        ball_below: r.length(Field::BallBelow),
        offset: r.given(Field::LoadOffset).map(Length::of_si),
        temperature_swing: r.number(Field::TemperatureSwing),
        joint: r.row(Field::Joint, JointKind::by_name)?,
        rule: r.row(Field::LoadRule, catalog::load_rule)?,
        towing: kilogram(r.number(Field::TowingMass)),
        hanger: HangerLoad {
            axles: r.count(Field::Axles),
            tyre_radius: r.length(Field::TyreRadius),
            height: r.length(Field::HangerHeight),
            offset: r.length(Field::HangerOffset),
            share: r.number(Field::HangerShare),
            spring_length: r.length(Field::SpringLength),
        },
        chain: ChainLoad {
            angle: Angle::new::<uom::si::angle::radian>(r.number(Field::ChainAngle)),
            share: r.number(Field::ChainShare),
        },
        free: FreeLoad {
            along: newton(r.number(Field::FreeAlong)),
            up: newton(r.number(Field::FreeUp)),
            side: newton(r.number(Field::FreeSide)),
            about_along: r.number(Field::FreeAboutAlong),
            about_side: r.number(Field::FreeAboutSide),
            about_up: r.number(Field::FreeAboutUp),
            kind: match r.row(Field::FreeKind, FreeKind::by_name)? {
                FreeKind::Service => LoadKind::Service,
                FreeKind::Proof => LoadKind::Proof,
                FreeKind::Ultimate => LoadKind::Ultimate,
            },
        },
    })
}

fn acceleration(si: f64) -> Acceleration {
    Acceleration::new::<uom::si::acceleration::meter_per_second_squared>(si)
}

/// How far above what a metal must have a strength of the reader's own is believed. Mill steel runs to about 1.4 times
/// its least yield strength; more is another metal, to be chosen as that. Own assumption.
const BELIEVED: f64 = 1.5;

/// By how much the stiffness of a metal may differ from its row: alloys of one metal differ by some percent. What differs by
/// more is another metal, to be chosen as that. Own assumption.
const STIFFER: f64 = 0.05;

/// Least outside radius of a corner, m: steel tube is bent, and no bend has an outside radius under its thickness. Extruded
/// aluminium may be square.
fn least_corner(material: &Material, wall: f64) -> f64 {
    if material.family() == Family::Aluminium {
        0.0
    } else {
        wall
    }
}

fn tube(r: &mut Reader<'_>, kind: MemberKind, support: SupportKind) -> Option<Tube> {
    let material = r.row(Field::TubeMaterial, catalog::material)?;
    let basis = r.row(Field::WallBasis, WallBasis::by_name)?;
    let weld_near = r.yes(Field::WeldNear)?;
    for field in FOUND {
        r.row(field, Seen::by_name)?;
    }
    let open_end = r.row(Field::TubeEnd, TubeEnd::by_name)? == TubeEnd::Open;
    let (width, given_depth) = (r.length(Field::TubeWidth), r.length(Field::TubeDepth));
    let depth = if kind == MemberKind::RoundTube {
        width
    } else {
        given_depth
    };
    let wall = r.length(Field::TubeWall);
    let hollow = !support.is_solid();
    member::check_walls(r, kind, hollow, (width, depth, wall));
    // Only a rectangular tube has corners that count.
    let corner = if hollow && matches!(kind, MemberKind::RectangularTube | MemberKind::SolidBar) {
        let typed = r.or_derived(
            Field::CornerRadius,
            material.corner_radius_factor() * wall.si(),
        );
        typed.max(least_corner(material, wall.si()))
    } else {
        r.given(Field::CornerRadius);
        0.0
    };
    r.refuse_if(
        hollow && 2.2 * corner > width.si().min(depth.si()),
        Field::CornerRadius,
        "the corner radius leaves no flat face: give the outside corner radius",
    );
    let (least, likely) = (
        material.least_beside(weld_near).yield_strength(),
        material.likely_beside(weld_near).yield_strength(),
    );
    let own_yield = r.given(Field::TubeYield);
    let softened = material.welded().filter(|_| weld_near);
    // What the reader knows of the tube is known of the tube before it was welded.
    let believed =
        |own: f64| Stress::of_si(own.min(BELIEVED * material.least().yield_strength().si()));
    let own = |from_row: Stress| match own_yield.map(believed) {
        Some(own) if softened.is_some() => own.min(from_row),
        Some(own) => own,
        None => from_row,
    };
    let row_ultimate = softened.map_or(material.least().ultimate_strength(), |welded| {
        welded.least.ultimate_strength()
    });
    // A tube that the reader knows to yield earlier than its row is not credited with the row's tensile
    // strength.
    let weaker = own_yield.map_or(1.0, |pa| (pa / least.si()).min(1.0));
    let own_ultimate = r.input.tube_ultimate_mpa.is_some();
    let weaker = match (own_yield, softened) {
        // Weaker than its row before welding, and no stronger afterwards.
        (Some(pa), Some(_)) => (pa / material.least().yield_strength().si()).min(weaker),
        _ => weaker,
    };
    let ultimate = r.or_derived(Field::TubeUltimate, row_ultimate.si() * weaker);
    r.refuse_if(
        own_ultimate && ultimate < own_yield.unwrap_or(least.si()),
        Field::TubeUltimate,
        "lower than the yield strength: give the tensile strength",
    );
    r.refuse_if(
        !own_ultimate && own_yield.is_some_and(|pa| material.least().ultimate_strength().si() < pa),
        Field::TubeYield,
        "higher than the tensile strength of this metal: give the yield strength, or the tensile strength too",
    );
    let ultimate = ultimate.min(BELIEVED * material.least().ultimate_strength().si());
    let ultimate = softened.map_or(ultimate, |_| ultimate.min(row_ultimate.si()));
    let modulus = material.modulus().si();
    let modulus = r
        .or_derived(Field::TubeModulus, modulus)
        .clamp(modulus * (1.0 - STIFFER), modulus * (1.0 + STIFFER));
    let poisson = r.or_derived(Field::TubePoisson, material.poisson());
    if own_yield.is_none() {
        r.derived.push((Field::TubeYield, least.si() * 1e-6));
    }
    let design_factor = if basis != WallBasis::Measured {
        material.design_wall_factor()
    } else {
        1.0
    };
    Some(Tube {
        width,
        depth,
        wall,
        wall_basis: basis,
        design_wall: wall * design_factor,
        corner_radius: Length::of_si(corner),
        material,
        modulus: Stress::of_si(modulus),
        poisson,
        yield_least: own(least),
        yield_likely: own(likely),
        ultimate_least: Stress::of_si(ultimate),
        weld_near,
        end_distance: r.length(Field::EndDistance),
        open_end,
    })
}

fn bolting(r: &mut Reader<'_>, kind: MemberKind) -> Option<Bolting> {
    let mount = r.row(Field::Mount, Mount::by_name)?;
    let on_both = r.row(Field::FittingSides, FittingSides::by_name)? == FittingSides::Both;
    let single_ply = matches!(kind, MemberKind::Channel | MemberKind::Angle);
    let thread = r.row(Field::Bolt, catalog::thread)?;
    let grade = r.row(Field::Grade, catalog::bolt_grade)?;
    let series = r.row(Field::Washer, WasherSeries::from_id)?;
    let finish = r.row(Field::BoltFinish, BoltFinish::by_name)?;
    // How long the bolt is shows when all parts are known.
    let Some(strength) = grade.strength(thread, Length::default()) else {
        r.refuse_if(
            true,
            Field::Grade,
            "this grade is not made in this bolt size: choose another grade or size",
        );
        return None;
    };
    let washer = washer(r, thread, series)?;
    let clearance = catalog::clearance_hole(thread, HoleFit::Normal)
        .map_or_else(|| thread.major().si() * 1.1, |hole| hole.diameter.si());
    let hole = Length::of_si(r.or_derived(Field::Hole, clearance));
    r.refuse_if(
        hole < thread.major(),
        Field::Hole,
        "the bolt does not pass this hole: give the hole's diameter, at least the bolt's",
    );
    let worn = r.input.choice(Field::FoundOval) == Some(Seen::Yes.name());
    r.refuse_if(
        washer.outer < hole * 1.1,
        if worn { Field::Hole } else { Field::WasherOuter },
        if worn {
            "worn this far, the hole is too large for the washer: give a wider washer, have a sleeve welded in over the hole, or replace that length of the member"
        } else {
            "the washer falls into the hole: give the washer's outside diameter"
        },
    );
    Some(Bolting {
        mount,
        single_ply,
        two_cheeks: mount == Mount::ThroughSides && !single_ply && on_both,
        thread,
        grade,
        strength,
        along: r.count(Field::BoltsAlong),
        rows: r.count(Field::BoltRows),
        spacing_along: r.length(Field::SpacingAlong),
        spacing_across: r.length(Field::SpacingAcross),
        hole,
        washer,
        finish: if grade.stainless() {
            BoltFinish::Stainless
        } else {
            finish
        },
    })
}

fn washer(r: &mut Reader<'_>, thread: &'static Thread, series: WasherSeries) -> Option<Washer> {
    let listed = catalog::washer(thread, series);
    let own_outer = r.given(Field::WasherOuter).map(Length::of_si);
    let own_thickness = r.given(Field::WasherThickness).map(Length::of_si);
    if listed.is_none() && (own_outer.is_none() || own_thickness.is_none()) {
        r.refuse_if(
            true,
            Field::Washer,
            "no washer of this size is in the list: give its outside diameter and thickness",
        );
        return None;
    }
    let thickness = own_thickness.or_else(|| listed.map(catalog::Washer::thickness_nominal))?;
    let outer = own_outer.or_else(|| listed.map(catalog::Washer::outer))?;
    if own_outer.is_none() {
        r.derived.push((Field::WasherOuter, outer.si() * 1e3));
    }
    if own_thickness.is_none() {
        r.derived
            .push((Field::WasherThickness, thickness.si() * 1e3));
    }
    Some(Washer {
        outer,
        bore: listed.map_or_else(|| thread.major() * 1.06, catalog::Washer::inner),
        thickness,
        // A thickness that the reader measured has no tolerance to allow for.
        thickness_min: own_thickness.or_else(|| listed.map(catalog::Washer::thickness_min))?,
    })
}

fn sleeve(
    r: &mut Reader<'_>,
    support: SupportKind,
    tube: &Tube,
    bolting: &Bolting,
) -> Option<(Sleeve, &'static catalog::Sleeve)> {
    let row = r.row(Field::Sleeve, catalog::sleeve)?;
    let material = r.row(Field::SleeveMaterial, catalog::material)?;
    let welded = r.yes(Field::SleeveWelded)?;
    r.refuse_if(
        welded && support.ends_inside(),
        Field::SleeveWelded,
        "a sleeve that stands between the walls cannot be welded to them: say no, or choose a sleeve through both walls",
    );
    let welded = welded && support.passes_walls();
    let outer = Length::of_si(r.or_derived(Field::SleeveOuter, row.outer_diameter().si()));
    let wall = Length::of_si(r.or_derived(Field::SleeveWall, row.wall().si()));
    let inner = outer - wall * 2.0;
    let material = material.as_thick_as(wall);
    let used = support.has_sleeve();
    if used {
        r.refuse_if(
            inner < bolting.thread.major(),
            Field::Sleeve,
            "the bolt does not pass this sleeve: choose a wider sleeve or a smaller bolt",
        );
        let room = tube.width - tube.wall * 2.0;
        r.refuse_if(
            outer > room,
            Field::Sleeve,
            "this sleeve does not fit between the walls of the tube: choose a smaller one",
        );
        let mixed = (material.family() == Family::Aluminium)
            != (tube.material.family() == Family::Aluminium);
        r.refuse_if(
            welded && mixed,
            Field::SleeveWelded,
            "aluminum and steel cannot be welded to each other: take a sleeve of the tube's metal, or leave it unwelded",
        );
    }
    let sleeve = Sleeve {
        outer,
        inner,
        material,
        welded,
    };
    Some((sleeve, row))
}
