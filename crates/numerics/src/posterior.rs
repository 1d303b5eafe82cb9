//! Shares of hypotheses, and what a reading would tell of them.

/// Logarithm of a sum of exponentials, without overflow; minus infinity for none.
pub fn log_sum_exp(logs: &[f64]) -> f64 {
    let largest = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if largest == f64::NEG_INFINITY {
        return largest;
    }
    largest + logs.iter().map(|log| (log - largest).exp()).sum::<f64>().ln()
}

/// Shares that sum to one from logarithms of weights (Bayes: prior by likelihood); alike where all are impossible.
pub fn posterior(log_weights: &[f64]) -> Vec<f64> {
    let total = log_sum_exp(log_weights);
    if total == f64::NEG_INFINITY {
        return vec![1.0 / log_weights.len() as f64; log_weights.len()];
    }
    log_weights.iter().map(|log| (log - total).exp()).collect()
}

/// Entropy of shares, nats: `−Σ p ln p`.
pub fn entropy(shares: &[f64]) -> f64 {
    shares.iter().filter(|share| **share > 0.0).map(|share| -share * share.ln()).sum()
}

/// How much a reading is expected to lower the entropy of hypotheses, nats: `Σ_h p_h Σ_r q(r|h) ln (q(r|h)/q(r))`, the mutual
/// information of hypothesis and reading.
///
/// Arguments: `shares`, p, of the hypotheses; `predicted`, q, for each of them the shares of what the reading may say.
///
/// Source: D. V. Lindley, Annals of Mathematical Statistics 27 (1956) 986-1005 (from memory).
pub fn mutual_information(shares: &[f64], predicted: &[Vec<f64>]) -> f64 {
    let outcomes = predicted.first().map_or(0, Vec::len);
    let of_outcome = |outcome: usize| -> f64 {
        let all: f64 = shares.iter().zip(predicted).map(|(share, own)| share * own[outcome]).sum();
        let gain = |(share, own): (&f64, &Vec<f64>)| match own[outcome] > 0.0 && *share > 0.0 {
            true => share * own[outcome] * (own[outcome] / all).ln(),
            false => 0.0,
        };
        shares.iter().zip(predicted).map(gain).sum()
    };
    (0..outcomes).map(of_outcome).sum::<f64>().max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_of_exponentials_do_not_overflow() {
        assert!((log_sum_exp(&[1000.0, 1000.0]) - (1000.0 + 2.0_f64.ln())).abs() < 1e-12);
        assert_eq!(log_sum_exp(&[]), f64::NEG_INFINITY);
        assert_eq!(posterior(&[f64::NEG_INFINITY; 4]), vec![0.25; 4]);
    }

    /// By hand: weights 1 to 3.
    #[test]
    fn shares_are_weights_over_their_sum() {
        let shares = posterior(&[0.0, 3.0_f64.ln()]);
        assert!((shares[0] - 0.25).abs() < 1e-15 && (shares[1] - 0.75).abs() < 1e-15);
    }

    /// Closed forms: a reading that tells two equal hypotheses apart gains ln 2; one that errs in a share e of cases the capacity
    /// of the binary symmetric channel, ln 2 + e ln e + (1 − e) ln(1 − e); one that says the same of all nothing.
    #[test]
    fn information_matches_closed_forms() {
        let gain = |e: f64| mutual_information(&[0.5, 0.5], &[vec![1.0 - e, e], vec![e, 1.0 - e]]);
        assert!((gain(0.0) - 2.0_f64.ln()).abs() < 1e-15);
        let capacity = 2.0_f64.ln() + 0.1 * 0.1_f64.ln() + 0.9 * 0.9_f64.ln();
        assert!((gain(0.1) - capacity).abs() < 1e-15);
        assert!(gain(0.5).abs() < 1e-15);
        assert!((entropy(&[0.5, 0.25, 0.25]) - 1.5 * 2.0_f64.ln()).abs() < 1e-15);
        // Uneven shares: a full reading gains their entropy.
        let told = mutual_information(&[0.2, 0.8], &[vec![1.0, 0.0], vec![0.0, 1.0]]);
        assert!((told - entropy(&[0.2, 0.8])).abs() < 1e-15);
    }
}
