//! Made-up outcomes: an overhang beam on two seats, from its closed form.

use axlebow_axle::{
    AxialForce, BearingOutcome, CamberSplit, CaseOutcome, ContactOutcome, DiagramPoint, FlexOutcome, Foot,
    PlacedStress, Resultants, SeatOutcome, Side, Sides, StationOutcome, StiffenerOutcome, StiffeningOutcome,
    TireSlot, WallAtSeat, WallBy, Warning, WeldForce, WheelOutcome,
};
use axlebow_report::plot::{Drawing, LinePoint, TireDrawing};
use axlebow_report::{Assumed, ModelCard, SectionCard};
use axlebow_sections::{Profile, RectangularTube, RoundBar, RoundTube};
use axlebow_units::UnitSystem;

pub const HUB: f64 = 0.92;
const INNER_BEARING: f64 = 0.88;
const OUTER_BEARING: f64 = 0.96;
const TUBE_END: f64 = 0.8;
const SEAT: f64 = 0.48;
const RADIUS: f64 = 0.49;
const ELASTIC_MODULUS: f64 = 206e9;
const TUBE: [f64; 2] = [0.146, 0.016];
const SPINDLE_DIAMETER: f64 = 0.09;

/// Load on one wheel end: tires at `tires` share `vertical`; `lateral` is to the left, `forward` forward.
#[derive(Debug, Clone)]
pub struct WheelLoad {
    pub tires: Vec<f64>,
    pub vertical: f64,
    pub lateral: f64,
    pub forward: f64,
}

pub fn single(vertical: f64) -> WheelLoad {
    WheelLoad { tires: vec![0.925], vertical, lateral: 0.0, forward: 0.0 }
}

pub fn dual(vertical: f64) -> WheelLoad {
    WheelLoad { tires: vec![1.02, 0.69], vertical, lateral: 0.0, forward: 0.0 }
}

pub fn card(system: UnitSystem) -> ModelCard {
    ModelCard {
        name: "Round-tube trailer axle".to_owned(),
        hash: "0f".repeat(32),
        assumed: vec![
            Assumed {
                path: "tube.elastic-modulus".to_owned(),
                value: "206 GPa".to_owned(),
                meaning: "modulus of elasticity of the tube".to_owned(),
            },
            Assumed {
                path: "seat.bush.radial-rate".to_owned(),
                value: "20 kN/mm".to_owned(),
                meaning: "radial stiffness of the pivot bush, both bushes of an arm together".to_owned(),
            },
        ],
        system,
        invented: true,
        typical: vec![],
        invented_inputs: Vec::new(),
        settings: vec![],
    }
}

pub fn outcome(cases: Vec<CaseOutcome>) -> FlexOutcome {
    let warnings = vec![Warning {
        text: "the fiber stress under the left seat is 71 % of yield".to_owned(),
        advice: "check the seat weld with a strength run before the wall is made thinner".to_owned(),
    }];
    let preheat = Vec::new();
    FlexOutcome { axle_mass: 101.3, unsprung_mass: 412.0, walls: walls(), cases, preheat, warnings }
}

/// A wall whose flexibility the file gives.
pub fn walls() -> Sides<WallAtSeat> {
    Sides::each(|_| WallAtSeat {
        by: WallBy::Given,
        composite_fraction: 0.0,
        compliance: [[0.0; 6]; 6],
        unknowns: None,
        caveats: Vec::new(),
    })
}

pub fn rated() -> CaseOutcome {
    case("rated-load", "both wheels on level road, rated load", [single(45e3), single(45e3)])
}

pub fn raised() -> CaseOutcome {
    let mut raised = case(
        "left-wheel-raised",
        "left wheel on a block of 100 mm, right wheel on level road, seats fixed to the body",
        [single(61e3), single(29e3)],
    );
    raised.axle_roll = -0.0539;
    raised
}

pub fn duals() -> CaseOutcome {
    case("rated-load", "duals on level road, rated load", [dual(50e3), dual(50e3)])
}

