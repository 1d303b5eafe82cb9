//! Cycles of a stress history, counted by rainflow.

use crate::StrengthError;
use crate::error::finite;

/// A counted cycle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cycle {
    /// Range, from valley to peak, in the unit of the history.
    pub range: f64,
    /// Mean of valley and peak, in the unit of the history.
    pub mean: f64,
    /// 1 for a whole cycle, 0.5 for a half one.
    pub count: f64,
    /// Where in the history its first reversal is, counted from 0.
    pub from: usize,
    /// Where its second reversal is.
    pub to: usize,
}

/// A reversal: where it is and its value.
#[derive(Debug, Clone, Copy)]
struct Reversal {
    place: usize,
    value: f64,
}

impl Cycle {
    fn between(start: Reversal, end: Reversal, count: f64) -> Self {
        let (range, mean) = ((end.value - start.value).abs(), 0.5 * (end.value + start.value));
        Self { range, mean, count, from: start.place, to: end.place }
    }
}

/// Counts the cycles of a history as it comes, a value at a time: only reversals that are still open are kept.
///
/// Three reversals hold a range Y and after it a range X. While X is at least Y, Y is counted and removed: as a half
/// cycle where it holds the start of the history, else as a whole one. What is left at the end counts as half cycles.
///
/// Source: ASTM E1049-85 (2017), sec. 5.4.4.
#[derive(Debug, Clone, Default)]
pub struct RainflowCounter {
    open: Vec<Reversal>,
    tip: Option<Reversal>,
    rising: Option<bool>,
    next: usize,
}

impl RainflowCounter {
    /// Takes the next value of the history and tells the cycles that close.
    ///
    /// Errors: [`StrengthError::NotFinite`].
    #[inline]
    pub fn push(&mut self, value: f64, closed: impl FnMut(Cycle)) -> Result<(), StrengthError> {
        let value = finite("stress of the history", value, "Pa")?;
        let here = Reversal { place: self.next, value };
        self.next += 1;
        let Some(tip) = self.tip else {
            self.tip = Some(here);
            return Ok(());
        };
        if value == tip.value {
            return Ok(());
        }
        let rising = Some(value > tip.value);
        if rising != self.rising {
            self.reverse(tip, closed);
            self.rising = rising;
        }
        self.tip = Some(here);
        Ok(())
    }

    /// Ends the history and tells what is left open as half cycles; a flat history has none.
    pub fn finish(mut self, mut closed: impl FnMut(Cycle)) {
        if let (Some(tip), Some(_)) = (self.tip, self.rising) {
            self.reverse(tip, &mut closed);
        }
        self.open.windows(2).for_each(|pair| closed(Cycle::between(pair[0], pair[1], 0.5)));
    }

    /// Takes a reversal.
    fn reverse(&mut self, reversal: Reversal, mut closed: impl FnMut(Cycle)) {
        let open = &mut self.open;
        open.push(reversal);
        while let [.., a, b, c] = open[..] {
            if (c.value - b.value).abs() < (b.value - a.value).abs() {
                break;
            }
            if open.len() == 3 {
                closed(Cycle::between(a, b, 0.5));
                open.remove(0);
            } else {
                closed(Cycle::between(a, b, 1.0));
                open.drain(open.len() - 3..open.len() - 1);
            }
        }
    }
}

/// Cycles of a history, in the order in which they close; a flat history has none.
///
/// - `history`: values in any unit, in order; ends count as reversals
///
/// Errors: [`StrengthError::NotFinite`].
///
/// Source: as for [`RainflowCounter`].
pub fn rainflow(history: &[f64]) -> Result<Vec<Cycle>, StrengthError> {
    let (mut cycles, mut counter) = (Vec::new(), RainflowCounter::default());
    history.iter().try_for_each(|value| counter.push(*value, |cycle| cycles.push(cycle)))?;
    counter.finish(|cycle| cycles.push(cycle));
    Ok(cycles)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cycles_of_the_standard_come_in_its_order() {
        // ASTM E1049-85 (2017), sec. 5.4.4 and Fig. 6; confirmed in a second source.
        let cycles = rainflow(&[-2.0, 1.0, -3.0, 5.0, -1.0, 3.0, -4.0, 4.0, -2.0]).unwrap();
        let seen: Vec<_> = cycles.iter().map(|c| (c.range, c.mean, c.count, c.from, c.to)).collect();
        let printed = [
            (3.0, -0.5, 0.5, 0, 1),
            (4.0, -1.0, 0.5, 1, 2),
            (4.0, 1.0, 1.0, 4, 5),
            (8.0, 1.0, 0.5, 2, 3),
            (9.0, 0.5, 0.5, 3, 6),
            (8.0, 0.0, 0.5, 6, 7),
            (6.0, 1.0, 0.5, 7, 8),
        ];
        assert_eq!(seen, printed);
    }

    #[test]
    fn points_on_the_way_and_flat_stretches_do_not_count() {
        let counted =
            |history: &[f64]| rainflow(history).unwrap().iter().map(|c| c.range).collect::<Vec<_>>();
        assert_eq!(counted(&[0.0, 1.0, 2.0, 2.0, 1.0, 1.0, 0.0]), [2.0, 2.0]);
        assert!(counted(&[]).is_empty() && counted(&[1.0]).is_empty() && counted(&[1.0, 1.0]).is_empty());
    }

    #[test]
    fn a_history_with_no_number_in_it_is_refused() {
        assert!(rainflow(&[0.0, f64::NAN, 1.0]).is_err());
        assert!(rainflow(&[0.0, f64::INFINITY]).is_err());
    }
}
