//! Each command does what it says.

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{axlebow, axlebow_in, demo, root};

fn json(arguments: &[&str]) -> Value {
    let run = axlebow(arguments);
    assert_eq!(run.code, 0, "{}", run.err);
    serde_json::from_str(&run.out).expect("one JSON document")
}

#[test]
fn flex_prints_a_line_for_each_wheel_of_each_case() {
    let run = axlebow(&["flex", &demo("trailer-152-thin-dual")]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    for case in
        ["rated-load", "unladen", "one-wheel-raised", "side-load", "braking", "curb", "braking-in-a-bend"]
    {
        assert!(run.out.contains(case), "{case}\n{}", run.out);
    }
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    assert!(run.out.contains("Demonstration data, invented"));
}

#[test]
fn flex_json_has_the_documented_fields_and_a_split_that_sums() {
    let play = "wheel_end[0].endplay=0.2 mm";
    let document = json(&["flex", &demo("trailer-127-thick-wide-base-outset"), "--set", play, "--json"]);
    assert_eq!(document["schema"], "axlebow/flex/2");
    for key in ["model", "axle_mass_kg", "unsprung_mass_kg", "cases", "assumed", "warnings"] {
        assert!(!document[key].is_null(), "{key}");
    }
    for case in document["cases"].as_array().expect("cases") {
        for key in ["bearings", "stations", "peak_stress_pa", "bow_m", "equilibrium_residual"] {
            assert!(!case[key].is_null(), "{key}");
        }
        for side in ["left", "right"] {
            let wheel = &case["wheels"][side];
            let part = |name: &str| wheel["split"][format!("{name}_rad")].as_f64().expect("a number");
            let sum =
                ["bending", "shear", "seat", "bearing", "disc", "clearance"].map(part).iter().sum::<f64>();
            let total = wheel["camber_change_rad"].as_f64().expect("a number");
            assert!((sum - total).abs() < 1e-9 * total.abs().max(1e-3), "{}: {sum} {total}", case["name"]);
        }
    }
    let station = &document["cases"][0]["stations"][0];
    for key in ["name", "y_m", "uz_m", "rx_rad", "moment_x_nm", "shear_z_n", "torsion_nm", "stress_pa"] {
        assert!(!station[key].is_null(), "{key}");
    }
}

#[test]
fn same_input_gives_the_same_bytes() {
    let arguments = ["flex", &demo("drive-housing-11-dual"), "--json"];
    assert_eq!(axlebow(&arguments).out, axlebow(&arguments).out);
}

#[test]
fn thin_wall_and_thick_wall_can_be_told_apart_by_one_change() {
    let camber = |wall: &str| {
        let change = format!("tube.wall={wall}");
        let document = json(&["flex", &demo("trailer-127-thick-dual"), "--json", "--set", &change]);
        document["cases"][0]["wheels"]["left"]["camber_change_rad"].as_f64().expect("a number")
    };
    assert!(camber("9 mm") < camber("12.7 mm"));
    assert!(camber("12.7 mm") < 0.0);
}

#[test]
fn units_choose_how_tables_read() {
    let run = axlebow(&["flex", &demo("trailer-127-thick-dual"), "--units", "us"]);
    assert!(run.out.contains("lbf") && run.out.contains("ksi"), "{}", run.out);
}

#[test]
fn pictures_are_written_in_the_kind_that_their_name_says() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-127-thick-dual");
    for (command, name, head) in [
        ("flex", "flex.svg", &b"<svg"[..]),
        ("flex", "flex.png", &b"\x89PNG"[..]),
        ("section", "section.svg", &b"<svg"[..]),
    ] {
        let run = axlebow_in(folder.path(), &[command, &model, "--plot", name]);
        assert_eq!(run.code, 0, "{}", run.err);
        assert!(run.err.contains(name), "{}", run.err);
        let bytes = std::fs::read(folder.path().join(name)).expect("the picture");
        let start = &bytes[..bytes.len().min(200)];
        assert!(start.windows(head.len()).any(|window| window == head), "{name}");
    }
    let run = axlebow_in(folder.path(), &["flex", &model, "--plot", "flex.gif"]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains(".svg") && !folder.path().join("flex.gif").exists(), "{}", run.err);
}

