//! From a file to a payback: rules across keys and files, each misfit reported at its place.

use std::path::Path;

use axlebow_model::{
    Document, LARGEST, Model, Problems, Table, Value, Written, likely, named_file, named_path, read_bytes,
    read_model, top_word,
};

use super::draws::DrawOptions;
use super::keys::PAYBACK;
use super::study::{PaybackRange, PaybackStudy};
use super::terms::{FleetTerms, MassTerms, PaybackInput, PaybackTerms, RemedyTerms, TireTerms};
use super::wear::Rotation;
use crate::file::{Files, Reader};

/// How far shares may miss 1: three of a whole per cent each, rounded.
const ROUNDING: f64 = 0.0101;
/// Shares of a distribution at which its values must be ones of the key.
const TAILS: [f64; 3] = [1e-6, 0.519, 1.0 - 1e-6];

/// The keys of a range that hold a value of its input.
const VALUES: [&str; 5] = ["from", "to", "likely", "mean", "deviation"];

impl PaybackStudy {
    /// Whether a study file says that it asks for a payback.
    pub fn is_asked(bytes: &[u8]) -> bool {
        top_word(bytes, "kind").as_deref() == Some("payback")
    }

    /// Reads a file and the model files that it points to.
    ///
    /// Arguments: `bytes`, the file; `file_name`, for messages; `folder`, in which the file is.
    ///
    /// # Errors
    /// Every problem of the file at once, or those of a model file that it points to: unknown keys, prices without a currency
    /// or in another one, shares that do not come to 1, ranges of what has none, a file that cannot be read.
    pub fn from_bytes(bytes: &[u8], file_name: &str, folder: &Path) -> Result<PaybackStudy, Problems> {
        let document = read_bytes(bytes, file_name, &PAYBACK)?;
        let files = files(&document, folder)?;
        let (root, problems, notes) = (document.root(), document.problems(), Vec::new());
        Reader { document: &document, root, problems, files: &files, notes }.payback()
    }
}

