//! How it was worked out, with this scenario's numbers.

use crate::number::{percent, plain, trimmed, with_unit};
use crate::ride::inputs::{LapPrice, RideInputs};
use crate::ride::section::RideSection;
use crate::ride::words::figures::seconds;
use crate::ride::words::terms::off_road;
use crate::side::Side;
use crate::units;
use crate::words::{alike_or_each, likely_share};
use gear_math::rider::{Band, FootBike, MetabolicPower, PeakFactor};

/// What a formula gives, the formula, and the same in numbers.
pub(crate) type Worked = (&'static str, &'static str, String);

/// The speed riding.
pub(crate) fn riding(report: &RideSection) -> Worked {
    let inputs = &report.ride.inputs;
    let speed = report.ride.sides[0].plan.answer.ride;
    let terms = inputs.question(Side::A).resistance(inputs.ground(Side::A), inputs.climb).power(speed);
    let (power, share) =
        (with_unit(inputs.rider.power.watts(), 0, "W"), trimmed(inputs.bike(Side::A).efficiency.share()));
    let (climbing, rolling) = (plain(terms.gravity_w, 0), plain(terms.rolling_w, 0));
    let (air, speed) = (with_unit(terms.air_w, 0, "W"), units::speed(speed));
    (
        "Riding",
        "power × drivetrain = (climbing + rolling + air) × speed",
        format!("{power} × {share} = {climbing} + {rolling} + {air}, at {speed}"),
    )
}

/// Where that comes from.
pub(crate) fn riding_rests_on() -> String {
    format!(
        "Martin et al. 1998, validated on the road to 2.7 W; every surface off the road is {} at best.",
        off_road()
    )
}

fn number(kg: f64) -> String {
    units::masses().typed(kg)
}

/// The power on foot.
pub(crate) fn engine(report: &RideSection) -> Worked {
    let rider = &report.ride.inputs.rider;
    let left = MetabolicPower::of(rider.power, rider.efficiency).above_standing(rider.body, rider.standing);
    let (power, efficiency) = (with_unit(rider.power.watts(), 0, "W"), trimmed(rider.efficiency.share()));
    let (standing, body) = (units::per_mass_number(rider.standing.w_per_kg()), number(rider.body.kg()));
    let left = with_unit(left.watts(), 0, "W");
    (
        "The same engine on foot",
        "power ÷ efficiency − standing",
        format!("{power} ÷ {efficiency} − {standing} × {body} = {left}"),
    )
}

/// The speed on foot.
pub(crate) fn on_foot(report: &RideSection) -> Worked {
    let (rider, bike) = (&report.ride.inputs.rider, report.ride.inputs.bike(Side::A));
    let (body, kit, unit) = (number(rider.body.kg()), number(rider.kit.kg()), units::masses().symbol());
    let (carrying, bike) = (trimmed(bike.load.value()), number(bike.mass.kg()));
    let speed = units::speed(report.ride.sides[0].plan.answer.foot);
    let efficiency = trimmed(rider.efficiency.share());
    let (formula, numbers) = match rider.foot_bike {
        FootBike::Carried => (
            "that = cost of the slope × (body + kit + carrying × bike) × speed",
            format!("({body} + {kit} + {carrying} × {bike}) {unit}"),
        ),
        FootBike::Pushed => (
            "that = (cost of the slope × (body + kit) + force to push the bike ÷ efficiency) × speed",
            format!("({body} + {kit}) {unit}, and {bike} {unit} pushed ÷ {efficiency} (estimate)"),
        ),
        FootBike::Quicker => (
            "that = (cost of the slope × (body + kit) + the bike) × speed; the bike carried costs as much as carrying × its mass, pushed its force ÷ efficiency, whichever is less",
            format!(
                "({body} + {kit}) {unit}, {carrying} × {bike} {unit} or {bike} {unit} pushed ÷ {efficiency} (estimate)"
            ),
        ),
    };
    ("On foot", formula, format!("{numbers}, at {speed}"))
}

/// Where that comes from.
pub(crate) const ON_FOOT: &str = "Cost of running and walking on slopes: Minetti et al. 2002, ten runners on a treadmill; the change from one to the other is interpolated between five published points. It is assumed that you can burn as much on foot as on the bike; riders who never run cannot quite.";

/// The speed of the lowest gear.
pub(crate) fn lowest_gear(report: &RideSection) -> Worked {
    let lowest = &report.ride.sides[0];
    let (gear, rpm) = (lowest.lowest, with_unit(report.rings.window.low.rpm(), 0, "rpm"));
    let speed = units::speed(lowest.crossover.lowest_gear_speed);
    (
        "Where no gear is low enough",
        "speed of the lowest gear at the lowest cadence, put into the first line",
        format!("{gear} at {rpm} = {speed}"),
    )
}

