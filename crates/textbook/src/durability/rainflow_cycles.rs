//! Rainflow cycles of the standard's own history.

use axlebow_strength::{Cycle, rainflow};

use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::text;

const ASTM: &str = "ASTM E1049-85 (2017), sec. 5.4.4 and Fig. 6; confirmed in a second source";

/// The history of Fig. 6.
const HISTORY: [f64; 9] = [-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0];

const RANGE: &str = "|x_i − x_j| of the two points";
const MEAN: &str = "(x_i + x_j)/2 of the two points";
const COUNT: &str = "1; 1/2 for a range that holds the start of the history or is left over";
const SUM: &str = "sum of the counts of these cycles";
const INPUTS: &str = "history −2, 1, −3, 5, −1, 3, −4, 4, −2";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    cycle("range_matches_astm_e1049_figure_6_cycle_1", "range of cycle 1, points 0 to 1", RANGE, 3.0, || {
        Ok(nth(1)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_1", "mean of cycle 1, points 0 to 1", MEAN, -0.5, || {
        Ok(nth(1)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_1", "count of cycle 1, points 0 to 1", COUNT, 0.5, || {
        Ok(nth(1)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_2", "range of cycle 2, points 1 to 2", RANGE, 4.0, || {
        Ok(nth(2)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_2", "mean of cycle 2, points 1 to 2", MEAN, -1.0, || {
        Ok(nth(2)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_2", "count of cycle 2, points 1 to 2", COUNT, 0.5, || {
        Ok(nth(2)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_3", "range of cycle 3, points 4 to 5", RANGE, 4.0, || {
        Ok(nth(3)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_3", "mean of cycle 3, points 4 to 5", MEAN, 1.0, || {
        Ok(nth(3)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_3", "count of cycle 3, points 4 to 5", COUNT, 1.0, || {
        Ok(nth(3)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_4", "range of cycle 4, points 2 to 3", RANGE, 8.0, || {
        Ok(nth(4)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_4", "mean of cycle 4, points 2 to 3", MEAN, 1.0, || {
        Ok(nth(4)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_4", "count of cycle 4, points 2 to 3", COUNT, 0.5, || {
        Ok(nth(4)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_5", "range of cycle 5, points 3 to 6", RANGE, 9.0, || {
        Ok(nth(5)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_5", "mean of cycle 5, points 3 to 6", MEAN, 0.5, || {
        Ok(nth(5)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_5", "count of cycle 5, points 3 to 6", COUNT, 0.5, || {
        Ok(nth(5)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_6", "range of cycle 6, points 6 to 7", RANGE, 8.0, || {
        Ok(nth(6)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_6", "mean of cycle 6, points 6 to 7", MEAN, 0.0, || {
        Ok(nth(6)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_6", "count of cycle 6, points 6 to 7", COUNT, 0.5, || {
        Ok(nth(6)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_7", "range of cycle 7, points 7 to 8", RANGE, 6.0, || {
        Ok(nth(7)?.range)
    }),
    derived("mean_matches_astm_e1049_figure_6_cycle_7", "mean of cycle 7, points 7 to 8", MEAN, 1.0, || {
        Ok(nth(7)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_7", "count of cycle 7, points 7 to 8", COUNT, 0.5, || {
        Ok(nth(7)?.count)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_3", "cycles of range 3", SUM, 0.5, || {
        counted(|range| range == 3.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_4", "cycles of range 4", SUM, 1.5, || {
        counted(|range| range == 4.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_6", "cycles of range 6", SUM, 0.5, || {
        counted(|range| range == 6.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_8", "cycles of range 8", SUM, 1.0, || {
        counted(|range| range == 8.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_9", "cycles of range 9", SUM, 0.5, || {
        counted(|range| range == 9.0)
    }),
    derived("count_matches_astm_e1049_figure_6_all_ranges", "cycles in all", SUM, 4.0, || counted(|_| true)),
];

const fn cycle(
    id: &'static str,
    quantity: &'static str,
    formula: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "rainflow",
        quantity,
        unit: "",
        source: ASTM,
        formula,
        inputs: INPUTS,
        provenance: Provenance::Printed,
        reference,
        tolerance: Tolerance::Absolute(1e-12),
        computed,
        difference: None,
    }
}

/// A value that the standard does not print but that follows from those that it does.
const fn derived(
    id: &'static str,
    quantity: &'static str,
    formula: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    cycle(id, quantity, formula, reference, computed).with_provenance(Provenance::ClosedForm)
}

/// A cycle by its place in the standard's table, from 1.
fn nth(place: usize) -> Result<Cycle, String> {
    let cycles = rainflow(&HISTORY).map_err(text)?;
    cycles.get(place - 1).copied().ok_or_else(|| format!("there are {} cycles", cycles.len()))
}

/// Sum of the counts of the ranges that are wanted.
fn counted(wanted: fn(f64) -> bool) -> Result<f64, String> {
    let cycles = rainflow(&HISTORY).map_err(text)?;
    Ok(cycles.iter().filter(|cycle| wanted(cycle.range)).map(|cycle| cycle.count).sum())
}
