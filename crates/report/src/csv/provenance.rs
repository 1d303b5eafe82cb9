//! What a CSV file was made from.

use axlebow_axle::Warning;

use crate::ModelCard;
use crate::subject::PROGRAM;
use crate::words::warning::sentence;

/// The lines before the heading that say what the rows were made from and what is doubtful about them, each after a `#`.
pub fn provenance(card: Option<&ModelCard>, warnings: &[Warning]) -> String {
    let made = card.map_or_else(|| vec![format!("made by {PROGRAM}")], ModelCard::made_from);
    let doubts = warnings.iter().map(|warning| format!("warning: {}", sentence(warning)));
    // A control character could end the line.
    let line = |text: String| format!("# {}\r\n", text.replace(char::is_control, " "));
    made.into_iter().chain(doubts).map(line).collect()
}
