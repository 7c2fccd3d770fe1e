//! The quantile of the normal distribution that belongs to a two-sided level.

use std::f64::consts::SQRT_2;

use statrs::function::erf::{erf_inv, erfc_inv};

/// The z with `level` of a normal distribution between −z and z; `None` unless 0 < level < 1.
///
/// A wide level is inverted through its tail, which keeps digits that `1 − (1 − level)` would lose.
pub fn two_sided(level: f64) -> Option<f64> {
    if !(level > 0.0 && level < 1.0) {
        return None;
    }
    Some(SQRT_2 * if level < 0.5 { erf_inv(level) } else { erfc_inv(1.0 - level) })
}

#[cfg(test)]
mod tests {
    use super::two_sided;

    /// Values computed to thirty digits with mpmath 1.4: sqrt(2)·erfinv(level), the level taken
    /// as the double it is.
    #[test]
    fn the_quantile_is_good_to_twelve_digits() {
        for (level, z) in [
            (1e-300, 1.2533141373155002e-300),
            (1e-12, 1.2533141373155002e-12),
            (0.001, 0.0012533144654325546),
            (0.01, 0.012533469508069264),
            (0.1, 0.12566134685507405),
            (0.25, 0.31863936396437514),
            (0.4999, 0.6743324152899515),
            (0.5, 0.6744897501960817),
            (0.6827, 1.0000217133229992),
            (0.75, 1.150349380376008),
            (0.8, 1.2815515655446006),
            (0.9, 1.6448536269514729),
            (0.95, 1.9599639845400538),
            (0.98, 2.3263478740408408),
            (0.99, 2.5758293035489004),
            (0.999, 3.2905267314918945),
            (0.9999, 3.890591886413121),
            (0.999999, 4.891638475692932),
            (0.999999999, 6.109410209383449),
            (0.999999999999, 7.130509892879273),
            (0.9999999999999999, 8.292361075813595),
        ] {
            let got = two_sided(level).expect("a level");
            assert!((got - z).abs() <= 1e-12 * z.max(1.0), "level {level}: {got} or {z}");
        }
    }
}
