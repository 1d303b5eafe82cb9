//! What stiffeners do: camber change without and with them, mass, weld force, and what must be said about welding.

use axlebow_axle::{FlexOutcome, StiffenerOutcome, StiffeningOutcome};

use super::cautions::welding;
use super::flex::WIDTH;
use super::grid::{Grid, paragraph};
use super::preheat::preheat;
use crate::number::{Numbers, Shown, fixed};

/// The block of an outcome's stiffeners; empty where the axle has none.
pub(super) fn stiffening(outcome: &FlexOutcome, n: Numbers) -> String {
    let cases: Vec<(&str, &StiffeningOutcome)> = outcome
        .cases
        .iter()
        .filter_map(|case| Some((case.name.as_str(), case.stiffening.as_ref()?)))
        .collect();
    let Some((_, first)) = cases.first() else { return String::new() };
    let mut parts = vec![which(first, n), camber(&cases, n), HOW.to_owned(), welds(&cases, n)];
    parts.extend(reason(&cases));
    format!("\n{}{}{}", parts.join("\n"), preheat(&outcome.preheat), welding())
}

const HOW: &str = "\
With: each stiffener a bar that its weld ties to the axle, as everywhere in this result.
Full composite action: axle and stiffener one section, as if no weld gave way; an upper bound.
The wheel is the one that leans more without stiffeners.
";

/// Each stiffener in a line.
fn which(stiffening: &StiffeningOutcome, n: Numbers) -> String {
    let line = |one: &StiffenerOutcome| {
        let [right, left] = one.reach.map(|y| n.bare(y, Shown::Place));
        let (mass, unit) = (n.full(one.mass, Shown::Mass), n.unit(Shown::Place));
        let text = format!("{}: {}, {mass}, from y = {right} to {left} {unit}", one.name, one.called);
        format!("  {}", paragraph(&text, WIDTH - 2, 4))
    };
    format!("STIFFENERS\n{}", stiffening.stiffeners.iter().map(line).collect::<String>())
}

fn camber(cases: &[(&str, &StiffeningOutcome)], n: Numbers) -> String {
    let (angle, mass) = (n.unit(Shown::Angle), n.unit(Shown::Mass));
    let heading = [
        "Load case".to_owned(),
        "wheel".to_owned(),
        format!("camber change\nwithout, {angle}"),
        format!("with\n{angle}"),
        "removed\n%".to_owned(),
        format!("removed\n{angle}/{mass}"),
        format!("full composite\naction, {angle}"),
        "removed\nat most, %".to_owned(),
    ];
    let mut grid = Grid::new(2, heading);
    for (case, of) in cases {
        let angle = |value| n.bare(value, Shown::Angle);
        let removed = |camber| fixed(100.0 * of.removed(camber), 1);
        let per_mass = n.scaled(of.removed_per_mass(), Shown::Angle) / n.scaled(1.0, Shown::Mass);
        grid.row([
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
    grid.text()
}

fn welds(cases: &[(&str, &StiffeningOutcome)], n: Numbers) -> String {
    let unit = n.unit(Shown::ForcePerLength);
    let place = n.unit(Shown::Place);
    let heading = [
        "Load case".to_owned(),
        "stiffener".to_owned(),
        "foot".to_owned(),
        format!("peak weld\nforce, {unit}"),
        format!("along the\naxle, {unit}"),
        format!("off the\nwall, {unit}"),
        format!("at y\n{place}"),
        format!("works in full\nover, {place}"),
    ];
    let mut grid = Grid::new(3, heading);
    for (case, of) in cases {
        for one in &of.stiffeners {
            let force = |value: f64| n.bare(value, Shown::ForcePerLength);
            let peak = &one.peak;
            grid.row([
                (*case).to_owned(),
                one.name.clone(),
                peak.foot.to_owned(),
                force(peak.magnitude()),
                force(peak.along),
                force(peak.outward),
                n.bare(peak.y, Shown::Place),
                n.bare(one.working_length, Shown::Place),
            ]);
        }
    }
    grid.text()
}

/// Why help is lost, in the case that loses most.
fn reason(cases: &[(&str, &StiffeningOutcome)]) -> Option<String> {
    let told = cases.iter().filter_map(|(case, of)| Some((case, of.help_lost(), of.why.as_ref()?)));
    let (case, _, why) = told.max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some(paragraph(&format!("Why less than full composite action, {case}: {why}."), WIDTH, 2))
}
