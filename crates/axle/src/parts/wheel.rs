//! Wheels and tires: where the road's force acts.

use axlebow_tread::Tread;

use crate::AxleError;
use crate::parts::error::{finite, not_negative, positive};
use crate::parts::tire_fit::TireFit;

/// Width of a usual tread over the section width of its tire (from memory).
pub const TREAD_SHARE: f64 = 0.8;

/// How tires sit on one end of the axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TireLayout {
    /// One tire of ordinary width.
    Single,
    /// One wide-base tire in the place of two.
    WideBase,
    /// Two tires whose centers lie `spacing` (m) apart.
    Dual {
        /// Distance between the two tire centers, m.
        spacing: f64,
    },
}

/// A tire as the axle feels it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tire {
    /// Height of the wheel center above the road under load, m.
    pub loaded_radius: f64,
    /// Vertical stiffness of one tire at its rated inflation, N/m.
    pub vertical_stiffness: f64,
    /// Lateral stiffness of one standing tire, N/m.
    pub lateral_stiffness: f64,
    /// Vertical damping of one tire, N s/m.
    pub damping: f64,
    /// Section width, for drawing and clearances, m.
    pub width: f64,
}

/// All wheels and tires on one end of the axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wheel {
    layout: TireLayout,
    outset: f64,
    tire: Tire,
    mass: f64,
    tilt_radius: f64,
    disc_flexibility: f64,
    tread: Tread,
    fit: TireFit,
}

/// Which tire of an end of the axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TireSlot {
    /// The only one.
    Single,
    /// The outer one of a dual.
    Outer,
    /// The inner one of a dual.
    Inner,
}

impl TireSlot {
    /// Of the tires of an end, counted from the outermost.
    pub fn of(number: usize, tires: usize) -> Self {
        match (number, tires) {
            (_, 1) => TireSlot::Single,
            (0, _) => TireSlot::Outer,
            _ => TireSlot::Inner,
        }
    }

    /// The trade's word.
    pub fn word(self) -> &'static str {
        match self {
            TireSlot::Single => "single",
            TireSlot::Outer => "outer",
            TireSlot::Inner => "inner",
        }
    }

    /// A side's tire, such as "left tire" or "left inner tire".
    pub fn of_side(self, side: &str) -> String {
        match self {
            TireSlot::Single => format!("{side} tire"),
            TireSlot::Outer | TireSlot::Inner => format!("{side} {} tire", self.word()),
        }
    }
}

/// Place of one tire on an end of the axle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TirePlace {
    /// Which tire of its end it is.
    pub slot: TireSlot,
    /// Distance of the tire's center outboard of the hub's mounting face, m.
    pub outboard: f64,
    /// Vertical stiffness at the tire's inflation, N/m.
    pub vertical_stiffness: f64,
    /// Inflation, Pa.
    pub inflation: f64,
    /// Radius of the unloaded tire over the mean of the wheel's tires, m.
    pub larger: f64,
}

impl Wheel {
    /// Wheels of one end.
    ///
    /// - `layout`: single, wide-base or dual
    /// - `outset`: tire center (for duals, the middle between the two) outboard of the mounting face, m;
    ///   negative for inset, zero for zeroset
    /// - `mass`: wheels and tires of this end, kg
    ///
    /// # Errors
    /// [`AxleError::Value`] names the quantity out of range.
    pub fn new(layout: TireLayout, outset: f64, tire: Tire, mass: f64) -> Result<Self, AxleError> {
        finite("wheel offset", outset, "m")?;
        positive("loaded radius", tire.loaded_radius, "m")?;
        positive("tire vertical stiffness", tire.vertical_stiffness, "N/m")?;
        positive("tire lateral stiffness", tire.lateral_stiffness, "N/m")?;
        not_negative("tire damping", tire.damping, "N s/m")?;
        positive("tire width", tire.width, "m")?;
        not_negative("wheel mass", mass, "kg")?;
        if let TireLayout::Dual { spacing } = layout {
            positive("dual spacing", spacing, "m")?;
        }
        let tread = Tread::usual(TREAD_SHARE * tire.width)?;
        Ok(Wheel {
            layout,
            outset,
            tire,
            mass,
            tilt_radius: 0.0,
            disc_flexibility: 0.0,
            tread,
            fit: TireFit::default(),
        })
    }

    /// The same wheel with tires of another tread.
    ///
    /// # Errors
    /// [`AxleError::Tread`] for an impossible tread, [`AxleError::Value`] for one wider than the tire.
    pub fn with_tread(self, tread: Tread) -> Result<Self, AxleError> {
        let tread = tread.checked()?;
        if tread.width > self.tire.width {
            let accepted = "at most the tire's section width";
            return Err(AxleError::Value { what: "tread width", value: tread.width, unit: "m", accepted });
        }
        Ok(Wheel { tread, ..self })
    }

