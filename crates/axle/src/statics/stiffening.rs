//! What stiffeners do, as their welds tie them: compared with none at all and with one section with the axle.

use axlebow_fe::State;

use crate::mesh::plan::StiffenerModel;
use crate::mesh::stressed_section::StressedMember;
use crate::mesh::stretch::Stretch;
use crate::mesh::tied_stiffener::TiedStiffener;
use crate::mesh::weld_line::weld_stiffness;
use crate::outcome::stiffening_outcome::{
    AxialForce, Foot, PlacedStress, StiffenerOutcome, StiffeningOutcome, WeldForce, working_length,
};
use crate::outcome::{CaseOutcome, WheelOutcome};
use crate::parts::load_case::LoadCase;
use crate::parts::stiffener::{Stiffener, WeldPattern};
use crate::statics::along::larger_stress;
use crate::statics::static_design::StaticDesign;
use crate::{Axle, AxleError, Side, Sides};

/// Share of the help of full composite action that may be lost before it is said why.
const LOSS_WORTH_A_WORD: f64 = 0.05;

/// Sets in every case what the stiffeners do there, and why where they do much less than full composite action would.
///
/// # Errors
/// As [`StaticDesign::case`].
pub(crate) fn add_stiffening(
    tied: &StaticDesign,
    cases: &[LoadCase],
    outcomes: &mut [CaseOutcome],
) -> Result<(), AxleError> {
    let axle = tied.axle;
    if axle.stiffeners.is_empty() {
        return Ok(());
    }
    let bare = Axle { stiffeners: Vec::new(), ..axle.clone() };
    let composite = StaticDesign::with_stiffeners(axle, StiffenerModel::OneSection)?;
    let models = Models { tied, bare: StaticDesign::of(&bare)?, composite };
    for (case, outcome) in cases.iter().zip(&mut *outcomes) {
        outcome.stiffening = Some(models.outcome(case, &outcome.wheels)?);
    }
    let lost = |outcome: &CaseOutcome| outcome.stiffening.as_ref().map_or(0.0, StiffeningOutcome::help_lost);
    if outcomes.iter().map(lost).fold(0.0, f64::max) <= LOSS_WORTH_A_WORD {
        return Ok(());
    }
    explain(axle, cases, outcomes)
}

/// Says why in every case in which enough of the help is lost.
fn explain(axle: &Axle, cases: &[LoadCase], outcomes: &mut [CaseOutcome]) -> Result<(), AxleError> {
    let [continuous, firm] = better_welds(axle);
    let reasons = Reasons { continuous: StaticDesign::of(&continuous)?, firm: StaticDesign::of(&firm)? };
    let stiffening = outcomes.iter_mut().filter_map(|outcome| outcome.stiffening.as_mut());
    for (case, stiffening) in cases.iter().zip(stiffening) {
        if stiffening.help_lost() > LOSS_WORTH_A_WORD {
            stiffening.why = Some(reasons.words(case, stiffening)?);
        }
    }
    Ok(())
}

/// Camber change of each wheel (rad) in one case with axle and stiffeners one section, as if no weld gave way: the upper
/// bound of what the stiffeners do; none without stiffeners.
///
/// # Errors
/// As [`StaticDesign::case`].
pub fn composite_camber_change(axle: &Axle, case: &LoadCase) -> Result<Option<Sides<f64>>, AxleError> {
    if axle.stiffeners.is_empty() {
        return Ok(None);
    }
    let design = StaticDesign::with_stiffeners(axle, StiffenerModel::OneSection)?;
    camber_changes(&design, case).map(Some)
}

/// The three models of one axle.
struct Models<'a> {
    tied: &'a StaticDesign<'a>,
    bare: StaticDesign<'a>,
    composite: StaticDesign<'a>,
}

impl Models<'_> {
    fn outcome(&self, case: &LoadCase, wheels: &Sides<WheelOutcome>) -> Result<StiffeningOutcome, AxleError> {
        let axle = self.tied.axle;
        let without = camber_changes(&self.bare, case)?;
        let (_, whole) = self.composite.loaded(case)?;
        let (_, tied) = self.tied.loaded(case)?;
        // Of wheels that change alike the left one.
        let side =
            if without.right.abs() > without.left.abs() * (1.0 + 1e-9) { Side::Right } else { Side::Left };
        let each = axle.stiffeners.iter().zip(&self.tied.frame.tied);
        let each = each.enumerate().map(|(number, (stiffener, beams))| {
            let axial = axial_forces(&self.composite, (stiffener, beams), [&whole, &tied]);
            let peak_stress = peak_stress(self.tied, &tied, number);
            outcome_of(stiffener, weld_forces(stiffener, beams, &tied), axial, peak_stress)
        });
        Ok(StiffeningOutcome {
            side,
            mass: axle.stiffeners.iter().map(Stiffener::mass).sum(),
            without: *without.of(side),
            composite: self.composite.hub_line(&whole).camber_change(side),
            tied: wheels.of(side).camber_change,
            why: None,
            stiffeners: each.collect(),
        })
    }
}

