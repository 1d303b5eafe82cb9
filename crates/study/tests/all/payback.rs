//! Whether a remedy pays: cash flows by hand, break-evens that are ones, draws against their closed form, and what a file
//! may not say.

use std::path::Path;

use approx::assert_relative_eq;
use axlebow_axle::{Side, TireSlot, flex, tires};
use axlebow_model::Model;
use axlebow_study::{
    AxleChange, FleetTerms, MassTerms, PaybackInput, PaybackOutcome, PaybackStudy, PaybackTerms,
    PositionWear, RemedyTerms, TirePosition, TireTerms,
};

const HOUSING: &str = include_str!("../../../../studies/heavier-housing-pays.toml");
const ANGLE: &str = include_str!("../../../../studies/trailer-angle-pays.toml");

fn read(text: &str) -> Result<PaybackStudy, String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies");
    PaybackStudy::from_bytes(text.as_bytes(), "payback.toml", &folder).map_err(|problems| problems.render())
}

fn study(text: &str) -> PaybackStudy {
    read(text).unwrap_or_else(|problems| panic!("{problems}"))
}

fn run(text: &str) -> PaybackOutcome {
    study(text).run().unwrap()
}

/// The demo without its ranges.
fn plain(text: &str) -> &str {
    &text[..text.find("[[range]]").unwrap()]
}

fn refusal(old: &str, new: &str) -> String {
    assert!(ANGLE.contains(old), "{old}");
    read(&ANGLE.replacen(old, new, 1)).unwrap_err()
}

fn by_hand() -> (PaybackTerms, AxleChange) {
    let terms = PaybackTerms {
        fleet: FleetTerms { vehicles: 10, axles: 2, distance: 100e6, years: 2.0, discount_rate: 0.1 },
        remedy: RemedyTerms { price: 50.0, downtime: 7200.0, downtime_price: 25.0 / 3600.0, inspection: 1.0 },
        tires: TireTerms {
            new: 300.0,
            retread: 0.0,
            retreads: 0,
            casing: 0.0,
            fitting: 0.0,
            removal_distance: 200e6,
            shoulder_share: 0.5,
            wear_effect: 1.0,
        },
        mass: MassTerms { payload: 1.0, fuel: 0.002 },
    };
    let wear = |side| {
        let position = TirePosition { side, slot: TireSlot::Single };
        PositionWear { position, today: 1.0, remedied: 0.8, even: 0.5 }
    };
    (terms, AxleChange { mass: 5.0, wear: Side::BOTH.map(wear).to_vec() })
}

/// 20 axles. Spent: 20 (50 + 2 h · 25) = 2000. A life of 200 000 km, with the remedy 0.5 + 0.5/0.8 = 1.125 times that: 20
/// tires a year become 17.7778, 2.2222 · 300 = 666.667 less. Mass: 20 · 5 kg · (1 + 0.002 · 1000) = 300; inspections 20. A year
/// saves 346.667, times 1/1.1 + 1/1.21 = 1.735 537 is 601.653.
#[test]
fn a_small_fleet_comes_to_what_it_does_by_hand() {
    let (terms, change) = by_hand();
    let own = terms.outcome(&change);
    let near = |value: f64, hand: f64| assert_relative_eq!(value, hand, max_relative = 1e-9);
    near(own.outlay, 2000.0);
    near(own.positions[0].distance[1], 225e6);
    near(own.tires_a_year()[0], 20.0);
    near(own.tires_a_year()[1], 20.0 / 1.125);
    near(own.tires, 2000.0 / 3.0);
    near(own.mass, 300.0);
    near(own.inspections, 20.0);
    near(own.saving(), 2000.0 / 3.0 - 320.0);
    near(own.net_present_value, (2000.0 / 3.0 - 320.0) * (1.0 / 1.1 + 1.0 / 1.21) - 2000.0);
    near(terms.net_present_value(&change), own.net_present_value);
    assert_eq!((own.payback_time, own.discounted_payback_time), (None, None));
    // 20 · 300 over 10 · 100 000 km is 6 for 1000 km; with the remedy 5333.33 + 320 and 2000/1.735537 = 1152.38 a year.
    near(own.cost_per_1000_km[0], 6.0);
    near(own.cost_per_1000_km[1], (16_000.0 / 3.0 + 320.0 + 2000.0 / (1.0 / 1.1 + 1.0 / 1.21)) / 1000.0);
}

