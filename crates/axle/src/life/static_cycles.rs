//! Stress ranges of braking, turns and loading: from running straight to the event and back.

use axlebow_strength::{Cycle, RangeCounts};

use crate::Axle;
use crate::life::crack_sites::CrackSite;
use crate::outcome::{CaseOutcome, StationOutcome};

/// One cycle from one case to another and back at a site: the greatest change of stress of any fiber of its section,
/// counted as of the side in tension.
pub(crate) fn static_cycle(axle: &Axle, site: &CrackSite, cases: [&CaseOutcome; 2]) -> RangeCounts {
    let at = |case: &CaseOutcome| -> Option<StationOutcome> {
        case.stations.iter().find(|own| own.name == site.station).cloned()
    };
    let mut counts = RangeCounts::default();
    let [Some(from), Some(to)] = cases.map(at) else { return counts };
    let distance = from.y.abs();
    let (a, b) = (from.axle_resultants, to.axle_resultants);
    let change = [b.axial - a.axial, b.moment_x - a.moment_x, b.moment_z - a.moment_z];
    let properties = axle.body.properties(&site.piece, distance);
    let profile = site.piece.profile_at(distance);
    let (fiber, point) = profile.fiber_stress(&properties, change[0], change[1], change[2]);
    let [before, after] =
        [a, b].map(|own| properties.normal_stress(point, own.axial, own.moment_x, own.moment_z));
    let mean = (0.5 * site.factor * (before + after)).abs();
    let cycle = Cycle { range: (site.factor * fiber).abs(), mean, count: 1.0, from: 0, to: 1 };
    counts.add(cycle.with_compression(site.compression));
    counts
}
