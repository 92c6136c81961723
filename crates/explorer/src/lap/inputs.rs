//! Round the lap: which course, what is painted over it, and how it is ridden and searched.

use crate::bench::complaint::Complaint;
use crate::bench::field::{Field, Group};
use crate::bench::reader::Reader;
use crate::lap::course_fault::lap_of;
use crate::lap::words::complaints as words;
use crate::rings::cassettes;
use crate::rings::cassettes::TypedCassette;
use crate::rings::inputs::RingsInputs;
use crate::rings::words::complaints::no_cassette;
use crate::side::Side;
use gear_math::course::{Braking, Demo, Mounting, Patch, Shifting, SmoothingLength, TrackPlace};
use gear_math::rider::{EffortBudget, Wind};
use gear_math::{Cassette, Chainring, Course, Drivetrain, Surface};
use std::rc::Rc;

/// The groups of fields that stand in the section on the lap.
pub(crate) const GROUPS: &[Group] =
    &[Group::Lap, Group::LapSketch, Group::LapFile, Group::LapHabits, Group::LapSearch];

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

/// How effort is spread over a lap.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LapModel {
    /// On a reserve: above the power where it pays, below it elsewhere.
    Reserve,
    /// At an even power, all the way round.
    Steady,
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

impl Rings {
    /// Whether pairs, or single rings, are tried.
    #[must_use]
    pub const fn wants(self, pair: bool) -> bool {
        match self {
            Self::Both => true,
            Self::Single => !pair,
            Self::Pair => pair,
        }
    }
}

/// How many sprockets the cassettes of a search have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sprockets {
    /// As many as A or B.
    AsOnBench,
    /// As many as A.
    AsOn(Side),
    /// Any number.
    Any,
}

impl Sprockets {
    /// The numbers wanted; none where any is.
    #[must_use]
    pub fn counts(self, bench: &[Drivetrain; 2]) -> Option<[usize; 2]> {
        let of = |side: Side| bench[side as usize].cassette.sprockets().len();
        match self {
            Self::AsOnBench => Some(Side::BOTH.map(of)),
            Self::AsOn(side) => Some([of(side); 2]),
            Self::Any => None,
        }
    }
}

/// Everything about the lap that is not the rider, the bike or the air.
#[derive(Debug, Clone, PartialEq)]
pub struct LapInputs {
    /// Which course.
    pub choice: CourseChoice,
    /// How effort is spread.
    pub model: LapModel,
    /// What one lap may take from the reserve.
    pub budget: EffortBudget,
    /// Wind over the ground, at the rider's height.
    pub wind: Wind,
    /// The course sketched by hand.
    pub sketch: Rc<Course>,
    /// Lines of what is painted over it, by their numbers.
    paint: Rc<[(usize, Patch)]>,
    /// How strongly the elevations of a file are smoothed.
    pub smoothing: SmoothingLength,
    /// The ground everywhere on a track from a file.
    pub track_ground: Surface,
    /// Cadences and costs of shifting; the preferred cadence is the bench's.
    pub shifting: Shifting,
    /// How hard the rider brakes into bends.
    pub braking: Braking,
    /// From where to where a track from a file is used.
    pub part: [Option<TrackPlace>; 2],
    /// What a search tries.
    pub search: SearchInputs,
}

/// What a search tries.
#[derive(Debug, Clone, PartialEq)]
pub struct SearchInputs {
    /// Smallest and largest ring.
    pub rings: [Chainring; 2],
    /// Which of them.
    pub kinds: Rings,
    /// How many sprockets.
    pub sprockets: Sprockets,
    /// The largest ring that the frame clears.
    pub frame_ring: Option<Chainring>,
    /// Cassettes beside the usual ones, with the numbers of their lines.
    pub cassettes: Rc<[(usize, TypedCassette)]>,
}

impl SearchInputs {
    fn read(reader: &mut Reader<'_>, good: &Self, of_a: Cassette) -> Self {
        let line = |text: &str| cassettes::read_line(text, of_a).map_err(|fault| no_cassette(&fault));
        Self {
            rings: rings(reader, good.rings),
            kinds: reader.pick(Field::SearchPairs, &[Rings::Both, Rings::Single, Rings::Pair]),
            sprockets: reader.pick(Field::SearchSprockets, &SPROCKETS),
            frame_ring: reader.teeth(Field::FrameRing, Chainring::new),
            cassettes: lines(reader, Field::MoreCassettes, &good.cassettes, &line),
        }
    }
}

