//! `axlebow serve`.

use axlebow_model::{Document, Model, given_file};
use axlebow_report::ModelCard;
use axlebow_serve::{ServeOptions, Server};

use super::{payback, report};
use crate::args::Serve;
use crate::failure::{Exit, Failure};
use crate::{input, output};

pub fn run(arguments: &Serve) -> Result<Exit, Failure> {
    let file = arguments.model.as_deref().map(|path| given_file(path, "toml"));
    if let Some(path) = &file {
        // A file with problems is shown on the page with them; one that cannot be read is refused here.
        input::read_file(path)?;
    }
    let options = ServeOptions {
        file,
        port: arguments.port,
        system: arguments.units.map(Into::into),
        prices: arguments.prices.as_deref().map(payback::prices).transpose()?,
        report: made,
    };
    let server = Server::bind(options)
        .map_err(|error| Failure::Input(format!("cannot serve at port {}: {error}", arguments.port)))?;
    output::print(&format!("{}\n", server.address()))?;
    output::say("the page is for this machine only; Ctrl-C ends it");
    if !arguments.no_browser
        && let Err(error) = server.open_browser()
    {
        output::say(&format!("no browser opened ({error}); open the address above in one"));
    }
    server.run().map_err(|error| Failure::Input(format!("cannot serve any longer: {error}")))?;
    Ok(Exit::Done)
}

/// The report of an axle for whoever pays, as `axlebow report` makes it.
fn made(document: &Document, card: &ModelCard) -> Result<String, String> {
    let model = Model::of(document).map_err(|problems| problems.render())?;
    report::page(document, &model, card).map_err(|failure| failure.text())
}
