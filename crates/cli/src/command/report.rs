//! `axlebow report`.

use axlebow_axle::{Ride, tires, tires_over};
use axlebow_model::{Document, Model, given_file};
use axlebow_report::plot::{
    Drawing, flex_figure, modes_figure, remedies_figure, section_figure, tire_figure,
};
use axlebow_report::table::Part;
use axlebow_report::{ModelCard, Page, SectionCard, ShopDrawing, StiffenedCard, json, table};
use axlebow_study::{RankBy, RemedyOptions, remedies};
use std::path::{Path, PathBuf};

use super::flex::chosen;
use crate::args::{Audience, ModelInput, Report, Study, StudyInput, StudyOutput};
use crate::failure::{Exit, Failure};
use crate::paper::write_page;
use crate::{input, output, road_input};

/// Modes that a report shows.
const MODES: usize = 8;

/// A part of the report: its page and its document.
struct Made {
    part: Part,
    page: Page,
    document: String,
}

pub fn run(arguments: &Report) -> Result<Exit, Failure> {
    output::check_kinds("-o", arguments.out.as_deref(), &output::PAGES)?;
    let path = given_file(&arguments.file, "toml");
    let out = arguments.out.clone().unwrap_or_else(|| named_after(&path));
    if is_study(&path)? {
        return super::study::run(&of_study(arguments, path, out));
    }
    let asked = ModelInput {
        model: path,
        changes: arguments.changes.clone(),
        units: arguments.units,
        json: false,
        page: Some(out.clone()),
    };
    let document = input::document(&asked)?;
    let model = input::built(&document, &asked)?;
    let mut card = input::card(&model, &asked);
    let ride = road_input::quick_ride(&arguments.drive, &model.axle, &mut card)?;
    let beside = |name: &str| Some(out.with_extension(format!("{name}.json")));
    output::check_places(&[&asked.page])?;
    let audience = arguments.audience;
    let made =
        parts(&Subject { document: &document, model: &model, ride: ride.as_ref(), card: &card, audience })?;
    for own in &made {
        if let Some(path) = beside(own.part.word()).filter(|_| !arguments.alone) {
            output::write_file(&path, own.document.as_bytes())?;
        }
    }
    let page = whole(made, audience, &card);
    write_page(&out, &page.html(&card))?;
    output::print(&format!("{}\n", page.answer.join(" ")))?;
    Ok(Exit::Done)
}

/// The report of an axle at rest, for a fleet.
pub fn page(document: &Document, model: &Model, card: &ModelCard) -> Result<String, Failure> {
    let audience = Audience::Fleet;
    let made = parts(&Subject { document, model, ride: None, card, audience })?;
    Ok(whole(made, audience, card).html(card))
}

fn whole(made: Vec<Made>, audience: Audience, card: &ModelCard) -> Page {
    let pages: Vec<(Part, Page)> = made.into_iter().map(|own| (own.part, own.page)).collect();
    table::report(&pages, audience.into(), card)
}

/// Beside nothing else in this folder: `my-axle.toml` becomes `my-axle-report.html`.
fn named_after(path: &Path) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    PathBuf::from(format!("{stem}-report.html"))
}

/// Whether a file is a study: it says what is varied or held side by side, and where its model is.
fn is_study(path: &Path) -> Result<bool, Failure> {
    let text = String::from_utf8_lossy(&input::read_file(path)?).into_owned();
    Ok(text.lines().any(|line| ["[[vary]]", "[[variant]]"].contains(&line.trim())))
}

/// A study as its own command runs it.
fn of_study(arguments: &Report, study: PathBuf, page: PathBuf) -> Study {
    Study {
        input: StudyInput { study, show: Vec::new(), coarse: None },
        output: StudyOutput {
            units: arguments.units,
            json: false,
            csv: (!arguments.alone).then(|| page.with_extension("csv")),
            plain_csv: false,
            page: Some(page),
            parquet: None,
            plot: None,
        },
        resume: false,
        restart: false,
        part: None,
        dry_run: false,
        large: false,
    }
}

