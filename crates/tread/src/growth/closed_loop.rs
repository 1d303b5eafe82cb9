//! A tread that wears on a hub of springs, in time: held against the eigenvalues.

use std::f64::consts::TAU;

use nalgebra::{Complex, DMatrix, Matrix2, Vector2};

use super::{HubWaves, RibPress, TreadWave, WearWaves, WearingTread, WheelInertia, fastest};
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

/// A tread that wears on a hub that moves.
struct ClosedLoop<'a> {
    tread: WearingTread,
    hub: &'a Hub,
    /// Time of a step, s.
    step: f64,
    place: Vector2<f64>,
    velocity: Vector2<f64>,
}

impl<'a> ClosedLoop<'a> {
    fn new(face: &Face, (pose, inertia): (Pose, WheelInertia), hub: &'a Hub, speed: f64) -> Self {
        let radius = face.rolling(pose).unwrap().radius;
        let tread = WearingTread::new(face, (pose, inertia), speed, PARTS).unwrap();
        let step = TAU * radius / PARTS as f64 / speed;
        ClosedLoop { tread, hub, step, place: Vector2::zeros(), velocity: Vector2::zeros() }
    }

    /// One turn, after which the profile has lost `worn` (m) by the mean of the ribs.
    fn turn(&mut self, worn: f64) {
        let felt = self.tread.felt();
        let at = |i: usize| felt.iter().map(|rib| rib[i % PARTS]).collect::<Vec<f64>>();
        for i in 0..PARTS {
            let [now, next] = [at(i), at(i + 1)];
            let presses = self.presses(&now, self.place);
            self.tread.pass(i, &now, &presses, self.step);
            self.advance(&now, &next);
        }
        self.tread.wear(worn);
    }

    fn presses(&self, felt: &[f64], place: Vector2<f64>) -> Vec<RibPress> {
        let ribs = self.tread.springs().iter().zip(felt);
        ribs.map(|(rib, felt)| {
            let deflection = felt - place[0] + rib.outboard * place[1];
            RibPress { load: rib.stiffness * deflection, deflection }
        })
        .collect()
    }

    /// Runge-Kutta's fourth order, the profile linear over the step.
    fn advance(&mut self, now: &[f64], next: &[f64]) {
        let inverse = self.hub.mass.try_inverse().unwrap();
        let slope = |share: f64, place: Vector2<f64>, velocity: Vector2<f64>| {
            let felt: Vec<f64> = now.iter().zip(next).map(|(a, b)| a + share * (b - a)).collect();
            let mut force = -self.hub.stiffness * place - self.hub.damping * velocity;
            for (press, rib) in self.presses(&felt, place).into_iter().zip(self.tread.springs()) {
                force += Vector2::new(press.load, -press.load * rib.outboard);
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
}

/// Growth and turning of the fastest wave as it comes out of many turns, and by eigenvalue, 1/m.
fn both_ways(
    face: &Face,
    (pose, inertia): (Pose, WheelInertia),
    hub: &Hub,
    wave: TreadWave,
) -> [Complex<f64>; 2] {
    let waves = WearWaves::new(vec![HubWaves::new(face, pose, inertia).unwrap()]);
    let omega = TAU * waves.frequency(wave);
    let growth = waves.growth(wave, &hub.compliance(omega)).unwrap();
    let own = fastest(&growth).unwrap();
    let mut running = ClosedLoop::new(face, (pose, inertia), hub, wave.speed);
    running.tread.raise(wave.count, &own.ribs, 1e-6);
    // The hub settles, then the tire wears each turn by a thousandth of what turns or grows the wave.
    (0..12).for_each(|_| running.turn(0.0));
    let strongest = (0..own.ribs.len()).max_by(|a, b| own.ribs[*a].norm().total_cmp(&own.ribs[*b].norm()));
    let rib = strongest.unwrap();
    let (worn, turns) = (0.001 / own.rate.hypot(own.turning), 30);
    let before = running.tread.wave(rib, wave.count);
    (0..turns).for_each(|_| running.turn(worn));
    let grown = (running.tread.wave(rib, wave.count) / before).ln() / (worn * f64::from(turns));
    [grown, Complex::new(own.rate, own.turning)]
}

/// Closed loop in time against eigenvalues, within 0.2 %: a step of a turn in 720, wear taken off once a turn, a wheel that turns by its inertia or without.
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
        (0.0, [30e3, 0.0, 0.0], (2, 20.0), 0.0),
        (0.0, [30e3, -0.01, 0.001], (1, 27.0), 0.0),
        (0.003, [25e3, -0.008, -0.002], (4, 15.0), 0.0),
        (0.003, [30e3, 0.006, 0.001], (7, 25.0), 0.0),
        (0.003, [30e3, 0.006, 0.001], (2, 25.0), 20.0),
        (0.0, [25e3, -0.01, 0.001], (3, 27.0), 34.0),
    ];
    for (crown, [load, camber, toe], (count, speed), spin) in cases {
        let inertia = WheelInertia { spin, damping_time: 0.0 };
        let pose = Pose { load, camber, toe };
        let [in_time, by_eigenvalue] =
            both_ways(&face(crown), (pose, inertia), &hub, TreadWave { count, speed });
        let off = (in_time - by_eigenvalue).norm() / by_eigenvalue.norm();
        println!("{count} {speed} {spin}: {in_time} {by_eigenvalue} off {off:.2e}");
        assert!(off < 2e-3, "{count} cups, {speed} m/s: {in_time} in time, {by_eigenvalue} by eigenvalue");
    }
}
