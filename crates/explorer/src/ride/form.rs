//! The form of the section.

use crate::bench::field::Group;
use crate::layout::form::{fieldset, section};
use crate::ride::words::form as words;
use maud::{Markup, html};

/// What every rider knows, and the rest folded away.
pub(crate) fn ride() -> Markup {
    html! {
        div.measures { (section(Group::Ride)) }
        details {
            summary { (words::FINER) }
            div.measures {
                (fieldset(words::RIDER, &section(Group::RideRider)))
                (fieldset(words::GROUND, &section(Group::RideGround)))
                (fieldset(words::LIMITS, &section(Group::RideLimits)))
                (fieldset(words::EFFORT, &section(Group::RideEffort)))
            }
        }
    }
}
