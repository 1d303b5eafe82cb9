//! Factors against the printed tables and against an independent unit library.

use approx::assert_relative_eq;
use axlebow_units::{Kind, parse};
use uom::si::f64::{
    Acceleration, Area, Force, Length, LinearMassDensity, Mass, MassDensity, Pressure, Torque, Velocity,
};
use uom::si::{
    acceleration, area, force, length, linear_mass_density, mass, mass_density, pressure, torque, velocity,
};

fn one(unit: &str, kind: Kind) -> f64 {
    parse(&format!("1 {unit}"), kind).expect(unit).value
}

/// NIST SP 811 (2008), appendix B.8, from memory: seven digits, exact ones in full, to half the last digit.
///
/// All but mi, lbf/in and in4 were found again in a program's copy of the table of ASTM E380-82; its mile is
/// the survey mile, 1609.347 m.
#[test]
fn factors_match_nist_sp_811_appendix_b() {
    let printed = [
        ("in", Kind::Length, 2.54e-2, 0.0),
        ("ft", Kind::Length, 3.048e-1, 0.0),
        ("yd", Kind::Length, 9.144e-1, 0.0),
        ("mi", Kind::Length, 1.609_344e3, 0.0),
        ("lb", Kind::Mass, 4.535_924e-1, 5e-8),
        ("oz", Kind::Mass, 2.834_952e-2, 5e-9),
        ("slug", Kind::Mass, 1.459_390e1, 5e-6),
        ("lbf", Kind::Force, 4.448_222, 5e-7),
        ("kip", Kind::Force, 4.448_222e3, 5e-4),
        ("kgf", Kind::Force, 9.806_65, 0.0),
        ("psi", Kind::Stress, 6.894_757e3, 5e-4),
        ("ksi", Kind::Stress, 6.894_757e6, 5e-1),
        ("lbf ft", Kind::Moment, 1.355_818, 5e-7),
        ("lbf in", Kind::Moment, 1.129_848e-1, 5e-8),
        ("lbf/in", Kind::Stiffness, 1.751_268e2, 5e-5),
        ("lb/in3", Kind::Density, 2.767_990e4, 5e-3),
        ("lb/ft", Kind::MassPerLength, 1.488_164, 5e-7),
        ("in2", Kind::Area, 6.4516e-4, 0.0),
        ("in3", Kind::SectionModulus, 1.638_706e-5, 5e-12),
        ("in4", Kind::SecondMoment, 4.162_314e-7, 5e-14),
        ("mph", Kind::Speed, 4.4704e-1, 0.0),
        ("ft/s2", Kind::Acceleration, 3.048e-1, 0.0),
        ("gn", Kind::Acceleration, 9.806_65, 0.0),
        ("deg", Kind::Angle, 1.745_329e-2, 5e-9),
    ];
    for (unit, kind, value, half_digit) in printed {
        let slack = half_digit + 4.0 * f64::EPSILON * value;
        assert!((one(unit, kind) - value).abs() <= slack, "{unit}: {} is not {value}", one(unit, kind));
    }
}

/// The library's own coefficients are decimal, so two roundings apart at most.
#[test]
fn exact_factors_match_uom() {
    let pairs = [
        (one("in", Kind::Length), Length::new::<length::inch>(1.0).value),
        (one("ft", Kind::Length), Length::new::<length::foot>(1.0).value),
        (one("yd", Kind::Length), Length::new::<length::yard>(1.0).value),
        (one("mi", Kind::Length), Length::new::<length::mile>(1.0).value),
        (one("in2", Kind::Area), Area::new::<area::square_inch>(1.0).value),
        (one("kgf", Kind::Force), Force::new::<force::kilogram_force>(1.0).value),
        (one("mph", Kind::Speed), Velocity::new::<velocity::mile_per_hour>(1.0).value),
        (one("km/h", Kind::Speed), Velocity::new::<velocity::kilometer_per_hour>(1.0).value),
        (one("gn", Kind::Acceleration), Acceleration::new::<acceleration::standard_gravity>(1.0).value),
        (
            one("ft/s2", Kind::Acceleration),
            Acceleration::new::<acceleration::foot_per_second_squared>(1.0).value,
        ),
    ];
    for (ours, theirs) in pairs {
        assert_relative_eq!(ours, theirs, max_relative = 4.0 * f64::EPSILON);
    }
}

/// DIFFERENCE: ours follow from the exact pound and standard gravity; the library keeps roundings to seven
/// digits. Its pound, 0.453 592 4 kg, is off by 6.6e-8, its pound-force, 4.448 222 N, by 8.65e-8 and what it
/// builds on them by as much; its ounce by 1.1e-7 and its slug by 2.0e-7; its pound per cubic inch, which
/// also divides by a volume of seven digits, by 3.1e-7. The tolerances are these, rounded up.
#[test]
fn pound_factors_match_uom_within_its_rounding() {
    let pairs = [
        (one("lb", Kind::Mass), Mass::new::<mass::pound>(1.0).value, 7e-8),
        (one("oz", Kind::Mass), Mass::new::<mass::ounce>(1.0).value, 1.2e-7),
        (one("slug", Kind::Mass), Mass::new::<mass::slug>(1.0).value, 2.1e-7),
        (one("lbf", Kind::Force), Force::new::<force::pound_force>(1.0).value, 9e-8),
        (one("kip", Kind::Force), Force::new::<force::kip>(1.0).value, 9e-8),
        (one("psi", Kind::Stress), Pressure::new::<pressure::psi>(1.0).value, 9e-8),
        (one("ksi", Kind::Stress), Pressure::new::<pressure::kip_per_square_inch>(1.0).value, 9e-8),
        (one("lbf ft", Kind::Moment), Torque::new::<torque::pound_force_foot>(1.0).value, 9e-8),
        (one("lbf in", Kind::Moment), Torque::new::<torque::pound_force_inch>(1.0).value, 9e-8),
        (
            one("lb/ft", Kind::MassPerLength),
            LinearMassDensity::new::<linear_mass_density::pound_per_foot>(1.0).value,
            7e-8,
        ),
        (
            one("lb/in3", Kind::Density),
            MassDensity::new::<mass_density::pound_per_cubic_inch>(1.0).value,
            6e-7,
        ),
    ];
    for (ours, theirs, slack) in pairs {
        assert_relative_eq!(ours, theirs, max_relative = slack);
    }
    let excess = Force::new::<force::pound_force>(1.0).value / one("lbf", Kind::Force) - 1.0;
    assert_relative_eq!(excess, 8.65e-8, max_relative = 1e-3);
}
