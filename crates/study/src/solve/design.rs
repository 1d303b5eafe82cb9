//! One design: from a point of a study to its result.

use axlebow_axle::outcome::Warning;
use axlebow_axle::{
    Axle, AxleError, CamberSplit, LifeOptions, LoadCase, RidingAxle, Sides, StaticDesign, TireFace,
    composite_camber_change, life, static_warnings, strength, tire_faces, tire_warning,
};
use axlebow_model::Problems;

use super::design_cups::DesignCups;
use super::design_ride::DesignRide;
use super::solver::{Ready, Solver};
use crate::ask::{Point, Study, StudyDuty, StudyRide};

/// What a study asks of a design.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Design {
    /// Mass of the bare axle: tube or housing and spindles, kg.
    pub axle_mass: f64,
    /// Camber change of each wheel, positive with the tire's top outward, rad.
    pub camber_change: Sides<f64>,
    /// Camber change of each wheel by source, rad.
    pub split: Sides<CamberSplit>,
    /// Fiber stress of largest magnitude along the axle, tension positive, Pa.
    pub peak_stress: f64,
    /// Height of the axle's center above the line through the hubs, m.
    pub bow: f64,
    /// What it is compared with: side by side the baseline, else the same axle without its stiffeners, if it has any.
    pub beside: Option<Beside>,
    /// Camber change with axle and stiffeners one section, where there are any and the study asks for it, rad.
    pub composite: Option<Sides<f64>>,
    /// Greatest force per length of a stiffener's weld, where there are any, N/m.
    pub weld_peak: Option<f64>,
    /// Its tire faces, where the study asks for them.
    pub tires: Option<Sides<TireFace>>,
    /// Waves of wear on its tires, where the study asks for them.
    pub cups: Option<DesignCups>,
    /// Greatest share of its limit that a binding check of strength uses, where the study asks for it.
    pub strength_use: Option<f64>,
    /// Axle load at which the first check of strength binds, where the study asks for it, N.
    pub rating: Option<f64>,
    /// What the study's duty leaves of it, where the study asks for it.
    pub life: Option<DesignLife>,
    /// What came of each ride, in the order of the study's rides.
    pub rides: Vec<DesignRide>,
    /// Doubts about all of it but the rides, which have their own.
    pub warnings: Vec<Warning>,
}

/// What a duty leaves of a design.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DesignLife {
    /// Damage of a year at the detail that cracks first, of half of such details; zero where none cracks.
    pub damage: f64,
    /// Years in the shortest life of a wheel bearing, where one is rated.
    pub bearing_years: Option<f64>,
}

/// A design that another one is compared with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Beside {
    /// Mass of the bare axle, kg.
    pub axle_mass: f64,
    /// Camber change of each wheel, rad.
    pub camber_change: Sides<f64>,
}

impl Study {
    /// The results of designs of one axle; why there is none, in words, where one fails.
    pub(crate) fn designs(&self, points: &[Point], solver: &mut Solver) -> Vec<Result<Design, String>> {
        let Some(first) = points.first() else { return Vec::new() };
        let solved = solver.with_axle(self, first, |ready| {
            let axle = ready.axle;
            let standing = static_design(ready, self.duty.as_ref())?;
            Ok(self.driven(axle, &standing, points))
        });
        solved.unwrap_or_else(|why| vec![Err(why); points.len()])
    }

    /// The static results of a design.
    pub(crate) fn standing(&self, point: &Point, solver: &mut Solver) -> Result<Design, String> {
        solver.with_axle(self, point, |ready| static_design(ready, self.duty.as_ref()))
    }

    /// Designs whose static results are known, with those of their rides.
    fn driven(&self, axle: &Axle, standing: &Design, points: &[Point]) -> Vec<Result<Design, String>> {
        let ready = |ride: &StudyRide| RidingAxle::of(axle, ride.axle_load(axle));
        let ready: Vec<Result<RidingAxle, AxleError>> = self.rides.iter().map(ready).collect();
        let driven = points.iter().map(|point| {
            let settings = if self.rides.is_empty() { Vec::new() } else { self.settings(point) };
            let rides = self.rides.iter().zip(&ready).map(|(own, ready)| {
                let driven = own.of(axle, &settings).and_then(|asked| {
                    let outcome = ready.as_ref().map_err(ToString::to_string)?.ride(&asked);
                    outcome.map_err(|error| error.to_string()).and_then(DesignRide::of)
                });
                driven.map_err(|why| format!("ride {}: {why}", own.name))
            });
            Ok(Design { rides: rides.collect::<Result<_, String>>()?, ..standing.clone() })
        });
        driven.collect()
    }
}

