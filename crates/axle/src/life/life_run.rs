//! From an axle and a duty to years.

use std::collections::BTreeMap;

use axlebow_strength::{
    Cracked, LifeScatter, MeanStress, RangeCounts, RangeDistribution, Reliability, SpectralMoments,
    StressSpectrum,
};

use crate::checks::not_made::NotMade;
use crate::frequency::response::stress_spectra;
use crate::life::bearing_years::{BearingShare, bearing_years};
use crate::life::crack_sites::{CrackSite, crack_sites};
use crate::life::duty::{Duty, DutyRoad, straight};
use crate::life::life_outcome::{DamageShares, DetailLife, LifeOutcome};
use crate::life::ride_counts::{RideCounts, ride_counts};
use crate::life::static_cycles::static_cycle;
use crate::outcome::{CaseOutcome, Warning};
use crate::{Axle, AxleError, LoadCase, Ride, RidingAxle, SeatStress, Sides, StrengthOptions, flex};

/// Samples below this length are said to be short, m.
const SHORT_SAMPLE: f64 = 500.0;

/// What is asked of a life.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LifeOptions {
    /// How lives of one detail scatter.
    pub scatter: LifeScatter,
    /// Share of bearings that reach their life.
    pub reliability: Reliability,
    /// Where compression counts less.
    pub mean_stress: MeanStress,
    /// By which stress the weld of a seat is held against its category.
    pub seat_stress: SeatStress,
}

impl From<&StrengthOptions> for LifeOptions {
    /// With the usual scatter of welded details.
    fn from(ask: &StrengthOptions) -> Self {
        LifeOptions {
            scatter: LifeScatter::USUAL,
            reliability: ask.bearing_reliability,
            mean_stress: ask.mean_stress,
            seat_stress: ask.seat_stress,
        }
    }
}

/// Years to a crack at each detail and of each wheel bearing under a duty.
///
/// Every random road of the duty is driven over its sample, every bump once from rest; what the fibers of the details go
/// through is counted as it comes (ASTM E1049) and stands for the whole distance. Braking, turns and loading are a cycle
/// each, from running straight to the event and back. The damages of a year are added (M. A. Miner), each range by the curve
/// of its detail (EN 1993-1-9 or IIW); whether compression counts less is asked for.
///
/// # Errors
/// As [`crate::ride()`] and [`flex`].
pub fn life(axle: &Axle, duty: &Duty, ask: LifeOptions) -> Result<LifeOutcome, AxleError> {
    let rated = flex(axle, &[straight(axle.loading.rated_load)])?.cases.remove(0);
    let (sites, mut not_made) = crack_sites(axle, &rated, ask)?;
    let year = Year::of(axle, duty, &sites)?;
    let mut details = sites
        .iter()
        .enumerate()
        .map(|(number, site)| year.detail_life(number, site, ask.scatter))
        .collect::<Result<Vec<_>, AxleError>>()?;
    details.sort_by(|a, b| a.years[1].total_cmp(&b.years[1]));
    let a1 = (duty.distance, ask.reliability.factor());
    let (bearings, no_rating) = bearing_years(axle, &year.bearing_shares(), a1)?;
    not_made.extend(no_rating);
    Ok(LifeOutcome {
        duty: duty.name.clone(),
        distance: duty.distance,
        scatter: ask.scatter.deviation(),
        mean_stress: ask.mean_stress,
        details,
        bearings,
        reliability: ask.reliability,
        not_made: once(not_made),
        warnings: warnings(duty),
    })
}

/// The same list with equal entries once.
fn once(list: Vec<NotMade>) -> Vec<NotMade> {
    let mut kept: Vec<NotMade> = Vec::new();
    for own in list {
        if !kept.contains(&own) {
            kept.push(own);
        }
    }
    kept
}

fn warnings(duty: &Duty) -> Vec<Warning> {
    let short = duty.roads.iter().filter(|road| road.ride.to - road.ride.from < SHORT_SAMPLE);
    let warning = |road: &DutyRoad| Warning {
        text: format!(
            "only {:.0} m of {} are driven; the damage of a sample below {SHORT_SAMPLE:.0} m scatters much from draw to draw",
            road.ride.to - road.ride.from,
            road.name
        ),
        advice: "give a longer `sample`".to_owned(),
    };
    short.map(warning).collect()
}

/// A share of the year: how often its cycles come.
struct Part<'a> {
    counts: Vec<RangeCounts>,
    times: f64,
    kind: Kind,
    road: Option<&'a DutyRoad>,
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Road,
    Bump,
    Event,
    Loading,
}

/// What a year does.
struct Year<'a> {
    duty: &'a Duty,
    parts: Vec<Part<'a>>,
    /// Running straight on each road, with what its ride makes of the wheel loads.
    straight: Vec<(CaseOutcome, Sides<f64>)>,
    events: Vec<CaseOutcome>,
    /// Stress spectra of the sites on each road: frequency (Hz) and density (Pa²/Hz) without the sites' factors.
    spectra: Vec<Vec<Vec<(f64, f64)>>>,
}

