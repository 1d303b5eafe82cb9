//! Searches: every combination tried by hand, and what binds and what relaxing it buys.

use std::path::Path;

use approx::assert_relative_eq;
use axlebow_model::Problems;
use axlebow_study::{Proof, SearchOutcome, Study};

fn read(text: &str) -> Result<Study, Problems> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies");
    Study::from_bytes(text.as_bytes(), "study.toml", &folder)
}

fn searched(text: &str) -> SearchOutcome {
    let study = read(text).unwrap_or_else(|problems| panic!("{}", problems.render()));
    study.search(&|_, _| ()).unwrap()
}

const TUBE: &str = r#"
name = "lightest tube"
kind = "search"
model = "../models/trailer-152-thin-dual.toml"
case = "rated-load"
[search]
least = "axle-mass"
starts = 4
[[vary]]
path = "tube.od"
from = "120 mm"
to = "170 mm"
[[vary]]
path = "tube.wall"
from = "6 mm"
to = "16 mm"
[[limit]]
of = "camber-change"
within = "0.4 deg"
[[limit]]
of = "peak-stress"
within = "150 MPa"
"#;

fn value(outcome: &SearchOutcome, name: &str) -> f64 {
    let measure = outcome.measures.iter().find(|measure| measure.name == name).unwrap();
    outcome.best.as_ref().unwrap().value(measure).unwrap()
}

#[test]
fn the_lightest_tube_is_no_heavier_than_any_of_a_fine_grid() {
    let outcome = searched(TUBE);
    let mass = value(&outcome, "axle-mass");
    assert!(outcome.limits.iter().any(|limit| limit.active), "{:?}", outcome.limits);
    assert!(outcome.limits.iter().all(|limit| limit.missed <= 1e-6));
    assert!(
        matches!(outcome.proof, Proof::Starts { combinations: 1, starts: 4, agreed: 2.. }),
        "{:?}",
        outcome.proof
    );
    let grid = TUBE
        .replace("kind = \"search\"", "kind = \"sweep\"")
        .replace("[search]\nleast = \"axle-mass\"\nstarts = 4\n", "")
        .replace("to = \"170 mm\"", "to = \"170 mm\"\npoints = 51")
        .replace("to = \"16 mm\"", "to = \"16 mm\"\npoints = 101");
    let rows = read(&grid).unwrap().run(&|_, _| ());
    let measure = rows.standing("axle-mass").unwrap();
    let met = rows.rows.iter().filter(|row| rows.meets(row)).filter_map(|row| row.value(measure));
    let lightest = met.reduce(f64::min).unwrap();
    assert!(mass <= lightest * (1.0 + 1e-6), "{mass} {lightest}");
    assert!(mass > lightest * 0.98, "{mass} {lightest}");
}

/// The price of a limit is the slope of the goal as it is solved again.
#[test]
fn what_relaxing_a_limit_buys_is_what_its_multiplier_says() {
    let outcome = searched(TUBE);
    let mass = value(&outcome, "axle-mass");
    for found in outcome.limits.iter().filter(|found| found.active) {
        let relaxed = found.relaxed.unwrap();
        let step = 0.01 * found.limit.within.unwrap();
        assert!(relaxed < mass, "{found:?}");
        assert_relative_eq!((relaxed - mass) / step, found.price.unwrap(), max_relative = 0.1);
    }
}

const CATALOGUE: &str = r#"
name = "cheapest angle"
kind = "search"
model = "../models/trailer-152-thin-dual-angle.toml"
case = "rated-load"
[search]
least = "cost"
against = ["camber-change"]
[[vary]]
path = "tube.wall"
name = "tube_wall"
values = ["8 mm", "9 mm", "10 mm", "11 mm"]
[[vary]]
name = "angle"
[[vary.choice]]
name = "L50x50x5"
change = { "stiffener[0].size" = "L50x50x5" }
[[vary.choice]]
name = "L75x75x8"
change = { "stiffener[0].size" = "L75x75x8" }
[[vary.choice]]
name = "L100x100x10"
change = { "stiffener[0].size" = "L100x100x10" }
[[derived]]
name = "cost"
as = "2.5 * axle_mass + 300 * tube_wall"
[[limit]]
of = "camber-change"
within = "0.35 deg"
"#;

#[test]
fn a_catalogue_is_searched_as_by_hand() {
    let outcome = searched(CATALOGUE);
    assert_eq!(outcome.proof, Proof::Every { combinations: 12 });
    assert_eq!((outcome.solved, outcome.failed.0), (12, 0));
    let sweep = CATALOGUE
        .replace("kind = \"search\"", "kind = \"sweep\"")
        .replace("[search]\nleast = \"cost\"\nagainst = [\"camber-change\"]\n", "");
    let rows = read(&sweep).unwrap().run(&|_, _| ());
    let column = |name: &str| rows.measures.iter().find(|measure| measure.name == name).unwrap();
    let met: Vec<_> = rows.rows.iter().filter(|row| rows.meets(row)).collect();
    let cost = |row: &axlebow_study::Row| row.value(column("cost")).unwrap();
    let camber = |row: &axlebow_study::Row| row.value(column("camber-change")).unwrap().abs();
    let cheapest = met.iter().min_by(|a, b| cost(a).total_cmp(&cost(b))).unwrap();
    assert_eq!(outcome.best.as_ref().unwrap().values, cheapest.values);
    // By hand: a design is on the front where no other one is cheaper and leans less.
    let on_front = met
        .iter()
        .filter(|own| met.iter().all(|other| cost(other) >= cost(own) || camber(other) >= camber(own)));
    assert_eq!(outcome.front.len(), on_front.count());
    assert!(outcome.front.windows(2).all(|pair| cost(&pair[0]) < cost(&pair[1])));
    assert!(outcome.front.windows(2).all(|pair| camber(&pair[0]) > camber(&pair[1])));
}

