//! What must hold for every section, whatever its sizes.

use approx::assert_relative_eq;
use axlebow_sections::{
    Profile, RectangularTube, RoundBar, RoundTube, SectionProperties, StressPoint, shear_coefficient, taper,
};
use proptest::prelude::*;
use std::f64::consts::{PI, TAU};

const NU: f64 = 0.3;

fn tube(diameter: f64, wall: f64) -> Profile {
    RoundTube::new(diameter, wall).unwrap().into()
}

fn bar(diameter: f64) -> Profile {
    RoundBar::new(diameter).unwrap().into()
}

fn boxed(width: f64, height: f64, wall: f64, radius: f64) -> Profile {
    RectangularTube::new(width, height, wall, radius).unwrap().into()
}

fn extensive(p: &SectionProperties) -> [f64; 6] {
    [p.area, p.second_moment_x, p.second_moment_z, p.torsion_constant, p.torsion_modulus, p.plastic_modulus_x]
}

prop_compose! {
    fn any_tube()(diameter in 0.02..0.5, share in 0.02..0.98) -> (f64, f64) {
        (diameter, 0.5 * diameter * share)
    }
}

prop_compose! {
    fn any_box()(width in 0.03..0.4, height in 0.03..0.4, wall in 0.03..0.9, radius in 0.0..0.999)
        -> [f64; 4] {
        let half = 0.5 * f64::min(width, height);
        [width, height, wall * half, radius * half]
    }
}

