//! Observed order of convergence of what is approximate, and exactness of what is not.
//!
//! The order between n and 2n parts is log2(e_n/e_2n). `cargo test -p axlebow-fe --test all convergence --
//! --nocapture` prints the tables. Units are those of the sources: inch and pound-force.

use std::f64::consts::PI;

use axlebow_fe::{
    Attachment, Beam, BeamId, Displacements, Flexibility, Freedom, Loads, NodeId, Rigidity, StaticSystem,
    Structure,
};

/// Elastic modulus, lbf/in².
const E: f64 = 29e6;
/// Length of the cantilevers, in.
const LENGTH: f64 = 40.0;
/// Force at the tip, lbf.
const FORCE: f64 = 1000.0;
/// Load per length, lbf/in.
const LINE: f64 = 100.0;

/// A cantilever along Y whose first node is its root.
struct Cantilever {
    structure: Structure,
    nodes: Vec<NodeId>,
    beams: Vec<BeamId>,
}

impl Cantilever {
    /// `parts` elements of equal length; `flexibility` gives that of one by its number and length.
    fn new(parts: usize, flexibility: impl Fn(usize, f64) -> Flexibility) -> Self {
        let mut structure = Structure::new();
        let place = |i: usize| [0.0, LENGTH * i as f64 / parts as f64, 0.0];
        let nodes: Vec<_> = (0..=parts).map(|i| structure.add_node(format!("node {i}"), place(i))).collect();
        structure.hold(nodes[0], &Freedom::ALL);
        let mut beams = Vec::new();
        for (part, pair) in nodes.windows(2).enumerate() {
            let flexibility = flexibility(part, LENGTH / parts as f64);
            let beam = Beam::between(pair[0], pair[1], [0.0, 0.0, 1.0], flexibility);
            beams.push(structure.add_beam(beam).unwrap());
        }
        Cantilever { structure, nodes, beams }
    }

    /// A cantilever of one section, I = 10 in⁴.
    fn uniform(parts: usize) -> Self {
        Cantilever::new(parts, |_, length| Flexibility::uniform(length, &bending_only(E * 10.0)))
    }

    fn loads(&self) -> Loads {
        Loads::new(&self.structure, 1)
    }

    fn tip(&self) -> NodeId {
        self.nodes[self.nodes.len() - 1]
    }

    fn solved(&self, loads: Loads) -> Displacements {
        let mut system = StaticSystem::new();
        system.prepare(&self.structure).unwrap();
        system.solve(&self.structure, loads).unwrap()
    }

    /// Upward displacement of the tip under a force there.
    fn tip_displacement(&self) -> f64 {
        let mut loads = self.loads();
        loads.add_force(0, &Attachment::at(self.tip()), [0.0, 0.0, FORCE]);
        self.solved(loads).of(self.tip(), 0)[2]
    }
}

/// Bernoulli-Euler: rigid in shear.
fn bending_only(ei: f64) -> Rigidity {
    Rigidity {
        axial: E,
        torsion: E,
        bending_2: ei,
        bending_3: ei,
        shear_2: f64::INFINITY,
        shear_3: f64::INFINITY,
    }
}

/// Second moment of a solid round.
fn round(diameter: f64) -> f64 {
    PI * diameter.powi(4) / 64.0
}

/// Prints errors against the number of parts and returns the observed orders.
fn orders(title: &str, errors: &[(usize, f64)]) -> Vec<f64> {
    println!("{title}\n{:>6} {:>12} {:>7}", "parts", "error", "order");
    println!("{:>6} {:>12.4e}", errors[0].0, errors[0].1);
    let observed = errors.windows(2).map(|pair| {
        let (coarse, fine) = (pair[0], pair[1]);
        let order = (coarse.1 / fine.1).ln() / (fine.0 as f64 / coarse.0 as f64).ln();
        println!("{:>6} {:>12.4e} {:>7.3}", fine.0, fine.1, order);
        order
    });
    observed.collect()
}

fn doubled(last: usize) -> impl Iterator<Item = usize> {
    std::iter::successors(Some(2), |n| Some(2 * n)).take_while(move |n| *n <= last)
}

/// Tip displacement of a solid round that tapers linearly from the root to the tip under a tip force:
/// P·L³/(3·E·I_root)·d_root/d_tip. Source: S. P. Timoshenko & J. M. Gere, Mechanics of Materials (Gere & Goodno,
/// 8th ed. 2013, tapered cantilever of the type of Ex. 9-13).
fn tapered_tip(root: f64, tip: f64) -> f64 {
    FORCE * LENGTH.powi(3) / (3.0 * E * round(root)) * root / tip
}

#[test]
fn the_closed_form_is_the_printed_number() {
    // Root 4 in, tip 2 in: 0.11707950 in, to half the last digit.
    assert!((tapered_tip(4.0, 2.0) - 0.117_079_50).abs() < 0.5e-8);
}

/// A step of the mid-section in place of the taper is wrong by its second-order term.
#[test]
fn stepped_elements_converge_on_the_tapered_cantilever_at_order_two() {
    let errors: Vec<_> = doubled(64)
        .map(|parts| {
            let stepped = Cantilever::new(parts, |part, length| {
                let share = (part as f64 + 0.5) / parts as f64;
                Flexibility::uniform(length, &bending_only(E * round(4.0 - 2.0 * share)))
            });
            (parts, (stepped.tip_displacement() / tapered_tip(4.0, 2.0) - 1.0).abs())
        })
        .collect();
    for order in orders("tapered cantilever by stepped elements", &errors) {
        assert!((1.9..2.1).contains(&order), "{order}");
    }
    assert!(errors[5].1 < 1e-3);
}

