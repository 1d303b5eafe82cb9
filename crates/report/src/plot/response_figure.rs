//! Answers over frequency: camber, load and stress per road height, and their spectra over a random road.

use axlebow_axle::{RandomAnswer, ResponseOutcome};
use axlebow_units::{Kind, show};

use crate::number::{Numbers, Shown};
use crate::panels::finite;
use crate::panels::layout::{
    FIRST_LINE, FOOT, LEFT, NOTE, SUBTITLE, TITLE, TITLE_LETTERS, TITLE_LINES, WIDTH,
};
use crate::panels::spread;
use crate::panels::{LogCurve, LogPanel, Place, log_share};
use crate::svg::palette::FAINT;
use crate::svg::{Canvas, Label};
use crate::words::response::{Answered, answered, height_unit, per_height, road_words};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Right end of the plotting area.
const RIGHT: f64 = 1150.0;
/// Height of a panel.
const HEIGHT: f64 = 190.0;
/// Room between panels, with the title of the lower one.
const BETWEEN: f64 = 44.0;
/// Room over the first panel for the modes' names and its title.
const ABOVE: f64 = 92.0;
/// Modes that are named, and the room that a name takes.
const NAMES: usize = 8;
const NAME_WIDTH: f64 = 134.0;
/// Decades of a panel; a density goes with the square.
const DECADES: f64 = 3.5;

/// Draws transfer functions over frequency on logarithmic axes, a panel each for camber change, wheel load and
/// fiber stress; over a random road the spectral densities of the three in panels below.
///
/// Peaks are marked, and the modes that make them named over the panels.
///
/// - `card`: name of the model and units
///
/// # Errors
/// No frequencies, or a value that is not finite.
pub fn response_figure(outcome: &ResponseOutcome, card: &ModelCard) -> Result<Svg, ReportError> {
    let answers = answered(outcome);
    if outcome.frequencies.is_empty() {
        return Err(ReportError::Empty { thing: "list of frequencies" });
    }
    finite("frequency", outcome.frequencies.iter().copied())?;
    for answer in &answers {
        finite("transfer function", answer.transfer.gains().into_iter())?;
        finite("spectral density", answer.random.iter().flat_map(|random| random.density.iter().copied()))?;
    }
    Ok(ResponseFigure { outcome, answers, card, n: Numbers { system: card.system } }.draw())
}

struct ResponseFigure<'a> {
    outcome: &'a ResponseOutcome,
    answers: Vec<Answered<'a>>,
    card: &'a ModelCard,
    n: Numbers,
}

