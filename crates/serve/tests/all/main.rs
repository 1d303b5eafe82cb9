//! The server as a browser meets it, over plain TCP.
#![allow(clippy::unwrap_used)]

mod door;
mod numbers;
mod page;
