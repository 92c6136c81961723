//! What of the section never changes: room for text and pictures, and lasting cautions.

use crate::layout::figure::figure;
use crate::ride::pictures::{climb, slopes, tornado, verdicts};
use maud::{Markup, html};

/// What stands between the answer and how it was worked out.
pub(crate) fn body() -> Markup {
    html! {
    form data-form="ride" class="fields" aria-label="Rider, bike and climb" autocomplete="off" novalidate { }
    (figure(&slopes::SLOPES))
    div data-form="slope-speed" class="probes" { }
    div id="ride-at-speed" { }
    p class="quiet lead" { "These are estimates from published averages, not promises; real ground and real legs differ, and the grey band is the honest answer. Where it is too close to call, choose by grip, by balance and by what comes next." }
    div id="ride-ends" { }
    div id="ride-speeds" { }
    (figure(&verdicts::VERDICTS))
    div id="ride-map" { }
    (figure(&climb::CLIMB))
    div id="ride-climb" { }
    (figure(&tornado::TORNADO))
    div id="ride-swings" { }
    div class="prose care" {
    p { "Do not ride or run beyond what you control: on steep, wet ground the front wheel can lift and throw you back, the rear one slip and throw you sideways." }
    p { "Running with a bike loads ankles, knees and back, and on the shoulder only one side of you. Build it up slowly; practise getting off and on at walking pace first, on flat grass." }
    p { "This is not medical advice. Hard efforts uphill strain the heart. If your heart, lungs or joints are not sound, if hard exercise is new to you, or if you feel chest pain, dizziness or unusual breathlessness: stop, and ask a doctor before you try again." }
    p { "The studies behind this measured small groups of mostly young, trained adults. Children, downhill and slopes beyond 45 % were not part of them, so nothing here is about those; what the lap assumes downhill it says itself." }
    }
        }
}
