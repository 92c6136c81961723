//! What could turn the verdict, and what to find out.

use crate::chain::cages::worth_telling;
use crate::chain::section::ChainSection;
use crate::chain::words::names::{class, either, few, figure as name_of, links, measures, named, teeth};
use crate::number::{plain, with_unit};
use crate::rings::setup::SetupReport;
use crate::words::{counted, listed};
use gear_math::TotalCapacity;
use gear_math::cage::DerailleurFigure;
use gear_math::chain::{CageDoubt, ChainMeasure, ClassTrial, Standing};

/// Measures named in a sentence; more are counted.
const TOLD: usize = 2;

/// Why it is not known, and the next step.
pub(crate) fn not_known(report: &ChainSection, setup: &SetupReport, doubt: &CageDoubt) -> (String, String) {
    match doubt {
        CageDoubt::CageLength(trials) => (by_length(setup, trials), look_up_capacity(setup)),
        CageDoubt::Figure(figure) => {
            (open_figure(setup, *figure), format!("Look up its {}", name_of(*figure)))
        }
        CageDoubt::Measures(measures) => (could_turn(report, setup, measures), measure_first(measures)),
        CageDoubt::Disagree { stated, by_centres } => (
            disagree(setup, *stated, *by_centres),
            "Measure again, and look the capacity up again".to_owned(),
        ),
        CageDoubt::Path(error) => (error.to_string(), "Measure again".to_owned()),
    }
}

fn look_up_capacity(setup: &SetupReport) -> String {
    let needed = teeth(setup.cage.check.needed);
    format!(
        "Look up the derailleur’s total capacity, {needed} are needed, or measure from one pulley’s bolt to the other’s"
    )
}

/// “works with a medium or long cage; a short one hangs slack in 34×11 and 34×12”.
fn by_length(setup: &SetupReport, trials: &[ClassTrial]) -> String {
    let (runs, hangs): (Vec<&ClassTrial>, Vec<&ClassTrial>) =
        worth_telling(trials).iter().partition(|trial| trial.standing == Standing::Runs);
    let mut parts = Vec::new();
    if !runs.is_empty() {
        let classes: Vec<&str> = runs.iter().map(|trial| class(&trial.class)).collect();
        parts.push(format!("works with a {} cage", either(&classes)));
    }
    for trial in hangs {
        parts.push(format!("a {} one hangs slack in {}", class(&trial.class), named(setup, trial.hangs)));
    }
    parts.join("; ")
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
        Some(0) => format!("the capacity is enough, with nothing to spare, but {open}"),
        Some(spare) if spare > 0 => {
            format!(
                "the capacity is enough, with {} to spare, but {open}",
                teeth(spare.unsigned_abs() as u16)
            )
        }
        _ => open,
    }
}

fn could_turn(report: &ChainSection, setup: &SetupReport, open: &[ChainMeasure]) -> String {
    let others = open.len().saturating_sub(TOLD);
    let mut told: Vec<String> = measures(open).into_iter().take(TOLD).map(str::to_owned).collect();
    if others > 0 {
        told.push(counted(others, "more measure", "more measures"));
    }
    let usual = by_usual_measures(report, setup);
    format!("{usual}, but within their usual range {} can turn that", listed(&told))
}

fn measure_first(open: &[ChainMeasure]) -> String {
    format!("Measure the {} first", measures(open).first().copied().unwrap_or_default())
}

/// What the fitted chain, or the one that suits best, does if everything left empty is as usual.
fn by_usual_measures(report: &ChainSection, setup: &SetupReport) -> String {
    let hangs = report.chain.hanging_by_usual_measures(setup);
    let chain = match setup.cage.fitted {
        Some(fitted) => format!("a chain of {}", links(fitted.count())),
        None => "the chain".to_owned(),
    };
    if hangs.is_empty() {
        format!("by usual measures {chain} runs in every gear")
    } else {
        format!("by usual measures {chain} hangs in {} only", few(&hangs))
    }
}

fn disagree(setup: &SetupReport, stated: TotalCapacity, by_centres: f64) -> String {
    let centres = with_unit(setup.cage.length.centres().mm(), 0, "mm");
    let takes = plain(by_centres, 0);
    format!(
        "a capacity of {stated} teeth and {centres} between the pulley centres do not go together: such a cage takes about {takes}"
    )
}