/// The rated load with an invented angle on top.
pub fn stiffened() -> CaseOutcome {
    let force = |y: f64, along: f64, outward: f64| WeldForce {
        y,
        length: 0.1,
        foot: Foot::Front,
        along,
        across: 0.0,
        outward,
    };
    let weld = vec![force(-0.35, -612e3, -801e3), force(0.0, 0.0, 12e3), force(0.35, 612e3, -801e3)];
    let axial = [-0.175, 0.175].map(|y| AxialForce { y, tied: -81e3, composite: -90e3 });
    let angle = StiffenerOutcome {
        name: "top-angle".to_owned(),
        called: "angle, toes down".to_owned(),
        reach: [-0.35, 0.35],
        mass: 7.46,
        peak: weld[2],
        weld,
        axial: axial.to_vec(),
        working_length: 0.28,
        peak_stress: PlacedStress { y: 0.0, stress: -96e6 },
    };
    let stiffening = StiffeningOutcome {
        side: Side::Left,
        mass: 7.46,
        without: -0.0087,
        composite: -0.00697,
        tied: -0.00735,
        why: Some("top-angle is short".to_owned()),
        stiffeners: vec![angle],
    };
    CaseOutcome { stiffening: Some(stiffening), ..rated() }
}

pub fn cornering() -> CaseOutcome {
    let left = WheelLoad { lateral: -18e3, forward: -20e3, ..dual(62e3) };
    let right = WheelLoad { lateral: -9e3, forward: -14e3, ..dual(28e3) };
    let mut cornering = case("brake-in-bend", "braking in a right-hand bend, left side outer", [left, right]);
    cornering.wheels.right.contacts[0].off_road = true;
    cornering.wheels.right.contacts[0].vertical_load = 0.0;
    cornering.wheels.right.contacts[1].vertical_load = 28e3;
    cornering
}

pub fn drawing(case: &CaseOutcome) -> Drawing {
    let tires = Sides::each(|side| {
        let contacts = case.wheels.of(side).contacts.iter();
        let width = if contacts.len() == 1 { 0.38 } else { 0.27 };
        contacts.map(|contact| TireDrawing { y: contact.y, radius: RADIUS, width }).collect()
    });
    let (tube, spindle) = (0.5 * TUBE[0], 0.5 * SPINDLE_DIAMETER);
    let half = |y, half_height| LinePoint { y, half_height };
    let line = vec![
        half(OUTER_BEARING + 0.02, 0.7 * spindle),
        half(INNER_BEARING, spindle),
        half(TUBE_END, spindle),
        half(TUBE_END, tube),
        half(-TUBE_END, tube),
        half(-TUBE_END, spindle),
        half(-INNER_BEARING, spindle),
        half(-OUTER_BEARING - 0.02, 0.7 * spindle),
    ];
    Drawing {
        tires,
        hubs: Sides { left: HUB, right: -HUB },
        line,
        seats: Sides { left: 0.12, right: 0.12 },
        stiffeners: Vec::new(),
    }
}

pub fn sections() -> Vec<SectionCard> {
    let section = |name: &str, reach, profile: Profile| SectionCard {
        name: name.to_owned(),
        reach,
        profile,
        properties: profile.properties(0.3),
        mass_per_length: profile.properties(0.3).mass_per_length(7850.0),
    };
    vec![
        section("left spindle", [0.96, 0.8], RoundBar::new(SPINDLE_DIAMETER).unwrap().into()),
        section("tube", [0.8, -0.8], RoundTube::new(TUBE[0], TUBE[1]).unwrap().into()),
        section("square tube", [0.8, -0.8], RectangularTube::new(0.12, 0.15, 0.008, 0.016).unwrap().into()),
    ]
}

/// A force on the axle line: place, upward part, forward part.
type Force = [f64; 3];

