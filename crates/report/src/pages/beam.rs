//! The tables of a straight beam.

use axlebow_beam::{BeamOutcome, Bent, Checked, Convergence, ConvergenceRow, Mode, Vibrating};
use axlebow_units::Kind;

use super::notes::{JSON, defaults};
use crate::ModelCard;
use crate::answer::{basis_words, beam_answer, convergence_kind, plain};
use crate::number::{Numbers, Shown, significant};
use crate::page::{Block, Column, FAILS, Page, Table};

/// Digits of what is compared with a reference.
const COMPARED: usize = 9;

/// Largest values, supports, the handbook case, modes, expected values, and how results settle with the elements.
pub fn beam(outcome: &BeamOutcome, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, beam_answer(outcome, card));
    if let Some(bent) = &outcome.bent {
        page.add_table(peaks(bent, n));
        page.add(Block::note(SIGNS));
        if !bent.reactions.is_empty() {
            page.add_table(reactions(bent, n));
        }
        page.extend(handbook(bent, n));
    }
    if let Some(vibrating) = &outcome.vibrating {
        page.extend(modes(vibrating));
    }
    if outcome.passage.is_some() || outcome.shaken.is_some() {
        page.add_table(responses(outcome, n));
        page.add(Block::note(RESPONSES));
    }
    if !outcome.checks.is_empty() {
        page.extend(checks(&outcome.checks, n));
    }
    if let Some(convergence) = &outcome.convergence {
        page.extend(meshes(convergence, n));
    }
    page.add(Block::note(how(outcome)));
    page.extend(defaults(card, JSON));
    page
}

const SIGNS: &str = "Positive: deflection up, slope rising along the beam, shear as the sum of the upward forces before \
     the place, moment with the ends up (sagging), stress tension.";

const RESPONSES: &str = "By natural modes with one damping ratio, their equations solved exactly, and the static deflection of what the modes \
     leave; stops are taken as open. Critical speed: at which the force keeps step with the first mode, 2 f L.";

fn responses(outcome: &BeamOutcome, n: Numbers) -> Table {
    let mut table = Table::new([Column::words("Response"), Column::plain("value"), Column::words("")]);
    let length = Shown::Free(Kind::Length);
    let mut row =
        |name: &str, value: String, unit: &str| table.add_row([name.to_owned(), value, unit.to_owned()]);
    if let Some(own) = &outcome.passage {
        row("largest deflection, force on the beam", n.bare(own.largest, length), n.unit(length));
        row("the same when it crawls", n.bare(own.largest_static, length), n.unit(length));
        row("amplification", significant(own.amplification(), 4), "");
        row("largest deflection after it has left", n.bare(own.largest_after, length), n.unit(length));
        row("speed over the critical one", significant(own.speed_ratio, 4), "");
    }
    if let Some((own, [frequency, amplitude])) =
        outcome.shaken.as_ref().and_then(|own| Some((own, own.largest()?)))
    {
        row("largest amplitude, shaken", n.bare(amplitude, length), n.unit(length));
        row("at the frequency", significant(frequency, 4), "Hz");
        row("deflection under the same force at rest", n.bare(own.at_rest, length), n.unit(length));
    }
    table
}

fn how(outcome: &BeamOutcome) -> String {
    let exact = if outcome.is_exact() { ", which leave nothing out of the statics" } else { "" };
    let elements = if outcome.elements == 1 { "element" } else { "elements" };
    format!(
        "{} theory, small deflections, {} {} {elements}{exact}.",
        outcome.mesh.theory.words(),
        outcome.elements,
        outcome.mesh.element.word()
    )
}

fn peaks(bent: &Bent, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("Largest"),
        Column::plain("value"),
        Column::words(""),
        Column::shown("at y", Shown::Place, n),
    ]);
    for peak in &bent.peaks {
        let shown = Shown::Free(peak.kind.measured());
        let (value, place) = (n.bare(peak.value, shown), n.bare(peak.at, Shown::Place));
        table.add_row([peak.kind.word(), &value, n.unit(shown), &place]);
    }
    table
}

fn reactions(bent: &Bent, n: Numbers) -> Table {
    let (force, moment) = (Shown::Free(Kind::Force), Shown::Free(Kind::Moment));
    let mut table = Table::new([
        Column::words("Support"),
        Column::shown("y", Shown::Place, n),
        Column::shown("force on beam", force, n),
        Column::shown("moment on beam", moment, n),
    ]);
    for own in &bent.reactions {
        let kind = if own.touches { own.kind.to_owned() } else { format!("{}, not reached", own.kind) };
        table.add_row([
            kind,
            n.bare(own.at, Shown::Place),
            n.bare(own.force, force),
            n.bare(own.moment, moment),
        ]);
    }
    table
}

