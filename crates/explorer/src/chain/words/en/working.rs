//! How chain and cage were worked out.

use crate::chain::report::ChainReport;
use crate::layout::line::{Line, strong};
use crate::layout::sum::{Sum, sum};
use crate::number::{percent, plain, trimmed, with_unit};
use crate::rings::setup::SetupReport;
use gear_math::ChainLinks;
use gear_math::chain::{ChainFit, ChainPitch, GearState, TwoSprocketDrive};

/// The makers' sum.
pub(crate) fn needed(setup: &SetupReport) -> Sum {
    let (chainset, cassette) = (&setup.drivetrain.chainset, &setup.drivetrain.cassette);
    sum(
        &format!("Capacity {} needs", setup.side),
        "(largest − smallest ring) + (largest − smallest sprocket)",
        format!(
            "({} − {}) + ({} − {}) = {}",
            chainset.largest(),
            chainset.smallest(),
            cassette.largest(),
            cassette.smallest(),
            setup.cage.check.needed
        ),
    )
}

/// What the makers' sum means.
pub(crate) fn sums_explained() -> [Line; 4] {
    [
        format!("{}The chain runs half-way round each wheel, so a tooth more or fewer, in front or behind, asks for half a link: {} mm of chain that the cage must take up or pay out.", strong("Why a sum? "), trimmed(ChainPitch::BICYCLE.mm() / 2.0)).into(),
        format!("{}The chain’s length is set there. Too short for that gear, it locks and can tear off the derailleur or the hanger; too long for smallest with smallest, it only hangs and rattles. So a shortage of capacity is always taken at the loose end.", strong("Why largest with largest is never given away. ")).into(),
        format!("{}is a limit of its own: the guide pulley must clear it, which depends on the derailleur’s body and the hanger, not on the cage’s length.", strong("Largest sprocket ")).into(),
        "The sum is right to about half a tooth; whole links can cost up to four teeth more.".into(),
    ]
}

/// Pitch circles.
pub(crate) fn circles(chain: &ChainReport) -> Sum {
    let (ring, pitch) = (chain.path.wheels[0].circle, trimmed(ChainPitch::BICYCLE.mm()));
    sum(
        "Pitch circle",
        &format!("{pitch} mm ÷ sin(180° ÷ teeth)"),
        format!("{pitch} ÷ sin(180° ÷ {}) = {}", ring.teeth(), with_unit(ring.diameter_mm(), 2, "mm")),
    )
}

/// The chain's way in the gear that is drawn.
pub(crate) fn path(chain: &ChainReport) -> Sum {
    let path = &chain.path;
    let runs = path.runs.iter().map(|run| run.length_mm);
    let wheels = path.wheels.iter().map(|wheel| wheel.chain_mm);
    let parts: Vec<String> = runs.chain(wheels).map(|mm| plain(mm, 1)).collect();
    sum(
        &format!(
            "Chain of {} {} with the cage at {}°",
            chain.side,
            chain.station().fit.gear,
            plain(path.cage_angle.degrees(), 1)
        ),
        &format!(
            "four straight runs, then on each wheel wrap ÷ 360° × teeth × {} mm, from the ring’s foot round tension pulley, guide pulley and sprocket",
            trimmed(ChainPitch::BICYCLE.mm())
        ),
        format!(
            "{} = {} = {}",
            parts.join(" + "),
            with_unit(path.length_mm, 1, "mm"),
            with_unit(path.links(), 2, "links")
        ),
    )
}

