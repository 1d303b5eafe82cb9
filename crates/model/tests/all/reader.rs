//! The reader, against a small declaration of its own.

use std::time::{Duration, Instant};

use axlebow_model::{
    Bounds, Document, Holds, KeySpec, LARGEST, ModelError, Presence, Problems, TableSpec, Value, Word,
};
use axlebow_model::{json_schema, read, read_bytes};
use axlebow_units::{Kind, UnitSystem};
use proptest::prelude::*;

const fn key(key: &'static str, holds: Holds, presence: Presence) -> KeySpec {
    KeySpec { key, meaning: "What the key means.", holds, presence }
}

const fn positive(kind: Kind) -> Holds {
    Holds::Quantity { kind, bounds: Bounds::Positive }
}

static BEAM: TableSpec = TableSpec {
    name: "beam",
    meaning: "A beam.",
    keys: &[
        key("depth", positive(Kind::Length), Presence::Required),
        key("wall", positive(Kind::Length), Presence::Optional),
        key("modulus", positive(Kind::Stress), Presence::Default("\"206 GPa\"")),
        key(
            "poisson",
            Holds::Quantity { kind: Kind::Ratio, bounds: Bounds::Between(0.0, 0.5) },
            Presence::Default("0.3"),
        ),
    ],
};

static POST: TableSpec = TableSpec {
    name: "post",
    meaning: "A post.",
    keys: &[
        key("at", Holds::Quantity { kind: Kind::Length, bounds: Bounds::Any }, Presence::Required),
        key("joint", Holds::Choice(&JOINTS), Presence::Default("\"welded\"")),
    ],
};

const JOINTS: [Word; 2] = [
    Word { word: "welded", meaning: "Joined by welds." },
    Word { word: "bolted", meaning: "Joined by bolts." },
];

static SOLVER: TableSpec = TableSpec {
    name: "solver",
    meaning: "How it is solved.",
    keys: &[key("elements", Holds::Count { min: 1, max: 500 }, Presence::Default("40"))],
};

static FRAME: TableSpec = TableSpec {
    name: "frame file",
    meaning: "An invented frame.",
    keys: &[
        key("name", Holds::Text, Presence::Required),
        key("checked", Holds::Flag, Presence::Default("false")),
        key("scale", Holds::Number { bounds: Bounds::NonNegative }, Presence::Optional),
        key("beam", Holds::Table(&BEAM), Presence::Required),
        key("post", Holds::Tables(&POST), Presence::Required),
        key("solver", Holds::Table(&SOLVER), Presence::Default("{}")),
        key("factors", Holds::Factors, Presence::Optional),
        key("names", Holds::Texts, Presence::Optional),
        key("change", Holds::Changes, Presence::Optional),
    ],
};

const GOOD: &str = "name = \"invented\"
scale = 2

[beam]
depth = \"6 in\"
wall = \"0.5 in\"

[[post]]
at = \"-20 in\"
[[post]]
at = \"500 mm\"
joint = \"bolted\"

[factors]
live = 1.5
dead = 1
";

fn good() -> Document {
    read(GOOD, "frame.toml", &FRAME).unwrap_or_else(|problems| panic!("{problems}"))
}

/// The good file with a piece replaced, which must be refused.
fn refused(old: &str, new: &str) -> Problems {
    assert!(GOOD.contains(old));
    read(&GOOD.replacen(old, new, 1), "frame.toml", &FRAME).expect_err("the file must be refused")
}

/// Line, column, underlined text and message of the one problem, then its accepted and likely text.
#[track_caller]
fn the_one(problems: &Problems, text: &str) -> (usize, usize, String, String, String, String) {
    let all: Vec<_> = problems.iter().collect();
    assert_eq!(all.len(), 1, "{problems}");
    let p = all[0];
    let hint = |hint: &Option<String>| hint.clone().unwrap_or_default();
    (p.line, p.column, text[p.span.clone()].to_owned(), p.message.clone(), hint(&p.accepted), hint(&p.likely))
}

#[track_caller]
fn check(old: &str, new: &str, wanted: (usize, usize, &str, &str)) -> (String, String) {
    let text = GOOD.replacen(old, new, 1);
    let (line, column, underlined, message, accepted, likely) = the_one(&refused(old, new), &text);
    assert_eq!((line, column, underlined.as_str(), message.as_str()), wanted);
    (accepted, likely)
}

