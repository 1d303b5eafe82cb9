//! Shared pieces of the tests.
