//! Torsion and shear of a section of any shape, after Saint-Venant.

use crate::outline::area_moments::AreaMoments;
use crate::outline::edge::{Place, cross, difference};
use crate::torsion::scalar_system::ScalarSystem;
use crate::torsion::shear_center::shear_center;
use crate::torsion::triangulation::Triangulation;
use crate::{AreaProperties, Composite, Outline, SectionError};

/// Torsion and shear of a section of any shape, after Saint-Venant.
///
/// The axial displacement is found on curved six-node triangles: for unit twist the warping ω, for shear
/// forces Ψ. With f = a x + b z the growth of the normal stress along the axle and
/// h = (a (x² - z²)/2 + b x z, a x z - b (x² - z²)/2) the sideways contraction,
///
/// ```text
/// ∇·∇ω = 0,                               τ = T/J (∇ω + (-z, x))
/// ∇·∇Ψ = -f + nu/(2 (1 + nu)) ∇·h,        τ = ∇Ψ - nu/(2 (1 + nu)) h
/// ```
///
/// and no shear crosses the edge.
///
/// Validity: of fineness 1, constants within 0.1 % and peaks of stress within 1 % of closed forms for bars and
/// tubes; errors of the peaks fall with the square of the fineness.
/// Source: W. D. Pilkey, *Analysis and Design of Elastic Beams*, Wiley 2002, ch. 5-6; from memory, derived
/// again from the equations of elasticity.
#[derive(Debug, Clone, PartialEq)]
pub struct SaintVenant {
    /// Area, centroid and second moments, times the modular ratios of the parts.
    pub area: AreaProperties,
    /// Torsion constant J (m⁴), times the modular ratios.
    pub torsion_constant: f64,
    /// Torque over the greatest shear stress, T / tau (m³); at a sharp inner corner, where theory has no
    /// bound, it falls with the size of the triangles.
    pub torsion_modulus: f64,
    /// Shear center (x, z) (m), after Trefftz.
    pub shear_center: [f64; 2],
    /// Warping constant about the shear center, ∫ ω² dA (m⁶), times the modular ratios.
    pub warping_constant: f64,
    /// Share of the area that carries a shear force along X, by Cowper's (1966) definition.
    pub shear_coefficient_x: f64,
    /// Share of the area that carries a shear force along Z, by Cowper's (1966) definition.
    pub shear_coefficient_z: f64,
    /// Greatest shear stress for a unit shear force along X through the shear center (1/m²).
    pub shear_peak_x: f64,
    /// Greatest shear stress for a unit shear force along Z through the shear center (1/m²).
    pub shear_peak_z: f64,
    /// Number of unknowns behind these values.
    pub unknowns: usize,
}

impl SaintVenant {
    /// Of a section of one material.
    ///
    /// - `poisson_ratio`: nu, 0 to 0.5
    /// - `fineness`: 1 for triangles as long as the mean wall, 2 for half of that
    ///
    /// Errors: [`SectionError::EdgesCross`], [`SectionError::NotJoined`].
    pub fn of_outline(outline: &Outline, poisson_ratio: f64, fineness: f64) -> Result<Self, SectionError> {
        let mesh = Triangulation::of(&[outline], fineness)?;
        Field::new(mesh, &[1.0], poisson_ratio)?.saint_venant()
    }

    /// Of parts that are joined wherever their edges meet, welds being parts too.
    ///
    /// Poisson's ratio is that of the first part, for all.
    ///
    /// Errors: [`SectionError::EdgesCross`], [`SectionError::NotJoined`] where parts share no edge or corner.
    pub fn of_composite(composite: &Composite, fineness: f64) -> Result<Self, SectionError> {
        let outlines: Vec<&Outline> = composite.parts().iter().map(|part| &part.outline).collect();
        let ratios: Vec<f64> = (0..outlines.len()).map(|part| composite.modular_ratio(part)).collect();
        let mesh = Triangulation::of(&outlines, fineness)?;
        Field::new(mesh, &ratios, composite.parts()[0].material.poisson_ratio())?.saint_venant()
    }
}

