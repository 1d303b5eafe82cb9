//! Stiffeners: closed forms of full composite action, symmetry, validation_errors.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::example::stiffening::{loose_seats, stiffener, tent, under_load, weld};
use crate::example::{self, axle, tube};
use approx::assert_relative_eq;
use axlebow_axle::{
    Axle, AxleError, CaseOutcome, Orientation, Side, Stiffener, StiffenerEnd, StiffenerForm, StiffenerWeld,
    WeldPattern, flex, modes, sleeve, standard_cases,
};
use axlebow_sections::shape::{Channel, Flat};
use axlebow_sections::{Contour, Corner, Material, Outline, Shape};

/// Between the seats the moment M is the same everywhere, so a stiffener of length l takes
/// M l/2 (1/EI - 1/EI') off the slope at each seat, whatever its distance from the axle's line.
/// Source: moment-area theorem, Gere & Goodno, Mechanics of Materials, 8th ed. 2013, ch. 9.
#[test]
fn camber_that_a_tent_removes_matches_the_moment_area_theorem() {
    let (bare, stiff) = (loose_seats(vec![]), loose_seats(vec![tent()]));
    let (before, after) = (under_load(&bare, 80e3), under_load(&stiff, 80e3));
    let center = |case: &CaseOutcome| case.stations.iter().find(|one| one.name == "center").unwrap().clone();
    let moment = center(&before).resultants.moment_x;
    assert_relative_eq!(center(&after).resultants.moment_x, moment, max_relative = 1e-9);
    let profile = example::tube(0.127, 0.0127);
    let tube = profile.properties(0.3);
    let seated = tent().on(&profile).unwrap();
    // Transformed section by hand: same modulus, so areas count as they are.
    let (a, b) = (tube.area, seated.area.area);
    let arm = seated.area.centroid[1];
    let second = tube.second_moment_x + seated.area.second_moment_x + a * b / (a + b) * arm * arm;
    let expected = moment * 0.35 / 200e9 * (1.0 / tube.second_moment_x - 1.0 / second);
    let stiffening = after.stiffening.as_ref().unwrap();
    let gained = stiffening.composite - before.wheels.left.camber_change;
    assert_relative_eq!(gained, expected, max_relative = 1e-8);
    // Far from its ends the tied stiffener acts nearly in full. The fiber farthest from the common centroid is the tube's
    // bottom or the heel.
    let centroid = b * arm / (a + b);
    let (bottom, heel) = (0.0635 + centroid, seated.outline.reach()[1][1] - centroid);
    let stress = moment * bottom.max(heel) / second;
    assert!((0.97..1.0).contains(&(center(&after).stress.abs() / stress)), "{:?}", center(&after));
}

#[test]
fn a_stiffener_at_the_front_turns_the_help_round() {
    let load = |clock: f64| {
        let stiffened = loose_seats(vec![Stiffener { clock, ..tent() }]);
        under_load(&stiffened, 80e3).wheels.left.camber_change
    };
    let bare = under_load(&loose_seats(vec![]), 80e3).wheels.left.camber_change;
    let (top, front, bottom, rear) = (load(0.0), load(FRAC_PI_2), load(PI), load(-FRAC_PI_2));
    assert_relative_eq!(top, bottom, max_relative = 1e-9);
    assert_relative_eq!(front, rear, max_relative = 1e-9);
    assert!(bare < front && front < top && top < 0.0, "{bare} {front} {top}");
    // At the front the angle bends about its own middle only.
    let oblique = load(PI / 4.0);
    assert!(front < oblique && oblique < top);
}

#[test]
fn a_pair_top_and_bottom_keeps_the_centroid_and_the_camber_split_sums() {
    let pair = vec![tent(), Stiffener { name: "lower".into(), clock: PI, ..tent() }];
    let mut axle = axle();
    axle.stiffeners = pair;
    let axle = axle.checked().unwrap();
    for case in flex(&axle, &standard_cases(&axle)).unwrap().cases {
        for side in Side::BOTH {
            let wheel = case.wheels.of(side);
            let split = wheel.split;
            let sum = split.bending + split.shear + split.seat + split.bearing;
            assert_relative_eq!(sum, wheel.camber_change, max_relative = 1e-9, epsilon = 1e-12);
        }
        assert!(case.equilibrium_residual < 1e-9, "{}", case.equilibrium_residual);
    }
    let sagging = under_load(&axle, 80e3);
    let center = sagging.stations.iter().find(|station| station.name == "center").unwrap();
    assert_relative_eq!(center.displacement[1], 0.0, epsilon = 1e-12);
}

