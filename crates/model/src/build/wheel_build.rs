//! Wheels and tires of a file.

use axlebow_axle::{TREAD_SHARE, Tire, TireFit, TireLayout, Wheel};
use axlebow_units::{Kind, show};

use super::builder::Builder;
use super::tire_file::tread;
use crate::content::{Assumed, Entry, Table};

impl Builder<'_> {
    pub(crate) fn wheel(&mut self, table: &Table) -> Option<Wheel> {
        let layout = self.tire_layout(table)?;
        let outset = self.outset(table)?;
        let tire = Tire {
            loaded_radius: table.number("loaded_radius"),
            vertical_stiffness: table.number("tire_vertical_stiffness"),
            lateral_stiffness: table.number("tire_lateral_stiffness"),
            damping: table.number("tire_damping"),
            width: table.number("tire_width"),
        };
        let made = Wheel::new(layout, outset, tire, table.number("mass"))
            .and_then(|wheel| wheel.with_tilt_radius(table.number("tilt_radius")))
            .and_then(|wheel| wheel.with_disc_flexibility(table.number("disc_flexibility")));
        let wheel = self.kept(table.span(), made)?;
        let wheel = self.treaded(table, wheel)?;
        let fit = self.tire_fit(table)?;
        let wheel = self.kept(table.span(), wheel.with_fit(fit))?;
        if table.flag("reversed") {
            let turned = wheel.reversed(table.number("disc_thickness"));
            return self.kept(table.span_of("disc_thickness"), turned);
        }
        Some(wheel)
    }

    fn treaded(&mut self, table: &Table, wheel: Wheel) -> Option<Wheel> {
        let own = table.table("tread");
        let tread = self.kept(own.span(), tread(own, wheel.tire().width))?;
        self.kept(own.span_of("width"), wheel.with_tread(tread))
    }

    /// Inflation and match of the tires; what only a dual has is refused elsewhere.
    fn tire_fit(&mut self, table: &Table) -> Option<TireFit> {
        let is_dual = table.word("tires") == "dual";
        for key in ["inner_inflation", "outer_radius", "inner_radius"] {
            if !is_dual && table.optional_number(key).is_some() {
                let message = format!("`{key}` is given, but the tires are `{}`", table.word("tires"));
                self.problems.push(table.span_of(key), message, Some("duals only".to_owned()));
                return None;
            }
        }
        let outer_less_inner =
            match [table.optional_number("outer_radius"), table.optional_number("inner_radius")] {
                [Some(outer), Some(inner)] => outer - inner,
                [None, None] => 0.0,
                [outer, _] => {
                    let (given, missing) = if outer.is_some() {
                        ("outer_radius", "inner_radius")
                    } else {
                        ("inner_radius", "outer_radius")
                    };
                    let message = format!("a dual of unlike tires needs both radii; `{missing}` is missing");
                    let accepted = Some(format!("{missing} beside `{given}`, both of the unloaded tire"));
                    self.problems.push(table.span_of(given), message, accepted);
                    return None;
                }
            };
        let outer = table.optional_number("inflation");
        let inner = table.optional_number("inner_inflation").or(outer);
        let tilt_share = table.number("tire_tilt_share");
        Some(TireFit { inflation: [outer, inner], outer_less_inner, tilt_share })
    }

    /// Lists widths of treads that the file does not give.
    pub(crate) fn assume_tread_widths(&mut self) {
        for (number, table) in self.root.tables("wheel").iter().enumerate() {
            let tread = table.table("tread");
            if tread.optional_number("width").is_none() {
                let text = show(TREAD_SHARE * table.number("tire_width"), Kind::Length, self.system);
                let meaning = tread.spec().key("width").map_or("", |spec| spec.meaning);
                self.assumed.push(Assumed { path: format!("wheel[{number}].tread.width"), text, meaning });
            }
        }
    }

    fn tire_layout(&mut self, table: &Table) -> Option<TireLayout> {
        let spacing = table.optional_number("dual_spacing");
        match (table.word("tires"), spacing) {
            ("dual", Some(spacing)) => {
                if spacing < table.number("tire_width") {
                    let message = "the tires of this dual overlap: their spacing is less than their width";
                    let width = show(table.number("tire_width"), Kind::Length, self.system);
                    let accepted = format!("at least {width}");
                    self.problems.push(table.span_of("dual_spacing"), message, Some(accepted));
                }
                Some(TireLayout::Dual { spacing })
            }
            ("dual", None) => {
                let accepted =
                    Some(format!("dual_spacing = \"{}\", for one", self.example("330 mm", "13 in")));
                self.problems.push(table.span_of("tires"), "a dual needs its `dual_spacing`", accepted);
                None
            }
            (word, Some(_)) => {
                let message = format!("`dual_spacing` is given, but the tires are `{word}`");
                self.problems.push(table.span_of("dual_spacing"), message, None);
                None
            }
            ("wide-base", None) => Some(TireLayout::WideBase),
            _ => Some(TireLayout::Single),
        }
    }

    fn outset(&mut self, table: &Table) -> Option<f64> {
        let is_unused = table.entry("offset").is_some_and(Entry::is_unused);
        let offset = table.optional_number("offset").filter(|_| !is_unused);
        match (table.word("position"), offset) {
            ("zeroset", None | Some(0.0)) => Some(0.0),
            ("zeroset", Some(_)) => {
                let message = "`offset` is set, but the wheel is zeroset";
                let accepted = "a `position` of outset or inset with it".to_owned();
                self.problems.push(table.span_of("offset"), message, Some(accepted));
                None
            }
            (word, None) => {
                let message = format!("an {word} wheel needs its `offset`");
                self.problems.push(
                    table.span_of("position"),
                    message,
                    Some(format!("offset = \"{}\", for one", self.example("51 mm", "2 in"))),
                );
                None
            }
            ("outset", Some(offset)) => Some(offset),
            (_, Some(offset)) => Some(-offset),
        }
    }
}