/// Share of a triangle's area and two of the three area coordinates of its seven points.
///
/// Source: J. Radon 1948, degree 5; from memory, checked by the exact moments of a disc.
fn triangle_points() -> [(f64, [f64; 3]); 7] {
    let root = 15.0_f64.sqrt();
    let (a, b) = ((6.0 - root) / 21.0, (6.0 + root) / 21.0);
    let (wa, wb) = ((155.0 - root) / 1200.0, (155.0 + root) / 1200.0);
    let third = 1.0 / 3.0;
    [
        (0.225, [third, third, third]),
        (wa, [a, a, 1.0 - 2.0 * a]),
        (wa, [a, 1.0 - 2.0 * a, a]),
        (wa, [1.0 - 2.0 * a, a, a]),
        (wb, [b, b, 1.0 - 2.0 * b]),
        (wb, [b, 1.0 - 2.0 * b, b]),
        (wb, [1.0 - 2.0 * b, b, b]),
    ]
}

/// Area coordinates of the six nodes of a triangle.
const NODES: [[f64; 3]; 6] =
    [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0], [0.5, 0.5, 0.0], [0.0, 0.5, 0.5], [0.5, 0.0, 0.5]];

/// A point within a triangle.
struct Point {
    place: Place,
    /// Twice the area per unit of reference area.
    stretch: f64,
    values: [f64; 6],
    gradients: [Place; 6],
}

impl Point {
    fn of(corners: &[Place; 6], [l1, l2, l3]: [f64; 3]) -> Self {
        let values = [
            l1 * (2.0 * l1 - 1.0),
            l2 * (2.0 * l2 - 1.0),
            l3 * (2.0 * l3 - 1.0),
            4.0 * l1 * l2,
            4.0 * l2 * l3,
            4.0 * l3 * l1,
        ];
        // Derivatives along l1 and l2, l3 being 1 - l1 - l2.
        let (s, t) = (1.0 - 4.0 * l3, 4.0);
        let along_1 = [4.0 * l1 - 1.0, 0.0, s, t * l2, -t * l2, t * (l3 - l1)];
        let along_2 = [0.0, 4.0 * l2 - 1.0, s, t * l1, t * (l3 - l2), -t * l1];
        let sum =
            |weights: &[f64; 6], axis: usize| (0..6).map(|i| weights[i] * corners[i][axis]).sum::<f64>();
        let (d1, d2) = ([sum(&along_1, 0), sum(&along_1, 1)], [sum(&along_2, 0), sum(&along_2, 1)]);
        let stretch = cross(d1, d2);
        let gradient = |i: usize| {
            [
                (along_1[i] * d2[1] - along_2[i] * d1[1]) / stretch,
                (along_2[i] * d1[0] - along_1[i] * d2[0]) / stretch,
            ]
        };
        let place = [sum(&values, 0), sum(&values, 1)];
        Self { place, stretch, values, gradients: [0, 1, 2, 3, 4, 5].map(gradient) }
    }

    /// Gradient of a field given at the nodes of the triangle.
    fn slope(&self, values: [f64; 6]) -> Place {
        [0, 1].map(|axis| (0..6).map(|i| values[i] * self.gradients[i][axis]).sum::<f64>())
    }
}

/// The equations of a section, from its centroid.
struct Field {
    mesh: Triangulation,
    ratios: Vec<f64>,
    contraction: f64,
    area: AreaProperties,
    system: ScalarSystem,
}

impl Field {
    fn new(mut mesh: Triangulation, part_ratios: &[f64], poisson_ratio: f64) -> Result<Self, SectionError> {
        let ratios: Vec<f64> = mesh.parts.iter().map(|&part| part_ratios[part]).collect();
        let area = area_of(&mesh, &ratios);
        mesh.nodes.iter_mut().for_each(|node| *node = difference(*node, area.centroid));
        let groups: Vec<Vec<usize>> = mesh.triangles.iter().map(|nodes| nodes.to_vec()).collect();
        let mut system = ScalarSystem::new(mesh.nodes.len(), &groups)?;
        for (nodes, ratio) in mesh.triangles.iter().zip(&ratios) {
            for (weight, point) in points(&mesh.nodes, nodes) {
                let along = |i: usize, j: usize| {
                    let (a, b) = (point.gradients[i], point.gradients[j]);
                    a[0] * b[0] + a[1] * b[1]
                };
                for i in 0..6 {
                    for j in 0..6 {
                        system.add(nodes[i], nodes[j], ratio * weight * along(i, j));
                    }
                }
            }
        }
        let contraction = poisson_ratio / (2.0 * (1.0 + poisson_ratio));
        Ok(Self { mesh, ratios, contraction, area, system: system.factored() })
    }

