//! The details of an axle that can crack, their categories chosen by their geometry.

use axlebow_strength::{Detail, Fillet};

use crate::assembly::station_names::{SEAT_INNER_EDGE, SEAT_OUTER_EDGE};
use crate::checks::not_made::NotMade;
use crate::checks::seat_strength::hot_spot;
use crate::checks::spindle_fillets::spindle_fillets;
use crate::life::life_run::LifeOptions;
use crate::outcome::stiffening_outcome::{Foot, WeldForce};
use crate::outcome::{CaseOutcome, StationOutcome};
use crate::parts::body::Piece;
use crate::parts::seat::Fixing;
use crate::{Axle, AxleError, SMALLEST_STEP, SeatStress, Side, Stiffener, StiffenerEnd, WeldPattern};

/// A detail that can crack.
#[derive(Debug, Clone)]
pub(crate) struct CrackSite {
    /// What it is and where, such as `end of top angle`.
    pub name: String,
    /// Station whose fiber stress of the axle drives it.
    pub station: String,
    /// Position, m.
    pub y: f64,
    /// Part of the axle whose fiber stress that is.
    pub piece: Piece,
    /// Its category.
    pub detail: &'static Detail,
    /// What of its geometry chose the category.
    pub geometry: String,
    /// Stress of the detail over that fiber stress, signed so that the detail counts as in tension under the rated load.
    pub factor: f64,
    /// Share of compression that counts.
    pub compression: f64,
}

/// The sites of an axle, and the details that have no category; `rated` is the rated load on the road.
///
/// # Errors
/// [`AxleError::Strength`] for a detail that the catalogue does not have.
pub(crate) fn crack_sites(
    axle: &Axle,
    rated: &CaseOutcome,
    ask: LifeOptions,
) -> Result<(Vec<CrackSite>, Vec<NotMade>), AxleError> {
    let finder = Finder { axle, rated };
    let mut sites = Vec::new();
    for (number, stiffener) in axle.stiffeners.iter().enumerate() {
        sites.extend(finder.ends(stiffener)?);
        sites.extend(finder.weld(stiffener)?);
        sites.extend(finder.throat(stiffener, number)?);
    }
    let mut not_made = Vec::new();
    for side in Side::BOTH {
        let seat = axle.seats.of(side);
        let place = format!("{}-seat", side.word());
        if seat.fixing == Fixing::Clamped {
            let reason = "the clamp may fret the wall, and no code has a category for that";
            not_made.push(without_category(place, reason));
        } else if ask.seat_stress == SeatStress::HotSpot && seat.wall.is_shell() {
            sites.extend(finder.hot_spot(side)?);
        } else {
            sites.extend(finder.seat(side)?);
            if ask.seat_stress == SeatStress::HotSpot {
                not_made.push(NotMade {
                    place,
                    what: "years to a crack by the hot spot".to_owned(),
                    reason: "no shells of its wall are asked for, so that the nominal stress stands in"
                        .to_owned(),
                    advice: "give `wall_flexibility = \"shell\"` of the `seat`".to_owned(),
                });
            }
        }
    }
    sites.extend(finder.fillets()?);
    sites.extend(finder.plain()?);
    not_made.push(without_category(
        "joint of the tube or housing and its spindles".to_owned(),
        "the file does not say how it is made",
    ));
    let (_, fillets) = spindle_fillets(axle);
    not_made.extend(fillets.into_iter().map(|own| NotMade { what: "years to a crack".to_owned(), ..own }));
    for site in &mut sites {
        site.compression = ask.mean_stress.compression(site.detail);
        let resting = finder.station(&site.station).map_or(1.0, |station| fiber(axle, station));
        site.factor = site.factor.copysign(resting);
    }
    Ok((sites, not_made))
}

fn without_category(place: String, reason: &str) -> NotMade {
    NotMade {
        place,
        what: "years to a crack".to_owned(),
        reason: reason.to_owned(),
        advice: "ask the axle's maker".to_owned(),
    }
}

/// Finds the sites of an axle under its rated load.
struct Finder<'a> {
    axle: &'a Axle,
    rated: &'a CaseOutcome,
}

