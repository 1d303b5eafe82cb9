//! What to ask the axle's maker about a proposal, computed from its model: only what this proposal raises.

use axlebow_axle::{Axle, Fixing, Part, Preheat, Side, Stiffener, StrengthOptions};
use axlebow_results::{Field, Record, Text, part};
use axlebow_strength::HeatAffectedZone;
use axlebow_units::Kind;

use super::proposal::{Lengths, clock};
use crate::number::{Numbers, fixed};
use crate::words::preheat::degrees;

/// A question to the axle's maker.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Question {
    /// What it is about.
    pub subject: &'static str,
    /// The question, with the proposal's numbers in the units of the reader.
    pub text: String,
}

impl Record for Question {
    const FIELDS: &'static [Field<Self>] = &[
        part("subject", "What it is about.", &Text(|own: &Self| own.subject)),
        part("text", "The question, with the proposal's numbers.", &Text(|own: &Self| &own.text)),
    ];
}

/// A proposal and the units in which it is asked about.
pub(crate) struct Proposal<'a> {
    pub axle: &'a Axle,
    pub strength: StrengthOptions,
    pub preheats: &'a [Preheat],
    pub lengths: Lengths,
}

/// Fit of wheels whose tire centers lie as far as this from the mounting face is asked about, m.
const OUTSET: f64 = 1e-3;

