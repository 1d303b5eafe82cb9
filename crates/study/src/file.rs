//! From a study file to a study: its keys, the files that it points to, and rules across all of them.

mod files;
mod keys;
mod names;
mod option_keys;
mod read;
mod read_options;
mod read_sample;
mod read_search;
mod read_values;
mod read_vary;
mod read_words;
mod reader;
mod vary_keys;

pub(crate) use files::Files;
pub use keys::STUDY;
pub(crate) use reader::Reader;
pub(crate) use vary_keys::DISTRIBUTIONS;