#[test]
fn good_file_is_read_in_si_and_in_file_order() {
    let document = good();
    let root = document.root();
    assert_eq!(root.text("name"), "invented");
    assert_eq!(root.number("scale"), 2.0);
    assert_eq!(root.table("beam").number("depth"), 0.1524);
    assert_eq!(root.table("beam").number("modulus"), 206e9);
    assert_eq!(root.tables("post").len(), 2);
    assert_eq!(root.tables("post")[0].word("joint"), "welded");
    assert_eq!(root.tables("post")[1].word("joint"), "bolted");
    assert_eq!(root.table("solver").count("elements"), 40);
    assert!(!root.flag("checked"));
    assert_eq!(root.factors("factors"), [("live".to_owned(), 1.5), ("dead".to_owned(), 1.0)]);
    assert_eq!(&GOOD[root.table("beam").span_of("depth")], "\"6 in\"");
    assert_eq!(&GOOD[root.table("beam").span_of("modulus")], "[beam]");
    let keys: Vec<_> = root.entries().iter().map(|entry| entry.key).collect();
    assert_eq!(keys, ["name", "scale", "beam", "post", "factors", "checked", "solver"]);
    assert_eq!(document.system(), UnitSystem::Us);
}

#[test]
fn every_default_in_use_is_listed_with_its_path() {
    let document = good();
    let listed: Vec<_> = document.assumed().iter().map(|a| (a.path.as_str(), a.text.as_str())).collect();
    let wanted = [
        ("beam.modulus", "206 GPa"),
        ("beam.poisson", "0.3"),
        ("post[0].joint", "welded"),
        ("checked", "false"),
        ("solver.elements", "40"),
    ];
    assert_eq!(listed, wanted);
}

#[test]
fn unknown_key_is_reported_with_the_likely_one() {
    let (accepted, likely) = check("wall =", "wal =", (6, 1, "wal", "beam has no key `wal`"));
    assert_eq!((accepted.as_str(), likely.as_str()), ("`depth`, `wall`, `modulus`, `poisson`", "wall"));
}

#[test]
fn missing_key_is_reported_at_the_head_of_its_table() {
    let (accepted, _) =
        check("depth = \"6 in\"", "", (4, 1, "[beam]", "`beam.depth` is missing: What the key means."));
    assert_eq!(accepted, "length in quotes, in mm, m, in, ft; more than 0 mm");
    check("name = \"invented\"", "", (1, 1, "", "`name` is missing: What the key means."));
    check("at = \"500 mm\"", "", (10, 1, "[[post]]", "`post[1].at` is missing: What the key means."));
}

#[test]
fn bare_number_is_reported_with_an_example() {
    let message = "`beam.depth`: the bare number `152.4` needs its unit";
    let (accepted, likely) = check("\"6 in\"", "152.4", (5, 9, "152.4", message));
    assert_eq!((accepted.as_str(), likely.as_str()), ("length in mm, m, in, ft", "\"152.4 mm\""));
    check("\"6 in\"", "\"152.4\"", (5, 10, "152.4", message));
}

#[test]
fn unit_at_fault_is_underlined_within_the_text() {
    let (accepted, _) =
        check("\"6 in\"", "\"6 kg\"", (5, 12, "kg", "`beam.depth`: `kg` measures mass; length is wanted"));
    assert_eq!(accepted, "length in mm, m, in, ft");
    let (_, likely) =
        check("\"6 in\"", "\"6 inches\"", (5, 12, "inches", "`beam.depth`: unknown unit `inches`"));
    assert_eq!(likely, "in");
    let escaped = "\"6\\u0020inches\"";
    check("\"6 in\"", escaped, (5, 9, escaped, "`beam.depth`: unknown unit `inches`"));
}

