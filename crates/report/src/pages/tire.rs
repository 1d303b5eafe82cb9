//! The tables of tire faces.

use axlebow_axle::tread::{TireWear, Worn};
use axlebow_axle::{PrintedWave, Side, TireCase, TireOutcome, TireRide, TireRideOutcome};
use axlebow_units::{Kind, show};

use super::cups::explanations;
use super::notes::{JSON, defaults, warnings};
use crate::ModelCard;
use crate::answer::tire_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};
use crate::words::tire::{far, index, tire_name, worn_so_far};

/// For each load case every tire with its load, its shoulders and their wear; the ribs of the first case; and, where a
/// ride was driven, wear along it, the wave round the most worn tire and its possible sources.
pub fn tire(outcome: &TireOutcome, ride: Option<&TireRideOutcome>, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, tire_answer(outcome, ride, card));
    page.add_table(tires(outcome, n));
    page.extend(outcome.cases.first().map(|case| Block::Table(ribs(case, n))));
    page.add(Block::note(format!("Duty: {}. {WEAR}", outcome.duty.word())));
    page.extend(ride.into_iter().flat_map(|ride| over(ride, n)));
    page.extend(defaults(card, JSON));
    page.extend(warnings(&outcome.warnings));
    page
}

/// What the numbers of wear are relative to.
const WEAR: &str = "Camber is negative where tops lean in, toe positive where it is toe-in. Wear is over that of the same rib \
    (mean: of all ribs) were the same tires upright, straight, matched and at their rated inflation under the same load and \
    duty; the forces of the usual duties are assumed. Relative numbers, no promise of mileage.";

/// Heading of the columns of shoulders.
const SHOULDERS: [&str; 3] =
    ["load, inner over outer rib", "wear of inner shoulder", "wear of outer shoulder"];

fn tires(outcome: &TireOutcome, n: Numbers) -> Table {
    let words = ["Load case", "wheel", "tire"].map(Column::words);
    let pose = [
        ("camber", Shown::Usual(Kind::Angle)),
        ("toe", Shown::Usual(Kind::Angle)),
        ("load", Shown::Usual(Kind::Force)),
    ];
    let pose = pose.map(|(name, shown)| Column::shown(name, shown, n));
    let share = [Column::number("share", "%")];
    let columns = words.into_iter().chain(pose).chain(share).chain(SHOULDERS.map(Column::plain));
    let mut table = Table::new(columns);
    for case in &outcome.cases {
        for side in Side::BOTH {
            let face = case.wheels.of(side);
            for (number, tire) in face.worn.tires.iter().enumerate() {
                let first = side == Side::Left && number == 0;
                let once = |text: &str, shown: bool| if shown { text.to_owned() } else { String::new() };
                let pose = [face.pose.camber, face.pose.toe]
                    .map(|angle| once(&n.bare(angle, Kind::Angle), number == 0));
                let head = [once(&case.name, first), once(side.word(), number == 0)];
                let name = tire_name(number, face.worn.tires.len()).to_owned();
                let load = [n.bare(tire.load, Kind::Force), fixed(100.0 * tire.share, 1)];
                table.add_row(head.into_iter().chain([name]).chain(pose).chain(load).chain(shoulders(tire)));
            }
        }
    }
    table
}

fn shoulders(tire: &TireWear) -> [String; 3] {
    [
        index(tire.shoulder_load_ratio()),
        index(tire.inner_shoulder().against_upright),
        index(tire.outer_shoulder().against_upright),
    ]
}

fn ribs(case: &TireCase, n: Numbers) -> Table {
    let is_calibrated = case.wheels.left.worn.tires[0].ribs[0].worn_per_distance.is_some();
    let depth = is_calibrated.then(|| Column::shown(format!("worn in {}", far(n)), Shown::Deflection, n));
    let columns = [
        Column::words("Wheel"),
        Column::words("tire"),
        Column::words("rib, from the inside"),
        Column::shown("outboard", Shown::Place, n),
        Column::shown("load", Kind::Force, n),
        Column::number("slip forward", "per mille"),
        Column::number("slip aside", "per mille"),
        Column::number("scuff", "J/m"),
        Column::plain("wear over mean"),
        Column::plain("over the same rib"),
    ];
    let columns = columns.into_iter().chain(depth);
    let mut table = Table::new(columns).with_caption(format!("Ribs, {}", case.name));
    let [left, right] = Side::BOTH.map(|side| rib_rows(&case.wheels.of(side).worn, n));
    let both = left == right;
    let sides = [(if both { "both" } else { "left" }, left), ("right", right)];
    for (side, rows) in sides.into_iter().take(if both { 1 } else { 2 }) {
        for (i, row) in rows.into_iter().enumerate() {
            table.add_row([if i == 0 { side.to_owned() } else { String::new() }].into_iter().chain(row));
        }
    }
    table
}

