//! The axle in the trade's words, built into finite elements; does not know files.
//!
//! Axes follow ISO 8855: X forward, Y left, Z up; the axle lies along Y with the origin on the vehicle's
//! center line at wheel-center height. [`Axle`] says what the axle is, [`LoadCase`] what acts on it, and
//! [`flex`] what it does. Signs of results are those of [`outcome`].

// Tests beside the code build their axles as the tests of the crate do.
#[cfg(test)]
extern crate self as axlebow_axle;
#[cfg(test)]
#[path = "../tests/all/example/mod.rs"]
#[allow(clippy::unwrap_used)] // helpers of tests are tests too
mod example;

mod adjoint;
mod along;
mod at_rest;
mod axle;
mod basis_comparison;
mod bearing_play;
mod bearing_stiffness;
mod body;
mod bump_stop;
mod catalog;
mod cup_suspects;
mod disc_flexibility;
mod dominant;
mod endplay_contact;
mod error;
mod flex;
mod flexing;
mod force_method;
mod frame;
mod frequency_grid;
mod ground;
mod hub_line;
mod hysteresis;
mod keep;
mod light_damping;
mod load_case;
mod mode_name;
mod modes;
pub mod outcome;
mod own_loads;
mod peak_ground;
mod preheat;
mod recent;
mod response;
mod response_outcome;
mod response_warnings;
mod results;
mod ride;
mod ride_basis;
mod ride_laws;
mod ride_outcome;
mod ride_readings;
mod ride_recorder;
mod ride_split;
mod ride_warnings;
mod riding_axle;
mod run_in;
mod seat;
mod seat_bracket;
mod seat_picture;
mod seat_strength;
mod seated_bar;
mod seated_section;
mod shop_reading;
mod side;
mod small_motion;
mod spectrum;
mod spectrum_peaks;
mod split;
mod stations;
mod stiffened;
mod stiffened_beam;
mod stiffened_stretch;
mod stiffener;
mod stiffener_form;
mod stiffener_torsion;
mod stiffening;
mod stiffening_outcome;
mod straight_seats;
mod strength;
mod stress_place;
mod stress_reading;
mod stressed_section;
mod tied_stiffener;
mod tire_face;
mod tire_ride;
mod transfer;
mod vibration;
mod wall_at_seat;
mod warnings;
mod weld_band;
mod weld_line;
mod weld_strength;
mod wheel;
mod wheel_end;

pub use adjoint::{Adjoint, CaseReadings};
pub use axle::{Axle, FixedMass, SMALLEST_STEP, UserStation};
pub use axlebow_fe::Scheme;
pub use axlebow_tread as tread;
pub use basis_comparison::{BasisComparison, BesideFull};
pub use bearing_stiffness::{BearingStiffness, STEEPEST_CUP, TaperedRollers};
pub use body::{Body, HousingPoint, Part, Piece, Spindle, SpindleStep};
pub use bump_stop::BumpStop;
pub use cup_suspects::{mode_suspects, road_suspect};
pub use disc_flexibility::{AnnularPlate, USUAL_HUB_FLANGE, USUAL_WHEEL_DISC};
pub use error::AxleError;
pub use flex::{StaticDesign, flex};
pub use flexing::Flexing;
pub use force_method::{StaticReadings, WheelReadings};
pub use ground::STANDARD_GRAVITY;
pub use keep::{RecordOptions, RideShape, Rise};
pub use load_case::{Actions, Ground, LoadCase, Loading, STANDARD_CASES, standard_cases};
pub use mode_name::{Motion, Strain};
pub use modes::{ModeMesh, ModeOutcome, ModesOutcome, ShapePoint, modes};
pub use outcome::{
    BearingOutcome, CamberSplit, CaseOutcome, ContactOutcome, DiagramPoint, FlexOutcome, Resultants,
    SeatOutcome, StationOutcome, Warning, WheelOutcome,
};
pub use preheat::{Preheat, preheats};
pub use response::{Input, RandomRide, ResponseOptions, response};
pub use response_outcome::{PrintedCups, RandomAnswer, RandomOutcome, ResponseOutcome, StationResponse};
pub use ride::{Ride, ride};
pub use ride_basis::{RideBasis, RideMethod, USUAL_SCHEME};
pub use ride_outcome::{RideHistory, RideOutcome, RideWheel, StationPeak, StopHits};
pub use riding_axle::RidingAxle;
pub use seat::{Fixing, LARGEST_COMPOSITE_FRACTION, Seat, Suspension};
pub use seat_bracket::SeatBracket;
pub use seat_picture::{SeatPicture, seat_pictures};
pub use shop_reading::ShopReading;
pub use side::{Side, Sides};
pub use spectrum::{Band, Spectrum};
pub use spectrum_peaks::SpectrumPeak;
pub use stiffened::StiffenedSection;
pub use stiffened_stretch::{StiffenedStretch, StretchStress};
pub use stiffener::{Seated, Stiffener, StiffenerEnd, StiffenerWeld, WeldPattern};
pub use stiffener_form::{Orientation, StiffenerForm, sleeve};
pub use stiffening::composite_camber_change;
pub use stiffening_outcome::{AxialForce, PlacedStress, StiffenerOutcome, StiffeningOutcome, WeldForce};
pub use strength::{
    Governing, PlacedCheck, StrengthCase, StrengthOptions, StrengthOutcome, StrengthRules, strength,
};
pub use tire_face::{TireCase, TireFace, TireOutcome, tire_faces, tire_warning, tires};
pub use tire_ride::{PrintedWave, TireRide, TireRideOutcome, tires_over};
pub use transfer::{Resonance, TransferFunction};
pub use wall_at_seat::{SeatLayouts, WallAtSeat, WallBy, seat_layouts, seat_wall};
pub use warnings::static_warnings;
pub use weld_band::{WeldBand, WeldRemedy, WeldUse, weld_bands};
pub use weld_line::{plate_give_along_a_line, plate_give_along_an_edge, weld_stiffness};
pub use wheel::{TREAD_SHARE, Tire, TireLayout, TirePlace, Wheel};
pub use wheel_end::WheelEnd;
