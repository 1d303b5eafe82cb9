//! One answer at a time of each kind, so that only the newest question is worked on.
//!
//! A page gives up a question when it has a newer one. Whoever waits in a lane and is given up leaves it, and is never
//! worked on.

use std::sync::Arc;

use tokio::sync::Mutex;

use crate::trouble::Trouble;

/// A lane for each kind of work, so that slow ones hold up no quick one.
#[derive(Debug, Default)]
pub(crate) struct Lanes {
    pub figures: Lane,
    pub checks: Lane,
    pub rating: Lane,
    pub slow: Lane,
}

/// A lane.
pub(crate) type Lane = Arc<Mutex<()>>;

/// Does work in a lane, on a thread of its own.
pub(crate) async fn in_lane(
    lane: &Lane,
    work: impl FnOnce() -> Result<String, Trouble> + Send + 'static,
) -> Result<String, Trouble> {
    // The work holds the lane until it ends, given up or not.
    let turn = lane.clone().lock_owned().await;
    let done = tokio::task::spawn_blocking(move || {
        let _turn = turn;
        work()
    });
    done.await.unwrap_or(Err(Trouble::Internal))
}

#[cfg(test)]
mod tests {
    use std::sync::atomic::{AtomicUsize, Ordering};

    use super::*;

    #[test]
    fn a_question_that_is_given_up_while_it_waits_is_never_worked_on() {
        let runtime = tokio::runtime::Builder::new_current_thread().build().unwrap();
        let (lane, worked) = (Lane::default(), Arc::new(AtomicUsize::new(0)));
        let ask = |number: usize| {
            let (lane, worked) = (lane.clone(), worked.clone());
            let work = move || {
                worked.fetch_add(number, Ordering::SeqCst);
                Ok(number.to_string())
            };
            async move { in_lane(&lane, work).await }
        };
        runtime.block_on(async {
            let held = lane.clone().lock_owned().await;
            let old = tokio::spawn(ask(1));
            tokio::task::yield_now().await;
            old.abort();
            let new = tokio::spawn(ask(10));
            tokio::task::yield_now().await;
            drop(held);
            assert_eq!(new.await.unwrap().unwrap(), "10");
        });
        assert_eq!(worked.load(Ordering::SeqCst), 10);
    }
}
