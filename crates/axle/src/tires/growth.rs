//! Cups that grow: waves of wear on the tires, fed back by the axle's own motion.

use axlebow_tread::{HubWaves, TreadWave, WearWaves, WearingTread, WheelInertia, fastest, fastest_rate};
use nalgebra::{Complex, DMatrix};
use rayon::prelude::*;

use crate::frequency::hub_compliance::HubCompliance;
use crate::frequency::response::modes_up_to;
use crate::parts::error::{not_negative, positive};
use crate::tires::growth_outcome::{
    GrowthInTime, GrowthOptions, GrowthOutcome, HeldWave, WheelGrowth, worse_end,
};
use crate::tires::tire_face::{pose, tire_warning};
use crate::tires::wearing_axle::{Wearing, WearingAxle, steps_of_turn, worn_per_turn};
use crate::{Axle, AxleError, Side, Sides, StaticDesign, Wheel};

/// Most speeds and most cups of a map.
const MOST: usize = 400;
/// Highest wave that is followed in time, m.
const HIGHEST: f64 = 0.02;
/// Deviations to either side of the mean speed over which its distribution is summed.
const REACH: f64 = 3.0;
/// Speeds of that sum.
const HELD_POINTS: usize = 25;

/// Dampings between which the threshold is sought, N s/m, and the share of itself within which it is found.
const LEAST_DAMPING: f64 = 500.0;
const MOST_DAMPING: f64 = 1e6;
const DAMPING_FOUND: f64 = 2e-3;

type Matrix = DMatrix<Complex<f64>>;

/// Growth of waves of wear over speed and count, and over the speeds that a fleet holds.
///
/// The tires stand as in a load case; the axle moves about its rest under the load of that case with its dampers, bearings with
/// play and bump stops as stiff as they are there. A wave of one wheel end grows by itself: left and right wheels turn by
/// radii of their own, so that a wave of one meets those of the other in every phase before it grows. Over a spread of speeds
/// the feedback is the mean over them, because a tire lives through all of them while a wave grows.
///
/// # Errors
/// [`AxleError::Value`] for a speed, a count or a number of steps out of range; as [`crate::tires`] and
/// [`crate::response()`].
pub fn growth(axle: &Axle, options: &GrowthOptions) -> Result<GrowthOutcome, AxleError> {
    options.check()?;
    let run = GrowthRun::of(axle, options)?;
    let wheels = run.wheels(axle, options)?;
    let top = run.waves.frequency(TreadWave { count: options.counts[1], speed: options.speeds[1] });
    let modes = modes_up_to(&axle.rolling(), run.axle_load, top)?;
    Ok(GrowthOutcome {
        case: options.case.name.clone(),
        duty: axle.running.duty.name(),
        held: options.held,
        speeds: options.speeds_of_map(),
        counts: options.counts_of_map(),
        threshold_damping: threshold_damping(axle, options, &wheels)?,
        in_time: if options.heights.is_empty() { None } else { Some(run.in_time(axle, options, &wheels)?) },
        wheels,
        modes: modes.into_iter().filter(|mode| mode.frequency <= top).collect(),
        warnings: run.warnings,
    })
}

/// The waves of both wheel ends, as [`growth`] has them, without modes and without the damping that would end them.
///
/// # Errors
/// As [`growth`].
pub fn wheel_growth(axle: &Axle, options: &GrowthOptions) -> Result<Sides<WheelGrowth>, AxleError> {
    options.check()?;
    GrowthRun::of(axle, options)?.wheels(axle, options)
}

/// What waves need of an axle.
struct GrowthRun {
    poses: Sides<axlebow_tread::Pose>,
    axle_load: f64,
    waves: WearWaves,
    hubs: HubCompliance,
    warnings: Vec<crate::Warning>,
}