fn camber_changes(design: &StaticDesign, case: &LoadCase) -> Result<Sides<f64>, AxleError> {
    let (_, state) = design.loaded(case)?;
    Ok(Sides::each(|side| design.hub_line(&state).camber_change(side)))
}

/// Fiber stress of largest magnitude in the stiffener of a number, at the ends of its beams.
fn peak_stress(design: &StaticDesign, state: &State, number: usize) -> PlacedStress {
    let own: Vec<_> = design.frame.tied[number].beams.iter().map(|beam| beam.beam).collect();
    let mut peak = PlacedStress::default();
    for stretch in design.frame.stretches.iter().rev() {
        for y in [stretch.end_y, stretch.start_y] {
            let members = StressedMember::each(design.axle, stretch, y);
            for member in members.filter(|member| own.contains(&member.line.beam)) {
                let force = state.beam_forces(member.line.beam).at(y - stretch.start_y);
                let stress = member.section.extreme_stress(member.terms(&force));
                if larger_stress(peak.stress, stress) != peak.stress {
                    peak = PlacedStress { y, stress };
                }
            }
        }
    }
    peak
}

fn outcome_of(
    stiffener: &Stiffener,
    weld: Vec<WeldForce>,
    axial: Vec<AxialForce>,
    peak_stress: PlacedStress,
) -> StiffenerOutcome {
    StiffenerOutcome {
        name: stiffener.name.clone(),
        called: stiffener.form.called.clone(),
        reach: [stiffener.from, stiffener.to],
        mass: stiffener.mass(),
        peak: peak(&weld),
        weld,
        working_length: working_length(&axial),
        axial,
        peak_stress,
    }
}

/// The greatest of some forces, of equal ones the leftmost, as with the axle's stress.
fn peak(forces: &[WeldForce]) -> WeldForce {
    let larger =
        |a: WeldForce, b: &WeldForce| if b.magnitude() > a.magnitude() * (1.0 + 1e-9) { *b } else { a };
    forces.iter().rev().fold(WeldForce::default(), larger)
}

/// The greatest force of each stiffener's weld.
pub(crate) fn weld_peaks(design: &StaticDesign, state: &State) -> Vec<WeldForce> {
    let each = design.axle.stiffeners.iter().zip(&design.frame.tied);
    each.map(|(stiffener, beams)| peak(&weld_forces(stiffener, beams, state))).collect()
}

fn weld_forces(stiffener: &Stiffener, tied: &TiedStiffener, state: &State) -> Vec<WeldForce> {
    let (sine, cosine) = stiffener.clock.sin_cos();
    let each = tied.links.iter().map(|link| {
        // The spring's near side is the stiffener, so that this is its force on the axle.
        let [x, y, z, ..] = state.spring_force(link.spring).map(|force| force / link.piece.length);
        WeldForce {
            y: link.piece.y,
            length: link.piece.length,
            foot: Foot::BOTH[link.foot],
            along: y,
            across: cosine * x - sine * z,
            outward: sine * x + cosine * z,
        }
    });
    each.collect()
}

/// Axial force in the middle of each of its beams, and what it would be in one section with the axle.
fn axial_forces(
    composite: &StaticDesign,
    (stiffener, tied): (&Stiffener, &TiedStiffener),
    [whole, own]: [&State; 2],
) -> Vec<AxialForce> {
    let stretches = &composite.frame.stretches;
    let each = tied.beams.iter().filter_map(|beam| {
        let y = 0.5 * (beam.start_y + beam.end_y);
        let stretch =
            &stretches[stretches.partition_point(|stretch| stretch.end_y < y).min(stretches.len() - 1)];
        let tied = own.beam_forces(beam.beam).at(0.5 * (beam.end_y - beam.start_y)).axial;
        Some(AxialForce { y, tied, composite: axial_in_section(stiffener, stretch, whole, y)? })
    });
    each.collect()
}

/// Axial force of a stiffener's part of a composite section.
fn axial_in_section(stiffener: &Stiffener, stretch: &Stretch, whole: &State, y: f64) -> Option<f64> {
    let section = &stretch.stiffened.as_ref()?.section;
    let number = section.composite.parts().iter().skip(1).position(|part| part.name == stiffener.name)? + 1;
    let area = section.composite.parts()[number].outline.area_properties();
    let forces = stretch.line().resultants(&whole.beam_forces(stretch.beam).at(y - stretch.start_y));
    let field = section.stress_field(&forces);
    Some(area.area * section.composite.stress_in(number, &field).at(area.centroid))
}

