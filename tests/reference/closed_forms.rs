//! Nodal values against closed forms: exact for Timoshenko beams, so met to rounding.
//!
//! The formulas are those of the textbook's beam cases with the shear term beside the bending term
//! (J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 9 and app. G; from memory).

use axlebow_textbook::fe::{
    Attachment, Beam, BeamId, Displacements, Flexibility, Freedom, Loads, NodeId, Rigidity, StaticSystem,
    Structure,
};

const L: f64 = 1.2;
const EI: f64 = 1.5e6;
const EI_2: f64 = 0.9e6;
const KGA: f64 = 1.9e8;
const KGA_3: f64 = 1.4e8;
const RIGIDITY: Rigidity =
    Rigidity { axial: 9.1e8, torsion: 1.2e6, bending_2: EI_2, bending_3: EI, shear_2: KGA, shear_3: KGA_3 };

/// A beam along Y, cut at the given places, free of supports.
struct Line {
    structure: Structure,
    nodes: Vec<NodeId>,
    beams: Vec<BeamId>,
}

impl Line {
    fn new(places: &[f64]) -> Self {
        Self::varying(places, |_, length| Flexibility::uniform(length, &RIGIDITY))
    }

    fn varying(places: &[f64], flexibility: impl Fn(f64, f64) -> Flexibility) -> Self {
        let mut structure = Structure::new();
        let nodes: Vec<_> =
            places.iter().map(|y| structure.add_node(format!("{y}"), [0.0, *y, 0.0])).collect();
        let beams = places.windows(2).zip(nodes.windows(2)).map(|(at, pair)| {
            let flexibility = flexibility(at[0], at[1] - at[0]);
            structure.add_beam(Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility)).unwrap()
        });
        let beams = beams.collect();
        Line { structure, nodes, beams }
    }

    fn held(mut self, node: usize, freedoms: &[Freedom]) -> Self {
        self.structure.hold(self.nodes[node], freedoms);
        self
    }

    /// Supports at two nodes that let the line bend freely in both planes.
    fn on_supports(self, left: usize, right: usize) -> Self {
        self.held(left, &[Freedom::Ux, Freedom::Uy, Freedom::Uz, Freedom::Ry])
            .held(right, &[Freedom::Ux, Freedom::Uz])
    }

    fn under(&self, node: usize, force: [f64; 3], moment: [f64; 3]) -> Displacements {
        let mut loads = Loads::new(&self.structure, 1);
        loads.add_force(0, &Attachment::at(self.nodes[node]), force);
        loads.add_moment(0, &Attachment::at(self.nodes[node]), moment);
        self.solved(loads)
    }

    fn under_line_load(&self, load: [f64; 3]) -> Displacements {
        let mut loads = Loads::new(&self.structure, 1);
        for beam in &self.beams {
            loads.add_line_load(&self.structure, 0, *beam, load);
        }
        self.solved(loads)
    }

    fn solved(&self, loads: Loads) -> Displacements {
        let mut system = StaticSystem::new();
        system.prepare(&self.structure).unwrap();
        system.solve(&self.structure, loads).unwrap()
    }
}

fn cut(parts: usize) -> Vec<f64> {
    (0..=parts).map(|part| L * part as f64 / parts as f64).collect()
}

#[track_caller]
fn assert_near(ours: f64, exact: f64) {
    assert!((ours - exact).abs() <= 1e-9 * exact.abs(), "ours {ours:e}, exact {exact:e}");
}

