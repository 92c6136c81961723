//! Values ready to be picked for a field.

use crate::bench::field::{Field, Group};
use crate::layout::words::picks as words;
use gear_math::cage::CageClass;
use gear_math::gears::RollOutPreset;
use gear_math::{Cassette, Chainset};
use maud::{Markup, html};

/// Ready-made values for fields that have some: usual cassettes, usual rings, usual capacities.
pub(crate) fn picks(field: Field) -> Markup {
    match field {
        Field::CassetteA | Field::CassetteB => select_that_sets(field, words::CASSETTES, &cassettes()),
        Field::RingsA | Field::RingsB => select_that_sets(field, words::RINGS, &chainsets()),
        Field::Capacity | Field::CapacityB => select_that_sets(field, words::CAGES, &cages()),
        Field::PulleyCentres | Field::PulleyCentresB => {
            select_that_sets(field, words::CAGES, &pulley_centres())
        }
        Field::RollOutLimit => select_that_sets(field, words::RULES, &roll_out_limits()),
        _ => html! {},
    }
}

/// A heading and the values under it, each with the words shown for it.
type Picks = Vec<(String, Vec<(String, String)>)>;

fn select_that_sets(field: Field, title: &str, picks: &Picks) -> Markup {
    html! {
        select.picks title=(title) tabindex=[is_cell(field).then_some("-1")] data-last=(words::LAST) data-sets=(field.spec().key) aria-label=(words::picks(title, field.spec().label, side(field))) {
            option value="" label=" " {}
            // The page puts them in once its first screen is painted: nobody picks before.
            template {
                @for (heading, values) in picks {
                    optgroup label=(heading) { @for (value, label) in values { option value=(value) { (label) } } }
                }
            }
        }
    }
}

/// Whether its field stands in a bike's column, where typing takes the place of picking for the keyboard.
fn is_cell(field: Field) -> bool {
    crate::bench::first::PARTS.as_flattened().contains(&field)
}

fn side(field: Field) -> &'static str {
    match field.spec().group {
        Group::SetupA => "A",
        Group::SetupB | Group::BikeB => "B",
        _ => "",
    }
}

/// Cassettes in common use, those with most sprockets first. Makers differ in the middle.
fn cassettes() -> Picks {
    let mut picks: Picks = Vec::new();
    for count in (1..=Cassette::MOST_SPROCKETS).rev() {
        for cassette in Cassette::common().filter(|it| it.sprockets().len() == count) {
            let value = cassette.everyday_name().unwrap_or_else(|| cassette.to_string());
            put(&mut picks, words::cassettes(count), (value, words::cassette(&cassette)));
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
