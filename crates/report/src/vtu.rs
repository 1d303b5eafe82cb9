//! An axle and the walls at its seats as a VTK XML unstructured grid (`.vtu`), for programs that draw fields.
//!
//! Lines along the axle and quadrilaterals of shells, with displacement and stress at their points, in SI. The format is
//! that of the open VTK file formats description, version 1.0, in ASCII.

use std::fmt::Write as _;

use axlebow_axle::{CaseOutcome, SeatPicture};

use crate::ModelCard;

/// VTK's number of a line and of a quadrilateral.
const LINE: u8 = 3;
const QUAD: u8 = 9;

/// Points with their fields and cells over them.
#[derive(Debug, Default)]
struct Grid {
    points: Vec<[f64; 3]>,
    displacements: Vec<[f64; 3]>,
    /// Fiber stress of the axle, or von Mises stress on the outer face of a wall, Pa.
    outer: Vec<f64>,
    /// The same on the inner face of a wall; that of the axle again.
    inner: Vec<f64>,
    cells: Vec<Vec<usize>>,
}

/// The document of one load case: the axle as a line, and the shells of its seats where they were solved.
///
/// Displacements are in the frame of the vehicle body, those of shells with the motion of the axle at their seat.
pub fn vtu(case: &CaseOutcome, seats: &[SeatPicture], card: &ModelCard) -> String {
    let mut grid = Grid::default();
    grid.add_axle(case);
    seats.iter().for_each(|seat| grid.add_seat(seat));
    grid.text(&card.provenance())
}

impl Grid {
    fn add_axle(&mut self, case: &CaseOutcome) {
        for point in &case.diagram {
            self.points.push([0.0, point.y, 0.0]);
            self.displacements.push([point.ux, 0.0, point.uz]);
            self.outer.push(point.stress.abs());
            self.inner.push(point.stress.abs());
        }
        let ends = case.diagram.windows(2).enumerate();
        self.cells.extend(ends.filter(|(_, pair)| pair[0].y != pair[1].y).map(|(k, _)| vec![k, k + 1]));
    }

    fn add_seat(&mut self, seat: &SeatPicture) {
        let first = self.points.len();
        let [ux, uy, uz, rx, ry, rz] = seat.motion;
        for (k, [x, y, z]) in seat.wall.points.iter().copied().enumerate() {
            let [own_x, own_y, own_z] = seat.wall.displacements[k];
            self.points.push([x, seat.y + y, z]);
            self.displacements.push([
                own_x + ux + ry * z - rz * y,
                own_y + uy + rz * x - rx * z,
                own_z + uz + rx * y - ry * x,
            ]);
            let [outer, inner] = seat.wall.stress[k];
            self.outer.push(outer);
            self.inner.push(inner);
        }
        self.cells.extend(seat.wall.quads.iter().map(|quad| quad.iter().map(|k| first + k).collect()));
    }

    fn text(&self, provenance: &[String]) -> String {
        // Two hyphens would end the comment.
        let provenance = provenance.join("\n").replace("--", "- -");
        let mut text = format!(
            "<?xml version=\"1.0\"?>\n<!--\n{provenance}\n-->\n<VTKFile type=\"UnstructuredGrid\" version=\"1.0\" byte_order=\"LittleEndian\">\n<UnstructuredGrid>\n",
        );
        let _ = writeln!(
            text,
            "<Piece NumberOfPoints=\"{}\" NumberOfCells=\"{}\">",
            self.points.len(),
            self.cells.len()
        );
        text += "<PointData Vectors=\"displacement_m\" Scalars=\"outer_stress_pa\">\n";
        vectors(&mut text, "displacement_m", &self.displacements);
        numbers(&mut text, ("Float64", "outer_stress_pa"), self.outer.iter().map(|x| format!("{x:e}")));
        numbers(&mut text, ("Float64", "inner_stress_pa"), self.inner.iter().map(|x| format!("{x:e}")));
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
        let mut grid =
            Grid { points: vec![[0.0; 3]; 6], displacements: vec![[0.0; 3]; 6], ..Grid::default() };
        (grid.outer, grid.inner) = (vec![1.0; 6], vec![2.0; 6]);
        grid.cells = vec![vec![0, 1], vec![2, 3, 4, 5]];
        let text = grid.text(&["made by hand -- twice".to_owned()]);
        assert!(text.contains("<!--\nmade by hand - - twice\n-->"), "{text}");
        assert!(text.contains("NumberOfPoints=\"6\" NumberOfCells=\"2\""));
        assert!(text.contains("Name=\"offsets\" format=\"ascii\">\n2\n6\n</DataArray>"));
        assert!(text.contains("Name=\"types\" format=\"ascii\">\n3\n9\n</DataArray>"));
        let opened = text.matches("<DataArray").count();
        assert_eq!((opened, text.matches("</DataArray>").count()), (7, 7));
    }
}
