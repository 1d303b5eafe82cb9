//! An axle and the walls at its seats as VTK XML unstructured grids (`.vtu`), for programs that draw fields; the moments of a
//! ride as a collection of them (`.pvd`).
//!
//! Lines along the axle and its stiffeners and quadrilaterals of shells, with fields at their points, in SI. The format is
//! that of the open VTK file formats description, version 1.0, in ASCII.

use std::fmt::Write as _;

use axlebow_axle::{Axle, CaseOutcome, ModesOutcome, RideOutcome, SeatPicture};

use crate::ModelCard;
use crate::sheet::Silhouette;

/// VTK's number of a line and of a quadrilateral.
const LINE: u8 = 3;
const QUAD: u8 = 9;

/// What a point is a part of.
#[derive(Debug, Clone, Copy)]
enum Part {
    Axle = 0,
    SeatWall = 1,
    Stiffener = 2,
}

/// Points, cells over them, and fields at them.
#[derive(Debug, Default)]
struct Grid {
    points: Vec<[f64; 3]>,
    cells: Vec<Vec<usize>>,
    vectors: Vec<(String, Vec<[f64; 3]>)>,
    scalars: Vec<(&'static str, Vec<f64>)>,
}

/// The document of one load case: the axle and its stiffeners as lines, and the shells of its seats where they were solved.
///
/// Displacements are in the frame of the vehicle body, those of shells with the motion of the axle at their seat, those of
/// stiffeners as of the axle under them. Stress is the fiber stress of the axle, or von Mises stress on both faces of a wall;
/// moment and shear are those of the axle with its stiffeners, 0 elsewhere.
pub fn vtu(case: &CaseOutcome, axle: &Axle, seats: &[SeatPicture], card: &ModelCard) -> String {
    let mut flexed = Flexed::default();
    flexed.add_axle(case);
    seats.iter().for_each(|seat| flexed.add_seat(seat));
    let stiffeners = axle.stiffeners.iter().filter_map(|own| Silhouette::of(axle, own));
    stiffeners.for_each(|own| flexed.add_stiffener(case, &own));
    flexed.grid().text(&card.provenance())
}

/// The natural modes along the axle, a field of displacement each; the largest motion of a mode is 1 m.
pub fn modes_vtu(modes: &ModesOutcome, card: &ModelCard) -> String {
    let mut grid = Grid::default();
    if let Some(first) = modes.modes.first() {
        grid.add_line(&first.shape.iter().map(|point| point.y).collect::<Vec<_>>());
    }
    for (number, mode) in modes.modes.iter().enumerate() {
        let name = format!("mode_{}_{:.2}_hz_m", number + 1, mode.frequency);
        let motions = mode.shape.iter().map(|point| [point.motion[0], point.motion[1], point.motion[2]]);
        grid.vectors.push((name, motions.collect()));
    }
    grid.text(&card.provenance())
}

/// A moment of a ride.
#[derive(Debug, Clone, PartialEq)]
pub struct RideMoment {
    /// Time, s.
    pub time: f64,
    /// Its grid.
    pub vtu: String,
}

/// The moments of a ride whose shapes were kept, each the axle's line with its rise.
pub fn ride_moments(outcome: &RideOutcome, card: &ModelCard) -> Vec<RideMoment> {
    let places: Vec<f64> = outcome.stations.iter().map(|station| station.y).collect();
    let moment = |shape: &axlebow_axle::RideShape| {
        let mut grid = Grid::default();
        grid.add_line(&places);
        let rises = shape.line.iter().map(|rise| [0.0, 0.0, rise.up]);
        grid.vectors.push(("displacement_m".to_owned(), rises.collect()));
        grid.scalars.push(("turn_rad", shape.line.iter().map(|rise| rise.turn).collect()));
        RideMoment { time: outcome.history.time[shape.sample], vtu: grid.text(&card.provenance()) }
    };
    outcome.history.shapes.iter().map(moment).collect()
}

/// The collection that names the files of moments, with their times.
pub fn collection(files: &[(f64, String)]) -> String {
    let mut text =
        "<?xml version=\"1.0\"?>\n<VTKFile type=\"Collection\" version=\"1.0\">\n<Collection>\n".to_owned();
    for (time, file) in files {
        let file = crate::svg::escaped(file);
        let _ = writeln!(text, "<DataSet timestep=\"{time:e}\" file=\"{file}\"/>");
    }
    text + "</Collection>\n</VTKFile>\n"
}

/// What a load case does, point by point.
#[derive(Debug, Default)]
struct Flexed {
    points: Vec<[f64; 3]>,
    cells: Vec<Vec<usize>>,
    displacements: Vec<[f64; 3]>,
    /// Stress on the outer and the inner face, moment about X, shear along Z, and part.
    fields: Vec<[f64; 5]>,
}

impl Flexed {
    fn add(&mut self, point: [f64; 3], displacement: [f64; 3], fields: [f64; 4], part: Part) {
        self.points.push(point);
        self.displacements.push(displacement);
        let [outer, inner, moment, shear] = fields;
        self.fields.push([outer, inner, moment, shear, f64::from(part as u8)]);
    }

