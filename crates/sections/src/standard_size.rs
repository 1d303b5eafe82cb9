//! Shapes in standard sizes.

use crate::shape::{Angle, Channel, Flat, Shape};
use crate::{Outline, SectionError};

/// The sizes with their standards, one a line, lengths in millimeters.
const SIZES: &str = include_str!("../data/standard-sizes.csv");

/// How many near names a message lists.
const NEAR_NAMES: usize = 4;

/// A shape in a standard size.
#[derive(Debug, Clone, PartialEq)]
pub struct StandardSize {
    /// Its designation, such as `L3x3x3/8`.
    pub name: &'static str,
    /// The shape with its sizes.
    pub shape: Shape,
    /// The standard, and how sure its values are.
    pub source: &'static str,
}

impl StandardSize {
    /// The size of a designation; capitals, blanks and the sign × for x do not matter.
    ///
    /// Errors: [`SectionError::UnknownSize`] with the names most like it.
    pub fn named(name: &str) -> Result<Self, SectionError> {
        let wanted = plain(name);
        Self::all()
            .find(|size| plain(size.name) == wanted)
            .ok_or_else(|| SectionError::UnknownSize { name: name.to_owned(), near: near_names(&wanted) })
    }

    /// All sizes, in the order of the file.
    pub fn all() -> impl Iterator<Item = Self> {
        SIZES.lines().filter(|line| !line.starts_with('#')).skip(1).filter_map(Self::read)
    }

    /// Its edges.
    ///
    /// Errors: none for the sizes of the file; the tests read them all.
    pub fn outline(&self) -> Result<Outline, SectionError> {
        self.shape.outline()
    }

    /// One line: name, shape, height, width, web, flange, root radius, toe radius, source.
    fn read(line: &'static str) -> Option<Self> {
        let cells: Vec<&str> = line.splitn(9, ',').collect();
        let [name, shape, height, width, web, flange, root, toe, source] = cells[..] else { return None };
        let length =
            |cell: &str| if cell.is_empty() { Some(0.0) } else { Some(1e-3 * cell.parse::<f64>().ok()?) };
        let (height, width, web, flange) = (length(height)?, length(width)?, length(web)?, length(flange)?);
        let (root_radius, toe_radius) = (length(root)?, length(toe)?);
        let shape = match shape {
            "flat" => Shape::Flat(Flat { width, thickness: height }),
            "angle" => Shape::Angle(Angle { height, width, thickness: web, root_radius, toe_radius }),
            "channel" => Shape::Channel(Channel { height, width, web, flange, root_radius }),
            _ => return None,
        };
        Some(Self { name, shape, source })
    }
}

fn plain(name: &str) -> String {
    name.to_lowercase().replace('×', "x").split_whitespace().collect()
}

fn near_names(wanted: &str) -> Vec<String> {
    let likeness = |size: &StandardSize| strsim::jaro_winkler(wanted, &plain(size.name));
    let mut sizes: Vec<(f64, &str)> = StandardSize::all().map(|size| (likeness(&size), size.name)).collect();
    sizes.sort_by(|a, b| b.0.total_cmp(&a.0));
    sizes.into_iter().take(NEAR_NAMES).map(|(_, name)| name.to_owned()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_is_read_and_has_sound_edges() {
        let lines = SIZES.lines().filter(|line| !line.starts_with('#')).count() - 1;
        assert_eq!(StandardSize::all().count(), lines);
        for size in StandardSize::all() {
            assert!(size.outline().is_ok(), "{}", size.name);
            assert!(size.source.len() > 10, "{}", size.name);
        }
    }

    #[test]
    fn a_name_is_found_however_it_is_written() {
        for name in ["L3x3x3/8", "l3X3x3/8", "L 3 × 3 × 3/8"] {
            assert_eq!(StandardSize::named(name).unwrap().name, "L3x3x3/8");
        }
    }

    #[test]
    fn an_unknown_name_lists_near_ones() {
        let said = StandardSize::named("L3x3x5/8").unwrap_err().to_string();
        assert!(said.starts_with("no standard size is called L3x3x5/8; near are L3x3x"), "{said}");
    }
}