/// What a report is about, and for whom.
struct Subject<'a> {
    document: &'a Document,
    model: &'a Model,
    ride: Option<&'a Ride>,
    card: &'a ModelCard,
    audience: Audience,
}

fn parts(of: &Subject<'_>) -> Result<Vec<Made>, Failure> {
    let mut parts = vec![flex(of)?, tire(of)?, remedy(of)?, strength(of)?, sections(of)?, modes(of)?];
    if of.audience == Audience::Shop {
        parts.push(drawing(of)?);
    }
    Ok(parts)
}

fn drawing(of: &Subject<'_>) -> Result<Made, Failure> {
    let options = super::drawing::usual_options(of.model, of.card);
    let drawing = ShopDrawing::of((&of.model.axle, of.model.strength), options, of.card)?;
    Ok(Made {
        part: Part::Drawing,
        page: table::drawing(&drawing, of.card).with_figures([drawing.svg()]),
        document: json::drawing_document(&drawing, of.card),
    })
}

fn flex(of: &Subject<'_>) -> Result<Made, Failure> {
    let outcome = axlebow_axle::flex(&of.model.axle, &of.model.cases)?;
    let figure = flex_figure(&outcome.cases[0], &Drawing::of(&of.model.axle), of.card)?;
    Ok(Made {
        part: Part::Flex,
        page: table::flex_brief(&outcome, of.card).with_figures([figure]),
        document: json::flex_document(&outcome, of.card),
    })
}

fn tire(of: &Subject<'_>) -> Result<Made, Failure> {
    let axle = &of.model.axle;
    let outcome = tires(axle, &of.model.cases)?;
    let ridden = |ride: &Ride| tires_over(axle, ride, &axlebow_axle::ride(axle, ride)?);
    let over = of.ride.map(ridden).transpose()?;
    let figure = tire_figure(&outcome, over.as_ref(), of.card)?;
    Ok(Made {
        part: Part::Tire,
        page: table::tire(&outcome, over.as_ref(), of.card).with_figures([figure]),
        document: json::tire_document(&outcome, over.as_ref(), of.card),
    })
}

fn remedy(of: &Subject<'_>) -> Result<Made, Failure> {
    let case = chosen(of.model, &[])?.swap_remove(0).name;
    let options =
        RemedyOptions { case: &case, ride: of.ride, own: Vec::new(), rank: RankBy::Wear, prices: None };
    let outcome = remedies(of.document, &options).map_err(|why| Failure::Input(why.to_string()))?;
    let figure = remedies_figure(&outcome, of.card)?;
    Ok(Made {
        part: Part::Remedies,
        page: table::remedies(&outcome, of.card).with_figures([figure]),
        document: json::remedies_document(&outcome, of.card),
    })
}

fn strength(of: &Subject<'_>) -> Result<Made, Failure> {
    let (axle, cases, ask) = (&of.model.axle, &of.model.cases, of.model.strength);
    let outcome = axlebow_axle::strength(axle, cases, ask)?;
    let bands = axlebow_axle::weld_bands(axle, cases, ask)?;
    Ok(Made {
        part: Part::Strength,
        page: table::strength(&outcome, &bands, of.card, false),
        document: json::strength_document(&outcome, &bands, of.card),
    })
}

fn sections(of: &Subject<'_>) -> Result<Made, Failure> {
    let (sections, stiffened) =
        (SectionCard::all_of(&of.model.axle), StiffenedCard::all_of(&of.model.axle, None)?);
    let figure = section_figure(&sections, &stiffened, of.card)?;
    Ok(Made {
        part: Part::Sections,
        page: table::sections(&sections, &stiffened, &[], of.card).with_figures([figure]),
        document: json::section_document(&sections, &stiffened, &[], of.card),
    })
}

fn modes(of: &Subject<'_>) -> Result<Made, Failure> {
    let outcome = axlebow_axle::modes(&of.model.axle, of.model.axle.loading.rated_load, MODES)?;
    let figure = modes_figure(&outcome, of.card)?;
    Ok(Made {
        part: Part::Modes,
        page: table::modes(&outcome, of.card).with_figures([figure]),
        document: json::modes_document(&outcome, of.card),
    })
}
