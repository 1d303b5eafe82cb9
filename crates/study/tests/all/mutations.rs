//! Damaged files of every kind: each is read or refused in a moment, and no reader panics.
//!
//! A few hundred mutations of each belong to the tests; `scripts/mutate-files` runs as many as one likes.

use std::ops::Range;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use axlebow_model::{Model, RoadFile, TireFile, readings};
use axlebow_study::{Chunk, Earlier, Expression, Head, Part, Results, ResultsFile, Study};
use rand_chacha::ChaCha12Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Mutations of each kind where `AXLEBOW_MUTATIONS` does not say.
const FEW: u64 = 200;
/// A file that takes longer to be read or refused hangs; a slow, busy machine takes a tenth of it.
const LONGEST: Duration = Duration::from_secs(20);

/// What is put into a file besides its own text.
const PIECES: [&str; 24] = [
    "\"",
    "'",
    "[",
    "]",
    "[[",
    "{",
    "}",
    "=",
    ",",
    "\n",
    "\r\n",
    "#",
    ".",
    "-",
    "0",
    "1e999",
    "nan",
    "inf",
    "-1 mm",
    "99999999999999999999",
    "\0",
    "\u{202e}",
    "\u{feff}",
    "((((((((((((((((",
];

fn root(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(name)
}

fn bytes(name: &str) -> Vec<u8> {
    std::fs::read(root(name)).unwrap()
}

/// Files of a folder with an ending, in order.
fn files(folder: &str, ending: &str) -> Vec<Vec<u8>> {
    let entries = std::fs::read_dir(root(folder)).unwrap();
    let mut paths: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.retain(|path| path.extension().is_some_and(|own| own == ending));
    paths.sort();
    paths.iter().map(|path| std::fs::read(path).unwrap()).collect()
}

struct Mutator(ChaCha12Rng);

impl Mutator {
    fn below(&mut self, most: usize) -> usize {
        (self.0.next_u64() % most.max(1) as u64) as usize
    }

    fn span(&mut self, length: usize) -> Range<usize> {
        let from = self.below(length + 1);
        from..(from + self.below(40)).min(length)
    }

    /// A file with one to four faults.
    fn mutated(&mut self, whole: &[u8]) -> Vec<u8> {
        let mut bytes = whole.to_vec();
        for _ in 0..=self.below(4) {
            let span = self.span(bytes.len());
            match self.below(7) {
                0 => bytes.truncate(span.start),
                1 => drop(bytes.drain(span)),
                2 => {
                    let own = bytes[span].to_vec();
                    let at = self.below(bytes.len() + 1);
                    bytes.splice(at..at, own);
                }
                3 if span.start < bytes.len() => bytes[span.start] ^= 1 << self.below(8),
                4 => {
                    let digits = bytes.iter().enumerate().filter(|(_, byte)| byte.is_ascii_digit());
                    let digits: Vec<usize> = digits.map(|(at, _)| at).collect();
                    if let Some(at) = digits.get(self.below(digits.len())) {
                        bytes[*at] = b'0' + self.below(10) as u8;
                    }
                }
                5 => {
                    let piece = PIECES[self.below(PIECES.len())].as_bytes();
                    bytes.splice(span, piece.iter().copied());
                }
                _ => {
                    let piece = PIECES[self.below(PIECES.len())].repeat(1 + self.below(300));
                    bytes.splice(span.start..span.start, piece.bytes());
                }
            }
        }
        bytes
    }
}

/// Has a reader read mutations of files, one after the other.
fn each_is_read_or_refused(kind: &str, files: &[Vec<u8>], read: impl Fn(&[u8])) {
    let count = std::env::var("AXLEBOW_MUTATIONS").map_or(FEW, |count| count.parse().unwrap());
    let mut mutator = Mutator(ChaCha12Rng::seed_from_u64(kind.bytes().map(u64::from).sum()));
    for number in 0..count {
        let file = mutator.below(files.len());
        let mutated = mutator.mutated(&files[file]);
        let begun = Instant::now();
        let ended = catch_unwind(AssertUnwindSafe(|| read(&mutated)));
        let fault = match (ended, begun.elapsed()) {
            (Err(_), _) => "panics",
            (Ok(()), took) if took > LONGEST => "hangs",
            _ => continue,
        };
        let kept = std::env::temp_dir().join(format!("axlebow-mutation-{kind}-{number}"));
        std::fs::write(&kept, mutated).unwrap();
        panic!("mutation {number} of {kind} {fault}; it is kept in {}", kept.display());
    }
}

