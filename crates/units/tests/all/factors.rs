//! Factors against the printed tables and against an independent library's constants.

use approx::assert_relative_eq;
use axlebow_units::{Kind, parse};

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

/// Independent: SciPy 1.17.1's constants, by `scripts/recompute_units.py`; products of them by hand. Roundings apart only.
#[test]
fn factors_match_scipy_constants() {
    let (inch, foot, pound, pound_force): (f64, f64, f64, f64) =
        (0.0254, 0.304_8, 0.453_592_37, 4.448_221_615_260_5);
    let theirs = [
        ("in", Kind::Length, inch),
        ("ft", Kind::Length, foot),
        ("yd", Kind::Length, 0.9144),
        ("mi", Kind::Length, 1609.344),
        ("in2", Kind::Area, inch * inch),
        ("lb", Kind::Mass, pound),
        ("oz", Kind::Mass, 0.028_349_523_125),
        ("slug", Kind::Mass, 14.593_902_937_206_364),
        ("lbf", Kind::Force, pound_force),
        ("kip", Kind::Force, 1e3 * pound_force),
        ("kgf", Kind::Force, 9.806_65),
        ("psi", Kind::Stress, 6_894.757_293_168_361),
        ("ksi", Kind::Stress, 6_894_757.293_168_361),
        ("lbf ft", Kind::Moment, pound_force * foot),
        ("lbf in", Kind::Moment, pound_force * inch),
        ("lb/ft", Kind::MassPerLength, pound / foot),
        ("lb/in3", Kind::Density, pound / inch.powi(3)),
        ("mph", Kind::Speed, 0.447_04),
        ("km/h", Kind::Speed, 0.277_777_777_777_777_8),
        ("gn", Kind::Acceleration, 9.806_65),
        ("ft/s2", Kind::Acceleration, foot),
        ("deg", Kind::Angle, 0.017_453_292_519_943_295),
    ];
    for (unit, kind, value) in theirs {
        assert_relative_eq!(one(unit, kind), value, max_relative = 8.0 * f64::EPSILON);
    }
}
