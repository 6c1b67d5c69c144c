//! Customary units with their exact factors.
//!
//! `uom` 0.38 rounds these to seven figures (its pound-force is 4.448222 N) and carries two psi that
//! differ, so a value would not survive the way to SI and back in all its digits.

/// Force.
pub mod force {
    unit! {
        system: uom::si;
        quantity: uom::si::force;

        /// Pound-force: 0.453 592 37 kg × 9.806 65 m/s².
        @pound_force: 4.448_221_615_260_5; "lbf", "pound-force", "pounds-force";
        /// 1000 lbf.
        @kip: 4_448.221_615_260_5; "kip", "kip", "kips";
    }
}

/// Stress.
pub mod pressure {
    unit! {
        system: uom::si;
        quantity: uom::si::pressure;

        /// Pound-force per square inch: 4.448 221 615 260 5 N / (25.4 mm)².
        @psi: 4.448_221_615_260_5 / (0.0254 * 0.0254); "psi", "pound-force per square inch", "pounds-force per square inch";
        /// 1000 psi.
        @ksi: 4_448.221_615_260_5 / (0.0254 * 0.0254); "ksi", "kip per square inch", "kips per square inch";
    }
}

/// Torque.
pub mod torque {
    unit! {
        system: uom::si;
        quantity: uom::si::torque;

        /// Pound-force foot: 4.448 221 615 260 5 N × 0.3048 m.
        @pound_force_foot: 4.448_221_615_260_5 * 0.3048; "lbf·ft", "pound-force foot", "pound-force feet";
        /// Pound-force inch: 4.448 221 615 260 5 N × 0.0254 m.
        @pound_force_inch: 4.448_221_615_260_5 * 0.0254; "lbf·in", "pound-force inch", "pound-force inches";
    }
}
