//! How far parts may be from what welds well.

/// Widest gap under a foot that a fillet may bridge, m: 3/16 in (AWS D1.1, fit-up of fillet welds, from memory).
pub const LARGEST_ROOT_OPENING: f64 = 0.1875 * 0.0254;

/// How far the elastic modulus and the density of two metals may differ that are welded to each other, as a share.
///
/// Steels lie within it of one another (190 to 215 GPa, 7.7 to 8.1 t/m³, from memory); cast iron, aluminium, copper and
/// titanium do not. Common practice, no source.
pub(crate) const ALIKE: f64 = 0.1;
