//! One run under way: steps, and steps in halves.

use super::damper::{DamperRows, rows_of};
use super::effective::EffectiveSystem;
use super::energy::EnergyBalance;
use super::forces::Forces;
use super::law::LocalLaw;
use super::motion::Motion;
use super::newton::{Newton, Trial, Unsolved};
use super::settings::TransientSettings;
use super::system::DynamicSystem;
use super::updated_factor::SolverRoom;
use crate::FeError;
use crate::linalg::{Columns, Rows};

/// A run under way.
pub(super) struct Integrator<'a> {
    system: &'a DynamicSystem,
    settings: &'a TransientSettings,
    mass: Rows,
    stiffness: Rows,
    damping: Option<Rows>,
    dampers: DamperRows,
    /// Directions of the laws, column by column.
    along: Columns,
    /// Linear systems of the step halved 0, 1, … times; made when first needed.
    levels: Vec<Option<Box<EffectiveSystem>>>,
    pub now: Motion,
    /// The same along the directions of the laws: it follows the same formulas, and is read anew whenever stock is taken.
    along_now: Motion,
    pub forces: Forces,
    pub balance: EnergyBalance,
    pub counts: Counts,
    next: Motion,
    along_next: Motion,
    next_forces: Forces,
    newton: Newton,
    room: Room,
}

/// What a run took.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counts {
    /// Steps and parts of steps that were taken.
    pub parts: usize,
    /// Iterations of Newton's method.
    pub iterations: usize,
    /// Halvings for a contact that opened or closed.
    pub halvings_for_contact: usize,
    /// Halvings because Newton's method did not converge.
    pub halvings_for_convergence: usize,
    /// Contacts that opened or closed.
    pub contact_changes: usize,
}

/// Vectors that a step works in.
struct Room {
    p: Vec<f64>,
    q: Vec<f64>,
    w: Vec<f64>,
    product: Vec<f64>,
    free: Vec<f64>,
    expected: Vec<f64>,
    known_push: Vec<f64>,
    known_rate: Vec<f64>,
    bases: Vec<[f64; 2]>,
    solver: SolverRoom,
}

/// Why a step cannot be taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Stop {
    /// Newton's method did not converge in the smallest step.
    NoConvergence { time: f64, law: usize },
    /// A load or base motion, and with it the motion, is no longer a finite number.
    NotFinite { time: f64 },
}

enum Attempt {
    Reached,
    ContactChanged,
    Unsolved { law: usize },
    NotFinite,
}

impl<'a> Integrator<'a> {
    pub fn new(
        system: &'a DynamicSystem,
        settings: &'a TransientSettings,
        start: Motion,
    ) -> Result<Self, FeError> {
        let (order, rows) = (system.order(), system.rows());
        let levels = (0..=settings.most_halvings).map(|_| None).collect();
        let mut run = Integrator {
            system,
            settings,
            mass: Rows::of(&system.mass),
            stiffness: Rows::of(&system.stiffness),
            damping: system.damping.as_ref().map(Rows::of),
            dampers: DamperRows::of(&system.dampers, order),
            along: rows_of(system.directions(), order).transposed(),
            levels,
            now: start,
            along_now: Motion::rest(rows),
            forces: Forces::none(system),
            balance: EnergyBalance::default(),
            counts: Counts::default(),
            next: Motion::rest(order),
            along_next: Motion::rest(rows),
            next_forces: Forces::none(system),
            newton: Newton::new(system.laws.len(), rows),
            room: Room::new(order, rows),
        };
        run.room.move_bases(system, settings.start);
        run.read_along_laws();
        run.forces.evaluate(system, (&run.now, &run.along_now), (settings.start, &run.room.bases), None);
        system.accelerate(&mut run.now, &run.forces.laws, (settings.start, settings.step))?;
        run.take_stock();
        run.balance.start = run.balance.kinetic + run.balance.strain + run.balance.potential;
        run.balance.greatest_error = 0.0;
        Ok(run)
    }

    /// Time after so many steps and ticks, s.
    pub fn time(&self, step: usize, tick: u64) -> f64 {
        let ticks = (1_u64 << self.settings.most_halvings) as f64;
        self.settings.start + (step as f64 + tick as f64 / ticks) * self.settings.step
    }

