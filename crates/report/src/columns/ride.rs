//! The histories of a ride as named columns.

use axlebow_axle::RideOutcome;

/// A column of a table of samples: its name with its SI unit, and a value for each sample.
pub(crate) type RideColumn<'a> = (String, &'a [f64]);

/// The histories of a ride, then the fiber stress of each station where the ride kept it.
pub(crate) fn ride_columns(outcome: &RideOutcome) -> Vec<RideColumn<'_>> {
    let history = &outcome.history;
    let always: [(&str, &[f64]); 10] = [
        ("time_s", &history.time),
        ("distance_m", &history.distance),
        ("left_road_m", &history.road.left),
        ("right_road_m", &history.road.right),
        ("left_load_n", &history.load.left),
        ("right_load_n", &history.load.right),
        ("left_camber_change_rad", &history.camber.left),
        ("right_camber_change_rad", &history.camber.right),
        ("roll_rad", &history.roll),
        ("stress_pa", &history.stress),
    ];
    let stations = outcome.stations.iter().zip(&history.stresses);
    let stresses =
        stations.map(|(station, stress)| (format!("stress_{}_pa", word(&station.name)), stress.as_slice()));
    always.into_iter().map(|(name, values)| (name.to_owned(), values)).chain(stresses).collect()
}

/// A station's name as part of a column's: `left-seat` becomes `left_seat`.
pub(crate) fn word(name: &str) -> String {
    name.chars().map(|letter| if letter.is_alphanumeric() { letter } else { '_' }).collect()
}