impl GrowthRun {
    fn of(axle: &Axle, options: &GrowthOptions) -> Result<Self, AxleError> {
        let case = StaticDesign::of(axle)?.case(&options.case)?;
        let poses = Sides::each(|side| pose(axle, &case, side));
        let hub = |side: Side| -> Result<HubWaves, AxleError> {
            let inertia = inertia(axle.wheels.of(side));
            Ok(HubWaves::new(&axle.tire_face(side)?, *poses.of(side), inertia)?)
        };
        let waves = WearWaves::new(vec![hub(Side::Left)?, hub(Side::Right)?]);
        let axle_load = poses.left.load + poses.right.load;
        let fastest = options.speeds[1].max(options.held.mean + REACH * options.held.deviation);
        let top = waves.frequency(TreadWave { count: options.counts[1], speed: fastest });
        let hubs = HubCompliance::of(axle, axle_load, top)?;
        let faces = crate::tire_faces(axle, &case)?;
        let warnings = tire_warning(&case.name, &faces).into_iter().collect();
        Ok(GrowthRun { poses, axle_load, waves, hubs, warnings })
    }

    /// C for each count at each speed.
    fn compliances(&self, speeds: &[f64], counts: &[u16]) -> Result<Vec<Vec<Matrix>>, AxleError> {
        for_each_count(counts, |_, count| {
            let frequency = |speed: &f64| self.waves.frequency(TreadWave { count, speed: *speed });
            self.hubs.at(&speeds.iter().map(frequency).collect::<Vec<_>>())
        })
    }

    fn wheels(&self, axle: &Axle, options: &GrowthOptions) -> Result<Sides<WheelGrowth>, AxleError> {
        let held = self.held(options)?;
        let map = self.compliances(&options.speeds_of_map(), &options.counts_of_map())?;
        let wheel = |side: Side| self.wheel(axle, (side, options), (&map, &held));
        Ok(Sides { left: wheel(Side::Left)?, right: wheel(Side::Right)? })
    }

    /// The waves of one wheel end, from C for each count at each speed of the map and the waves over the speeds held.
    fn wheel(
        &self,
        axle: &Axle,
        (side, options): (Side, &GrowthOptions),
        (map, held): (&[Vec<Matrix>], &Sides<Vec<HeldWave>>),
    ) -> Result<WheelGrowth, AxleError> {
        let (hub, pose, speeds) = (hub_number(side), *self.poses.of(side), options.speeds_of_map());
        let rates = |place: usize, count: u16| -> Result<Vec<f64>, AxleError> {
            let each = speeds.iter().zip(&map[place]);
            each.map(|(speed, compliance)| {
                let wave = TreadWave { count, speed: *speed };
                Ok(fastest_rate(&self.waves.growth_of_hub(hub, wave, compliance)?)?)
            })
            .collect()
        };
        Ok(WheelGrowth {
            pose,
            tires: axle.wheels.of(side).tires().count(),
            worn_per_distance: self.waves.hubs()[hub].worn_per_distance(),
            rolling_radius: self.waves.hubs()[hub].rolling_radius(),
            map: for_each_count(&options.counts_of_map(), rates)?,
            held: held.of(side).clone(),
            critical: axle.tire_face(side)?.critical_camber(pose)?,
        })
    }

    /// The wave that wins, in time.
    fn in_time(
        &self,
        axle: &Axle,
        options: &GrowthOptions,
        wheels: &Sides<WheelGrowth>,
    ) -> Result<GrowthInTime, AxleError> {
        let side = worse_end(wheels);
        let (hub, pose, count) = (hub_number(side), *self.poses.of(side), wheels.of(side).winner().count);
        let wave = TreadWave { count, speed: options.held.mean };
        let compliance = self.compliances(&[wave.speed], &[count])?.swap_remove(0).swap_remove(0);
        let linear = fastest(&self.waves.growth_of_hub(hub, wave, &compliance)?)?;
        let (face, inertia) = (axle.tire_face(side)?, inertia(axle.wheels.of(side)));
        let tread = WearingTread::new(&face, (pose, inertia), wave.speed, steps_of_turn(count))?;
        let moving = WearingAxle::of(axle, (self.axle_load, side), tread.springs())?;
        let wearing =
            Wearing { wave, linear: &linear, rolling_radius: self.waves.hubs()[hub].rolling_radius() };
        let waves = options.heights.iter().map(|height| moving.worn(tread.clone(), wearing, *height));
        Ok(GrowthInTime {
            side,
            count,
            small: linear.rate,
            worn_per_turn: worn_per_turn(&linear),
            waves: waves.collect::<Result<_, _>>()?,
        })
    }

