//! The histories of a ride.

use std::fmt::Write as _;

use axlebow_axle::RideOutcome;

/// The histories of a ride, a line for each sample; a history that ends early leaves its cells empty.
///
/// Camber change is against the unloaded axle, positive with the tire's top outward; road is the height that the
/// tires feel; stress is the fibre stress of largest magnitude along the axle, signed. A ride that ended early has
/// a last line that begins with `# partial:` and says why.
pub fn ride(outcome: &RideOutcome) -> String {
    let history = &outcome.history;
    let columns: [(&str, &[f64]); 10] = [
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
    let mut text = columns.map(|(heading, _)| heading).join(",") + "\r\n";
    for sample in 0..history.time.len() {
        for (i, (_, values)) in columns.iter().enumerate() {
            let comma = if i > 0 { "," } else { "" };
            let _ = match values.get(sample) {
                Some(value) => write!(text, "{comma}{value:?}"), // a String takes every write
                None => write!(text, "{comma}"),
            };
        }
        text.push_str("\r\n");
    }
    if let Some(why) = &outcome.partial {
        let _ = write!(text, "# partial: {why}\r\n");
    }
    text
}
