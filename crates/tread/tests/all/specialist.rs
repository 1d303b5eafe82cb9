//! What a specialist expects of a worn tire and checks first.

use axlebow_tread::{Carcass, Duty, DutyName, DutyPart, Face, Feather, Pose, Tread, Worn};

const CARCASS: Carcass = Carcass { radius: 0.51, stiffness: 0.9e6, rated_load: 22e3 };
/// Half of the lateral compliance of a tire of 300 kN/m, over its radius.
const TILT: f64 = 0.5 / (300e3 * 0.51);
const DUAL: [f64; 2] = [0.165, -0.165];

fn face(tread: Tread, places: &[f64]) -> Face {
    Face::new(tread, CARCASS, places).unwrap().with_tilt_per_side_force(TILT).unwrap()
}

fn usual(places: &[f64]) -> Face {
    face(Tread::usual(0.22).unwrap(), places)
}

fn worn(face: &Face, camber: f64, toe: f64) -> Worn {
    let load = 22e3 * face.tires() as f64;
    face.worn(Pose { load, camber: camber.to_radians(), toe: toe.to_radians() }).unwrap()
}

/// Wear of each rib of a tire over that of the same rib upright, straight and as it is meant to be.
fn ribs(worn: &Worn, tire: usize) -> Vec<f64> {
    worn.tires[tire].ribs.iter().map(|rib| rib.against_upright.unwrap()).collect()
}

fn in_duty(face: Face, name: DutyName, driven: bool) -> Face {
    face.with_duty(Duty::usual(name).unwrap(), driven).unwrap()
}

#[test]
fn low_inflation_wears_both_shoulders_and_high_inflation_the_center() {
    for name in DutyName::USUAL {
        for places in [&[0.0][..], &DUAL] {
            let at = |inflation: f64| {
                let face = in_duty(usual(places), name, false);
                worn(&face.with_inflations(&vec![inflation; places.len()]).unwrap(), 0.0, 0.0)
            };
            let (low, high) = (at(530e3), at(990e3));
            for tire in 0..places.len() {
                let (low, high) = (ribs(&low, tire), ribs(&high, tire));
                assert!(low[0] > 1.1 && low[4] > 1.1 && low[2] < 0.9, "{low:?}");
                assert!(high[0] < 0.96 && high[4] < 0.96 && high[2] > 1.04, "{high:?}");
                assert!((low[0] - low[4]).abs() < 1e-9 * low[0], "{low:?}");
            }
        }
    }
}

/// De Beer & Fisher (see `pressed`): the middle follows the inflation, the edges the load.
#[test]
fn the_middle_of_the_contact_follows_the_inflation_and_its_edges_the_load() {
    let share = |inflation: f64, load: f64| {
        let face = usual(&[0.0]).with_inflations(&[inflation]).unwrap();
        let ribs = face.pressed(Pose { load, ..Pose::default() }).unwrap().load;
        (ribs[2] / load, ribs[0] / load)
    };
    let (rated, low, light, heavy) =
        (share(760e3, 22e3), share(530e3, 22e3), share(760e3, 5.5e3), share(760e3, 33e3));
    assert!(low.0 < rated.0 && low.1 > rated.1);
    assert!(light.0 > rated.0 && light.1 < rated.1 && heavy.1 > rated.1 && heavy.0 < rated.0);
    assert!(light.0 > light.1 && rated.0 < rated.1, "round when light, square when loaded");
}

#[test]
fn toe_in_wears_the_outer_shoulder_toe_out_the_inner_and_ribs_feather_with_it() {
    for places in [&[0.0][..], &DUAL] {
        for toe in [0.05, 0.1, 0.3] {
            let (within, out) = (worn(&usual(places), 0.0, toe), worn(&usual(places), 0.0, -toe));
            for tire in 0..places.len() {
                let (within_ribs, out_ribs) = (ribs(&within, tire), ribs(&out, tire));
                assert!(within_ribs[4] > within_ribs[0] * 1.005, "{toe}: {within_ribs:?}");
                assert!(out_ribs[0] > out_ribs[4] * 1.005, "{toe}: {out_ribs:?}");
                assert_eq!(within.tires[tire].feather(), Some(Feather::Inboard));
                assert_eq!(out.tires[tire].feather(), Some(Feather::Outboard));
            }
        }
        assert_eq!(worn(&usual(places), 0.0, 0.0).tires[0].feather(), None);
    }
}

