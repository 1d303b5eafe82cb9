//! Every published case of the textbook.

use std::collections::BTreeSet;

use axlebow_textbook::{Case, Tolerance, cases};

#[test]
fn every_published_case_agrees_within_its_tolerance() {
    let failures: Vec<_> = cases().iter().filter_map(failure).collect();
    assert!(failures.is_empty(), "{} cases failed:\n{}", failures.len(), failures.join("\n"));
}

fn failure(case: &Case) -> Option<String> {
    match case.outcome() {
        Ok(checked) if checked.passed => None,
        Ok(checked) => Some(format!(
            "{}: ours {:e}, printed {:e} {}, error {:e}, allowed {:e}",
            case.id,
            checked.ours,
            checked.printed,
            case.unit,
            checked.error,
            case.tolerance.allowed(case.printed),
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
        assert!(case.tolerance.allowed(case.printed) > 0.0, "{}", case.id);
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
