//! Beam files.

use axlebow_beam::{Asked, Load, PeakKind, StopSide, SupportKind, work_out};
use axlebow_model::{BeamFile, Document, read_bytes};

const BEAM: &str = r#"name = "test"
[[span]]
length = "1 m"
section = { shape = "round-tube", od = "100 mm", wall = "10 mm" }
end_section = { shape = "round-tube", od = "80 mm", wall = "8 mm" }
[[span]]
length = "0.5 m"
section = { shape = "box", width = "60 mm", height = "80 mm", wall = "5 mm" }
material = { elastic_modulus = "70 GPa", poisson_ratio = 0.33, density = "2700 kg/m3" }
[[support]]
at = "0 m"
kind = "pinned"
turning_stiffness = "50 kN m/rad"
[[support]]
at = "1.2 m"
kind = "stop-below"
gap = "1 mm"
[[load]]
kind = "force"
at = "1.5 m"
force = "-2 kN"
[[mass]]
at = "1.5 m"
mass = "10 kg"
radius_of_gyration = "100 mm"
[[check]]
name = "tip"
at = "1.5 m"
deflection = "-1 mm"
tolerance = "20 %"
source = "none"
"#;

fn read(text: &str) -> Result<BeamFile, String> {
    BeamFile::from_bytes(text.as_bytes(), "beam.toml").map_err(|problems| problems.render())
}

fn refused(old: &str, new: &str) -> String {
    assert!(BEAM.contains(old), "{old}");
    read(&BEAM.replace(old, new)).map(|_| ()).unwrap_err()
}

fn with_section(section: &str) -> Result<BeamFile, String> {
    let end = "end_section = { shape = \"round-tube\", od = \"80 mm\", wall = \"8 mm\" }\n";
    read(
        &BEAM
            .replace(end, "")
            .replace("{ shape = \"round-tube\", od = \"100 mm\", wall = \"10 mm\" }", section),
    )
}

#[test]
fn a_file_says_what_it_says() {
    let file = read(BEAM).unwrap();
    let line = &file.line;
    assert_eq!(line.length(), 1.5);
    assert_eq!(line.spans()[1].elastic.modulus, 70e9);
    assert!(
        (line.spans()[0].section_at(0.5).fibers.unwrap()[0] - 0.045).abs() < 1e-15,
        "half way of the taper"
    );
    assert_eq!(line.supports()[0].kind, SupportKind::Pinned { settlement: 0.0, turning_stiffness: 50e3 });
    assert_eq!(
        line.supports()[1].kind,
        SupportKind::Stop { side: StopSide::Below, gap: 1e-3, stiffness: None }
    );
    assert_eq!(line.loads(), [Load::Force { at: 1.5, force: -2000.0 }]);
    assert!((line.masses()[0].inertia - 0.1).abs() < 1e-15);
    let check = &file.options.checks[0];
    assert_eq!(check.asked, Asked::Along { kind: PeakKind::Deflection, at: Some(1.5) });
    assert_eq!((check.expected, check.tolerance), (-1e-3, 0.2));
    assert!(file.assumed.iter().any(|used| used.path == "elements"));
}

#[test]
fn a_key_is_changed_by_its_path() {
    let mut document: Document = read_bytes(BEAM.as_bytes(), "beam.toml", &axlebow_model::BEAM).unwrap();
    document.set("span[1].length", "0.7 m").unwrap();
    document.set("load.force", "1 kN").unwrap();
    let file = BeamFile::of(&document).unwrap();
    assert!((file.line.length() - 1.7).abs() < 1e-15);
    assert_eq!(file.line.loads(), [Load::Force { at: 1.5, force: 1000.0 }]);
}

#[test]
fn shapes_have_their_values() {
    // A 60 by 80 mm flat of 10 mm: I = b t³/12; an angle by its standard size.
    let flat = with_section("{ shape = \"flat\", width = \"60 mm\", thickness = \"10 mm\" }").unwrap();
    let values = flat.line.spans()[0].section_at(0.0);
    assert!((values.second_moment / (0.06 * 1e-6 / 12.0) - 1.0).abs() < 1e-12);
    assert!((values.shear_coefficient - 5.0 / 6.0).abs() < 0.12, "{}", values.shear_coefficient);
    let angle = with_section("{ shape = \"angle\", size = \"L3x3x3/8\" }").unwrap();
    let values = angle.line.spans()[0].section_at(0.0);
    // A = 2.11 in², I = 1.75 in⁴, y = 0.884 in: AISC Steel Construction Manual, 15th ed. 2017, Table 1-7, from memory.
    assert!((values.area.unwrap() / (2.11 * 0.0254_f64.powi(2)) - 1.0).abs() < 5e-3);
    assert!((values.second_moment / (1.75 * 0.0254_f64.powi(4)) - 1.0).abs() < 1e-2);
    assert!((values.fibers.unwrap()[1] / (0.884 * 0.0254) - 1.0).abs() < 5e-3);
    let corners =
        "[[\"0 mm\", \"0 mm\"], [\"60 mm\", \"0 mm\"], [\"60 mm\", \"10 mm\"], [\"0 mm\", \"10 mm\"]]";
    let drawn = with_section(&format!("{{ shape = \"outline\", corners = {corners} }}")).unwrap();
    let own = drawn.line.spans()[0].section_at(0.0);
    assert!((own.second_moment / (0.06 * 1e-6 / 12.0) - 1.0).abs() < 1e-12);
    let bare = with_section("{ shape = \"values\", second_moment = \"1e6 mm4\" }").unwrap();
    assert_eq!(bare.line.spans()[0].section_at(0.0).area, None);
}