impl ResponseFigure<'_> {
    fn draw(&self) -> Svg {
        let mut canvas = Canvas::default();
        let first = self.draw_heading(&mut canvas) + ABOVE;
        let panels = self.panels();
        let step = HEIGHT + BETWEEN;
        let bottom = first + step * panels.len() as f64 - BETWEEN;
        self.draw_modes(&mut canvas, first, bottom);
        for (i, panel) in panels.iter().enumerate() {
            let place = Place { corner: [LEFT, first + step * i as f64], size: [RIGHT - LEFT, HEIGHT] };
            panel.draw(&mut canvas, place, i + 1 == panels.len());
        }
        if let Some(note) = self.card.invented_note() {
            canvas.label(NOTE.label(note, [LEFT, bottom + 66.0]));
        }
        let title = format!("{}: answers over frequency", self.card.name);
        canvas.finish([WIDTH, bottom + FOOT], &title, &self.description())
    }

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let name = wrapped(&self.card.name, TITLE_LETTERS, TITLE_LINES);
        let level = TITLE.draw(canvas, name, [LEFT, FIRST_LINE]);
        SUBTITLE.draw(canvas, wrapped(&self.subject(), 130, 2), [LEFT, level]) - 14.0
    }

    fn subject(&self) -> String {
        let random = self.outcome.random.as_ref().map_or(String::new(), |random| {
            format!(" Spectra over {} at {}.", random.name, show(random.speed, Kind::Speed, self.n.system))
        });
        format!("Transfer functions where {}.{random}", road_words(self.outcome.input))
    }

    fn panels(&self) -> Vec<LogPanel> {
        let groups = || self.answers.chunk_by(|a, b| a.shown == b.shown);
        let transfers = groups().map(|group| {
            let title =
                format!("{}, {} of road height", titled(&group[0]), height_unit(self.n, group[0].shown));
            self.panel((title, DECADES), group, |answer| self.transfer(answer))
        });
        let random = groups().filter(|group| group[0].random.is_some()).map(|group| {
            let title =
                format!("Spectral density of {}, {}\u{b2}/Hz", group[0].what, self.n.unit(group[0].shown));
            self.panel((title, 2.0 * DECADES), group, |answer| self.density(answer))
        });
        transfers.chain(random).collect()
    }

    fn panel(
        &self,
        (title, decades): (String, f64),
        group: &[Answered],
        curve: impl Fn(&Answered) -> LogCurve,
    ) -> LogPanel {
        LogPanel { title, curves: group.iter().map(curve).collect(), frequencies: self.ends(), decades }
    }

    fn ends(&self) -> [f64; 2] {
        let frequencies = &self.outcome.frequencies;
        [frequencies[0], frequencies[frequencies.len() - 1]]
    }

    fn transfer(&self, answer: &Answered) -> LogCurve {
        let value = |gain: f64| per_height(self.n, gain, answer.shown);
        let pairs = self.outcome.frequencies.iter().zip(answer.transfer.gains());
        let peaks = answer.transfer.resonances.iter();
        LogCurve {
            name: wrapped(answer.whose, 24, 1).concat(),
            points: pairs.map(|(frequency, gain)| [*frequency, value(gain)]).collect(),
            marks: peaks.map(|peak| [peak.frequency, value(peak.gain)]).collect(),
        }
    }

    fn density(&self, answer: &Answered) -> LogCurve {
        let frequencies = self.outcome.random.iter().flat_map(|random| &random.frequencies);
        let densities = answer.random.iter().flat_map(|random: &&RandomAnswer| &random.density);
        let unit = self.n.scaled(1.0, answer.shown).powi(2);
        LogCurve {
            name: wrapped(answer.whose, 24, 1).concat(),
            points: frequencies
                .zip(densities)
                .map(|(frequency, density)| [*frequency, density * unit])
                .collect(),
            marks: Vec::new(),
        }
    }

    /// Names of the modes that make peaks, at their own frequencies.
    fn draw_modes(&self, canvas: &mut Canvas, top: f64, bottom: f64) {
        let modes = self.named_modes();
        let places: Vec<f64> =
            modes.iter().map(|(_, f)| LEFT + (RIGHT - LEFT) * log_share(*f, self.ends())).collect();
        let mut wanted = spread(&places, NAME_WIDTH);
        let mut limit = WIDTH - 0.55 * NAME_WIDTH;
        for place in wanted.iter_mut().rev() {
            *place = place.min(limit);
            limit = *place - NAME_WIDTH;
        }
        let style = format!(r#"stroke="{FAINT}" stroke-width="1" stroke-dasharray="2 3""#);
        for (((name, frequency), x), label) in modes.iter().zip(&places).zip(&wanted) {
            let text = format!("{name} ({})", crate::number::significant(*frequency, 3));
            canvas.label(Label::new(text, [*label, top - 56.0]).size(12.0).middle());
            canvas.polyline(&[[*label, top - 50.0], [*x, top - 32.0]], &style);
            canvas.line([*x, top - 32.0], [*x, bottom], &style);
        }
        if !modes.is_empty() {
            let text = "Natural modes (Hz):";
            canvas.label(NOTE.label(text, [LEFT, top - 74.0]));
        }
    }

    /// Those that the largest peaks are named by, by rising frequency.
    fn named_modes(&self) -> Vec<(String, f64)> {
        let mut named: Vec<(f64, &(String, f64))> = Vec::new();
        for answer in &self.answers {
            let peaks = &answer.transfer.resonances;
            let largest = peaks.iter().map(|peak| peak.gain).fold(0.0, f64::max);
            named.extend(peaks.iter().filter_map(|peak| Some((peak.gain / largest, peak.mode.as_ref()?))));
        }
        named.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut modes: Vec<(String, f64)> = Vec::new();
        for (_, mode) in named {
            let [low, high] = self.ends();
            if !modes.contains(mode) && modes.len() < NAMES && (low..=high).contains(&mode.1) {
                modes.push(mode.clone());
            }
        }
        modes.sort_by(|a, b| a.1.total_cmp(&b.1));
        modes
    }

    fn description(&self) -> String {
        let peak = |answer: &Answered| {
            let largest = answer.transfer.resonances.iter().max_by(|a, b| a.gain.total_cmp(&b.gain))?;
            let gain = crate::number::significant(per_height(self.n, largest.gain, answer.shown), 3);
            let frequency = crate::number::significant(largest.frequency, 3);
            let unit = height_unit(self.n, answer.shown);
            Some(format!("{} of {}: {gain} {unit} at {frequency} Hz", answer.what, answer.whose))
        };
        let peaks: Vec<String> = self.answers.iter().filter_map(peak).collect();
        format!("{} Largest peaks: {}.", self.subject(), peaks.join("; "))
    }
}

fn titled(answer: &Answered) -> &'static str {
    match answer.shown {
        Shown::Usual(Kind::Angle) => "Camber change",
        Shown::Usual(Kind::Force) => "Wheel load",
        _ => "Fiber stress",
    }
}
