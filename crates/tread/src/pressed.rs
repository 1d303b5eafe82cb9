//! Tires of a hub as springs, and the ribs of each as a row of one-sided springs under a crowned, leaning tread.
//!
//! This is the contact of the axle's statics and rides: a tire is a spring under its own center, which pushes only.
//! On one hub that leans by γ the outer of two tires carries k s γ more than the inner, s apart, until the inner one is
//! off the road. What a tire carries is then shared by its ribs. Angles are small: a rib at y lies y γ lower.
//!
//! The air of a tire presses on all ribs nearly alike; its sidewalls carry `S = s F₀ (δ/δ₀)²` at a deflection δ, with the
//! share s under the rated load F₀ at the rated inflation, and put it on the shoulders. So a tire that is low or overloaded
//! stands on its shoulders, one that is hard or light on its center. The square is assumed: sidewalls bulge, and stiffen
//! as they do. Trend: under truck tires the stress at the middle follows the inflation and that at the edges the load (M.
//! De Beer, C. Fisher, Stress-In-Motion (SIM) system for capturing tri-axial tyre-road interaction in the contact patch,
//! Measurement 46 (2013) 2155-2173; the trend from memory).

use crate::face::{FittedTire, Rib};
use crate::{Face, Pose, TreadError};

/// A face under load.
#[derive(Debug, Clone, PartialEq)]
pub struct Pressed {
    /// Deflection of a rib without crown in the middle of each tire, m; negative where only ribs far from it touch.
    pub middle: Vec<f64>,
    /// Deflection of each rib, zero where it does not touch, m.
    pub deflection: Vec<f64>,
    /// Load of each rib, N.
    pub load: Vec<f64>,
}

/// A tire that carries a load and leans.
#[derive(Debug, Clone, Copy)]
pub(crate) struct PressedTire {
    /// Vertical stiffness of a rib, N/m.
    stiffness: f64,
    /// Lean of the tread, rad.
    lean: f64,
    /// How much deeper a rib that is all shoulder presses for the sidewalls' load, m.
    deeper: f64,
    /// Deflection of a rib without crown in the middle of the tire, m.
    middle: f64,
    /// The same of loads, the sidewalls' counted.
    evenly: f64,
}

/// A one-sided spring under a plate: how much lower than the others it meets the plate, m, and its stiffness, N/m.
#[derive(Debug, Clone, Copy)]
struct PlateSpring {
    offset: f64,
    stiffness: f64,
}

impl Face {
    /// Deflection `δ = max(0, middle + y γ − crown)` and load of each rib, with the deflection in the middle of each tire at
    /// which its ribs together carry its load; toe and the side forces that tilt a tread are not counted.
    ///
    /// A rib carries `k max(0, m + y γ − crown + d z)`, with z the share of its width in a shoulder, d what makes the
    /// shoulders carry the sidewalls' load together, and m from the sum. Loads grow piecewise linearly with the deflection,
    /// so that it is found exactly: ribs touch in the order of their offsets, and the deflection that a number of them makes
    /// is the answer where no further rib would touch.
    ///
    /// # Errors
    /// [`TreadError::Value`] for a load that is not finite, or a camber beyond ±0.2 rad.
    pub fn pressed(&self, pose: Pose) -> Result<Pressed, TreadError> {
        pose.check()?;
        let mut pressed = Pressed { middle: Vec::new(), deflection: Vec::new(), load: Vec::new() };
        for (tire, load) in self.tires.iter().zip(self.tire_loads(&self.tires, pose)) {
            let own = self.press(tire, load, pose.camber);
            pressed.middle.push(own.middle);
            pressed.deflection.extend(self.ribs.iter().map(|rib| own.deflection(rib)));
            pressed.load.extend(self.ribs.iter().map(|rib| own.load(rib)));
        }
        Ok(pressed)
    }

    /// Load of each tire: springs under their centers on one hub, a larger tire the lower.
    pub(crate) fn tire_loads(&self, tires: &[FittedTire], pose: Pose) -> Vec<f64> {
        let spring = |tire: &FittedTire| PlateSpring {
            offset: tire.place * pose.camber + tire.radius - self.carcass.radius,
            stiffness: self.stiffness_at(tire.inflation),
        };
        let springs = tires.iter().map(spring);
        let mean = plate_deflection(springs.clone(), pose.load.max(0.0));
        springs.map(|spring| spring.stiffness * (mean + spring.offset).max(0.0)).collect()
    }

