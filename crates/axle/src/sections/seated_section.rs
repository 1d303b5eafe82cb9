//! Axle and stiffeners where they rest on it, remembered from one place and one design to the next.
//!
//! How a shape comes to rest, what it overlaps and what cell it closes takes longer than the axle's whole answer,
//! and depends on the profile alone, which is the same all along a tube and in most designs of a sweep.

use axlebow_sections::{Composite, Material, Part, Profile, SectionProperties};

use crate::parts::stiffener::{Seated, Stiffener};
use crate::sections::recent::Recent;
use crate::sections::stiffener_torsion::{shear_center, torsion_gain};
use crate::{AxleError, Body, StiffenedSection};

/// Least share of a modulus that still is one.
const LEAST_SHARE: f64 = 1e-9;

thread_local! {
    static RECENT: Recent<SeatedSection> = const { Recent::new() };
}

/// The section at a position (m) with what the ends of its stiffeners leave there; none where the axle is bare.
///
/// # Errors
/// As [`section_with`].
pub(crate) fn section_at(
    (body, stiffeners): (&Body, &[Stiffener]),
    y: f64,
) -> Result<Option<StiffenedSection>, AxleError> {
    let shares = stiffeners.iter().map(|stiffener| (stiffener, stiffener.share_at(y)));
    let present: Vec<(&Stiffener, f64)> = shares.filter(|(_, share)| *share > 0.0).collect();
    if present.is_empty() { Ok(None) } else { section_with(body, y, &present).map(Some) }
}

/// The section at a position (m) with a share of the section of each of some stiffeners.
///
/// # Errors
/// Those of [`Stiffener::on`]; [`axlebow_sections::SectionError::PartsOverlap`] where two of them meet.
pub(crate) fn section_with(
    body: &Body,
    y: f64,
    present: &[(&Stiffener, f64)],
) -> Result<StiffenedSection, AxleError> {
    let stiffeners: Vec<&Stiffener> = present.iter().map(|(stiffener, _)| *stiffener).collect();
    let shares: Vec<f64> = present.iter().map(|(_, share)| *share).collect();
    let wall = Bare::at(body, y);
    let is = |one: &SeatedSection| one.is(&wall, &stiffeners);
    let seated =
        RECENT.with(|recent| recent.found_or_made(is, || SeatedSection::of(wall.clone(), &stiffeners)))?;
    seated.section(&shares)
}

/// The axle without its stiffeners.
#[derive(Debug, Clone, PartialEq)]
struct Bare {
    called: &'static str,
    profile: Profile,
    material: Material,
    properties: SectionProperties,
}

impl Bare {
    fn at(body: &Body, y: f64) -> Self {
        let piece = body.piece_at(y);
        Bare {
            called: piece.part.word(),
            profile: piece.profile_at(y.abs()),
            material: body.material(piece.part).clone(),
            properties: body.properties(&piece, y.abs()),
        }
    }
}

/// A profile of the axle with the stiffeners that rest on it.
#[derive(Debug)]
struct SeatedSection {
    bare: Bare,
    stiffeners: Vec<Stiffener>,
    /// What each adds to the torsion constant, in terms of the axle's shear modulus, m⁴.
    torsion_gains: Vec<f64>,
    shear_center: Option<[f64; 2]>,
    /// Axle and stiffeners, each whole.
    composite: Composite,
}

impl SeatedSection {
    fn of(bare: Bare, stiffeners: &[&Stiffener]) -> Result<Self, AxleError> {
        let (called, material) = (bare.called.to_owned(), bare.material.clone());
        let mut parts = vec![Part { name: called, outline: bare.profile.outline(), material }];
        let seated: Vec<Seated> =
            stiffeners.iter().map(|one| one.on(&bare.profile)).collect::<Result<_, _>>()?;
        let pairs: Vec<_> = stiffeners.iter().copied().zip(&seated).collect();
        let shear_center = shear_center(&bare.profile, &pairs)?;
        let mut torsion_gains = Vec::with_capacity(pairs.len());
        for (stiffener, seated) in pairs {
            let ratio = stiffener.material.shear_modulus() / bare.material.shear_modulus();
            torsion_gains.push(ratio * torsion_gain(&bare.profile, stiffener, seated)?);
            let (name, material) = (stiffener.name.clone(), stiffener.material.clone());
            parts.push(Part { name, outline: seated.outline.clone(), material });
        }
        let stiffeners = stiffeners.iter().map(|one| (*one).clone()).collect();
        Ok(SeatedSection { bare, stiffeners, torsion_gains, shear_center, composite: Composite::new(parts)? })
    }

    /// Whether it is that of these stiffeners on this axle, wherever along it.
    fn is(&self, bare: &Bare, stiffeners: &[&Stiffener]) -> bool {
        let same = |own: &Stiffener, other: &Stiffener| {
            own.name == other.name
                && (own.clock, own.weld) == (other.clock, other.weld)
                && own.material == other.material
                && own.form == other.form
        };
        self.bare == *bare
            && self.stiffeners.len() == stiffeners.len()
            && self.stiffeners.iter().zip(stiffeners).all(|(own, other)| same(own, other))
    }

    fn section(&self, shares: &[f64]) -> Result<StiffenedSection, AxleError> {
        let mut composite = self.composite.clone();
        for (number, share) in shares.iter().enumerate().filter(|(_, share)| **share < 1.0) {
            let material = weakened(&self.stiffeners[number].material, *share)?;
            composite = composite.with_material(number + 1, material);
        }
        let gains = self.torsion_gains.iter().zip(shares).map(|(gain, share)| gain * share);
        let masses = self.composite.masses_per_length().zip(std::iter::once(&1.0).chain(shares));
        let Bare { properties: bare, material, .. } = &self.bare;
        Ok(StiffenedSection {
            area: composite.area_properties(),
            torsion_constant: bare.torsion_constant + gains.sum::<f64>(),
            shear_center: self.shear_center.filter(|_| shares.iter().all(|share| *share == 1.0)),
            shear_area: [bare.shear_coefficient_x * bare.area, bare.shear_coefficient_z * bare.area],
            mass_per_length: masses.map(|(mass, share)| mass * share).sum(),
            elastic_modulus: material.elastic_modulus(),
            shear_modulus: material.shear_modulus(),
            composite,
        })
    }
}

/// A run-out of a stiffener's end counts as its whole section of a weaker material.
fn weakened(material: &Material, share: f64) -> Result<Material, AxleError> {
    let least = share.max(LEAST_SHARE);
    let (e, nu) = (least * material.elastic_modulus(), material.poisson_ratio());
    Ok(Material::new(material.name(), e, nu, material.density())?)
}
