//! The one verdict on cage and chain of a set-up in words, for the page, the lap and the sheet alike.

use crate::chain::section::ChainSection;
use crate::chain::view::cage::{teeth, with_article};
use crate::chain::view::path::{few, in_state, links, name_of};
use crate::layout::pieces::name;
use crate::number::{counted, listed, plain, with_unit};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::Gear;
use gear_math::cage::{CageClass, CageFinding, DerailleurFigure};
use gear_math::chain::{
    CageDoubt, CageLength, CageNeed, CageOutcome, ClassTrial, DerailleurNeed, GearState, Standing,
};
use gear_math::gears::GearSet;
use maud::{Markup, html};

/// The verdict, why, and the next step.
pub(crate) struct Said {
    /// Class of the verdict: good, care or stop.
    class: &'static str,
    verdict: String,
    why: String,
    step: String,
}

impl Said {
    /// For the page.
    pub(crate) fn marked(&self, side: Side) -> Markup {
        let is = if self.verdict.starts_with("not") { "is " } else { "" };
        html! { (name(side)) " " (is) b class=(self.class) { (self.verdict) } (self.why) ". " (self.step) "." }
    }

    /// The verdict without its next step.
    pub(crate) fn plain_verdict(&self) -> String {
        format!("{}{}", self.verdict, self.why)
    }

    /// The next step.
    pub(crate) fn step(&self) -> &str {
        &self.step
    }
}

/// What is said of one set-up.
#[must_use]
pub(crate) fn said(report: &ChainSection, side: Side) -> Said {
    let setup = report.rings.setup(side);
    let keep = || keep(report, setup);
    match &setup.cage.outcome {
        CageOutcome::Fits => of("good", "fits", spare(setup), keep()),
        CageOutcome::FitsOnPaper => of("care", "fits on paper", whole_links(setup), keep()),
        CageOutcome::FitsAvoidingGears => avoiding(report, setup),
        CageOutcome::OtherChain { hangs } => other_chain(report, setup, *hangs),
        CageOutcome::NotKnown(doubt) => not_known(report, setup, doubt),
        CageOutcome::DoesNotFit(need) => {
            of("stop", "does not fit", reasons(setup), needed(report, setup, need))
        }
    }
}

fn of(class: &'static str, verdict: &str, why: String, step: String) -> Said {
    Said { class, verdict: verdict.to_owned(), why, step }
}

fn gears(setup: &SetupReport, set: GearSet) -> Vec<Gear> {
    set.gears(&setup.drivetrain).collect()
}

fn named(setup: &SetupReport, set: GearSet) -> String {
    few(&gears(setup, set))
}

/// Teeth to spare, where the capacity is known.
fn spare(setup: &SetupReport) -> String {
    let spare = setup.cage.check.spare.and_then(|spare| usize::try_from(spare).ok());
    match spare {
        None => ": every gear runs".to_owned(),
        Some(0) => ", with nothing to spare".to_owned(),
        Some(spare) => format!(", with {} of capacity to spare", counted(spare, "tooth", "teeth")),
    }
}

fn whole_links(setup: &SetupReport) -> String {
    let to_try = named(setup, setup.cage.to_try);
    format!("{}: a chain comes in whole pairs of links, so check {to_try} for slack", spare(setup))
}

/// “Keep the derailleur, with a chain of 110 links”.
fn keep(report: &ChainSection, setup: &SetupReport) -> String {
    format!("Keep the derailleur{}", chain_of(report, setup, ", with a chain of "))
}

/// A chain's links and how many more that are than now, behind some words; nothing where no chain can be told.
fn chain_of(report: &ChainSection, setup: &SetupReport, before: &str) -> String {
    let Some(fit) = setup.cage.links.map(gear_math::ChainLinks::count) else { return String::new() };
    let (than, other) = match setup.cage.fitted {
        Some(fitted) => ("than now", Some(fitted)),
        None if setup.side == Side::B => ("than A’s", report.rings.setup(Side::A).cage.links),
        None => ("", None),
    };
    let difference = other.map_or(0, |other| i32::from(fit) - i32::from(other.count()));
    let more = if difference > 0 { "more" } else { "fewer" };
    let compared =
        if difference == 0 { String::new() } else { format!(", {} {more} {than}", difference.abs()) };
    format!("{before}{}{compared}", links(fit))
}

