//! Properties over all texts and values.

use axlebow_units::{Kind, UnitSystem, parse, show};
use proptest::prelude::*;

fn kinds() -> impl Strategy<Value = Kind> {
    proptest::sample::select(Kind::ALL.to_vec())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_panics_and_every_range_lies_within(text in any::<String>(), kind in kinds()) {
        if let Err(error) = parse(&text, kind) {
            prop_assert!(text.get(error.range()).is_some());
        }
    }

    #[test]
    fn no_near_unit_text_panics(text in "[-+0-9.e, ]{0,8}[a-zA-Zµ°%²³/*·^() 0-9-]{0,20}", kind in kinds()) {
        match parse(&text, kind) {
            Ok(parsed) => prop_assert!(parsed.value.is_finite()),
            Err(error) => prop_assert!(text.get(error.range()).is_some()),
        }
    }

    #[test]
    fn shown_value_reads_back_to_five_digits(mantissa in 1.0..10.0, exponent in -20i32..20, kind in kinds(), us in any::<bool>()) {
        let value = mantissa * 10f64.powi(exponent);
        let system = if us { UnitSystem::Us } else { UnitSystem::Si };
        let read = parse(&show(value, kind, system), kind).unwrap().value;
        prop_assert!((read / value - 1.0).abs() <= 5.1e-5);
    }

    #[test]
    fn accepted_units_read_back_in_their_kind(number in -1e6f64..1e6, kind in kinds()) {
        for unit in kind.accepted() {
            let read = parse(&format!("{number} {unit}"), kind).unwrap().value;
            let one = parse(&format!("1 {unit}"), kind).unwrap().value;
            prop_assert!((read - number * one).abs() <= 4.0 * f64::EPSILON * read.abs());
        }
    }
}
