//! Tables of a static run.

use axlebow_axle::{CamberSplit, CaseOutcome, FlexOutcome, Side, StationOutcome, Warning, WheelOutcome};

use super::grid::{Grid, paragraph};
use super::stiffening::stiffening;
use super::walls::walls;
use crate::ModelCard;
use crate::number::{Numbers, Shown, fixed};
use crate::warning_words::sentence;

/// Width of running text.
pub(super) const WIDTH: usize = 98;

/// The tables of a static run: for each case wheels, camber by source, bearings, seats and stations, then
/// masses, stiffeners with cautions, what was assumed and warnings.
///
/// Plain text in the units of `card.system`; signs as in [`axlebow_axle::CaseOutcome`].
pub fn flex(outcome: &FlexOutcome, card: &ModelCard) -> String {
    let tables = FlexTables { numbers: Numbers { system: card.system } };
    let mut text = heading(outcome, card);
    text.push_str(&walls(outcome, &tables.numbers));
    for case in &outcome.cases {
        text.push('\n');
        text.push_str(&tables.case(case));
    }
    text.push_str(&stiffening(outcome, tables.numbers));
    text.push_str(&assumed(card));
    text.push_str(&warnings(&outcome.warnings));
    text
}

/// What the model is and what it weighs.
pub(super) fn heading(outcome: &FlexOutcome, card: &ModelCard) -> String {
    let numbers = Numbers { system: card.system };
    let mass = |value| numbers.full(value, Shown::Mass);
    let invented = &card.invented_line();
    format!(
        "{}{invented}Bare axle {}, unsprung mass {}.\n",
        paragraph(&card.name, WIDTH, 0),
        mass(outcome.axle_mass),
        mass(outcome.unsprung_mass)
    )
}

/// Row that only bearings with play have.
const CLEARANCE: &str = "bearing clearance";

struct FlexTables {
    numbers: Numbers,
}

impl FlexTables {
    fn case(&self, case: &CaseOutcome) -> String {
        let title = format!("CASE {}: {}", case.name, case.description);
        let mut parts = vec![paragraph(&title, WIDTH, 2) + &self.summary(case)];
        parts.push(self.wheels(case));
        parts.push(self.split(case));
        if Side::BOTH.iter().any(|&side| case.wheels.of(side).contacts.len() > 1) {
            parts.push(self.tires(case));
        }
        parts.extend([self.bearings(case), self.seats(case), self.stations(case)]);
        parts.join("\n")
    }

    fn summary(&self, case: &CaseOutcome) -> String {
        let n = &self.numbers;
        let place = n.full(case.peak_stress_y, Shown::Place);
        let rows = [
            ("dynamic factor", fixed(case.dynamic_factor, 2)),
            ("bow of the axle's center above the hubs", n.full(case.bow, Shown::Deflection)),
            ("peak bending stress", format!("{} at y = {place}", n.full(case.peak_stress, Shown::Stress))),
            ("roll of the axle on road and tires", n.full(case.axle_roll, Shown::Angle)),
            ("equilibrium residual", format!("{:.1e}", case.equilibrium_residual)),
        ];
        rows.map(|(name, value)| format!("  {name:<40} {value}\n")).concat()
    }

    fn wheels(&self, case: &CaseOutcome) -> String {
        type Value = fn(&WheelOutcome) -> f64;
        let rows: [(&str, Shown, Value); 7] = [
            ("camber change", Shown::Angle, |wheel| wheel.camber_change),
            ("camber", Shown::Angle, |wheel| wheel.camber),
            ("toe change", Shown::Angle, |wheel| wheel.toe_change),
            ("toe", Shown::Angle, |wheel| wheel.toe),
            ("vertical load", Shown::Force, |wheel| wheel.vertical_load),
            ("lateral load, to the left", Shown::Force, |wheel| wheel.lateral_load),
            ("fore-aft load, forward", Shown::Force, |wheel| wheel.longitudinal_load),
        ];
        let mut grid = Grid::new(1, ["Wheel", "left", "right"]);
        for (name, shown, value) in rows {
            let cell = |side| self.numbers.bare(value(case.wheels.of(side)), shown);
            grid.row([self.numbers.heading(name, shown), cell(Side::Left), cell(Side::Right)]);
        }
        grid.text()
    }

    fn split(&self, case: &CaseOutcome) -> String {
        type Part = fn(&CamberSplit) -> f64;
        let parts: [(&str, Part); 8] = [
            ("bending", |split| split.bending),
            ("shear", |split| split.shear),
            ("seats", |split| split.seat),
            ("  of it the wall", |split| split.wall),
            ("bearings", |split| split.bearing),
            ("wheel disc and hub flange", |split| split.disc),
            (CLEARANCE, |split| split.clearance),
            ("all", CamberSplit::sum),
        ];
        let tight = Side::BOTH.iter().all(|&side| case.wheels.of(side).split.clearance == 0.0);
        let unit = self.numbers.unit(Shown::Angle);
        let heading =
            [format!("left, {unit}"), "left, %".to_owned(), format!("right, {unit}"), "right, %".to_owned()];
        let mut grid = Grid::new(1, ["Camber change by source".to_owned()].into_iter().chain(heading));
        for (name, part) in parts.into_iter().filter(|(name, _)| !(tight && *name == CLEARANCE)) {
            let cells = Side::BOTH.into_iter().flat_map(|side| {
                let wheel = case.wheels.of(side);
                let value = part(&wheel.split);
                [self.numbers.bare(value, Shown::Angle), percent(value, wheel.camber_change)]
            });
            grid.row([name.to_owned()].into_iter().chain(cells));
        }
        grid.text()
    }

