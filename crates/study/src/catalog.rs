//! The catalog of results of what studies run beside designs: causes, fits, tires on axles, several random roads
//! ([`axlebow_results`]). The results of designs are in [`crate::QUANTITIES`].

mod causes;
mod compatibility;
mod drawn_rides;
mod explain;
mod fit;
mod payback;
mod rating;
mod remedies;
mod sensitivity;
