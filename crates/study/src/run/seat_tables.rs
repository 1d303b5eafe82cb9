//! Tables of seats for a study, made once from shells and kept on disk.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axlebow_axle::{Side, seat_wall};
use axlebow_model::Model;
use axlebow_wall::{Fineness, SeatKind, SeatRun, SeatTable};
use rayon::prelude::*;

use crate::ask::Study;
use crate::store::WholeFile;

/// First line of a kept table: which code its numbers are from.
const HEAD: &str = concat!("axlebow seat table 2, build ", env!("AXLEBOW_WALL_BUILD"));
/// What its last line begins with, before the BLAKE3 of all lines above.
const CHECK: &str = "check ";

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

/// BLAKE3 of which seats a table is of, its first 16 hexadecimal digits.
fn name(kind: &SeatKind) -> String {
    let all = format!("{kind:?} {:?} {:?}", Fineness::USUAL, kind.places());
    blake3::hash(all.as_bytes()).to_hex()[..16].to_owned()
}

/// A line for each run: its place, an empty cell, its values, all digits; then a check.
fn text(runs: &[SeatRun]) -> String {
    let cells = |numbers: &[f64]| numbers.iter().map(|x| format!("{x:?}")).collect::<Vec<_>>().join(",");
    let line = |run: &SeatRun| format!("{},,{}\n", cells(&run.place), cells(&run.values));
    let lines = format!("{HEAD}\n{}", runs.iter().map(line).collect::<String>());
    format!("{lines}{CHECK}{}\n", blake3::hash(lines.as_bytes()))
}

/// The runs of a kept table; none where it is not as this build writes it.
fn runs(text: &str, kind: &SeatKind) -> Option<Vec<SeatRun>> {
    let numbers = |cells: &str| cells.split(',').map(|cell| cell.parse().ok()).collect::<Option<Vec<f64>>>();
    let run = |line: &str| {
        let (place, values) = line.split_once(",,")?;
        Some(SeatRun { place: numbers(place)?, values: numbers(values)? })
    };
    let (lines, check) = text.split_at_checked(text.rfind(CHECK)?)?;
    if check != format!("{CHECK}{}\n", blake3::hash(lines.as_bytes())) {
        return None;
    }
    let runs: Vec<SeatRun> = lines.strip_prefix(HEAD)?.trim().lines().map(run).collect::<Option<_>>()?;
    let places = kind.places();
    let whole = runs.len() == places.len() && runs.iter().zip(places).all(|(run, place)| run.place == place);
    whole.then_some(runs)
}

/// Writes a table whole or not at all.
fn keep(path: &Path, runs: &[SeatRun]) -> std::io::Result<()> {
    let folder = path.parent().unwrap_or(Path::new("."));
    fs::create_dir_all(folder)?;
    let mut file = WholeFile::begin(path)?;
    file.writer().write_all(text(runs).as_bytes())?;
    file.finish()
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
        for torn in ["", "another file\n1,,2\n", &kept.replacen("build ", "build 1", 1)] {
            assert!(runs(torn, &KIND).is_none());
        }
        for at in 0..kept.len() {
            assert!(runs(&kept[..at], &KIND).is_none(), "cut at {at}");
        }
        for at in (0..kept.len()).step_by(97) {
            let changed = if kept.as_bytes()[at] == b'1' { "2" } else { "1" };
            let changed = [&kept[..at], changed, &kept[at + 1..]].concat();
            assert!(runs(&changed, &KIND).is_none(), "changed at {at}");
        }
    }
}
