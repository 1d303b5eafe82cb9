//! Forces at the end of a step.

use super::law::MOST;
use super::motion::Motion;
use super::system::DynamicSystem;

/// Loads and law forces at one time, with the motions that they work on.
#[derive(Debug, Clone, Default)]
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
    /// Energy stored in the laws.
    pub potential: f64,
    /// Value of each load.
    pub loads: Vec<f64>,
    /// Motion along each load.
    pub load_motions: Vec<f64>,
}

impl Forces {
    /// Evaluates all at a time, with the bases of that time; `along` is the motion along the directions of the laws, `touched`
    /// says which laws touched when the step began, none given: as they do.
    pub fn evaluate(
        &mut self,
        system: &DynamicSystem,
        (motion, along): (&Motion, &Motion),
        (time, bases): (f64, &[[f64; 2]]),
        touched: Option<&[bool]>,
    ) {
        self.clear();
        for (index, law) in system.laws.iter().enumerate() {
            let [z, z_rate] = bases[index];
            let (first, count) = (self.laws.len(), law.directions.len());
            let mut delta = [z - along.u[first], 0.0];
            if count == MOST {
                delta[1] = -along.u[first + 1];
            }
            let rate = z_rate - along.v[first];
            let touches = law.touches(delta);
            let force = law.response(delta, rate, touched.map_or(touches, |touched| touched[index])).force;
            let elastic = law.elastic_force(delta);
            for row in 0..count {
                self.laws.push(force[row]);
                self.viscous.push(force[row] - elastic[row]);
                self.compressions.push(delta[row]);
                self.bases.push(if row == 0 { z } else { 0.0 });
            }
            self.touching.push(touches);
            self.potential += law.potential(delta);
        }
        for load in &system.loads {
            self.loads.push(load.at(time));
            self.load_motions.push(load.direction.dot(&motion.u));
        }
    }

    fn clear(&mut self) {
        for list in [
            &mut self.laws,
            &mut self.viscous,
            &mut self.compressions,
            &mut self.bases,
            &mut self.loads,
            &mut self.load_motions,
        ] {
            list.clear();
        }
        self.touching.clear();
        self.potential = 0.0;
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