    fn add_axle(&mut self, case: &CaseOutcome) {
        for point in &case.diagram {
            let (stress, r) = (point.stress.abs(), point.resultants);
            let fields = [stress, stress, r.moment_x, r.shear_z];
            self.add([0.0, point.y, 0.0], [point.ux, 0.0, point.uz], fields, Part::Axle);
        }
        let ends = case.diagram.windows(2).enumerate();
        self.cells.extend(ends.filter(|(_, pair)| pair[0].y != pair[1].y).map(|(k, _)| vec![k, k + 1]));
    }

    fn add_seat(&mut self, seat: &SeatPicture) {
        let first = self.points.len();
        let [ux, uy, uz, rx, ry, rz] = seat.motion;
        for (k, [x, y, z]) in seat.wall.points.iter().copied().enumerate() {
            let [own_x, own_y, own_z] = seat.wall.displacements[k];
            let moved =
                [own_x + ux + ry * z - rz * y, own_y + uy + rz * x - rx * z, own_z + uz + rx * y - ry * x];
            let [outer, inner] = seat.wall.stress[k];
            self.add([x, seat.y + y, z], moved, [outer, inner, 0.0, 0.0], Part::SeatWall);
        }
        self.cells.extend(seat.wall.quads.iter().map(|quad| quad.iter().map(|k| first + k).collect()));
    }

    /// Both edges of a stiffener, bent with the axle.
    fn add_stiffener(&mut self, case: &CaseOutcome, stiffener: &Silhouette) {
        for edge in stiffener.edges() {
            let first = self.points.len();
            for [y, z] in &edge {
                self.add([0.0, *y, *z], at(case, *y), [0.0; 4], Part::Stiffener);
            }
            self.cells.extend((1..edge.len()).map(|k| vec![first + k - 1, first + k]));
        }
    }

    fn grid(self) -> Grid {
        let names = ["outer_stress_pa", "inner_stress_pa", "moment_x_n_m", "shear_z_n", "part"];
        let field = |(number, name)| (name, self.fields.iter().map(|own| own[number]).collect());
        Grid {
            scalars: names.into_iter().enumerate().map(field).collect(),
            points: self.points,
            cells: self.cells,
            vectors: vec![("displacement_m".to_owned(), self.displacements)],
        }
    }
}

/// Displacement of the axle at a place, between its points.
fn at(case: &CaseOutcome, y: f64) -> [f64; 3] {
    // The diagram runs from left to right.
    let pair = case.diagram.windows(2).find(|pair| pair[0].y >= y && y >= pair[1].y && pair[0].y > pair[1].y);
    pair.map_or([0.0; 3], |pair| {
        let share = (pair[0].y - y) / (pair[0].y - pair[1].y);
        let between = |value: fn(&axlebow_axle::DiagramPoint) -> f64| {
            value(&pair[0]) + share * (value(&pair[1]) - value(&pair[0]))
        };
        [between(|point| point.ux), 0.0, between(|point| point.uz)]
    })
}

impl Grid {
    /// A line through places along the axle.
    fn add_line(&mut self, places: &[f64]) {
        self.points.extend(places.iter().map(|y| [0.0, *y, 0.0]));
        let apart = places.windows(2).enumerate().filter(|(_, pair)| pair[0] != pair[1]);
        self.cells.extend(apart.map(|(k, _)| vec![k, k + 1]));
    }