impl Finder<'_> {
    fn station(&self, name: &str) -> Option<&StationOutcome> {
        self.rated.stations.iter().find(|station| station.name == name)
    }

    /// A site at a station of tube, housing or spindle.
    fn site(&self, name: String, station: &StationOutcome, detail: &str) -> Result<CrackSite, AxleError> {
        Ok(CrackSite {
            name,
            station: station.name.clone(),
            y: station.y,
            piece: self.axle.body.piece_at(station.y),
            detail: Detail::named(detail)?,
            geometry: String::new(),
            factor: 1.0,
            compression: 1.0,
        })
    }

    /// Both ends of a stiffener, where it runs out.
    fn ends(&self, stiffener: &Stiffener) -> Result<Vec<CrackSite>, AxleError> {
        let mut found = Vec::new();
        for end in ["left-end", "right-end"] {
            let Some(station) = self.station(&format!("{}-{end}", stiffener.name)) else { continue };
            let (detail, geometry) = end_detail(self.axle, stiffener, station.y);
            let name = format!("{} of {}", end.replace('-', " "), stiffener.name);
            found.push(CrackSite { geometry, ..self.site(name, station, detail)? });
        }
        Ok(found)
    }

    /// The weld along a stiffener, where the axle beside it is stressed most.
    fn weld(&self, stiffener: &Stiffener) -> Result<Option<CrackSite>, AxleError> {
        let inside = |station: &&StationOutcome| {
            station.stress != 0.0
                && (stiffener.from + SMALLEST_STEP..stiffener.to - SMALLEST_STEP).contains(&station.y)
        };
        let stations = self.rated.stations.iter().filter(inside);
        let stress = |station: &StationOutcome| fiber(self.axle, station).abs();
        let Some(most) = stations.max_by(|a, b| stress(a).total_cmp(&stress(b))) else { return Ok(None) };
        let (detail, geometry) = match stiffener.weld.pattern {
            WeldPattern::Continuous => ("longitudinal-manual", "continuous weld"),
            WeldPattern::Stitched { .. } => ("longitudinal-stitches", "weld in stitches"),
        };
        let name = format!("weld along {}", stiffener.name);
        let site = self.site(name, most, detail)?;
        Ok(Some(CrackSite { geometry: format!("{geometry}, taken as laid by hand"), ..site }))
    }

    /// The throat of a stiffener's weld where its force peaks: by shear along it, and from its root by what opens it.
    fn throat(&self, stiffener: &Stiffener, number: usize) -> Result<Vec<CrackSite>, AxleError> {
        let Some(stiffening) = &self.rated.stiffening else { return Ok(Vec::new()) };
        let Some(outcome) = stiffening.stiffeners.get(number) else { return Ok(Vec::new()) };
        let peak: &WeldForce = &outcome.peak;
        let profile = self.axle.body.piece_at(peak.y).profile_at(peak.y.abs());
        let [rear, front] = stiffener.on(&profile)?.gaps;
        let gap = match peak.foot {
            Foot::Rear => rear,
            Foot::Front => front,
        };
        let throat = Fillet::with_leg(stiffener.leg_over(gap))?.throat();
        let near = self.rated.stations.iter().filter(|station| fiber(self.axle, station) != 0.0);
        let away = |station: &StationOutcome| (station.y - peak.y).abs();
        let Some(station) = near.min_by(|a, b| away(a).total_cmp(&away(b))) else { return Ok(Vec::new()) };
        let driving = fiber(self.axle, station).abs();
        let opening = peak.across.hypot(peak.outward);
        let kinds = [("throat-shear", "along the weld", peak.along.abs()), ("root", "that open it", opening)];
        let sites = kinds.into_iter().map(|(detail, force, size)| {
            let name = format!("throat of the weld of {} by forces {force}", stiffener.name);
            let geometry = format!(
                "throat {:.1} mm; its force follows the fiber stress at {} as under the rated load",
                1e3 * throat,
                station.name
            );
            let site = self.site(name, station, detail)?;
            Ok(CrackSite { geometry, y: peak.y, factor: size / throat / driving, ..site })
        });
        sites.collect()
    }

    /// The hot spot at a bracket's toe, driven by the axle's own stress at the edge beside it.
    ///
    /// Source: EN 1993-1-9:2005, Annex B (from memory).
    fn hot_spot(&self, side: Side) -> Result<Option<CrackSite>, AxleError> {
        let Some(spot) = hot_spot(self.axle, self.rated, side)? else { return Ok(None) };
        let edge = if side.sign() * spot.along > 0.0 { SEAT_OUTER_EDGE } else { SEAT_INNER_EDGE };
        let Some(station) = self.station(edge.of(side)) else { return Ok(None) };
        let factor = spot.stress.abs() / fiber(self.axle, station).abs();
        let name = format!("hot spot at the {}", station.name.replace('-', " "));
        let geometry = format!(
            "toe of a bracket that carries the spring, {factor:.2} of the nominal stress there as under the rated load (shells)"
        );
        let site = self.site(name, station, "hot-spot-loaded")?;
        Ok(Some(CrackSite { geometry, factor, ..site }))
    }

    /// Both edges of a welded seat.
    fn seat(&self, side: Side) -> Result<Vec<CrackSite>, AxleError> {
        let seat = self.axle.seats.of(side);
        let (detail, length) = attachment(seat.width);
        let mut found = Vec::new();
        for edge in [SEAT_OUTER_EDGE, SEAT_INNER_EDGE] {
            let Some(station) = self.station(edge.of(side)) else { continue };
            let site =
                self.site(format!("weld at the {}", station.name.replace('-', " ")), station, detail)?;
            found.push(CrackSite { geometry: format!("bracket as {length}"), ..site });
        }
        Ok(found)
    }

    /// The fillets of the spindles.
    fn fillets(&self) -> Result<Vec<CrackSite>, AxleError> {
        let (fillets, _) = spindle_fillets(self.axle);
        let mut found = Vec::new();
        for (fillet, side) in fillets.iter().flat_map(|fillet| Side::BOTH.map(|side| (fillet, side))) {
            let y = side.sign() * fillet.piece.from;
            let there = |own: &&StationOutcome| (own.y - y).abs() < SMALLEST_STEP;
            let Some(station) = self.rated.stations.iter().find(there) else { continue };
            let name = format!("spindle fillet at {}", station.name);
            let geometry = format!("machined, K_t {:.2} (Peterson)", fillet.factor);
            let site = self.site(name, station, "plain")?;
            found.push(CrackSite { geometry, piece: fillet.piece, factor: fillet.factor, ..site });
        }
        Ok(found)
    }

    /// The tube or housing where it is stressed most, without any detail.
    fn plain(&self) -> Result<Option<CrackSite>, AxleError> {
        let inside = |station: &&StationOutcome| station.y.abs() < self.axle.body.tube_end() - SMALLEST_STEP;
        let stations = self.rated.stations.iter().filter(inside);
        let stress = |station: &StationOutcome| fiber(self.axle, station).abs();
        let Some(most) = stations.max_by(|a, b| stress(a).total_cmp(&stress(b))) else { return Ok(None) };
        let part = self.axle.body.piece_at(most.y).part.word();
        let site = self.site(format!("plain {part} at {}", most.name), most, "plain")?;
        Ok(Some(CrackSite { geometry: "steel as rolled".to_owned(), ..site }))
    }
}

