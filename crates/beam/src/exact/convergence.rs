//! How a result settles as elements become shorter.

use crate::elements::mesh::{Mesh, Theory};
use crate::error::BeamError;
use crate::exact::reference::{Best, elastic_frequencies, reference_frequencies};
use crate::parts::line::Line;
use crate::quadrature::integrate;
use crate::solving::peaks::{PeakKind, peaks};
use crate::solving::solution::{Solution, Station, solve};

pub use crate::exact::reference::Reference;

/// Parts of the beam over which curves are compared.
const PARTS: usize = 48;

/// A result whose settling is watched.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Deflection where it is largest.
    LargestDeflection,
    /// Deflection along the beam, root mean square.
    Deflection,
    /// Moment along the beam, root mean square.
    Moment,
    /// Frequency of an elastic mode, the first is 1.
    Frequency(usize),
}

/// A result of one mesh.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ConvergenceRow {
    /// What.
    pub quantity: Quantity,
    /// Elements in each piece of the beam.
    pub elements: usize,
    /// Elements in all.
    pub total: usize,
    /// The result (m, N m or Hz).
    pub computed: f64,
    /// What it is compared with.
    pub reference: f64,
    /// What that rests on.
    pub basis: Reference,
    /// Error as a share of the reference; along the beam the root mean square of the difference over that of the
    /// reference.
    pub error: f64,
    /// log(e₁/e₂)/log(n₂/n₁) from the mesh before; none for the first, and where an error is rounding.
    pub order: Option<f64>,
}

/// Results of several meshes.
#[derive(Debug, Clone, PartialEq)]
pub struct Convergence {
    /// Kind of elements and theory.
    pub mesh: Mesh,
    /// For each quantity in turn, the meshes in the order asked for.
    pub rows: Vec<ConvergenceRow>,
}

/// Results of meshes with `elements` elements in each piece, with those of `frequencies` elastic modes.
///
/// Statics are left out of a beam that nothing loads; frequencies of one without mass are an error.
///
/// # Errors
/// As [`crate::solve`] and [`crate::modes`].
pub fn convergence(
    line: &Line,
    mesh: &Mesh,
    elements: &[usize],
    frequencies: usize,
) -> Result<Convergence, BeamError> {
    let mut rows = Vec::new();
    if line.is_loaded() {
        rows.extend(static_rows(line, mesh, elements)?);
    }
    if frequencies > 0 {
        rows.extend(frequency_rows(line, mesh, elements, frequencies)?);
    }
    Ok(Convergence { mesh: *mesh, rows: with_orders(rows, mesh.theory) })
}

impl Quantity {
    /// Its name.
    pub fn words(self) -> String {
        match self {
            Self::LargestDeflection => "largest deflection".to_owned(),
            Self::Deflection => "deflection along the beam".to_owned(),
            Self::Moment => "moment along the beam".to_owned(),
            Self::Frequency(number) => format!("frequency {number}"),
        }
    }
}

fn static_rows(line: &Line, mesh: &Mesh, elements: &[usize]) -> Result<Vec<ConvergenceRow>, BeamError> {
    let best = Best::of(line, mesh)?;
    let basis = best.basis();
    let largest = peaks(best.nearest()).into_iter().find(|peak| peak.kind == PeakKind::Deflection);
    let at = largest.map_or(0.0, |peak| peak.at);
    let quantities = [Quantity::LargestDeflection, Quantity::Deflection, Quantity::Moment];
    let meshes = elements.iter().map(|elements| solve(line, &Mesh { elements: *elements, ..*mesh }));
    let meshes = meshes.collect::<Result<Vec<_>, _>>()?;
    let row = |quantity, (elements, own): (&usize, &Solution)| {
        let values = compared(line, (own, &best), quantity, at);
        ConvergenceRow::of(quantity, [*elements, own.elements()], (values, basis))
    };
    let rows = |quantity| elements.iter().zip(&meshes).map(move |mesh| row(quantity, mesh));
    Ok(quantities.into_iter().flat_map(rows).collect())
}

/// A result, its reference and the relative error.
fn compared(line: &Line, (own, best): (&Solution, &Best), quantity: Quantity, at: f64) -> [f64; 3] {
    let value: fn(&Station) -> f64 = match quantity {
        Quantity::LargestDeflection => {
            let (own, best) = (own.at(at).deflection, best.value(at, |station| station.deflection));
            return [own, best, relative(own - best, best)];
        }
        Quantity::Moment => |station| station.moment,
        Quantity::Deflection | Quantity::Frequency(_) => |station| station.deflection,
    };
    let ends = line.piece_ends();
    let parts = PARTS.div_ceil(ends.len() - 1);
    let mut sums = [0.0; 3];
    for piece in ends.windows(2) {
        let squares = integrate((piece[0], piece[1]), parts, |y| {
            let (own, best) = (value(&own.at(y)), best.value(y, value));
            [own * own, best * best, (own - best).powi(2)]
        });
        sums.iter_mut().zip(squares).for_each(|(sum, square)| *sum += square / line.length());
    }
    let [own, best, difference] = sums.map(f64::sqrt);
    [own, best, relative(difference, best)]
}

fn frequency_rows(
    line: &Line,
    mesh: &Mesh,
    elements: &[usize],
    count: usize,
) -> Result<Vec<ConvergenceRow>, BeamError> {
    let (best, basis) = reference_frequencies(line, mesh, count)?;
    let mut rows = Vec::new();
    for elements in elements {
        let own = Mesh { elements: *elements, ..*mesh };
        let total = own.members(line)?.len();
        let found = elastic_frequencies(line, &own, count)?;
        for (number, (computed, reference)) in found.into_iter().zip(&best).enumerate() {
            let values = [computed, *reference, relative(computed - reference, *reference)];
            rows.push(ConvergenceRow::of(
                Quantity::Frequency(number + 1),
                [*elements, total],
                (values, basis),
            ));
        }
    }
    rows.sort_by_key(|row| match row.quantity {
        Quantity::Frequency(number) => number,
        _ => 0,
    });
    Ok(rows)
}

impl ConvergenceRow {
    /// A row that has no order yet.
    fn of(
        quantity: Quantity,
        [elements, total]: [usize; 2],
        ([computed, reference, error], basis): ([f64; 3], Reference),
    ) -> Self {
        ConvergenceRow { quantity, elements, total, computed, reference, basis, error, order: None }
    }
}

fn relative(difference: f64, reference: f64) -> f64 {
    if difference == 0.0 { 0.0 } else { difference.abs() / reference.abs() }
}

fn with_orders(mut rows: Vec<ConvergenceRow>, theory: Theory) -> Vec<ConvergenceRow> {
    for later in 1..rows.len() {
        let (a, b) = (rows[later - 1], rows[later]);
        let counts = a.error.min(b.error) > a.basis.noise(theory) && a.elements != b.elements;
        if a.quantity == b.quantity && counts {
            rows[later].order = Some((a.error / b.error).ln() / (b.elements as f64 / a.elements as f64).ln());
        }
    }
    rows
}
