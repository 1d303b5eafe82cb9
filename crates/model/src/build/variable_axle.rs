//! An axle whose numbers are set one after the other: a number rebuilds only the parts that it touches.

use axlebow_axle::{Axle, LoadCase, StrengthOptions, standard_cases};

use super::builder::Builder;
use super::combine::with_combinations;
use super::model::Model;
use super::strength_build::strength_options;
use crate::content::{Document, NumberPlace};
use crate::faults::{ModelError, Problems};

/// An axle whose numbers are set one after the other, with one of its load cases.
///
/// It is at any time what [`Model::of`] makes of the document with these numbers; where that refuses them, it says so in
/// the same words.
#[derive(Debug, Clone)]
pub struct VariableAxle {
    document: Document,
    places: Vec<NumberPlace>,
    /// The numbers that were set last.
    numbers: Vec<Option<f64>>,
    /// What each number touches.
    touches: Vec<Touched>,
    case: String,
    /// What has been touched since the axle was built.
    touched: Touched,
    built: Option<(Axle, LoadCase)>,
}

/// Parts of an axle that are built from other keys than before.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
struct Touched {
    body: bool,
    wheel_ends: bool,
    wheels: bool,
    seats: bool,
    stiffeners: bool,
    masses: bool,
    stations: bool,
    loads: bool,
    /// Keys whose parts are not told apart.
    anything: bool,
}

impl VariableAxle {
    /// The axle of a document, of which the numbers at some paths can be set.
    ///
    /// - `paths`: keys that are in the document or have been set in it
    /// - `case`: name of a load case
    ///
    /// # Errors
    /// A path at which there is no number.
    pub fn of(document: &Document, paths: &[&str], case: &str) -> Result<Self, ModelError> {
        let places: Vec<NumberPlace> =
            paths.iter().map(|path| document.place_of_number(path)).collect::<Result<_, _>>()?;
        let touches = places.iter().map(|place| Touched::by(place.first_key())).collect();
        let (document, case) = (document.clone(), case.to_owned());
        let (numbers, touched) = (vec![None; places.len()], Touched::default());
        Ok(VariableAxle { document, places, numbers, touches, case, touched, built: None })
    }

    /// Sets a number (SI), by its place among the paths.
    ///
    /// # Errors
    /// A value that the reader of a file would refuse; the number is then as it was.
    pub fn set(&mut self, number: usize, value: f64) -> Result<(), ModelError> {
        if self.numbers[number] == Some(value) {
            return Ok(());
        }
        self.document.put_number(&self.places[number], value)?;
        self.numbers[number] = Some(value);
        self.touched = self.touched.and(self.touches[number]);
        Ok(())
    }

    /// Whether the axle that [`built`](Self::built) gives next differs from the one before in loads, tires, wheels and the
    /// stiffness of bearings at most.
    pub fn keeps_line(&self) -> bool {
        self.built.is_some() && !self.touched.changes_line()
    }

    /// The axle and its load case with the numbers as they are set.
    ///
    /// # Errors
    /// Those of [`Model::of`].
    pub fn built(&mut self) -> Result<(&Axle, &LoadCase), Problems> {
        if self.rebuild().is_none() {
            self.built = Some(self.whole()?);
        }
        self.touched = Touched::default();
        // There is one by now.
        self.built.as_ref().map(|(axle, case)| (axle, case)).ok_or_else(|| self.document.problems())
    }

    /// What strength is asked for with the numbers as they are set.
    pub fn strength(&self) -> StrengthOptions {
        strength_options(self.document.root().table("strength"))
    }

    /// All load cases with the numbers as they are set, as [`Model::cases`].
    ///
    /// # Errors
    /// Those of [`Model::of`].
    pub fn load_cases(&mut self) -> Result<Vec<LoadCase>, Problems> {
        let standard = standard_cases(self.built()?.0);
        let mut problems = self.document.problems();
        let cases = with_combinations(self.document.root(), standard, &mut problems);
        if problems.is_empty() { Ok(cases) } else { Err(problems) }
    }

