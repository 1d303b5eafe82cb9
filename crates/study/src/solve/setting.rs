//! What stands in the files of one design.

use std::cmp::Ordering;

use axlebow_model::{Document, ModelError, changes_line};

use crate::ask::{Link, Point, Study, Varied, of_road};

/// What stands at a path in one design.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Setting<'s> {
    path: &'s str,
    stands: Stands<'s>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Stands<'s> {
    /// A number, SI.
    Number(f64),
    /// What a file would write, without quotes.
    Text(&'s str),
}

impl Setting<'_> {
    /// Whether it is of the road files and not of the model.
    pub fn is_of_road(&self) -> bool {
        of_road(self.path).is_some()
    }

    /// Its path and its number, if it is one.
    pub fn number(&self) -> Option<(&str, f64)> {
        if let Stands::Number(number) = self.stands { Some((self.path, number)) } else { None }
    }

    /// Makes the setting in the file that it is of.
    ///
    /// # Errors
    /// What the reader of the file would refuse.
    pub fn make(&self, document: &mut Document) -> Result<(), ModelError> {
        let path = of_road(self.path).unwrap_or(self.path);
        match self.stands {
            Stands::Number(number) => document.set_number(path, number),
            Stands::Text(text) => document.set(path, text),
        }
    }
}

impl Study {
    /// What stands in the files of a design beyond its variant: varied keys and choices, then what follows them.
    pub(crate) fn settings(&self, point: &Point) -> Vec<Setting<'_>> {
        let mut settings = Vec::with_capacity(self.varied.len() + self.links.len());
        for (varied, &value) in self.varied.iter().zip(&point.values) {
            settings.extend(varied.paths().map(|path| Setting { path, stands: Stands::Number(value) }));
            let chosen = varied.choices.get(value as usize).map_or(&[][..], |choice| &choice.changes);
            settings.extend(chosen.iter().map(|(path, text)| Setting { path, stands: Stands::Text(text) }));
        }
        for link in &self.links {
            let stands = Stands::Number(link.value.value(&point.values));
            settings.extend(link.paths.iter().map(|path| Setting { path, stands }));
        }
        settings
    }

    /// Sorts designs by what their axles' lines are made of, those of one line in the order in which they come.
    pub(crate) fn put_lines_together<T>(&self, designs: &mut [(T, Point)]) {
        let each = self.varied.iter().enumerate();
        let of_line: Vec<usize> = each
            .filter(|(place, varied)| self.changes_line(*place, varied))
            .map(|(place, _)| place)
            .collect();
        if of_line.len() == self.varied.len() {
            return;
        }
        designs.sort_by(|(_, one), (_, other)| {
            let mut values = of_line.iter().map(|place| one.values[*place].total_cmp(&other.values[*place]));
            let by_values = || values.find(|order| order.is_ne()).unwrap_or(Ordering::Equal);
            one.variant.cmp(&other.variant).then_with(by_values)
        });
    }

    /// Whether an axle has another line for another value of a varied key, or of what follows it.
    fn changes_line(&self, place: usize, varied: &Varied) -> bool {
        let follows = self.links.iter().filter(|link| link.value.uses().contains(&place));
        let follow = follows.flat_map(|link| link.paths.iter().map(String::as_str));
        !varied.choices.is_empty()
            || varied.paths().chain(follow).any(|path| of_road(path).is_none() && changes_line(path))
    }

    /// Whether two designs are of one axle and differ in the road at most.
    pub(crate) fn is_one_axle(&self, one: &Point, other: &Point) -> bool {
        let values = || self.varied.iter().zip(one.values.iter().zip(&other.values)).enumerate();
        let follows = |place: &usize| {
            self.links.iter().any(|link| link.is_of_axle() && link.value.uses().contains(place))
        };
        let mut differ = values().filter(|(_, (_, (one, other)))| one != other);
        one.variant == other.variant
            && !differ.any(|(place, (varied, _))| varied.is_of_axle() || follows(&place))
    }
}

impl Link {
    fn is_of_axle(&self) -> bool {
        self.paths.iter().any(|path| of_road(path).is_none())
    }
}