    /// The same wheel with tires that are inflated, matched and give way otherwise.
    ///
    /// # Errors
    /// [`AxleError::Value`] for a value out of range, or radii of a dual on a wheel of one tire.
    pub fn with_fit(self, fit: TireFit) -> Result<Self, AxleError> {
        let fit = fit.checked()?;
        let is_dual = matches!(self.layout, TireLayout::Dual { .. });
        if !is_dual && fit.outer_less_inner != 0.0 {
            let (what, value) = ("difference of the radii of a dual", 1e3 * fit.outer_less_inner);
            return Err(AxleError::Value { what, value, unit: "mm", accepted: "0 on a wheel of one tire" });
        }
        Ok(Wheel { fit, ..self })
    }

    /// The same wheel with its tires' center elsewhere, m outboard of the mounting face.
    ///
    /// # Errors
    /// [`AxleError::Value`] for an outset that is not finite.
    pub fn with_outset(self, outset: f64) -> Result<Self, AxleError> {
        finite("wheel offset", outset, "m")?;
        Ok(Wheel { outset, ..self })
    }

    /// The same wheel with a radius of gyration (m) of wheels and tires about a line across the axle through
    /// their center; it matters to vibration only.
    ///
    /// # Errors
    /// [`AxleError::Value`] for a negative or non-finite radius.
    pub fn with_tilt_radius(self, tilt_radius: f64) -> Result<Self, AxleError> {
        not_negative("tilt radius of gyration", tilt_radius, "m")?;
        Ok(Wheel { tilt_radius, ..self })
    }

    /// The same wheel on a disc and a hub flange that lean by a couple about a line in their plane, rad/(N m); see
    /// [`AnnularPlate`](crate::AnnularPlate). Without it both are rigid.
    ///
    /// # Errors
    /// [`AxleError::Value`] for a negative or non-finite flexibility.
    pub fn with_disc_flexibility(self, disc_flexibility: f64) -> Result<Self, AxleError> {
        not_negative("flexibility of the wheel's disc", disc_flexibility, "rad/(N m)")?;
        Ok(Wheel { disc_flexibility, ..self })
    }

    /// The same wheel reversed on its hub: outset s becomes inset s − t for a disc of thickness t (m),
    /// because the other face of the disc now bears on the hub.
    ///
    /// # Errors
    /// [`AxleError::Value`] for a negative or non-finite thickness.
    pub fn reversed(self, disc_thickness: f64) -> Result<Self, AxleError> {
        not_negative("disc thickness", disc_thickness, "m")?;
        Ok(Wheel { outset: disc_thickness - self.outset, ..self })
    }

    /// Tire center outboard of the mounting face, m; negative for inset.
    pub fn outset(&self) -> f64 {
        self.outset
    }

    /// How tires sit.
    pub fn layout(&self) -> TireLayout {
        self.layout
    }

    /// The tire.
    pub fn tire(&self) -> &Tire {
        &self.tire
    }

    /// The tread of each tire.
    pub fn tread(&self) -> &Tread {
        &self.tread
    }

    /// How the tires are inflated and matched, and how they give way sideways.
    pub fn fit(&self) -> &TireFit {
        &self.fit
    }

    /// Radius of gyration about a line across the axle, m.
    pub fn tilt_radius(&self) -> f64 {
        self.tilt_radius
    }

    /// Rotation of the wheel against the hub per couple about a line across the axle, rad/(N m).
    pub fn disc_flexibility(&self) -> f64 {
        self.disc_flexibility
    }

    /// Mass of wheels and tires, kg.
    pub fn mass(&self) -> f64 {
        self.mass
    }

    /// Places of the tires, outer first.
    pub fn tires(&self) -> impl Iterator<Item = TirePlace> + use<> {
        let half = match self.layout {
            TireLayout::Dual { spacing } => 0.5 * spacing,
            TireLayout::Single | TireLayout::WideBase => 0.0,
        };
        let dual = half > 0.0;
        let outer = self.place(if dual { TireSlot::Outer } else { TireSlot::Single }, half);
        let inner = self.place(TireSlot::Inner, -half);
        std::iter::once(outer).chain(dual.then_some(inner))
    }

    /// The tire of a slot, whose center lies `outboard` (m) of the wheel's.
    fn place(&self, slot: TireSlot, outboard: f64) -> TirePlace {
        let (number, way) = match slot {
            TireSlot::Single | TireSlot::Outer => (0, 0.5),
            TireSlot::Inner => (1, -0.5),
        };
        let inflation = self.fit.inflation[number].unwrap_or(self.tread.inflation);
        TirePlace {
            slot,
            outboard: self.outset + outboard,
            vertical_stiffness: self.tire.vertical_stiffness * self.tread.stiffness_over_rated(inflation),
            inflation,
            larger: way * self.fit.outer_less_inner,
        }
    }
}
