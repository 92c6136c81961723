//! How chain and cage were worked out, with the numbers of the gear that is drawn.

use crate::chain::report::ChainReport;
use crate::chain::section::ChainSection;
use crate::layout::pieces::worked;
use crate::number::{plain, with_unit};
use maud::{Markup, html};

/// The formulas with the numbers of the first set-up that has a chain.
#[must_use]
pub(crate) fn working(report: &ChainSection) -> Markup {
    let Some(chain) = report.chain.solved().next() else { return html! {} };
    html! {
        (circles(chain))
        (path(chain))
        (window(chain))
        (rules(chain))
        (capacity(chain))
        p { b { "States. " } "Fine to 65° forward, where 71 of 100 usual combinations cut by the workshop rule end up; tight but usual to 78°; beyond that too tight. Estimates, all of them: look at the bike." }
        (sideways(chain))
        p { b { "How far off. " } "The path is geometry: chain pitch, tangents and teeth. Where the cage’s stops stand is not: the usual rest position was fitted so that capacities fall among published ones, so their level is fitted and only their change with cage, rings and sprockets is worked out. Sag, wear (0.5 % of wear makes a chain half a link longer) and the chain’s sideways slant are left out." }
    }
}

fn circles(chain: &ChainReport) -> Markup {
    let ring = chain.path.wheels[0].circle;
    worked(
        "Pitch circle",
        "12.7 mm ÷ sin(180° ÷ teeth)",
        &format!("12.7 ÷ sin(180° ÷ {}) = {}", ring.teeth(), with_unit(ring.diameter_mm(), 2, "mm")),
    )
}

fn path(chain: &ChainReport) -> Markup {
    let path = &chain.path;
    let runs = path.runs.iter().map(|run| run.length_mm);
    let wheels = path.wheels.iter().map(|wheel| wheel.chain_mm);
    let parts: Vec<String> = runs.chain(wheels).map(|mm| plain(mm, 1)).collect();
    worked(
        &format!(
            "Chain of {} {} with the cage at {}°",
            chain.side,
            chain.station().fit.gear,
            plain(path.cage_angle.degrees(), 1)
        ),
        "four straight runs, then on each wheel wrap ÷ 360° × teeth × 12.7 mm, from the ring’s foot round tension pulley, guide pulley and sprocket",
        &format!(
            "{} = {} = {}",
            parts.join(" + "),
            with_unit(path.length_mm, 1, "mm"),
            with_unit(path.links(), 2, "links")
        ),
    )
}

fn window(chain: &ChainReport) -> Markup {
    let (window, cage) = (&chain.advice.fit.window, chain.setup.cage.measures());
    let [big, small] = [&chain.stations[0], &chain.stations[chain.stations.len() - 1]].map(|it| it.fit.gear);
    worked(
        &format!("Chains that suit {}", chain.side),
        "big-big at the forward limit, rounded up to even, to small-small at the rest position, rounded down to even",
        &format!(
            "{big} at {}°: {} → {}; {small} at {}°: {} → {}",
            plain(cage.fore_stop.degrees(), 0),
            plain(window.shortest_exact, 2),
            window.shortest.count(),
            plain(cage.rear_stop.degrees(), 0),
            plain(window.longest_exact, 2),
            window.longest.count()
        ),
    )
}

fn rules(chain: &ChainReport) -> Markup {
    let fit = &chain.advice.fit;
    html! {
        @if let Some(drive) = &chain.two_wheels {
            (worked(
                "Workshop rule",
                "round ring and sprocket alone, up to even, plus two; more exactly two links are its whole margin, since the bare chain would pull the pulleys into line",
                &format!("{} → {}", plain(drive.exact_links(), 2), fit.big_big_plus_two.count()),
            ))
            p { "Two sums from workshops, margin included: " (plain(drive.workshop_inches(), 2)) " in and " (with_unit(drive.workshop_links(), 1, "links")) "." }
        }
        p { b { "Links to fit " } "are the fewest for the forward limit, but never fewer than by the workshop rule: what is too long hangs, what is too short breaks." }
    }
}

fn capacity(chain: &ChainReport) -> Markup {
    let (fit, cage) = (&chain.advice.fit, &chain.setup.cage);
    html! {
        (worked(
            "Capacity by geometry",
            "teeth needed + 2 × (most links − fewest links)",
            &format!(
                "{} + 2 × ({} − {}) = {}",
                fit.simple_sum_teeth,
                plain(fit.window.longest_exact, 2),
                plain(fit.window.shortest_exact, 2),
                plain(fit.capacity_teeth, 1)
            ),
        ))
        (worked(
            "The curve over cage length",
            "[c (sin fore + sin rear) + (p ÷ 2π)(guide + tension teeth)(fore + rear)] ÷ (p ÷ 2)",
            &format!(
                "{} between pulley centres: {} teeth",
                with_unit(cage.measures().pulley_centres.mm(), 0, "mm"),
                plain(cage.capacity_estimate_teeth(), 1)
            ),
        ))
        @if chain.capacity_out_of_reach { p { "No rest position gives the capacity that the maker states, so it was left where it was." } }
    }
}

fn sideways(chain: &ChainReport) -> Markup {
    let (line, station) = (&chain.setup.chainline, chain.station());
    worked(
        "Chain angle",
        "atan(sideways offset ÷ upper run); chainlines 43.5 mm front and rear, rings 7.5 mm apart, sprockets as usual for their number",
        &format!(
            "{}, sprockets {} apart: {}°",
            station.fit.gear,
            with_unit(line.sprocket_pitch.mm(), 2, "mm"),
            plain(station.fit.chain_angle.degrees(), 2)
        ),
    )
}
