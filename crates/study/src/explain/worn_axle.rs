//! An axle in a state, and how its tires wear in it.

use axlebow_axle::tread::{Duty, DutyPart, Pose, TireWear, Tread, Worn};
use axlebow_axle::{
    Actions, Axle, AxleError, LoadCase, Running, Seat, Side, Sides, StaticDesign, TireFit, Wheel, WheelEnd,
    tire_faces,
};
use axlebow_model::{CaseSheet, Document, Model};

use super::parameter::Parameter;

/// Free tilt of a hub within its endplay from which its wander is followed, rad.
const FELT_TILT: f64 = 0.02 * std::f64::consts::PI / 180.0;
/// Wear of a rib that hardly touches, over the mean.
const LEAST_WEAR: f64 = 1e-3;
/// Least share of the forces that a duty asks for which stays within friction when they are scaled.
const MOST_OF_FRICTION: f64 = 0.85;

/// An axle whose state can be changed.
pub struct WornAxle<'a> {
    axle: &'a Axle,
    document: &'a Document,
    parameters: Vec<Parameter>,
}

/// How the tires of an axle wear in a state.
#[derive(Debug, Clone, PartialEq)]
pub struct WearPattern {
    /// Logarithm of the wear of each rib: of the left tires, outermost first, then of the right ones, the inner shoulder of each
    /// first.
    pub log_wear: Vec<f64>,
    /// Share of the scuff of each tire that is one-sided, positive by toe-in.
    pub feathering: Vec<f64>,
}

impl<'a> WornAxle<'a> {
    /// An axle, and its file, from which walls of other thickness are built.
    pub fn of(axle: &'a Axle, document: &'a Document) -> Self {
        WornAxle { axle, document, parameters: Parameter::of(axle) }
    }

    /// What decides how its tires wear.
    pub fn parameters(&self) -> &[Parameter] {
        &self.parameters
    }

    /// The axle as its file says.
    pub fn axle(&self) -> &Axle {
        self.axle
    }

    /// Place of a parameter among those of the axle.
    pub fn place(&self, parameter: Parameter) -> Option<usize> {
        self.parameters.iter().position(|own| *own == parameter)
    }

    /// The state of a sound axle.
    pub fn usual(&self) -> Vec<f64> {
        self.parameters.iter().map(|own| own.usual(self.axle)).collect()
    }

    fn value(&self, state: &[f64], parameter: Parameter) -> f64 {
        self.place(parameter).map_or(0.0, |place| state[place])
    }

    /// How the tires wear in a state, the value of each parameter in turn.
    ///
    /// # Errors
    /// As [`axlebow_axle::tires`].
    pub fn pattern(&self, state: &[f64]) -> Result<WearPattern, AxleError> {
        let axle = self.in_state(state)?;
        let load = self.value(state, Parameter::Load).exp() * axle.loading.rated_load;
        let case = StaticDesign::of(&axle)?.case(&mean_load(load))?;
        let faces = tire_faces(&axle, &case)?;
        let mut pattern = WearPattern { log_wear: Vec::new(), feathering: Vec::new() };
        for side in Side::BOTH {
            let face = faces.of(side);
            let tilt = self.free_tilt(state, side);
            match tilt < FELT_TILT {
                true => pattern.add(&[&face.worn]),
                false => {
                    let wandering = wander(&axle, side, (face.pose, tilt))?;
                    pattern.add(&wandering.iter().collect::<Vec<_>>());
                }
            }
        }
        Ok(pattern)
    }

    /// How far a hub tilts freely within its endplay, either way: radial play over the span of the bearings.
    fn free_tilt(&self, state: &[f64], side: Side) -> f64 {
        let end = self.axle.wheel_ends.of(side);
        let endplay = self.value(state, Parameter::Endplay(side)).max(0.0);
        endplay * end.cup_angle.tan() / (end.outer_bearing - end.inner_bearing)
    }

    /// The axle in a state; its bearings are taken without play, whose tilt is followed at the tire face.
    fn in_state(&self, state: &[f64]) -> Result<Axle, AxleError> {
        let value = |parameter| self.value(state, parameter);
        let own = self.axle;
        let end = |side: Side| {
            let end = *own.wheel_ends.of(side);
            let (camber, toe) = (value(Parameter::Camber(side)), value(Parameter::Toe(side)));
            WheelEnd { endplay: 0.0, camber: end.camber + camber, toe: end.toe + toe, ..end }
        };
        let softer = value(Parameter::SeatStiffness).exp();
        let seat = |side: Side| {
            let seat = *own.seats.of(side);
            Seat { rotational_stiffness: seat.rotational_stiffness * softer, ..seat }
        };
        let wheels = Sides { left: self.wheel(state, Side::Left)?, right: self.wheel(state, Side::Right)? };
        let body = match value(Parameter::Wall) {
            0.0 => own.body.clone(),
            thicker => self.with_wall(thicker.exp()).unwrap_or_else(|| own.body.clone()),
        };
        let skew = own.running.skew + value(Parameter::Skew);
        let friction = wheels.left.tread().friction;
        let forces = [Parameter::SideForces, Parameter::ForwardForces].map(|own| value(own).exp());
        Ok(Axle {
            body,
            wheel_ends: Sides::each(end),
            seats: Sides::each(seat),
            wheels,
            running: Running {
                duty: scaled(&own.running.duty, forces, friction)?,
                skew,
                ..own.running.clone()
            },
            ..own.clone()
        })
    }

