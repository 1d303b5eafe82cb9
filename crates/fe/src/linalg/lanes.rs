//! Vector lanes of the machine at hand.
//!
//! A kernel is written once, in plain indexed Rust, over blocks of [`LANES`] numbers. It is compiled twice:
//! for 4 lanes with fused multiply-add (AVX2), and for whatever the build targets. The choice is made when
//! the program runs, so that a plain build is fast everywhere. Registers of 8 lanes (AVX-512) were tried and
//! gained nothing: the division from pivot to pivot sets the pace.

/// Numbers in a block: two registers of 4 lanes, or one cache line.
pub(super) const LANES: usize = 8;

/// A kind of vector register that this machine has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lanes(Kind);

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Kind {
    #[cfg(target_arch = "x86_64")]
    Four,
    Plain,
}

impl Lanes {
    /// Every kind that this machine has, widest first.
    pub(super) fn available() -> impl Iterator<Item = Lanes> {
        #[cfg(target_arch = "x86_64")]
        let fast = is_x86_feature_detected!("avx2") && is_x86_feature_detected!("fma");
        #[cfg(target_arch = "x86_64")]
        let fast = fast.then_some(Kind::Four);
        #[cfg(not(target_arch = "x86_64"))]
        let fast = None;
        fast.into_iter().chain([Kind::Plain]).map(Lanes)
    }

    /// The widest kind that this machine has.
    pub(super) fn widest() -> Lanes {
        Lanes::available().next().unwrap_or(Lanes(Kind::Plain))
    }

    /// What was found; only [`Lanes::available`] makes values of this type.
    pub(super) fn kind(self) -> Kind {
        self.0
    }
}

/// Whether the build itself targets a machine with fused multiply-add.
pub(super) const PLAIN_FUSED: bool = cfg!(any(target_feature = "fma", target_arch = "aarch64"));

/// a·b + c, in one rounding where the machine has it (a call to a library function would be slow).
#[inline(always)]
pub(super) fn multiply_add<const FUSED: bool>(a: f64, b: f64, c: f64) -> f64 {
    if FUSED { a.mul_add(b, c) } else { a * b + c }
}

/// The block of numbers that starts at a place.
#[inline(always)]
pub(super) fn block(values: &[f64], start: usize) -> [f64; LANES] {
    let mut block = [0.0; LANES];
    block.copy_from_slice(&values[start..start + LANES]);
    block
}

/// Compiles `kernel::<FUSED>(arguments)`, or `kernel::<FUSED, SIZE>`, for each kind of lanes and calls the one
/// asked for.
macro_rules! for_lanes {
    ($(#[$doc:meta])* fn $name:ident($($argument:ident: $kind:ty),*) -> $result:ty = $kernel:ident $([$size:expr])?) => {
        $(#[$doc])*
        pub(super) fn $name(lanes: $crate::linalg::lanes::Lanes, $($argument: $kind),*) -> $result {
            use $crate::linalg::lanes::{Kind, PLAIN_FUSED};
            #[cfg(target_arch = "x86_64")]
            #[target_feature(enable = "avx2,fma")]
            fn four($($argument: $kind),*) -> $result {
                $kernel::<true $(, { $size })?>($($argument),*)
            }
            match lanes.kind() {
                // SAFETY: a value of `Lanes` exists only for features found on this machine.
                #[cfg(target_arch = "x86_64")]
                Kind::Four => unsafe { four($($argument),*) },
                Kind::Plain => $kernel::<PLAIN_FUSED $(, { $size })?>($($argument),*),
            }
        }
    };
}
pub(super) use for_lanes;

/// Runs a body with the half-bandwidth as a constant for the widths that chains of six-freedom stations
/// have, so that the compiler can unroll it.
macro_rules! for_width {
    ($value:expr, |$width:ident| $body:expr) => {
        match $value {
            5 => for_width!(@constant 5, $width, $body),
            11 => for_width!(@constant 11, $width, $body),
            17 => for_width!(@constant 17, $width, $body),
            23 => for_width!(@constant 23, $width, $body),
            $width => $body,
        }
    };
    (@constant $value:literal, $width:ident, $body:expr) => {{
        let $width: usize = $value;
        $body
    }};
}
pub(super) use for_width;