#[test]
fn value_out_of_range_is_reported_in_the_units_of_the_file() {
    let (accepted, _) = check("\"6 in\"", "\"-6 in\"", (5, 9, "\"-6 in\"", "`beam.depth` is -6 in"));
    assert_eq!(accepted, "more than 0 in");
    check("scale = 2", "scale = -1", (2, 9, "-1", "`scale` is -1"));
    let (accepted, _) = check("wall =", "poisson = 0.6\nwall =", (6, 11, "0.6", "`beam.poisson` is 0.6"));
    assert_eq!(accepted, "from 0 to 0.5");
    check("[factors]", "[solver]\nelements = 501\n[factors]", (15, 12, "501", "`solver.elements` is 501"));
}

#[test]
fn value_that_is_not_finite_is_reported() {
    for text in ["inf", "-inf", "nan", "1e999"] {
        assert_eq!(refused("scale = 2", &format!("scale = {text}")).iter().count(), 1, "{text}");
        assert_eq!(refused("live = 1.5", &format!("live = {text}")).iter().count(), 1, "{text}");
        assert_eq!(refused("\"6 in\"", &format!("\"{text} in\"")).iter().count(), 1, "{text}");
    }
}

#[test]
fn wrong_type_is_reported() {
    check("\"6 in\"", "true", (5, 9, "true", "`beam.depth` cannot be true or false"));
    check("\"invented\"", "3", (1, 8, "3", "`name` cannot be a bare number"));
    check("\"invented\"", "\" \"", (1, 8, "\" \"", "`name` is empty"));
    check("scale = 2", "scale = \"2\"", (2, 9, "\"2\"", "`scale` cannot be text"));
    check("scale = 2", "scale = 1979-05-27", (2, 9, "1979-05-27", "`scale` cannot be a date"));
    check("scale = 2", "solver = [1]", (2, 10, "[1]", "`solver` cannot be a list"));
    check("scale = 2", "solver.elements = 2.5", (2, 19, "2.5", "`solver.elements` cannot be a bare number"));
    check("live = 1.5", "live = \"x\"", (15, 8, "\"x\"", "`factors.live` cannot be text"));
    let one = "name = \"a\"\n[beam]\ndepth = \"1 m\"\n[post]\nat = \"1 m\"\n";
    let problems = read(one, "one.toml", &FRAME).unwrap_err();
    let (line, _, _, message, accepted, _) = the_one(&problems, one);
    assert_eq!((line, message.as_str()), (4, "`post` is one table where a list is wanted"));
    assert_eq!(accepted, "`[[post]]`");
}

#[test]
fn word_outside_the_choice_is_reported_with_the_likely_one() {
    let (accepted, likely) =
        check("\"bolted\"", "\"boltd\"", (12, 9, "\"boltd\"", "`post[1].joint` cannot be `boltd`"));
    assert_eq!((accepted.as_str(), likely.as_str()), ("`welded`, `bolted`", "bolted"));
}

#[test]
fn texts_and_changes_are_read_with_their_places() {
    let text =
        GOOD.replace("scale = 2", "names = [\"a\", 'b c']\nchange = { \"beam.wall\" = \"8 mm\", x = \"y\" }");
    let document = read(&text, "frame.toml", &FRAME).unwrap();
    let root = document.root();
    let names: Vec<_> =
        root.texts("names").iter().map(|w| (w.text.as_str(), &text[w.span.clone()])).collect();
    assert_eq!(names, [("a", "\"a\""), ("b c", "'b c'")]);
    let changes = root.changes("change");
    assert_eq!((changes[0].0.text.as_str(), changes[0].1.text.as_str()), ("beam.wall", "8 mm"));
    assert_eq!(&text[changes[0].0.span.clone()], "\"beam.wall\"");
    assert_eq!(&text[changes[1].1.span.clone()], "\"y\"");
    assert!(root.texts("factors").is_empty() && root.changes("names").is_empty());
}