/// Tip displacement under a load per length q: q·L⁴/(8·E·I). Source: Roark's Formulas for Stress and Strain,
/// 9th ed. 2020, Table 8.1.
#[test]
fn a_load_lumped_at_the_nodes_converges_at_order_two_and_a_load_along_the_beam_is_exact() {
    let exact = LINE * LENGTH.powi(4) / (8.0 * E * 10.0);
    let mut errors = Vec::new();
    for parts in doubled(64) {
        let beam = Cantilever::uniform(parts);
        let (mut lumped, mut along) = (beam.loads(), beam.loads());
        let half = [0.0, 0.0, 0.5 * LINE * LENGTH / parts as f64];
        for (id, pair) in beam.beams.iter().zip(beam.nodes.windows(2)) {
            pair.iter().for_each(|node| lumped.add_force(0, &Attachment::at(*node), half));
            along.add_line_load(&beam.structure, 0, *id, [0.0, 0.0, LINE]);
        }
        let tip = |loads: Loads| beam.solved(loads).of(beam.tip(), 0)[2] / exact - 1.0;
        errors.push((parts, tip(lumped).abs()));
        let along = tip(along).abs();
        assert!(along < 1e-9, "{parts} parts: {along:e}");
    }
    for order in orders("distributed load lumped at the nodes", &errors) {
        assert!((1.9..2.1).contains(&order), "{order}");
    }
}

/// Greatest moment of a simply supported beam under a load per length: q·L²/8 (Roark, Table 8.1). With an odd
/// number of elements it lies inside one; read at the nodes only it is wrong by q·h²/8, read where the shear
/// vanishes it is exact.
#[test]
fn the_peak_moment_is_found_inside_an_element() {
    let exact = LINE * LENGTH * LENGTH / 8.0;
    let mut errors = Vec::new();
    for parts in [3, 9, 27, 81] {
        let beam = Cantilever::uniform(parts);
        let mut loads = beam.loads();
        beam.beams.iter().for_each(|id| loads.add_line_load(&beam.structure, 0, *id, [0.0, 0.0, -LINE]));
        // The root's reactions for simple supports at both ends: half the load, and no moment.
        loads.add_force(0, &Attachment::at(beam.tip()), [0.0, 0.0, 0.5 * LINE * LENGTH]);
        let solved = beam.solved(loads);
        let state = solved.state(&beam.structure, 0);
        let (mut at_nodes, mut inside) = (0.0_f64, 0.0_f64);
        let length = LENGTH / parts as f64;
        for id in &beam.beams {
            let forces = state.beam_forces(*id);
            let no_shear = (-forces.start[1] / forces.line_load[1]).clamp(0.0, length);
            at_nodes = at_nodes.max(forces.at(0.0).bending_3).max(forces.at(length).bending_3);
            inside = inside.max(forces.at(no_shear).bending_3);
        }
        errors.push((parts, (at_nodes / exact - 1.0).abs()));
        assert!((inside / exact - 1.0).abs() < 1e-9, "{parts} parts: {inside}");
    }
    for order in orders("peak moment read at the nodes only", &errors) {
        assert!((1.9..2.1).contains(&order), "{order}");
    }
}

/// Error of a cantilever of one tapered element, integrated by the six-point rule in each of its parts.
fn quadrature_error(root: f64, tip: f64, parts: usize) -> f64 {
    let one = Cantilever::new(1, |_, length| {
        Flexibility::varying(length, parts, |share| bending_only(E * round(root + (tip - root) * share)))
    });
    (one.tip_displacement() / tapered_tip(root, tip) - 1.0).abs()
}

/// The rule of six points is exact up to degree 11, so that its error falls as the twelfth power of the length
/// of a part (Abramowitz & Stegun 25.4.30); the integrand 1/d⁴ is steepest near the tip, where that power shows
/// only when the parts are short against the distance to the cone's point.
#[test]
fn quadrature_of_a_tapered_element_reaches_rounding_with_few_parts() {
    for (tip, most) in [(3.0, [1e-9, 1e-12]), (2.0, [2e-6, 1e-11]), (1.0, [1e-3, 1e-6])] {
        let parts = [1, 2, 3, 4, 6, 8, 12];
        let errors: Vec<_> =
            parts.into_iter().map(|parts| (parts, quadrature_error(4.0, tip, parts))).collect();
        let orders = orders(&format!("one element tapering from 4 to {tip}"), &errors);
        assert!(errors[0].1 < most[0] && errors[3].1 < most[1], "{errors:?}");
        assert!(errors[6].1 < 1e-11, "{errors:?}");
        // Until rounding is reached the order rises toward twelve.
        let above_rounding = errors.iter().skip(1).take_while(|(_, error)| *error > 1e-14).count();
        assert!(orders[..above_rounding].is_sorted(), "{orders:?}");
        assert!(orders[..above_rounding].iter().all(|order| *order < 12.5), "{orders:?}");
    }
}
