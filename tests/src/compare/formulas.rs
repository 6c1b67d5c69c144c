//! Formulas that no other comparison reaches.

use calc_core::catalog::{self, galvanic_metal};
use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::mechanics::bearing;
use calc_core::mechanics::net_section::{TubeSection, effective_hole, omegas};
use calc_core::mechanics::section::{HoledTube, hole_stress};
use calc_core::mechanics::{
    corrosion, en_bolt, interaction, pin, shear, sleeve, slip, solve, stiffness, thread,
    tightening as tight, washer,
};
use calc_core::quantity::{
    Force, InUnits, Length, inch, ksi, mm, mm2, mpa, newton, newton_metre, pound_force,
    pound_force_foot,
};
use calc_core::{Input, Scenario};

use crate::check::Check;
use crate::reference::{Row, rows};

fn of_topic(topic: &str) -> Check {
    let mut check = Check::new();
    for file in ["formulas.toml", "formulas_computed.toml"] {
        for row in rows(file) {
            if row.text("topic") == topic {
                let value = match topic {
                    "tightening" => of_tightening(&row),
                    "springs" => of_supports(&row),
                    "slipped" => of_strength(&row),
                    "readings" => of_readings(&row),
                    other => panic!("{}: no topic {other}", row.id),
                };
                check.row(&row, &[("value", value)]);
            }
        }
    }
    check
}

/// Torque, friction, scatter, torsion, dishing washers.
pub(super) fn tightening() -> Check {
    of_topic("tightening")
}

/// Springs, sleeves and slip.
pub(super) fn supports() -> Check {
    of_topic("springs")
}

/// Strength of bolts, plies and holed sections.
pub(super) fn strength() -> Check {
    of_topic("slipped")
}

/// Readings taken back to what happened.
pub(super) fn readings() -> Check {
    of_topic("readings")
}

fn kip(force: Force) -> f64 {
    force.si() / pound_force(1e3).si()
}

fn in_mm(length: Length) -> f64 {
    length.si() * 1e3
}

fn of_tightening(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let named = || catalog::thread(row.text("thread")).unwrap();
    let parts = |face: f64| {
        let t = named();
        let friction = n("friction");
        tight::torque_parts(
            t.pitch(),
            t.pitch_diameter(),
            t.major() * face,
            friction,
            friction,
        )
    };
    match row.text("case") {
        "in-thread" => parts(1.25).in_thread() / inch(1.0).si(),
        "nut-factor" => parts(n("collar_d")).total() / named().major().si(),
        "implied-friction" => {
            let t = named();
            let d = t.major();
            tight::implied_friction(n("k"), d, t.pitch(), t.pitch_diameter(), d * n("collar_d"))
        }
        "scattered" => {
            let (low, high) = tight::scattered(pound_force(n("force_lbf")), n("gamma"));
            let asked = if n("high") > 0.5 { high } else { low };
            asked.si() / pound_force(1.0).si()
        }
        "combined-stress" => {
            let torque = newton_metre(n("torque_nmm") * 1e-3);
            let area = named().stress_area();
            tight::combined_stress(newton(n("clamp_n")), area, torque).si() * 1e-6
        }
        "dishing" => washer::dishing_load(
            mpa(n("fy_mpa")),
            mm(n("t_mm")),
            mm(n("outer_mm")),
            mm(n("bore_mm")),
            mm(n("nut_mm")),
            mm(n("reaction_mm")),
        )
        .si(),
        other => panic!("{}: no case {other}", row.id),
    }
}