    fn wheel(&self, state: &[f64], side: Side) -> Result<Wheel, AxleError> {
        let value = |parameter| self.value(state, parameter);
        let wheel = *self.axle.wheels.of(side);
        let tread = *wheel.tread();
        let within = |share: f64, least: f64, most: f64| share.clamp(least, most);
        let tread = Tread {
            crown: (tread.crown + value(Parameter::Crown)).max(0.0),
            sidewall_share: within(tread.sidewall_share + value(Parameter::SidewallShare), 0.0, 0.45),
            shear_modulus: tread.shear_modulus * value(Parameter::ShearModulus).exp(),
            ..tread
        };
        let mut inflation = [None; 2];
        for (own, place) in inflation.iter_mut().zip(wheel.tires()) {
            let more = value(Parameter::Inflation) + value(Parameter::TireInflation(side, place.slot));
            *own = Some(place.inflation * more.exp());
        }
        let fit = *wheel.fit();
        let outer_less_inner = fit.outer_less_inner + value(Parameter::OuterLessInner(side));
        let tilt_share = within(fit.tilt_share + value(Parameter::TiltShare), 0.0, 1.0);
        let outset = wheel.outset() + value(Parameter::Outset);
        wheel.with_outset(outset)?.with_tread(tread)?.with_fit(TireFit {
            inflation,
            outer_less_inner,
            tilt_share,
        })
    }

    /// Thickness of the wall as the axle's file says, m; none where it has no key for it.
    pub fn wall(&self) -> Option<f64> {
        self.document.number(self.wall_path()?).ok()
    }

    fn wall_path(&self) -> Option<&'static str> {
        let paths = [CaseSheet::TUBE_WALL, CaseSheet::HOUSING_WALL];
        paths.into_iter().find(|path| self.document.number(path).is_ok())
    }

    /// The body with another wall; none where the file has no wall to change or cannot have this one.
    fn with_wall(&self, ratio: f64) -> Option<axlebow_axle::Body> {
        let wall = ratio * self.wall()?;
        let mut document = self.document.clone();
        document.set_number(self.wall_path()?, wall).ok()?;
        Some(Model::of(&document).ok()?.axle.body)
    }
}

/// A wheel that wanders evenly within its free tilt in camber and toe: four poses with the variance of an even spread.
fn wander(axle: &Axle, side: Side, (pose, tilt): (Pose, f64)) -> Result<Vec<Worn>, AxleError> {
    let face = axle.tire_face(side)?;
    let off = tilt * (2.0_f64 / 3.0).sqrt();
    let poses = [(off, 0.0), (-off, 0.0), (0.0, off), (0.0, -off)];
    let at = |(camber, toe): (f64, f64)| {
        Ok::<_, AxleError>(face.worn(Pose { camber: pose.camber + camber, toe: pose.toe + toe, ..pose })?)
    };
    poses.into_iter().map(at).collect()
}

fn mean_load(axle_load: f64) -> LoadCase {
    LoadCase {
        name: "mean-load".to_owned(),
        description: "The mean load of the axle over its distance.".to_owned(),
        dynamic_factor: 1.0,
        actions: Actions { axle_load, gravity: 1.0, ..Actions::default() },
    }
}

/// The duty with its side forces and its forces along the road multiplied, within friction.
fn scaled(duty: &Duty, [side, forward]: [f64; 2], friction: f64) -> Result<Duty, AxleError> {
    if side == 1.0 && forward == 1.0 {
        return Ok(duty.clone());
    }
    let most = MOST_OF_FRICTION * friction;
    let part = |own: &DutyPart| {
        let (side, forward) = (own.side * side, own.forward * forward);
        let within = (most / f64::hypot(side, forward)).min(1.0);
        DutyPart { share: own.share, side: side * within, forward: forward * within }
    };
    Ok(Duty::stated(duty.parts().iter().map(part).collect())?)
}

impl WearPattern {
    /// Adds the tires of one end by the mean over its poses.
    fn add(&mut self, poses: &[&Worn]) {
        let upright = poses[0].upright;
        for number in 0..poses[0].tires.len() {
            let tires: Vec<&TireWear> = poses.iter().map(|worn| &worn.tires[number]).collect();
            let sum = |value: &dyn Fn(&TireWear) -> f64| tires.iter().map(|tire| value(tire)).sum::<f64>();
            let ribs = tires[0].ribs.len();
            let mean = |rib: usize| sum(&|tire| tire.ribs[rib].wear) / tires.len() as f64;
            self.log_wear.extend((0..ribs).map(|rib| mean(rib).max(LEAST_WEAR * upright).ln()));
            let one_sided = sum(&|tire| tire.ribs.iter().map(|rib| rib.scuff.inboard_less_outboard).sum());
            let energy = sum(&|tire| tire.ribs.iter().map(|rib| rib.scuff.energy).sum());
            self.feathering.push(if energy > 0.0 { one_sided / energy } else { 0.0 });
        }
    }
}
