//! Results of cups that grow.

use axlebow_results::{Field, Own, Part, Record, Text, in_unit, number, part};
use axlebow_units::Kind;

use crate::{GrowthInTime, GrowthOutcome, HeldWave, ShareOfRib, WaveInTime, WheelGrowth};

impl Record for GrowthOutcome {
    const FIELDS: &'static [Field<Self>] = &[
        part("case", "Load case in which the axle stands.", &Text(|run: &Self| &run.case)),
        part(
            "duty",
            "The duty: `line-haul`, `regional`, `city` or `stated`.",
            &Text(|run: &Self| run.duty.word()),
        ),
        number(
            "held-speed",
            Kind::Speed,
            "Mean of the speeds that the fleet holds.",
            &Own(|run: &Self| run.held.mean),
        ),
        number(
            "held-speed-deviation",
            Kind::Speed,
            "Their standard deviation.",
            &Own(|run: &Self| run.held.deviation),
        ),
        number(
            "threshold-damping",
            Kind::Damping,
            "Damping at each seat, alike in bump and rebound, from which on no wave grows over the speeds held; null where a \
             tire grows waves by itself, or where no damping ends it.",
            &Part(|run: &Self| &run.threshold_damping),
        ),
        number("speeds", Kind::Speed, "Speeds of the maps, rising.", &Part(|run: &Self| &run.speeds)),
        part(
            "counts",
            "Cups round the tire, rising.",
            &Own(|run: &Self| run.counts.iter().copied().map(usize::from).collect::<Vec<_>>()),
        ),
        part("wheels", "Each wheel end.", &Part(|run: &Self| &run.wheels)),
        part(
            "in-time",
            "The wave that wins at the mean speed in time, its worn profile fed back as the road; null where no height was asked.",
            &Part(|run: &Self| &run.in_time),
        ),
    ];
}

impl Record for GrowthInTime {
    const FIELDS: &'static [Field<Self>] = &[
        part("side", "The wheel end whose wave wins.", &Text(|run: &Self| run.side.word())),
        part("count", "Cups round the tire.", &Own(|run: &Self| usize::from(run.count))),
        in_unit(
            "growth-small",
            "1/m",
            "Growth in motions that are small, by eigenvalue, for each meter of mean tread worn.",
            &Own(|run: &Self| run.small),
        ),
        number(
            "worn-per-turn",
            Kind::Length,
            "Mean tread worn in each turn: wear is accelerated until a turn shows it.",
            &Own(|run: &Self| run.worn_per_turn),
        ),
        part("waves", "The wave at each height.", &Part(|run: &Self| &run.waves)),
    ];
}

impl Record for WaveInTime {
    const FIELDS: &'static [Field<Self>] = &[
        number(
            "height",
            Kind::Length,
            "Height of its crests over the mean of the rib that takes part most, as it begins.",
            &Own(|wave: &Self| wave.height),
        ),
        in_unit("growth", "1/m", "Growth for each meter of mean tread worn.", &Own(|wave: &Self| wave.rate)),
        part(
            "amplification",
            "By how much the wave is multiplied for each millimeter of mean tread worn.",
            &Own(|wave: &Self| (1e-3 * wave.rate).exp()),
        ),
        part(
            "off-road",
            "Share of the time in which a tire of the end is off the road.",
            &Own(|wave: &Self| wave.off_road),
        ),
        part(
            "bearing-loose",
            "Share of the time in which the bearing with play does not press; null without play.",
            &Own(|wave: &Self| wave.bearing_loose),
        ),
        number(
            "hub-rise",
            Kind::Length,
            "How far the hub rises and falls about its middle.",
            &Own(|wave: &Self| wave.hub_rise),
        ),
    ];
}

