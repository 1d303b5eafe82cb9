//! Steady answers to harmonic and random input.
//!
//! With the sign `e^{iωt}` the answer to an input q of amplitude 1 is `H(ω) = oᵀ (K + iωC − ω²M)⁻¹ b (k + iωc)`.
//! A random input of one-sided spectral density G(f) gives an output of density `|H|² G`, whose integral over
//! the frequencies is its mean square (S. H. Crandall, W. D. Mark, Random Vibration in Mechanical Systems,
//! 1963, ch. 2, from memory).

use std::f64::consts::TAU;

use nalgebra::{Complex, DMatrix};

use crate::FeError;
use crate::linalg::{ComplexBand, ComplexColumns};
use crate::model::direction::Direction;
use crate::transient::{DynamicSystem, LinearDamper};

/// Where and how an input acts: the force along the direction is `stiffness·q + damping·q̇`.
#[derive(Debug, Clone, PartialEq)]
pub struct Excitation {
    /// Where it acts.
    pub direction: Direction,
    /// Force per input: 1 for a force itself, N/m for the motion of a base behind a spring.
    pub stiffness: f64,
    /// Force per rate of the input: N s/m for the motion of a base behind a damper.
    pub damping: f64,
}

impl Excitation {
    /// A force along a direction.
    pub fn force(direction: Direction) -> Self {
        Excitation { direction, stiffness: 1.0, damping: 0.0 }
    }
}

/// Answer of several outputs to one input over frequencies.
#[derive(Debug, Clone, PartialEq)]
pub struct FrequencyResponse {
    /// Frequencies, Hz.
    pub frequencies: Vec<f64>,
    /// For each output, its displacement per input as `[real, imaginary]` at each frequency.
    pub outputs: Vec<Vec<[f64; 2]>>,
}

impl DynamicSystem {
    /// Displacement along the outputs per unit of an input, at frequencies (Hz, zero or more), by a complex
    /// solution at each.
    ///
    /// Loads and laws of the system have no part in it: see [`DynamicSystem::linearized`] for the laws.
    ///
    /// # Errors
    /// [`FeError::ImpossibleDynamics`] for a frequency that is negative, not finite, or that of a resonance
    /// without damping, and for directions outside the system.
    pub fn frequency_response(
        &self,
        input: &Excitation,
        outputs: &[Direction],
        frequencies: &[f64],
    ) -> Result<FrequencyResponse, FeError> {
        let mut responses =
            self.frequency_responses(std::slice::from_ref(input), outputs, frequencies)?.into_iter();
        Ok(responses.next().expect("there is a response for each input"))
    }

    /// As [`DynamicSystem::frequency_response`], one response for each of several inputs: the matrix of a
    /// frequency is factored once for all of them.
    ///
    /// # Errors
    /// Those of [`DynamicSystem::frequency_response`].
    pub fn frequency_responses(
        &self,
        inputs: &[Excitation],
        outputs: &[Direction],
        frequencies: &[f64],
    ) -> Result<Vec<FrequencyResponse>, FeError> {
        let directions = inputs.iter().map(|input| &input.direction).chain(outputs);
        directions.into_iter().try_for_each(|direction| self.check_direction(direction))?;
        let lists = vec![Vec::with_capacity(frequencies.len()); outputs.len()];
        let empty = FrequencyResponse { frequencies: frequencies.to_vec(), outputs: lists };
        let mut responses = vec![empty; inputs.len()];
        let matrices = [&self.stiffness, &self.mass].into_iter().chain(&self.damping);
        let mut band = ComplexBand::narrow(&matrices.collect::<Vec<_>>());
        for frequency in frequencies {
            let answers = self.answers((inputs, outputs), *frequency, &mut band)?;
            for (response, answers) in responses.iter_mut().zip(answers.column_iter()) {
                let lists = response.outputs.iter_mut().zip(&answers);
                lists.for_each(|(list, answer)| list.push([answer.re, answer.im]));
            }
        }
        Ok(responses)
    }

