//! The weld of a stiffener along the axle: how stiff it is, where it runs, and in which pieces it is held.

use std::f64::consts::FRAC_1_SQRT_2;

use axlebow_sections::{Material, Placement};

use crate::assembly::stations::merged_positions;
use crate::mesh::seated_bar::SeatedBar;
use crate::parts::stiffener::{Stiffener, WeldPattern};
use crate::{Axle, SMALLEST_STEP};

/// Stiffness of a fillet weld along its line, per length of weld (N/m²).
///
/// k = G a/l = G/√2: the throat a = l/√2 shears over a width of about the leg l. Any fillet of this shape has the
/// same stiffness, because throat and width grow together.
///
/// - `shear_modulus`: G (Pa)
///
/// Validity: the weld alone between walls that do not give, the stiff end of what it can be; our estimate, no source.
pub fn weld_stiffness(shear_modulus: f64) -> f64 {
    shear_modulus * FRAC_1_SQRT_2
}

/// Stiffness of a stiffener's weld with what it joins giving way as plates, per length of weld (N/m²): the soft end of
/// what it can be.
///
/// 1/k = √2/G + (3 - ν)/(8 G t κ) + 2/(E′ t′ κ), t the wall of the axle, t′ the plate of the stiffener, κ = 1/l for the
/// length l over which so stiff a weld hands the force on. A wall loaded along a line by q cos κy goes along with it
/// by (3 - ν) q/(8 G t κ), a plate loaded along its free edge by 2 q/(E t κ).
///
/// Validity: walls wide against l, which beam theory has no part in; a real tube and a narrow leg give less.
///
/// Source: plane stress, Fourier's transform of Kelvin's and Cerruti's problems; derived, compared with shells in
/// `crates/axle/tests/all/weld_stiffness.rs`.
pub(crate) fn giving_stiffness(axle: &Axle, stiffener: &Stiffener, bar: &SeatedBar) -> f64 {
    let piece = axle.body.piece_at(0.5 * (stiffener.from + stiffener.to));
    let (wall, plate) = (axle.body.material(piece.part), &stiffener.material);
    let give_over = |length: f64| {
        let under = plate_give_along_a_line(wall) / piece.profile_at(piece.from).wall();
        let own = plate_give_along_an_edge(plate) / stiffener.form.plate().thickness;
        (under + own) * length
    };
    let throat = 1.0 / weld_stiffness(plate.shear_modulus());
    let softer = |k: f64, _| 1.0 / (throat + give_over(transfer_length(axle, stiffener, bar, k)));
    // Each step takes the square root of what is off.
    (0..20).fold(1.0 / throat, softer)
}

/// How far a wide plate goes along with a force q cos κy along a line, times its thickness and κ over q (1/Pa).
pub fn plate_give_along_a_line(material: &Material) -> f64 {
    (3.0 - material.poisson_ratio()) / (8.0 * material.shear_modulus())
}

/// How far a wide plate goes along with a force q cos κy along its free edge, times its thickness and κ over q (1/Pa).
pub fn plate_give_along_an_edge(material: &Material) -> f64 {
    2.0 / material.elastic_modulus()
}

/// A piece of weld that is held at one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct WeldPiece {
    /// m.
    pub y: f64,
    /// Length of weld that it stands for, m.
    pub length: f64,
}

/// Pieces in a transfer length where the force of the weld changes fastest: at its ends, and where the axle's section
/// changes. From there each piece is [`GROWTH`] times as long as the one before, as the force dies away exponentially, up
/// to [`LONGEST`] transfer lengths. The tests beside [`crate::statics::stiffening`] show what finer ones change.
const PIECES_IN_TRANSFER: f64 = 16.0;
const GROWTH: f64 = 1.3;
const LONGEST: f64 = 2.0;

/// Fewest pieces along a stiffener whose weld is so soft that its force changes all along.
const FEWEST: f64 = 24.0;

impl Stiffener {
    /// Ends of each length of weld, from right to left (m).
    ///
    /// Stitches are moved together a little where their pitch does not divide the stiffener, so that the first and
    /// the last lie at its ends; those that meet are one.
    pub fn weld_runs(&self) -> Vec<[f64; 2]> {
        let WeldPattern::Stitched { length, pitch } = self.weld.pattern else {
            return vec![[self.from, self.to]];
        };
        let room = self.length() - length;
        let gaps = (room / pitch - 1e-9).ceil().max(0.0);
        if gaps > 0.0 && room / gaps <= length {
            return vec![[self.from, self.to]];
        }
        let pitch = if gaps > 0.0 { room / gaps } else { 0.0 };
        let start = |number: usize| self.from + number as f64 * pitch;
        (0..=gaps as usize).map(|number| [start(number), start(number) + length]).collect()
    }

