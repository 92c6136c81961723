//! Messages: what a link could not tell, and what is wrong or worth knowing beside each field.

use crate::bench::complaint::Complaint;
use crate::bench::field::{Field, Group, Kind};
use crate::bench::owner::Owner;
use crate::number::{counted, percent, rpm, with_unit};
use crate::page::report::Report;
use crate::page::yours;
use crate::rings::cassettes::{TypedCassette, WhySoMany};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::Cassette;
use maud::{Markup, html};

/// Whose bench this is, as long as it is the demo's, and what is not the rider's yet.
#[must_use]
pub(crate) fn scenario(report: &Report, is_demo: bool) -> Markup {
    html! {
        @if is_demo {
            "The demo: Marit’s road-minded bike as it came (A) and the rings and cassette from her box of parts (B), for a lap of the Autumn meadow. Type your own over it."
        }
        (yours::overview(report))
    }
}

/// What the link or a button left to say.
#[must_use]
pub(crate) fn list(notices: &[String]) -> Markup {
    html! {
        @if !notices.is_empty() { ul { @for notice in notices { li { (notice) } } } }
    }
}

/// The message and the remark beside every field.
#[must_use]
pub(crate) fn beside_fields(report: &Report, complaints: &[Complaint]) -> Vec<(String, String)> {
    let says = Field::ALL.iter().map(|&field| {
        let complaint = complaints.iter().find(|complaint| complaint.field == field);
        (format!("says-{}", field.spec().key), beside(report, field, complaint).into_string())
    });
    let sliders = Field::ALL.iter().filter(|field| matches!(field.spec().kind, Kind::Slider(..)));
    let values = sliders.map(|&field| (format!("value-{}", field.spec().key), slider_value(report, field)));
    says.chain(values).collect()
}

/// Above an answer: what it leaves out because a field of the bench, or one of those it asks for itself, could not be
/// understood.
#[must_use]
pub(crate) fn doubts(report: &Report, complaints: &[Complaint], asked_for: &dyn Fn(Field) -> bool) -> Markup {
    let concerns = |complaint: &&Complaint| asked_for(complaint.field);
    html! {
        @if complaints.iter().any(|complaint| concerns(&complaint)) {
            p.doubt {
                @for complaint in complaints.iter().filter(concerns) {
                    "“" (label(complaint.field)) "” is left aside; this goes on " (kept(report, complaint)) ". "
                }
            }
        }
    }
}

/// A field's label, with the set-up it belongs to.
fn label(field: Field) -> String {
    let spec = field.spec();
    match spec.group {
        Group::SetupA => format!("A: {}", spec.label),
        Group::SetupB => format!("B: {}", spec.label),
        Group::RoadBike => format!("Road bike: {}", spec.label),
        Group::CrossBike => format!("Cross bike: {}", spec.label),
        _ => spec.label.to_owned(),
    }
}

fn beside(report: &Report, field: Field, complaint: Option<&Complaint>) -> Markup {
    html! {
        @match complaint {
            Some(complaint) => {
                span.stop { (complaint.message) }
                @if let Some(offer) = &complaint.offer { (offered(field, offer)) " " }
                "The page goes on " (kept(report, complaint)) "."
            }
            None => { (yours::tag(report, field)) (remark(report, field)) }
        }
        @match field {
            Field::CassetteA => (also_called_so(report, Side::A, field.spec().key)),
            Field::CassetteB => (also_called_so(report, Side::B, field.spec().key)),
            _ => {}
        }
    }
}

/// A button that writes what was perhaps meant.
fn offered(field: Field, offer: &str) -> Markup {
    let spec = field.spec();
    let question = format!("{offer}\u{a0}{}", spec.unit);
    html! { button type="button" data-write={ (spec.key) "=" (offer) } { (question.trim_end()) "?" } }
}

/// What the page goes on with in place of a field in error, and whose that is.
fn kept(report: &Report, complaint: &Complaint) -> String {
    let kept = &complaint.kept;
    match report.owners.get(complaint.field) {
        Owner::Unknown => "without it".to_owned(),
        Owner::Demo => format!("with {kept}, the demo’s"),
        Owner::Rider => format!("with {kept}, your last"),
        Owner::Usual => format!("with {kept}"),
    }
}