#[test]
fn a_carcass_that_does_not_give_way_wears_alike_by_toe_in_and_toe_out() {
    let rigid = usual(&[0.0]).with_tilt_per_side_force(0.0).unwrap();
    let (within, out) = (ribs(&worn(&rigid, 0.0, 0.1), 0), ribs(&worn(&rigid, 0.0, -0.1), 0));
    for (a, b) in within.iter().zip(&out) {
        assert!((a - b).abs() < 1e-9, "{within:?} {out:?}");
    }
}

/// The lean by which the road pushes a tire aside, by hand: the brush's force at the slip of toe, half of the lateral
/// compliance over the radius.
#[test]
fn toe_moves_the_load_by_the_tilt_of_the_carcass() {
    let face = usual(&[0.0]);
    let toe = 0.2_f64.to_radians();
    let load = |pose| face.rolling(pose).unwrap().load;
    let steered = load(Pose { load: 22e3, camber: 0.0, toe });
    let per_load = 0.5 * 1.2e6 / 0.016 * 22e3 / (760e3_f64.powi(2) * 0.22);
    let psi = per_load * toe.tan() / (3.0 * 0.8);
    let lean = TILT * 0.8 * 22e3 * psi * (3.0 - 3.0 * psi + psi * psi);
    // Ribs at ±0.088 m of 0.18 MN/m each.
    let moved = 0.18e6 * 0.176 * lean;
    assert!((steered[4] - steered[0] - moved).abs() < 1e-6 * moved, "{steered:?} {moved}");
    let per_radian = per_load * 22e3 / (760e3 * 0.22) / (6.0 * 0.51) * 22e3;
    let leaned = load(Pose { load: 22e3, camber: -0.01, toe: 0.0 });
    let moved = 0.18e6 * 0.176 * 0.01 * (1.0 - TILT * per_radian);
    assert!((leaned[0] - leaned[4] - moved).abs() < 1e-6 * moved, "{leaned:?} {moved}");
}

#[test]
fn tops_in_camber_wears_the_inner_shoulder_of_a_tire_that_rolls_freely() {
    for name in DutyName::USUAL {
        for places in [&[0.0][..], &DUAL] {
            let worn = worn(&in_duty(usual(places), name, false), -0.4, 0.0);
            let inner = ribs(&worn, places.len() - 1);
            assert!(inner[0] > 1.02 && inner[0] > inner[4], "{} {inner:?}", name.word());
        }
    }
}

#[test]
fn the_inner_dual_of_a_bowed_axle_carries_and_wears_more() {
    let worn = worn(&usual(&DUAL), -0.4, 0.0);
    assert!(worn.tires[1].share > 0.52, "{}", worn.tires[1].share);
    assert!(ribs(&worn, 1)[0] > ribs(&worn, 0)[0] + 0.1 && ribs(&worn, 1)[0] > 1.1);
}

#[test]
fn a_stiff_tread_forgives_camber_and_toe_less() {
    let usual = Tread::usual(0.22).unwrap();
    let of = |tread: Tread| {
        [worn(&face(tread, &DUAL), -0.4, 0.0), worn(&face(tread, &DUAL), 0.0, 0.1)]
            .map(|worn| ribs(&worn, 1).into_iter().fold(0.0, f64::max))
    };
    let soft = of(Tread { depth: 0.021, shear_modulus: 1.0e6, ..usual });
    let stiff = of(Tread { depth: 0.011, shear_modulus: 1.5e6, ..usual });
    assert!(stiff[0] > soft[0] + 0.1 && stiff[1] > soft[1] + 0.1, "{stiff:?} {soft:?}");
}