/// The shortest and the longest chain.
pub(crate) fn window(chain: &ChainReport) -> Sum {
    let (window, cage) = (&chain.advice.fit.window, chain.setup.cage.measures());
    let [big, small] = [&chain.stations[0], &chain.stations[chain.stations.len() - 1]].map(|it| it.fit.gear);
    sum(
        &format!("Chains that suit {}", chain.side),
        "big-big at the forward limit, rounded up to even, to small-small at the rest position, rounded down to even",
        format!(
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

/// The workshop's rule.
pub(crate) fn workshop_rule(drive: &TwoSprocketDrive, fit: &ChainFit) -> Sum {
    sum(
        "Workshop rule",
        "round ring and sprocket alone, up to even, plus two; more exactly two links are its whole margin, since the bare chain would pull the pulleys into line",
        format!("{} → {}", plain(drive.exact_links(), 2), fit.big_big_plus_two.count()),
    )
}

/// Two sums that workshops do instead.
pub(crate) fn workshop_sums(drive: &TwoSprocketDrive) -> String {
    let inches = plain(drive.workshop_inches(), 2);
    let links = with_unit(drive.workshop_links(), 1, "links");
    format!("Two sums from workshops, margin included: {inches} in and {links}.")
}

/// How the links to fit come out of both.
pub(crate) fn links_to_fit() -> Line {
    format!("{}are the fewest for the forward limit, but never fewer than by the workshop rule: what is too long hangs, what is too short breaks.", strong("Links to fit ")).into()
}

/// What the cage takes up.
pub(crate) fn capacity(fit: &ChainFit) -> Sum {
    sum(
        "Capacity by geometry",
        "teeth needed + 2 × (most links − fewest links)",
        format!(
            "{} + 2 × ({} − {}) = {}",
            fit.simple_sum_teeth,
            plain(fit.window.longest_exact, 2),
            plain(fit.window.shortest_exact, 2),
            plain(fit.capacity_teeth, 1)
        ),
    )
}

/// The same over the length of the cage.
pub(crate) fn curve(chain: &ChainReport) -> Sum {
    let cage = &chain.setup.cage;
    let centres = with_unit(cage.measures().pulley_centres.mm(), 0, "mm");
    let teeth = plain(cage.capacity_estimate_teeth(), 1);
    sum(
        "The curve over cage length",
        "[c (sin fore + sin rear) + (p ÷ 2π)(guide + tension teeth)(fore + rear)] ÷ (p ÷ 2)",
        format!("{centres} between pulley centres: {teeth} teeth"),
    )
}

/// Where a stated capacity places no rest position.
pub(crate) const OUT_OF_REACH: &str =
    "No rest position gives the capacity that the maker states, so it was left where it was.";

/// What the states mean.
pub(crate) fn states() -> Line {
    let (states, usual) = (strong("States. "), GearState::COMFORTABLE_OF_100);
    let [fine, tight] =
        [GearState::COMFORTABLE_TO_DEGREES, GearState::TIGHT_TO_DEGREES].map(|degrees| plain(degrees, 0));
    format!("{states}Fine to {fine}° forward, where {usual} of 100 usual combinations cut by the workshop rule end up; tight but usual to {tight}°; beyond that too tight. Estimates, all of them: look at the bike.").into()
}

/// The chain's sideways slant.
pub(crate) fn sideways(chain: &ChainReport) -> Sum {
    let (line, station) = (&chain.setup.chainline, chain.station());
    let [front, rings] = [line.front.mm(), line.ring_spacing.mm()].map(|mm| plain(mm, 1));
    sum(
        "Chain angle",
        &format!(
            "atan(sideways offset ÷ upper run); chainlines {front} mm front and rear, rings {rings} mm apart, sprockets as usual for their number"
        ),
        format!(
            "{}, sprockets {} apart: {}°",
            station.fit.gear,
            with_unit(line.sprocket_pitch.mm(), 2, "mm"),
            plain(station.fit.chain_angle.degrees(), 2)
        ),
    )
}

/// What is known by geometry and what is not.
pub(crate) fn how_far_off() -> Line {
    let how = strong("How far off. ");
    let worn = percent(ChainLinks::WORN_PERCENT, 1);
    format!("{how}The path is geometry: chain pitch, tangents and teeth. Where the cage’s stops stand is not: the usual rest position was fitted so that capacities fall among published ones, so their level is fitted and only their change with cage, rings and sprockets is worked out. Sag, wear ({worn} of wear makes a chain half a link longer) and the chain’s sideways slant are left out.").into()
}
