//! Stiffeners: shapes welded along the axle.
//!
//! A stiffener is described where it would sit on the top of the axle: X forward, Z away from the axle. Its clock
//! position turns it round the axle; then it slides inward until it rests on the wall.

use std::f64::consts::PI;

use axlebow_sections::shape::Midlines;
use axlebow_sections::{AreaProperties, Material, Outline, Placement, Profile};

use crate::AxleError;
use crate::parts::error::{finite, not_negative, positive};
use crate::parts::stiffener_form::{Fit, StiffenerForm};
use crate::parts::welding_limits::{ALIKE, LARGEST_ROOT_OPENING};

/// How an end of a stiffener runs out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StiffenerEnd {
    /// Cut square.
    Square,
    /// Its height runs out evenly over a length, m.
    Tapered {
        /// m.
        length: f64,
    },
    /// Its height runs out along a quarter circle, m.
    Radiused {
        /// m.
        radius: f64,
    },
}

impl StiffenerEnd {
    /// Length over which it runs out, m.
    pub fn length(self) -> f64 {
        match self {
            StiffenerEnd::Square => 0.0,
            StiffenerEnd::Tapered { length } => length,
            StiffenerEnd::Radiused { radius } => radius,
        }
    }

    /// Share of the section that is there at a distance (m) from the end.
    pub fn share(self, distance: f64) -> f64 {
        let within = |length: f64| (distance / length).clamp(0.0, 1.0);
        match self {
            StiffenerEnd::Square => 1.0,
            StiffenerEnd::Tapered { length } => within(length),
            StiffenerEnd::Radiused { radius } => (1.0 - (1.0 - within(radius)).powi(2)).sqrt(),
        }
    }

    /// Length of whole section that weighs as much as what is there up to a distance (m) from the end, the integral of
    /// [`Self::share`], m.
    fn whole_length(self, distance: f64) -> f64 {
        let beyond = (distance - self.length()).max(0.0);
        let within = |length: f64| (distance / length).clamp(0.0, 1.0);
        match self {
            StiffenerEnd::Square => distance,
            StiffenerEnd::Tapered { length } => 0.5 * length * within(length).powi(2) + beyond,
            StiffenerEnd::Radiused { radius } => {
                // ∫ √(1 - u²) du from u, what is left of the radius, to 1.
                let left = 1.0 - within(radius);
                let part = 0.25 * PI - 0.5 * (left * (1.0 - left * left).sqrt() + left.asin());
                radius * part + beyond
            }
        }
    }
}

/// Where along the stiffener there is weld.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WeldPattern {
    /// From end to end.
    Continuous,
    /// Stitches of a length at a pitch from middle to middle; the first and the last lie at the ends.
    Stitched {
        /// Length of a stitch, m.
        length: f64,
        /// Distance from middle to middle, m.
        pitch: f64,
    },
}

/// The weld of a stiffener.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StiffenerWeld {
    /// Leg of the fillet, m.
    pub leg: f64,
    /// Pattern along it.
    pub pattern: WeldPattern,
    /// Whether both of its sides are welded; one only leaves no cell closed.
    pub both_sides: bool,
    /// Stiffness of the weld along the axle per length of weld, N/m².
    pub stiffness: f64,
}

/// A stiffener on the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct Stiffener {
    /// Name, different from every other stiffener's.
    pub name: String,
    /// What is welded on.
    pub form: StiffenerForm,
    /// Material.
    pub material: Material,
    /// Angle round the axle from the top toward the front, rad.
    pub clock: f64,
    /// Its right end, m; positive to the left.
    pub from: f64,
    /// Its left end, m.
    pub to: f64,
    /// How both ends run out.
    pub end: StiffenerEnd,
    /// Its weld.
    pub weld: StiffenerWeld,
}

/// A stiffener where it rests on a section of the axle.
#[derive(Debug, Clone, PartialEq)]
pub struct Seated {
    /// Its edges, in the axes of the section.
    pub outline: Outline,
    /// Area properties of the outline.
    pub area: AreaProperties,
    /// Where its rear and its front weld run, (x, z), m.
    pub feet: [[f64; 2]; 2],
    /// Gap under each foot, m.
    pub gaps: [f64; 2],
    pub(crate) cell: Option<Midlines>,
}

