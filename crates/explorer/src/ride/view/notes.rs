//! Ride or run: how it was worked out, with this scenario's numbers, and what the fields say.

use crate::bench::field::Field;
use crate::layout::pieces::worked;
use crate::number::{likely_share, percent, plain, with_unit};
use crate::ride::report::surface_name;
use crate::ride::section::RideSection;
use crate::ride::view::words::{basis, seconds};
use gear_math::Speed;
use gear_math::rider::{Band, Level, MetabolicPower, PeakPower, Range};
use maud::{Markup, html};

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &RideSection) -> Markup {
    let inputs = &report.ride.inputs;
    let (rider, bike, ground) = (&inputs.rider, &inputs.bike, &inputs.ground);
    let answer = &report.ride.sides[0].plan.answer;
    let terms = inputs.questions[0].resistance(ground, inputs.climb).power(answer.ride);
    let burnt = MetabolicPower::of(rider.power, rider.efficiency);
    let left = burnt.above_standing(rider.body, rider.standing);
    let lowest = &report.ride.sides[0];
    html! {
        (worked("Riding", "power × drivetrain = (climbing + rolling + air) × speed", &format!(
            "{} × {} = {} + {} + {}, at {}", with_unit(rider.power.watts(), 0, "W"), bike.efficiency.share(),
            plain(terms.gravity_w, 0), plain(terms.rolling_w, 0), with_unit(terms.air_w, 0, "W"), report.rings.unit.print(answer.ride))))
        p { "Martin et al. 1998, validated on the road to 2.7 W; every surface off the road is ±30 % at best." }
        (worked("The same engine on foot", "power ÷ efficiency − standing", &format!(
            "{} ÷ {} − {} × {} = {}", with_unit(rider.power.watts(), 0, "W"), rider.efficiency.share(),
            rider.standing.w_per_kg(), rider.body.kg(), with_unit(left.watts(), 0, "W"))))
        (worked("On foot", "that = cost of the slope × (body + kit + carrying × bike) × speed", &format!(
            "({} + {} + {} × {}) kg, at {}", rider.body.kg(), rider.kit.kg(), bike.load.value(), bike.mass.kg(),
            report.rings.unit.print(answer.foot))))
        p { "Cost of running and walking on slopes: Minetti et al. 2002, ten runners on a treadmill; the change from one to the other is interpolated between five published points. It is assumed that you can burn as much on foot as on the bike; riders who never run cannot quite." }
        (worked("Where no gear is low enough", "speed of the lowest gear at the lowest cadence, put into the first line", &format!(
            "{} at {} = {}", lowest.lowest, with_unit(report.rings.window.low.rpm(), 0, "rpm"), report.rings.unit.print(lowest.crossover.lowest_gear_speed))))
        (worked("Where running wins", "length ÷ (length ÷ speed on foot + dismount and remount)", &format!(
            "{} ÷ {} = {}", with_unit(inputs.length.m(), 0, "m"), seconds(lowest.plan.foot), report.rings.unit.print(lowest.plan.running_wins_below().best))))
        p { b { "The reserve " } "is the work above the power you hold (W′). Forcing a gear may ask no more than your share of it, than a fresh rider holds so long (Morton 1996), and than the legs give at that cadence." }
        p { b { "The band " } (banded(bike.load.value())) }
        p { b { "Checked against " } "the one treadmill study that asked this very question (Ardigò, Saibene & Minetti 2003): 13 to 15 % unloaded, near 20 % with a bike’s weight; the model gives the same with an efficiency near 0.22." }
        p { b { "Grip and lift " } "are statics about the two contact points, for a smooth stroke; a heavy stroke peaks at 1.57 of its mean. Friction numbers come from car tyres and from judgement." }
        p { b { "Left out: " } "ruts, steps, corners, other riders, clogging, slipping shoes, tired arms, the way out of the obstacle." }
    }
}

/// How the band of the speeds on foot comes about.
fn banded(load: f64) -> String {
    let off = |factors: [f64; 2]| percent(100.0 * (factors[1] - 1.0), 0);
    format!(
        "moves gross efficiency by {}, rolling resistance by {}, the cost of carrying the bike from {} to {}, what the ground adds on foot by {} and your own cost by {}, one at a time, and adds the squares. The doubts of the slope where riding ends are taken together in the same way, each as far as the last picture shows. Likely means {} cases. Too close to call means the band reaches both sides.",
        Band::EFFICIENCY,
        off(Band::ROLLING),
        plain(load + Band::LOAD[0], 1),
        plain(load + Band::LOAD[1], 1),
        off(Band::GROUND),
        off(Band::PERSON),
        likely_share()
    )
}

/// What a field of this section says when it is in order and has more to say than its line of help.
#[must_use]
pub(crate) fn remark(report: &RideSection, field: Field) -> Option<String> {
    let inputs = &report.ride.inputs;
    let surface = inputs.surface;
    match field {
        Field::Power if inputs.typed_power.is_none() => Some(format!(
            "Estimate: {} × {} kg = {}; one rider may be {} away",
            with_unit(inputs.level.watts_per_kg(), 1, "W/kg"),
            inputs.rider.body.kg(),
            with_unit(inputs.rider.power.watts(), 0, "W"),
            percent(100.0 * Level::OFF, 0)
        )),
        Field::PeakPower if inputs.typed_peak.is_none() => Some(format!(
            "Estimate: {}, {} of body or {} times the power, whichever is more; of one pedal turn in a sprint",
            with_unit(inputs.peak.watts(), 0, "W"),
            with_unit(PeakPower::PER_KG, 0, "W/kg"),
            plain(PeakPower::OVER_POWER, 0)
        )),
        Field::Reserve if inputs.typed_reserve.is_none() => Some(format!(
            "Estimate: {} for {} kg at {}, more for the heavier and the stronger; one rider may be a third away",
            with_unit(inputs.reserve.kj(), 0, "kJ"),
            inputs.rider.body.kg(),
            with_unit(inputs.rider.power.watts(), 0, "W")
        )),
        Field::Headwind => {
            let speed = Speed::from_km_per_h(inputs.air.headwind.m_per_s().abs() * 3.6).ok()?;
            let words =
                if speed.m_per_s() > 0.0 { report.rings.unit.print(speed) } else { "Still air".to_owned() };
            Some(format!("{words}; minus when it pushes"))
        }
        Field::Rolling => {
            let rolling = surface.rolling_under(inputs.bike.tyre);
            Some(usual(surface_name(surface), &rolling, gear_math::rider::RollingCoefficient::value, 3))
        }
        Field::FootGround => {
            Some(usual(surface_name(surface), &surface.foot(), gear_math::rider::FootFactor::value, 2))
        }
        Field::Friction => {
            Some(usual(surface_name(surface), &surface.friction(), gear_math::rider::Friction::mu, 2))
        }
        _ => None,
    }
}

fn usual<T: Copy>(name: &str, range: &Range<T>, value: fn(T) -> f64, decimals: usize) -> String {
    let [low, typical, high] = [range.low, range.typical, range.high].map(|it| plain(value(it), decimals));
    format!("Empty: {typical} for {name}, likely {low} to {high} ({})", basis(range.basis))
}