fn any_profile() -> impl Strategy<Value = Profile> {
    prop_oneof![
        any_tube().prop_map(|(d, t)| tube(d, t)),
        (0.01..0.4).prop_map(bar),
        any_box().prop_map(|[b, h, t, r]| boxed(b, h, t, r)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_tube_is_a_bar_less_its_bore((diameter, wall) in any_tube()) {
        let whole = tube(diameter, wall).properties(NU);
        let (outer, bore) = (bar(diameter).properties(NU), bar(diameter - 2.0 * wall).properties(NU));
        let close = |a: f64, b: f64, c: f64| (a - (b - c)).abs() < 1e-13 * b;
        prop_assert!(close(whole.area, outer.area, bore.area));
        prop_assert!(close(whole.second_moment_x, outer.second_moment_x, bore.second_moment_x));
        prop_assert!(close(whole.torsion_constant, outer.torsion_constant, bore.torsion_constant));
        prop_assert!(close(whole.plastic_modulus_x, outer.plastic_modulus_x, bore.plastic_modulus_x));
    }

    #[test]
    fn a_tube_bends_alike_in_every_direction((diameter, wall) in any_tube(), turn in 0.0..TAU) {
        let profile = tube(diameter, wall);
        let properties = profile.properties(NU);
        prop_assert_eq!(properties.second_moment_x, properties.second_moment_z);
        prop_assert_eq!(properties.shear_coefficient_x, properties.shear_coefficient_z);
        let moment = 1.0e4;
        let upright = profile.fiber_stress(&properties, 0.0, moment, 0.0).0;
        let turned = profile.fiber_stress(&properties, 0.0, moment * turn.cos(), moment * turn.sin()).0;
        assert_relative_eq!(turned, upright, max_relative = 1e-12);
        let shear = profile.transverse_shear_peak(moment * turn.cos(), moment * turn.sin());
        assert_relative_eq!(shear, profile.transverse_shear_peak(0.0, moment), max_relative = 1e-12);
    }

    #[test]
    fn a_box_of_full_corners_has_the_area_and_moments_of_a_tube((diameter, wall) in any_tube()) {
        let round = tube(diameter, wall).properties(NU);
        let cornered = boxed(diameter, diameter, wall, 0.5 * diameter).properties(NU);
        assert_relative_eq!(cornered.area, round.area, max_relative = 1e-11);
        assert_relative_eq!(cornered.second_moment_x, round.second_moment_x, max_relative = 1e-11);
        assert_relative_eq!(cornered.second_moment_z, round.second_moment_z, max_relative = 1e-11);
        assert_relative_eq!(cornered.plastic_modulus_x, round.plastic_modulus_x, max_relative = 1e-11);
        // Bredt on a circle of the mean radius: J = 2 pi r³ t.
        let radius = 0.5 * (diameter - wall);
        assert_relative_eq!(cornered.torsion_constant, TAU * radius.powi(3) * wall, max_relative = 1e-11);
    }

    #[test]
    fn rounding_its_corners_takes_from_a_box_and_vanishes_with_the_radius([b, h, t, r] in any_box()) {
        let (sharp, round) = (boxed(b, h, t, 0.0).properties(NU), boxed(b, h, t, r).properties(NU));
        for (place, (less, more)) in extensive(&round).into_iter().zip(extensive(&sharp)).enumerate() {
            // Not the torsion constant: a shorter midline may win over less enclosed area.
            prop_assert!(place == 3 || less <= more * (1.0 + 1e-12));
        }
        let hair = boxed(b, h, t, 1e-7 * b.min(h)).properties(NU);
        for (near, exact) in extensive(&hair).into_iter().zip(extensive(&sharp)) {
            assert_relative_eq!(near, exact, max_relative = 1e-11);
        }
    }

    #[test]
    fn turning_a_box_by_a_quarter_swaps_its_axes([b, h, t, r] in any_box()) {
        let (lying, standing) = (boxed(b, h, t, r).properties(NU), boxed(h, b, t, r).properties(NU));
        assert_relative_eq!(lying.second_moment_x, standing.second_moment_z, max_relative = 1e-12);
        assert_relative_eq!(lying.shear_coefficient_x, standing.shear_coefficient_z, max_relative = 1e-12);
        assert_relative_eq!(lying.torsion_constant, standing.torsion_constant, max_relative = 1e-12);
        let (along_x, along_z) = (
            boxed(b, h, t, r).transverse_shear_peak(1e4, 0.0),
            boxed(h, b, t, r).transverse_shear_peak(0.0, 1e4),
        );
        assert_relative_eq!(along_x, along_z, max_relative = 1e-12);
    }

    #[test]
    fn properties_grow_with_the_powers_of_size([b, h, t, r] in any_box(), scale in 0.1..10.0f64) {
        let wall = 0.4 * t;
        let pairs = [
            (boxed(b, h, t, r), boxed(scale * b, scale * h, scale * t, scale * r)),
            (tube(b, wall), tube(scale * b, scale * wall)),
            (bar(b), bar(scale * b)),
        ];
        for (one, other) in pairs.map(|(one, other)| (one.properties(NU), other.properties(NU))) {
            let powers = [2, 4, 4, 4, 3, 3];
            for ((small, large), power) in extensive(&one).into_iter().zip(extensive(&other)).zip(powers) {
                assert_relative_eq!(large, small * scale.powi(power), max_relative = 1e-11);
            }
            assert_relative_eq!(one.shear_coefficient_x, other.shear_coefficient_x, max_relative = 1e-12);
        }
    }

    #[test]
    fn a_thin_tube_nears_the_thin_formulas(diameter in 0.05..0.5, share in 1e-5..1e-2f64) {
        let wall = share * diameter;
        let radius = 0.5 * (diameter - wall);
        let exact = tube(diameter, wall).properties(NU);
        // I / (pi r³ t) = 1 + t²/4r².
        let thin = PI * radius.powi(3) * wall;
        let excess = 1.0 + 0.25 * (wall / radius).powi(2);
        assert_relative_eq!(exact.second_moment_x, thin * excess, max_relative = 1e-12);
        // k -> 2 (1 + nu) / (4 + 3 nu), from above.
        let limit = 2.0 * (1.0 + NU) / (4.0 + 3.0 * NU);
        prop_assert!(exact.shear_coefficient_x >= limit);
        prop_assert!(exact.shear_coefficient_x < limit * (1.0 + (2.0 * share).powi(2) * 2.0));
    }

    #[test]
    fn fiber_stress_is_the_greatest_round_the_edge(
        profile in any_profile(), axial in -1e6..1e6, moment_x in -1e5..1e5, moment_z in -1e5..1e5,
    ) {
        let properties = profile.properties(NU);
        let (peak, point) = profile.fiber_stress(&properties, axial, moment_x, moment_z);
        let stress = |x, z| properties.normal_stress(StressPoint { x, z }, axial, moment_x, moment_z);
        prop_assert_eq!(peak, stress(point.x, point.z));
        let greatest = profile.outline().outside().polygon(16).iter().map(|[x, z]| stress(*x, *z).abs()).fold(0.0, f64::max);
        prop_assert!(greatest <= peak.abs() * (1.0 + 1e-12));
        // Chords of 1/16 quarter miss at most 1 - cos(pi/64) of an arc's bending share.
        let bending = peak.abs() - (axial / properties.area).abs();
        prop_assert!(peak.abs() - greatest <= 1.3e-3 * bending + 1e-9 * peak.abs());
    }

    #[test]
    fn a_taper_lies_between_its_ends((da, ta) in any_tube(), (db, tb) in any_tube(), t in 0.0..=1.0f64) {
        let middle = taper(&tube(da, ta), &tube(db, tb), t).unwrap();
        let diameter = middle.height();
        prop_assert!(diameter >= da.min(db) * (1.0 - 1e-15) && diameter <= da.max(db) * (1.0 + 1e-15));
    }

    #[test]
    fn a_taper_of_boxes_never_fails(a in any_box(), b in any_box(), t in 0.0..=1.0f64) {
        let [a, b] = [a, b].map(|[b, h, t, r]| boxed(b, h, t, r));
        prop_assert!(taper(&a, &b, t).is_ok());
    }

    #[test]
    fn no_number_makes_a_constructor_panic(a in any::<f64>(), b in any::<f64>(), c in any::<f64>(), d in any::<f64>()) {
        let made = [
            RoundTube::new(a, b).map(Profile::from),
            RoundBar::new(a).map(Profile::from),
            RectangularTube::new(a, b, c, d).map(Profile::from),
        ];
        for profile in made.into_iter().flatten() {
            prop_assert!(extensive(&profile.properties(NU)).iter().all(|value| value.is_finite() && *value > 0.0));
        }
    }
}

/// Signs: a stress field made from N, M_x, M_z gives them back as N = ∫ s dA, M = ∫ r × s dA.
#[test]
fn the_stress_field_integrates_back_to_its_forces() {
    let (axial, moment_x, moment_z) = (5.0e4, 8.0e3, -3.0e3);
    let (b, h, t) = (0.12, 0.15, 0.008);
    let properties = boxed(b, h, t, 0.0).properties(NU);
    let (cells_x, cells_z) = (480, 600);
    let (dx, dz) = (b / cells_x as f64, h / cells_z as f64);
    let mut back = [0.0; 3];
    for i in 0..cells_x {
        for k in 0..cells_z {
            let point =
                StressPoint { x: -b / 2.0 + (i as f64 + 0.5) * dx, z: -h / 2.0 + (k as f64 + 0.5) * dz };
            if point.x.abs() < b / 2.0 - t && point.z.abs() < h / 2.0 - t {
                continue;
            }
            let force = properties.normal_stress(point, axial, moment_x, moment_z) * dx * dz;
            // r × s for r = (x, 0, z), s along +Y.
            back[0] += force;
            back[1] += -point.z * force;
            back[2] += point.x * force;
        }
    }
    // Midpoints of cells miss each cell's own second moment, (dz/h)² of the whole.
    assert_relative_eq!(back[0], axial, max_relative = 1e-9);
    assert_relative_eq!(back[1], moment_x, max_relative = 1e-5);
    assert_relative_eq!(back[2], moment_z, max_relative = 1e-5);
}

#[test]
fn raised_ends_compress_the_top_and_a_forward_curve_stretches_the_front() {
    let profile = tube(0.127, 0.0127);
    let properties = profile.properties(NU);
    let top = profile.stress_points()[0];
    let front = profile.stress_points()[2];
    assert_eq!((top.place(), front.place()), ("top", "front"));
    assert!(properties.normal_stress(top, 0.0, 1.0e4, 0.0) < 0.0);
    assert!(properties.normal_stress(front, 0.0, 0.0, 1.0e4) > 0.0);
    let (stress, point) = profile.fiber_stress(&properties, 0.0, 1.0e4, 0.0);
    assert!(stress > 0.0);
    assert_eq!((point.place(), point.x), ("bottom", 0.0));
}

#[test]
fn stress_points_lie_on_the_edge_in_their_named_places() {
    let places = ["top", "top front", "front", "bottom front", "bottom", "bottom rear", "rear", "top rear"];
    for profile in [tube(0.127, 0.0127), boxed(0.12, 0.12, 0.008, 0.016)] {
        assert_eq!(profile.stress_points().map(|point| point.place()), places);
    }
    let corner = boxed(0.12, 0.15, 0.008, 0.0).stress_points()[1];
    assert_eq!((corner.x, corner.z), (0.06, 0.075));
}

/// As the box grows flat or tall the thin box nears Cowper's other thin forms.
#[test]
fn two_webs_alone_have_the_coefficient_of_a_rectangle() {
    let rectangle = 10.0 * (1.0 + NU) / (12.0 + 11.0 * NU);
    assert_relative_eq!(shear_coefficient::thin_box(0.0, NU), rectangle, max_relative = 1e-15);
}
