//! What the reader of a wall's numbers must know.

use axlebow_sections::Profile;

use crate::compliance::MOST_STIFFENED;
use crate::seat_wall::SeatWall;

/// A doubt about a result, and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caveat {
    /// What is doubtful.
    pub text: String,
    /// What to do.
    pub advice: String,
}

/// Thickness over radius of the middle line above which a shell is only near.
pub(crate) const THICK: f64 = 0.2;

/// Stiffened share up to which the end of a stiffened length is a matter of its edges: the wall beside a ring that cannot
/// oval is stiffer over a part of √(r t).
const WIDEST_SHARE: f64 = 1.1;

impl SeatWall {
    /// Doubts about the shells of a seat.
    ///
    /// - `stiffened_share`: as they found it
    pub fn caveats(&self, stiffened_share: f64) -> Vec<Caveat> {
        let mut caveats: Vec<Caveat> = thick(&self.profile).into_iter().collect();
        if stiffened_share > WIDEST_SHARE {
            caveats.push(Caveat {
            text: format!(
                "the seat stiffens more than its own width: {:.2} of the flexibility under it is missing, and {MOST_STIFFENED} is used",
                stiffened_share
            ),
            advice: "read the camber change as that of a seat that is a little less stiff".to_owned(),
        });
        }
        caveats
    }
}

fn thick(profile: &Profile) -> Option<Caveat> {
    let Profile::RoundTube(tube) = profile else { return None };
    let ratio = tube.wall() / (0.5 * (tube.outside_diameter() - tube.wall()));
    (ratio > THICK).then(|| Caveat {
        text: format!(
            "the wall is {ratio:.2} times the radius of its middle line: shells are near up to {THICK}, beyond by about the square of it, {:.0} % here",
            100.0 * ratio * ratio
        ),
        advice: "take what the wall gives way as uncertain by that much; the beam's part is not affected"
            .to_owned(),
    })
}
