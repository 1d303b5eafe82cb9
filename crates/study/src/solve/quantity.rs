//! The results of a design that studies tabulate, draw and export: one list for all of them.

use axlebow_axle::{CamberSplit, RideWheel, Side, Sides, TireFace};
use axlebow_model::likely;
use axlebow_results::key;
use axlebow_units::Kind;

use super::design::{Beside, Design};
use super::design_ride::DesignRide;

/// A result of a design: what it is called, what it measures and what it means.
#[derive(Debug, Clone, Copy)]
pub struct Quantity {
    /// Name in study files, such as `camber-peak-to-peak`.
    pub name: &'static str,
    /// What tables and pictures call it.
    pub words: &'static str,
    /// What it measures.
    pub kind: Kind,
    /// What it means, one sentence.
    pub meaning: &'static str,
    from: Source,
}

/// Where a result comes from.
#[derive(Debug, Clone, Copy)]
enum Source {
    Static(fn(&Design) -> f64),
    Beside(fn(&Design, &Beside) -> f64),
    Composite,
    Weld,
    Tires(fn(&TireFace) -> Option<f64>),
    Strength,
    Ride(fn(&DesignRide) -> Option<f64>),
}

/// Two quantities are the same when their names are.
impl PartialEq for Quantity {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name
    }
}

impl Quantity {
    /// The quantity of a name.
    ///
    /// # Errors
    /// The name that was likely meant, if that can be told.
    pub fn named(name: &str) -> Result<&'static Quantity, Option<String>> {
        let found = QUANTITIES.iter().find(|quantity| quantity.name == name);
        found.ok_or_else(|| likely(name, QUANTITIES.iter().map(|quantity| quantity.name)))
    }

    /// Whether it is of a ride, not of the static load case.
    pub fn is_of_ride(&self) -> bool {
        matches!(self.from, Source::Ride(_))
    }

    /// Whether it takes a solution of its own, with axle and stiffeners one section.
    pub fn is_of_composite(&self) -> bool {
        matches!(self.from, Source::Composite)
    }

    /// Whether it is of the welds of stiffeners.
    pub fn is_of_weld(&self) -> bool {
        matches!(self.from, Source::Weld)
    }

    /// Whether it takes the tire faces.
    pub fn is_of_tires(&self) -> bool {
        matches!(self.from, Source::Tires(_))
    }

    /// Whether it takes the checks of strength.
    pub fn is_of_strength(&self) -> bool {
        matches!(self.from, Source::Strength)
    }

    /// Its name and SI unit as a key of JSON and CSV, such as `camber_peak_to_peak_rad`.
    pub fn key(&self) -> String {
        key(self.name, self.kind.si())
    }

    /// Its value in a design, SI, of the ride at a place; NaN where there is none, such as cups of a camber that does
    /// not move, or what an axle without stiffeners has gained by them.
    pub(crate) fn of(&self, design: &Design, ride: usize) -> f64 {
        let value = match self.from {
            Source::Static(value) => Some(value(design)),
            Source::Beside(value) => design.beside.map(|beside| value(design, &beside)),
            Source::Composite => Some(larger(design.composite.as_ref().unwrap_or(&design.camber_change))),
            Source::Weld => design.weld_peak,
            Source::Tires(value) => design.tires.as_ref().and_then(|tires| worse(tires, value)),
            Source::Strength => design.strength_use,
            Source::Ride(value) => design.rides.get(ride).and_then(value),
        };
        value.filter(|value| value.is_finite()).unwrap_or(f64::NAN)
    }
}

