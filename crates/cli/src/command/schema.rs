//! `axlebow schema`.

use crate::args::{Schema, SchemaOf};
use crate::failure::{Exit, Failure};
use crate::output;

pub fn run(arguments: &Schema) -> Result<Exit, Failure> {
    let text = match arguments.of {
        SchemaOf::Model => format!("{:#}\n", axlebow_model::json_schema(&axlebow_model::MODEL)),
        SchemaOf::Study => format!("{:#}\n", axlebow_model::json_schema(&axlebow_study::STUDY)),
        SchemaOf::Payback => format!("{:#}\n", axlebow_model::json_schema(&axlebow_study::PAYBACK)),
        SchemaOf::PaybackResult => axlebow_report::json::payback_schema(),
        SchemaOf::Road => format!("{:#}\n", axlebow_model::json_schema(&axlebow_model::ROAD)),
        SchemaOf::Tire => format!("{:#}\n", axlebow_model::json_schema(&axlebow_model::TIRE)),
        SchemaOf::TireResult => axlebow_report::json::tire_schema(),
        SchemaOf::TireTable => axlebow_report::json::compatibility_schema(),
        SchemaOf::Causes => axlebow_report::json::causes_schema(),
        SchemaOf::Case => format!("{:#}\n", axlebow_model::json_schema(&axlebow_model::CASE)),
        SchemaOf::Explain => axlebow_report::json::explain_schema(),
        SchemaOf::Remedies => axlebow_report::json::remedies_schema(),
        SchemaOf::RemediesFile => format!("{:#}\n", axlebow_model::json_schema(&axlebow_study::REMEDIES)),
        SchemaOf::Fit => axlebow_report::json::fit_schema(),
        SchemaOf::Flex => axlebow_report::json::flex_schema(),
        SchemaOf::FlexAgainst => axlebow_report::json::flex_against_schema(),
        SchemaOf::StudyResult => axlebow_report::json::study_schema(),
        SchemaOf::Search => axlebow_report::json::search_schema(),
        SchemaOf::Sensitivities => axlebow_report::json::sensitivities_schema(),
        SchemaOf::Duty => format!("{:#}\n", axlebow_model::json_schema(&axlebow_model::DUTY)),
        SchemaOf::Life => axlebow_report::json::life_schema(),
        SchemaOf::Modes => axlebow_report::json::modes_schema(),
        SchemaOf::Ride => axlebow_report::json::ride_schema(),
        SchemaOf::Strength => axlebow_report::json::strength_schema(),
        SchemaOf::Rating => axlebow_report::json::rating_schema(),
        SchemaOf::Response => axlebow_report::json::response_schema(),
        SchemaOf::Growth => axlebow_report::json::growth_schema(),
        SchemaOf::Section => axlebow_report::json::section_schema(),
        SchemaOf::Drawing => axlebow_report::json::drawing_schema(),
        SchemaOf::Cups => axlebow_report::json::cups_schema(),
        SchemaOf::BeamFile => format!("{:#}\n", axlebow_model::json_schema(&axlebow_model::BEAM)),
        SchemaOf::Beam => axlebow_report::json::beam_schema(),
        SchemaOf::Textbook => axlebow_report::json::textbook_schema(),
    };
    output::print(&text)?;
    Ok(Exit::Done)
}
