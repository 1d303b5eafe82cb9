//! Load cases made of others.

use axlebow_axle::{Actions, LoadCase};

use crate::content::Table;
use crate::faults::Problems;

/// The standard cases, then the combinations of a file.
pub(crate) fn with_combinations(
    root: &Table,
    mut cases: Vec<LoadCase>,
    problems: &mut Problems,
) -> Vec<LoadCase> {
    let standard = cases.len();
    for table in root.tables("combination") {
        let name = table.text("name").to_owned();
        if cases.iter().any(|case| case.name == name) {
            problems.push(table.span_of("name"), format!("two load cases are named {name}"), None);
        }
        let mut actions = Actions::default();
        for (of, factor) in table.factors("of") {
            match cases[..standard].iter().find(|case| case.name == *of) {
                Some(case) => actions = actions.plus(&case.actions, factor * case.dynamic_factor),
                None => {
                    let known: Vec<&str> = cases[..standard].iter().map(|case| case.name.as_str()).collect();
                    let message = format!("`{of}` is not a load case");
                    problems.push(table.span_of("of"), message, Some(known.join(", ")));
                }
            }
        }
        let description = table.optional_text("description").map_or_else(|| in_words(table), str::to_owned);
        cases.push(LoadCase { name, description, dynamic_factor: table.number("dynamic_factor"), actions });
    }
    cases
}

fn in_words(table: &Table) -> String {
    let terms: Vec<String> =
        table.factors("of").iter().map(|(of, factor)| format!("{factor} of {of}")).collect();
    terms.join(" + ")
}
