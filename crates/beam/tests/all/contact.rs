//! Stops with a gap.

use axlebow_beam::{BeamError, Load, StopSide, SupportKind, solve};

use crate::{BENDING, assert_near, line, tube};

fn stop(side: StopSide, gap: f64) -> SupportKind {
    SupportKind::Stop { side, gap, stiffness: None }
}

/// A cantilever with a stop under its tip: free until P L³/(3 E I) is the gap, then propped.
#[test]
fn a_stop_touches_once_its_gap_is_closed() {
    let ei = 29e6 * tube().second_moment;
    let gap = 0.1;
    let contact_force = 3.0 * ei * gap / 40.0_f64.powi(3);
    for (force, touches) in [(0.99 * contact_force, false), (1.5 * contact_force, true)] {
        let supports = [(0.0, SupportKind::FIXED), (40.0, stop(StopSide::Below, gap))];
        let solution =
            solve(&line(40.0, &supports, &[Load::Force { at: 40.0, force: -force }]), &BENDING).unwrap();
        assert_eq!(solution.reactions[1].touches, touches);
        let expected = if touches { force - contact_force } else { 0.0 };
        assert!((solution.reactions[1].force - expected).abs() < 1e-6 * contact_force);
        let deflection = if touches { -gap } else { -0.99 * gap };
        assert_near(solution.at(40.0).deflection, deflection, 1e-9);
    }
}

#[test]
fn a_stop_does_not_pull() {
    let supports = [(0.0, SupportKind::FIXED), (40.0, stop(StopSide::Below, 0.0))];
    let solution =
        solve(&line(40.0, &supports, &[Load::Force { at: 40.0, force: 1000.0 }]), &BENDING).unwrap();
    assert!(!solution.reactions[1].touches && solution.reactions[1].force == 0.0);
    let above = [(0.0, SupportKind::FIXED), (40.0, stop(StopSide::Above, 0.0))];
    let solution = solve(&line(40.0, &above, &[Load::Force { at: 40.0, force: 1000.0 }]), &BENDING).unwrap();
    assert_near(solution.reactions[1].force, -1000.0, 1e-9);
}

#[test]
fn a_soft_stop_shares_the_load() {
    // Tip stiffness of the cantilever and of the stop side by side, behind the gap.
    let (ei, rate, gap, force) = (29e6 * tube().second_moment, 1e4, 0.02, 5000.0);
    let kind = SupportKind::Stop { side: StopSide::Below, gap, stiffness: Some(rate) };
    let supports = [(0.0, SupportKind::FIXED), (40.0, kind)];
    let solution =
        solve(&line(40.0, &supports, &[Load::Force { at: 40.0, force: -force }]), &BENDING).unwrap();
    let own = 3.0 * ei / 40.0_f64.powi(3);
    assert_near(solution.at(40.0).deflection, -(force + rate * gap) / (own + rate), 1e-10);
}

/// A beam that lies on three stops and is loaded on its overhang lifts off the far one.
#[test]
fn a_beam_on_stops_alone_lifts_off_one() {
    let supports = [0.0, 20.0, 40.0].map(|at| (at, stop(StopSide::Below, 0.0)));
    let loads = [Load::Force { at: 5.0, force: -1000.0 }, Load::Force { at: 60.0, force: -100.0 }];
    let solution = solve(&line(60.0, &supports, &loads), &BENDING).unwrap();
    let touches: Vec<bool> = solution.reactions.iter().map(|reaction| reaction.touches).collect();
    let up: f64 = solution.reactions.iter().map(|reaction| reaction.force).sum();
    assert_near(up, 1100.0, 1e-9);
    assert!(solution.reactions.iter().all(|reaction| reaction.force >= -1e-9), "{touches:?}");
    let lifted = [Load::Force { at: 60.0, force: -1000.0 }];
    let far = solve(&line(60.0, &[supports[0], supports[1]], &lifted), &BENDING);
    assert!(matches!(far, Err(BeamError::Mechanism { .. })), "it tips over");
}