#[test]
fn models() {
    each_is_read_or_refused("model", &files("models", "toml"), |bytes| {
        let _ = Model::from_bytes(bytes, "model.toml").map_err(|problems| problems.render());
    });
}

#[test]
fn studies() {
    each_is_read_or_refused("study", &files("studies", "toml"), |bytes| {
        match Study::from_bytes(bytes, "study.toml", &root("studies")) {
            Ok(study) => drop((study.count(), study.point(0))),
            Err(problems) => drop(problems.render()),
        }
    });
}

#[test]
fn roads() {
    each_is_read_or_refused("road", &files("models/roads", "toml"), |bytes| {
        let road = RoadFile::from_bytes(bytes, "road.toml", &root("models/roads"));
        let _ = road.map_err(|problems| problems.render());
    });
}

#[test]
fn tires() {
    each_is_read_or_refused("tire", &files("models/tires", "toml"), |bytes| {
        let _ = TireFile::from_bytes(bytes, "tire.toml").map_err(|problems| problems.render());
    });
}

#[test]
fn shop_readings() {
    let model = Model::from_bytes(&bytes("models/trailer-152-thin-dual.toml"), "model.toml").unwrap();
    each_is_read_or_refused("readings", &files("models/readings", "csv"), |bytes| {
        let _ = readings(bytes, "readings.csv", &model).map_err(|problems| problems.render());
    });
}

#[test]
fn measured_profiles() {
    let folder = tempfile::tempdir().unwrap();
    let road = b"name = \"lane\"\nkind = \"measured-profile\"\nprofile = \"lane.csv\"\nspeed = \"60 km/h\"\n";
    // A short lane does: faults are as many, and are reached as often.
    let lane: Vec<u8> = bytes("models/roads/measured-lane.csv").into_iter().take(2000).collect();
    each_is_read_or_refused("profile", &[lane], |bytes| {
        std::fs::write(folder.path().join("lane.csv"), bytes).unwrap();
        let road = RoadFile::from_bytes(road, "road.toml", folder.path());
        let _ = road.map_err(|problems| problems.render());
    });
}

#[test]
fn expressions() {
    let names = ["wall", "tube.od", "mass"].map(str::to_owned);
    let texts = ["2 * wall + 0.1", "-wall^2^0.5 / (1 + max(mass, 3e-2))", "sqrt(abs(sin(pi * tube.od)))"];
    each_is_read_or_refused("expression", &texts.map(|text| text.as_bytes().to_vec()), |bytes| {
        match Expression::read(&String::from_utf8_lossy(bytes), &names) {
            Ok(expression) => drop(expression.value(&[0.01, 0.15, 80.0])),
            Err(error) => drop(error.to_string()),
        }
    });
}

fn head() -> Head {
    Head {
        study: "invented".to_owned(),
        hash: "0123456789abcdef".to_owned(),
        program: "0.0.0 build 0".to_owned(),
        designs: 10,
        chunk: 4,
        readings: 2,
        part: Part::WHOLE,
    }
}

fn chunk(place: usize) -> Chunk {
    let readings = head().designs_of(place).flat_map(|design| [design as f64, 0.1 * design as f64]).collect();
    Chunk { place, width: 2, readings, reasons: vec![(1, "too thin".to_owned())], warnings: Vec::new() }
}

/// Results that are read at all are those that were saved.
#[test]
fn saved_results() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("out.csv.work");
    let file = ResultsFile::begin(&path, head(), Earlier::Refused).unwrap();
    (0..3).for_each(|place| file.append(&chunk(place)).unwrap());
    drop(file);
    let whole = std::fs::read(&path).unwrap();
    each_is_read_or_refused("results", &[whole], |bytes| {
        std::fs::write(&path, bytes).unwrap();
        if let Ok(found) = ResultsFile::read(&path, &head()) {
            let held = (0..3).filter(|place| found.has(*place));
            held.for_each(|place| assert_eq!(found.chunk(place).unwrap(), chunk(place)));
            let _ = Results::of(vec![found]);
        }
        if let Ok(found) = ResultsFile::begin(&path, head(), Earlier::Kept) {
            found.missing().into_iter().for_each(|place| found.append(&chunk(place)).unwrap());
            assert!((0..3).all(|place| found.chunk(place).unwrap() == chunk(place)));
        }
    });
}
