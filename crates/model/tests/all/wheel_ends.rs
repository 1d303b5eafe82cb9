//! Bearings and discs of a file: what stands for what it does not say.

use std::path::Path;

use axlebow_axle::{Side, TaperedRollers, USUAL_HUB_FLANGE, USUAL_WHEEL_DISC, flex};
use axlebow_model::{Document, MODEL, Model, read_bytes};
use axlebow_sections::Material;

fn demo(name: &str) -> Document {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../../models/{name}.toml"));
    read_bytes(&std::fs::read(file).unwrap(), name, &MODEL).unwrap()
}

fn model(document: &Document) -> Model {
    Model::of(document).unwrap_or_else(|problems| panic!("{}", problems.render()))
}

/// The default is the sum of flange and disc as flat steel plates, to the two digits that it is written with.
#[test]
fn the_default_disc_flexibility_is_that_of_its_plates() {
    let steel = Material::new("steel", 200e9, 0.3, 7850.0).unwrap();
    let plates = [USUAL_HUB_FLANGE, USUAL_WHEEL_DISC].map(|plate| plate.tilt_flexibility(&steel).unwrap());
    let default = model(&demo("trailer-127-thick-dual")).axle.wheels.left.disc_flexibility();
    let derived = plates[0] + plates[1];
    assert!((default - derived).abs() <= 0.05e-8, "{default} {derived} of {plates:?}");
}

/// By hand: the demo's wheel load of 44.5 kN acts 27 mm outboard of the inner bearing on a span of 110 mm, with outset 51 mm
/// farther out.
#[test]
fn bearings_are_as_stiff_as_their_rollers_at_their_load() {
    for (name, lever) in [("trailer-127-thick-dual", 27.0), ("trailer-127-thick-wide-base-outset", 78.0)] {
        let axle = model(&demo(name)).axle;
        let cup_angle = axle.wheel_ends.left.cup_angle;
        let inner = TaperedRollers { count: 21.0, length: 26e-3, cup_angle };
        let outer = TaperedRollers { count: 19.0, length: 22e-3, cup_angle };
        let end = axle.wheel_ends.right;
        let outward = 44.5e3 * lever / 110.0;
        for (rollers, load, found) in
            [(inner, 44.5e3 - outward, end.inner_stiffness), (outer, outward, end.outer_stiffness)]
        {
            let (radial, axial) =
                (rollers.radial_stiffness(load).unwrap(), rollers.axial_stiffness(load).unwrap());
            assert!((found.radial / radial - 1.0).abs() < 1e-9, "{name}: {found:?} {radial}");
            assert!((found.axial / axial - 1.0).abs() < 1e-9, "{name}: {found:?} {axial}");
        }
    }
}

#[test]
fn a_given_stiffness_holds_for_both_bearings() {
    let mut document = demo("trailer-127-thick-dual");
    document.set("wheel_end[0].bearing_radial_stiffness", "1e6 N/mm").unwrap();
    let end = model(&document).axle.wheel_ends.left;
    assert_eq!((end.inner_stiffness.radial, end.outer_stiffness.radial), (1e9, 1e9));
    assert!(
        end.inner_stiffness.axial != end.outer_stiffness.axial,
        "the axial ones are those of the rollers"
    );
}

#[test]
fn cylindrical_rollers_want_an_axial_stiffness() {
    let mut document = demo("trailer-127-thick-dual");
    document.set("wheel_end[0].bearing_cup_angle", "0 deg").unwrap();
    let problems = Model::of(&document).unwrap_err();
    assert!(problems.render().contains("`bearing_axial_stiffness` beside it"), "{}", problems.render());
    document.set("wheel_end[0].bearing_axial_stiffness", "4e5 N/mm").unwrap();
    assert_eq!(model(&document).axle.wheel_ends.right.outer_stiffness.axial, 4e8);
}

/// A stiffer spindle bends less. The load acts nearer the inner bearing, which gives the more and so tilts the top outward;
/// a larger outer bearing gives less yet, and adds to that.
#[test]
fn parallel_spindles_lean_less_than_tapered_ones() {
    let split = |name: &str| {
        let model = model(&demo(name));
        flex(&model.axle, &model.cases[..1]).unwrap().cases[0].wheels.of(Side::Left).split
    };
    let (tapered, parallel) = (split("trailer-127-thick-dual"), split("trailer-127-thick-dual-parallel"));
    assert!(tapered.bending < parallel.bending && parallel.bending < 0.0, "{tapered:?} {parallel:?}");
    assert!(0.0 < tapered.bearing && tapered.bearing < parallel.bearing, "{tapered:?} {parallel:?}");
}
