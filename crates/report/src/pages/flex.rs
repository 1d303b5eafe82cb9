//! Tables of a static run.

use axlebow_axle::{CamberSplit, CaseOutcome, FlexOutcome, Side, StationOutcome, WheelOutcome};
use axlebow_units::Kind;

use super::notes::{SIGNS, warnings};
use super::stiffening::stiffening;
use super::walls::walls;
use crate::ModelCard;
use crate::answer::flex_answer;
use crate::number::{Numbers, Shown, fixed};
use crate::page::{Block, Column, Page, Table};

/// The tables of a static run: for each case wheels, camber by source, bearings, seats and stations, then
/// masses, stiffeners with cautions, what was assumed and warnings.
///
/// In the units of `card.system`; signs as in [`axlebow_axle::CaseOutcome`].
pub fn flex(outcome: &FlexOutcome, card: &ModelCard) -> Page {
    let tables = FlexTables { numbers: Numbers { system: card.system } };
    let mut page = heading(outcome, card);
    page.extend(walls(outcome, tables.numbers));
    for case in &outcome.cases {
        page.add(Block::heading(format!("CASE {}: {}", case.name, case.description)));
        page.extend(tables.case(case).into_iter().map(Block::Table));
    }
    page.add(Block::note(SIGNS));
    page.extend(stiffening(outcome, tables.numbers));
    page.extend(assumed(card));
    page.extend(warnings(&outcome.warnings));
    page
}

/// What the model is, what happens to it, and what it weighs.
pub(super) fn heading(outcome: &FlexOutcome, card: &ModelCard) -> Page {
    let numbers = Numbers { system: card.system };
    let mass = |value| numbers.full(value, Kind::Mass);
    let mut page = Page::of_model(card, flex_answer(outcome, card));
    let (axle, unsprung) = (mass(outcome.axle_mass), mass(outcome.unsprung_mass));
    page.add(Block::paragraph(format!("Bare axle {axle}, unsprung mass {unsprung}.")));
    page
}

/// Row that only bearings with play have.
const CLEARANCE: &str = "bearing clearance";

struct FlexTables {
    numbers: Numbers,
}

impl FlexTables {
    fn case(&self, case: &CaseOutcome) -> Vec<Table> {
        let mut tables = vec![self.summary(case), self.wheels(case), self.split(case)];
        if Side::BOTH.iter().any(|&side| case.wheels.of(side).contacts.len() > 1) {
            tables.push(self.tires(case));
        }
        tables.extend([self.bearings(case), self.seats(case), self.stations(case)]);
        tables
    }

    fn summary(&self, case: &CaseOutcome) -> Table {
        let n = &self.numbers;
        let place = n.full(case.peak_stress_y, Shown::Place);
        let mut table = Table::new([Column::words("Axle"), Column::words("")]);
        for (name, value) in [
            ("dynamic factor", fixed(case.dynamic_factor, 2)),
            ("bow of the axle's center above the hubs", n.full(case.bow, Shown::Deflection)),
            ("peak bending stress", format!("{} at y = {place}", n.full(case.peak_stress, Kind::Stress))),
            ("roll of the axle on road and tires", n.full(case.axle_roll, Kind::Angle)),
            ("equilibrium residual", format!("{:.1e}", case.equilibrium_residual)),
        ] {
            table.add_row([name.to_owned(), value]);
        }
        table
    }

    fn wheels(&self, case: &CaseOutcome) -> Table {
        type Value = fn(&WheelOutcome) -> f64;
        let rows: [(&str, Shown, Value); 7] = [
            ("camber change", Shown::Usual(Kind::Angle), |wheel| wheel.camber_change),
            ("camber", Shown::Usual(Kind::Angle), |wheel| wheel.camber),
            ("toe change", Shown::Usual(Kind::Angle), |wheel| wheel.toe_change),
            ("toe", Shown::Usual(Kind::Angle), |wheel| wheel.toe),
            ("vertical load", Shown::Usual(Kind::Force), |wheel| wheel.vertical_load),
            ("lateral load, to the left", Shown::Usual(Kind::Force), |wheel| wheel.lateral_load),
            ("longitudinal load, forward", Shown::Usual(Kind::Force), |wheel| wheel.longitudinal_load),
        ];
        let mut table = Table::new([Column::words("Wheel"), Column::plain("left"), Column::plain("right")]);
        for (name, shown, value) in rows {
            let cell = |side| self.numbers.bare(value(case.wheels.of(side)), shown);
            table.add_row([self.numbers.heading(name, shown), cell(Side::Left), cell(Side::Right)]);
        }
        table
    }

