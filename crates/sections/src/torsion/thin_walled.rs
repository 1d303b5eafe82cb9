//! Sections of thin walls: open, closed, branched and of several cells.

use crate::error::accepted_length;
use crate::outline::area_moments::AreaMoments;
use crate::outline::edge::{Edge, difference};
use crate::torsion::scalar_system::ScalarSystem;
use crate::torsion::shear_center::shear_center;
use crate::{AreaProperties, SectionError};

/// A wall between two joints.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// The joint where it starts, by its place in the list.
    pub from: usize,
    /// The joint where it ends.
    pub to: usize,
    /// Angle through which its midline turns (rad), counter-clockwise positive; 0 for a straight wall.
    pub turn: f64,
    /// Thickness t (m).
    pub thickness: f64,
}

/// A section of thin walls along midlines; a weld that joins two walls is a short wall of its throat.
///
/// Shear runs along the midlines. Warping ω and the like are then one value at each joint, and cells,
/// branches and free ends need no rule of their own: at each joint the flows balance, and round each cell
/// the warping closes.
///
/// Validity: walls much thinner than they are long; a wall's own bending inertia t³/12 across its midline is
/// left out of the second moments, and t³/3 per length kept in the torsion constant.
/// Source: V. Z. Vlasov, *Thin-Walled Elastic Beams*, 2nd ed. 1961, and R. Bredt 1896; from memory, derived
/// again.
#[derive(Debug, Clone)]
pub struct ThinWalled {
    walls: Vec<Wall>,
    edges: Vec<Edge>,
    area: AreaProperties,
    system: ScalarSystem,
    joints: usize,
}

/// Torsion of a section of thin walls.
#[derive(Debug, Clone, PartialEq)]
pub struct ThinWalledTorsion {
    /// Torsion constant J (m⁴), cells and the walls' own t³/3.
    pub torsion_constant: f64,
    /// What the cells alone give of it (m⁴).
    pub cell_constant: f64,
    /// Shear center (x, z) (m).
    pub shear_center: [f64; 2],
    /// Warping constant about the shear center, ∫ ω² dA (m⁶).
    pub warping_constant: f64,
    /// Shear flow q in each wall over the torque (1/m²), positive from its start to its end.
    pub flow: Vec<f64>,
}

impl ThinWalled {
    /// A section of walls between joints.
    ///
    /// - `joints`: (x, z) (m)
    /// - `walls`: which joints each one joins
    ///
    /// Errors: [`SectionError::WallJoint`] for a wall that names no joint or the same one twice or turns by a
    /// whole turn, [`SectionError::Length`] for its thickness or length, [`SectionError::NotJoined`].
    pub fn new(joints: &[[f64; 2]], walls: Vec<Wall>) -> Result<Self, SectionError> {
        let mut edges = Vec::with_capacity(walls.len());
        for (i, wall) in walls.iter().enumerate() {
            let sound = wall.from != wall.to && wall.turn.abs() < std::f64::consts::TAU;
            let (Some(&start), Some(&end), true) = (joints.get(wall.from), joints.get(wall.to), sound) else {
                return Err(SectionError::WallJoint { wall: i + 1, from: wall.from, to: wall.to });
            };
            accepted_length("thickness of a wall", wall.thickness)?;
            let edge = Edge { start, end, turn: wall.turn };
            accepted_length("length of a wall", edge.length())?;
            edges.push(edge);
        }
        let groups: Vec<Vec<usize>> = walls.iter().map(|wall| vec![wall.from, wall.to]).collect();
        let mut system = ScalarSystem::new(joints.len(), &groups)?;
        for (wall, edge) in walls.iter().zip(&edges) {
            let stiffness = wall.thickness / edge.length();
            for (a, b, sign) in
                [(wall.from, wall.from, 1.0), (wall.to, wall.to, 1.0), (wall.from, wall.to, -1.0)]
            {
                system.add(a, b, sign * stiffness);
                if a != b {
                    system.add(b, a, sign * stiffness);
                }
            }
        }
        let area = area_of(&walls, &edges);
        // From here on all places are from the centroid.
        let from_centroid = |edge: Edge| Edge {
            start: difference(edge.start, area.centroid),
            end: difference(edge.end, area.centroid),
            ..edge
        };
        let edges = edges.into_iter().map(from_centroid).collect();
        Ok(Self { walls, edges, area, system: system.factored(), joints: joints.len() })
    }

    /// Area, centroid and second moments of the walls on their midlines.
    pub fn area_properties(&self) -> AreaProperties {
        self.area
    }

    /// Torsion, shear center and warping.
    ///
    /// q = T/J t (ω' + r), constant along a wall, r = x dz/ds - z dx/ds; J = Σ ∫ q r ds + Σ s t³/3.
    pub fn torsion(&self) -> ThinWalledTorsion {
        let mut loads = vec![0.0; self.joints];
        for (wall, edge) in self.walls.iter().zip(&self.edges) {
            let pull = wall.thickness * swept(edge, 1.0) / edge.length();
            loads[wall.from] += pull;
            loads[wall.to] -= pull;
        }
        let warping = self.system.solution(&loads);
        let mut flow: Vec<f64> = Vec::with_capacity(self.walls.len());
        let (mut cells, mut own) = (0.0, 0.0);
        for (wall, edge) in self.walls.iter().zip(&self.edges) {
            let rise = warping[wall.to] - warping[wall.from] + swept(edge, 1.0);
            flow.push(wall.thickness * rise / edge.length());
            cells += wall.thickness * rise / edge.length() * swept(edge, 1.0);
            own += edge.length() * wall.thickness.powi(3) / 3.0;
        }
        let torsion_constant = cells + own;
        let (center, warping_constant) = self.warping_about_shear_center(&warping, &flow);
        let shear_center = [0, 1].map(|axis| self.area.centroid[axis] + center[axis]);
        flow.iter_mut().for_each(|q| *q /= torsion_constant);
        ThinWalledTorsion { torsion_constant, cell_constant: cells, shear_center, warping_constant, flow }
    }

