//! Two beams, one on the other, that share a load through a connection that slips.
//!
//! With the axial force N of each beam, the curvature (M - N e)/ΣEI and the slip N'/k, compatibility of the two faces
//! is N'' = α² N - β M, α² = k (1/EA₁ + 1/EA₂ + e²/ΣEI), β = k e/ΣEI, N = 0 at both ends.

use axlebow_fe::{
    Attachment, Beam, BeamId, Displacements, Flexibility, Freedom, Loads, NodeId, Rigidity, Spring, SpringId,
    StaticSystem, Structure,
};

use crate::beams::beam_line::{E, bending_rigidity};
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const SOURCE: &str = "N. M. Newmark, C. P. Siess & I. M. Viest, Tests and analysis of composite beams with incomplete \
     interaction, Proc. Soc. Exp. Stress Analysis 9 (1951) 75-92; equation from memory, derived and solved again, \
     its numbers recomputed";
const ROW: &str = "springs h = 0.5 in apart stand for the continuous connection; their sum is off by (alpha h)²/12 = 3.6e-5, \
     at the free end by up to (alpha h)²/6";

/// Span (in).
const L: f64 = 120.0;
/// Pieces along the span.
const PIECES: usize = 240;
/// Load per length (lbf/in), downward.
const Q: f64 = 100.0;
/// Stiffness of the connection along the beams (lbf/in per in).
const K: f64 = 50e3;
/// Area (in²), second moment (in⁴) and height of the centroid over or under the joint (in): below, above.
const PARTS: [[f64; 3]; 2] = [[8.0, 40.0, 2.5], [2.0, 1.5, 1.5]];
/// Stiffness that lets the beams part by nothing that counts (lbf/in).
const NO_PARTING: f64 = 1e10;

const INPUTS: &str = "L = 120 in, q = 100 lbf/in, k = 50000 lbf/in², E = 29e6 psi; A = 8 in², I = 40 in⁴, 2.5 in below the \
     joint; A = 2 in², I = 1.5 in⁴, 1.5 in above it; e = 4 in, ΣEI the sum of both, EI = ΣEI + e²/(1/EA₁ + 1/EA₂), \
     α² = k (1/EA₁ + 1/EA₂ + e²/ΣEI), β = k e/ΣEI";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    pair(
        "deflection_matches_newmark_1951_supported_uniform_load",
        "deflection at mid-span",
        "y = 5 q L⁴/(384 EI) + e β q/(α⁴ ΣEI) (L²/8 − (1 − sech(α L/2))/α²)",
        0.162_756_35,
        || Ok(-solved()?.deflection()),
    ),
    pair(
        "shear_flow_matches_newmark_1951_supported_uniform_load",
        "force of the connection at an end",
        "k s = (β/α²) (q L/2 − (q/α) tanh(α L/2))",
        346.807_65,
        || Ok(solved()?.end_flow().abs()),
    )
    .measured_in("lbf/in"),
    pair(
        "axial_force_matches_newmark_1951_supported_uniform_load",
        "axial force at mid-span",
        "N = (β/α²) (q L²/8 − (q/α²) (1 − sech(α L/2)))",
        12_582.859,
        || Ok(-solved()?.axial()),
    )
    .measured_in("lbf"),
];

const fn pair(
    id: &'static str,
    quantity: &'static str,
    formula: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "beams tied with slip",
        quantity,
        unit: "in",
        source: SOURCE,
        formula,
        inputs: INPUTS,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Absolute(0.0),
        computed,
        difference: None,
    }
    .within(1e-4, ROW)
}

/// A pair of beams under its load.
struct Pair {
    structure: Structure,
    displacements: Displacements,
    middle: NodeId,
    /// Right of mid-span, in the upper beam.
    beside_middle: BeamId,
    end_link: SpringId,
}

impl Pair {
    fn deflection(&self) -> f64 {
        self.displacements.of(self.middle, 0)[2]
    }

    fn axial(&self) -> f64 {
        self.displacements.state(&self.structure, 0).beam_forces(self.beside_middle).at(0.0).axial
    }

    fn end_flow(&self) -> f64 {
        K * self.displacements.state(&self.structure, 0).spring_deformation(self.end_link)[1]
    }
}

fn solved() -> Result<Pair, String> {
    let mut structure = Structure::new();
    let step = L / PIECES as f64;
    let mut add = |z: f64, number: usize| {
        let node = structure.add_node(format!("{number}"), [0.0, number as f64 * step, z]);
        structure.hold(node, &[Freedom::Ux, Freedom::Ry, Freedom::Rz]);
        node
    };
    let [[.., down], [.., up]] = PARTS;
    let nodes: Vec<[NodeId; 2]> = (0..=PIECES).map(|number| [-down, up].map(|z| add(z, number))).collect();
    structure.hold(nodes[0][0], &[Freedom::Uz]);
    structure.hold(nodes[PIECES][0], &[Freedom::Uz]);
    structure.hold(nodes[PIECES / 2][0], &[Freedom::Uy]);
    let beams = [0, 1].map(|part| add_beams(&mut structure, &nodes, part, step));
    let [lower, upper] = beams;
    let links = add_links(&mut structure, &nodes, step)?;
    let mut loads = Loads::new(&structure, 1);
    for beam in lower? {
        loads.add_line_load(&structure, 0, beam, [0.0, 0.0, -Q]);
    }
    let mut system = StaticSystem::new();
    system.prepare(&structure).map_err(text)?;
    let displacements = system.solve(&structure, loads).map_err(text)?;
    let (middle, beside_middle, end_link) = (nodes[PIECES / 2][0], upper?[PIECES / 2], links[0]);
    Ok(Pair { structure, displacements, middle, beside_middle, end_link })
}

fn add_beams(
    structure: &mut Structure,
    nodes: &[[NodeId; 2]],
    part: usize,
    length: f64,
) -> Result<Vec<BeamId>, String> {
    let [area, second_moment, _] = PARTS[part];
    let rigidity = Rigidity { axial: E * area, ..bending_rigidity(second_moment) };
    let flexibility = Flexibility::uniform(length, &rigidity);
    let beams = nodes.windows(2).map(|ends| {
        let beam = Beam::between(ends[0][part], ends[1][part], [0.0, 0.0, 1.0], flexibility);
        structure.add_beam(beam).map_err(text)
    });
    beams.collect()
}

/// Springs at the joint, each carrying the connection to half-way on either side.
fn add_links(structure: &mut Structure, nodes: &[[NodeId; 2]], step: f64) -> Result<Vec<SpringId>, String> {
    let [[.., down], [.., up]] = PARTS;
    let links = nodes.iter().enumerate().map(|(number, [lower, upper])| {
        let share = if number == 0 || number == PIECES { 0.5 } else { 1.0 };
        let rates = [0.0, share * K * step, NO_PARTING, 0.0, 0.0, 0.0];
        let (below, above) =
            (Attachment::on_arm(*lower, [0.0, 0.0, down]), Attachment::on_arm(*upper, [0.0, 0.0, -up]));
        structure.add_spring(Spring::between(above, below, rates)).map_err(text)
    });
    links.collect()
}