    /// Brings the energy balance up to date.
    pub fn take_stock(&mut self) {
        self.read_along_laws();
        let potential = self.forces.potential(self.system);
        let matrices = (&self.mass, &self.stiffness);
        self.balance.take_stock(matrices, &self.now, potential, &mut self.room.product);
    }

    /// Takes one step, in parts where contacts or convergence ask for it. Calls `changed` with the time, law
    /// and whether it now touches for each contact that opens or closes.
    ///
    /// Parts are halves of halves, so that all lengths of step are known beforehand; a part twice as long as
    /// the last is tried as soon as it fits. A tick is the smallest part.
    pub fn step(
        &mut self,
        step: usize,
        mut changed: impl FnMut(f64, usize, bool),
    ) -> Result<Result<(), Stop>, FeError> {
        let deepest = self.settings.most_halvings;
        let (whole, mut tick, mut level) = (1_u64 << deepest, 0, 0);
        while tick < whole {
            let part = whole >> level;
            let (from, to) = (self.time(step, tick), self.time(step, tick + part));
            let length = self.settings.step / f64::from(1_u32 << level);
            let resolved = level == deepest || length <= self.settings.event_tolerance;
            match self.attempt(level, from, to)? {
                Attempt::ContactChanged if !resolved => {
                    self.counts.halvings_for_contact += 1;
                    level += 1;
                    continue;
                }
                Attempt::Unsolved { .. } if level < deepest => {
                    self.counts.halvings_for_convergence += 1;
                    level += 1;
                    continue;
                }
                Attempt::Unsolved { law } => return Ok(Err(Stop::NoConvergence { time: from, law })),
                Attempt::NotFinite => return Ok(Err(Stop::NotFinite { time: from })),
                Attempt::Reached | Attempt::ContactChanged => {}
            }
            self.accept(length);
            self.report_contacts(to, &mut changed);
            tick += part;
            if level > 0 && tick.is_multiple_of(2 * part) {
                level -= 1;
            }
        }
        Ok(Ok(()))
    }

    /// Finds motion and forces at the end of a part, kept in `next` and `next_forces`.
    fn attempt(&mut self, level: u32, from: f64, to: f64) -> Result<Attempt, FeError> {
        let place = level as usize;
        let effective = match self.levels[place].take() {
            Some(made) => made,
            None => {
                let length = self.settings.step / f64::from(1_u32 << level);
                Box::new(EffectiveSystem::new(self.system, self.settings.scheme, length)?)
            }
        };
        let attempt = self.attempt_with(&effective, from, to);
        self.levels[place] = Some(effective);
        Ok(attempt)
    }

    fn attempt_with(&mut self, effective: &EffectiveSystem, from: f64, to: f64) -> Attempt {
        let formulas = &effective.formulas;
        let between = to - (1.0 - formulas.place) * (to - from);
        self.move_without_laws(effective, between);
        let room = &self.room;
        if !room.w.iter().sum::<f64>().is_finite() || room.bases.iter().flatten().any(|z| !z.is_finite()) {
            return Attempt::NotFinite;
        }
        match self.solve_laws(effective, between - from) {
            Ok(iterations) => self.counts.iterations += iterations,
            Err(failure) => return Attempt::Unsolved { law: failure.law },
        }
        let room = &mut self.room;
        effective.solver.add_response(&self.newton.forces, &mut room.w);
        formulas.advance(&self.now, &room.w, &mut self.next);
        formulas.advance(&self.along_now, self.newton.motions(), &mut self.along_next);
        if between != to {
            room.move_bases(self.system, to);
        }
        let touched = Some(&self.forces.touching[..]);
        self.next_forces.evaluate(self.system, (&self.next, &self.along_next), (to, &room.bases), touched);
        let changed = self.next_forces.touching != self.forces.touching;
        if changed { Attempt::ContactChanged } else { Attempt::Reached }
    }

    /// Moves the structure and the bases to a time as if the laws had no force: w of all freedoms.
    fn move_without_laws(&mut self, effective: &EffectiveSystem, time: f64) {
        let room = &mut self.room;
        effective.formulas.known_parts(&self.now, &mut room.p, &mut room.q);
        self.mass.multiply(&room.p, &mut room.w);
        if let Some(damping) = &self.damping {
            damping.multiply(&room.q, &mut room.product);
            room.w.iter_mut().zip(&room.product).for_each(|(w, c)| *w += c);
        }
        self.dampers.add_forces(&room.q, &mut room.w);
        self.system.loads.iter().for_each(|load| load.direction.add_to(load.at(time), &mut room.w));
        effective.solver.factor.solve(&mut room.w, &mut room.solver);
        room.move_bases(self.system, time);
    }

