//! Messages: what a link could not tell, and what is wrong or worth knowing beside each field.

use crate::bench::bench::Bench;
use crate::bench::complaint::Complaint;
use crate::bench::field::{Field, Kind};
use crate::layout::form::unit_id;
use crate::number::rpm;
use crate::page::report::Report;
use crate::page::words::{notices as words, remarks};
use crate::page::yours;
use crate::ride::section::RideSection;
use crate::rings::cassettes::{TypedCassette, WhySoMany};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use crate::tyre::words::remarks as tyre_remarks;
use crate::units;
use gear_math::Cassette;
use maud::{Markup, html};

/// Whose bench this is, as long as it is the demo's, and what is not the rider's yet.
#[must_use]
pub(crate) fn scenario(report: &Report, bench: &Bench) -> Markup {
    html! {
        @if bench.is_demo() { (words::DEMO) }
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
    let ride = report.ride_section();
    let says = Field::ALL.iter().map(|&field| {
        let complaint = complaints.iter().find(|complaint| complaint.field == field);
        (format!("says-{}", field.spec().key), beside(report, &ride, field, complaint).into_string())
    });
    let sliders = Field::ALL.iter().filter(|field| matches!(field.spec().kind, Kind::Slider(..)));
    let values = sliders.map(|&field| (format!("value-{}", field.spec().key), slider_value(report, field)));
    says.chain(values).collect()
}

/// The unit beside every field that has a choice of units.
pub(crate) fn units() -> impl Iterator<Item = (String, String)> {
    let chosen = Field::ALL.iter().filter(|field| field.has_other_unit());
    chosen.map(|field| (unit_id(*field), field.unit().to_owned()))
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
                    (words::left_aside(complaint.field.spec(), &kept(report, complaint))) " "
                }
            }
        }
    }
}

fn beside(report: &Report, ride: &RideSection, field: Field, complaint: Option<&Complaint>) -> Markup {
    html! {
        @match complaint {
            Some(complaint) => {
                span.stop { (complaint.message) }
                @if let Some(offer) = &complaint.offer { (offered(field, offer)) " " }
                (words::goes_on(&kept(report, complaint)))
            }
            None => { (yours::tag(report, field)) (shown(report, ride, field)) }
        }
        @match field {
            Field::CassetteA => (also_called_so(report, Side::A, field.spec().key)),
            Field::CassetteB => (also_called_so(report, Side::B, field.spec().key)),
            _ => (back_to_a(report, field)),
        }
    }
}

/// A button that writes what was perhaps meant.
fn offered(field: Field, offer: &str) -> Markup {
    html! { button type="button" data-write={ (field.spec().key) "=" (offer) } { (words::offer(&field.told(offer))) } }
}

/// What the page goes on with in place of a field in error, and whose that is.
fn kept(report: &Report, complaint: &Complaint) -> String {
    words::kept(report.owners.get(complaint.field), complaint.kept.as_deref())
}

/// What a field in order says; which sprockets a cassette has is always in sight.
fn shown(report: &Report, ride: &RideSection, field: Field) -> Markup {
    let remark = remark(report, ride, field);
    let is_listed = matches!(field, Field::CassetteA | Field::CassetteB);
    html! { @if is_listed { span.listed { (remark) } } @else { (remark) } }
}

/// What a field in order says: the value it leads to, or its line of help.
fn remark(report: &Report, ride: &RideSection, field: Field) -> String {
    match field {
        Field::CassetteA => remarks::cassette(report.rings.setup(Side::A)),
        Field::CassetteB => remarks::cassette(report.rings.setup(Side::B)),
        Field::MoreCassettes => further_cassettes(report),
        Field::BoxParts => remarks::box_parts(field.spec().help, report.box_text),
        _ if field.as_on_a().is_some_and(|_| !report.owners.is_bs_own(field)) => String::new(),
        Field::Tyre => remarks::tyre_size(report.rings.wheel(Side::A)),
        Field::TyreB => remarks::tyre_size(report.rings.wheel(Side::B)),
        Field::RollOut => roll_out(report, Side::A),
        Field::RollOutB => roll_out(report, Side::B),
        Field::Rim => tyre_remarks::rim(&report.tyre, field.spec().help),
        Field::RimB => tyre_remarks::rim(report.tyre_of_b(), field.spec().help),
        Field::TyreWidthMeasured => tyre_remarks::width(&report.tyre, field.spec().help),
        Field::TyreWidthB => tyre_remarks::width(report.tyre_of_b(), field.spec().help),
        _ if field.as_on_a().is_some() => String::new(),
        _ => crate::ride::view::notes::remark(ride, field).unwrap_or_else(|| field.help().into_owned()),
    }
}

/// The button that makes a field of B as A’s again.
fn back_to_a(report: &Report, field: Field) -> Markup {
    let spec = field.spec();
    let is_own = field.as_on_a().is_some() && report.owners.is_bs_own(field);
    html! {
        @if is_own && !matches!(spec.kind, Kind::Choice(_)) {
            " " button.back type="button" data-write={ (spec.key) "=" } aria-label=(words::as_on_a(spec.label)) { (words::AS_ON_A) }
        }
    }
}

/// The lines of further cassettes that are names, and what they are tried as.
fn further_cassettes(report: &Report) -> String {
    let typed = report.lap_inputs.search.cassettes.iter().map(|(_, typed)| typed);
    remarks::further_cassettes(Field::MoreCassettes.spec().help, typed)
}

/// Beside a cassette typed by its name: buttons for what else it may be.
fn also_called_so(report: &Report, side: Side, key: &str) -> Markup {
    let SetupReport { typed: TypedCassette { cassette: taken, name }, .. } = report.rings.setup(side);
    let Some((name, why)) = name.filter(|(_, why)| *why != WhySoMany::Said) else { return html! {} };
    let is_taken = |cassette: &Cassette| why != WhySoMany::NoneSuch && cassette == taken;
    let [smallest, largest] = name.ends();
    html! {
        span.offers {
            @for other in name.cassettes().filter(|it| !is_taken(it)) {
                " " button.back type="button" data-write={ (key) "=" (other) } title=(other) { (words::sprockets(other.sprockets().len())) }
            }
            " " button.back type="button" data-write={ (key) "=" (smallest) ", " (largest) } { (words::only(&smallest.to_string(), &largest.to_string())) }
        }
    }
}

fn roll_out(report: &Report, side: Side) -> String {
    let measured = report.rings.wheel(side).check_measured();
    measured.map_or(Field::RollOut.spec().help.to_owned(), |measured| remarks::roll_out(&measured))
}

fn slider_value(report: &Report, field: Field) -> String {
    match field {
        Field::GearA => gear_shown(report, Side::A),
        Field::GearB => gear_shown(report, Side::B),
        Field::ProbeCadence => rpm(report.rings.probe.cadence),
        Field::SlopeSpeed => units::speed(report.rings.probe.uphill),
        _ => units::speed(report.rings.probe.speed),
    }
}

fn gear_shown(report: &Report, side: Side) -> String {
    report.chain.chains[side as usize]
        .as_ref()
        .map_or("–".to_owned(), |chain| chain.station().fit.gear.to_string())
}
