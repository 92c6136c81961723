//! Elevations in a row: climbed, between two, and smoothed so that gradients mean something.

use crate::course::quantity::SmoothingLength;
use core::f64::consts::PI;

/// Smooths evenly spaced elevations with the Whittaker smoother of second order.
///
/// It returns the curve `z` that makes Σ(y − z)² + λ Σ(Δ²z)² least. A straight slope is left as it is, up to both
/// ends. A long wave keeps its height, a short one loses it; one of the smoothing length keeps exactly half.
///
/// # Formula
/// Gain of a wave of wavelength L on points `d` apart: 1 ÷ (1 + λ (2 sin(πd/L))⁴), hence
/// λ = (2 sin(πd/L½))⁻⁴ for the smoothing length L½. Whittaker (1923), *Proc. Edinburgh Math. Soc.* 41:63–75;
/// Eilers (2003), *Anal. Chem.* 75:3631–3636. The gain follows from the normal equations far from the ends.
pub(in crate::course) fn smoothed(elevations: &[f64], spacing_m: f64, length: SmoothingLength) -> Vec<f64> {
    if elevations.len() < 3 {
        return elevations.to_vec();
    }
    let lambda = (2.0 * (PI * spacing_m / length.m()).sin()).powi(-4);
    let start = elevations[0];
    let levelled: Vec<f64> = elevations.iter().map(|height| height - start).collect();
    penalised_least_squares(&levelled, lambda).into_iter().map(|height| height + start).collect()
}

/// Height climbed from one to the next, descents not counted.
pub(in crate::course) fn climb_m(heights: impl Iterator<Item = f64>) -> f64 {
    let (climb, _) = heights
        .fold((0.0, f64::INFINITY), |(climb, last), height| (climb + f64::max(height - last, 0.0), height));
    climb
}

/// Height at `at_m`, straight between its neighbours and level beyond the ends.
pub(in crate::course) fn interpolated(known: &[(f64, f64)], at_m: f64) -> f64 {
    let end = known.partition_point(|&(at, _)| at < at_m).clamp(1, known.len() - 1);
    let ((a, low), (b, high)) = (known[end - 1], known[end]);
    low + ((at_m - a) / (b - a)).clamp(0.0, 1.0) * (high - low)
}

/// Solves (I + λ D₂ᵀD₂) z = y, D₂ the second differences, by LDLᵀ of the five-banded matrix.
fn penalised_least_squares(y: &[f64], lambda: f64) -> Vec<f64> {
    let n = y.len();
    let (mut pivots, mut near, mut far) = (vec![0.0; n], vec![0.0; n], vec![0.0; n]);
    let mut z = y.to_vec();
    for i in 0..n {
        let (diagonal, first, second) = penalty_row(i, n);
        let (one, two) = (back(&near, i, 1), back(&far, i, 2));
        let (pivot_1, pivot_2) = (back(&pivots, i, 1), back(&pivots, i, 2));
        let far_1 = back(&far, i, 1);
        pivots[i] = 1.0 + lambda * diagonal - pivot_1 * one * one - pivot_2 * two * two;
        near[i] = (lambda * first - pivot_1 * one * far_1) / pivots[i];
        far[i] = lambda * second / pivots[i];
        z[i] -= one * back(&z, i, 1) + two * back(&z, i, 2);
    }
    for i in (0..n).rev() {
        let ahead = |steps: usize| z.get(i + steps).copied().unwrap_or(0.0);
        z[i] = z[i] / pivots[i] - near[i] * ahead(1) - far[i] * ahead(2);
    }
    z
}

fn back(values: &[f64], i: usize, steps: usize) -> f64 {
    i.checked_sub(steps).map_or(0.0, |at| values[at])
}

/// Row `i` of D₂ᵀD₂: its diagonal and the two entries to the right of it.
fn penalty_row(i: usize, n: usize) -> (f64, f64, f64) {
    const STENCIL: [f64; 3] = [1.0, -2.0, 1.0];
    let rows = i.saturating_sub(2)..(i + 1).min(n - 2);
    rows.fold((0.0, 0.0, 0.0), |sum, row| {
        let weight = |column: usize| STENCIL.get(column - row).copied().unwrap_or(0.0);
        let here = weight(i);
        (sum.0 + here * here, sum.1 + here * weight(i + 1), sum.2 + here * weight(i + 2))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(m: f64) -> SmoothingLength {
        SmoothingLength::new(m).unwrap()
    }

    #[test]
    fn a_straight_slope_stays() {
        let slope: Vec<f64> = (0..200).map(|i| 812.0 + 0.3 * f64::from(i)).collect();
        for (before, after) in slope.iter().zip(smoothed(&slope, 2.0, length(80.0))) {
            assert!((before - after).abs() < 1e-8, "{before} became {after}");
        }
    }

    #[test]
    fn a_wave_of_the_smoothing_length_keeps_half_its_height() {
        let wave = |wavelength: f64| -> Vec<f64> {
            (0..2000).map(|i| (2.0 * PI * f64::from(i) * 2.0 / wavelength).cos()).collect()
        };
        for (wavelength, gain) in [(40.0, 0.5), (80.0, 1.0 / (1.0 + 1.0 / 16.0)), (20.0, 1.0 / 17.0)] {
            let middle = smoothed(&wave(wavelength), 2.0, length(40.0));
            assert!((middle[1000] - gain).abs() < 0.01, "{wavelength} m: {}", middle[1000]);
        }
    }

    #[test]
    fn short_lists_are_left_alone() {
        for count in 0..3 {
            let heights = vec![5.0; count];
            assert_eq!(smoothed(&heights, 5.0, length(40.0)), heights);
        }
    }
}
