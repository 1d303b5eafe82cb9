//! Prices: an amount, its currency, and what it is the price of.

use axlebow_units::{Kind, parse};

/// A price as it is written.
#[derive(Debug, PartialEq)]
pub(crate) struct Price<'t> {
    /// The amount, for each SI unit of what it is the price of.
    pub amount: f64,
    /// The currency, a label.
    pub currency: &'t str,
}

/// Why a text is no price; goes on after the path of its key.
#[derive(Debug, PartialEq, thiserror::Error)]
pub(crate) enum PriceFault {
    #[error("does not begin with an amount")]
    NoAmount,
    #[error("has no currency")]
    NoCurrency,
    #[error("is below 0")]
    Negative,
    #[error("is for each {}; a plain amount is wanted", .0)]
    Each(String),
    #[error("does not say for each unit of {} it is the price", .0.name())]
    NotEach(Kind),
    #[error("is for each `{}`, which is no unit of {}", .0, .1.name())]
    OtherUnit(String, Kind),
}

/// Reads a price such as `850 USD` or `95 USD/h`.
///
/// Arguments: `per`, what it must be the price of a unit of; none for a plain amount.
pub(crate) fn price(text: &str, per: Option<Kind>) -> Result<Price<'_>, PriceFault> {
    let text = text.trim();
    let end = text.find(|letter: char| !letter.is_ascii_digit() && !matches!(letter, '.' | '-' | '+'));
    let (digits, rest) = text.split_at(end.unwrap_or(text.len()));
    let amount: f64 = digits.parse().map_err(|_| PriceFault::NoAmount)?;
    let (currency, unit) =
        rest.split_once('/').map_or((rest, None), |(label, unit)| (label, Some(unit.trim())));
    let currency = currency.trim();
    let is_label = |letter: char| !letter.is_ascii_digit() && !letter.is_control() && !letter.is_whitespace();
    if currency.is_empty() || !currency.chars().all(is_label) || currency == "%" {
        return Err(PriceFault::NoCurrency);
    }
    if amount < 0.0 {
        return Err(PriceFault::Negative);
    }
    let each = match (per, unit) {
        (None, None) => 1.0,
        (None, Some(unit)) => return Err(PriceFault::Each(unit.to_owned())),
        (Some(kind), None) => return Err(PriceFault::NotEach(kind)),
        (Some(kind), Some(unit)) => {
            parse(&format!("1 {unit}"), kind).map_err(|_| PriceFault::OtherUnit(unit.to_owned(), kind))?.value
        }
    };
    Ok(Price { amount: amount / each, currency })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prices_are_read_for_each_si_unit() {
        assert_eq!(price(" 850 USD", None), Ok(Price { amount: 850.0, currency: "USD" }));
        assert_eq!(price("12.50€", None), Ok(Price { amount: 12.5, currency: "€" }));
        assert_eq!(price("7200 USD/h", Some(Kind::Time)), Ok(Price { amount: 2.0, currency: "USD" }));
        assert_eq!(price("45.359237 USD / lb", Some(Kind::Mass)).unwrap().amount, 45.359237 / 0.453_592_37);
    }

    #[test]
    fn what_is_no_price_says_why() {
        assert_eq!(price("USD 850", None), Err(PriceFault::NoAmount));
        assert_eq!(price("850", None), Err(PriceFault::NoCurrency));
        assert_eq!(price("850 12", None), Err(PriceFault::NoCurrency));
        assert_eq!(price("8 %", None), Err(PriceFault::NoCurrency));
        assert_eq!(price("-1 USD", None), Err(PriceFault::Negative));
        assert_eq!(price("1 USD/h", None), Err(PriceFault::Each("h".to_owned())));
        assert_eq!(price("1 USD", Some(Kind::Time)), Err(PriceFault::NotEach(Kind::Time)));
        assert_eq!(
            price("1 USD/kg", Some(Kind::Time)),
            Err(PriceFault::OtherUnit("kg".to_owned(), Kind::Time))
        );
    }
}
