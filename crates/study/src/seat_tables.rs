//! Tables of seats for a study, made once from shells and kept on disk.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axlebow_axle::{Side, seat_wall};
use axlebow_model::Model;
use axlebow_wall::{Fineness, SeatKind, SeatRun, SeatTable};
use rayon::prelude::*;

use crate::Study;

/// First line of a kept table; its number grows when what is in it changes its meaning.
const HEAD: &str = "axlebow seat table 2";

/// Folder for tables: that of `AXLEBOW_CACHE`, or `axlebow` in the user's folder for caches; none where there is neither.
pub fn table_folder() -> Option<PathBuf> {
    let folder = |name: &str| std::env::var_os(name).filter(|value| !value.is_empty()).map(PathBuf::from);
    folder("AXLEBOW_CACHE")
        .or_else(|| folder("XDG_CACHE_HOME").map(|caches| caches.join("axlebow")))
        .or_else(|| folder("HOME").map(|home| home.join(".cache").join("axlebow")))
}

impl Study {
    /// Whether any variant's wall at a seat is made of shells.
    pub(crate) fn has_shells(&self) -> bool {
        let mut models = self.variants.iter().filter_map(|variant| Model::of(&variant.document).ok());
        models.any(|model| Side::BOTH.into_iter().any(|side| model.axle.seats.of(side).wall.is_shell()))
    }

    /// Tables for the seats of the study's variants whose walls are shells, if the file asks for tables.
    pub(crate) fn made_seat_tables(&self) -> Vec<Arc<SeatTable>> {
        let mut kinds: Vec<SeatKind> = Vec::new();
        let models = self.variants.iter().filter_map(|variant| Model::of(&variant.document).ok());
        for model in models.filter(|_| self.tabled_walls) {
            for side in Side::BOTH.into_iter().filter(|side| model.axle.seats.of(*side).wall.is_shell()) {
                let kind = SeatKind::of(&seat_wall(&model.axle, side));
                kinds.extend(kind.filter(|kind| !kinds.contains(kind)));
            }
        }
        let folder = table_folder();
        kinds.into_iter().filter_map(|kind| table(kind, folder.as_deref())).map(Arc::new).collect()
    }
}

/// The table of a kind, from the folder or else made and kept there; none where shells fail.
fn table(kind: SeatKind, folder: Option<&Path>) -> Option<SeatTable> {
    let path = folder.map(|folder| folder.join(format!("seat-table-{}.csv", name(&kind))));
    let kept = path.as_deref().and_then(|path| runs(&fs::read_to_string(path).ok()?, &kind));
    if let Some(table) = kept.and_then(|runs| SeatTable::through(kind, &runs)) {
        return Some(table);
    }
    let solved: Option<Vec<SeatRun>> =
        kind.places().into_par_iter().map(|place| run(&kind, &place)).collect();
    let solved = solved?;
    if let Some(path) = path {
        // A table that cannot be kept is made again next time.
        let _ = keep(&path, &solved);
    }
    SeatTable::through(kind, &solved)
}

fn run(kind: &SeatKind, place: &[f64]) -> Option<SeatRun> {
    let seat = kind.seat(place).ok()?;
    let solved = seat.compliance(&Fineness::USUAL).ok()?;
    Some(kind.run(place, &seat, &solved))
}

/// BLAKE3 of all that a table depends on, its first 16 hexadecimal digits.
fn name(kind: &SeatKind) -> String {
    let all = format!("{HEAD} {kind:?} {:?} {:?}", Fineness::USUAL, kind.places());
    blake3::hash(all.as_bytes()).to_hex()[..16].to_owned()
}

/// A line for each run: its place, an empty cell, its values, all digits.
fn text(runs: &[SeatRun]) -> String {
    let cells = |numbers: &[f64]| numbers.iter().map(|x| format!("{x:?}")).collect::<Vec<_>>().join(",");
    let line = |run: &SeatRun| format!("{},,{}\n", cells(&run.place), cells(&run.values));
    format!("{HEAD}\n{}", runs.iter().map(line).collect::<String>())
}

/// The runs of a kept table; none where it is not whole.
fn runs(text: &str, kind: &SeatKind) -> Option<Vec<SeatRun>> {
    let numbers = |cells: &str| cells.split(',').map(|cell| cell.parse().ok()).collect::<Option<Vec<f64>>>();
    let run = |line: &str| {
        let (place, values) = line.split_once(",,")?;
        Some(SeatRun { place: numbers(place)?, values: numbers(values)? })
    };
    let runs: Vec<SeatRun> = text.strip_prefix(HEAD)?.trim().lines().map(run).collect::<Option<_>>()?;
    let places = kind.places();
    let whole = runs.len() == places.len() && runs.iter().zip(places).all(|(run, place)| run.place == place);
    whole.then_some(runs)
}

/// Writes a table whole or not at all.
fn keep(path: &Path, runs: &[SeatRun]) -> std::io::Result<()> {
    let folder = path.parent().unwrap_or(Path::new("."));
    fs::create_dir_all(folder)?;
    let mut file = tempfile::NamedTempFile::new_in(folder)?;
    file.write_all(text(runs).as_bytes())?;
    file.persist(path).map_err(|error| error.error)?;
    Ok(())
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;
    use axlebow_wall::Tie;

    const KIND: SeatKind = SeatKind { poisson_ratio: 0.3, u_bolts: None, tie: Tie::Rigid };

    fn made_up() -> Vec<SeatRun> {
        let run = |place: Vec<f64>| {
            let values = (0..9).map(|v| (0.1 * f64::from(v) + place.iter().sum::<f64>()).exp()).collect();
            SeatRun { place, values }
        };
        KIND.places().into_iter().map(run).collect()
    }

    #[test]
    fn a_kept_table_comes_back_to_the_last_bit_and_a_torn_one_not_at_all() {
        let (folder, made) = (tempfile::tempdir().unwrap(), made_up());
        let path = folder.path().join("deeper").join("table.csv");
        keep(&path, &made).unwrap();
        let kept = fs::read_to_string(&path).unwrap();
        assert_eq!(runs(&kept, &KIND).unwrap(), made);
        for torn in [&kept[..kept.len() / 2], "", "another file\n1,,2\n"] {
            assert!(runs(torn, &KIND).is_none());
        }
    }
}
