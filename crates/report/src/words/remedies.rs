//! Words of remedies that tables, answers and pictures share.

use axlebow_axle::TireSlot;
use axlebow_results::within_a_sentence;
use axlebow_study::{
    Binding, Change, DoneBy, RemediesOutcome, Remedy, Shoulder, ShoulderWear, Standard, State, StockAngle,
    Tried,
};

use crate::number::fixed;

/// What a remedy is called, such as "reverse the wheels".
pub(crate) fn name(remedy: &Remedy) -> String {
    match remedy {
        Remedy::Standard(own) => told(*own).name.to_owned(),
        Remedy::Own(own) => own.name.clone(),
        Remedy::Pair(both) => format!("{} + {}", name(&both[0]), name(&both[1])),
    }
}

/// The same as what somebody does, such as "Reversing the wheels".
pub(crate) fn doing(remedy: &Remedy) -> String {
    match remedy {
        Remedy::Standard(own) => told(*own).doing.to_owned(),
        Remedy::Own(own) => format!("The remedy {:?}", own.name),
        Remedy::Pair(both) => {
            format!("{} and {}", doing(&both[0]), within_a_sentence(&doing(&both[1])))
        }
    }
}

/// Who does it.
pub(crate) fn done_by(remedy: &Remedy) -> &'static str {
    match remedy.done_by() {
        DoneBy::Shop => "shop",
        DoneBy::Wheels => "wheels",
        DoneBy::Welding => "weld",
        DoneBy::AnotherAxle => "another axle",
        DoneBy::Own => "own",
    }
}

/// What a remedy needs and what it risks.
pub(crate) fn needs_and_risks(remedy: &Remedy) -> Vec<String> {
    match remedy {
        Remedy::Standard(own) => {
            let Told { needs, risks, .. } = told(*own);
            vec![format!("Needs {needs}."), format!("Risks: {risks}.")]
        }
        Remedy::Own(own) => {
            let needs = own.needs.as_ref().map(|needs| format!("Needs {needs}."));
            let risks = own.risks.as_ref().map(|risks| format!("Risks: {risks}."));
            needs.into_iter().chain(risks).collect()
        }
        Remedy::Pair(both) => both.iter().flat_map(needs_and_risks).collect(),
    }
}

/// Mass that a remedy adds, kg; none where it is nothing that shows.
pub(crate) fn added_mass(outcome: &RemediesOutcome, state: &State) -> Option<f64> {
    Some(state.axle_mass - outcome.base.axle_mass).filter(|added| added.abs() >= 0.05)
}

/// A share of the excess in percent, without decimals.
pub(crate) fn excess_off(outcome: &RemediesOutcome, tried: &Tried) -> String {
    outcome.taken_off(tried).map_or("-".to_owned(), |share| fixed(100.0 * share, 0))
}

/// Whether somebody welds for it.
pub(crate) fn welds(remedy: &Remedy) -> bool {
    remedy.parts().iter().any(|part| matches!(part, Remedy::Standard(Standard::TopAngle(_))))
}

/// A change of the model, such as "wheel[0].reversed = true".
pub(crate) fn change(change: &Change) -> String {
    match change {
        Change::Key { path, text } => format!("{path} = {text}"),
        Change::Stiffener(text) => {
            let lines = text.lines().skip(1).filter(|line| !line.is_empty());
            format!("stiffener: {}", lines.collect::<Vec<_>>().join(", ").replace('"', ""))
        }
    }
}

/// A shoulder, such as "the inner shoulder of the left inner tire"; both sides where wheels are alike.
pub(crate) fn shoulder(worst: &ShoulderWear, alike: bool) -> String {
    let shoulder = match worst.shoulder {
        Shoulder::Inner => "inner",
        Shoulder::Outer => "outer",
    };
    match (alike, worst.tire) {
        (true, TireSlot::Single) => format!("the {shoulder} shoulder"),
        (true, tire) => format!("the {shoulder} shoulder of the {} tire", tire.word()),
        (false, tire) => format!("the {shoulder} shoulder of the {}", tire.of_side(worst.side.word())),
    }
}

/// What a check uses, such as "bending stress at left-seat in braking uses 104 % of its limit".
pub(crate) fn uses(binding: &Binding) -> String {
    let case = binding.case.as_ref().map_or(String::new(), |case| format!(" in {case}"));
    let share = fixed(100.0 * binding.utilization, 0);
    format!("{} at {}{case} uses {share} % of its limit", binding.what, binding.place)
}

