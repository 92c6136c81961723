//! A stretch of the lap that is painted, and what that makes of the text of earlier ones.

use gear_math::course::{Coat, CourseError, Patch, PatchError, SketchFault};
use gear_math::typed::decimal_in;
use gear_math::{Course, Surface};

/// A stretch, and what it becomes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    /// From here, in metres from the line.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
    /// What it becomes; none where it becomes what it was before anything was painted.
    pub coat: Option<Coat>,
}

/// Why nothing is painted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StrokeFault {
    /// Where it begins or ends is no number of metres, or it does not end behind where it begins.
    Metres,
    /// What it is to become cannot be read.
    Coat(SketchFault),
    /// It changes nothing of the course.
    Nowhere(CourseError),
    /// A line of the text, counted from 1, cannot be read.
    Line(usize, PatchError),
    /// The text would be longer than its field.
    TooLong,
}

impl Stroke {
    /// Reads where it begins and ends, and the cell of a sketch that says what it becomes: “310; 355; mud”.
    ///
    /// # Errors
    /// What cannot be read.
    pub fn read(text: &str) -> Result<Self, StrokeFault> {
        let mut cells = text.splitn(3, ';').map(str::trim);
        let mut metres = || cells.next().and_then(|cell| decimal_in(cell, "m")).filter(|m| *m >= 0.0);
        let (Some(from_m), Some(to_m)) = (metres(), metres()) else { return Err(StrokeFault::Metres) };
        let coat = match cells.next().unwrap_or_default() {
            "" => None,
            cell => Some(cell.parse().map_err(StrokeFault::Coat)?),
        };
        if from_m < to_m { Ok(Self { from_m, to_m, coat }) } else { Err(StrokeFault::Metres) }
    }

    /// Whether anything of a course lies under it.
    ///
    /// # Errors
    /// [`StrokeFault::Nowhere`] where nothing does.
    pub fn lies_on(&self, course: &Course) -> Result<(), StrokeFault> {
        let coat = self.coat.unwrap_or(Coat::Ground(Surface::Tarmac));
        course.patched(&self.patch(coat)).map(drop).map_err(StrokeFault::Nowhere)
    }

    /// The text with this painted last: of what it takes the place of, only what lies outside is left. Remarks and all other
    /// lines stay.
    ///
    /// # Errors
    /// [`StrokeFault::Line`] where one cannot be read.
    pub fn over(&self, text: &str) -> Result<String, StrokeFault> {
        let mut lines = Vec::new();
        for (index, line) in text.lines().enumerate() {
            let row = line.split('#').next().unwrap_or_default().trim_end();
            let patch = match row {
                "" => None,
                row => Some(row.parse::<Patch>().map_err(|error| StrokeFault::Line(index + 1, error))?),
            };
            match patch.filter(|patch| self.replaces(patch)) {
                Some(patch) => {
                    let left = patch.outside(self.from_m, self.to_m);
                    lines.extend(left.map(|piece| format!("{piece}{}", &line[row.len()..])));
                }
                None => lines.push(line.to_owned()),
            }
        }
        lines.extend(self.coat.map(|coat| self.patch(coat).to_string()));
        Ok(lines.join("\n"))
    }

    fn replaces(&self, patch: &Patch) -> bool {
        patch.meets(self.from_m, self.to_m) && self.coat.is_none_or(|coat| coat.replaces(&patch.coat))
    }