/// Rows of the ribs of one wheel, without the wheel's name.
fn rib_rows(worn: &Worn, n: Numbers) -> Vec<Vec<String>> {
    let mut rows = Vec::new();
    for (number, tire) in worn.tires.iter().enumerate() {
        for (i, rib) in tire.ribs.iter().enumerate() {
            let name = if i == 0 { tire_name(number, worn.tires.len()) } else { "" };
            let mut row = vec![
                name.to_owned(),
                (i + 1).to_string(),
                n.bare(rib.outboard, Shown::Place),
                n.bare(rib.load, Kind::Force),
                fixed(1e3 * rib.scuff.slip_forward, 3),
                fixed(1e3 * rib.scuff.slip_side, 3),
                fixed(rib.scuff.energy, 3),
                index(rib.index),
                index(rib.against_upright),
            ];
            row.extend(rib.worn_per_distance.map(|rate| n.bare(worn_so_far(rate, n), Shown::Deflection)));
            rows.push(row);
        }
    }
    rows
}

fn over(ride: &TireRideOutcome, n: Numbers) -> Vec<Block> {
    let title = format!("Over {}, {}", ride.name, show(ride.speed, Kind::Speed, n.system));
    let mut blocks = vec![Block::Table(means(ride, n).with_caption(title))];
    let [left, right] = Side::BOTH.map(|side| wave(ride.wheels.of(side), ride.comes_back, n));
    if left == right {
        blocks.extend(named_wave("Both wheels", left));
    } else {
        blocks.extend(named_wave("Left wheel", left));
        blocks.extend(named_wave("Right wheel", right));
    }
    blocks.extend(warnings(&ride.warnings));
    blocks
}

/// What goes round the tires of a wheel, under its name.
fn named_wave(wheels: &str, (line, sources): (String, Vec<Block>)) -> impl Iterator<Item = Block> {
    [Block::paragraph(format!("{wheels}: {line}"))].into_iter().chain(sources)
}

fn means(ride: &TireRideOutcome, n: Numbers) -> Table {
    let words = ["Wheel", "tire"].map(Column::words);
    let camber = ["camber, least", "mean", "greatest"].map(|name| Column::shown(name, Kind::Angle, n));
    let load = [Column::shown("mean load", Kind::Force, n)];
    let columns = words.into_iter().chain(camber).chain(load).chain(SHOULDERS.map(Column::plain));
    let mut table = Table::new(columns);
    for side in Side::BOTH {
        let TireRide { camber, wear, .. } = ride.wheels.of(side);
        let tires = &wear.mean.tires;
        for (number, tire) in tires.iter().enumerate() {
            let once = |text: &str| if number == 0 { text.to_owned() } else { String::new() };
            let head = [once(side.word()), tire_name(number, tires.len()).to_owned()];
            let camber = camber.map(|angle| once(&n.bare(angle, Kind::Angle)));
            let load = [n.bare(tire.load, Kind::Force)];
            table.add_row(head.into_iter().chain(camber).chain(load).chain(shoulders(tire)));
        }
    }
    table
}

/// The strongest wave round one wheel's tires, and its possible sources.
fn wave(face: &TireRide, comes_back: bool, n: Numbers) -> (String, Vec<Block>) {
    let Some(PrintedWave { tire, rib, amplitude, visible, cups }) = &face.wave else {
        return ("less than one turn of the tire, so that no wear goes round it.".to_owned(), Vec::new());
    };
    let standing = match (*visible, comes_back) {
        (true, true) => "cups would show",
        (true, false) => "enough to show, did its cause come back",
        (false, _) => "too little to be seen as cups",
    };
    let line = format!(
        "on rib {} from the inside of the {} tire the strongest wave of {} turns goes {} times round, by {} % of the \
         wear ({standing}); {} from crest to crest, {} Hz.",
        rib + 1,
        tire_name(*tire, face.wear.mean.tires.len()),
        fixed(face.wear.turns, 1),
        cups.count,
        fixed(100.0 * amplitude, 1),
        show(cups.spacing, Kind::Length, n.system),
        fixed(cups.frequency, 2),
    );
    (line, explanations(&cups.explanations))
}
