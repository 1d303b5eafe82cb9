//! Results of consecutive designs, as they are kept on disk.

use axlebow_axle::outcome::Warning;

use crate::findings::{CountedWarning, SolvedDesign, WarningCounts};

/// Bytes of a chunk's head: its place, the length of what follows and a check of all of it.
pub(super) const HEAD: usize = 48;

/// Results of consecutive designs of a study.
#[derive(Debug, Clone, PartialEq)]
pub struct Chunk {
    /// Its place among the chunks of the study.
    pub place: usize,
    /// Readings of a design: one for each measure of the study.
    pub width: usize,
    /// Readings of one design after the other, SI; NaN where there is none.
    pub readings: Vec<f64>,
    /// Why a design has no result, by its place in the chunk.
    pub reasons: Vec<(usize, String)>,
    /// Warnings of its designs, by their places in the chunk.
    pub warnings: Vec<CountedWarning>,
}

/// What a chunk's head says.
pub(super) struct ChunkHead {
    pub place: usize,
    pub length: usize,
    check: [u8; 32],
}

impl Chunk {
    /// The chunk of some designs, `width` readings each.
    pub(crate) fn of(place: usize, designs: Vec<SolvedDesign>, width: usize) -> Chunk {
        let (mut readings, mut reasons) = (Vec::with_capacity(designs.len() * width), Vec::new());
        let mut warnings = WarningCounts::default();
        for (i, design) in designs.into_iter().enumerate() {
            warnings.add_design(i, &design.warnings);
            match design.row.result {
                Ok(own) => readings.extend(own),
                Err(reason) => {
                    readings.extend(std::iter::repeat_n(f64::NAN, width));
                    reasons.push((i, reason));
                }
            }
        }
        Chunk { place, width, readings, reasons, warnings: warnings.into_counted() }
    }

    /// How many designs it has.
    pub fn designs(&self) -> usize {
        self.readings.len().checked_div(self.width).unwrap_or(0)
    }

    /// Readings of each design, with the reason of one that has no result.
    pub fn rows(&self) -> impl Iterator<Item = (&[f64], Option<&str>)> {
        let mut reasons = self.reasons.iter().peekable();
        self.readings.chunks(self.width.max(1)).enumerate().map(move |(design, readings)| {
            let own = reasons.next_if(|(place, _)| *place == design);
            (readings, own.map(|(_, reason)| reason.as_str()))
        })
    }

    /// Head and content, little-endian, with a check that also covers which study it is of.
    pub(super) fn encoded(&self, study: &str) -> Vec<u8> {
        let mut bytes = vec![0; HEAD];
        bytes.extend(self.readings.iter().flat_map(|reading| reading.to_le_bytes()));
        for (place, reason) in &self.reasons {
            add_number(&mut bytes, *place);
            add_text(&mut bytes, reason);
        }
        for CountedWarning { warning, first, designs } in &self.warnings {
            add_number(&mut bytes, *first);
            add_number(&mut bytes, *designs);
            add_text(&mut bytes, &warning.text);
            add_text(&mut bytes, &warning.advice);
        }
        add_number(&mut bytes, self.reasons.len());
        add_number(&mut bytes, self.warnings.len());
        add_number(&mut bytes, self.readings.len());
        let length = (bytes.len() - HEAD) as u64;
        bytes[..8].copy_from_slice(&(self.place as u64).to_le_bytes());
        bytes[8..16].copy_from_slice(&length.to_le_bytes());
        let check = check(study, &bytes[..16], &bytes[HEAD..]);
        bytes[16..HEAD].copy_from_slice(&check);
        bytes
    }
}

impl ChunkHead {
    /// What a head says; only the content shows whether it is true.
    pub fn of(bytes: &[u8; HEAD]) -> Option<ChunkHead> {
        let (place, rest) = number(bytes)?;
        let (length, rest) = number(rest)?;
        Some(ChunkHead { place, length, check: rest.try_into().ok()? })
    }