/// Every result of a design, those of the static load case first.
///
/// Those of full composite action, of tire faces and of strength are there only where a study shows them or ranks by them,
/// because they cost a solution; so are those of welds, which most axles do not have.
/// What a ride says is that of the worse wheel; cups and frequency are those of the wheel whose camber moves most.
pub static QUANTITIES: [Quantity; 45] = [
    of_case(
        "axle-mass",
        ("axle mass", Kind::Mass),
        "Mass of the bare axle: tube or housing and spindles.",
        |d| d.axle_mass,
    ),
    of_case(
        "camber-change",
        ("camber change", Kind::Angle),
        "Camber change of the wheel that leans most.",
        |d| larger(&d.camber_change),
    ),
    of_case("left-camber-change", ("camber, left", Kind::Angle), "Camber change of the left wheel.", |d| {
        d.camber_change.left
    }),
    of_case("left-bending", ("left bending", Kind::Angle), "Of it, bending.", |d| d.split.left.bending),
    of_case("left-shear", ("left shear", Kind::Angle), "Of it, shear.", |d| d.split.left.shear),
    of_case("left-seat", ("left seat", Kind::Angle), "Of it, the seat.", |d| d.split.left.seat),
    of_case("left-wall", ("left wall", Kind::Angle), "Of the seat's part, the wall under it.", |d| {
        d.split.left.wall
    }),
    of_case("left-bearing", ("left bearing", Kind::Angle), "Of it, the bearings.", |d| d.split.left.bearing),
    of_case("left-disc", ("left disc", Kind::Angle), "Of it, the wheel's disc and the hub's flange.", |d| {
        d.split.left.disc
    }),
    of_case("left-clearance", ("left clearance", Kind::Angle), "Of it, the bearings' endplay.", |d| {
        d.split.left.clearance
    }),
    of_case(
        "right-camber-change",
        ("camber, right", Kind::Angle),
        "Camber change of the right wheel.",
        |d| d.camber_change.right,
    ),
    of_case("right-bending", ("right bending", Kind::Angle), "Of it, bending.", |d| d.split.right.bending),
    of_case("right-shear", ("right shear", Kind::Angle), "Of it, shear.", |d| d.split.right.shear),
    of_case("right-seat", ("right seat", Kind::Angle), "Of it, the seat.", |d| d.split.right.seat),
    of_case("right-wall", ("right wall", Kind::Angle), "Of the seat's part, the wall under it.", |d| {
        d.split.right.wall
    }),
    of_case("right-bearing", ("right bearing", Kind::Angle), "Of it, the bearings.", |d| {
        d.split.right.bearing
    }),
    of_case(
        "right-disc",
        ("right disc", Kind::Angle),
        "Of it, the wheel's disc and the hub's flange.",
        |d| d.split.right.disc,
    ),
    of_case("right-clearance", ("right clearance", Kind::Angle), "Of it, the bearings' endplay.", |d| {
        d.split.right.clearance
    }),
    of_case(
        "peak-stress",
        ("peak stress", Kind::Stress),
        "Fiber stress of largest magnitude along the axle, tension positive.",
        |d| d.peak_stress,
    ),
    of_case(
        "bow",
        ("bow", Kind::Length),
        "Height of the axle's center above the line through the hubs.",
        |d| d.bow,
    ),
    of_case("warnings", ("warnings", Kind::Ratio), "How many warnings the design and its rides have.", |d| {
        (d.warnings.len() + d.rides.iter().map(|ride| ride.warnings.len()).sum::<usize>()) as f64
    }),
    beside(
        "added-mass",
        ("added mass", Kind::Mass),
        "Axle mass beyond that of the axle without stiffeners, or side by side of the baseline.",
        |design, beside| design.axle_mass - beside.axle_mass,
    ),
    beside(
        "camber-removed",
        ("camber removed", Kind::Ratio),
        "Share of that axle's camber change that is gone.",
        |design, beside| removed(design, beside) / larger(&beside.camber_change).abs(),
    ),
    beside(
        "camber-removed-per-mass",
        ("camber removed per mass", Kind::AnglePerMass),
        "Camber change that is gone, over the added mass.",
        |design, beside| removed(design, beside) / (design.axle_mass - beside.axle_mass),
    ),
    Quantity {
        name: "composite-camber-change",
        words: "camber change, full composite action",
        kind: Kind::Angle,
        meaning: "Camber change of the wheel that leans most with axle and stiffeners one section, as if no weld gave way: the upper bound of what stiffeners do; without stiffeners its own.",
        from: Source::Composite,
    },
    Quantity {
        name: "weld-peak-force",
        words: "weld, peak force",
        kind: Kind::Stiffness,
        meaning: "Greatest force of a stiffener's weld per length of it.",
        from: Source::Weld,
    },
    of_tires(
        "inner-shoulder-wear",
        ("inner shoulder, wear", Kind::Ratio),
        "Wear of the inner shoulder of the innermost tire over that of the same rib upright and straight.",
        |face| face.worn.tires.last()?.inner_shoulder().against_upright,
    ),
    of_tires(
        "innermost-tire-share",
        ("innermost tire, share", Kind::Ratio),
        "Share of its wheel's load that the innermost tire carries.",
        |face| Some(face.worn.tires.last()?.load / face.pose.load),
    ),
    Quantity {
        name: "utilization",
        words: "utilization",
        kind: Kind::Ratio,
        meaning: "Greatest share of its limit that a check of `axlebow strength` uses, in all load cases or the study's `strength_cases`; past 1 the axle fails.",
        from: Source::Strength,
    },
    of_ride(
        "dynamic-load-factor",
        ("dynamic load factor", Kind::Ratio),
        "Largest wheel load over that at rest.",
        |ride| Some(most(ride, |wheel| wheel.dynamic_load_factor)),
    ),
    of_ride(
        "dynamic-load-coefficient",
        ("load coefficient", Kind::Ratio),
        "Root mean square of the wheel load's deviation from its mean, over the load at rest.",
        |ride| Some(most(ride, |wheel| wheel.dynamic_load_coefficient)),
    ),
    of_ride("time-off-road", ("time off road", Kind::Time), "Time that the wheel is off the road.", |ride| {
        Some(most(ride, |wheel| wheel.time_off_road))
    }),
    of_ride(
        "camber-peak",
        ("camber, peak", Kind::Angle),
        "Camber change of largest magnitude, static change included.",
        |ride| Some(larger(&Sides::each(|side| ride.wheels.of(side).camber_peak))),
    ),
    of_ride(
        "camber-peak-bending",
        ("camber peak, bending", Kind::Angle),
        "Part of the peak camber change that is bending of the beam.",
        |ride| Some(leaning(ride).bending),
    ),
    of_ride(
        "camber-peak-shear",
        ("camber peak, shear", Kind::Angle),
        "Part of the peak camber change that is shear of the beam.",
        |ride| Some(leaning(ride).shear),
    ),
    of_ride(
        "camber-peak-seat",
        ("camber peak, seat", Kind::Angle),
        "Part of the peak camber change that is the seats, with the wall under them.",
        |ride| Some(leaning(ride).seat),
    ),
    of_ride(
        "camber-peak-wall",
        ("camber peak, wall", Kind::Angle),
        "Part of the peak camber change that is the wall under the seats.",
        |ride| Some(leaning(ride).wall),
    ),
    of_ride(
        "camber-peak-bearing",
        ("camber peak, bearings", Kind::Angle),
        "Part of the peak camber change that is the bearings.",
        |ride| Some(leaning(ride).bearing),
    ),
    of_ride(
        "camber-peak-disc",
        ("camber peak, disc", Kind::Angle),
        "Part of the peak camber change that is the wheel's disc and the hub's flange.",
        |ride| Some(leaning(ride).disc),
    ),
    of_ride(
        "camber-peak-to-peak",
        ("camber, peak to peak", Kind::Angle),
        "Peak-to-peak camber change.",
        |ride| Some(most(ride, |wheel| wheel.camber_peak_to_peak)),
    ),
    of_ride(
        "camber-rms",
        ("camber, rms", Kind::Angle),
        "Root mean square of the camber change's deviation from its mean.",
        |ride| Some(most(ride, |wheel| wheel.camber_rms)),
    ),
    of_ride(
        "ride-peak-stress",
        ("peak stress", Kind::Stress),
        "Largest extreme-fiber stress along the axle in the ride, of either sign: both come in turn.",
        |ride| Some(ride.peak_stress.abs()),
    ),
    of_ride(
        "camber-frequency",
        ("camber's frequency", Kind::Frequency),
        "Frequency that dominates the camber.",
        |ride| ride.wheel_with_larger_camber_range().dominant_frequency,
    ),
    of_ride(
        "cups-per-turn",
        ("cups a turn", Kind::Ratio),
        "Cups that this frequency prints in one turn of the tire.",
        |ride| ride.wheel_with_larger_camber_range().cups_per_turn,
    ),
    of_ride(
        "cup-spacing",
        ("cup to cup", Kind::Length),
        "Distance from cup to cup along the tread.",
        |ride| ride.wheel_with_larger_camber_range().cup_spacing,
    ),
];