/// The model of today, and that of the remedy where it has its own.
fn files(document: &Document, folder: &Path) -> Result<Files, Problems> {
    let root = document.root();
    let remedy = root.table("remedy");
    let own = remedy.optional_text("model").map(|_| (remedy, "model"));
    let places: Vec<(&Table, &str)> = std::iter::once((root, "model")).chain(own).collect();
    let read = |place: &(&Table, &str)| {
        let bytes = named_file(document, *place, folder, LARGEST)?;
        read_model(&bytes, place.0.text(place.1))
    };
    let mut problems = document.problems();
    for place in &places {
        if let Err(missing) = named_file(document, *place, folder, 0) {
            problems.absorb(&missing);
        }
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut documents = places.iter().map(read).collect::<Result<Vec<_>, _>>()?.into_iter();
    Ok(Files {
        model: documents.next(),
        of_variants: documents.map(Some).collect(),
        duty: None,
        roads: Vec::new(),
        paths: places.iter().map(|(table, key)| named_path((key, table.text(key)), folder)).collect(),
    })
}

impl Reader<'_> {
    /// The payback, or everything that is wrong with it; problems of a model file by itself come alone.
    fn payback(mut self) -> Result<PaybackStudy, Problems> {
        let root = self.root;
        let today = self.files.model.clone().ok_or_else(|| self.problems.clone())?;
        let remedied = self.remedied(&today);
        self.check_currency(root);
        self.check_shares();
        self.check_pairs();
        let ranges = self.ranges();
        let base = Model::of(&today)?;
        self.check_cases(&base)?;
        if !self.problems.is_empty() {
            return Err(self.problems);
        }
        for note in today.notes().into_iter().chain(remedied.notes()) {
            self.note(note);
        }
        let text = |key: &str| root.text(key).to_owned();
        let draws = root.table("draws");
        let is_given = |input: &PaybackInput| self.document.number(input.path()).is_ok();
        Ok(PaybackStudy {
            name: text("name"),
            note: root.optional_text("note").map(str::to_owned),
            currency: text("currency"),
            remedy: root.table("remedy").text("name").to_owned(),
            base,
            remedied: Model::of(&remedied)?,
            case: text("case"),
            rotation: match root.table("tires").word("rotation") {
                "positions" => Rotation::Positions,
                _ => Rotation::None,
            },
            terms: terms(root),
            inputs: PaybackInput::ALL.into_iter().filter(is_given).collect(),
            ranges,
            draws: DrawOptions { count: draws.count("count"), seed: draws.count("seed") },
            assumed: self.document.assumed().to_vec(),
            notes: self.notes,
            files: self.files.paths.clone(),
        })
    }

    /// The remedied axle; a remedy must change something.
    fn remedied(&mut self, today: &Document) -> Document {
        let remedy = self.root.table("remedy");
        let own = self.files.of_variants.first().and_then(Option::as_ref);
        if own.is_none() && remedy.changes("change").is_empty() {
            let accepted = "`model`, `change`, or both".to_owned();
            self.problems.push(remedy.span(), "the remedy changes nothing", Some(accepted));
        }
        self.changed(own.unwrap_or(today), remedy)
    }

    /// Every price is in the currency of the file.
    fn check_currency(&mut self, table: &Table) {
        for entry in table.entries() {
            match &entry.value {
                Value::Table(inner) => self.check_currency(inner),
                value => self.check_price(value, entry.span.clone()),
            }
        }
    }

    fn check_price(&mut self, value: &Value, span: axlebow_model::Span) {
        let Value::Price { currency, .. } = value else { return };
        let of_file = self.root.text("currency");
        if currency != of_file {
            let message = format!("the price is in {currency:?}, and the file's currency is {of_file:?}");
            self.problems.push(span, message, Some(format!("prices in {of_file}; nothing is converted")));
        }
    }

    fn check_shares(&mut self) {
        let table = self.root.table("tires").table("removed_by");
        let keys = ["shoulder_wear", "even_wear", "other"];
        let sum: f64 = keys.iter().map(|key| table.number(key)).sum();
        if (sum - 1.0).abs() > ROUNDING {
            let message = format!("the shares of removals come to {:.1} %", 100.0 * sum);
            let accepted = "shares that come to 100 %".to_owned();
            self.problems.push(table.span(), message, Some(accepted));
        }
    }

    /// Keys that mean nothing without another.
    fn check_pairs(&mut self) {
        let (remedy, tires) = (self.root.table("remedy"), self.root.table("tires"));
        let stands = remedy.optional_number("downtime").unwrap_or(0.0) > 0.0;
        if stands && remedy.entry("downtime_price").is_none() {
            let accepted = "`downtime_price`, such as \"95 USD/h\"".to_owned();
            self.problems.push(remedy.span_of("downtime"), "the downtime has no price", Some(accepted));
        }
        if tires.count("retreads") > 0 && tires.entry("retread").is_none() {
            let accepted = "`retread`, such as \"220 USD\"".to_owned();
            self.problems.push(tires.span_of("retreads"), "the retreads have no price", Some(accepted));
        }
    }

    fn ranges(&mut self) -> Vec<PaybackRange> {
        let mut ranges: Vec<PaybackRange> = Vec::new();
        for table in self.root.tables("range") {
            let Some(range) = self.payback_range(table) else { continue };
            if ranges.iter().any(|own| own.input == range.input) {
                let message = format!("{:?} has two ranges", range.input.path());
                self.problems.push(
                    table.span_of("path"),
                    message,
                    Some("one range for each input".to_owned()),
                );
            }
            ranges.push(range);
        }
        ranges
    }

    fn payback_range(&mut self, table: &Table) -> Option<PaybackRange> {
        let input = self.ranged_input(table)?;
        let mut scratch = self.document.clone();
        for key in VALUES {
            let Some(Written { text, span }) = Self::written(table, key) else { continue };
            if scratch.set(input.path(), &text).is_ok()
                && let Ok(value) = scratch.value(input.path())
            {
                self.check_price(value, span);
            }
        }
        let kind = self.document.kind(input.path()).ok()?;
        let distribution = self.drawn_from(table, ((input.path(), self.document.clone()), kind))?;
        for share in TAILS {
            if let Err(refusal) = scratch.set_number(input.path(), distribution.quantile(share)) {
                self.problems.push_refusal(table.span(), &refusal);
                return None;
            }
        }
        Some(PaybackRange { input, distribution })
    }

    /// The input that a range is of.
    fn ranged_input(&mut self, table: &Table) -> Option<PaybackInput> {
        let path = table.text("path");
        let given = |input: &PaybackInput| self.document.number(input.path()).is_ok();
        let found = PaybackInput::ALL.into_iter().find(|input| input.path() == path);
        if let Some(input) = found.filter(given) {
            return Some(input);
        }
        let names = || PaybackInput::ALL.into_iter().filter(given).map(PaybackInput::path);
        let message = match found {
            Some(_) => format!("the file gives no `{path}` that could have a range"),
            None => format!("no input is called {path:?}"),
        };
        let hints = (Some(names().collect::<Vec<_>>().join(", ")), likely(path, names()));
        self.problems.push_likely(table.span_of("path"), message, hints);
        None
    }
}

fn terms(root: &Table) -> PaybackTerms {
    let [remedy, fleet, tires, mass] = ["remedy", "fleet", "tires", "mass"].map(|key| root.table(key));
    let or_nothing = |table: &Table, key: &str| table.optional_number(key).unwrap_or(0.0);
    PaybackTerms {
        fleet: FleetTerms {
            vehicles: fleet.count("vehicles"),
            axles: fleet.count("axles"),
            distance: fleet.number("distance"),
            years: fleet.number("years"),
            discount_rate: fleet.number("discount_rate"),
        },
        remedy: RemedyTerms {
            price: remedy.number("price"),
            downtime: or_nothing(remedy, "downtime"),
            downtime_price: or_nothing(remedy, "downtime_price"),
            inspection: or_nothing(remedy, "inspection"),
        },
        tires: TireTerms {
            new: tires.number("new"),
            retread: or_nothing(tires, "retread"),
            retreads: tires.count("retreads"),
            casing: or_nothing(tires, "casing"),
            fitting: or_nothing(tires, "fitting"),
            removal_distance: tires.number("removal_distance"),
            shoulder_share: tires.table("removed_by").number("shoulder_wear"),
            wear_effect: tires.number("wear_effect"),
        },
        mass: MassTerms { payload: or_nothing(mass, "payload"), fuel: or_nothing(mass, "fuel") },
    }
}
