//! Force of the stiffeners' welds along the axle.

use axlebow_axle::{StiffenerOutcome, WeldForce};

use crate::ReportError;
use crate::number::{Numbers, Shown};
use crate::panels::{Curve, Panel};
use crate::svg::palette::{INK, SERIES};
use crate::svg::{Canvas, Label, Point};

/// Room over the highest peak, as a share of it.
const HEADROOM: f64 = 0.35;
/// Pieces of weld farther apart than this many of their lengths belong to two stitches.
const APART: f64 = 1.01;
/// Distance of a peak's label from its mark.
const BESIDE: f64 = 9.0;
/// Room that the words of a peak take along the axle.
const WIDTH: f64 = 150.0;
/// Height of a line of words.
const LINE: f64 = 17.0;
/// Distance of the first line of words from the top.
const FIRST_LINE: f64 = 15.0;

/// Force per length along the welds of stiffeners that only their welds hold; of two feet the one that carries more.
#[derive(Debug, Clone, Copy)]
pub(crate) struct WeldDiagram<'a> {
    /// The stiffeners of one case.
    pub stiffeners: &'a [StiffenerOutcome],
    /// The reader's units.
    pub numbers: Numbers,
}

impl WeldDiagram<'_> {
    /// Draws the diagram into a place on the canvas: where each stiffener works in full is shaded, the peak of each
    /// half is marked.
    pub fn draw(&self, canvas: &mut Canvas, place: Panel) -> Result<Panel, ReportError> {
        let peak = self.stiffeners.iter().map(|one| self.force(&one.peak)).fold(0.0, f64::max);
        let panel = Panel { y: [0.0, (1.0 + HEADROOM) * peak.max(f64::MIN_POSITIVE)], ..place };
        for (one, color) in self.colored() {
            self.shade(canvas, &panel, (one, color));
        }
        let curves: Vec<Curve> = self.colored().flat_map(|own| self.curves(own)).collect();
        panel.draw(canvas, &curves)?;
        Ok(panel)
    }

    /// Writes title, peaks and working lengths.
    pub fn draw_labels(&self, canvas: &mut Canvas, panel: &Panel) {
        let title = format!(
            "Force of the welds, each stiffener a bar that only its weld holds (the foot that carries more), {}",
            self.numbers.unit(Shown::ForcePerLength)
        );
        canvas.label(Label::new(title, [panel.corner[0], panel.corner[1] - 10.0]).bold().halo());
        let mut taken: Vec<Point> = Vec::new();
        for (number, (one, color)) in self.colored().enumerate() {
            self.label_peaks(canvas, panel, (one, color), &mut taken);
            let level = panel.corner[1] + FIRST_LINE + LINE * number as f64;
            let middle = self.place(panel, 0.5 * (one.reach[0] + one.reach[1]), 0.0)[0];
            let words = self.working_words(one);
            canvas.label(Label::new(words, [middle, level]).size(12.0).middle().color(color).halo());
        }
    }

    fn colored(&self) -> impl Iterator<Item = (&StiffenerOutcome, &'static str)> {
        let colors = SERIES[2..].iter().cycle().copied();
        self.stiffeners.iter().zip(colors)
    }

    fn shade(&self, canvas: &mut Canvas, panel: &Panel, (one, color): (&StiffenerOutcome, &str)) {
        for [right, left] in one.working_stretches() {
            let from = self.place(panel, left, panel.y[1]);
            let to = self.place(panel, right, panel.y[0]);
            let size = [to[0] - from[0], to[1] - from[1]];
            canvas.rectangle(from, size, &format!(r#"fill="{color}" fill-opacity="0.10""#));
        }
    }

    fn curves(&self, (one, color): (&StiffenerOutcome, &'static str)) -> Vec<Curve> {
        let runs = runs(&one.weld).into_iter();
        let curve = |run: Vec<WeldForce>| {
            let ends = [run[0].y, run[run.len() - 1].y];
            let inside = run.iter().map(|at| [at.y, self.force(at)]);
            let points = [[ends[0], 0.0]].into_iter().chain(inside).chain([[ends[1], 0.0]]);
            let points = points.map(|[y, force]| [self.numbers.scaled(y, Shown::Place), force]).collect();
            Curve { points, color, filled: true }
        };
        runs.map(curve).collect()
    }

    /// Marks the peak of each half, its value written outward of it, under those that stand there.
    ///
    /// - `taken`: where labels stand
    fn label_peaks(
        &self,
        canvas: &mut Canvas,
        panel: &Panel,
        (one, color): (&StiffenerOutcome, &'static str),
        taken: &mut Vec<Point>,
    ) {
        let middle = 0.5 * (one.reach[0] + one.reach[1]);
        for left in [true, false] {
            let half = one.weld.iter().filter(|at| (at.y > middle) == left);
            let Some(peak) = half.max_by(|a, b| a.magnitude().total_cmp(&b.magnitude())) else { continue };
            let at = self.place(panel, peak.y, self.force(peak));
            canvas.disc(at, 3.5, &format!(r##"fill="{color}" stroke="#ffffff""##));
            let words = self.peak_words(one, peak);
            let beside = if left { -BESIDE } else { BESIDE };
            let mut place = [at[0] + beside, at[1] + 4.0];
            let meets = |own: &Point, place: Point| {
                (own[0] - place[0]).abs() < WIDTH && (own[1] - place[1]).abs() < LINE
            };
            while taken.iter().any(|own| meets(own, place)) {
                place[1] += LINE;
            }
            taken.push(place);
            let label = Label::new(words, place).bold().color(INK).halo();
            canvas.label(if left { label.end() } else { label });
        }
    }

    fn peak_words(&self, one: &StiffenerOutcome, peak: &WeldForce) -> String {
        let value = self.numbers.full(peak.magnitude(), Shown::ForcePerLength);
        if self.stiffeners.len() > 1 { format!("{}: {value}", one.name) } else { value }
    }

    fn working_words(&self, one: &StiffenerOutcome) -> String {
        let length = |value| self.numbers.full(value, Shown::Place);
        if one.working_length > 0.0 {
            let (works, whole) = (length(one.working_length), length(one.length()));
            return format!("{} works in full over the {works} shaded, of {whole}", one.name);
        }
        format!("{} works in full nowhere along its {}", one.name, length(one.length()))
    }

    fn force(&self, at: &WeldForce) -> f64 {
        self.numbers.scaled(at.magnitude(), Shown::ForcePerLength)
    }

    fn place(&self, panel: &Panel, y: f64, force: f64) -> Point {
        panel.at(self.numbers.scaled(y, Shown::Place), force)
    }
}

/// Lengths of weld without a gap, from right to left, at each place the foot that carries more.
fn runs(weld: &[WeldForce]) -> Vec<Vec<WeldForce>> {
    let mut sorted = weld.to_vec();
    sorted.sort_by(|a, b| a.y.total_cmp(&b.y));
    let larger = |a: WeldForce, b: &WeldForce| if b.magnitude() > a.magnitude() { *b } else { a };
    let places = sorted.chunk_by(|a, b| a.y == b.y);
    let worse: Vec<WeldForce> = places.map(|feet| feet.iter().fold(feet[0], larger)).collect();
    let joined = |a: &WeldForce, b: &WeldForce| b.y - a.y <= APART * a.length.max(b.length);
    worse.chunk_by(joined).map(<[WeldForce]>::to_vec).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(y: f64, length: f64, along: f64) -> WeldForce {
        WeldForce { y, length, along, ..WeldForce::default() }
    }

    #[test]
    fn stitches_are_runs_of_their_own_and_the_worse_foot_counts() {
        let stitch = |y: f64, force: f64| {
            [piece(y, 0.01, force), piece(y + 0.02, 0.02, 5.0), piece(y + 0.04, 0.01, 1.0)]
        };
        let weld = [&stitch(0.0, 2.0)[..], &stitch(0.0, -9.0), &stitch(0.2, 3.0)].concat();
        let found = runs(&weld);
        assert_eq!(found.iter().map(Vec::len).collect::<Vec<_>>(), [3, 3]);
        assert_eq!(found[0][0].along, -9.0);
    }
}
