//! What the axle does at its tire faces, standing.

use axlebow_tread::{Carcass, Duty, DutyName, Face, Pose, Worn};

use crate::outcome::{CaseOutcome, Warning};
use crate::{Axle, AxleError, LoadCase, Running, Side, Sides, StaticDesign, Tire, TirePlace};

/// Result of [`tires`].
#[derive(Debug, Clone, PartialEq)]
pub struct TireOutcome {
    /// The duty in which the tires run.
    pub duty: DutyName,
    /// Load cases in the order asked for.
    pub cases: Vec<TireCase>,
    /// Things that the reader must know, each with what to do.
    pub warnings: Vec<Warning>,
}

/// The tire faces of one load case.
#[derive(Debug, Clone, PartialEq)]
pub struct TireCase {
    /// Name of the case.
    pub name: String,
    /// One sentence: what acts.
    pub description: String,
    /// Each wheel end.
    pub wheels: Sides<TireFace>,
    /// The same in each of the usual duties.
    pub duties: Vec<TireDuty>,
}

/// The tire faces of a load case in another duty.
#[derive(Debug, Clone, PartialEq)]
pub struct TireDuty {
    /// The duty.
    pub duty: DutyName,
    /// Each wheel end.
    pub wheels: Sides<TireFace>,
}

/// The tire face of one wheel end.
#[derive(Debug, Clone, PartialEq)]
pub struct TireFace {
    /// Load, camber against the road, and toe.
    pub pose: Pose,
    /// Rib loads, slip, scuff and wear.
    pub worn: Worn,
}

impl Axle {
    /// The tire face of one end.
    ///
    /// The unloaded radius is the loaded one and what a tire yields under its share of the rated load. A side force tilts a
    /// tire's tread by the share of its lateral compliance that is tilt, over its radius ([`TireFit`](crate::TireFit)).
    ///
    /// # Errors
    /// [`AxleError::Tread`].
    pub fn tire_face(&self, side: Side) -> Result<Face, AxleError> {
        let wheel = self.wheels.of(side);
        let of_tires = |value: &dyn Fn(TirePlace) -> f64| wheel.tires().map(value).collect::<Vec<_>>();
        let places = of_tires(&|place| place.outboard - wheel.outset());
        let Tire { vertical_stiffness: stiffness, lateral_stiffness, loaded_radius, .. } = *wheel.tire();
        let rated_load = 0.5 * self.loading.rated_load / places.len() as f64;
        let radius = loaded_radius + rated_load / stiffness;
        let carcass = Carcass { radius, stiffness, rated_load };
        let tilt = wheel.fit().tilt_share / (lateral_stiffness * radius);
        Ok(Face::new(*wheel.tread(), carcass, &places)?
            .with_inflations(&of_tires(&|place| place.inflation))?
            .with_radii(&of_tires(&|place| radius + place.larger))?
            .with_tilt_per_side_force(tilt)?
            .with_abrasion(self.running.abrasion)?
            .with_duty(self.running.duty.clone(), self.body.is_driven())?)
    }

    /// How much the axle's skew adds to the toe of a side, rad.
    pub(crate) fn skew_toe(&self, side: Side) -> f64 {
        side.sign() * self.running.skew
    }

    /// The same axle in another duty.
    pub fn in_duty(&self, duty: Duty) -> Axle {
        Axle { running: Running { duty, ..self.running.clone() }, ..self.clone() }
    }
}

/// Rib loads, scuff and wear of every tire face in each case.
///
/// # Errors
/// As [`crate::flex`]; [`AxleError::Tread`] for a wheel that leans or steers by more than 0.2 rad.
pub fn tires(axle: &Axle, cases: &[LoadCase]) -> Result<TireOutcome, AxleError> {
    let design = StaticDesign::of(axle)?;
    let own = faces(axle)?;
    let usual: Vec<(DutyName, Sides<Face>)> = DutyName::USUAL
        .into_iter()
        .filter_map(|name| Some((name, Duty::usual(name)?)))
        .map(|(name, duty)| Ok((name, faces(&axle.in_duty(duty))?)))
        .collect::<Result<_, AxleError>>()?;
    let solved: Vec<CaseOutcome> = cases.iter().map(|case| design.case(case)).collect::<Result<_, _>>()?;
    let of_case = |case: &CaseOutcome| -> Result<TireCase, AxleError> {
        Ok(TireCase {
            name: case.name.clone(),
            description: case.description.clone(),
            wheels: worn(axle, &own, case)?,
            duties: usual.iter().map(|own| in_duty(axle, own, case)).collect::<Result<_, _>>()?,
        })
    };
    let cases: Vec<TireCase> = solved.iter().map(of_case).collect::<Result<_, _>>()?;
    let lifted = cases.iter().find_map(|case| tire_warning(&case.name, &case.wheels));
    let warnings = lifted.into_iter().chain(crate::statics::warnings::warnings(axle, &solved)).collect();
    Ok(TireOutcome { duty: axle.running.duty.name(), cases, warnings })
}

/// Rib loads, scuff and wear of both tire faces in a case that is solved.
///
/// # Errors
/// [`AxleError::Tread`] for a wheel that leans or steers by more than 0.2 rad.
pub fn tire_faces(axle: &Axle, case: &CaseOutcome) -> Result<Sides<TireFace>, AxleError> {
    worn(axle, &faces(axle)?, case)
}

fn faces(axle: &Axle) -> Result<Sides<Face>, AxleError> {
    Ok(Sides { left: axle.tire_face(Side::Left)?, right: axle.tire_face(Side::Right)? })
}

fn in_duty(
    axle: &Axle,
    (duty, faces): &(DutyName, Sides<Face>),
    case: &CaseOutcome,
) -> Result<TireDuty, AxleError> {
    Ok(TireDuty { duty: *duty, wheels: worn(axle, faces, case)? })
}

fn worn(axle: &Axle, faces: &Sides<Face>, case: &CaseOutcome) -> Result<Sides<TireFace>, AxleError> {
    let face = |side: Side| -> Result<TireFace, AxleError> {
        let pose = pose(axle, case, side);
        Ok(TireFace { pose, worn: faces.of(side).worn(pose)? })
    };
    Ok(Sides { left: face(Side::Left)?, right: face(Side::Right)? })
}

/// How a hub stands on the road in a case: the axle's roll leans both wheels to one side, its skew steers them.
pub(crate) fn pose(axle: &Axle, case: &CaseOutcome, side: Side) -> Pose {
    let wheel = case.wheels.of(side);
    let camber = wheel.camber - side.sign() * case.axle_roll;
    Pose { load: wheel.vertical_load, camber, toe: wheel.toe + axle.skew_toe(side) }
}

/// A loaded tire with a rib off the road in a case.
pub fn tire_warning(case: &str, wheels: &Sides<TireFace>) -> Option<Warning> {
    let has_lifted = |face: &TireFace| {
        let mut tires = face.worn.tires.iter().filter(|tire| tire.load > 0.0);
        tires.any(|tire| tire.ribs.iter().any(|rib| rib.load == 0.0))
    };
    Side::BOTH.into_iter().any(|side| has_lifted(wheels.of(side))).then(|| Warning {
        text: format!("a rib is off the road in the case {case}"),
        advice: "check `crown`, `tire_vertical_stiffness` and inflation: tires do not run so for long"
            .to_owned(),
    })
}
