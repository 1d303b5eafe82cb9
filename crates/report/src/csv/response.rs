//! Transfer functions.

use std::fmt::Write as _;

use axlebow_axle::{ResponseOutcome, TransferFunction};

use crate::columns::word;

/// The transfer functions, a line for each frequency: real and imaginary part of each result per meter of road
/// height, with the sign `e^{iωt}`.
pub fn response(outcome: &ResponseOutcome) -> String {
    let mut columns: Vec<(String, &TransferFunction)> = vec![
        ("left_camber_change_rad_per_m".to_owned(), &outcome.camber.left),
        ("right_camber_change_rad_per_m".to_owned(), &outcome.camber.right),
        ("left_load_n_per_m".to_owned(), &outcome.load.left),
        ("right_load_n_per_m".to_owned(), &outcome.load.right),
    ];
    let stress = outcome.stress.iter();
    columns.extend(
        stress.map(|station| (format!("{}_stress_pa_per_m", word(&station.name)), &station.transfer)),
    );
    let mut text = "frequency_hz".to_owned();
    for (heading, _) in &columns {
        let _ = write!(text, ",{heading}_real,{heading}_imaginary"); // a String takes every write
    }
    for (i, frequency) in outcome.frequencies.iter().enumerate() {
        let _ = write!(text, "\r\n{frequency:?}");
        for (_, transfer) in &columns {
            let [real, imaginary] = transfer.values[i];
            let _ = write!(text, ",{real:?},{imaginary:?}");
        }
    }
    text + "\r\n"
}
