//! The spectrum of the camber as a picture.

use axlebow_axle::RideOutcome;
use axlebow_report::ReportError;
use axlebow_report::plot::spectrum_figure;
use axlebow_units::UnitSystem;

use crate::figures::keep;
use crate::made_up::card;
use crate::ride::outcome;

#[test]
fn spectra_are_drawn_with_named_peaks_and_cup_spacing() {
    let mut modes = crate::modes::outcome();
    modes.modes[3].frequency = 3.05;
    for (name, system) in [("spectrum", UnitSystem::Si), ("spectrum-us", UnitSystem::Us)] {
        let svg = spectrum_figure(&outcome(), &modes, &card(system)).unwrap();
        assert_eq!(svg, spectrum_figure(&outcome(), &modes, &card(system)).unwrap());
        for part in ["vertical bow, 3.0 Hz", "deg²/Hz", "From cup to cup", "Demonstration data, invented."] {
            assert!(svg.text().contains(part), "{part} is missing");
        }
        keep(name, &svg);
    }
}

#[test]
fn a_ride_without_motion_has_no_spectrum_to_draw() {
    let modes = crate::modes::outcome();
    let mut still = outcome();
    still.history.camber.left.fill(0.0);
    still.history.camber.right.fill(0.0);
    let refused =
        |outcome: &RideOutcome| spectrum_figure(outcome, &modes, &card(UnitSystem::Si)).unwrap_err();
    assert!(matches!(refused(&still), ReportError::Empty { .. }));
    let mut odd = outcome();
    odd.history.camber.left[5] = f64::NAN;
    assert!(matches!(refused(&odd), ReportError::NotDrawable { .. }));
}
