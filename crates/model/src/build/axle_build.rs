//! The whole axle of a file: rules across keys, each misfit reported at its place.

use axlebow_axle::tread::{Duty, DutyName, DutyPart};
use axlebow_axle::{
    Axle, AxleError, Body, FixedMass, Ground, HeldSpeed, HousingPoint, Loading, Running, STANDARD_CASES,
    Seat, SeatLayouts, Sides, Spindle, SpindleStep, UserStation, Wheel,
};
use axlebow_sections::{Material, Profile, RectangularTube, RoundBar, RoundTube};
use axlebow_units::{Kind, show};

use super::builder::{Builder, covers};
use super::error_words::InUnits;
use crate::content::Table;
use crate::faults::Span;

impl Builder<'_> {
    /// The axle of the file, if nothing in it is amiss.
    pub(super) fn axle(&mut self) -> Option<Axle> {
        let body = self.body();
        let wheels = self.wheels();
        self.assume_tread_widths();
        let loads = self.loads();
        let running = self.running();
        // Nothing is given up before every part has been looked at, so that all problems come at once.
        let wheel_load = self.wheel_load();
        let wheel_ends = wheels.as_ref().and_then(|wheels| self.wheel_ends(wheels, wheel_load));
        wheel_ends.iter().for_each(|ends| self.assume_bearing_stiffness(ends));
        let seats = body.as_ref().and_then(|body| self.seats(body));
        let stiffeners = body.as_ref().and_then(|body| self.stiffeners(body));
        let axle = Axle {
            body: body?,
            wheel_ends: wheel_ends?,
            wheels: wheels?,
            seats: seats?,
            stiffeners: stiffeners?,
            weld_keep_out: self.weld_keep_out(),
            fixed_masses: self.fixed_masses(),
            body_height: loads.body_height,
            body_roll_radius: loads.body_roll_radius,
            body_roll_stiffness: loads.body_roll_stiffness,
            body_roll_damping: loads.body_roll_damping,
            ground: loads.ground,
            loading: loads.loading,
            running: running?,
            stations: self.stations(),
            seat_tables: Vec::new(),
            seat_layouts: SeatLayouts::default(),
        };
        match axle.checked() {
            Ok(axle) => Some(axle),
            Err(errors) => {
                for error in &errors {
                    let span = self.place_of(error);
                    self.problems.push(span, error.in_units(self.system), None);
                }
                None
            }
        }
    }

    pub(crate) fn wheels(&mut self) -> Option<Sides<Wheel>> {
        self.per_side("wheel", Self::wheel)
    }

    pub(crate) fn seats(&mut self, body: &Body) -> Option<Sides<Seat>> {
        self.per_side("seat", |builder, table| builder.seat(table, body))
    }

    /// Duty and skew.
    fn running(&mut self) -> Option<Running> {
        let table = self.root.table("running");
        let skew = table.number("skew");
        let held = self.held_speed(table);
        let part = |part: &Table| DutyPart {
            share: part.number("share"),
            side: part.number("side_force"),
            forward: part.number("forward_force"),
        };
        let parts: Vec<DutyPart> = table.tables("duty_part").iter().map(part).collect();
        let named = DutyName::USUAL.into_iter().find(|name| name.word() == table.word("duty"));
        let duty = match (named.and_then(Duty::usual), parts.is_empty()) {
            (Some(duty), true) => duty,
            (None, true) => {
                let accepted = Some("one or more `[[running.duty_part]]`".to_owned());
                self.problems.push(table.span_of("duty"), "a stated duty needs its parts", accepted);
                return None;
            }
            (Some(_), false) => {
                let message = "`duty_part` is given, but the duty is not `stated`";
                let accepted = Some("duty = \"stated\" with it".to_owned());
                self.problems.push(table.span(), message, accepted);
                return None;
            }
            (None, false) => self.kept(table.span(), Duty::stated(parts).map_err(AxleError::from))?,
        };
        let harder = duty.by_severity(table.number("severity")).map_err(AxleError::from);
        let duty = self.kept(table.span(), harder)?;
        let abrasion = table.is_written("abrasion").then(|| table.number("abrasion"));
        Some(Running { duty, abrasion, skew, held: held? })
    }

    /// The speeds that the fleet holds, of which none within three deviations may stand still.
    fn held_speed(&mut self, table: &Table) -> Option<HeldSpeed> {
        let (mean, deviation) = (table.number("held_speed"), table.number("held_speed_deviation"));
        if 3.0 * deviation < mean {
            return Some(HeldSpeed { mean, deviation });
        }
        let [mean, deviation] = [mean, deviation].map(|speed| show(speed, Kind::Speed, self.system));
        let message = format!("speeds held about {mean} cannot have a standard deviation of {deviation}");
        let accepted = "a `held_speed_deviation` of less than a third of `held_speed`".to_owned();
        let deviation = "held_speed_deviation";
        let key = if table.is_written(deviation) { deviation } else { "held_speed" };
        self.problems.push(table.span_of(key), message, Some(accepted));
        None
    }

    pub(crate) fn loads(&self) -> Loads {
        let loads = self.root.table("loads");
        Loads {
            loading: loading(loads),
            ground: if loads.word("ground") == "standing" { Ground::Standing } else { Ground::Rolling },
            body_height: loads.number("body_height"),
            body_roll_radius: loads.number("body_roll_radius"),
            body_roll_stiffness: loads.number("body_roll_stiffness"),
            body_roll_damping: loads.number("body_roll_damping"),
        }
    }

    /// Rated load of a wheel, N.
    pub(crate) fn wheel_load(&self) -> f64 {
        0.5 * self.root.table("loads").number("rated_load")
    }

    pub(crate) fn weld_keep_out(&self) -> f64 {
        let bar = self.root.optional_table("tube").or(self.root.optional_table("housing"));
        bar.map_or(0.0, |table| table.number("weld_keep_out"))
    }

    pub(crate) fn fixed_masses(&self) -> Vec<FixedMass> {
        self.root.tables("mass").iter().map(fixed_mass).collect()
    }

    pub(crate) fn stations(&self) -> Vec<UserStation> {
        self.root.tables("station").iter().map(station).collect()
    }

    pub(crate) fn body(&mut self) -> Option<Body> {
        let material = self.material(self.root.table("material"));
        let spindle = self.spindle(material.as_ref());
        let body = match self.root.word("kind") {
            "trailer-tube" => self.one_of("tube", "housing").map(|table| self.tube(table)),
            _ => self.one_of("housing", "tube").map(|table| self.housing(table)),
        };
        let (material, spindle, body) = (material?, spindle?, body??);
        let made = match &body {
            Shape::Tube(profile, length) => Body::trailer_tube(*profile, *length, material, &spindle),
            Shape::Housing(points) => Body::drive_housing(points, material, &spindle),
        };
        let table = self.root.optional_table("tube").or(self.root.optional_table("housing"));
        let key = if matches!(body, Shape::Tube(..)) { "length" } else { "profile" };
        let span = table.map_or(0..0, |table| table.span_of(key));
        self.kept(span, made)
    }

    fn tube(&mut self, table: &Table) -> Option<Shape> {
        let made = RoundTube::new(table.number("od"), table.number("wall"));
        let profile = Profile::from(self.kept(table.span_of("wall"), made)?);
        Some(Shape::Tube(profile, table.number("length")))
    }

    fn housing(&mut self, table: &Table) -> Option<Shape> {
        let (wall, radius) = (table.number("wall"), table.number("corner_radius"));
        let mut points = Vec::new();
        for point in table.tables("profile") {
            let made = RectangularTube::new(point.number("width"), point.number("height"), wall, radius);
            let section = self.kept(point.span_of("height"), made)?;
            points.push(HousingPoint { at: point.number("at"), section });
        }
        let first = &table.tables("profile")[0];
        if first.number("at") != 0.0 || points.len() < 2 {
            let message = "the housing's profile does not start at the center line and run outward";
            let accepted = "two or more places, the first with at = \"0 mm\"";
            self.problems.push(first.span_of("at"), message, Some(accepted.to_owned()));
            return None;
        }
        Some(Shape::Housing(points))
    }

    /// The spindle, of the axle's material unless it has its own.
    fn spindle(&mut self, material: Option<&Material>) -> Option<Spindle> {
        let material = match self.root.optional_table("spindle_material") {
            Some(own) => self.material(own),
            None => material.cloned(),
        };
        let mut steps = Vec::new();
        for step in self.root.table("spindle").tables("step") {
            let od = step.number("od");
            let profile = match step.optional_number("bore") {
                Some(bore) => RoundTube::new(od, 0.5 * (od - bore)).map(Profile::from),
                None => RoundBar::new(od).map(Profile::from),
            };
            let key = if step.optional_number("bore").is_some() { "bore" } else { "od" };
            let profile = self.kept(step.span_of(key), profile);
            let (length, fillet) = (step.number("length"), step.optional_number("fillet"));
            steps.extend(profile.map(|profile| SpindleStep { length, profile, fillet }));
        }
        Some(Spindle { material: material?, steps })
    }

    /// Where in the file a misfit of the axle shows.
    fn place_of(&self, error: &AxleError) -> Span {
        match error {
            AxleError::Misplaced { side, what, .. } => {
                let (list, key) = match *what {
                    "inner bearing" => ("wheel_end", "inner_bearing_at"),
                    "outer bearing" => ("wheel_end", "outer_bearing_at"),
                    "station" => ("station", "at"),
                    _ => ("seat", "at"),
                };
                let tables = self.root.tables(list);
                let own = tables.iter().find(|table| covers(table, *side)).or(tables.first());
                own.map_or(0..0, |table| table.span_of(key))
            }
            AxleError::DuplicateStation { name } => {
                let tables = self.root.tables("station").iter();
                let own = tables.rev().find(|table| table.text("name") == name);
                own.map_or(0..0, |table| table.span_of("name"))
            }
            AxleError::Wall { side, .. } | AxleError::FormulaNeedsTube { side } => self.place_of_wall(*side),
            other => self.place_of_stiffener(other).unwrap_or(self.root.table("loads").span()),
        }
    }
}

