//! A stiffener as a bar along its own centroid, where it sits on the axle; its weld has no part in it. How it sits and how
//! stiff it is are remembered as in [`crate::sections::seated_section`].

use std::sync::Arc;

use axlebow_fe::{Attachment, Beam, BeamId, Flexibility, NodeId, Rigidity};
use axlebow_sections::{Material, Profile};

use crate::assembly::stations::reach;
use crate::assembly::stations::{Place, places};
use crate::mesh::stretch::{BeamLine, TAPER_PARTS};
use crate::parts::flexing::Flexing;
use crate::parts::stiffener::{Seated, Stiffener};
use crate::parts::stiffener_form::StiffenerForm;
use crate::sections::recent::Recent;
use crate::sections::stiffener_torsion::own_constant;
use crate::{Axle, AxleError};

thread_local! {
    static RECENT: Recent<BarSection> = const { Recent::new() };
    static RECENT_BARS: Recent<Bar> = const { Recent::new() };
}

/// A stiffener as a bar; its axes are the principal ones of its section.
#[derive(Debug, Clone)]
pub(crate) struct SeatedBar {
    /// How it sits up to a position (m), from right to left; over a taper as in the middle between two stations.
    seats: Vec<(f64, Arc<Seated>)>,
    /// Its section where it sits first.
    section: Arc<BarSection>,
    flexing: Flexing,
}

/// The section of a stiffener on a profile of the axle.
#[derive(Debug)]
struct BarSection {
    profile: Profile,
    /// Clock position and leg of the weld, which must bridge the gap under a foot.
    seat: [f64; 2],
    bar: Arc<Bar>,
    /// Angle of the stiff axis from X, rad.
    angle: f64,
    seated: Arc<Seated>,
}

impl BarSection {
    /// # Errors
    /// Those of [`Stiffener::on`] and [`StiffenerForm::shear_coefficients`].
    fn on(profile: &Profile, stiffener: &Stiffener) -> Result<Arc<Self>, AxleError> {
        let is = |one: &BarSection| {
            one.profile == *profile && one.seat == seat(stiffener) && one.bar.is(stiffener)
        };
        RECENT.with(|recent| recent.found_or_made(is, || BarSection::of(profile, stiffener)))
    }

    fn of(profile: &Profile, stiffener: &Stiffener) -> Result<Self, AxleError> {
        let seated = stiffener.on(profile)?;
        let bar = RECENT_BARS
            .with(|recent| recent.found_or_made(|one| one.is(stiffener), || Bar::of(stiffener)))?;
        let angle = seated.area.principal_axes().angle;
        Ok(BarSection { profile: *profile, seat: seat(stiffener), bar, angle, seated: Arc::new(seated) })
    }
}

fn seat(stiffener: &Stiffener) -> [f64; 2] {
    [stiffener.clock, stiffener.weld.leg]
}

/// A stiffener as a bar wherever it sits.
#[derive(Debug)]
struct Bar {
    form: StiffenerForm,
    material: Material,
    /// About its principal axes.
    rigidity: Rigidity,
}

impl Bar {
    fn of(stiffener: &Stiffener) -> Result<Self, AxleError> {
        let (form, material) = (stiffener.form.clone(), stiffener.material.clone());
        Ok(Bar { rigidity: rigidity(&form, &material)?, form, material })
    }

    fn is(&self, stiffener: &Stiffener) -> bool {
        self.form == stiffener.form && self.material == stiffener.material
    }
}

impl SeatedBar {
    /// Each stiffener of an axle as a bar.
    ///
    /// # Errors
    /// Those of [`Stiffener::on`] and [`StiffenerForm::shear_coefficients`].
    pub(crate) fn each(axle: &Axle) -> Result<Vec<Self>, AxleError> {
        let places = places(axle);
        axle.stiffeners.iter().map(|stiffener| SeatedBar::of(axle, stiffener, &places)).collect()
    }

