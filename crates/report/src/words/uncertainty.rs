//! What an uncertainty says, in words.

use axlebow_study::{Estimated, StudyOutcome, Uncertain, Uncertainty, Varied};

use crate::number::{Numbers, fixed};
use crate::words::study::{StudyWords, varied_words};

/// A sentence for the first result of each variant, then how sure it all is.
pub(crate) fn uncertainty_findings(words: &StudyWords<'_>) -> Vec<String> {
    let Some(told) = &words.outcome.uncertainty else { return Vec::new() };
    let several = told.variants.len() > 1;
    let leads = told.variants.iter().zip(&words.outcome.variants).filter_map(|(variant, name)| {
        let own = variant.results.first()?;
        let of = if several { format!("{name}: ") } else { String::new() };
        Some(format!("{of}{}", lead(words, (told, own))))
    });
    leads.chain([method(words.outcome, told)]).chain(unbalanced(told)).collect()
}

/// Where a result lies, and what makes most of its variance.
fn lead(words: &StudyWords<'_>, (told, own): (&Uncertainty, &Uncertain)) -> String {
    let full = |value: f64| words.told(&own.measure, value);
    let mut text = format!("The mean {} is {}", words.measure(&own.measure), full(own.mean.value));
    if let (Some(first), Some(last), [low, .., high]) =
        (own.percentiles.first(), own.percentiles.last(), told.shares.as_slice())
    {
        let share = fixed(100.0 * (high - low), 1);
        let share = share.trim_end_matches(".0");
        text += &format!("; {share} of 100 axles lie from {} to {}", full(first.value), full(last.value));
    }
    let most = own.indices.iter().zip(&words.outcome.varied);
    let most = most.max_by(|one, other| one.0.total.value.total_cmp(&other.0.total.value));
    match most {
        Some((index, varied)) => format!(
            "{text}. Of all keys {} makes most of the variance: first-order index {}, total-effect index {}.",
            varied_words(varied),
            percent(index.first.value),
            percent(index.total.value)
        ),
        None => text + ".",
    }
}

/// How designs were drawn and what the intervals rest on.
fn method(outcome: &StudyOutcome, told: &Uncertainty) -> String {
    let all = outcome.designs();
    let designs = told.variants.first().map_or(0, |variant| variant.designs);
    let sure = percent(told.confidence);
    let each = match told.replicates {
        1 => "intervals by Student's t, by the fourth moment and between order statistics".to_owned(),
        count => format!("intervals by Student's t from how {count} independent samples differ"),
    };
    let per = if outcome.variants.len() > 1 { " of each variant" } else { "" };
    format!("{designs} designs{per} of {all} in all; {each}: their coverage is {sure}.")
}

fn unbalanced(told: &Uncertainty) -> Option<String> {
    let own = told.rows_of_replicate;
    told.is_unbalanced.then(|| {
        format!(
            "Sobol's sequence is most even at a power of two: {} or {} designs are better than {}.",
            told.replicates * (own.next_power_of_two() / 2),
            told.replicates * own.next_power_of_two(),
            told.replicates * own
        )
    })
}

/// A share in words, such as "62 %" or "0.4 %".
pub(crate) fn percent(share: f64) -> String {
    let percent = 100.0 * share;
    let decimals = if percent.abs() < 1.0 || percent.abs() > 99.0 { 1 } else { 0 };
    let text = fixed(percent, decimals);
    format!("{} %", text.trim_end_matches(".0"))
}

/// Half of an interval; a dash where there is none.
pub(crate) fn half_width(estimated: &Estimated, written: impl Fn([f64; 2]) -> String) -> String {
    estimated.interval.map_or("-".to_owned(), |interval| format!("±{}", written(interval)))
}

/// Each limit with the share of designs that meets it.
pub(crate) fn limit_shares(words: &StudyWords<'_>, variant: usize) -> Vec<(String, Estimated)> {
    let outcome = words.outcome;
    let Some(own) = outcome.uncertainty.as_ref().and_then(|told| told.variants.get(variant)) else {
        return Vec::new();
    };
    let each =
        outcome.limits.iter().map(|limit| limit.words(words.numbers.system)).zip(own.limits.iter().copied());
    let all = own.all_limits.filter(|_| outcome.limits.len() > 1);
    each.chain(all.map(|share| ("all of them".to_owned(), share))).collect()
}

/// What a varied key is drawn from, in words.
pub(crate) fn drawn(varied: &Varied, numbers: Numbers) -> String {
    use axlebow_study::Distribution::{LogUniform, Lognormal, Normal, Triangular, Uniform};
    let show = |value: f64| numbers.short(value, varied.kind);
    let cut = |range: [f64; 2]| match range.map(f64::is_finite) {
        [true, true] => format!(", from {} to {}", show(range[0]), show(range[1])),
        [true, false] => format!(", from {}", show(range[0])),
        [false, true] => format!(", up to {}", show(range[1])),
        _ => String::new(),
    };
    match &varied.distribution {
        Some(Normal { mean, deviation, range }) => {
            format!("normal, {} ± {}{}", show(*mean), show(*deviation), cut(*range))
        }
        Some(Lognormal { mean, deviation, range }) => {
            format!("lognormal, {} ± {}{}", show(*mean), show(*deviation), cut(*range))
        }
        Some(Uniform { from, to }) => format!("uniform from {} to {}", show(*from), show(*to)),
        Some(LogUniform { from, to }) => {
            format!("uniform in the logarithm from {} to {}", show(*from), show(*to))
        }
        Some(Triangular { from, likely, to }) => {
            format!("triangular, {} to {}, most likely {}", show(*from), show(*to), show(*likely))
        }
        None if varied.choices.is_empty() => format!("{} values, all alike", varied.values.len()),
        None => format!("{} choices, all alike", varied.choices.len()),
    }
}
