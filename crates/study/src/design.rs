//! One design: from a point of a study to its result.

use axlebow_axle::{CamberSplit, Sides, StaticDesign};
use axlebow_fe::StaticSystem;
use axlebow_model::{Model, Problems};

use crate::{Point, Study};

/// What a study asks of a design.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Design {
    /// Mass of the bare axle: tube or housing and spindles, kg.
    pub axle_mass: f64,
    /// Camber change of each wheel, positive with the tire's top outward, rad.
    pub camber_change: Sides<f64>,
    /// Camber change of each wheel by source, rad.
    pub split: Sides<CamberSplit>,
    /// Fibre stress of largest magnitude along the axle, tension positive, Pa.
    pub peak_stress: f64,
    /// Height of the axle's centre above the line through the hubs, m.
    pub bow: f64,
}

impl Study {
    /// The model of a design.
    ///
    /// # Errors
    /// Why there is no such axle, in words.
    pub(crate) fn model(&self, point: &Point) -> Result<Model, String> {
        let mut document = self.variants[point.variant].document.clone();
        for (varied, &value) in self.varied.iter().zip(&point.values) {
            document.set_number(&varied.path, value).map_err(|refusal| refusal.to_string())?;
        }
        Model::of(&document).map_err(|problems| in_words(&problems))
    }

    /// The result of a design, in the storage of `system`.
    ///
    /// # Errors
    /// Why there is none, in words.
    pub(crate) fn design(&self, point: &Point, system: &mut StaticSystem) -> Result<Design, String> {
        let model = self.model(point)?;
        let case = model.cases.iter().find(|case| case.name == self.case);
        let case = case.ok_or_else(|| format!("there is no load case {}", self.case))?;
        let solved = StaticDesign::with_system(&model.axle, system).and_then(|design| design.case(case));
        let solved = solved.map_err(|error| error.to_string())?;
        let wheel = |side| solved.wheels.of(side);
        let design = Design {
            axle_mass: model.axle.body.mass(),
            camber_change: Sides::each(|side| wheel(side).camber_change),
            split: Sides::each(|side| wheel(side).split),
            peak_stress: solved.peak_stress,
            bow: solved.bow,
        };
        if design.is_finite() { Ok(design) } else { Err("the result is not finite".to_owned()) }
    }
}

impl Design {
    fn is_finite(&self) -> bool {
        let camber = [self.camber_change.left, self.camber_change.right];
        camber.iter().chain(&[self.axle_mass, self.peak_stress, self.bow]).all(|value| value.is_finite())
    }
}

fn in_words(problems: &Problems) -> String {
    problems.iter().map(|problem| problem.message.as_str()).collect::<Vec<_>>().join("; ")
}
