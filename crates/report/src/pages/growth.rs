//! The tables of cups that grow.

use axlebow_axle::{GrowthInTime, HeldWave, Side, WheelGrowth};
use axlebow_units::{Kind, show};

use super::notes::{CAMBER_SIGN, JSON, defaults, warnings};
use crate::ModelCard;
use crate::answer::growth_answer;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::page::{Block, Column, Page, Table};
use crate::subject::AxleGrowth;
use crate::words::growth::{amplified, camber_words, cups, held_words, rib_words};
use crate::words::tire::duty_words;

/// Counts in the table of one wheel end.
const MOST: usize = 10;

/// What growth is for, and what it is not.
const GROWTH: &str = "Amplification is for each millimeter of tread worn in the mean, so that no wear rate enters it; 1 or less \
    is leveled. Alone: on a hub that cannot move. In step: both wheels turning in step. Critical camber: from there on a \
    shoulder feeds on itself beside ribs that hold the tire up. Crests go so far for each millimeter worn, positive with the \
    turning. Relative numbers, no promise.";

/// What the table of a wave in time is.
const IN_TIME: &str = "Each turn rolls on what the turns before have worn off, at the mean speed, the wear of a turn \
    accelerated until it shows: tires leave the road, bearings cross their play and stops meet as on a ride. Small: by \
    eigenvalue, as above but at one speed.";

/// The wave that wins on each axle and wheel end; for a single axle the counts that grow fastest too.
pub fn growth(axles: &[AxleGrowth], card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, growth_answer(axles, card));
    page.add_table(winners(axles, n));
    page.add(Block::note(format!("{CAMBER_SIGN} {GROWTH}")));
    if let [one] = axles {
        page.add_table(counts(one, n));
        page.extend(threshold(one, n));
        if let Some(run) = &one.outcome.in_time {
            page.add_table(in_time(run, n));
            page.add(Block::note(IN_TIME));
        }
    }
    for axle in axles {
        page.extend(warnings(&axle.outcome.warnings));
    }
    page.extend(defaults(card, JSON));
    page
}

fn winners(axles: &[AxleGrowth], n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("Axle"),
        Column::words("wheel"),
        Column::shown("camber", Kind::Angle, n),
        Column::shown("critical camber", Kind::Angle, n),
        Column::plain("cups a turn"),
        Column::number("at", "Hz"),
        Column::plain("amplification per mm"),
        Column::plain("alone"),
    ]);
    if let Some(first) = axles.first() {
        table = table.with_caption(format!(
            "Over the speeds held, {}, {}",
            held_words(&first.outcome, n),
            duty_words(first.outcome.duty)
        ));
    }
    for axle in axles {
        for side in Side::BOTH {
            let wheel = axle.outcome.wheels.of(side);
            let held = wheel.winner();
            table.add_row([
                if side == Side::Left { axle.name.clone() } else { String::new() },
                side.word().to_owned(),
                n.bare(wheel.pose.camber, Kind::Angle),
                camber_words(wheel, n),
                held.count.to_string(),
                significant(held.frequency, 3),
                amplified(held.wave.rate, 1e-3),
                amplified(held.hub_held, 1e-3),
            ]);
        }
    }
    table
}

/// The counts that grow fastest on the worse wheel end, by rising count.
fn counts(axle: &AxleGrowth, n: Numbers) -> Table {
    let (side, wheel, _) = axle.worst();
    let e_fold = wheel.worn_per_distance.map_or(Shown::Deflection, |_| Shown::RoadDistance);
    let mut table = Table::new([
        Column::number("Cups", "a turn"),
        Column::number("at", "Hz"),
        Column::plain("amplification per mm"),
        Column::plain("alone"),
        Column::plain("in step"),
        Column::shown("e-fold in", e_fold, n),
        Column::words("most on the"),
        Column::plain("crests, mm"),
    ])
    .with_caption(format!("Counts that grow fastest, {} wheel end", side.word()));
    let mut fastest: Vec<&HeldWave> = wheel.held.iter().collect();
    fastest.sort_by(|a, b| b.wave.rate.total_cmp(&a.wave.rate));
    fastest.truncate(MOST);
    fastest.sort_by_key(|held| held.count);
    for held in fastest {
        table.add_row(cells(wheel, held, n));
    }
    table
}

fn cells(wheel: &WheelGrowth, held: &HeldWave, n: Numbers) -> [String; 8] {
    [
        held.count.to_string(),
        significant(held.frequency, 3),
        amplified(held.wave.rate, 1e-3),
        amplified(held.hub_held, 1e-3),
        amplified(held.in_step, 1e-3),
        e_fold(wheel, held, n),
        rib_words(wheel.leading_rib(held), wheel.tires),
        fixed(wheel.crest_shift(held), 1),
    ]
}

/// What a wave takes to grow e-fold: a distance where removals have calibrated wear, else tread worn.
fn e_fold(wheel: &WheelGrowth, held: &HeldWave, n: Numbers) -> String {
    let (length, shown) = match wheel.worn_per_distance {
        Some(_) => (wheel.distance_for_e_fold(held), Shown::RoadDistance),
        None => (held.wave.worn_for_e_fold(), Shown::Deflection),
    };
    length.map_or("-".to_owned(), |length| n.bare(length, shown))
}

/// The wave that wins at each height, its growth in small motions first.
fn in_time(run: &GrowthInTime, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::shown("Crests", Shown::Deflection, n),
        Column::plain("amplification per mm"),
        Column::plain("tire off the road, %"),
        Column::plain("bearing loose, %"),
        Column::shown("hub, up and down", Shown::Deflection, n),
    ])
    .with_caption(format!("{} a turn in time, {} wheel end", cups(run.count), run.side.word()));
    let none = || "-".to_owned();
    table.add_row(["small".to_owned(), amplified(run.small, 1e-3), none(), none(), none()]);
    for wave in &run.waves {
        table.add_row([
            n.bare(wave.height, Shown::Deflection),
            amplified(wave.rate, 1e-3),
            fixed(100.0 * wave.off_road, 1),
            wave.bearing_loose.map_or_else(none, |share| fixed(100.0 * share, 1)),
            n.bare(wave.hub_rise, Shown::Deflection),
        ]);
    }
    table
}

fn threshold(axle: &AxleGrowth, n: Numbers) -> Option<Block> {
    let damping = axle.outcome.threshold_damping?;
    let text = if damping == 0.0 {
        "No damper is needed against waves that grow.".to_owned()
    } else {
        let damping = show(damping, Kind::Damping, n.system);
        format!("With {damping} at each seat, alike in bump and rebound, no wave grows.")
    };
    Some(Block::note(text))
}
