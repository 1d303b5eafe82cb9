//! Stretches of the axle with one section.

use axlebow_axle::{Axle, Piece};
use axlebow_sections::{Profile, SectionProperties};

/// A stretch of the axle with one section, for tables and drawings.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionCard {
    /// Name of the stretch, such as `tube`.
    pub name: String,
    /// Where it starts and ends, m; the larger (left) first.
    pub reach: [f64; 2],
    /// The section.
    pub profile: Profile,
    /// Its properties.
    pub properties: SectionProperties,
    /// Mass per length, kg/m.
    pub mass_per_length: f64,
}

impl SectionCard {
    /// Every section of an axle from the center outward: stretches of one section, and the ends of tapers.
    pub fn all_of(axle: &Axle) -> Vec<SectionCard> {
        let mut cards: Vec<SectionCard> = Vec::new();
        for piece in axle.body.pieces() {
            if !piece.is_tapered() {
                cards.push(card(axle, piece, [piece.to, piece.from]));
                continue;
            }
            for end in [piece.from, piece.to] {
                // The start of a taper is most often the section that the last piece ended with.
                if cards.last().is_none_or(|last| last.profile != piece.profile_at(end)) {
                    cards.push(card(axle, piece, [end, end]));
                }
            }
        }
        number_alike(&mut cards);
        cards
    }
}

fn card(axle: &Axle, piece: &Piece, reach: [f64; 2]) -> SectionCard {
    let properties = axle.body.properties(piece, reach[1]);
    SectionCard {
        name: piece.part.word().to_owned(),
        reach,
        profile: piece.profile_at(reach[1]),
        properties,
        mass_per_length: properties.mass_per_length(axle.body.material(piece.part).density()),
    }
}

/// Numbers the sections of a part that has several.
fn number_alike(cards: &mut [SectionCard]) {
    let names: Vec<String> = cards.iter().map(|card| card.name.clone()).collect();
    for (i, card) in cards.iter_mut().enumerate() {
        if names.iter().filter(|name| **name == names[i]).count() > 1 {
            let number = names[..=i].iter().filter(|name| **name == names[i]).count();
            card.name = format!("{} {number}", names[i]);
        }
    }
}