/// Fiber stress of the axle itself at a station, signed, Pa; zero where there is no axle.
fn fiber(axle: &Axle, station: &StationOutcome) -> f64 {
    if station.stress == 0.0 {
        return 0.0;
    }
    let piece = axle.body.piece_at(station.y);
    let carried = station.axle_resultants;
    let properties = axle.body.properties(&piece, station.y.abs());
    let profile = piece.profile_at(station.y.abs());
    profile.fiber_stress(&properties, carried.axial, carried.moment_x, carried.moment_z).0
}

/// The detail of the end of a stiffener, and what of its geometry chose it.
///
/// Source: EN 1993-1-9:2005, Tables 8.4 (1), (2) and 8.5 (6) (from memory).
fn end_detail(axle: &Axle, stiffener: &Stiffener, y: f64) -> (&'static str, String) {
    if stiffener.form.covers_the_wall() {
        let wall = axle.body.piece_at(y).profile_at(y.abs()).wall();
        let plate = stiffener.form.plate().thickness;
        return cover_plate(plate, wall);
    }
    let (detail, geometry) = attachment(stiffener.length());
    let [_, [low, high]] = stiffener.form.outline().reach();
    match stiffener.end {
        StiffenerEnd::Tapered { length } if detail == "attachment-long" && high - low < length => {
            let angle = ((high - low) / length).atan().to_degrees();
            ("attachment-tapered", format!("{geometry}, its ends tapered by {angle:.0} deg"))
        }
        StiffenerEnd::Tapered { length } => {
            let angle = ((high - low) / length).atan().to_degrees();
            (detail, format!("{geometry}, its ends too steep at {angle:.0} deg to count as tapered"))
        }
        StiffenerEnd::Radiused { .. } => (detail, format!("{geometry}, its radius not counted on")),
        StiffenerEnd::Square => (detail, format!("{geometry}, cut square")),
    }
}

/// A longitudinal attachment by its length, m.
fn attachment(length: f64) -> (&'static str, String) {
    let detail = match 1e3 * length {
        short if short <= 50.0 => "attachment-50",
        short if short <= 80.0 => "attachment-80",
        short if short <= 100.0 => "attachment-100",
        _ => "attachment-long",
    };
    (detail, format!("a longitudinal attachment {:.0} mm long", 1e3 * length))
}

/// The end of a cover plate by its own thickness and that of the wall under it, m.
fn cover_plate(plate: f64, wall: f64) -> (&'static str, String) {
    let thin = ["cover-thin-20", "cover-thin-30", "cover-thin-50", "cover-thin-over"];
    let thick = ["cover-thick-20", "cover-thick-30", "cover-thick-50", "cover-thick-over"];
    let row = [0.020, 0.030, 0.050].iter().filter(|limit| wall > **limit).count();
    let detail = if plate < wall { thin[row] } else { thick[row] };
    (detail, format!("the end of a cover plate of {:.1} mm on a wall of {:.1} mm", 1e3 * plate, 1e3 * wall))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attachments_and_cover_plates_have_the_category_of_their_size() {
        for (length, name) in [
            (0.05, "attachment-50"),
            (0.0501, "attachment-80"),
            (0.08, "attachment-80"),
            (0.1, "attachment-100"),
            (0.1001, "attachment-long"),
        ] {
            assert_eq!(attachment(length).0, name, "{length}");
        }
        assert_eq!(cover_plate(0.008, 0.0095).0, "cover-thin-20");
        assert_eq!(cover_plate(0.0095, 0.0095).0, "cover-thick-20");
        assert_eq!(cover_plate(0.008, 0.0201).0, "cover-thin-30");
        assert_eq!(cover_plate(0.06, 0.051).0, "cover-thick-over");
    }
}
