//! What a remedy costs and what it may save, as one struct of numbers; SI and one currency.

/// What a remedy of an axle costs, and what tires, mass and time cost its owner.
///
/// Amounts are in one currency, whichever it is. Every number but the fleet's counts is a [`PaybackInput`], which may have a
/// range, a break-even and a place in the tornado.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaybackTerms {
    /// The vehicles and how they are used.
    pub fleet: FleetTerms,
    /// What the remedy costs.
    pub remedy: RemedyTerms,
    /// What tires cost, and when they come off.
    pub tires: TireTerms,
    /// What a kilogram more is worth.
    pub mass: MassTerms,
}

/// The vehicles and how they are used.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FleetTerms {
    /// Vehicles, at least 1.
    pub vehicles: u32,
    /// Axles of each that get the remedy, at least 1.
    pub axles: u32,
    /// Distance of a vehicle in a year, m, above 0.
    pub distance: f64,
    /// Years that the vehicles are held, above 0.
    pub years: f64,
    /// Discount rate of a year, above -1.
    pub discount_rate: f64,
}

/// What the remedy of one axle costs.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RemedyTerms {
    /// Price, once.
    pub price: f64,
    /// Time for which the vehicle stands, s, once.
    pub downtime: f64,
    /// What a second of that costs.
    pub downtime_price: f64,
    /// What its inspections cost in a year.
    pub inspection: f64,
}

/// What tires cost, and when they come off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TireTerms {
    /// Price of a new tire.
    pub new: f64,
    /// Price of a retread.
    pub retread: f64,
    /// Retreads of a casing.
    pub retreads: u32,
    /// What a casing is worth when it goes.
    pub casing: f64,
    /// What it costs to take a tire off and put the next one on.
    pub fitting: f64,
    /// Distance at which tires come off today, over all positions of the axle, m, above 0.
    pub removal_distance: f64,
    /// Share of removals that the wear of a shoulder decides, 0 to 1.
    pub shoulder_share: f64,
    /// Change of wear over that of the model, 0 or more; 1 for as the model says.
    pub wear_effect: f64,
}

/// What a kilogram more is worth.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct MassTerms {
    /// Payload that a kilogram costs in a year.
    pub payload: f64,
    /// Fuel that a kilogram costs over 100 km.
    pub fuel: f64,
}

/// A number of the terms that may be uncertain.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PaybackInput {
    /// [`FleetTerms::distance`].
    Distance,
    /// [`FleetTerms::years`].
    Years,
    /// [`FleetTerms::discount_rate`].
    DiscountRate,
    /// [`RemedyTerms::price`].
    Price,
    /// [`RemedyTerms::downtime`].
    Downtime,
    /// [`RemedyTerms::downtime_price`].
    DowntimePrice,
    /// [`RemedyTerms::inspection`].
    Inspection,
    /// [`TireTerms::new`].
    NewTire,
    /// [`TireTerms::retread`].
    Retread,
    /// [`TireTerms::casing`].
    Casing,
    /// [`TireTerms::fitting`].
    Fitting,
    /// [`TireTerms::removal_distance`].
    RemovalDistance,
    /// [`TireTerms::shoulder_share`].
    ShoulderShare,
    /// [`TireTerms::wear_effect`].
    WearEffect,
    /// [`MassTerms::payload`].
    Payload,
    /// [`MassTerms::fuel`].
    Fuel,
}

/// How far from its value the break-even of a price or distance is looked for.
const FAR: f64 = 1000.0;
/// Longest time for which a vehicle is held, years.
pub(crate) const LONGEST: f64 = 100.0;
/// Largest discount rate of a year.
pub(crate) const DEAREST: f64 = 10.0;
/// Largest change of wear over that of the model.
pub(crate) const STRONGEST: f64 = 10.0;

impl PaybackInput {
    /// Every input, in the order of a file.
    pub const ALL: [Self; 16] = [
        Self::Distance,
        Self::Years,
        Self::DiscountRate,
        Self::Price,
        Self::Downtime,
        Self::DowntimePrice,
        Self::Inspection,
        Self::NewTire,
        Self::Retread,
        Self::Casing,
        Self::Fitting,
        Self::RemovalDistance,
        Self::ShoulderShare,
        Self::WearEffect,
        Self::Payload,
        Self::Fuel,
    ];

    /// Its path in a file.
    pub const fn path(self) -> &'static str {
        match self {
            Self::Distance => "fleet.distance",
            Self::Years => "fleet.years",
            Self::DiscountRate => "fleet.discount_rate",
            Self::Price => "remedy.price",
            Self::Downtime => "remedy.downtime",
            Self::DowntimePrice => "remedy.downtime_price",
            Self::Inspection => "remedy.inspection",
            Self::NewTire => "tires.new",
            Self::Retread => "tires.retread",
            Self::Casing => "tires.casing",
            Self::Fitting => "tires.fitting",
            Self::RemovalDistance => "tires.removal_distance",
            Self::ShoulderShare => "tires.removed_by.shoulder_wear",
            Self::WearEffect => "tires.wear_effect",
            Self::Payload => "mass.payload",
            Self::Fuel => "mass.fuel",
        }
    }

    /// Least and most between which its break-even is looked for.
    pub(crate) fn reach(self, value: f64) -> [f64; 2] {
        match self {
            Self::Years => [0.0, LONGEST],
            Self::DiscountRate => [0.0, DEAREST],
            Self::ShoulderShare => [0.0, 1.0],
            Self::WearEffect => [0.0, STRONGEST],
            // A tire that never comes off costs nothing, one that comes off at once everything.
            Self::RemovalDistance => [value / FAR, FAR * value],
            _ => [0.0, FAR * value],
        }
    }

    fn place(self, terms: &mut PaybackTerms) -> &mut f64 {
        let PaybackTerms { fleet, remedy, tires, mass } = terms;
        match self {
            Self::Distance => &mut fleet.distance,
            Self::Years => &mut fleet.years,
            Self::DiscountRate => &mut fleet.discount_rate,
            Self::Price => &mut remedy.price,
            Self::Downtime => &mut remedy.downtime,
            Self::DowntimePrice => &mut remedy.downtime_price,
            Self::Inspection => &mut remedy.inspection,
            Self::NewTire => &mut tires.new,
            Self::Retread => &mut tires.retread,
            Self::Casing => &mut tires.casing,
            Self::Fitting => &mut tires.fitting,
            Self::RemovalDistance => &mut tires.removal_distance,
            Self::ShoulderShare => &mut tires.shoulder_share,
            Self::WearEffect => &mut tires.wear_effect,
            Self::Payload => &mut mass.payload,
            Self::Fuel => &mut mass.fuel,
        }
    }
}

impl PaybackTerms {
    /// The value of an input.
    pub fn value(mut self, input: PaybackInput) -> f64 {
        *input.place(&mut self)
    }

    /// The terms with another value of an input.
    pub fn with(mut self, input: PaybackInput, value: f64) -> Self {
        *input.place(&mut self) = value;
        self
    }

    /// Axles that get the remedy, all together.
    pub fn all_axles(&self) -> f64 {
        f64::from(self.fleet.vehicles) * f64::from(self.fleet.axles)
    }
}

impl TireTerms {
    /// What one life of a casing costs: `(new + n retread − casing)/(1 + n) + fitting` for n retreads, all lives alike.
    pub fn cost_of_a_life(&self) -> f64 {
        let retreads = f64::from(self.retreads);
        (self.new + retreads * self.retread - self.casing) / (1.0 + retreads) + self.fitting
    }
}
