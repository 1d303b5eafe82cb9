//! From a beam file to a beam with what is asked of it.

use axlebow_beam::{
    BeamError, BeamOptions, Element, FreeMotion, Line, LineParts, Mesh, MovingForce, Part, Shaking, Theory,
};
use axlebow_units::{Kind, UnitSystem, show};

use crate::build::Builder;
use crate::content::{Assumed, Document, Table};
use crate::faults::{Problems, Span};
use crate::keys::BEAM;
use crate::read::read_bytes;

/// A beam of a file with what is asked of it.
#[derive(Debug, Clone)]
pub struct BeamFile {
    /// What it is called.
    pub name: String,
    /// Whether its numbers are invented for demonstration.
    pub invented: bool,
    /// The beam.
    pub line: Line,
    /// What is asked of it.
    pub options: BeamOptions,
    /// Hash of the file.
    pub hash: String,
    /// Defaults in use.
    pub assumed: Vec<Assumed>,
    /// How values were read, where that is not plain from the file.
    pub notes: Vec<String>,
    /// Unit system of the file.
    pub system: UnitSystem,
}

impl BeamFile {
    /// Reads a beam file.
    ///
    /// # Errors
    /// Every problem at once: those of any file, sections that cannot be, keys that do not go with a kind, places off the
    /// beam, a beam that its supports do not hold.
    pub fn from_bytes(bytes: &[u8], file_name: &str) -> Result<BeamFile, Problems> {
        BeamFile::of(&read_bytes(bytes, file_name, &BEAM)?)
    }

    /// The beam of a document; see [`from_bytes`](Self::from_bytes).
    ///
    /// # Errors
    /// As there.
    pub fn of(document: &Document) -> Result<BeamFile, Problems> {
        let mut builder = Builder::of(document);
        let spans = builder.spans();
        let (supports, masses, checks) = (builder.supports(), builder.masses(), builder.checks());
        let loads = builder.beam_loads(spans.as_deref().unwrap_or_default());
        let Some(spans) = spans.filter(|_| builder.problems.is_empty()) else { return Err(builder.problems) };
        let line = Line::new(LineParts { spans, supports, loads, masses });
        let line = line.map_err(|error| builder.refused(&error))?;
        if let Some(motion) = line.mechanism().filter(|_| line.is_loaded()) {
            return Err(builder.refused(&BeamError::Mechanism { motion }));
        }
        let root = document.root();
        let theory = match root.word("theory") {
            "timoshenko" => Theory::Timoshenko,
            _ => Theory::EulerBernoulli,
        };
        let mesh = Mesh { theory, element: Element::default(), elements: root.count("elements") as usize };
        let modes = root.optional_count("modes").map(|modes| modes as usize);
        Ok(BeamFile {
            name: root.text("name").to_owned(),
            invented: root.flag("invented"),
            line,
            options: BeamOptions {
                mesh,
                modes,
                convergence: Vec::new(),
                moving: root.optional_table("moving").map(moving),
                shaking: root.optional_table("shaking").map(shaking),
                checks,
            },
            hash: document.hash(),
            assumed: document.assumed().to_vec(),
            notes: document.notes(),
            system: document.system(),
        })
    }
}

/// A force that drives over the beam.
fn moving(table: &Table) -> MovingForce {
    MovingForce {
        force: table.number("force"),
        speed: table.number("speed"),
        damping: table.number("damping"),
        modes: table.count("modes") as usize,
        at: table.optional_number("at"),
    }
}

/// A force that shakes the beam.
fn shaking(table: &Table) -> Shaking {
    Shaking {
        at: table.number("at"),
        force: table.number("force"),
        frequencies: [table.number("from"), table.number("to")],
        points: table.count("points") as usize,
        damping: table.number("damping"),
        modes: table.count("modes") as usize,
        read_at: table.optional_number("read_at"),
    }
}

impl Builder<'_> {
    /// A refusal of the beam as a problem at its place, in the units of the file.
    fn refused(&mut self, error: &BeamError) -> Problems {
        let length = |value| show(value, Kind::Length, self.system);
        let (span, message, accepted) = match *error {
            BeamError::OffTheBeam { part, at, length: whole } => (
                self.place(part),
                format!("{part} is at {}, off the beam", length(at)),
                format!("a place from {} to {}", length(0.0), length(whole)),
            ),
            BeamError::SamePlace { part, at } => (
                self.place(part),
                format!("{part} is at {}, where there is a support already", length(at)),
                "one support at a place, with both stiffnesses".to_owned(),
            ),
            BeamError::Backward { part, from, to } => (
                self.place(part),
                format!("{part} runs from {} to {}", length(from), length(to)),
                "an end behind the start".to_owned(),
            ),
            BeamError::Mechanism { motion } => {
                let words = match motion {
                    FreeMotion::TurningAbout { at } => {
                        format!(
                            "nothing holds the beam against turning about its only support at {}",
                            length(at)
                        )
                    }
                    FreeMotion::All | FreeMotion::UpAndDown => motion.to_string(),
                };
                let place = self.root.tables("support").first().map_or(0..0, |table| table.span());
                (place, words, "a further support, a spring or a foundation that does".to_owned())
            }
            _ => (0..0, error.to_string(), String::new()),
        };
        let accepted = (!accepted.is_empty()).then_some(accepted);
        self.problems.push(span, message, accepted);
        self.problems.clone()
    }

    /// Where a part stands in the file.
    fn place(&self, part: Part) -> Span {
        let of =
            |key: &str, number: usize| self.root.tables(key).get(number).map_or(0..0, |table| table.span());
        match part {
            Part::Span(number) => of("span", number),
            Part::Support(number) => of("support", number),
            Part::Load(number) => of("load", number),
            Part::Mass(number) => of("mass", number),
            Part::Response | Part::Beam => 0..0,
        }
    }
}
