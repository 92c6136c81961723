//! A course of the rider's own, and the course that is ridden where there is one.

use crate::lap::course_fault::{CourseFault, lap_of};
use crate::lap::inputs::{CourseChoice, LapInputs};
use gear_math::Course;
use gear_math::course::{
    Recording, SmoothingLength, TrackElevation, TrackFault, TrackOptions, TrackPoints, TrackReport,
};
use std::rc::Rc;

/// A course from a file, or one that was kept.
#[derive(Debug)]
pub struct OwnCourse {
    /// Its name: its own, or that of its file without the ending.
    pub name: String,
    /// The file it was read from; none where the browser kept it.
    pub file: Option<String>,
    /// The course.
    pub course: Course,
    /// The length that its elevations were smoothed over, where that is known, m.
    pub smoothing_m: Option<f64>,
    /// The track it was read from, how that is used and what was found in it.
    pub track: Option<(Track, TrackOptions, TrackReport)>,
}

/// A recorded track, followed once for all that is made of it.
#[derive(Debug, Clone)]
pub struct Track {
    /// Its points.
    pub points: Rc<TrackPoints>,
    recording: Rc<Recording>,
}

impl Track {
    /// # Errors
    /// What is wrong with it.
    pub fn of(points: Rc<TrackPoints>) -> Result<Self, CourseFault> {
        let recording = Recording::of(&points).map_err(CourseFault::Gpx)?.into();
        Ok(Self { points, recording })
    }
}

impl OwnCourse {
    /// The course along a recorded track from the file of this name.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn along(file: &str, track: Track, options: TrackOptions) -> Result<Self, CourseFault> {
        let mut read = Course::from_recording(&track.recording, &options).map_err(CourseFault::Gpx)?;
        read.course = read.course.as_lap().map_err(CourseFault::Course)?;
        let smoothing_m = Some(options.smoothing.m());
        let track = Some((track, options, read.report));
        let name = shortened(file.rsplit_once('.').map_or(file, |(name, _)| name));
        Ok(Self { name, file: Some(shortened(file)), course: read.course, smoothing_m, track })
    }

    /// Reads the rows of a course that was kept, or saved as a file.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn from_rows(
        name: &str,
        rows: &str,
        smoothing_m: Option<f64>,
        file: Option<&str>,
    ) -> Result<Self, CourseFault> {
        let course = lap_of(rows)?;
        let smoothing_m = smoothing_m.filter(|&m| SmoothingLength::new(m).is_ok());
        Ok(Self { name: shortened(name), file: file.map(shortened), course, smoothing_m, track: None })
    }

    /// The first lap of the same track, or the whole of it; none where it is no recorded track, or that is no course.
    #[must_use]
    pub fn cut(&self, first_lap: bool) -> Option<Self> {
        let (track, options, _) = self.track.as_ref()?;
        Self::along(self.file_name(), track.clone(), TrackOptions { first_lap, ..*options }).ok()
    }

    pub(crate) fn file_name(&self) -> &str {
        self.file.as_deref().unwrap_or(&self.name)
    }

    /// How much higher the end of a loop was recorded than its start, m; none where they meet.
    #[must_use]
    pub fn gap_m(&self) -> Option<f64> {
        let (_, _, found) = self.track.as_ref()?;
        Some(found.elevation.mismatch_m).filter(|gap| gap.abs() >= TrackElevation::CLOSED_M)
    }

    /// Why no lap of it may be timed; none where one may.
    #[must_use]
    pub fn fault(&self) -> Option<TrackFault> {
        self.track.as_ref().and_then(|(_, _, report)| report.track_use.fault())
    }

    /// The same track with other smoothing, another ground or another part of it, where that changes anything.
    #[must_use]
    pub fn read_again(&self, inputs: &LapInputs) -> Option<Result<Self, CourseFault>> {
        let (track, options, _) = self.track.as_ref()?;
        let wanted = inputs.track_options(options.first_lap);
        (*options != wanted).then(|| Self::along(self.file_name(), track.clone(), wanted))
    }
}

/// Where the course that is ridden comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin<'o> {
    /// It is invented.
    Invented,
    /// It was read from the file of this name.
    File(&'o str),
    /// The browser kept it.
    Kept,
    /// It stands in the sketch.
    Sketch,
}

fn shortened(name: &str) -> String {
    name.chars().take(60).collect()
}

impl LapInputs {
    /// How a track is read.
    #[must_use]
    pub const fn track_options(&self, first_lap: bool) -> TrackOptions {
        let [from, to] = self.part;
        TrackOptions { smoothing: self.smoothing, surface: self.track_ground, from, to, first_lap }
    }

    /// Where the course that is ridden comes from.
    #[must_use]
    pub fn origin<'o>(&self, own: Option<&'o OwnCourse>) -> Origin<'o> {
        match self.choice {
            CourseChoice::Demo(_) => Origin::Invented,
            CourseChoice::Sketch => Origin::Sketch,
            CourseChoice::Own => match own {
                Some(OwnCourse { file: None, .. }) => Origin::Kept,
                own => Origin::File(own.map_or("", OwnCourse::file_name)),
            },
        }
    }

    /// Why the track that is to be ridden is no course; none where it is one.
    #[must_use]
    pub fn fault(&self, own: Option<&OwnCourse>) -> Option<TrackFault> {
        own.filter(|_| self.choice == CourseChoice::Own).and_then(OwnCourse::fault)
    }

    /// The course before anything is painted over it; none while its file is still to be chosen.
    #[must_use]
    pub fn course(&self, own: Option<&OwnCourse>) -> Option<Course> {
        match self.choice {
            CourseChoice::Own => own.map(|own| own.course.clone()),
            CourseChoice::Demo(demo) => Some(demo.course()),
            CourseChoice::Sketch => Some((*self.sketch).clone()),
        }
    }
}
