//! Torsion and shear flow: of thin walls by circulation, of any section by triangles.

pub(crate) mod saint_venant;
pub(crate) mod scalar_system;
pub(crate) mod shear_center;
pub(crate) mod thin_walled;
pub(crate) mod triangulation;
