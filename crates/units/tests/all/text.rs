//! Unit text: what is read, and what each refusal says.

use axlebow_units::{Kind, UnitSystem, parse};

fn value(text: &str, kind: Kind) -> f64 {
    parse(text, kind).unwrap_or_else(|error| panic!("{text}: {error}")).value
}

fn refusal(text: &str, kind: Kind) -> (String, std::ops::Range<usize>, Option<String>) {
    let error = parse(text, kind).expect_err(text);
    (error.message(), error.range(), error.likely())
}

#[test]
fn every_way_of_writing_a_unit_is_read() {
    assert_eq!(value("152.4 mm", Kind::Length), 0.1524);
    assert_eq!(value("9.5mm", Kind::Length), 0.0095);
    assert_eq!(value("6 in", Kind::Length), 0.1524);
    assert_eq!(value("  .5  ft ", Kind::Length), 0.1524);
    assert_eq!(value("1e3 mm", Kind::Length), 1.0);
    assert_eq!(value("-5. m", Kind::Length), -5.0);
    assert_eq!(value("300 lbf ft", Kind::Moment), value("300 ft lbf", Kind::Moment));
    assert_eq!(value("2 kN*m", Kind::Moment), value("2 kN·m", Kind::Moment));
    assert_eq!(value("10 m/s/s", Kind::Acceleration), value("10 m/s^2", Kind::Acceleration));
    assert_eq!(value("10 m s^-2", Kind::Acceleration), value("10 m/s²", Kind::Acceleration));
    assert_eq!(value("7850 kg/m3", Kind::Density), 7850.0);
    assert_eq!(value("2 rad/(kN m)", Kind::RotationalFlexibility), 0.002);
    assert_eq!(value("2 kN m/rad", Kind::RotationalStiffness), 2000.0);
    assert_eq!(value("36 km/h", Kind::Speed), 10.0);
    assert_eq!(value("2 gn", Kind::Acceleration), 19.6133);
    assert_eq!(value("180 deg", Kind::Angle), std::f64::consts::PI);
    assert_eq!(value("30 %", Kind::Ratio), 0.3);
    assert_eq!(value("0.3", Kind::Ratio), 0.3);
    assert_eq!(value("5 μm", Kind::Length), value("5 um", Kind::Length));
}

#[test]
fn system_is_that_of_the_written_unit() {
    let system = |text, kind| parse(text, kind).unwrap().system;
    assert_eq!(system("1 mm", Kind::Length), Some(UnitSystem::Si));
    assert_eq!(system("1 lbf ft/deg", Kind::RotationalStiffness), Some(UnitSystem::Us));
    assert_eq!(system("1 deg", Kind::Angle), None);
    assert_eq!(system("1 Hz", Kind::Frequency), None);
    assert_eq!(system("1 s", Kind::Time), None);
}

#[test]
fn bare_number_is_refused_with_an_example() {
    let (message, range, likely) = refusal("152.4", Kind::Length);
    assert_eq!(message, "the bare number `152.4` needs its unit");
    assert_eq!((range, likely.as_deref()), (0..5, Some("152.4 mm")));
}

#[test]
fn unit_of_another_kind_is_refused_with_what_it_measures() {
    let error = parse("20 kg", Kind::Length).unwrap_err();
    assert_eq!(error.to_string(), "`kg` measures mass; length is wanted; accepted: length in mm, m, in, ft");
    assert_eq!(error.range(), 3..5);
    assert!(refusal("1 kg s", Kind::Length).0.contains("something else"));
    assert!(refusal("1 N m", Kind::RotationalStiffness).0.contains("measures moment"));
    assert!(refusal("1 N m/rad", Kind::Moment).0.contains("measures rotational stiffness"));
}