    fn text(&self, provenance: &[String]) -> String {
        // Two hyphens would end the comment.
        let provenance = provenance.join("\n").replace("--", "- -");
        let mut text = format!(
            "<?xml version=\"1.0\"?>\n<!--\n{provenance}\n-->\n<VTKFile type=\"UnstructuredGrid\" version=\"1.0\" byte_order=\"LittleEndian\">\n<UnstructuredGrid>\n",
        );
        let (points, cells) = (self.points.len(), self.cells.len());
        let _ = writeln!(text, "<Piece NumberOfPoints=\"{points}\" NumberOfCells=\"{cells}\">\n<PointData>");
        for (name, values) in &self.vectors {
            vectors(&mut text, name, values);
        }
        for (name, values) in &self.scalars {
            numbers(&mut text, ("Float64", name), values.iter().map(|x| format!("{x:e}")));
        }
        text += "</PointData>\n<Points>\n";
        vectors(&mut text, "points_m", &self.points);
        text += "</Points>\n<Cells>\n";
        let corners = self.cells.iter().flatten().map(usize::to_string);
        numbers(&mut text, ("Int64", "connectivity"), corners);
        let mut end = 0;
        let ends = self.cells.iter().map(|cell| {
            end += cell.len();
            end.to_string()
        });
        numbers(&mut text, ("Int64", "offsets"), ends);
        let kinds = self.cells.iter().map(|cell| if cell.len() == 2 { LINE } else { QUAD }.to_string());
        numbers(&mut text, ("UInt8", "types"), kinds);
        text + "</Cells>\n</Piece>\n</UnstructuredGrid>\n</VTKFile>\n"
    }
}

fn vectors(text: &mut String, name: &str, values: &[[f64; 3]]) {
    let _ = writeln!(
        text,
        "<DataArray type=\"Float64\" Name=\"{name}\" NumberOfComponents=\"3\" format=\"ascii\">"
    );
    for [x, y, z] in values {
        let _ = writeln!(text, "{x:e} {y:e} {z:e}");
    }
    text.push_str("</DataArray>\n");
}

fn numbers(text: &mut String, (kind, name): (&str, &str), values: impl Iterator<Item = String>) {
    let _ = writeln!(text, "<DataArray type=\"{kind}\" Name=\"{name}\" format=\"ascii\">");
    for value in values {
        text.push_str(&value);
        text.push('\n');
    }
    text.push_str("</DataArray>\n");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_grid_says_how_much_it_holds() {
        let grid = Grid {
            points: vec![[0.0; 3]; 6],
            cells: vec![vec![0, 1], vec![2, 3, 4, 5]],
            vectors: vec![("displacement_m".to_owned(), vec![[0.0; 3]; 6])],
            scalars: vec![("outer_stress_pa", vec![1.0; 6]), ("inner_stress_pa", vec![2.0; 6])],
        };
        let text = grid.text(&["made by hand -- twice".to_owned()]);
        assert!(text.contains("<!--\nmade by hand - - twice\n-->"), "{text}");
        assert!(text.contains("NumberOfPoints=\"6\" NumberOfCells=\"2\""));
        assert!(text.contains("Name=\"offsets\" format=\"ascii\">\n2\n6\n</DataArray>"));
        assert!(text.contains("Name=\"types\" format=\"ascii\">\n3\n9\n</DataArray>"));
        let opened = text.matches("<DataArray").count();
        assert_eq!((opened, text.matches("</DataArray>").count()), (7, 7));
    }

    #[test]
    fn a_collection_names_files_whatever_they_are_called() {
        let text = collection(&[(0.0, "a-0000.vtu".to_owned()), (0.5, "<b>\"&.vtu".to_owned())]);
        assert!(text.contains("<DataSet timestep=\"0e0\" file=\"a-0000.vtu\"/>"), "{text}");
        assert!(text.contains("&lt;b&gt;&quot;&amp;.vtu"), "{text}");
    }
}
