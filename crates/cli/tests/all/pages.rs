//! Every command writes its result as one page that needs nothing else.

use tempfile::TempDir;

use crate::program::{axlebow_in, demo, root};

/// The page that a command writes, and what the same run prints.
fn page(arguments: &[&str]) -> (String, String) {
    let folder = TempDir::new().expect("a folder");
    let run = axlebow_in(folder.path(), &[arguments, &["--page", "page.html"]].concat());
    assert!(run.code <= 1, "{arguments:?}: {}", run.err);
    (std::fs::read_to_string(folder.path().join("page.html")).expect("the page"), run.out)
}

/// Attributes and functions by which a page would fetch something.
const FETCHING: [&str; 6] = ["src=", "href=", "@import", "url(http", "<script", "<link"];

fn assert_stands_alone(html: &str, what: &str) {
    for word in FETCHING {
        assert!(!html.contains(word), "{what}: {word}");
    }
    let elsewhere = html.replace("http://www.w3.org/2000/svg", "");
    assert!(!elsewhere.contains("http://") && !elsewhere.contains("https://"), "{what}");
}

#[test]
fn a_page_has_the_answer_the_picture_and_what_it_was_made_from() {
    let (thin, angle) = (demo("trailer-152-thin-dual"), demo("trailer-152-thin-dual-angle"));
    let study = root().join("studies/same-kilograms.toml").display().to_string();
    let search = root().join("studies/stiffener-catalogue.toml").display().to_string();
    let runs: [&[&str]; 15] = [
        &["flex", &thin],
        &["flex", &thin, "--detail", "--units", "us"],
        &["flex", &thin, "--against", &angle],
        &["flex", &thin, "--sensitivities"],
        &["modes", &thin],
        &["section", &angle],
        &["tire", &thin],
        &["tire", &thin, &angle],
        &["growth", &thin, "--steps", "3", "--counts", "1..3"],
        &["causes", &thin],
        &["remedies", &thin],
        &["ride", &thin, "--over", "pothole", "--reduced"],
        &["response", &thin, "--points", "20"],
        &["study", &study],
        &["study", &search],
    ];
    for run in runs {
        let (html, text) = page(run);
        assert_stands_alone(&html, &run.join(" "));
        let answer = text.lines().skip_while(|line| !line.is_empty()).nth(1).expect("an answer");
        assert!(html.contains(&answer[..answer.len().min(40)]), "{run:?}: {answer}");
        for part in ["<svg", "class=\"answer\"", "model hash: ", "<table>"] {
            assert!(html.contains(part), "{run:?}: {part}");
        }
    }
}

#[test]
fn the_page_of_checks_has_its_cautions() {
    let (html, _) = page(&["strength", &demo("trailer-152-thin-dual-angle")]);
    assert!(html.contains("class=\"caution\"") && html.contains("void its rating"));
    assert_stands_alone(&html, "strength");
}

#[test]
fn names_in_files_do_nothing_in_a_page() {
    let name = "<script>alert(1)</script>";
    let (html, _) = page(&["flex", &demo("trailer-152-thin-dual"), "--set", &format!("name={name}")]);
    assert!(!html.contains("<script") && html.contains("&lt;script&gt;alert(1)"), "{html}");
}

#[test]
fn a_page_is_named_html_or_pdf() {
    let folder = TempDir::new().expect("a folder");
    let run = axlebow_in(folder.path(), &["flex", &demo("trailer-152-thin-dual"), "--page", "page.txt"]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("--page page.txt") && run.err.contains(".html, .pdf"), "{}", run.err);
}

/// The headings of a report's parts, in their order.
fn chapters(html: &str) -> Vec<&str> {
    let parts = html.split("<section class=\"chapter\">\n<h2>").skip(1);
    parts.filter_map(|part| part.split("</h2>").next()).collect()
}

#[test]
fn a_report_has_every_part_in_the_order_of_its_reader_with_the_documents_beside() {
    let folder = TempDir::new().expect("a folder");
    let model = demo("trailer-152-thin-wide-base-outset");
    let run = axlebow_in(folder.path(), &["report", &model]);
    assert_eq!(run.code, 0, "{}", run.err);
    let name = "trailer-152-thin-wide-base-outset-report";
    let read =
        |ending: &str| std::fs::read_to_string(folder.path().join(format!("{name}.{ending}"))).expect(ending);
    let html = read("html");
    assert_stands_alone(&html, "report");
    assert_eq!(chapters(&html)[..2], ["What that does at the tires", "What would help"]);
    assert_eq!((chapters(&html).len(), html.matches("Before anybody welds:").count()), (6, 1));
    assert!(html.contains(run.out.trim().split(". ").next().expect("an answer")), "{}", run.out);
    assert!(html.contains("What the file leaves to be assumed") && !html.contains("--json lists"));
    for part in ["flex", "tire", "remedies", "strength", "section", "modes"] {
        assert!(read(&format!("{part}.json")).starts_with("{\n  \"schema\""), "{part}");
    }
    for (reader, first) in [("shop", "Whether it holds"), ("research", "How far the axle bows")] {
        let run = axlebow_in(folder.path(), &["report", &model, "--for", reader, "-o", "r.html", "--alone"]);
        assert_eq!(run.code, 0, "{}", run.err);
        let html = std::fs::read_to_string(folder.path().join("r.html")).expect("the page");
        assert_eq!(chapters(&html)[0], first);
    }
    assert!(!folder.path().join("r.flex.json").exists());
}

#[test]
fn a_report_of_a_study_is_its_page_with_the_designs_beside() {
    let folder = TempDir::new().expect("a folder");
    let study = root().join("studies/wall-sweep.toml").display().to_string();
    let run = axlebow_in(folder.path(), &["report", &study, "-o", "walls.html"]);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(folder.path().join("walls.html").exists() && folder.path().join("walls.csv").exists());
    let wrong = axlebow_in(folder.path(), &["report", &study, "-o", "walls.txt"]);
    assert_eq!(wrong.code, 2, "{}", wrong.err);
}

/// A page on paper, where a browser is here; where none is, the message says what to do instead.
#[test]
fn a_page_may_be_printed_as_pdf() {
    let folder = TempDir::new().expect("a folder");
    let run = axlebow_in(folder.path(), &["flex", &demo("trailer-152-thin-dual"), "--page", "axle.pdf"]);
    match std::fs::read(folder.path().join("axle.pdf")) {
        Ok(bytes) => assert!(run.code == 0 && bytes.starts_with(b"%PDF-"), "{}", run.err),
        Err(_) => assert!(run.code == 2 && run.err.contains("print it from any browser"), "{}", run.err),
    }
}
