//! What must hold for every outline and composite, and the sections that tables print.

use approx::assert_relative_eq;
use axlebow_sections::shape::{Angle, Channel, Flat, HalfPipe, Tee};
use axlebow_sections::{
    AreaProperties, Composite, Contour, Corner, Material, Outline, Part, Placement, Profile, RectangularTube,
    RoundBar, RoundTube, SectionError, Shape, StandardSize, overlap,
};
use proptest::prelude::*;
use std::f64::consts::{FRAC_PI_2, PI, TAU};

const NU: f64 = 0.3;

fn steel() -> Material {
    Material::new("steel", 200e9, NU, 7850.0).unwrap()
}

fn part(name: &str, outline: Outline) -> Part {
    Part { name: name.to_owned(), outline, material: steel() }
}

fn moved(x: f64, z: f64) -> Placement {
    Placement { turn: 0.0, x, z }
}

fn any_shape() -> impl Strategy<Value = Shape> {
    let sizes = (0.03..0.2, 0.03..0.2, 0.05..0.3, 0.0..0.9);
    (sizes, 0..5usize).prop_map(|((height, width, share, round), kind)| {
        let t = share * f64::min(height, width);
        let r = round * f64::min(t, 0.1 * f64::min(height, width));
        match kind {
            0 => Shape::Flat(Flat { width, thickness: t }),
            1 => {
                let (root_radius, toe_radius) = (r, 0.5 * r);
                Shape::Angle(Angle { height, width, thickness: t, root_radius, toe_radius })
            }
            2 => Shape::Channel(Channel { height, width, web: t, flange: 0.8 * t, root_radius: r }),
            3 => Shape::Tee(Tee { height, width, stem: t, flange: 0.7 * t, root_radius: r }),
            _ => Shape::HalfPipe(HalfPipe { tube: RoundTube::new(width, 0.5 * share * width).unwrap() }),
        }
    })
}

fn any_placement() -> impl Strategy<Value = Placement> {
    (-PI..PI, -0.5..0.5, -0.5..0.5).prop_map(|(turn, x, z)| Placement { turn, x, z })
}

fn any_profile() -> impl Strategy<Value = Profile> {
    let walls = (0.03..0.4, 0.03..0.4, 0.03..0.9, 0.0..1.0);
    (walls, 0..3usize).prop_map(|((width, height, wall, radius), kind)| {
        let half = 0.5 * f64::min(width, height);
        match kind {
            0 => RoundTube::new(width, 0.5 * wall * width).unwrap().into(),
            1 => RoundBar::new(width).unwrap().into(),
            _ => RectangularTube::new(width, height, wall * half, radius * half).unwrap().into(),
        }
    })
}

