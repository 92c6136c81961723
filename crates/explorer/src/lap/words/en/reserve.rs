//! What the lap makes of the rider's reserve.

use crate::lap::forced_place::ForcedPlace;
use crate::layout::line::{Line, name, strong};
use crate::number::{brief, seconds_in, with_unit};
use crate::side::Side;
use crate::units;
use crate::words::counted;
use gear_math::course::{DrawnBand, DrawnGroup, Draws, Precision, ReserveForcing};
use gear_math::rider::WorkReserve;

/// Joules in a kilojoule.
const KILO: f64 = 1e3;

/// While the lap is worked out for a bench that has changed.
pub(crate) const WORKING_IT_OUT: &str =
    "Working it out for what you changed; what stands here is still the lap of before.";

/// How far the doubt is worked out.
pub(crate) fn doubt(drawn: &DrawnBand) -> String {
    let count = drawn.count;
    let so_far =
        if count < Draws::COUNT { format!(", {count} of {} so far", Draws::COUNT) } else { String::new() };
    format!(
        "Likely means 9 in 10 cases: the lap was ridden with everything doubtful moved together{so_far}, your power by 3\u{a0}%, your peak power, \
         what cadence costs and what comes back to your reserve, the ground, the cost of running, dismount and remount (most of \
         these ranges are estimates). Both bikes are moved alike, so the difference is surer than either time."
    )
}

/// Draws that fall into two kinds.
pub(crate) fn groups([less, more]: &[DrawnGroup; 2], precision: Precision) -> Line {
    let [less, more] = [less, more].map(|group| {
        let share = with_unit(100.0 * group.share, 0, "%");
        let gain = seconds_in(group.median_s.abs(), precision);
        if group.is_nothing() {
            format!("either alike (in {share} of the cases)")
        } else {
            let ahead = name(if group.median_s < 0.0 { Side::A } else { Side::B });
            format!("{ahead} quicker by {gain}\u{a0}s (in {share} of the cases)")
        }
    });
    format!("It goes one of two ways: {less}, or {more}; in between is little.").into()
}

/// How hard the lap is ridden, with A and with B, and how far the reserve is drawn down.
pub(crate) fn effort(power_w: f64, highest_w: [f64; 2], deepest_j: f64, reserve: WorkReserve) -> String {
    let [power, a, b] = [power_w, highest_w[0], highest_w[1]].map(|watts| with_unit(watts, 0, "W"));
    let most = if a == b { a } else { format!("{a} with A and {b} with B") };
    let (deepest, reserve) = (kj(deepest_j), with_unit(reserve.kj(), 1, "kJ"));
    format!(
        "You ride above your {power} where that pays, up to {most}, and below it elsewhere; at most {deepest} of your {reserve} in reserve are drawn at a time."
    )
}

/// What one lap takes in the end, and what more would gain.
pub(crate) fn price(budget_j: f64, [a, b]: [f64; 2]) -> String {
    let gain = |price: f64| with_unit(KILO * price, 1, "s");
    let gains =
        if gain(a) == gain(b) { gain(a) } else { format!("{} with A and {} with B", gain(a), gain(b)) };
    let more = "kJ more to spend on a lap would gain";
    if budget_j > 0.0 {
        format!("In the end a lap takes {} from your reserve; one {more} {gains}.", kj(budget_j))
    } else {
        format!(
            "In the end it takes nothing from your reserve, so you can ride it lap after lap; one {more} {gains}."
        )
    }
}

/// That a lap draws so much at a time that the order of efforts would count.
pub(crate) const DEEP: &str = "That is more than a third: in what order you spend then counts, which is left aside here, so the time is less sure than is said.";

/// Before the places where forcing pays: where, by how much, for how much of the reserve.
pub(crate) fn forcing(places: &[ForcedPlace<'_>], more: usize) -> Line {
    let mut told: Vec<String> = places.iter().map(place).collect();
    if more > 0 {
        told.push(format!("and at {}", counted(more, "more place", "more places")));
    }
    format!("Force it at {}.", told.join("; ")).into()
}

fn place(it: &ForcedPlace<'_>) -> String {
    let (from, to) = (units::distances().number(it.from_m, 0), units::distances().print(it.to_m, 0));
    let each: Vec<String> = it.by.iter().map(|(side, forcing)| saved(*side, forcing)).collect();
    format!("{from} to {to} ({})", each.join(", "))
}

fn saved(side: Option<Side>, it: &ReserveForcing) -> String {
    let whose = side.map_or(String::new(), |side| format!("{} ", name(side)));
    let (saved, spent) = (strong(&brief(it.saved_s)), kj(it.spent_j));
    format!("{whose}{saved} for {spent}, down to {}", it.gear)
}

/// Where forcing is worth nothing worth a word.
pub(crate) const NO_FORCING: &str = "No place is worth forcing.";

/// That a stretch does not say which way it leads.
pub(crate) fn no_headings(wind_m_per_s: f64) -> String {
    let wind = units::winds().print(wind_m_per_s, 1);
    format!(
        "The wind of {wind} counts only where the course says which way it leads: a recorded track does, a sketch where a line ends with heading and degrees."
    )
}

/// What was made of a power that is one of seconds.
pub(crate) const EVEN_FOR_SECONDS: &str =
    "Your power is one for seconds, which leaves no reserve: the lap is ridden at it all the way round.";

fn kj(joules: f64) -> String {
    with_unit(joules / KILO, 1, "kJ")
}
