//! Results of waves of wear that grow.

use axlebow_axle::{GrowthOutcome, HeldWave, WheelGrowth};
use axlebow_results::{Field, field, within_a_sentence};

use super::{Cost, Quantity, Reader};
use crate::solve::design_cups::DesignCups;
use crate::solve::name;

pub(super) fn quantities() -> [Quantity; 9] {
    let damping = const { &field::<GrowthOutcome>("threshold-damping").term };
    let damping = Quantity {
        name: "cup-threshold-damping".to_owned(),
        ..Quantity::of_term(
            damping,
            "damping that ends cups",
            Cost::CupDamping,
            Reader::Cups(|cups| cups.threshold_damping),
        )
    };
    [
        of_wave(const { field("amplification") }, [name::CUP_AMPLIFICATION, "cup amplification per mm"]),
        of_wave(
            const { field("amplification-hub-held") },
            [name::CUP_AMPLIFICATION_HUB_HELD, "the same, hub immovable"],
        ),
        of_wave(const { field("count") }, ["cup-count", "cups"]),
        of_wave(const { field("frequency") }, ["cup-frequency", "cups' frequency"]),
        of_wave(const { field("worn-for-e-fold") }, ["cup-worn-for-e-fold", "worn for e-fold"]),
        of_wheel(const { field("critical-camber") }, "critical camber", |cups| {
            cups.worse().critical_camber()
        }),
        of_wheel(const { field("camber-margin") }, "camber margin", DesignCups::least_margin),
        of_wheel(const { field("distance-for-e-fold") }, "distance for e-fold", |cups| {
            cups.worse().distance_for_e_fold(cups.worse().winner())
        }),
        damping,
    ]
}

/// What the wave says that grows fastest.
fn of_wave(field: &'static Field<HeldWave>, [name, words]: [&'static str; 2]) -> Quantity {
    let meaning = format!(
        "Of the wave that grows fastest over the speeds held: {}",
        within_a_sentence(field.term.meaning)
    );
    Quantity {
        name: name.to_owned(),
        meaning,
        ..Quantity::of_term(&field.term, words, Cost::Cups, Reader::Wave(field))
    }
}

fn of_wheel(
    field: &'static Field<WheelGrowth>,
    words: &str,
    read: fn(&DesignCups) -> Option<f64>,
) -> Quantity {
    Quantity::of_term(&field.term, words, Cost::Cups, Reader::Cups(read))
}
