//! Shear centers and torsion of thin-walled sections.

use std::f64::consts::PI;

use axlebow_sections::{ThinWalled, ThinWalledTorsion, Wall};

use crate::case::{Basis, Case, Compute, Provenance, Tolerance};
use crate::text;

const GERE: &str = "J. M. Gere & B. J. Goodno, Mechanics of Materials, 8th ed. 2013, ch. 6 (shear centers of thin-walled \
     open sections); formula from memory, its number recomputed";
const BREDT: &str = "R. Bredt 1896, as in A. P. Boresi & R. J. Schmidt, Advanced Mechanics of Materials, 6th ed. \
     2003, ch. 6; formula from memory, its number recomputed";
const VLASOV: &str = "V. Z. Vlasov, Thin-Walled Elastic Beams, 2nd ed. 1961; formula for the channel as in the AISC \
     Torsion Design Guide; from memory, its number recomputed";

const CHANNEL: &str = "b = 60 mm, t_f = 6 mm, h = 120 mm, t_w = 4 mm (midlines)";
const ANGLE: &str = "legs 80 mm by 5 mm and 50 mm by 7 mm";

/// The cases.
pub(crate) const CASES: &[Case] = &[
    // e = 3 b² tf/(h tw + 6 b tf) with b = 60, tf = 6, h = 120, tw = 4: 64 800/2640.
    thin(
        "shear_center_matches_gere_goodno_chapter_6_channel",
        "shear center behind the web",
        ["e = 3 b² t_f/(h t_w + 6 b t_f)", CHANNEL],
        64_800.0 / 2640.0,
        || Ok(-channel()?.shear_center[0]),
    ),
    // Cw = tf b³ h²/12 (3 b tf + 2 h tw)/(6 b tf + h tw).
    thin(
        "warping_constant_matches_vlasov_channel",
        "warping constant of a channel",
        ["C_w = t_f b³ h²/12 (3 b t_f + 2 h t_w)/(6 b t_f + h t_w)", CHANNEL],
        6.0 * 216_000.0 * 14_400.0 / 12.0 * 2040.0 / 2640.0,
        || Ok(channel()?.warping_constant),
    )
    .measured_in("mm⁶")
    .sourced(VLASOV),
    thin(
        "shear_center_x_matches_gere_goodno_chapter_6_angle",
        "shear center from the corner along X, plus 1",
        ["1 + e_x, e_x = 0 where the legs meet", ANGLE],
        1.0,
        || Ok(1.0 + angle()?.shear_center[0]),
    ),
    thin(
        "shear_center_z_matches_gere_goodno_chapter_6_angle",
        "shear center from the corner along Z, plus 1",
        ["1 + e_z, e_z = 0 where the legs meet", ANGLE],
        1.0,
        || Ok(1.0 + angle()?.shear_center[1]),
    ),
    thin(
        "shear_center_matches_gere_goodno_chapter_6_half_circle",
        "shear center from the center of a half circle",
        ["e = 4 R/π", "R = 50 mm, t = 2 mm"],
        200.0 / PI,
        || Ok(half_circle()?.shear_center[1]),
    ),
    thin(
        "cell_constant_matches_bredt_1896_tube_50_by_2",
        "torsion constant of a thin tube",
        ["J = 2 π R³ t", "R = 50 mm, t = 2 mm"],
        500_000.0 * PI,
        || Ok(tube()?.cell_constant),
    )
    .measured_in("mm⁴")
    .sourced(BREDT),
    thin(
        "cell_constant_matches_bredt_1896_two_cells",
        "torsion constant of two unequal cells",
        [
            "J = 2 Σ A_i q_i, 2 A_i = q_i ∮ds/t − q_j s_ij/t",
            "cells 100 mm by 80 mm and 60 mm by 80 mm (midlines), t = 4 mm",
        ],
        323_584_000.0 / 59.0,
        || Ok(two_cells()?.cell_constant),
    )
    .measured_in("mm⁴")
    .sourced(BREDT),
];

const fn thin(
    id: &'static str,
    quantity: &'static str,
    basis: Basis,
    reference: f64,
    computed: Compute,
) -> Case {
    let [formula, inputs] = basis;
    let tolerance = Tolerance::Relative { share: 1e-9, reason: None };
    Case {
        id,
        topic: "thin-walled section",
        quantity,
        unit: "mm",
        source: GERE,
        formula,
        inputs,
        provenance: Provenance::ClosedForm,
        reference,
        tolerance,
        computed,
        difference: None,
    }
}

fn torsion(joints: &[[f64; 2]], walls: Vec<Wall>) -> Result<ThinWalledTorsion, String> {
    Ok(ThinWalled::new(joints, walls).map_err(text)?.torsion())
}

fn wall(from: usize, to: usize, thickness: f64) -> Wall {
    Wall { from, to, turn: 0.0, thickness }
}

/// Flanges of 60 by 6 on a web of 120 by 4 (mm, midlines), the web on Z, flanges forward.
fn channel() -> Result<ThinWalledTorsion, String> {
    let joints = [[60.0, -60.0], [0.0, -60.0], [0.0, 60.0], [60.0, 60.0]];
    torsion(&joints, vec![wall(0, 1, 6.0), wall(1, 2, 4.0), wall(2, 3, 6.0)])
}

/// Legs of 80 by 5 and 50 by 7 (mm), the corner at the origin.
fn angle() -> Result<ThinWalledTorsion, String> {
    torsion(&[[80.0, 0.0], [0.0, 0.0], [0.0, 50.0]], vec![wall(0, 1, 5.0), wall(1, 2, 7.0)])
}

/// The upper half of a circle of radius 50 (mm).
fn half_circle() -> Result<ThinWalledTorsion, String> {
    torsion(&[[50.0, 0.0], [-50.0, 0.0]], vec![Wall { turn: PI, ..wall(0, 1, 2.0) }])
}

/// A circle of radius 50 with a wall of 2 (mm).
fn tube() -> Result<ThinWalledTorsion, String> {
    let walls = vec![Wall { turn: PI, ..wall(0, 1, 2.0) }, Wall { turn: PI, ..wall(1, 0, 2.0) }];
    torsion(&[[50.0, 0.0], [-50.0, 0.0]], walls)
}

/// Cells of 100 by 80 and 60 by 80 (mm, midlines), wall 4, with a wall of 4 between them.
fn two_cells() -> Result<ThinWalledTorsion, String> {
    let joints = [[0.0, 0.0], [100.0, 0.0], [160.0, 0.0], [160.0, 80.0], [100.0, 80.0], [0.0, 80.0]];
    let mut walls: Vec<Wall> = (0..6).map(|i| wall(i, (i + 1) % 6, 4.0)).collect();
    walls.push(wall(1, 4, 4.0));
    torsion(&joints, walls)
}
