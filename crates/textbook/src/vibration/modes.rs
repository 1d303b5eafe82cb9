//! Natural frequencies of beams without shear or rotary inertia, and with masses on their ends.

use std::f64::consts::PI;

use axlebow_fe::{Attachment, LumpedMass};

use crate::beams::beam_line::{E, bending_rigidity};
use crate::case::{Case, Compute, Provenance, Tolerance};
use crate::vibration::vibrating_line::{Bar, CANTILEVER, End, FREE, SUPPORTED, VibratingLine};

const BLEVINS: &str = "R. D. Blevins, Formulas for Dynamics, Acoustics and Vibration, Wiley 2016, Table 4.2; formula \
     from memory, its roots recomputed";
const RAO: &str = "S. S. Rao, Mechanical Vibrations, 6th ed. 2017, sec. 8.5, and Blevins 2016, beams with end \
     masses; formula from memory, its roots recomputed";
const MESH: &str = "20 elements with consistent mass: beta comes out (beta h)⁴/2880 too large, which is 6e-6 of the \
     second root and 2e-4 of the fifth";

/// Elements of every case.
const ELEMENTS: usize = 20;
/// Length (m), mass per length (kg/m) and second moment of area (m⁴ with E in Pa); the roots do not depend on them.
const L: f64 = 2.0;
const M: f64 = 30.0;
const I: f64 = 8e-6;

const FIXED: [End; 2] = [End::Clamped, End::Clamped];
const PROPPED: [End; 2] = [End::Clamped, End::Pinned];

const CANTILEVER_ROOTS: &str = "cos x cosh x = −1";
const FREE_ROOTS: &str = "cos x cosh x = 1";
const PROPPED_ROOTS: &str = "tan x = tanh x";
const SUPPORTED_ROOTS: &str = "sin x = 0";
const TIP_ROOTS: &str = "1 + cos x cosh x = μ x (sin x cosh x − cos x sinh x), μ = mass/(m L)";
const END_ROOTS: &str = "tan(x/2) + tanh(x/2) = −2 μ x, μ = mass/(m L)";

/// Inputs of a case: its own ones, and those of the bar.
macro_rules! bar {
    ($own:literal) => {
        concat!($own, "; x = β L, ω = x² √(E I/(m L⁴)), L = 2 m, m = 30 kg/m, I = 8e-6 m⁴, E = 29e6 Pa")
    };
}