impl Stiffener {
    /// Length, m.
    pub fn length(&self) -> f64 {
        self.to - self.from
    }

    /// Mass, kg; an end that runs out counts the section that is there.
    pub fn mass(&self) -> f64 {
        self.mass_between(self.from, self.to)
    }

    /// Mass of what lies between two positions (m), the second one to the left, kg.
    pub(crate) fn mass_between(&self, from: f64, to: f64) -> f64 {
        let half = 0.5 * self.length();
        // From the middle, negative to the right.
        let up_to = |y: f64| {
            let away = y.clamp(self.from, self.to) - self.from - half;
            (self.end.whole_length(half) - self.end.whole_length(half - away.abs())).copysign(away)
        };
        let area = self.form.outline().area_properties().area;
        self.material.density() * area * (up_to(to) - up_to(from))
    }

    /// Whether a weld from end to end on both sides closes a cell between it and the axle.
    pub(crate) fn closes_a_cell(&self) -> bool {
        self.form.cell.is_some() && self.weld.both_sides && self.weld.pattern == WeldPattern::Continuous
    }

    /// Share of its section at a position (m), 0 beyond its ends.
    pub fn share_at(&self, y: f64) -> f64 {
        let distance = (y - self.from).min(self.to - y);
        if distance < 0.0 { 0.0 } else { self.end.share(distance) }
    }

    /// The stiffener on a section of the axle.
    ///
    /// # Errors
    /// [`AxleError::Floats`] when it would pass the axle by or leaves a gap that no fillet bridges;
    /// [`AxleError::SleeveBore`] for a sleeve that is too wide for the tube; [`AxleError::DrawnOffWall`] for an outline that
    /// was drawn clear of the wall or into it.
    pub fn on(&self, profile: &Profile) -> Result<Seated, AxleError> {
        let axle = axle_outline(profile, self.clock);
        let floats = |gap: f64| AxleError::Floats { stiffener: self.name.clone(), gap };
        let rise = self.rise(profile, &axle)?;
        let rise = rise.ok_or_else(|| floats(self.form.outline().distance_from_edge([0.0, 0.0])))?;
        let upright = self.form.outline().placed(&Placement { turn: 0.0, x: 0.0, z: rise });
        let feet = [-1.0, 1.0].map(|side| foot(&upright, &axle, side));
        let gaps = feet.map(|place| axle.distance_from_edge(place));
        let round = Placement { turn: -self.clock, x: 0.0, z: 0.0 };
        let outline = upright.placed(&round);
        let open = |gap: &f64| *gap > LARGEST_ROOT_OPENING || self.leg_over(*gap) <= 0.0;
        if let Some(gap) = gaps.into_iter().find(open) {
            return Err(floats(gap));
        }
        let risen = Placement { turn: 0.0, x: 0.0, z: rise };
        let cell = self.form.cell.as_ref().map(|wall| wall.placed(&risen).placed(&round));
        let area = outline.area_properties();
        Ok(Seated { outline, area, feet: feet.map(|place| round.of(place)), gaps, cell })
    }

    /// How far it is lifted from where its form is described to where it lies; none where it passes the axle by.
    fn rise(&self, profile: &Profile, axle: &Outline) -> Result<Option<f64>, AxleError> {
        let resting = || self.form.outline().rise_to_rest_on(axle);
        match self.form.fit() {
            Fit::Rests => Ok(resting()),
            Fit::Drawn => {
                let Some(rise) = resting() else { return Ok(None) };
                let clear = axle.reach()[1][1] - rise;
                if clear.abs() > DRAWN_EXACTLY {
                    return Err(AxleError::DrawnOffWall { stiffener: self.name.clone(), clear });
                }
                Ok(Some(rise))
            }
            Fit::Round { bore } => {
                let diameter = profile.width();
                if bore - diameter > 2.0 * TIGHT_FIT {
                    return Err(AxleError::SleeveBore {
                        stiffener: self.name.clone(),
                        bore,
                        diameter,
                        widest: diameter + 2.0 * TIGHT_FIT,
                    });
                }
                Ok(Some(0.0))
            }
        }
    }

