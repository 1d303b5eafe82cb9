//! Words and numbers of a payback.

use axlebow_axle::TireSlot;
use axlebow_study::{PaybackInput, PaybackOutcome, TirePosition};
use axlebow_units::{Kind, UnitSystem};

use crate::number::{Numbers, fixed, significant};

/// Seconds of an hour.
const HOUR: f64 = 3600.0;

/// A payback in words.
pub(crate) struct PaybackWords<'a> {
    pub outcome: &'a PaybackOutcome,
    pub numbers: Numbers,
}

impl PaybackWords<'_> {
    /// An amount with its currency.
    pub fn money(&self, amount: f64) -> String {
        format!("{} {}", bare_money(amount), self.outcome.currency)
    }

    /// A distance on the road, in whole kilometers or miles.
    pub fn distance(&self, meters: f64) -> String {
        let (unit, each) = self.distance_unit();
        format!("{} {unit}", grouped(meters / each, 0))
    }

    /// Name and length of the unit of distances on the road.
    pub fn distance_unit(&self) -> (&'static str, f64) {
        match self.numbers.system {
            UnitSystem::Si => ("km", 1e3),
            UnitSystem::Us => ("mi", 1609.344),
        }
    }

    /// A value of an input with its unit.
    pub fn value(&self, input: PaybackInput, value: f64) -> String {
        use PaybackInput as I;
        match input {
            I::Distance | I::RemovalDistance => self.distance(value),
            I::Years => format!("{} years", fixed(value, 1)),
            I::DiscountRate | I::ShoulderShare => format!("{} %", fixed(100.0 * value, 1)),
            I::Price | I::Inspection | I::NewTire | I::Retread | I::Casing | I::Fitting => self.money(value),
            I::Downtime => format!("{} h", fixed(value / HOUR, 1)),
            I::DowntimePrice => format!("{}/h", self.money(value * HOUR)),
            I::WearEffect => fixed(value, 2),
            I::Payload | I::Fuel => {
                let each = significant(value * self.numbers.factor(Kind::Mass), 3);
                format!("{each} {}/{}", self.outcome.currency, self.numbers.unit(Kind::Mass))
            }
        }
    }

    /// What a position is called.
    pub fn position(position: TirePosition) -> String {
        let side = position.side.word();
        match position.slot {
            TireSlot::Single => side.to_owned(),
            slot @ (TireSlot::Outer | TireSlot::Inner) => format!("{side} {}", slot.word()),
        }
    }

    /// Years in words; what stands for none.
    pub fn years(years: Option<f64>) -> String {
        years.map_or_else(
            || "not while they are held".to_owned(),
            |years| format!("{} years", fixed(years, 1)),
        )
    }
}

/// What an input is called.
pub(crate) fn input(input: PaybackInput) -> &'static str {
    match input {
        PaybackInput::Distance => "distance in a year",
        PaybackInput::Years => "years held",
        PaybackInput::DiscountRate => "discount rate",
        PaybackInput::Price => "price of the remedy, an axle",
        PaybackInput::Downtime => "downtime",
        PaybackInput::DowntimePrice => "price of downtime",
        PaybackInput::Inspection => "inspections in a year",
        PaybackInput::NewTire => "price of a new tire",
        PaybackInput::Retread => "price of a retread",
        PaybackInput::Casing => "value of a casing",
        PaybackInput::Fitting => "fitting of a tire",
        PaybackInput::RemovalDistance => "removal distance",
        PaybackInput::ShoulderShare => "removals by shoulder wear",
        PaybackInput::WearEffect => "wear effect, model = 1",
        PaybackInput::Payload => "payload, each year",
        PaybackInput::Fuel => "fuel, each 100 km",
    }
}

/// An amount without its currency: hundredths below a hundred.
pub(crate) fn bare_money(amount: f64) -> String {
    grouped(amount, if amount.abs() < 100.0 { 2 } else { 0 })
}

/// What may be paid for something of a worth: nothing for what is worth nothing.
pub(crate) fn may_cost(worth: f64) -> String {
    if worth > 0.0 { bare_money(worth) } else { "nothing".to_owned() }
}

/// A number in groups of three digits from ten thousand on (ISO 80000-1, from memory).
pub(crate) fn grouped(value: f64, decimals: usize) -> String {
    let text = fixed(value, decimals);
    let (whole, part) =
        text.split_once('.').map_or((text.as_str(), None), |(whole, part)| (whole, Some(part)));
    let (sign, digits) = whole.strip_prefix('-').map_or(("", whole), |digits| ("-", digits));
    let mut shown = sign.to_owned();
    for (place, digit) in digits.char_indices() {
        if place > 0 && digits.len() > 4 && (digits.len() - place).is_multiple_of(3) {
            shown.push('\u{a0}');
        }
        shown.push(digit);
    }
    part.map_or(shown.clone(), |part| format!("{shown}.{part}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_in_groups_of_three() {
        assert_eq!(bare_money(-1_234_567.8), "-1\u{a0}234\u{a0}568");
        assert_eq!(bare_money(12_345.0), "12\u{a0}345");
        assert_eq!([bare_money(1234.0), bare_money(99.5), bare_money(-0.001)], ["1234", "99.50", "0.00"]);
    }
}
