//! The keys of a beam file.

use axlebow_units::Kind;

use super::material_keys::MATERIAL;
use super::stiffener_keys::{HOLE, ROOT_RADIUS, STANDARD_SIZE, TOE_RADIUS, size};
use crate::declare::{Bounds, Holds, KeySpec, Presence, TableSpec, Word, key, quantity};

use Bounds::{Any, NonNegative, Positive};
use Presence::{Default, Optional, Required};

/// A whole beam file.
pub static BEAM: TableSpec = TableSpec {
    name: "beam file",
    meaning: "A straight beam: spans one behind the other, what holds and loads them, and values that are expected.",
    keys: &[
        key("name", "What the beam is called in results.", Holds::Text, Required),
        key("invented", "Whether the numbers are invented for demonstration.", Holds::Flag, Default("false")),
        key(
            "theory",
            "Whether sections shear.",
            Holds::Choice(&[
                Word { word: "timoshenko", meaning: "bending, shear and rotary inertia" },
                Word { word: "euler-bernoulli", meaning: "bending only" },
            ]),
            Default("\"timoshenko\""),
        ),
        key(
            "elements",
            "Elements in each piece of the beam between places where something happens.",
            Holds::Count { min: 1, max: 1000 },
            Default("20"),
        ),
        key(
            "modes",
            "Elastic modes that are wanted; three of a beam whose sections have an area if left out.",
            Holds::Count { min: 0, max: 50 },
            Optional,
        ),
        key(
            "material",
            "Material of all spans that have none of their own.",
            Holds::Table(&MATERIAL),
            Default("{}"),
        ),
        key(
            "span",
            "A length of beam of one section or one taper, behind those before it.",
            Holds::Tables(&SPAN),
            Required,
        ),
        key("support", "What holds the beam at a place.", Holds::Tables(&SUPPORT), Optional),
        key("load", "What loads the beam.", Holds::Tables(&LOAD), Optional),
        key("mass", "A mass on the beam, for its modes.", Holds::Tables(&MASS), Optional),
        key("moving", "A force that drives over the beam.", Holds::Table(&MOVING), Optional),
        key("shaking", "A force that shakes the beam steadily.", Holds::Table(&SHAKING), Optional),
        key("check", "A value that is expected.", Holds::Tables(&CHECK), Optional),
    ],
};

static MOVING: TableSpec = TableSpec {
    name: "moving force",
    meaning: "A constant force that drives over the beam from its start to its end, at rest before.",
    keys: &[
        key("force", "Upward force; negative for down.", Holds::Load { bounds: Any }, Required),
        quantity("speed", "Its speed.", (Kind::Speed, Positive), Required),
        quantity(
            "at",
            "Where the deflection is read; the middle if left out.",
            (Kind::Length, Any),
            Optional,
        ),
        DAMPING,
        RESPONSE_MODES,
    ],
};

static SHAKING: TableSpec = TableSpec {
    name: "shaking force",
    meaning: "A harmonic force on the beam, at each of some frequencies.",
    keys: &[
        key("force", "Its amplitude, upward.", Holds::Load { bounds: Any }, Required),
        quantity("at", "Where it acts.", (Kind::Length, Any), Required),
        quantity(
            "read_at",
            "Where the deflection is read; where it acts if left out.",
            (Kind::Length, Any),
            Optional,
        ),
        quantity("from", "Lowest frequency.", (Kind::Frequency, Positive), Required),
        quantity("to", "Highest frequency.", (Kind::Frequency, Positive), Required),
        key(
            "points",
            "How many frequencies, in equal ratios.",
            Holds::Count { min: 2, max: 5000 },
            Default("400"),
        ),
        DAMPING,
        RESPONSE_MODES,
    ],
};

const DAMPING: KeySpec = quantity(
    "damping",
    "Damping ratio of every mode.",
    (Kind::Ratio, Bounds::Between(0.0, 0.99)),
    Default("0.02"),
);

const RESPONSE_MODES: KeySpec = key(
    "modes",
    "Modes that answer; what they leave answers as at rest.",
    Holds::Count { min: 1, max: 100 },
    Default("20"),
);

