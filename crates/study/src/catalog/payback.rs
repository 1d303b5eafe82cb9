//! Results of a payback. Amounts are in the currency that the document names, as its unit has no place in SI.

use axlebow_results::{Field, Own, Part, Read, Record, Text, number, part};
use axlebow_units::Kind;

use crate::{
    Balance, BreakEven, CashFlowOutcome, PaybackDraws, PaybackOutcome, PositionOutcome, PositionWear,
    Rotation, Swing,
};

impl Record for PaybackOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("name", "What the study is called.", &Text(|own: &Self| &own.name)),
        part("currency", "Currency of every amount, a label.", &Text(|own: &Self| &own.currency)),
        part("remedy", "What the remedy is called.", &Text(|own: &Self| &own.remedy)),
        part("case", "Load case of the tire faces.", &Text(|own: &Self| &own.case)),
        part(
            "rotation",
            "`none` where tires stay in their place, `positions` where each runs the same distance at every position.",
            &Text(|own: &Self| match own.rotation {
                Rotation::None => "none",
                Rotation::Positions => "positions",
            }),
        ),
        part("pays", "Whether the net present value is above 0.", &Own(|own: &Self| own.pays())),
        number(
            "mass-change",
            Kind::Mass,
            "Mass that the remedy adds to an axle.",
            &Own(|own: &Self| own.change.mass),
        ),
        part(
            "worst-wear-ratio",
            "Wear of the worst rib of the axle with the remedy over that of today, as the model says.",
            &Own(|own: &Self| own.change.worst_ratio()),
        ),
        part("cash-flow", "What the remedy brings to the fleet.", &Part(|own: &Self| &own.cash_flow)),
        part("wear", "Wear of the tire at each position.", &Part(|own: &Self| &own.change.wear)),
        part("break-even", "The break-even of each input of the file.", &Part(|own: &Self| &own.break_even)),
        part(
            "swings",
            "What each input does alone; those with a range first, the widest of each first.",
            &Part(|own: &Self| &own.swings),
        ),
        part("draws", "Draws from the ranges; null where no input has one.", &Part(|own: &Self| &own.draws)),
    ];
}

impl Record for CashFlowOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("outlay", "What is spent today.", &Own(|own: &Self| own.outlay)),
        part("saving", "What comes in each year.", &Own(|own: &Self| own.saving())),
        part("saving-of-tires", "What tires cost less in a year.", &Own(|own: &Self| own.tires)),
        part("cost-of-mass", "What the mass costs in a year.", &Own(|own: &Self| own.mass)),
        part("cost-of-inspections", "What inspections cost in a year.", &Own(|own: &Self| own.inspections)),
        part("net-present-value", "What all that comes to today.", &Own(|own: &Self| own.net_present_value)),
        part(
            "payback-years",
            "Years until what was spent has come in; null where it does not while the vehicles are held.",
            &Part(|own: &Self| &own.payback_time),
        ),
        part(
            "discounted-payback-years",
            "The same with every amount discounted.",
            &Part(|own: &Self| &own.discounted_payback_time),
        ),
        part(
            "cost-per-1000-km",
            "What the tires of the remedied axles of a vehicle cost for 1000 km, today and with the remedy, its mass, \
             inspections and price.",
            &Part(|own: &Self| &own.cost_per_1000_km),
        ),
        part(
            "tires-a-year",
            "Tires of a year, today and with the remedy.",
            &Own(|own: &Self| own.tires_a_year()),
        ),
        part("positions", "Each position of the tires.", &Part(|own: &Self| &own.positions)),
        part("balances", "What has come in less what was spent.", &Part(|own: &Self| &own.balances)),
    ];
}

const fn wheel<T>(read: &'static dyn Read<T>) -> Field<T> {
    part("wheel", "`left` or `right`.", read)
}

const fn tire<T>(read: &'static dyn Read<T>) -> Field<T> {
    part("tire", "`single`, or `outer` or `inner` of a dual.", read)
}

