//! A table of seats on round tubes, made once from shells and interpolated.
//!
//! By similarity the compliance of a seat depends on ratios only: wall, seat width, breadth of the bracket and U-bolt
//! diameter, all over the tube's diameter, and Poisson's ratio. Interpolated is the wall's compliance with that of the length
//! under the seat, by its logarithm where it is positive, as about X it must be; what is beyond beam theory, of either sign,
//! is the difference from the beam's.

use std::f64::consts::PI;

use axlebow_sections::{Material, Profile, RoundTube};

use crate::WallError;
use crate::compliance::{MOST_STIFFENED, SeatCompliance};
use crate::cubic_spline::CubicSpline;
use crate::seat_wall::{SeatWall, Tie, UBolts};

/// What all seats of a table have in common.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeatKind {
    /// Poisson's ratio.
    pub poisson_ratio: f64,
    /// Number of U-bolts; none for welded brackets.
    pub u_bolts: Option<u32>,
    /// How force is handed on.
    pub tie: Tie,
}

/// One solved seat of a table: where it lies, and what the shells say, without dimensions.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatRun {
    /// Logarithms of the ratios.
    pub place: Vec<f64>,
    /// Compliances times E·D or E·D³, then the stiffened share.
    pub values: Vec<f64>,
}

/// A table of seats.
#[derive(Debug, Clone, PartialEq)]
pub struct SeatTable {
    kind: SeatKind,
    /// Which freedoms' compliance is positive in all runs.
    positive: [bool; 6],
    spline: CubicSpline,
    /// Largest error of the rotation about X, over itself, where each seat is left out in turn and interpolated from the
    /// others; that of the median.
    pub left_out: [f64; 2],
}

/// What a table says of a seat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TableAnswer {
    /// As of [`SeatCompliance::local`].
    pub local: [[f64; 6]; 6],
    /// As of [`SeatCompliance::stiffened_share`].
    pub stiffened_share: f64,
}

/// Least and largest ratios: wall, seat width, breadth (over the length round the wall), U-bolt diameter.
const RANGES: [[f64; 2]; 4] = [[0.045, 0.115], [0.4, 1.8], [0.14, 0.44], [0.12, 0.24]];
/// Seats of a table of brackets and of one of clamps: corners of the ranges, then a spread that fills them.
const SEATS: [usize; 2] = [96, 192];
/// Pairs of freedoms that a seat couples: its planes across and along the axle leave no others, but for some of 1 %.
const COUPLED: [[usize; 2]; 2] = [[0, 4], [1, 3]];
/// Number of values of a run: six of the diagonal, couplings, the stiffened share.
const VALUES: usize = 7 + COUPLED.len();
/// Freedom about X.
const RX: usize = 3;
/// Diameter and elastic modulus with which a table is run.
const UNIT: (f64, f64) = (0.1, 200e9);

impl SeatKind {
    /// The kind of a seat; none where it is no round tube.
    pub fn of(seat: &SeatWall) -> Option<Self> {
        matches!(seat.profile, Profile::RoundTube(_)).then(|| SeatKind {
            poisson_ratio: seat.material.poisson_ratio(),
            u_bolts: seat.clamp.map(|bolts| bolts.count),
            tie: seat.tie,
        })
    }

    fn dimensions(&self) -> usize {
        if self.u_bolts.is_some() { 4 } else { 3 }
    }

    /// Places of the seats that a table is made of: the corners of its ranges, then points of the additive recurrence of
    /// the generalized golden ratio, which fill a box evenly (M. Roberts 2018, from memory).
    pub fn places(&self) -> Vec<Vec<f64>> {
        let dimensions = self.dimensions();
        let corners = 1 << dimensions;
        let mut golden = 2.0_f64;
        (0..60).for_each(|_| golden = (1.0 + golden).powf(1.0 / (dimensions as f64 + 1.0)));
        let share = |number: usize, d: usize| {
            if number < corners {
                return f64::from(u8::from(number >> d & 1 == 1));
            }
            (0.5 + (number - corners + 1) as f64 * golden.powi(-(d as i32 + 1))).fract()
        };
        let place = |number: usize| {
            (0..dimensions)
                .map(|d| {
                    let [low, high] = RANGES[d].map(f64::ln);
                    low + share(number, d) * (high - low)
                })
                .collect()
        };
        (0..SEATS[dimensions - 3]).map(place).collect()
    }

    /// The seat at a place.
    ///
    /// # Errors
    /// [`WallError`] when there is no such tube.
    pub fn seat(&self, place: &[f64]) -> Result<SeatWall, WallError> {
        let (diameter, modulus) = UNIT;
        let ratio = |d: usize| place[d].exp();
        let wall = ratio(0) * diameter;
        let impossible =
            |what| WallError::Value { what, value: wall, unit: "m", accepted: "a wall of a tube" };
        let tube = RoundTube::new(diameter, wall).map_err(|_| impossible("wall of a table's seat"))?;
        let material = Material::new("steel", modulus, self.poisson_ratio, 7850.0);
        Ok(SeatWall {
            profile: tube.into(),
            material: material.map_err(|_| impossible("material of a table's seat"))?,
            width: ratio(1) * diameter,
            breadth: ratio(2) * PI * (diameter - wall),
            clamp: self.u_bolts.map(|count| UBolts { diameter: ratio(3) * diameter, count }),
            tie: self.tie,
            layout: None,
        })
    }

