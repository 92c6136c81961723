//! The bench as a form: every field of the table with its label, its control and room for a message.

use crate::bench::field::{Field, Group, Kind, Spec};
use crate::number::listed;
use crate::page::yours;
use gear_math::cage::CageClass;
use gear_math::gears::RollOutPreset;
use gear_math::{Cassette, Chainset};
use maud::{Markup, html};

fn bench() -> Markup {
    html! {
        (fieldset("a", "A · filled", Group::SetupA))
        (fieldset("b", "B · outlined", Group::SetupB))
        details id="more" {
            summary { "Wheel, derailleur, rider, rules" }
            div.groups {
                (fieldset("shared", "Wheel", Group::Wheel))
                (fieldset("shared", "Derailleurs", Group::Derailleur))
                (fieldset("shared", "Rider", Group::Rider))
                (fieldset("shared", "Counting, units, race rules", Group::Reckoning))
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
                ("Road bike, as measured", Group::RoadBike),
                ("Cross bike, and what shall differ", Group::CrossBike),
                ("Cross frame", Group::CrossFrame),
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
            summary { "Finer settings: your body, the ground, the limits" }
            div.measures {
                (fieldset("shared", "Rider and burden", Group::RideRider))
                (fieldset("shared", "Ground and air", Group::RideGround))
                (fieldset("shared", "What ends riding", Group::RideLimits))
                (fieldset("shared", "Short efforts", Group::RideEffort))
            }
        }
    }
}

/// Round the lap: the course, and how it is ridden.
fn lap() -> Markup {
    html! {
        div.grid { (section(Group::Lap)) (section(Group::LapFile)) }
        details {
            summary { "Sketch a course; change ground or add obstacles on a stretch" }
            (section(Group::LapSketch))
            p.quiet { "Separate with ; or |. Grounds: " (grounds()) "." }
        }
        details {
            summary { "Shifting and braking" }
            div.grid { (section(Group::LapHabits)) }
        }
    }
}

fn grounds() -> String {
    listed(&gear_math::Surface::ALL.map(gear_math::Surface::name))
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
        details { summary { "Finer settings" } div.measures { (section(finer)) } }
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
                @for (value, words) in choices { option value=(value) selected[*value == spec.start] { (words) } }
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
        Field::CassetteA | Field::CassetteB => select_that_sets(field, "Usual cassettes", &cassettes()),
        Field::RingsA | Field::RingsB => select_that_sets(field, "Usual rings", &chainsets()),
        Field::Capacity => select_that_sets(field, "Usual by cage length", &cages()),
        Field::PulleyCentres => select_that_sets(field, "Usual by cage length", &pulley_centres()),
        Field::RollOutLimit => select_that_sets(field, "From rule books", &roll_out_limits()),
        _ => html! {},
    }
}

/// A heading and the values under it, each with the words shown for it.
type Picks = Vec<(String, Vec<(String, String)>)>;

fn select_that_sets(field: Field, title: &str, picks: &Picks) -> Markup {
    html! {
        select.picks title=(title) data-sets=(field.spec().key) aria-label={ (title) ", put into " (field.spec().label) " " (side(field)) } {
            option value="" label=" " {}
            @for (heading, values) in picks {
                optgroup label=(heading) { @for (value, words) in values { option value=(value) { (words) } } }
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
            let heading = format!("{count} sprockets, common practice; makers differ in the middle");
            let words = format!("{}-{}: {cassette}", cassette.smallest(), cassette.largest());
            put(&mut picks, heading, (cassette.to_string(), words));
        }
    }
    picks
}

fn chainsets() -> Picks {
    let mut picks: Picks = Vec::new();
    for chainset in Chainset::common() {
        let heading = if chainset.difference() > 0 {
            "Pairs, common practice"
        } else {
            "Single rings, common practice"
        };
        put(&mut picks, heading.to_owned(), (chainset.to_string(), chainset.to_string()));
    }
    picks
}

fn cages() -> Picks {
    let mut picks: Picks = Vec::new();
    for class in CageClass::ALL {
        let (least, most) = class.total_capacity;
        let heading = format!("{} cage, common practice: {least} to {most}", class.name);
        for teeth in [least, most] {
            put(&mut picks, heading.clone(), (teeth.to_string(), format!("{teeth} teeth")));
        }
    }
    picks
}

fn pulley_centres() -> Picks {
    let mut picks: Picks = Vec::new();
    for class in CageClass::ALL {
        let (least, most) = class.pulley_centres_mm;
        for mm in [least, most] {
            let heading = format!("{} cage, common practice", class.name);
            put(&mut picks, heading, (mm.to_string(), format!("{mm} mm")));
        }
    }
    picks
}

fn roll_out_limits() -> Picks {
    let mut picks: Picks = Vec::new();
    for preset in RollOutPreset::ALL {
        let article = preset.article.map_or_else(String::new, |article| format!(", article {article}"));
        let words = format!("{} m, {} ({}{article})", preset.limit.m(), preset.category, preset.status);
        put(
            &mut picks,
            format!("{}, {}", preset.federation, preset.discipline),
            (preset.limit.m().to_string(), words),
        );
    }
    picks
}

fn put(picks: &mut Picks, heading: String, value: (String, String)) {
    match picks.iter_mut().find(|(known, _)| *known == heading) {
        Some((_, values)) => values.push(value),
        None => picks.push((heading, vec![value])),
    }
}