/// What the table of loads says of an axle.
pub(crate) struct Loads {
    pub loading: Loading,
    pub ground: Ground,
    pub body_height: f64,
    pub body_roll_radius: f64,
    pub body_roll_stiffness: f64,
    pub body_roll_damping: f64,
}

/// What a body is made from before its material is known.
enum Shape {
    Tube(Profile, f64),
    Housing(Vec<HousingPoint>),
}

fn fixed_mass(table: &Table) -> FixedMass {
    FixedMass { y: table.number("at"), mass: table.number("mass") }
}

fn station(table: &Table) -> UserStation {
    UserStation { name: table.text("name").to_owned(), y: table.number("at") }
}

fn loading(loads: &Table) -> Loading {
    let factors = loads.table("dynamic_factor");
    Loading {
        rated_load: loads.number("rated_load"),
        unladen_load: loads.number("unladen_load"),
        raise: loads.number("raise"),
        side_force_ratio: loads.number("side_force_ratio"),
        braking_force_ratio: loads.number("braking_force_ratio"),
        curb_force_ratio: loads.number("curb_force_ratio"),
        traction_force_ratio: loads.number("traction_force_ratio"),
        final_drive_ratio: loads.number("final_drive_ratio"),
        dynamic_factors: STANDARD_CASES.map(|case| factors.number(case)),
    }
}