impl Record for PositionOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        wheel(&Text(|own: &Self| own.position.side.word())),
        tire(&Text(|own: &Self| own.position.slot.word())),
        number(
            "removal-distance",
            Kind::Length,
            "Distance at which tires come off, today and with the remedy.",
            &Part(|own: &Self| &own.distance),
        ),
        part(
            "tires-a-year",
            "Tires of a year in the fleet, today and with the remedy.",
            &Part(|own: &Self| &own.tires_a_year),
        ),
    ];
}

impl Record for PositionWear {
    const FIELDS: &'static [Field<Self>] = &[
        wheel(&Text(|own: &Self| own.position.side.word())),
        tire(&Text(|own: &Self| own.position.slot.word())),
        part(
            "ratio",
            "Wear of its worst rib with the remedy over that of today, as the model says.",
            &Own(|own: &Self| own.remedied / own.today),
        ),
        part(
            "ratio-of-even-wear",
            "The least that it could be: mean wear of its ribs with the remedy over the worst of today.",
            &Own(|own: &Self| own.even / own.today),
        ),
    ];
}

impl Record for Balance {
    const FIELDS: &'static [Field<Self>] = &[
        part("years", "Years from today.", &Own(|own: &Self| own.years)),
        part("plain", "Sum of the amounts.", &Own(|own: &Self| own.plain)),
        part("discounted", "Sum of what they are worth today.", &Own(|own: &Self| own.discounted)),
    ];
}

impl Record for BreakEven {
    const FIELDS: &'static [Field<Self>] = &[
        part("path", "Path of the input in the file.", &Text(|own: &Self| own.input.path())),
        part(
            "value",
            "Its value in the file; quantities in SI, prices for each SI unit of what they are the price of.",
            &Own(|own: &Self| own.value),
        ),
        part(
            "at",
            "Its nearest value at which nothing is gained or lost; null where there is none.",
            &Part(|own: &Self| &own.at),
        ),
    ];
}

impl Record for Swing {
    const FIELDS: &'static [Field<Self>] = &[
        part("path", "Path of the input in the file.", &Text(|own: &Self| own.input.path())),
        part(
            "ends",
            "Its low and high value: the 5 % and 95 % points of its range, or a tenth less and more where it has none.",
            &Part(|own: &Self| &own.ends),
        ),
        part("net-present-values", "The net present value with each.", &Part(|own: &Self| &own.worth)),
        part("has-range", "Whether the file gives it a range.", &Own(|own: &Self| own.has_range)),
    ];
}

/// A share of the draws and the value below which it stays.
struct Percentile((f64, f64));

impl Record for Percentile {
    const FIELDS: &'static [Field<Self>] = &[
        part("share", "Share of the draws.", &Own(|own: &Self| own.0.0)),
        part("value", "Net present value below which it stays.", &Own(|own: &Self| own.0.1)),
    ];
}

impl Record for PaybackDraws {
    const FIELDS: &'static [Field<Self>] = &[
        part("count", "How many were made.", &Own(|own: &Self| own.count)),
        part("mean", "Mean of the net present value.", &Own(|own: &Self| own.mean.value)),
        part(
            "mean-interval",
            "Its 95 % interval; null for too few draws.",
            &Own(|own: &Self| own.mean.interval),
        ),
        part("deviation", "Standard deviation.", &Own(|own: &Self| own.deviation.value)),
        part(
            "percentiles",
            "Percentiles.",
            &Own(|own: &Self| own.percentiles.iter().copied().map(Percentile).collect::<Vec<_>>()),
        ),
        part("probability-that-it-pays", "Share of draws above 0.", &Own(|own: &Self| own.pays.value)),
        part(
            "probability-interval",
            "Its 95 % interval (Clopper and Pearson).",
            &Own(|own: &Self| own.pays.interval),
        ),
    ];
}
