//! Invented sheets whose truth is known, made by another model than the one that explains them.

use axlebow_axle::tread::{Duty, DutyPart, Feather, Tread};
use axlebow_axle::{Axle, Side, Sides, TireFit, TireSlot, Wheel};
use axlebow_model::{CaseSheet, DamperState, FeltFeather, SeenEnd, SeenTire};
use axlebow_study::{Parameter, WearCause, WornAxle};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

const NEW: f64 = 16e-3;

/// Random draws.
pub struct Draws(ChaCha8Rng);

impl Draws {
    /// Those of a number, the same everywhere.
    pub fn of(number: u64) -> Draws {
        Draws(ChaCha8Rng::seed_from_u64(number))
    }

    fn share(&mut self) -> f64 {
        (self.0.next_u32() as f64 + 0.5) / 4_294_967_296.0
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// A symmetric error of a standard deviation: the sum of three even ones, whose tails are shorter than the normal's.
    fn error(&mut self, deviation: f64) -> f64 {
        2.0 * deviation * (self.share() + self.share() + self.share() - 1.5)
    }

    fn happens(&mut self, share: f64) -> bool {
        self.share() < share
    }

    fn place(&mut self, shares: &[f64]) -> usize {
        let mut left = self.share() * shares.iter().sum::<f64>();
        shares
            .iter()
            .position(|own| {
                left -= own;
                left < 0.0
            })
            .unwrap_or(shares.len() - 1)
    }

    fn sign(&mut self) -> f64 {
        if self.happens(0.5) { 1.0 } else { -1.0 }
    }
}

/// The axle of a model on other tires and in another duty than its file says.
pub fn other_axle(axle: &Axle) -> Axle {
    let wheel = |side: Side| -> Wheel {
        let own = *axle.wheels.of(side);
        let tread = Tread {
            crown: 1.3e-3,
            shear_modulus: 0.95e6,
            sidewall_share: 0.20,
            friction: 0.7,
            ..*own.tread()
        };
        let fit = TireFit { tilt_share: 0.35, ..*own.fit() };
        own.with_tread(tread).unwrap().with_fit(fit).unwrap()
    };
    let part = |share, side, forward| DutyPart { share, side, forward };
    let duty = Duty::stated(vec![part(0.6, 0.02, 0.015), part(0.3, 0.045, 0.03), part(0.1, 0.06, -0.12)]);
    Axle { wheels: Sides::each(wheel), ..axle.clone() }.in_duty(duty.unwrap())
}

/// What is true of an invented case.
struct Truth {
    state: Vec<f64>,
    cups: usize,
    damper: usize,
}

/// A state with a cause of some size; what is not the cause's is off as parts of sound axles are.
fn truth(worn: &WornAxle<'_>, cause: WearCause, draws: &mut Draws) -> Truth {
    let mut state = worn.usual();
    for (value, parameter) in state.iter_mut().zip(worn.parameters()) {
        let known_tire = matches!(
            parameter,
            Parameter::Crown | Parameter::SidewallShare | Parameter::ShearModulus | Parameter::TiltShare
        );
        *value += draws.error(parameter.spread()) * if known_tire { 0.3 } else { 1.0 };
    }
    let mut put = |parameter: Parameter, value: f64| {
        if let Some(place) = worn.place(parameter) {
            state[place] = value;
        }
    };
    let side = if draws.happens(0.5) { Side::Left } else { Side::Right };
    let both = draws.happens(0.35);
    let sides: Vec<Side> = if both { Side::BOTH.to_vec() } else { vec![side] };
    // Sizes lean to the smaller ones: the square of an even share.
    let share = draws.share().powi(2);
    let size = |low: f64, high: f64| low + (high - low) * share;
    let sign = draws.sign();
    match cause {
        WearCause::Normal => put(Parameter::Load, size(0.5, 0.8).ln()),
        WearCause::AxleBow => put(Parameter::Load, size(0.8, 1.1).ln()),
        WearCause::Overload => put(Parameter::Load, size(1.1, 1.5).ln()),
        WearCause::ThinWall => put(Parameter::Wall, size(0.93, 0.7).ln()),
        WearCause::LooseSeat => put(Parameter::SeatStiffness, size(0.5, 0.05).ln()),
        WearCause::LooseBearings => {
            sides.iter().for_each(|side| put(Parameter::Endplay(*side), size(0.2e-3, 1.5e-3)));
        }
        WearCause::Outset => put(Parameter::Outset, size(15e-3, 65e-3)),
        WearCause::Toe => {
            sides.iter().for_each(|side| put(Parameter::Toe(*side), sign * size(0.12, 0.9).to_radians()));
        }
        WearCause::Skew => put(Parameter::Skew, sign * size(0.12, 0.7).to_radians()),
        WearCause::BuiltInCamber => {
            sides.iter().for_each(|side| put(Parameter::Camber(*side), sign * size(0.25, 1.2).to_radians()));
        }
        WearCause::LowInflation if both => put(Parameter::Inflation, size(0.88, 0.5).ln()),
        WearCause::LowInflation => {
            let slots: Vec<TireSlot> = worn.axle().wheels.of(side).tires().map(|place| place.slot).collect();
            let slot = slots[draws.place(&vec![1.0; slots.len()])];
            put(Parameter::TireInflation(side, slot), size(0.88, 0.5).ln());
        }
        WearCause::HighInflation => put(Parameter::Inflation, size(1.1, 1.35).ln()),
        WearCause::UnequalDuals => put(Parameter::OuterLessInner(side), sign * size(3e-3, 15e-3)),
        WearCause::WornDamper => {}
        WearCause::Runout => sides.iter().for_each(|side| put(Parameter::Runout(*side), size(1.5e-3, 5e-3))),
    }
    // Shares as the explaining model has them, mixed with even ones.
    let mixed = |shares: [f64; 3]| shares.map(|share| 0.85 * share + 0.05);
    Truth {
        state,
        cups: draws.place(&mixed(cause.cup_shares())),
        damper: draws.place(&mixed(cause.damper_shares())),
    }
}

/// Wear over a distance part of which is run empty, a little less than in proportion to scuff.
fn wear(worn: &WornAxle<'_>, state: &[f64]) -> (Vec<f64>, Vec<f64>) {
    let load = worn.place(Parameter::Load).unwrap();
    let at = |by: f64| {
        let mut state = state.to_vec();
        state[load] += by;
        worn.pattern(&state).unwrap()
    };
    let (loaded, light) = (at(0.15), at(-0.35));
    let rib = |(loaded, light): (&f64, &f64)| (0.7 * loaded.exp() + 0.3 * light.exp()).powf(0.93);
    (loaded.log_wear.iter().zip(&light.log_wear).map(rib).collect(), loaded.feathering)
}

/// What a shop would write of an invented case: depths of most tires to the half millimeter, other readings at times.
pub fn seen(base: &CaseSheet, worn: &WornAxle<'_>, cause: WearCause, draws: &mut Draws) -> CaseSheet {
    let Truth { state, cups, damper } = truth(worn, cause, draws);
    let (wear, feathering) = wear(worn, &state);
    let value = |parameter| worn.place(parameter).map_or(0.0, |place| state[place]);
    let deepest = draws.between(5e-3, 11e-3);
    let rate = deepest / wear.iter().copied().fold(0.0, f64::max);
    let mut sheet = base.clone();
    let slots: Vec<(Side, TireSlot)> = Side::BOTH
        .into_iter()
        .flat_map(|side| worn.axle().wheels.of(side).tires().map(move |place| (side, place.slot)))
        .collect();
    let ribs = worn.axle().wheels.left.tread().ribs;
    for (tire, (side, slot)) in slots.into_iter().enumerate() {
        let mut own = SeenTire::unseen(side, slot);
        let rubber = 1.0 + draws.error(0.05);
        if tire == 0 || draws.happens(0.85) {
            let mut depth = |rib: usize| {
                let worn = rate * rubber * (1.0 + draws.error(0.04)) * wear[tire * ribs + rib];
                let read = NEW - worn + draws.error(0.45e-3);
                Some((read.max(0.0) / 0.5e-3).round() * 0.5e-3)
            };
            own.depths = (0..ribs).map(&mut depth).collect();
        }
        own.cups = draws.happens(0.7).then_some([0, 2, 7][cups]);
        let felt = feathering[tire] + draws.error(0.2);
        own.feather = draws.happens(0.6).then_some(match felt {
            high if high > 0.2 => FeltFeather::Points(Feather::Inboard),
            low if low < -0.2 => FeltFeather::Points(Feather::Outboard),
            _ => FeltFeather::None,
        });
        let rated = worn.axle().wheels.of(side).tires().next().unwrap().inflation;
        let more = value(Parameter::Inflation) + value(Parameter::TireInflation(side, slot));
        own.inflation = draws.happens(0.5).then(|| rated * (more + draws.error(0.05)).exp());
        sheet.tires.push(own);
    }
    for side in Side::BOTH {
        let mut read = |share: f64, parameter, error: f64| {
            draws.happens(share).then(|| value(parameter) + draws.error(error))
        };
        *sheet.ends.of_mut(side) = SeenEnd {
            endplay: read(0.3, Parameter::Endplay(side), 0.03e-3).map(f64::abs),
            runout: read(0.2, Parameter::Runout(side), 0.3e-3).map(f64::abs),
            camber: None,
            toe: read(0.2, Parameter::Toe(side), 0.06_f64.to_radians()),
        };
    }
    sheet.skew = draws.happens(0.15).then(|| value(Parameter::Skew) + draws.error(0.06_f64.to_radians()));
    sheet.axle_load = draws
        .happens(0.3)
        .then(|| worn.axle().loading.rated_load * (value(Parameter::Load) + draws.error(0.05)).exp());
    sheet.damper =
        draws.happens(0.4).then_some([DamperState::Good, DamperState::Leaking, DamperState::Dead][damper]);
    sheet
}

/// A cause by how often worn axles have it, as the sheet's weights say.
pub fn drawn_cause(causes: &[WearCause], draws: &mut Draws) -> WearCause {
    let weights: Vec<f64> = causes.iter().map(|cause| cause.usual_weight()).collect();
    causes[draws.place(&weights)]
}
