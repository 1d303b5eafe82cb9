//! One finite element: its stiffness, mass and load, and what lies between its ends.

use crate::elements::displacement::Displacement;
use crate::elements::flexibility::Flexibility;
use crate::elements::member::Member;
use crate::elements::mesh::Element;

/// Displacements and their derivatives at a place of an element.
#[derive(Debug, Clone, Copy, Default)]
pub struct Field {
    /// w.
    pub deflection: f64,
    /// θ.
    pub slope: f64,
    /// w'.
    pub rise: f64,
    /// θ'.
    pub curvature: f64,
}

/// What each unit end displacement (w and θ of the start, w and θ of the end) makes at a place.
pub type Shapes = [Field; 4];

/// An element on its member.
#[derive(Debug, Clone, Copy)]
pub struct FiniteElement {
    /// What it stands for.
    pub member: Member,
    form: Form,
}

#[derive(Debug, Clone, Copy)]
enum Form {
    Flexibility(Flexibility),
    Displacement(Displacement),
}

impl Field {
    /// Shear strain γ = w' − θ.
    pub fn strain(&self) -> f64 {
        self.rise - self.slope
    }

    pub fn times(&self, factor: f64) -> Self {
        Self {
            deflection: factor * self.deflection,
            slope: factor * self.slope,
            rise: factor * self.rise,
            curvature: factor * self.curvature,
        }
    }

    fn plus(&self, other: &Self) -> Self {
        Self {
            deflection: self.deflection + other.deflection,
            slope: self.slope + other.slope,
            rise: self.rise + other.rise,
            curvature: self.curvature + other.curvature,
        }
    }
}

impl FiniteElement {
    /// The element of a kind on a member.
    pub fn new(kind: Element, member: Member) -> Self {
        let form = match kind {
            Element::Flexibility => Form::Flexibility(Flexibility::of(&member)),
            Element::Hermite => Form::Displacement(Displacement::cubic(&member)),
            Element::TwoNode => Form::Displacement(Displacement::Linear),
        };
        Self { member, form }
    }

    /// Stiffness, that of the foundation included: K + ∫ k wᵢ wⱼ.
    pub fn stiffness(&self) -> [[f64; 4]; 4] {
        let mut stiffness = match &self.form {
            Form::Flexibility(form) => form.stiffness(&self.member),
            Form::Displacement(form) => form.stiffness(&self.member),
        };
        let foundation = self.member.span.foundation;
        if foundation > 0.0 {
            add(
                &mut stiffness,
                &self.products(|shapes, i, j, _| foundation * shapes[i].deflection * shapes[j].deflection),
            );
        }
        stiffness
    }

    /// Consistent mass ∫ ρA wᵢ wⱼ + ρI θᵢ θⱼ.
    pub fn mass(&self) -> [[f64; 4]; 4] {
        let member = &self.member;
        self.products(|shapes, i, j, s| {
            member.mass_per_length(s) * shapes[i].deflection * shapes[j].deflection
                + member.rotary_inertia(s) * shapes[i].slope * shapes[j].slope
        })
    }

    /// Forces up and moments on the two ends that stand for the load: ∫ q wᵢ + EI κ₀ θ'ᵢ.
    pub fn load(&self) -> [f64; 4] {
        let member = &self.member;
        member.integral(member.length, |s| {
            let (q, thermal) = (member.load_at(s), member.bending_stiffness(s) * member.curvature);
            self.shapes(s).map(|shape| q * shape.deflection + thermal * shape.curvature)
        })
    }

    /// What lies at s for end displacements; under its load, or as in a free vibration.
    pub fn field(&self, s: f64, ends: &[f64; 4], loaded: bool) -> Field {
        let start = if loaded { self.particular(s) } else { Field::default() };
        let shapes = self.shapes(s);
        shapes.iter().zip(ends).fold(start, |sum, (shape, end)| sum.plus(&shape.times(*end)))
    }

    /// Shear and moment at s by equilibrium from the forces on its start.
    ///
    /// - `start`: force up and moment on its start
    pub fn internal_forces(&self, s: f64, ends: &[f64; 4], start: [f64; 2]) -> [f64; 2] {
        let foundation = self.member.span.foundation;
        let pressure =
            |t| if foundation > 0.0 { foundation * self.field(t, ends, true).deflection } else { 0.0 };
        let [shear, moment] = self.member.load_resultants(s, |t| self.member.load_at(t) - pressure(t));
        [start[0] + shear, -start[1] + start[0] * s + moment]
    }

    fn shapes(&self, s: f64) -> Shapes {
        match &self.form {
            Form::Flexibility(form) => form.shapes(&self.member, s),
            Form::Displacement(form) => form.shapes(&self.member, s),
        }
    }

    /// What the load adds between held ends. On a foundation that would have to be the load less its pressure, which is
    /// not known beforehand: there the shapes alone stand for the deflection, as they do in other elements.
    fn particular(&self, s: f64) -> Field {
        match &self.form {
            Form::Flexibility(form) if self.member.span.foundation == 0.0 => form.particular(&self.member, s),
            _ => Field::default(),
        }
    }

    /// ∫ of a product of two shapes.
    fn products(&self, product: impl Fn(&Shapes, usize, usize, f64) -> f64) -> [[f64; 4]; 4] {
        let flat: [f64; 16] = self.member.integral(self.member.length, |s| {
            let shapes = self.shapes(s);
            std::array::from_fn(|entry| product(&shapes, entry / 4, entry % 4, s))
        });
        std::array::from_fn(|row| std::array::from_fn(|column| flat[4 * row + column]))
    }
}

fn add(sum: &mut [[f64; 4]; 4], more: &[[f64; 4]; 4]) {
    for (entry, value) in sum.as_flattened_mut().iter_mut().zip(more.as_flattened()) {
        *entry += value;
    }
}