    /// A tire that carries a load and leans.
    pub(crate) fn press(&self, tire: &FittedTire, load: f64, lean: f64) -> PressedTire {
        let stiffness = self.stiffness_at(tire.inflation) / self.tread.ribs as f64;
        let shoulders: f64 = self.ribs.iter().map(|rib| rib.shoulder).sum();
        let deeper = self.sidewall_load(tire, load) / (stiffness * shoulders);
        let mut pressed = PressedTire { stiffness, lean, deeper, middle: 0.0, evenly: 0.0 };
        let springs = |offset: fn(&PressedTire, &Rib) -> f64| {
            self.ribs.iter().map(move |rib| PlateSpring { offset: offset(&pressed, rib), stiffness })
        };
        let middle = plate_deflection(springs(PressedTire::offset), load);
        let evenly = plate_deflection(springs(PressedTire::offset_of_load), load);
        (pressed.middle, pressed.evenly) = (middle, evenly);
        pressed
    }

    /// What the sidewalls of a tire carry through its shoulders, N: `s F₀ (δ/δ₀)²`, at most its load.
    fn sidewall_load(&self, tire: &FittedTire, load: f64) -> f64 {
        let rated = self.carcass.rated_load;
        let over_rated = load / rated * self.carcass.stiffness / self.stiffness_at(tire.inflation);
        (self.tread.sidewall_share * rated * over_rated * over_rated).min(load)
    }
}

impl PressedTire {
    /// How much lower than the middle of the tread a rib meets the road, m.
    fn offset(&self, rib: &Rib) -> f64 {
        rib.on_tire * self.lean - rib.crown
    }

    /// The same with what makes the shoulders carry the sidewalls' load.
    fn offset_of_load(&self, rib: &Rib) -> f64 {
        self.offset(rib) + self.deeper * rib.shoulder
    }

    /// Deflection of a rib, m.
    pub(crate) fn deflection(&self, rib: &Rib) -> f64 {
        (self.middle + self.offset(rib)).max(0.0)
    }

    /// Load of a rib, N.
    pub(crate) fn load(&self, rib: &Rib) -> f64 {
        self.stiffness * (self.evenly + self.offset_of_load(rib)).max(0.0)
    }
}

/// The deflection of a plate at which springs under it carry `total`: `Σ k max(0, deflection + offset)`.
///
/// The force grows ever faster with the deflection, so that of springs which do not touch where all those at hand carry it
/// none touches at less: they are left out, and what is left is tried again.
fn plate_deflection(springs: impl Iterator<Item = PlateSpring> + Clone, total: f64) -> f64 {
    let (mut deflection, mut touching) = (f64::INFINITY, usize::MAX);
    loop {
        let (mut forces, mut stiffness, mut count) = (0.0, 0.0, 0);
        for spring in springs.clone().filter(|spring| deflection + spring.offset > 0.0) {
            forces += spring.stiffness * spring.offset;
            stiffness += spring.stiffness;
            count += 1;
        }
        if count == 0 || count >= touching {
            return deflection;
        }
        (deflection, touching) = ((total - forces) / stiffness, count);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Carcass, Tread};

    #[test]
    fn the_plate_carries_the_total() {
        let spring = |(offset, stiffness)| PlateSpring { offset, stiffness };
        let springs = [(0.3, 1.0), (-0.2, 2.0), (0.1, 0.5), (-0.9, 1.5)].map(spring);
        for total in [0.0, 0.05, 0.2, 0.7, 1.0, 3.0, 10.0] {
            let deflection = plate_deflection(springs.into_iter(), total);
            let each = springs.iter().map(|one| one.stiffness * (deflection + one.offset).max(0.0));
            let sum: f64 = each.sum();
            assert!((sum - total).abs() < 1e-12, "{total}: {sum}");
        }
    }

    /// By hand: 0.15 of the rated load at the rated inflation; at 0.7 of it the tire is (0.15 + 0.85 × 0.7) = 0.745 as stiff,
    /// so that the sidewalls carry 0.15/0.745² of the load; under half of the load a quarter of what they carried.
    #[test]
    fn sidewalls_carry_by_the_square_of_the_deflection() {
        let tread = Tread { crown: 0.0, ..Tread::usual(0.22).unwrap() };
        let carcass = Carcass { radius: 0.51, stiffness: 0.9e6, rated_load: 20e3 };
        for (inflation, load, share) in
            [(760e3, 20e3, 0.15), (532e3, 20e3, 0.15 / 0.745_f64.powi(2)), (760e3, 10e3, 0.075)]
        {
            let face = Face::new(tread, carcass, &[0.0]).unwrap().with_inflations(&[inflation]).unwrap();
            let ribs = face.pressed(Pose { load, ..Pose::default() }).unwrap().load;
            let evenly = (1.0 - share) * load / 5.0;
            assert!((ribs[2] - evenly).abs() < 1e-9 * load, "{ribs:?}");
            assert!((ribs[4] - evenly - 0.5 * share * load).abs() < 1e-9 * load, "{ribs:?}");
        }
    }
}
