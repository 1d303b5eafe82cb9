//! Causes of worn tires on invented sheets whose truth is known, made by another model than the one that explains them.

use std::path::{Path, PathBuf};

use axlebow_axle::tread::{Duty, DutyPart, Feather, Tread};
use axlebow_axle::{Axle, Side, Sides, TireFit, TireSlot, Wheel};
use axlebow_model::{CaseSheet, DamperState, FeltFeather, SeenEnd, SeenTire};
use axlebow_numerics::{Estimated, Sampled, reliability};
use axlebow_study::{
    Discrepancy, Evidence, Library, Parameter, Verdict, WearCause, WornAxle, explain, explain_with,
    probabilities,
};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use rayon::prelude::*;

const NEW: f64 = 16e-3;

fn cases() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/cases")
}

fn read(text: &str) -> CaseSheet {
    CaseSheet::from_bytes(text.as_bytes(), ("case.toml", &cases()), &WearCause::words())
        .unwrap_or_else(|problems| panic!("{}", problems.render()))
}

fn sheet(name: &str) -> CaseSheet {
    read(&std::fs::read_to_string(cases().join(format!("{name}.toml"))).unwrap())
}

/// A sheet of an axle on which nothing was seen yet.
fn blank(axle: &str) -> CaseSheet {
    let place = if axle.contains("dual") { "inner" } else { "single" };
    let text = format!(
        "name = \"x\"\naxle = \"../{axle}.toml\"\nnew_depth = \"16 mm\"\n[[tire]]\nside = \"left\"\nplace = \"{place}\"\n\
         depths = [\"9 mm\", \"9 mm\", \"9 mm\", \"9 mm\", \"9 mm\"]\n"
    );
    CaseSheet { tires: Vec::new(), ..read(&text) }
}

/// Random draws.
struct Draws(ChaCha8Rng);

