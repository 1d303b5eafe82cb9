//! First derivatives of a static case with respect to anything that an axle is made of, without solving it again.
//!
//! The whole equilibrium is linear in the motions u of the axle and in what the ground does, x (tire loads, side forces,
//! heave, roll): `K u = B x + g`, `A x + Dᵀ u = r`. With the duals λ and μ of a reading J,
//! `K λ = ∂J/∂u − D μ`, `(A + Dᵀ K⁻¹ B)ᵀ μ = Bᵀ K⁻¹ ∂J/∂u`, the reading of a slightly different axle (primed) is
//!
//! `J'(u) + λ·(B' x + g' − K' u) + μ·(r' − A' x − D'ᵀ u)`
//!
//! at the solution of this axle, to first order in the difference. Where a node lies elsewhere along the other axle, u and
//! λ are carried there rigidly, so that a short stiff stretch does not feel the rotation of the whole as its own bend
//! (the known weakness of the semi-analytical method). Its central difference along any change of the axle is
//! therefore the derivative of the solution. The small matrix is that of the ground equations, so that a reading takes
//! one solution with the factor that is there. On an uneven road the roll of the body on the even one is a reading too.
//!
//! Source: R. T. Haftka & Z. Gürdal, Elements of Structural Optimization, 3rd ed. 1992, sec. 7.2 and 7.3 (adjoint and
//! semi-analytical method), from memory.

use axlebow_fe::{Attachment, Loads, State, StaticSystem};

use crate::assembly::bearing_play::has_play;
use crate::mesh::frame::Frame;
use crate::mesh::plan::VehicleBody;
use crate::parts::load_case::LoadCase;
use crate::road_contact::ground::{
    COLUMNS, Case, Footing, FootingDual, Footings, GroundModel, Hubs, hub_motion, hubs_in,
};
use crate::sensitivity::stress_place::StressPlace;
use crate::statics::along;
use crate::statics::hub_line::HubLine;
use crate::statics::seat_line::SeatLineFrame;
use crate::statics::split::camber_load;
use crate::statics::static_design::{StaticDesign, unit_loads};
use crate::{Axle, AxleError, Side, Sides};

/// What is read of a static case.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CaseReadings {
    /// Camber change of each wheel, rad.
    pub camber_change: Sides<f64>,
    /// Height of the axle's center above the line through the hubs, m.
    pub bow: f64,
    /// Stress at the place where it is greatest in the axle that was solved, Pa.
    pub peak_stress: f64,
    /// Mass of the bare axle, kg.
    pub axle_mass: f64,
}

impl CaseReadings {
    /// Each reading times a factor.
    pub fn times(&self, factor: f64) -> Self {
        CaseReadings::default().plus(self, factor)
    }

    /// These readings plus `factor` times others.
    pub fn plus(&self, other: &Self, factor: f64) -> Self {
        let camber = |side| self.camber_change.of(side) + factor * other.camber_change.of(side);
        CaseReadings {
            camber_change: Sides::each(camber),
            bow: self.bow + factor * other.bow,
            peak_stress: self.peak_stress + factor * other.peak_stress,
            axle_mass: self.axle_mass + factor * other.axle_mass,
        }
    }

    /// Whether each is exactly zero.
    pub fn is_zero(&self) -> bool {
        *self == CaseReadings::default()
    }

    /// The side whose wheel leans most; the left one of two alike.
    pub fn leaning_side(&self) -> Side {
        let Sides { left, right } = self.camber_change;
        if right.abs() > left.abs() * (1.0 + ALIKE) { Side::Right } else { Side::Left }
    }
}

/// Share within which two wheels lean alike.
const ALIKE: f64 = 1e-9;

/// Readings that have a dual: left and right camber change, bow, stress.
const READINGS: usize = 4;

/// A solved case, ready to be read for slightly different axles.
#[derive(Debug)]
pub struct Adjoint {
    /// Names of each place along the axle: another axle must have the same.
    layout: Vec<Vec<String>>,
    /// Position of each node, m.
    nodes: Vec<f64>,
    footings: Footings,
    peak: StressPlace,
    peak_y: f64,
    own: CaseReadings,
    /// On the road as the case has it.
    standing: Standing<READINGS>,
    /// On the even road, where the case has an uneven one; its only reading is the roll of the body.
    even: Option<Standing<1>>,
}

/// Motions on one road with the duals of some readings.
#[derive(Debug)]
struct Standing<const N: usize> {
    motions: Vec<[f64; 6]>,
    duals: [Dual; N],
}

/// Dual of a reading.
#[derive(Debug, Clone)]
struct Dual {
    motions: Vec<[f64; 6]>,
    footing: FootingDual,
}

