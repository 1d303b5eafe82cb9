//! Seats from their tables.

use axlebow_axle::{Body, BumpStop, Fixing, Seat, SeatBracket, Side, Suspension, WallBy};

use super::builder::{Builder, covers};
use crate::content::{Assumed, Table};
use crate::faults::Span;

/// Diameter of U-bolt legs where the file does not say, m: 7/8 in (common practice, no source).
const U_BOLT_DIAMETER: f64 = 0.022;
/// Number of U-bolts where the file does not say (common practice, no source).
const U_BOLTS: u32 = 2;
/// Nut factor where the file does not say: dry steel (common practice, no source).
const NUT_FACTOR: f64 = 0.2;

impl Builder<'_> {
    pub(crate) fn seat(&mut self, table: &Table, body: &Body) -> Option<Seat> {
        let (suspension, own) = match (table.optional_table("leaf"), table.optional_table("trailing_arm")) {
            (Some(leaf), None) => (leaf_spring(leaf), leaf),
            (None, Some(arm)) => (trailing_arm(arm), arm),
            (leaf, _) => {
                let message = if leaf.is_some() {
                    "this seat has both a `leaf` and a `trailing_arm` table"
                } else {
                    "this seat has neither a `leaf` nor a `trailing_arm` table"
                };
                self.problems.push(table.span(), message, Some("one of the two".to_owned()));
                return None;
            }
        };
        let (wall, wall_flexibility) = wall(table);
        if wall.is_shell() && table.number("composite_fraction") != 0.0 {
            let message = "`composite_fraction` is given, but shells of the wall say it";
            let accepted = "composite_fraction left out or 0, or a value of wall_flexibility".to_owned();
            self.problems.push(table.span_of("composite_fraction"), message, Some(accepted));
        }
        Some(Seat {
            at: table.number("at"),
            width: table.number("width"),
            fixing: if table.word("fixing") == "welded" { Fixing::Welded } else { Fixing::Clamped },
            composite_fraction: table.number("composite_fraction"),
            suspension,
            rotational_stiffness: table.number("rotational_stiffness"),
            wall,
            wall_flexibility,
            weld_keep_out: table.number("weld_keep_out"),
            bracket: self.bracket(table, body),
            loss_factor: own.number("loss_factor"),
            damping: table.number("damping"),
            rebound_damping: table.optional_number("rebound_damping").unwrap_or(table.number("damping")),
            bump_stop: table.optional_table("bump_stop").map(bump_stop),
        })
    }

    /// What bears on the wall; what the file does not say is assumed where shells ask for it.
    fn bracket(&mut self, table: &Table, body: &Body) -> SeatBracket {
        let round = body.length_round_at(table.number("at"));
        let breadth = table.optional_number("bracket_breadth").unwrap_or(0.25 * round);
        if wall(table).0.is_shell() {
            self.assume_seat(table, "bracket_breadth", self.length(breadth));
            if table.word("fixing") == "clamped" {
                self.assume_seat(table, "u_bolt_diameter", self.length(U_BOLT_DIAMETER));
                self.assume_seat(table, "u_bolts", format!("{U_BOLTS}, each with two legs"));
                self.assume_seat(table, "nut_factor", NUT_FACTOR.to_string());
            }
        }
        SeatBracket {
            breadth,
            u_bolt_diameter: table.optional_number("u_bolt_diameter").unwrap_or(U_BOLT_DIAMETER),
            u_bolts: table.optional_count("u_bolts").unwrap_or(U_BOLTS),
            torque: table.optional_number("u_bolt_torque"),
            nut_factor: table.optional_number("nut_factor").unwrap_or(NUT_FACTOR),
        }
    }

    /// Lists a key of a seat as assumed unless the file has it.
    fn assume_seat(&mut self, table: &Table, key: &'static str, text: String) {
        if table.entry(key).is_some() {
            return;
        }
        let number =
            self.root.tables("seat").iter().position(|seat| seat.span() == table.span()).unwrap_or(0);
        let meaning = table.spec().key(key).map_or("", |spec| spec.meaning);
        self.assumed.push(Assumed { path: format!("seat[{number}].{key}"), text, meaning });
    }

    /// Where the file says how the wall at a seat gives way.
    pub(crate) fn place_of_wall(&self, side: Side) -> Span {
        let own = self.root.tables("seat").iter().find(|table| covers(table, side));
        own.map_or(0..0, |table| table.span_of("wall_flexibility"))
    }
}

fn wall(table: &Table) -> (WallBy, f64) {
    match table.optional_word("wall_flexibility") {
        Some("shell") => (WallBy::Shell, 0.0),
        Some("shell-spread") => (WallBy::ShellSpread, 0.0),
        Some(_) => (WallBy::Formula, 0.0),
        None => (WallBy::Given, table.number("wall_flexibility")),
    }
}

fn bump_stop(table: &Table) -> BumpStop {
    BumpStop {
        clearance: table.number("clearance"),
        stiffness: table.number("rate"),
        damping: table.number("damping"),
    }
}

fn leaf_spring(table: &Table) -> Suspension {
    Suspension::Leaf {
        vertical: table.number("vertical_rate"),
        lateral: table.number("lateral_rate"),
        fore_aft: table.number("fore_aft_rate"),
        wind_up: table.number("wind_up_stiffness"),
        yaw: table.number("yaw_stiffness"),
    }
}

fn trailing_arm(table: &Table) -> Suspension {
    Suspension::TrailingArm {
        pivot_ahead: table.number("pivot_ahead"),
        pivot_above: table.number("pivot_above"),
        bush_radial: table.number("bush_radial_rate"),
        bush_axial: table.number("bush_axial_rate"),
        spring_behind: table.number("spring_behind"),
        spring_rate: table.number("spring_rate"),
    }
}
