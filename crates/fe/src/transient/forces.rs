//! Forces at the end of a step.

use super::law::{LocalLaw, MOST};
use super::motion::Motion;
use super::system::DynamicSystem;

/// Loads and law forces at one time, with the motions that they work on.
#[derive(Debug, Clone)]
pub(super) struct Forces {
    /// Force along each direction of the laws.
    pub laws: Vec<f64>,
    /// The part of it that does not store energy.
    pub viscous: Vec<f64>,
    /// Compression δ along each direction.
    pub compressions: Vec<f64>,
    /// Displacement of the base along each direction.
    pub bases: Vec<f64>,
    /// Whether each law touches.
    pub touching: Vec<bool>,
    /// Value of each load.
    pub loads: Vec<f64>,
    /// Motion along each load.
    pub load_motions: Vec<f64>,
}

impl Forces {
    /// Storage for the loads and laws of a system.
    pub fn none(system: &DynamicSystem) -> Self {
        let of_laws = || vec![0.0; system.rows()];
        let of_loads = || vec![0.0; system.loads.len()];
        Forces {
            laws: of_laws(),
            viscous: of_laws(),
            compressions: of_laws(),
            bases: of_laws(),
            touching: vec![false; system.laws.len()],
            loads: of_loads(),
            load_motions: of_loads(),
        }
    }

    /// Evaluates all at a time, with the bases of that time; `along` is the motion along the directions of the laws, `touched`
    /// says which laws touched when the step began, none given: as they do.
    pub fn evaluate(
        &mut self,
        system: &DynamicSystem,
        (motion, along): (&Motion, &Motion),
        (time, bases): (f64, &[[f64; 2]]),
        touched: Option<&[bool]>,
    ) {
        let mut first = 0;
        for (index, law) in system.laws.iter().enumerate() {
            let [z, z_rate] = bases[index];
            let count = law.directions.len();
            let second = if count == MOST { -along.u[first + 1] } else { 0.0 };
            let (delta, rate) = ([z - along.u[first], second], z_rate - along.v[first]);
            let touches = law.touches(delta);
            let force = law.response(delta, rate, touched.map_or(touches, |touched| touched[index])).force;
            let elastic = law.elastic_force(delta);
            for row in 0..count {
                self.laws[first + row] = force[row];
                self.viscous[first + row] = force[row] - elastic[row];
                self.compressions[first + row] = delta[row];
            }
            self.bases[first] = z;
            self.touching[index] = touches;
            first += count;
        }
        for (i, load) in system.loads.iter().enumerate() {
            self.loads[i] = load.at(time);
            self.load_motions[i] = load.direction.dot(&motion.u);
        }
    }

    /// Energy stored in the laws.
    pub fn potential(&self, system: &DynamicSystem) -> f64 {
        let mut compressions = self.compressions.as_slice();
        let stored = |law: &LocalLaw| {
            let (own, others) = compressions.split_at(law.directions.len());
            compressions = others;
            let mut delta = [0.0; MOST];
            delta.iter_mut().zip(own).for_each(|(delta, own)| *delta = *own);
            law.potential(delta)
        };
        system.laws.iter().map(stored).sum()
    }

    /// Work done on the system from outside, and energy that its laws turn into heat, since `before` (J).
    pub fn exchange_since(&self, before: &Forces) -> (f64, f64) {
        let work = |forces: (&[f64], &[f64]), motions: (&[f64], &[f64])| {
            let means = forces.0.iter().zip(forces.1).map(|(a, b)| 0.5 * (a + b));
            let moves = motions.0.iter().zip(motions.1).map(|(a, b)| b - a);
            means.zip(moves).map(|(force, moved)| force * moved).sum::<f64>()
        };
        let loads = work((&before.loads, &self.loads), (&before.load_motions, &self.load_motions));
        let bases = work((&before.laws, &self.laws), (&before.bases, &self.bases));
        let heat = work((&before.viscous, &self.viscous), (&before.compressions, &self.compressions));
        (loads + bases, heat)
    }
}
