//! The beam of a stretch in which axle and stiffeners are one section.

use std::sync::Arc;

use axlebow_fe::{Attachment, Beam, Flexibility, NodeId};

use crate::mesh::stretch::{Stiffened, TAPER_PARTS};
use crate::parts::body::Piece;
use crate::sections::seated_section::section_at;
use crate::{Axle, AxleError};

/// The section in the middle of a stretch, where stiffeners run over it.
pub(crate) fn stiffened(axle: &Axle, ends: (f64, f64)) -> Result<Option<Stiffened>, AxleError> {
    let middle = 0.5 * (ends.0 + ends.1);
    let section = section_at((&axle.body, &axle.stiffeners), middle)?;
    Ok(section.map(|section| Stiffened { angle: section.axes().angle, section: Arc::new(section) }))
}

/// The beam of a stiffened stretch, along the centroid in its middle.
pub(crate) fn stiffened_beam(
    axle: &Axle,
    piece: &Piece,
    (start_y, end_y): (f64, f64),
    (stiffened, nodes): (&Stiffened, &[NodeId]),
) -> Result<Beam, AxleError> {
    let (section, angle, length) = (&stiffened.section, stiffened.angle, end_y - start_y);
    let even = |y: f64| axle.stiffeners.iter().all(|stiffener| [0.0, 1.0].contains(&stiffener.share_at(y)));
    let (inside, flexing) = (1e-9 * length, axle.body.flexing());
    let flexibility = if !piece.is_tapered() && even(start_y + inside) && even(end_y - inside) {
        Flexibility::uniform(length, &flexing.of(section.rigidity(angle)))
    } else {
        // Shares at which a beam is integrated lie within it, where the middle's stiffeners are too.
        Flexibility::varying(length, TAPER_PARTS, |share| {
            match section_at((&axle.body, &axle.stiffeners), start_y + share * length) {
                Ok(Some(there)) => flexing.of(there.rigidity(angle)),
                _ => flexing.of(section.rigidity(angle)),
            }
        })
    };
    let [x, z] = section.area.centroid;
    let (sine, cosine) = angle.sin_cos();
    let (near, far) = (start_y.abs().min(end_y.abs()), start_y.abs().max(end_y.abs()));
    let stiffeners = axle.stiffeners.iter().map(|stiffener| stiffener.mass_between(start_y, end_y));
    let mass = axle.body.mass_of(piece, near, far) + stiffeners.sum::<f64>();
    let mut beam = Beam::between(nodes[0], nodes[1], [-sine, 0.0, cosine], flexibility)
        .with_mass(mass / length)
        .with_inertia(section.rotary_inertia(angle));
    beam.start = Attachment::on_arm(nodes[0], [x, 0.0, z]);
    beam.end = Attachment::on_arm(nodes[1], [x, 0.0, z]);
    Ok(beam)
}
