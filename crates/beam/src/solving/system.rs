//! All elements of a beam together.

use axlebow_fe::linalg::SymmetricMatrix;

use crate::elements::element::FiniteElement;
use crate::elements::mesh::Mesh;
use crate::error::BeamError;
use crate::hold::Hold;
use crate::parts::line::Line;
use crate::parts::load::Load;

/// How far a matrix entry lies from the diagonal: two freedoms of each of two neighbors.
const HALF_BANDWIDTH: usize = 3;

/// All elements of a beam together; node n has the freedoms 2 n (deflection) and 2 n + 1 (slope).
pub struct System {
    /// Where each node is (m).
    pub nodes: Vec<f64>,
    /// The element behind each node but the last.
    pub elements: Vec<FiniteElement>,
    /// How each freedom is held.
    pub holds: Vec<Hold>,
    /// Number of each freedom among those that are not rigidly held.
    numbers: Vec<Option<usize>>,
    /// How many those are.
    pub free: usize,
}

impl System {
    /// The elements of a beam.
    ///
    /// - `touches`: of each support, whether it touches if it is a stop
    ///
    /// # Errors
    /// As [`Mesh::members`].
    pub fn new(line: &Line, mesh: &Mesh, touches: &[bool]) -> Result<Self, BeamError> {
        let members = mesh.members(line)?;
        let mut nodes: Vec<f64> = members.iter().map(|(start, _)| *start).collect();
        nodes.push(line.length());
        let elements =
            members.into_iter().map(|(_, member)| FiniteElement::new(mesh.element, member)).collect();
        let mut system =
            Self { holds: vec![Hold::Free; 2 * nodes.len()], numbers: Vec::new(), free: 0, nodes, elements };
        for (support, touches) in line.supports().iter().zip(touches) {
            let node = system.node(support.at);
            system.holds[2 * node..2 * node + 2].copy_from_slice(&support.kind.holds(*touches));
        }
        for hold in &system.holds {
            let is_free = !matches!(hold, Hold::Rigid(_));
            system.numbers.push(is_free.then_some(system.free));
            system.free += usize::from(is_free);
        }
        Ok(system)
    }

    /// The node at a place where something happens.
    pub fn node(&self, at: f64) -> usize {
        let nearest =
            |a: &usize, b: &usize| (self.nodes[*a] - at).abs().total_cmp(&(self.nodes[*b] - at).abs());
        (0..self.nodes.len()).min_by(nearest).unwrap_or(0)
    }

    /// A matrix over the free freedoms from one of each element and one value of each freedom.
    pub fn assembled(
        &self,
        of: impl Fn(&FiniteElement) -> [[f64; 4]; 4],
        diagonal: &[f64],
    ) -> SymmetricMatrix {
        let mut matrix = SymmetricMatrix::banded(self.free, HALF_BANDWIDTH);
        for (node, element) in self.elements.iter().enumerate() {
            let own = of(element);
            for row in 0..4 {
                for column in 0..=row {
                    let places = (self.numbers[2 * node + row], self.numbers[2 * node + column]);
                    if let (Some(a), Some(b)) = places {
                        matrix.add(a, b, own[row][column]);
                    }
                }
            }
        }
        for (number, value) in self.numbers.iter().zip(diagonal) {
            number.iter().for_each(|number| matrix.add(*number, *number, *value));
        }
        matrix
    }

    /// The stiffness over the free freedoms.
    pub fn stiffness(&self) -> SymmetricMatrix {
        let rate = |hold: &Hold| if let Hold::Elastic { rate, .. } = hold { *rate } else { 0.0 };
        self.assembled(FiniteElement::stiffness, &self.holds.iter().map(rate).collect::<Vec<_>>())
    }

    /// Displacements of all freedoms under the loads.
    ///
    /// # Errors
    /// [`BeamError::Unsolvable`].
    pub fn displacements(&self, line: &Line) -> Result<Vec<f64>, BeamError> {
        let given = |hold: &Hold| if let Hold::Rigid(value) = hold { *value } else { 0.0 };
        let mut all: Vec<f64> = self.holds.iter().map(given).collect();
        if self.free == 0 {
            return Ok(all);
        }
        let mut forces = self.nodal_loads(line);
        for (node, element) in self.elements.iter().enumerate() {
            let held: [f64; 4] = std::array::from_fn(|i| all[2 * node + i]);
            let (stiffness, load) = (element.stiffness(), element.load());
            for i in 0..4 {
                let of_held: f64 = stiffness[i].iter().zip(held).map(|(k, u)| k * u).sum();
                forces[2 * node + i] += load[i] - of_held;
            }
        }
        for (force, hold) in forces.iter_mut().zip(&self.holds) {
            if let Hold::Elastic { rate, value } = hold {
                *force += rate * value;
            }
        }
        let mut x = self.free_part(&forces);
        let unsolvable =
            |failure: axlebow_fe::linalg::PivotFailure| BeamError::Unsolvable { reason: failure.to_string() };
        self.stiffness().factor().map_err(unsolvable)?.solve(&mut x);
        self.spread(&x, &mut all);
        Ok(all)
    }

    /// Forces and moments at nodes that are not those of elements.
    fn nodal_loads(&self, line: &Line) -> Vec<f64> {
        let mut forces = vec![0.0; self.holds.len()];
        for load in line.loads() {
            match *load {
                Load::Force { at, force } => forces[2 * self.node(at)] += force,
                Load::Moment { at, moment } => forces[2 * self.node(at) + 1] += moment,
                _ => {}
            }
        }
        forces
    }

    /// Forces by which elements act on nothing but the supports: on each freedom, elements' forces less point loads.
    pub fn residuals(&self, line: &Line, displacements: &[f64]) -> Vec<f64> {
        let mut residuals: Vec<f64> = self.nodal_loads(line).iter().map(|load| -load).collect();
        for node in 0..self.elements.len() {
            let own = self.end_forces(node, displacements);
            own.iter().enumerate().for_each(|(i, force)| residuals[2 * node + i] += force);
        }
        residuals
    }

    /// Forces up and moments on the ends of the element behind a node.
    pub fn end_forces(&self, node: usize, displacements: &[f64]) -> [f64; 4] {
        let (element, ends) = (&self.elements[node], self.ends(node, displacements));
        let (stiffness, load) = (element.stiffness(), element.load());
        std::array::from_fn(|i| stiffness[i].iter().zip(ends).map(|(k, u)| k * u).sum::<f64>() - load[i])
    }

    /// Displacements of the ends of the element behind a node.
    pub fn ends(&self, node: usize, displacements: &[f64]) -> [f64; 4] {
        std::array::from_fn(|i| displacements[2 * node + i])
    }

    /// Puts values of free freedoms to their places among all.
    pub fn spread(&self, free: &[f64], all: &mut [f64]) {
        for (value, number) in all.iter_mut().zip(&self.numbers) {
            number.iter().for_each(|number| *value = free[*number]);
        }
    }

    /// Values of free freedoms among all.
    pub fn free_part(&self, all: &[f64]) -> Vec<f64> {
        let free = self.numbers.iter().zip(all).filter(|(number, _)| number.is_some());
        free.map(|(_, value)| *value).collect()
    }
}
