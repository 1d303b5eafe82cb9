//! Tire faces seen from the rear: load over each rib, wear under it.

use axlebow_axle::{Side, TireCase, TireFace, TireOutcome, TireRideOutcome};
use axlebow_units::{Kind, show};

use super::tire_panel::{FaceScale, TirePanel};
use super::tire_round::RoundPanel;
use crate::answer::tire_answer;
use crate::number::{Numbers, with_sign};
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, PART_TITLE, TITLE, TITLE_LINES};
use crate::svg::palette::{BLUE, FAINT, GREEN, MUTED, VERMILLION};
use crate::svg::{Canvas, Label, Point};
use crate::words::wrapped;
use crate::{ModelCard, ReportError, Svg};

/// Width of one wheel's face.
const FACE: f64 = 500.0;
/// Distance between the two faces.
const GAP: f64 = 80.0;
/// Left edge.
const LEFT: f64 = 60.0;
/// Right edge.
const RIGHT: f64 = LEFT + 2.0 * FACE + GAP;
/// Height of the map round the tires.
const ROUND: f64 = 170.0;

/// Draws the tire faces of the first load case seen from the rear, the left wheel on the left, one of them where both are
/// alike, under the answer: the load of each rib as a bar over it, how much more or less than upright it wears as a profile
/// under it; with a ride, mean wear over it and a map round the tires.
///
/// # Errors
/// A value that is not finite, or too large to draw.
pub fn tire_figure(
    outcome: &TireOutcome,
    ride: Option<&TireRideOutcome>,
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    let Some(case) = outcome.cases.first() else {
        return Ok(Canvas::default().finish([RIGHT, FIRST_LINE], &card.name, "no load case"));
    };
    drawable(case, ride)?;
    let message = tire_answer(outcome, ride, card).swap_remove(0);
    TireFigure { case, ride, card, message, numbers: Numbers { system: card.system } }.draw()
}

/// Difference, of camber (rad) and of wear over that upright, below which both wheels look the same.
const ALIKE: f64 = 1e-6;

/// Whether both wheels are drawn alike.
fn alike(case: &TireCase, ride: Option<&TireRideOutcome>) -> bool {
    let [left, right] = Side::BOTH.map(|side| case.wheels.of(side));
    let wear = |face: &TireFace| -> Vec<f64> {
        let ribs = face.worn.tires.iter().flat_map(|tire| &tire.ribs);
        ribs.map(|rib| rib.against_upright.unwrap_or(0.0)).chain([face.pose.camber, face.pose.toe]).collect()
    };
    let (left, right) = (wear(left), wear(right));
    ride.is_none()
        && left.len() == right.len()
        && left.iter().zip(&right).all(|(left, right)| (left - right).abs() < ALIKE)
}

fn drawable(case: &TireCase, ride: Option<&TireRideOutcome>) -> Result<(), ReportError> {
    for side in Side::BOTH {
        let face = case.wheels.of(side);
        let ribs = face.worn.tires.iter().flat_map(|tire| &tire.ribs);
        finite("tire face", ribs.flat_map(|rib| [rib.outboard, rib.load, rib.index.unwrap_or(0.0)]))?;
        let maps = ride.iter().flat_map(|ride| &ride.wheels.of(side).wear.round).flat_map(|map| &map.ribs);
        finite("wear round a tire", maps.flatten().flatten().copied())?;
    }
    Ok(())
}

struct TireFigure<'a> {
    case: &'a TireCase,
    ride: Option<&'a TireRideOutcome>,
    card: &'a ModelCard,
    /// What the picture says, one sentence.
    message: String,
    numbers: Numbers,
}

