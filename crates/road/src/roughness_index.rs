//! The international roughness index of a profile.

use nalgebra::{Matrix5, Vector5};

use crate::error::accepted;
use crate::{MeasuredProfile, RoadError};

/// Suspension stiffness over body mass (1/s²).
const SUSPENSION: f64 = 63.3;
/// Tire stiffness over body mass (1/s²).
const TIRE: f64 = 653.0;
/// Damping over body mass (1/s).
const DAMPING: f64 = 6.0;
/// Wheel mass over body mass.
const MASS_RATIO: f64 = 0.15;
/// Speed, 80 km/h (m/s).
const SPEED: f64 = 80.0 / 3.6;
/// Base of the moving average (m).
const BASE: f64 = 0.25;
/// Stretch whose mean slope the car starts on, 0.5 s (m).
const RUN_IN: f64 = 11.0;
/// Steps in the base along ground between samples that are uneven or make no whole count of the base: 5 mm.
const FINE: f64 = 50.0;
/// Most steps in the base: 1 mm, as fine as a profile is resampled.
const FINEST: f64 = 250.0;
/// Share of the spacing by which samples may be off and still count as even.
const EVEN: f64 = 1e-6;
/// Samples further apart miss waves that shake the wheel; the limit of the usual survey practice, from memory (m).
const WIDEST_SPACING: f64 = 0.3;

/// International roughness index of a profile: the mean of |żs - żu|/v of the golden quarter car at 80 km/h.
///
/// ```text
/// z̈s = -k2 (zs - zu) - c (żs - żu),   μ z̈u = k2 (zs - zu) + c (żs - żu) + k1 (u - zu)
/// k1 = 653 /s²,  k2 = 63.3 /s²,  c = 6 /s,  μ = 0.15
/// ```
///
/// u is the profile averaged over 250 mm; within a spacing its slope is held and the motion exact. Even samples of which a
/// whole count makes 250 mm are taken as they are. The straight ground between any others is followed in steps of
/// 5 mm or less, which leaves (π n Δ)²/6 of a wave of n cycles per meter: 4e-5 at 1 cycle per meter.
///
/// - `profile`: 11.25 m or longer, with samples 300 mm apart or less in the mean
///
/// Returns the index (m/m); 0.001 is 1 m/km.
///
/// Errors: [`RoadError::ProfileShort`]; [`RoadError::Range`] for the spacing;
/// [`RoadError::Count`] above 10 million samples.
///
/// Source: M. W. Sayers, Transp. Res. Rec. 1501 (1995) 1-12.
pub fn international_roughness_index(profile: &MeasuredProfile) -> Result<f64, RoadError> {
    let (length, least) = (profile.length(), RUN_IN + BASE);
    if length < least {
        return Err(RoadError::ProfileShort { length, least });
    }
    let mean_spacing = length / (profile.heights().len() - 1) as f64;
    accepted("mean sample spacing of the profile", mean_spacing, "m", 0.0..=WIDEST_SPACING)?;
    let own = (BASE / mean_spacing).round();
    let is_part = (BASE / mean_spacing - own).abs() < EVEN * own && profile.is_even(EVEN);
    let per_base = if is_part { own } else { (2.0 * own).max(FINE) }.min(FINEST);
    let spacing = BASE / per_base;
    let slopes = averaged_slopes(profile.resampled(spacing)?.heights(), per_base as usize);
    Ok(mean_stroke(&slopes, spacing))
}

/// Slope of the averaged profile within each spacing (m/m).
fn averaged_slopes(heights: &[f64], per_base: usize) -> Vec<f64> {
    heights.windows(per_base + 1).map(|base| (base[per_base] - base[0]) / BASE).collect()
}

/// Mean of |żs - żu|/v along the profile (m/m).
fn mean_stroke(slopes: &[f64], spacing: f64) -> f64 {
    let transition = transition(spacing);
    let run_in = slopes.len().min((RUN_IN / spacing) as usize);
    let slope = slopes[..run_in].iter().sum::<f64>() / run_in as f64;
    let mut state = Vector5::new(slope, 0.0, slope, 0.0, 0.0);
    let mut sum = 0.0;
    for &slope in slopes {
        state[4] = slope;
        state = transition * state;
        sum += (state[0] - state[2]).abs();
    }
    sum / slopes.len() as f64
}

