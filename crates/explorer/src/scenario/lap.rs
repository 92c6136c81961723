//! Round the lap: which course, what is painted over it, and how it is ridden and searched.

use super::parse::Reader;
use crate::field::Field;
use gear_math::{
    Braking, Chainring, Course, Demo, Mounting, ObstacleTime, Shifting, SmoothingLength, Surface, decimal,
};
use std::rc::Rc;

/// Where the course comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CourseChoice {
    /// An invented one.
    Demo(Demo),
    /// The sketch in the form.
    Sketch,
    /// A file that was chosen, or a course that was kept.
    Own,
}

/// Which rings a search tries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rings {
    /// Single rings and pairs.
    Both,
    /// Single rings.
    Single,
    /// Pairs.
    Pair,
}

/// What is painted over a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Coat {
    Ground(Surface),
    Obstacle(ObstacleTime),
}

/// Everything about the lap that is not the rider, the bike or the air.
#[derive(Debug, Clone, PartialEq)]
pub struct LapInputs {
    /// Which course.
    pub choice: CourseChoice,
    /// The course sketched by hand.
    pub sketch: Rc<Course>,
    coats: Rc<[(f64, f64, Coat)]>,
    /// How strongly the elevations of a file are smoothed.
    pub smoothing: SmoothingLength,
    /// The ground everywhere on a track from a file.
    pub track_ground: Surface,
    /// Cadences and costs of shifting; the preferred cadence is the bench's.
    pub shifting: Shifting,
    /// How hard the rider brakes into bends.
    pub braking: Braking,
    /// Smallest and largest ring of a search.
    pub rings: [Chainring; 2],
    /// Which rings it tries.
    pub kinds: Rings,
}

impl LapInputs {
    pub(super) fn read(reader: &mut Reader<'_>, good: &Self) -> Self {
        let choice = reader.pick(Field::Course, &COURSES);
        Self {
            choice,
            sketch: sketch(reader, choice, &good.sketch),
            coats: coats(reader, &good.coats),
            smoothing: reader.quantity(Field::Smoothing),
            track_ground: reader.pick(Field::TrackGround, &Surface::ALL),
            shifting: Shifting {
                preferred: good.shifting.preferred,
                window: reader.quantity(Field::CadenceSpread),
                rear: reader.quantity(Field::ShiftRear),
                front: reader.quantity(Field::ShiftFront),
            },
            braking: reader.quantity(Field::Braking),
            rings: rings(reader, good.rings),
            kinds: reader.pick(Field::SearchPairs, &[Rings::Both, Rings::Single, Rings::Pair]),
        }
    }

    /// Something to read the demo bench with.
    #[expect(clippy::expect_used, reason = "fixed values within every limit, run by every test")]
    pub(super) fn bare() -> Self {
        let ring = |teeth| Chainring::new(teeth).expect("a ring");
        Self {
            choice: CourseChoice::Demo(Demo::Meadow),
            sketch: Rc::new(Demo::Meadow.course()),
            coats: Rc::new([]),
            smoothing: SmoothingLength::new(40.0).expect("a length"),
            track_ground: Surface::FirmGrass,
            shifting: Shifting::USUAL,
            braking: Mounting::USUAL.braking,
            rings: [ring(28), ring(50)],
            kinds: Rings::Both,
        }
    }

    /// The course with everything painted over it. What would cut it into too many stretches is left out.
    #[must_use]
    pub fn painted(&self, course: &Course) -> Course {
        self.coats.iter().fold(course.clone(), |course, &(from, to, coat)| {
            let painted = match coat {
                Coat::Ground(surface) => course.painted(from, to, surface),
                Coat::Obstacle(time) => course.blocked(from, to, time),
            };
            painted.unwrap_or(course)
        })
    }
}

/// The smallest and the largest ring of a search.
fn rings(reader: &mut Reader<'_>, good: [Chainring; 2]) -> [Chainring; 2] {
    let small = reader.teeth(Field::SearchSmall, Chainring::new).unwrap_or(good[0]);
    let large = reader.teeth(Field::SearchLarge, Chainring::new).unwrap_or(good[1]);
    if small <= large {
        return [small, large];
    }
    let fault = format!("the largest ring is smaller than the smallest: type {} or more", small.teeth());
    reader.complain(
        Field::SearchLarge,
        &fault,
        format!("{} to {}\u{a0}teeth", good[0].teeth(), good[1].teeth()),
    );
    good
}

/// An empty sketch is in order as long as it is not the one that is ridden.
fn sketch(reader: &mut Reader<'_>, choice: CourseChoice, good: &Rc<Course>) -> Rc<Course> {
    let text = reader.text(Field::Sketch);
    if text.trim().is_empty() && choice != CourseChoice::Sketch {
        return Rc::clone(good);
    }
    let fault = if is_too_long(text, Field::Sketch) {
        TOO_LONG.to_owned()
    } else {
        let course = text.parse::<Course>().map_err(|error| error.to_string());
        match course.and_then(|course| course.as_lap().map_err(|error| error.to_string())) {
            Ok(course) => return Rc::new(course),
            Err(error) => error,
        }
    };
    reader.complain(Field::Sketch, &fault, format!("a course of {:.0}\u{a0}m", good.length_m()));
    Rc::clone(good)
}

