//! The place of the peak stress, where the stress of a slightly different axle is read too.

use axlebow_fe::{BeamForces, Loads, State};

use crate::Axle;
use crate::mesh::frame::Frame;
use crate::mesh::stressed_section::StressedMember;
use crate::mesh::stretch::Stretch;
use crate::outcome::DiagramPoint;
use crate::statics::along::{POINTS, peak_stress};

/// A point of the axle or of a stiffener in a stretch, and whether tension or compression is read there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct StressPlace {
    stretch: usize,
    /// 0 the axle, then the stiffeners beside it.
    member: usize,
    /// Share of the stretch from its right end.
    share: f64,
    /// 1 for tension, −1 for compression.
    sign: f64,
}

impl StressPlace {
    /// Where the stress of a diagram is greatest.
    pub(crate) fn of_peak((axle, frame): (&Axle, &Frame), state: &State, diagram: &[DiagramPoint]) -> Self {
        let peak = peak_stress(diagram);
        let found = diagram.iter().position(|point| *point == peak).unwrap_or(0);
        // A diagram runs from left to right, stretches and their shares from right to left.
        let stretch = frame.stretches.len() - 1 - found / POINTS;
        let share = 1.0 - (found % POINTS) as f64 / (POINTS - 1) as f64;
        let place = StressPlace { stretch, member: 0, share, sign: 1_f64.copysign(peak.stress) };
        let members = 0..frame.stretches[stretch].lines().count();
        let there = members.map(|member| StressPlace { member, ..place });
        let stress = |place: &StressPlace| place.sign * place.stress(axle, frame, state);
        there.reduce(|a, b| if stress(&b) > stress(&a) { b } else { a }).unwrap_or(place)
    }

    /// Position, m.
    pub(crate) fn y(&self, frame: &Frame) -> f64 {
        let stretch = &frame.stretches[self.stretch];
        stretch.start_y + self.along(stretch)
    }

    /// Stress there, Pa.
    pub(crate) fn stress(&self, axle: &Axle, frame: &Frame, state: &State) -> f64 {
        let stretch = &frame.stretches[self.stretch];
        let member = self.member(axle, frame);
        let terms = self.terms(&member, stretch, &state.beam_forces(member.line.beam));
        member.section.extreme_stress_towards(self.sign, terms)
    }

    /// Adds the gradient of that stress with respect to the motions of the nodes: that of the fiber that is stressed most.
    pub(crate) fn add_gradient(
        &self,
        (axle, frame): (&Axle, &Frame),
        state: &State,
        (loads, column): (&mut Loads, usize),
    ) {
        let stretch = &frame.stretches[self.stretch];
        let member = self.member(axle, frame);
        let terms = self.terms(&member, stretch, &state.beam_forces(member.line.beam));
        let fiber = member.section.extreme_fiber_towards(self.sign, terms);
        let weights = std::array::from_fn(|i| {
            let mut start = [0.0; 6];
            start[i] = 1.0;
            let unit = BeamForces { start, line_load: [0.0; 3] };
            fiber.stress(self.terms(&member, stretch, &unit))
        });
        loads.add_beam_reading(&frame.structure, column, member.line.beam, weights);
    }

    fn member(&self, axle: &Axle, frame: &Frame) -> StressedMember {
        let mut members = StressedMember::each(axle, &frame.stretches[self.stretch], self.y(frame));
        members.nth(self.member).expect("a nearby axle has the same stiffeners")
    }

    fn along(&self, stretch: &Stretch) -> f64 {
        self.share * (stretch.end_y - stretch.start_y)
    }

    fn terms(&self, member: &StressedMember, stretch: &Stretch, carried: &BeamForces) -> [f64; 3] {
        member.terms(&carried.at(self.along(stretch)))
    }
}
