//! Hubs and bearings of a file.

use axlebow_axle::{AxleError, BearingStiffness, Side, Sides, TaperedRollers, Wheel, WheelEnd};
use axlebow_units::{Kind, show};

use super::builder::{Builder, covers};
use crate::content::{Assumed, Table};

const RADIAL: &str = "bearing_radial_stiffness";
const AXIAL: &str = "bearing_axial_stiffness";

impl Builder<'_> {
    /// Both wheel ends, their bearings as stiff as the file says, or else as their rollers are at their load.
    ///
    /// - `wheel_load`: load of a wheel under the rated axle load, N
    pub(crate) fn wheel_ends(&mut self, wheels: &Sides<Wheel>, wheel_load: f64) -> Option<Sides<WheelEnd>> {
        let tables =
            self.per_side("wheel_end", |builder, table| builder.stiff_along(table).then_some(table))?;
        both_ends(&tables, wheels, |side| {
            let (table, wheel) = (*tables.of(side), wheels.of(side));
            self.kept(table.span(), wheel_end(table, wheel, wheel_load))
        })
    }

    /// The same wheel ends with bearings as stiff as another load of their wheel makes them.
    pub(crate) fn loaded_wheel_ends(
        &mut self,
        ends: &Sides<WheelEnd>,
        wheels: &Sides<Wheel>,
        wheel_load: f64,
    ) -> Option<Sides<WheelEnd>> {
        let tables = self.per_side("wheel_end", |_, table| Some(table))?;
        both_ends(&tables, wheels, |side| {
            let table = *tables.of(side);
            self.kept(table.span(), with_bearings(*ends.of(side), table, (wheels.of(side), wheel_load)))
        })
    }

    /// Whether the bearings of an end hold along the axle; a problem where they do not.
    fn stiff_along(&mut self, table: &Table) -> bool {
        let stiff = table.number("bearing_cup_angle") > 0.0 || table.optional_number(AXIAL).is_some();
        if !stiff {
            let message = "cylindrical rollers hold nothing along the axle";
            let accepted = format!("an angle above 0, or `{AXIAL}` beside it");
            self.problems.push(table.span_of("bearing_cup_angle"), message, Some(accepted));
        }
        stiff
    }

    /// Lists the stiffness of bearings that the file does not give.
    pub(crate) fn assume_bearing_stiffness(&mut self, ends: &Sides<WheelEnd>) {
        for (number, table) in self.root.tables("wheel_end").iter().enumerate() {
            let side = if covers(table, Side::Left) { Side::Left } else { Side::Right };
            let (inner, outer) = (ends.of(side).inner_stiffness, ends.of(side).outer_stiffness);
            for (key, inner, outer) in
                [(RADIAL, inner.radial, outer.radial), (AXIAL, inner.axial, outer.axial)]
            {
                if table.optional_number(key).is_none() {
                    let [inner, outer] =
                        [inner, outer].map(|value| show(value, Kind::Stiffness, self.system));
                    let meaning = table.spec().key(key).map_or("", |spec| spec.meaning);
                    let text = format!("inner {inner}, outer {outer}");
                    self.assumed.push(Assumed { path: format!("wheel_end[{number}].{key}"), text, meaning });
                }
            }
        }
    }
}

/// Both wheel ends; those of one table and equal wheels are made once.
fn both_ends(
    tables: &Sides<&Table>,
    wheels: &Sides<Wheel>,
    mut end: impl FnMut(Side) -> Option<WheelEnd>,
) -> Option<Sides<WheelEnd>> {
    let left = end(Side::Left)?;
    let alike = std::ptr::eq(tables.left, tables.right) && wheels.left == wheels.right;
    Some(Sides { left, right: if alike { left } else { end(Side::Right)? } })
}

fn wheel_end(table: &Table, wheel: &Wheel, wheel_load: f64) -> Result<WheelEnd, AxleError> {
    let unset = BearingStiffness { radial: 0.0, axial: 0.0 };
    let end = WheelEnd {
        inner_bearing: table.number("inner_bearing_at"),
        outer_bearing: table.number("outer_bearing_at"),
        mounting_face: table.number("mounting_face_at"),
        inner_stiffness: unset,
        outer_stiffness: unset,
        endplay: table.number("endplay"),
        preload: table.number("preload"),
        cup_angle: table.number("bearing_cup_angle"),
        inner_rating: table.optional_number("inner_bearing_rating"),
        outer_rating: table.optional_number("outer_bearing_rating"),
        hub_mass: table.number("hub_mass"),
        camber: table.number("camber"),
        toe: table.number("toe"),
    };
    with_bearings(end, table, (wheel, wheel_load))
}

/// A wheel end with bearings as stiff as its file says, or as the load of its wheel makes them.
fn with_bearings(
    end: WheelEnd,
    table: &Table,
    (wheel, wheel_load): (&Wheel, f64),
) -> Result<WheelEnd, AxleError> {
    let [inner_load, outer_load] = end.bearing_loads(wheel.outset(), wheel_load);
    let stiffness = |count: &str, length: &str, load: f64| {
        let (count, length) = (table.number(count), table.number(length));
        let rollers = TaperedRollers { count, length, cup_angle: end.cup_angle };
        let (radial, axial) = (table.optional_number(RADIAL), table.optional_number(AXIAL));
        Ok::<_, AxleError>(BearingStiffness {
            radial: radial.map_or_else(|| rollers.radial_stiffness(load), Ok)?,
            axial: axial.map_or_else(|| rollers.axial_stiffness(load), Ok)?,
        })
    };
    Ok(WheelEnd {
        inner_stiffness: stiffness("inner_bearing_rollers", "inner_bearing_roller_length", inner_load)?,
        outer_stiffness: stiffness("outer_bearing_rollers", "outer_bearing_roller_length", outer_load)?,
        ..end
    })
}
