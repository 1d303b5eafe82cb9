//! Beams whose deflections stand in handbooks.

use crate::elements::mesh::Theory;
use crate::parts::line::Line;
use crate::parts::load::Load;
use crate::parts::section::SpanSection;
use crate::parts::span::Span;
use crate::parts::support::SupportKind;
use crate::solving::peaks::PeakKind;

/// Source of bending deflections.
const ROARK: &str = "R. G. Budynas & A. M. Sadegh, Roark's Formulas for Stress and Strain, 9th ed., McGraw-Hill 2020, \
     Table 8.1; formula from memory";
/// The same with what shear adds.
const ROARK_SHEAR: &str = "R. G. Budynas & A. M. Sadegh, Roark's Formulas for Stress and Strain, 9th ed., McGraw-Hill \
     2020, Table 8.1 and sec. 8.10 (shear); formula from memory";

/// A handbook case that a beam is.
#[derive(Debug, Clone, PartialEq)]
pub struct ClosedForm {
    /// What it is called.
    pub title: &'static str,
    /// Its formulas; k G A is the shear stiffness.
    pub formula: &'static str,
    /// Where they stand.
    pub source: &'static str,
    /// Their values.
    pub values: Vec<ClosedFormValue>,
}

/// A value of a handbook case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClosedFormValue {
    /// Of what.
    pub kind: PeakKind,
    /// Where (m).
    pub at: f64,
    /// The value (m, rad, N m), signs as in the [crate] documentation.
    pub value: f64,
}

/// How both ends of a beam are held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ends {
    Free,
    /// Clamped at the start; mirrored beams are turned round first.
    Cantilever,
    Supported,
    Clamped,
    /// Clamped at the start.
    Propped,
}

/// A beam of one uniform span that is held at its ends, turned so that a clamp is at its start.
pub(crate) struct Bar {
    pub ends: Ends,
    pub is_mirrored: bool,
    pub length: f64,
    pub span: Span,
    pub theory: Theory,
}

/// The values of a formula before they are turned back.
struct Answer {
    title: &'static str,
    formula: &'static str,
    values: Vec<(PeakKind, f64, f64)>,
}

/// The handbook case that a beam is, if it is one.
pub fn closed_forms(line: &Line, theory: Theory) -> Option<ClosedForm> {
    if let Some(found) = overhung(line, theory) {
        return Some(found);
    }
    let bar = Bar::of(line, theory)?;
    let [load] = line.loads() else { return None };
    let answer = match (bar.ends, bar.turned(load)) {
        (Ends::Cantilever, load) => bar.cantilever(&load),
        (Ends::Supported, load) => bar.supported(&load),
        (Ends::Clamped, load) => bar.clamped(&load),
        (Ends::Propped, load) => bar.propped(&load),
        (Ends::Free, _) => None,
    }?;
    let turned = |(kind, at, value): (PeakKind, f64, f64)| match bar.is_mirrored {
        true if kind == PeakKind::Slope => ClosedFormValue { kind, at: bar.length - at, value: -value },
        true => ClosedFormValue { kind, at: bar.length - at, value },
        false => ClosedFormValue { kind, at, value },
    };
    let values = answer.values.into_iter().map(turned).collect();
    Some(ClosedForm { title: answer.title, formula: answer.formula, source: source(theory), values })
}

fn source(theory: Theory) -> &'static str {
    if theory == Theory::Timoshenko { ROARK_SHEAR } else { ROARK }
}

/// EI and 1/κGA of a span's start.
fn stiffness(span: &Span, theory: Theory) -> (f64, f64) {
    let values = span.section_at(0.0);
    let shear = match (theory, values.area) {
        (Theory::Timoshenko, Some(area)) => {
            1.0 / (values.shear_coefficient * span.elastic.shear_modulus() * area)
        }
        _ => 0.0,
    };
    (span.elastic.modulus * values.second_moment, shear)
}

