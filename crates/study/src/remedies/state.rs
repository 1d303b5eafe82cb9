//! How an axle stands, and how its tires wear.

use axlebow_axle::tread::{TireWear, Worn};
use axlebow_axle::{
    Axle, CaseOutcome, GrowthOptions, LoadCase, Ride, RidingAxle, Side, Sides, StaticDesign, StrengthOutcome,
    TireSlot, strength, tire_faces, wear_over, wheel_growth, worse_end,
};
use axlebow_model::Model;

use super::outcome::WhyNot;

/// Cups whose growth is looked at: shorter waves do not win, as the contact takes them away.
const COUNTS: [u16; 2] = [1, 6];

/// An axle with or without a remedy.
#[derive(Debug, Clone, PartialEq)]
pub struct State {
    /// Mass of the bare axle: tube or housing, spindles and stiffeners, kg.
    pub axle_mass: f64,
    /// Camber change of each wheel in the load case, positive with the tire's top outward, rad.
    pub camber_change: Sides<f64>,
    /// Manufactured camber and its change, rad.
    pub camber: Sides<f64>,
    /// The shoulder that wears most, over a road where one is driven.
    pub shoulder: ShoulderWear,
    /// The check of strength that uses most of its limit, in all load cases; none where none binds.
    pub binding: Option<Binding>,
    /// Between the middles of both wheels' tires, m.
    pub track: f64,
    /// From the innermost tire's inner sidewall to the seat, m; negative where they meet.
    pub seat_clearance: f64,
    /// The wave of wear that grows fastest over the speeds held; none where waves cannot be solved, as of tires that do not wear.
    pub cups: Option<CupGrowth>,
    /// What the road does, where one is driven.
    pub over_road: Option<StateOverRoad>,
}

/// How fast cups grow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CupGrowth {
    /// Growth, 1/m of mean tread worn; zero or less is leveled.
    pub rate: f64,
    /// Distance in which they grow e-fold, m; none where they do not grow, or removals have not calibrated wear.
    pub distance_for_e_fold: Option<f64>,
}

/// A shoulder with its wear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShoulderWear {
    /// Wear over that of the same rib of today's tires upright and straight.
    pub wear: f64,
    /// Wheel end.
    pub side: Side,
    /// Tire.
    pub tire: TireSlot,
    /// Shoulder.
    pub shoulder: Shoulder,
}

/// A shoulder of a tire.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shoulder {
    /// Toward the middle of the vehicle.
    Inner,
    /// Away from it.
    Outer,
}

/// A check of strength that decides.
#[derive(Debug, Clone, PartialEq)]
pub struct Binding {
    /// Share of its limit that it uses.
    pub utilization: f64,
    /// What is checked.
    pub what: String,
    /// Where.
    pub place: String,
    /// Load case; none for a wall by itself.
    pub case: Option<String>,
    /// Whether no binding check fails.
    pub holds: bool,
}

impl State {
    /// The check that decides, where it fails.
    pub fn failing(&self) -> Option<&Binding> {
        self.binding.as_ref().filter(|own| !own.holds)
    }
}

/// What a road does to an axle.
#[derive(Debug, Clone, PartialEq)]
pub struct StateOverRoad {
    /// Peak-to-peak camber change of the wheel where it is larger, rad.
    pub camber_peak_to_peak: f64,
    /// Largest wheel load over that at rest.
    pub dynamic_load_factor: f64,
}

/// Wear of the shoulders of today's tires, upright and straight: inner and outer of each tire.
pub(super) struct Upright(Sides<Vec<[Option<f64>; 2]>>);

/// What is asked of a state.
pub(super) struct Asked<'a> {
    pub case: &'a str,
    pub ride: Option<&'a Ride>,
}

/// An axle in a load case and over a road.
pub(super) struct Solved {
    case: CaseOutcome,
    worn: Sides<Worn>,
    strength: StrengthOutcome,
    cups: Option<CupGrowth>,
    over_road: Option<StateOverRoad>,
}

impl Solved {
    pub(super) fn of(model: &Model, asked: &Asked<'_>) -> Result<Solved, WhyNot> {
        let axle = &model.axle;
        let case = model.cases.iter().find(|case| case.name == asked.case);
        let case = case.ok_or_else(|| WhyNot::Misfit(format!("no load case is called {:?}", asked.case)))?;
        let outcome = standing(axle, case)?;
        let faces = tire_faces(axle, &outcome).map_err(WhyNot::Unsolved)?;
        let checks = strength(axle, &model.cases, model.strength).map_err(WhyNot::Unsolved)?;
        let (worn, over_road) = match asked.ride {
            None => (Sides { left: faces.left.worn, right: faces.right.worn }, None),
            Some(over) => driven(axle, over).map(|(worn, road)| (worn, Some(road)))?,
        };
        Ok(Solved { case: outcome, worn, strength: checks, cups: cups(axle, case), over_road })
    }

