//! `axlebow strength`.

use std::process::ExitCode;

use axlebow_axle::{StrengthAsk, StrengthRules};
use axlebow_report::{json, table};

use super::flex::chosen;
use crate::args::{Rules, Strength};
use crate::failure::{CHECK_FAILS, Failure};
use crate::{input, output};

pub fn run(arguments: &Strength) -> Result<ExitCode, Failure> {
    let model = input::model(&arguments.model)?;
    let cases = chosen(&model, &arguments.cases)?;
    let rules = match arguments.rules {
        Rules::Aisc => StrengthRules::Aisc,
        Rules::En => StrengthRules::En,
    };
    let ask = StrengthAsk { safety_factor: arguments.safety_factor, rules };
    let outcome = axlebow_axle::strength(&model.axle, &cases, ask)?;
    let card = input::card(&model, &arguments.model);
    output::print(&match arguments.model.json {
        true => json::strength_document(&outcome, &card),
        false => table::strength(&outcome, &card, arguments.all),
    })?;
    Ok(if outcome.holds() { ExitCode::SUCCESS } else { ExitCode::from(CHECK_FAILS) })
}