impl Adjoint {
    /// Solves a case of an axle and the duals of its readings.
    ///
    /// # Errors
    /// As [`StaticDesign::case`]; [`AxleError::NoDerivative`] for bearings with play, which part and press.
    pub fn of(axle: &Axle, case: &LoadCase) -> Result<Adjoint, AxleError> {
        if has_play(axle) {
            let reason = "bearings with endplay part and press, so that their motion is not smooth";
            return Err(AxleError::NoDerivative { reason });
        }
        let mut system = StaticSystem::new();
        let design = StaticDesign::with_system(axle, &mut system)?;
        let of_ground = Case::of(axle, case);
        let footings = design.ground().stands(&of_ground, &design.own_motion(&of_ground.own))?;
        let solved = Solved { design: &design, system: &system, case: of_ground };
        let (_, state) = design.loaded(case)?;
        let diagram = along::diagram(&design, &state, &SeatLineFrame::on_seats(&design, &state));
        let peak = StressPlace::of_peak((axle, &design.frame), &state, &diagram);
        let standing = solved.standing(&footings, &state, &peak)?;
        let even = footings.uneven.as_ref().map(|_| solved.even(&footings)).transpose()?;
        let own = read(axle, (&design.frame, &state), &peak);
        let (layout, peak_y) = (layout(&design.frame), peak.y(&design.frame));
        let nodes = positions(&design.frame);
        Ok(Adjoint { layout, nodes, footings, peak, peak_y, own, standing, even })
    }

    /// What the axle itself reads.
    pub fn own(&self) -> &CaseReadings {
        &self.own
    }

    /// Place of the peak stress, m.
    pub fn peak_stress_y(&self) -> f64 {
        self.peak_y
    }

    /// What a slightly different axle reads in its own form of the case, to first order in the difference; mass exactly.
    ///
    /// # Errors
    /// [`AxleError::NoDerivative`] where places along that axle fall together or part that do not in the one that was
    /// solved; [`AxleError::Wall`], [`AxleError::Fe`] where it cannot be built.
    pub fn nearby(&self, axle: &Axle, case: &LoadCase) -> Result<CaseReadings, AxleError> {
        let frame = Frame::of(axle, VehicleBody::AtRest)?;
        if has_play(axle) || layout(&frame) != self.layout {
            let reason = "stations of the axle fall together, or part";
            return Err(AxleError::NoDerivative { reason });
        }
        let loads = unit_loads(&frame, COLUMNS);
        let shifts = positions(&frame).iter().zip(&self.nodes).map(|(there, here)| there - here).collect();
        let (ground, case) = (GroundModel::of_unsolved(axle), Case::of(axle, case));
        let near = Near { frame: &frame, loads: &loads, ground, case, shifts };
        let rest = self.even.as_ref().map(|even| {
            let [missed] = near.missed((&self.footings.even, None), even);
            self.footings.even.roll() - missed
        });
        let footing = self.footings.uneven.as_ref().unwrap_or(&self.footings.even);
        let missed = near.missed((footing, rest), &self.standing);
        let state = near.state(footing, &self.standing.motions);
        let read = read(axle, (&frame, &state), &self.peak);
        Ok(CaseReadings {
            camber_change: Sides {
                left: read.camber_change.left - missed[0],
                right: read.camber_change.right - missed[1],
            },
            bow: read.bow - missed[2],
            peak_stress: read.peak_stress - missed[3],
            axle_mass: read.axle_mass,
        })
    }
}

/// A slightly different axle.
struct Near<'a> {
    frame: &'a Frame,
    loads: &'a Loads,
    ground: GroundModel,
    case: Case<'a>,
    /// How far each node lies from its place in the axle that was solved, m.
    shifts: Vec<f64>,
}

impl Near<'_> {
    /// Motions of the axle that was solved in this one.
    fn state(&self, footing: &Footing, motions: &[[f64; 6]]) -> State<'_> {
        let contact = self.ground.contact_of(footing, &self.case);
        State::of_motions(&self.frame.structure, self.loads, &contact.factors, &self.carried(motions))
    }

    /// Motions of the nodes of the axle that was solved, each carried rigidly to its place here.
    fn carried(&self, motions: &[[f64; 6]]) -> Vec<[f64; 6]> {
        let carried =
            |(&[ux, uy, uz, rx, ry, rz], y): (&[f64; 6], &f64)| [ux - rz * y, uy, uz + rx * y, rx, ry, rz];
        motions.iter().zip(&self.shifts).map(carried).collect()
    }

    /// What each dual makes of what that solution leaves unbalanced here.
    fn missed<const N: usize>(
        &self,
        (footing, rest): (&Footing, Option<f64>),
        standing: &Standing<N>,
    ) -> [f64; N] {
        let state = self.state(footing, &standing.motions);
        let hubs = hubs_in(&self.frame.hubs, &state);
        std::array::from_fn(|i| {
            let dual = &standing.duals[i];
            state.unbalanced_work(&self.carried(&dual.motions))
                + self.ground.missed((footing, rest), (&self.case, &hubs), &dual.footing)
        })
    }
}

