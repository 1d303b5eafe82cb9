//! Money over time: interest factors, a net present value over the rate, payback times.

use axlebow_numerics::{
    CashFlow, annuity_factor, balances, discount_factor, nearest_zero, net_present_value, payback_time,
};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};

const TABLES: &str = "D. G. Newnan, T. G. Eschenbach, J. P. Lavelle, Engineering Economic Analysis, compound interest tables, \
     35 % (page 585 of an older edition, read in a stored copy)";
const SMALL: &str = "L. Blank, A. Tarquin, Engineering Economy, table 1, 0.25 % (read in a stored copy)";
const PARK: &str = "C. S. Park, Contemporary Engineering Economics, 4th ed. 2007, example 5.5 (lecture slides of the book, \
     read in a stored copy)";
const PARK_PAYBACK: &str = "C. S. Park, Contemporary Engineering Economics, 4th ed. 2007, chapter 5, payback period (lecture \
     slides of the book, read in a stored copy; the cash flows of years 4 to 6 from its picture)";
const COURSE: &str = "solution sheet 5 of the university course Engineering Economy, spring 2008, exercise 1 (read in a stored copy)";

const SINGLE: &str = "P/F = (1 + i)^-n";
const SERIES: &str = "P/A = (1 - (1 + i)^-n)/i";
const RECOVERY: &str = "A/P = i/(1 - (1 + i)^-n)";
const SUM: &str = "sum of F_n (1 + i)^-n";
const CROSSING: &str = "straight between the years about the first change of the balance to positive";

const MACHINE_INPUTS: &str = "-75000, 24400, 27340, 55760 at the end of years 0 to 3";
const MACHINE: [f64; 4] = [-75_000.0, 24_400.0, 27_340.0, 55_760.0];
const PRESS: [f64; 7] = [-85_000.0, 15_000.0, 25_000.0, 35_000.0, 45_000.0, 45_000.0, 35_000.0];
const TWICE: [f64; 9] = [-180.0, -90.0, 0.0, 100.0, 100.0, 100.0, -90.0, 100.0, 100.0];
const TWICE_INPUTS: &str = "-180, -90, 0, 100, 100, 100, -90, 100, 100 at the end of years 0 to 8";

