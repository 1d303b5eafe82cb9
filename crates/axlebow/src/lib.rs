//! Finite elements for heavy-truck axles and the wear of their tires: the few types that a user of the library needs; does not
//! know how they work. SI units, the axes of ISO 8855, and the trade's signs ([`axle::outcome`]).
//!
//! # A beam
//! ```
//! use axlebow::beam::{Elastic, Line, LineParts, Load, Mesh, SectionValues, Span, SpanSection, Support, SupportKind, solve};
//! let section = SectionValues { area: Some(4e-3), second_moment: 7e-6, shear_coefficient: 0.5, fibers: None };
//! let steel = Elastic { modulus: 200e9, poisson_ratio: 0.3, density: 7850.0 };
//! let line = Line::new(LineParts {
//!     spans: vec![Span::new(2.0, SpanSection::Uniform(section), steel)?],
//!     supports: vec![Support { at: 0.0, kind: SupportKind::FIXED }],
//!     loads: vec![Load::Force { at: 2.0, force: -1000.0 }],
//!     ..LineParts::default()
//! })?;
//! // P L³/3EI
//! assert!((solve(&line, &Mesh::default())?.at(2.0).deflection + 1.904_761_905e-3).abs() < 1e-12);
//! # Ok::<(), axlebow::beam::BeamError>(())
//! ```
//!
//! # An axle at rest
//! ```
//! use axlebow::{Model, TYPICAL, flex};
//! let typical = TYPICAL.iter().find(|own| own.name == "trailer-5-inch-duals").expect("a typical axle");
//! let model = Model::from_bytes(typical.text().as_bytes(), "trailer.toml").map_err(|problems| problems.render())?;
//! let outcome = flex(&model.axle, &model.cases).map_err(|error| error.to_string())?;
//! // The load bows the axle up between its seats: the tops lean in.
//! assert!(outcome.cases[0].wheels.left.camber_change < 0.0);
//! # Ok::<(), String>(())
//! ```
//!
//! # A ride over a bump
//! ```
//! use axlebow::{Model, RoadFile, TYPICAL, ride};
//! let model = Model::from_bytes(TYPICAL[0].text().as_bytes(), "axle.toml").map_err(|problems| problems.render())?;
//! let known = RoadFile::event("haversine-bump").expect("a road known by its name");
//! let bump = RoadFile::of(&known, "".as_ref()).map_err(|problems| problems.render())?;
//! let over_it = bump.ride(model.axle.loading.rated_load, 20.0);
//! let outcome = ride(&model.axle, &over_it).map_err(|error| error.to_string())?;
//! assert!(outcome.partial.is_none());
//! # Ok::<(), String>(())
//! ```
//!
//! # A study
//! ```
//! use axlebow::Study;
//! let text = r#"
//! name = "two walls"
//! kind = "sweep"
//! model = "models/trailer-152-thin-dual.toml"
//! case = "rated-load"
//! show = ["axle-mass", "camber-change"]
//! [[vary]]
//! path = "tube.wall"
//! values = ["9 mm", "12 mm"]
//! "#;
//! let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
//! let study = Study::from_bytes(text.as_bytes(), "walls.toml", &root).map_err(|problems| problems.render())?;
//! let outcome = study.run(&|_done, _of| ());
//! let lean = |row: usize| outcome.rows[row].value(outcome.standing("camber-change")?);
//! assert!(lean(1) > lean(0), "a heavier wall leans in less");
//! # Ok::<(), String>(())
//! ```

pub use axlebow_axle as axle;
pub use axlebow_axle::{
    Axle, AxleError, LifeOptions, LoadCase, Ride, RideBasis, Side, Sides, flex, growth, life, modes,
    response, ride, strength, tires,
};
pub use axlebow_beam as beam;
pub use axlebow_model::{Document, DutyFile, MODEL, Model, Problem, Problems, RoadFile, TYPICAL, read};
pub use axlebow_study::{Lasting, RatingOptions, RemedyOptions, Study, StudyOutcome, rating, remedies};
pub use axlebow_units::{Kind, UnitSystem, show};
