//! A case sheet to print and fill in by hand.

use axlebow_units::UnitSystem;

use crate::ModelCard;
use crate::page::{Block, Caution, Column, Page, Table};

/// Ribs for which there is room.
const RIBS: usize = 6;
/// A box to write in, and one to tick.
const BOX: &str = "[            ]";
const TICK: &str = "\u{2610}";

/// The sheet as one HTML document; every box that stays empty is "not looked at".
pub fn case_page(name: &str) -> String {
    let mut page = Page { title: Some(format!("Case sheet: {name}")), ..Page::default() };
    page.add(Block::paragraph(
        "Fill in at the worn axle; an empty box means not looked at. Write the unit beside each number, mm or 32nds of an inch. Then put \
         the numbers into the file of the same name and run `axlebow explain`.",
    ));
    page.add_table(filled(
        "The axle",
        &[
            "axle, position in the vehicle",
            "tires: single, wide-base, dual",
            "distance run by these tires",
            "tread depth when new",
            "mean axle load",
            "wheel offset (outset +, inset -)",
            "axle out of square (left end ahead +)",
            "wall: stamped, plated or by ultrasonic gauge",
            "dampers: good, leaking, dead",
        ],
    ));
    page.add_table(tires());
    page.add(Block::note(
        "Ribs from the inner shoulder (toward the middle of the vehicle) outward. Cups: count round the tire, 0 if none. Feathering: which \
         way the sharp edges point, inboard, outboard or none.",
    ));
    page.add_table(ends());
    page.add(cautions());
    page.html(&blank_card(name))
}

/// What a sheet is made from: nothing yet.
fn blank_card(name: &str) -> ModelCard {
    ModelCard {
        name: name.to_owned(),
        hash: String::new(),
        settings: Vec::new(),
        assumed: Vec::new(),
        system: UnitSystem::Si,
        invented: false,
        typical: Vec::new(),
        invented_inputs: Vec::new(),
    }
}

fn filled(caption: &str, lines: &[&str]) -> Table {
    let mut table = Table::new([Column::words("what"), Column::words("seen")]).with_caption(caption);
    lines.iter().for_each(|line| table.add_row([*line, BOX]));
    table
}

fn tires() -> Table {
    let columns = ["left outer or single", "left inner", "right inner", "right outer or single"];
    let head = std::iter::once("tire").chain(columns).map(Column::words);
    let mut table = Table::new(head).with_caption("Each tire");
    let mut add = |what: String, cell: &str| {
        table.add_row(std::iter::once(what).chain(std::iter::repeat_n(cell.to_owned(), columns.len())));
    };
    (1..=RIBS).for_each(|rib| add(format!("depth of rib {rib}"), BOX));
    add("cups".to_owned(), BOX);
    add("feathering: inboard / none / outboard".to_owned(), &format!("{TICK} / {TICK} / {TICK}"));
    add("pressure, cold".to_owned(), BOX);
    add("circumference over the middle rib".to_owned(), BOX);
    table
}

fn ends() -> Table {
    let head = ["wheel end", "left", "right"].map(Column::words);
    let mut table = Table::new(head).with_caption("Each wheel end");
    for what in ["endplay by dial indicator", "camber, empty", "toe, empty", "radial runout of the tire"] {
        table.add_row([what, BOX, BOX]);
    }
    table
}

fn cautions() -> Block {
    let items = [
        "Level, hard floor; chock the wheels of another axle; park, engine off, key out.",
        "Nobody goes under a load that only a jack holds: rated stands first.",
        "One wheel end raised at a time for endplay and runout; release a spring brake by its maker's procedure only.",
        "Shop rules and local codes come first.",
    ];
    let items = items.map(str::to_owned).to_vec();
    Block::Caution(Caution { heading: "Before anybody looks:".to_owned(), items })
}