impl Draws {
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
fn other_axle(axle: &Axle) -> Axle {
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
fn seen(base: &CaseSheet, worn: &WornAxle<'_>, cause: WearCause, draws: &mut Draws) -> CaseSheet {
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
fn drawn_cause(causes: &[WearCause], draws: &mut Draws) -> WearCause {
    let weights: Vec<f64> = causes.iter().map(|cause| cause.usual_weight()).collect();
    causes[draws.place(&weights)]
}

/// Probabilities of all causes on one invented sheet.
struct Told {
    truth: WearCause,
    probabilities: Vec<(WearCause, f64)>,
}

impl Told {
    fn first(&self) -> (WearCause, f64) {
        *self.probabilities.iter().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap()
    }

    fn of_truth(&self) -> f64 {
        self.probabilities.iter().find(|own| own.0 == self.truth).unwrap().1
    }
}

/// Explains invented sheets of an axle: for each number the draws and, where it is given, the cause.
fn told(axle: &str, wanted: &[(u64, Option<WearCause>)], discrepancy: Discrepancy) -> Vec<Told> {
    let base = blank(axle);
    let worn = WornAxle::of(&base.model.axle, &base.document);
    let library = Library::of(&worn).unwrap();
    let other = other_axle(&base.model.axle);
    let true_axle = WornAxle::of(&other, &base.document);
    let causes = library.causes();
    let one = |(number, cause): &(u64, Option<WearCause>)| {
        let mut draws = Draws(ChaCha8Rng::seed_from_u64(*number));
        let truth = cause.unwrap_or_else(|| drawn_cause(&causes, &mut draws));
        let sheet = seen(&base, &true_axle, truth, &mut draws);
        Told { truth, probabilities: probabilities(&sheet, (&worn, &library), discrepancy).unwrap() }
    };
    wanted.par_iter().map(one).collect()
}

fn mean(values: impl Iterator<Item = f64> + Clone) -> f64 {
    values.clone().sum::<f64>() / values.count() as f64
}

/// Sheets of every cause in turn.
fn of_each(axle: &str, count: u64, discrepancy: Discrepancy) -> Vec<Told> {
    let causes =
        WearCause::ALL.into_iter().filter(|own| axle.contains("dual") || *own != WearCause::UnequalDuals);
    let wanted: Vec<(u64, Option<WearCause>)> = causes
        .enumerate()
        .flat_map(|(place, cause)| (0..count).map(move |own| (1000 * (place as u64 + 1) + own, Some(cause))))
        .collect();
    told(axle, &wanted, discrepancy)
}

/// Sheets whose causes are drawn by the weights.
fn drawn(axle: &str, numbers: std::ops::Range<u64>, discrepancy: Discrepancy) -> Vec<Told> {
    told(axle, &numbers.map(|number| (number, None)).collect::<Vec<_>>(), discrepancy)
}

/// Mean logarithm of the probability of the true cause, and how much more probable the first is said to be than it is.
fn scores(told: &[Told]) -> [f64; 2] {
    let score = mean(told.iter().map(|own| own.of_truth().max(1e-12).ln()));
    let said = mean(told.iter().map(|own| own.first().1));
    let right = mean(told.iter().map(|own| f64::from(u8::from(own.first().0 == own.truth))));
    [score, said - right]
}

/// The whole calibration; its tables stand in the README of this crate.
#[test]
#[ignore = "minutes; prints the tables of the README"]
fn calibration() {
    const AXLES: [&str; 2] = ["trailer-152-thin-dual", "trailer-127-thick-wide-base-zeroset"];
    println!("### Estimate of the discrepancy, 400 sheets of each of two axles\n");
    println!(
        "| rib | tire | mean log probability of the truth | said less right |\n| --- | --- | --- | --- |"
    );
    for (rib, tire) in [(0.03, 0.03), (0.05, 0.05), (0.08, 0.08), (0.12, 0.08), (0.12, 0.15), (0.18, 0.18)] {
        let all: Vec<Told> = AXLES
            .iter()
            .flat_map(|axle| drawn(axle, 1_000_000..1_000_400, Discrepancy { rib, tire }))
            .collect();
        let [score, over] = scores(&all);
        println!("| {rib} | {tire} | {score:.3} | {over:+.3} |");
    }
    let estimated = Discrepancy::ASSUMED;
    let held_out: Vec<Told> =
        AXLES.iter().flat_map(|axle| drawn(axle, 2_000_000..2_001_500, estimated)).collect();
    let [score, over] = scores(&held_out);
    println!(
        "\n### Reliability, 1500 other sheets of each axle; mean log probability {score:.3}, said less right {over:+.3}\n"
    );
    println!(
        "| probability said | statements | mean said | came true, 95 % interval |\n| --- | --- | --- | --- |"
    );
    let all = |own: &Told| {
        let truth = own.truth;
        own.probabilities.iter().map(move |(cause, said)| (*said, *cause == truth)).collect::<Vec<_>>()
    };
    let statements: Vec<(f64, bool)> = held_out.iter().flat_map(all).collect();
    for bin in reliability(&statements, 10, 0.95) {
        let Estimated { value, interval } = bin.came_true;
        let [low, high] = interval.unwrap();
        let [from, to] = bin.range;
        println!(
            "| {from:.1} to {to:.1} | {} | {:.3} | {value:.3} ({low:.3} to {high:.3}) |",
            bin.count, bin.stated
        );
    }
    let first: Vec<&Told> = held_out.iter().filter(|own| own.first().1 >= axlebow_study::LEADS).collect();
    let right = first.iter().filter(|own| own.first().0 == own.truth).count();
    let share = Sampled::share((right, first.len()), 0.95);
    println!(
        "\nA cause leads on {} of {} sheets and is the true one on {:.3} of these ({:?}).",
        first.len(),
        held_out.len(),
        share.value,
        share.interval
    );
    confusion(&of_each(AXLES[0], 200, estimated));
}

/// Mean probabilities by true cause, and the pairs that are taken for one another most.
fn confusion(all: &[Told]) {
    let mean_of = |truth: WearCause, cause: WearCause| {
        let of = all.iter().filter(move |own| own.truth == truth);
        mean(of.map(move |own| own.probabilities.iter().find(|own| own.0 == cause).unwrap().1))
    };
    println!("\n### Mean probability in per cent by true cause (rows), 200 sheets each, duals\n");
    println!("| true cause | {} |", WearCause::ALL.map(WearCause::word).join(" | "));
    println!("| --- {}|", "| --- ".repeat(WearCause::ALL.len()));
    let mut pairs: Vec<(f64, WearCause, WearCause)> = Vec::new();
    for truth in WearCause::ALL {
        let row = WearCause::ALL.map(|cause| format!("{:.0}", 100.0 * mean_of(truth, cause)));
        println!("| {} | {} |", truth.word(), row.join(" | "));
        for cause in WearCause::ALL.into_iter().filter(|own| *own != truth) {
            pairs.push((mean_of(truth, cause), truth, cause));
        }
    }
    pairs.sort_by(|a, b| b.0.total_cmp(&a.0));
    println!("\nTaken for one another most:");
    for (share, truth, cause) in pairs.into_iter().take(10) {
        println!("- {} for {}: {:.0} %", truth.word(), cause.word(), 100.0 * share);
    }
}

/// A small seeded part of the calibration.
#[test]
fn stated_probabilities_come_true_on_sheets_of_another_model() {
    let told = drawn("trailer-127-thick-wide-base-zeroset", 3_000_000..3_000_060, Discrepancy::ASSUMED);
    let [score, over] = scores(&told);
    // The weights alone would score minus their entropy.
    let weights = WearCause::ALL.map(WearCause::usual_weight);
    let total: f64 = weights.iter().sum();
    let by_weights: f64 = weights.iter().map(|weight| weight / total * (weight / total).ln()).sum();
    assert!(score > by_weights + 0.5 && over.abs() < 0.15, "{score} {over}");
}

/// Explains sheets of one axle that is solved once.
fn with_library(base: &CaseSheet, check: impl Fn(&dyn Fn(&CaseSheet) -> axlebow_study::ExplainOutcome)) {
    let worn = WornAxle::of(&base.model.axle, &base.document);
    let library = Library::of(&worn).unwrap();
    check(&|sheet| explain_with(sheet, (&worn, &library), Discrepancy::ASSUMED).unwrap());
}

fn probability(outcome: &axlebow_study::ExplainOutcome, cause: WearCause) -> f64 {
    outcome.causes.iter().find(|own| own.cause == cause).unwrap().posterior
}

#[test]
fn readings_of_a_wide_base_axle_point_to_what_was_read() {
    let base = sheet("feathered-left");
    with_library(&base, |explained| {
        let toe = explained(&base);
        assert_eq!((toe.verdict, toe.leader().cause), (Verdict::Leads, WearCause::Toe));
        assert_eq!(toe.leader().place, axlebow_study::Whereabouts::Side(Side::Left));
        assert!(toe.leader().size.mean > 0.0, "feathered inboard is toe-in");
        let sum: f64 = toe.causes.iter().map(|own| own.posterior).sum();
        assert!((sum - 1.0).abs() < 1e-12);
        assert!(toe.causes.iter().all(|own| own.cause != WearCause::UnequalDuals), "singles have no mate");
        // A weight of nothing takes a cause away; weights of others keep their ratios.
        let none = vec![axlebow_model::StatedPrior { cause: "toe".to_owned(), weight: 0.0 }];
        assert_eq!(probability(&explained(&CaseSheet { priors: none, ..base.clone() }), WearCause::Toe), 0.0);
        // One rib of unknown mileage says next to nothing: what is left are the weights.
        let mut one = CaseSheet { distance: None, ..base.clone() };
        one.tires.truncate(1);
        one.tires[0].depths.iter_mut().skip(1).for_each(|depth| *depth = None);
        (one.tires[0].cups, one.tires[0].feather, one.tires[0].inflation) = (None, None, None);
        for own in &explained(&one).causes {
            assert!((own.posterior - own.prior).abs() < 0.03, "{own:?}");
        }
        // What reads a cause by itself decides.
        let mut loose = one.clone();
        loose.ends.right.endplay = Some(0.6e-3);
        let outcome = explained(&loose);
        assert!(probability(&outcome, WearCause::LooseBearings) > 0.95);
        assert!((outcome.leader().size.mean - 0.6e-3).abs() < 0.06e-3);
        assert_eq!(outcome.leader().place, axlebow_study::Whereabouts::Side(Side::Right));
        let endplay = outcome.leader().evidence.iter().find(|own| own.evidence == Evidence::Endplay);
        assert!(endplay.unwrap().log_ratio > 3.0);
        loose.ends.right.endplay = Some(0.08e-3);
        assert!(probability(&explained(&loose), WearCause::LooseBearings) < 0.12);
        let wall = base.document.number(CaseSheet::TUBE_WALL).unwrap();
        let thin = CaseSheet { wall: Some(0.8 * wall), ..one.clone() };
        assert_eq!(explained(&thin).leader().cause, WearCause::ThinWall);
        let out = CaseSheet { offset: Some(50e-3), ..one.clone() };
        assert_eq!(explained(&out).leader().cause, WearCause::Outset);
        let skewed = CaseSheet { skew: Some(0.5_f64.to_radians()), ..one.clone() };
        assert_eq!(explained(&skewed).leader().cause, WearCause::Skew);
        let heavy = CaseSheet { axle_load: Some(1.3 * base.model.axle.loading.rated_load), ..one.clone() };
        assert_eq!(explained(&heavy).leader().cause, WearCause::Overload);
        let dead = CaseSheet { damper: Some(DamperState::Dead), ..one.clone() };
        assert_eq!(explained(&dead).leader().cause, WearCause::WornDamper);
        // Ribs that no cause wears so.
        let mut absurd = base.clone();
        absurd.tires[1].depths = [10.5, 4.0, 10.5, 4.0, 10.5].map(|depth| Some(1e-3 * depth)).to_vec();
        assert_eq!(explained(&absurd).verdict, Verdict::NothingFits);
    });
}

#[test]
fn cups_alone_do_not_tell_bearings_from_dampers_and_a_look_at_either_is_asked_for() {
    let base = sheet("cupped-duals");
    let outcome = explain(&base).unwrap();
    assert_eq!(outcome.verdict, Verdict::CannotTell);
    let leaders: Vec<WearCause> = outcome.leaders().iter().map(|own| own.cause).collect();
    assert!(
        leaders.contains(&WearCause::WornDamper) && leaders.contains(&WearCause::LooseBearings),
        "{leaders:?}"
    );
    assert!(
        [Evidence::Endplay, Evidence::Damper].contains(&outcome.checks[0].evidence),
        "{:?}",
        outcome.checks
    );
    assert!(outcome.checks.iter().all(|own| own.information <= outcome.entropy + 1e-9));
}

/// The state of a sound axle but for its load and endplay is the axle of the file: its pattern is that of the tire face.
#[test]
fn patterns_are_those_of_the_tire_face() {
    let base = blank("trailer-152-thin-dual");
    let worn = WornAxle::of(&base.model.axle, &base.document);
    let mut state = worn.usual();
    state[worn.place(Parameter::Load).unwrap()] = 0.0;
    let pattern = worn.pattern(&state).unwrap();
    let tires = axlebow_axle::tires(&base.model.axle, &base.model.cases[..1]).unwrap();
    let faces = &tires.cases[0].wheels;
    let ribs = Side::BOTH.into_iter().flat_map(|side| &faces.of(side).worn.tires).flat_map(|tire| &tire.ribs);
    let expected: Vec<f64> = ribs.map(|rib| rib.wear.ln()).collect();
    assert_eq!(pattern.log_wear.len(), 20);
    let off = pattern.log_wear.iter().zip(&expected).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
    assert!(off < 1e-9, "{off}");
    // A parameter that the file has as a key does what the key does.
    let mut document = base.document.clone();
    for (key, value) in [("wheel_end[0].toe", "0.2 deg"), ("running.skew", "0.1 deg"), ("tube.wall", "8 mm")]
    {
        document.set(key, value).unwrap();
    }
    let changed = axlebow_model::Model::of(&document).unwrap();
    let by_file = WornAxle::of(&changed.axle, &document).pattern(&state).unwrap();
    let mut put = |parameter, value| state[worn.place(parameter).unwrap()] = value;
    Side::BOTH.into_iter().for_each(|side| put(Parameter::Toe(side), 0.2_f64.to_radians()));
    put(Parameter::Skew, 0.1_f64.to_radians());
    put(Parameter::Wall, (8e-3 / base.document.number("tube.wall").unwrap()).ln());
    let by_state = worn.pattern(&state).unwrap();
    let off = by_state.log_wear.iter().zip(&by_file.log_wear).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
    assert!(off < 1e-6, "{off}");
    assert!(by_state.feathering.iter().sum::<f64>() > 0.4, "toe-in feathers inboard");
}
