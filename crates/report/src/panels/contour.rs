//! Lines of equal value over a grid of values.

use crate::svg::Point;

/// A grid of values: `values[i][j]` stands at `x[j]`, `y[i]`; a place without a value takes its neighbors' lines
/// away.
pub(crate) struct Field {
    /// Places along the horizontal axis, in order.
    pub x: Vec<f64>,
    /// Places along the vertical axis, in order.
    pub y: Vec<f64>,
    /// Values, a row for each place of the vertical axis.
    pub values: Vec<Vec<Option<f64>>>,
}

impl Field {
    /// Pieces of the line on which the field has a level, by linear interpolation over two triangles a cell: a
    /// triangle has one way only to be crossed.
    pub fn contour(&self, level: f64) -> Vec<[Point; 2]> {
        let cells = (1..self.y.len()).flat_map(|i| (1..self.x.len()).map(move |j| (i, j)));
        let triangles = cells
            .flat_map(|(i, j)| [[(i - 1, j - 1), (i - 1, j), (i, j)], [(i - 1, j - 1), (i, j), (i, j - 1)]]);
        triangles.filter_map(|corners| self.crossing(corners, level)).collect()
    }

    fn crossing(&self, corners: [(usize, usize); 3], level: f64) -> Option<[Point; 2]> {
        let corner = |(i, j): (usize, usize)| Some(([self.x[j], self.y[i]], self.values[i][j]? - level));
        let [a, b, c] = corners.map(corner);
        let (a, b, c) = (a?, b?, c?);
        let ends: Vec<Point> = [(a, b), (b, c), (c, a)].into_iter().filter_map(between).collect();
        <[Point; 2]>::try_from(ends).ok()
    }
}

/// Where the value passes zero between two corners.
fn between(((from, a), (to, b)): ((Point, f64), (Point, f64))) -> Option<Point> {
    ((a < 0.0) != (b < 0.0)).then(|| [0, 1].map(|k| from[k] + (to[k] - from[k]) * a / (a - b)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contours_of_a_plane_are_straight() {
        let x: Vec<f64> = (0..5).map(f64::from).collect();
        let y: Vec<f64> = (0..4).map(|i| 0.5 * f64::from(i)).collect();
        let plane = |x: f64, y: f64| 2.0 * x + 3.0 * y;
        let values = y.iter().map(|y| x.iter().map(|x| Some(plane(*x, *y))).collect()).collect();
        let pieces = Field { x, y, values }.contour(4.1);
        assert!(pieces.len() > 4);
        for [x, y] in pieces.into_iter().flatten() {
            assert!((plane(x, y) - 4.1).abs() < 1e-12);
        }
    }

    #[test]
    fn a_missing_value_leaves_a_gap() {
        let values = vec![vec![Some(0.0), Some(1.0)], vec![None, Some(1.0)]];
        let field = Field { x: vec![0.0, 1.0], y: vec![0.0, 1.0], values };
        assert_eq!(field.contour(0.5).len(), 1);
    }
}