/// 200 to spend, 346.667 a year: 0.576 923 years; discounted the first year brings 315.152: 0.634 615.
#[test]
fn a_cheap_remedy_is_paid_back_within_the_first_year() {
    let (terms, change) = by_hand();
    let terms = terms.with(PaybackInput::Price, 10.0).with(PaybackInput::DowntimePrice, 0.0);
    let own = terms.outcome(&change);
    assert_relative_eq!(own.payback_time.unwrap(), 200.0 / (2000.0 / 3.0 - 320.0), max_relative = 1e-9);
    let discounted = 200.0 / ((2000.0 / 3.0 - 320.0) / 1.1);
    assert_relative_eq!(own.discounted_payback_time.unwrap(), discounted, max_relative = 1e-9);
    let last = own.balances.last().unwrap();
    assert_relative_eq!(last.discounted, own.net_present_value, max_relative = 1e-9);
    assert_relative_eq!(last.plain, 2.0 * own.saving() - 200.0, max_relative = 1e-9);
}

/// What 1000 km cost less, over all kilometers of all years, discounted, is the net present value.
#[test]
fn costs_per_distance_and_net_present_value_are_one_account() {
    for text in [HOUSING, ANGLE] {
        let own = run(plain(text));
        let [today, remedied] = own.cash_flow.cost_per_1000_km;
        let fleet = &own.terms.fleet;
        let each = fleet.distance / 1e6 * f64::from(fleet.vehicles);
        let annuity = axlebow_numerics::annuity_factor(fleet.discount_rate, fleet.years);
        let worth = (today - remedied) * each * annuity;
        assert_relative_eq!(worth, own.cash_flow.net_present_value, max_relative = 1e-9);
    }
}

#[test]
fn every_break_even_is_one() {
    for text in [HOUSING, ANGLE] {
        let own = run(plain(text));
        let mut found = 0;
        for input in own.break_even.iter() {
            let Some(at) = input.at else { continue };
            let worth = own.terms.with(input.input, at).net_present_value(&own.change);
            let scale = own.cash_flow.outlay + own.cash_flow.tires.abs();
            assert!(worth.abs() < 1e-9 * scale, "{:?}: {worth} at {at}", input.input);
            found += 1;
        }
        assert!(found >= 3, "{found}");
    }
}

/// The price alone is uniform from a to b, and the net present value is linear in it: its mean is that of the middle price. The
/// standard error is n axles (b − a)/√12/√draws; four of them are missed once in 16 000 seeds.
#[test]
fn the_mean_of_linear_draws_is_that_of_the_closed_form() {
    let (from, to) = (1.0, 11.0);
    let cheap = plain(ANGLE).replace("\"165 USD\"", "\"5 USD\"").replace("\"3 h\"", "\"0 h\"");
    let range = format!(
        "{}\n[[range]]\npath = \"remedy.price\"\nfrom = \"{from} USD\"\nto = \"{to} USD\"\n[draws]\ncount = 100000\nseed = 7\n",
        cheap
    );
    let study = study(&range);
    let own = study.run().unwrap();
    let worth = |price: f64| study.terms.with(PaybackInput::Price, price).net_present_value(&own.change);
    let draws = own.draws.unwrap();
    let deviation = study.terms.all_axles() * (to - from) / 12.0_f64.sqrt();
    let error = deviation / f64::from(study.draws.count).sqrt();
    assert!((draws.mean.value - worth(0.5 * (from + to))).abs() < 4.0 * error, "{:?} {error}", draws.mean);
    assert_relative_eq!(draws.deviation.value, deviation, max_relative = 0.01);
    // The 5 % percentile is the worth at the 95 % price, within four errors of a share, √(0.05 · 0.95/n), of its range.
    let reach = 4.0 * (0.05_f64 * 0.95 / f64::from(study.draws.count)).sqrt() * (worth(from) - worth(to));
    assert!((draws.percentiles[0].1 - worth(from + 0.95 * (to - from))).abs() < reach);
    let at = own.break_even.iter().find(|own| own.input == PaybackInput::Price).unwrap().at;
    let share = at.map_or(0.0, |at: f64| ((at - from) / (to - from)).clamp(0.0, 1.0));
    assert!((draws.pays.value - share).abs() < 4.0 * 0.5 / f64::from(study.draws.count).sqrt());
}