#[test]
fn a_smaller_dual_is_dragged_and_a_low_one_leaves_the_load_to_the_other() {
    let small = worn(&usual(&DUAL).with_radii(&[0.51, 0.505]).unwrap(), 0.0, 0.0);
    let mean_slip =
        |tire: usize| small.tires[tire].ribs.iter().map(|rib| rib.scuff.slip_forward).sum::<f64>() / 5.0;
    // The smaller one would turn faster: it slides back over the road by two thirds of what it is smaller.
    assert!((mean_slip(1) - mean_slip(0) + 0.005 * 2.0 / 3.0 / 0.5).abs() < 1e-4, "{}", mean_slip(1));
    assert!((small.tires[0].load - small.tires[1].load - 0.9e6 * 0.005).abs() < 1e-6);
    assert!(ribs(&small, 1)[0] > 1.3, "{:?}", ribs(&small, 1));
    let low = worn(&usual(&DUAL).with_inflations(&[760e3, 530e3]).unwrap(), 0.0, 0.0);
    // By hand: stiffness 1 against 0.15 + 0.85 × 530/760.
    let soft: f64 = 0.15 + 0.85 * 530.0 / 760.0;
    assert!((low.tires[1].share - soft / (1.0 + soft)).abs() < 1e-12, "{}", low.tires[1].share);
}

/// Drive slips the ribs of larger radius most, so that it wears the center (common practice, no source), and it takes slip
/// off a shoulder that drags; brake does the opposite.
#[test]
fn drive_wears_the_center_and_brake_the_shoulders() {
    let of = |forward: f64| {
        let part = DutyPart { share: 1.0, side: 0.02, forward };
        let face = usual(&[0.0]).with_duty(Duty::stated(vec![part]).unwrap(), true).unwrap();
        let energy: Vec<f64> =
            worn(&face, 0.0, 0.0).tires[0].ribs.iter().map(|rib| rib.scuff.energy).collect();
        (energy[2] / energy[0], energy.iter().sum::<f64>())
    };
    let (free, drive, brake) = (of(0.0), of(0.03), of(-0.03));
    assert!(drive.0 > 1.1 * free.0 && brake.0 < 0.9 * free.0, "{free:?} {drive:?} {brake:?}");
    assert!(drive.1 > 1.5 * free.1 && brake.1 > 1.5 * free.1, "both wear more");
    let trailer = usual(&[0.0]).with_duty(Duty::usual(DutyName::LineHaul).unwrap(), false).unwrap();
    let driven = in_duty(usual(&[0.0]), DutyName::LineHaul, true);
    assert!(worn(&driven, 0.0, 0.0).upright > 1.1 * worn(&trailer, 0.0, 0.0).upright);
}

/// The forces that a duty asks for: energy of a flat tire is its force over its stiffness, squared, by its stiffness.
#[test]
fn a_flat_tire_scuffs_by_the_square_of_what_the_duty_asks() {
    let tread = Tread { crown: 0.0, ..Tread::usual(0.22).unwrap() };
    let per_load = 0.5 * 1.2e6 / 0.016 * 22e3 / (760e3_f64.powi(2) * 0.22);
    for (side, forward) in [(0.01, 0.0), (0.0, 0.01), (0.006, -0.008)] {
        let parts = vec![DutyPart { share: 1.0, side, forward }];
        let face = Face::new(tread, CARCASS, &[0.0]).unwrap();
        let face = face.with_duty(Duty::stated(parts).unwrap(), true).unwrap();
        let energy: f64 = worn(&face, 0.0, 0.0).tires[0].ribs.iter().map(|rib| rib.scuff.energy).sum();
        // Some hundredths of the slip are where friction lets bristles slide.
        let expected = 0.01_f64.powi(2) * 22e3 / per_load;
        assert!((energy / expected - 1.0).abs() < 0.03, "{side} {forward}: {energy} {expected}");
    }
}

#[test]
fn a_face_is_refused_what_it_cannot_be() {
    let face = usual(&DUAL);
    let said = |face: Result<Face, axlebow_tread::TreadError>| face.unwrap_err().to_string();
    let text = said(face.clone().with_inflations(&[-1.0, 760e3]));
    assert_eq!(text, "inflation of a tire is -1 Pa; a finite value greater than zero is accepted");
    let text = said(face.clone().with_radii(&[0.51]));
    assert_eq!(text, "tire radius has 1 values for 2 tires; one for each is accepted");
    assert!(said(face.clone().with_radii(&[0.51, 0.0])).contains("tire radius is 0 m"));
    assert!(said(face.clone().with_tilt_per_side_force(-1.0)).contains("tilt"));
    assert!(said(face.with_duty(Duty::steady(0.75).unwrap(), false)).contains("nine tenths"));
}
