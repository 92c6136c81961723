//! The bench as a form: every field of the table with its label, its control and room for a message.

use crate::bench::field::{Field, Group, Kind, Spec};
use crate::page::words::form as words;
use crate::page::yours;
use gear_math::cage::CageClass;
use gear_math::gears::RollOutPreset;
use gear_math::{Cassette, Chainset};
use maud::{Markup, html};

fn bench() -> Markup {
    html! {
        (fieldset("a", words::SETUP_A, Group::SetupA))
        (fieldset("b", words::SETUP_B, Group::SetupB))
        details id="more" {
            summary { (words::MORE) }
            div.groups {
                (fieldset("shared", words::WHEEL, Group::Wheel))
                (fieldset("shared", words::DERAILLEURS, Group::Derailleur))
                (fieldset("shared", words::RIDER, Group::Rider))
                (fieldset("shared", words::RECKONING, Group::Reckoning))
            }
        }
    }
}

/// The form that the page asks for by name.
#[must_use]
pub fn by_name(name: &str) -> Option<Markup> {
    match name {
        "bench" => Some(bench()),
        "probes" => Some(section(Group::Probes)),
        "chain" => Some(with_finer(&[("", Group::Chain)], Group::ChainFiner)),
        "gears-shown" => Some(section(Group::GearsShown)),
        "ride" => Some(ride()),
        "slope-speed" => Some(section(Group::RideProbe)),
        "lap" => Some(lap()),
        "search" => Some(section(Group::LapSearch)),
        "tyre" => Some(with_finer(&[("", Group::Tyre)], Group::TyreFiner)),
        "position" => Some(with_finer(
            &[
                (words::ROAD_BIKE, Group::RoadBike),
                (words::CROSS_BIKE, Group::CrossBike),
                (words::CROSS_FRAME, Group::CrossFrame),
            ],
            Group::PositionFiner,
        )),
        "sheet" => Some(section(Group::Sheet)),
        _ => None,
    }
}

/// Ride or run: what every rider knows, and the rest folded away.
fn ride() -> Markup {
    html! {
        div.measures { (section(Group::Ride)) }
        details {
            summary { (words::RIDE_FINER) }
            div.measures {
                (fieldset("shared", words::RIDE_RIDER, Group::RideRider))
                (fieldset("shared", words::RIDE_GROUND, Group::RideGround))
                (fieldset("shared", words::RIDE_LIMITS, Group::RideLimits))
                (fieldset("shared", words::RIDE_EFFORT, Group::RideEffort))
            }
        }
    }
}

/// Round the lap: the course, and how it is ridden.
fn lap() -> Markup {
    html! {
        div.grid { (section(Group::Lap)) (section(Group::LapFile)) }
        details {
            summary { (words::SKETCH) }
            (section(Group::LapSketch))
            p.quiet { (words::sketching()) }
        }
        details {
            summary { (words::HABITS) }
            div.grid { (section(Group::LapHabits)) }
        }
    }
}

/// The fields of a group that stand inside a section.
fn section(group: Group) -> Markup {
    html! { (claim(group)) @for field in fields_of(group) { (entry(field)) } }
}

/// Groups with their headings, and the finer settings folded away under them.
fn with_finer(groups: &[(&str, Group)], finer: Group) -> Markup {
    html! {
        @for &(legend, group) in groups {
            @if legend.is_empty() { div.measures { (section(group)) } }
            @else { fieldset { legend { (legend) } div.measures { (section(group)) } } }
        }
        details { summary { (words::FINER) } div.measures { (section(finer)) } }
    }
}

/// Room for the button that claims what the demo put in.
fn claim(group: Group) -> Markup {
    html! { @if let Some(place) = yours::claim_place(group) { div.mine id=(place) {} } }
}

fn fieldset(class: &str, legend: &str, group: Group) -> Markup {
    html! {
        fieldset class=(class) {
            legend { (legend) }
            (section(group))
        }
    }
}

fn fields_of(group: Group) -> impl Iterator<Item = Field> {
    Field::ALL.iter().copied().filter(move |field| field.spec().group == group)
}

fn entry(field: Field) -> Markup {
    let spec = field.spec();
    let class = match field {
        Field::CassetteA | Field::CassetteB => "field wide",
        _ if matches!(spec.kind, Kind::Lines(_)) => "field lines",
        _ => "field",
    };
    html! {
        div class=(class) {
            label for=(spec.key) { (spec.label) }
            span.entry {
                (control(spec))
                (picks(field))
                @if !spec.unit.is_empty() && !matches!(spec.kind, Kind::Slider(..)) { span.unit { (spec.unit) } }
            }
            @if let Kind::Slider(..) = spec.kind { output id={ "value-" (spec.key) } for=(spec.key) {} }
            div.says id={ "says-" (spec.key) } {}
        }
    }
}

