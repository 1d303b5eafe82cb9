//! Welds, walls, fatigue and bearings.

pub(crate) mod fatigue_lives;
pub(crate) mod rainflow_cycles;
pub(crate) mod random_stress;
pub(crate) mod wall_classes;
pub(crate) mod welds;
pub(crate) mod wheel_bearings;