#[test]
fn a_starter_runs_as_it_is_and_is_not_written_over() {
    let folder = TempDir::new().expect("a folder");
    for kind in ["trailer-tube", "drive-housing"] {
        let made = axlebow_in(folder.path(), &["start", kind, "--kind", kind]);
        assert_eq!(made.code, 0, "{}", made.err);
        let file = format!("{kind}.toml");
        assert_eq!(axlebow_in(folder.path(), &["flex", &file]).code, 0);
        assert_eq!(axlebow_in(folder.path(), &["start", kind, "--kind", kind]).code, 2);
        assert_eq!(axlebow_in(folder.path(), &["start", kind, "--kind", kind, "--force"]).code, 0);
    }
}

#[test]
fn section_prints_every_section() {
    let run = axlebow(&["section", &demo("drive-housing-9.5-dual")]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("housing 1") && run.out.contains("spindle 1"), "{}", run.out);
    let document = json(&["section", &demo("trailer-127-thick-dual"), "--json"]);
    let second = document["sections"][0]["second_moment_x_m4"].as_f64().expect("a number");
    // Round tube 127 × 12.7 mm: π/64·(0.127⁴ − 0.1016⁴).
    assert!((second - 7.539_301_85e-6).abs() < 1e-14, "{second}");
}

#[test]
fn textbook_meets_every_case() {
    let run = axlebow(&["textbook"]);
    assert_eq!(run.code, 0, "{}", run.out);
    assert!(!run.out.contains("MISSED"));
    let document = json(&["textbook", "--json"]);
    let cases = document["cases"].as_array().expect("cases");
    assert!(cases.len() >= 40 && cases.iter().all(|case| case["passed"] == true));
    assert_eq!(axlebow(&["textbook", "no such topic"]).code, 2);
}

#[test]
fn textbook_shows_where_its_references_come_from() {
    let folder = TempDir::new().expect("a folder");
    let run = axlebow_in(
        folder.path(),
        &["textbook", "cantilever", "--formulas", "--csv", "cases.csv", "--plain-csv"],
    );
    assert_eq!(run.code, 0, "{}", run.err);
    for words in ["computed", "reference", "closed form recomputed", "w L⁴/(8 E I)", "w = 100 lbf/in"] {
        assert!(run.out.contains(words), "{words}: {}", run.out);
    }
    assert!(!axlebow(&["textbook", "cantilever"]).out.contains("w L⁴/(8 E I)"));
    let written = std::fs::read_to_string(folder.path().join("cases.csv")).expect("the file");
    let document = json(&["textbook", "cantilever", "--json"]);
    let cases = document["cases"].as_array().expect("cases");
    assert_eq!(written.lines().count(), 1 + cases.len());
    for case in cases {
        for key in ["id", "provenance"] {
            let words = case[key].as_str().expect("words");
            assert!(written.contains(words), "{words}");
        }
        assert!(
            case["formula"].is_string() && case["inputs"].is_string() && case["relative_error"].is_number()
        );
    }
}

#[test]
fn schemas_are_json_schema_documents() {
    for of in [
        "model",
        "study",
        "road",
        "flex",
        "sensitivities",
        "search",
        "modes",
        "ride",
        "response",
        "growth",
        "strength",
        "study-result",
        "tire",
        "tire-result",
    ] {
        let document = json(&["schema", of]);
        assert!(document["$schema"].as_str().is_some_and(|text| text.contains("2020-12")), "{of}");
    }
}

#[test]
fn help_manual_and_completions_come_from_one_definition() {
    for arguments in [&["--help"][..], &["completions", "bash"], &["completions", "man"]] {
        let run = axlebow(arguments);
        assert!(run.code == 0 && run.out.contains("textbook"), "{arguments:?}");
    }
}

#[test]
fn only_the_cases_asked_for_are_run() {
    let document = json(&["flex", &demo("trailer-127-thick-dual"), "--json", "--case", "curb"]);
    assert_eq!(document["cases"].as_array().map(Vec::len), Some(1));
    let run = axlebow(&["flex", &demo("trailer-127-thick-dual"), "--case", "kerb"]);
    assert!(run.code == 2 && run.err.contains("curb"), "{}", run.err);
}

