//! Inputs of a payback, a line each.

use axlebow_study::{PaybackInput, PaybackOutcome};

use super::{add, cell};

/// Every input of the file with its value, break-even, ends and what they do; quantities in SI, prices for each SI unit of
/// what they are the price of, amounts in the currency of the file.
pub fn payback(outcome: &PaybackOutcome) -> String {
    let mut text = String::from(
        "input,currency,value,break_even,low,high,net_present_value_low,net_present_value_high,has_range\r\n",
    );
    for own in &outcome.break_even {
        let swing = |input: PaybackInput| outcome.swings.iter().find(move |swing| swing.input == input);
        text.push_str(own.input.path());
        add(&mut text, &cell(&outcome.currency));
        add(&mut text, &format!("{:?}", own.value));
        add(&mut text, &own.at.map_or(String::new(), |at| format!("{at:?}")));
        if let Some(swing) = swing(own.input) {
            swing.ends.iter().chain(&swing.worth).for_each(|number| add(&mut text, &format!("{number:?}")));
            add(&mut text, if swing.has_range { "yes" } else { "no" });
        }
        text.push_str("\r\n");
    }
    text
}
