//! The tables of a ride.

use axlebow_axle::{
    BasisComparison, RideBasis, RideMethod, RideOutcome, RideWheel, Scheme, Side, StepRefinement, StopHits,
};
use axlebow_study::{DrawnRides, DrawnWheel, Estimated};
use axlebow_units::{Kind, show};

use super::notes::{CAMBER_SIGN, JSON, defaults, warnings};
use crate::answer::ride_answer;
use crate::number::{Numbers, Shown, fixed, significant};
use crate::page::{Block, Column, Page, Table};
use crate::{BesideRide, ModelCard};

/// What was driven at what speed; each wheel's loads, camber change and the cups that it prints; the peak fiber
/// stress of each place; how the equations were solved, what was assumed, and warnings.
///
/// In the units of `card.system`; camber change is against the unloaded axle, positive with the
/// tire's top outward. A ride that ended early says so under its heading.
pub fn ride(outcome: &RideOutcome, beside: BesideRide, card: &ModelCard) -> Page {
    let n = Numbers { system: card.system };
    let mut page = Page::of_model(card, ride_answer(outcome, beside, card));
    page.extend(partial(outcome));
    page.add(Block::Paragraph(heading(outcome, card)));
    page.extend(beside.draws.into_iter().flat_map(|draws| draw_table(draws, n)));
    page.add_table(wheel_table(outcome, n));
    page.add(Block::note(CAMBER_SIGN));
    page.add_table(stress_table(outcome, n));
    page.add(Block::Paragraph(solver(outcome)));
    page.extend(defaults(card, JSON));
    page.extend(warnings(&outcome.warnings));
    page.extend(beside.comparison.into_iter().flat_map(|comparison| basis_comparison(comparison, n)));
    page.extend(beside.refinement.into_iter().flat_map(|refinement| step_refinement(refinement, n)));
    page
}