    /// What a solved seat adds to the table.
    pub fn run(&self, place: &[f64], seat: &SeatWall, solved: &SeatCompliance) -> SeatRun {
        let scale = Scale::of(seat);
        let near = scale.plain(&solved.near);
        let diagonal = (0..6).map(|i| near[i][i]);
        let coupled = COUPLED.map(|[i, j]| near[i][j]);
        let values = diagonal.chain(coupled).chain([solved.stiffened_share]).collect();
        SeatRun { place: place.to_vec(), values }
    }
}

impl SeatTable {
    /// The table of solved seats; none where they are not those of the kind, one after the other, or lack numbers.
    pub fn through(kind: SeatKind, runs: &[SeatRun]) -> Option<Self> {
        let is_solved =
            |run: &SeatRun| run.values.len() == VALUES && run.values.iter().all(|x| x.is_finite());
        if !runs.iter().map(|run| &run.place).eq(&kind.places()) || !runs.iter().all(is_solved) {
            return None;
        }
        let positive = std::array::from_fn(|i| runs.iter().all(|run| run.values[i] > 0.0));
        let places: Vec<Vec<f64>> = runs.iter().map(|run| unit_place(&run.place)).collect();
        let smooth: Vec<Vec<f64>> = runs.iter().map(|run| smoothed(&positive, &run.values)).collect();
        let values: Vec<Vec<f64>> = (0..VALUES).map(|v| smooth.iter().map(|own| own[v]).collect()).collect();
        let spline = CubicSpline::through(&places, &values)?;
        // A corner without the others would be read off outside of them.
        let inner = &spline.left_out(RX)[1 << kind.dimensions()..];
        let mut errors: Vec<f64> = inner.iter().map(|error| error.exp_m1().abs()).collect();
        errors.sort_by(f64::total_cmp);
        let left_out = [*errors.last()?, errors[errors.len() / 2]];
        positive[RX].then_some(SeatTable { kind, positive, spline, left_out })
    }

    /// What the table says of a seat; none outside of its ranges or of another kind.
    pub fn at(&self, seat: &SeatWall) -> Option<TableAnswer> {
        let place = self.place(seat)?;
        let values = self.spline.at(&unit_place(&place));
        let mut near = [[0.0; 6]; 6];
        for i in 0..6 {
            near[i][i] = if self.positive[i] { values[i].exp() } else { values[i] };
        }
        for (number, [i, j]) in COUPLED.into_iter().enumerate() {
            let of =
                if self.positive[i] && self.positive[j] { (near[i][i] * near[j][j]).sqrt() } else { 1.0 };
            near[i][j] = values[6 + number] * of;
            near[j][i] = near[i][j];
        }
        let stiffened_share = values[VALUES - 1];
        let mut local = Scale::of(seat).sized(&near);
        let flexing = 1.0 - stiffened_share.clamp(0.0, MOST_STIFFENED);
        let under = seat.under();
        (0..6).for_each(|i| local[i][i] -= flexing * under[i]);
        Some(TableAnswer { local, stiffened_share })
    }

    fn place(&self, seat: &SeatWall) -> Option<Vec<f64>> {
        let Profile::RoundTube(tube) = seat.profile else { return None };
        if SeatKind::of(seat)? != self.kind {
            return None;
        }
        let diameter = tube.outside_diameter();
        let round = PI * (diameter - tube.wall());
        let ratios = [Some(tube.wall() / diameter), Some(seat.width / diameter), Some(seat.breadth / round)];
        let bolts = seat.clamp.map(|bolts| bolts.diameter / diameter);
        let ratios = ratios.into_iter().chain([bolts]).flatten();
        let near = 1e-9;
        let inside = |(ratio, [low, high]): (f64, [f64; 2])| {
            (low * (1.0 - near)..=high * (1.0 + near)).contains(&ratio).then(|| ratio.ln())
        };
        ratios.zip(RANGES).map(inside).collect()
    }
}

/// The values of a run as they are interpolated: logarithms of what is positive in all runs, couplings over the roots of
/// the two that they couple.
fn smoothed(positive: &[bool; 6], values: &[f64]) -> Vec<f64> {
    let diagonal = (0..6).map(|i| if positive[i] { values[i].ln() } else { values[i] });
    let coupled = COUPLED.into_iter().enumerate().map(|(number, [i, j])| {
        let of = if positive[i] && positive[j] { (values[i] * values[j]).sqrt() } else { 1.0 };
        values[6 + number] / of
    });
    diagonal.chain(coupled).chain([values[VALUES - 1]]).collect()
}

/// A place with each range from 0 to 1.
fn unit_place(place: &[f64]) -> Vec<f64> {
    let share = |(x, range): (&f64, [f64; 2])| {
        let [low, high] = range.map(f64::ln);
        (x - low) / (high - low)
    };
    place.iter().zip(RANGES).map(share).collect()
}

/// Takes dimensions off compliances and puts them on: `C·E·D` of forces, `C·E·D³` of moments.
struct Scale {
    modulus: f64,
    diameter: f64,
}

impl Scale {
    fn of(seat: &SeatWall) -> Self {
        Scale { modulus: seat.material.elastic_modulus(), diameter: seat.profile.width() }
    }

    fn factor(&self, i: usize, j: usize) -> f64 {
        let turns = i32::from(i > 2) + i32::from(j > 2);
        self.modulus * self.diameter.powi(1 + turns)
    }

    fn plain(&self, compliance: &[[f64; 6]; 6]) -> [[f64; 6]; 6] {
        std::array::from_fn(|i| std::array::from_fn(|j| compliance[i][j] * self.factor(i, j)))
    }

    fn sized(&self, plain: &[[f64; 6]; 6]) -> [[f64; 6]; 6] {
        std::array::from_fn(|i| std::array::from_fn(|j| plain[i][j] / self.factor(i, j)))
    }
}