impl TireFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let top = self.draw_heading(&mut canvas) + 34.0;
        let scale = FaceScale::of(self.case, self.ride, FACE);
        let mut bottom = top;
        for side in self.sides() {
            let left = match (*side, self.sides().len()) {
                (_, 1) => LEFT + 0.5 * (FACE + GAP),
                (Side::Left, _) => LEFT,
                (Side::Right, _) => LEFT + FACE + GAP,
            };
            let side = *side;
            self.draw_title(&mut canvas, side, [left, top]);
            let panel = TirePanel { face: self.case.wheels.of(side), side, scale, numbers: self.numbers };
            let worn = self.ride.map_or(&panel.face.worn, |ride| &ride.wheels.of(side).wear.mean);
            bottom = panel.draw(&mut canvas, [left + 0.5 * FACE, top + 46.0], worn);
        }
        bottom = self.draw_legend(&mut canvas, bottom + 34.0, scale.lean);
        if let Some(ride) = self.ride {
            bottom = self.draw_round(&mut canvas, ride, bottom + 30.0)?;
        }
        if let Some(note) = self.card.invented_note() {
            bottom += 22.0;
            canvas.label(NOTE.label(note, [LEFT, bottom]));
        }
        let title = format!("{}: tire faces", self.card.name);
        Ok(canvas.finish([RIGHT + 90.0, bottom + 16.0], &title, &self.description()))
    }

    /// The wheels drawn: one where both are alike.
    fn sides(&self) -> &'static [Side] {
        if alike(self.case, self.ride) { &[Side::Left] } else { &Side::BOTH }
    }

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let title = wrapped(&self.card.name, 76, TITLE_LINES);
        let mut level = TITLE.draw(canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
        for line in wrapped(&self.message, 118, 2) {
            level += 22.0;
            canvas.label(Label::new(line, [LEFT, level]).size(15.0).bold());
        }
        let wear = self.ride.map_or("wear against the same tires upright".to_owned(), |ride| {
            format!("mean wear over {}, {}", ride.name, show(ride.speed, Kind::Speed, self.numbers.system))
        });
        for line in wrapped(
            &format!("Rib loads: {}, {}. Profile: {wear}.", self.case.name, self.case.description),
            130,
            2,
        ) {
            level += 20.0;
            canvas.label(Label::new(line, [LEFT, level]));
        }
        level
    }

    fn draw_title(&self, canvas: &mut Canvas, side: Side, [x, y]: Point) {
        let pose = &self.case.wheels.of(side).pose;
        let (camber, toe) =
            (self.numbers.full(pose.camber, Kind::Angle), self.numbers.full(pose.toe, Kind::Angle));
        let lean = match pose.camber {
            camber if camber < 0.0 => ", top leans in",
            camber if camber > 0.0 => ", top leans out",
            _ => "",
        };
        let name = if self.sides().len() == 1 {
            "each wheel, the left drawn".to_owned()
        } else {
            format!("{} wheel", side.word())
        };
        let text = format!("{name}: camber {}{lean}", with_sign(&camber));
        canvas.label(PART_TITLE.label(text, [x, y]));
        let load = self.numbers.full(pose.load, Kind::Force);
        let line = format!("toe {}, load {load}", with_sign(&toe));
        canvas.label(Label::new(line, [x, y + 19.0]).color(MUTED));
    }

    fn draw_legend(&self, canvas: &mut Canvas, level: f64, lean: f64) -> f64 {
        canvas.line(
            [LEFT, level - 20.0],
            [RIGHT, level - 20.0],
            &format!(r#"stroke="{FAINT}" stroke-width="0.8""#),
        );
        let loads = self.numbers.heading("load of the rib", Kind::Force);
        let swatches = [
            (BLUE, loads),
            (VERMILLION, "wears more than upright".to_owned()),
            (GREEN, "wears less".to_owned()),
        ];
        let mut x = LEFT;
        for (color, words) in swatches {
            canvas.rectangle(
                [x, level - 8.0],
                [18.0, 12.0],
                &format!(r#"fill="{color}" fill-opacity="0.75""#),
            );
            let width = 56.0 + 7.2 * words.chars().count() as f64;
            canvas.label(Label::new(words, [x + 26.0, level + 3.0]));
            x += width;
        }
        canvas.line([x, level - 2.0], [x + 30.0, level - 2.0], &TirePanel::upright_style());
        let words = match lean {
            1.0 => "as upright".to_owned(),
            _ => format!("as upright; ribs lean {lean:.0} times as much"),
        };
        canvas.label(Label::new(words, [x + 38.0, level + 3.0]));
        level + 6.0
    }

    fn draw_round(&self, canvas: &mut Canvas, ride: &TireRideOutcome, top: f64) -> Result<f64, ReportError> {
        canvas.label(PART_TITLE.label("Wear round the tires", [LEFT, top]));
        let line =
            "more or less than the mean of the rib, %; the ribs run across, the turn of the tire along";
        canvas.label(Label::new(line, [LEFT, top + 19.0]).color(MUTED));
        let panel = RoundPanel::of(ride);
        let corner = |side: Side| [if side == Side::Left { LEFT } else { LEFT + FACE + GAP }, top + 62.0];
        for side in Side::BOTH {
            panel.draw(canvas, ride.wheels.of(side), side, (corner(side), [FACE, ROUND]));
        }
        panel.draw_bar(canvas, ([RIGHT + 18.0, top + 62.0], ROUND));
        Ok(top + 62.0 + ROUND + 72.0)
    }

    fn description(&self) -> String {
        let side = |side: Side| {
            let face = self.case.wheels.of(side);
            let camber = self.numbers.full(face.pose.camber, Kind::Angle);
            format!("{} camber {camber}", side.word())
        };
        format!(
            "Rib loads and wear across each tire face, {}: {}, {}.",
            self.case.name,
            side(Side::Left),
            side(Side::Right)
        )
    }
}