    /// Wear of its shoulders were its tires upright.
    pub(super) fn upright(&self) -> Upright {
        let of = |tire: &TireWear| {
            [tire.inner_shoulder(), tire.outer_shoulder()].map(|rib| Some(rib.wear / rib.against_upright?))
        };
        Upright(Sides::each(|side| self.worn.of(side).tires.iter().map(of).collect()))
    }

    pub(super) fn state(&self, axle: &Axle, upright: &Upright) -> State {
        let wheels = &self.case.wheels;
        State {
            axle_mass: axle.mass(),
            camber_change: Sides::each(|side| wheels.of(side).camber_change),
            camber: Sides::each(|side| wheels.of(side).camber),
            shoulder: worst(&self.worn, upright),
            binding: binding(&self.strength),
            track: Side::BOTH.map(|side| axle.tire_y(side, axle.wheels.of(side).outset()).abs()).iter().sum(),
            seat_clearance: Side::BOTH
                .map(|side| seat_clearance(axle, side))
                .into_iter()
                .fold(f64::INFINITY, f64::min),
            cups: self.cups,
            over_road: self.over_road.clone(),
        }
    }

    /// Camber change of each wheel, rad.
    pub(super) fn camber_change(&self) -> Sides<f64> {
        Sides::each(|side| self.case.wheels.of(side).camber_change)
    }
}

fn standing(axle: &Axle, case: &LoadCase) -> Result<CaseOutcome, WhyNot> {
    StaticDesign::of(axle).and_then(|design| design.case(case)).map_err(WhyNot::Unsolved)
}

/// The wave that grows fastest in a load case.
fn cups(axle: &Axle, case: &LoadCase) -> Option<CupGrowth> {
    let options = GrowthOptions::over(axle.running.held, case.clone(), COUNTS);
    let wheels = wheel_growth(axle, &options).ok()?;
    let wheel = wheels.of(worse_end(&wheels));
    let winner = wheel.winner();
    let distance_for_e_fold = wheel.distance_for_e_fold(winner);
    Some(CupGrowth { rate: winner.wave.rate, distance_for_e_fold })
}

/// Mean wear over a road, and what the road does.
fn driven(axle: &Axle, over: &Ride) -> Result<(Sides<Worn>, StateOverRoad), WhyNot> {
    let riding = RidingAxle::of(axle, over.axle_load).map(RidingAxle::without_stations);
    let outcome = riding.and_then(|axle| axle.ride(over)).map_err(WhyNot::Unsolved)?;
    if let Some(why) = &outcome.partial {
        return Err(WhyNot::Undriven(why.clone()));
    }
    let wear = wear_over(axle, &outcome).map_err(WhyNot::Unsolved)?;
    let most = |value: fn(&axlebow_axle::RideWheel) -> f64| {
        value(&outcome.wheels.left).max(value(&outcome.wheels.right))
    };
    let road = StateOverRoad {
        camber_peak_to_peak: most(|wheel| wheel.camber_peak_to_peak),
        dynamic_load_factor: most(|wheel| wheel.dynamic_load_factor),
    };
    Ok((Sides { left: wear.left.mean, right: wear.right.mean }, road))
}

/// The shoulder that wears most against today's tires upright; of equal ones the left inner one.
fn worst(worn: &Sides<Worn>, upright: &Upright) -> ShoulderWear {
    let none =
        ShoulderWear { wear: 0.0, side: Side::Left, tire: TireSlot::Single, shoulder: Shoulder::Inner };
    let mut most = none;
    for side in Side::BOTH {
        let tires = &worn.of(side).tires;
        for (number, (tire, base)) in tires.iter().zip(upright.0.of(side)).enumerate() {
            let ribs = [(Shoulder::Inner, tire.inner_shoulder()), (Shoulder::Outer, tire.outer_shoulder())];
            for ((shoulder, rib), base) in ribs.into_iter().zip(base) {
                let wear = base.map_or(0.0, |base| rib.wear / base);
                if wear > most.wear * (1.0 + 1e-9) {
                    most = ShoulderWear { wear, side, tire: TireSlot::of(number, tires.len()), shoulder };
                }
            }
        }
    }
    most
}

fn binding(strength: &StrengthOutcome) -> Option<Binding> {
    let governing = strength.governing()?;
    let check = &governing.placed.check;
    Some(Binding {
        utilization: check.utilization(),
        what: check.what.clone(),
        place: governing.placed.place.clone(),
        case: governing.case.map(|case| case.name.clone()),
        holds: strength.holds(),
    })
}

/// From the inner sidewall of the innermost tire to the outer edge of the seat, m.
fn seat_clearance(axle: &Axle, side: Side) -> f64 {
    let (wheel, seat) = (axle.wheels.of(side), axle.seats.of(side));
    let innermost =
        wheel.tires().map(|place| axle.tire_y(side, place.outboard).abs()).fold(f64::INFINITY, f64::min);
    innermost - 0.5 * wheel.tire().width - (seat.at + 0.5 * seat.width)
}
