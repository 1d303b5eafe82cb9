//! A ride as a page that moves.

use axlebow_axle::{RideOutcome, RideShape, Rise, Sides};
use axlebow_report::{ModelCard, ReportError, ride_animation};
use axlebow_units::UnitSystem;
use serde_json::Value;

use crate::made_up::{HUB, card, drawing, rated};
use crate::ride::outcome;

const FRAMES: usize = 40;

/// The made-up ride with shapes: hubs that rise with the road, an axle that bows, a body that stays.
fn riding() -> RideOutcome {
    let mut outcome = outcome();
    let last = outcome.history.time.len() - 1;
    let shapes = (0..FRAMES).map(|frame| {
        let sample = frame * last / (FRAMES - 1);
        let road = outcome.history.road.left[sample];
        let bow = -0.003 + outcome.history.camber.left[sample] * 0.3;
        let at = |y: f64| {
            let share = 0.5 * (1.0 + y / HUB);
            let up = -0.02 + road * share + bow * (1.0 - (y / HUB).powi(2));
            Rise { up, turn: 0.5 * road / HUB - 2.0 * bow * y / HUB.powi(2) }
        };
        RideShape {
            sample,
            line: outcome.stations.iter().map(|station| at(station.y)).collect(),
            hubs: Sides { left: at(HUB), right: at(-HUB) },
            body: Rise { up: -0.1, turn: 0.0 },
        }
    });
    outcome.history.shapes = shapes.collect();
    outcome
}

fn page(outcome: &RideOutcome, card: &ModelCard) -> String {
    ride_animation(outcome, &drawing(&rated()), card).unwrap()
}

fn document(page: &str) -> Value {
    let (_, rest) = page.split_once(r#"id="document">"#).unwrap();
    serde_json::from_str(rest.split_once("</script>").unwrap().0).unwrap()
}

#[test]
fn the_page_has_a_frame_for_each_shape() {
    let outcome = riding();
    let document = document(&page(&outcome, &card(UnitSystem::Si)));
    let frames = &document["frames"];
    for key in ["time", "distance", "body", "bends"] {
        assert_eq!(frames[key].as_array().unwrap().len(), FRAMES, "{key}");
    }
    for key in ["load", "camber", "road", "hubs", "tilts"] {
        assert_eq!(frames[key]["right"].as_array().unwrap().len(), FRAMES, "{key}");
    }
    let sample = outcome.history.shapes[3].sample;
    let load = frames["load"]["left"][3].as_f64().unwrap();
    assert!((load - 1e-3 * outcome.history.load.left[sample]).abs() < 1e-4, "{load}");
    assert_eq!(frames["hubs"]["left"][0], 0);
    let outline = document["scene"]["outline"].as_array().unwrap().len();
    assert_eq!(frames["bends"][0].as_array().unwrap().len(), outline);
}

#[test]
fn the_page_needs_nothing_beside_it() {
    let text = page(&riding(), &card(UnitSystem::Us));
    for call in ["src=", "href", "url(", "@import", "fetch(", "XMLHttp", "import(", "//cdn", "https:"] {
        assert!(!text.contains(call), "{call}");
    }
    let addresses = text.matches("http://").count();
    assert_eq!(addresses, text.matches("http://www.w3.org/2000/svg").count());
    assert!(text.contains("default-src 'none'") && !text.contains("{{"));
    assert!(text.len() < 300_000, "{}", text.len());
}

#[test]
fn the_page_says_what_it_shows_and_how_much_larger() {
    let text = page(&riding(), &card(UnitSystem::Us));
    for part in [
        "Demonstration data, invented.",
        "44.739 mph",
        "prefers-reduced-motion",
        "Distance along the road, ft",
    ] {
        assert!(text.contains(part), "{part}");
    }
    let document = document(&text);
    assert_eq!(document["units"]["force"], "lbf");
    for factor in ["height_factor", "flex_factor"] {
        assert!(document["scene"][factor].as_f64().unwrap() >= 1.0, "{factor}");
    }
    assert_eq!(text, page(&riding(), &card(UnitSystem::Us)));
}

#[test]
fn names_cannot_break_out_of_the_page() {
    let name = "</script><b>{{document}}".to_owned();
    let odd = RideOutcome { name: name.clone(), partial: Some(name.clone()), ..riding() };
    let text = page(&odd, &ModelCard { name, ..card(UnitSystem::Si) });
    assert!(!text.contains("<b>") && text.matches("</script>").count() == 2);
    assert!(text.contains("&lt;b&gt;{{document}}"));
}

#[test]
fn a_ride_without_shapes_or_with_odd_ones_is_refused() {
    let refused = |outcome: &RideOutcome| {
        ride_animation(outcome, &drawing(&rated()), &card(UnitSystem::Si)).unwrap_err()
    };
    assert!(matches!(refused(&outcome()), ReportError::Empty { .. }));
    let mut odd = riding();
    odd.history.shapes[2].line[0].up = f64::NAN;
    assert!(matches!(refused(&odd), ReportError::NotDrawable { .. }));
}
