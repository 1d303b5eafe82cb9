//! What a run of cups that grow answers.

use axlebow_units::{Kind, show};

use super::first;
use super::phrases::{angle, percent, size};
use crate::number::{Numbers, Shown};
use crate::subject::AxleGrowth;
use crate::words::growth::{amplified, cups, held_words, mode_near, rib_words, whose};
use crate::words::tire::duty_words;
use crate::{ModelCard, number};

/// The count that wins over the speeds held and how fast it grows, how much of that the axle's motion does, and where the
/// camber stands against the critical one; of several axles, the worst and the best.
pub fn growth_answer(axles: &[AxleGrowth], card: &ModelCard) -> Vec<String> {
    let n = Numbers { system: card.system };
    match axles {
        [] => Vec::new(),
        [one] => first([Some(winner(one, n)), by_motion(one, n), camber(one, n)]),
        several => first([Some(beside(several, n)), by_motion(worst(several), n), camber(worst(several), n)]),
    }
}

fn rate(axle: &AxleGrowth) -> f64 {
    axle.worst().2.wave.rate
}

/// The axle whose wave grows fastest.
fn worst(axles: &[AxleGrowth]) -> &AxleGrowth {
    let faster = |a, b| if rate(b) > rate(a) { b } else { a };
    axles.iter().reduce(faster).unwrap_or(&axles[0])
}

fn winner(axle: &AxleGrowth, n: Numbers) -> String {
    let (side, wheel, held) = axle.worst();
    let speeds = held_words(&axle.outcome, n);
    let counts =
        [axle.outcome.counts.first(), axle.outcome.counts.last()].map(|count| count.copied().unwrap_or(0));
    if held.wave.rate <= 0.0 {
        let ([least, most], duty) = (counts, duty_words(axle.outcome.duty));
        return format!(
            "At {speeds} {duty} no wave of {least} to {most} cups grows: the tires level them all."
        );
    }
    let cups = format!("{} a turn grow{}", cups(held.count), if held.count == 1 { "s" } else { "" });
    let e_fold = held
        .wave
        .worn_for_e_fold()
        .map_or(String::new(), |worn| format!(", e-fold in {}", size(worn, Shown::Deflection, n)));
    let far = wheel.distance_for_e_fold(held).map_or(String::new(), |far| format!(" or {}", n.distance(far)));
    format!(
        "At {speeds} {} {cups} fastest, on the {} ({}): {} times for each millimeter of tread worn{e_fold}{far}.",
        duty_words(axle.outcome.duty),
        rib_words(wheel.leading_rib(held), wheel.tires),
        whose(&axle.outcome, side),
        amplified(held.wave.rate, 1e-3)
    )
}

fn by_motion(axle: &AxleGrowth, n: Numbers) -> Option<String> {
    let (_, _, held) = axle.worst();
    if held.wave.rate <= 0.0 {
        return None;
    }
    let share = held.hub_held / held.wave.rate;
    let near =
        mode_near(&axle.outcome, held.frequency).map_or(String::new(), |mode| format!(" (near {mode})"));
    let frequency = number::significant(held.frequency, 3);
    if share <= 0.0 {
        let damping = axle.outcome.threshold_damping.map_or(String::new(), |damping| {
            format!("; {} at each seat would end it", show(damping, Kind::Damping, n.system))
        });
        return Some(format!(
            "The axle's motion at {frequency} Hz{near} makes it grow; on an immovable hub the tire would level it{damping}."
        ));
    }
    let rest = if share >= 1.0 {
        "and the axle's motion adds nothing".to_owned()
    } else {
        format!("and the axle's motion at {frequency} Hz{near} adds {}", percent(1.0 - share))
    };
    Some(format!(
        "The tire does {} of that by itself, as a shoulder that drags wears less where it is higher, {rest}; no damper ends what \
         the tire does.",
        percent(share.min(1.0))
    ))
}

fn camber(axle: &AxleGrowth, n: Numbers) -> Option<String> {
    let (_, wheel, _) = axle.worst();
    let lean = wheel.pose.camber;
    let way = if lean < 0.0 { "in" } else { "out" };
    if wheel.critical.is_upright() {
        return Some("A shoulder of this tire on this duty feeds on itself even upright.".to_owned());
    }
    let Some(critical) = wheel.critical_camber() else {
        return Some(
            "No camber of an axle makes a shoulder of this tire feed on itself on this duty.".to_owned(),
        );
    };
    let margin = lean.abs() - critical.abs();
    let stands = if margin > 0.0 { "beyond" } else { "short of" };
    Some(format!(
        "By itself a shoulder feeds on itself from {} of lean {way}; this one leans {}, {} {stands} that.",
        angle(critical, n),
        angle(lean, n),
        angle(margin, n)
    ))
}

fn beside(axles: &[AxleGrowth], n: Numbers) -> String {
    let slower = |a, b| if rate(b) < rate(a) { b } else { a };
    let (worst, best) = (worst(axles), axles.iter().reduce(slower).unwrap_or(&axles[0]));
    let words = |axle: &AxleGrowth| {
        let held = axle.worst().2;
        let times = amplified(held.wave.rate, 1e-3);
        if held.wave.rate <= 0.0 {
            "no wave grows".to_owned()
        } else {
            format!("{times} times at {} a turn", held.count)
        }
    };
    format!(
        "For each millimeter of tread worn at {} {} waves grow most on {} ({}) and least on {} ({}).",
        held_words(&worst.outcome, n),
        duty_words(worst.outcome.duty),
        worst.name,
        words(worst),
        best.name,
        words(best)
    )
}
