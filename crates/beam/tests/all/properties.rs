//! Properties that hold for any beam.

use axlebow_beam::{Element, Load, Mesh, SupportKind, Theory, solve};
use proptest::prelude::*;

use crate::{BENDING, line};

fn meshes() -> impl Strategy<Value = Mesh> {
    let elements = prop_oneof![Just(Element::Flexibility), Just(Element::Hermite), Just(Element::TwoNode)];
    (elements, 1..6_usize).prop_map(|(element, elements)| Mesh {
        theory: Theory::Timoshenko,
        element,
        elements,
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Reactions balance the loads, in force and in moment about the start, for any element.
    #[test]
    fn reactions_balance_the_loads(
        mesh in meshes(), at in 1.0..39.0_f64, force in -1e4..1e4_f64, turn in -1e5..1e5_f64,
        (start, end) in (-300.0..300.0_f64, -300.0..300.0_f64), middle in 5.0..35.0_f64,
    ) {
        let supports = [(0.0, SupportKind::FIXED), (middle, SupportKind::PINNED), (40.0, SupportKind::PINNED)];
        let loads = [
            Load::Force { at, force },
            Load::Moment { at: 0.5 * at, moment: turn },
            Load::Distributed { from: 4.0, to: 30.0, start, end },
        ];
        let solution = solve(&line(40.0, &supports, &loads), &mesh).unwrap();
        let (total, resultant) = (0.5 * 26.0 * (start + end), 26.0 * 26.0 * (start / 6.0 + end / 3.0));
        let up: f64 = solution.reactions.iter().map(|r| r.force).sum::<f64>() + force + total;
        let turning = solution.reactions.iter().map(|r| r.at * r.force + r.moment).sum::<f64>()
            + at * force + turn + resultant + 4.0 * total;
        prop_assert!(up.abs() < 1e-6 * (force.abs() + start.abs() * 26.0 + end.abs() * 26.0 + 1e3), "{up}");
        prop_assert!(turning.abs() < 1e-5 * (40.0 * force.abs() + turn.abs() + 1e4), "{turning}");
    }

    /// Deflection at b under a force at a is that at a under the force at b (J. C. Maxwell).
    #[test]
    fn deflections_are_reciprocal(mesh in meshes(), a in 1.0..39.0_f64, b in 1.0..39.0_f64) {
        // Both places are nodes in both beams.
        let at = |loaded: f64, other: f64| {
            let loads = [Load::Force { at: loaded, force: 1e4 }, Load::Force { at: other, force: 0.0 }];
            let supports = [(0.0, SupportKind::FIXED), (40.0, SupportKind::PINNED)];
            solve(&line(40.0, &supports, &loads), &mesh).unwrap().at(other).deflection
        };
        let (ab, ba) = (at(a, b), at(b, a));
        prop_assert!((ab - ba).abs() < 1e-9 * ab.abs() + 1e-13, "{ab} {ba}");
    }

    /// A beam moved as a whole with its supports has no moment.
    #[test]
    fn rigid_motion_costs_nothing(rise in -1.0..1.0_f64, turn in -0.1..0.1_f64) {
        let moved = |at: f64| SupportKind::Pinned { settlement: rise + turn * at, turning_stiffness: 0.0 };
        let fixed = SupportKind::Fixed { settlement: rise, rotation: turn };
        let supports = [(0.0, fixed), (13.0, moved(13.0)), (40.0, moved(40.0))];
        let solution = solve(&line(40.0, &supports, &[]), &BENDING).unwrap();
        prop_assert!(solution.stations(20).iter().all(|station| station.moment.abs() < 1e-4));
        prop_assert!((solution.at(30.0).deflection - rise - 30.0 * turn).abs() < 1e-10);
    }
}
