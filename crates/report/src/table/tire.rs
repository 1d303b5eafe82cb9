//! The tables of tire faces.

use axlebow_axle::tread::{TireWear, Worn};
use axlebow_axle::{PrintedWave, Side, TireCase, TireOutcome, TireRide, TireRideOutcome};
use axlebow_units::{Kind, show};

use super::cups::explanations;
use super::flex::{WIDTH, warnings};
use super::flex_brief::assumed;
use super::grid::{Grid, paragraph};
use crate::ModelCard;
use crate::number::{Numbers, Shown, fixed};
use crate::tire_words::{index, tire_name};

/// For each load case every tire with its load, its shoulders and their wear; the ribs of the first case; and, where a
/// ride was driven, wear along it, the wave round the most worn tire and its possible sources.
pub fn tire(outcome: &TireOutcome, ride: Option<&TireRideOutcome>, card: &ModelCard) -> String {
    let n = Numbers { system: card.system };
    let invented = &card.invented_line();
    let mut text = paragraph(&card.name, WIDTH, 0) + invented + "\n" + &tires(outcome, n);
    if let Some(case) = outcome.cases.first() {
        text += &format!("\nRibs, {}\n{}", case.name, ribs(case, n));
    }
    text += &paragraph(
        "Wear is over that of the same rib (mean: of all ribs) were the same tires upright and straight under the same \
         load, all free of drive and brake; relative numbers, no promise of mileage.",
        WIDTH,
        2,
    );
    if let Some(ride) = ride {
        text += &over(ride, n);
    }
    text + &assumed(card) + &warnings(&outcome.warnings)
}

/// Heading of the columns of shoulders.
const SHOULDERS: [&str; 3] =
    ["load,\ninner over\nouter rib", "wear of\ninner\nshoulder", "wear of\nouter\nshoulder"];

fn tires(outcome: &TireOutcome, n: Numbers) -> String {
    let measured = |words: &str, shown| format!("{words}\n{}", n.unit(shown));
    let heading = ["\n\nLoad case".to_owned(), "\n\nwheel".to_owned(), "\n\ntire".to_owned()];
    let pose = [
        measured("\ncamber", Shown::Angle),
        measured("\ntoe", Shown::Angle),
        measured("\nload", Shown::Force),
    ];
    let rest = ["\nshare\n%"].into_iter().chain(SHOULDERS).map(str::to_owned);
    let mut grid = Grid::new(3, heading.into_iter().chain(pose).chain(rest));
    for case in &outcome.cases {
        for side in Side::BOTH {
            let face = case.wheels.of(side);
            for (number, tire) in face.worn.tires.iter().enumerate() {
                let first = side == Side::Left && number == 0;
                let once = |text: &str, shown: bool| if shown { text.to_owned() } else { String::new() };
                let pose = [face.pose.camber, face.pose.toe]
                    .map(|angle| once(&n.bare(angle, Shown::Angle), number == 0));
                let head = [once(&case.name, first), once(side.word(), number == 0)];
                let name = tire_name(number, face.worn.tires.len()).to_owned();
                let load = [n.bare(tire.load, Shown::Force), fixed(100.0 * tire.share, 1)];
                grid.row(head.into_iter().chain([name]).chain(pose).chain(load).chain(shoulders(tire)));
            }
        }
    }
    grid.text()
}

fn shoulders(tire: &TireWear) -> [String; 3] {
    [
        index(tire.shoulder_load_ratio()),
        index(tire.inner_shoulder().against_upright),
        index(tire.outer_shoulder().against_upright),
    ]
}

