//! How likely a sheet is if a cause has worn the axle.

use axlebow_numerics::{JointNormal, Readings, Straightened, chi_squared_tail, log_sum_exp};
use nalgebra::{DMatrix, DVector};
use statrs::distribution::{ContinuousCDF, Normal};

use super::library::{Cell, Library};
use super::observed::{Evidence, NumberRead, Observed, PredictedBy, WordsRead};
use super::parameter::Parameter;
use super::wear_cause::WearCause;
use super::worn_axle::WornAxle;

/// What the tire face leaves out, in the logarithm of wear: between ribs of a tire, and between tires.
///
/// One value for all causes, so that none is favored, estimated on invented sheets that another model has made (other tire, other
/// duty, other errors); see the README of this crate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Discrepancy {
    /// Standard deviation of a rib.
    pub rib: f64,
    /// Standard deviation that all ribs of a tire share.
    pub tire: f64,
}

impl Discrepancy {
    /// That of those tried with the best mean logarithm of the probability of the truth.
    pub const ESTIMATED: Discrepancy = Discrepancy { rib: 0.08, tire: 0.05 };
}

/// One-sided share of scuff from which a hand feels feathering, and the standard error of a hand (judgments, no source).
const FELT: f64 = 0.2;
const HAND: f64 = 0.15;
/// Share of hands that say anything.
const LAPSE: f64 = 0.06;

/// A sheet held against the patterns of an axle.
pub struct Likelihood<'a> {
    pub worn: &'a WornAxle<'a>,
    pub library: &'a Library,
    pub observed: &'a Observed,
    pub discrepancy: Discrepancy,
    cells: Vec<OnCell<'a>>,
    /// What was read: worn depths, whose errors share that of the new depth, and sums of parameters.
    pub readings: Readings,
    /// Covariance of what neither parameters nor readings make: the rate of wear, and what the tire face leaves out.
    pub tire_face: DMatrix<f64>,
}

/// What a cell says of the readings.
pub struct OnCell<'a> {
    /// The cell.
    pub cell: &'a Cell,
    /// Mean of each number.
    pub mean: DVector<f64>,
    /// What a standard deviation of each parameter adds to it.
    pub per_spread: DMatrix<f64>,
    /// What a unit of size adds to it.
    pub per_size: DVector<f64>,
    /// Covariance of the numbers.
    pub covariance: DMatrix<f64>,
    /// The readings as it sees them: worn depths as logarithms.
    pub read: Straightened,
    /// Logarithm of its likelihood times its share of the cause.
    pub log_weight: f64,
}

impl OnCell<'_> {
    /// Values of the numbers at some places.
    pub fn values(&self, places: &[usize]) -> DVector<f64> {
        self.read.values.select_rows(places)
    }

    /// The distribution of the numbers at some places.
    pub fn joint(&self, places: &[usize]) -> Option<JointNormal> {
        JointNormal::new(
            self.mean.select_rows(places),
            self.covariance.select_rows(places).select_columns(places),
        )
    }

    /// Logarithm of the density of the readings at some places; 0 for none.
    fn log_density(&self, places: &[usize]) -> f64 {
        if places.is_empty() {
            return 0.0;
        }
        let units = self.read.log_units.select_rows(places).sum();
        self.joint(places).map_or(f64::NEG_INFINITY, |joint| joint.log_density(&self.values(places)) - units)
    }
}

impl<'a> Likelihood<'a> {
    pub fn new(
        worn: &'a WornAxle<'a>,
        library: &'a Library,
        observed: &'a Observed,
        discrepancy: Discrepancy,
    ) -> Self {
        let (readings, tire_face) = (made_readings(observed), made_tire_face(observed, discrepancy));
        let mut likelihood =
            Likelihood { worn, library, observed, discrepancy, cells: Vec::new(), readings, tire_face };
        let mut cells: Vec<OnCell<'a>> = library.cells.iter().map(|cell| likelihood.on_cell(cell)).collect();
        for on in &mut cells {
            on.log_weight = likelihood.weighed(on, None);
        }
        likelihood.cells = cells;
        likelihood
    }

