//! Questions of a guided start, and how to measure what they ask for.

use axlebow_model::GuidedQuestion;

/// A question in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GuidedWords {
    /// What it asks for, two or three words.
    pub name: &'static str,
    /// The question.
    pub prompt: &'static str,
    /// How to measure it.
    pub how: &'static str,
}

/// The words of a question about a trailer axle or a drive axle.
pub fn guided_words(question: GuidedQuestion, is_drive: bool) -> GuidedWords {
    let (name, prompt, how) = match question {
        GuidedQuestion::AxleKind => ("kind of axle", "Trailer axle or drive axle?", KIND),
        GuidedQuestion::Tires => {
            ("tires", "Tires: dual, wide-base, single, or the size on the sidewall?", TIRES)
        }
        GuidedQuestion::WheelOffset => (
            "wheel offset",
            "How far does the middle of the tire (of duals: of the pair) lie outboard of the face that the wheel is bolted to?",
            OFFSET,
        ),
        GuidedQuestion::TireMiddles => (
            "distance between tire middles",
            "Distance between the middles of the left and the right tire (of duals: of the pairs)?",
            MIDDLES,
        ),
        GuidedQuestion::SpringSeats => {
            ("distance between spring seats", "Distance between the middles of the two spring seats?", SEATS)
        }
        GuidedQuestion::OutsideSize if is_drive => {
            ("outside size", "Outside height x width of the housing beside the spring seat?", HOUSING)
        }
        GuidedQuestion::OutsideSize => ("outside size", "Outside diameter of the tube?", TUBE),
        GuidedQuestion::Wall => ("wall thickness", "Wall thickness, if you know it?", WALL),
        GuidedQuestion::AxleLoad => ("axle load", "Load of this axle on the road, both ends together?", LOAD),
    };
    GuidedWords { name, prompt, how }
}

const KIND: &str = "A trailer axle is a plain tube with a spindle at each end. A drive axle is a housing with the differential in a \
                    wide bowl in its middle.\nAnswer: trailer or drive.";

const TIRES: &str = "Dual: two tires side by side at each end. Wide-base: one wide tire in the place of two. Single: one tire of \
                     ordinary width.\nAnswer: the word, the size as the sidewall has it (295/75R22.5, 445/50R22.5, 11R22.5), or \
                     both: single 11R22.5.";

const OFFSET: &str = "Seen from the rear, the left wheel, the hub's face on the disc's right:\n\n    \
                      outboard  |<--------- tire --------->|  inboard\n              \
                      |<---- depth ---->[disc]hub\n\n\
                      Lay a straightedge across the outboard sidewall where it bulges most. Measure the depth from it in to the \
                      disc, beside the wheel nuts; add the thickness of the disc; take off half of the tire's width.\n\
                      Above zero, the tire's middle is outboard: answer 2 in, or outset 2 in. Below zero: inset 2 in. Middle \
                      at the face, as with most duals: 0.";

const MIDDLES: &str = "On the ground, from the outer edge of the left tread to the inner edge of the right tread: with like tires \
                       that is the distance between their middles. With duals, from the outer edge of the left pair to the inner \
                       edge of the right pair.\nAnswer: 77.5 in, 6' 5-1/2\" or 1968 mm.";

const SEATS: &str = "Where springs or arms sit on the axle: from the inner edge of the left seat to the outer edge of the right \
                     seat, which is the distance between their middles.\nAnswer: 38 in or 965 mm.";

const TUBE: &str = "Calipers across a clean stretch beside a seat; or a tape once round it, divided by 3.1416.\nAnswer: 5 in, \
                    5-3/4 in or 127 mm.";

const HOUSING: &str = "Calipers, or two straightedges and a tape, on the arm between the bowl and the wheel, beside the spring \
                       seat: top to bottom, then front to rear.\nAnswer: 5-1/8 in x 4-1/2 in, or the height by itself.";

const WALL: &str = "A tape cannot reach it. An ultrasonic thickness gauge on bare metal reads it in a minute; the axle maker's \
                    drawing or data plate may state it. It decides the answer like little else: leave it typical rather than \
                    guess, and results say so.\nAnswer: 5/8 in or 15.9 mm.";

const LOAD: &str = "From a scale ticket of this axle under its usual load, or the rating on its plate; not of a whole tandem.\n\
                    Answer: 20000 lb, 9 t or 89 kN.";