/// What a standard remedy is called, how it is done, what it needs and what it risks.
struct Told {
    name: &'static str,
    doing: &'static str,
    needs: &'static str,
    risks: &'static str,
}

/// Common practice, no source, but where one is named.
fn told(remedy: Standard) -> Told {
    match remedy {
        Standard::SetBearings => Told {
            name: "set the bearings",
            doing: "Setting the bearings",
            needs: "an hour in the shop for each wheel end and a dial indicator: bearings on a spacer sleeve are torqued as their maker \
             says, adjustable ones are set by endplay, 0.025 to 0.127 mm (TMC RP 618)",
            risks: "a bearing set too tight burns, so that endplay is measured again after setting; the axle stands on stands, never on a \
             jack alone",
        },
        Standard::ReverseWheels => Told {
            name: "reverse the wheels",
            doing: "Reversing the wheels",
            needs: "the wheel maker's approval for that way round, valve stems led to the other side, and a look at stud length and hub \
             pilots",
            risks: "the track narrows; tire and rim come nearer to drum, air lines, seat and frame",
        },
        Standard::ZerosetWheels => Told {
            name: "zeroset wheels",
            doing: "Fitting zeroset wheels",
            needs: "another set of wheels",
            risks: "the track narrows; tire and rim come nearer to drum, air lines, seat and frame",
        },
        Standard::CorrectToe => Told {
            name: "correct the toe",
            doing: "Correcting the toe",
            needs: "an alignment bench, and the axle maker or a licensed alignment shop for the correction",
            risks: "a spindle or tube bent with heat loses its strength: never bend it hot",
        },
        Standard::SetInflation => Told {
            name: "set the inflation",
            doing: "Setting the inflation",
            needs: "a gauge that is checked, cold tires, and the tire maker's table for the load",
            risks: "a tire that ran low may be hurt inside: have it looked at before it is inflated",
        },
        Standard::MatchDuals => Told {
            name: "match the duals",
            doing: "Matching the duals",
            needs: "tires of one radius on each hub, within 3 mm or so (common practice, no source)",
            risks: "none beyond the change of tires",
        },
        Standard::SquareAxle => Told {
            name: "square the axle",
            doing: "Squaring the axle",
            needs: "an alignment bench and the adjusters that the suspension's maker has made for it",
            risks: "none where it is done to the suspension maker's procedure",
        },
        Standard::BuiltInCamber => Told {
            name: "camber built in",
            doing: "Building camber in",
            needs: "an axle that its maker has made with this camber; no shop bends a spindle",
            risks: "empty, the tops lean out by what the load no longer takes away, and the outer shoulder wears",
        },
        Standard::DeeperTread => Told {
            name: "deeper-treaded tire",
            doing: "A deeper-treaded tire",
            needs: "other tires at the next change",
            risks: "more rolling resistance, so more fuel",
        },
        Standard::StrongerDampers => Told {
            name: "stronger dampers",
            doing: "Fitting stronger dampers",
            needs: "new dampers, half as strong again as the model's, that the suspension's maker allows",
            risks: "a harder ride and more force at the dampers' brackets",
        },
        Standard::HeavierWall => Told {
            name: "heavier wall",
            doing: "A heavier wall",
            needs: "another axle or housing of its maker's range",
            risks: "payload lost to its mass",
        },
        Standard::LargerTube => Told {
            name: "larger tube",
            doing: "A larger tube",
            needs: "another axle, with seats and brackets of that size",
            risks: "payload lost to its mass; less room to frame and brakes",
        },
        Standard::TopAngle(StockAngle::Light) => angle("top angle 50 mm", "A 50 mm angle along the top"),
        Standard::TopAngle(StockAngle::Middle) => angle("top angle 75 mm", "A 75 mm angle along the top"),
        Standard::TopAngle(StockAngle::Heavy) => angle("top angle 100 mm", "A 100 mm angle along the top"),
    }
}

fn angle(name: &'static str, doing: &'static str) -> Told {
    let needs = "the axle maker's written approval, a qualified weld procedure with preheat, and a look at what \
                 `axlebow strength` says of its welds and run-outs";
    let risks = "cracks that start at its ends, a rating that is void";
    Told { name, doing, needs, risks }
}