/// Equal forces on both ends of a beam on two supports at equal distances from its middle.
fn overhung(line: &Line, theory: Theory) -> Option<ClosedForm> {
    let ([span], [Load::Force { at: a1, force: f1 }, Load::Force { at: a2, force: f2 }]) =
        (line.spans(), line.loads())
    else {
        return None;
    };
    let [left, right] = line.supports() else { return None };
    let l = line.length();
    let (inner, outer) = (left.at.min(right.at), left.at.max(right.at));
    let is_axle = left.kind == SupportKind::PINNED
        && right.kind == SupportKind::PINNED
        && span.section.is_uniform()
        && span.foundation == 0.0
        && inner > 0.0
        && line.is_same(inner, l - outer)
        && line.is_same(a1.min(*a2), 0.0)
        && line.is_same(a1.max(*a2), l)
        && f1 == f2;
    if !is_axle {
        return None;
    }
    let ((ei, shear), p, a, s) = (stiffness(span, theory), *f1, inner, outer - inner);
    let value = |kind, at, value| ClosedFormValue { kind, at, value };
    Some(ClosedForm {
        title: "beam on two supports with equal forces on its overhanging ends",
        formula: "M = P a; at the load y = P a² (2 a + 3 s)/(6 E I) + P a/(k G A), θ = P a (s + a)/(2 E I); \
                  mid-span y = P a s²/(8 E I)",
        source: source(theory),
        values: vec![
            value(PeakKind::Deflection, l, p * a * a * (2.0 * a + 3.0 * s) / (6.0 * ei) + p * a * shear),
            value(PeakKind::Slope, l, p * a * (s + a) / (2.0 * ei)),
            value(PeakKind::Slope, outer, p * a * s / (2.0 * ei)),
            value(PeakKind::Deflection, 0.5 * l, -p * a * s * s / (8.0 * ei)),
            value(PeakKind::Moment, 0.5 * l, p * a),
        ],
    })
}

impl Bar {
    /// The bar that a beam is, if it is one.
    pub fn of(line: &Line, theory: Theory) -> Option<Self> {
        let [span] = line.spans() else { return None };
        if !matches!(span.section, SpanSection::Uniform(_)) || span.foundation != 0.0 {
            return None;
        }
        let kind_at = |at: f64| {
            let mut there = line.supports().iter().filter(|support| line.is_same(support.at, at));
            there.next().map(|support| support.kind)
        };
        let (start, end) = (kind_at(0.0), kind_at(line.length()));
        if line.supports().len() != usize::from(start.is_some()) + usize::from(end.is_some()) {
            return None;
        }
        const FIXED: Option<SupportKind> = Some(SupportKind::FIXED);
        const PINNED: Option<SupportKind> = Some(SupportKind::PINNED);
        let (ends, is_mirrored) = match (start, end) {
            (None, None) => (Ends::Free, false),
            (a, b) if a == FIXED && b.is_none() => (Ends::Cantilever, false),
            (a, b) if a.is_none() && b == FIXED => (Ends::Cantilever, true),
            (a, b) if a == PINNED && b == PINNED => (Ends::Supported, false),
            (a, b) if a == FIXED && b == FIXED => (Ends::Clamped, false),
            (a, b) if a == FIXED && b == PINNED => (Ends::Propped, false),
            (a, b) if a == PINNED && b == FIXED => (Ends::Propped, true),
            _ => return None,
        };
        Some(Self { ends, is_mirrored, length: line.length(), span: *span, theory })
    }

    /// Whether two places are one.
    pub fn is_same(&self, a: f64, b: f64) -> bool {
        (a - b).abs() <= crate::parts::line::SAME * self.length
    }

    /// A load as the turned bar has it.
    fn turned(&self, load: &Load) -> Load {
        let l = self.length;
        match *load {
            _ if !self.is_mirrored => *load,
            Load::Force { at, force } => Load::Force { at: l - at, force },
            Load::Moment { at, moment } => Load::Moment { at: l - at, moment: -moment },
            Load::Distributed { from, to, start, end } => {
                Load::Distributed { from: l - to, to: l - from, start: end, end: start }
            }
            Load::Thermal { from, to, curvature } => Load::Thermal { from: l - to, to: l - from, curvature },
            Load::Weight { gravity } => Load::Weight { gravity },
        }
    }

    /// The load per length, where it is the same all along.
    fn uniform_load(&self, load: &Load) -> Option<f64> {
        match *load {
            Load::Distributed { from, to, start, end }
                if start == end && self.is_same(from, 0.0) && self.is_same(to, self.length) =>
            {
                Some(start)
            }
            Load::Weight { gravity } => {
                Some(-gravity * self.span.elastic.density * self.span.section_at(0.0).area?)
            }
            _ => None,
        }
    }

    fn center_force(&self, load: &Load) -> Option<f64> {
        match *load {
            Load::Force { at, force } if self.is_same(at, 0.5 * self.length) => Some(force),
            _ => None,
        }
    }

