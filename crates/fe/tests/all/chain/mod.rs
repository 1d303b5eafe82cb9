//! Random chains of beams and springs, in any orientation.

use axlebow_fe::{
    Attachment, Beam, BeamId, Flexibility, Freedom, LumpedMass, NodeId, Rigidity, Spring, SpringId, Structure,
};
use nalgebra::{Matrix3, Rotation3, SMatrix, Vector3};
use proptest::prelude::*;

/// A beam and what hangs on its far node.
#[derive(Debug, Clone)]
pub struct Piece {
    /// Flexible length with its direction.
    pub along: [f64; 3],
    pub up: [f64; 3],
    pub start_arm: [f64; 3],
    pub end_arm: [f64; 3],
    pub rigidity: Rigidity,
    /// Rigidity at the end over that at the start.
    pub taper: f64,
    pub mass_per_length: f64,
    pub lump: f64,
}

/// A spring at a point between a node and the one before the last, or the ground.
#[derive(Debug, Clone)]
pub struct Link {
    pub from: usize,
    pub to: Option<usize>,
    pub point: [f64; 3],
    pub rates: [f64; 6],
    pub second: ([f64; 3], [f64; 6]),
    pub series: (usize, f64),
}

/// A chain: its first node sits at the origin.
#[derive(Debug, Clone)]
pub struct Chain {
    pub pieces: Vec<Piece>,
    pub links: Vec<Link>,
}

/// A chain that was built.
pub struct Built {
    pub structure: Structure,
    pub nodes: Vec<NodeId>,
    pub beams: Vec<BeamId>,
    pub springs: Vec<SpringId>,
    /// Point of each spring.
    pub points: Vec<Vector3<f64>>,
}

fn vector(size: f64) -> impl Strategy<Value = [f64; 3]> + Clone {
    prop::array::uniform3(-size..size)
}

/// Stiffness over three decades.
fn rates(low: f64) -> impl Strategy<Value = f64> + Clone {
    (0.0..3.0_f64).prop_map(move |decades| low * 10.0_f64.powf(decades))
}

fn rigidity() -> impl Strategy<Value = Rigidity> {
    prop::array::uniform6(0.5..5.0_f64).prop_map(
        |[axial, torsion, bending_2, bending_3, shear_2, shear_3]| Rigidity {
            axial: 3e8 * axial,
            torsion: 4e5 * torsion,
            bending_2: 5e5 * bending_2,
            bending_3: 5e5 * bending_3,
            shear_2: 6e7 * shear_2,
            shear_3: 6e7 * shear_3,
        },
    )
}

prop_compose! {
    fn piece()(
        along in vector(1.0).prop_filter("long enough", |v| Vector3::from(*v).norm() > 0.3),
        side in vector(1.0).prop_filter("long enough", |v| Vector3::from(*v).norm() > 0.3),
        arms in prop::option::of((vector(0.2), vector(0.2))),
        rigidity in rigidity(),
        taper in prop_oneof![Just(1.0), 0.5..2.0_f64],
        mass_per_length in 0.0..90.0_f64,
        lump in 0.0..200.0_f64,
    ) -> Piece {
        let (start_arm, end_arm) = arms.unwrap_or_default();
        // Well away from the beam's own direction, where local axis 2 would be a matter of rounding.
        let up = Vector3::from(side) + 2.0 * Vector3::from(along).cross(&Vector3::from(side));
        Piece { along, up: up.into(), start_arm, end_arm, rigidity, taper, mass_per_length, lump }
    }
}

prop_compose! {
    fn link(nodes: usize)(
        from in 0..nodes,
        back in prop::option::of(1..3_usize),
        point in vector(0.3),
        rates in prop::array::uniform6(rates(1e4)),
        second in (vector(0.4), prop::array::uniform6(0.0..1e6)),
        series in (0..6_usize, 0.0..1e-5),
    ) -> Link {
        let to = back.filter(|back| *back <= from).map(|back| from - back);
        Link { from, to, point, rates, second, series }
    }
}

/// Chains of up to six beams with up to four springs.
pub fn chains() -> impl Strategy<Value = Chain> {
    prop::collection::vec(piece(), 1..6).prop_flat_map(|pieces| {
        let links = prop::collection::vec(link(pieces.len() + 1), 0..4);
        (Just(pieces), links).prop_map(|(pieces, links)| Chain { pieces, links })
    })
}

impl Piece {
    /// Length of the flexible part.
    pub fn length(&self) -> f64 {
        Vector3::from(self.along).norm()
    }

