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

use crate::face::FittedTire;
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
            pressed.middle.push(self.press(
                tire,
                load,
                pose.camber,
                [&mut pressed.deflection, &mut pressed.load],
            ));
        }
        Ok(pressed)
    }

    /// Load of each tire: springs under their centers on one hub, a larger tire the lower.
    pub(crate) fn tire_loads(&self, tires: &[FittedTire], pose: Pose) -> Vec<f64> {
        let spring = |tire: &FittedTire| PlateSpring {
            offset: tire.place * pose.camber + tire.radius - self.carcass.radius,
            stiffness: self.stiffness_at(tire.inflation),
        };
        let springs: Vec<PlateSpring> = tires.iter().map(spring).collect();
        let mean = plate_deflection(&springs, pose.load.max(0.0));
        springs.iter().map(|spring| spring.stiffness * (mean + spring.offset).max(0.0)).collect()
    }

    /// Adds deflections and loads of the ribs of a tire that carries a load and leans; returns the deflection in its middle.
    pub(crate) fn press(
        &self,
        tire: &FittedTire,
        load: f64,
        lean: f64,
        [deflections, loads]: [&mut Vec<f64>; 2],
    ) -> f64 {
        let stiffness = self.stiffness_at(tire.inflation) / self.tread.ribs as f64;
        let spring = |offset: f64| PlateSpring { offset, stiffness };
        let mut springs: Vec<PlateSpring> =
            self.ribs.iter().map(|rib| spring(rib.on_tire * lean - rib.crown)).collect();
        let middle = plate_deflection(&springs, load);
        deflections.extend(springs.iter().map(|spring| (middle + spring.offset).max(0.0)));
        let shoulders: f64 = self.ribs.iter().map(|rib| rib.shoulder).sum();
        let deeper = self.sidewall_load(tire, load) / (stiffness * shoulders);
        for (spring, rib) in springs.iter_mut().zip(&self.ribs) {
            spring.offset += deeper * rib.shoulder;
        }
        let evenly = plate_deflection(&springs, load);
        loads.extend(springs.iter().map(|spring| stiffness * (evenly + spring.offset).max(0.0)));
        middle
    }

    /// What the sidewalls of a tire carry through its shoulders, N: `s F₀ (δ/δ₀)²`, at most its load.
    fn sidewall_load(&self, tire: &FittedTire, load: f64) -> f64 {
        let rated = self.carcass.rated_load;
        let over_rated = load / rated * self.carcass.stiffness / self.stiffness_at(tire.inflation);
        (self.tread.sidewall_share * rated * over_rated * over_rated).min(load)
    }
}

/// The deflection of a plate at which springs under it carry `total`: `Σ k max(0, deflection + offset)`.
fn plate_deflection(springs: &[PlateSpring], total: f64) -> f64 {
    let mut falling = springs.to_vec();
    falling.sort_by(|a, b| b.offset.total_cmp(&a.offset));
    let (mut forces, mut stiffness, mut deflection) = (0.0, 0.0, 0.0);
    for (i, spring) in falling.iter().enumerate() {
        forces += spring.stiffness * spring.offset;
        stiffness += spring.stiffness;
        deflection = (total - forces) / stiffness;
        if falling.get(i + 1).is_none_or(|next| deflection + next.offset <= 0.0) {
            break;
        }
    }
    deflection
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
            let deflection = plate_deflection(&springs, total);
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