/// What is spent of the reserve adds to the power on foot.
pub(crate) fn reserve(report: &RideSection) -> Worked {
    let account = report.ride.inputs.account();
    let (held, peak) = (account.effort.sustainable().watts(), account.effort.peak().watts());
    let foot = &report.ride.sides[0].paced.foot;
    let (joules, time) = (with_unit(foot.drawn.j(), 0, "J"), with_unit(foot.time.s(), 1, "s"));
    let [held, peak, power] = [held, peak, foot.power.watts()].map(|watts| with_unit(watts, 0, "W"));
    (
        "What you spend on this climb",
        "power + spent ÷ (time + spent ÷ (peak power − power))",
        format!("{held} + {joules} ÷ ({time} + {joules} ÷ ({peak} − {held})) = {power} on foot"),
    )
}

/// The speed below which running wins.
pub(crate) fn running_wins(report: &RideSection) -> Worked {
    let length = units::distances().print(report.ride.inputs.length.m(), 0);
    let time = seconds(report.ride.sides[0].ascent.foot);
    let speed = units::speed(report.ride.running_wins_below()[0].best);
    (
        "Where running wins",
        "length ÷ (length ÷ speed on foot + dismount and remount)",
        format!("{length} ÷ {time} = {speed}"),
    )
}

/// What the rest rests on, and what is left out: a head and what follows it.
pub(crate) fn notes(report: &RideSection) -> [(&'static str, String); 5] {
    [
        ("The reserve ", reserve_counts(report)),
        ("The band ", band(&report.ride.inputs)),
        ("Checked against ", CHECKED.to_owned()),
        ("Grip and lift ", grip()),
        ("Left out: ", LEFT_OUT.to_owned()),
    ]
}

/// How much of the reserve is spent, and how it counts.
fn reserve_counts(report: &RideSection) -> String {
    let inputs = &report.ride.inputs;
    let most = with_unit(inputs.budget().j() / 1000.0, 1, "kJ");
    let worth = |side: Side| with_unit(1000.0 * inputs.spending(side).price.s_per_j(), 1, "s");
    let spent = if matches!(inputs.lap_price, LapPrice::Found(_)) {
        let prices = alike_or_each(&worth(Side::A), &worth(Side::B));
        format!(
            "On this climb you ride or run as hard as pays on your lap as it stands below: there a kilojoule is worth {prices}, and that is what it counts here beside the time; more than your share, {most}, you never spend."
        )
    } else if inputs.is_repeated {
        let price = worth(Side::A);
        format!(
            "On this climb you ride or run as hard as usually pays on every lap: there a kilojoule is worth {price} (found on six courses, an estimate for yours until your lap is worked out), and that is what it counts here beside the time; more than your share, {most}, you never spend."
        )
    } else {
        format!(
            "On this climb you ride or run so fast that your share of it, {most}, is just used up, since your lap is not one that is ridden over and over."
        )
    };
    format!("{RESERVE} {spent} {COUNTED}")
}

fn grip() -> String {
    let peak = plain(PeakFactor::JERKY.value(), 2);
    format!(
        "are statics about the two contact points, for a smooth stroke; a heavy stroke peaks at {peak} of its mean. Friction numbers come from car tyres and from judgement."
    )
}

const RESERVE: &str = "is the work above the power you hold (W′), counted by the formula above (Morton 1996, tested down to some 20 s).";
const COUNTED: &str = "That it is counted so is a choice of this page; the lap counts in the same way. On the bike a cadence off the one you like at that power costs more, and a gear too tall for your legs draws on the reserve. A slope that goes on and on leaves the reserve of no use: all that is said of slopes and not of this climb is for your power alone.";
const CHECKED: &str = "the one treadmill study that asked this very question (Ardigò, Saibene & Minetti 2003): 13 to 15 % unloaded, near 20 % with a bike’s weight; the model gives the same with an efficiency near 0.22.";
const LEFT_OUT: &str =
    "ruts, steps, corners, other riders, clogging, slipping shoes, tired arms, the way out of the obstacle.";

/// How the band of the speeds on foot comes about.
fn band(inputs: &RideInputs) -> String {
    let off = |factors: [f64; 2]| percent(100.0 * (factors[1] - 1.0), 0);
    let (likely, efficiency) = (likely_share(), trimmed(Band::EFFICIENCY));
    let [rolling, ground, person] = [Band::ROLLING, Band::GROUND, Band::PERSON].map(off);
    let [low, high] = Band::LOAD.map(|doubt| plain(inputs.bike(Side::A).load.value() + doubt, 1));
    let carrying = match inputs.rider.foot_bike {
        FootBike::Pushed => String::new(),
        FootBike::Carried | FootBike::Quicker => {
            format!(" the cost of carrying the bike from {low} to {high},")
        }
    };
    format!(
        "moves gross efficiency by {efficiency}, rolling resistance by {rolling},{carrying} what the ground adds on foot by {ground} and your own cost by {person}, one at a time, and adds the squares. The doubts of the slope where riding ends are taken together in the same way, each as far as the last picture shows. Likely means {likely} cases. Too close to call means the band reaches both sides."
    )
}