    fn cantilever(&self, load: &Load) -> Option<Answer> {
        use PeakKind::{Deflection, Moment, Slope};
        let ((ei, shear), l) = (stiffness(&self.span, self.theory), self.length);
        if let Some(w) = self.uniform_load(load) {
            return Some(Answer {
                title: "cantilever under a uniform load",
                formula: "y = w L⁴/(8 E I) + w L²/(2 k G A), θ = w L³/(6 E I), M = w L²/2",
                values: vec![
                    (Deflection, l, w * l.powi(4) / (8.0 * ei) + 0.5 * w * l * l * shear),
                    (Slope, l, w * l.powi(3) / (6.0 * ei)),
                    (Moment, 0.0, 0.5 * w * l * l),
                ],
            });
        }
        match *load {
            Load::Force { at, force: p } if self.is_same(at, l) => Some(Answer {
                title: "cantilever with a force on its end",
                formula: "y = P L³/(3 E I) + P L/(k G A), θ = P L²/(2 E I), M = P L",
                values: vec![
                    (Deflection, l, p * l.powi(3) / (3.0 * ei) + p * l * shear),
                    (Slope, l, p * l * l / (2.0 * ei)),
                    (Moment, 0.0, p * l),
                ],
            }),
            Load::Moment { at, moment: m } if self.is_same(at, l) => Some(Answer {
                title: "cantilever with a moment on its end",
                formula: "y = M L²/(2 E I), θ = M L/(E I)",
                values: vec![
                    (Deflection, l, m * l * l / (2.0 * ei)),
                    (Slope, l, m * l / ei),
                    (Moment, 0.0, m),
                ],
            }),
            _ => None,
        }
    }

    fn supported(&self, load: &Load) -> Option<Answer> {
        use PeakKind::{Deflection, Moment, Slope};
        let ((ei, shear), l) = (stiffness(&self.span, self.theory), self.length);
        if let Some(w) = self.uniform_load(load) {
            return Some(Answer {
                title: "beam on two supports under a uniform load",
                formula: "mid-span y = 5 w L⁴/(384 E I) + w L²/(8 k G A), M = w L²/8; support θ = w L³/(24 E I)",
                values: vec![
                    (Deflection, 0.5 * l, 5.0 * w * l.powi(4) / (384.0 * ei) + 0.125 * w * l * l * shear),
                    (Slope, 0.0, w * l.powi(3) / (24.0 * ei)),
                    (Moment, 0.5 * l, -0.125 * w * l * l),
                ],
            });
        }
        let Load::Force { at: a, force: p } = *load else { return None };
        let b = l - a;
        Some(Answer {
            title: "beam on two supports with one force",
            formula: "at the load y = P a² b²/(3 E I L) + P a b/(k G A L), M = P a b/L; support θ = P a b (L + b)/(6 E I L)",
            values: vec![
                (Deflection, a, p * a * a * b * b / (3.0 * ei * l) + p * a * b / l * shear),
                (Slope, 0.0, p * a * b * (l + b) / (6.0 * ei * l)),
                (Moment, a, -p * a * b / l),
            ],
        })
    }

    fn clamped(&self, load: &Load) -> Option<Answer> {
        use PeakKind::{Deflection, Moment};
        let ((ei, shear), l) = (stiffness(&self.span, self.theory), self.length);
        if let Some(w) = self.uniform_load(load) {
            return Some(Answer {
                title: "beam between two clamps under a uniform load",
                formula: "mid-span y = w L⁴/(384 E I) + w L²/(8 k G A); clamp M = w L²/12",
                values: vec![
                    (Deflection, 0.5 * l, w * l.powi(4) / (384.0 * ei) + 0.125 * w * l * l * shear),
                    (Moment, 0.0, w * l * l / 12.0),
                ],
            });
        }
        let p = self.center_force(load)?;
        Some(Answer {
            title: "beam between two clamps with a force at its middle",
            formula: "at the load y = P L³/(192 E I) + P L/(4 k G A); clamp M = P L/8",
            values: vec![
                (Deflection, 0.5 * l, p * l.powi(3) / (192.0 * ei) + 0.25 * p * l * shear),
                (Moment, 0.0, 0.125 * p * l),
            ],
        })
    }

    /// With shear these have no such short form, and none is claimed.
    fn propped(&self, load: &Load) -> Option<Answer> {
        use PeakKind::{Deflection, Moment, Slope};
        if self.theory == Theory::Timoshenko {
            return None;
        }
        let ((ei, _), l) = (stiffness(&self.span, self.theory), self.length);
        if let Some(w) = self.uniform_load(load) {
            return Some(Answer {
                title: "beam clamped at one end and supported at the other under a uniform load",
                formula: "mid-span y = w L⁴/(192 E I); support θ = w L³/(48 E I); clamp M = w L²/8",
                values: vec![
                    (Deflection, 0.5 * l, w * l.powi(4) / (192.0 * ei)),
                    (Slope, l, -w * l.powi(3) / (48.0 * ei)),
                    (Moment, 0.0, 0.125 * w * l * l),
                ],
            });
        }
        let p = self.center_force(load)?;
        Some(Answer {
            title: "beam clamped at one end and supported at the other with a force at its middle",
            formula: "at the load y = 7 P L³/(768 E I), M = 5 P L/32; clamp M = 3 P L/16",
            values: vec![
                (Deflection, 0.5 * l, 7.0 * p * l.powi(3) / (768.0 * ei)),
                (Moment, 0.5 * l, -5.0 * p * l / 32.0),
                (Moment, 0.0, 3.0 * p * l / 16.0),
            ],
        })
    }
}
