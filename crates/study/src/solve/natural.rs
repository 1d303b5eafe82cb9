//! Natural modes beside a study over speed and length of a bump: where the bump's length passes in one period.

use axlebow_axle::modes;
use axlebow_model::Model;

use crate::ask::{Study, Variant};

/// Modes that are looked through.
const COUNT: usize = 16;
/// Names of the modes that a bump under both wheels excites.
const EVEN: [&str; 3] = ["body bounce", "wheel hop", "vertical bow"];
/// The one that a bump under one wheel excites too.
const ODD: &str = "axle tramp";

/// A natural mode of a variant.
#[derive(Debug, Clone, PartialEq)]
pub struct NaturalMode {
    /// What moves.
    pub name: String,
    /// Undamped natural frequency, Hz.
    pub frequency: f64,
}

impl Study {
    /// The main modes of each variant, if speed and a length of the road are varied and nothing else; else none.
    pub(crate) fn natural_modes(&self) -> Vec<Vec<NaturalMode>> {
        let of_road: Vec<&str> = self.varied.iter().filter_map(|varied| varied.of_road()).collect();
        let wave = of_road.iter().any(|path| ["length", "wavelength"].contains(path));
        let two = self.varied.len() == 2 && of_road.contains(&"speed") && wave;
        let Some(ride) = self.rides.first().filter(|_| two) else { return Vec::new() };
        let even = ride.road.road.left == ride.road.road.right;
        let is_main = |name: &str| EVEN.contains(&name) || (!even && name == ODD);
        let main = |variant: &Variant| {
            let model = Model::of(&variant.document).ok()?;
            let found = modes(&model.axle, ride.axle_load(&model.axle), COUNT).ok()?;
            let main = found.modes.into_iter().filter(|mode| is_main(&mode.name));
            Some(main.map(|mode| NaturalMode { name: mode.name, frequency: mode.frequency }).collect())
        };
        self.variants.iter().map(|variant| main(variant).unwrap_or_default()).collect()
    }
}
