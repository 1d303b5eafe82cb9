//! A progress bar over the designs of a run.

use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

/// A run shorter than this shows no progress.
const PATIENCE: Duration = Duration::from_secs(1);

/// A progress bar on standard error, only on a terminal and only once the run has taken a while.
pub struct Progress {
    bar: ProgressBar,
    started: Instant,
}

impl Progress {
    pub fn over(count: usize) -> Self {
        let bar = ProgressBar::with_draw_target(Some(count as u64), ProgressDrawTarget::hidden());
        let style = ProgressStyle::with_template("{bar:40} {pos} of {len} designs, {eta} to go");
        if let Ok(style) = style {
            bar.set_style(style);
        }
        Progress { bar, started: Instant::now() }
    }

    /// So many are done, of a number that was not known before.
    pub fn at_of(&self, done: usize, of: usize) {
        self.bar.set_length(of as u64);
        self.at(done);
    }

    pub fn at(&self, done: usize) {
        if self.bar.is_hidden() && self.started.elapsed() > PATIENCE {
            // indicatif draws on a terminal only.
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
        self.bar.set_position(done as u64);
    }

    pub fn end(&self) {
        self.bar.finish_and_clear();
    }
}