    /// The cells of a cause, with what each says of the readings.
    pub fn cells_of(&self, cause: WearCause) -> impl Iterator<Item = &OnCell<'a>> {
        self.cells.iter().filter(move |on| on.cell.variant.cause == cause)
    }

    /// Logarithm of the likelihood of a cause, readings of one kind left out if asked for.
    pub fn of_cause(&self, cause: WearCause, without: Option<Evidence>) -> f64 {
        let of = |on: &OnCell<'_>| match without {
            None => on.log_weight,
            some => self.weighed(on, some),
        };
        log_sum_exp(&self.cells_of(cause).map(of).collect::<Vec<_>>())
    }

    fn weighed(&self, on: &OnCell<'_>, without: Option<Evidence>) -> f64 {
        on.cell.share.ln() + self.of_cell(on, without)
    }

    /// Logarithm of the likelihood of a cell.
    pub fn of_cell(&self, on: &OnCell<'_>, without: Option<Evidence>) -> f64 {
        on.log_density(&self.places(without)) + self.of_words(on, without)
    }

    /// Probability that readings lie as far from a cell as these, by chi squared.
    pub fn fit(&self, on: &OnCell<'_>) -> f64 {
        let places = self.places(None);
        let squared = on.joint(&places).map(|joint| joint.squared_distance(&on.values(&places)));
        squared.map_or(0.0, |squared| chi_squared_tail(squared, places.len()))
    }

    /// Places of numbers that are not of the kind left out.
    pub fn places(&self, without: Option<Evidence>) -> Vec<usize> {
        let numbers = self.observed.numbers.iter().enumerate();
        numbers.filter(|(_, read)| Some(read.evidence) != without).map(|(place, _)| place).collect()
    }

    fn on_cell(&self, cell: &'a Cell) -> OnCell<'a> {
        let numbers = &self.observed.numbers;
        let rows: Vec<PredictedRow> = numbers.iter().map(|read| self.row(cell, &read.predicted_by)).collect();
        let count = rows.len();
        let mean = DVector::from_iterator(count, rows.iter().map(|row| row.mean));
        let per_size = DVector::from_iterator(count, rows.iter().map(|row| row.per_size));
        let parameters = self.worn.parameters().len();
        let per_spread = DMatrix::from_fn(count, parameters, |row, column| rows[row].per_spread[column]);
        let known = &per_spread * per_spread.transpose()
            + &per_size * per_size.transpose() * cell.size_variance
            + &self.tire_face;
        let read = self.readings.straightened(&mean, &known);
        let covariance = known + &read.errors;
        OnCell { cell, mean, per_spread, per_size, covariance, read, log_weight: f64::NEG_INFINITY }
    }

    /// What a cell says of one number.
    pub fn row(&self, cell: &Cell, by: &PredictedBy) -> PredictedRow {
        match by {
            PredictedBy::Rib { rib, .. } => PredictedRow {
                mean: cell.mean[*rib] + self.observed.rate.0,
                per_size: cell.per_size[*rib],
                per_spread: self.kept(cell, cell.per_spread.row(*rib).iter().copied()),
            },
            PredictedBy::Parameters { base, of } => {
                let parameters = self.worn.parameters();
                let has = |place: &usize| of.contains(&parameters[*place]);
                let own = (0..parameters.len()).filter(has).map(|place| cell.state[place]);
                let spread = parameters.iter().map(|own| if of.contains(own) { own.spread() } else { 0.0 });
                PredictedRow {
                    mean: base + own.sum::<f64>(),
                    per_size: of.iter().map(|own| cell.variant.factor(*own)).sum(),
                    per_spread: self.kept(cell, spread),
                }
            }
        }
    }

    /// Spreads of parameters, without those in whose place a cause's size stands.
    fn kept(&self, cell: &Cell, spreads: impl Iterator<Item = f64>) -> Vec<f64> {
        let parameters = self.worn.parameters().iter();
        let one = |(spread, own): (f64, &Parameter)| if cell.variant.replaces(*own) { 0.0 } else { spread };
        spreads.zip(parameters).map(one).collect()
    }

    fn of_words(&self, on: &OnCell<'_>, without: Option<Evidence>) -> f64 {
        let WordsRead { feathering, cups, damper } = &self.observed.words;
        let cause = on.cell.variant.cause;
        let kept = |evidence| without != Some(evidence);
        let felt = feathering.iter().filter(|_| kept(Evidence::Feathering));
        let felt: f64 = felt.map(|(tire, class)| self.feather_shares(on.cell, *tire)[*class].ln()).sum();
        let cups = cups.filter(|_| kept(Evidence::Cups)).map_or(0.0, |class| cause.cup_shares()[class].ln());
        let damper =
            damper.filter(|_| kept(Evidence::Damper)).map_or(0.0, |class| cause.damper_shares()[class].ln());
        felt + cups + damper
    }

    /// Logarithm of the likelihood of the words with two cells at once: one-sided scuffs add up; cups and dampers are as with
    /// the cause that has fewer sound ones.
    pub fn of_words_together(&self, [a, b]: [&OnCell<'_>; 2]) -> f64 {
        let WordsRead { feathering, cups, damper } = &self.observed.words;
        let felt = feathering
            .iter()
            .map(|(tire, class)| self.feather_together([a.cell, b.cell], *tire)[*class].ln());
        let worse = |shares: [[f64; 3]; 2]| if shares[0][0] <= shares[1][0] { shares[0] } else { shares[1] };
        let causes = [a, b].map(|on| on.cell.variant.cause);
        let cups = cups.map_or(0.0, |class| worse(causes.map(WearCause::cup_shares))[class].ln());
        let damper = damper.map_or(0.0, |class| worse(causes.map(WearCause::damper_shares))[class].ln());
        felt.sum::<f64>() + cups + damper
    }

    fn feather_together(&self, [a, b]: [&Cell; 2], tire: usize) -> [f64; 3] {
        let place = self.library.usual.log_wear.len() + tire;
        let base = if b.variant.drags() { b } else { a };
        let spreads = self.kept(base, base.per_spread.row(place).iter().copied());
        let own = spreads.iter().map(|spread| spread * spread).sum::<f64>();
        let sized = [a, b].map(|cell| cell.per_size[place].powi(2) * cell.size_variance);
        let one_sided = a.mean[place] + b.mean[place] - self.library.usual.feathering[tire];
        shares_of_hands(one_sided, (own + sized[0] + sized[1] + HAND * HAND).sqrt())
    }

    /// Shares in which hands feel a tire to point inboard, not at all, and outboard.
    pub fn feather_shares(&self, cell: &Cell, tire: usize) -> [f64; 3] {
        let place = self.library.usual.log_wear.len() + tire;
        let spreads = self.kept(cell, cell.per_spread.row(place).iter().copied());
        let own = spreads.iter().map(|spread| spread * spread).sum::<f64>();
        let sized = cell.per_size[place].powi(2) * cell.size_variance;
        shares_of_hands(cell.mean[place], (own + sized + HAND * HAND).sqrt())
    }
}

/// What was read: worn depths, whose errors share that of the new depth, and sums of parameters.
fn made_readings(observed: &Observed) -> Readings {
    let numbers = &observed.numbers;
    let is_rib = |read: &NumberRead| matches!(read.predicted_by, PredictedBy::Rib { .. });
    let shared = observed.new_depth.1.powi(2);
    let error = |i: usize, j: usize| {
        let own = if i == j { numbers[i].error.powi(2) } else { 0.0 };
        own + if is_rib(&numbers[i]) && is_rib(&numbers[j]) { shared } else { 0.0 }
    };
    Readings {
        values: DVector::from_iterator(numbers.len(), numbers.iter().map(|read| read.value)),
        errors: DMatrix::from_fn(numbers.len(), numbers.len(), error),
        logarithms: numbers.iter().map(is_rib).collect(),
    }
}

/// Covariance of what neither parameters nor readings make: the rate of wear, and what the tire face leaves out.
fn made_tire_face(observed: &Observed, discrepancy: Discrepancy) -> DMatrix<f64> {
    let numbers = &observed.numbers;
    let Discrepancy { rib: of_rib, tire: of_tire } = discrepancy;
    DMatrix::from_fn(numbers.len(), numbers.len(), |i, j| {
        let (PredictedBy::Rib { tire, .. }, PredictedBy::Rib { tire: other, .. }) =
            (&numbers[i].predicted_by, &numbers[j].predicted_by)
        else {
            return 0.0;
        };
        let of = |is_same: bool, deviation: f64| if is_same { deviation.powi(2) } else { 0.0 };
        observed.rate.1.powi(2) + of(tire == other, of_tire) + of(i == j, of_rib)
    })
}

/// Shares in which hands feel a one-sided share of scuff, known within a standard deviation: inboard, none, outboard.
fn shares_of_hands(one_sided: f64, deviation: f64) -> [f64; 3] {
    let above = |limit: f64| Normal::standard().cdf((one_sided - limit) / deviation);
    let (inboard, outboard) = (above(FELT), 1.0 - above(-FELT));
    [inboard, 1.0 - inboard - outboard, outboard].map(|share| LAPSE / 3.0 + (1.0 - LAPSE) * share)
}

/// What a cell says of one number.
pub struct PredictedRow {
    /// Its mean.
    pub mean: f64,
    /// What a unit of size adds.
    pub per_size: f64,
    /// What a standard deviation of each parameter adds.
    pub per_spread: Vec<f64>,
}

impl PredictedRow {
    /// Its variance in a cell, the reading's own error not counted.
    pub fn variance(&self, cell: &Cell) -> f64 {
        let own: f64 = self.per_spread.iter().map(|spread| spread * spread).sum();
        own + self.per_size.powi(2) * cell.size_variance
    }

    /// Its covariance with the numbers that were read.
    pub fn covariances(&self, on: &OnCell<'_>) -> DVector<f64> {
        let own = DVector::from_column_slice(&self.per_spread);
        &on.per_spread * own + &on.per_size * (self.per_size * on.cell.size_variance)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: straight and sure is felt as none but for lapses; on the limit half of the hands feel it.
    #[test]
    fn hands_feel_what_is_one_sided() {
        let [inboard, none, outboard] = shares_of_hands(0.0, 1e-6);
        assert!(
            (inboard - 0.02).abs() < 1e-12 && (none - 0.96).abs() < 1e-12 && (outboard - 0.02).abs() < 1e-12
        );
        let [inboard, none, _] = shares_of_hands(0.2, 1e-3);
        assert!((inboard - 0.49).abs() < 1e-9 && (none - 0.49).abs() < 1e-9);
        let [inboard, none, outboard] = shares_of_hands(-0.35, 0.15);
        assert!((outboard - (0.02 + 0.94 * 0.841_344_746)).abs() < 1e-8);
        assert!((inboard + none + outboard - 1.0).abs() < 1e-15);
    }
}