pub fn case(name: &str, description: &str, wheels: [WheelLoad; 2]) -> CaseOutcome {
    let [left, right] =
        [(Side::Left, &wheels[0]), (Side::Right, &wheels[1])].map(|(s, w)| bearing_forces(s, w));
    let mut forces: Vec<Force> = left.iter().chain(&right).copied().collect();
    let seats = seat_forces(&forces);
    forces.extend(seats);
    let line = Line { forces, tilt: 0.0 };
    let line = Line { tilt: -line.slope(0.0, 1), ..line };
    let diagram = line.diagram();
    let peak = diagram.iter().copied().max_by(|a, b| a.stress.abs().total_cmp(&b.stress.abs())).unwrap();
    let middle = |y| line.displacement(y, 1);
    CaseOutcome {
        name: name.to_owned(),
        description: description.to_owned(),
        dynamic_factor: 1.0,
        wheels: Sides {
            left: wheel(Side::Left, &wheels[0], line.slope(HUB, 1)),
            right: wheel(Side::Right, &wheels[1], -line.slope(-HUB, 1)),
        },
        bearings: bearings(&left, &right),
        seats: Sides { left: seat(seats[0], &line), right: seat(seats[1], &line) },
        stations: line.stations(),
        peak_stress: peak.stress,
        peak_stress_y: peak.y,
        bow: middle(0.0) - 0.5 * (middle(HUB) + middle(-HUB)),
        axle_roll: 0.0,
        equilibrium_residual: 3.1e-12,
        diagram,
        stiffening: None,
    }
}

/// Hub on spindle: outer bearing, inner bearing.
fn bearing_forces(side: Side, wheel: &WheelLoad) -> [Force; 2] {
    let span = OUTER_BEARING - INNER_BEARING;
    let place = wheel.tires.iter().sum::<f64>() / wheel.tires.len() as f64;
    let outer_share = (place - INNER_BEARING) / span;
    let couple = side.sign() * wheel.lateral * RADIUS / span;
    let sign = side.sign();
    [
        [sign * OUTER_BEARING, outer_share * wheel.vertical + couple, outer_share * wheel.forward],
        [
            sign * INNER_BEARING,
            (1.0 - outer_share) * wheel.vertical - couple,
            (1.0 - outer_share) * wheel.forward,
        ],
    ]
}

fn seat_forces(forces: &[Force]) -> [Force; 2] {
    let share = |sign: f64, part: usize| {
        forces.iter().map(|force| -force[part] * 0.5 * (1.0 + sign * force[0] / SEAT)).sum::<f64>()
    };
    [1.0, -1.0].map(|sign| [sign * SEAT, share(sign, 1), share(sign, 2)])
}

/// The beam under point forces: `M(y) = sum F <y_i - y>`, deflection by two integrations.
struct Line {
    forces: Vec<Force>,
    tilt: f64,
}

impl Line {
    fn sum(&self, y: f64, part: usize, power: i32) -> f64 {
        self.forces.iter().filter(|f| f[0] > y).map(|f| f[part] * (f[0] - y).powi(power)).sum()
    }

    fn tilt_of(&self, part: usize) -> f64 {
        if part == 1 { self.tilt } else { 0.0 }
    }

    fn slope(&self, y: f64, part: usize) -> f64 {
        self.tilt_of(part) - self.sum(y, part, 2) / (2.0 * stiffness())
    }

    fn displacement(&self, y: f64, part: usize) -> f64 {
        self.tilt_of(part) * y + self.sum(y, part, 3) / (6.0 * stiffness())
    }

    fn point(&self, y: f64, just: f64) -> DiagramPoint {
        let at = y + just;
        let resultants = Resultants {
            shear_z: self.sum(at, 1, 0),
            shear_x: self.sum(at, 2, 0),
            moment_x: self.sum(at, 1, 1),
            moment_z: -self.sum(at, 2, 1),
            ..Resultants::default()
        };
        let moment = resultants.moment_x.hypot(resultants.moment_z);
        let stress = moment / section_modulus(at);
        DiagramPoint { y, uz: self.displacement(y, 1), ux: self.displacement(y, 2), resultants, stress }
    }