    /// Finds the forces of the laws, `duration` after now, by Newton's method from where the motion leads; returns the number of
    /// iterations.
    fn solve_laws(&mut self, effective: &EffectiveSystem, duration: f64) -> Result<usize, Unsolved> {
        let room = &mut self.room;
        effective.formulas.known_parts(&self.along_now, &mut room.known_push, &mut room.known_rate);
        self.along_now.extrapolated(duration, &mut room.expected);
        read_along(&self.along, &room.w, &mut room.free);
        let trial = Trial {
            laws: &self.system.laws,
            bases: &room.bases,
            touching: &self.forces.touching,
            compliance: &effective.solver.compliance,
            start: &room.expected,
            reference: &[],
            free: &room.free,
            rate: effective.formulas.rate,
            known_rate: &room.known_rate,
        };
        self.newton.solve(&trial, self.settings.newton_tolerance)
    }

    /// Makes the end of the part the present, and books the energy that passed.
    fn accept(&mut self, length: f64) {
        let (work, heat) = self.next_forces.exchange_since(&self.forces);
        self.balance.work += work;
        self.balance.dissipated += heat;
        self.balance.dissipated += self.damped_energy() / length;
        std::mem::swap(&mut self.now, &mut self.next);
        std::mem::swap(&mut self.along_now, &mut self.along_next);
        std::mem::swap(&mut self.forces, &mut self.next_forces);
        self.counts.parts += 1;
    }

    /// Reads the motion along the directions of the laws from that of the freedoms.
    fn read_along_laws(&mut self) {
        let Motion { u, v, a } = &mut self.along_now;
        for (own, along) in [(&self.now.u, u), (&self.now.v, v), (&self.now.a, a)] {
            read_along(&self.along, own, along);
        }
    }

    /// `ΔuᵀC Δu` of the part: what damping takes from it, times its length.
    fn damped_energy(&mut self) -> f64 {
        if self.damping.is_none() && self.dampers.is_empty() {
            return 0.0;
        }
        let room = &mut self.room;
        let moves = self.next.u.iter().zip(&self.now.u).map(|(next, now)| next - now);
        room.p.iter_mut().zip(moves).for_each(|(p, moved)| *p = moved);
        let of_dampers = self.dampers.power(&room.p);
        let Some(damping) = &self.damping else { return of_dampers };
        damping.multiply(&room.p, &mut room.product);
        of_dampers + room.p.iter().zip(&room.product).map(|(p, c)| p * c).sum::<f64>()
    }

    fn report_contacts(&mut self, time: f64, changed: &mut impl FnMut(f64, usize, bool)) {
        let pairs = self.forces.touching.iter().zip(&self.next_forces.touching).enumerate();
        for (law, (touches, _)) in pairs.filter(|(_, (now, before))| now != before) {
            self.counts.contact_changes += 1;
            changed(time, law, *touches);
        }
    }
}

/// Components of a vector along the directions that stand column by column.
fn read_along(along: &Columns, vector: &[f64], components: &mut [f64]) {
    components.fill(0.0);
    along.add_rows(vector, components);
}

impl Room {
    fn new(order: usize, rows: usize) -> Self {
        let [p, q, w, product] = std::array::from_fn(|_| vec![0.0; order]);
        let [free, expected, known_push, known_rate] = std::array::from_fn(|_| vec![0.0; rows]);
        Room {
            p,
            q,
            w,
            product,
            free,
            expected,
            known_push,
            known_rate,
            bases: Vec::new(),
            solver: SolverRoom::default(),
        }
    }

    /// Moves the bases to where they are at a time.
    fn move_bases(&mut self, system: &DynamicSystem, time: f64) {
        self.bases.clear();
        let mut before: Option<&LocalLaw> = None;
        for law in &system.laws {
            let known = before.filter(|before| before.shares_base_with(law)).and(self.bases.last().copied());
            self.bases.push(known.unwrap_or_else(|| law.base_at(time)));
            before = Some(law);
        }
    }
}