fn static_design(ready: Ready, duty: Option<&StudyDuty>) -> Result<Design, String> {
    let Ready { axle, case, strength: asked, extras, rating, statics } = ready;
    let mut solve = |axle: &Axle| statics.readings(axle, case).map_err(|error| error.to_string());
    let solved = solve(axle)?;
    let beside = without_stiffeners(axle).map(|bare| {
        let wheels = solve(&bare)?.wheels;
        let camber_change = Sides::each(|side| wheels.of(side).camber_change);
        Ok::<_, String>(Beside { axle_mass: bare.mass(), camber_change })
    });
    let composite = extras.composite.then(|| composite_camber_change(axle, case));
    let tires = extras.tires.then(|| standing_tires(axle, case));
    let life = match (duty, &asked) {
        (Some(duty), Some((ask, _))) if extras.life => {
            let ask = LifeOptions::from(ask);
            Some(DesignLife::of(axle, duty, ask)?)
        }
        _ => None,
    };
    let checked = asked.filter(|_| extras.strength).map(|(ask, cases)| strength(axle, &cases, ask));
    let cups = extras.cups.then(|| DesignCups::of(axle, case, extras.cup_damping));
    let (tires, cups, checked) = (worded(tires)?, worded(cups)?, worded(checked)?);
    let mut warnings = static_warnings(axle, case, &solved).map_err(|error| error.to_string())?;
    warnings.extend(tires.as_ref().and_then(|faces| tire_warning(&case.name, faces)));
    let further = checked.iter().flat_map(|checked| &checked.warnings);
    let new: Vec<Warning> = further.filter(|own| !warnings.contains(own)).cloned().collect();
    warnings.extend(new);
    let design = Design {
        axle_mass: axle.mass(),
        camber_change: Sides::each(|side| solved.wheels.of(side).camber_change),
        split: Sides::each(|side| solved.wheels.of(side).split),
        peak_stress: solved.peak_stress,
        bow: solved.bow,
        beside: beside.transpose()?,
        composite: worded(composite)?.flatten(),
        weld_peak: solved.weld_peak,
        tires,
        cups,
        strength_use: checked.and_then(|checked| checked.greatest_use()),
        rating,
        life,
        rides: Vec::new(),
        warnings,
    };
    if design.is_finite() { Ok(design) } else { Err("the result is not finite".to_owned()) }
}

impl DesignLife {
    /// # Errors
    /// Those of [`life`] and of a duty that cannot be driven, in words.
    fn of(axle: &Axle, duty: &StudyDuty, ask: LifeOptions) -> Result<Self, String> {
        let outcome = life(axle, &duty.on(axle)?, ask).map_err(|error| error.to_string())?;
        Ok(DesignLife {
            damage: outcome.first_to_crack().map_or(0.0, |first| 1.0 / first.years[1]),
            bearing_years: outcome.bearings.first().map(|shortest| shortest.years),
        })
    }
}

/// What was asked for, if it was; why there is none, in words.
fn worded<T>(asked: Option<Result<T, AxleError>>) -> Result<Option<T>, String> {
    asked.transpose().map_err(|error| error.to_string())
}

fn standing_tires(axle: &Axle, case: &LoadCase) -> Result<Sides<TireFace>, AxleError> {
    tire_faces(axle, &StaticDesign::of(axle)?.case(case)?)
}

impl Design {
    /// Doubts about all of it, those of a ride with its name.
    pub fn warnings(&self, study: &Study) -> Vec<Warning> {
        let of_ride = |(ride, driven): (&StudyRide, &DesignRide)| {
            let own = driven.warnings.iter().cloned();
            let named =
                |Warning { text, advice }| Warning { text: format!("ride {}: {text}", ride.name), advice };
            own.map(named).collect::<Vec<Warning>>()
        };
        let rides = study.rides.iter().zip(&self.rides).flat_map(of_ride);
        self.warnings.iter().cloned().chain(rides).collect()
    }

    /// How many doubts there are, those about rides included.
    pub fn warning_count(&self) -> usize {
        self.warnings.len() + self.rides.iter().map(|ride| ride.warnings.len()).sum::<usize>()
    }

    fn is_finite(&self) -> bool {
        let camber = [self.camber_change.left, self.camber_change.right];
        camber.iter().chain(&[self.axle_mass, self.peak_stress, self.bow]).all(|value| value.is_finite())
    }
}

/// The same axle without its stiffeners, if it has any.
fn without_stiffeners(axle: &Axle) -> Option<Axle> {
    let bare = || Axle { stiffeners: Vec::new(), ..axle.clone() };
    (!axle.stiffeners.is_empty()).then(bare)
}

/// Problems in one line.
pub(crate) fn in_words(problems: &Problems) -> String {
    problems.iter().map(|problem| problem.message.as_str()).collect::<Vec<_>>().join("; ")
}
