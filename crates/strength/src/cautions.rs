//! What must be said wherever a number could lead somebody to weld.

/// What must be said wherever a number could lead somebody to weld on an axle.
pub const WELDING_CAUTIONS: [&str; 5] = [
    "Welding on an axle can void its rating and start cracks.",
    "The axle maker's written approval, a qualified weld procedure (preheat, carbon equivalent, keep-out zones) and \
     local codes come first.",
    "Never weld on the ground path of bearings or seals, near the heat-treated zones of a spindle, or on a loaded \
     axle.",
    "A throat or leg is what the weld must measure when finished; deep penetration is not counted on.",
    "These numbers support, and do not replace, the judgement of a licensed engineer.",
];
