//! A course of the rider’s own as undo keeps it: a recorded track as its points alone, which all steps share.

use crate::lap::own_course::{OwnCourse, Track};
use gear_math::course::{TrackOptions, TrackPoints};
use std::rc::Rc;

/// What it takes to have a course again.
#[derive(Debug, Clone)]
pub(crate) enum KeptCourse {
    /// A recorded track: its file, its points and how they are used.
    Track(String, Rc<TrackPoints>, TrackOptions),
    /// Any other.
    Whole(Rc<OwnCourse>),
    /// Nothing but its name: it would take too much room.
    Gone(String),
}

impl KeptCourse {
    pub(crate) fn of(own: &Rc<OwnCourse>) -> Self {
        match &own.track {
            Some((track, options, _)) => {
                Self::Track(own.file_name().to_owned(), Rc::clone(&track.points), *options)
            }
            None => Self::Whole(Rc::clone(own)),
        }
    }

    /// The course, the one at hand if it is that.
    ///
    /// # Errors
    /// The name of a course that is gone.
    pub(crate) fn restored(self, at_hand: Option<&Rc<OwnCourse>>) -> Result<Rc<OwnCourse>, String> {
        let (file, points, options) = match self {
            Self::Track(file, points, options) => (file, points, options),
            Self::Whole(own) => return Ok(own),
            Self::Gone(name) => return Err(name),
        };
        let is_it = |(track, ..): &&(Track, _, _)| Rc::ptr_eq(&track.points, &points);
        let known = at_hand.and_then(|own| Some((own, own.track.as_ref().filter(is_it)?)));
        let track = match known {
            Some((own, (_, as_used, _))) if *as_used == options => return Ok(Rc::clone(own)),
            Some((_, (track, ..))) => Ok(track.clone()),
            None => Track::of(points),
        };
        let again = track.and_then(|track| OwnCourse::along(&file, track, options));
        again.map(Rc::new).map_err(|_| file)
    }

    /// Where what it keeps lies, and how many bytes that is.
    pub(crate) fn weight(&self) -> (*const (), usize) {
        match self {
            Self::Track(_, points, _) => (Rc::as_ptr(points).cast(), size_of_val(points.numbers())),
            Self::Whole(own) => (Rc::as_ptr(own).cast(), size_of_val(own.course.segments())),
            Self::Gone(_) => (std::ptr::null(), 0),
        }
    }

    /// Keeps nothing but the name.
    pub(crate) fn let_go(&mut self) {
        *self = match self {
            Self::Track(file, ..) => Self::Gone(core::mem::take(file)),
            Self::Whole(own) => Self::Gone(own.name.clone()),
            Self::Gone(_) => return,
        };
    }
}