static SPAN: TableSpec = TableSpec {
    name: "span",
    meaning: "A length of beam of one section or one taper.",
    keys: &[
        quantity("length", "Length.", (Kind::Length, Positive), Required),
        key("section", "Its section, at its start if it tapers.", Holds::Table(&SECTION), Required),
        key(
            "end_section",
            "Section at its end, of the same shape, to which every dimension goes evenly; the same all along if left out.",
            Holds::Table(&SECTION),
            Optional,
        ),
        key("material", "Its material; that of the file if left out.", Holds::Table(&MATERIAL), Optional),
        quantity(
            "foundation",
            "Foundation modulus under it: force per length and deflection, such as \"50 MPa\" or \"2000 lbf/in/in\".",
            (Kind::Stress, NonNegative),
            Default("\"0 MPa\""),
        ),
    ],
};

/// A section of a beam.
pub(crate) static SECTION: TableSpec = TableSpec {
    name: "section",
    meaning: "A section: a shape with its sizes, an outline, or its values.",
    keys: &[
        key("shape", "What it is.", SHAPES, Required),
        STANDARD_SIZE,
        size("od", "Outside diameter of a round tube."),
        size("wall", "Wall of a round tube or a box."),
        size("diameter", "Diameter of a round bar."),
        size("height", "Height of a box, angle, channel or tee."),
        size("width", "Width of the same, or of a flat, which lies."),
        size("thickness", "Thickness of a flat or of an angle's legs."),
        size("web", "Thickness of a channel's web or of a tee's stem."),
        size("flange", "Thickness of the flanges."),
        quantity(
            "corner_radius",
            "Outside radius of a box's corners; none if left out.",
            (Kind::Length, NonNegative),
            Optional,
        ),
        ROOT_RADIUS,
        TOE_RADIUS,
        key(
            "corners",
            "Corners of an outline, counter-clockwise: forward, then up.",
            Holds::Corners,
            Optional,
        ),
        key("hole", "Holes in that outline.", Holds::Tables(&HOLE), Optional),
        quantity(
            "second_moment",
            "Second moment of area that resists bending.",
            (Kind::SecondMoment, Positive),
            Optional,
        ),
        quantity("area", "Area; only shear and mass need it.", (Kind::Area, Positive), Optional),
        quantity(
            "shear_coefficient",
            "Share of the area that carries shear; all of it if left out.",
            (Kind::Ratio, Positive),
            Optional,
        ),
        size("depth", "Depth, for stress, half of it above the centroid."),
    ],
};

const SHAPES: Holds = Holds::Choice(&[
    Word { word: "round-tube", meaning: "a round tube: `od`, `wall`" },
    Word { word: "round-bar", meaning: "a solid round bar: `diameter`" },
    Word { word: "box", meaning: "a rectangular tube: `width`, `height`, `wall`" },
    Word { word: "flat", meaning: "a flat bar that lies: `width`, `thickness`" },
    Word { word: "angle", meaning: "an angle, a leg up, held against turning aside" },
    Word { word: "channel", meaning: "a channel, as a catalogue draws it" },
    Word { word: "tee", meaning: "a tee, its stem down" },
    Word { word: "outline", meaning: "an outline by its `corners`" },
    Word {
        word: "values",
        meaning: "`second_moment`, and `area`, `shear_coefficient`, `depth` where they are needed",
    },
]);

const fn place(meaning: &'static str) -> KeySpec {
    quantity("at", meaning, (Kind::Length, Any), Required)
}

static SUPPORT: TableSpec = TableSpec {
    name: "support",
    meaning: "What holds the beam at a place.",
    keys: &[
        place("Where, from the start of the beam."),
        key(
            "kind",
            "How it holds.",
            Holds::Choice(&[
                Word { word: "fixed", meaning: "height and slope are held" },
                Word { word: "pinned", meaning: "the height is held" },
                Word { word: "sliding", meaning: "the slope is held, the beam slides up and down" },
                Word { word: "elastic", meaning: "springs of `stiffness`, `turning_stiffness` or both" },
                Word { word: "stop-below", meaning: "pushes up once its `gap` is closed" },
                Word { word: "stop-above", meaning: "pushes down once its `gap` is closed" },
            ]),
            Required,
        ),
        quantity(
            "stiffness",
            "Stiffness up and down of an elastic support or of a stop, which is rigid without one.",
            (Kind::Stiffness, Positive),
            Optional,
        ),
        quantity(
            "turning_stiffness",
            "Stiffness against turning of an elastic or pinned support; none if left out.",
            (Kind::RotationalStiffness, NonNegative),
            Optional,
        ),
        quantity("settlement", "How far it has moved up; negative for down.", (Kind::Length, Any), Optional),
        quantity("rotation", "How far a fixed or sliding one has turned.", (Kind::Angle, Any), Optional),
        quantity(
            "gap",
            "Gap of a stop under no load; it lies on if left out.",
            (Kind::Length, NonNegative),
            Optional,
        ),
    ],
};

