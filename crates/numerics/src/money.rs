//! Money over time: what later cash flows are worth today, and when they have paid back what was spent.
//!
//! ```text
//! P = F (1 + i)^-n                                    present value of one cash flow
//! P = A (1 - (1 + i)^-n)/i                            of equal ones at the end of each of n years
//! ```
//!
//! Amounts are in any one currency, income positive; i is the discount rate of a year. Inflation is for the caller: with
//! prices of today, the rate is the real one.
//!
//! Source: C. S. Park, Contemporary Engineering Economics, 4th ed. 2007, chapters 3 and 5; any text of engineering
//! economics.

/// An amount that is received, or spent where it is negative, some time from today.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CashFlow {
    /// Years from today, 0 or more.
    pub years: f64,
    /// The amount.
    pub amount: f64,
}

/// What one unit of money after some years is worth today: `(1 + i)^-n`.
///
/// Arguments: `rate`, i, above -1; `years`, n, any.
pub fn discount_factor(rate: f64, years: f64) -> f64 {
    (-years * rate.ln_1p()).exp()
}

/// What one unit of money at the end of each year is worth today.
///
/// ```text
/// (1 - (1 + i)^-n)/i for the n whole years, and f (1 + i)^-(n + f) for a last part f of a year, at its end
/// ```
///
/// Arguments: `rate`, i, above -1; `years`, 0 or more.
pub fn annuity_factor(rate: f64, years: f64) -> f64 {
    let whole = years.floor();
    let of_whole = if rate == 0.0 { whole } else { -(-whole * rate.ln_1p()).exp_m1() / rate };
    of_whole + (years - whole) * discount_factor(rate, years)
}

/// The cash flows of equal years: an amount at the end of each, and of a last part of a year its share.
pub fn equal_years(amount: f64, years: f64) -> Vec<CashFlow> {
    let whole = years.floor();
    let each = (1..=whole as usize).map(|year| CashFlow { years: year as f64, amount });
    let last = CashFlow { years, amount: amount * (years - whole) };
    each.chain((years > whole).then_some(last)).collect()
}

/// What cash flows are worth today, together.
pub fn net_present_value(flows: &[CashFlow], rate: f64) -> f64 {
    flows.iter().map(|flow| flow.amount * discount_factor(rate, flow.years)).sum()
}

/// What has come in less what was spent after each cash flow, as worth today.
pub fn balances(flows: &[CashFlow], rate: f64) -> Vec<f64> {
    let worth = |balance: &mut f64, flow: &CashFlow| {
        *balance += flow.amount * discount_factor(rate, flow.years);
        Some(*balance)
    };
    flows.iter().scan(0.0, worth).collect()
}

/// When the balance first comes to zero from below; none where it does not.
///
/// Between two cash flows the balance is taken to run straight. With a rate of 0 it is the simple payback time.
///
/// Arguments: `flows`, in the order of time.
pub fn payback_time(flows: &[CashFlow], rate: f64) -> Option<f64> {
    let balances = balances(flows, rate);
    let first = flows.first()?;
    if balances[0] >= 0.0 {
        return Some(first.years);
    }
    let crossed = (1..flows.len()).find(|place| balances[*place] >= 0.0)?;
    let [before, after] = [crossed - 1, crossed];
    let share = -balances[before] / (balances[after] - balances[before]);
    Some(flows[before].years + share * (flows[after].years - flows[before].years))
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;

    fn yearly(amounts: &[f64]) -> Vec<CashFlow> {
        amounts
            .iter()
            .enumerate()
            .map(|(year, amount)| CashFlow { years: year as f64, amount: *amount })
            .collect()
    }

    /// The factor is the sum that it stands for, whole years and a part.
    #[test]
    fn an_annuity_is_the_sum_of_its_present_values() {
        for rate in [-0.02, 0.0, 1e-12, 0.07, 1.5] {
            for years in [0.0, 0.4, 1.0, 6.0, 7.25] {
                let sum = net_present_value(&equal_years(1.0, years), rate);
                assert_relative_eq!(annuity_factor(rate, years), sum, max_relative = 1e-12, epsilon = 1e-15);
            }
        }
        assert_eq!(annuity_factor(0.0, 6.5), 6.5);
    }

    #[test]
    fn an_annuity_grows_with_the_years_without_a_step() {
        let at = |years: f64| annuity_factor(0.08, years);
        assert_relative_eq!(at(6.0_f64.next_down()), at(6.0), max_relative = 1e-12);
        assert!(at(5.5) > at(5.0) && at(5.5) < at(6.0));
    }

    #[test]
    fn equal_years_have_a_last_part_only_where_there_is_one() {
        assert_eq!(equal_years(10.0, 2.0).len(), 2);
        assert_eq!(equal_years(10.0, 2.5)[2], CashFlow { years: 2.5, amount: 5.0 });
        assert_eq!(equal_years(10.0, 0.0), []);
    }

    #[test]
    fn nothing_is_paid_back_where_nothing_was_spent_or_too_little_comes_in() {
        assert_eq!(payback_time(&yearly(&[0.0, 5.0]), 0.1), Some(0.0));
        assert_eq!(payback_time(&yearly(&[-10.0, 5.0, 4.0]), 0.0), None);
        assert_eq!(payback_time(&yearly(&[0.0, -5.0, 10.0]), 0.0), Some(0.0));
        let late = [CashFlow { years: 0.0, amount: -10.0 }, CashFlow { years: 2.0, amount: 20.0 }];
        assert_eq!(payback_time(&late, 0.0), Some(1.0));
        assert_eq!(payback_time(&[], 0.0), None);
        assert_eq!(payback_time(&yearly(&[-10.0, 5.0, 5.0]), 0.0), Some(2.0));
        assert!(payback_time(&yearly(&[-10.0, 5.0, 5.0]), 0.01).is_none());
    }
}
