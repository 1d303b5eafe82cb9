//! What stiffeners do: camber change without and with them, mass, weld force, and what must be said about welding.

use axlebow_axle::{FlexOutcome, StiffenerOutcome, StiffeningOutcome};
use axlebow_units::Kind;

use super::cautions::welding;
use super::preheat::preheat;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Table};

/// The blocks of an outcome's stiffeners; none where the axle has none.
pub(super) fn stiffening(outcome: &FlexOutcome, n: Numbers) -> Vec<Block> {
    let cases: Vec<(&str, &StiffeningOutcome)> = outcome
        .cases
        .iter()
        .filter_map(|case| Some((case.name.as_str(), case.stiffening.as_ref()?)))
        .collect();
    let Some((_, first)) = cases.first() else { return Vec::new() };
    let which = first.stiffeners.iter().map(|one| stiffener(one, n)).collect();
    let mut blocks = vec![
        Block::heading("STIFFENERS"),
        Block::List(which),
        Block::Table(camber(&cases, n)),
        Block::List(HOW.map(str::to_owned).to_vec()),
        Block::Table(welds(&cases, n)),
    ];
    blocks.extend(reason(&cases));
    blocks.extend(preheat(&outcome.preheat, n.system));
    blocks.push(welding());
    blocks
}

const HOW: [&str; 3] = [
    "With: each stiffener a bar that its weld ties to the axle, as everywhere in this result.",
    "Full composite action: axle and stiffener one section, as if no weld gave way; an upper bound.",
    "The wheel is the one that leans more without stiffeners.",
];

/// A stiffener in a line.
fn stiffener(one: &StiffenerOutcome, n: Numbers) -> String {
    let [right, left] = one.reach.map(|y| n.bare(y, Shown::Place));
    let (mass, unit) = (n.full(one.mass, Kind::Mass), n.unit(Shown::Place));
    format!("{}: {}, {mass}, from y = {right} to {left} {unit}", one.name, one.called)
}

fn camber(cases: &[(&str, &StiffeningOutcome)], n: Numbers) -> Table {
    let (angle, mass) = (n.unit(Kind::Angle), n.unit(Kind::Mass));
    let mut table = Table::new([
        Column::words("Load case"),
        Column::words("wheel"),
        Column::number("camber change without", angle),
        Column::number("with", angle),
        Column::number("removed", "%"),
        Column::number("removed", format!("{angle}/{mass}")),
        Column::number("full composite action", angle),
        Column::number("removed at most", "%"),
    ]);
    for (case, of) in cases {
        let angle = |value| n.bare(value, Kind::Angle);
        let removed = |camber| fixed(100.0 * of.removed(camber), 1);
        let per_mass = n.scaled(of.removed_per_mass(), Kind::Angle) / n.scaled(1.0, Kind::Mass);
        table.add_row([
            (*case).to_owned(),
            of.side.word().to_owned(),
            angle(of.without),
            angle(of.tied),
            removed(of.tied),
            fixed(per_mass, 4),
            angle(of.composite),
            removed(of.composite),
        ]);
    }
    table
}

fn welds(cases: &[(&str, &StiffeningOutcome)], n: Numbers) -> Table {
    let force = |heading| Column::shown(heading, Shown::ForcePerLength, n);
    let mut table = Table::new([
        Column::words("Load case"),
        Column::words("stiffener"),
        Column::words("foot"),
        force("peak weld force"),
        force("along the axle"),
        force("off the wall"),
        Column::shown("at y", Shown::Place, n),
        Column::shown("works in full over", Shown::Place, n),
    ]);
    for (case, of) in cases {
        for one in &of.stiffeners {
            let force = |value: f64| n.bare(value, Shown::ForcePerLength);
            let peak = &one.peak;
            table.add_row([
                (*case).to_owned(),
                one.name.clone(),
                peak.foot.word().to_owned(),
                force(peak.magnitude()),
                force(peak.along),
                force(peak.outward),
                n.bare(peak.y, Shown::Place),
                n.bare(one.working_length, Shown::Place),
            ]);
        }
    }
    table
}

/// Why help is lost, in the case that loses most.
fn reason(cases: &[(&str, &StiffeningOutcome)]) -> Option<Block> {
    let told = cases.iter().filter_map(|(case, of)| Some((case, of.help_lost(), of.why.as_ref()?)));
    let (case, _, why) = told.max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(Block::note(format!("Why less than full composite action, {case}: {why}.")))
}
