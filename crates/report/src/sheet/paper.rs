//! Sizes of paper, drawing frames and standard scales.

/// A size of paper, laid broad.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// ISO A4.
    A4,
    /// ISO A3.
    A3,
    /// US letter.
    Letter,
}

/// Scales by which a view is drawn smaller, the largest first (ISO 5455, from memory).
pub(super) const SCALES: [u32; 9] = [1, 2, 5, 10, 20, 50, 100, 200, 500];

impl Paper {
    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Paper::A4 => "A4",
            Paper::A3 => "A3",
            Paper::Letter => "letter",
        }
    }

    /// Width and height, mm (ISO 216; letter 11 by 8 1/2 in).
    pub(super) fn size(self) -> [f64; 2] {
        match self {
            Paper::A4 => [297.0, 210.0],
            Paper::A3 => [420.0, 297.0],
            Paper::Letter => [279.4, 215.9],
        }
    }

    /// Lower left and upper right corner of the drawing frame, mm: a margin of 20 to bind it, of 10 elsewhere (ISO 5457, from
    /// memory).
    pub(super) fn frame(self) -> [[f64; 2]; 2] {
        let [width, height] = self.size();
        [[20.0, 10.0], [width - 10.0, height - 10.0]]
    }
}

/// The largest standard scale, as 1 to what, at which a size (m) has room (mm); none where the smallest has not.
pub(super) fn standard_scale(size: [f64; 2], room: [f64; 2]) -> Option<u32> {
    let fits = |scale: &u32| (0..2).all(|axis| 1e3 * size[axis] / f64::from(*scale) <= room[axis]);
    SCALES.into_iter().find(fits)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_is_the_largest_that_fits_both_ways() {
        assert_eq!(standard_scale([2.16, 0.2], [250.0, 100.0]), Some(10));
        assert_eq!(standard_scale([2.16, 0.2], [250.0, 19.0]), Some(20));
        assert_eq!(standard_scale([0.25, 0.1], [250.0, 100.0]), Some(1));
        assert_eq!(standard_scale([200.0, 0.1], [250.0, 100.0]), None);
    }
}