#[test]
fn a_stiffener_of_no_stiffness_adds_its_mass_only() {
    let putty = Material::new("putty", 2e5, 0.3, 7850.0).unwrap();
    let soft = Stiffener { material: putty, ..tent() };
    let bare = axle();
    // Not checked: nobody may weld putty.
    let stuck = Axle { stiffeners: vec![soft.clone()], ..bare.clone() };
    let (before, after) = (under_load(&bare, 80e3), under_load(&stuck, 80e3));
    assert_relative_eq!(
        after.wheels.left.camber_change,
        before.wheels.left.camber_change,
        max_relative = 1e-6
    );
    assert_relative_eq!(stuck.mass() - bare.mass(), soft.mass(), max_relative = 1e-12);
    let area = 0.0095 * (2.0 * 0.0762 - 0.0095);
    assert_relative_eq!(soft.mass(), 7850.0 * area * 0.7, max_relative = 1e-12);
    let weight = |axle: &Axle| modes(axle, 89e3, 4).unwrap().sprung_mass;
    assert_relative_eq!(weight(&bare) - weight(&stuck), soft.mass(), max_relative = 1e-9);
}

#[test]
fn longer_help_is_more_help_and_a_run_out_costs_a_little() {
    let camber = |half: f64, end: StiffenerEnd| {
        let stiffened = loose_seats(vec![Stiffener { from: -half, to: half, end, ..tent() }]);
        under_load(&stiffened, 80e3).wheels.left.camber_change
    };
    let square = |half| camber(half, StiffenerEnd::Square);
    assert!(square(0.1) < square(0.2) && square(0.2) < square(0.4));
    let tapered = camber(0.4, StiffenerEnd::Tapered { length: 0.08 });
    let radiused = camber(0.4, StiffenerEnd::Radiused { radius: 0.08 });
    assert!(square(0.32) < tapered && tapered < radiused && radiused < square(0.4));
}

/// Concentric tubes share their centroid, so that every constant is the sum of both (parallel axis theorem).
#[test]
fn a_full_sleeve_adds_its_own_constants_to_the_tube() {
    let form = StiffenerForm::full_sleeve(0.127, 0.004).unwrap();
    let mut axle = axle();
    axle.stiffeners = vec![Stiffener { form, ..tent() }];
    let axle = axle.checked().unwrap();
    let stretches = axle.stiffened_stretches().unwrap();
    assert_eq!(stretches.len(), 1);
    assert_eq!((stretches[0].from, stretches[0].to), (-0.35, 0.35));
    let (tube, own) =
        (example::tube(0.127, 0.0127).properties(0.3), example::tube(0.135, 0.004).properties(0.3));
    let section = &stretches[0].section;
    for (found, expected) in [
        (section.area.area, tube.area + own.area),
        (section.area.second_moment_x, tube.second_moment_x + own.second_moment_x),
        (section.torsion_constant, tube.torsion_constant + own.torsion_constant),
        (section.mass_per_length, 7850.0 * (tube.area + own.area)),
    ] {
        assert_relative_eq!(found, expected, max_relative = 1e-9);
    }
    assert_relative_eq!(section.area.centroid[1], 0.0, epsilon = 1e-12);
}

/// Two walls side by side turn as one of both thicknesses on the midline of their material.
/// Source: R. Bredt 1896, J = 4 A²/∮ ds/t, as in Young & Budynas, Roark's Formulas, 7th ed. 2002, ch. 10. The welds
/// between them are not quite rigid and the midlines lie apart, hence two per cent.
#[test]
fn a_half_pipe_welded_along_both_edges_thickens_half_of_the_tube() {
    let (tube, wall, over) = (0.1524, 0.006, 0.006);
    let form = StiffenerForm::of_shape(&sleeve(tube, over).unwrap(), Orientation::Round).unwrap();
    let mut axle = axle();
    axle.body = example::body(example::tube(tube, wall));
    axle.stiffeners = vec![Stiffener { form, ..tent() }];
    let section = axle.stiffened_stretches().unwrap().swap_remove(0).section;
    let (below, above) = (0.5 * (tube - wall), 0.5 * tube);
    let enclosed = 0.5 * PI * (below * below + above * above);
    let round = PI * below / wall + PI * above / (wall + over);
    let expected = 4.0 * enclosed * enclosed / round;
    assert_relative_eq!(section.torsion_constant, expected, max_relative = 0.02);
    let [x, z] = section.shear_center.unwrap();
    assert!(x.abs() < 1e-9 && z > 0.0, "{x} {z}");
}

