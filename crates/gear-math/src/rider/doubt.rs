//! How far each input of the band may be off.

use crate::rider::quantity::RollingCoefficient;

/// Gross efficiency, in points up and down: Moseley & Jeukendrup (2001, *Med Sci Sports Exerc* 33:621–627) found 0.198
/// in trained men, others up to 0.25.
pub(crate) const EFFICIENCY: f64 = 0.02;
impl RollingCoefficient {
    /// What the coefficient of a ground off the road may be off by, up or down, as a share. Estimate, because hardly
    /// anything refereed was measured off the road.
    pub const OFF_BY: f64 = 0.3;
}

/// Rolling coefficient, as factors.
pub(crate) const ROLLING: [f64; 2] = [1.0 - RollingCoefficient::OFF_BY, 1.0 + RollingCoefficient::OFF_BY];
/// Carried load factor, in points down and up: a load at the trunk to one in the hands, towards Soule & Goldman (1969,
/// *J Appl Physiol* 27:687–690, from memory).
pub(crate) const LOAD: [f64; 2] = [-0.2, 0.3];
/// What the ground adds on foot, as factors. Estimate, because what was measured is sand and swamp, not a course.
pub(crate) const GROUND: [f64; 2] = [0.5, 1.5];
/// One person's cost on foot, as factors: about the standard deviation between the ten runners of Minetti et al.
/// (2002, *J Appl Physiol* 93:1039–1046).
pub(crate) const PERSON: [f64; 2] = [0.92, 1.08];