#[test]
fn texts_and_changes_of_the_wrong_type_are_reported() {
    check("scale = 2", "names = []", (2, 9, "[]", "`names` is an empty list"));
    check("scale = 2", "names = \"a\"", (2, 9, "\"a\"", "`names` cannot be text"));
    check("scale = 2", "names = [\"a\", 2]", (2, 15, "2", "`names[1]` cannot be a bare number"));
    check("scale = 2", "names = [\" \"]", (2, 10, "\" \"", "`names[0]` is empty"));
    check("scale = 2", "change = { a = [2] }", (2, 16, "[2]", "`change.a` cannot be a list"));
    check("scale = 2", "change = { a = \"\" }", (2, 16, "\"\"", "`change.a` is empty"));
    let steering = "\"a\\u001B[2J\"";
    check("\"invented\"", steering, (1, 8, steering, "`name` holds the control character U+001B"));
    check(
        "scale = 2",
        "names = [\"a\\r\"]",
        (2, 10, "\"a\\r\"", "`names[0]` holds the control character U+000D"),
    );
    let (accepted, _) = check("scale = 2", "change = [1]", (2, 10, "[1]", "`change` cannot be a list"));
    let values = r#"a table of paths and values, such as { "tube.wall" = "8 mm", "wheel.reversed" = true }"#;
    assert_eq!(accepted, values);
}

#[test]
fn kind_of_the_number_at_a_path_is_known() {
    let document = good();
    assert_eq!(document.kind("beam.wall"), Ok(Kind::Length));
    assert_eq!(document.kind("factors.live"), Ok(Kind::Ratio));
    assert_eq!(document.kind("solver.elements"), Ok(Kind::Ratio));
    for path in ["name", "beam", "post[0]", "beam.wall[0]", "checked", "beam.wal", ""] {
        assert!(document.kind(path).is_err(), "{path}");
    }
}

#[test]
fn every_problem_is_reported_at_once_in_file_order() {
    let text =
        "nam = 1\n[beam]\ndepth = 3\nwall = \"9 s\"\n[[post]]\nat = \"x\"\njoint = \"glued\"\n[other]\n";
    let problems = read(text, "frame.toml", &FRAME).unwrap_err();
    let lines: Vec<_> = problems.iter().map(|problem| problem.line).collect();
    assert_eq!(lines, [1, 1, 3, 4, 6, 7, 8]);
}

#[test]
fn syntax_problems_stand_beside_the_others_without_their_own_consequences() {
    let text = "name = \n[beam]\ndepth = 12 mm\nwal = 1\n[[post]]\n";
    let problems = read(text, "frame.toml", &FRAME).unwrap_err();
    let lines: Vec<_> = problems.iter().map(|problem| problem.line).collect();
    assert_eq!(lines, [1, 3, 4], "{problems}");
    assert!(
        read("a = 1\na = 2", "f", &FRAME)
            .unwrap_err()
            .iter()
            .any(|p| p.line == 2 && p.message == "duplicate key")
    );
}

#[test]
fn file_that_is_empty_or_not_text_is_reported() {
    for text in ["", " \n", "# only a comment\n"] {
        let problems = read(text, "frame.toml", &FRAME).unwrap_err();
        assert_eq!(the_one(&problems, text).3, "the file is empty");
        assert!(problems.render().contains("frame.toml"), "{problems}");
    }
    let problems = read_bytes(b"name = \"a\"\nb = \"\xff\"", "frame.toml", &FRAME).unwrap_err();
    let problem = problems.iter().next().unwrap();
    assert_eq!((problem.line, problem.column, problem.message.as_str()), (2, 6, "this is not UTF-8 text"));
    assert!(read_bytes(GOOD.as_bytes(), "frame.toml", &FRAME).is_ok());
    assert!(read(&format!("\u{feff}{GOOD}"), "frame.toml", &FRAME).is_ok());
    assert!(read(&GOOD.replace('\n', "\r\n"), "frame.toml", &FRAME).is_ok());
}

#[test]
fn report_underlines_and_hints() {
    let wanted = "\
error: beam has no key `wal`
 --> frame.toml:6:1
  |
6 | wal = \"0.5 in\"
  | ^^^
  |
  = help: accepted: `depth`, `wall`, `modulus`, `poisson`
  = help: did you mean `wall`?";
    assert_eq!(refused("wall =", "wal =").render(), wanted);
    assert!(refused("wall =", "wal =").render_colored().contains('\u{1b}'));
}

#[test]
fn report_does_not_pass_on_control_characters() {
    let texts = [
        "\"\\u001b[31m\" = 1",
        "name = \"\u{1b}[31m\"",
        "beam.depth = \"\\u001b[31m\"",
        "beam.depth = \"1 \\u001b[31m\"",
    ];
    let all = |text| read(text, "a\u{1b}.toml", &FRAME).unwrap_err().render();
    let problems = texts.map(all).concat();
    assert!(!problems.contains('\u{1b}'), "{problems}");
}