/// The cases.
pub(crate) const CASES: &[Case] = &[
    first(
        "root_1_matches_blevins_table_4_2_cantilever",
        CANTILEVER_ROOTS,
        bar!("root 1"),
        1.875_104_07,
        || root(CANTILEVER, 0),
    ),
    first(
        "root_2_matches_blevins_table_4_2_cantilever",
        CANTILEVER_ROOTS,
        bar!("root 2"),
        4.694_091_13,
        || root(CANTILEVER, 1),
    ),
    higher(
        "root_3_matches_blevins_table_4_2_cantilever",
        CANTILEVER_ROOTS,
        bar!("root 3"),
        7.854_757_44,
        || root(CANTILEVER, 2),
    ),
    higher(
        "root_4_matches_blevins_table_4_2_cantilever",
        CANTILEVER_ROOTS,
        bar!("root 4"),
        10.995_540_73,
        || root(CANTILEVER, 3),
    ),
    higher(
        "root_5_matches_blevins_table_4_2_cantilever",
        CANTILEVER_ROOTS,
        bar!("root 5"),
        14.137_168_39,
        || root(CANTILEVER, 4),
    ),
    first("root_1_matches_blevins_table_4_2_free_free", FREE_ROOTS, bar!("root 1"), 4.730_040_74, || {
        root(FREE, 0)
    }),
    first("root_2_matches_blevins_table_4_2_free_free", FREE_ROOTS, bar!("root 2"), 7.853_204_62, || {
        root(FREE, 1)
    }),
    higher("root_3_matches_blevins_table_4_2_free_free", FREE_ROOTS, bar!("root 3"), 10.995_607_84, || {
        root(FREE, 2)
    }),
    higher("root_4_matches_blevins_table_4_2_free_free", FREE_ROOTS, bar!("root 4"), 14.137_165_49, || {
        root(FREE, 3)
    }),
    higher("root_5_matches_blevins_table_4_2_free_free", FREE_ROOTS, bar!("root 5"), 17.278_759_66, || {
        root(FREE, 4)
    }),
    first("root_1_matches_blevins_table_4_2_fixed_fixed", FREE_ROOTS, bar!("root 1"), 4.730_040_74, || {
        root(FIXED, 0)
    }),
    higher("root_3_matches_blevins_table_4_2_fixed_fixed", FREE_ROOTS, bar!("root 3"), 10.995_607_84, || {
        root(FIXED, 2)
    }),
    first(
        "root_1_matches_blevins_table_4_2_clamped_pinned",
        PROPPED_ROOTS,
        bar!("root 1"),
        3.926_602_31,
        || root(PROPPED, 0),
    ),
    first(
        "root_2_matches_blevins_table_4_2_clamped_pinned",
        PROPPED_ROOTS,
        bar!("root 2"),
        7.068_582_75,
        || root(PROPPED, 1),
    ),
    higher(
        "root_3_matches_blevins_table_4_2_clamped_pinned",
        PROPPED_ROOTS,
        bar!("root 3"),
        10.210_176_12,
        || root(PROPPED, 2),
    ),
    higher(
        "root_4_matches_blevins_table_4_2_clamped_pinned",
        PROPPED_ROOTS,
        bar!("root 4"),
        13.351_768_78,
        || root(PROPPED, 3),
    ),
    higher(
        "root_5_matches_blevins_table_4_2_clamped_pinned",
        PROPPED_ROOTS,
        bar!("root 5"),
        16.493_361_43,
        || root(PROPPED, 4),
    ),
    first("root_1_matches_blevins_table_4_2_supported", SUPPORTED_ROOTS, bar!("root 1"), PI, || {
        root(SUPPORTED, 0)
    }),
    first("root_2_matches_blevins_table_4_2_supported", SUPPORTED_ROOTS, bar!("root 2"), 2.0 * PI, || {
        root(SUPPORTED, 1)
    }),
    higher("root_3_matches_blevins_table_4_2_supported", SUPPORTED_ROOTS, bar!("root 3"), 3.0 * PI, || {
        root(SUPPORTED, 2)
    }),
    tip("root_1_matches_rao_section_8_5_tip_mass_0_1", bar!("root 1, μ = 0.1"), 1.722_741_52, || {
        with_tip(0.1, 0)
    }),
    tip("root_2_matches_rao_section_8_5_tip_mass_0_1", bar!("root 2, μ = 0.1"), 4.399_522_82, || {
        with_tip(0.1, 1)
    }),
    tip("root_1_matches_rao_section_8_5_tip_mass_0_5", bar!("root 1, μ = 0.5"), 1.419_964_43, || {
        with_tip(0.5, 0)
    }),
    tip("root_2_matches_rao_section_8_5_tip_mass_0_5", bar!("root 2, μ = 0.5"), 4.111_133_39, || {
        with_tip(0.5, 1)
    }),
    tip("root_1_matches_rao_section_8_5_tip_mass_1", bar!("root 1, μ = 1"), 1.247_917_41, || {
        with_tip(1.0, 0)
    }),
    tip("root_2_matches_rao_section_8_5_tip_mass_1", bar!("root 2, μ = 1"), 4.031_139_44, || {
        with_tip(1.0, 1)
    }),
    tip("root_1_matches_rao_section_8_5_tip_mass_10", bar!("root 1, μ = 10"), 0.735_781_92, || {
        with_tip(10.0, 0)
    }),
    tip("root_2_matches_rao_section_8_5_tip_mass_10", bar!("root 2, μ = 10"), 3.938_465_83, || {
        with_tip(10.0, 1)
    }),
    wheels(
        "symmetric_root_1_matches_rao_section_8_5_end_masses_0_1",
        bar!("root 1, μ = 0.1"),
        4.155_664_23,
        || with_ends(0.1, 0),
    ),
    wheels(
        "symmetric_root_2_matches_rao_section_8_5_end_masses_0_1",
        bar!("root 2, μ = 0.1"),
        10.065_679_09,
        || with_ends(0.1, 2),
    )
    .within(1e-3, MESH),
    wheels(
        "symmetric_root_1_matches_rao_section_8_5_end_masses_0_5",
        bar!("root 1, μ = 0.5"),
        3.576_830_11,
        || with_ends(0.5, 0),
    ),
    wheels(
        "symmetric_root_2_matches_rao_section_8_5_end_masses_0_5",
        bar!("root 2, μ = 0.5"),
        9.612_679_35,
        || with_ends(0.5, 2),
    )
    .within(1e-3, MESH),
    wheels(
        "symmetric_root_1_matches_rao_section_8_5_end_masses_1",
        bar!("root 1, μ = 1"),
        3.398_799_33,
        || with_ends(1.0, 0),
    ),
    wheels(
        "symmetric_root_2_matches_rao_section_8_5_end_masses_1",
        bar!("root 2, μ = 1"),
        9.524_452_16,
        || with_ends(1.0, 2),
    )
    .within(1e-3, MESH),
    wheels(
        "symmetric_root_1_matches_rao_section_8_5_end_masses_10",
        bar!("root 1, μ = 10"),
        3.172_659_19,
        || with_ends(10.0, 0),
    ),
    wheels(
        "symmetric_root_2_matches_rao_section_8_5_end_masses_10",
        bar!("root 2, μ = 10"),
        9.435_320_48,
        || with_ends(10.0, 2),
    )
    .within(1e-3, MESH),
];

