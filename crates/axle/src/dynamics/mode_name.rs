//! Names of modes by what carries their energy.

use std::collections::BTreeMap;

/// Where a mode's strain energy is; the parts make 1.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Strain {
    /// Tube or housing and spindles.
    pub beam: f64,
    /// Seats with suspension and wall.
    pub seats: f64,
    /// Bearings and brakes.
    pub bearings: f64,
    /// Tires.
    pub tires: f64,
    /// The rest of the vehicle: what it puts against roll of the body, less what the sprung weight gives back.
    pub rest_of_vehicle: f64,
}

/// Where a mode's kinetic energy is; the parts make 1.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Motion {
    /// Vertical motion of axle and wheels, with its slope about X.
    pub vertical: f64,
    /// Fore-aft motion of axle and wheels, with its slope about Z.
    pub fore_aft: f64,
    /// Lateral motion of axle and wheels.
    pub lateral: f64,
    /// Rotation of the axle about its own line.
    pub twist: f64,
    /// Vehicle body.
    pub body: f64,
}

/// Numbers modes of one name.
#[derive(Debug, Default)]
pub(crate) struct ModeNames {
    given: BTreeMap<&'static str, usize>,
}

impl ModeNames {
    /// Name of the next mode. `in_phase` says whether both hubs move alike in a freedom, `heaves` whether the
    /// body heaves rather than rolls.
    pub(crate) fn name(
        &mut self,
        strain: &Strain,
        motion: &Motion,
        in_phase: impl Fn(usize) -> bool,
        heaves: bool,
    ) -> String {
        let name = plain_name(strain, motion, in_phase, heaves);
        let count = self.given.entry(name).or_insert(0);
        *count += 1;
        if *count == 1 { name.to_owned() } else { format!("{name} {count}") }
    }
}

fn plain_name(
    strain: &Strain,
    motion: &Motion,
    in_phase: impl Fn(usize) -> bool,
    heaves: bool,
) -> &'static str {
    const UX: usize = 0;
    const UZ: usize = 2;
    if motion.body > 0.5 {
        return if heaves { "body bounce" } else { "body roll" };
    }
    let most = motion.vertical.max(motion.fore_aft).max(motion.lateral).max(motion.twist);
    let flexes = strain.beam + strain.bearings > 0.5;
    if most == motion.twist {
        return if flexes { "twist" } else { "seat rock" };
    }
    if most == motion.lateral {
        return "lateral shake";
    }
    match (most == motion.vertical, flexes) {
        (true, true) => "vertical bow",
        (true, false) if in_phase(UZ) => "wheel hop",
        (true, false) => "axle tramp",
        (false, true) => "fore-aft bow",
        (false, false) if in_phase(UX) => "fore-aft shake",
        (false, false) => "axle yaw",
    }
}
