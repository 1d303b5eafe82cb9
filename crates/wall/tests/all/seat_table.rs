//! A table of seats beside the shells that it is made from.

use crate::example;
use axlebow_sections::Material;
use axlebow_wall::{Fineness, SeatKind, SeatTable, SeatWall, Tie, UBolts};

const RX: usize = 3;

fn seat(tube: (f64, f64), width: f64, degrees: f64) -> SeatWall {
    let material = Material::new("steel", 205e9, 0.3, 7850.0).unwrap();
    SeatWall { material, ..example::seat(tube, width, degrees) }
}

/// A table of coarser shells than usual.
fn table(kind: SeatKind) -> SeatTable {
    let solve = |place: Vec<f64>| {
        let seat = kind.seat(&place).unwrap();
        kind.run(&place, &seat, &seat.compliance(&coarse()).unwrap())
    };
    let runs: Vec<_> = kind.places().into_iter().map(solve).collect();
    let table = SeatTable::through(kind, &runs).unwrap();
    println!("left out: largest {:.4}, median {:.4}", table.left_out[0], table.left_out[1]);
    table
}

fn coarse() -> Fineness {
    Fineness::USUAL.scaled(2.0)
}

/// Error of each freedom over the compliance that is interpolated, and of the share. Up and down, where a wall gives way
/// by little and with either sign, over what moves it by 0.05 mm under 50 kN.
fn errors(table: &SeatTable, seat: &SeatWall) -> ([f64; 6], f64) {
    let (found, direct) = (table.at(seat).unwrap(), seat.compliance(&coarse()).unwrap());
    let error = |i: usize| {
        let of = if i == 2 { 1e-9 } else { direct.near[i][i] };
        (found.local[i][i] - direct.local[i][i]) / of
    };
    (std::array::from_fn(error), found.stiffened_share - direct.stiffened_share)
}

#[test]
fn a_table_of_brackets_says_what_shells_say_and_nothing_outside() {
    let table = table(SeatKind { poisson_ratio: 0.3, u_bolts: None, tie: Tie::Rigid });
    assert!(table.left_out[0] < 0.05 && table.left_out[1] < 0.01);
    for seat in [
        seat((0.1524, 0.009), 0.09, 90.0),
        seat((0.127, 0.0127), 0.18, 120.0),
        seat((0.14, 0.0095), 0.12, 75.0),
        seat((0.1, 0.011), 0.05, 60.0),
    ] {
        let (freedoms, share) = errors(&table, &seat);
        println!("{freedoms:.4?} {share:.4}");
        assert!(freedoms[RX].abs() < 0.01 && freedoms.iter().all(|error| error.abs() < 0.05), "{freedoms:?}");
        assert!(share.abs() < 0.02, "{share}");
    }
    let outside = [
        seat((0.127, 0.002), 0.09, 90.0),
        seat((0.127, 0.0127), 0.03, 90.0),
        seat((0.127, 0.0127), 0.09, 170.0),
        SeatWall { tie: Tie::Spread, ..seat((0.127, 0.0127), 0.09, 90.0) },
        SeatWall { clamp: Some(UBolts { diameter: 0.022, count: 2 }), ..seat((0.127, 0.0127), 0.09, 90.0) },
    ];
    assert!(outside.iter().all(|seat| table.at(seat).is_none()));
}

#[test]
#[ignore = "a minute; the brackets go the same way"]
fn a_table_of_clamps_says_what_shells_say() {
    let table = table(SeatKind { poisson_ratio: 0.3, u_bolts: Some(2), tie: Tie::Rigid });
    let clamp = Some(UBolts { diameter: 0.022, count: 2 });
    for seat in [
        SeatWall { clamp, ..seat((0.127, 0.0127), 0.18, 120.0) },
        SeatWall { clamp, ..seat((0.1524, 0.009), 0.12, 90.0) },
    ] {
        let (freedoms, share) = errors(&table, &seat);
        println!("{freedoms:.4?} {share:.4}");
        assert!(freedoms[RX].abs() < 0.04 && freedoms.iter().all(|error| error.abs() < 0.15), "{freedoms:?}");
        assert!(share.abs() < 0.02, "{share}");
    }
}