const TOO_LONG: &str =
    "this is longer than the field holds, 4000 characters; join stretches, or keep the course as a file";

fn is_too_long(text: &str, field: Field) -> bool {
    text.chars().nth(field.longest()).is_some()
}

fn coats(reader: &mut Reader<'_>, good: &Rc<[(f64, f64, Coat)]>) -> Rc<[(f64, f64, Coat)]> {
    let kept = || "what was painted before".to_owned();
    if is_too_long(reader.text(Field::Paint), Field::Paint) {
        reader.complain(Field::Paint, &TOO_LONG, kept());
        return Rc::clone(good);
    }
    let mut coats = Vec::new();
    for (index, line) in reader.text(Field::Paint).lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        let Some(coat) = coat(line) else {
            let fault = format!(
                "line {}: type from m; to m; and a ground or “foot 2”, such as 310; 355; deep mud",
                index + 1
            );
            reader.complain(Field::Paint, &fault, kept());
            return Rc::clone(good);
        };
        coats.push(coat);
    }
    coats.into()
}

fn coat(line: &str) -> Option<(f64, f64, Coat)> {
    let mut cells = line.split([';', '|', '\t']).map(str::trim);
    let mut metres = || -> Option<f64> {
        let cell = cells.next()?;
        let metres = decimal(&cell.strip_suffix('m').unwrap_or(cell).trim().replace(',', "."))?;
        metres.is_finite().then_some(metres)
    };
    let (from, to) = (metres()?, metres()?);
    let what = cells.next()?;
    let coat = match what.strip_prefix("foot") {
        Some(time) => {
            let time = time.trim();
            let time = time.strip_suffix('s').unwrap_or(time).trim().replace(',', ".");
            let seconds = if time.is_empty() { 0.0 } else { decimal(&time)? };
            Coat::Obstacle(ObstacleTime::new(seconds).ok()?)
        }
        None => Coat::Ground(Surface::named(what)?),
    };
    (0.0 <= from && from < to && cells.next().is_none()).then_some((from, to, coat))
}

const COURSES: [CourseChoice; 4] = [
    CourseChoice::Demo(Demo::Meadow),
    CourseChoice::Demo(Demo::SandPit),
    CourseChoice::Sketch,
    CourseChoice::Own,
];

#[cfg(test)]
mod tests {
    use super::*;

    fn complaint(edits: &[(Field, &str)]) -> (LapInputs, Vec<(Field, String)>) {
        let mut bench = crate::bench::Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        let read = crate::scenario::Scenario::read(&bench, &crate::scenario::Scenario::default());
        let told = read.complaints.into_iter().map(|complaint| (complaint.field, complaint.message));
        (read.scenario.lap, told.collect())
    }

    #[test]
    fn a_sketch_too_long_too_short_or_empty_is_refused_whole() {
        let long = "100; 0; firm grass; corner 20\n".repeat(200);
        for (text, fault) in [
            (long.as_str(), "longer than the field"),
            ("49; 0; mud", "shorter than 50 m"),
            ("", "no stretch"),
        ] {
            let (inputs, told) = complaint(&[(Field::Course, "sketch"), (Field::Sketch, text)]);
            assert!(
                told.iter().any(|(field, message)| *field == Field::Sketch && message.contains(fault)),
                "{told:?}"
            );
            assert!(inputs.sketch.length_m() > 200.0);
        }
    }

    #[test]
    fn rings_the_wrong_way_round_are_told_beside_the_field() {
        let (inputs, told) = complaint(&[(Field::SearchSmall, "50"), (Field::SearchLarge, "28")]);
        assert_eq!(told.len(), 1);
        assert!(told[0].0 == Field::SearchLarge && told[0].1.contains("50 or more"), "{told:?}");
        assert_eq!(inputs.rings.map(Chainring::teeth), [28, 50]);
    }

    #[test]
    fn what_may_be_painted_is_read_and_the_rest_refused() {
        let ground = Some((310.0, 355.0, Coat::Ground(Surface::DeepMud)));
        for line in ["310; 355; deep mud", "310 m|355 m|Deep-Mud"] {
            assert_eq!(coat(line), ground, "{line}");
        }
        let obstacle = Some((4.0, 5.5, Coat::Obstacle(ObstacleTime::new(2.0).unwrap())));
        assert_eq!(coat("4; 5,5; foot 2 s"), obstacle);
        for line in [
            "",
            "310",
            "355; 310; mud",
            "-1; 2; mud",
            "1; 2; lava",
            "1; 2; mud; 3",
            "nan; 2; mud",
            "1; inf; mud",
            "1; 2; foot 99",
        ] {
            assert_eq!(coat(line), None, "{line}");
        }
    }
}