#[test]
fn study_runs_and_writes_its_files() {
    let folder = TempDir::new().expect("a folder");
    let study = crate::program::root().join("studies/wall-sweep.toml").display().to_string();
    let run = axlebow_in(
        folder.path(),
        &["study", &study, "--csv", "sweep.csv", "--plain-csv", "--plot", "sweep.svg"],
    );
    assert_eq!(run.code, 0, "{}", run.err);
    let rows = std::fs::read_to_string(folder.path().join("sweep.csv")).expect("the rows");
    assert!(rows.lines().count() > 40 && folder.path().join("sweep.svg").exists());
    assert_eq!(json(&["study", &study, "--json"])["schema"], "axlebow/study-result/3");
}

#[test]
fn studies_that_ride_run_and_draw() {
    let folder = TempDir::new().expect("a folder");
    let study = |name: &str| crate::program::root().join("studies").join(name).display().to_string();
    let map = study("speed-by-bump.toml");
    let run = axlebow_in(folder.path(), &["study", &map, "--coarse", "2", "--plot", "map.svg"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("peak to peak") && run.out.lines().all(|line| line.chars().count() <= 100));
    let beside = study("thin-thick-over-bumps.toml");
    let run = axlebow_in(folder.path(), &["study", &beside, "--plot", "beside.svg", "--csv", "beside.csv"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("* 127 thick, dual") && run.out.lines().all(|line| line.chars().count() <= 100));
    assert!(["map.svg", "beside.svg", "beside.csv"].iter().all(|name| folder.path().join(name).exists()));
}

#[test]
fn results_to_show_are_checked() {
    let sweep = crate::program::root().join("studies/wall-sweep.toml").display().to_string();
    let run = axlebow(&["study", &sweep, "--coarse", "3", "--show", "bow", "--show", "peak-stress"]);
    assert!(run.code == 0 && run.out.contains("peak stress"), "{}{}", run.out, run.err);
    let run = axlebow(&["study", &sweep, "--show", "bowe"]);
    assert!(run.code == 2 && run.err.contains("did you mean bow?"), "{}", run.err);
    let run = axlebow(&["study", &sweep, "--show", "camber-rms"]);
    assert!(run.code == 2 && run.err.contains("the study has none"), "{}", run.err);
}

#[test]
fn modes_are_named_and_none_is_missed() {
    let document = json(&["modes", &demo("drive-housing-9.5-dual"), "--json"]);
    assert_eq!(document["schema"], "axlebow/modes/2");
    assert_eq!(document["complete"], true);
    let names: Vec<&str> = document["modes"]
        .as_array()
        .expect("modes")
        .iter()
        .filter_map(|mode| mode["name"].as_str())
        .collect();
    for name in ["body bounce", "wheel hop", "axle tramp", "vertical bow", "fore-aft bow"] {
        assert!(names.contains(&name), "{name} in {names:?}");
    }
}

#[test]
fn a_ride_writes_its_histories_and_repeats_to_the_byte() {
    let folder = TempDir::new().expect("a folder");
    let road = crate::program::root().join("models/roads/class-c-road.toml").display().to_string();
    let model = demo("trailer-152-thin-dual");
    let ride = |name: &str| {
        let run = axlebow_in(folder.path(), &["ride", &model, "--over", &road, "--csv", name, "--json"]);
        assert_eq!(run.code, 0, "{}", run.err);
        (run.out, std::fs::read(folder.path().join(name)).expect("the histories"))
    };
    let (first, second) = (ride("a.csv"), ride("b.csv"));
    assert!(first == second && first.1.len() > 100_000);
    let document: Value = serde_json::from_str(&first.0).expect("one JSON document");
    assert_eq!((&document["schema"], &document["complete"]), (&"axlebow/ride/2".into(), &true.into()));
    let run = axlebow(&["ride", &model, "--over", &road, "--speed", "0 km/h"]);
    assert!(run.code == 2 && run.err.contains("speed"), "{}", run.err);
}

#[test]
fn a_ride_shows_its_spectrum_and_moves_on_a_page() {
    let folder = TempDir::new().expect("a folder");
    let road = crate::program::root().join("models/roads/one-wheel-bump.toml").display().to_string();
    let ride = |more: &[&str]| {
        let model = demo("trailer-127-thick-dual");
        axlebow_in(folder.path(), &[&["ride", &model, "--over", &road], more].concat())
    };
    let text = |name: &str| std::fs::read_to_string(folder.path().join(name)).expect(name);
    let files = ["--spectrum", "spectrum.svg", "--animate", "ride.html", "--csv", "ride.csv", "--stations"];
    let run = ride(&files);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(text("spectrum.svg").contains("axle tramp") && text("ride.csv").contains("stress_left_seat_pa"));
    let page = text("ride.html");
    assert!(page.contains("600 frames") && page.len() < 1_000_000, "{}", page.len());
    assert_eq!(ride(&["--animate", "short.html", "--frames", "20"]).code, 0);
    assert!(text("short.html").contains("20 frames"));
    for (wrong, says) in [
        (&["--animate", "ride.gif"][..], ".html"),
        (&["--parquet", "ride.csv"], ".parquet"),
        (&["--stations"], "--csv"),
        (&["--frames", "20"], "--animate"),
    ] {
        let run = ride(wrong);
        assert!(run.code == 2 && run.err.contains(says), "{wrong:?}: {}", run.err);
    }
}

#[test]
fn a_response_names_its_resonances_and_answers_random_roads_only() {
    let road = |name: &str| crate::program::root().join("models/roads").join(name).display().to_string();
    let model = demo("trailer-127-thick-dual");
    let folder = TempDir::new().expect("a folder");
    let over = road("class-c-road.toml");
    let files = ["--csv", "response.csv", "--plot", "response.png"];
    let run = axlebow_in(folder.path(), &[&["response", &model, "--over", &over][..], &files].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("wheel hop") && run.out.contains("Dynamic load coefficient"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    assert!(files.iter().skip(1).step_by(2).all(|name| folder.path().join(name).exists()));
    let document = json(&["response", &model, "--wheels", "left", "--points", "20", "--json"]);
    assert_eq!((&document["schema"], &document["wheels"]), (&"axlebow/response/2".into(), &"left".into()));
    assert!(document["random"].is_null() && document["frequencies_hz"][0] == 0.5);
    let bump = axlebow(&["response", &model, "--over", &road("haversine-bump.toml")]);
    assert!(bump.code == 2 && bump.err.contains("random-road"), "{}", bump.err);
    let bare = axlebow(&["response", &model, "--speed", "80 km/h"]);
    assert!(bare.code == 2 && bare.err.contains("--over"), "{}", bare.err);
    let swapped = axlebow(&["response", &model, "--from", "20", "--to", "10"]);
    assert!(swapped.code == 2 && swapped.err.contains("highest frequency"), "{}", swapped.err);
    let nowhere = axlebow(&["response", &model, "--station", "left-saet"]);
    assert!(nowhere.code == 2 && nowhere.err.contains("left-seat"), "{}", nowhere.err);
}

#[test]
fn cups_are_held_against_the_modes() {
    let run = axlebow(&["cups", &demo("trailer-127-thick-dual"), "--count", "5", "--speed", "65 mph"]);
    assert!(run.code == 0 && run.out.contains("vertical bow") && run.out.contains("490 mm"), "{}", run.out);
    let bare = axlebow(&["cups", "--count", "5", "--speed", "65 mph"]);
    assert!(bare.code == 2 && bare.err.contains("--tire-radius"), "{}", bare.err);
}

#[test]
fn two_axles_stand_side_by_side() {
    let thin = demo("trailer-152-thin-dual");
    let run = axlebow(&["flex", &demo("trailer-127-thick-dual"), "--against", &thin]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("(2) 152 mm thin-wall") && run.out.contains("% of (1)"), "{}", run.out);
}

#[test]
fn a_ride_in_both_bases_says_how_far_they_differ() {
    let road = crate::program::root().join("models/roads/haversine-bump.toml").display().to_string();
    let model = demo("trailer-152-thin-dual");
    let before = ["ride", model.as_str(), "--over", road.as_str()];
    let over = |more: &'static [&'static str]| before.iter().chain(more).copied().collect::<Vec<&str>>();
    let document = json(&over(&["--full", "--reduced", "--json"]));
    let (method, comparison) = (&document["method"], &document["comparison"]);
    assert_eq!((&method["basis"], &comparison["reduced"]["basis"]), (&"full".into(), &"reduced".into()));
    for result in ["camber_peak_to_peak_rad", "largest_load_n", "peak_stress_pa"] {
        let difference = comparison[result]["difference"].as_f64().expect("a number");
        assert!(difference.abs() < 0.01, "{result} {difference}");
    }
    let table = axlebow(&over(&["--full", "--reduced"]));
    assert!(
        table.code == 0 && table.out.contains("Basis") && table.out.contains("difference"),
        "{}\n{}",
        table.out,
        table.err
    );
    assert!(table.out.lines().all(|line| line.chars().count() <= 100), "{}", table.out);
    let alone = json(&over(&["--reduced", "--scheme", "average-acceleration", "--json"]));
    assert_eq!(alone["method"]["scheme"], "average-acceleration");
    assert!(alone["comparison"].is_null() && alone["method"]["basis"] == "reduced");
}

/// Lines of a table with the words and numbers of left and right exchanged.
fn wheel_rows(out: &str) -> Vec<[String; 2]> {
    let wheels = out.lines().skip_while(|line| !line.starts_with("Wheel")).skip(2);
    let rows = wheels.take_while(|line| !line.is_empty() && !line.starts_with("Camber:")).map(|line| {
        let cells: Vec<&str> = line.split_whitespace().collect();
        [cells[cells.len() - 2].to_owned(), cells[cells.len() - 1].to_owned()]
    });
    rows.collect()
}

/// Elimination runs from one end of the axle to the other, so the last bits of the two sides differ (about 1e-9
/// after lift-off); what is printed does not.
#[test]
fn a_mirrored_bump_prints_the_mirrored_table() {
    let folder = TempDir::new().expect("a folder");
    let bump = crate::program::root().join("models/roads/one-wheel-bump.toml");
    let text = std::fs::read_to_string(bump).expect("the road");
    let model = demo("trailer-127-thick-dual");
    let rows = |side: &str| {
        let lines = text.lines().filter(|line| !line.starts_with("wheels"));
        let road =
            lines.map(|line| format!("{line}\n")).collect::<String>() + &format!("wheels = \"{side}\"\n");
        std::fs::write(folder.path().join("road.toml"), road).expect("the road is written");
        let run = axlebow_in(folder.path(), &["ride", &model, "--over", "road.toml"]);
        assert_eq!(run.code, 0, "{}", run.err);
        wheel_rows(&run.out)
    };
    let (left, right) = (rows("left"), rows("right"));
    assert!(left.len() > 10);
    assert_eq!(left, right.into_iter().map(|[a, b]| [b, a]).collect::<Vec<_>>());
}

#[test]
fn any_number_of_threads_gives_the_same_bytes() {
    let root = crate::program::root();
    let road = root.join("models/roads/class-c-road.toml").display().to_string();
    let (study, model) =
        (root.join("studies/wall-sweep.toml").display().to_string(), demo("trailer-152-thin-dual"));
    for arguments in [
        ["ride", &model, "--over", &road, "--reduced", "--json"].as_slice(),
        ["study", &study, "--json"].as_slice(),
    ] {
        let [one, two] = ["1", "2"].map(|threads| crate::program::axlebow_on_threads(threads, arguments));
        assert_eq!(one.code, 0, "{}", one.err);
        assert!(one.out == two.out, "{arguments:?}");
    }
}

#[test]
fn strength_shows_what_governs_with_cautions_and_fails_by_its_exit_code() {
    let model = demo("trailer-152-thin-dual");
    let run = axlebow(&["strength", &model]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("Most of its limit") && run.out.contains("licensed engineer"), "{}", run.out);
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    let strict = axlebow(&["strength", &model, "--safety-factor", "3", "--case", "rated-load", "--all"]);
    assert_eq!(strict.code, 1, "{}", strict.err);
    assert!(strict.out.contains("FAILS"), "{}", strict.out);
    let document = json(&["strength", &model, "--rules", "en", "--json"]);
    assert_eq!((&document["schema"], &document["rules"]), (&"axlebow/strength/3".into(), &"en".into()));
    let refused = axlebow(&["strength", &model, "--safety-factor", "0.5"]);
    assert!(refused.code == 2 && refused.err.contains("1 to 20"), "{}", refused.err);
}

/// A folder with a starter's axle whose numbers are the user's own, as `own.toml`.
fn own_axle() -> TempDir {
    let folder = TempDir::new().expect("a folder");
    assert_eq!(axlebow_in(folder.path(), &["start", "own", "--kind", "trailer-tube"]).code, 0);
    let path = folder.path().join("own.toml");
    let text = std::fs::read_to_string(&path).expect("the model");
    assert!(text.contains("invented = true"));
    std::fs::write(path, text.replace("invented = true", "invented = false")).expect("written");
    folder
}

#[test]
fn a_made_up_road_does_not_make_the_axle_made_up() {
    let (folder, road) = (own_axle(), root().join("models/roads/pothole.toml").display().to_string());
    let ride = ["ride", "own.toml", "--over", &road, "--road", "time_step=10 ms", "--plot", "r.svg"];
    let run = axlebow_in(folder.path(), &ride);
    let picture = std::fs::read_to_string(folder.path().join("r.svg")).expect("the picture");
    for text in [&run.out, &picture] {
        assert!(text.contains("The road is demonstration data, invented."), "{text}");
        assert!(!text.contains("Demonstration data, invented."), "{text}");
        assert!(text.contains("balances only within 1.2 %"), "{text}");
    }
    assert!(!run.err.contains("balances"), "{}", run.err);
    let run = axlebow_in(folder.path(), &[&ride[..4], &["--json"]].concat());
    let document: Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!(document["model"]["invented"], false);
    assert_eq!(document["model"]["invented_inputs"], serde_json::json!(["road"]));
}

#[test]
fn a_result_that_is_not_a_number_stops_neither_table_nor_picture() {
    let folder = own_axle();
    let study = "name = \"odd\"\nkind = \"sweep\"\nmodel = \"own.toml\"\ncase = \"rated-load\"\n\
                 show = [\"axle-mass\", \"odd\"]\n[[variant]]\nname = \"own\"\n[[vary]]\npath = \"tube.wall\"\n\
                 values = [\"9 mm\", \"10 mm\"]\n[[derived]]\nname = \"odd\"\nas = \"ln(axle_mass - axle_mass)\"\n";
    std::fs::write(folder.path().join("s.toml"), study).expect("written");
    let files = ["--plot", "s.svg", "--csv", "s.csv", "--plain-csv"];
    let run = axlebow_in(folder.path(), &[&["study", "s.toml"], &files[..]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    let warning = "2 of 2 designs: the result odd is not a number";
    let joined = run.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(joined.contains(warning) && joined.contains("with tube wall 9 mm"), "{}", run.out);
    let text = |name: &str| std::fs::read_to_string(folder.path().join(name)).expect("a file");
    assert!(
        text("s.csv")
            .lines()
            .skip(1)
            .all(|line| line.ends_with("odd is not a number: ln(axle_mass - axle_mass)"))
    );
    assert!(text("s.svg").contains("No design has a value of odd.") && text("s.svg").contains(warning));
    // Where nothing at all can be drawn, the table is there all the same.
    let run = axlebow_in(folder.path(), &[&["study", "s.toml", "--show", "odd"], &files[..]].concat());
    assert!(run.code == 2 && run.out.contains(warning) && run.err.contains("no points"), "{}", run.err);
    assert!(!folder.path().join("s.csv.work").exists());
}

#[test]
fn start_lists_common_axles_and_writes_one_that_runs_and_says_what_is_typical() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let listed = axlebow_in(folder.path(), &["start"]);
    assert!(listed.code == 0 && listed.out.contains("drive-wide-base-outset"), "{}", listed.out);
    let unsaid = axlebow_in(folder.path(), &["start", "own"]);
    assert!(unsaid.code == 2 && unsaid.err.contains("--like"), "{}", unsaid.err);
    let made = axlebow_in(folder.path(), &["start", "own", "--like", "trailer-5-3-4-inch-duals"]);
    assert!(made.code == 0 && made.err.contains("axlebow flex own.toml"), "{}", made.err);
    let run = axlebow_in(folder.path(), &["flex", "own"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(
        run.out.starts_with("own\nTypical values, not measured on this axle: tube, spindle"),
        "{}",
        run.out
    );
}
