//! From a tape measure to the first answers: questions, comparisons, files named in short.

use tempfile::TempDir;

use crate::program::{axlebow_in, axlebow_told, demo};

#[test]
fn guided_questions_ask_again_explain_and_write_the_file() {
    let folder = TempDir::new().expect("a folder");
    let answers = "boat\n?\ntrailer\n\n\n";
    let run = axlebow_told(folder.path(), &["start", "--guided", "-o", "mine.toml"], answers);
    assert_eq!(run.code, 0, "{}", run.err);
    for words in ["accepted: trailer or drive; try again", "A trailer axle is a plain tube", "still typical"]
    {
        assert!(run.err.contains(words), "{words}: {}", run.err);
    }
    let flex = axlebow_in(folder.path(), &["flex", "mine", "--case", "rated-load"]);
    let answer = flex.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        answer.contains("an estimate, for the outside size, the wall, the place of the wheels, the place of the seats and the load are typical"),
        "{answer}"
    );
    let again = axlebow_told(folder.path(), &["start", "mine", "--guided"], "");
    assert!(again.code == 2 && again.err.contains("mine.toml exists"), "{}", again.err);
    assert!(!again.err.contains("1 of 8"), "nothing is asked in vain: {}", again.err);
}

#[test]
fn a_measured_axle_is_no_estimate() {
    let run =
        axlebow_in(TempDir::new().expect("a folder").path(), &["flex", &demo("trailer-127-thick-dual")]);
    assert!(!run.out.contains("estimate") && run.out.contains("Next: `axlebow tire`"), "{}", run.out);
}

#[test]
fn axles_compared_are_drawn_one_over_another() {
    let folder = TempDir::new().expect("a folder");
    let picture = |case: &str| {
        let (thin, thick) = (demo("trailer-152-thin-dual"), demo("trailer-127-thick-dual"));
        let arguments = ["flex", &thick, "--case", case, "--against", &thin, "--plot", "both.svg"];
        let run = axlebow_in(folder.path(), &arguments);
        assert_eq!(run.code, 0, "{}", run.err);
        std::fs::read_to_string(folder.path().join("both.svg")).expect("the picture")
    };
    let alike = picture("rated-load");
    for words in [
        "trailer-152-thin-dual leans its tires 9 % less than trailer-127-thick-dual",
        "the left end, which the right mirrors",
    ] {
        assert!(alike.contains(words), "{words}");
    }
    let apart = picture("side-load");
    assert!(apart.contains("both ends") && apart.contains("left in 0."), "{apart}");
    let tires = |picture: &str| picture.matches("rotate(").count();
    assert_eq!(tires(&apart), 2 * tires(&alike), "both ends of each axle");
}

/// The wear over upright is that of the table: 1.284 and 1.251 times, as the changelog has them.
#[test]
fn a_map_of_tires_shows_what_is_over_upright_and_outlines_the_least() {
    let folder = TempDir::new().expect("a folder");
    let (thin, thick) = (demo("trailer-152-thin-dual"), demo("trailer-127-thick-dual"));
    let run = axlebow_in(folder.path(), &["tire", &thick, &thin, "--plot", "tires.svg"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let picture = std::fs::read_to_string(folder.path().join("tires.svg")).expect("the picture");
    let upright = "Inner shoulders wear +25 % to +28 % against upright";
    assert!(run.out.contains("1.251") && picture.contains(upright), "{}", run.out);
    assert!(
        picture.contains("Least: 152 mm thin-wall trailer tube")
            && picture.matches("stroke-width=\"5\"").count() == 1
    );
}

#[test]
fn files_may_be_named_without_their_ending_and_missing_ones_show_beside_other_problems() {
    let folder = TempDir::new().expect("a folder");
    std::fs::copy(demo("trailer-127-thick-dual"), folder.path().join("own.toml")).expect("copied");
    let study = |model: &str, wall: &str| {
        format!(
            "name = \"walls\"\nkind = \"sweep\"\nmodel = \"{model}\"\ncase = \"rated-load\"\nshow = [\"camber-change\"]\n\
             [[vary]]\npath = \"tube.wall\"\nvalues = [\"15 mm\", \"16 mm\"]\n[[limit]]\nof = \"axle-mass\"\nmost = \"{wall}\"\n"
        )
    };
    std::fs::write(folder.path().join("walls.toml"), study("own", "100 kg")).expect("written");
    let run = axlebow_in(folder.path(), &["study", "walls"]);
    assert_eq!(run.code, 0, "{}", run.err);
    let wrong = study("other", "100 kg").replace("name = \"walls\"", "name = 3");
    std::fs::write(folder.path().join("wrong.toml"), wrong).expect("written");
    let run = axlebow_in(folder.path(), &["study", "wrong"]);
    assert!(
        run.code == 2 && run.err.contains("`name` cannot be") && run.err.contains("\"other\""),
        "{}",
        run.err
    );
}

#[test]
fn two_axles_move_on_one_page() {
    let folder = TempDir::new().expect("a folder");
    let (thin, thick) = (demo("trailer-152-thin-dual"), demo("trailer-127-thick-dual"));
    let ride =
        ["ride", &thick, "--over", "half-sine-bump", "--reduced", "--animate", "both.html", "--frames", "20"];
    let run = axlebow_in(folder.path(), &[&ride[..], &["--against", &thin]].concat());
    assert_eq!(run.code, 0, "{}", run.err);
    let page = std::fs::read_to_string(folder.path().join("both.html")).expect("the page");
    let (_, document) = page.split_once(r#"id="document">"#).expect("a document");
    let document: serde_json::Value =
        serde_json::from_str(document.split_once("</script>").expect("its end").0).expect("JSON");
    let (own, other) = (&document["scene"], &document["other"]["scene"]);
    for key in ["scale", "level", "height_factor", "flex_factor"] {
        assert_eq!(own[key], other[key], "{key}");
    }
    assert_ne!(own["outline"], other["outline"]);
    assert_eq!(document["frames"]["time"], document["other"]["frames"]["time"]);
    assert!(page.contains(r#"id="other-scene""#));
}