#[test]
fn cantilever_under_end_forces_and_moments_in_every_direction() {
    for parts in [1, 2, 7] {
        let line = Line::new(&cut(parts)).held(0, &Freedom::ALL);
        let tip = line.nodes[parts];
        let u = line.under(parts, [300.0, -500.0, 1000.0], [0.0; 3]).of(tip, 0);
        assert_near(u[2], 1000.0 * (L.powi(3) / (3.0 * EI) + L / KGA));
        assert_near(u[3], 1000.0 * L * L / (2.0 * EI));
        assert_near(u[0], 300.0 * (L.powi(3) / (3.0 * EI_2) + L / KGA_3));
        assert_near(u[5], -300.0 * L * L / (2.0 * EI_2));
        assert_near(u[1], -500.0 * L / RIGIDITY.axial);
        let u = line.under(parts, [0.0; 3], [200.0, 400.0, -700.0]).of(tip, 0);
        assert_near(u[2], 200.0 * L * L / (2.0 * EI));
        assert_near(u[3], 200.0 * L / EI);
        assert_near(u[4], 400.0 * L / RIGIDITY.torsion);
        assert_near(u[0], 700.0 * L * L / (2.0 * EI_2));
        assert_near(u[5], -700.0 * L / EI_2);
    }
}

#[test]
fn cantilever_under_a_uniform_load() {
    for parts in [1, 3, 8] {
        let line = Line::new(&cut(parts)).held(0, &Freedom::ALL);
        let u = line.under_line_load([250.0, 0.0, -600.0]).of(line.nodes[parts], 0);
        assert_near(u[2], -600.0 * (L.powi(4) / (8.0 * EI) + L * L / (2.0 * KGA)));
        assert_near(u[3], -600.0 * L.powi(3) / (6.0 * EI));
        assert_near(u[0], 250.0 * (L.powi(4) / (8.0 * EI_2) + L * L / (2.0 * KGA_3)));
        assert_near(u[5], -250.0 * L.powi(3) / (6.0 * EI_2));
    }
}

#[test]
fn supported_beam_under_a_load_off_its_center() {
    let (a, p) = (0.45, 8000.0);
    let b = L - a;
    let line = Line::new(&[0.0, a, 0.9, L]).on_supports(0, 3);
    let bent = line.under(1, [0.0, 0.0, p], [0.0; 3]);
    let slope_of = |node: usize| bent.of(line.nodes[node], 0)[3];
    let at_load = p * a * a * b * b / (3.0 * EI * L) + p * a * b / (L * KGA);
    assert_near(bent.of(line.nodes[1], 0)[2], at_load);
    // The rotations are those of the sections; shear does not turn them.
    assert_near(slope_of(0), p * a * b * (L + b) / (6.0 * EI * L));
    assert_near(slope_of(3), -p * a * b * (L + a) / (6.0 * EI * L));
    let state = bent.state(&line.structure, 0);
    assert_near(state.reaction(line.nodes[0])[2], -p * b / L);
    assert_near(state.reaction(line.nodes[3])[2], -p * a / L);
    assert_near(state.beam_forces(line.beams[1]).at(0.0).bending_3, -p * a * b / L);
}

#[test]
fn supported_beam_under_a_uniform_load() {
    let line = Line::new(&cut(2)).on_supports(0, 2);
    let bent = line.under_line_load([0.0, 0.0, 900.0]);
    assert_near(bent.of(line.nodes[1], 0)[2], 900.0 * (5.0 * L.powi(4) / (384.0 * EI) + L * L / (8.0 * KGA)));
    assert_near(bent.of(line.nodes[0], 0)[3], 900.0 * L.powi(3) / (24.0 * EI));
    let at_middle = bent.state(&line.structure, 0).beam_forces(line.beams[1]).at(0.0);
    assert_near(at_middle.bending_3, -900.0 * L * L / 8.0);
}

#[test]
fn clamped_beam_under_a_center_load() {
    let line = Line::new(&cut(2)).held(0, &Freedom::ALL).held(2, &Freedom::ALL);
    let bent = line.under(1, [0.0, 0.0, 5000.0], [0.0; 3]);
    assert_near(bent.of(line.nodes[1], 0)[2], 5000.0 * (L.powi(3) / (192.0 * EI) + L / (4.0 * KGA)));
    let state = bent.state(&line.structure, 0);
    assert_near(state.beam_forces(line.beams[0]).at(0.0).bending_3, 5000.0 * L / 8.0);
}

