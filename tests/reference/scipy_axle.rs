//! A small asymmetric axle against its recomputation by `scripts/recompute_axle.py` with NumPy and
//! SciPy, whose results and versions are kept in `scipy_axle.json` beside this file.
//!
//! Tube, rounded box, solid spindles (one tapered, one askew), a bearing with coupled stiffness, seats
//! and tires off the axle line, brake torque, side loads and line loads. The axle is invented.

use axlebow_textbook::fe::{
    Attachment, Beam, BeamId, Flexibility, Loads, NodeId, Rigidity, Spring, SpringId, State, StaticSystem,
    Structure,
};
use axlebow_textbook::sections::{Material, Profile, RectangularTube, RoundBar, RoundTube, taper};
use serde_json::Value;

pub(super) const NODES: [(&str, [f64; 3]); 8] = [
    ("left wheel", [0.0, 1.12, -0.02]),
    ("left spindle", [0.0, 1.05, 0.0]),
    ("left tube end", [0.0, 0.90, 0.0]),
    ("left seat", [0.0, 0.52, 0.0]),
    ("center", [0.0, 0.05, 0.0]),
    ("right seat", [0.0, -0.48, 0.0]),
    ("right tube end", [0.0, -0.86, 0.0]),
    ("right spindle", [0.004, -1.02, 0.006]),
];
pub(super) const WHEEL: usize = 0;
const SPINDLE: usize = 1;
pub(super) const LEFT_SEAT: usize = 3;
pub(super) const CENTER: usize = 4;
pub(super) const RIGHT_SEAT: usize = 5;
pub(super) const RIGHT_SPINDLE: usize = 7;
pub(super) const LEFT_CONTACT: [f64; 3] = [0.0, 0.02, -0.48];
pub(super) const RIGHT_CONTACT: [f64; 3] = [0.0, -0.05, -0.50];

/// Mass per length and rotary inertia per length about local axes 1, 2, 3 of each beam (kg/m, kg m).
const MASSES: [(f64, [f64; 3]); 6] = [
    (42.0, [0.036, 0.018, 0.018]),
    (35.8, [0.118, 0.059, 0.059]),
    (35.8, [0.118, 0.059, 0.059]),
    (31.0, [0.165, 0.071, 0.094]),
    (31.0, [0.165, 0.071, 0.094]),
    (44.5, [0.040, 0.020, 0.020]),
];

pub(super) struct Axle {
    pub(super) structure: Structure,
    pub(super) nodes: Vec<NodeId>,
    pub(super) beams: Vec<BeamId>,
    springs: Vec<SpringId>,
}

#[test]
fn motions_cuts_and_spring_forces_agree_with_scipy() {
    let kept: Value = serde_json::from_str(include_str!("scipy_axle.json")).unwrap();
    let axle = axle();
    let mut system = StaticSystem::new();
    system.prepare(&axle.structure).unwrap();
    let solved = system.solve(&axle.structure, loads(&axle)).unwrap();
    let state = solved.state(&axle.structure, 0);
    for ((name, _), node) in NODES.iter().zip(&axle.nodes) {
        assert_near(name, &state.motion(*node), &kept["displacements"][name]);
    }
    for (pair, beam) in NODES[SPINDLE..].windows(2).zip(&axle.beams) {
        let name = format!("{} to {}", pair[0].0, pair[1].0);
        assert_near(&name, &cut(&state, *beam), &kept["cuts_at_beam_starts"][&name]);
    }
    for (index, spring) in axle.springs.iter().enumerate() {
        assert_near("spring", &state.spring_force(*spring), &kept["spring_forces"][index]);
    }
}

/// Translations (or forces) and rotations (or moments) each to 1e-9 of their largest component.
#[track_caller]
fn assert_near(name: &str, ours: &[f64; 6], kept: &Value) {
    let kept: Vec<f64> = kept.as_array().unwrap().iter().map(|value| value.as_f64().unwrap()).collect();
    for half in [0..3, 3..6] {
        let largest = kept[half.clone()].iter().fold(0.0_f64, |most, value| most.max(value.abs()));
        for i in half {
            let error = (ours[i] - kept[i]).abs();
            assert!(
                error <= 1e-9 * largest + 1e-6 * f64::EPSILON,
                "{name}[{i}]: {} against {}",
                ours[i],
                kept[i]
            );
        }
    }
}

fn cut(state: &State, beam: BeamId) -> [f64; 6] {
    let at = state.beam_forces(beam).at(0.0);
    [at.axial, at.shear_2, at.shear_3, at.torsion, at.bending_2, at.bending_3]
}

