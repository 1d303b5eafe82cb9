//! Causes of camber and toe on the demo axles, and tires on axles.

use std::path::{Path, PathBuf};

use axlebow_axle::{Axle, Ride, Side, Sides, WheelEnd, flex, ride, tires};
use axlebow_model::{Model, RoadFile, TireFile};
use axlebow_study::{
    Cause, CauseShare, CausesOutcome, Compatibility, Contribution, TableAxle, causes, causes_over,
};

fn models() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models")
}

fn model(name: &str) -> Model {
    let bytes = std::fs::read(models().join(format!("{name}.toml"))).unwrap();
    Model::from_bytes(&bytes, name).unwrap_or_else(|problems| panic!("{}", problems.render()))
}

fn with_ends(axle: &Axle, change: impl Fn(WheelEnd) -> WheelEnd) -> Axle {
    Axle { wheel_ends: Sides::each(|side| change(*axle.wheel_ends.of(side))), ..axle.clone() }
}

fn over(axle: &Axle, road: &str) -> Ride {
    let folder = models().join("roads");
    let bytes = std::fs::read(folder.join(format!("{road}.toml"))).unwrap();
    let road = RoadFile::from_bytes(&bytes, road, &folder).unwrap_or_else(|p| panic!("{}", p.render()));
    road.ride(axle.loading.rated_load, road.speed)
}

fn share(contribution: &Contribution, cause: Cause) -> CauseShare {
    *contribution.shares.iter().find(|share| share.cause == cause).unwrap()
}

fn every(outcome: &CausesOutcome) -> [&Contribution; 4] {
    let Sides { left, right } = &outcome.wheels;
    [&left.camber, &left.toe, &right.camber, &right.toe]
}

/// All eight causes at once, in a case that neither side shares with the other.
fn crooked() -> (Model, Axle) {
    let model = model("trailer-152-thin-wide-base-outset");
    let axle = with_ends(&model.axle, |end| WheelEnd { endplay: 0.2e-3, camber: 0.004, toe: -0.001, ..end });
    (model, axle)
}

#[test]
fn shares_and_rest_sum_to_the_angle_that_the_tire_stands_at() {
    let (model, axle) = crooked();
    for case in
        model.cases.iter().filter(|case| ["rated-load", "one-wheel-raised", "braking"].contains(&&*case.name))
    {
        let outcome = causes(&axle, case).unwrap();
        let standing = tires(&axle, std::slice::from_ref(case)).unwrap();
        for side in Side::BOTH {
            let pose = standing.cases[0].wheels.of(side).pose;
            let (wheel, roll) = (outcome.wheels.of(side), outcome.rigid_roll.of(side));
            assert!((wheel.camber.total + roll - pose.camber).abs() < 1e-12, "{} {roll}", case.name);
            assert_eq!(wheel.toe.total, pose.toe);
        }
        for contribution in every(&outcome) {
            assert_eq!(contribution.shares.len(), Cause::ALL.len());
            let sum: f64 = contribution.shares.iter().map(|share| share.share).sum();
            assert!((sum + contribution.rest - contribution.total).abs() < 1e-12, "{} {sum}", case.name);
        }
    }
}

/// What was made crooked adds to whatever else there is: its share is itself, in every order.
#[test]
fn the_manufactured_setting_is_its_own_share() {
    let (model, axle) = crooked();
    let outcome = causes(&axle, &model.cases[0]).unwrap();
    let camber = share(&outcome.wheels.left.camber, Cause::Setting);
    for value in [camber.share, camber.alone, camber.removing] {
        assert!((value - 0.004).abs() < 1e-12, "{value}");
    }
    assert!((share(&outcome.wheels.left.toe, Cause::Setting).share + 0.001).abs() < 1e-12);
}

/// An axle without any of its causes stands straight; rigid parts leave a ten-thousandth.
#[test]
fn without_its_causes_an_axle_stands_upright() {
    for name in
        ["trailer-127-thick-dual", "drive-housing-9.5-wide-base-outset", "trailer-152-thin-dual-angle"]
    {
        let model = model(name);
        let outcome = causes(&model.axle, &model.cases[0]).unwrap();
        let camber = &outcome.wheels.left.camber;
        assert!(camber.rest.abs() < 5e-4 * camber.total.abs(), "{name}: {} {}", camber.rest, camber.total);
    }
}

