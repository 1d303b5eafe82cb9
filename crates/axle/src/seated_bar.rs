//! A stiffener as a bar along its own centroid, where it sits on the axle; its weld has no part in it.

use axlebow_fe::{Attachment, Beam, Flexibility, NodeId, Rigidity};
use axlebow_sections::{Placement, SaintVenant};

use crate::body::Piece;
use crate::frame::{TAPER_PARTS, piece_at};
use crate::stations::{Place, places};
use crate::stiffener::{Seated, Stiffener};
use crate::stiffener_torsion::own_constant;
use crate::tied_stiffener::reach;
use crate::{Axle, AxleError};

/// A stiffener as a bar; its axes are the principal ones of its section.
#[derive(Debug, Clone)]
pub(crate) struct SeatedBar {
    /// How it sits up to a position (m), from right to left; over a taper as in the middle between two stations.
    seats: Vec<(f64, Seated)>,
    /// Angle of the stiff axis from X, rad.
    angle: f64,
    rigidity: Rigidity,
}

impl SeatedBar {
    /// Each stiffener of an axle as a bar.
    ///
    /// # Errors
    /// Those of [`Stiffener::on`] and [`SaintVenant::of_outline`].
    pub(crate) fn each(axle: &Axle) -> Result<Vec<Self>, AxleError> {
        let places = places(axle);
        let mut bars: Vec<SeatedBar> = Vec::with_capacity(axle.stiffeners.len());
        // The first of each kind of bar; its place round the axle does not matter.
        let mut kinds: Vec<(&Stiffener, Rigidity)> = Vec::new();
        for stiffener in &axle.stiffeners {
            let seats = seats(axle, stiffener, &places)?;
            let seated = &seats[0].1;
            let alike =
                |other: &Stiffener| other.form == stiffener.form && other.material == stiffener.material;
            let rigidity = match kinds.iter().find(|(other, _)| alike(other)) {
                Some((_, known)) => *known,
                None => {
                    let own = rigidity(stiffener, seated)?;
                    kinds.push((stiffener, own));
                    own
                }
            };
            bars.push(SeatedBar { angle: seated.area.principal_axes().angle, rigidity, seats });
        }
        Ok(bars)
    }

    /// How it sits at a position (m).
    pub(crate) fn seated(&self, y: f64) -> &Seated {
        let number = self.seats.partition_point(|(to, _)| *to < y);
        &self.seats[number.min(self.seats.len() - 1)].1
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
        let flexibility = if share(inside) == 1.0 && share(1.0 - inside) == 1.0 {
            Flexibility::uniform(length, &self.rigidity)
        } else {
            Flexibility::varying(length, TAPER_PARTS, |part| scaled(&self.rigidity, share(part)))
        };
        let [x, z] = self.seated(start_y + 0.5 * length).area.centroid;
        let (sine, cosine) = self.angle.sin_cos();
        let mass = stiffener.mass_between(start_y, end_y);
        let beam =
            Beam::between(nodes[0], nodes[1], [-sine, 0.0, cosine], flexibility).with_mass(mass / length);
        let at = |node: NodeId| Attachment::on_arm(node, [x, 0.0, z]);
        Beam { start: at(nodes[0]), end: at(nodes[1]), ..beam }
    }
}

/// About its principal axes.
fn rigidity(stiffener: &Stiffener, seated: &Seated) -> Result<Rigidity, AxleError> {
    let (axes, area) = (seated.area.principal_axes(), seated.area.area);
    let (e, g) = (stiffener.material.elastic_modulus(), stiffener.material.shear_modulus());
    let upright = seated.outline.placed(&Placement { turn: -axes.angle, x: 0.0, z: 0.0 });
    let shear = SaintVenant::of_outline(&upright, stiffener.material.poisson_ratio(), 1.0)?;
    Ok(Rigidity {
        axial: e * area,
        torsion: g * own_constant(stiffener, seated)?,
        bending_2: e * axes.minor,
        bending_3: e * axes.major,
        shear_2: g * shear.shear_coefficient_z * area,
        shear_3: g * shear.shear_coefficient_x * area,
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

fn seats(axle: &Axle, stiffener: &Stiffener, places: &[Place]) -> Result<Vec<(f64, Seated)>, AxleError> {
    let along = &places[reach(places, stiffener)];
    let mut before: Option<(Piece, Seated)> = None;
    let mut seats = Vec::with_capacity(along.len());
    for ends in along.windows(2) {
        let middle = 0.5 * (ends[0].y + ends[1].y);
        let piece = piece_at(axle, middle);
        let again = before.take().filter(|(before, _)| *before == piece && !piece.is_tapered());
        let seated = match again {
            Some((_, seated)) => seated,
            None => stiffener.on(&piece.profile_at(middle.abs()))?,
        };
        seats.push((ends[1].y, seated.clone()));
        before = Some((piece, seated));
    }
    Ok(seats)
}