    fn tires(&self, case: &CaseOutcome) -> String {
        let n = &self.numbers;
        let mut grid = Grid::new(
            1,
            [
                "Tire".to_owned(),
                n.heading("y", Shown::Place),
                n.heading("vertical", Shown::Force),
                n.heading("to the left", Shown::Force),
                "on the road".to_owned(),
            ],
        );
        for side in Side::BOTH {
            for contact in &case.wheels.of(side).contacts {
                grid.row([
                    format!("{} {}", side.word(), contact.name),
                    n.bare(contact.y, Shown::Place),
                    n.bare(contact.vertical_load, Shown::Force),
                    n.bare(contact.lateral_load, Shown::Force),
                    if contact.off_road { "no" } else { "yes" }.to_owned(),
                ]);
            }
        }
        grid.text()
    }

    fn bearings(&self, case: &CaseOutcome) -> String {
        let n = &self.numbers;
        let force = |text| n.heading(text, Shown::Force);
        let heading = [force("up"), force("forward"), force("to the left"), force("radial")];
        let place = ["Bearing (hub on spindle)".to_owned(), n.heading("y", Shown::Place)];
        let mut grid = Grid::new(1, place.into_iter().chain(heading));
        for bearing in &case.bearings {
            let forces = [bearing.vertical, bearing.fore_aft, bearing.axial, bearing.radial];
            let place =
                [format!("{} {}", bearing.side.word(), bearing.place), n.bare(bearing.y, Shown::Place)];
            grid.row(place.into_iter().chain(forces.map(|value| n.bare(value, Shown::Force))));
        }
        grid.text()
    }

    fn seats(&self, case: &CaseOutcome) -> String {
        let n = &self.numbers;
        let mut grid = Grid::new(
            1,
            [
                "Seat (suspension on axle)".to_owned(),
                n.heading("y", Shown::Place),
                n.heading("up", Shown::Force),
                n.heading("moment about X", Shown::Moment),
                n.heading("slope of the axle", Shown::Angle),
            ],
        );
        for side in Side::BOTH {
            let seat = case.seats.of(side);
            grid.row([
                side.word().to_owned(),
                n.bare(seat.y, Shown::Place),
                n.bare(seat.vertical, Shown::Force),
                n.bare(seat.moment_x, Shown::Moment),
                n.bare(seat.rotation, Shown::Angle),
            ]);
        }
        grid.text()
    }

    /// Columns in which nothing but zeros would stand are left out.
    fn stations(&self, case: &CaseOutcome) -> String {
        let cell = |station: &StationOutcome, column: &StationColumn| {
            self.numbers.bare((column.value)(station), column.shown)
        };
        let full = |column: &&StationColumn| {
            case.stations
                .iter()
                .any(|station| cell(station, column).contains(|c: char| ('1'..='9').contains(&c)))
        };
        let columns: Vec<&StationColumn> = STATION_COLUMNS.iter().filter(full).collect();
        let heading =
            columns.iter().map(|column| format!("{}\n{}", column.heading, self.numbers.unit(column.shown)));
        let mut grid = Grid::new(1, ["Station".to_owned()].into_iter().chain(heading));
        for station in &case.stations {
            let cells = columns.iter().map(|column| cell(station, column));
            grid.row([station.name.clone()].into_iter().chain(cells));
        }
        grid.text()
    }
}

/// A column of the table of stations.
struct StationColumn {
    heading: &'static str,
    shown: Shown,
    value: fn(&StationOutcome) -> f64,
}

const fn column(heading: &'static str, shown: Shown, value: fn(&StationOutcome) -> f64) -> StationColumn {
    StationColumn { heading, shown, value }
}

const STATION_COLUMNS: [StationColumn; 9] = [
    column("y\n", Shown::Place, |station| station.y),
    column("moved\nup", Shown::Deflection, |station| station.displacement[2]),
    column("moved\nforward", Shown::Deflection, |station| station.displacement[0]),
    column("slope\n", Shown::Angle, |station| station.displacement[3]),
    column("moment\nabout X", Shown::Moment, |station| station.resultants.moment_x),
    column("moment\nabout Z", Shown::Moment, |station| station.resultants.moment_z),
    column("shear\nup", Shown::Force, |station| station.resultants.shear_z),
    column("torque\n", Shown::Moment, |station| station.resultants.torsion),
    column("fiber\nstress", Shown::Stress, |station| station.stress),
];

fn percent(part: f64, whole: f64) -> String {
    if whole == 0.0 { "-".to_owned() } else { fixed(100.0 * part / whole, 1) }
}

fn assumed(card: &ModelCard) -> String {
    let lines = card.assumed.iter().map(|used| {
        let line = format!("  {} = {}: {}", used.path, used.value, used.meaning);
        format!("  {}", paragraph(&line, WIDTH - 2, 6))
    });
    let lines: String = lines.collect();
    if lines.is_empty() { lines } else { format!("\nAssumed, because the file does not say:\n{lines}") }
}

/// Warnings, a paragraph each.
pub(super) fn warnings(warnings: &[Warning]) -> String {
    warnings.iter().map(|own| warning(&sentence(own))).collect()
}

/// A warning in words as a paragraph of its own.
pub(super) fn warning(sentence: &str) -> String {
    format!("\nWarning: {}", paragraph(sentence, WIDTH - 9, 2))
}