#[test]
fn the_shear_center_of_a_tent_lies_toward_it_and_that_of_a_sleeve_stays() {
    let center = |stiffeners: Vec<Stiffener>| {
        loose_seats(stiffeners).stiffened_stretches().unwrap().swap_remove(0).section.shear_center
    };
    let [x, z] = center(vec![tent()]).unwrap();
    assert!(x.abs() < 1e-9 && z > 0.0, "{x} {z}");
    let below = Stiffener { name: "below".into(), clock: PI, ..tent() };
    let [x, z] = center(vec![tent(), below]).unwrap();
    assert!(x.abs() < 1e-9 && z.abs() < 1e-9, "{x} {z}");
    let sleeve = StiffenerForm::full_sleeve(0.127, 0.004).unwrap();
    assert_eq!(center(vec![Stiffener { form: sleeve, ..tent() }]), Some([0.0, 0.0]));
    let open = StiffenerWeld { both_sides: false, ..weld() };
    assert_eq!(center(vec![Stiffener { weld: open, ..tent() }]), None);
}

#[test]
fn stretches_part_where_a_second_stiffener_begins() {
    let lower = Stiffener { name: "lower".into(), clock: PI, from: 0.0, to: 0.2, ..tent() };
    let axle = loose_seats(vec![tent(), lower]);
    let stretches = axle.stiffened_stretches().unwrap();
    let counts: Vec<usize> = stretches.iter().map(|stretch| stretch.stiffeners.len()).collect();
    assert_eq!(counts, [1, 2, 1]);
    assert_relative_eq!(stretches[1].section.area.centroid[1], 0.0, epsilon = 1e-12);
    assert!(loose_seats(vec![]).stiffened_stretches().unwrap().is_empty());
}

#[test]
fn misfits_name_both_parties_and_by_how_much() {
    let refused = |stiffeners: Vec<Stiffener>| {
        let mut axle = axle();
        axle.stiffeners = stiffeners;
        axle.checked().unwrap_err().remove(0).to_string()
    };
    let long = Stiffener { to: 0.5, ..tent() };
    let said = refused(vec![long]);
    assert!(said.contains("runs 80.0 mm into the seat, which begins 420.0 mm"), "{said}");
    let beside_seat = |from: f64, to: f64| {
        let mut axle = Axle { stiffeners: vec![Stiffener { from, to, ..tent() }], ..axle() };
        Side::BOTH.into_iter().for_each(|side| axle.seats.of_mut(side).weld_keep_out = 0.025);
        axle.checked().map(|_| ()).map_err(|errors| errors[0].to_string())
    };
    assert_eq!((beside_seat(-0.3, 0.395), beside_seat(0.565, 0.7)), (Ok(()), Ok(())));
    let said = beside_seat(-0.3, 0.4).unwrap_err();
    assert!(said.contains("5.0 mm into the keep-out beside the seat, which begins 395.0 mm"), "{said}");
    let said = beside_seat(0.55, 0.7).unwrap_err();
    assert!(said.contains("15.0 mm into the keep-out beside the seat, which begins 565.0 mm"), "{said}");
    let outboard = Stiffener { from: 0.55, to: 0.79, ..tent() };
    let said = refused(vec![outboard.clone()]);
    assert!(said.contains("runs 40.0 mm into the keep-out beside the spindle"), "{said}");
    let said = refused(vec![Stiffener { to: 0.9, ..outboard }]);
    assert!(said.contains("runs 100.0 mm into the spindle"), "{said}");
    let said = refused(vec![tent(), Stiffener { name: "second".into(), clock: 0.3, ..tent() }]);
    assert!(said.contains("angle") && said.contains("second") && said.contains("overlap"), "{said}");
    let said = refused(vec![tent(), tent()]);
    assert!(said.contains("two stiffeners are named angle"), "{said}");
    let pattern = WeldPattern::Stitched { length: 0.06, pitch: 0.05 };
    let said = refused(vec![Stiffener { weld: StiffenerWeld { pattern, ..weld() }, ..tent() }]);
    assert!(said.contains("10.0 mm more than the 50.0 mm"), "{said}");
    let flat = Shape::Flat(Flat { width: 0.05, thickness: 0.01 });
    let sits = StiffenerForm::of_shape(&flat, Orientation::ToesDown);
    assert!(matches!(sits, Err(AxleError::Orientation { .. })), "{sits:?}");
    let wide =
        Shape::Channel(Channel { height: 0.2, width: 0.05, web: 0.006, flange: 0.008, root_radius: 0.0 });
    let said = refused(vec![stiffener("wide", &wide, Orientation::ToesDown)]);
    assert!(said.contains("does not sit on the axle"), "{said}");
    let aluminium = Material::new("aluminium", 70e9, 0.33, 2700.0).unwrap();
    let said = refused(vec![Stiffener { material: aluminium, ..tent() }]);
    assert!(said.contains("unlike metals") && said.contains("70 against 200 GPa"), "{said}");
    let stainless = Material::new("stainless", 195e9, 0.3, 7950.0).unwrap();
    let alike = vec![Stiffener { material: stainless, ..tent() }];
    assert!(Axle { stiffeners: alike, ..axle() }.checked().is_ok());
}

