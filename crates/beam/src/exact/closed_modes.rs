//! Beams whose natural frequencies follow from an equation of one unknown.

use std::f64::consts::{PI, TAU};

use crate::elements::mesh::Theory;
use crate::exact::closed_form::{Bar, Ends};
use crate::parts::line::Line;
use crate::parts::load::PointMass;

/// Source of the characteristic equations.
const BLEVINS: &str = "R. D. Blevins, Formulas for Dynamics, Acoustics and Vibration, Wiley 2016, Table 4.2; equation \
     from memory";
/// Source of those with masses.
const RAO: &str = "S. S. Rao, Mechanical Vibrations, 6th ed. 2017, sec. 8.5, and Blevins 2016, beams with end masses; \
     equation from memory";
/// Source of that with shear.
const YOUNG: &str = "S. Timoshenko, D. H. Young & W. Weaver, Vibration Problems in Engineering, 4th ed. 1974, art. 5.12; \
     equation from memory";

/// Step in which a sign change of a characteristic equation is looked for; its roots lie π/2 apart or more.
const STEP: f64 = 0.01;

/// Frequencies that follow from an equation of one unknown.
#[derive(Debug, Clone, PartialEq)]
pub struct ClosedModes {
    /// What the beam is called.
    pub title: &'static str,
    /// The equation; x = β L, f = x²/(2 π) √(E I/(m L⁴)).
    pub formula: &'static str,
    /// Where it stands.
    pub source: &'static str,
    /// Frequencies of the lowest elastic modes (Hz).
    pub frequencies: Vec<f64>,
}

/// The lowest `count` elastic frequencies of a beam that has such an equation.
pub fn closed_modes(line: &Line, theory: Theory, count: usize) -> Option<ClosedModes> {
    let bar = Bar::of(line, theory)?;
    let values = bar.span.section_at(0.0);
    let mass = bar.span.elastic.density * values.area?;
    let stiffness = bar.span.elastic.modulus * values.second_moment;
    if theory == Theory::Timoshenko {
        return timoshenko(line, &bar, count);
    }
    let (title, formula, source, equation) = equation(line, &bar, mass)?;
    let frequency = |x: f64| x * x / TAU * (stiffness / (mass * bar.length.powi(4))).sqrt();
    let frequencies = roots(&equation, count).into_iter().map(frequency).collect();
    Some(ClosedModes { title, formula, source, frequencies })
}