    /// The chunk; `None` where head and content are not both whole and of the study.
    ///
    /// Arguments: `content`, what follows the head; `study`, its hash; `width`, readings of a design.
    pub fn chunk(&self, content: &[u8], (study, width): (&str, usize)) -> Option<Chunk> {
        let mut head = [0; 16];
        head[..8].copy_from_slice(&(self.place as u64).to_le_bytes());
        head[8..].copy_from_slice(&(self.length as u64).to_le_bytes());
        if check(study, &head, content) != self.check {
            return None;
        }
        let (content, ends) = content.split_at_checked(content.len().checked_sub(24)?)?;
        let (reasons, ends) = number(ends)?;
        let (warnings, ends) = number(ends)?;
        let (count, _) = number(ends)?;
        let (readings, mut rest) = content.split_at_checked(count.checked_mul(8)?)?;
        let (readings, _) = readings.as_chunks();
        let readings = readings.iter().map(|bytes| f64::from_le_bytes(*bytes)).collect();
        let reasons = (0..reasons).map(|_| reason(&mut rest)).collect::<Option<_>>()?;
        let warnings = (0..warnings).map(|_| warning(&mut rest)).collect::<Option<_>>()?;
        Some(Chunk { place: self.place, width, readings, reasons, warnings })
    }
}

fn check(study: &str, head: &[u8], content: &[u8]) -> [u8; 32] {
    let mut hasher = blake3::Hasher::new();
    hasher.update(study.as_bytes()).update(head).update(content);
    *hasher.finalize().as_bytes()
}

/// A number and what follows it.
fn number(bytes: &[u8]) -> Option<(usize, &[u8])> {
    let (own, rest) = bytes.split_first_chunk()?;
    Some((usize::try_from(u64::from_le_bytes(*own)).ok()?, rest))
}

/// The next reason.
fn reason(bytes: &mut &[u8]) -> Option<(usize, String)> {
    Some((next_number(bytes)?, next_text(bytes)?))
}

/// The next warning.
fn warning(bytes: &mut &[u8]) -> Option<CountedWarning> {
    let (first, designs) = (next_number(bytes)?, next_number(bytes)?);
    let warning = Warning { text: next_text(bytes)?, advice: next_text(bytes)? };
    Some(CountedWarning { warning, first, designs })
}

fn add_number(bytes: &mut Vec<u8>, number: usize) {
    bytes.extend((number as u64).to_le_bytes());
}

fn add_text(bytes: &mut Vec<u8>, text: &str) {
    add_number(bytes, text.len());
    bytes.extend(text.as_bytes());
}

fn next_number(bytes: &mut &[u8]) -> Option<usize> {
    let (own, rest) = number(bytes)?;
    *bytes = rest;
    Some(own)
}

fn next_text(bytes: &mut &[u8]) -> Option<String> {
    let length = next_number(bytes)?;
    let (own, rest) = bytes.split_at_checked(length)?;
    *bytes = rest;
    String::from_utf8(own.to_vec()).ok()
}

#[cfg(test)]
#[allow(clippy::unwrap_used)] // tests
mod tests {
    use super::*;

    fn chunk() -> Chunk {
        let readings = vec![1.5, -0.0, f64::MIN_POSITIVE, f64::MAX, f64::NAN, f64::NAN];
        let warning = Warning { text: "rough".to_owned(), advice: "drive slowly".to_owned() };
        let warnings = vec![CountedWarning { warning, first: 1, designs: 2 }];
        Chunk { place: 3, width: 2, readings, reasons: vec![(2, "über 9 mm".to_owned())], warnings }
    }

    fn decoded(bytes: &[u8], study: &str) -> Option<Chunk> {
        let (head, content) = bytes.split_first_chunk()?;
        ChunkHead::of(head)?.chunk(content, (study, 2))
    }

    #[test]
    fn a_chunk_comes_back_to_the_last_bit() {
        let (made, bits) = (chunk(), |chunk: &Chunk| chunk.readings.iter().map(|r| r.to_bits()).collect());
        let back = decoded(&made.encoded("study"), "study").unwrap();
        let (ours, theirs): (Vec<u64>, Vec<u64>) = (bits(&made), bits(&back));
        assert_eq!(ours, theirs);
        assert_eq!(
            (back.place, back.designs(), (&back.reasons, &back.warnings)),
            (3, 3, (&made.reasons, &made.warnings))
        );
        let reasons: Vec<_> = back.rows().map(|(_, reason)| reason).collect();
        assert_eq!(reasons, [None, None, Some("über 9 mm")]);
    }

    #[test]
    fn a_torn_a_changed_and_a_foreign_chunk_are_none() {
        let bytes = chunk().encoded("study");
        assert!(decoded(&bytes, "another").is_none());
        for at in 0..bytes.len() {
            let mut changed = bytes.clone();
            changed[at] ^= 1;
            assert!(decoded(&changed, "study").is_none(), "byte {at}");
            assert!(decoded(&bytes[..at], "study").is_none(), "cut at {at}");
        }
    }
}
