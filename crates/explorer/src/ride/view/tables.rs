//! Ride or run: every number of the pictures.

use crate::bench::field::Field;
use crate::layout::pieces::{link_to, marked_table, name, plain_table};
use crate::number::{capital, duration, percent, plain, signed, with_unit};
use crate::ride::report::{OtherGear, RideSide, Stretch, surface_name};
use crate::ride::section::RideSection;
use crate::ride::view::answer::whole_or_never;
use crate::ride::view::words::{
    basis, cadence, doubtful, end_band, feet_and_gears, foot_span, gait, judged, limit, mark, mark_at, moved,
    seconds, speeds_from_to, verb, verdict, whole,
};
use crate::side::Side;
use gear_math::rider::{
    Answer, Band, Climb, LowerGear, MarkKind, OverGear, Range, Reason, Shortfall, Time, Verdict,
};
use gear_math::wheel::MountedWidth;
use gear_math::{Gear, Speed, Surface};
use maud::{Markup, html};

/// The table of speeds goes in steps of this many answers: every 2.5 %.
const EVERY: usize = 5;

/// Every mark, for A and B, and what other lowest gears would do.
#[must_use]
pub(crate) fn ends(report: &RideSection) -> Markup {
    let sides = &report.ride.sides;
    let of = |what: &str, value: &dyn Fn(&RideSide) -> String| {
        vec![what.to_owned(), value(&sides[0]), value(&sides[1])]
    };
    let marks = [
        MarkKind::Ends(Reason::Gear),
        MarkKind::Ends(Reason::Force),
        MarkKind::Ends(Reason::Balance),
        MarkKind::Ends(Reason::Grip),
        MarkKind::Ends(Reason::Energy),
        MarkKind::TooCloseFrom,
        MarkKind::FootFrom,
        MarkKind::BodyWeight,
        MarkKind::SlipsInJerks,
        MarkKind::FrontLifts,
    ];
    let mut rows = vec![
        of("Lowest gear", &|side| side.lowest.to_string()),
        of("No gear low enough below", &|side| report.rings.unit.print(side.crossover.lowest_gear_speed)),
        of("Riding ends from", &|side| end_band(&side.end)),
        of("Why", &|side| side.reason().map_or("–", limit).to_owned()),
        of("Speed on foot there", &|side| speed_or_none(report, side.flip().map(|flip| flip.foot))),
    ];
    rows.extend(marks.map(|kind| of(&capital(mark(kind)), &|side| marked(report, side, kind))));
    html! {
        (plain_table("Where riding ends, and what else to know of the slope", "Gradients on this ground, for this power, to a whole per cent: none is surer. Running for a climb of this length, dismount and remount included. Over body weight on the pedal: holding the speed in the lowest gear takes more than your full weight on every stroke. Choppy stroke: heavy and uneven, with 1.57 of its mean at the peak.", &["", "A", "B"], &rows))
        p.prose {
            "Over body weight is for the cross bike’s "
            (link_to(Field::CrossCrank, &format!("crank of {} mm", report.ride.inputs.rider.crank.mm())))
            ", as in its position."
        }
        (others(report))
    }
}

fn marked(report: &RideSection, side: &RideSide, kind: MarkKind) -> String {
    if !report.ride.inputs.looks_at(kind) {
        return "not looked at".to_owned();
    }
    match side.marks.iter().find(|mark| mark.kind == kind) {
        Some(mark) => mark_at(kind, mark.gradient.percent()),
        None if kind == MarkKind::Ends(Reason::Energy) && report.ride.running.earliest.is_some() => {
            "too close to call".to_owned()
        }
        None => whole_or_never(None),
    }
}

fn speed_or_none(report: &RideSection, speed: Option<Speed>) -> String {
    speed.map_or("–".to_owned(), |speed| report.rings.unit.print(speed))
}

