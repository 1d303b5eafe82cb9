//! The results that a study asks for, and those that it can have.

use axlebow_model::likely;

use super::quantity::{Cost, QUANTITIES, Quantity};
use crate::ask::{Derived, Named, Study};

/// Why a study has no result of a name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NoResult {
    /// What is wrong.
    pub why: String,
    /// What is accepted.
    pub accepted: String,
    /// The name that was likely meant.
    pub likely: Option<String>,
}

impl Study {
    /// Whether it shows, ranks by, limits or derives from a result of a cost.
    pub(crate) fn asks_for(&self, cost: Cost) -> bool {
        let limited = self.limits.iter().map(|limit| &limit.of);
        let searched = self.search.iter().flat_map(|ask| std::iter::once(&ask.goal).chain(&ask.against));
        let named =
            self.shown.iter().chain(&self.ranked_by).chain(limited).chain(searched).map(String::as_str);
        let used =
            self.derived.iter().flat_map(|derived| &derived.uses).filter_map(|(_, named)| match named {
                Named::Result(name, _) => Some(*name),
                _ => None,
            });
        named.chain(used).filter_map(|name| Quantity::named(name).ok()).any(|own| own.cost == cost)
    }

    /// Whether its designs have a quantity, which those that cost a solution of their own have only where asked for.
    pub(crate) fn has(&self, quantity: &Quantity) -> bool {
        quantity.cost.is_always_paid() || self.asks_for(quantity.cost)
    }

    /// The name of a result that it has, by how a file or an option writes it.
    ///
    /// # Errors
    /// Why it has none, what is accepted, and the name that was likely meant.
    pub fn result_named(&self, name: &str) -> Result<String, NoResult> {
        let has = Has { derived: &self.derived, rides: !self.rides.is_empty(), duty: self.duty.is_some() };
        has.result_named(name)
    }
}

/// What a study has that results may be of.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Has<'a> {
    /// Results that its file derives.
    pub derived: &'a [Derived],
    /// Whether it has rides.
    pub rides: bool,
    /// Whether it has a duty.
    pub duty: bool,
}

impl Has<'_> {
    /// The name of a result.
    ///
    /// # Errors
    /// Why there is none, what is accepted, and the name that was likely meant.
    pub fn result_named(&self, name: &str) -> Result<String, NoResult> {
        if self.derived.iter().any(|own| own.name == name) {
            return Ok(name.to_owned());
        }
        let derived = self.derived.iter().map(|own| own.name.as_str());
        let all = || derived.clone().chain(QUANTITIES.iter().map(|own| own.name.as_str()));
        match Quantity::named(name) {
            Ok(quantity) if quantity.is_of_ride() && !self.rides => Err(NoResult {
                why: format!("{name:?} is a result of a ride, and the study has none"),
                accepted: "a `[[ride]]` table".to_owned(),
                likely: None,
            }),
            Ok(quantity) if quantity.cost == Cost::Life && !self.duty => Err(NoResult {
                why: format!("{name:?} is a result of a duty, and the study has none"),
                accepted: "a `duty` file".to_owned(),
                likely: None,
            }),
            Ok(_) => Ok(name.to_owned()),
            Err(_) => Err(NoResult {
                why: format!("no result is named {name:?}"),
                accepted: all().collect::<Vec<_>>().join(", "),
                likely: likely(name, all()),
            }),
        }
    }
}
