//! How a lap on a reserve came about.

use crate::lap::words::working::Worked;
use crate::layout::line::{Line, name};
use crate::number::{percent, plain, trimmed, with_unit};
use crate::side::Side;
use crate::units;
use gear_math::course::Fineness;
use gear_math::rider::EffortAccount;
use gear_math::{Bike, Lap, LapSetup};

/// What power takes from the reserve.
pub(crate) fn account(account: &EffortAccount) -> Worked {
    let effort = &account.effort;
    let power = with_unit(effort.sustainable().watts(), 0, "W");
    let (peak, reserve) =
        (with_unit(effort.peak().watts(), 0, "W"), with_unit(effort.reserve().kj(), 0, "kJ"));
    let share = plain(account.repaid.value(), 2);
    (
        "What power takes from your reserve",
        "Above CP (P − CP)(Pm − CP) ∕ (Pm − P) a second, which at an even power is the three-parameter model of exhaustion (Morton 1996); below it a share ρ of what is left unused comes back (a choice: published forms of recovery differ by thousands of joules)",
        format!("CP {power}, peak {peak} at its best cadence, reserve {reserve}, ρ {share} (estimate)"),
    )
}

/// What cadence does.
pub(crate) fn strength(account: &EffortAccount) -> Worked {
    let (n0, lasting, cost) = (
        with_unit(account.optimal.rpm(), 0, "rpm"),
        plain(account.lasting.share(), 2),
        plain(account.cadence_cost.value(), 2),
    );
    (
        "What cadence does",
        "Pm falls in a parabola from its best cadence; a share f of it lasts for minutes; away from the cadence you would choose for the power, 42.5 + 0.142 P (MacIntosh and others 2000), power costs 1 + κ u² as much, with u the share you are off",
        format!(
            "best cadence {n0}, f {lasting}, κ {cost} (estimates): no lowest cadence is needed, force for five seconds goes, for a minute it does not"
        ),
    )
}

/// How the quickest lap is found.
pub(crate) fn plan([a, b]: &[Lap; 2]) -> Worked {
    let price = |lap: &Lap| lap.reserve.as_ref().map_or(0.0, |reserve| 1e3 * reserve.price_s_per_j);
    let error = |lap: &Lap| with_unit(lap.step_error_s.unwrap_or(0.0), 2, "s");
    let (price_a, price_b) = (with_unit(price(a), 1, "s"), with_unit(price(b), 1, "s"));
    let [usual, most] = Fineness::QUICK_BEHIND_S.map(|it| with_unit(it, 1, "s"));
    (
        "The quickest lap",
        "Time plus λ times what is drawn, least over power, brakes, gear and feet (dynamic programming from the line backwards over place, speed and gear); λ is the one price of a joule at which the lap takes what it may. Energy balances over every step",
        format!(
            "λ {price_a} (A) and {price_b} (B) for a kJ, steps of {}; finer ones may change the lap by {} and {}; plans looked for more finely were {usual} quicker in the mean of 30 laps, {most} at most",
            units::distances().print(a.step_m, 1),
            error(a),
            error(b)
        ),
    )
}

/// How gears are chosen.
pub(crate) fn gears(setup: &LapSetup) -> Worked {
    let [rear, front] = [setup.shifting.rear, setup.shifting.front].map(|it| trimmed(it.s()));
    let crossed = percent(100.0 * Bike::RELUCTANCE, 1);
    (
        "Gears",
        "Part of the plan: a shift comes where it pays, looking ahead, and costs the speed that its time without drive takes; cross-chained only where that gains more than a little power",
        format!(
            "{rear} s at the rear, {front} s at the front; {crossed} of the power cross-chained, in the choice alone (estimates)"
        ),
    )
}

/// What a dismount takes.
pub(crate) fn mounting(lost_s: f64) -> Worked {
    let [slow, least] = [3.5, 0.8].map(|m_per_s| units::winds().print(m_per_s, 1));
    (
        "Ride or run",
        "On foot at obstacles and where that is quicker at the same price of a joule; braked down to get off, and off again from what half a second of slope and ground leaves of the speed on foot",
        format!(
            "{lost_s} s to dismount and remount; down to {slow} to get off (estimate), at least {least} to go on"
        ),
    )
}

/// What all of it rests on.
pub(crate) fn basis() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!(
        "Rider, bike, air and limits are those of “Ride or run?”, each ground that of its table. Choices of this model: the rate at which power draws, one price for the whole lap, the share that comes back, the cost of cadence, the loss of a shift, the speed after getting on. Left out: wind from the side, wind on foot, the order of efforts within a lap. {a} and {b} share all but rings and sprockets."
    )
    .into()
}