#[test]
fn thermal_loads_take_the_depth_of_the_section() {
    let load = "[[load]]\nkind = \"thermal\"\ntemperature_difference = 30\n";
    let file = read(&format!("{BEAM}{load}")).unwrap();
    // 12e-6 · 30/0.1 m, along the whole beam.
    let [_, Load::Thermal { from, to, curvature }] = file.line.loads()[..] else { panic!("two loads") };
    assert!((curvature - 12e-6 * 30.0 / 0.1).abs() < 1e-15 && (from, to) == (0.0, 1.5));
}

#[test]
fn distributed_loads_run_over_the_whole_beam_if_nothing_is_said() {
    let load = "[[load]]\nkind = \"distributed\"\nper_length = \"-3 kN/m\"\n[[load]]\nkind = \"weight\"\n";
    let file = read(&format!("{BEAM}{load}")).unwrap();
    assert_eq!(file.line.loads()[1], Load::Distributed { from: 0.0, to: 1.5, start: -3e3, end: -3e3 });
    assert_eq!(file.line.loads()[2], Load::Weight { gravity: 9.806_65 });
}

#[test]
fn keys_go_with_their_kinds() {
    let text = refused("kind = \"stop-below\"", "kind = \"sliding\"");
    assert!(text.contains("support `sliding` has no `gap`") && text.contains("`rotation`"), "{text}");
    let text = refused("force = \"-2 kN\"\n", "");
    assert!(text.contains("load `force` needs its `force`"), "{text}");
    let text = refused("wall = \"5 mm\" }", "od = \"5 mm\" }");
    assert!(
        text.contains("section `box` needs its `wall`") && text.contains("section `box` has no `od`"),
        "{text}"
    );
    let text = refused("kind = \"stop-below\"\ngap = \"1 mm\"", "kind = \"elastic\"");
    assert!(text.contains("an elastic support without a stiffness holds nothing"), "{text}");
    let text = refused("deflection = \"-1 mm\"", "deflection = \"-1 mm\"\nslope = \"1 deg\"");
    assert!(text.contains("check \"tip\" expects 2 values"), "{text}");
    let text = refused("deflection = \"-1 mm\"", "frequency = \"3 Hz\"");
    assert!(text.contains("a check of `frequency` needs its `mode`"), "{text}");
    let text = refused("od = \"80 mm\", wall = \"8 mm\" }", "od = \"80 mm\", wall = \"60 mm\" }");
    assert!(text.contains("wall"), "{text}");
    let text = refused(
        "{ shape = \"round-tube\", od = \"80 mm\", wall = \"8 mm\" }",
        "{ shape = \"flat\", width = \"1 m\", thickness = \"1 mm\" }",
    );
    assert!(text.contains("a taper has no way between sections of shape flat"), "{text}");
}

#[test]
fn places_off_the_beam_have_their_line_and_the_units_of_the_file() {
    let text = refused("at = \"1.5 m\"\nforce", "at = \"1600 mm\"\nforce");
    assert!(
        text.contains("load 1 is at 1600 mm, off the beam") && text.contains("from 0 mm to 1500 mm"),
        "{text}"
    );
    assert!(text.contains("beam.toml:18"), "{text}");
    let text = refused("at = \"1.2 m\"", "at = \"0 m\"");
    assert!(text.contains("support 2 is at 0 mm, where there is a support already"), "{text}");
}

#[test]
fn mechanisms_are_refused_at_their_place() {
    let stop = "[[support]]\nat = \"1.2 m\"\nkind = \"stop-below\"\ngap = \"1 mm\"\n";
    let alone = BEAM.replace("turning_stiffness = \"50 kN m/rad\"\n", "").replace(stop, "");
    let text = read(&alone).map(|_| ()).unwrap_err();
    assert!(text.contains("nothing holds the beam against turning about its only support at 0 mm"), "{text}");
    // Nothing loads it: it has modes, with one rigid motion.
    let load = "[[load]]\nkind = \"force\"\nat = \"1.5 m\"\nforce = \"-2 kN\"\n";
    let file = read(&alone.replace(load, "")).unwrap();
    let outcome = work_out(file.line, &file.options).unwrap();
    assert_eq!(outcome.vibrating.unwrap().rigid, 1);
}
