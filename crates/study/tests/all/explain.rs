//! Causes of worn tires.

mod calibration;
mod invented;

use std::path::{Path, PathBuf};

use axlebow_axle::{Side, TireSlot};
use axlebow_model::{CaseSheet, DamperState};
use axlebow_study::{
    Discrepancy, Evidence, ExplainOutcome, Library, Parameter, Verdict, WearCause, WornAxle, explain,
    explain_with,
};

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

/// Explains sheets of one axle that is solved once.
fn with_library(base: &CaseSheet, check: impl Fn(&dyn Fn(&CaseSheet) -> ExplainOutcome)) {
    let worn = WornAxle::of(&base.model.axle, &base.document);
    let library = Library::of(&worn).unwrap();
    check(&|sheet| explain_with(sheet, (&worn, &library), Discrepancy::ESTIMATED).unwrap());
}

fn probability(outcome: &ExplainOutcome, cause: WearCause) -> f64 {
    outcome.causes.iter().find(|own| own.cause == cause).unwrap().posterior
}

/// A sheet of which nobody felt the ribs.
fn unfelt(base: &CaseSheet) -> CaseSheet {
    let mut sheet = base.clone();
    sheet.tires.iter_mut().for_each(|tire| tire.feather = None);
    sheet
}

/// By the definitions: odds are prior odds times ratios of likelihoods; what feathering says of a cause are its odds with it over
/// those without; what a look at dampers would tell is the fall of the entropy, over what each cause makes of them.
fn check_by_hand(felt: &ExplainOutcome, unfelt: &ExplainOutcome) {
    let leader = felt.leader();
    let of = |outcome: &ExplainOutcome, cause| {
        let own = outcome.causes.iter().find(|own| own.cause == cause).unwrap().posterior;
        (own / (1.0 - own)).ln()
    };
    for own in &felt.causes {
        let odds = (own.prior / leader.prior).ln() + own.log_likelihood - leader.log_likelihood;
        assert!(((own.posterior / leader.posterior).ln() - odds).abs() < 1e-9, "{own:?}");
        let says = own.evidence.iter().find(|own| own.evidence == Evidence::Feathering).unwrap().log_ratio;
        assert!((says - of(felt, own.cause) + of(unfelt, own.cause)).abs() < 1e-6, "{own:?}");
    }
    let entropy =
        |shares: &[f64]| shares.iter().map(|p| if *p > 0.0 { -p * p.ln() } else { 0.0 }).sum::<f64>();
    let now: Vec<f64> = felt.causes.iter().map(|own| own.posterior).collect();
    assert!((felt.entropy - entropy(&now)).abs() < 1e-12);
    let after: f64 = (0..3)
        .map(|look| {
            let joint = felt.causes.iter().map(|own| own.posterior * own.cause.damper_shares()[look]);
            let joint: Vec<f64> = joint.collect();
            let total: f64 = joint.iter().sum();
            total * entropy(&joint.iter().map(|own| own / total).collect::<Vec<_>>())
        })
        .sum();
    let told = felt.checks.iter().find(|own| own.evidence == Evidence::Damper).unwrap().information;
    assert!((told - (felt.entropy - after)).abs() < 1e-4, "{told} {}", felt.entropy - after);
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
        check_by_hand(&toe, &explained(&unfelt(&base)));
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
        absurd.tires[1].depths = [14.3, 4.0, 14.3, 4.0, 14.3].map(|depth| Some(1e-3 * depth)).to_vec();
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

/// Ribs as toe alone makes them, and as toe and a soft left inner tire make them whose pressure was read: solved as one state,
/// not added up, without errors.
#[test]
fn two_causes_at_once_are_told_from_one() {
    let base = blank("trailer-152-thin-dual");
    with_library(&base, |explained| {
        let worn = WornAxle::of(&base.model.axle, &base.document);
        let mut state = worn.usual();
        state[worn.place(Parameter::Toe(Side::Left)).unwrap()] = 0.7_f64.to_radians();
        let low = |sheet: &mut CaseSheet| {
            let inner =
                |own: &&mut axlebow_model::SeenTire| own.slot == TireSlot::Inner && own.side == Side::Left;
            sheet.tires.iter_mut().find(inner).unwrap().inflation = Some(0.6 * 758e3);
        };
        let toe_alone = as_worn(&base, &worn, &state);
        let alone = explained(&toe_alone);
        assert_eq!(alone.leader().cause, WearCause::Toe);
        assert!(alone.two_at_once().is_none(), "{:?}", alone.pairs[0]);
        let slot = Parameter::TireInflation(Side::Left, TireSlot::Inner);
        state[worn.place(slot).unwrap()] = 0.6_f64.ln();
        let mut sheet = as_worn(&base, &worn, &state);
        low(&mut sheet);
        let both = explained(&sheet);
        let pair = both.two_at_once().unwrap_or_else(|| panic!("{:?}", both.pairs[0]));
        let mut found = pair.causes.map(WearCause::word);
        found.sort_unstable();
        assert_eq!(found, ["low-inflation", "toe"]);
        assert!(pair.log_gain > 3.0 && pair.fit > 0.05, "{pair:?}");
        // What is left after all pairs belongs to single causes.
        let sum: f64 = both.pairs.iter().map(|own| own.posterior).sum();
        assert!((0.5..=1.0 + 1e-9).contains(&sum), "{sum}");
    });
}

/// Depths of all ribs as a state wears them, the deepest 8 mm, without errors.
fn as_worn(base: &CaseSheet, worn: &WornAxle<'_>, state: &[f64]) -> CaseSheet {
    let wear: Vec<f64> = worn.pattern(state).unwrap().log_wear.iter().map(|log| log.exp()).collect();
    let rate = 8e-3 / wear.iter().copied().fold(0.0, f64::max);
    let ribs = worn.axle().wheels.left.tread().ribs;
    let mut sheet = base.clone();
    let slots = Side::BOTH
        .into_iter()
        .flat_map(|side| worn.axle().wheels.of(side).tires().map(move |place| (side, place.slot)));
    for (tire, (side, slot)) in slots.enumerate() {
        let mut own = axlebow_model::SeenTire::unseen(side, slot);
        own.depths = (0..ribs).map(|rib| Some(16e-3 - rate * wear[tire * ribs + rib])).collect();
        sheet.tires.push(own);
    }
    sheet
}