/// The axle that is solved.
struct Solved<'a> {
    design: &'a StaticDesign<'a>,
    system: &'a StaticSystem,
    case: Case<'a>,
}

impl Solved<'_> {
    fn standing(
        &self,
        footings: &Footings,
        state: &State,
        peak: &StressPlace,
    ) -> Result<Standing<READINGS>, AxleError> {
        let (design, frame) = (self.design, &self.design.frame);
        let loads = gradients(design.axle, (frame, state), peak);
        let answers = self.system.solve(&frame.structure, loads)?;
        let footing = footings.uneven.as_ref().unwrap_or(&footings.even);
        let dual = |column: usize| {
            let motion = hub_motion(&frame.hubs, &answers, column);
            let dual = design.ground().dual(footing, &self.case, &motion).ok_or_else(edge)?;
            let own = answers.state(&frame.structure, column).all_motions();
            Ok::<_, AxleError>(self.with_ground(own, (footing, dual)))
        };
        Ok(Standing { motions: state.all_motions(), duals: [dual(0)?, dual(1)?, dual(2)?, dual(3)?] })
    }

    /// The even road, its reading the roll of the body.
    fn even(&self, footings: &Footings) -> Result<Standing<1>, AxleError> {
        let (design, footing) = (self.design, &footings.even);
        let contact = design.ground().contact_of(footing, &self.case);
        let dual = design.ground().dual_of_roll(footing, &self.case).ok_or_else(edge)?;
        let still = vec![[0.0; 6]; design.frame.structure.node_count()];
        let dual = self.with_ground(still, (footing, dual));
        Ok(Standing { motions: design.state(&contact.factors).all_motions(), duals: [dual] })
    }

    /// The dual K⁻¹(∂J/∂u − D μ), K⁻¹ ∂J/∂u being given.
    fn with_ground(&self, mut own: Vec<[f64; 6]>, (footing, dual): (&Footing, FootingDual)) -> Dual {
        let forces = self.design.ground().hub_forces(&dual, footing);
        let by_ground = self.design.state(forces.as_slice()).all_motions();
        for (own, other) in own.iter_mut().flatten().zip(by_ground.iter().flatten()) {
            *own -= other;
        }
        Dual { motions: own, footing: dual }
    }
}

fn edge() -> AxleError {
    AxleError::NoDerivative { reason: "the load is at the edge of lifting a tire" }
}

/// Gradients of the readings with respect to the motions of the nodes, one a column.
fn gradients(axle: &Axle, (frame, state): (&Frame, &State), peak: &StressPlace) -> Loads {
    let mut loads = Loads::new(&frame.structure, READINGS);
    for (column, side) in Side::BOTH.into_iter().enumerate() {
        add_hub_forces(&mut loads, (frame, column), &camber_load(side, axle.hub_distance()));
    }
    let (left, right) = (axle.wheel_ends.left.mounting_face, axle.wheel_ends.right.mounting_face);
    let mut chord = [0.0; COLUMNS];
    (chord[2], chord[8]) = (-right / axle.hub_distance(), -left / axle.hub_distance());
    add_hub_forces(&mut loads, (frame, 2), &chord);
    loads.add_force(2, &Attachment::at(frame.node_at(0.0)), [0.0, 0.0, 1.0]);
    peak.add_gradient((axle, frame), state, (&mut loads, 3));
    loads
}

fn add_hub_forces(loads: &mut Loads, (frame, column): (&Frame, usize), factors: &[f64; COLUMNS]) {
    let hubs = Hubs::from_column_slice(&factors[..12]);
    for (side, first) in Side::BOTH.into_iter().zip([0, 6]) {
        let at = Attachment::at(*frame.hubs.of(side));
        loads.add_force(column, &at, [hubs[first], hubs[first + 1], hubs[first + 2]]);
        loads.add_moment(column, &at, [hubs[first + 3], hubs[first + 4], hubs[first + 5]]);
    }
}

fn read(axle: &Axle, (frame, state): (&Frame, &State), peak: &StressPlace) -> CaseReadings {
    let line = HubLine { axle, frame, state };
    CaseReadings {
        camber_change: Sides::each(|side| line.camber_change(side)),
        bow: line.bow(),
        peak_stress: peak.stress(axle, frame, state),
        axle_mass: axle.mass(),
    }
}

fn positions(frame: &Frame) -> Vec<f64> {
    frame.structure.nodes().map(|node| frame.structure.position(node)[1]).collect()
}

fn layout(frame: &Frame) -> Vec<Vec<String>> {
    let names =
        |place: &crate::assembly::stations::Place| place.names().map(|name| name.to_string()).collect();
    frame.places.iter().map(names).collect()
}