#[test]
fn overhung_axle_with_equal_and_with_one_sided_load() {
    let (a, s, p) = (0.4, 1.0, 45_000.0);
    let line = Line::new(&[0.0, a, a + s / 2.0, a + s, s + 2.0 * a]).on_supports(1, 3);
    let mut loads = Loads::new(&line.structure, 2);
    for (column, node) in [(0, 0), (0, 4), (1, 0)] {
        loads.add_force(column, &Attachment::at(line.nodes[node]), [0.0, 0.0, p]);
    }
    let bent = line.solved(loads);
    let (end, seat, middle) = (line.nodes[0], line.nodes[1], line.nodes[2]);
    // The rise at the end is counted to the left: -rx.
    assert_near(bent.of(end, 0)[2], p * a * a * (2.0 * a + 3.0 * s) / (6.0 * EI) + p * a / KGA);
    assert_near(-bent.of(end, 0)[3], p * a * (s + a) / (2.0 * EI));
    assert_near(-bent.of(seat, 0)[3], p * a * s / (2.0 * EI));
    assert_near(bent.of(middle, 0)[2], -p * a * s * s / (8.0 * EI));
    // One side alone: the other seat pulls down with P a/s, and the span shears.
    let shear = p * a / KGA * (1.0 + a / s);
    assert_near(bent.of(end, 1)[2], p * a * a * (a + s) / (3.0 * EI) + shear);
    assert_near(bent.state(&line.structure, 1).reaction(line.nodes[3])[2], p * a / s);
}

#[test]
fn stepped_cantilever_sums_its_parts() {
    let (root, tip, p) = (0.5, 0.7, 2000.0);
    let stiff = Rigidity { bending_3: 2.0 * EI, shear_2: 3.0 * KGA, ..RIGIDITY };
    let line = Line::varying(&[0.0, root, root + tip], |at, length| {
        Flexibility::uniform(length, if at == 0.0 { &stiff } else { &RIGIDITY })
    });
    let line = line.held(0, &Freedom::ALL);
    let u = line.under(2, [0.0, 0.0, p], [0.0; 3]).of(line.nodes[2], 0);
    let cubes = (L.powi(3) - tip.powi(3)) / (3.0 * 2.0 * EI) + tip.powi(3) / (3.0 * EI);
    assert_near(u[2], p * (cubes + root / (3.0 * KGA) + tip / KGA));
    assert_near(u[3], p * ((L * L - tip * tip) / (4.0 * EI) + tip * tip / (2.0 * EI)));
}

#[test]
fn one_tapered_element_is_exact_from_either_end() {
    // Solid round, diameter halved: E I falls with the fourth power, P L³/(24 E I_A) at the tip.
    let narrowing = |share: f64| (1.0 - 0.5 * share).powi(4);
    let rigidity = |share: f64| Rigidity {
        bending_3: EI * narrowing(share),
        shear_2: f64::INFINITY,
        shear_3: f64::INFINITY,
        ..RIGIDITY
    };
    let tip_rigidity = EI / 16.0;
    let expected = [L.powi(3) / (24.0 * tip_rigidity), L * L / (12.0 * tip_rigidity)];
    let outward = Line::varying(&[0.0, L], |_, length| Flexibility::varying(length, 8, rigidity));
    let outward = outward.held(0, &Freedom::ALL);
    let u = outward.under(1, [0.0, 0.0, 1.0], [0.0; 3]).of(outward.nodes[1], 0);
    assert_near(u[2], expected[0]);
    assert_near(u[3], expected[1]);
    let inward =
        Line::varying(&[0.0, L], |_, length| Flexibility::varying(length, 8, |share| rigidity(1.0 - share)));
    let inward = inward.held(1, &Freedom::ALL);
    let u = inward.under(0, [0.0, 0.0, 1.0], [0.0; 3]).of(inward.nodes[0], 0);
    assert_near(u[2], expected[0]);
    assert_near(u[3], -expected[1]);
}
