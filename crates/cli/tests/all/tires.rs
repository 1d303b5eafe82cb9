//! `axlebow tire`, and cups held against axle, road and wheel.

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, axlebow_on_threads, changed, demo, on_text, root};

fn json(arguments: &[&str]) -> Value {
    let run = axlebow(arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    serde_json::from_str(&run.out).expect("one JSON document")
}

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

fn path(place: &str) -> String {
    root().join("models").join(place).display().to_string()
}

#[test]
fn tire_prints_every_case_and_the_ribs_of_the_first() {
    let run = axlebow(&["tire", &demo("trailer-152-thin-dual")]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    assert!(run.out.contains("curb") && run.out.contains("Ribs, rated-load"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    assert!(
        run.out.contains("no promise of mileage") && run.out.contains("Demonstration data"),
        "{}",
        run.out
    );
}

#[test]
fn rib_loads_of_the_document_sum_to_the_wheel_load() {
    let document = json(&["tire", &demo("drive-housing-9.5-dual"), "--json"]);
    assert_eq!(document["schema"], "axlebow/tire-result/2");
    for case in document["cases"].as_array().expect("cases") {
        for side in ["left", "right"] {
            let face = &case["wheels"][side];
            let tires = face["tires"].as_array().expect("tires");
            let ribs = tires.iter().flat_map(|tire| tire["ribs"].as_array().expect("ribs"));
            let sum: f64 = ribs.map(|rib| number(&rib["load_n"])).sum();
            assert!((sum - number(&face["load_n"])).abs() < 1e-6 * sum, "{} {side}", case["name"]);
        }
    }
    let assumed = document["assumed"].as_array().expect("assumed");
    assert!(assumed.iter().any(|used| used["path"] == "wheel[0].tread.width"));
}

#[test]
fn a_tire_file_changes_the_tread() {
    let tire = path("tires/fuel-saving.toml");
    let model = demo("trailer-152-thin-wide-base-zeroset");
    let wear = |arguments: &[&str]| {
        let face = &json(arguments)["cases"][0]["wheels"]["left"]["tires"][0];
        number(&face["ribs"][0]["wear_against_upright"])
    };
    let own = wear(&["tire", &model, "--json"]);
    assert!(wear(&["tire", &model, "--tire", &tire, "--json"]) > own + 0.1);
    assert!(wear(&["tire", &model, "--set", "wheel[0].tread.depth=11 mm", "--json"]) > own + 0.05);
    let run = axlebow(&["tire", &model, "--tire", &tire, "--case", "rated-load"]);
    assert!(run.out.contains("on stiff-treaded, fuel-saving tires"), "{}", run.out);
}

#[test]
fn over_a_washboard_the_document_has_a_map_round_each_tire() {
    let model = demo("trailer-152-thin-dual");
    let document = json(&["tire", &model, "--over", &path("roads/washboard.toml"), "--json"]);
    let face = &document["ride"]["wheels"]["left"];
    assert_eq!(face["round"].as_array().expect("maps").len(), 2);
    assert_eq!(face["round"][0][0].as_array().expect("parts").len(), 72);
    let cups = &face["wave"]["cups"];
    let (count, spacing) = (number(&cups["count"]), number(&cups["spacing_m"]));
    assert!((number(&cups["frequency_hz"]) * spacing - number(&cups["speed_m_per_s"])).abs() < 1e-9);
    assert!(count >= 1.0 && !cups["explanations"].as_array().expect("explanations").is_empty());
}

#[test]
fn tire_pictures_are_written() {
    let folder = TempDir::new().expect("a folder");
    let arguments = ["tire", &demo("trailer-152-thin-dual"), "--over", "pothole", "--plot", "tire.svg"];
    let run = axlebow_in(folder.path(), &arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    let text = std::fs::read_to_string(folder.path().join("tire.svg")).expect("the picture");
    assert!(text.contains("Wear round the tires") && text.contains("inner tire"));
}

#[test]
fn cups_are_ranked_by_axle_road_and_wheel() {
    let model = demo("trailer-127-thick-dual");
    let washboard = path("roads/washboard.toml");
    let run = axlebow(&["cups", &model, "--count", "2", "--speed", "80 km/h", "--over", &washboard]);
    assert_eq!(run.code, 0, "{}", run.err);
    for name in ["washboard", "wheel hop", "wheel turn, order 2", "score"] {
        assert!(run.out.contains(name), "{name}\n{}", run.out);
    }
    let document =
        json(&["cups", &model, "--count", "2", "--speed", "80 km/h", "--over", &washboard, "--json"]);
    assert_eq!(document["schema"], "axlebow/cups/3");
    let scores: Vec<f64> = document["explanations"]
        .as_array()
        .expect("a list")
        .iter()
        .map(|one| number(&one["score"]))
        .collect();
    assert!(scores.len() >= 3 && scores.windows(2).all(|pair| pair[0] >= pair[1]), "{scores:?}");
}

#[test]
fn treads_that_cannot_be_are_refused_with_their_place() {
    for (line, said) in [
        ("[wheel.tread]\ndepth = \"-3 mm\"\n", "depth"),
        ("[wheel.tread]\nwidth = \"400 mm\"\n", "tread width is 0.4 m"),
        ("[wheel.tread]\nribs = 13\n", "2 to 12"),
        ("[wheel.tread]\ninflation = 7.6\n", "unit"),
        ("[wheel.tread]\nshear_modulous = \"1 MPa\"\n", "shear_modulus"),
    ] {
        let run = on_text("tire", &changed("[[seat]]", &format!("{line}\n[[seat]]")));
        assert_eq!(run.code, 2, "{line}");
        assert!(run.err.contains(said), "{line}\n{}", run.err);
    }
}

#[test]
fn a_file_of_another_kind_is_named() {
    let model = demo("trailer-127-thick-dual");
    let run = axlebow(&["tire", &model, "--tire", &model]);
    assert!(run.code == 2 && run.err.contains("looks like a model file"), "{}", run.err);
    let run = axlebow(&["flex", &path("tires/deep-treaded.toml")]);
    assert!(run.code == 2 && run.err.contains("looks like a tire file"), "{}", run.err);
    let run = axlebow(&["tire", &model, "--tire", "no-such-tire.toml"]);
    assert!(run.code == 2 && run.err.contains("no-such-tire.toml"), "{}", run.err);
}

#[test]
fn several_axles_tires_and_offsets_make_a_table() {
    let folder = TempDir::new().expect("a folder");
    let (thin, thick) =
        (demo("drive-housing-9.5-wide-base-zeroset"), demo("drive-housing-11-wide-base-zeroset"));
    let (deep, stiff) = (path("tires/deep-treaded.toml"), path("tires/fuel-saving.toml"));
    let mut arguments = vec!["tire", &thin, &thick, "--tire", &deep, "--tire", &stiff];
    arguments.extend(["--offset", "51 mm", "--offset", "-25 mm"]);
    let run = axlebow_in(folder.path(), &[&arguments[..], &["--plot", "table.svg"]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("Most forgiving") && run.out.contains("25 mm inset"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    let picture = std::fs::read_to_string(folder.path().join("table.svg")).expect("a picture");
    assert!(picture.contains("shoulders wear"), "{picture}");
    let document = json(&[&arguments[..], &["--json"]].concat());
    assert_eq!(document["schema"], "axlebow/tire-table/2");
    assert_eq!(document["cells"][1].as_array().expect("cells").len(), 4);
    let refused = axlebow(&[&arguments[..], &["--over", "pothole"]].concat());
    assert!(refused.code == 2 && refused.err.contains("--over takes one model"), "{}", refused.err);
    let refused = axlebow(&["tire", &thin, "--offset", "20 kg"]);
    assert!(refused.code == 2 && refused.err.contains("--offset 20 kg"), "{}", refused.err);
}

#[test]
fn causes_print_shares_remedies_and_cautions() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-wide-base-outset");
    let over = path("roads/haversine-bump.toml");
    let arguments = ["causes", &model, "--set", "wheel_end[0].endplay=0.1 mm", "--over", &over];
    let run = axlebow_in(folder.path(), &[&arguments[..], &["--plot", "causes.svg"]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    for text in [
        "beam bending",
        "bearing endplay",
        "Shapley",
        "What would remove it",
        "peak to peak",
        "manufactured setting",
        "written approval",
        "RP 618",
    ] {
        assert!(run.out.contains(text), "{text}\n{}", run.out);
    }
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    let picture = std::fs::read_to_string(folder.path().join("causes.svg")).expect("the picture");
    assert!(picture.contains("wheel outset") && picture.contains("haversine"));
}

#[test]
fn causes_of_the_document_sum_to_the_angle() {
    let document = json(&["causes", &demo("drive-housing-9.5-dual"), "--case", "one-wheel-raised", "--json"]);
    assert_eq!(document["schema"], "axlebow/causes/2");
    for side in ["left", "right"] {
        let camber = &document["subjects"][0]["wheels"][side]["camber"];
        let causes = camber["causes"].as_array().expect("causes");
        let sum: f64 = causes.iter().map(|cause| number(&cause["share_rad"])).sum();
        let total = number(&camber["total_rad"]);
        assert!((sum + number(&camber["rest_rad"]) - total).abs() < 1e-12, "{side}: {sum} {total}");
    }
    let unknown = axlebow(&["causes", &demo("drive-housing-9.5-dual"), "--case", "rated"]);
    assert!(unknown.code == 2 && unknown.err.contains("rated-load"), "{}", unknown.err);
}

#[test]
fn a_table_of_one_cell_and_a_tread_that_does_not_wear_are_drawn() {
    let folder = TempDir::new().expect("a folder");
    let (model, tire) = (demo("trailer-152-thin-dual"), path("tires/fuel-saving.toml"));
    let one = ["tire", &model, "--tire", &tire, "--offset", "0 mm", "--plot", "one.svg"];
    assert_eq!(axlebow_in(folder.path(), &one).code, 0);
    // A duty that asks for nothing, on treads without crown.
    let text =
        changed("[[seat]]", "[running]\nduty = \"stated\"\n[[running.duty_part]]\nshare = 1\n\n[[seat]]");
    std::fs::write(folder.path().join("still.toml"), text).expect("the model is written");
    let still = ["tire", "still.toml", "--set", "wheel[0].tread.crown=0 mm", "--plot", "still.svg"];
    let run = axlebow_in(folder.path(), &still);
    assert_eq!(run.code, 0, "{}", run.err);
    let other = ["tire", &model, &path("roads/pothole.toml")];
    let run = axlebow_in(folder.path(), &other);
    assert!(run.code == 2 && run.err.contains("looks like a road file"), "{}", run.err);
}

#[test]
fn causes_are_the_same_bytes_on_any_number_of_threads() {
    let (model, over) = (demo("trailer-152-thin-dual"), path("roads/haversine-bump.toml"));
    let arguments = ["causes", &model, "--over", &over, "--json"];
    let [one, two] = ["1", "2"].map(|threads| axlebow_on_threads(threads, &arguments));
    assert_eq!((one.code, two.code), (0, 0), "{}", one.err);
    assert!(one.out == two.out);
}

#[test]
fn a_study_shows_the_wear_that_tire_says() {
    let study = root().join("studies/wall-sweep.toml").display().to_string();
    let shown = ["--show", "inner-shoulder-wear", "--show", "innermost-tire-share"];
    let document = json(&[&["study", &study, "--coarse", "2", "--json"], &shown[..]].concat());
    let row = document["rows"].as_array().expect("rows").last().expect("a design").clone();
    let (wall, design) = (number(&row["values"][0]), &row["results"]["case"]);
    let model = demo("trailer-127-thick-dual");
    let set = format!("tube.wall={wall:?} m");
    let od = "tube.od=152.4 mm";
    let face = json(&["tire", &model, "--set", &set, "--set", od, "--case", "rated-load", "--json"])["cases"]
        [0]["wheels"]["left"]
        .clone();
    let inner = &face["tires"][1];
    let close = |found: &Value, expected: &Value| (number(found) - number(expected)).abs() < 1e-9;
    assert!(
        close(&design["inner_shoulder_wear"], &inner["ribs"][0]["wear_against_upright"]),
        "{design} {inner}"
    );
    assert!(close(&design["innermost_tire_share"], &inner["share"]), "{design} {inner}");
}

/// Wear against upright of the shoulders of the innermost tire of a side, inner and outer.
fn shoulders(arguments: &[&str], side: &str) -> [f64; 2] {
    let document = json(&[arguments, &["--json"]].concat());
    let tires = document["cases"][0]["wheels"][side]["tires"].as_array().expect("tires").clone();
    let ribs = tires.last().expect("a tire")["ribs"].as_array().expect("ribs").clone();
    [&ribs[0], &ribs[ribs.len() - 1]].map(|rib| number(&rib["wear_against_upright"]))
}

#[test]
fn results_name_the_duty_and_show_the_range_over_duties() {
    let model = demo("trailer-152-thin-dual");
    let run = axlebow(&["tire", &model, "--duty", "city", "--case", "rated-load"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("in city service ("), "{}", run.out);
    assert!(run.out.contains("over the usual duties)") && run.out.contains("Duty: city."), "{}", run.out);
    let document = json(&["tire", &model, "--case", "rated-load", "--json"]);
    assert_eq!(document["duty"], "line-haul");
    let duties = document["cases"][0]["duties"].as_array().expect("duties");
    let names: Vec<&str> = duties.iter().filter_map(|own| own["duty"].as_str()).collect();
    assert_eq!(names, ["line-haul", "regional", "city"]);
    let own = &document["cases"][0]["wheels"]["left"]["tires"][1]["ribs"][0]["wear_against_upright"];
    assert_eq!(&duties[0]["left"][1][0], own);
    let of = |i: usize| number(&duties[i]["left"][1][0]);
    assert!(of(0) > of(1) && of(1) > of(2), "hard driving hides a lean: {} {} {}", of(0), of(1), of(2));
    let run = axlebow(&["tire", &model, "--duty", "town"]);
    assert!(run.code == 2 && run.err.contains("line-haul, regional, city"), "{}", run.err);
}

#[test]
fn skew_toes_one_end_in_and_the_other_out() {
    let model = demo("trailer-127-thick-wide-base-zeroset");
    let skewed = ["tire", &model, "--case", "rated-load", "--set", "running.skew=0.2 deg"];
    let [left, right] = ["left", "right"].map(|side| shoulders(&skewed, side));
    // Both toes scuff; toe-in moves it to the outer shoulder, toe-out to the inner one.
    let ratio = |[inner, outer]: [f64; 2]| outer / inner;
    assert!(ratio(left) > 1.05 * ratio(right), "{left:?} {right:?}");
    let answer = json(&[&skewed[..], &["--json"]].concat())["answer"].to_string();
    assert!(answer.contains("inboard, as by toe-in on the left wheel"), "{answer}");
    assert!(answer.contains("outboard, as by toe-out on the right wheel"), "{answer}");
}

#[test]
fn each_dual_has_its_inflation_and_radius() {
    let model = demo("trailer-152-thin-dual");
    let share = |change: &[&str]| {
        let mut arguments = vec!["tire", &model, "--case", "rated-load", "--json"];
        change.iter().for_each(|change| arguments.extend(["--set", change]));
        number(&json(&arguments)["cases"][0]["wheels"]["left"]["tires"][1]["share"])
    };
    let alike = share(&[]);
    assert!(share(&["wheel[0].inner_inflation=500 kPa"]) < alike - 0.05);
    assert!(share(&["wheel[0].inflation=600 kPa", "wheel[0].inner_inflation=760 kPa"]) > alike + 0.03);
    assert!(share(&["wheel[0].outer_radius=514 mm", "wheel[0].inner_radius=510 mm"]) < alike - 0.03);
}

#[test]
fn tires_that_cannot_be_are_refused_with_what_to_do() {
    for (line, said) in [
        ("inflation = \"-5 kPa\"\n", "inflation"),
        ("outer_radius = \"514 mm\"\n", "`inner_radius` is missing"),
        ("tire_tilt_share = 1.5\n", "tire_tilt_share"),
    ] {
        let run = on_text("tire", &changed("mass = \"190 kg\"\n", &format!("mass = \"190 kg\"\n{line}")));
        assert_eq!(run.code, 2, "{line}");
        assert!(run.err.contains(said), "{line}\n{}", run.err);
    }
    let stated = "[running]\nduty = \"stated\"\n";
    let parts = "[[running.duty_part]]\nshare = 0.6\nside_force = 0.03\n[[running.duty_part]]\nshare = 0.3\n";
    for (text, said) in [
        (stated.to_owned(), "a stated duty needs its parts"),
        (parts.to_owned(), "the duty is not `stated`"),
        (format!("{stated}{parts}"), "the shares of a duty sum to 0.9"),
        ("[running]\nduty = \"long-haul\"\n".to_owned(), "line-haul"),
        ("[running]\nskew = \"9 deg\"\n".to_owned(), "skew"),
    ] {
        let run = on_text("tire", &changed("[[seat]]", &format!("{text}\n[[seat]]")));
        assert_eq!(run.code, 2, "{text}");
        assert!(run.err.contains(said), "{text}\n{}", run.err);
    }
}
