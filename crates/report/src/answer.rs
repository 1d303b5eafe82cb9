//! What each command answers, in one to three plain sentences made from its outcome.
//!
//! Every output begins with them, so that a hurried reader need not read a table. A sentence says nothing that is not in
//! the outcome; signs of camber and toe are words, numbers are in the units of the reader.

mod beam;
mod causes;
mod compatibility;
mod cups;
mod drawing;
mod explain;
mod fit;
mod flex;
mod flex_beside;
mod growth;
mod life;
mod modes;
mod payback;
mod phrases;
mod rating;
mod remedies;
mod response;
mod ride;
mod search;
mod section;
mod sensitivities;
mod strength;
mod study;
mod textbook;
mod tire;
mod typical;

pub use beam::beam_answer;
pub(crate) use beam::response_of_beam;
pub(crate) use beam::{basis_words, convergence_kind};
pub use causes::causes_answer;
pub use compatibility::compatibility_answer;
pub use cups::cups_answer;
pub use drawing::drawing_answer;
pub use explain::explain_answer;
pub use fit::fit_answer;
pub use flex::flex_answer;
pub use flex_beside::flex_beside_answer;
pub use growth::growth_answer;
pub use life::life_answer;
pub(crate) use life::years_words;
pub use modes::modes_answer;
pub use payback::payback_answer;
pub(crate) use payback::verdict as payback_verdict;
pub(crate) use phrases::{leans, percent, plain, way};
pub(crate) use rating::offset_words;
pub use rating::rating_answer;
pub use remedies::remedies_answer;
pub use response::response_answer;
pub use ride::ride_answer;
pub use search::search_answer;
pub use section::section_answer;
pub use sensitivities::sensitivities_answer;
pub use strength::strength_answer;
pub use study::{study_answer, study_details};
pub use textbook::textbook_answer;
pub use tire::tire_answer;

/// Most sentences of an answer.
const MOST: usize = 3;

/// The first sentences that there are.
fn first(sentences: impl IntoIterator<Item = Option<String>>) -> Vec<String> {
    sentences.into_iter().flatten().take(MOST).collect()
}