fn of_supports(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let mlbf_in = pound_force(1e6).si() / inch(1.0).si();
    match row.text("case") {
        "solid-stack" => {
            let k = stiffness::solid_stack(
                ksi(n("modulus_mpsi") * 1e3),
                inch(n("d_in")),
                inch(n("washer_in")),
                inch(n("grip_in")),
            );
            k.si() / mlbf_in
        }
        "wileman" => {
            let k = stiffness::wileman(
                ksi(n("modulus_mpsi") * 1e3),
                inch(n("d_in")),
                inch(n("grip_in")),
                n("a"),
                n("b"),
            );
            k.si() / mlbf_in
        }
        "slip" => {
            let clamp = pound_force(n("clamp_kip") * 1e3);
            let one = slip::resistance(1.0, n("mu"), clamp, newton(0.0), 0.0);
            kip(one) * n("bolts") / n("omega")
        }
        "load-factor-8-5" => {
            // Its proof load by the catalogue, its preload and share as the example rounds them.
            let t = catalog::thread("unc-5.8").unwrap();
            let proof = catalog::bolt_grade("sae-5")
                .unwrap()
                .strength(t, inch(2.0))
                .unwrap();
            let area = t.tabulated_stress_area().unwrap();
            let proof = kip(thread::load_at(proof.proof.unwrap(), area));
            let felt = n("share") * n("pull_kip");
            if n("safety") > 0.5 {
                proof / (felt + n("clamp_kip"))
            } else {
                (proof - n("clamp_kip")) / felt
            }
        }
        "column" => {
            let (outer, inner) = (mm(30.0), mm(20.0));
            let radius = (30.0_f64.powi(2) + 20.0_f64.powi(2)).sqrt() / 4.0;
            let fy = ksi(n("fy_ksi"));
            let length = mm(n("slenderness") * radius);
            let strength = sleeve::strength(fy, ksi(29_000.0), outer, inner, length);
            strength.si() / sleeve::area(outer, inner).si() / ksi(1.0).si() * 0.90
        }
        "wall-ratio" => sleeve::wall_ratio_limit(ksi(n("fy_ksi")), ksi(29_000.0)),
        "covered-end" => {
            let covered = sleeve::covered_end(
                mm(n("outer_mm")),
                mm(n("inner_mm")),
                mm(n("washer_mm")),
                mm(n("bore_mm")),
            );
            covered.si() * 1e6
        }
        "prism" => {
            let area = mm2(std::f64::consts::FRAC_PI_4 * n("d_mm").powi(2));
            stiffness::prism(mpa(n("modulus_mpa")), area, mm(n("length_mm"))).si() * 1e-3
        }
        "equal-circle" => {
            let t = catalog::thread(row.text("thread")).unwrap();
            in_mm(thread::equivalent_diameter(t.stress_area()))
        }
        "root" => solve::find_root(0.1, 50.0, 1e-10, |x| {
            x / (1.0 + (x / 3.0).powf(1.9)).powf(1.0 / 1.9) - 2.0
        }),
        other => panic!("{}: no case {other}", row.id),
    }
}

