//! What must be said wherever a number could lead somebody to weld.

/// What must be said wherever a number could lead somebody to weld on an axle.
pub const WELDING_CAUTIONS: [&str; 5] = [
    "Welding on an axle can void its rating and start cracks.",
    "The axle maker's written approval, a qualified weld procedure (preheat, carbon equivalent, keep-out zones) and \
     local codes come first.",
    "Never weld on the ground path of bearings or seals, near the heat-treated zones of a spindle, or on a loaded \
     axle.",
    "A throat or leg is what the weld must measure when finished; deep penetration is not counted on.",
    "These numbers support, and do not replace, the judgment of a licensed engineer.",
];

/// What must be said wherever a number could lead somebody to tighten U-bolts.
pub const CLAMPING_CAUTIONS: [&str; 3] = [
    "Torque U-bolts to the figure of the axle and suspension maker, in their pattern and on an unloaded axle; a higher one \
     can crush a thin wall.",
    "A torque gives the clamp force within about 30 % (common practice, no source): threads, washers and oil decide. Use new \
     U-bolts, and torque again after the first loaded kilometers.",
    "Support the vehicle on stands, chock its wheels and take the load off before a U-bolt is loosened.",
];
