//! Forces and motions at places of a straight line along Y.

/// Force (N) and moment (N m) at a place: x y z each.
pub(crate) type Wrench = [f64; 6];

/// Displacement (m) and rotation (rad) of a place: x y z each.
pub(crate) type Motion = [f64; 6];

/// The same force seen from a place that lies `by` farther to the left.
#[inline]
pub(crate) fn moved(mut wrench: Wrench, by: f64) -> Wrench {
    wrench[3] -= by * wrench[2];
    wrench[5] += by * wrench[0];
    wrench
}

/// Motion of a point that lies `by` farther to the left and moves rigidly with the place.
#[inline]
pub(crate) fn carried(mut motion: Motion, by: f64) -> Motion {
    motion[0] -= by * motion[5];
    motion[2] += by * motion[3];
    motion
}

#[inline]
pub(crate) fn add(sum: &mut [f64; 6], other: &[f64; 6]) {
    sum.iter_mut().zip(other).for_each(|(a, b)| *a += b);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_force_does_the_same_work_wherever_it_is_seen_from() {
        let (wrench, motion) = ([1.0, -2.0, 3.0, 0.5, 0.7, -0.4], [0.3, 0.1, -0.2, 0.9, 0.4, 1.1]);
        let work =
            |wrench: Wrench, motion: Motion| wrench.iter().zip(motion).map(|(f, u)| f * u).sum::<f64>();
        let away = work(moved(wrench, 0.7), carried(motion, 0.7));
        assert!((work(wrench, motion) - away).abs() < 1e-14);
    }
}
