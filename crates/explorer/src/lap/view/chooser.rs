//! “Round the lap”: which course is ridden, and the choice of another.

use crate::bench::offered::{OWN_COURSE, SKETCH_COURSE};
use crate::lap::inputs::CourseChoice;
use crate::lap::section::LapSection;
use crate::lap::view::answer::course_name;
use crate::lap::words::course as words;
use gear_math::course::Demo;
use maud::{Markup, html};

/// What is ridden, and a button for every course at hand, that of the one which is ridden pressed.
#[must_use]
pub(crate) fn chooser(report: &LapSection) -> Markup {
    let (inputs, own) = (&report.lap_inputs, report.lap.own.as_deref());
    let [meadow, sand_pit] = Demo::ALL.map(words::demo);
    let choices = [
        ("meadow", meadow, CourseChoice::Demo(Demo::Meadow)),
        ("sand-pit", sand_pit, CourseChoice::Demo(Demo::SandPit)),
        (SKETCH_COURSE, words::DEMO_SKETCH, CourseChoice::Sketch),
    ];
    let own_choice = own.map(|own| (OWN_COURSE, own.name.as_str(), CourseChoice::Own));
    let lacks_file = report.lacks_file();
    html! {
        @if let Some(course) = inputs.course(own) {
            p { (words::loaded(&course_name(report), &course, inputs.origin(own), inputs.changes())) }
        }
        div.courses role="toolbar" aria-label=(words::CHOOSER) {
            @for (key, name, choice) in choices.into_iter().chain(own_choice) {
                @let is_ridden = choice == inputs.choice;
                button type="button" data-write={ "course=" (key) } aria-pressed=(is_ridden) tabindex=(tab(is_ridden)) { (name) }
            }
            button type="button" id="lap-open" tabindex=(tab(lacks_file)) { (words::OPEN_FILE) }
        }
    }
}

/// The one stop of the row.
const fn tab(is_stop: bool) -> &'static str {
    if is_stop { "0" } else { "-1" }
}