#[test]
fn builder_adds_its_own_problems_to_the_report() {
    let document = good();
    let mut problems = document.problems();
    assert!(problems.is_empty());
    problems.push(
        document.root().table("beam").span_of("wall"),
        "the wall is too thick",
        Some("less".to_owned()),
    );
    let problem = problems.iter().next().unwrap();
    assert_eq!((problem.line, problem.column), (6, 8));
}

#[test]
fn any_key_is_set_by_its_path() {
    let mut document = good();
    document.set("beam.wall", "8 mm").unwrap();
    document.set("post[1].at", "2 ft").unwrap();
    document.set("post[0].joint", "bolted").unwrap();
    document.set("solver.elements", "12").unwrap();
    document.set("factors.live", "1.75").unwrap();
    document.set("checked", "true").unwrap();
    document.set_number("beam.depth", 0.2).unwrap();
    document.set_number("beam.poisson", 0.25).unwrap();
    document.set_number("scale", 3.0).unwrap();
    document.set_number("factors.dead", 0.9).unwrap();
    assert_eq!(document.number("beam.wall"), Ok(0.008));
    assert_eq!(document.number("post[1].at"), Ok(0.6096));
    assert_eq!(document.value("post[0].joint"), Ok(&Value::Word("bolted")));
    assert_eq!(document.number("solver.elements"), Ok(12.0));
    assert_eq!(document.number("factors.live"), Ok(1.75));
    assert_eq!(document.number("beam.depth"), Ok(0.2));
    assert_eq!(document.number("beam.poisson"), Ok(0.25));
    assert_eq!(document.number("factors.dead"), Ok(0.9));
    assert!(document.root().flag("checked"));
    let paths: Vec<_> = document.assumed().iter().map(|assumed| assumed.path.as_str()).collect();
    assert_eq!(paths, ["beam.modulus"]);
    assert_eq!(document.system(), UnitSystem::Us);
}

#[test]
fn optional_key_that_the_file_leaves_out_can_be_set() {
    let mut document = read(&GOOD.replace("wall = \"0.5 in\"", ""), "f", &FRAME).unwrap();
    assert!(matches!(document.number("beam.wall"), Err(ModelError::Absent { .. })));
    document.set("beam.wall", "8 mm").unwrap();
    assert_eq!(document.number("beam.wall"), Ok(0.008));
}

#[test]
fn set_refuses_what_the_reader_would_and_changes_nothing() {
    let mut document = good();
    let before = document.clone();
    let said =
        |document: &mut Document, path: &str, text: &str| document.set(path, text).unwrap_err().to_string();
    let unknown = said(&mut document, "beam.wal", "8 mm");
    assert!(unknown.contains("no key `wal`") && unknown.ends_with("did you mean `wall`?"), "{unknown}");
    assert!(said(&mut document, "beam.wall", "8 kg").starts_with("`beam.wall`: `kg` measures mass"));
    assert!(
        said(&mut document, "beam.wall", "-8 mm").contains("`beam.wall` is -8 mm; accepted: more than 0 mm")
    );
    assert!(said(&mut document, "post[2].at", "8 mm").contains("nothing at `post[2]`"));
    assert!(said(&mut document, "factors.snow", "1").contains("nothing at `factors.snow`"));
    assert!(said(&mut document, "factors.live", "inf").contains("not a number"));
    for (path, text) in [
        ("beam", "8 mm"),
        ("post", "8 mm"),
        ("post[0]", "8 mm"),
        ("post.at", "8 mm"),
        ("beam[0].wall", "8 mm"),
        ("beam.wall[0]", "8 mm"),
        ("beam.wall.x", "8 mm"),
        ("factors", "1"),
        ("factors[0].live", "1"),
        ("solver.elements", "2.5"),
        ("solver.elements", "many"),
        ("checked", "yes"),
        ("name", ""),
        ("", ""),
    ] {
        assert!(document.set(path, text).is_err(), "{path}");
    }
    for (path, value) in
        [("beam.wall", f64::NAN), ("scale", f64::INFINITY), ("solver.elements", 2.5), ("name", 1.0)]
    {
        assert!(document.set_number(path, value).is_err(), "{path}");
    }
    assert_eq!(document.root(), before.root());
    assert_eq!(document.assumed(), before.assumed());
}