#[test]
fn draws_are_the_same_on_any_number_of_threads_and_others_with_another_seed() {
    let few = HOUSING.to_owned() + "[draws]\ncount = 2000\n";
    let on = |threads: usize, text: &str| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().unwrap();
        pool.install(|| run(text).draws.unwrap())
    };
    let one = on(1, &few);
    assert_eq!(one, on(3, &few));
    assert_ne!(one.mean, on(1, &(few.clone() + "seed = 2\n")).mean);
}

/// What the tire faces of the two models themselves say.
#[test]
fn the_remedy_does_what_the_models_say() {
    let study = study(ANGLE);
    let own = study.run().unwrap();
    let worst = |model: &Model| {
        let case = model.cases.iter().find(|case| case.name == "rated-load").unwrap();
        let outcome = tires(&model.axle, std::slice::from_ref(case)).unwrap();
        let faces = Side::BOTH.map(|side| outcome.cases[0].wheels.of(side).worn.clone());
        let ribs = faces
            .iter()
            .flat_map(|worn| worn.tires.iter().flat_map(|tire| tire.ribs.iter().map(|rib| rib.wear)));
        ribs.fold(0.0, f64::max)
    };
    let ratio = worst(&study.remedied) / worst(&study.base);
    assert_relative_eq!(own.change.worst_ratio(), ratio, max_relative = 1e-12);
    let mass = |model: &Model| flex(&model.axle, &model.cases[..1]).unwrap().axle_mass;
    assert_relative_eq!(own.change.mass, mass(&study.remedied) - mass(&study.base), max_relative = 1e-9);
    assert!(own.stiffened && own.cash_flow.positions.len() == 4);
}

/// A remedy by changes is the model changed by hand.
#[test]
fn changes_in_the_file_are_changes_of_the_model() {
    let model = "model = \"../models/drive-housing-11-dual.toml\"\nprice";
    let changes = "change = { \"housing.wall\" = \"11 mm\", \"seat[0].wall_flexibility\" = \"5.5e-5 rad/(kN m)\" }\nprice";
    let text = plain(HOUSING);
    assert!(text.contains(model));
    let (by_model, by_change) = (run(text), run(&text.replace(model, changes)));
    assert_eq!(by_model.cash_flow, by_change.cash_flow);
}

#[test]
fn a_remedy_that_changes_nothing_at_the_axle_loses_its_price() {
    let text = plain(ANGLE).replace(
        "model = \"../models/trailer-152-thin-dual-angle.toml\"\nprice",
        "change = { name = \"other\" }\nprice",
    );
    let own = run(&text);
    assert!(!own.pays());
    assert_eq!(own.cash_flow.saving(), -own.cash_flow.inspections);
    let price = own.break_even.iter().find(|own| own.input == PaybackInput::Price).unwrap();
    assert_eq!(price.at, None);
}

#[test]
fn rotated_tires_come_off_together_and_at_the_same_distance_of_the_fleet() {
    let own = run(&plain(ANGLE).replace("rotation = \"none\"", "rotation = \"positions\""));
    let first = own.cash_flow.positions[0];
    assert!(own.cash_flow.positions.iter().all(|own| own.distance == first.distance));
    assert_relative_eq!(first.distance[0], 165e6, max_relative = 1e-12);
}