/// Second moments within a share of the polar one.
fn assert_same(one: &AreaProperties, other: &AreaProperties, share: f64) {
    assert_relative_eq!(one.area, other.area, max_relative = share);
    let [polar, size] = [one.polar_moment(), one.area.sqrt()];
    for axis in 0..2 {
        assert_relative_eq!(one.centroid[axis], other.centroid[axis], epsilon = share * size.max(1.0));
    }
    for (a, b) in [
        (one.second_moment_x, other.second_moment_x),
        (one.second_moment_z, other.second_moment_z),
        (one.product_of_inertia, other.product_of_inertia),
    ] {
        assert_relative_eq!(a, b, epsilon = share * polar);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn outlines_agree_with_closed_forms(profile in any_profile()) {
        let (exact, outline) = (profile.properties(NU), profile.outline().area_properties());
        assert_relative_eq!(outline.area, exact.area, max_relative = 1e-12);
        assert_relative_eq!(outline.second_moment_x, exact.second_moment_x, max_relative = 1e-12);
        assert_relative_eq!(outline.second_moment_z, exact.second_moment_z, max_relative = 1e-12);
        prop_assert!(outline.product_of_inertia.abs() <= 1e-14 * outline.polar_moment());
    }

    #[test]
    fn a_closed_form_section_is_a_valid_outline(profile in any_profile()) {
        let outline = profile.outline();
        let again = |contour: &Contour| Contour::new(contour.corners().to_vec()).unwrap();
        let holes = outline.holes().iter().map(again).collect();
        prop_assert!(Outline::with_holes(again(outline.outside()), holes).is_ok());
    }

    #[test]
    fn turning_and_moving_turns_the_axes_and_leaves_the_rest(shape in any_shape(), placement in any_placement()) {
        let outline = shape.outline().unwrap();
        let (still, placed) = (outline.area_properties(), outline.placed(&placement).area_properties());
        assert_same(&placed, &still.placed(&placement), 1e-12);
        let (before, after) = (still.principal_axes(), placed.principal_axes());
        assert_relative_eq!(after.major, before.major, max_relative = 1e-11);
        assert_relative_eq!(after.minor, before.minor, epsilon = 1e-12 * before.major);
        if before.major > 1.05 * before.minor {
            let off = (after.angle - before.angle - placement.turn).rem_euclid(PI);
            prop_assert!(off.min(PI - off) < 1e-9);
        }
    }

    #[test]
    fn cutting_a_channel_into_flats_changes_nothing(
        height in 0.05..0.2, width in 0.03..0.1, web in 0.003..0.01, flange in 0.003..0.02,
    ) {
        let channel = Channel { height, width, web, flange, root_radius: 0.0 };
        let flat = |width, thickness, x, z| Flat { width, thickness }.outline().unwrap().placed(&moved(x, z));
        let (reach, level) = (0.5 * (width + web), 0.5 * (height - flange));
        let parts = Composite::new(vec![
            part("web", flat(web, height, 0.5 * web, 0.0)),
            part("upper flange", flat(width - web, flange, reach, level)),
            part("lower flange", flat(width - web, flange, reach, -level)),
        ]);
        assert_same(&parts.unwrap().area_properties(), &channel.outline().unwrap().area_properties(), 1e-12);
    }

    #[test]
    fn the_stress_field_integrates_back_to_its_forces(
        shape in any_shape(), axial in -1e5..1e5, moment_x in -1e4..1e4, moment_z in -1e4..1e4,
    ) {
        let area = shape.outline().unwrap().area_properties();
        let field = area.stress_field(axial, moment_x, moment_z);
        let back_x = -(field.gradient_x * area.product_of_inertia + field.gradient_z * area.second_moment_x);
        let back_z = field.gradient_x * area.second_moment_z + field.gradient_z * area.product_of_inertia;
        assert_relative_eq!(field.mean * area.area, axial, max_relative = 1e-12);
        assert_relative_eq!(back_x, moment_x, epsilon = 1e-9 * (moment_x.abs() + moment_z.abs()));
        assert_relative_eq!(back_z, moment_z, epsilon = 1e-9 * (moment_x.abs() + moment_z.abs()));
    }

    #[test]
    fn no_place_of_a_section_is_stressed_beyond_the_peak(
        shape in any_shape(), axial in -1e5..1e5, moment_x in -1e4..1e4, moment_z in -1e4..1e4,
    ) {
        let outline = shape.outline().unwrap();
        let composite = Composite::new(vec![part("shape", outline.clone())]).unwrap();
        let field = composite.area_properties().stress_field(axial, moment_x, moment_z);
        let peak = composite.peak_stress(&field).value.abs();
        let edge = outline.outside().polygon(16);
        prop_assert!(edge.iter().all(|&place| field.at(place).abs() <= peak * (1.0 + 1e-12)));
        if let Some(axis) = field.neutral_axis() {
            let on = [axis.point[0] + axis.angle.cos(), axis.point[1] + axis.angle.sin()];
            prop_assert!(field.at(on).abs() <= 1e-9 * (peak + field.gradient_x.hypot(field.gradient_z)));
        }
    }

    #[test]
    fn two_outlines_share_the_same_whichever_comes_first(
        one in any_shape(), other in any_shape(), placement in any_placement(),
    ) {
        let (one, other) = (one.outline().unwrap(), other.outline().unwrap());
        let near = Placement { x: 0.2 * placement.x, z: 0.2 * placement.z, ..placement };
        let other = other.placed(&near);
        let (a, b) = (overlap(&one, &other), overlap(&other, &one));
        assert_relative_eq!(a.area, b.area, epsilon = 1e-12);
        prop_assert!(a.area <= one.area_properties().area.min(other.area_properties().area) * (1.0 + 1e-12));
    }

    #[test]
    fn an_outline_shares_all_with_itself_and_nothing_with_its_mirror_across_an_edge(shape in any_shape()) {
        let outline = shape.outline().unwrap();
        let area = outline.area_properties().area;
        assert_relative_eq!(overlap(&outline, &outline).area, area, max_relative = 1e-12);
        let [_, [low, _]] = outline.reach();
        let [[left, right], _] = outline.reach();
        let below = outline.placed(&Placement { turn: PI, x: left + right, z: 2.0 * low });
        prop_assert!(overlap(&outline, &below).area <= 1e-9 * area);
    }
}

/// Areas printed in the standards, cm² for the metric and in² for the inch sizes.
///
/// Metric: EN 10056-1:2017 and EN 10365:2017; inch: AISC Manual 15th ed., Tables 1-5 and 1-7; all from
/// memory. Sharp corners leave out fillet and toes of the inch angles, 1 % of their area, and a mean
/// flange the fillets of the inch channels, 2 %.
#[test]
fn standard_sizes_have_the_areas_of_their_tables() {
    let metric = [
        ("L30x30x3", 1.74, 0.005),
        ("L40x40x4", 3.08, 0.005),
        ("L50x50x5", 4.80, 0.005),
        ("L60x60x6", 6.91, 0.005),
        ("L70x70x7", 9.40, 0.005),
        ("L75x75x8", 11.4, 0.05),
        ("L80x80x8", 12.3, 0.05),
        ("L80x80x10", 15.1, 0.05),
        ("L100x100x8", 15.5, 0.05),
        ("L100x100x10", 19.2, 0.05),
        ("L100x100x12", 22.7, 0.05),
        ("L120x120x12", 27.5, 0.05),
        ("UPE80", 10.1, 0.05),
        ("UPE100", 12.5, 0.05),
        ("UPE120", 15.4, 0.05),
        ("UPE140", 18.4, 0.05),
        ("UPE160", 21.7, 0.05),
    ];
    let inch = [
        ("L2x2x1/4", 0.944),
        ("L2x2x3/8", 1.37),
        ("L2-1/2x2-1/2x1/4", 1.19),
        ("L3x2x3/8", 1.75),
        ("L3x3x1/4", 1.44),
        ("L3x3x3/8", 2.11),
        ("L3x3x1/2", 2.76),
        ("L3-1/2x3-1/2x3/8", 2.50),
        ("L4x3x3/8", 2.49),
        ("L4x4x3/8", 2.86),
        ("L4x4x1/2", 3.75),
        ("L5x3x3/8", 2.86),
    ];
    let area = |name: &str| StandardSize::named(name).unwrap().outline().unwrap().area_properties().area;
    for (name, printed, half_digit) in metric {
        assert!((area(name) * 1e4 - printed).abs() <= half_digit, "{name}: {} {printed}", area(name) * 1e4);
    }
    for (name, printed) in inch {
        assert_relative_eq!(area(name) / 0.0254_f64.powi(2), printed, max_relative = 0.01);
    }
    for (name, printed) in [("C3x4.1", 1.20), ("C4x5.4", 1.58), ("C5x6.7", 1.97), ("C6x8.2", 2.39)] {
        assert_relative_eq!(area(name) / 0.0254_f64.powi(2), printed, max_relative = 0.02);
    }
}

/// A half ring of radii R and r: A = π/2 (R² - r²), z̄ = 4 (R³ - r³)/(3π (R² - r²)).
#[test]
fn a_half_pipe_has_the_centroid_of_a_half_ring() {
    let area = HalfPipe { tube: RoundTube::new(0.1, 0.01).unwrap() }.outline().unwrap().area_properties();
    let (outer, inner) = (0.05_f64, 0.04_f64);
    let squares = outer.powi(2) - inner.powi(2);
    assert_relative_eq!(area.area, FRAC_PI_2 * squares, max_relative = 1e-13);
    let height = 4.0 * (outer.powi(3) - inner.powi(3)) / (3.0 * PI * squares);
    assert_relative_eq!(area.centroid[1], height, max_relative = 1e-13);
    assert!(area.centroid[0].abs() < 1e-16);
}

/// An ellipse's worth of shallow arcs keeps its digits: a circle cut into 720 arcs.
#[test]
fn many_shallow_arcs_make_the_same_circle() {
    let arcs = 720;
    let corner = |i: usize| {
        let angle = TAU * i as f64 / arcs as f64;
        Corner { x: 3.0 + angle.cos(), z: angle.sin(), turn: TAU / arcs as f64 }
    };
    let circle = Outline::solid(Contour::new((0..arcs).map(corner).collect()).unwrap()).area_properties();
    assert_relative_eq!(circle.area, PI, max_relative = 1e-12);
    assert_relative_eq!(circle.second_moment_z, PI / 4.0, max_relative = 1e-11);
    assert_relative_eq!(circle.centroid[0], 3.0, max_relative = 1e-13);
}

#[test]
fn parts_that_overlap_are_refused_by_name_place_and_area() {
    let tube = Profile::from(RoundTube::new(0.127, 0.0127).unwrap()).outline();
    let flat = Flat { width: 0.06, thickness: 0.01 }.outline().unwrap();
    let stacked = |z: f64| {
        Composite::new(vec![part("tube", tube.clone()), part("cover plate", flat.placed(&moved(0.0, z)))])
    };
    assert!(stacked(0.0635 + 0.005).is_ok());
    let refused = stacked(0.0635).unwrap_err();
    let said = refused.to_string();
    assert!(said.starts_with("tube and cover plate overlap by 165.996352 mm² about (0, 60.5"), "{said}");
    let SectionError::PartsOverlap { area, place, .. } = refused else { panic!("{said}") };
    // The cap of the circle over the chord that the flat's underside cuts.
    let (r, h) = (0.0635_f64, 0.0635 - 0.005);
    let cap = r * r * (h / r).acos() - h * (r * r - h * h).sqrt();
    assert_relative_eq!(area, cap, max_relative = 1e-9);
    assert!(place[0].abs() < 1e-12 && place[1] > h && place[1] < r);
}

#[test]
fn thin_and_thick_shapes_are_refused_with_what_is_accepted() {
    let angle = Angle { height: 0.076, width: 0.05, thickness: 0.05, root_radius: 0.0, toe_radius: 0.0 };
    assert_eq!(
        angle.outline().unwrap_err().to_string(),
        "thickness of the angle is 50 mm; accepted is less than 50 mm, the shorter leg"
    );
    let toe = Angle { thickness: 0.006, toe_radius: 0.007, ..angle };
    assert!(toe.outline().unwrap_err().to_string().contains("rounding of corner 3 at (50, 6) mm"));
    assert!(Flat { width: f64::NAN, thickness: 0.01 }.outline().is_err());
}