static LOAD: TableSpec = TableSpec {
    name: "load",
    meaning: "What loads the beam, upward if positive.",
    keys: &[
        key(
            "kind",
            "What it is.",
            Holds::Choice(&[
                Word { word: "force", meaning: "a `force` at a place" },
                Word { word: "moment", meaning: "a `moment` at a place" },
                Word {
                    word: "distributed",
                    meaning: "a load `per_length`, going evenly to `end_per_length`",
                },
                Word { word: "thermal", meaning: "a `temperature_difference` through the `depth`" },
                Word { word: "weight", meaning: "the beam's own weight" },
            ]),
            Required,
        ),
        quantity("at", "Where a force or a moment acts.", (Kind::Length, Any), Optional),
        quantity(
            "from",
            "Where it begins; at the start of the beam if left out.",
            (Kind::Length, Any),
            Optional,
        ),
        quantity("to", "Where it ends; at the end of the beam if left out.", (Kind::Length, Any), Optional),
        key("force", "Upward force; negative for down.", Holds::Load { bounds: Any }, Optional),
        quantity(
            "moment",
            "Moment, positive where it makes the beam rise along it.",
            (Kind::Moment, Any),
            Optional,
        ),
        quantity(
            "per_length",
            "Upward load per length, at its start, such as \"-2 kN/m\"; negative for down.",
            (Kind::Stiffness, Any),
            Optional,
        ),
        quantity(
            "end_per_length",
            "The same at its end; as at its start if left out.",
            (Kind::Stiffness, Any),
            Optional,
        ),
        key(
            "temperature_difference",
            "How much hotter the bottom is than the top, in degrees Celsius, a plain number.",
            Holds::Number { bounds: Any },
            Optional,
        ),
        key(
            "expansion",
            "Thermal expansion for a degree Celsius, a plain number (default: carbon steel, EN 1993-1-1:2005, 3.2.6, from memory).",
            Holds::Number { bounds: Positive },
            Default("12e-6"),
        ),
        size("depth", "Depth over which the temperature goes evenly; that of the section if left out."),
    ],
};

static MASS: TableSpec = TableSpec {
    name: "mass",
    meaning: "A mass on the beam, for its modes.",
    keys: &[
        place("Where, from the start of the beam."),
        quantity("mass", "Mass.", (Kind::Mass, NonNegative), Required),
        size("radius_of_gyration", "Radius of gyration about the axis of bending; a point mass if left out."),
    ],
};

static CHECK: TableSpec = TableSpec {
    name: "check",
    meaning: "A value that is expected: one of `deflection` to `root`, at a place or of a mode.",
    keys: &[
        key("name", "What it is called.", Holds::Text, Required),
        key("case", "Name of the textbook case that it is.", Holds::Text, Optional),
        quantity("at", "Where; the largest along the beam if left out.", (Kind::Length, Any), Optional),
        key("mode", "Number of an elastic mode.", Holds::Count { min: 1, max: 50 }, Optional),
        quantity("deflection", "Upward deflection.", (Kind::Length, Any), Optional),
        quantity("slope", "Slope of the section.", (Kind::Angle, Any), Optional),
        quantity("shear", "Sum of the upward forces before the place.", (Kind::Force, Any), Optional),
        quantity("moment", "Bending moment, positive with the ends up.", (Kind::Moment, Any), Optional),
        quantity(
            "stress",
            "Bending stress of the farther fiber, tension positive.",
            (Kind::Stress, Any),
            Optional,
        ),
        quantity("reaction", "Upward force of the support at the place.", (Kind::Force, Any), Optional),
        quantity("reaction_moment", "Moment of the support at the place.", (Kind::Moment, Any), Optional),
        quantity("frequency", "Natural frequency of the mode.", (Kind::Frequency, Any), Optional),
        key(
            "root",
            "Frequency parameter of the mode, √(2 π f L² √(ρ A/(E I))), a plain number.",
            Holds::Number { bounds: Any },
            Optional,
        ),
        quantity("tolerance", "Relative error that is accepted.", (Kind::Ratio, Positive), Default("1e-6")),
        key("source", "Where the expected value comes from.", Holds::Text, Required),
    ],
};