fn avoiding(report: &ChainSection, setup: &SetupReport) -> Said {
    let cage = &setup.cage;
    let why = match cage.check.spare {
        Some(spare) if spare < 0 => {
            format!(": {} short of capacity, so the chain hangs there", teeth(spare.unsigned_abs() as u16))
        }
        _ => ": the chain hangs there".to_owned(),
    };
    let check = named(setup, cage.to_try);
    let check = if check.is_empty() { check } else { format!("; check {check} for slack") };
    let verdict = format!("fits if you never use {}", named(setup, cage.avoid_by_cage()));
    of("care", &verdict, why, keep(report, setup) + &check)
}

fn other_chain(report: &ChainSection, setup: &SetupReport, hangs: GearSet) -> Said {
    let cage = &setup.cage;
    let fitted = cage.fitted.map_or(0, gear_math::ChainLinks::count);
    if cage.too_short.is_empty() {
        let why = format!(": the {} fitted hang in {}", links(fitted), named(setup, hangs));
        let fewer = cage.links.map_or(0, |fit| fitted.saturating_sub(fit.count()));
        return of(
            "care",
            "needs a shorter chain",
            why,
            format!("Take {} out, and keep the derailleur", links(fewer)),
        );
    }
    let step = format!("{}, and keep the derailleur", chain_of(report, setup, "Fit a chain of "));
    of("stop", "needs a longer chain", format!(": {}", breaks(setup)), step)
}

/// What a chain that is too short does.
fn breaks(setup: &SetupReport) -> String {
    let fitted = setup.cage.fitted.map_or(0, gear_math::ChainLinks::count);
    let too_short = named(setup, setup.cage.too_short);
    format!(
        "the {} fitted are too short for {too_short}: do not ride or force it, something breaks",
        links(fitted)
    )
}

fn not_known(report: &ChainSection, setup: &SetupReport, doubt: &CageDoubt) -> Said {
    let (why, step) = match doubt {
        CageDoubt::CageLength(trials) => (by_length(setup, trials), look_up_capacity(setup)),
        CageDoubt::Figure(figure) => (open_figure(setup, *figure), format!("Look up its {figure}")),
        CageDoubt::Measures(measures) => {
            let names: Vec<&str> = measures.iter().map(|&it| name_of(it)).collect();
            let first = names.first().copied().unwrap_or_default();
            (could_turn(report, setup, &names), format!("Measure the {first} first"))
        }
        CageDoubt::Disagree { stated, by_centres } => (
            format!(
                "a capacity of {stated} teeth and {} between the pulley centres do not go together: such a cage takes about {}",
                with_unit(setup.cage.length.centres().mm(), 0, "mm"),
                plain(*by_centres, 0)
            ),
            "Measure again, and look the capacity up again".to_owned(),
        ),
        CageDoubt::Path(error) => (error.to_string(), "Measure again".to_owned()),
    };
    of("care", "not known to fit", format!(": {why}"), step)
}

fn look_up_capacity(setup: &SetupReport) -> String {
    format!(
        "Look up the derailleur’s total capacity, {} are needed, or measure from one pulley’s bolt to the other’s",
        teeth(setup.cage.check.needed)
    )
}

/// “works with a medium or long cage; a short one hangs slack in 34×11 and 34×12”.
fn by_length(setup: &SetupReport, trials: &[ClassTrial]) -> String {
    let runs = |trial: &&ClassTrial| trial.standing == Standing::Runs;
    // Where a long cage will do, a longer one is nothing to tell.
    let told = trials
        .iter()
        .position(|trial| trial.class.name == LONG && runs(&trial))
        .map_or(trials.len(), |it| it + 1);
    let works: Vec<&str> = trials[..told].iter().filter(runs).map(|it| it.class.name).collect();
    let mut parts = Vec::new();
    if !works.is_empty() {
        parts.push(format!("works with a {} cage", either(&works)));
    }
    for trial in trials[..told].iter().filter(|trial| !runs(trial)) {
        parts.push(format!("a {} one hangs slack in {}", trial.class.name, named(setup, trial.hangs)));
    }
    parts.join("; ")
}