fn others(report: &RideSection) -> Markup {
    let gear = |side: &RideSide, other: &OtherGear| {
        let own = side.others.first().and_then(|own| own.gradient);
        let gained = own.zip(other.gradient).map(|(own, other)| other.percent() - own.percent());
        vec![
            format!("{} {}", side.side, other.gear),
            report.rings.unit.print(other.speed),
            whole_or_never(other.gradient),
            gained.map_or("–".to_owned(), |points| signed(points, 1)),
        ]
    };
    let rows: Vec<Vec<String>> = report
        .ride
        .sides
        .iter()
        .flat_map(|side| side.others.iter().map(move |other| gear(side, other)))
        .collect();
    plain_table(
        "What another lowest gear would do",
        "Two teeth off the smallest ring, two or four on to the largest sprocket. The other limits stay where they are.",
        &["Lowest gear", "Slowest at your lowest cadence", "Too tall from", "Points steeper"],
        &rows,
    )
}

/// The picture of speeds read the other way round: the slope that belongs to a speed.
#[must_use]
pub(crate) fn at_speed(report: &RideSection) -> Markup {
    let (inputs, speed) = (&report.ride.inputs, report.rings.probe.uphill);
    let [a, b] = &inputs.questions;
    let slope = a.gradient_at(&inputs.ground, speed).and_then(|slope| Climb::new(slope.percent()).ok());
    html! {
        div.prose {
            p {
                "At " b { (report.rings.unit.print(speed)) } ": "
                @if let Some(slope) = slope {
                    "full power holds it on slopes up to " b { (percent(slope.percent(), 1)) } " by the best guess. On foot there: "
                    (feet_and_gears(report, &a.answer(&inputs.ground, slope), &b.answer(&inputs.ground, slope)))
                } @else if report.ride.sides[0].answers.first().is_some_and(|level| speed > level.ride) {
                    "full power does not even hold it on the level."
                } @else {
                    "full power is faster than that all the way to 45\u{a0}%."
                }
            }
        }
    }
}

/// Speeds from the level to 45 %, folded away.
#[must_use]
pub(crate) fn speeds(report: &RideSection) -> Markup {
    let [a, b] = &report.ride.sides;
    let row = |(a, b): (&Answer, &Answer), [of_a, of_b]: [String; 2]| {
        let speed = |speed: Speed| plain(report.rings.unit.value(speed), 1);
        vec![
            percent(a.gradient.percent(), 1),
            speed(a.ride),
            turned(a),
            turned(b),
            format!("{} ({})", speed(a.foot), gait(a.gait)),
            speed(a.run),
            band(a.ratio),
            of_a,
            of_b,
        ]
    };
    let steady = |it: &Answer| judged(it.verdict, it.limits);
    let grid = a.answers.iter().zip(&b.answers).step_by(EVERY);
    let mut rows: Vec<Vec<String>> = grid.map(|(a, b)| row((a, b), [steady(a), steady(b)])).collect();
    let here = report.ride.inputs.climb.percent();
    let at = a.answers.iter().step_by(EVERY).take_while(|it| it.gradient.percent() <= here).count();
    let advice = [a, b].map(|side| format!("this climb: {}", verb(side.ascent.advice)));
    rows.insert(at, row((&a.plan.answer, &b.plan.answer), advice));
    let unit = report.rings.unit.symbol();
    let heads = [
        "Slope",
        &format!("Riding, {unit}"),
        "A, rpm",
        "B, rpm",
        &format!("On foot, {unit}"),
        &format!("Running, {unit}"),
        "Foot over ride, likely from – best – to",
        "|With A",
        "|With B",
    ];
    html! {
        details id="ride-speeds-all" {
            summary { "Speeds on every slope in numbers" }
            (marked_table("Speed against gradient", "Riding is what the power would give in an ideal gear; a cadence in brackets is one you cannot turn, spun out one that is too fast for you. Verdicts are for that power kept up and without dismount and remount, but in the row of this climb, whose verdict counts all.", &heads, &rows, Some(at)))
        }
    }
}

/// The gear and its cadence, in brackets where it cannot be turned.
fn turned(answer: &Answer) -> String {
    format!("{} {}", answer.riding.gear, cadence(answer))
}

