//! What a remedy brings: the cash flows of the fleet, and what they come to.
//!
//! ```text
//! C = axles (price + downtime × its price)                                             today
//! S = axles (tires of a year today − with the remedy) cost of a life
//!     − axles Δm (payload + fuel K/100 km) − axles × inspections                       each year
//! NPV = −C + S a(i, n)
//! ```
//!
//! K the distance of a year, Δm the mass that the remedy adds, a(i, n) the annuity factor of [`axlebow_numerics`]. Savings
//! come at the end of each year. What the remedy is worth when the vehicle is sold, and taxes, are left out.

use axlebow_numerics::{CashFlow, annuity_factor, balances, equal_years, payback_time};

use super::terms::PaybackTerms;
use super::wear::{AxleChange, TirePosition};

/// Distance for which the price of fuel is given, m.
const FUEL_DISTANCE: f64 = 100e3;
/// Distance for which costs are told, m.
const COST_DISTANCE: f64 = 1e6;

/// What a remedy brings to the fleet; amounts in the currency of the terms.
#[derive(Debug, Clone, PartialEq)]
pub struct CashFlowOutcome {
    /// What is spent today.
    pub outlay: f64,
    /// What tires cost less in a year.
    pub tires: f64,
    /// What the mass costs in a year; negative for a lighter axle.
    pub mass: f64,
    /// What inspections cost in a year.
    pub inspections: f64,
    /// What all that comes to today.
    pub net_present_value: f64,
    /// Years until what was spent has come in; none where it does not while the vehicles are held.
    pub payback_time: Option<f64>,
    /// The same with every amount discounted.
    pub discounted_payback_time: Option<f64>,
    /// What the tires of the remedied axles of one vehicle cost for 1000 km: today; and with the remedy, its mass,
    /// inspections and price, which is spread over the years at the discount rate.
    pub cost_per_1000_km: [f64; 2],
    /// Each position.
    pub positions: Vec<PositionOutcome>,
    /// What has come in less what was spent, year by year.
    pub balances: Vec<Balance>,
}

/// A position of the tires.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PositionOutcome {
    /// The position.
    pub position: TirePosition,
    /// Distance at which its tires come off, today and with the remedy, m.
    pub distance: [f64; 2],
    /// Tires that come off there in a year, in the whole fleet, today and with the remedy.
    pub tires_a_year: [f64; 2],
}

/// What has come in less what was spent.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// Years from today.
    pub years: f64,
    /// The sum of the amounts.
    pub plain: f64,
    /// The sum of what they are worth today.
    pub discounted: f64,
}

impl CashFlowOutcome {
    /// What comes in each year.
    pub fn saving(&self) -> f64 {
        self.tires - self.mass - self.inspections
    }

    /// Tires of a year in the whole fleet, today and with the remedy.
    pub fn tires_a_year(&self) -> [f64; 2] {
        [0, 1].map(|which| self.positions.iter().map(|own| own.tires_a_year[which]).sum())
    }
}

/// Amounts of the fleet that do not depend on time.
struct Amounts {
    outlay: f64,
    tires_a_year: Vec<[f64; 2]>,
    distances: Vec<[f64; 2]>,
    tires: f64,
    mass: f64,
    inspections: f64,
}

impl PaybackTerms {
    /// What a remedy brings under these terms.
    ///
    /// Arguments: `change`, what it does to mass and wear of an axle.
    pub fn outcome(&self, change: &AxleChange) -> CashFlowOutcome {
        let own = self.amounts(change);
        let (rate, years) = (self.fleet.discount_rate, self.fleet.years);
        let saving = own.tires - own.mass - own.inspections;
        let today = CashFlow { years: 0.0, amount: -own.outlay };
        let flows: Vec<CashFlow> = std::iter::once(today).chain(equal_years(saving, years)).collect();
        let both = balances(&flows, 0.0).into_iter().zip(balances(&flows, rate));
        let positions = change.wear.iter().zip(own.distances.iter().zip(&own.tires_a_year));
        CashFlowOutcome {
            outlay: own.outlay,
            tires: own.tires,
            mass: own.mass,
            inspections: own.inspections,
            net_present_value: own.worth(rate, years),
            payback_time: payback_time(&flows, 0.0),
            discounted_payback_time: payback_time(&flows, rate),
            cost_per_1000_km: self.cost_per_1000_km(&own),
            positions: positions
                .map(|(wear, (distance, tires_a_year))| PositionOutcome {
                    position: wear.position,
                    distance: *distance,
                    tires_a_year: *tires_a_year,
                })
                .collect(),
            balances: flows
                .iter()
                .zip(both)
                .map(|(flow, (plain, discounted))| Balance { years: flow.years, plain, discounted })
                .collect(),
        }
    }

    /// What a remedy comes to today, alone.
    pub fn net_present_value(&self, change: &AxleChange) -> f64 {
        self.amounts(change).worth(self.fleet.discount_rate, self.fleet.years)
    }

    fn amounts(&self, change: &AxleChange) -> Amounts {
        let (axles, distance) = (self.all_axles(), self.fleet.distance);
        let distances = change.distances(&self.tires);
        let tires_a_year: Vec<[f64; 2]> =
            distances.iter().map(|own| own.map(|life| axles * distance / life)).collect();
        let saved: f64 = tires_a_year.iter().map(|[today, remedied]| today - remedied).sum();
        let kilogram = self.mass.payload + self.mass.fuel * distance / FUEL_DISTANCE;
        Amounts {
            outlay: axles * (self.remedy.price + self.remedy.downtime * self.remedy.downtime_price),
            tires: saved * self.tires.cost_of_a_life(),
            mass: axles * change.mass * kilogram,
            inspections: axles * self.remedy.inspection,
            tires_a_year,
            distances,
        }
    }

    /// Costs of a vehicle; the outlay is spread as equal amounts at the end of each year.
    fn cost_per_1000_km(&self, own: &Amounts) -> [f64; 2] {
        let life = self.tires.cost_of_a_life();
        let tires = [0, 1].map(|which| life * own.tires_a_year.iter().map(|tires| tires[which]).sum::<f64>());
        let spread = own.outlay / annuity_factor(self.fleet.discount_rate, self.fleet.years);
        let each = COST_DISTANCE / (self.fleet.distance * f64::from(self.fleet.vehicles));
        [tires[0] * each, (tires[1] + own.mass + own.inspections + spread) * each]
    }
}

impl Amounts {
    fn worth(&self, rate: f64, years: f64) -> f64 {
        (self.tires - self.mass - self.inspections) * annuity_factor(rate, years) - self.outlay
    }
}