/// Bores of 1/16 in round the tube of 127 mm, and just past it.
#[test]
fn a_sleeve_must_fit_its_tube() {
    let tube = tube(0.127, 0.0127);
    let fits = |bore: f64| {
        let half = StiffenerForm::of_shape(&sleeve(bore, 0.005).unwrap(), Orientation::Round);
        [half, StiffenerForm::full_sleeve(bore, 0.005)]
            .map(|form| Stiffener { form: form.unwrap(), ..tent() }.on(&tube).map(|_| ()))
    };
    let widest = 0.127 + 0.125 * 0.0254;
    assert_eq!(fits(0.127), [Ok(()), Ok(())]);
    assert_eq!(fits(widest - 1e-6), [Ok(()), Ok(())]);
    for misfit in fits(widest + 1e-5) {
        let said = misfit.unwrap_err().to_string();
        assert!(
            said.contains("bore of 130.2 mm on a tube of 127.0 mm") && said.contains("pack it"),
            "{said}"
        );
    }
}

/// On the tube of 127 mm, a bar drawn at a height (mm) over its outermost.
#[test]
fn an_outline_lies_where_it_is_drawn_or_is_refused() {
    let drawn = |height: f64| {
        let corner = |(x, z): (f64, f64)| Corner { x: x * 1e-3, z: (z + height) * 1e-3, turn: 0.0 };
        let corners = [(-10.0, 0.0), (10.0, 0.0), (10.0, 30.0), (-10.0, 30.0)].map(corner).to_vec();
        let form = StiffenerForm::of_outline("outline", Outline::solid(Contour::new(corners).unwrap()));
        Stiffener { form, ..tent() }.on(&tube(0.127, 0.0127)).map(|seated| seated.area.centroid[1])
    };
    assert_relative_eq!(drawn(0.0).unwrap(), 0.0635 + 0.015, max_relative = 1e-9);
    assert_relative_eq!(drawn(0.05).unwrap(), 0.0635 + 0.015, max_relative = 1e-9);
    let said = [5.0, -5.0].map(|height| drawn(height).unwrap_err().to_string());
    assert!(
        said[0].contains("5.0 mm clear of the wall") && said[0].contains("lower its corners"),
        "{said:?}"
    );
    assert!(said[1].contains("5.0 mm into the wall") && said[1].contains("raise its corners"), "{said:?}");
}

/// Corners lie √(r² + b²/4) - r off the tube: 4.7 and 5 mm.
#[test]
fn no_fillet_bridges_a_gap_of_more_than_three_sixteenths_of_an_inch() {
    let lying = |width: f64, leg: f64| {
        let flat = Shape::Flat(Flat { width, thickness: 0.01 });
        let flat = stiffener("flat", &flat, Orientation::Lying);
        Stiffener { weld: StiffenerWeld { leg, ..weld() }, ..flat }.on(&tube(0.127, 0.0127))
    };
    let width = |gap: f64| 2.0 * ((0.0635 + gap).powi(2) - 0.0635_f64.powi(2)).sqrt();
    assert!(lying(width(0.0047), 0.006).is_ok());
    assert!(matches!(lying(width(0.005), 0.006), Err(AxleError::Floats { .. })));
    assert!(matches!(lying(width(0.0047), 0.0046), Err(AxleError::Floats { .. })));
}