impl LapInputs {
    pub(crate) fn read(reader: &mut Reader<'_>, good: &Self, rings: &RingsInputs) -> Self {
        let choice = reader.pick(Field::Course, &COURSES);
        Self {
            choice,
            model: reader.pick(Field::LapModel, &[LapModel::Reserve, LapModel::Steady]),
            budget: EffortBudget::of_kj(reader.number_within(Field::LapBudget, &EffortBudget::KJ_LIMITS)),
            wind: Wind { speed: reader.quantity(Field::LapWind), from: reader.quantity(Field::LapWindFrom) },
            sketch: sketch(reader, choice, &good.sketch),
            paint: lines(reader, Field::Paint, &good.paint, &|text| text.parse().map_err(words::patch)),
            smoothing: reader.quantity(Field::Smoothing),
            track_ground: reader.pick(Field::TrackGround, &Surface::ALL),
            shifting: Shifting {
                preferred: good.shifting.preferred,
                window: reader.quantity(Field::CadenceSpread),
                rear: reader.quantity(Field::ShiftRear),
                front: reader.quantity(Field::ShiftFront),
            },
            braking: reader.quantity(Field::Braking),
            part: part(reader, good.part),
            search: SearchInputs::read(reader, &good.search, rings.drivetrain(Side::A).cassette),
        }
    }

    /// Whether the lap is ridden on the reserve over and over.
    #[must_use]
    pub fn is_repeated(&self) -> bool {
        self.model == LapModel::Reserve && self.budget == EffortBudget::NONE
    }

    /// Something to read the demo bench with.
    #[expect(clippy::expect_used, reason = "fixed values within every limit, run by every test")]
    pub(crate) fn bare() -> Self {
        let ring = |teeth| Chainring::new(teeth).expect("a ring");
        Self {
            choice: CourseChoice::Demo(Demo::Meadow),
            model: LapModel::Reserve,
            budget: EffortBudget::NONE,
            wind: Wind::NONE,
            sketch: Rc::new(Demo::Meadow.course()),
            paint: Rc::new([]),
            smoothing: SmoothingLength::new(40.0).expect("a length"),
            track_ground: Surface::FirmGrass,
            shifting: Shifting::USUAL,
            braking: Mounting::USUAL.braking,
            part: [None; 2],
            search: SearchInputs {
                rings: [ring(28), ring(50)],
                kinds: Rings::Both,
                sprockets: Sprockets::AsOnBench,
                frame_ring: None,
                cassettes: Rc::new([]),
            },
        }
    }

    /// The course with everything painted over it that can be.
    #[must_use]
    pub fn painted(&self, course: Course) -> Course {
        self.paint.iter().fold(course, |course, (_, patch)| course.patched(patch).unwrap_or(course))
    }

    /// How many changes are painted.
    #[must_use]
    pub fn changes(&self) -> usize {
        self.paint.len()
    }

    /// What is wrong with the first line that paints nothing of a course.
    #[must_use]
    pub fn idle_paint(&self, mut course: Course) -> Option<Complaint> {
        for (line, patch) in &*self.paint {
            match course.patched(patch) {
                Ok(painted) => course = painted,
                Err(error) => {
                    let message = words::line(*line, &words::idle(&error));
                    let kept = Some(words::OTHER_LINES.to_owned());
                    return Some(Complaint { field: Field::Paint, message, kept, offer: None });
                }
            }
        }
        None
    }
}

/// The smallest and the largest ring of a search.
fn rings(reader: &mut Reader<'_>, good: [Chainring; 2]) -> [Chainring; 2] {
    let small = reader.teeth(Field::SearchSmall, Chainring::new).unwrap_or(good[0]);
    let large = reader.teeth(Field::SearchLarge, Chainring::new).unwrap_or(good[1]);
    if small <= large {
        return [small, large];
    }
    reader.complain(Field::SearchLarge, words::rings_crossed(small), words::rings(good));
    good
}

/// An empty sketch is in order as long as it is not the one that is ridden.
fn sketch(reader: &mut Reader<'_>, choice: CourseChoice, good: &Rc<Course>) -> Rc<Course> {
    let text = reader.text(Field::Sketch);
    if text.trim().is_empty() && choice != CourseChoice::Sketch {
        return Rc::clone(good);
    }
    let read = too_long(text, Field::Sketch)
        .map_or_else(|| lap_of(text).map_err(|fault| words::sketch(&fault)), Err);
    match read {
        Ok(course) => Rc::new(course),
        Err(message) => {
            reader.complain(Field::Sketch, message, words::course_of(good.length_m()));
            Rc::clone(good)
        }
    }
}

/// What is said of a text that the field cannot hold; nothing where it can.
fn too_long(text: &str, field: Field) -> Option<String> {
    text.chars().nth(field.longest()).map(|_| words::too_long(field.longest()))
}

fn part(reader: &mut Reader<'_>, good: [Option<TrackPlace>; 2]) -> [Option<TrackPlace>; 2] {
    let part = [reader.quantity_or_none(Field::TrackFrom), reader.quantity_or_none(Field::TrackTo)];
    if let [Some(from), Some(to)] = part
        && from >= to
    {
        reader.complain(Field::TrackTo, words::ENDS_FIRST.to_owned(), words::PART_BEFORE.to_owned());
        return good;
    }
    part
}