    fn of(axle: &Axle, stiffener: &Stiffener, places: &[Place]) -> Result<Self, AxleError> {
        let along = &places[reach(places, stiffener)];
        let mut seats = Vec::with_capacity(along.len());
        let mut first = None;
        for ends in along.windows(2) {
            let middle = 0.5 * (ends[0].y + ends[1].y);
            let profile = axle.body.piece_at(middle).profile_at(middle.abs());
            let section = BarSection::on(&profile, stiffener)?;
            seats.push((ends[1].y, Arc::clone(&section.seated)));
            first.get_or_insert(section);
        }
        let section = first.expect("a stiffener runs over a stretch of the axle");
        Ok(SeatedBar { seats, section, flexing: axle.body.flexing() })
    }

    /// How it sits at a position (m).
    pub(crate) fn seated(&self, y: f64) -> &Arc<Seated> {
        let number = self.seats.partition_point(|(to, _)| *to < y);
        &self.seats[number.min(self.seats.len() - 1)].1
    }

    /// Stiffness of its weld per length, N/m²: what a weld slips is shear between parts that bend together.
    pub(crate) fn weld_stiffness(&self, stiffener: &Stiffener) -> f64 {
        stiffener.weld.stiffness / self.flexing.shear
    }

    /// Where its beam between two positions (m) runs.
    pub(crate) fn line(&self, beam: BeamId, (start_y, end_y): (f64, f64)) -> BeamLine {
        let centroid = self.seated(0.5 * (start_y + end_y)).area.centroid;
        BeamLine { beam, angle: self.section.angle, centroid }
    }

    /// The beam between two positions, with the section that its ends leave there.
    pub(crate) fn beam(
        &self,
        stiffener: &Stiffener,
        (start_y, end_y): (f64, f64),
        nodes: [NodeId; 2],
    ) -> Beam {
        let length = end_y - start_y;
        let share = |part: f64| stiffener.share_at(start_y + part * length).max(LEAST_SHARE);
        let inside = 1e-9;
        let rigidity = |share: f64| self.flexing.of(scaled(&self.section.bar.rigidity, share));
        let flexibility = if share(inside) == 1.0 && share(1.0 - inside) == 1.0 {
            Flexibility::uniform(length, &rigidity(1.0))
        } else {
            Flexibility::varying(length, TAPER_PARTS, |part| rigidity(share(part)))
        };
        let [x, z] = self.seated(start_y + 0.5 * length).area.centroid;
        let (sine, cosine) = self.section.angle.sin_cos();
        let mass = stiffener.mass_between(start_y, end_y);
        let beam =
            Beam::between(nodes[0], nodes[1], [-sine, 0.0, cosine], flexibility).with_mass(mass / length);
        let at = |node: NodeId| Attachment::on_arm(node, [x, 0.0, z]);
        Beam { start: at(nodes[0]), end: at(nodes[1]), ..beam }
    }
}

/// About its principal axes, of its form as it is described: where it sits turns the digits of a section in their last
/// places, and a thread remembers the bar of the place that it came to first.
fn rigidity(form: &StiffenerForm, material: &Material) -> Result<Rigidity, AxleError> {
    let properties = form.outline().area_properties();
    let (axes, area) = (properties.principal_axes(), properties.area);
    let (e, g) = (material.elastic_modulus(), material.shear_modulus());
    let [along, across] = form.shear_coefficients(material.poisson_ratio())?;
    Ok(Rigidity {
        axial: e * area,
        torsion: g * own_constant(form, material.poisson_ratio())?,
        bending_2: e * axes.minor,
        bending_3: e * axes.major,
        shear_2: g * across * area,
        shear_3: g * along * area,
    })
}

/// Least share of a section that still is a bar.
const LEAST_SHARE: f64 = 1e-3;

fn scaled(rigidity: &Rigidity, share: f64) -> Rigidity {
    Rigidity {
        axial: share * rigidity.axial,
        torsion: share * rigidity.torsion,
        bending_2: share * rigidity.bending_2,
        bending_3: share * rigidity.bending_3,
        shear_2: share * rigidity.shear_2,
        shear_3: share * rigidity.shear_3,
    }
}
