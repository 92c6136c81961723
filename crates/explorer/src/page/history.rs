//! What the bench looked like before: undo.

use crate::bench::bench::Bench;
use crate::bench::field::Field;
use crate::lap::kept_course::KeptCourse;
use crate::lap::own_course::OwnCourse;
use crate::page::scenario::Scenario;
use std::rc::Rc;

/// How many steps back are kept.
const DEPTH: usize = 100;
/// Courses of one's own take no more room than this, all steps together, bytes.
const ROOM: usize = 48 << 20;

/// A bench as it was, with the last good values it had and the course from a file that was at hand.
pub(crate) type Earlier = (Bench, Scenario, Option<KeptCourse>);

/// Earlier benches, newest last. Typing on in one field counts as one step.
#[derive(Debug, Default)]
pub(crate) struct History {
    earlier: Vec<Earlier>,
    typing_in: Option<Field>,
}

impl History {
    /// Remembers a bench before it is changed; `typing_in` names the one field being typed into. Whether that begins a step
    /// of its own.
    pub(crate) fn remember(
        &mut self,
        bench: &Bench,
        good: &Scenario,
        own: Option<&Rc<OwnCourse>>,
        typing_in: Option<Field>,
    ) -> bool {
        let goes_on = typing_in.is_some() && typing_in == self.typing_in;
        self.typing_in = typing_in;
        if goes_on {
            return false;
        }
        if self.earlier.len() == DEPTH {
            self.earlier.remove(0);
        }
        self.earlier.push((bench.clone(), good.clone(), own.map(KeptCourse::of)));
        self.make_room();
        true
    }

    /// Lets the courses of the oldest steps go that there is no room for. What steps share is kept once.
    fn make_room(&mut self) {
        let (mut taken, mut known) = (0, Vec::new());
        for course in self.earlier.iter_mut().rev().filter_map(|(.., course)| course.as_mut()) {
            let (place, bytes) = course.weight();
            if !known.contains(&place) {
                known.push(place);
                taken += bytes;
            }
            if taken > ROOM {
                course.let_go();
            }
        }
    }

    /// Ends a run of typing: what comes next is a step of its own.
    pub(crate) fn pause(&mut self) {
        self.typing_in = None;
    }

    /// The bench one step back.
    pub(crate) fn back(&mut self) -> Option<Earlier> {
        self.typing_in = None;
        self.earlier.pop()
    }

    /// Whether there is a step to take back.
    #[must_use]
    pub(crate) fn is_empty(&self) -> bool {
        self.earlier.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typing_in_one_field_is_one_step() {
        let (mut history, first, good) = (History::default(), Bench::default(), Scenario::default());
        let second = first.swapped();
        history.remember(&first, &good, None, Some(Field::RingsA));
        history.remember(&second, &good, None, Some(Field::RingsA));
        history.remember(&second, &good, None, Some(Field::RingsB));
        history.pause();
        history.remember(&first, &good, None, Some(Field::RingsB));
        let mut back = || history.back().map(|(bench, ..)| bench);
        assert_eq!(
            [back(), back(), back(), back()],
            [Some(first.clone()), Some(second), Some(first.clone()), None]
        );
    }
}
