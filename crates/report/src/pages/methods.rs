//! What the numbers rest on: equations, elements, integrators, error control and the checks, to be cited.

use super::textbook::textbook;
use crate::TextbookRow;
use crate::page::{Block, Page};

/// Heading and paragraphs of each part of the methods.
const METHODS: [(&str, &[&str]); 7] = [
    (
        "Axes and signs",
        &[
            "X forward, Y to the left, Z up (ISO 8855). Camber is positive with the top leaning outward, toe is positive toe-in; \
             both are printed in words where they are results. SI inside; units of files and outputs are converted at the border.",
        ],
    ),
    (
        "Beams",
        &[
            "Axle, spindles and stiffeners are straight two-node members of bending, shear, axial force and torsion (S. P. \
             Timoshenko). The stiffness of a member is the inverse of its flexibility with one end held, whose integrals are closed \
             where the section is uniform and taken by Gauss-Legendre quadrature where it varies, so that nodal values are exact \
             under end and line loads. Shear coefficients: G. R. Cowper, J. Appl. Mech. 33 (1966) 335-340. Masses are consistent, \
             with rotary inertia (Z. Friedman, J. B. Kosmatka, Comput. Struct. 47 (1993) 473-481). Parts that are stiff against \
             them are rigid arms without penalty.",
            "Sections of any outline are integrated exactly (Green's theorem over lines and arcs); torsion and shear flow of \
             composite sections are solved on six-node triangles, of thin walls on their midlines.",
        ],
    ),
    (
        "Shells",
        &[
            "The wall at a seat is a mesh of four-node shells with sheared edges tied (E. N. Dvorkin, K.-J. Bathe, Eng. Comput. 1 \
             (1984) 77-88) and enhanced membrane strains (J. C. Simo, M. S. Rifai, Int. J. Numer. Methods Eng. 29 (1990) 1595-1638). \
             It gives the compliance of the seat, hot-spot stresses by IIW extrapolation, and local buckling as a linear \
             eigenvalue problem.",
        ],
    ),
    (
        "Road contact at rest",
        &[
            "Each tire is a spring that only pushes; heave and roll of the body, side forces and the shape of the road close the \
             equations. Bearings with play press where they lie against their cup. What touches is found by changing one \
             contact at a time until all agree.",
        ],
    ),
    (
        "Motion",
        &[
            "Natural modes: block Lanczos with a Sturm count that shows none is missed; elements are halved until no frequency \
             moves by 0.1 %. Rides: the generalized-alpha method (J. Chung, G. M. Hulbert, J. Appl. Mech. 60 (1993) 371-375), Newton's \
             method on the few forces that are not linear, steps halved where a contact opens or closes and where Newton's method \
             does not converge; the drift of energy is watched. A reduced basis holds all modes to 150 Hz and the static answers of \
             every force. Frequency responses solve each frequency directly. Hysteresis is viscous damping of equal loss in each \
             mode (E. E. Ungar, E. M. Kerwin, J. Acoust. Soc. Am. 34 (1962) 954-957).",
        ],
    ),
    (
        "Tire face",
        &[
            "Ribs are one-sided springs under a crowned tread with a sidewall's share; each is a brush on a rolling radius of its \
             own, all on a hub at one speed (H. B. Pacejka, Tire and Vehicle Dynamics). Wear follows the energy of scuff (A. \
             Schallamach), over a stated duty, and against the same tire upright. Waves of wear are eigenvalues of a turn's \
             feedback, held against a closed loop in time.",
        ],
    ),
    (
        "Strength and life",
        &[
            "Sections and walls by EN 1993-1-1, welds by EN 1993-1-8 and AWS practice, details by EN 1993-1-9 and IIW, cycles by ASTM \
             E1049, damage by Miner, random roads also by Dirlik, bearings by ISO 281. Clauses and values that were not at hand are \
             marked from memory where they are used.",
        ],
    ),
];

/// Methods, limits and every textbook case, as one page.
pub fn methods(rows: &[TextbookRow]) -> Page {
    let checks = textbook(rows, true);
    let mut page = Page {
        title: Some("What axlebow computes, and what holds it".to_owned()),
        subtitle: Some(format!("axlebow {}", env!("CARGO_PKG_VERSION"))),
        answer: checks.answer,
        blocks: Vec::new(),
    };
    for (heading, paragraphs) in METHODS {
        page.add(Block::heading(heading));
        page.extend(paragraphs.iter().copied().map(Block::paragraph));
    }
    page.add(Block::heading("Limits"));
    page.add(Block::List(LIMITS.map(str::to_owned).into()));
    page.add(Block::heading("Checks"));
    page.extend(checks.blocks);
    page.add(Block::heading("To cite"));
    page.add(Block::paragraph(format!(
        "axlebow {}, finite-element analysis of heavy-truck axles and of the wear of their tires; with the version, the features and the \
         commit that `axlebow --version` prints, and the hash of the model that every output carries.",
        env!("CARGO_PKG_VERSION")
    )));
    page
}

/// What the numbers leave out.
const LIMITS: [&str; 5] = [
    "Members stay straight and elastic; deflections are small. Strength says where that ends.",
    "Welds carry no residual stress beyond what their detail categories contain.",
    "The belt of a tire, temperature, wet roads and the steering of the vehicle are not in the tire face.",
    "Constants marked typical, common practice or from memory are no measurements; results name how much rests on them.",
    "These numbers support, and do not replace, the judgment of a licensed engineer.",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_names_every_part_and_every_case() {
        let rows: Vec<TextbookRow> = axlebow_textbook::cases()
            .into_iter()
            .filter(|case| case.topic.contains("Cantilever"))
            .map(TextbookRow::of)
            .collect();
        let text = methods(&rows).text();
        for (heading, _) in METHODS {
            assert!(text.contains(heading), "{heading}");
        }
        assert!(rows.iter().all(|row| text.contains(&*row.case.quantity)), "{text}");
        assert!(methods(&rows).html_alone().contains("<h1>What axlebow computes"));
    }
}