/// Transition over one spacing of (zs', dzs'/dt, zu', dzu'/dt, u'), where ' is the slope along the road and u' is held.
fn transition(spacing: f64) -> Matrix5<f64> {
    let (k, c, t) = (SUSPENSION / MASS_RATIO, DAMPING / MASS_RATIO, TIRE / MASS_RATIO);
    #[rustfmt::skip]
    let rate = Matrix5::from_row_slice(&[
        0.0, 1.0, 0.0, 0.0, 0.0,
        -SUSPENSION, -DAMPING, SUSPENSION, DAMPING, 0.0,
        0.0, 0.0, 0.0, 1.0, 0.0,
        k, c, -(k + t), -c, t,
        0.0, 0.0, 0.0, 0.0, 0.0,
    ]);
    (rate * (spacing / SPEED)).exp()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::{assert_abs_diff_eq, assert_relative_eq};

    #[test]
    fn transition_matches_its_exponential_in_sixty_digits() {
        // Rows of the transition of the four states, then the column of the slope, over 250 mm:
        // an independent sum of the exponential's series in 60-digit decimal arithmetic.
        #[rustfmt::skip]
        let exact = [
            [0.9966070691529, 0.01091514411335, -0.002083274739516, 3.190145310865e-04, 0.005476205586608],
            [-0.5563044902565, 0.9438767857163, -0.8324721017401, 0.05064700869712, 1.388776591997],
            [0.02153175891183, 0.002126763540577, 0.7508713629988, 0.008221888674477, 0.2275968780894],
            [3.335012888511, 0.3376467246474, -39.12763491807, 0.4347563972632, 35.79262202955],
        ];
        let ours = transition(0.25);
        for row in 0..4 {
            for column in 0..5 {
                assert_relative_eq!(ours[(row, column)], exact[row][column], max_relative = 2e-12);
            }
        }
    }

    #[test]
    fn transition_matches_world_bank_technical_paper_46_at_250_mm() {
        // As printed, seven digits (from memory, and the same in independent listings). The print
        // differs from the sixty-digit values above by up to three units of its last digit, and by
        // a hundred in 0.005476107: it is the one in error, for it sums the exponential's series in
        // single precision. Ten terms do; each sum may round by half a unit of the row's greatest
        // number. The column of the slope is the difference of two of the others, because an even
        // slope moves no spring, and may be off by twice as much and half its last digit.
        #[rustfmt::skip]
        let printed: [[f64; 5]; 4] = [
            [0.9966071, 0.01091514, -0.002083274, 0.0003190145, 0.005476107],
            [-0.5563044, 0.9438768, -0.8324718, 0.05064701, 1.388776],
            [0.02153176, 0.002126763, 0.7508714, 0.008221888, 0.2275968],
            [3.335013, 0.3376467, -39.12762, 0.4347564, 35.79262],
        ];
        let ours = transition(0.25);
        for row in 0..4 {
            let greatest = printed[row].iter().fold(0.0, |most: f64, value| most.max(value.abs()));
            let rounding = 10.0 * 0.5 * f64::from(f32::EPSILON) * greatest;
            for column in 0..5 {
                let value = printed[row][column];
                let half_digit = 0.5 * 10_f64.powf(value.abs().log10().floor() - 6.0);
                let epsilon = if column < 4 { rounding } else { 2.0 * rounding + half_digit };
                assert_abs_diff_eq!(ours[(row, column)], value, epsilon = epsilon);
            }
        }
    }

    #[test]
    fn an_even_slope_moves_the_car_along_and_no_spring() {
        let slope = 0.03;
        let state = Vector5::new(slope, 0.0, slope, 0.0, slope);
        assert_relative_eq!(transition(0.1) * state, state, epsilon = 1e-14);
    }

    #[test]
    fn a_profile_shorter_than_its_run_in_is_refused() {
        let profile = MeasuredProfile::even(0.25, vec![0.0; 45]);
        assert_eq!(
            international_roughness_index(&profile).unwrap_err().to_string(),
            "length of the profile is 11 m; accepted for a roughness index is 11.25 m or more"
        );
    }

    #[test]
    fn samples_too_far_apart_for_the_wheel_are_refused() {
        let profile = |spacing| MeasuredProfile::even(spacing, vec![0.0; 101]);
        assert_eq!(international_roughness_index(&profile(0.25)), Ok(0.0));
        assert!(international_roughness_index(&profile(0.31)).is_err());
    }
}