    /// The feet that are welded: rear and front, or the front one only.
    pub fn welded_feet(&self) -> [bool; 2] {
        [self.weld.both_sides, true]
    }
}

/// Pieces of the whole weld, each held in its middle.
///
/// - `fineness`: 1 for the usual pieces, 2 for pieces about half as long
pub(crate) fn pieces(axle: &Axle, stiffener: &Stiffener, bar: &SeatedBar, fineness: f64) -> Vec<WeldPiece> {
    let transfer = transfer_length(axle, stiffener, bar, stiffener.weld.stiffness);
    let transfer = transfer.min(stiffener.length() * PIECES_IN_TRANSFER / FEWEST);
    let steps = Steps {
        first: (transfer / (PIECES_IN_TRANSFER * fineness)).max(2.0 * SMALLEST_STEP),
        growth: 1.0 + (GROWTH - 1.0) / fineness,
        longest: LONGEST * transfer / fineness,
    };
    let changes = merged_positions(axle.body.pieces().iter().flat_map(|piece| [piece.to, -piece.to]));
    let along = |[from, to]: [f64; 2]| {
        let inside = |y: &&f64| from + 2.0 * SMALLEST_STEP < **y && **y < to - 2.0 * SMALLEST_STEP;
        let within = changes.iter().filter(inside).copied();
        let ends: Vec<f64> = [from].into_iter().chain(within).chain([to]).collect();
        let bounds: Vec<f64> =
            ends.windows(2).flat_map(|pair| steps.ends_to_middle(pair[0], pair[1])).chain([to]).collect();
        let piece = |pair: &[f64]| WeldPiece { y: 0.5 * (pair[0] + pair[1]), length: pair[1] - pair[0] };
        bounds.windows(2).map(piece).collect::<Vec<_>>()
    };
    stiffener.weld_runs().into_iter().flat_map(along).collect()
}

/// Steps that grow from an end.
#[derive(Debug, Clone, Copy)]
struct Steps {
    first: f64,
    growth: f64,
    longest: f64,
}

impl Steps {
    /// Places from one end up to short of the other, the steps growing from both.
    fn ends_to_middle(&self, from: f64, to: f64) -> Vec<f64> {
        let half = 0.5 * (to - from);
        let mut reached = vec![0.0];
        let mut step = self.first.min(half);
        while reached[reached.len() - 1] < half * (1.0 - 1e-9) {
            reached.push(reached[reached.len() - 1] + step);
            step = (self.growth * step).min(self.longest);
        }
        let stretch = half / reached[reached.len() - 1];
        let back = reached.iter().rev().skip(1).map(|distance| to - stretch * distance);
        let there = reached.iter().map(|distance| from + stretch * distance);
        there.chain(back.filter(|y| *y < to)).collect()
    }
}

/// Length over which a continuous weld hands the force on at an end, about (m).
///
/// 1/α with α² = k (1/EA₁ + 1/EA₂ + e²/(EI₁ + EI₂)): k the stiffness of all welds per length, e the distance
/// between the two centroids, 1 the axle and 2 the stiffener.
///
/// Source: N. M. Newmark, C. P. Siess & I. M. Viest, "Tests and analysis of composite beams with incomplete
/// interaction", *Proc. Soc. Exp. Stress Analysis* 9 (1951) 75-92; from memory, derived again.
fn transfer_length(axle: &Axle, stiffener: &Stiffener, bar: &SeatedBar, stiffness: f64) -> f64 {
    let middle = 0.5 * (stiffener.from + stiffener.to);
    let piece = axle.body.piece_at(middle);
    let own = axle.body.properties(&piece, middle.abs());
    let outward = Placement { turn: stiffener.clock, x: 0.0, z: 0.0 };
    let other = bar.seated(middle).area.placed(&outward);
    let (e_1, e_2) = (axle.body.material(piece.part).elastic_modulus(), stiffener.material.elastic_modulus());
    let (sine, cosine) = stiffener.clock.sin_cos();
    let own_moment = own.second_moment_x * cosine.powi(2) + own.second_moment_z * sine.powi(2);
    let bending = e_1 * own_moment + e_2 * other.second_moment_x;
    let give = 1.0 / (e_1 * own.area) + 1.0 / (e_2 * other.area) + other.centroid[1].powi(2) / bending;
    let welds = stiffener.welded_feet().into_iter().filter(|welded| *welded).count();
    1.0 / (welds as f64 * stiffness * give).sqrt()
}