    /// Leg of its fillet that counts where it bridges a gap (m): the leg less a root opening of more than 1/16 in.
    ///
    /// Source: AWS D1.1, fit-up of fillet welds (from memory).
    pub fn leg_over(&self, gap: f64) -> f64 {
        if gap > TIGHT_FIT { self.weld.leg - gap } else { self.weld.leg }
    }

    /// Refuses a metal that is not welded to the axle's.
    pub(crate) fn check_metal(&self, axle: &Material) -> Result<(), AxleError> {
        let both = [&self.material, axle];
        let (moduli, densities) = (both.map(Material::elastic_modulus), both.map(Material::density));
        if [moduli, densities].iter().all(|[own, other]| (own / other - 1.0).abs() <= ALIKE) {
            return Ok(());
        }
        Err(AxleError::UnlikeMetals { stiffener: self.name.clone(), moduli, densities })
    }

    pub(crate) fn check(&self) -> Result<(), AxleError> {
        finite("clock position of a stiffener", self.clock, "rad")?;
        finite("right end of a stiffener", self.from, "m")?;
        positive("length of a stiffener", self.length(), "m")?;
        positive("leg of a stiffener's weld", self.weld.leg, "m")?;
        positive("stiffness of a stiffener's weld", self.weld.stiffness, "N/m2")?;
        not_negative("run-out of a stiffener's end", self.end.length(), "m")?;
        if self.end.length() > 0.5 * self.length() {
            return Err(self.does_not_fit("run-outs of its ends", 2.0 * self.end.length(), self.length()));
        }
        if let WeldPattern::Stitched { length, pitch } = self.weld.pattern {
            positive("length of a stitch", length, "m")?;
            positive("pitch of the stitches", pitch, "m")?;
            if length > self.length() {
                return Err(self.does_not_fit("stitch", length, self.length()));
            }
            if length > pitch {
                return Err(self.does_not_fit("stitch, against its pitch,", length, pitch));
            }
        }
        Ok(())
    }

    fn does_not_fit(&self, what: &'static str, length: f64, room: f64) -> AxleError {
        AxleError::StiffenerRoom { stiffener: self.name.clone(), what, length, room }
    }
}

/// Widest gap that counts as none, m: 1/16 in (AWS D1.1, fit-up of fillet welds, from memory).
const TIGHT_FIT: f64 = 0.0625 * 0.0254;

/// How far off the wall an outline may be drawn and still be laid on it without a word, m: what a drawing rounds.
const DRAWN_EXACTLY: f64 = 0.1e-3;

/// The outside of the axle, turned so that the clock position is up.
fn axle_outline(profile: &Profile, clock: f64) -> Outline {
    profile.outline().placed(&Placement { turn: clock, x: 0.0, z: 0.0 })
}

/// The corner of the rear (-1) or front (1) half that is nearest to the axle, the outermost of equal ones.
fn foot(outline: &Outline, axle: &Outline, side: f64) -> [f64; 2] {
    let own = |place: &[f64; 2]| side * place[0] > 0.0;
    let gaps =
        outline.corner_places().into_iter().filter(own).map(|place| (axle.distance_from_edge(place), place));
    let nearest = gaps.min_by(|a, b| a.0.total_cmp(&b.0));
    nearest.map_or([0.0, outline.reach()[1][0]], |(_, place)| place)
}
#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_whole_length_of_an_end_is_the_integral_of_its_share() {
        let ends = [
            StiffenerEnd::Square,
            StiffenerEnd::Tapered { length: 0.08 },
            StiffenerEnd::Radiused { radius: 0.08 },
            StiffenerEnd::Radiused { radius: 0.0 },
        ];
        for (end, reach) in ends.into_iter().flat_map(|end| [0.02, 0.08, 0.2].map(|reach| (end, reach))) {
            let many = 100_000;
            let middle = |number: i32| (f64::from(number) + 0.5) / f64::from(many) * reach;
            let sum: f64 = (0..many).map(|number| end.share(middle(number))).sum();
            let expected = sum * reach / f64::from(many);
            assert!((end.whole_length(reach) / expected - 1.0).abs() < 1e-6, "{end:?} {reach}");
        }
    }
}
