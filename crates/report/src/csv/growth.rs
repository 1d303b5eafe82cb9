//! Maps of cups that grow.

use std::fmt::Write as _;

use axlebow_axle::Side;

use super::cell;
use crate::subject::AxleGrowth;

/// Growth at each speed and count, a line each, for both wheel ends of every axle.
pub fn growth(axles: &[AxleGrowth]) -> String {
    let mut text = "axle,speed_m_per_s,count,left_growth_per_m,right_growth_per_m".to_owned();
    for AxleGrowth { name, outcome } in axles {
        let name = cell(name);
        for (i, count) in outcome.counts.iter().enumerate() {
            for (j, speed) in outcome.speeds.iter().enumerate() {
                let [left, right] = Side::BOTH.map(|side| outcome.wheels.of(side).map[i][j]);
                // A String takes every write.
                let _ = write!(text, "\r\n{name},{speed:?},{count},{left:?},{right:?}");
            }
        }
    }
    text + "\r\n"
}
