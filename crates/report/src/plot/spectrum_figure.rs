//! The spectrum of the camber over a ride, with the modes at its peaks.

use axlebow_axle::{Band, ModeOutcome, ModesOutcome, RideOutcome, Side, Sides, Spectrum, SpectrumPeak};
use axlebow_units::{Kind, show};

use super::ride_panel::Owner;
use super::spectrum_axes::SpectrumAxes;
use crate::number::{Numbers, fixed, significant};
use crate::panels::LogAxis;
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, SUBTITLE, TITLE, TITLE_LETTERS, TITLE_LINES, WIDTH};
use crate::svg::palette::{GROUND, INK, MUTED};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Left and right end of the plotting area.
const SIDES: [f64; 2] = [120.0, 1140.0];
/// Height of the plotting area.
const HEIGHT: f64 = 430.0;
/// Room over it for the axis of cup spacing.
const ABOVE: f64 = 72.0;
/// Peaks that are named.
const NAMED: usize = 6;
/// Highest frequency that is drawn, Hz: an axle on its tires moves little beyond.
const HIGHEST: f64 = 200.0;
/// Decades of density that are drawn under the highest.
const DECADES: i32 = 6;
/// Letters of a peak's name take about this much room each.
const LETTER: f64 = 8.6;

/// Draws the power spectral density of each wheel's camber change over frequency, both in equal ratios.
///
/// The highest peaks carry the names of the natural modes near them; thin dashed lines stand at the frequencies that
/// dominate. A second axis says how far apart the cups would be that each frequency prints at the ride's speed;
/// what is slower than the wheel turns is shaded.
///
/// - `modes`: of the same axle under the same load
///
/// # Errors
/// A ride of fewer than 16 samples or without any change of camber, or a value that is not finite.
pub fn spectrum_figure(
    outcome: &RideOutcome,
    modes: &ModesOutcome,
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    let none = ReportError::Empty { thing: "spectrum of the camber" };
    let spectra = outcome.history.camber_spectra().ok_or(none.clone())?;
    finite("camber change", spectra.left.density.iter().chain(&spectra.right.density).copied())?;
    let top = Side::BOTH.iter().flat_map(|side| spectra.of(*side).bands()).map(|band| band.density);
    let top = top.fold(0.0, f64::max);
    if top <= 0.0 {
        return Err(none);
    }
    let numbers = Numbers { system: card.system };
    let modes = outcome.movable(&modes.modes);
    let figure = SpectrumFigure { outcome, spectra, modes, card, numbers };
    Ok(figure.draw(top))
}

struct SpectrumFigure<'a> {
    outcome: &'a RideOutcome,
    spectra: Sides<Spectrum>,
    modes: Vec<ModeOutcome>,
    card: &'a ModelCard,
    numbers: Numbers,
}