#[test]
fn mass_for_force_is_refused_with_the_force() {
    assert_eq!(refusal("20000 lb", Kind::Force).2.as_deref(), Some("lbf"));
    assert_eq!(refusal("300 lb ft", Kind::Moment).2.as_deref(), Some("lbf ft"));
    assert_eq!(refusal("300 ft lb", Kind::Moment).2.as_deref(), Some("ft lbf"));
    assert_eq!(refusal("5 kg", Kind::Force).2.as_deref(), Some("kgf"));
    assert_eq!(refusal("2 g", Kind::Acceleration).2.as_deref(), Some("gn"));
    assert_eq!(refusal("2 kg", Kind::Length).2, None);
}

#[test]
fn unknown_unit_is_refused_with_the_likely_one() {
    assert_eq!(refusal("1 inches", Kind::Length), ("unknown unit `inches`".into(), 2..8, Some("in".into())));
    assert_eq!(refusal("1 N/mn", Kind::Stiffness).1, 4..6);
    assert_eq!(refusal("1 Kn", Kind::Force).2.as_deref(), Some("kN"));
}

#[test]
fn text_that_is_not_a_quantity_is_refused() {
    assert_eq!(refusal("mm", Kind::Length).0, "`mm` does not begin with a number");
    assert_eq!(refusal("", Kind::Length), ("`` does not begin with a number".into(), 0..0, None));
    assert_eq!(refusal("20,000 lbf", Kind::Force).1, 2..3);
    assert!(refusal("20,000 lbf", Kind::Force).0.starts_with("`,` is not used"));
    assert_eq!(refusal("6\"", Kind::Force).1, 1..2);
    assert_eq!(refusal("1 ft-lbf", Kind::Moment).1, 4..5);
    assert_eq!(refusal("1 N/", Kind::Force), ("the end of the unit is not expected here".into(), 4..4, None));
    assert_eq!(refusal("1 rad/(kN m", Kind::RotationalFlexibility).1, 11..11);
    assert_eq!(refusal("1 mm)", Kind::Length).1, 4..5);
    assert_eq!(refusal("1 mm^", Kind::Length).1, 5..5);
    assert_eq!(refusal("1 mm0", Kind::Length).1, 4..5);
    assert_eq!(refusal("1 mm22", Kind::Length).1, 5..6);
    assert!(refusal("1 rad/kN m", Kind::RotationalFlexibility).0.contains("write brackets"));
    assert_eq!(refusal(&format!("1 {}m", "(".repeat(100_000)), Kind::Length).1, 6..7);
}

#[test]
fn value_that_is_not_finite_is_refused() {
    for text in ["inf mm", "-nan mm", "1e999 mm", "1e308 km"] {
        assert_eq!(refusal(text, Kind::Length).0, format!("`{text}` is not a finite value"));
    }
}

#[test]
fn fractions_and_marks_of_feet_and_inches_are_read() {
    let inches = |text: &str| parse(text, Kind::Length).map(|read| read.value / 0.0254);
    for (text, value) in [
        ("3/8 in", 0.375),
        ("5-3/4 in", 5.75),
        ("5 3/4 in", 5.75),
        ("-1 1/2in", -1.5),
        ("6\"", 6.0),
        ("3-1/2\u{2033}", 3.5),
        ("5'", 60.0),
        ("5' 3-1/2\"", 63.5),
        ("-5\u{2032}6\u{2033}", -66.0),
        ("1/4 ft", 3.0),
    ] {
        let own = inches(text).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert!((own - value).abs() < 1e-12, "{text}: {own}");
    }
    assert_eq!(parse("6\"", Kind::Length).unwrap().system, Some(UnitSystem::Us));
    assert_eq!(parse("1/2 in2", Kind::Area).unwrap().value, 0.5 * 0.0254 * 0.0254);
    for wrong in ["5' 3", "5' 3 mm", "5' -3\"", "6\" 3", "1/0 in", "5' x", "3/ in"] {
        assert!(inches(wrong).is_err(), "{wrong}");
    }
    assert!(parse("6\"", Kind::Force).is_err() && parse("5'", Kind::Area).is_err());
}