/// What the lines of a field hold, each with its number; nothing new where one is in error. A `#` begins a remark.
fn lines<T>(
    reader: &mut Reader<'_>,
    field: Field,
    good: &Rc<[(usize, T)]>,
    line: &dyn Fn(&str) -> Result<T, String>,
) -> Rc<[(usize, T)]> {
    let text = reader.text(field);
    let read = too_long(text, field).map_or_else(|| read_lines(text, line), Err);
    read.unwrap_or_else(|fault| {
        reader.complain(field, fault, words::LINES_BEFORE.to_owned());
        Rc::clone(good)
    })
}

fn read_lines<T>(
    text: &str,
    read_line: &dyn Fn(&str) -> Result<T, String>,
) -> Result<Rc<[(usize, T)]>, String> {
    let mut read = Vec::new();
    for (index, line) in text.lines().enumerate() {
        let line = line.split('#').next().unwrap_or_default().trim();
        if !line.is_empty() {
            let item = read_line(line).map_err(|fault| words::line(index + 1, &fault))?;
            read.push((index + 1, item));
        }
    }
    Ok(read.into())
}

const SPROCKETS: [Sprockets; 4] =
    [Sprockets::AsOnBench, Sprockets::AsOn(Side::A), Sprockets::AsOn(Side::B), Sprockets::Any];

const COURSES: [CourseChoice; 4] = [
    CourseChoice::Demo(Demo::Meadow),
    CourseChoice::Demo(Demo::SandPit),
    CourseChoice::Sketch,
    CourseChoice::Own,
];

#[cfg(test)]
mod tests {
    use super::*;
    use gear_math::course::CornerSpeed;

    fn complaint(edits: &[(Field, &str)]) -> (LapInputs, Vec<(Field, String)>) {
        let mut bench = crate::bench::bench::Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        let read = crate::page::scenario::Scenario::read(&bench, &crate::page::scenario::Scenario::default());
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
    fn what_is_painted_may_have_remarks_and_a_fault_names_the_grounds() {
        let (inputs, told) = complaint(&[(Field::Paint, "# the bog\n310; 355; deep mud # after rain\n\n")]);
        assert_eq!((told.len(), inputs.paint.len(), inputs.paint[0].0), (0, 1, 2));
        let (_, told) = complaint(&[(Field::Paint, "310; 355; lava")]);
        assert!(told[0].1.contains("wet packed sand"), "{told:?}");
    }

    #[test]
    fn a_recorded_bend_is_painted() {
        let (inputs, _) = complaint(&[(Field::Paint, "100; 112; corner 15")]);
        let slowest = |course: &Course| {
            course.segments().iter().filter_map(|it| it.corner).map(CornerSpeed::m_per_s).fold(9e9, f64::min)
        };
        let painted = inputs.painted("400; 0; tarmac".parse().unwrap());
        assert!((3.6 * slowest(&painted) - 15.0).abs() < 1e-9);
    }

    #[test]
    fn paint_that_changes_nothing_is_told() {
        let course = || "400; 0; tarmac".parse::<Course>().unwrap();
        for (line, idle) in [
            ("100; 112; mud", false),
            ("390; 900; mud", false),
            ("400; 900; mud", true),
            ("5; 5.02; mud", true),
        ] {
            let (inputs, _) = complaint(&[(Field::Paint, &format!("1; 2; mud\n{line}"))]);
            let told = inputs.idle_paint(course()).map(|it| it.message);
            assert_eq!(told.is_some(), idle, "{line}: {told:?}");
            assert!(told.is_none_or(|it| it.starts_with("Line 2: nothing of the course lies there")));
        }
    }

    #[test]
    fn the_part_of_a_track_begins_before_it_ends() {
        let (inputs, told) = complaint(&[(Field::TrackFrom, "900"), (Field::TrackTo, "800 m")]);
        assert!(told.len() == 1 && told[0].0 == Field::TrackTo && inputs.part == [None; 2], "{told:?}");
        let (inputs, told) = complaint(&[(Field::TrackFrom, "900")]);
        assert!(told.is_empty() && inputs.part[1].is_none());
        assert!(inputs.part[0].is_some_and(|it| (it.m() - 900.0).abs() < 1e-9));
    }

    #[test]
    fn rings_the_wrong_way_round_are_told_beside_the_field() {
        let (inputs, told) = complaint(&[(Field::SearchSmall, "50"), (Field::SearchLarge, "28")]);
        assert_eq!(told.len(), 1);
        assert!(told[0].0 == Field::SearchLarge && told[0].1.contains("50 or more"), "{told:?}");
        assert_eq!(inputs.search.rings.map(Chainring::teeth), [28, 50]);
    }
}
