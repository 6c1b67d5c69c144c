//! Tightening: the clamp that the wrench would give if everything under it were solid.

use crate::mechanics::thread::load_at;
use crate::mechanics::tightening::{
    TorqueParts, clamp_from, combined_plastic, combined_stress, implied_friction, scattered,
    torque_for, torque_parts,
};
use crate::quantity::{Force, InUnits, Length, Stress, Torque, newton_metre};
use crate::report::TighteningReport;
use crate::scenario::Scenario;

/// Tightening of one bolt.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Preload {
    pub(crate) torque: Torque,
    pub(crate) min: Force,
    pub(crate) nominal: Force,
    /// Clamp at the lowest nut factor that counts: the nominal one where the threads are known.
    pub(crate) slick: Force,
    pub(crate) max: Force,
    pub(crate) proof: Force,
    pub(crate) yields: Force,
    pub(crate) friction: f64,
    pub(crate) parts: TorqueParts,
}

impl Preload {
    /// Of a scenario.
    pub(crate) fn new(s: &Scenario) -> Self {
        let (t, thread) = (&s.tightening, s.bolting.thread);
        let (k, d) = (t.nut_factor, thread.major());
        let area = thread.stress_area();
        let proof = load_at(s.bolting.proof_strength(), area);
        let torque = t
            .torque
            .unwrap_or_else(|| torque_for(k, d, proof * t.preload_share));
        let nominal = clamp_from(k, d, torque);
        let [slick, rough] = t.nut_factor_band.map(|k| clamp_from(k, d, torque));
        let (min, _) = scattered(rough, t.scatter);
        let (_, max) = scattered(slick, t.scatter);
        let face = mean_face(s);
        let friction = implied_friction(k, d, thread.pitch(), thread.pitch_diameter(), face);
        Self {
            torque,
            min,
            nominal,
            slick,
            max,
            proof,
            yields: load_at(s.bolting.yield_strength(), area),
            friction,
            parts: torque_parts(
                thread.pitch(),
                thread.pitch_diameter(),
                face,
                friction,
                friction,
            ),
        }
    }

    /// Combined stress at a clamp while the wrench still turns with the set torque: the friction is
    /// the one that gives this clamp at this torque.
    fn combined(&self, s: &Scenario, clamp: Force) -> Stress {
        combined_stress(
            clamp,
            s.bolting.thread.stress_area(),
            self.thread_torque(s, clamp),
        )
    }

    /// Stress at the nominal clamp with the twist as in a thread that yields all over.
    pub(crate) fn combined_yielding(&self, s: &Scenario) -> Stress {
        combined_plastic(
            self.nominal,
            s.bolting.thread.stress_area(),
            self.thread_torque(s, self.nominal),
        )
    }

    /// Torque that passes through the threads at a clamp.
    fn thread_torque(&self, s: &Scenario, clamp: Force) -> Torque {
        let thread = s.bolting.thread;
        let k = self.torque.si() / (thread.major().si() * clamp.si());
        let face = mean_face(s);
        let mu = implied_friction(
            k,
            thread.major(),
            thread.pitch(),
            thread.pitch_diameter(),
            face,
        );
        let parts = torque_parts(thread.pitch(), thread.pitch_diameter(), face, mu, mu);
        newton_metre(clamp.si() * parts.in_thread())
    }

    pub(crate) fn combined_nominal(&self, s: &Scenario) -> Stress {
        self.combined(s, self.nominal)
    }

    pub(crate) fn combined_max(&self, s: &Scenario) -> Stress {
        self.combined(s, self.max)
    }

    pub(crate) fn report(&self, s: &Scenario) -> TighteningReport {
        let total = self.parts.total();
        TighteningReport {
            torque_nm: self.torque.si(),
            nut_factor: s.tightening.nut_factor,
            scatter_share: s.tightening.scatter,
            clamp_min_n: self.min.si(),
            clamp_nominal_n: self.nominal.si(),
            clamp_max_n: self.max.si(),
            stress_area_mm2: s.bolting.thread.stress_area().si() * 1e6,
            proof_load_n: self.proof.si(),
            yield_load_n: self.yields.si(),
            implied_friction: self.friction,
            share_stretch: self.parts.stretch / total,
            share_thread_friction: self.parts.thread_friction / total,
            share_face_friction: self.parts.face_friction / total,
            combined_stress_nominal_mpa: self.combined_nominal(s).si() * 1e-6,
            combined_stress_max_mpa: self.combined_max(s).si() * 1e-6,
        }
    }
}

/// Mean friction diameter under the turned face.
pub(crate) fn mean_face(s: &Scenario) -> Length {
    (s.bolting.thread.bearing_diameter() + s.bolting.thread.major() * 1.06) * 0.5
}
