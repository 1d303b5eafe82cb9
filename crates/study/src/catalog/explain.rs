//! Results of explaining a worn axle.

use axlebow_results::{Field, Own, Part, Record, Text, number, part};
use axlebow_units::Kind;

use crate::explain::{
    Discrepancy, EvidenceWeight, ExplainOutcome, NextCheck, RankedCause, RankedPair, SeenRib, Size, SizeOf,
    Verdict,
};

impl Record for ExplainOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("case", "What the case is called.", &Text(|own: &Self| &own.case)),
        part("position", "Where the axle is in the vehicle; null unsaid.", &Part(|own: &Self| &own.position)),
        part(
            "verdict",
            "`leads`: one cause leads; `cannot-tell`: none is probable enough; `nothing-fits`: the readings lie far from what every \
             cause predicts.",
            &Text(|own: &Self| match own.verdict {
                Verdict::Leads => "leads",
                Verdict::CannotTell => "cannot-tell",
                Verdict::NothingFits => "nothing-fits",
            }),
        ),
        part("causes", "The causes, the most probable first.", &Part(|own: &Self| &own.causes)),
        part("pairs", "Two causes at once, the most probable first.", &Part(|own: &Self| &own.pairs)),
        part("ribs", "Ribs that were measured.", &Part(|own: &Self| &own.ribs)),
        part("checks", "What to check next, what tells most first.", &Part(|own: &Self| &own.checks)),
        part("entropy", "Entropy of the causes after the readings, nats.", &Own(|own: &Self| own.entropy)),
        part(
            "discrepancy",
            "What the tire face leaves out, in the logarithm of wear.",
            &Part(|own: &Self| &own.discrepancy),
        ),
    ];
}

impl Record for RankedPair {
    const FIELDS: &'static [Field<Self>] = &[
        part("first", "Word of the more probable cause.", &Text(|own: &Self| own.causes[0].word())),
        part("second", "Word of the other one.", &Text(|own: &Self| own.causes[1].word())),
        part(
            "posterior",
            "Probability after the readings among single causes and the pairs that were tried.",
            &Own(|own: &Self| own.posterior),
        ),
        part(
            "log-gain",
            "Logarithm of how probable the readings are with both over how probable with the better one alone.",
            &Own(|own: &Self| own.log_gain),
        ),
        part(
            "fit",
            "Probability that readings lie as far from where both predict them as these, at their best sizes.",
            &Own(|own: &Self| own.fit),
        ),
    ];
}

impl Record for RankedCause {
    const FIELDS: &'static [Field<Self>] = &[
        part("cause", "Its word.", &Text(|own: &Self| own.cause.word())),
        part("prior", "Probability before the readings.", &Own(|own: &Self| own.prior)),
        part("posterior", "Probability after them.", &Own(|own: &Self| own.posterior)),
        part(
            "log-likelihood",
            "Logarithm of the likelihood less that of the likeliest cause.",
            &Own(|own: &Self| own.log_likelihood),
        ),
        part(
            "fit",
            "Probability that readings lie as far from where it predicts them as these, at its best size.",
            &Own(|own: &Self| own.fit),
        ),
        part("place", "Where it would be.", &Own(|own: &Self| own.place.words())),
        part("size", "How large it would be there.", &Part(|own: &Self| &own.size)),
        part("evidence", "What each kind of reading says of it.", &Part(|own: &Self| &own.evidence)),
    ];
}

/// The size where it is of a kind; a ratio is that to the file or the rating.
fn sized(own: &Size, of: SizeOf) -> Option<[f64; 2]> {
    (own.of == of).then_some(match of {
        SizeOf::LogRatio => [own.mean.exp(), own.mean.exp() * own.deviation],
        _ => [own.mean, own.deviation],
    })
}

impl Record for Size {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "angle",
            Kind::Angle,
            "The angle; null where it is none.",
            &Own(|own: &Self| sized(own, SizeOf::Angle).map(|size| size[0])),
        ),
        number(
            "angle-deviation",
            Kind::Angle,
            "Its standard deviation.",
            &Own(|own: &Self| sized(own, SizeOf::Angle).map(|size| size[1])),
        ),
        number(
            "length",
            Kind::Length,
            "The length; null where it is none.",
            &Own(|own: &Self| sized(own, SizeOf::Length).map(|size| size[0])),
        ),
        number(
            "length-deviation",
            Kind::Length,
            "Its standard deviation.",
            &Own(|own: &Self| sized(own, SizeOf::Length).map(|size| size[1])),
        ),
        part(
            "ratio",
            "The value over that of the axle's file or rating; null where it is none.",
            &Own(|own: &Self| sized(own, SizeOf::LogRatio).map(|size| size[0])),
        ),
        part(
            "ratio-deviation",
            "Its standard deviation.",
            &Own(|own: &Self| sized(own, SizeOf::LogRatio).map(|size| size[1])),
        ),
    ];
}

impl Record for EvidenceWeight {
    const FIELDS: &'static [Field<Self>] = &[
        part("reading", "What was read.", &Own(|own: &Self| own.evidence.words())),
        part(
            "log-ratio",
            "Logarithm of how probable it is with the cause over how probable without, all other readings known.",
            &Own(|own: &Self| own.log_ratio),
        ),
    ];
}

impl Record for SeenRib {
    const FIELDS: &'static [Field<Self>] = &[
        part("side", "`left` or `right`.", &Text(|own: &Self| own.side.word())),
        part("tire", "`single`, `outer` or `inner`.", &Text(|own: &Self| own.slot.word())),
        part("rib", "Number from the inner shoulder, from 1.", &Own(|own: &Self| own.rib)),
        number("seen", Kind::Length, "Depth that was measured.", &Own(|own: &Self| own.seen)),
        number(
            "predicted",
            Kind::Length,
            "Depth that the most probable cause predicts.",
            &Own(|own: &Self| own.predicted),
        ),
    ];
}

impl Record for NextCheck {
    const FIELDS: &'static [Field<Self>] = &[
        part("reading", "What to read.", &Own(|own: &Self| own.evidence.words())),
        part("information", "Expected fall of the entropy, nats.", &Own(|own: &Self| own.information)),
    ];
}

impl Record for Discrepancy {
    const FIELDS: &'static [Field<Self>] = &[
        part("rib", "Standard deviation of a rib.", &Own(|own: &Self| own.rib)),
        part("tire", "Standard deviation that all ribs of a tire share.", &Own(|own: &Self| own.tire)),
    ];
}