    /// Everything built anew.
    fn whole(&self) -> Result<(Axle, LoadCase), Problems> {
        let mut model = Model::of(&self.document)?;
        match model.cases.iter().position(|case| case.name == self.case) {
            Some(place) => Ok((model.axle, model.cases.swap_remove(place))),
            None => {
                let mut problems = self.document.problems();
                problems.push(0..0, format!("the model has no load case {:?}", self.case), None);
                Err(problems)
            }
        }
    }

    /// Builds anew the parts that are touched; none where something does not fit, and they stay touched.
    fn rebuild(&mut self) -> Option<()> {
        let Self { document, touched, built, .. } = self;
        let (axle, case) = built.as_mut().filter(|_| !touched.anything)?;
        let mut builder = Builder::of(document);
        if touched.body {
            axle.body = builder.body()?;
            axle.weld_keep_out = builder.weld_keep_out();
        }
        if touched.wheels {
            axle.wheels = builder.wheels()?;
        }
        // Bearings are as stiff as the load of their wheel makes them.
        if touched.wheel_ends || touched.wheels || touched.loads {
            let wheel_load = builder.wheel_load();
            axle.wheel_ends = if touched.wheel_ends {
                builder.wheel_ends(&axle.wheels, wheel_load)?
            } else {
                builder.loaded_wheel_ends(&axle.wheel_ends, &axle.wheels, wheel_load)?
            };
        }
        // What bears on the wall and of what a stiffener is may follow the body.
        if touched.seats || touched.body {
            axle.seats = builder.seats(&axle.body)?;
        }
        if touched.stiffeners || touched.body {
            axle.stiffeners = builder.stiffeners(&axle.body)?;
        }
        touched.rebuild_burdens(&builder, axle);
        if touched.loads {
            // Combinations are made with all others.
            *case = LoadCase::standard(axle, &self.case)?;
        }
        (builder.problems.is_empty() && axle.validation_errors().is_empty()).then_some(())
    }
}

/// Whether the line of an axle (its places, what bends between them, its seats) may change with the number at a path.
pub fn changes_line(path: &str) -> bool {
    let end = path.find(['.', '[']).unwrap_or(path.len());
    Touched::by(&path[..end]).changes_line()
}

impl Touched {
    /// What a number below a first key touches.
    fn by(first_key: &str) -> Self {
        let nothing = Touched::default();
        match first_key {
            "material" | "spindle_material" | "spindle" | "tube" | "housing" => {
                Touched { body: true, ..nothing }
            }
            "wheel_end" => Touched { wheel_ends: true, ..nothing },
            "wheel" => Touched { wheels: true, ..nothing },
            "seat" => Touched { seats: true, ..nothing },
            "stiffener" => Touched { stiffeners: true, ..nothing },
            "mass" => Touched { masses: true, ..nothing },
            "station" => Touched { stations: true, ..nothing },
            "loads" => Touched { loads: true, ..nothing },
            _ => Touched { anything: true, ..nothing },
        }
    }

    fn changes_line(self) -> bool {
        self != Touched { loads: self.loads, wheels: self.wheels, ..Touched::default() }
    }

    /// Masses, stations and loads, where they are touched.
    fn rebuild_burdens(self, builder: &Builder, axle: &mut Axle) {
        if self.masses {
            axle.fixed_masses = builder.fixed_masses();
        }
        if self.stations {
            axle.stations = builder.stations();
        }
        if self.loads {
            let loads = builder.loads();
            (axle.loading, axle.ground) = (loads.loading, loads.ground);
            (axle.body_height, axle.body_roll_radius) = (loads.body_height, loads.body_roll_radius);
            axle.body_roll_stiffness = loads.body_roll_stiffness;
            axle.body_roll_damping = loads.body_roll_damping;
        }
    }

    /// What either has touched.
    fn and(self, other: Touched) -> Self {
        Touched {
            body: self.body || other.body,
            wheel_ends: self.wheel_ends || other.wheel_ends,
            wheels: self.wheels || other.wheels,
            seats: self.seats || other.seats,
            stiffeners: self.stiffeners || other.stiffeners,
            masses: self.masses || other.masses,
            stations: self.stations || other.stations,
            loads: self.loads || other.loads,
            anything: self.anything || other.anything,
        }
    }
}