fn band(ratio: Band) -> String {
    [ratio.low, ratio.reference, ratio.high].map(|ratio| plain(ratio, 2)).join(" – ")
}

/// The map in words.
#[must_use]
pub(crate) fn map(report: &RideSection) -> Markup {
    let rows: Vec<Vec<String>> = report
        .ride
        .map
        .iter()
        .map(|row| {
            let mut cells = vec![row.name.to_owned()];
            cells.extend(row.stretches.iter().map(|stretches| in_words(stretches)));
            cells
        })
        .collect();
    html! {
        details id="ride-map-all" {
            summary { "The map in numbers" }
            (plain_table("Verdict by ground", "Each up to the gradient given, for your power kept up; a short climb may be forced or carried all the same.", &["Ground", "A", "B"], &rows))
            (grounds(report.ride.inputs.bike.tyre))
        }
    }
}

fn in_words(stretches: &[Stretch]) -> String {
    let words = |stretch: &Stretch| {
        let why = match (stretch.verdict, stretch.reason) {
            (Verdict::FootForced, Some(why)) => format!(" ({})", limit(why)),
            _ => String::new(),
        };
        format!("{}{why} to {}", verdict(stretch.verdict), whole(stretch.to))
    };
    stretches.iter().map(words).collect::<Vec<_>>().join("; ")
}

/// The table of surfaces, with what each value rests on.
fn grounds(tyre: MountedWidth) -> Markup {
    fn range<T: Copy>(range: &Range<T>, value: fn(T) -> f64, decimals: usize) -> String {
        let [low, typical, high] =
            [range.low, range.typical, range.high].map(|it| plain(value(it), decimals));
        format!("{low} – {typical} – {high}, {}", basis(range.basis))
    }
    let row = |&surface: &Surface| {
        vec![
            surface_name(surface).to_owned(),
            range(&surface.rolling_under(tyre), gear_math::rider::RollingCoefficient::value, 3),
            range(&surface.foot(), gear_math::rider::FootFactor::value, 2),
            range(&surface.friction(), gear_math::rider::Friction::mu, 2),
        ]
    };
    let rows: Vec<Vec<String>> = Surface::ALL.iter().map(row).collect();
    plain_table(
        "What each ground is taken to do",
        "Low – typical – high, and what that rests on. Off the road treat every number as ±30 % at best.",
        &["Ground", "Rolling resistance", "Cost on foot, × hard ground", "Friction"],
        &rows,
    )
}

/// The climb that was asked about.
#[must_use]
pub(crate) fn climb(report: &RideSection) -> Markup {
    let sides = &report.ride.sides;
    let of = |what: &str, value: &dyn Fn(&RideSide) -> String| {
        vec![what.to_owned(), value(&sides[0]), value(&sides[1])]
    };
    let length = report.ride.inputs.length;
    let time = |time: Option<Time>| time.map_or("–".to_owned(), seconds);
    let rows = [
        of("Advice", &|side| verb(side.ascent.advice).to_owned()),
        of("The quickest that can be done", &|side| seconds(side.ascent.quickest())),
        of("Riding", &|side| time(side.plan.ride)),
        of("With the speed into it", &|side| time(side.plan.carried(&side.carry))),
        of("Forced", &|side| time(side.forcing().and_then(|over| over.over(length).ok()))),
        of("Running", &|side| seconds(side.plan.foot)),
        of("Running, likely", &|side| foot_span(&side.plan)),
        of("Running wins below", &|side| report.rings.unit.print(side.plan.running_wins_below().best)),
        of("That speed, likely", &|side| speeds_from_to(report, &side.plan.running_wins_below())),
        of("Running pays from", &pays_from),
        of("A lower gear saves", &|side| saved(side.ascent.lower_gear)),
        of("Gear and rpm", &|side| turned(&side.plan.answer)),
    ];
    html! {
        (plain_table("This climb", "Running includes dismount and remount. Lengths and seconds of a lower gear are best guesses.", &["", "A", "B"], &rows))
        div.prose {
            @if gears(&sides[0]) == gears(&sides[1]) {
                (forced(report, &sides[0], &html! { "A and B" }))
            } @else {
                @for side in sides { (forced(report, side, &name(side.side))) }
            }
        }
    }
}