/// The class of cages that those for wide ranges follow.
const LONG: &str = CageClass::ALL[2].name;

fn either(names: &[&str]) -> String {
    listed(names).replace(" and ", " or ")
}

fn open_figure(setup: &SetupReport, figure: DerailleurFigure) -> String {
    let drivetrain = &setup.drivetrain;
    let open = match figure {
        DerailleurFigure::RingDifference => format!(
            "rings {} apart are more than every front derailleur spans",
            teeth(drivetrain.chainset.difference())
        ),
        _ => format!("whether the derailleur clears the {} is open", drivetrain.cassette.largest()),
    };
    let avoid = named(setup, setup.cage.avoid_by_cage());
    match setup.cage.check.spare {
        _ if !avoid.is_empty() => format!("{open}, and in {avoid} the chain hangs"),
        Some(spare) if spare >= 0 => format!("the capacity is enough{}, but {open}", spare_in_words(setup)),
        _ => open,
    }
}

fn spare_in_words(setup: &SetupReport) -> String {
    spare(setup).replace(" of capacity", "")
}

fn could_turn(report: &ChainSection, setup: &SetupReport, names: &[&str]) -> String {
    let others = names.len().saturating_sub(TOLD);
    let mut told: Vec<String> = names.iter().take(TOLD).map(|&name| name.to_owned()).collect();
    if others > 0 {
        told.push(counted(others, "more measure", "more measures"));
    }
    let usual = by_usual_measures(report, setup);
    format!("{usual}, but within their usual range {} can turn that", listed(&told))
}

/// Measures named in a sentence; more are counted.
const TOLD: usize = 2;

/// What the fitted chain, or the one that suits best, does if everything left empty is as usual.
fn by_usual_measures(report: &ChainSection, setup: &SetupReport) -> String {
    let hangs = report.chain.chains[setup.side as usize].as_ref().map(|chain| {
        let fit = if setup.cage.fitted.is_some() { &chain.advice.fit } else { &chain.advice.suited };
        few(&in_state(fit, GearState::Slack))
    });
    let chain = setup
        .cage
        .fitted
        .map_or("the chain".to_owned(), |fitted| format!("a chain of {}", links(fitted.count())));
    match hangs {
        Ok(gears) if !gears.is_empty() => format!("by usual measures {chain} hangs in {gears} only"),
        _ => format!("by usual measures {chain} runs in every gear"),
    }
}

/// What speaks against the set-up.
fn reasons(setup: &SetupReport) -> String {
    let mut reasons: Vec<String> = setup.cage.check.findings.iter().map(reason).collect();
    if reasons.is_empty() {
        reasons.push(format!("the chain hangs in {}", named(setup, setup.cage.avoid_by_cage())));
    }
    if !setup.cage.too_short.is_empty() {
        reasons.push(breaks(setup));
    }
    format!(": {}", reasons.join("; "))
}

/// One finding as part of a sentence.
#[must_use]
pub(crate) fn reason(finding: &CageFinding) -> String {
    match finding {
        CageFinding::SprocketTooLarge { sprocket, limit } => {
            format!("{} sprocket is larger than the {limit} it may take", with_article(sprocket.teeth()))
        }
        CageFinding::SprocketTooSmall { sprocket, limit } => {
            format!("{} sprocket is smaller than the {limit} it may take", with_article(sprocket.teeth()))
        }
        CageFinding::RingDifferenceTooLarge { difference, limit } => {
            format!("rings {difference} teeth apart are more than the {} it spans", limit.teeth())
        }
        CageFinding::AvoidGears { short_by, gears }
        | CageFinding::LongerCage { short_by, slack_gears: gears, .. } => {
            format!("{} short of capacity, so the chain hangs in {}", teeth(*short_by), few(gears))
        }
    }
}

