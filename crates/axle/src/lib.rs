//! The axle in the trade's words, built into finite elements; does not know files.
//!
//! Axes follow ISO 8855: X forward, Y left, Z up; the axle lies along Y with the origin on the vehicle's
//! center line at wheel-center height. [`Axle`] says what the axle is, [`LoadCase`] what acts on it, and
//! [`flex`] what it does. Signs of results are those of [`outcome`].
//!
//! Each room uses only those before it: `parts`, their `sections` and `assembly` into an axle; the `outcome` that is told
//! of it; its `mesh`, its `road_contact` and its `statics`, by forces alone in `force_method`, with their `sensitivity`; its
//! `dynamics`, `riding` and answers by `frequency`; `checks` of its strength, its `tires`, and its `life` under a duty.

// Tests beside the code build their axles as the tests of the crate do.
#[cfg(test)]
extern crate self as axlebow_axle;
#[cfg(test)]
#[path = "../tests/all/example/mod.rs"]
#[allow(clippy::unwrap_used)] // helpers of tests are tests too
mod example;

mod assembly;
mod catalog;
mod checks;
mod dynamics;
mod force_method;
mod frequency;
mod life;
mod mesh;
pub mod outcome;
mod parts;
mod riding;
mod road_contact;
mod sections;
mod sensitivity;
mod statics;
mod tires;

pub use assembly::axle::{Axle, FixedMass, SMALLEST_STEP, SeatLayouts, UserStation};
pub use assembly::preheat::{Preheat, preheats};
pub use assembly::seat_wall::{seat_layouts, seat_wall};
pub use assembly::standard_cases::standard_cases;
pub use assembly::wall_at_seat::WallAtSeat;
pub use axlebow_fe::Scheme;
pub use axlebow_tread as tread;
pub use checks::not_made::NotMade;
pub use checks::placed_check::{CheckedPart, PlacedCheck};
pub use checks::seat_picture::{SeatPicture, seat_pictures};
pub use checks::strength::{Governing, StrengthCase, StrengthOutcome, strength};
pub use checks::strength_options::{SeatStress, StrengthOptions, StrengthRules};
pub use checks::weld_band::{WeldBand, WeldRemedy, WeldUse, weld_bands};
pub use dynamics::mode_name::{Motion, Strain};
pub use dynamics::mode_outcome::{ModeOutcome, ShapePoint};
pub use dynamics::modes::{ModeMesh, ModesOutcome, modes};
pub use force_method::static_solver::StaticSolver;
pub use frequency::input::Input;
pub use frequency::response::{RandomRide, ResponseOptions, response};
pub use frequency::response_outcome::{
    PrintedCups, RandomAnswer, RandomOutcome, ResponseOutcome, StationResponse,
};
pub use frequency::transfer::{Resonance, TransferFunction};
pub use life::duty::{Duty, DutyBump, DutyEvent, DutyRoad};
pub use life::life_outcome::{BearingLife, DamageShares, DetailLife, LifeOutcome};
pub use life::life_run::{LifeOptions, life};
pub use mesh::weld_line::{plate_give_along_a_line, plate_give_along_an_edge, weld_stiffness};
pub use outcome::static_readings::{StaticReadings, WheelReadings};
pub use outcome::stiffening_outcome::{
    AxialForce, Foot, PlacedStress, StiffenerOutcome, StiffeningOutcome, WeldForce,
};
pub use outcome::{
    BearingOutcome, CamberSplit, CaseOutcome, ContactOutcome, DiagramPoint, FlexOutcome, Resultants,
    SeatOutcome, StationOutcome, Warning, WheelOutcome,
};
pub use parts::bearing_stiffness::{BearingStiffness, STEEPEST_CUP, TaperedRollers};
pub use parts::body::{Body, HousingPoint, Part, Piece, Spindle, SpindleStep};
pub use parts::bump_stop::BumpStop;
pub use parts::disc_flexibility::{AnnularPlate, USUAL_HUB_FLANGE, USUAL_WHEEL_DISC};
pub use parts::error::AxleError;
pub use parts::flexing::Flexing;
pub use parts::load_case::{Actions, Ground, LoadCase, Loading, STANDARD_CASES};
pub use parts::orientation::Orientation;
pub use parts::running::{HeldSpeed, Running};
pub use parts::seat::{Fixing, LARGEST_COMPOSITE_FRACTION, Seat, Suspension};
pub use parts::seat_bracket::SeatBracket;
pub use parts::side::{Side, Sides};
pub use parts::stiffener::{Seated, Stiffener, StiffenerEnd, StiffenerWeld, WeldPattern};
pub use parts::stiffener_form::{StiffenerForm, sleeve};
pub use parts::tire_fit::TireFit;
pub use parts::wall_by::WallBy;
pub use parts::welding_limits::LARGEST_ROOT_OPENING;
pub use parts::wheel::{TREAD_SHARE, Tire, TireLayout, TirePlace, TireSlot, Wheel};
pub use parts::wheel_end::WheelEnd;
pub use riding::basis_comparison::{BasisComparison, BesideFull};
pub use riding::record_options::RecordOptions;
pub use riding::ride::Ride;
pub use riding::ride_basis::{RideBasis, RideMethod, USUAL_SCHEME};
pub use riding::ride_outcome::{RideHistory, RideOutcome, RideWheel, StationPeak, StopHits};
pub use riding::ride_shape::{RideShape, Rise};
pub use riding::riding_axle::{RidingAxle, ride};
pub use riding::spectrum::{Band, Spectrum};
pub use riding::spectrum_peaks::SpectrumPeak;
pub use riding::step_refinement::{Refined, StepRefinement};
pub use road_contact::ground::STANDARD_GRAVITY;
pub use sections::stiffened::StiffenedSection;
pub use sensitivity::adjoint::{Adjoint, CaseReadings};
pub use statics::flex::flex;
pub use statics::shop_reading::ShopReading;
pub use statics::static_design::StaticDesign;
pub use statics::stiffened_stretch::{StiffenedStretch, StretchStress};
pub use statics::stiffening::composite_camber_change;
pub use statics::warnings::static_warnings;
pub use tires::cup_growth::cup_growth;
pub use tires::cup_suspects::{mode_suspects, road_suspect};
pub use tires::growth::{growth, threshold_damping, wheel_growth};
pub use tires::growth_outcome::{
    GrowthInTime, GrowthOptions, GrowthOutcome, HeldWave, RibPlace, ShareOfRib, WaveInTime, WheelGrowth,
    worse_end,
};
pub use tires::tire_face::{TireCase, TireDuty, TireFace, TireOutcome, tire_faces, tire_warning, tires};
pub use tires::tire_ride::{PrintedWave, TireRide, TireRideOutcome, tires_over, wear_over};