type Equation = (&'static str, &'static str, &'static str, Box<dyn Fn(f64) -> f64>);

/// The characteristic function of a beam, over cosh x so that it stays small.
fn equation(line: &Line, bar: &Bar, mass_per_length: f64) -> Option<Equation> {
    let share = |mass: &PointMass| mass.mass / (mass_per_length * bar.length);
    let is_end = |mass: &PointMass| bar.is_same(mass.at, 0.0) || bar.is_same(mass.at, bar.length);
    if line.masses().iter().any(|mass| mass.inertia != 0.0 || !is_end(mass)) {
        return None;
    }
    let end = |at: f64| line.masses().iter().filter(|mass| bar.is_same(mass.at, at)).map(share).sum::<f64>();
    let (start, tip) =
        if bar.is_mirrored { (end(bar.length), end(0.0)) } else { (end(0.0), end(bar.length)) };
    match bar.ends {
        Ends::Cantilever if tip > 0.0 => Some((
            "cantilever with a mass on its tip",
            "1 + cos x cosh x = μ x (sin x cosh x − cos x sinh x), μ = mass/(m L)",
            RAO,
            Box::new(move |x| 1.0 / x.cosh() + x.cos() - tip * x * (x.sin() - x.cos() * x.tanh())),
        )),
        Ends::Cantilever => {
            Some(("cantilever", "cos x cosh x = −1", BLEVINS, Box::new(|x| x.cos() + 1.0 / x.cosh())))
        }
        Ends::Free if start > 0.0 && bar.is_same(start, tip) => Some((
            "free beam with equal masses on both ends",
            "tan(x/2) + tanh(x/2) = −2 μ x (symmetric), cot(x/2) − coth(x/2) = 2 μ x (antisymmetric), μ = mass/(m L)",
            RAO,
            Box::new(move |x| {
                let b = 0.5 * x;
                let symmetric = b.sin() + b.cos() * (b.tanh() + 2.0 * start * x);
                symmetric * (b.cos() - b.sin() * (1.0 / b.tanh() + 2.0 * start * x))
            }),
        )),
        Ends::Free if start == 0.0 && tip == 0.0 => {
            Some(("free beam", "cos x cosh x = 1", BLEVINS, Box::new(|x| x.cos() - 1.0 / x.cosh())))
        }
        Ends::Free => None,
        Ends::Supported => Some(("beam on two supports", "sin x = 0", BLEVINS, Box::new(f64::sin))),
        Ends::Clamped => Some((
            "beam between two clamps",
            "cos x cosh x = 1",
            BLEVINS,
            Box::new(|x| x.cos() - 1.0 / x.cosh()),
        )),
        Ends::Propped => Some((
            "beam clamped at one end and supported at the other",
            "tan x = tanh x",
            BLEVINS,
            Box::new(|x| x.sin() - x.cos() * x.tanh()),
        )),
    }
}

/// The lowest positive roots, by sign changes and halving.
fn roots(equation: &dyn Fn(f64) -> f64, count: usize) -> Vec<f64> {
    let mut found = Vec::new();
    // The function vanishes at 0 with the rigid motions; a first elastic root lies well above a step.
    let mut low = 10.0 * STEP;
    while found.len() < count && low < 1e3 {
        let high = low + STEP;
        if equation(low) * equation(high) < 0.0 {
            found.push(halved(equation, low, high));
        }
        low = high;
    }
    found
}

fn halved(equation: &dyn Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
    let sign = equation(low);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if equation(middle) * sign > 0.0 { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

/// ρ²I/(κG) ω⁴ − (ρA + ρI k² (1 + E/κG)) ω² + EI k⁴ = 0, k = nπ/L, the lower root.
fn timoshenko(line: &Line, bar: &Bar, count: usize) -> Option<ClosedModes> {
    if bar.ends != Ends::Supported || line.masses().iter().any(|mass| mass.mass > 0.0 || mass.inertia > 0.0) {
        return None;
    }
    let (values, elastic) = (bar.span.section_at(0.0), bar.span.elastic);
    let (area, i, e, density) = (values.area?, values.second_moment, elastic.modulus, elastic.density);
    let shear = values.shear_coefficient * elastic.shear_modulus();
    let frequency = |n: usize| {
        let k = n as f64 * PI / bar.length;
        let a = density * density * i / shear;
        let b = density * area + density * i * k * k * (1.0 + e / shear);
        let c = e * i * k.powi(4);
        // The lower root in the form that does not cancel.
        (2.0 * c / (b + (b * b - 4.0 * a * c).sqrt())).sqrt() / TAU
    };
    Some(ClosedModes {
        title: "beam on two supports with shear and rotary inertia",
        formula: "ρ² I/(k G) ω⁴ − (ρ A + ρ I κ² (1 + E/(k G))) ω² + E I κ⁴ = 0, κ = n π/L, lower root",
        source: YOUNG,
        frequencies: (1..=count).map(frequency).collect(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn roots_are_those_of_the_tables() {
        // Blevins 2016, Table 4.2 (recomputed in the reference list of the project).
        let cantilever = roots(&|x| x.cos() + 1.0 / x.cosh(), 5);
        let printed = [1.875_104_07, 4.694_091_13, 7.854_757_44, 10.995_540_73, 14.137_168_39];
        for (root, printed) in cantilever.iter().zip(printed) {
            assert!((root - printed).abs() < 0.5e-8, "{root}");
        }
    }
}