    /// Shear flow of forces through the shear center.
    ///
    /// q' = -t (a x + b z) along each wall, with a, b as in bending.
    ///
    /// - `shear_x`, `shear_z`: V along X and Z (N)
    pub fn shear_flow(&self, shear_x: f64, shear_z: f64) -> ShearFlow<'_> {
        // ∂s/∂y = a x + b z carries V as M does s: M_z' = V_x, -M_x' = V_z.
        let field = self.area.stress_field(0.0, -shear_z, shear_x);
        let gradient = [field.gradient_x, field.gradient_z];
        let mut loads = vec![0.0; self.joints];
        for (wall, edge) in self.walls.iter().zip(&self.edges) {
            let (start, end) = pulls(edge, gradient);
            loads[wall.from] += wall.thickness * start;
            loads[wall.to] += wall.thickness * end;
        }
        let values = self.system.solution(&loads);
        let start = |(wall, edge): (&Wall, &Edge)| {
            let rise = (values[wall.to] - values[wall.from]) / edge.length();
            wall.thickness * (rise + pulls(edge, gradient).0)
        };
        let starts = self.walls.iter().zip(&self.edges).map(start).collect();
        ShearFlow { section: self, gradient, starts }
    }

    /// Shear coefficients along X and Z, V² / (A Σ ∫ q²/t ds).
    ///
    /// The energy form; the same as Cowper's for nu = 0, and a thin wall hardly feels nu.
    pub fn shear_coefficients(&self) -> [f64; 2] {
        [[1.0, 0.0], [0.0, 1.0]].map(|[shear_x, shear_z]| {
            let flow = self.shear_flow(shear_x, shear_z);
            let energy = |(i, (wall, edge)): (usize, (&Wall, &Edge))| {
                let square = |(share, weight): (f64, f64)| weight * flow.at(i, share).powi(2);
                edge.gauss().into_iter().map(square).sum::<f64>() * edge.length() / wall.thickness
            };
            1.0 / (self.area.area * self.walls.iter().zip(&self.edges).enumerate().map(energy).sum::<f64>())
        })
    }

    /// Shear center from the centroid, and ∫ ω_s² dA.
    fn warping_about_shear_center(&self, warping: &[f64], flow: &[f64]) -> ([f64; 2], f64) {
        // ω t along the walls at Gauss points: (weight in area, place, ω).
        let mut points = Vec::new();
        for (i, (wall, edge)) in self.walls.iter().zip(&self.edges).enumerate() {
            let (length, slope) = (edge.length(), flow[i] / wall.thickness);
            for (share, weight) in edge.gauss() {
                let value = warping[wall.from] + slope * share * length - swept(edge, share);
                points.push((weight * length * wall.thickness, edge.at(share), value));
            }
        }
        let mean = points.iter().map(|(area, _, value)| area * value).sum::<f64>() / self.area.area;
        let along =
            |axis: usize| points.iter().map(|(area, p, value)| area * p[axis] * (value - mean)).sum::<f64>();
        let [x, z] = shear_center(&self.area, along(0), along(1));
        let square =
            |(area, p, value): &(f64, [f64; 2], f64)| area * (value - mean - z * p[0] + x * p[1]).powi(2);
        ([x, z], points.iter().map(square).sum())
    }
}

/// Shear flow of a force through the shear center.
#[derive(Debug, Clone)]
pub struct ShearFlow<'a> {
    section: &'a ThinWalled,
    gradient: [f64; 2],
    starts: Vec<f64>,
}

impl ShearFlow<'_> {
    /// Flow q in a wall (N/m), positive from its start to its end.
    ///
    /// - `wall`: its place in the list
    /// - `share`: of its length, 0 (start) to 1 (end)
    pub fn at(&self, wall: usize, share: f64) -> f64 {
        let (thickness, piece) =
            (self.section.walls[wall].thickness, self.section.edges[wall].piece(0.0, share));
        if share == 0.0 {
            return self.starts[wall];
        }
        let (start, end) = pulls(&piece, self.gradient);
        self.starts[wall] - thickness * (start + end)
    }
}

/// Twice the area swept from the centroid along a share of a midline, ∫ r ds (m²).
fn swept(edge: &Edge, share: f64) -> f64 {
    2.0 * edge.piece(0.0, share).moments([0.0; 2]).area
}

/// ∫ (1 - s/L)(a x + b z) ds and ∫ (s/L)(a x + b z) ds.
fn pulls(edge: &Edge, [a, b]: [f64; 2]) -> (f64, f64) {
    let length = edge.length();
    edge.gauss().into_iter().fold((0.0, 0.0), |(start, end), (share, weight)| {
        let [x, z] = edge.at(share);
        let pull = weight * length * (a * x + b * z);
        (start + (1.0 - share) * pull, end + share * pull)
    })
}

fn area_of(walls: &[Wall], edges: &[Edge]) -> AreaProperties {
    let pole = edges.first().map_or([0.0; 2], |edge| edge.start);
    let mut sum = AreaMoments::default();
    for (wall, edge) in walls.iter().zip(edges) {
        for (share, weight) in edge.gauss() {
            let ([x, z], area) = (difference(edge.at(share), pole), weight * edge.length() * wall.thickness);
            sum = sum.plus(&AreaMoments::of_point([x, z], area));
        }
    }
    AreaProperties::from_moments(&sum, pole)
}