    const fn patch(&self, coat: Coat) -> Patch {
        Patch { from_m: self.from_m, to_m: self.to_m, coat }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gear_math::course::{ObstacleTime, Segment};
    use proptest::prelude::*;

    /// Two grounds, a barrier and a bend, 200 m.
    fn course() -> Course {
        "80; 2; firm grass\n10; 0; firm grass; foot 2\n60; -3; tarmac; corner 20\n50; 0; tarmac"
            .parse()
            .unwrap()
    }

    fn stroke(from: u32, to: u32, coat: &str) -> Stroke {
        Stroke::read(&format!("{from}; {to}; {coat}")).unwrap()
    }

    fn read(text: &str) -> Course {
        let patches = text.lines().map(|line| line.parse::<Patch>().unwrap());
        patches.fold(course(), |course, patch| course.patched(&patch).unwrap())
    }

    /// What each metre of a course consists of: its ground, the seconds that its obstacle costs, its bend.
    fn metres(course: &Course) -> Vec<[String; 3]> {
        let mut at = 0.0;
        let mut metres = Vec::new();
        for segment in course.segments() {
            at += segment.length.m();
            while (metres.len() as f64) < at - 0.5 {
                metres.push(told(segment));
            }
        }
        metres
    }

    fn told(segment: &Segment) -> [String; 3] {
        let seconds = segment.obstacle.map(|it| format!("{:.3}", it.time.s() / segment.length.m()));
        let bend = segment.corner.map(|it| format!("{:.3}", it.m_per_s()));
        [segment.surface.name().to_owned(), seconds.unwrap_or_default(), bend.unwrap_or_default()]
    }

    const COATS: [&str; 8] = ["mud", "deep mud", "loose sand", "foot 3", "foot 12", "none", "corner 15", ""];

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        /// Whatever was painted in whatever order: a stroke is there from end to end, and elsewhere nothing has changed.
        #[test]
        fn a_stroke_is_exactly_where_it_was_painted(
            strokes in prop::collection::vec((0..199_u32, 1..80_u32, 0..COATS.len()), 1..9),
        ) {
            let mut text = String::new();
            for (from, length, coat) in strokes {
                let stroke = stroke(from, (from + length).min(200), COATS[coat]);
                let before = metres(&read(&text));
                text = stroke.over(&text).unwrap();
                let (own, after) = (metres(&course()), metres(&read(&text)));
                for (metre, [ground, seconds, bend]) in after.iter().enumerate() {
                    let is_under = stroke.from_m <= metre as f64 && (metre as f64) < stroke.to_m;
                    let mut wanted = before[metre].clone();
                    match stroke.coat.filter(|_| is_under) {
                        Some(Coat::Ground(surface)) => surface.name().clone_into(&mut wanted[0]),
                        Some(Coat::Obstacle(time)) => {
                            let per_m = |time: ObstacleTime| format!("{:.3}", time.s() / (stroke.to_m - stroke.from_m));
                            wanted[1] = time.map_or_else(String::new, per_m);
                        }
                        Some(Coat::Corner(speed)) => wanted[2] = format!("{:.3}", speed.m_per_s()),
                        _ if is_under => wanted.clone_from(&own[metre]),
                        _ => {}
                    }
                    prop_assert_eq!(ground, &wanted[0], "metre {} of\n{}", metre, text);
                    let near = |a: &str, b: &str| match (a.parse::<f64>(), b.parse::<f64>()) {
                        (Ok(a), Ok(b)) => (a - b).abs() < 0.003,
                        _ => a == b,
                    };
                    prop_assert!(near(seconds, &wanted[1]), "metre {metre}: {seconds} of\n{text}");
                    prop_assert!(near(bend, &wanted[2]), "metre {metre}: {bend} of\n{text}");
                }
                let patches: Vec<Patch> = text.lines().map(|line| line.parse().unwrap()).collect();
                for (index, one) in patches.iter().enumerate() {
                    let over = |other: &&Patch| one.coat.replaces(&other.coat) && one.meets(other.from_m, other.to_m);
                    prop_assert!(!patches[..index].iter().any(|other| over(&other)), "{}", text);
                }
            }
        }
    }

    /// An obstacle is the course's own or was painted: “none” takes either away, and painting one there brings it back.
    #[test]
    fn an_obstacle_of_the_course_itself_is_taken_away() {
        let has = |text: &str| read(text).segments().iter().any(|segment| segment.obstacle.is_some());
        let none = stroke(75, 95, "none").over("").unwrap();
        assert_eq!(none, "75; 95; none");
        assert!(has("") && !has(&none));
        let again = stroke(75, 95, "foot 4").over(&none).unwrap();
        assert_eq!(again, "75; 95; foot 4");
        assert_eq!(stroke(75, 95, "none ").over(&again).unwrap(), none);
    }

    #[test]
    fn what_is_painted_over_is_cut_and_remarks_stay() {
        let text = "# after rain\n100; 150; mud # the bog\n110; 112; foot 2";
        let painted = stroke(120, 130, "deep mud").over(text).unwrap();
        assert_eq!(
            painted,
            "# after rain\n100; 120; mud # the bog\n130; 150; mud # the bog\n110; 112; foot 2\n120; 130; deep mud"
        );
        assert_eq!(stroke(90, 160, "").over(&painted).unwrap(), "# after rain");
    }

    #[test]
    fn what_paints_nothing_is_told_apart() {
        let fault =
            |from: &str, to: &str, coat: &str| Stroke::read(&format!("{from}; {to}; {coat}")).unwrap_err();
        let unread = [("", "20"), ("10", "far"), ("-5", "20"), ("nan", "20"), ("10", "inf")];
        for (from, to) in unread.into_iter().chain([("20", "10"), ("20", "20")]) {
            assert_eq!(fault(from, to, "mud"), StrokeFault::Metres, "{from} {to}");
        }
        assert_eq!(fault("10", "20", "foot 90"), StrokeFault::Coat(SketchFault::Obstacle));
        assert_eq!(fault("10", "20", "corner "), StrokeFault::Coat(SketchFault::Corner));
        let nowhere = Err(StrokeFault::Nowhere(CourseError::NothingThere));
        assert_eq!(stroke(200, 300, "mud").lies_on(&course()), nowhere);
        assert_eq!(stroke(200, 300, "").lies_on(&course()), nowhere);
        assert_eq!(stroke(190, 300, "mud").lies_on(&course()), Ok(()));
        assert_eq!(stroke(1, 2, "mud").over("# \n5; lava"), Err(StrokeFault::Line(2, PatchError)));
    }
}