/// The cases. Three values of the table of example 5.5 are not taken: it prints 27743 at 2 %, -751 at 18 % and -18360 at
/// 34 %, where the sums of its own cash flows are 27743.8, -749.6 and -18390.5.
pub(crate) const CASES: &[Case] = &[
    factor("single_payment_matches_newnan_35_percent_n_5", [SINGLE, "i = 35 %, n = 5"], 0.2230, 1e-4, || {
        Ok(discount_factor(0.35, 5.0))
    }),
    factor(
        "single_payment_matches_newnan_35_percent_n_20",
        [SINGLE, "i = 35 %, n = 20"],
        0.002_47,
        1e-5,
        || Ok(discount_factor(0.35, 20.0)),
    ),
    factor("series_matches_newnan_35_percent_n_5", [SERIES, "i = 35 %, n = 5"], 2.220, 1e-3, || {
        Ok(annuity_factor(0.35, 5.0))
    }),
    factor("series_matches_newnan_35_percent_n_10", [SERIES, "i = 35 %, n = 10"], 2.715, 1e-3, || {
        Ok(annuity_factor(0.35, 10.0))
    }),
    factor("recovery_matches_newnan_35_percent_n_10", [RECOVERY, "i = 35 %, n = 10"], 0.3683, 1e-4, || {
        Ok(1.0 / annuity_factor(0.35, 10.0))
    }),
    factor("series_matches_blank_0_25_percent_n_10", [SERIES, "i = 0.25 %, n = 10"], 9.8639, 1e-4, || {
        Ok(annuity_factor(0.0025, 10.0))
    })
    .sourced(SMALL),
    factor("series_matches_blank_0_25_percent_n_25", [SERIES, "i = 0.25 %, n = 25"], 24.2055, 1e-4, || {
        Ok(annuity_factor(0.0025, 25.0))
    })
    .sourced(SMALL),
    worth("worth_matches_park_5_5_at_15_percent", [SUM, MACHINE_INPUTS], 3553.46, || {
        Ok(net_present_value(&yearly(&MACHINE), 0.15))
    })
    .rounded_to(0.01),
    worth("worth_matches_park_5_5_at_0_percent", [SUM, MACHINE_INPUTS], 32_500.0, || {
        Ok(net_present_value(&yearly(&MACHINE), 0.0))
    }),
    worth("worth_matches_park_5_5_at_8_percent", [SUM, MACHINE_INPUTS], 15_296.0, || {
        Ok(net_present_value(&yearly(&MACHINE), 0.08))
    }),
    worth("worth_matches_park_5_5_at_20_percent", [SUM, MACHINE_INPUTS], -3412.0, || {
        Ok(net_present_value(&yearly(&MACHINE), 0.20))
    }),
    worth("worth_matches_park_5_5_at_40_percent", [SUM, MACHINE_INPUTS], -23_302.0, || {
        Ok(net_present_value(&yearly(&MACHINE), 0.40))
    }),
    money(
        "break_even_rate_matches_park_5_5",
        "rate at which nothing is gained, %",
        [SUM, MACHINE_INPUTS],
        17.45,
        || {
            let gain = |rate: f64| net_present_value(&yearly(&MACHINE), rate);
            nearest_zero(gain, 0.1, [0.0, 10.0]).map(|rate| 100.0 * rate).ok_or_else(|| "no zero".to_owned())
        },
    )
    .within(
        0.01 / 17.45,
        "the book cuts the rate off: its cash flows come to 10.55 at 17.45 % and to -3.38 at 17.46 %",
    )
    .measured_in("%"),
    time(
        "payback_matches_park_5_payback_period",
        [CROSSING, "-85000, 15000, 25000, 35000, 45000, 45000, 35000 at the end of years 0 to 6"],
        3.2,
        || payback(&PRESS, 0.0),
    )
    .sourced(PARK_PAYBACK),
    time("payback_matches_a_course_undiscounted", [CROSSING, TWICE_INPUTS], 4.7, || payback(&TWICE, 0.0))
        .sourced(COURSE),
    time("payback_matches_a_course_at_5_percent", [CROSSING, TWICE_INPUTS], 7.2, || payback(&TWICE, 0.05))
        .sourced(COURSE),
    money(
        "balance_matches_a_course_year_8",
        "balance after year 8 at 5 %",
        [SUM, TWICE_INPUTS],
        52.88,
        || balances(&yearly(&TWICE), 0.05).last().copied().ok_or_else(|| "no balance".to_owned()),
    )
    .sourced(COURSE)
    .within(
        0.05 / 52.88,
        "the sheet multiplies by factors of four digits, up to 0.00005 off, on eight amounts of 100",
    ),
];

fn yearly(amounts: &[f64]) -> Vec<CashFlow> {
    let flow = |(year, amount): (usize, &f64)| CashFlow { years: year as f64, amount: *amount };
    amounts.iter().enumerate().map(flow).collect()
}

fn payback(amounts: &[f64], rate: f64) -> Result<f64, String> {
    payback_time(&yearly(amounts), rate).ok_or_else(|| "never".to_owned())
}

const fn money(
    id: &'static str,
    quantity: &'static str,
    [formula, inputs]: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "money over time",
        quantity,
        formula,
        inputs,
        unit: "",
        source: PARK,
        provenance: Provenance::Printed,
        reference,
        tolerance: Tolerance::Absolute(0.5),
        computed,
        difference: None,
    }
}

const fn worth(id: &'static str, basis: Basis, reference: f64, computed: Compute) -> Case {
    money(id, "net present value", basis, reference, computed)
}

const fn factor(id: &'static str, basis: Basis, reference: f64, last_digit: f64, computed: Compute) -> Case {
    money(id, "interest factor", basis, reference, computed).sourced(TABLES).rounded_to(last_digit)
}

const fn time(id: &'static str, basis: Basis, reference: f64, computed: Compute) -> Case {
    money(id, "payback time", basis, reference, computed).rounded_to(0.1).measured_in("years")
}