    /// The fastest waves of each wheel end over the speeds that the fleet holds.
    fn held(&self, options: &GrowthOptions) -> Result<Sides<Vec<HeldWave>>, AxleError> {
        let counts = options.counts_of_map();
        let (speeds, shares): (Vec<f64>, Vec<f64>) = options.held_speeds().into_iter().unzip();
        let compliances = self.compliances(&speeds, &counts)?;
        let at_mean = self.compliances(&[options.held.mean], &counts)?;
        let of_side = |side: Side| {
            for_each_count(&counts, |place, count| {
                let mean = TreadWave { count, speed: options.held.mean };
                let spread = speeds.iter().zip(&shares).zip(&compliances[place]);
                let spread = spread.map(|((speed, share), c)| (*speed, *share, c));
                self.held_wave(side, (mean, &at_mean[place][0]), spread)
            })
        };
        Ok(Sides { left: of_side(Side::Left)?, right: of_side(Side::Right)? })
    }

    /// The fastest wave of one count: by the mean of its feedback over speeds with their shares, and at the mean speed alone.
    fn held_wave<'a>(
        &self,
        side: Side,
        (mean, at_mean): (TreadWave, &Matrix),
        spread: impl Iterator<Item = (f64, f64, &'a Matrix)>,
    ) -> Result<HeldWave, AxleError> {
        let hub = hub_number(side);
        let order = self.waves.hubs()[hub].ribs();
        let mut sum = Matrix::zeros(order, order);
        for (speed, share, compliance) in spread {
            sum += self.waves.growth_of_hub(hub, TreadWave { speed, ..mean }, compliance)?
                * Complex::from(share);
        }
        let immovable = Matrix::zeros(at_mean.nrows(), at_mean.ncols());
        Ok(HeldWave {
            count: mean.count,
            frequency: self.waves.frequency(mean),
            wave: fastest(&sum)?,
            hub_held: fastest_rate(&self.waves.growth_of_hub(hub, mean, &immovable)?)?,
            in_step: fastest_rate(&self.waves.growth(mean, at_mean)?)?,
        })
    }
}

/// What is found for each count and its place, on all cores; of several errors that of the first count.
fn for_each_count<T: Send>(
    counts: &[u16],
    find: impl Fn(usize, u16) -> Result<T, AxleError> + Sync,
) -> Result<Vec<T>, AxleError> {
    let found: Vec<Result<T, AxleError>> =
        counts.par_iter().enumerate().map(|(place, count)| find(place, *count)).collect();
    found.into_iter().collect()
}

/// Number of a wheel end's hub among those of the waves.
fn hub_number(side: Side) -> usize {
    match side {
        Side::Left => 0,
        Side::Right => 1,
    }
}

