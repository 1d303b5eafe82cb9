//! Every textbook case.

use std::collections::BTreeSet;

use axlebow_textbook::{Case, Provenance, Tolerance, cases};

#[test]
fn every_textbook_case_agrees_within_its_tolerance() {
    let failures: Vec<_> = cases().iter().filter_map(failure).collect();
    assert!(failures.is_empty(), "{} cases failed:\n{}", failures.len(), failures.join("\n"));
}

fn failure(case: &Case) -> Option<String> {
    match case.outcome() {
        Ok(checked) if checked.passed => None,
        Ok(checked) => Some(format!(
            "{}: computed {:e}, reference {:e} {}, error {:e}, allowed {:e}",
            case.id,
            checked.computed,
            checked.reference,
            case.unit,
            checked.error,
            case.tolerance.allowed(case.reference),
        )),
        Err(text) => Some(format!("{}: {text}", case.id)),
    }
}

#[test]
fn each_case_has_a_name_of_its_own_that_says_what_matches_what() {
    let cases = cases();
    let names: BTreeSet<_> = cases.iter().map(|case| case.id).collect();
    assert_eq!(names.len(), cases.len());
    assert!(cases.len() >= 90, "{} cases", cases.len());
    assert!(names.iter().all(|name| name.contains("_matches_")));
}

#[test]
fn each_case_names_its_source_and_allows_something() {
    for case in cases() {
        assert!(case.source.len() > 20 && !case.quantity.is_empty(), "{}", case.id);
        assert!(case.tolerance.allowed(case.reference) > 0.0, "{}", case.id);
    }
}

#[test]
fn each_case_says_its_formula_and_inputs() {
    for case in cases() {
        assert!(!case.formula.is_empty() && !case.inputs.is_empty(), "{}", case.id);
        let of_a_formula = matches!(case.provenance, Provenance::ClosedForm | Provenance::Independent);
        assert!(!of_a_formula || !case.formula.starts_with("none"), "{}", case.id);
    }
}

#[test]
fn sources_do_not_speak_against_their_provenance() {
    for case in cases() {
        let from_memory = case.source.contains("from memory") || case.source.contains("recomputed");
        match case.provenance {
            Provenance::Printed => assert!(!from_memory, "{}", case.id),
            Provenance::Recalled => assert!(case.source.contains("from memory"), "{}", case.id),
            Provenance::ClosedForm | Provenance::Independent => {}
            Provenance::Stated => panic!("{} is no case of a file", case.id),
        }
    }
}

#[test]
fn wider_tolerances_have_a_reason() {
    for case in cases() {
        if let Tolerance::Relative { share, reason } = case.tolerance {
            assert!(share <= 1e-9 || reason.is_some(), "{}", case.id);
        }
    }
}