type DrawnRow = (&'static str, Written, fn(&DrawnWheel) -> Estimated);

const DRAWN_ROWS: [DrawnRow; 5] = [
    ("dynamic load factor", Written::Plain(3), |wheel| wheel.dynamic_load_factor),
    ("dynamic load coefficient", Written::Plain(3), |wheel| wheel.dynamic_load_coefficient),
    ("time off the road, ms", Written::Plain(0), |wheel| in_milliseconds(wheel.time_off_road)),
    ("camber change, peak to peak", ANGLE, |wheel| wheel.camber_peak_to_peak),
    ("camber change, rms about its mean", ANGLE, |wheel| wheel.camber_rms),
];

fn in_milliseconds(time: Estimated) -> Estimated {
    Estimated { value: 1e3 * time.value, interval: time.interval.map(|ends| ends.map(|end| 1e3 * end)) }
}

/// Means over several random roads with their intervals, and which of them the tables below are about.
fn draw_table(draws: &DrawnRides, n: Numbers) -> [Block; 2] {
    let title = format!("Mean of {} random roads", draws.count);
    let mut table = Table::new([Column::words(title), Column::plain("left"), Column::plain("right")]);
    for (name, written, value) in DRAWN_ROWS {
        let [left, right] = Side::BOTH
            .map(|side| with_interval(value(draws.wheels.of(side)), |own| written.cell(Some(own), n)));
        table.add_row([written.heading(name, n), left, right]);
    }
    let stress = with_interval(draws.peak_stress, |own| n.full(own, Kind::Stress));
    let note = format!(
        "Peak extreme-fiber stress along the axle, mean: {stress}. In brackets the interval that holds the mean over all such \
         roads in {} of 100 cases (Student's t). The tables below are of the first road.",
        fixed(100.0 * draws.confidence, 0)
    );
    [Block::Table(table), Block::Note(note)]
}

/// A mean with its interval in brackets.
fn with_interval(mean: Estimated, written: impl Fn(f64) -> String) -> String {
    let interval = mean.interval.map_or("-".to_owned(), |ends| ends.map(&written).join(" to "));
    format!("{} ({interval})", written(mean.value))
}

fn heading(outcome: &RideOutcome, card: &ModelCard) -> String {
    let driven = format!("Road: {}. Speed: {}.", outcome.name, show(outcome.speed, Kind::Speed, card.system));
    let run_in = match outcome.run_in {
        0.0 => String::new(),
        time => format!(
            " Before it {} s over the road's end, so that the motion is that of a long road.",
            fixed(time, 1)
        ),
    };
    driven + &run_in
}

/// That the ride ended early, if it did.
fn partial(outcome: &RideOutcome) -> Option<Block> {
    let why = outcome.partial.as_ref()?;
    let time = fixed(outcome.history.time.last().copied().unwrap_or(0.0), 3);
    Some(Block::Warning(format!("PARTIAL RIDE, {why}. The numbers below are of the first {time} s only.")))
}

/// How a value of a wheel is written.
#[derive(Debug, Clone, Copy)]
enum Written {
    /// In the reader's unit.
    As(Shown),
    /// As it is, with so many decimals.
    Plain(usize),
    /// As a roughness index; the row is left out of a road that has none.
    Roughness,
}

impl Written {
    /// What a row is called, with its unit.
    fn heading(self, name: &str, n: Numbers) -> String {
        match self {
            Written::As(shown) => n.heading(name, shown),
            Written::Plain(_) => name.to_owned(),
            Written::Roughness => format!("{name}, {}", n.roughness().0),
        }
    }

    fn cell(self, value: Option<f64>, n: Numbers) -> String {
        match (value, self) {
            (None, _) => "-".to_owned(),
            (Some(value), Written::As(shown)) => n.bare(value, shown),
            (Some(value), Written::Plain(decimals)) => fixed(value, decimals),
            (Some(value), Written::Roughness) => significant(value / n.roughness().1, 3),
        }
    }
}

type WheelRow = (&'static str, Written, fn(&RideWheel) -> Option<f64>);

const ANGLE: Written = Written::As(Shown::Usual(Kind::Angle));
const FORCE: Written = Written::As(Shown::Usual(Kind::Force));

const WHEEL_ROWS: [WheelRow; 20] = [
    ("load at rest", FORCE, |wheel| Some(wheel.load_at_rest)),
    ("largest load", FORCE, |wheel| Some(wheel.largest_load)),
    ("smallest load", FORCE, |wheel| Some(wheel.smallest_load)),
    ("dynamic load factor", Written::Plain(3), |wheel| Some(wheel.dynamic_load_factor)),
    ("dynamic load coefficient", Written::Plain(3), |wheel| Some(wheel.dynamic_load_coefficient)),
    ("time off the road, ms", Written::Plain(0), |wheel| Some(1e3 * wheel.time_off_road)),
    ("camber change at rest", ANGLE, |wheel| Some(wheel.camber_at_rest)),
    ("camber change, peak", ANGLE, |wheel| Some(wheel.camber_peak)),
    ("- of it bending", ANGLE, |wheel| Some(wheel.camber_peak_split.bending)),
    ("- shear", ANGLE, |wheel| Some(wheel.camber_peak_split.shear)),
    ("- seats, with the wall under them", ANGLE, |wheel| Some(wheel.camber_peak_split.seat)),
    ("- of that the wall", ANGLE, |wheel| Some(wheel.camber_peak_split.wall)),
    ("- bearings", ANGLE, |wheel| Some(wheel.camber_peak_split.bearing)),
    ("- wheel disc and hub flange", ANGLE, |wheel| Some(wheel.camber_peak_split.disc)),
    ("camber change, peak to peak", ANGLE, |wheel| Some(wheel.camber_peak_to_peak)),
    ("camber change, rms about its mean", ANGLE, |wheel| Some(wheel.camber_rms)),
    ("frequency that dominates camber, Hz", Written::Plain(2), |wheel| wheel.dominant_frequency),
    ("cups that it prints per turn", Written::Plain(1), |wheel| wheel.cups_per_turn),
    ("from cup to cup", Written::As(Shown::Place), |wheel| wheel.cup_spacing),
    ("international roughness index of the road", Written::Roughness, |wheel| wheel.roughness_index),
];

fn wheel_table(outcome: &RideOutcome, n: Numbers) -> Table {
    let mut table = Table::new([Column::words("Wheel"), Column::plain("left"), Column::plain("right")]);
    for (name, written, value) in WHEEL_ROWS {
        let heading = written.heading(name, n);
        let values = Side::BOTH.map(|side| value(outcome.wheels.of(side)));
        if matches!((written, values), (Written::Roughness, [None, None])) {
            continue;
        }
        let [left, right] = values.map(|value| written.cell(value, n));
        table.add_row([heading, left, right]);
    }
    add_stops(&mut table, outcome, n);
    table
}

/// Rows of the bump stops, where there are any.
fn add_stops(table: &mut Table, outcome: &RideOutcome, n: Numbers) {
    let stops = Side::BOTH.map(|side| *outcome.stops.of(side));
    if stops == [None; 2] {
        return;
    }
    let cell =
        |write: &dyn Fn(&StopHits) -> String| stops.map(|hits| hits.as_ref().map_or("-".to_owned(), write));
    let [left, right] = cell(&|hits| hits.count.to_string());
    table.add_row(["bump stop, hits".to_owned(), left, right]);
    let [left, right] = cell(&|hits| n.bare(hits.largest_force, Kind::Force));
    table.add_row([n.heading("bump stop, largest force", Kind::Force), left, right]);
}

fn stress_table(outcome: &RideOutcome, n: Numbers) -> Table {
    let mut table = Table::new([
        Column::words("Place on the axle"),
        Column::shown("y", Shown::Place, n),
        Column::shown("peak bending stress", Kind::Stress, n),
        Column::number("at time", "s"),
    ]);
    for peak in &outcome.stations {
        let numbers = [n.bare(peak.y, Shown::Place), n.bare(peak.stress, Kind::Stress), fixed(peak.time, 3)];
        table.add_row([peak.name.clone()].into_iter().chain(numbers));
    }
    table
}

/// Peak-to-peak camber change, largest load and peak stress with their names, as rides are compared by them.
fn compared<T>([camber, load, stress]: [T; 3]) -> [(&'static str, Shown, T); 3] {
    [
        ("camber change, peak to peak", Shown::Usual(Kind::Angle), camber),
        ("largest load", Shown::Usual(Kind::Force), load),
        ("peak bending stress", Shown::Usual(Kind::Stress), stress),
    ]
}

/// The results that a reduced basis gives beside those of the full one, with how far they differ.
fn basis_comparison(comparison: &BasisComparison, n: Numbers) -> [Block; 2] {
    let numbers = [Column::plain("full"), Column::plain("reduced"), Column::number("difference", "%")];
    let mut table = Table::new([Column::words("Basis")].into_iter().chain(numbers));
    let BasisComparison { camber_peak_to_peak, largest_load, peak_stress, .. } = *comparison;
    for (name, shown, beside) in compared([camber_peak_to_peak, largest_load, peak_stress]) {
        let cells = [n.bare(beside.full, shown), n.bare(beside.reduced, shown)];
        let percent = fixed(100.0 * beside.difference(), 4);
        table.add_row([n.heading(name, shown)].into_iter().chain(cells).chain([percent]));
    }
    let solved =
        format!("Compared with: {}. The tables above are of the full basis.", method(&comparison.reduced));
    [Block::Table(table), Block::Note(solved)]
}

/// The results by shorter steps, and what the step leaves of their error.
fn step_refinement(refinement: &StepRefinement, n: Numbers) -> [Block; 2] {
    let numbers = ["by the step", "by half", "by a quarter", "extrapolated", "order"].map(Column::plain);
    let numbers = numbers.into_iter().chain([Column::number("error", "%")]);
    let mut table = Table::new([Column::words("Time step")].into_iter().chain(numbers));
    let StepRefinement { camber_peak_to_peak, largest_load, peak_stress, .. } = *refinement;
    let results = compared([camber_peak_to_peak, largest_load, peak_stress]);
    for (name, shown, own) in results {
        let values = own.0.into_iter().chain([own.extrapolated()]).map(|value| n.bare(value, shown));
        let order = own.order().map_or("-".to_owned(), |order| fixed(order, 1));
        let percent = fixed(100.0 * own.error(), 3);
        table.add_row([n.heading(name, shown)].into_iter().chain(values).chain([order, percent]));
    }
    let worst = results.iter().map(|(_, _, own)| own.error().abs()).fold(0.0, f64::max);
    let told = format!(
        "The time step of {} ms leaves {} % of error in these results, by Richardson's extrapolation with the order observed, or the second \
         where none shows. Peaks are of samples; a contact that opens between them limits the order.",
        significant(1e3 * refinement.step, 3),
        significant(100.0 * worst, 2)
    );
    [Block::Table(table), Block::Note(told)]
}

/// Basis, scheme and step in words.
fn method(method: &RideMethod) -> String {
    let basis = match (method.basis, method.modes_up_to) {
        (RideBasis::Reduced, Some(limit)) => format!(
            "reduced basis of {} shapes, all modes up to {} Hz that the ride moves and static answers",
            method.unknowns,
            fixed(limit, 0)
        ),
        (RideBasis::Reduced, None) => format!("reduced basis of {} shapes", method.unknowns),
        (RideBasis::Full, _) => format!("full basis of {} freedoms", method.unknowns),
    };
    let scheme = match method.scheme {
        Scheme::AverageAcceleration => "average acceleration".to_owned(),
        Scheme::GeneralizedAlpha { spectral_radius } => {
            format!("generalized-alpha, spectral radius {}", significant(spectral_radius, 3))
        }
    };
    format!("{basis}; {scheme}, steps of {} ms", significant(1e3 * method.step, 4))
}

/// How the equations were solved.
fn solver(outcome: &RideOutcome) -> String {
    format!(
        "Solver: {}; {} steps and parts of steps, {} Newton iterations, tires left the road or came back {} times; \
         energy drift {} of the greatest energy.",
        method(&outcome.method),
        outcome.parts,
        outcome.iterations,
        outcome.contact_changes,
        significant(outcome.energy_drift, 2)
    )
}