fn of_strength(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let (one_inch, tube) = (inch(1.0), (mm(60.0), mm(40.0), mm(3.0)));
    match row.text("case") {
        "firm-ply" => {
            kip(bearing::firm_ply(
                ksi(n("fu_ksi")),
                inch(n("d_in")),
                one_inch,
            )) / 2.0
        }
        "tear-out" => {
            let clear = bearing::clear_to_edge(inch(n("edge_in")), inch(n("hole_in")));
            kip(bearing::tear_out(ksi(n("fu_ksi")), clear, one_inch)) / 2.0
        }
        "bolt-shear" => {
            let d = inch(n("d_in"));
            let area = mm2(std::f64::consts::FRAC_PI_4 * d.si().powi(2) * 1e6);
            kip(shear::bolt(ksi(n("fu_ksi")), area, 1.0, n("threads") > 0.5)) / shear::OMEGA
        }
        "alpha-v" => en_bolt::alpha_v_threads(catalog::bolt_grade(row.text("grade")).unwrap()),
        "mean-width" => in_mm(en_bolt::mean_width(mm(n("flats_mm")))),
        "counted-hole" => effective_hole(inch(n("hole_in"))).si() / one_inch.si(),
        "omega" => {
            let (yields, ruptures) = omegas(n("aluminium") > 0.5);
            if n("rupture") > 0.5 { ruptures } else { yields }
        }
        "galvanic-gap" => {
            let metal = |id| galvanic_metal(id).unwrap();
            let pair = corrosion::couple(metal("aluminium"), metal("steel")).unwrap();
            pair.gap_mv[usize::from(n("large") > 0.5)]
        }
        "european" => interaction::european(n("shear"), n("tension")),
        "pin" => interaction::pin(n("shear"), n("tension")),
        "aisc" => interaction::aisc(n("shear"), n("tension")),
        "pin-strength" => pin::strength(mpa(n("fy_mpa")), mm(n("d_mm"))).si() * 1e3,
        "hole-stress" => {
            let holed = HoledTube {
                height: tube.0,
                breadth: tube.1,
                wall: tube.2,
                corner: mm(0.0),
                hole: mm(n("hole_mm")),
                holes: if n("holes") > 1.5 { 2 } else { 1 },
                spacing: mm(n("spacing_mm")),
                through_flanges: n("top") > 0.5,
            };
            hole_stress(&holed, newton(5e3), newton_metre(500.0)).si() * 1e-6
        }
        "net-section" => {
            let mut section = TubeSection::gross(tube.0, tube.1, tube.2);
            for way in [1.0, -1.0] {
                section = section.without([mm(n("hole_mm")), tube.2], [mm(0.0), mm(18.5 * way)]);
            }
            section.stress(newton(5e3), 400.0, 90.0).unwrap().si() * 1e-6
        }
        "slip-travel" => in_mm(pin::slip_travel(
            mm(n("d_mm")),
            mm(n("first_mm")),
            mm(n("second_mm")),
        )),
        "pressure" => pin::pressure(newton(n("force_n")), mm(n("d_mm")), mm(n("t_mm"))).si() * 1e-6,
        "clear-between" => in_mm(bearing::clear_between(
            mm(n("distance_mm")),
            mm(n("hole_mm")),
        )),
        other => panic!("{}: no case {other}", row.id),
    }
}

fn of_readings(row: &Row) -> f64 {
    let n = |name: &str| row.number(name);
    let joint = |change: &dyn Fn(&mut Input)| {
        let mut input = Input {
            support: "solid".into(),
            ..Input::default()
        };
        change(&mut input);
        Scenario::new(&input).unwrap()
    };
    let slot = || {
        let s = joint(&|i| {
            i.bolt = "unc-1.2".into();
            i.end_distance_mm = row.maybe_number("end_mm").unwrap_or(60.0);
        });
        oval(&s, mm(n("long_mm")), mm(n("short_mm")))
    };
    match row.text("case") {
        "stop-clamp" => {
            let s = joint(&|i| {
                i.bolt = "unc-3.8".into();
                i.bolt_grade = "sae-5".into();
                i.nut_factor = Some(n("k"));
            });
            let stop = torque_stop(&s, pound_force_foot(n("torque_lbf_ft")));
            stop.clamp.si / pound_force(1.0).si()
        }
        "dent" => {
            let s = joint(&|i| {
                i.support = "bare".into();
                i.bolt = "m10".into();
                i.bolt_grade = "iso-8.8".into();
                (i.tube_width_mm, i.tube_depth_mm, i.tube_wall_mm) = (50.8, 50.8, 3.175);
                i.wall_basis = "measured".into();
                i.tube_corner_radius_mm = Some(4.7625);
                i.tube_yield_mpa = Some(241.0);
                i.washer_outer_mm = Some(20.0);
                i.washer_thickness_mm = Some(10.0);
            });
            let read = dent(&s, mm(2.0 * n("left_mm")));
            read.clamp.map_or(f64::NAN, |band| band.likely.si)
        }
        "clamp-k" => {
            let d = catalog::thread("unc-3.8").unwrap().major();
            let clamp = |k| tight::clamp_from(k, d, pound_force_foot(n("torque_lbf_ft"))).si();
            // The nut factor at which the torque gives the clamp.
            solve::find_root(0.05, 0.5, 1e-9, |k| {
                pound_force(n("force_lbf")).si() - clamp(k)
            })
        }
        "oval-slipped" => slot().slipped_by.si * 1e3,
        "oval-play" => slot().play.si * 1e3,
        "oval-edge" => slot().edge_left.si * 1e3,
        other => panic!("{}: no case {other}", row.id),
    }
}
