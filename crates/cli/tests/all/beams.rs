//! `axlebow beam`.

use crate::program::{axlebow, axlebow_in, root};

/// A text with one blank between its words, wherever its lines end.
fn flowing(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn beam(name: &str) -> String {
    root().join(format!("studies/textbook/{name}.toml")).display().to_string()
}

#[test]
fn a_beam_names_its_handbook_case_and_the_order_of_its_elements() {
    let file = beam("cantilever-uniform-load");
    let hermite = axlebow(&["beam", &file, "--element", "hermite", "--elements", "1,2,4"]);
    assert_eq!(hermite.code, 0, "{}", hermite.err);
    for words in [
        "The beam sags 0.0609 in",
        "It meets all 2 expected values.",
        "cantilever under a uniform load",
        "w L⁴/(8 E I)",
        "4.00",
    ] {
        assert!(flowing(&hermite.out).contains(words), "{words}: {}", hermite.out);
    }
}

#[test]
fn a_missed_value_a_mechanism_and_an_element_that_cannot_be_have_their_exit_codes() {
    let file = beam("cantilever-end-force");
    let missed = axlebow(&["beam", &file, "--set", "check[0].deflection=-0.5 in"]);
    assert_eq!(missed.code, 1, "{}", missed.err);
    assert!(flowing(&missed.out).contains("1 of 3 expected values missed: deflection."), "{}", missed.out);
    let loose = axlebow(&["beam", &file, "--set", "support.kind=pinned"]);
    assert_eq!(loose.code, 2, "{}", loose.out);
    assert!(
        loose.err.contains("nothing holds the beam against turning about its only support at 0"),
        "{}",
        loose.err
    );
    let stiff = axlebow(&["beam", &file, "--element", "two-node"]);
    assert_eq!(stiff.code, 2);
    assert!(stiff.err.contains("choose Timoshenko theory"), "{}", stiff.err);
}

#[test]
fn pictures_page_and_table_of_a_beam_are_written() {
    let folder = tempfile::TempDir::new().expect("a folder");
    let file = beam("supported-off-center-force");
    let outputs =
        ["--plot", "a.svg", "--error-plot", "b.svg", "--page", "c.html", "--csv", "d.csv", "--plain-csv"];
    let run = axlebow_in(
        folder.path(),
        &[
            &[
                "beam",
                file.as_str(),
                "--set",
                "theory=timoshenko",
                "--element",
                "two-node",
                "--elements",
                "2,4,8",
            ],
            &outputs[..],
        ]
        .concat(),
    );
    assert_eq!(run.code, 1, "shear is not what the file expects: {}", run.err);
    let text = |name: &str| std::fs::read_to_string(folder.path().join(name)).expect("an output");
    for words in ["Shear force", "Bending moment", "10000 lbf", "Timoshenko theory"] {
        assert!(text("a.svg").contains(words), "{words}");
    }
    assert!(text("b.svg").contains("Relative error") && text("b.svg").contains("order 1.99"));
    assert_eq!(text("c.html").matches("<svg").count(), 2);
    assert!(text("d.csv").starts_with("y_m,deflection_m,slope_rad,shear_n,moment_nm,stress_pa\r\n0.0,"));
}