impl Proposal<'_> {
    /// All questions: of the steel, the heat, the places, the wheels and what else the proposal changes.
    pub fn questions(&self) -> Vec<Question> {
        let mut questions = Vec::new();
        if !self.axle.stiffeners.is_empty() {
            questions.extend(self.preheats.iter().map(|steel| self.weldability(steel)));
            questions.extend([self.heat_treated_zones()]);
            questions.extend(self.strength_beside_weld());
            questions.extend([self.residual_stress()]);
            questions.extend(self.axle.stiffeners.iter().flat_map(|own| self.of_stiffener(own)));
            questions.extend(self.housing());
            questions.extend([self.rating()]);
        }
        questions.extend(Side::BOTH.into_iter().filter_map(|side| self.outset(side)));
        questions.extend(self.clamp());
        questions.extend(self.bearings());
        questions.dedup();
        questions
    }

    fn numbers(&self) -> Numbers {
        self.lengths.numbers
    }

    fn weldability(&self, steel: &Preheat) -> Question {
        let text = match (steel.carbon_equivalent, steel.temperature) {
            (Some(ce), Some(celsius)) => format!(
                "Grade of the steel of {}: the model has a carbon equivalent of {} %. May it be welded, preheated to {} or more with hydrogen class H5?",
                steel.parts,
                fixed(ce, 2),
                degrees(celsius, self.numbers().system)
            ),
            (Some(ce), None) => format!(
                "Grade of the steel of {}: the model has a carbon equivalent of {} %. May it be welded at all, and by which procedure and preheat?",
                steel.parts,
                fixed(ce, 2)
            ),
            (None, _) => format!(
                "Grade of the steel of {}, and C, Mn, Cr, Mo, V, Ni and Cu of this heat: the model has no composition. May it be welded, and with which preheat?",
                steel.parts
            ),
        };
        Question { subject: "Steel and weldability", text }
    }

    fn heat_treated_zones(&self) -> Question {
        let axle = self.axle;
        let ends = axle.stiffeners.iter().flat_map(|own| [own.from.abs(), own.to.abs()]);
        let nearest = ends.map(|y| axle.body.tube_end() - y).fold(f64::INFINITY, f64::min);
        Question {
            subject: "Heat-treated zones",
            text: format!(
                "Where along spindles and {} do heat-treated zones end? The proposal welds no nearer than {} to its end and keeps {} free.",
                axle.body.pieces()[0].part.word(),
                self.lengths.full(nearest),
                self.lengths.full(axle.weld_keep_out)
            ),
        }
    }

    /// Asked where heat is taken to have cost strength.
    fn strength_beside_weld(&self) -> Option<Question> {
        let strength = self.axle.body.material(Part::Tube).yield_strength()?;
        let zone = match self.strength.haz_strength_factor {
            Some(factor) => HeatAffectedZone::stated(factor).ok()?,
            None => HeatAffectedZone::assumed(strength),
        };
        (zone.factor() < 1.0).then(|| Question {
            subject: "Strength beside the weld",
            text: format!(
                "How was the steel brought to its yield strength of {} (rolled, quenched and tempered, cold drawn), and how much of it is left beside a weld? The checks count on {} of it.",
                self.numbers().short(strength, Kind::Stress),
                fixed(zone.factor(), 2)
            ),
        })
    }

    fn residual_stress(&self) -> Question {
        let runs = |own: &Stiffener| {
            let welded = own.welded_feet().into_iter().filter(|welded| *welded).count() as f64;
            welded * own.weld_runs().iter().map(|[from, to]| to - from).sum::<f64>()
        };
        let length: f64 = self.axle.stiffeners.iter().map(runs).sum();
        Question {
            subject: "Residual stress",
            text: format!(
                "{} of fillet weld will shrink on one side of the axle and bow it. Which sequence, and which camber and toe after cooling, are accepted? Is stress relief asked for or forbidden, and may the axle be straightened?",
                self.lengths.full(length)
            ),
        }
    }

    fn of_stiffener(&self, own: &Stiffener) -> Vec<Question> {
        let lengths = self.lengths;
        let span = format!(
            "from {} on the right to {} on the left of the center",
            lengths.full(-own.from),
            lengths.full(own.to)
        );
        let mut questions = vec![
            Question {
                subject: "Brackets and lines",
                text: format!(
                    "{} lies at {}, {span}. Which brackets of brakes, ABS cables, air lines or height valves stand there, and may they be moved?",
                    capital(&own.name),
                    clock(own)
                ),
            },
            self.places(own),
        ];
        if own.weld_runs().len() > 1 {
            questions.push(Question {
                subject: "Stitches",
                text: format!(
                    "Are stitches of {} accepted on {}, {} of them on each welded edge, each end of which is a start for cracks?",
                    lengths.full(own.weld_runs()[0][1] - own.weld_runs()[0][0]),
                    own.name,
                    own.weld_runs().len()
                ),
            });
        }
        if let Some(bore) = own.form.bore() {
            questions.push(Question {
                subject: "Sleeve",
                text: format!(
                    "{} has a bore of {}. Which fit over the tube is accepted, how are its edges sealed against water, and may it cover the maker's plate?",
                    capital(&own.name),
                    lengths.full(bore)
                ),
            });
        }
        questions
    }

    /// How near to a seat the welds come.
    fn places(&self, own: &Stiffener) -> Question {
        let distance = |side: Side| {
            let seat = self.axle.seats.of(side);
            let ends = [side.sign() * seat.inner_edge(), side.sign() * seat.outer_edge()];
            let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
            (low - own.to).max(own.from - high).max(0.0)
        };
        let [left, right] = Side::BOTH.map(distance);
        let near = left.min(right);
        let what = match self.axle.seats.left.fixing {
            Fixing::Welded => "the welded seats and their welds",
            Fixing::Clamped => "the seats, their U-bolts and dowel holes",
        };
        let text = if near > 0.0 {
            format!(
                "How near may a weld come to {what}? {} ends {} from the nearer one.",
                capital(&own.name),
                self.lengths.full(near)
            )
        } else {
            format!("May {} run through {what}, and may it be welded there?", own.name)
        };
        Question { subject: "Places for welds", text }
    }

    fn housing(&self) -> Option<Question> {
        self.axle.body.is_driven().then(|| Question {
            subject: "Housing",
            text: "Must carrier, half shafts, seals and oil come out before the housing is welded, and is its flatness or alignment checked after?".to_owned(),
        })
    }

    fn rating(&self) -> Question {
        let load = self.numbers().full(self.axle.loading.rated_load, Kind::Force);
        let mass: f64 = self.axle.stiffeners.iter().map(Stiffener::mass).sum();
        Question {
            subject: "Rating and warranty",
            text: format!(
                "Do the rating of {load} and the warranty stand, in writing, after welding {} onto the axle? Is its plate to be marked?",
                self.numbers().full(mass, Kind::Mass)
            ),
        }
    }

    fn outset(&self, side: Side) -> Option<Question> {
        let outset = self.axle.wheels.of(side).outset();
        let load = self.numbers().full(self.axle.loading.rated_load, Kind::Force);
        (outset.abs() > OUTSET).then(|| {
            let way = if outset > 0.0 { "outboard" } else { "inboard" };
            Question {
                subject: "Wheel outset",
                text: format!(
                    "Is the axle approved for wheels whose tires stand {} {way} of the mounting face, and with which rating in place of {load}?",
                    self.lengths.full(outset.abs())
                ),
            }
        })
    }

    /// Asked where U-bolts clamp and nobody has said how tight.
    fn clamp(&self) -> Option<Question> {
        let open = |side: &Side| {
            let seat = self.axle.seats.of(*side);
            seat.fixing == Fixing::Clamped && seat.bracket.torque.is_none()
        };
        Side::BOTH.iter().any(open).then(|| Question {
            subject: "U-bolts",
            text: "Torque and pattern of the U-bolts over the seats: the model has none, so that crush of the wall under the clamp was not checked.".to_owned(),
        })
    }

    /// Asked where a bearing's rating is not known.
    fn bearings(&self) -> Option<Question> {
        let unknown = |side: &Side| {
            let end = self.axle.wheel_ends.of(*side);
            end.inner_rating.is_none() || end.outer_rating.is_none()
        };
        Side::BOTH.iter().any(unknown).then(|| Question {
            subject: "Wheel bearings",
            text: "Dynamic load ratings of the inner and the outer wheel bearing, and how they are set: without them their life under the new loads cannot be checked.".to_owned(),
        })
    }
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
