//! Static cases: solved by finite elements and told in the trade's words.

pub(crate) mod along;
pub(crate) mod cases;
pub(crate) mod endplay_contact;
pub(crate) mod flex;
pub(crate) mod hub_line;
pub(crate) mod results;
pub(crate) mod seat_line;
pub(crate) mod shop_reading;
pub(crate) mod split;
pub(crate) mod static_design;
pub(crate) mod stiffened_stretch;
pub(crate) mod stiffening;
pub(crate) mod warnings;
