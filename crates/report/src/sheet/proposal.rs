//! What a shop must know of the stiffeners: their sizes, places and welds, in the units of the reader.

use axlebow_axle::{Axle, Side, Stiffener, StiffenerEnd};
use axlebow_sections::Profile;
use axlebow_sections::shape::{Angle, Channel, Flat, HalfPipe, Shape, Tee};
use axlebow_units::{Kind, UnitSystem};

use super::weld_symbol::{FilletSymbol, StitchFigures};
use crate::number::{Numbers, fixed};

/// Lengths as a drawing writes them: without their unit, which the title block names.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Lengths {
    pub numbers: Numbers,
}

impl Lengths {
    pub fn of(system: UnitSystem) -> Self {
        Lengths { numbers: Numbers { system } }
    }

    /// The unit.
    pub fn unit(self) -> &'static str {
        self.numbers.unit(Kind::Length)
    }

    /// A length (m) to a tenth of a millimeter or a hundredth of an inch, as short as it can be.
    pub fn bare(self, length: f64) -> String {
        let decimals = if self.numbers.system == UnitSystem::Si { 1 } else { 2 };
        let text = fixed(self.numbers.scaled(length, Kind::Length), decimals);
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    /// The same with its unit.
    pub fn full(self, length: f64) -> String {
        format!("{} {}", self.bare(length), self.unit())
    }

    fn by(self, sizes: &[f64]) -> String {
        let sizes: Vec<String> = sizes.iter().map(|size| self.bare(*size)).collect();
        sizes.join(" \u{d7} ")
    }

    /// The size of a section of the axle.
    pub fn profile(self, profile: &Profile) -> String {
        match profile {
            Profile::RoundTube(tube) => format!("\u{d8}{}", self.by(&[tube.outside_diameter(), tube.wall()])),
            Profile::RoundBar(bar) => format!("\u{d8}{}", self.bare(bar.diameter())),
            Profile::RectangularTube(tube) => {
                format!(
                    "{} high \u{d7} broad \u{d7} wall",
                    self.by(&[tube.height(), tube.width(), tube.wall()])
                )
            }
        }
    }

    /// The size of a stiffener, its own name first.
    pub fn stiffener(self, own: &Stiffener) -> String {
        let size = match own.form.shape() {
            Some(Shape::Angle(Angle { height, width, thickness, .. })) => {
                self.by(&[*height, *width, *thickness])
            }
            Some(Shape::Flat(Flat { width, thickness })) => self.by(&[*width, *thickness]),
            Some(Shape::Channel(Channel { height, width, web, flange, .. })) => {
                format!(
                    "{}, web {}, flange {}",
                    self.by(&[*height, *width]),
                    self.bare(*web),
                    self.bare(*flange)
                )
            }
            Some(Shape::Tee(Tee { height, width, stem, flange, .. })) => {
                format!(
                    "{}, stem {}, flange {}",
                    self.by(&[*height, *width]),
                    self.bare(*stem),
                    self.bare(*flange)
                )
            }
            Some(Shape::HalfPipe(HalfPipe { .. })) | None => match own.form.bore() {
                Some(bore) => {
                    format!("bore \u{d8}{}, wall {}", self.bare(bore), self.bare(own.form.thickness()))
                }
                None => "by its own outline".to_owned(),
            },
        };
        format!("{}, {size}", own.form.called)
    }

    /// What a stiffener is, how long, how it ends and how it is welded, a line each.
    pub fn lines(self, own: &Stiffener) -> [String; 3] {
        let weld = match self.fillet(own).stitches {
            None => "weld from end to end".to_owned(),
            Some(stitches) => format!(
                "{} stitches of {}, {} {} from middle to middle",
                stitches.number,
                stitches.length,
                stitches.pitch,
                self.unit()
            ),
        };
        let ends = self.ends(own.end);
        [
            format!("{}: {}", own.name, self.stiffener(own)),
            format!("{} long, {ends}", self.full(own.length())),
            format!("{weld}, leg {}", self.full(own.weld.leg)),
        ]
    }

    /// The weld of a stiffener as its symbol says it.
    pub(super) fn fillet(self, own: &Stiffener) -> FilletSymbol {
        let runs = own.weld_runs();
        let stitches = (runs.len() > 1).then(|| {
            let (length, pitch) = (runs[0][1] - runs[0][0], runs[1][0] - runs[0][0]);
            StitchFigures {
                number: runs.len(),
                length: self.bare(length),
                pitch: self.bare(pitch),
                gap: self.bare(pitch - length),
            }
        });
        let both_sides = own.weld.both_sides && own.form.stands_between_welds();
        FilletSymbol { leg: self.bare(own.weld.leg), stitches, both_sides }
    }

    /// How the ends of a stiffener run out.
    pub fn ends(self, end: StiffenerEnd) -> String {
        match end {
            StiffenerEnd::Square => "ends cut square".to_owned(),
            StiffenerEnd::Tapered { length } => format!("ends taper over {}", self.full(length)),
            StiffenerEnd::Radiused { radius } => format!("ends run out on a radius of {}", self.full(radius)),
        }
    }
}

/// A clock position as a drawing writes it.
pub(crate) fn clock(own: &Stiffener) -> String {
    let degrees = own.clock.to_degrees();
    let text = fixed(degrees, 1);
    let side = match degrees.rem_euclid(360.0) {
        0.0 => " (top)",
        180.0 => " (bottom)",
        own if own < 180.0 => " from the top toward the front",
        _ => " from the top",
    };
    format!("{}\u{b0}{side}", text.trim_end_matches('0').trim_end_matches('.'))
}

/// Where nothing may be welded on one side: from and to, distances from the center line, m.
pub(crate) fn keep_outs(axle: &Axle, side: Side) -> Vec<[f64; 2]> {
    let seat = axle.seats.of(side);
    let zones = [
        [seat.inner_edge() - seat.weld_keep_out, seat.inner_edge()],
        [seat.outer_edge(), seat.outer_edge() + seat.weld_keep_out],
        [axle.body.tube_end() - axle.weld_keep_out, axle.body.spindle_end()],
    ];
    zones.into_iter().filter(|zone| zone[1] > zone[0]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_short_in_both_units() {
        let (si, us) = (Lengths::of(UnitSystem::Si), Lengths::of(UnitSystem::Us));
        assert_eq!((si.full(0.060), si.bare(0.082_54)), ("60 mm".into(), "82.5".into()));
        assert_eq!((us.full(0.0762), us.bare(0.060)), ("3 in".into(), "2.36".into()));
    }
}