    /// What each output (row) answers to each input (column) at one frequency.
    fn answers(
        &self,
        (inputs, outputs): (&[Excitation], &[Direction]),
        frequency: f64,
        band: &mut ComplexBand,
    ) -> Result<DMatrix<Complex<f64>>, FeError> {
        let refused =
            |accepted| FeError::ImpossibleDynamics { what: "frequency", value: frequency, accepted };
        if !(frequency.is_finite() && frequency >= 0.0) {
            return Err(refused("a finite value of zero or more"));
        }
        let omega = TAU * frequency;
        let of_matrices = [Complex::from(1.0), Complex::from(-omega * omega), Complex::new(0.0, omega)];
        let of_matrices = &of_matrices[..2 + usize::from(self.damping.is_some())];
        let dampers: Vec<_> = self.dampers.iter().filter(|one| omega * one.damping > 0.0).collect();
        let mut columns = self.right_sides(inputs, &dampers, omega, band);
        let undamped = || refused("one at which the system has no undamped resonance");
        if !band.solve(of_matrices, &mut columns) {
            return Err(undamped());
        }
        let along = |direction: &Direction| {
            let parts = direction.parts().iter();
            columns.weighted_sum(parts.map(|(freedom, part)| (band.number(*freedom), *part)))
        };
        let outputs: Vec<_> = outputs.iter().map(along).collect();
        let along_dampers: Vec<_> = dampers.iter().map(|one| along(&one.direction)).collect();
        damped(&outputs, (&dampers, &along_dampers), omega).ok_or_else(undamped)
    }

    /// The forces of the inputs, and then the directions of the dampers, by the rows of a band.
    fn right_sides(
        &self,
        inputs: &[Excitation],
        dampers: &[&LinearDamper],
        omega: f64,
        band: &ComplexBand,
    ) -> ComplexColumns {
        let force = |input: &Excitation| Complex::new(input.stiffness, omega * input.damping);
        let of_inputs = inputs.iter().map(|input| (&input.direction, force(input)));
        let of_dampers = dampers.iter().map(|one| (&one.direction, Complex::from(1.0)));
        let mut columns = ComplexColumns::zeros(self.order(), inputs.len() + dampers.len());
        for (column, (direction, force)) in of_inputs.chain(of_dampers).enumerate() {
            let parts = direction.parts().iter();
            parts.for_each(|(freedom, part)| columns.add(band.number(*freedom), column, force * *part));
        }
        columns
    }
}

/// Corrects answers `A⁻¹f` along outputs to those with linear dampers `iωc bbᵀ` on top of A, as [`LinearDamper`] says;
/// `None` where they then have no answer.
///
/// - `outputs`, `along_dampers`: along each output, and along each damper, the answers `A⁻¹f` and then the columns `A⁻¹b`
fn damped(
    outputs: &[Vec<Complex<f64>>],
    (dampers, along_dampers): (&[&LinearDamper], &[Vec<Complex<f64>>]),
    omega: f64,
) -> Option<DMatrix<Complex<f64>>> {
    let inputs = outputs.first().map_or(0, Vec::len).saturating_sub(dampers.len());
    let mut answers = DMatrix::from_fn(outputs.len(), inputs, |i, j| outputs[i][j]);
    if dampers.is_empty() {
        return Some(answers);
    }
    let small = DMatrix::from_fn(dampers.len(), dampers.len(), |i, j| {
        let own = if i == j { Complex::new(0.0, omega * dampers[i].damping).inv() } else { Complex::ZERO };
        own + along_dampers[i][inputs + j]
    });
    let moved = DMatrix::from_fn(dampers.len(), inputs, |i, j| along_dampers[i][j]);
    let forces = small.lu().solve(&moved)?;
    answers -= DMatrix::from_fn(outputs.len(), dampers.len(), |i, k| outputs[i][inputs + k]) * forces;
    Some(answers)
}

impl FrequencyResponse {
    /// Size of an output per unit of input at each frequency.
    pub fn sizes(&self, output: usize) -> Vec<f64> {
        self.outputs[output].iter().map(|[real, imaginary]| real.hypot(*imaginary)).collect()
    }

    /// Root mean square of an output's derivative under a random input: 0 for the displacement, 1 for the
    /// velocity, 2 for the acceleration.
    ///
    /// `√∫ (2πf)^{2n} |H|² G df` over the frequencies, which must rise, by the trapezoidal rule; `density` is
    /// the one-sided spectral density of the input at a frequency (input²/Hz).
    pub fn root_mean_square(&self, output: usize, derivative: i32, density: impl Fn(f64) -> f64) -> f64 {
        let sizes = self.sizes(output);
        let weigh = |(f, size): (&f64, f64)| (TAU * f).powi(2 * derivative) * size * size * density(*f);
        let densities: Vec<f64> = self.frequencies.iter().zip(sizes).map(weigh).collect();
        let strips = self.frequencies.windows(2).zip(densities.windows(2));
        strips.map(|(f, g)| 0.5 * (f[1] - f[0]) * (g[0] + g[1])).sum::<f64>().sqrt()
    }
}