    fn diagram(&self) -> Vec<DiagramPoint> {
        let jumps = [OUTER_BEARING, INNER_BEARING, TUBE_END, SEAT];
        let mut places: Vec<f64> = jumps.iter().flat_map(|y| [*y, -y]).collect();
        places.extend((-19..=19).map(|i| 0.05 * f64::from(i)));
        places.sort_by(|a, b| b.total_cmp(a));
        places.into_iter().flat_map(|y| [self.point(y, 1e-9), self.point(y, -1e-9)]).collect()
    }

    fn stations(&self) -> Vec<StationOutcome> {
        let half = [
            ("hub", HUB),
            ("outer-bearing", OUTER_BEARING),
            ("inner-bearing", INNER_BEARING),
            ("tube-end", TUBE_END),
            ("seat", SEAT),
        ];
        let named =
            half.iter().flat_map(|(name, y)| [(format!("left-{name}"), *y), (format!("right-{name}"), -y)]);
        let mut all: Vec<(String, f64)> = named.chain([("center".to_owned(), 0.0)]).collect();
        all.sort_by(|a, b| b.1.total_cmp(&a.1));
        all.into_iter().map(|(name, y)| self.station(name, y)).collect()
    }

    fn station(&self, name: String, y: f64) -> StationOutcome {
        let point = self.point(y, -1e-9 * y.signum());
        let displacement = [point.ux, 0.0, point.uz, self.slope(y, 1), 0.0, -self.slope(y, 2)];
        let (resultants, stress) = (point.resultants, point.stress);
        StationOutcome { name, y, displacement, resultants, axle_resultants: resultants, stress }
    }
}

fn stiffness() -> f64 {
    let tube = RoundTube::new(TUBE[0], TUBE[1]).unwrap();
    ELASTIC_MODULUS * Profile::from(tube).properties(0.3).second_moment_x
}

fn section_modulus(y: f64) -> f64 {
    let profile: Profile = if y.abs() < TUBE_END {
        RoundTube::new(TUBE[0], TUBE[1]).unwrap().into()
    } else {
        RoundBar::new(SPINDLE_DIAMETER).unwrap().into()
    };
    profile.properties(0.3).section_modulus_x()
}

/// `slope` raises the wheel end outward, which leans the tire's top inward.
fn wheel(side: Side, load: &WheelLoad, slope: f64) -> WheelOutcome {
    let split = CamberSplit {
        bending: -slope,
        shear: -1.5e-5,
        seat: -1.1e-4,
        wall: -4e-5,
        bearing: -1.7e-4,
        disc: 0.0,
        clearance: 0.0,
    };
    let camber_change = split.sum();
    let share = load.vertical / load.tires.len() as f64;
    let contacts = load.tires.iter().enumerate().map(|(number, y)| ContactOutcome {
        slot: TireSlot::of(number, load.tires.len()),
        y: side.sign() * y,
        vertical_load: share,
        lateral_load: load.lateral / load.tires.len() as f64,
        off_road: false,
    });
    WheelOutcome {
        camber_change,
        camber: camber_change + 0.004,
        toe_change: 1e-4,
        toe: 1e-4,
        hub_rise: 3e-3,
        vertical_load: load.vertical,
        lateral_load: load.lateral,
        longitudinal_load: load.forward,
        contacts: contacts.collect(),
        split,
    }
}

fn bearings(left: &[Force; 2], right: &[Force; 2]) -> Vec<BearingOutcome> {
    let one = |side, place, force: Force| BearingOutcome {
        side,
        place,
        y: force[0],
        vertical: force[1],
        fore_aft: force[2],
        axial: 0.0,
        radial: force[1].hypot(force[2]),
        clearance: 0.0,
    };
    vec![
        one(Side::Left, "outer", left[0]),
        one(Side::Left, "inner", left[1]),
        one(Side::Right, "inner", right[1]),
        one(Side::Right, "outer", right[0]),
    ]
}

fn seat(force: Force, line: &Line) -> SeatOutcome {
    SeatOutcome { y: force[0], vertical: force[1], moment_x: 0.0, rotation: line.slope(force[0], 1) }
}
