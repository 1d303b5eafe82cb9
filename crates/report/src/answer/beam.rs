//! What a beam answers.

use axlebow_beam::{BeamOutcome, Bent, Checked, Peak, PeakKind, Quantity, Reference, Vibrating};
use axlebow_units::Kind;

use super::first;
use super::phrases::{hertz, listed, place, plain, value};
use crate::ModelCard;
use crate::number::{Numbers, Shown, significant};

/// How far the beam bends and what that does to it, how it vibrates, and how near that is to what is known or expected.
pub fn beam_answer(outcome: &BeamOutcome, card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    let bent = outcome.bent.as_ref().map(|own| bending(own, n));
    let whose = if bent.is_some() { "Its" } else { "The beam's" };
    let vibrating = outcome.vibrating.as_ref().and_then(|own| vibration(own, whose));
    let checked = checks(&outcome.checks);
    let known = outcome.bent.as_ref().and_then(handbook).or_else(|| equation(outcome));
    let compared = checked.or(known);
    let mut responses = response_of_beam(outcome, n).into_iter();
    let all = match (bent.is_some(), responses.len()) {
        (true, 0) => [bent, compared, vibrating],
        (false, 0) => [vibrating, compared, None],
        (true, _) => [bent, responses.next(), responses.next().or(compared)],
        (false, _) => [responses.next(), responses.next().or(vibrating), compared],
    };
    let sentences = first(all);
    if sentences.is_empty() {
        vec!["Nothing loads the beam, and no modes were asked for.".to_owned()]
    } else {
        sentences
    }
}

/// What a moving and a shaking force do.
pub(crate) fn response_of_beam(outcome: &BeamOutcome, n: Numbers) -> Vec<String> {
    let length = |value: f64| crate::answer::phrases::value(value.abs(), Shown::Free(Kind::Length), n);
    let passage = outcome.passage.as_ref().map(|own| {
        format!(
            "At {} of the critical speed the moving force bends the beam {} times as much at {} as when it crawls, {}.",
            significant(own.speed_ratio, 3),
            significant(own.amplification(), 3),
            place(own.at, n),
            length(own.largest)
        )
    });
    let shaken = outcome.shaken.as_ref().and_then(|own| {
        let [frequency, amplitude] = own.largest()?;
        let times = significant(amplitude / own.at_rest.abs(), 3);
        Some(format!(
            "Shaken, it answers most at {}: {} at {}, {times} times as much as at rest.",
            hertz(frequency),
            length(amplitude),
            place(own.read_at, n)
        ))
    });
    passage.into_iter().chain(shaken).collect()
}

fn bending(bent: &Bent, n: Numbers) -> String {
    let peak = |kind: PeakKind| bent.peaks.iter().find(|peak| peak.kind == kind);
    let words =
        |peak: &Peak| format!("{} at {}", value(peak.value.abs(), shown(peak.kind), n), place(peak.at, n));
    let deflection = peak(PeakKind::Deflection).map_or("does not move".to_owned(), |peak| {
        format!("{} {}", if peak.value < 0.0 { "sags" } else { "rises" }, words(peak))
    });
    let strain = peak(PeakKind::Stress).or_else(|| peak(PeakKind::Moment));
    let strain = strain.map(|peak| format!("; its {} peaks at {}", peak.kind.word(), words(peak)));
    let lifted = bent.reactions.iter().filter(|reaction| !reaction.touches).count();
    let lifted = match lifted {
        0 => String::new(),
        1 => "; it does not reach one stop".to_owned(),
        count => format!("; it does not reach {count} stops"),
    };
    format!("The beam {deflection}{}{lifted}.", strain.unwrap_or_default())
}

/// How a peak is shown: beams are of any size.
fn shown(kind: PeakKind) -> Shown {
    Shown::Free(kind.measured())
}

fn vibration(vibrating: &Vibrating, whose: &str) -> Option<String> {
    let elastic = &vibrating.modes[vibrating.rigid..];
    let frequencies: Vec<String> = elastic.iter().take(3).map(|mode| hertz(mode.frequency)).collect();
    let rigid = match vibrating.rigid {
        0 => "",
        1 => " beside a rigid motion that nothing resists",
        _ => " beside two rigid motions that nothing resists",
    };
    let are = if frequencies.len() > 1 { "ies are" } else { "y is" };
    let doubt = if vibrating.complete { "" } else { "; by Sturm's count some are missing" };
    (!frequencies.is_empty())
        .then(|| format!("{whose} lowest natural frequenc{are} {}{rigid}{doubt}.", listed(&frequencies)))
}

fn checks(checks: &[Checked]) -> Option<String> {
    let missed: Vec<String> =
        checks.iter().filter(|own| !own.passed()).map(|own| plain(&own.check.name)).collect();
    match (checks, missed.as_slice()) {
        ([], _) => None,
        ([only], []) => Some(format!("It meets the expected {}.", only.check.asked.word())),
        (all, []) => Some(format!("It meets all {} expected values.", all.len())),
        (all, missed) => {
            Some(format!("{} of {} expected values missed: {}.", missed.len(), all.len(), listed(missed)))
        }
    }
}

fn handbook(bent: &Bent) -> Option<String> {
    let (form, computed) = bent.closed.as_ref()?;
    let errors = form.values.iter().zip(computed).map(|(own, computed)| (computed / own.value - 1.0).abs());
    let worst = errors.filter(|error| error.is_finite()).fold(0.0, f64::max);
    Some(format!("It is a {}, whose handbook values come out within {}.", form.title, share(worst)))
}

fn equation(outcome: &BeamOutcome) -> Option<String> {
    let closed = outcome.vibrating.as_ref()?.closed.as_ref()?;
    Some(format!("Its frequencies have a closed form, that of a {}.", closed.title))
}

/// A relative error in words.
fn share(error: f64) -> String {
    if error < 1e-9 { "rounding".to_owned() } else { format!("{} of their size", significant(error, 2)) }
}

/// What the errors of meshes are against.
pub(crate) fn basis_words(basis: Reference) -> &'static str {
    match basis {
        Reference::ClosedForm => "a closed form",
        Reference::Integrated => "exact integration (flexibility elements)",
        Reference::Extrapolated => {
            "the extrapolated limit of finer meshes, good to some 1e-8, with shear 1e-5"
        }
    }
}

/// The unit kind of a compared quantity.
pub(crate) fn convergence_kind(quantity: Quantity) -> Kind {
    match quantity {
        Quantity::LargestDeflection | Quantity::Deflection => Kind::Length,
        Quantity::Moment => Kind::Moment,
        Quantity::Frequency(_) => Kind::Frequency,
    }
}