fn control(spec: &Spec) -> Markup {
    let (key, says) = (spec.key, format!("says-{}", spec.key));
    match spec.kind {
        Kind::Choice(choices) => html! {
            select id=(key) data-field=(key) aria-describedby=(says) {
                @for (value, label) in choices { option value=(value) selected[*value == spec.start] { (label) } }
            }
        },
        Kind::Slider(min, max, step) => html! {
            input id=(key) data-field=(key) type="range" min=(min) max=(max) step=(step) value=(spec.start);
        },
        Kind::Text => html! { (text_input(key, &says, "text", spec.start)) },
        Kind::Lines(rows) => html! {
            textarea id=(key) data-field=(key) rows=(rows) aria-describedby=(says) spellcheck="false" autocapitalize="off" { (spec.start) }
        },
        Kind::Number => html! { (text_input(key, &says, "decimal", spec.start)) },
    }
}

fn text_input(key: &str, says: &str, mode: &str, start: &str) -> Markup {
    html! {
        input id=(key) data-field=(key) type="text" inputmode=(mode) value=(start) aria-describedby=(says)
            spellcheck="false" autocapitalize="off";
    }
}

/// Ready-made values for fields that have some: usual cassettes, usual rings, usual capacities.
fn picks(field: Field) -> Markup {
    match field {
        Field::CassetteA | Field::CassetteB => select_that_sets(field, words::CASSETTES, &cassettes()),
        Field::RingsA | Field::RingsB => select_that_sets(field, words::RINGS, &chainsets()),
        Field::Capacity => select_that_sets(field, words::CAGES, &cages()),
        Field::PulleyCentres => select_that_sets(field, words::CAGES, &pulley_centres()),
        Field::RollOutLimit => select_that_sets(field, words::RULES, &roll_out_limits()),
        _ => html! {},
    }
}

/// A heading and the values under it, each with the words shown for it.
type Picks = Vec<(String, Vec<(String, String)>)>;

fn select_that_sets(field: Field, title: &str, picks: &Picks) -> Markup {
    html! {
        select.picks title=(title) data-sets=(field.spec().key) aria-label=(words::picks(title, field.spec().label, side(field))) {
            option value="" label=" " {}
            @for (heading, values) in picks {
                optgroup label=(heading) { @for (value, label) in values { option value=(value) { (label) } } }
            }
        }
    }
}

fn side(field: Field) -> &'static str {
    match field.spec().group {
        Group::SetupA => "A",
        Group::SetupB => "B",
        _ => "",
    }
}

/// Cassettes in common use, those with most sprockets first. Makers differ in the middle.
fn cassettes() -> Picks {
    let mut picks: Picks = Vec::new();
    for count in (1..=Cassette::MOST_SPROCKETS).rev() {
        for cassette in Cassette::common().filter(|it| it.sprockets().len() == count) {
            put(&mut picks, words::cassettes(count), (cassette.to_string(), words::cassette(&cassette)));
        }
    }
    picks
}

fn chainsets() -> Picks {
    let mut picks: Picks = Vec::new();
    for chainset in Chainset::common() {
        put(&mut picks, words::rings(&chainset).to_owned(), (chainset.to_string(), chainset.to_string()));
    }
    picks
}

fn cages() -> Picks {
    let mut picks: Picks = Vec::new();
    for class in CageClass::ALL {
        let (least, most) = class.total_capacity;
        for teeth in [least, most] {
            put(&mut picks, words::capacities(&class), (teeth.to_string(), words::teeth(teeth)));
        }
    }
    picks
}

fn pulley_centres() -> Picks {
    let mut picks: Picks = Vec::new();
    for class in CageClass::ALL {
        let (least, most) = class.pulley_centres_mm;
        for mm in [least, most] {
            put(&mut picks, words::pulley_centres(&class), (mm.to_string(), format!("{mm} mm")));
        }
    }
    picks
}

fn roll_out_limits() -> Picks {
    let mut picks: Picks = Vec::new();
    for preset in RollOutPreset::ALL {
        let value = (preset.limit.m().to_string(), words::roll_out_limit(preset));
        put(&mut picks, words::rule_book(preset), value);
    }
    picks
}

fn put(picks: &mut Picks, heading: String, value: (String, String)) {
    match picks.iter_mut().find(|(known, _)| *known == heading) {
        Some((_, values)) => values.push(value),
        None => picks.push((heading, vec![value])),
    }
}