const fn first(
    id: &'static str,
    formula: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    Case {
        id,
        topic: "natural frequency",
        quantity: "frequency parameter β L",
        unit: "",
        source: BLEVINS,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance: Tolerance::Relative { share: 1e-5, reason: Some(MESH) },
        computed,
        difference: None,
    }
}

const fn higher(
    id: &'static str,
    formula: &'static str,
    inputs: &'static str,
    reference: f64,
    computed: Compute,
) -> Case {
    first(id, formula, inputs, reference, computed).within(1e-3, MESH)
}

const fn tip(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    Case {
        topic: "natural frequency with a mass on the tip",
        source: RAO,
        ..first(id, TIP_ROOTS, inputs, reference, computed)
    }
}

const fn wheels(id: &'static str, inputs: &'static str, reference: f64, computed: Compute) -> Case {
    Case {
        topic: "natural frequency with a mass on each end",
        source: RAO,
        ..first(id, END_ROOTS, inputs, reference, computed)
    }
}

fn root(ends: [End; 2], mode: usize) -> Result<f64, String> {
    beta_length(&line(ends)?, mode)
}

/// Cantilever with `ratio` of the beam's mass on its tip.
fn with_tip(ratio: f64, mode: usize) -> Result<f64, String> {
    let mut line = line(CANTILEVER)?;
    let place = Attachment::at(line.nodes[ELEMENTS]);
    line.structure.add_mass(LumpedMass { place, mass: ratio * M * L });
    beta_length(&line, mode)
}

/// Free beam with `ratio` of its mass on each end: symmetric and antisymmetric modes in turn.
fn with_ends(ratio: f64, mode: usize) -> Result<f64, String> {
    let mut line = line(FREE)?;
    for node in [line.nodes[0], line.nodes[ELEMENTS]] {
        line.structure.add_mass(LumpedMass { place: Attachment::at(node), mass: ratio * M * L });
    }
    beta_length(&line, mode)
}

fn line(ends: [End; 2]) -> Result<VibratingLine, String> {
    let bar = Bar { rigidity: bending_rigidity(I), mass_per_length: M, rotary_inertia: 0.0 };
    VibratingLine::new(&bar, L, ELEMENTS, ends)
}

/// `βL = √(ω L² √(m/(E I)))`.
fn beta_length(line: &VibratingLine, mode: usize) -> Result<f64, String> {
    Ok((2.0 * PI * line.frequency(mode)? * L * L * (M / (E * I)).sqrt()).sqrt())
}
