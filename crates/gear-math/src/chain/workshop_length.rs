//! Two sums for chain length that circulate in workshops, to set beside the geometry.

use crate::chain::two_sprocket::TwoSprocketDrive;

/// Millimetres in the international inch, exact by its definition of 1959.
const MM_PER_INCH: f64 = 25.4;

impl TwoSprocketDrive {
    /// Chain length in inches, two links spare included, by the sum used with inches.
    ///
    /// # Formula
    /// 2C + F/4 + R/4 + 0.01275 (F − R)²/C + 1, with centre distance C in inches and teeth F and R. Source:
    /// trade formula, common practice, known only as quoted in a workshop forum in 2005. Its square term is twice what geometry gives.
    #[must_use]
    pub fn workshop_inches(&self) -> f64 {
        let [r, f] = self.teeth();
        let centres = self.centres_mm() / MM_PER_INCH;
        2.0 * centres + (f + r) / 4.0 + 0.01275 * (f - r).powi(2) / centres + 1.0
    }

    /// Chain length in links, two links spare included, by the sum used with millimetres.
    ///
    /// # Formula
    /// 0.157 C + F/2 + R/2 + 2, with centre distance C in millimetres and teeth F and R. Source: the same
    /// forum thread. It leaves the square term out, which costs up to 0.25 link in big ring with largest
    /// sprocket, and far more in gears that no chain should be measured in.
    #[must_use]
    pub fn workshop_links(&self) -> f64 {
        let [r, f] = self.teeth();
        0.157 * self.centres_mm() + (f + r) / 2.0 + 2.0
    }
}