impl SpectrumFigure<'_> {
    fn draw(&self, top: f64) -> Svg {
        let mut canvas = Canvas::default();
        let upper = self.draw_heading(&mut canvas) + ABOVE;
        let axes = self.axes(top, upper);
        self.shade_slow(&mut canvas, &axes);
        let unit = self.numbers.unit(Kind::Angle);
        let title = format!("Power spectral density of the camber change, {unit}\u{b2}/Hz");
        axes.draw(&mut canvas, &title);
        self.draw_spacing(&mut canvas, &axes);
        for side in Side::BOTH {
            self.draw_side(&mut canvas, &axes, side);
        }
        self.name_peaks(&mut canvas, &axes);
        let bottom = self.draw_foot(&mut canvas, upper + HEIGHT);
        let title = format!("{}: spectrum of camber, {}", self.card.name, self.outcome.name);
        canvas.finish([WIDTH, bottom], &title, &self.description())
    }

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let name = wrapped(&self.card.name, TITLE_LETTERS, TITLE_LINES);
        let mut level = TITLE.draw(canvas, name, [SIDES[0], FIRST_LINE]);
        let driven = format!("How the camber moves. Road: {}. Speed: {}.", self.outcome.name, self.speed());
        level = SUBTITLE.draw(canvas, wrapped(&driven, 120, 2), [SIDES[0], level]);
        canvas.label(NOTE.label(self.method(), [SIDES[0], level + 2.0]));
        level += 28.0;
        draw_legend(canvas, level);
        level
    }

    fn method(&self) -> String {
        let spectrum = &self.spectra.left;
        let line = significant(spectrum.line_width, 3);
        match spectrum.segments {
            1 => format!(
                "Periodogram of the whole ride, lines {line} Hz apart, joined to bands of 1/16 octave."
            ),
            count => format!(
                "Mean of {count} half-overlapping segments (Welch), lines {line} Hz apart, joined to bands of 1/16 \
                 octave."
            ),
        }
    }

    fn axes(&self, top: f64, upper: f64) -> SpectrumAxes {
        let spectrum = &self.spectra.left;
        let highest = spectrum.line_width * (spectrum.density.len() - 1) as f64;
        let top = 10f64.powf((2.0 * self.shown(top)).log10().ceil());
        SpectrumAxes {
            x: LogAxis { values: [spectrum.line_width, highest.min(HIGHEST)], ends: SIDES },
            y: LogAxis { values: [top * 10f64.powi(-DECADES), top], ends: [upper + HEIGHT, upper] },
        }
    }

    /// A density in the reader's unit, from rad²/Hz.
    fn shown(&self, density: f64) -> f64 {
        density * self.numbers.scaled(1.0, Kind::Angle).powi(2)
    }

    /// The axis of cup spacing over the plotting area, speed over frequency, up to once round the tire.
    fn draw_spacing(&self, canvas: &mut Canvas, axes: &SpectrumAxes) {
        let unit = self.numbers.unit(Kind::Length);
        let round = std::f64::consts::TAU * self.outcome.tire_radius;
        let title = format!("From cup to cup that the frequency would print at {}, {}", self.speed(), unit);
        axes.draw_inverse(
            canvas,
            &title,
            [self.outcome.speed, round].map(|length| self.numbers.scaled(length, Kind::Length)),
        );
    }

    /// Shades the frequencies slower than the wheel turns.
    fn shade_slow(&self, canvas: &mut Canvas, axes: &SpectrumAxes) {
        let [bottom, top] = axes.y.ends;
        let width = axes.x.at(self.wheel_frequency()) - SIDES[0];
        canvas.rectangle([SIDES[0], top], [width, bottom - top], &format!(r#"fill="{GROUND}""#));
    }

    fn draw_side(&self, canvas: &mut Canvas, axes: &SpectrumAxes, side: Side) {
        let bands = self.spectra.of(side).bands();
        let drawn = |band: &Band| axes.x.holds(band.frequency) && axes.y.holds(self.shown(band.density));
        for run in bands.chunk_by(|a, b| drawn(a) && drawn(b)).filter(|run| drawn(&run[0])) {
            let at = |band: &Band| axes.at(band.frequency, self.shown(band.density));
            canvas.polyline(&run.iter().map(at).collect::<Vec<Point>>(), &owner(side).style());
        }
        let dominant = self.outcome.wheels.of(side).dominant_frequency;
        if let Some(frequency) = dominant.filter(|frequency| axes.x.holds(*frequency)) {
            let x = axes.x.at(frequency);
            canvas.line([x, axes.y.ends[0]], [x, axes.y.ends[1]], &dominant_style());
        }
    }

    /// Names the peaks of the wheel that moves more, in rows so that no name stands on another.
    fn name_peaks(&self, canvas: &mut Canvas, axes: &SpectrumAxes) {
        let (mut ends, mut labels) = (Vec::<f64>::new(), Vec::new());
        for peak in self.peaks().iter().filter(|peak| axes.x.holds(peak.frequency)) {
            let [x, y] = axes.at(peak.frequency, self.shown(peak.density));
            let words = peak_words(peak);
            let half = 0.5 * LETTER * words.chars().count() as f64;
            let middle = x.clamp(SIDES[0] + half, SIDES[1] - half);
            let row = ends.iter().position(|end| *end < middle - half).unwrap_or(ends.len());
            ends.resize(ends.len().max(row + 1), 0.0);
            ends[row] = middle + half;
            let level = axes.y.ends[1] + 20.0 + 18.0 * row as f64;
            let leader = format!(r#"stroke="{MUTED}" stroke-width="0.8""#);
            canvas.line([x, y - 5.0], [x, (level + 5.0).min(y - 5.0)], &leader);
            canvas.disc([x, y], 3.5, &format!(r##"fill="{INK}" stroke="#ffffff""##));
            labels.push(Label::new(words, [middle, level]).middle().bold().halo());
        }
        labels.into_iter().for_each(|label| canvas.label(label));
    }

    fn peaks(&self) -> Vec<SpectrumPeak> {
        let Sides { left, right } = &self.spectra;
        let more = if right.variance() > left.variance() { right } else { left };
        more.peaks(&self.modes, NAMED)
    }

    /// Turns of the wheel in a second, Hz.
    fn wheel_frequency(&self) -> f64 {
        self.outcome.speed / (std::f64::consts::TAU * self.outcome.tire_radius)
    }

    fn draw_foot(&self, canvas: &mut Canvas, bottom: f64) -> f64 {
        let mut level = bottom + 70.0;
        let how = "Names are those of the undamped natural modes within 8 % of a peak; a peak without one is marked \
                   by its frequency alone.";
        canvas.label(NOTE.label(how, [SIDES[0], level]));
        let partial = self.outcome.partial.as_ref().map(|why| format!("Partial ride: {why}."));
        for line in partial.iter().flat_map(|text| wrapped(text, 130, 2)) {
            level += 18.0;
            canvas.label(Label::new(line, [SIDES[0], level]).size(12.0).bold());
        }
        if let Some(note) = self.card.invented_note() {
            level += 18.0;
            canvas.label(NOTE.label(note, [SIDES[0], level]));
        }
        level + 20.0
    }

    fn speed(&self) -> String {
        show(self.outcome.speed, Kind::Speed, self.card.system)
    }

    fn description(&self) -> String {
        let peaks: Vec<String> = self.peaks().iter().map(peak_words).collect();
        format!("Power spectral density of the camber change over frequency. Peaks: {}.", peaks.join("; "))
    }
}

/// What the lines and the shade mean.
fn draw_legend(canvas: &mut Canvas, level: f64) {
    let mut x = SIDES[0];
    for (side, words) in [(Side::Left, "left wheel"), (Side::Right, "right wheel")] {
        canvas.line([x, level], [x + 34.0, level], &owner(side).style());
        canvas.label(Label::new(words, [x + 42.0, level + 4.5]));
        x += 154.0;
    }
    canvas.line([x, level], [x + 34.0, level], &dominant_style());
    canvas.label(Label::new("frequency that dominates", [x + 42.0, level + 4.5]));
    canvas.rectangle([x + 240.0, level - 8.0], [34.0, 16.0], &format!(r#"fill="{GROUND}""#));
    let words = "slower than the wheel turns: prints no cups";
    canvas.label(Label::new(words, [x + 282.0, level + 4.5]));
}

fn peak_words(peak: &SpectrumPeak) -> String {
    let frequency = fixed(peak.frequency, 1);
    peak.mode.as_ref().map_or(format!("{frequency} Hz"), |mode| format!("{mode}, {frequency} Hz"))
}

fn owner(side: Side) -> Owner {
    match side {
        Side::Left => Owner::Left,
        Side::Right => Owner::Right,
    }
}

fn dominant_style() -> String {
    format!(r#"stroke="{INK}" stroke-width="1" stroke-dasharray="2 4""#)
}