    fn saint_venant(&self) -> Result<SaintVenant, SectionError> {
        let twist = |[x, z]: Place| [-z, x];
        let warping = self.potential(twist, |_| 0.0);
        let torsion_constant = self.integral(|point, nodes| {
            let shear = added(point.slope(taken(&warping, nodes)), twist(point.place));
            cross(point.place, shear)
        });
        let torsion_peak = self.peak(&warping, twist);
        let (center, warping_constant) = self.center(&warping);
        let mut made = SaintVenant {
            area: self.area,
            torsion_constant,
            torsion_modulus: torsion_constant / torsion_peak,
            shear_center: added(self.area.centroid, center),
            warping_constant,
            shear_coefficient_x: 0.0,
            shear_coefficient_z: 0.0,
            shear_peak_x: 0.0,
            shear_peak_z: 0.0,
            unknowns: self.mesh.nodes.len(),
        };
        let torsion = Torsion { warping, torsion_constant, center };
        (made.shear_coefficient_x, made.shear_peak_x) = self.shear([1.0, 0.0], &torsion);
        (made.shear_coefficient_z, made.shear_peak_z) = self.shear([0.0, 1.0], &torsion);
        Ok(made)
    }

    /// The function φ of ∇·(∇φ + given) = -source with no flow over the edge.
    fn potential(&self, given: impl Fn(Place) -> Place, source: impl Fn(Place) -> f64) -> Vec<f64> {
        let mut loads = vec![0.0; self.mesh.nodes.len()];
        for (nodes, ratio) in self.mesh.triangles.iter().zip(&self.ratios) {
            for (weight, point) in points(&self.mesh.nodes, nodes) {
                let (flow, pull) = (given(point.place), source(point.place));
                for i in 0..6 {
                    let along = point.gradients[i][0] * flow[0] + point.gradients[i][1] * flow[1];
                    loads[nodes[i]] += ratio * weight * (point.values[i] * pull - along);
                }
            }
        }
        self.system.solution(&loads)
    }

    /// Integral over the section, times the modular ratios.
    fn integral(&self, value: impl Fn(&Point, &[usize; 6]) -> f64) -> f64 {
        let triangles = self.mesh.triangles.iter().zip(&self.ratios);
        triangles
            .map(|(nodes, ratio)| {
                let points = points(&self.mesh.nodes, nodes);
                ratio * points.iter().map(|(weight, point)| weight * value(point, nodes)).sum::<f64>()
            })
            .sum()
    }

    /// Greatest length of ratio (∇φ + given), the mean at each node over the triangles of a part that share it.
    fn peak(&self, potential: &[f64], given: impl Fn(Place) -> Place) -> f64 {
        let parts = self.mesh.parts.iter().max().map_or(0, |last| last + 1);
        let mut sums = vec![(0.0_f64, [0.0; 2]); parts * self.mesh.nodes.len()];
        for ((nodes, ratio), part) in self.mesh.triangles.iter().zip(&self.ratios).zip(&self.mesh.parts) {
            for (place, node) in NODES.into_iter().zip(nodes) {
                let point = Point::of(&taken(&self.mesh.nodes, nodes), place);
                let [x, z] = added(point.slope(taken(potential, nodes)), given(point.place));
                let (count, sum) = &mut sums[part * self.mesh.nodes.len() + node];
                *count += 1.0;
                *sum = added(*sum, [ratio * x, ratio * z]);
            }
        }
        sums.iter().map(|(count, [x, z])| x.hypot(*z) / count.max(1.0)).fold(0.0, f64::max)
    }

