//! Stiffeners of a file that do not fit: each is refused on the line that is at fault.

use crate::program::{Run, axlebow, axlebow_in, demo, on_text, root};

/// The demo axle with an angle on top, one text of its file changed.
fn with(from: &str, to: &str) -> Run {
    let text = std::fs::read_to_string(demo("trailer-152-thin-dual-angle")).expect("the demo model");
    assert!(text.contains(from), "{from}");
    on_text("flex", text.replacen(from, to, 1).as_bytes())
}

/// The same with a second stiffener.
fn beside(second: &str) -> Run {
    with("[loads]", &format!("[[stiffener]]\n{second}\nweld_leg = \"5 mm\"\n\n[loads]"))
}

/// The run was refused, the words are in its message, and the underlined line holds `line`.
fn refused(run: &Run, line: &str, words: &[&str]) {
    assert_eq!(run.code, 2, "out: {}\nerr: {}", run.out, run.err);
    let shown = run.err.lines().any(|own| own.contains(" | ") && own.contains(line));
    assert!(shown, "`{line}` is not shown in\n{}", run.err);
    for word in words {
        assert!(run.err.contains(word), "`{word}` missing in\n{}", run.err);
    }
}

#[test]
fn an_outline_that_crosses_itself_or_runs_clockwise_is_refused_at_its_corners() {
    let outline = |corners: &str| {
        beside(&format!(
            "name = \"own\"\nshape = \"outline\"\nclock = \"180 deg\"\nfrom = \"-0.2 m\"\nto = \"0.2 m\"\ncorners = {corners}"
        ))
    };
    let crossing = r#"[["-20 mm", "0 mm"], ["20 mm", "30 mm"], ["20 mm", "0 mm"], ["-20 mm", "40 mm"]]"#;
    refused(&outline(crossing), "corners =", &["crosses or touches itself"]);
    let clockwise = r#"[["-20 mm", "0 mm"], ["-20 mm", "30 mm"], ["20 mm", "30 mm"], ["20 mm", "0 mm"]]"#;
    refused(&outline(clockwise), "corners =", &["clockwise", "1200 mm²", "accepted is counter-clockwise"]);
    refused(&outline(r#"[["-20 mm", 0], ["20 mm", "0 mm"]]"#), "corners =", &["unit", "mm"]);
    refused(&outline(r#"[["-20 mm"], ["20 mm", "0 mm"]]"#), "corners =", &["corners[0]", "two lengths"]);
}

/// A 50 by 40 mm hollow bar below the tube, its wall 4 mm.
const HOLLOW: &str = r#"name = "hollow"
shape = "outline"
clock = "180 deg"
from = "-0.2 m"
to = "0.2 m"
corners = [["-25 mm", "0 mm"], ["25 mm", "0 mm"], ["25 mm", "40 mm"], ["-25 mm", "40 mm"]]
weld_leg = "5 mm"
[[stiffener.hole]]
corners = [["-21 mm", "4 mm"], ["21 mm", "4 mm"], ["21 mm", "36 mm"], ["-21 mm", "36 mm"]]
"#;

#[test]
fn an_outline_may_have_holes_and_a_hole_past_its_edge_is_refused() {
    let with_hollow = |stiffener: &str| with("[loads]", &format!("[[stiffener]]\n{stiffener}\n[loads]"));
    let run = with_hollow(HOLLOW);
    assert_eq!(run.code, 0, "{}", run.err);
    let past = HOLLOW.replace("\"36 mm\"", "\"46 mm\"");
    refused(&with_hollow(&past), "corners =", &["hole 1 reaches the outside edge"]);
    let flat = "name = \"flat\"\nshape = \"flat\"\nsize = \"FL50x8\"\nfrom = \"-0.2 m\"\nto = \"0.2 m\"\n\
                weld_leg = \"5 mm\"\n[[stiffener.hole]]\ncorners = [[\"0 mm\", \"0 mm\"]]";
    refused(&with_hollow(flat), "[[stiffener.hole]]", &["`hole` is given beside a standard `size`"]);
}

#[test]
fn an_entry_of_a_list_goes_by_its_name() {
    let model = demo("trailer-152-thin-dual-angle");
    let by = |path: &str| {
        axlebow(&["flex", &model, "--case", "rated-load", "--set", &format!("{path}.length=400 mm")])
    };
    let (place, name) = (by("stiffener[0]"), by("stiffener[top angle]"));
    assert_eq!((place.code, name.code), (0, 0), "{}", name.err);
    assert_eq!(place.out.replace("stiffener[0]", "stiffener[top angle]"), name.out);
    let unknown = by("stiffener[top angel]");
    assert_eq!(unknown.code, 2);
    assert!(unknown.err.contains("no stiffener has that name; accepted: top angle"), "{}", unknown.err);
    assert!(unknown.err.contains("did you mean `top angle`?"), "{}", unknown.err);
}

#[test]
fn stiffeners_that_overlap_or_float_are_refused() {
    let flat = "name = \"flat\"\nshape = \"flat\"\nsize = \"FL50x8\"\nfrom = \"-0.2 m\"\nto = \"0.2 m\"";
    let sleeve = "name = \"loose\"\nshape = \"full-sleeve\"\nthickness = \"5 mm\"\nbore = \"160 mm\"\n\
                  from = \"-0.2 m\"\nto = \"0.2 m\"";
    refused(
        &beside(sleeve),
        "bore =",
        &["sleeve loose has a bore of 160.0 mm on a tube of 152.4 mm", "pack it"],
    );
    let metal = "\n[stiffener.material]\nelastic_modulus = \"70 GPa\"\npoisson_ratio = 0.33\ndensity = \"2700 kg/m3\"";
    let aluminium = with(
        "[loads]",
        &format!("[[stiffener]]\n{flat}\nclock = \"180 deg\"\nweld_leg = \"5 mm\"{metal}\n\n[loads]"),
    );
    refused(
        &aluminium,
        "[stiffener.material]",
        &["flat and the axle are of unlike metals", "70 against 200 GPa"],
    );
    let drawn = "name = \"own\"\nshape = \"outline\"\nclock = \"180 deg\"\nfrom = \"-0.2 m\"\nto = \"0.2 m\"\n\
                 corners = [[\"-20 mm\", \"5 mm\"], [\"20 mm\", \"5 mm\"], [\"0 mm\", \"30 mm\"]]";
    refused(&beside(drawn), "corners =", &["drawn 5.0 mm clear of the wall", "lower its corners by 5.0 mm"]);
    refused(&beside(&format!("{flat}\nclock = \"20 deg\"")), "clock =", &["top angle and flat overlap by"]);
    let wide = "name = \"wide\"\nshape = \"channel\"\nheight = \"240 mm\"\nwidth = \"50 mm\"\nweb = \"6 mm\"\nflange = \"8 mm\"\n\
                clock = \"180 deg\"\nfrom = \"-0.2 m\"\nto = \"0.2 m\"";
    refused(&beside(wide), "shape = \"channel\"", &["stiffener wide does not sit on the axle"]);
    let tight = "name = \"tight\"\nshape = \"full-sleeve\"\nthickness = \"5 mm\"\nbore = \"150 mm\"\n\
                 from = \"-0.2 m\"\nto = \"0.2 m\"";
    refused(&beside(tight), "shape = \"full-sleeve\"", &["tube and tight overlap by 570"]);
    let again = flat.replace("\"flat\"\nshape", "\"top angle\"\nshape");
    refused(&beside(&again), "name = \"top angle\"", &["two stiffeners are named top angle"]);
}

#[test]
fn a_stiffener_past_the_tube_or_into_seat_or_keep_out_is_refused_by_how_much() {
    refused(
        &with(r#"length = "830 mm""#, r#"length = "900 mm""#),
        r#"length = "900 mm""#,
        &["stiffener top angle runs 10 mm into the seat, which begins 440 mm", "left", "right"],
    );
    refused(
        &with(r#"length = "830 mm""#, r#"length = "860 mm""#),
        r#"length = "860 mm""#,
        &["runs 15 mm into the keep-out beside the seat, which begins 415 mm"],
    );
    let outboard = |to: &str| {
        with("length = \"830 mm\"\ncenter = \"0 mm\"", &format!("from = \"560 mm\"\nto = \"{to}\""))
    };
    refused(&outboard("780 mm"), "to =", &["15 mm into the keep-out beside the spindle", "765 mm"]);
    refused(&outboard("860 mm"), "to =", &["20 mm into the spindle", "840 mm"]);
    refused(&outboard("500 mm"), "to =", &["nothing is between them"]);
}

#[test]
fn welds_and_ends_that_do_not_fit_are_refused() {
    let stitched = |length: &str, pitch: &str| {
        let keys = format!("weld = \"stitched\"\nstitch_length = \"{length}\"\nstitch_pitch = \"{pitch}\"");
        with("weld = \"continuous\"", &keys)
    };
    refused(&stitched("80 mm", "60 mm"), "stitch_length", &["20 mm more than the 60 mm"]);
    refused(&stitched("900 mm", "1 m"), "stitch_length", &["70 mm more than the 830 mm"]);
    refused(
        &with("weld = \"continuous\"", "weld = \"stitched\""),
        "weld =",
        &["stitch_length", "stitch_pitch"],
    );
    refused(&with("end_length = \"60 mm\"", "end_length = \"500 mm\""), "end_length", &["170 mm more"]);
    refused(&with("end = \"tapered\"\n", ""), "end_length", &["the ends are square"]);
}

#[test]
fn sizes_name_what_is_near_or_missing() {
    let size = |to: &str| with("size = \"L75x75x8\"", to);
    refused(&size("size = \"L75x75x9\""), "size =", &["no standard size", "L75x75x8"]);
    refused(&size("size = \"FL50x8\""), "size =", &["FL50x8 is of another shape, flat"]);
    refused(&size("width = \"75 mm\""), "shape =", &["needs its `height`", "needs its `thickness`"]);
    refused(&size("size = \"L75x75x8\"\nweb = \"8 mm\""), "web =", &["beside a standard `size`"]);
    refused(&with("toes-down", "on-edge"), "orientation =", &["angle", "toes-down, leg-down, back-up"]);
}

#[test]
fn keys_of_a_stiffener_are_set_by_their_path() {
    let model = demo("trailer-152-thin-dual-angle");
    let run =
        axlebow(&["flex", &model, "--json", "--set", "stiffener[0].length=400 mm", "--case", "rated-load"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let run = axlebow(&["flex", &model, "--set", "stiffener[1].length=400 mm"]);
    assert!(run.code == 2 && run.err.contains("stiffener[1]"), "{}", run.err);
}

#[test]
fn every_shape_is_read_and_solved() {
    let bodies = [
        "shape = \"flat\"\nsize = \"FL50x8\"\norientation = \"lying\"",
        "shape = \"tee\"\nheight = \"50 mm\"\nwidth = \"60 mm\"\nweb = \"8 mm\"\nflange = \"8 mm\"",
        "shape = \"channel\"\nsize = \"UPE80\"",
        "shape = \"half-pipe\"\nthickness = \"5 mm\"\nclock = \"180 deg\"",
        "shape = \"full-sleeve\"\nthickness = \"4 mm\"",
        "shape = \"outline\"\ncorners = [[\"-20 mm\", \"0 mm\"], [\"20 mm\", \"0 mm\"], [\"0 mm\", \"30 mm\"]]",
    ];
    let text = std::fs::read_to_string(demo("trailer-152-thin-dual")).expect("the demo model");
    for body in bodies {
        let table = format!(
            "[[stiffener]]\nname = \"one\"\n{body}\nfrom = \"-0.3 m\"\nto = \"0.2 m\"\nweld_leg = \"5 mm\"\n\n[loads]"
        );
        let run = on_text("flex", text.replacen("[loads]", &table, 1).as_bytes());
        assert_eq!(run.code, 0, "{body}: {}", run.err);
    }
}

#[test]
fn studies_of_stiffeners_rank_their_designs_and_show_the_cautions() {
    let study = |name: &str| root().join("studies").join(name).display().to_string();
    for (name, title) in [
        ("same-kilograms.toml", "Ranked by camber removed per mass"),
        ("stiffener-size-length.toml", "Ranked by camber removed, largest first"),
    ] {
        let run = axlebow(&["study", &study(name), "--coarse", "2", "--units", "us"]);
        assert_eq!(run.code, 0, "{}", run.err);
        assert!(run.out.contains(title) && run.out.contains("can void its rating"), "{}", run.out);
        assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
    }
    let misspelt = axlebow(&["study", &study("wall-sweep.toml"), "--show", "camber-removd"]);
    assert!(misspelt.code == 2 && misspelt.err.contains("camber-removed"), "{}", misspelt.err);
}

#[test]
fn sections_with_stiffeners_are_tabled_drawn_and_stressed() {
    let model = demo("trailer-152-thin-dual-angle");
    let folder = tempfile::TempDir::new().expect("a folder");
    let picture = folder.path().join("sections.svg").display().to_string();
    for (units, stress) in [("si", "stress in the stiffener, MPa"), ("us", "stress in the stiffener, ksi")] {
        let run = axlebow(&["section", &model, "--case", "rated-load", "--units", units, "--plot", &picture]);
        assert_eq!(run.code, 0, "{}", run.err);
        for words in ["+ top angle", stress, "centroid, up", "can void its rating"] {
            assert!(run.out.contains(words), "{words}: {}", run.out);
        }
        let drawn = std::fs::read_to_string(&picture).expect("the picture");
        assert!(drawn.contains("tube + top angle") && drawn.contains("at most bending, y"));
    }
    let run = axlebow(&["section", &model, "--case", "rated-load", "--json"]);
    let document: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
    let section = &document["stiffened_sections"][0];
    let points = section["stress"]["points"].as_array().expect("points");
    let stress = |part: &str, z: f64| {
        let at = |point: &&serde_json::Value| {
            point["part"] == part && (point["z_m"].as_f64().expect("a place") - z).abs() < 1e-9
        };
        points.iter().find(at).and_then(|point| point["stress_pa"].as_f64()).expect("a stress")
    };
    // Between the seats the axle sags: the top is pressed, the bottom pulled; the heel lies farthest out.
    assert!(stress("tube", -0.0762) > 0.0 && stress("tube", 0.0762) < 0.0, "{section}");
    assert!(
        points.iter().all(|point| point["stress_pa"].as_f64() >= points[10]["stress_pa"].as_f64()),
        "{section}"
    );
    assert_eq!(document["cautions"].as_array().map(Vec::len), Some(5));
    let bare = axlebow(&["section", &demo("trailer-152-thin-dual")]);
    assert!(!bare.out.contains("void its rating"), "{}", bare.out);
    let wrong = axlebow(&["section", &model, "--case", "rated"]);
    assert!(wrong.code == 2 && wrong.err.contains("rated-load"), "{}", wrong.err);
}

#[test]
fn sections_with_one_and_with_two_stiffeners_stand_in_one_table() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let second = "[[stiffener]]\nname = \"flat below\"\nshape = \"flat\"\nsize = \"FL50x8\"\nclock = \"180 deg\"\n\
                  from = \"-0.2 m\"\nto = \"0.1 m\"\nweld_leg = \"5 mm\"\n\n[loads]";
    let text = std::fs::read_to_string(demo("trailer-152-thin-dual-angle")).expect("the demo model");
    std::fs::write(folder.path().join("two.toml"), text.replacen("[loads]", second, 1)).expect("the file");
    let run = axlebow_in(folder.path(), &["section", "two.toml", "--case", "side-load", "--plot", "two.svg"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let row = run.out.lines().find(|line| line.contains("stress in stiffener 2")).expect("a row");
    assert_eq!(row.matches(" to ").count(), 1, "{row}");
    assert!(run.out.lines().all(|line| line.chars().count() <= 100), "{}", run.out);
}

#[test]
fn studies_give_the_answers_of_flex_and_its_upper_bound_where_it_is_asked_for() {
    let study = root().join("studies/stiffener-size-length.toml").display().to_string();
    let asked = ["--coarse", "2", "--show", "composite-camber-change", "--show", "weld-peak-force"];
    let run = axlebow(&[&["study", &study], &asked[..]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(run.out.contains("full composite") && run.out.contains("N/mm"), "{}", run.out);
    let results = |arguments: &[&str]| {
        let run = axlebow(&[&["study", &study, "--json"], arguments].concat());
        let document: serde_json::Value = serde_json::from_str(&run.out).expect("JSON");
        let rows = document["rows"].as_array().expect("rows");
        let last = rows.iter().rev().find(|row| row["variant"] == "angle 75 × 75 × 8 mm").expect("a row");
        last["results"]["case"].clone()
    };
    assert!(results(&["--coarse", "2"])["weld_peak_force_n_per_m"].is_null());
    let given = results(&asked);
    let set = ["stiffener[0].clock=180 deg", "stiffener[0].length=830 mm"];
    let model = demo("trailer-152-thin-dual-angle");
    let flex = axlebow(&["flex", &model, "--json", "--case", "rated-load", "--set", set[0], "--set", set[1]]);
    let document: serde_json::Value = serde_json::from_str(&flex.out).expect("JSON");
    let stiffening = &document["cases"][0]["stiffening"];
    let number = |value: &serde_json::Value| value.as_f64().expect("a number");
    let near = |a: f64, b: f64, share: f64| assert!((a / b - 1.0).abs() < share, "{a} {b}");
    near(number(&given["camber_change_rad"]), number(&stiffening["camber_change_tied_rad"]), 1e-9);
    near(
        number(&given["composite_camber_change_rad"]),
        number(&stiffening["camber_change_composite_rad"]),
        1e-9,
    );
    let peak = &stiffening["stiffeners"][0]["peak_weld_force"];
    let part = |key: &str| number(&peak[key]);
    let force = part("along_n_per_m").hypot(part("across_n_per_m")).hypot(part("outward_n_per_m"));
    // The force is a stiff weld times the small difference of two motions: rounding takes digits.
    near(number(&given["weld_peak_force_n_per_m"]), force, 1e-7);
}

#[test]
fn the_picture_of_a_stiffened_axle_has_the_force_of_its_weld() {
    let folder = tempfile::TempDir::new().expect("a folder");
    for (model, unit, words) in [
        ("trailer-152-thin-dual-angle", "si", "works in full over the"),
        ("trailer-152-thin-dual-angle-stitched", "us", "lbf/in"),
    ] {
        let run = axlebow_in(folder.path(), &["flex", &demo(model), "--units", unit, "--plot", "flex.svg"]);
        assert_eq!(run.code, 0, "{}", run.err);
        let drawn = std::fs::read_to_string(folder.path().join("flex.svg")).expect("the picture");
        assert!(drawn.contains("Force of the welds") && drawn.contains(words), "{words}");
    }
}

/// Every angle that a study puts on the demo's tube has a leg that its thickness takes.
#[test]
fn the_legs_of_the_studies_suit_their_angles() {
    let model = demo("trailer-152-thin-dual-angle");
    let mut count = 0;
    for study in ["stiffener-catalogue", "stiffener-size-length"] {
        let text = std::fs::read_to_string(root().join(format!("studies/{study}.toml"))).expect("the study");
        for change in text.lines().filter(|line| line.starts_with("change = {")) {
            let words: Vec<&str> = change.split('"').skip(1).step_by(2).collect();
            let set: Vec<String> = words.chunks(2).map(|pair| format!("{}={}", pair[0], pair[1])).collect();
            let mut arguments = vec!["strength", model.as_str(), "--case", "rated-load"];
            set.iter().for_each(|set| arguments.extend(["--set", set]));
            let run = axlebow(&arguments);
            let failing = run.out.lines().find(|line| line.contains("weld leg") && line.contains("FAILS"));
            assert!(run.out.contains("weld leg") && failing.is_none(), "{study} {set:?}: {failing:?}");
            count += 1;
        }
    }
    assert_eq!(count, 6);
}
