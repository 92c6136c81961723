//! Two invented courses to try things on.

use crate::course::course::Course;
use crate::course::quantity::{CornerSpeed, ObstacleTime, StretchLength};
use crate::course::segment::{Obstacle, Segment};
use crate::rider::{Gradient, Surface};
use Surface::{DeepMud, FirmGrass, LooseSand, Mud, PackedGravel, Tarmac, WetSoftGrass};

/// An invented course.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Demo {
    /// Grass in autumn: fast bends, two barriers, a steep bank, a long drag and a muddy hollow. About 3 km.
    Meadow,
    /// Sand and roots: loose sand, steps, a steep run-up and an icy-smooth tarmac finish. About 2.4 km.
    SandPit,
}

impl Demo {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Meadow, Self::SandPit];

    /// The name it goes by.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Meadow => "Autumn meadow",
            Self::SandPit => "Sand pit",
        }
    }

    /// The course.
    #[must_use]
    pub fn course(self) -> Course {
        match self {
            Self::Meadow => Course::known(MEADOW),
            Self::SandPit => Course::known(SAND_PIT),
        }
    }
}

const fn open(length: f64, percent: f64, surface: Surface) -> Segment {
    Segment::open(StretchLength::known(length), Gradient::nearest(percent), surface)
}

const fn bend(length: f64, percent: f64, surface: Surface, m_per_s: f64) -> Segment {
    Segment { corner: Some(CornerSpeed::known(m_per_s)), ..open(length, percent, surface) }
}

const fn barrier(length: f64, percent: f64, surface: Surface, seconds: f64) -> Segment {
    Segment {
        obstacle: Some(Obstacle { time: ObstacleTime::known(seconds) }),
        ..open(length, percent, surface)
    }
}

const MEADOW: &[Segment] = &[
    open(180.0, 0.0, Tarmac),
    bend(15.0, 0.0, FirmGrass, 5.0),
    open(140.0, 2.0, FirmGrass),
    bend(12.0, 0.0, FirmGrass, 4.0),
    open(60.0, -4.0, FirmGrass),
    barrier(2.0, 0.0, FirmGrass, 0.6),
    open(4.0, 0.0, FirmGrass),
    barrier(2.0, 0.0, FirmGrass, 0.6),
    open(150.0, 1.0, FirmGrass),
    bend(15.0, 3.0, FirmGrass, 4.0),
    open(26.0, 21.0, WetSoftGrass),
    open(90.0, 3.0, FirmGrass),
    bend(14.0, -3.0, FirmGrass, 5.0),
    open(160.0, -6.0, FirmGrass),
    bend(20.0, 0.0, WetSoftGrass, 4.5),
    open(220.0, 4.0, WetSoftGrass),
    open(60.0, 9.0, WetSoftGrass),
    bend(15.0, 0.0, FirmGrass, 5.0),
    open(200.0, -5.0, PackedGravel),
    bend(18.0, 0.0, PackedGravel, 6.0),
    open(240.0, 0.0, PackedGravel),
    bend(12.0, 0.0, WetSoftGrass, 4.0),
    open(80.0, -2.0, Mud),
    open(70.0, 3.0, Mud),
    open(22.0, 12.0, DeepMud),
    open(120.0, 1.0, WetSoftGrass),
    bend(14.0, 0.0, FirmGrass, 5.0),
    open(45.0, 14.0, FirmGrass),
    open(110.0, -7.0, FirmGrass),
    bend(16.0, 0.0, FirmGrass, 5.0),
    open(260.0, 1.0, FirmGrass),
    bend(12.0, 0.0, FirmGrass, 4.0),
    open(130.0, -2.0, FirmGrass),
    bend(14.0, 2.0, WetSoftGrass, 4.5),
    open(35.0, 11.0, WetSoftGrass),
    open(130.0, -6.0, FirmGrass),
    bend(15.0, 0.0, FirmGrass, 5.0),
    open(190.0, -1.5, FirmGrass),
    open(82.0, 0.0, Tarmac),
];

const SAND_PIT: &[Segment] = &[
    open(150.0, 0.0, Tarmac),
    bend(12.0, 0.0, PackedGravel, 5.0),
    open(120.0, 1.0, PackedGravel),
    open(45.0, 0.0, LooseSand),
    bend(12.0, 0.0, LooseSand, 3.5),
    open(40.0, 2.0, LooseSand),
    open(160.0, -3.0, FirmGrass),
    bend(15.0, 0.0, FirmGrass, 4.5),
    open(130.0, 5.0, FirmGrass),
    barrier(9.0, 38.0, PackedGravel, 2.0),
    open(120.0, 0.0, FirmGrass),
    bend(14.0, -2.0, FirmGrass, 4.5),
    open(140.0, -8.0, FirmGrass),
    bend(16.0, 0.0, WetSoftGrass, 4.5),
    open(180.0, 1.0, WetSoftGrass),
    open(30.0, 26.0, Mud),
    open(90.0, 2.0, FirmGrass),
    bend(12.0, 0.0, FirmGrass, 4.0),
    open(170.0, -7.0, FirmGrass),
    bend(14.0, 0.0, FirmGrass, 4.5),
    open(25.0, 0.0, LooseSand),
    open(150.0, 3.0, PackedGravel),
    open(40.0, 13.0, PackedGravel),
    bend(14.0, 0.0, PackedGravel, 5.0),
    open(160.0, 0.0, PackedGravel),
    barrier(2.0, 0.0, FirmGrass, 0.6),
    open(180.0, -2.0, FirmGrass),
    bend(14.0, 0.0, FirmGrass, 5.0),
    open(200.0, 0.0, FirmGrass),
    open(120.0, -1.0, Tarmac),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_courses_and_end_near_the_height_they_start_at() {
        for demo in Demo::ALL {
            let course = demo.course();
            assert_eq!(Course::new(course.segments().to_vec()).as_ref(), Ok(&course));
            let end = course.profile().last().copied().unwrap();
            assert!(end.height_m.abs() < 1.0, "{} ends at {} m", demo.name(), end.height_m);
            assert!((2000.0..3100.0).contains(&end.at_m), "{} is {} m long", demo.name(), end.at_m);
        }
    }
}
