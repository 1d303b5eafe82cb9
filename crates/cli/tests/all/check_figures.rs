//! The picture of strength checks from the command line.

#![allow(clippy::unwrap_used)] // helpers of tests are tests too

use crate::program::{axlebow_in, demo};

/// Every check of a document with its place, name and the most that any case uses.
fn uses(document: &serde_json::Value) -> Vec<(String, f64)> {
    let list = |value: &serde_json::Value| value.as_array().cloned().unwrap_or_default();
    let cases = list(&document["cases"]);
    let all = cases.iter().flat_map(|case| list(&case["checks"])).chain(list(&document["walls"]));
    let mut uses: Vec<(String, f64)> = Vec::new();
    for check in all.chain(list(&document["bearings"])) {
        let text = |key: &str| check[key].as_str().unwrap().to_owned();
        let name = format!("{} at {}", text("what"), text("place"));
        let used = check["utilization"].as_f64().unwrap();
        match uses.iter_mut().find(|own| own.0 == name) {
            Some(own) => own.1 = own.1.max(used),
            None => uses.push((name, used)),
        }
    }
    uses
}

/// The value of an attribute of an element that follows some text.
fn attribute(element: &str, name: &str) -> f64 {
    let (_, rest) = element.split_once(&format!(r#" {name}=""#)).unwrap();
    rest.split('"').next().unwrap().parse().unwrap()
}

#[test]
fn the_picture_of_strength_has_each_stretch_from_left_to_right_and_its_worst_check_first() {
    let folder = tempfile::tempdir().unwrap();
    let model = demo("trailer-152-thin-dual-angle-stitched");
    let asked = ["strength", &model, "--plot", "a.svg", "--page", "a.html", "--json"];
    let run = axlebow_in(folder.path(), &asked);
    assert_eq!(run.code, 1, "{}", run.err);
    let read = |name: &str| std::fs::read_to_string(folder.path().join(name)).unwrap();
    let svg = read("a.svg");
    let uses = uses(&serde_json::from_str(&run.out).unwrap());
    let headings = [
        "left spindle",
        ">left seat",
        ">between the seats",
        ">right seat",
        "right spindle",
        ">parts as a whole",
    ];
    let places: Vec<usize> = headings.iter().map(|own| svg.find(own).unwrap()).collect();
    assert!(places.is_sorted(), "{places:?}");
    let (name, worst) = uses.iter().max_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
    let said = format!("most, {:.0} %, by the {name}.", 100.0 * worst);
    assert!(svg.contains(&said), "{said}");
    // Bars: the worst of a stretch first; a bar is as long as it uses of the way to the limit.
    let between = &svg[places[2]..places[3]];
    let widths: Vec<f64> = between.split("<rect").skip(1).map(|own| attribute(own, "width")).collect();
    assert!(widths.len() == 5 && widths.is_sorted_by(|a, b| a >= b), "{widths:?}");
    let start = attribute(between.split("<rect").nth(1).unwrap(), "x");
    let limit = attribute(svg.rsplit("<line").next().unwrap(), "x1");
    assert!((widths[0] / (limit - start) - worst).abs() < 1e-3, "{widths:?}, {limit}");
    assert!(svg.contains(">limit<") && svg.contains("Not made, which is no pass"));
    assert!(read("a.html").contains("share of the limit that is used"));
}
