//! Tire faces seen from the rear: load over each rib, wear under it.

use axlebow_axle::{Side, TireCase, TireRideOutcome};
use axlebow_units::{Kind, show};

use super::tire_panel::{FaceScale, TirePanel};
use super::tire_round::RoundPanel;
use crate::number::{Numbers, with_sign};
use crate::panels::finite;
use crate::panels::layout::{FIRST_LINE, NOTE, PART_TITLE, TITLE, TITLE_LINES};
use crate::svg::palette::{BLUE, FAINT, MUTED, VERMILLION};
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

/// Draws the tire faces of one load case seen from the rear, the left wheel on the left: the load of each rib as a bar
/// over it, its wear as a profile under it beside that of the same tires upright; with a ride, mean wear over it and a
/// map round the tires.
///
/// # Errors
/// A value that is not finite, or too large to draw.
pub fn tire_figure(
    case: &TireCase,
    ride: Option<&TireRideOutcome>,
    card: &ModelCard,
) -> Result<Svg, ReportError> {
    drawable(case, ride)?;
    TireFigure { case, ride, card, numbers: Numbers { system: card.system } }.draw()
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
    numbers: Numbers,
}

impl TireFigure<'_> {
    fn draw(&self) -> Result<Svg, ReportError> {
        let mut canvas = Canvas::default();
        let top = self.draw_heading(&mut canvas) + 34.0;
        let scale = FaceScale::of(self.case, self.ride, FACE);
        let mut bottom = top;
        for side in Side::BOTH {
            let left = if side == Side::Left { LEFT } else { LEFT + FACE + GAP };
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

    fn draw_heading(&self, canvas: &mut Canvas) -> f64 {
        let title = wrapped(&self.card.name, 76, TITLE_LINES);
        let mut level = TITLE.draw(canvas, title, [LEFT, FIRST_LINE]) - TITLE.step;
        let wear = self.ride.map_or("wear under the same load".to_owned(), |ride| {
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
        let text = format!("{} wheel: camber {}{lean}", side.word(), with_sign(&camber));
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
        let swatches =
            [(BLUE, loads), (VERMILLION, "wear; 1 is the mean of the same tires upright".to_owned())];
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
            1.0 => "wear of the same rib upright and straight".to_owned(),
            _ => format!("wear of the same rib upright and straight; ribs lean {lean:.0} times as much"),
        };
        canvas.label(Label::new(words, [x + 38.0, level + 3.0]));
        level + 6.0
    }

    fn draw_round(&self, canvas: &mut Canvas, ride: &TireRideOutcome, top: f64) -> Result<f64, ReportError> {
        canvas.label(PART_TITLE.label("Wear round the tires", [LEFT, top]));
        let line = "1 is the mean of the same tires upright; the ribs run across, the turn of the tire along";
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
