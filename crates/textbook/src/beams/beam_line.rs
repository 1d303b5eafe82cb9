//! A straight beam that bends in one plane, made of the real finite elements.

use axlebow_fe::{
    Attachment, Beam, BeamId, Displacements, Flexibility, Freedom, Loads, NodeId, Rigidity, StaticSystem,
    Structure,
};
use axlebow_sections::{Profile, RoundTube};

use crate::text;

/// Elastic modulus of the beam cases (psi).
pub(crate) const E: f64 = 29.0e6;
/// Poisson's ratio of the beam cases.
pub(crate) const NU: f64 = 0.3;
/// Shear modulus of the beam cases (psi).
pub(crate) const G: f64 = E / (2.0 * (1.0 + NU));

/// Source of most beam cases.
pub(crate) const ROARK_BEAMS: &str = "R. G. Budynas & A. M. Sadegh, Roark's Formulas for Stress and Strain, \
     9th ed., McGraw-Hill 2020, Table 8.1; formula from memory, its number recomputed";

/// Inputs of a case on the tube of the beam cases: its own ones, and those of the tube.
macro_rules! on_tube {
    ($own:literal) => {
        concat!(
            $own,
            "; tube 5 in by 0.5 in: A = 7.0685835 in², I = 18.1132451 in⁴, c = 2.5 in, k = 0.541077; E = 29e6 psi, \
             nu = 0.3, G = E/(2 (1 + nu))"
        )
    };
}
pub(crate) use on_tube;

/// Whether a beam shears as well as bends.
#[derive(Clone, Copy)]
pub(crate) enum Theory {
    /// Bernoulli-Euler: the shear stiffness is infinite.
    BendingOnly,
    /// Timoshenko, with Cowper's coefficient.
    WithShear,
}

/// A straight beam along Y that bends in the Y-Z plane.
pub(crate) struct BeamLine {
    structure: Structure,
    nodes: Vec<NodeId>,
    beams: Vec<BeamId>,
}

/// A beam line under its load.
pub(crate) struct BentLine {
    line: BeamLine,
    displacements: Displacements,
}

/// The tube of the beam cases: 5 in outside, 0.5 in wall.
pub(crate) fn tube() -> Result<Profile, String> {
    Ok(Profile::from(RoundTube::new(5.0, 0.5).map_err(text)?))
}

/// Rigidity of a profile of the beam cases' material.
pub(crate) fn rigidity(profile: &Profile, theory: Theory) -> Rigidity {
    let p = profile.properties(NU);
    let shear = |coefficient: f64| match theory {
        Theory::BendingOnly => f64::INFINITY,
        Theory::WithShear => coefficient * G * p.area,
    };
    Rigidity {
        axial: E * p.area,
        torsion: G * p.torsion_constant,
        bending_2: E * p.second_moment_z,
        bending_3: E * p.second_moment_x,
        shear_2: shear(p.shear_coefficient_z),
        shear_3: shear(p.shear_coefficient_x),
    }
}

/// Rigidity of a beam that only bends and of which only I is given.
pub(crate) fn bending_rigidity(second_moment: f64) -> Rigidity {
    let (large, ei) = (E, E * second_moment);
    Rigidity {
        axial: large,
        torsion: large,
        bending_2: ei,
        bending_3: ei,
        shear_2: f64::INFINITY,
        shear_3: f64::INFINITY,
    }
}

impl BeamLine {
    /// The tube of the beam cases with nodes at `places`.
    pub fn of_tube(places: &[f64], theory: Theory) -> Result<Self, String> {
        let rigidity = rigidity(&tube()?, theory);
        Self::new(places, |_, length| Flexibility::uniform(length, &rigidity))
    }

    /// A beam with nodes at `places`; `flexibility` gives that of a piece by its number and length.
    pub fn new(places: &[f64], flexibility: impl Fn(usize, f64) -> Flexibility) -> Result<Self, String> {
        let mut structure = Structure::new();
        let nodes: Vec<_> =
            places.iter().map(|y| structure.add_node(format!("{y}"), [0.0, *y, 0.0])).collect();
        for node in &nodes {
            structure.hold(*node, &[Freedom::Ux, Freedom::Ry, Freedom::Rz]);
        }
        structure.hold(nodes[0], &[Freedom::Uy]);
        let mut beams = Vec::with_capacity(places.len());
        for (piece, pair) in nodes.windows(2).enumerate() {
            let flexibility = flexibility(piece, places[piece + 1] - places[piece]);
            let beam = Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility);
            beams.push(structure.add_beam(beam).map_err(text)?);
        }
        Ok(Self { structure, nodes, beams })
    }

    /// Holds a node at its height; it may turn.
    pub fn supported(mut self, node: usize) -> Self {
        self.structure.hold(self.nodes[node], &[Freedom::Uz]);
        self
    }

    /// Holds a node at its height and slope.
    pub fn clamped(mut self, node: usize) -> Self {
        self.structure.hold(self.nodes[node], &[Freedom::Uz, Freedom::Rx]);
        self
    }

    /// The structure and its nodes, to add what this type does not know.
    pub fn parts(&mut self) -> (&mut Structure, &[NodeId]) {
        (&mut self.structure, &self.nodes)
    }

    /// The line under upward forces on nodes.
    pub fn forced(self, forces: &[(usize, f64)]) -> Result<BentLine, String> {
        let mut loads = Loads::new(&self.structure, 1);
        for (node, force) in forces {
            loads.add_force(0, &Attachment::at(self.nodes[*node]), [0.0, 0.0, *force]);
        }
        self.bent(loads)
    }

    /// The line under a moment about X on a node.
    pub fn turned(self, node: usize, moment: f64) -> Result<BentLine, String> {
        let mut loads = Loads::new(&self.structure, 1);
        loads.add_moment(0, &Attachment::at(self.nodes[node]), [moment, 0.0, 0.0]);
        self.bent(loads)
    }

    /// The line under an upward load per length all along.
    pub fn loaded(self, load: f64) -> Result<BentLine, String> {
        let mut loads = Loads::new(&self.structure, 1);
        for beam in &self.beams {
            loads.add_line_load(&self.structure, 0, *beam, [0.0, 0.0, load]);
        }
        self.bent(loads)
    }

    fn bent(self, loads: Loads) -> Result<BentLine, String> {
        let mut system = StaticSystem::new();
        system.prepare(&self.structure).map_err(text)?;
        let displacements = system.solve(&self.structure, loads).map_err(text)?;
        Ok(BentLine { line: self, displacements })
    }
}

impl BentLine {
    /// Upward displacement of a node.
    pub fn deflection(&self, node: usize) -> f64 {
        self.displacements.of(self.line.nodes[node], 0)[2]
    }

    /// Rotation of a node, positive where the line rises with Y.
    pub fn slope(&self, node: usize) -> f64 {
        self.displacements.of(self.line.nodes[node], 0)[3]
    }

    /// Bending moment at the start of a piece, positive where the line is hollow on its upper side.
    pub fn moment(&self, piece: usize) -> f64 {
        let state = self.displacements.state(&self.line.structure, 0);
        state.beam_forces(self.line.beams[piece]).at(0.0).bending_3
    }
}