#[test]
fn inputs_without_a_range_swing_by_a_tenth() {
    let own = run(plain(ANGLE));
    let price = own.swings.iter().find(|own| own.input == PaybackInput::NewTire).unwrap();
    assert!(!price.has_range && own.draws.is_none());
    assert_relative_eq!(price.ends[0], 351.0, max_relative = 1e-12);
    assert_relative_eq!(price.ends[1], 429.0, max_relative = 1e-12);
    let all = run(ANGLE);
    assert_eq!(all.swings.iter().take_while(|own| own.has_range).count(), 6);
    let widths: Vec<f64> = all.swings[..6].iter().map(|own| own.width()).collect();
    assert!(widths.is_sorted_by(|one, other| one >= other), "{widths:?}");
}

#[test]
fn what_a_file_may_not_say_is_refused_where_it_stands() {
    for (old, new, words) in [
        ("\"165 USD\"", "\"165\"", "`remedy.price` has no currency"),
        ("\"165 USD\"", "165", "`remedy.price` has no currency"),
        ("\"165 USD\"", "\"165 EUR\"", "the price is in \"EUR\", and the file's currency is \"USD\""),
        ("currency = \"USD\"\n", "", "`currency` is missing"),
        ("vehicles = 36", "vehicles = 0", "`fleet.vehicles` is 0"),
        ("other = \"25 %\"", "other = \"35 %\"", "the shares of removals come to 110.0 %"),
        ("downtime_price = \"28 USD/h\"", "", "the downtime has no price"),
        ("\"28 USD/h\"", "\"28 USD\"", "does not say for each unit of time it is the price"),
        ("retread = \"190 USD\"\n", "", "the retreads have no price"),
        ("from = \"120 USD\"", "from = \"120 EUR\"", "the price is in \"EUR\""),
        ("from = \"120 USD\"", "from = \"120\"", "`remedy.price` has no currency"),
        ("path = \"remedy.price\"", "path = \"remedy.prize\"", "did you mean `remedy.price`?"),
        (
            "path = \"remedy.downtime\"",
            "path = \"remedy.price\"\nfrom = \"1 USD\"\nto = \"2 USD\"\n[[range]]\npath = \"remedy.downtime\"",
            "has two ranges",
        ),
        ("path = \"remedy.price\"", "path = \"mass.fuel\"", "the file gives no `mass.fuel`"),
        ("to = \"80 %\"", "to = \"180 %\"", "shoulder_wear` is 1."),
        (
            "model = \"../models/trailer-152-thin-dual-angle.toml\"\nprice",
            "price",
            "the remedy changes nothing",
        ),
        (
            "trailer-152-thin-dual-angle.toml",
            "trailer-152-thin-dual-angel.toml",
            "did you mean `../models/trailer",
        ),
        ("case = \"rated-load\"", "case = \"rated-laod\"", "did you mean `rated-load`?"),
        ("distance = \"125000 km\"", "distance = \"0 km\"", "`fleet.distance` is 0"),
    ] {
        let told = refusal(old, new);
        assert!(told.contains(words), "{old} -> {new}\n{told}");
        assert!(told.contains("payback.toml:"), "{told}");
    }
}

#[test]
fn every_problem_is_told_at_once() {
    let text = ANGLE.replace("\"165 USD\"", "\"165 EUR\"").replace("other = \"25 %\"", "other = \"30 %\"");
    let told = read(&text).unwrap_err();
    assert!(told.contains("\"EUR\"") && told.contains("come to 105.0 %"), "{told}");
}

#[test]
fn axles_with_different_numbers_of_tires_are_not_compared() {
    let text = plain(ANGLE).replace("thin-dual-angle", "thin-wide-base-zeroset");
    let error = study(&text).run().unwrap_err().to_string();
    assert!(error.contains("4 tires today and 2 with the remedy"), "{error}");
}

#[test]
fn a_mass_without_a_price_is_told() {
    let text = plain(ANGLE).replace("payload = \"0.90 USD/kg\"", "");
    assert!(run(&text).warnings.iter().any(|own| own.text.contains("a kilogram has no price")));
}