impl<'a> Year<'a> {
    fn of(axle: &'a Axle, duty: &'a Duty, sites: &[CrackSite]) -> Result<Self, AxleError> {
        let mut riding = Riding { axle, ready: BTreeMap::new() };
        let mut year =
            Year { duty, parts: Vec::new(), straight: Vec::new(), events: Vec::new(), spectra: Vec::new() };
        for road in &duty.roads {
            let counted = riding.counts(&road.ride, sites)?;
            let stations: Vec<&str> = sites.iter().map(|site| site.station.as_str()).collect();
            let load = road.ride.axle_load;
            let over = (&road.spectrum, riding.ready(load)?.modes());
            year.spectra.push(stress_spectra(axle, load, &stations, over)?);
            year.add_road(axle, road, counted)?;
        }
        for bump in &duty.bumps {
            let counts = riding.counts(&bump.ride, sites)?.sites;
            let times = bump.per_distance * duty.distance;
            year.parts.push(Part { counts, times, kind: Kind::Bump, road: None });
        }
        for event in &duty.events {
            let before = solved(axle, straight(event.actions.axle_load))?;
            let during = solved(axle, event.case())?;
            let counts = sites.iter().map(|site| static_cycle(axle, site, [&before, &during])).collect();
            let times = event.per_distance * duty.distance;
            year.parts.push(Part { counts, times, kind: Kind::Event, road: None });
            year.events.push(during);
        }
        if duty.loadings > 0.0 {
            let loads = [axle.loading.unladen_load, axle.loading.rated_load];
            let [unladen, laden] = loads.map(|load| solved(axle, straight(load)));
            let (unladen, laden) = (unladen?, laden?);
            let counts = sites.iter().map(|site| static_cycle(axle, site, [&unladen, &laden])).collect();
            year.parts.push(Part { counts, times: duty.loadings, kind: Kind::Loading, road: None });
        }
        Ok(year)
    }

    fn add_road(&mut self, axle: &Axle, road: &'a DutyRoad, counted: RideCounts) -> Result<(), AxleError> {
        let sample = road.ride.to - road.ride.from;
        let times = road.share * self.duty.distance / sample;
        self.parts.push(Part { counts: counted.sites, times, kind: Kind::Road, road: Some(road) });
        let still = solved(axle, straight(road.ride.axle_load))?;
        self.straight.push((still, counted.load_factor));
        Ok(())
    }

    fn detail_life(
        &self,
        number: usize,
        site: &CrackSite,
        scatter: LifeScatter,
    ) -> Result<DetailLife, AxleError> {
        let of_code = site.detail.curve()?;
        let mut all = RangeCounts::default();
        self.parts.iter().for_each(|part| all.add_times(&part.counts[number], part.times));
        let mut years = [0.0; 3];
        for (years, cracked) in years.iter_mut().zip([Cracked::Fifth, Cracked::Half, Cracked::NinetyFifth]) {
            *years = all.damage(&scatter.curve(&of_code, cracked)?).recip();
        }
        let half = scatter.curve(&of_code, Cracked::Half)?;
        let damage = |kind: Kind| -> f64 {
            let parts = self.parts.iter().filter(|part| part.kind == kind);
            parts.map(|part| part.times * part.counts[number].damage(&half)).sum()
        };
        let total = all.damage(&half);
        let share = |kind: Kind| if total > 0.0 { damage(kind) / total } else { 0.0 };
        let roads = damage(Kind::Road);
        let spectral = match site.compression < 1.0 {
            true => None,
            false => Some(self.spectral_damage(number, site.factor, |moments| {
                RangeDistribution::dirlik(moments).damage_rate(&half)
            })?),
        };
        Ok(DetailLife {
            name: site.name.clone(),
            y: site.y,
            detail: site.detail,
            geometry: site.geometry.clone(),
            greatest_range: all.greatest(),
            years,
            shares: DamageShares {
                roads: share(Kind::Road),
                bumps: share(Kind::Bump),
                events: share(Kind::Event),
                loadings: share(Kind::Loading),
            },
            spectral_ratio: spectral.filter(|_| roads > 0.0).map(|spectral| spectral / roads),
        })
    }

    /// Damage of a year's random roads at a site by their spectra.
    fn spectral_damage(
        &self,
        number: usize,
        factor: f64,
        rate: impl Fn(&SpectralMoments) -> f64,
    ) -> Result<f64, AxleError> {
        let roads = self.parts.iter().filter_map(|part| part.road);
        let mut damage = 0.0;
        for (road, spectra) in roads.zip(&self.spectra) {
            let points = spectra[number].iter().map(|(f, g)| (*f, factor * factor * g)).collect();
            let seconds = road.share * self.duty.distance / road.ride.speed;
            damage += seconds * rate(&StressSpectrum::new(points)?.moments());
        }
        Ok(damage)
    }

    /// What the bearings carry: events for as far as they last, the roads for the rest.
    fn bearing_shares(&self) -> Vec<BearingShare<'_>> {
        let lasting: Vec<f64> = self.duty.events.iter().map(|own| own.per_distance * own.length).collect();
        let rest = (1.0 - lasting.iter().sum::<f64>()).max(0.0);
        let roads = self.duty.roads.iter().zip(&self.straight).map(|(road, (case, load_factor))| {
            BearingShare { case, load_factor: *load_factor, share: rest * road.share }
        });
        let events = self.events.iter().zip(lasting).map(|(case, share)| BearingShare {
            case,
            load_factor: Sides { left: 1.0, right: 1.0 },
            share,
        });
        roads.chain(events).collect()
    }
}

fn solved(axle: &Axle, case: LoadCase) -> Result<CaseOutcome, AxleError> {
    Ok(flex(axle, &[case])?.cases.remove(0))
}

/// An axle made ready for each load once.
struct Riding<'a> {
    axle: &'a Axle,
    ready: BTreeMap<u64, RidingAxle<'a>>,
}

impl Riding<'_> {
    fn counts(&mut self, ride: &Ride, sites: &[CrackSite]) -> Result<RideCounts, AxleError> {
        ride_counts(self.ready(ride.axle_load)?, ride, sites)
    }

    fn ready(&mut self, load: f64) -> Result<&RidingAxle<'_>, AxleError> {
        if !self.ready.contains_key(&load.to_bits()) {
            self.ready.insert(load.to_bits(), RidingAxle::of(self.axle, load)?);
        }
        Ok(&self.ready[&load.to_bits()])
    }
}