    fn split(&self, case: &CaseOutcome) -> Table {
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
        let angle = |side: Side| Column::shown(side.word(), Kind::Angle, self.numbers);
        let share = |side: Side| Column::number(side.word(), "%");
        let columns = Side::BOTH.into_iter().flat_map(|side| [angle(side), share(side)]);
        let mut table = Table::new([Column::words("Camber change by source")].into_iter().chain(columns));
        for (name, part) in parts.into_iter().filter(|(name, _)| !(tight && *name == CLEARANCE)) {
            let cells = Side::BOTH.into_iter().flat_map(|side| {
                let wheel = case.wheels.of(side);
                let value = part(&wheel.split);
                [self.numbers.bare(value, Kind::Angle), percent(value, wheel.camber_change)]
            });
            table.add_row([name.to_owned()].into_iter().chain(cells));
        }
        table
    }

    fn tires(&self, case: &CaseOutcome) -> Table {
        let n = self.numbers;
        let mut table = Table::new([
            Column::words("Tire"),
            Column::shown("y", Shown::Place, n),
            Column::shown("vertical", Kind::Force, n),
            Column::shown("to the left", Kind::Force, n),
            Column::plain("on the road"),
        ]);
        for side in Side::BOTH {
            for contact in &case.wheels.of(side).contacts {
                table.add_row([
                    format!("{} {}", side.word(), contact.slot.word()),
                    n.bare(contact.y, Shown::Place),
                    n.bare(contact.vertical_load, Kind::Force),
                    n.bare(contact.lateral_load, Kind::Force),
                    if contact.off_road { "no" } else { "yes" }.to_owned(),
                ]);
            }
        }
        table
    }

    fn bearings(&self, case: &CaseOutcome) -> Table {
        let n = self.numbers;
        let force = |text| Column::shown(text, Kind::Force, n);
        let forces = [force("up"), force("forward"), force("to the left"), force("radial")];
        let place = [Column::words("Bearing (hub on spindle)"), Column::shown("y", Shown::Place, n)];
        let mut table = Table::new(place.into_iter().chain(forces));
        for bearing in &case.bearings {
            let forces = [bearing.vertical, bearing.fore_aft, bearing.axial, bearing.radial];
            let place =
                [format!("{} {}", bearing.side.word(), bearing.place), n.bare(bearing.y, Shown::Place)];
            table.add_row(place.into_iter().chain(forces.map(|value| n.bare(value, Kind::Force))));
        }
        table
    }

    fn seats(&self, case: &CaseOutcome) -> Table {
        let n = self.numbers;
        let mut table = Table::new([
            Column::words("Seat (suspension on axle)"),
            Column::shown("y", Shown::Place, n),
            Column::shown("up", Kind::Force, n),
            Column::shown("moment about X", Kind::Moment, n),
            Column::shown("slope of the axle", Kind::Angle, n),
        ]);
        for side in Side::BOTH {
            let seat = case.seats.of(side);
            table.add_row([
                side.word().to_owned(),
                n.bare(seat.y, Shown::Place),
                n.bare(seat.vertical, Kind::Force),
                n.bare(seat.moment_x, Kind::Moment),
                n.bare(seat.rotation, Kind::Angle),
            ]);
        }
        table
    }

    /// Columns in which nothing but zeros would stand are left out.
    fn stations(&self, case: &CaseOutcome) -> Table {
        let cell = |station: &StationOutcome, column: &StationColumn| {
            self.numbers.bare((column.value)(station), column.shown)
        };
        let full = |column: &&StationColumn| {
            case.stations
                .iter()
                .any(|station| cell(station, column).contains(|c: char| ('1'..='9').contains(&c)))
        };
        let columns: Vec<&StationColumn> = STATION_COLUMNS.iter().filter(full).collect();
        let heading = columns.iter().map(|column| Column::shown(column.heading, column.shown, self.numbers));
        let mut table = Table::new([Column::words("Station")].into_iter().chain(heading));
        for station in &case.stations {
            let cells = columns.iter().map(|column| cell(station, column));
            table.add_row([station.name.clone()].into_iter().chain(cells));
        }
        table
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
    column("y", Shown::Place, |station| station.y),
    column("moved up", Shown::Deflection, |station| station.displacement[2]),
    column("moved forward", Shown::Deflection, |station| station.displacement[0]),
    column("slope", Shown::Usual(Kind::Angle), |station| station.displacement[3]),
    column("moment about X", Shown::Usual(Kind::Moment), |station| station.resultants.moment_x),
    column("moment about Z", Shown::Usual(Kind::Moment), |station| station.resultants.moment_z),
    column("shear up", Shown::Usual(Kind::Force), |station| station.resultants.shear_z),
    column("torque", Shown::Usual(Kind::Moment), |station| station.resultants.torsion),
    column("fiber stress", Shown::Usual(Kind::Stress), |station| station.stress),
];

fn percent(part: f64, whole: f64) -> String {
    if whole == 0.0 { "-".to_owned() } else { fixed(100.0 * part / whole, 1) }
}

/// Every default that was used.
fn assumed(card: &ModelCard) -> Vec<Block> {
    if card.assumed.is_empty() {
        return Vec::new();
    }
    let lines = card.assumed.iter().map(|used| format!("{} = {}: {}", used.path, used.value, used.meaning));
    vec![Block::heading("Assumed, because the file does not say:"), Block::List(lines.collect())]
}
