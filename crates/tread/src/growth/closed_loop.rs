//! Turn by turn in time: a worn profile is the road of the next turn. For tests.

use std::f64::consts::TAU;

use nalgebra::{Complex, DMatrix, Matrix2, Vector2};

use super::{HubWaves, TreadWave, WearWaves, WheelInertia, fastest};
use crate::rolling::{DrivenState, RollingRib, rolling_radius};
use crate::{Carcass, Duty, Face, Pose, Tread};

/// Parts of the circumference, and time steps of a turn.
const PARTS: usize = 720;

/// A hub that rises and leans on springs and dampers of its own.
struct Hub {
    mass: Matrix2<f64>,
    stiffness: Matrix2<f64>,
    damping: Matrix2<f64>,
}

impl Hub {
    fn compliance(&self, omega: f64) -> DMatrix<Complex<f64>> {
        let dynamic = DMatrix::from_fn(2, 2, |i, j| {
            let still = self.stiffness[(i, j)] - omega * omega * self.mass[(i, j)];
            Complex::new(still, omega * self.damping[(i, j)])
        });
        dynamic.try_inverse().unwrap()
    }
}

/// A tire whose profile wears as it rolls.
struct ClosedLoop<'a> {
    face: &'a Face,
    hub: &'a Hub,
    /// Time of a step, s.
    step: f64,
    /// The states of the duty at rest.
    rest: Vec<DrivenState>,
    /// Weights of the parts in the contact of each rib, its middle first and the rest to either side.
    contacts: Vec<Vec<f64>>,
    /// Height of each part of each rib, m.
    profile: Vec<Vec<f64>>,
    place: Vector2<f64>,
    velocity: Vector2<f64>,
}

impl<'a> ClosedLoop<'a> {
    fn new(face: &'a Face, pose: Pose, hub: &'a Hub, speed: f64) -> Self {
        let rolling = face.rolling(pose).unwrap();
        let (radius, ribs) = (rolling.radius, face.tread.ribs as f64);
        let part = TAU * radius / PARTS as f64;
        let contacts =
            rolling.load.iter().map(|load| weights(face.contact_length(load * ribs) / part)).collect();
        ClosedLoop {
            face,
            hub,
            step: part / speed,
            rest: face.driven_states(pose),
            contacts,
            profile: vec![vec![0.0; PARTS]; face.ribs.len()],
            place: Vector2::zeros(),
            velocity: Vector2::zeros(),
        }
    }

    /// One turn, after which the profile has lost `worn` (m) by the mean of the ribs; what each rib loses evenly is left out,
    /// so that loads stay those of the pose.
    fn turn(&mut self, worn: f64) {
        let ribs = self.face.ribs.len();
        let mut energy = vec![vec![0.0; PARTS]; ribs];
        for i in 0..PARTS {
            let [now, next] = [i, i + 1].map(|i| self.felt(i));
            let here = self.scuff(&now);
            self.advance(&now, &next);
            for (r, here) in here.into_iter().enumerate() {
                spread(&self.contacts[r], i, |part, weight| energy[r][part] += weight * here);
            }
        }
        let mean = |values: &[f64]| values.iter().sum::<f64>() / PARTS as f64;
        let each: Vec<f64> = energy.iter().map(|parts| mean(parts)).collect();
        let all = each.iter().sum::<f64>() / ribs as f64;
        for r in 0..ribs {
            let parts = self.profile[r].iter_mut().zip(&energy[r]);
            parts.for_each(|(height, energy)| *height -= worn * (energy - each[r]) / all);
        }
    }

    /// Height of each rib under its contact.
    fn felt(&self, middle: usize) -> Vec<f64> {
        let felt = |(contact, profile): (&Vec<f64>, &Vec<f64>)| {
            let mut sum = 0.0;
            spread(contact, middle % PARTS, |part, weight| sum += weight * profile[part]);
            sum
        };
        self.contacts.iter().zip(&self.profile).map(felt).collect()
    }

    /// Rise of the ribs' contacts over what they were at rest, less the hub's, m.
    fn compressed(&self, felt: &[f64], place: Vector2<f64>) -> Vec<f64> {
        let ribs = self.face.ribs.iter().zip(felt);
        ribs.map(|(rib, felt)| felt - place[0] + (self.face.tires[0].place + rib.on_tire) * place[1])
            .collect()
    }

    fn scuff(&self, felt: &[f64]) -> Vec<f64> {
        let compressed = self.compressed(felt, self.place);
        let mut energy = vec![0.0; felt.len()];
        for rest in &self.rest {
            let rib = |r: usize| RollingRib {
                radius: rest.ribs[r].radius + felt[r] - compressed[r] / 3.0,
                brush: self.face.brush(rest.loads[r] + self.stiffness() * compressed[r]),
            };
            let ribs: Vec<RollingRib> = (0..felt.len()).map(rib).collect();
            let travel = rolling_radius(&ribs, rest.asked);
            let sums = energy.iter_mut().zip(&ribs);
            sums.for_each(|(sum, rib)| *sum += rest.share * rib.energy(travel, rest.asked.side));
        }
        energy
    }

    fn stiffness(&self) -> f64 {
        self.face.rib_springs()[0].1
    }