    fn flexibility(&self) -> Flexibility {
        if self.taper == 1.0 {
            return Flexibility::uniform(self.length(), &self.rigidity);
        }
        // Four parts leave an error of rounding size in the integrals of a taper of two to one.
        Flexibility::varying(self.length(), 4, |share| {
            scaled(&self.rigidity, 1.0 + share * (self.taper - 1.0))
        })
    }

    /// The same beam as two, cut at `share` of its length.
    pub fn cut(&self, share: f64) -> [Piece; 2] {
        let at_cut = 1.0 + share * (self.taper - 1.0);
        let along = Vector3::from(self.along);
        let none = [0.0; 3];
        let first =
            Piece { along: (along * share).into(), end_arm: none, taper: at_cut, lump: 0.0, ..self.clone() };
        let rigidity = scaled(&self.rigidity, at_cut);
        let along = (along * (1.0 - share)).into();
        let taper = self.taper / at_cut;
        [first, Piece { along, start_arm: none, rigidity, taper, ..self.clone() }]
    }
}

fn scaled(rigidity: &Rigidity, factor: f64) -> Rigidity {
    Rigidity {
        axial: factor * rigidity.axial,
        torsion: factor * rigidity.torsion,
        bending_2: factor * rigidity.bending_2,
        bending_3: factor * rigidity.bending_3,
        shear_2: factor * rigidity.shear_2,
        shear_3: factor * rigidity.shear_3,
    }
}

impl Chain {
    /// The chain, turned about the origin; nothing holds it but its own links.
    pub fn built(&self, turn: &Rotation3<f64>) -> Built {
        let turned = |v: [f64; 3]| -> [f64; 3] { (turn * Vector3::from(v)).into() };
        let mut structure = Structure::new();
        let mut at = Vector3::zeros();
        let mut nodes = vec![structure.add_node("place 0", at.into())];
        let mut beams = Vec::new();
        for (number, piece) in self.pieces.iter().enumerate() {
            let flexible = Vector3::from(piece.along);
            at += turn * (Vector3::from(piece.start_arm) + flexible - Vector3::from(piece.end_arm));
            let node = structure.add_node(format!("place {}", number + 1), at.into());
            let mut beam = Beam::between(nodes[number], node, turned(piece.up), piece.flexibility());
            (beam.start.arm, beam.end.arm) = (turned(piece.start_arm), turned(piece.end_arm));
            beams.push(structure.add_beam(beam.with_mass(piece.mass_per_length)).unwrap());
            let place = Attachment::on_arm(node, turned(piece.up));
            structure.add_mass(LumpedMass { place, mass: piece.lump });
            nodes.push(node);
        }
        let mut built = Built { structure, nodes, beams, springs: Vec::new(), points: Vec::new() };
        self.links.iter().for_each(|link| built.add_link(link, turn));
        built
    }
}

impl Built {
    /// Adds a spring to the ground at a node itself.
    pub fn add_ground(&mut self, node: usize, rates: [f64; 6]) {
        let (zero, series) = ([0.0; 3], (0, 0.0));
        let link = Link { from: node, to: None, point: zero, rates, second: (zero, [0.0; 6]), series };
        self.add_link(&link, &Rotation3::identity());
    }

    fn add_link(&mut self, link: &Link, turn: &Rotation3<f64>) {
        let point = self.position(link.from) + turn * Vector3::from(link.point);
        let attached =
            |node: usize| Attachment::on_arm(self.nodes[node], (point - self.position(node)).into());
        let near = attached(link.from);
        let spring = match link.to {
            None => Spring::to_ground(near, link.rates),
            Some(to) => Spring::between(near, attached(to), link.rates),
        };
        let spring =
            spring.with_rates_at(link.second.0, link.second.1).in_series(link.series.0, link.series.1);
        self.springs.push(self.structure.add_spring(turned(spring, turn)).unwrap());
        self.points.push(point);
    }

    /// Holds all freedoms of a node.
    pub fn hold(&mut self, node: usize) {
        self.structure.hold(self.nodes[node], &Freedom::ALL);
    }

    /// Position of a node.
    pub fn position(&self, node: usize) -> Vector3<f64> {
        self.structure.position(self.nodes[node]).into()
    }
}

/// A spring with its stiffness turned; its arms stay.
fn turned(mut spring: Spring, turn: &Rotation3<f64>) -> Spring {
    let mut both = SMatrix::<f64, 6, 6>::zeros();
    let turn: &Matrix3<f64> = turn.matrix();
    both.fixed_view_mut::<3, 3>(0, 0).copy_from(turn);
    both.fixed_view_mut::<3, 3>(3, 3).copy_from(turn);
    let stiffness = both * SMatrix::from_fn(|i, j| spring.stiffness[i][j]) * both.transpose();
    spring.stiffness = std::array::from_fn(|i| std::array::from_fn(|j| stiffness[(i, j)]));
    spring
}