/// What a field in order says: the value it leads to, or its line of help.
fn remark(report: &Report, field: Field) -> String {
    match field {
        Field::CassetteA => cassette(report, Side::A),
        Field::CassetteB => cassette(report, Side::B),
        Field::MoreCassettes => further_cassettes(report),
        Field::Tyre => tyre_size(report),
        Field::RollOut => roll_out(report),
        Field::Rim => crate::tyre::words::remarks::rim(&report.tyre, field.spec().help),
        Field::TyreWidthMeasured => crate::tyre::words::remarks::width(&report.tyre, field.spec().help),
        _ => crate::ride::view::notes::remark(&report.ride_section(), field)
            .unwrap_or_else(|| field.spec().help.to_owned()),
    }
}

/// How many sprockets there are; of a cassette typed by its name what was taken for it and why.
fn cassette(report: &Report, side: Side) -> String {
    let setup = report.rings.setup(side);
    let cassette = &setup.drivetrain.cassette;
    let sprockets = counted(cassette.sprockets().len(), "sprocket", "sprockets");
    match setup.typed.name {
        Some((name, why)) => format!(
            "{sprockets}{}: {cassette}; makers differ in the middle",
            why_so_many(why, &name.to_string(), &side.other().to_string())
        ),
        None if cassette.sprockets().len() > 1 => {
            format!("{sprockets}, {} to {}", cassette.smallest(), cassette.largest())
        }
        None => sprockets,
    }
}

fn why_so_many(why: WhySoMany, name: &str, other: &str) -> String {
    match why {
        WhySoMany::Said | WhySoMany::NoneSuch => String::new(),
        WhySoMany::OnlyOne => format!(" taken, the only usual {name}"),
        WhySoMany::AsOther => format!(" taken, as {other} has"),
        WhySoMany::BothNames => " taken, the most usual number that A and B can both have".to_owned(),
        WhySoMany::NearestTo(count) => format!(" taken, the nearest to {other}’s {count}"),
        WhySoMany::Usual => " taken, the most usual".to_owned(),
    }
}

/// The lines of further cassettes that are names, and what they are tried as.
fn further_cassettes(report: &Report) -> String {
    let mut words = Field::MoreCassettes.spec().help.to_owned();
    for (_, TypedCassette { cassette, name }) in &*report.lap_inputs.search.cassettes {
        if let Some((name, why)) = name {
            let why = why_so_many(*why, &name.to_string(), "A");
            words +=
                &format!(". {name} is tried as {cassette}, {} sprockets{why}", cassette.sprockets().len());
        }
    }
    words
}

/// Beside a cassette typed by its name: buttons for what else it may be.
fn also_called_so(report: &Report, side: Side, key: &str) -> Markup {
    let SetupReport { typed: TypedCassette { cassette: taken, name }, .. } = report.rings.setup(side);
    let Some((name, why)) = name else { return html! {} };
    let is_taken = |cassette: &Cassette| *why != WhySoMany::NoneSuch && cassette == taken;
    let [smallest, largest] = name.ends();
    html! {
        span.offers {
            @for other in name.cassettes().filter(|it| !is_taken(it)) {
                button type="button" data-write={ (key) "=" (other) } title=(other) { (other.sprockets().len()) " sprockets" }
            }
            button type="button" data-write={ (key) "=" (smallest) ", " (largest) } { "only " (smallest) " and " (largest) }
        }
    }
}

fn tyre_size(report: &Report) -> String {
    let wheel = &report.rings.wheel;
    format!(
        "{}: circumference about {}, ±{}",
        wheel.tyre,
        with_unit(wheel.estimate().circumference.mm(), 0, "mm"),
        with_unit(wheel.estimate().give_or_take_mm(), 0, "mm")
    )
}

fn roll_out(report: &Report) -> String {
    let Some(measured) = report.rings.wheel.check_measured() else {
        return Field::RollOut.spec().help.to_owned();
    };
    let deviation = measured.deviation.percent();
    if deviation.abs() < 0.05 {
        return "Used everywhere; the same as the estimate".to_owned();
    }
    let direction = if deviation < 0.0 { "shorter" } else { "longer" };
    let doubt = if measured.is_likely { "" } else { "; more than a tyre explains, so check both" };
    format!("Used everywhere; {} {direction} than the estimate{doubt}", percent(deviation.abs(), 1))
}

fn slider_value(report: &Report, field: Field) -> String {
    match field {
        Field::GearA => gear_shown(report, Side::A),
        Field::GearB => gear_shown(report, Side::B),
        Field::ProbeCadence => rpm(report.rings.probe.cadence),
        Field::SlopeSpeed => report.rings.unit.print(report.rings.probe.uphill),
        _ => report.rings.unit.print(report.rings.probe.speed),
    }
}

fn gear_shown(report: &Report, side: Side) -> String {
    report.chain.chains[side as usize]
        .as_ref()
        .map_or("–".to_owned(), |chain| chain.station().fit.gear.to_string())
}
