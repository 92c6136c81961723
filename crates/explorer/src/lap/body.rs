//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::lap::pictures::{found, gain, gear_times, profile};
use crate::layout::figure::figure;
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    form data-form="lap" class="room" aria-label="Course" autocomplete="off" novalidate { }
    div id="lap-drop" class="files" {
    p { label for="lap-file" { "A recorded lap (GPX), or a course saved here" } " " input type="file" id="lap-file" accept=".gpx,.json"; span class="quiet" { "or drop it anywhere on this page. It is read on this machine and never leaves it." } }
    div id="lap-course" role="status" { }
    p id="kept-row" hidden { label for="kept" { "Kept in this browser" } " " select id="kept" { } " " button type="button" id="forget" { "Forget it" } }
    p { label for="keep-name" { "Keep this course as" } " " input id="keep-name" type="text" maxlength="60"; button type="button" id="keep" { "Keep" } " " button type="button" id="save-course" { "Save as a file" } " " button type="button" data-act="sketch-it" { "Put into the sketch" } }
    p id="kept-says" class="quiet" role="status" { }
    p class="quiet" { "A sketch travels in the link, which stays below 2000 characters with up to 110 stretches, or 35 when nearly every other field is changed. A recorded course goes into the sketch in 110 or fewer. A saved course is JSON: " code { "{\"remountCourse\": 1, \"name\": \"…\", \"stretches\": [\"120; 1.5; firm grass\", …]}" } ", each stretch written as in the sketch." }
    }
    div id="lap-places" { }
    div class="prose care" {
    p { "Walk the course before you ride it: the plan knows neither ruts and lines nor other riders. Ride or record it only while it is open to you, and give way to whoever has the right of way." }
    p { "Descents, bends and braking are assumed, not judged: the lap rolls downhill as fast as air and ground let it and brakes as hard as “Braking into bends” says, which wet ground may not hold. Ride down what you control." }
    }
    (figure(&profile::PROFILE))
    (figure(&gain::GAIN))
    div id="lap-numbers" { }
    (figure(&gear_times::GEAR_TIMES))
    div id="lap-gears" { }
    h3 id="search" { "What would be quickest here?" }
    p class="quiet lead" { "Tries the rings in this range that are made, with every usual cassette of as many sprockets as you ask for, further ones, and A and B as they are, as far as frame and chain allow and the derailleur takes them without a gear to avoid. If you counted the links on your bike, that chain must suit. Every one rides the lap in full." }
    div data-form="search" class="room trio" { }
    div class="seek" {
    button type="button" id="search-start" { "Search" }
    button type="button" id="search-stop" aria-disabled="true" { "Cancel" }
    progress id="search-bar" aria-labelledby="search" value="0" hidden { }
    span id="search-left" class="quiet" { }
    }
    div id="lap-found" { }
    (figure(&found::FOUND))
        }
}