const fn of_case(
    name: &'static str,
    (words, kind): (&'static str, Kind),
    meaning: &'static str,
    value: fn(&Design) -> f64,
) -> Quantity {
    Quantity { name, words, kind, meaning, from: Source::Static(value) }
}

const fn beside(
    name: &'static str,
    (words, kind): (&'static str, Kind),
    meaning: &'static str,
    value: fn(&Design, &Beside) -> f64,
) -> Quantity {
    Quantity { name, words, kind, meaning, from: Source::Beside(value) }
}

const fn of_tires(
    name: &'static str,
    (words, kind): (&'static str, Kind),
    meaning: &'static str,
    value: fn(&TireFace) -> Option<f64>,
) -> Quantity {
    Quantity { name, words, kind, meaning, from: Source::Tires(value) }
}

const fn of_ride(
    name: &'static str,
    (words, kind): (&'static str, Kind),
    meaning: &'static str,
    value: fn(&DesignRide) -> Option<f64>,
) -> Quantity {
    Quantity { name, words, kind, meaning, from: Source::Ride(value) }
}

/// The larger one of both wheels.
fn worse(tires: &Sides<TireFace>, value: fn(&TireFace) -> Option<f64>) -> Option<f64> {
    Side::BOTH.into_iter().filter_map(|side| value(tires.of(side))).reduce(f64::max)
}

/// The one of larger magnitude.
fn larger(sides: &Sides<f64>) -> f64 {
    if sides.right.abs() > sides.left.abs() { sides.right } else { sides.left }
}

/// By how much less the wheel leans that leans most, rad.
fn removed(design: &Design, beside: &Beside) -> f64 {
    larger(&beside.camber_change).abs() - larger(&design.camber_change).abs()
}

/// Peak camber change by source, of the wheel that leans more.
fn leaning(ride: &DesignRide) -> &CamberSplit {
    let Sides { left, right } = &ride.wheels;
    let more = if right.camber_peak.abs() > left.camber_peak.abs() { right } else { left };
    &more.camber_peak_split
}

/// The larger one of both wheels.
fn most(ride: &DesignRide, value: fn(&RideWheel) -> f64) -> f64 {
    Side::BOTH.into_iter().map(|side| value(ride.wheels.of(side))).fold(f64::NEG_INFINITY, f64::max)
}