/// The axle with continuous welds, and with continuous welds as stiff as fillets are taken to be, or as given where
/// that is more.
fn better_welds(axle: &Axle) -> [Axle; 2] {
    let mut continuous = axle.clone();
    for one in &mut continuous.stiffeners {
        one.weld.pattern = WeldPattern::Continuous;
    }
    let mut firm = continuous.clone();
    for one in &mut firm.stiffeners {
        one.weld.stiffness = one.weld.stiffness.max(weld_stiffness(one.material.shear_modulus()));
    }
    [continuous, firm]
}

/// The axle with better welds, to find what a loss of help comes from.
struct Reasons<'a> {
    continuous: StaticDesign<'a>,
    firm: StaticDesign<'a>,
}

/// Share of the help from which on a reason is named.
const SHARE_WORTH_A_WORD: f64 = 0.01;

impl Reasons<'_> {
    fn words(&self, case: &LoadCase, stiffening: &StiffeningOutcome) -> Result<String, AxleError> {
        let help = |camber: f64| (stiffening.without - camber).to_degrees().abs();
        let with = |design| camber_changes(design, case).map(|changes| help(*changes.of(stiffening.side)));
        let better = [with(&self.continuous)?, with(&self.firm)?];
        let (tied, composite) = (help(stiffening.tied), help(stiffening.composite));
        Ok(format!(
            "the stiffeners take {tied:.4} deg of camber change away, {:.0} % less than the {composite:.4} deg of \
             full composite action: {}",
            100.0 * stiffening.help_lost(),
            reasons(stiffening, [tied, composite], better).join("; ")
        ))
    }
}

/// Reasons in words; all help in degrees.
fn reasons(
    stiffening: &StiffeningOutcome,
    [tied, composite]: [f64; 2],
    [continuous, firm]: [f64; 2],
) -> Vec<String> {
    let mut reasons = Vec::new();
    let matters = |gained: f64| gained > SHARE_WORTH_A_WORD * composite;
    if matters(continuous - tied) {
        reasons.push(format!("the weld is in stitches (a continuous one: {continuous:.4} deg)"));
    }
    if matters(firm - continuous) {
        reasons.push(format!("the weld is soft (continuous and as stiff as a fillet: {firm:.4} deg)"));
    }
    if matters(composite - firm) {
        reasons.extend(short(stiffening, 1.0 - firm / composite));
    }
    reasons
}

/// What the ends of the shortest stiffener cost, `share` of the help being lost there.
fn short(stiffening: &StiffeningOutcome, share: f64) -> Option<String> {
    let by_length = |a: &&StiffenerOutcome, b: &&StiffenerOutcome| a.length().total_cmp(&b.length());
    let shortest = stiffening.stiffeners.iter().min_by(by_length)?;
    Some(format!(
        "{} is short: at {:.0} mm, each of its ends, where it takes its force up, is as good as lost over about {:.0} mm",
        shortest.name,
        shortest.length() * 1e3,
        0.5 * share * shortest.length() * 1e3
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)] // helpers of tests are tests too

    use axlebow_fe::State;

    use crate::example::stiffening::{loose_seats, tent};

    use super::{StaticDesign, StiffenerModel, weld_forces};
    use crate::{Actions, LoadCase, Side};

    /// Camber change and greatest weld force along the axle.
    fn at_fineness(fineness: f64) -> [f64; 2] {
        let axle = loose_seats(vec![tent()]);
        let design = StaticDesign::with_stiffeners(&axle, StiffenerModel::Tied { fineness }).unwrap();
        let actions = Actions { axle_load: 80e3, ..Actions::default() };
        let case = LoadCase { name: "load".into(), description: String::new(), dynamic_factor: 1.0, actions };
        let (_, state) = design.loaded(&case).unwrap();
        let along = |state: &State| weld_forces(&axle.stiffeners[0], &design.frame.tied[0], state);
        let peak = along(&state).iter().map(|force| force.along.abs()).fold(0.0, f64::max);
        [design.hub_line(&state).camber_change(Side::Left), peak]
    }

    #[test]
    fn more_pieces_of_weld_change_little_and_less_each_time() {
        let [usual, double, fourfold] = [1.0, 2.0, 4.0].map(at_fineness);
        let change = |a: [f64; 2], b: [f64; 2], i: usize| ((a[i] - b[i]) / b[i]).abs();
        let (camber, peak) = (change(usual, double, 0), change(usual, double, 1));
        assert!(camber < 1e-3 && peak < 1e-2, "{camber:e} {peak:e}");
        assert!(change(double, fourfold, 0) < 0.5 * camber && change(double, fourfold, 1) < 0.7 * peak);
    }
}
