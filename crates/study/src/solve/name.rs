//! Names of the results that tables, pictures and sentences about studies pick out.

/// Mass of the bare axle.
pub const AXLE_MASS: &str = "axle-mass";
/// Camber change of the wheel that leans most.
pub const CAMBER_CHANGE: &str = "camber-change";
/// Camber change of the left wheel, and its parts.
pub const LEFT_CAMBER_CHANGE: &str = "left-camber-change";
/// Bending.
pub const LEFT_BENDING: &str = "left-bending";
/// Shear.
pub const LEFT_SHEAR: &str = "left-shear";
/// The seat, with the wall under it.
pub const LEFT_SEAT: &str = "left-seat";
/// The wall under the seat.
pub const LEFT_WALL: &str = "left-wall";
/// Bearings.
pub const LEFT_BEARING: &str = "left-bearing";
/// The bearings' clearance.
pub const LEFT_CLEARANCE: &str = "left-clearance";
/// Camber change of the right wheel.
pub const RIGHT_CAMBER_CHANGE: &str = "right-camber-change";
/// With axle and stiffeners one section.
pub const COMPOSITE_CAMBER_CHANGE: &str = "composite-camber-change";
/// Years to a crack.
pub const YEARS_TO_CRACK: &str = "years-to-crack";
/// Years of the wheel bearings.
pub const BEARING_YEARS: &str = "bearing-years";
/// How much a cup grows for each length of tread that wears off; 1, it stays.
pub const CUP_AMPLIFICATION: &str = "cup-amplification";
/// The same with an immovable hub.
pub const CUP_AMPLIFICATION_HUB_HELD: &str = "cup-amplification-hub-held";
/// Fiber stress of largest magnitude along the axle.
pub const PEAK_STRESS: &str = "peak-stress";
/// Height of the axle's center above the line through the hubs.
pub const BOW: &str = "bow";
/// Camber change of largest magnitude in a ride, and its parts.
pub const CAMBER_PEAK: &str = "camber-peak";
/// Bending.
pub const CAMBER_PEAK_BENDING: &str = "camber-peak-bending";
/// Shear.
pub const CAMBER_PEAK_SHEAR: &str = "camber-peak-shear";
/// The seats, with the wall under them.
pub const CAMBER_PEAK_SEAT: &str = "camber-peak-seat";
/// The wall under the seats.
pub const CAMBER_PEAK_WALL: &str = "camber-peak-wall";
/// Peak-to-peak camber change.
pub const CAMBER_PEAK_TO_PEAK: &str = "camber-peak-to-peak";
/// Largest wheel load over that at rest.
pub const DYNAMIC_LOAD_FACTOR: &str = "dynamic-load-factor";
/// Time that a wheel is off the road.
pub const TIME_OFF_ROAD: &str = "time-off-road";
/// Fiber stress of largest magnitude in a ride.
pub const RIDE_PEAK_STRESS: &str = "ride-peak-stress";
/// Cups that a ride prints in one turn of the tire.
pub const CUPS_PER_TURN: &str = "cups-per-turn";
/// Distance in which the wave of wear that grows fastest grows e-fold.
pub const DISTANCE_FOR_E_FOLD: &str = "distance-for-e-fold";
