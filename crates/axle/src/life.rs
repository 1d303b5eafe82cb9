//! Years to a crack at each detail and of each wheel bearing under a duty.

pub(crate) mod bearing_years;
pub(crate) mod crack_sites;
pub(crate) mod duty;
pub(crate) mod life_outcome;
pub(crate) mod life_run;
pub(crate) mod ride_counts;
pub(crate) mod static_cycles;