/// Removing a cause to first order: small parts take off what the unit-load split books to them.
#[test]
fn small_causes_agree_with_the_split_of_the_static_solution() {
    let model = model("trailer-127-thick-dual");
    let split = flex(&model.axle, &model.cases[..1]).unwrap().cases[0].wheels.left.split;
    let camber = &causes(&model.axle, &model.cases[0]).unwrap().wheels.left.camber.clone();
    let shear = share(camber, Cause::Shear).removing;
    assert!((shear / split.shear - 1.0).abs() < 0.05, "{shear} {}", split.shear);
    let wall = share(camber, Cause::Wall).removing;
    assert!((wall / split.wall - 1.0).abs() < 0.25, "{wall} {}", split.wall);
}

/// Common practice, no source: outset leans the tops further in, and beam bending is the largest cause.
#[test]
fn bending_leads_and_outset_leans_the_tops_in() {
    for name in ["trailer-152-thin-wide-base-outset", "drive-housing-9.5-wide-base-outset"] {
        let model = model(name);
        let camber = causes(&model.axle, &model.cases[0]).unwrap().wheels.left.camber.clone();
        assert!(
            share(&camber, Cause::Outset).share < 0.0 && share(&camber, Cause::Outset).removing < 0.0,
            "{name}"
        );
        let bending = share(&camber, Cause::Bending).share;
        assert!(camber.shares.iter().all(|other| other.share >= bending), "{name}: {camber:?}");
    }
    let turned = model("trailer-152-thin-wide-base-reversed");
    let camber = causes(&turned.axle, &turned.cases[0]).unwrap().wheels.left.camber.clone();
    assert!(share(&camber, Cause::Outset).share > 0.0, "{camber:?}");
}

/// Common practice: bearings within 0.025 to 0.127 mm of endplay (TMC RP 618, 0.001 to 0.005 in) are accepted; looser
/// ones show as endplay_tilt of camber and toe. Geometry: radial play over the span of the bearings.
#[test]
fn looser_bearings_wobble_more_in_camber_and_in_toe() {
    let model = model("trailer-127-thick-wide-base-outset");
    let of = |endplay: f64| {
        let axle = with_ends(&model.axle, |end| WheelEnd { endplay, ..end });
        let driven = ride(&axle, &over(&axle, "pothole")).unwrap().history;
        let swings = [extent(&driven.camber.right), extent(&driven.toe.right)];
        (causes(&axle, &model.cases[0]).unwrap(), swings)
    };
    let ((tight, still), (loose, swinging)) = (of(0.025e-3), of(0.5e-3));
    assert_eq!(tight.endplay_tilt.left.own, tight.endplay_tilt.left.accepted[0]);
    assert!(loose.endplay_tilt.left.own > loose.endplay_tilt.left.accepted[1]);
    // 0.127 mm by tan 15 deg over the 110 mm between the bearings.
    let most = 0.127e-3 * 15_f64.to_radians().tan() / 0.11;
    assert!((loose.endplay_tilt.left.accepted[1] - most).abs() < 1e-12);
    // With the outset the load acts nearer the outer bearing, and play tilts the hub's top inward; without it nearer the inner
    // one, and play tilts as much outward: over all orders the share is nothing, what removing the play takes off is the tilt.
    let endplay = |outcome: &CausesOutcome| share(&outcome.wheels.right.camber, Cause::Endplay).removing;
    assert!(
        endplay(&loose) < endplay(&tight) && endplay(&tight) < 0.0,
        "{} {}",
        endplay(&tight),
        endplay(&loose)
    );
    assert!(swinging[0] > still[0] && swinging[1] > still[1], "{swinging:?} {still:?}");
}

fn extent(values: &[f64]) -> f64 {
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    most - values.iter().copied().fold(f64::INFINITY, f64::min)
}