#[test]
fn schema_says_what_the_reader_accepts() {
    let schema = json_schema(&FRAME);
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert_eq!(schema["required"], serde_json::json!(["name", "beam", "post"]));
    assert_eq!(schema["additionalProperties"], false);
    let beam = &schema["properties"]["beam"];
    assert_eq!(beam["properties"]["depth"]["type"], "string");
    assert_eq!(beam["properties"]["modulus"]["default"], "206 GPa");
    assert_eq!(beam["properties"]["poisson"]["anyOf"][0]["maximum"], 0.5);
    let joint = &schema["properties"]["post"]["items"]["properties"]["joint"];
    assert_eq!(joint["oneOf"][1]["const"], "bolted");
    assert_eq!(schema["properties"]["solver"]["properties"]["elements"]["maximum"], 500);
    assert_eq!(schema["properties"]["factors"]["additionalProperties"]["type"], "number");
    assert_eq!(schema["properties"]["names"]["items"]["type"], "string");
    let change = &schema["properties"]["change"]["additionalProperties"]["anyOf"];
    assert_eq!(change[0]["type"], "string");
    assert_eq!(change[1]["type"], serde_json::json!(["number", "boolean"]));
}

/// Texts that strain a parser: each must be refused or read in little time, and rendered.
#[test]
fn hostile_text_is_refused_in_little_time() {
    let nest = format!("{} = {{", ["a"; 79].join("."));
    let texts = [
        "[".repeat(LARGEST),
        "a.".repeat(LARGEST / 2),
        "a={".repeat(LARGEST / 3),
        format!("{}a=1{}", nest.repeat(79), "}".repeat(79)),
        "a=1\n".repeat(LARGEST / 4),
        (0..90_000).map(|i| format!("k{i}=1\n")).collect(),
        format!("post=[{}]", "{},".repeat(300_000)),
        format!("post=[{}]", "1,".repeat(400_000)),
        format!("name={}", "1 ".repeat(400_000)),
        format!("factors={{{}a=1}}", (0..80_000).map(|i| format!("k{i}=x,")).collect::<String>()),
        format!("[beam]\ndepth = \"1 {}\"", "(".repeat(900_000)),
        format!("[beam]\ndepth = \"{}\"", "9".repeat(900_000)),
        format!("[beam]\ndepth = \"1 {}\"", "m".repeat(900_000)),
        format!("[beam]\n{} = 1", "d".repeat(900_000)),
        "x".repeat(10 * LARGEST),
    ];
    for text in texts {
        let start = Instant::now();
        let problems = read(&text, "frame.toml", &FRAME).expect_err("refused");
        let report = problems.render();
        let took = start.elapsed();
        assert!((1..50_000).contains(&report.len()), "{}: {}", report.len(), &text[..20]);
        assert!(took < Duration::from_secs(3), "{took:?}: {}", &text[..20]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        if let Err(problems) = read_bytes(&bytes, "frame.toml", &FRAME) {
            prop_assert!(!problems.render().is_empty());
        }
    }

    #[test]
    fn no_change_to_a_good_file_panics(at in 0..GOOD.len(), cut in 0usize..20, put in "[ -~\n\"\\[\\]{}=.µ²]{0,6}") {
        let mut bytes = GOOD.as_bytes().to_vec();
        let end = (at + cut).min(bytes.len());
        bytes.splice(at..end, put.into_bytes());
        if let Err(problems) = read_bytes(&bytes, "frame.toml", &FRAME) {
            prop_assert!(!problems.render().is_empty());
        }
    }

    #[test]
    fn no_path_or_value_panics(path in "[a-z.\\[\\]0-9]{0,12}|beam.wall|post\\[[0-9]\\].at", text in any::<String>()) {
        let mut document = good();
        let _ = document.set(&path, &text);
        let _ = document.number(&path);
        let _ = document.value(&path);
    }
}
