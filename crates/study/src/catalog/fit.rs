//! Results of a fit to readings.

use axlebow_axle::Ground;
use axlebow_results::{Field, Own, Part, Record, Text, part};

use crate::{Estimate, FitOutcome, FittedReading, FittedUnknown, FurtherReading, Scale};

impl Record for FitOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("unknowns", "The unknowns.", &Part(|fit: &Self| &fit.unknowns)),
        part(
            "covariance",
            "Covariance by the scatter of the readings; the entry of two unknowns has the product of their units; null \
             where the readings do not determine both.",
            &Part(|fit: &Self| &fit.estimate.covariance),
        ),
        part(
            "correlation",
            "Correlation; null where the readings do not determine both.",
            &Part(|fit: &Self| &fit.estimate.correlation),
        ),
        part("readings", "The readings beside the model.", &Part(|fit: &Self| &fit.readings)),
        part(
            "chi-squared",
            "Sum of squares of residuals, each over its standard error.",
            &Own(|fit: &Self| fit.estimate.chi_squared),
        ),
        part(
            "degrees-of-freedom",
            "Readings less unknowns.",
            &Own(|fit: &Self| fit.estimate.degrees_of_freedom),
        ),
        part(
            "chi-squared-per-degree",
            "Chi squared for each degree of freedom; null without one.",
            &Own(|fit: &Self| chi_squared_per_degree(&fit.estimate)),
        ),
        part(
            "chance-of-more",
            "Probability that readings with such errors scatter more; null without a degree of freedom.",
            &Part(|fit: &Self| &fit.estimate.chance),
        ),
        part(
            "conditioning",
            "Least over greatest singular value of the Jacobian of weighted residuals, its columns made of length 1.",
            &Own(|fit: &Self| fit.estimate.conditioning),
        ),
        part("steps", "Steps of the search.", &Own(|fit: &Self| fit.estimate.steps)),
        part(
            "converged",
            "Whether the search ended because nothing was left to gain.",
            &Own(|fit: &Self| fit.estimate.converged),
        ),
        part(
            "further",
            "Further readings that would lower the worst standard error most (E-optimal), best first.",
            &Part(|fit: &Self| &fit.further),
        ),
    ];
}

fn chi_squared_per_degree(estimate: &Estimate) -> Option<f64> {
    let degrees = estimate.degrees_of_freedom;
    (degrees > 0).then(|| estimate.chi_squared / degrees as f64)
}

impl Record for FittedUnknown {
    const FIELDS: &'static [Field<Self>] = &[
        part("path", "Path of the key in the model file.", &Text(|own: &Self| &own.unknown.path)),
        part(
            "unit",
            "SI unit of its values; empty for a plain number.",
            &Text(|own: &Self| own.unknown.kind.si()),
        ),
        part(
            "scale",
            "The scale on which it was varied: `logarithm`, `share` of the way between its bounds, or `plain`.",
            &Text(|own: &Self| match own.unknown.scale {
                Scale::Logarithm => "logarithm",
                Scale::Share { .. } => "share",
                Scale::Plain { .. } => "plain",
            }),
        ),
        part("initial", "Value in the model file.", &Own(|own: &Self| own.unknown.start)),
        part("value", "Fitted value.", &Own(|own: &Self| own.value)),
        part(
            "interval",
            "95 % interval; null where the readings do not determine it.",
            &Part(|own: &Self| &own.interval),
        ),
        part(
            "stated-error",
            "Standard error that the stated errors of the readings alone would make.",
            &Part(|own: &Self| &own.stated_error),
        ),
    ];
}

impl Record for FittedReading {
    const FIELDS: &'static [Field<Self>] = &[
        part("line", "Line of the readings file, from 1.", &Own(|own: &Self| own.reading.line)),
        part(
            "quantity",
            "What was read: `camber`, `toe`, `bow`, `natural-frequency` or `tread-depth`.",
            &Text(|own: &Self| own.reading.quantity.word()),
        ),
        part(
            "of",
            "Of what: a side, `middle`, or the name of a mode.",
            &Text(|own: &Self| own.reading.quantity.of()),
        ),
        part("load", "Load case, or a stated load.", &Text(|own: &Self| &own.reading.load.name)),
        part("ground", "`standing` or `rolling`.", &Text(|own: &Self| ground(own.reading.ground))),
        part("unit", "SI unit of the values.", &Text(|own: &Self| own.reading.quantity.kind().si())),
        part("read", "What was read.", &Own(|own: &Self| own.reading.value)),
        part("standard-error", "Its standard error.", &Own(|own: &Self| own.reading.standard_error)),
        part("initial", "What the model said before.", &Own(|own: &Self| own.first)),
        part("fitted", "What the fitted model says.", &Own(|own: &Self| own.fitted)),
        part("residual", "What was read less what the fitted model says.", &Own(|own: &Self| own.residual())),
        part(
            "residual-in-errors",
            "The same over the standard error.",
            &Own(|own: &Self| own.in_standard_errors()),
        ),
    ];
}

impl Record for FurtherReading {
    const FIELDS: &'static [Field<Self>] = &[
        part("quantity", "What to read.", &Text(|own: &Self| own.reading.quantity.word())),
        part("of", "Of what.", &Text(|own: &Self| own.reading.quantity.of())),
        part("load", "Load case.", &Text(|own: &Self| &own.reading.load.name)),
        part("ground", "`standing` or `rolling`.", &Text(|own: &Self| ground(own.reading.ground))),
        part("unit", "SI unit of the standard error.", &Text(|own: &Self| own.reading.quantity.kind().si())),
        part(
            "standard-error",
            "The standard error that is counted on.",
            &Own(|own: &Self| own.reading.standard_error),
        ),
        part(
            "leaves",
            "What it leaves of the worst standard error; 0 where that was not determined at all.",
            &Own(|own: &Self| own.leaves),
        ),
    ];
}

fn ground(ground: Ground) -> &'static str {
    match ground {
        Ground::Standing => "standing",
        Ground::Rolling => "rolling",
    }
}