    /// Shear center from the centroid, and ∫ ω_s² dA.
    fn center(&self, warping: &[f64]) -> ([f64; 2], f64) {
        let value = |point: &Point, nodes: &[usize; 6]| -> f64 {
            taken(warping, nodes).iter().zip(point.values).map(|(a, b)| a * b).sum()
        };
        let mean = self.integral(value) / self.area.area;
        let along =
            |axis: usize| self.integral(|point, nodes| (value(point, nodes) - mean) * point.place[axis]);
        let [x, z] = shear_center(&self.area, along(0), along(1));
        let square = |point: &Point, nodes: &[usize; 6]| {
            (value(point, nodes) - mean - z * point.place[0] + x * point.place[1]).powi(2)
        };
        ([x, z], self.integral(square))
    }

    /// Shear coefficient and greatest stress of a unit force through the shear center.
    ///
    /// By Cowper's definition, V / (k G A) is the slope of the mean deflection plus the mean rotation of the
    /// section.
    fn shear(&self, force: [f64; 2], torsion: &Torsion) -> (f64, f64) {
        let field = self.area.stress_field(0.0, -force[1], force[0]);
        let (a, b, nu) = (field.gradient_x, field.gradient_z, self.contraction);
        let narrowing = |[x, z]: Place| {
            let half = 0.5 * (x * x - z * z);
            [-nu * (a * half + b * x * z), -nu * (a * x * z - b * half)]
        };
        let bent = self.potential(narrowing, |[x, z]| a * x + b * z);
        let torque = self.integral(|point, nodes| {
            cross(point.place, added(point.slope(taken(&bent, nodes)), narrowing(point.place)))
        });
        // Twist that brings the resultant to the shear center.
        let twist = (cross(torsion.center, force) - torque) / torsion.torsion_constant;
        let whole: Vec<f64> = bent.iter().zip(&torsion.warping).map(|(p, w)| p + twist * w).collect();
        let given = |[x, z]: Place| added(narrowing([x, z]), [-twist * z, twist * x]);
        let peak = self.peak(&whole, given);
        let lean = |axis: usize| {
            self.integral(|point, nodes| {
                let value: f64 = taken(&whole, nodes).iter().zip(point.values).map(|(p, n)| p * n).sum();
                value * point.place[axis]
            })
        };
        // Mean rotation: the plane that fits the axial displacement, by the same equations as a stress field.
        let plane = self.area.stress_field(0.0, -lean(1), lean(0));
        let drift =
            [0, 1].map(|axis| self.integral(|point, _| narrowing(point.place)[axis]) / self.area.area);
        let slip = force[0] * (plane.gradient_x + drift[0]) + force[1] * (plane.gradient_z + drift[1]);
        (1.0 / (self.area.area * slip), peak)
    }
}

/// What shear needs to know of torsion.
struct Torsion {
    warping: Vec<f64>,
    torsion_constant: f64,
    center: [f64; 2],
}

fn area_of(mesh: &Triangulation, ratios: &[f64]) -> AreaProperties {
    let pole = mesh.nodes[0];
    let mut sum = AreaMoments::default();
    for (nodes, ratio) in mesh.triangles.iter().zip(ratios) {
        for (weight, point) in points(&mesh.nodes, nodes) {
            sum = sum.plus(&AreaMoments::of_point(difference(point.place, pole), ratio * weight));
        }
    }
    AreaProperties::from_moments(&sum, pole)
}

/// The points of a triangle, each with its share of the area (m²).
fn points(places: &[Place], nodes: &[usize; 6]) -> [(f64, Point); 7] {
    triangle_points().map(|(share, place)| {
        let point = Point::of(&taken(places, nodes), place);
        (0.5 * share * point.stretch, point)
    })
}

/// The values at the nodes of a triangle.
fn taken<T: Copy>(values: &[T], nodes: &[usize; 6]) -> [T; 6] {
    nodes.map(|node| values[node])
}

fn added(a: Place, b: Place) -> Place {
    [a[0] + b[0], a[1] + b[1]]
}