#[test]
fn over_a_road_the_shares_sum_to_how_far_the_camber_swings() {
    let model = model("trailer-152-thin-dual");
    let ride = over(&model.axle, "one-wheel-bump");
    let outcome = causes_over(&model.axle, &ride, &|done, of| assert!(done <= of)).unwrap();
    for contribution in every(&outcome) {
        let sum: f64 = contribution.shares.iter().map(|share| share.share).sum();
        assert!((sum + contribution.rest - contribution.total).abs() < 1e-12);
    }
    assert!(outcome.wheels.left.camber.total > 0.0);
}

/// A table of one cell is that axle on that tire; upright it is 1 by its own measure.
#[test]
fn a_table_holds_every_axle_on_every_tire_at_every_offset() {
    let tire = |name: &str| {
        let file = models().join(format!("tires/{name}.toml"));
        TireFile::from_bytes(&std::fs::read(file).unwrap(), name).unwrap()
    };
    let axle = |name: &str| {
        let Model { name, axle, cases, .. } = model(name);
        // Free of drive, which would hide the lean.
        let axle = axle.in_duty(axlebow_axle::tread::Duty::steady(0.03).unwrap());
        TableAxle { name, axle, case: cases[0].clone() }
    };
    let table = Compatibility {
        axles: vec![axle("drive-housing-9.5-wide-base-zeroset"), axle("drive-housing-11-wide-base-zeroset")],
        tires: vec![tire("deep-treaded"), tire("fuel-saving")],
        offsets: vec![0.051, 0.0, -0.025],
    };
    let outcome = table.run().unwrap();
    assert_eq!((outcome.axles.len(), outcome.columns.len()), (2, 6));
    for row in &outcome.cells {
        let wear: Vec<f64> = row.iter().map(|cell| cell.against_upright.unwrap()).collect();
        assert!(wear[0] > wear[1] && wear[1] > wear[2], "outset wears more: {wear:?}");
        assert!(wear[3] > wear[0], "the stiff tread forgives less: {wear:?}");
    }
    let fitted = table.tires[1].fitted(&table.axles[0].axle).unwrap();
    let alone = tires(&fitted, &[table.axles[0].case.clone()]).unwrap();
    let shoulder = alone.cases[0].wheels.left.worn.tires[0].inner_shoulder().against_upright.unwrap();
    assert!((outcome.cells[0][4].against_upright.unwrap() / shoulder - 1.0).abs() < 1e-9);
    assert_eq!(table.run().unwrap(), outcome);
}

/// A bump under one wheel rolls the axle as a whole, which is no flex: it stands beside the causes, and no cause has it. Seats that
/// hold the axle straight between them leave it its roll.
#[test]
fn rigid_roll_is_no_cause_of_flex() {
    let model = model("trailer-152-thin-dual");
    let over_bump = over(&model.axle, "one-wheel-bump");
    let outcome = causes_over(&model.axle, &over_bump, &|_, _| ()).unwrap();
    let driven = ride(&model.axle, &over_bump).unwrap().history;
    assert_eq!(outcome.rigid_roll.left, extent(&driven.roll));
    assert!(outcome.rigid_roll.left > outcome.wheels.left.camber.total, "{outcome:?}");
    for (side, camber) in [(Side::Left, &driven.camber.left), (Side::Right, &driven.camber.right)] {
        let own = &outcome.wheels.of(side).camber;
        assert_eq!(own.total, extent(camber));
        assert!(own.rest.abs() < 2e-3 * own.total, "{own:?}");
        let leads = share(own, Cause::Bending).share;
        assert!(own.shares.iter().all(|other| other.share <= leads), "{own:?}");
    }
    let raised = model.cases.iter().find(|case| case.name == "one-wheel-raised").unwrap();
    let roll = |axle: &Axle| flex(axle, std::slice::from_ref(raised)).unwrap().cases[0].axle_roll;
    let (as_it_is, held) = (roll(&model.axle), roll(&Cause::Seat.removed(&model.axle).unwrap()));
    assert!((held / as_it_is - 1.0).abs() < 0.02, "{held} {as_it_is}");
}
