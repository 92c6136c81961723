//! The one verdict on cage and chain of a set-up, for the page, the lap and the sheet alike.

use crate::chain::fitting::Fitting;
use crate::chain::section::ChainSection;
use crate::chain::words::doubt::not_known;
use crate::chain::words::findings::{breaks, needed, reasons};
use crate::chain::words::names::{chain, links, named, teeth};
use crate::layout::line::{Line, Look, name};
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::chain::{CageDoubt, CageOutcome};
use gear_math::gears::GearSet;

/// The verdict, why, and the next step.
pub(crate) struct Said {
    look: Look,
    /// What stands between the set-up's name and the verdict.
    is: &'static str,
    verdict: String,
    why: String,
    step: String,
}

impl Said {
    /// For the page.
    pub(crate) fn marked(&self, side: Side) -> Line {
        let Self { is, why, step, .. } = self;
        let (name, verdict) = (name(side), self.look.part(&self.verdict));
        format!("{name} {is}{verdict}{why}. {step}.").into()
    }

    /// The verdict alone, behind the name of the set-up.
    pub(crate) fn in_short(&self) -> String {
        format!("{}{}", self.is, self.verdict)
    }

    /// The verdict alone.
    pub(crate) fn verdict(&self) -> &str {
        &self.verdict
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

/// Where nothing speaks against it, but a gear is to be looked at.
pub(crate) const SHOULD_FIT: &str = "fits by the figures";

/// What is said of one set-up.
pub(crate) fn said(report: &ChainSection, side: Side) -> Said {
    let setup = report.rings.setup(side);
    let keep = || keep(report, setup);
    match &setup.cage.outcome {
        CageOutcome::Fits => of(report.well(), "fits", spare(setup), keep()),
        CageOutcome::FitsOnPaper => {
            of(Look::Care, SHOULD_FIT, whole_links(setup), keep_and_check(report, setup))
        }
        CageOutcome::FitsAvoidingGears => avoiding(report, setup),
        CageOutcome::OtherChain { hangs, doubt } => other_chain(report, setup, *hangs, doubt.as_ref()),
        CageOutcome::NotKnown(doubt) => {
            let (why, step) = not_known(report, setup, doubt);
            Said { is: "is ", ..of(Look::Care, "not known to fit", format!(": {why}"), step) }
        }
        CageOutcome::DoesNotFit(need) => {
            of(Look::Stop, "does not fit", reasons(setup), needed(report, setup, need))
        }
    }
}

fn of(look: Look, verdict: &str, why: String, step: String) -> Said {
    Said { look, is: "", verdict: verdict.to_owned(), why, step }
}

/// Teeth to spare, where the capacity is known.
fn spare(setup: &SetupReport) -> String {
    match setup.cage.check.spare.and_then(|spare| u16::try_from(spare).ok()) {
        None => ": every gear runs".to_owned(),
        Some(0) => ", with nothing to spare".to_owned(),
        Some(spare) => format!(", with {} of capacity to spare", teeth(spare)),
    }
}

fn whole_links(setup: &SetupReport) -> String {
    format!("{}: a chain comes in whole pairs of links", spare(setup))
}

fn keep(report: &ChainSection, setup: &SetupReport) -> String {
    match Fitting::of(report, setup) {
        Some(fitting) => format!("Keep the derailleur, with a chain of {}", chain(fitting)),
        None => "Keep the derailleur".to_owned(),
    }
}

fn keep_and_check(report: &ChainSection, setup: &SetupReport) -> String {
    let (keep, check) = (keep(report, setup), named(setup, setup.cage.to_try));
    if check.is_empty() { keep } else { format!("{keep}; check {check} for slack") }
}

fn avoiding(report: &ChainSection, setup: &SetupReport) -> Said {
    let cage = &setup.cage;
    let why = match cage.check.spare {
        Some(spare) if spare < 0 => {
            format!(": {} short of capacity, so the chain hangs there", teeth(spare.unsigned_abs() as u16))
        }
        _ => ": the chain hangs there".to_owned(),
    };
    let verdict = format!("fits if you never use {}", named(setup, cage.avoid_by_cage()));
    of(Look::Care, &verdict, why, keep_and_check(report, setup))
}

fn other_chain(
    report: &ChainSection,
    setup: &SetupReport,
    hangs: GearSet,
    doubt: Option<&CageDoubt>,
) -> Said {
    let cage = &setup.cage;
    let then = and_the_derailleur(report, setup, doubt);
    if !cage.too_short.is_empty() {
        let chain = Fitting::of(report, setup).map_or_else(String::new, chain_to_fit);
        let why = format!(": {}", breaks(setup));
        return of(Look::Stop, "needs a longer chain", why, format!("{chain}{then}"));
    }
    let fitted = cage.fitted.map_or(0, gear_math::ChainLinks::count);
    let why = format!(": the {} fitted hang in {}", links(fitted), named(setup, hangs));
    let fewer = cage.links.map_or(0, |fit| fitted.saturating_sub(fit.count()));
    of(Look::Care, "needs a shorter chain", why, format!("Take {} out{then}", links(fewer)))
}

fn chain_to_fit(fitting: Fitting) -> String {
    format!("Fit a chain of {}", chain(fitting))
}

/// What becomes of the derailleur once the chain is another one.
fn and_the_derailleur(report: &ChainSection, setup: &SetupReport, doubt: Option<&CageDoubt>) -> String {
    let Some(doubt) = doubt else { return ", and keep the derailleur".to_owned() };
    let (_, step) = not_known(report, setup, doubt);
    format!(". Whether the derailleur can then stay is not known. {step}")
}