fn needed(report: &ChainSection, setup: &SetupReport, need: &CageNeed) -> String {
    let mut steps: Vec<String> = Vec::new();
    if let Some(derailleur) = &need.derailleur {
        steps.push(format!("Buy {}{}", rear(derailleur), chain_of(report, setup, ", and a chain of ")));
    }
    if let Some(difference) = need.ring_difference {
        steps.push(format!("Choose rings closer together, or derailleurs that span {difference} teeth"));
    }
    steps.join(". ")
}

/// “a rear derailleur for a 34 and at least 37 teeth (by common practice a medium cage)”.
fn rear(need: &DerailleurNeed) -> String {
    let class = match CageClass::for_needs(need.capacity, need.largest) {
        Some(class) => format!(" (by common practice a {} cage)", class.name),
        None => {
            " (more than cages usually take: a smaller cassette or closer rings may be easier)".to_owned()
        }
    };
    let smallest = need
        .smallest
        .map_or_else(String::new, |smallest| format!(" down to {}", with_article(smallest.teeth())));
    format!(
        "a rear derailleur for {}{smallest} and at least {}{class}",
        with_article(need.largest.teeth()),
        teeth(need.capacity)
    )
}

/// What links and drawing were worked out with, where the length of the cage was not measured.
#[must_use]
pub(crate) fn basis(report: &ChainSection) -> String {
    let cage = &report.rings.setup(Side::A).cage;
    let centres = with_unit(cage.length.centres().mm(), 0, "mm");
    match (cage.length, report.chain.derailleur.total_capacity) {
        (CageLength::Measured(_), _) => String::new(),
        (CageLength::ByCapacity(_), Some(capacity)) => format!(
            "A capacity of {capacity} teeth is a cage of about {centres} between the pulley centres: links and drawing are for that. Measured pulley centres win. "
        ),
        _ => format!("Links and drawing are for a medium cage, {centres} between the pulley centres. "),
    }
}

/// Gears that are left out everywhere, and why when none could be.
#[must_use]
pub(crate) fn avoided(report: &ChainSection) -> String {
    let told: Vec<String> = report.rings.setups.iter().filter_map(avoided_on).collect();
    if told.is_empty() {
        String::new()
    } else {
        format!("Gears to avoid, used nowhere on this page: {}. ", told.join("; "))
    }
}

fn avoided_on(setup: &SetupReport) -> Option<String> {
    let cage = &setup.cage;
    if cage.avoid.is_empty() {
        return None;
    }
    if cage.avoid.holds_all(&setup.drivetrain) {
        return Some(format!("every gear of {}, so that its numbers go on as if they ran", setup.side));
    }
    let own = named(setup, cage.switched_off.without(cage.avoid.without(cage.switched_off)));
    let own = if own.is_empty() { own } else { format!(" ({own} by your choice)") };
    Some(format!("{} {}{own}", setup.side, few(&gears(setup, cage.avoid))))
}

/// What has to be said beside the lap: whether the set-ups fit, and what they are ridden without.
#[must_use]
pub(crate) fn beside_lap(report: &ChainSection) -> Vec<String> {
    let notes = report.rings.setups.iter().filter_map(lap_note);
    notes
        .chain(Some(avoided(report)).filter(|it| !it.is_empty()).map(|it| it.trim_end().to_owned()))
        .collect()
}

fn lap_note(setup: &SetupReport) -> Option<String> {
    let (side, cage) = (setup.side, &setup.cage);
    if cage.is_not_known() {
        return Some(format!("Whether the cage takes every gear of {side} is not known."));
    }
    let without = if cage.avoid.is_empty() { "" } else { ", without its gears to avoid" };
    cage.does_not_fit()
        .then(|| format!("{side} does not fit as it is: it is ridden here as if it did{without}."))
}