#[test]
fn a_continuous_front_falls_from_the_lightest_to_the_stiffest() {
    let outcome = searched(&TUBE.replace("starts = 4", "starts = 2\nagainst = [\"camber-change\"]"));
    assert!(outcome.front.len() > 8, "{}", outcome.front.len());
    let column = |name: &str| outcome.measures.iter().find(|measure| measure.name == name).unwrap();
    let of = |name: &str| -> Vec<f64> {
        outcome.front.iter().map(|row| row.value(column(name)).unwrap().abs()).collect()
    };
    assert!(of("axle-mass").windows(2).all(|pair| pair[0] < pair[1]));
    assert!(of("camber-change").windows(2).all(|pair| pair[0] > pair[1]));
    assert_relative_eq!(of("axle-mass")[0], value(&outcome, "axle-mass"), max_relative = 1e-6);
}

#[test]
fn where_no_design_meets_a_limit_the_nearest_is_told() {
    let outcome = searched(&TUBE.replace("0.4 deg", "0.01 deg"));
    assert!(outcome.best.is_none() && outcome.front.is_empty());
    let worst = outcome.limits.iter().max_by(|a, b| a.missed.total_cmp(&b.missed)).unwrap();
    assert!(worst.limit.of == "camber-change" && worst.missed > 1.0, "{worst:?}");
    assert!(outcome.nearest.is_some());
}

#[test]
fn slips_in_a_search_are_told_with_what_is_accepted() {
    for (from, to, words) in [
        ("least = \"axle-mass\"", "least = \"axle-mas\"", "no result is named \"axle-mas\""),
        ("least = \"axle-mass\"", "", "it is not plain what is searched for"),
        (
            "to = \"16 mm\"",
            "to = \"16 mm\"\ndistribution = \"uniform\"",
            "a search draws from no distribution",
        ),
        ("to = \"16 mm\"", "to = \"6 mm\"", "`from` and `to` are both"),
        ("[[limit]]", "[sample]\nmethod = \"grid\"\n[[limit]]", "nothing is sampled in a search"),
        ("starts = 4", "against = [\"bow\", \"peak-stress\", \"camber-change\"]", "3 results are traded"),
    ] {
        let problems = read(&TUBE.replacen(from, to, 1)).unwrap_err().render();
        assert!(problems.contains(words), "{words}\n{problems}");
    }
    let problems =
        read(&CATALOGUE.replacen("kind = \"search\"", "kind = \"sweep\"", 1)).unwrap_err().render();
    assert!(problems.contains("it has a use in a search only"), "{problems}");
}

/// The greatest use that `strength` itself finds in the best design is within the limit, and the next lighter wall's is
/// not: in all load cases of the model, or in those that the study names.
#[test]
fn a_limit_on_strength_covers_every_load_case_unless_the_study_names_some() {
    let text = |cases: &str| {
        format!(
            "name = \"wall\"\nkind = \"search\"\nmodel = \"../models/trailer-152-thin-dual.toml\"\ncase = \"rated-load\"\n\
             {cases}\n[search]\nleast = \"axle-mass\"\n[[vary]]\npath = \"tube.wall\"\n\
             values = [\"5 mm\", \"6 mm\", \"7 mm\", \"8 mm\", \"9 mm\", \"10 mm\", \"12 mm\"]\n\
             [[limit]]\nof = \"utilization\"\nmost = \"0.95\"\n"
        )
    };
    let used = |wall: f64, named: &dyn Fn(&str) -> bool| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../models/trailer-152-thin-dual.toml");
        let mut document =
            axlebow_model::read_bytes(&std::fs::read(path).unwrap(), "m", &axlebow_model::MODEL).unwrap();
        document.set_number("tube.wall", wall).unwrap();
        let model = axlebow_model::Model::of(&document).unwrap();
        let cases: Vec<_> = model.cases.iter().filter(|case| named(&case.name)).cloned().collect();
        axlebow_axle::strength(&model.axle, &cases, model.strength).unwrap().greatest_use().unwrap()
    };
    let some = "strength_cases = [\"rated-load\", \"unladen\"]";
    let is_one_of_some = |name: &str| some.contains(name);
    let mut walls = Vec::new();
    for (cases, named) in [("", &(|_: &str| true) as &dyn Fn(&str) -> bool), (some, &is_one_of_some)] {
        let outcome = searched(&text(cases));
        let wall = outcome.best.as_ref().unwrap().values[0];
        assert_relative_eq!(value(&outcome, "utilization"), used(wall, named), max_relative = 1e-9);
        assert!(used(wall, named) <= 0.95 && used(wall - 0.001, named) > 0.95, "{cases} {wall}");
        walls.push(wall);
    }
    assert!(walls[1] < walls[0], "{walls:?}");
    let problems = read(&text("strength_cases = [\"rated-lod\"]")).unwrap_err().render();
    assert!(problems.contains("no load case \"rated-lod\""), "{problems}");
}
