//! What an uncertainty says, in the document of a study.

use axlebow_study::{Estimated, Index, StudyOutcome, Uncertain, Uncertainty, VariantUncertainty};
use schemars::JsonSchema;
use serde::Serialize;

/// What an uncertainty study says.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct UncertaintyEntry {
    /// Coverage of the intervals.
    pub confidence: f64,
    /// Independent samples that intervals are told from; 1 where every design is independent.
    pub replicates: usize,
    /// Designs of each row of the sample: 1, or with indices two points, first and last, and those between.
    pub designs_of_row: usize,
    /// Each variant.
    pub variants: Vec<VariantUncertaintyEntry>,
}

/// What an uncertainty study says of a variant.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct VariantUncertaintyEntry {
    /// Name of the variant.
    pub variant: String,
    /// Designs of the sample; without those that only tell indices.
    pub designs: usize,
    /// Of these, how many have no result.
    pub failed: usize,
    /// What is said of each result.
    pub results: Vec<UncertainEntry>,
    /// Share of designs that meets each limit, in the order of `limits`.
    pub limits: Vec<EstimatedEntry>,
    /// Share of designs that meets all limits; `null` without any.
    pub all_limits: Option<EstimatedEntry>,
}

/// What is said of a result.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct UncertainEntry {
    /// Its key in results, with the SI unit.
    pub key: String,
    /// Name of its ride; `null` for the static load case.
    pub ride: Option<String>,
    /// Designs of the sample that have it.
    pub designs: usize,
    /// Mean.
    pub mean: EstimatedEntry,
    /// Standard deviation.
    pub deviation: EstimatedEntry,
    /// Percentiles.
    pub percentiles: Vec<PercentileEntry>,
    /// Its variance among the varied keys, in their order; empty where that was not asked or it does not vary.
    pub variance_indices: Vec<IndexEntry>,
}

/// An estimate in the unit of its result.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct EstimatedEntry {
    /// The estimate.
    pub value: f64,
    /// Its interval; `null` where the sample cannot tell.
    pub interval: Option<[f64; 2]>,
}

/// A percentile.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PercentileEntry {
    /// Share of designs below it.
    pub share: f64,
    /// The value.
    #[serde(flatten)]
    pub estimated: EstimatedEntry,
}

/// How much of a result's variance a varied key makes.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct IndexEntry {
    /// Path of the key, or name of the choice.
    pub path: String,
    /// By itself.
    pub first_order: EstimatedEntry,
    /// By itself and together with others.
    pub total: EstimatedEntry,
}

impl UncertaintyEntry {
    /// The entry of an outcome, if it is of an uncertainty.
    pub fn of(outcome: &StudyOutcome) -> Option<Self> {
        let Uncertainty { confidence, replicates, designs_of_row, variants, .. } =
            outcome.uncertainty.as_ref()?;
        let variants = variants.iter().zip(&outcome.variants);
        Some(Self {
            confidence: *confidence,
            replicates: *replicates,
            designs_of_row: *designs_of_row,
            variants: variants.map(|(own, name)| variant(own, (name, outcome))).collect(),
        })
    }
}

fn variant(own: &VariantUncertainty, (name, outcome): (&str, &StudyOutcome)) -> VariantUncertaintyEntry {
    VariantUncertaintyEntry {
        variant: name.to_owned(),
        designs: own.designs,
        failed: own.failed,
        results: own.results.iter().map(|result| uncertain(result, outcome)).collect(),
        limits: own.limits.iter().map(estimated).collect(),
        all_limits: own.all_limits.as_ref().map(estimated),
    }
}

fn uncertain(own: &Uncertain, outcome: &StudyOutcome) -> UncertainEntry {
    let shares = outcome.uncertainty.iter().flat_map(|told| &told.shares);
    let percentile =
        |(share, own): (&f64, &Estimated)| PercentileEntry { share: *share, estimated: estimated(own) };
    let index = |(own, varied): (&Index, &axlebow_study::Varied)| IndexEntry {
        path: varied.path.clone(),
        first_order: estimated(&own.first),
        total: estimated(&own.total),
    };
    UncertainEntry {
        key: own.measure.key(),
        ride: own.measure.ride.and_then(|ride| outcome.rides.get(ride)).map(|ride| ride.name.clone()),
        designs: own.count,
        mean: estimated(&own.mean),
        deviation: estimated(&own.deviation),
        percentiles: shares.zip(&own.percentiles).map(percentile).collect(),
        variance_indices: own.indices.iter().zip(&outcome.varied).map(index).collect(),
    }
}

fn estimated(own: &Estimated) -> EstimatedEntry {
    EstimatedEntry { value: own.value, interval: own.interval }
}
