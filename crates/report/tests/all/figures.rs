//! Pictures: same bytes, well-formed, refused when there is nothing to draw.

use std::path::Path;

use axlebow_axle::CaseOutcome;
use axlebow_report::plot::{Axis, Chart, Link, Series, charts, flex_figure, section_figure};
use axlebow_report::{ReportError, Svg};
use axlebow_units::UnitSystem;

use crate::made_up::{card, case, cornering, drawing, duals, raised, rated, sections, single};

/// Leaves SVG and PNG in the tests' temporary folder, to look at.
pub fn keep(name: &str, svg: &Svg) {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    std::fs::write(folder.join(format!("{name}.svg")), svg.text()).unwrap();
    let png = svg.to_png(1.0).unwrap();
    assert!(png.starts_with(b"\x89PNG"));
    std::fs::write(folder.join(format!("{name}.png")), png).unwrap();
}

fn sweep() -> Vec<Chart> {
    let walls = [9.5, 12.7, 15.9, 19.1, 22.2];
    let camber = |od: f64, wall: f64| -0.3 * (146.0 / od).powi(3) * 16.0 / wall;
    let mass = |od: f64, wall: f64| 1.6 * 0.02466 * wall * (od - wall);
    let series = |make: &dyn Fn(f64, f64) -> (f64, f64)| -> Vec<Series> {
        let one = |od: f64| Series {
            label: format!("outside diameter {od} mm"),
            points: walls.iter().map(|wall| make(od, *wall)).collect(),
        };
        [127.0, 133.0, 139.7, 146.0, 152.4].map(one).into()
    };
    let axis = |label: &str| Axis { label: label.to_owned() };
    let chart = |title: &str, x: &str, make: &dyn Fn(f64, f64) -> (f64, f64)| Chart {
        title: title.to_owned(),
        x: axis(x),
        y: axis("camber change, deg"),
        series: series(make),
        links: vec![],
        footnote: String::new(),
    };
    let mut by_wall = chart("Camber change against wall", "wall, mm", &|od, wall| (wall, camber(od, wall)));
    for wall in [12.0, 16.0] {
        let reference = mass(139.7, wall);
        let wall_of = |od: f64| 0.5 * (od - (od * od - 4.0 * reference / (1.6 * 0.02466)).sqrt());
        let points = [127.0, 133.0, 139.7, 146.0, 152.4].map(|od| (wall_of(od), camber(od, wall_of(od))));
        by_wall.links.push(Link { label: format!("{reference:.0} kg"), points: points.into() });
    }
    by_wall.footnote = "Dashed: same mass.".to_owned();
    let by_mass =
        chart("Camber change against mass", "mass of the tube, kg", &|od, w| (mass(od, w), camber(od, w)));
    vec![by_wall, by_mass]
}

#[test]
fn flex_figures_of_every_kind_of_case_are_drawn() {
    let mut long = card(UnitSystem::Si);
    long.name = "Axle with a very long name that tells everything about <tube>, \"seats\" & bearings, and then \
                 goes on about the spindles, the hubs and the wheels until it no longer fits into two lines at all"
        .to_owned();
    for (name, case, card) in [
        ("flex-rated", rated(), card(UnitSystem::Si)),
        ("flex-rated-us", rated(), card(UnitSystem::Us)),
        ("flex-raised", raised(), card(UnitSystem::Si)),
        ("flex-duals", duals(), card(UnitSystem::Us)),
        ("flex-cornering", cornering(), card(UnitSystem::Si)),
        ("flex-long-name", duals(), long),
    ] {
        let svg = flex_figure(&case, &drawing(&case), &card).unwrap();
        assert_eq!(svg, flex_figure(&case, &drawing(&case), &card).unwrap());
        keep(name, &svg);
    }
}

#[test]
fn sweep_and_section_figures_are_drawn() {
    keep("sweep", &charts("Tube study", &sweep()).unwrap());
    keep("sections", &section_figure(&sections(), &[], &card(UnitSystem::Si)).unwrap());
    keep("sections-us", &section_figure(&sections()[..1], &[], &card(UnitSystem::Us)).unwrap());
}

#[test]
fn names_are_escaped() {
    let mut card = card(UnitSystem::Si);
    card.name = "<&\"' axle".to_owned();
    let case = rated();
    let svg = flex_figure(&case, &drawing(&case), &card).unwrap();
    assert!(svg.text().contains("<title>&lt;&amp;&quot;' axle: rated-load</title>"));
    assert!(svg.to_png(0.25).is_ok());
}

#[test]
fn the_figure_states_what_it_exaggerates_and_that_it_is_invented() {
    let case = rated();
    let svg = flex_figure(&case, &drawing(&case), &card(UnitSystem::Si)).unwrap();
    for text in
        ["drawn \u{d7}20.", "Demonstration data, invented.", "\u{2212}0.296 deg", "20.03 kN m", "45.00 kN"]
    {
        assert!(svg.text().contains(text), "{text} is missing");
    }
}

#[test]
fn an_unloaded_axle_is_drawn_without_exaggeration() {
    let case = case("unloaded", "nothing acts", [single(0.0), single(0.0)]);
    let mut case = CaseOutcome { bow: 0.0, ..case };
    case.wheels.left.camber_change = 0.0;
    case.wheels.right.camber_change = 0.0;
    let svg = flex_figure(&case, &drawing(&case), &card(UnitSystem::Si)).unwrap();
    assert!(svg.text().contains("drawn \u{d7}1."));
    keep("flex-unloaded", &svg);
}

#[test]
fn what_cannot_be_drawn_is_refused() {
    let mut case = rated();
    let sizes = drawing(&case);
    case.diagram[3].uz = f64::NAN;
    let refused = flex_figure(&case, &sizes, &card(UnitSystem::Si));
    assert!(matches!(refused, Err(ReportError::NotDrawable { .. })));
    let mut nothing = sizes.clone();
    nothing.tires = axlebow_axle::Sides::default();
    nothing.line.clear();
    assert!(matches!(flex_figure(&rated(), &nothing, &card(UnitSystem::Si)), Err(ReportError::Empty { .. })));
    case.diagram.clear();
    assert!(matches!(flex_figure(&case, &sizes, &card(UnitSystem::Si)), Err(ReportError::Empty { .. })));
    assert!(matches!(section_figure(&[], &[], &card(UnitSystem::Si)), Err(ReportError::Empty { .. })));
    assert!(matches!(charts("nothing", &[]), Err(ReportError::Empty { .. })));
}

#[test]
fn a_picture_has_a_sensible_size() {
    let svg = charts("Tube study", &sweep()).unwrap();
    for scale in [0.0, -1.0, f64::NAN, 1e6] {
        assert!(matches!(svg.to_png(scale), Err(ReportError::PictureSize { .. })), "scale {scale}");
    }
}
