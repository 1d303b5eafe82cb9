//! What a thread remembers of the last designs, so that what they share is worked out once.

use std::cell::RefCell;
use std::sync::Arc;

/// Results that a thread remembers: those of an axle with several stiffeners on several profiles.
const REMEMBERED: usize = 32;

/// The results made last, the newest first.
#[derive(Debug)]
pub(crate) struct Recent<T>(RefCell<Vec<Arc<T>>>);

impl<T> Recent<T> {
    pub(crate) const fn new() -> Self {
        Recent(RefCell::new(Vec::new()))
    }

    /// The result that is the one looked for, made where it is not remembered.
    pub(crate) fn found_or_made<E>(
        &self,
        is: impl Fn(&T) -> bool,
        make: impl FnOnce() -> Result<T, E>,
    ) -> Result<Arc<T>, E> {
        let found = self.0.borrow().iter().find(|one| is(one)).cloned();
        if let Some(found) = found {
            return Ok(found);
        }
        let made = Arc::new(make()?);
        let mut recent = self.0.borrow_mut();
        recent.truncate(REMEMBERED - 1);
        recent.insert(0, Arc::clone(&made));
        Ok(made)
    }
}