fn ribs(case: &TireCase, n: Numbers) -> String {
    let measured = |words: &str, shown| format!("{words}\n{}", n.unit(shown));
    let mut grid = Grid::new(
        3,
        [
            "\nWheel".to_owned(),
            "\ntire".to_owned(),
            "rib, from\nthe inside".to_owned(),
            measured("outboard", Shown::Place),
            measured("load", Shown::Force),
            "slip forward\nper mille".to_owned(),
            "slip aside\nper mille".to_owned(),
            "scuff\nJ/m".to_owned(),
            "wear over\nmean".to_owned(),
            "over the\nsame rib".to_owned(),
        ],
    );
    let [left, right] = Side::BOTH.map(|side| rib_rows(&case.wheels.of(side).worn, n));
    let both = left == right;
    let sides = [(if both { "both" } else { "left" }, left), ("right", right)];
    for (side, rows) in sides.into_iter().take(if both { 1 } else { 2 }) {
        for (i, row) in rows.into_iter().enumerate() {
            grid.row([if i == 0 { side.to_owned() } else { String::new() }].into_iter().chain(row));
        }
    }
    grid.text()
}

/// Rows of the ribs of one wheel, without the wheel's name.
fn rib_rows(worn: &Worn, n: Numbers) -> Vec<[String; 9]> {
    let mut rows = Vec::new();
    for (number, tire) in worn.tires.iter().enumerate() {
        for (i, rib) in tire.ribs.iter().enumerate() {
            let name = if i == 0 { tire_name(number, worn.tires.len()) } else { "" };
            rows.push([
                name.to_owned(),
                (i + 1).to_string(),
                n.bare(rib.outboard, Shown::Place),
                n.bare(rib.load, Shown::Force),
                fixed(1e3 * rib.scuff.slip_forward, 3),
                fixed(1e3 * rib.scuff.slip_side, 3),
                fixed(rib.scuff.energy, 3),
                index(rib.index),
                index(rib.against_upright),
            ]);
        }
    }
    rows
}

fn over(ride: &TireRideOutcome, n: Numbers) -> String {
    let title = format!("Over {}, {}", ride.name, show(ride.speed, Kind::Speed, n.system));
    let mut text = format!("\n{}", paragraph(&title, WIDTH, 2)) + &means(ride, n);
    let [left, right] = Side::BOTH.map(|side| wave(ride.wheels.of(side), ride.comes_back, n));
    if left == right {
        text += &format!("\nBoth wheels: {left}");
    } else {
        text += &format!("\nLeft wheel: {left}\nRight wheel: {right}");
    }
    text + &warnings(&ride.warnings)
}

fn means(ride: &TireRideOutcome, n: Numbers) -> String {
    let camber = |words: &str| format!("{words}\n{}", n.unit(Shown::Angle));
    let heading = ["\n\nWheel", "\n\ntire"].map(str::to_owned);
    let measured = [camber("camber,\nleast"), camber("\nmean"), camber("\ngreatest")];
    let load = format!("mean\nload\n{}", n.unit(Shown::Force));
    let rest = SHOULDERS.map(str::to_owned);
    let mut grid = Grid::new(2, heading.into_iter().chain(measured).chain([load]).chain(rest));
    for side in Side::BOTH {
        let TireRide { camber, wear, .. } = ride.wheels.of(side);
        let tires = &wear.mean.tires;
        for (number, tire) in tires.iter().enumerate() {
            let once = |text: &str| if number == 0 { text.to_owned() } else { String::new() };
            let head = [once(side.word()), tire_name(number, tires.len()).to_owned()];
            let camber = camber.map(|angle| once(&n.bare(angle, Shown::Angle)));
            let load = [n.bare(tire.load, Shown::Force)];
            grid.row(head.into_iter().chain(camber).chain(load).chain(shoulders(tire)));
        }
    }
    grid.text()
}

/// The strongest wave round one wheel's tires, and its possible sources.
fn wave(face: &TireRide, comes_back: bool, n: Numbers) -> String {
    let Some(PrintedWave { tire, rib, amplitude, visible, cups }) = &face.wave else {
        return "less than one turn of the tire, so that no wear goes round it.\n".to_owned();
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
    format!("{}{}", paragraph(&line, WIDTH - 13, 2), explanations(&cups.explanations))
}
