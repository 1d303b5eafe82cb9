//! Rainflow cycles of the standard's own history.

use axlebow_strength::{Cycle, rainflow};

use crate::case::{Case, Ours, Tolerance};
use crate::text;

const ASTM: &str = "ASTM E1049-85 (2017), sec. 5.4.4 and Fig. 6; confirmed in a second source";

/// The history of Fig. 6.
const HISTORY: [f64; 9] = [-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0];

/// The cases.
pub(crate) const CASES: &[Case] = &[
    cycle("range_matches_astm_e1049_figure_6_cycle_1", "range of cycle 1, points 0 to 1", 3.0, || {
        Ok(nth(1)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_1", "mean of cycle 1, points 0 to 1", -0.5, || {
        Ok(nth(1)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_1", "count of cycle 1, points 0 to 1", 0.5, || {
        Ok(nth(1)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_2", "range of cycle 2, points 1 to 2", 4.0, || {
        Ok(nth(2)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_2", "mean of cycle 2, points 1 to 2", -1.0, || {
        Ok(nth(2)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_2", "count of cycle 2, points 1 to 2", 0.5, || {
        Ok(nth(2)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_3", "range of cycle 3, points 4 to 5", 4.0, || {
        Ok(nth(3)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_3", "mean of cycle 3, points 4 to 5", 1.0, || {
        Ok(nth(3)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_3", "count of cycle 3, points 4 to 5", 1.0, || {
        Ok(nth(3)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_4", "range of cycle 4, points 2 to 3", 8.0, || {
        Ok(nth(4)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_4", "mean of cycle 4, points 2 to 3", 1.0, || {
        Ok(nth(4)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_4", "count of cycle 4, points 2 to 3", 0.5, || {
        Ok(nth(4)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_5", "range of cycle 5, points 3 to 6", 9.0, || {
        Ok(nth(5)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_5", "mean of cycle 5, points 3 to 6", 0.5, || {
        Ok(nth(5)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_5", "count of cycle 5, points 3 to 6", 0.5, || {
        Ok(nth(5)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_6", "range of cycle 6, points 6 to 7", 8.0, || {
        Ok(nth(6)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_6", "mean of cycle 6, points 6 to 7", 0.0, || {
        Ok(nth(6)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_6", "count of cycle 6, points 6 to 7", 0.5, || {
        Ok(nth(6)?.count)
    }),
    cycle("range_matches_astm_e1049_figure_6_cycle_7", "range of cycle 7, points 7 to 8", 6.0, || {
        Ok(nth(7)?.range)
    }),
    cycle("mean_matches_astm_e1049_figure_6_cycle_7", "mean of cycle 7, points 7 to 8", 1.0, || {
        Ok(nth(7)?.mean)
    }),
    cycle("count_matches_astm_e1049_figure_6_cycle_7", "count of cycle 7, points 7 to 8", 0.5, || {
        Ok(nth(7)?.count)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_3", "cycles of range 3", 0.5, || {
        counted(|range| range == 3.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_4", "cycles of range 4", 1.5, || {
        counted(|range| range == 4.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_6", "cycles of range 6", 0.5, || {
        counted(|range| range == 6.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_8", "cycles of range 8", 1.0, || {
        counted(|range| range == 8.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_range_9", "cycles of range 9", 0.5, || {
        counted(|range| range == 9.0)
    }),
    cycle("count_matches_astm_e1049_figure_6_all_ranges", "cycles in all", 4.0, || counted(|_| true)),
];

const fn cycle(id: &'static str, quantity: &'static str, printed: f64, ours: Ours) -> Case {
    Case {
        id,
        topic: "rainflow",
        quantity,
        unit: "",
        source: ASTM,
        printed,
        tolerance: Tolerance::Absolute(1e-12),
        ours,
        difference: None,
    }
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