/// Damping at each seat from which on no wave grows, N s/m; none where a tire grows waves by itself, or where no damping up
/// to 1 MN s/m ends it.
///
/// - `wheels`: what [`wheel_growth`] has by the same options
///
/// # Errors
/// As [`growth`].
pub fn threshold_damping(
    axle: &Axle,
    options: &GrowthOptions,
    wheels: &Sides<WheelGrowth>,
) -> Result<Option<f64>, AxleError> {
    let by_itself = |side: &Side| wheels.of(*side).held.iter().any(|held| held.hub_held > 0.0);
    if Side::BOTH.iter().any(by_itself) {
        return Ok(None);
    }
    let grows = |damping: f64| -> Result<bool, AxleError> {
        let mut damped = axle.clone();
        for side in Side::BOTH {
            let seat = damped.seats.of_mut(side);
            (seat.damping, seat.rebound_damping) = (damping, damping);
        }
        let held = GrowthRun::of(&damped, options)?.held(options)?;
        Ok(held.left.iter().chain(&held.right).any(|held| held.wave.rate > 0.0))
    };
    if !grows(0.0)? {
        return Ok(Some(0.0));
    }
    let (mut low, mut high) = (0.0, LEAST_DAMPING);
    while grows(high)? {
        (low, high) = (high, 2.0 * high);
        if high > MOST_DAMPING {
            return Ok(None);
        }
    }
    while high - low > DAMPING_FOUND * high {
        let middle = 0.5 * (low + high);
        *(if grows(middle)? { &mut low } else { &mut high }) = middle;
    }
    Ok(Some(high))
}

/// About its axis a wheel has the moments of inertia about two diameters together, were it flat; rim and tires are not, so that
/// it is somewhat less.
fn inertia(wheel: &Wheel) -> WheelInertia {
    let tire = wheel.tire();
    WheelInertia {
        spin: 2.0 * wheel.mass() * wheel.tilt_radius().powi(2),
        damping_time: tire.damping / tire.vertical_stiffness,
    }
}

impl GrowthOptions {
    fn check(&self) -> Result<(), AxleError> {
        let [low, high] = self.speeds;
        positive("lowest speed", low, "m/s")?;
        positive("highest speed", high, "m/s")?;
        positive("mean of the speeds held", self.held.mean, "m/s")?;
        not_negative("standard deviation of the speeds held", self.held.deviation, "m/s")?;
        if REACH * self.held.deviation >= self.held.mean {
            let (what, value) = ("standard deviation of the speeds held", self.held.deviation);
            return Err(AxleError::Value {
                what,
                value,
                unit: "m/s",
                accepted: "less than a third of their mean",
            });
        }
        if low > high {
            let (what, accepted) = ("highest speed", "at least the lowest speed");
            return Err(AxleError::Value { what, value: high, unit: "m/s", accepted });
        }
        let [least, most] = self.counts;
        positive("least count", f64::from(least), "cups")?;
        if most < least || usize::from(most) > MOST {
            let (what, value) = ("highest count", f64::from(most));
            return Err(AxleError::Value { what, value, unit: "cups", accepted: "the least count to 400" });
        }
        for height in &self.heights {
            positive("height of a wave", *height, "m")?;
            if *height > HIGHEST {
                let (what, value) = ("height of a wave", *height);
                return Err(AxleError::Value { what, value, unit: "m", accepted: "at most 20 mm" });
            }
        }
        if !(1..=MOST).contains(&self.steps) {
            let (what, value) = ("size of the map", self.steps as f64);
            return Err(AxleError::Value { what, value, unit: "speeds", accepted: "1 to 400" });
        }
        Ok(())
    }

    fn speeds_of_map(&self) -> Vec<f64> {
        let [low, high] = self.speeds;
        let last = self.steps.saturating_sub(1).max(1) as f64;
        (0..self.steps).map(|i| low + (high - low) * i as f64 / last).collect()
    }

    fn counts_of_map(&self) -> Vec<u16> {
        (self.counts[0]..=self.counts[1]).collect()
    }

    /// Speeds that the fleet holds with the share of the way at each.
    fn held_speeds(&self) -> Vec<(f64, f64)> {
        let [mean, deviation] = [self.held.mean, self.held.deviation];
        if deviation == 0.0 {
            return vec![(mean, 1.0)];
        }
        let last = (HELD_POINTS - 1) as f64;
        let off = |i: usize| REACH * (2.0 * i as f64 / last - 1.0);
        let density = |off: f64| (-0.5 * off * off).exp();
        let total: f64 = (0..HELD_POINTS).map(|i| density(off(i))).sum();
        (0..HELD_POINTS).map(|i| (mean + deviation * off(i), density(off(i)) / total)).collect()
    }
}