    /// Runge-Kutta's fourth order, the profile linear over the step.
    fn advance(&mut self, now: &[f64], next: &[f64]) {
        let (inverse, stiffness) = (self.hub.mass.try_inverse().unwrap(), self.stiffness());
        let slope = |share: f64, place: Vector2<f64>, velocity: Vector2<f64>| {
            let felt: Vec<f64> = now.iter().zip(next).map(|(a, b)| a + share * (b - a)).collect();
            let mut force = -self.hub.stiffness * place - self.hub.damping * velocity;
            for (compressed, rib) in self.compressed(&felt, place).into_iter().zip(&self.face.ribs) {
                let load = stiffness * compressed;
                force += Vector2::new(load, -load * (self.face.tires[0].place + rib.on_tire));
            }
            (velocity, inverse * force)
        };
        let (x, v, h) = (self.place, self.velocity, self.step);
        let a = slope(0.0, x, v);
        let b = slope(0.5, x + a.0 * (0.5 * h), v + a.1 * (0.5 * h));
        let c = slope(0.5, x + b.0 * (0.5 * h), v + b.1 * (0.5 * h));
        let d = slope(1.0, x + c.0 * h, v + c.1 * h);
        self.place += (a.0 + (b.0 + c.0) * 2.0 + d.0) * (h / 6.0);
        self.velocity += (a.1 + (b.1 + c.1) * 2.0 + d.1) * (h / 6.0);
    }

    /// The wave of `count` in a rib, with its phase.
    fn wave(&self, rib: usize, count: u16) -> Complex<f64> {
        let turn = TAU * f64::from(count) / PARTS as f64;
        let parts = self.profile[rib].iter().enumerate();
        parts.map(|(i, height)| Complex::from_polar(*height, -turn * i as f64)).sum()
    }
}

/// Weights of an even mean over a length in parts: whole parts, and what is left at either end.
fn weights(parts: f64) -> Vec<f64> {
    let reach = (0.5 * parts + 0.5).floor() as usize;
    let of = |i: usize| (0.5 * parts + 0.5 - i as f64).min(1.0) / parts;
    (0..=reach).map(of).filter(|weight| *weight > 0.0).collect()
}

fn spread(contact: &[f64], middle: usize, mut add: impl FnMut(usize, f64)) {
    add(middle, contact[0]);
    for (i, weight) in contact.iter().enumerate().skip(1) {
        add((middle + i) % PARTS, *weight);
        add((middle + PARTS - i) % PARTS, *weight);
    }
}

/// Growth and turning of the fastest wave as it comes out of many turns, and by eigenvalue, 1/m.
fn both_ways(face: &Face, (pose, hub): (Pose, &Hub), wave: TreadWave) -> [Complex<f64>; 2] {
    let waves = WearWaves::new(vec![HubWaves::new(face, pose, WheelInertia::default()).unwrap()]);
    let omega = TAU * waves.frequency(wave);
    let growth = waves.growth(wave, &hub.compliance(omega)).unwrap();
    let own = fastest(&growth).unwrap();
    let mut running = ClosedLoop::new(face, pose, hub, wave.speed);
    for (profile, rib) in running.profile.iter_mut().zip(&own.ribs) {
        for (i, height) in profile.iter_mut().enumerate() {
            let turn = Complex::from_polar(1e-6, TAU * f64::from(wave.count) * i as f64 / PARTS as f64);
            *height = (rib * turn).re;
        }
    }
    // The hub settles, then the tire wears each turn by a thousandth of what turns or grows the wave.
    (0..12).for_each(|_| running.turn(0.0));
    let strongest = (0..own.ribs.len()).max_by(|a, b| own.ribs[*a].norm().total_cmp(&own.ribs[*b].norm()));
    let rib = strongest.unwrap();
    let (worn, turns) = (0.001 / own.rate.hypot(own.turning), 50);
    let before = running.wave(rib, wave.count);
    (0..turns).for_each(|_| running.turn(worn));
    let grown = (running.wave(rib, wave.count) / before).ln() / (worn * f64::from(turns));
    [grown, Complex::new(own.rate, own.turning)]
}

/// Closed loop in time against eigenvalues, within 1 %: a step of a turn in 720, wear taken off once a turn.
#[test]
fn waves_grow_in_time_as_by_eigenvalue() {
    let hub = Hub {
        mass: Matrix2::new(400.0, 0.0, 0.0, 40.0),
        stiffness: Matrix2::new(3e5, 1e5, 1e5, 1e6),
        damping: Matrix2::new(6e3, 5e2, 5e2, 1e3),
    };
    let carcass = Carcass { radius: 0.51, stiffness: 1.1e6, rated_load: 30e3 };
    let face = |crown: f64| {
        let tread = Tread { ribs: 3, crown, ..Tread::usual(0.3).unwrap() };
        Face::new(tread, carcass, &[0.02]).unwrap().with_duty(Duty::line_haul(), true).unwrap()
    };
    let cases = [
        (0.0, [30e3, 0.0, 0.0], (2, 20.0)),
        (0.0, [30e3, -0.01, 0.001], (1, 27.0)),
        (0.003, [25e3, -0.008, -0.002], (4, 15.0)),
        (0.003, [30e3, 0.006, 0.001], (7, 25.0)),
    ];
    for (crown, [load, camber, toe], (count, speed)) in cases {
        let face = face(crown);
        let pose = Pose { load, camber, toe };
        let [in_time, by_eigenvalue] = both_ways(&face, (pose, &hub), TreadWave { count, speed });
        let off = (in_time - by_eigenvalue).norm() / by_eigenvalue.norm();
        assert!(off < 0.01, "{count} cups, {speed} m/s: {in_time} in time, {by_eigenvalue} by eigenvalue");
        println!("{count} {speed}: {in_time} {by_eigenvalue} off {off:.2e}");
    }
}