fn handbook(bent: &Bent, n: Numbers) -> Vec<Block> {
    let Some((form, computed)) = &bent.closed else { return Vec::new() };
    let mut table = Table::new([
        Column::words("Handbook case"),
        Column::shown("at y", Shown::Place, n),
        Column::plain("computed"),
        Column::plain("reference"),
        Column::words(""),
        Column::plain("relative error"),
    ]);
    for (own, computed) in form.values.iter().zip(computed) {
        let kind = own.kind.measured();
        let number = |value: f64| significant(n.scaled(value, kind), COMPARED);
        let error = format!("{:+.1e}", computed / own.value - 1.0);
        let (at, unit) = (n.bare(own.at, Shown::Place), n.unit(kind));
        table.add_row([own.kind.word(), &at, &number(*computed), &number(own.value), unit, &error]);
    }
    let words = format!("Handbook case: {}: {}. {}.", form.title, form.formula, form.source);
    vec![Block::Table(table), Block::note(words)]
}

fn modes(vibrating: &Vibrating) -> Vec<Block> {
    let closed = vibrating.closed.as_ref();
    let mut columns = vec![Column::words("Mode"), Column::number("frequency", "Hz")];
    if closed.is_some() {
        columns.extend([Column::number("closed form", "Hz"), Column::plain("relative error")]);
    }
    let mut table = Table::new(columns);
    for (number, mode) in vibrating.modes.iter().enumerate() {
        let elastic = number.checked_sub(vibrating.rigid);
        let name = elastic.map_or("rigid".to_owned(), |number| format!("{}", number + 1));
        let reference = closed.and_then(|closed| closed.frequencies.get(elastic?).copied());
        table.add_row(mode_row(name, mode, closed.is_some(), reference));
    }
    let words = closed.map(|closed| {
        Block::note(format!("Closed form: {}: {}; x = β L. {}.", closed.title, closed.formula, closed.source))
    });
    [Block::Table(table)].into_iter().chain(words).collect()
}

fn mode_row(name: String, mode: &Mode, has_closed: bool, reference: Option<f64>) -> Vec<String> {
    let mut cells = vec![name, significant(mode.frequency, 7)];
    if has_closed {
        let error = |reference: f64| format!("{:+.1e}", mode.frequency / reference - 1.0);
        cells.push(reference.map_or("-".to_owned(), |reference| significant(reference, COMPARED)));
        cells.push(reference.map_or("-".to_owned(), error));
    }
    cells
}

fn checks(checks: &[Checked], n: Numbers) -> Vec<Block> {
    let mut table = Table::new([
        Column::words("Expected"),
        Column::plain("computed"),
        Column::plain("reference"),
        Column::words(""),
        Column::plain("relative error"),
        Column::plain("tolerance"),
        Column::plain("source"),
        Column::words(""),
    ]);
    let mut sources: Vec<&str> = Vec::new();
    for own in checks {
        let source = own.check.source.as_str();
        let known = sources.iter().position(|known| *known == source);
        let place = known.unwrap_or(sources.len());
        if known.is_none() {
            sources.push(source);
        }
        table.add_row(check_row(own, place + 1, n));
    }
    let missing = checks.iter().filter(|own| own.computed.is_none());
    let missing =
        missing.map(|own| format!("{}: no value, {}.", plain(&own.check.name), own.check.asked.missing()));
    let list = sources.iter().zip(1..).map(|(source, place)| format!("[{place}] {}", plain(source)));
    vec![Block::Table(table), Block::List(list.chain(missing).collect())]
}

fn check_row(own: &Checked, source: usize, n: Numbers) -> [String; 8] {
    let kind = own.check.asked.measured();
    let number = |value: f64| significant(n.scaled(value, kind), COMPARED);
    let error = own.error().map_or("-".to_owned(), |error| format!("{error:+.1e}"));
    [
        plain(&own.check.name),
        own.computed.map_or("none".to_owned(), number),
        number(own.check.expected),
        n.unit(kind).to_owned(),
        error,
        format!("{:.1e}", own.check.tolerance),
        format!("[{source}]"),
        if own.passed() { "met".to_owned() } else { FAILS.to_owned() },
    ]
}

fn meshes(convergence: &Convergence, n: Numbers) -> Vec<Block> {
    let mut table = Table::new([
        Column::words("Result"),
        Column::plain("elements a piece"),
        Column::plain("in all"),
        Column::plain("computed"),
        Column::plain("reference"),
        Column::words(""),
        Column::plain("relative error"),
        Column::plain("observed order"),
    ]);
    let mut last = None;
    for row in &convergence.rows {
        let name = if last == Some(row.quantity) { String::new() } else { row.quantity.words() };
        last = Some(row.quantity);
        table.add_row(mesh_row(name, row, n));
    }
    let mut bases: Vec<&str> = convergence.rows.iter().map(|row| basis_words(row.basis)).collect();
    bases.dedup();
    let words = format!(
        "{} elements. Along the beam: root mean square, its error that of the difference. References: {}. No order \
         is given where an error is rounding.",
        capital(convergence.mesh.element.word()),
        bases.join("; of frequencies ")
    );
    vec![Block::Table(table), Block::note(words)]
}

fn mesh_row(name: String, row: &ConvergenceRow, n: Numbers) -> [String; 8] {
    let kind = convergence_kind(row.quantity);
    let number = |value: f64| significant(n.scaled(value, kind), COMPARED);
    [
        name,
        row.elements.to_string(),
        row.total.to_string(),
        number(row.computed),
        number(row.reference),
        n.unit(kind).to_owned(),
        format!("{:.1e}", row.error),
        row.order.map_or("-".to_owned(), |order| format!("{order:.2}")),
    ]
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