pub(super) fn axle() -> Axle {
    let mut structure = Structure::new();
    let nodes: Vec<_> = NODES.iter().map(|(name, place)| structure.add_node(*name, *place)).collect();
    let beams = body(&mut structure, &nodes);
    let springs = springs(&nodes).into_iter().map(|spring| structure.add_spring(spring).unwrap()).collect();
    Axle { structure, nodes, beams, springs }
}

fn body(structure: &mut Structure, nodes: &[NodeId]) -> Vec<BeamId> {
    let tube = Profile::from(RoundTube::new(0.127, 0.0127).unwrap());
    let boxed = Profile::from(RectangularTube::new(0.120, 0.150, 0.008, 0.016).unwrap());
    let [thin, thick, bar] =
        [0.070, 0.095, 0.085].map(|diameter| Profile::from(RoundBar::new(diameter).unwrap()));
    let pieces = [(thin, thick), (tube, tube), (tube, tube), (boxed, boxed), (boxed, boxed), (bar, bar)];
    let mut beams = Vec::new();
    for (piece, (start, end)) in pieces.iter().enumerate() {
        let (near, far) = (piece + SPINDLE, piece + SPINDLE + 1);
        let length = distance(NODES[near].1, NODES[far].1);
        let flexibility = if start == end {
            Flexibility::uniform(length, &rigidity(start))
        } else {
            Flexibility::varying(length, 8, |share| rigidity(&taper(start, end, share).unwrap()))
        };
        let beam = Beam::between(nodes[near], nodes[far], [0.0, 0.0, 1.0], flexibility);
        let (mass, inertia) = MASSES[piece];
        beams.push(structure.add_beam(beam.with_mass(mass).with_inertia(inertia)).unwrap());
    }
    beams
}

fn rigidity(profile: &Profile) -> Rigidity {
    let steel = Material::new("invented steel", 205e9, 0.29, 7850.0).unwrap();
    let (e, g) = (steel.elastic_modulus(), steel.shear_modulus());
    let p = profile.properties(steel.poisson_ratio());
    Rigidity {
        axial: e * p.area,
        torsion: g * p.torsion_constant,
        bending_2: e * p.second_moment_z,
        bending_3: e * p.second_moment_x,
        shear_2: p.shear_coefficient_z * g * p.area,
        shear_3: p.shear_coefficient_x * g * p.area,
    }
}

fn springs(nodes: &[NodeId]) -> [Spring; 5] {
    let at = |node: usize, arm| Attachment::on_arm(nodes[node], arm);
    let rates = [4.0e8, 9.0e7, 5.0e8, 6.0e5, 2.0e5, 5.0e5];
    let mut bearing = Spring::between(at(SPINDLE, [0.0, 0.03, 0.0]), at(WHEEL, [0.0, -0.04, 0.02]), rates);
    for (i, j, value) in [(2, 3, 4.0e6), (0, 5, -3.0e6)] {
        bearing.stiffness[i][j] = value;
        bearing.stiffness[j][i] = value;
    }
    let ground = |node, arm, rates| Spring::to_ground(at(node, arm), rates);
    [
        bearing,
        ground(LEFT_SEAT, [0.03, 0.0, 0.10], [2.0e6, 3.0e6, 4.0e6, 2.0e4, 1.5e4, 3.0e4]),
        ground(RIGHT_SEAT, [-0.02, 0.01, 0.11], [2.5e6, 1.0e6, 3.2e6, 5.0e4, 0.8e4, 1.0e4]),
        ground(WHEEL, LEFT_CONTACT, [0.0, 3.0e5, 9.0e5, 0.0, 0.0, 0.0]),
        ground(RIGHT_SPINDLE, RIGHT_CONTACT, [0.0, 2.5e5, 8.0e5, 0.0, 0.0, 0.0]),
    ]
}

fn loads(axle: &Axle) -> Loads {
    let at = |node: usize, arm| Attachment::on_arm(axle.nodes[node], arm);
    let mut loads = Loads::new(&axle.structure, 1);
    loads.add_force(0, &at(WHEEL, LEFT_CONTACT), [1200.0, -3500.0, 42000.0]);
    loads.add_force(0, &at(RIGHT_SPINDLE, RIGHT_CONTACT), [-800.0, 2500.0, 36000.0]);
    loads.add_moment(0, &at(WHEEL, [0.0; 3]), [0.0, 3000.0, 150.0]);
    loads.add_force(0, &at(CENTER, [0.05, 0.0, -0.02]), [500.0, 0.0, -9000.0]);
    loads.add_line_load(&axle.structure, 0, axle.beams[2], [40.0, 25.0, -350.0]);
    loads.add_line_load(&axle.structure, 0, axle.beams[3], [-15.0, 10.0, -280.0]);
    loads
}

fn distance(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum::<f64>().sqrt()
}
