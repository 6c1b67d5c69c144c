//! Every comparison of calc-core with values that it did not produce.
//!
//! The tests judge what these functions give, and the page's list of checks is made of the same: no
//! number on it was written by hand.

mod chance;
mod fatigue;
mod formulas;
mod joint;
mod loads;
mod members;
mod parts;
mod repairs;
mod slipped;
mod threads;
mod tube_face;

use crate::check::Check;

/// Comparisons of one topic.
#[derive(Clone, Copy, Debug)]
pub struct Topic {
    /// Short name, in lower case with hyphens.
    pub id: &'static str,
    /// For people.
    pub title: &'static str,
    /// What is compared.
    pub checks: &'static [fn() -> Check],
}

/// All topics, in the order in which the calculation needs them.
pub const TOPICS: &[Topic] = &[
    Topic {
        id: "threads-and-parts",
        title: "Threads, washers, holes, pipe",
        checks: &[
            threads::inch_areas,
            threads::metric_diameters_and_areas,
            parts::washers,
            parts::holes,
            parts::pipe,
            parts::sleeve_areas,
        ],
    },
    Topic {
        id: "tightening",
        title: "Tightening",
        checks: &[
            joint::torque_for_a_share_of_proof,
            threads::preload_aims,
            threads::minimum_pretensions,
            threads::nut_factors_that_aircraft_torques_imply,
            formulas::tightening,
        ],
    },
    Topic {
        id: "tube-face",
        title: "Face of a tube under a washer",
        checks: &[
            tube_face::yield_line,
            tube_face::face,
            tube_face::unloading,
            tube_face::pulled_out,
            tube_face::neighbours,
            tube_face::welded_sleeve,
            tube_face::likely_welded_sleeve,
        ],
    },
    Topic {
        id: "spreaders",
        title: "Plates and side walls, on the safe side by design",
        checks: &[
            tube_face::plates,
            tube_face::shared_plates,
            tube_face::side_walls,
        ],
    },
    Topic {
        id: "members",
        title: "Channels, angles, round tubes",
        checks: &[members::members, members::plates, members::flange_runs],
    },
    Topic {
        id: "springs",
        title: "Springs, sleeves, losses, slip",
        checks: &[
            joint::frusta,
            joint::springs_slip_sleeves_and_walls,
            formulas::supports,
        ],
    },
    Topic {
        id: "loads",
        title: "Loads and their share per bolt",
        checks: &[
            loads::coupling_loads,
            loads::bolt_groups,
            loads::textbook_bracket,
            loads::free_loads,
            loads::prying,
        ],
    },
    Topic {
        id: "slipped",
        title: "Joints that have slipped",
        checks: &[slipped::slipped_joints, formulas::strength],
    },
    Topic {
        id: "fatigue",
        title: "Fatigue",
        checks: &[fatigue::fatigue],
    },
    Topic {
        id: "readings",
        title: "Readings taken back",
        checks: &[formulas::readings],
    },
    Topic {
        id: "repairs",
        title: "Work sheets: drills, welds, masses",
        checks: &[repairs::drills, repairs::welds, repairs::sleeve_masses],
    },
    Topic {
        id: "chance",
        title: "How sure",
        checks: &[chance::quantiles],
    },
];