/// The length from which running pays, by the best guess; never only where the whole band says so.
fn pays_from(side: &RideSide) -> String {
    match (side.plan.break_even, side.plan.answer.verdict) {
        (Some(length), _) => with_unit(length.m(), 0, "m"),
        (None, Verdict::Ride) => "never".to_owned(),
        (None, Verdict::TooClose) => "too close to call".to_owned(),
        _ => "–".to_owned(),
    }
}

fn saved(lower: LowerGear) -> String {
    match lower {
        LowerGear::Saves(time) => format!("about {}", duration(time.s().max(1.0), 0)),
        LowerGear::Spares => "no time, but effort".to_owned(),
        LowerGear::Needless | LowerGear::Useless(_) => "nothing".to_owned(),
    }
}

/// The gears that forcing or carrying is done in: where they are the same, all else is.
fn gears(side: &RideSide) -> (Gear, Option<Gear>) {
    (side.lowest, side.over_gear.map(|over| over.gear))
}

/// Where the power does not last up the climb: what forcing it takes, and how far speed carries.
fn forced(report: &RideSection, side: &RideSide, whose: &Markup) -> Markup {
    let reach = side.carry.reach.filter(|reach| reach.way.m() >= 0.5 && !side.plan.answer.limits.grip);
    html! {
        @if let Some(over) = side.forcing() {
            p {
                (whose) ": turning " (over.gear) " at " (with_unit(over.cadence.rpm(), 0, "rpm"))
                " all the same takes " (with_unit(over.power.watts(), 0, "W")) (lasting(report, side, over)) "."
            }
        }
        @if let Some(reach) = reach {
            p {
                (whose) ": coming in at " (report.rings.unit.print(report.ride.inputs.entry)) " you get "
                b { (with_unit(reach.way.m(), 0, "m")) } " along and " (with_unit(reach.height.m(), 1, "m")) " up in "
                (seconds(reach.time)) " before you are down to " (report.rings.unit.print(side.carry.exit))
                ", too slow to ride on; a ramp shorter than that is a matter of momentum, not of gears."
            }
        }
    }
}

/// How long the power that forces a climb lasts, and whether that is enough.
fn lasting(report: &RideSection, side: &RideSide, over: &OverGear) -> Markup {
    let length = report.ride.inputs.length;
    let (enough, but) = match over.over(length) {
        Err(Shortfall::Reserve) if over.lasts.is_some_and(|(_, far)| far.m() < length.m()) => {
            ("not enough for this climb", "")
        }
        Err(_) => return html! { ", more than you give at that cadence for so long" },
        Ok(time) if time < side.plan.foot => ("enough for this climb", ""),
        Ok(_) => ("enough for this climb", ", but running is quicker"),
    };
    html! {
        @if let Some((time, far)) = over.lasts {
            ", which the share of your reserve set aside lasts for " (seconds(time)) " or " (with_unit(far.m(), 0, "m")) ": "
            b { (enough) } (but)
        }
    }
}

/// What moves the answer most.
#[must_use]
pub(crate) fn swings(report: &RideSection) -> Markup {
    let moving = report.ride.swings.iter().filter(|swing| Side::BOTH.iter().any(|&side| swing.moves(side)));
    let rows: Vec<Vec<String>> = moving
        .map(|swing| {
            let mut cells = vec![doubtful(swing.input).to_owned(), moved(swing.input, swing.bars[0].values)];
            cells.extend(
                swing
                    .bars
                    .iter()
                    .map(|bar| format!("{} … {}", whole_or_never(bar.at_low), whole_or_never(bar.at_high))),
            );
            cells
        })
        .collect();
    plain_table(
        "What moves the end of riding",
        "One input at a time, from its low to its high likely value; what moves nothing is left out.",
        &["Input", "Moved", "A", "B"],
        &rows,
    )
}