impl Record for WheelGrowth {
    const FIELDS: &'static [Field<Self>] = &[
        number("load", Kind::Force, "Load of the road.", &Own(|wheel: &Self| wheel.pose.load)),
        number(
            "camber",
            Kind::Angle,
            "Camber against the road, positive with the top leaning outward.",
            &Own(|wheel: &Self| wheel.pose.camber),
        ),
        number("toe", Kind::Angle, "Toe, positive toe-in.", &Own(|wheel: &Self| wheel.pose.toe)),
        number("rolling-radius", Kind::Length, "Rolling radius.", &Own(|wheel: &Self| wheel.rolling_radius)),
        number(
            "critical-camber-inner",
            Kind::Angle,
            "Camber below which, the top leaning farther in, an inner shoulder feeds on itself beside ribs that hold the \
             tire up; null where none does within 2.9 degrees.",
            &Own(|wheel: &Self| wheel.critical.inner),
        ),
        number(
            "critical-camber-outer",
            Kind::Angle,
            "Camber above which an outer shoulder does; null as for the inner one.",
            &Own(|wheel: &Self| wheel.critical.outer),
        ),
        number(
            "camber-margin",
            Kind::Angle,
            "From the standing camber to the nearer critical one; below zero where a shoulder feeds on itself.",
            &Own(WheelGrowth::camber_margin),
        ),
        number(
            "critical-camber",
            Kind::Angle,
            "The nearer one of both on the side to which the wheel leans; zero where a shoulder feeds on itself upright.",
            &Own(WheelGrowth::critical_camber),
        ),
        number(
            "distance-for-e-fold",
            Kind::Length,
            "Distance in which the wave that grows fastest over the speeds held grows e-fold; null where none grows, or where \
             removals have not calibrated wear.",
            &Own(|wheel: &Self| wheel.distance_for_e_fold(wheel.winner())),
        ),
        part(
            "worst-count",
            "Cups of the wave that grows fastest over the speeds held.",
            &Own(|wheel: &Self| usize::from(wheel.winner().count)),
        ),
        part(
            "held",
            "For each count the wave that grows fastest over the speeds held.",
            &Part(|wheel: &Self| &wheel.held),
        ),
        in_unit(
            "map",
            "1/m",
            "For each count, growth at each speed for each meter of mean tread worn; below zero the wave is leveled.",
            &Part(|wheel: &Self| &wheel.map),
        ),
    ];
}

impl Record for HeldWave {
    const FIELDS: &'static [Field<Self>] = &[
        part("count", "Cups round the tire.", &Own(|held: &Self| usize::from(held.count))),
        number(
            "frequency",
            Kind::Frequency,
            "Frequency at the mean speed.",
            &Own(|held: &Self| held.frequency),
        ),
        in_unit(
            "growth",
            "1/m",
            "Growth for each meter of mean tread worn; below zero the wave is leveled.",
            &Own(|held: &Self| held.wave.rate),
        ),
        part(
            "amplification",
            "By how much the wave is multiplied for each millimeter of mean tread worn.",
            &Own(|held: &Self| held.wave.amplification(1e-3)),
        ),
        part(
            "amplification-hub-held",
            "By how much it would be multiplied at the mean speed were the hub immovable: what the tire does by itself.",
            &Own(|held: &Self| (1e-3 * held.hub_held).exp()),
        ),
        number(
            "worn-for-e-fold",
            Kind::Length,
            "Mean tread worn while the wave grows e-fold; null where it does not grow.",
            &Own(|held: &Self| held.wave.worn_for_e_fold()),
        ),
        in_unit(
            "turning",
            "rad/m",
            "Phase that the wave gains for each meter of mean tread worn; above zero its crests go to places that met the \
             road earlier.",
            &Own(|held: &Self| held.wave.turning),
        ),
        in_unit(
            "growth-hub-held",
            "1/m",
            "Growth at the mean speed were the hub immovable: what the tire does by itself.",
            &Own(|held: &Self| held.hub_held),
        ),
        in_unit(
            "growth-in-step",
            "1/m",
            "Growth at the mean speed were both wheels to turn in step.",
            &Own(|held: &Self| held.in_step),
        ),
        part(
            "ribs",
            "Each rib of each tire, outermost tire and inner shoulder first.",
            &Own(HeldWave::shares),
        ),
    ];
}

impl Record for ShareOfRib {
    const FIELDS: &'static [Field<Self>] = &[
        part(
            "amplitude",
            "Amplitude over that of the rib which takes part most.",
            &Own(|rib: &Self| rib.amplitude),
        ),
        number("phase", Kind::Angle, "Phase against that rib.", &Own(|rib: &Self| rib.phase)),
    ];
}
