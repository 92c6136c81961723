//! Ride or run: every number of the pictures.

use crate::layout::head::Head;
use crate::layout::line::Line;
use crate::layout::pieces::{for_every_bike, marked_table, plain_table};
use crate::number::{percent, plain, signed};
use crate::ride::other_gear::OtherGear;
use crate::ride::probe::AtSpeed;
use crate::ride::report::RideReport;
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::view::notes::figures;
use crate::ride::words::advice::ridden;
use crate::ride::words::climb::{carried, whose};
use crate::ride::words::figures::kilojoules as spent;
use crate::ride::words::figures::{
    end_band, foot_span, mark_at, seconds, speeds_from_to, turned, whole_or_never,
};
use crate::ride::words::tables as words;
use crate::ride::words::terms::{
    basis, doubtful, gait, ground_name, judged, limit, moved, surface_name, verb,
};
use crate::side::Side;
use crate::units;
use gear_math::rider::{
    Answer, Band, FootFactor, Friction, MarkKind, Range, Reason, RollingCoefficient, Time,
};
use gear_math::wheel::MountedWidth;
use gear_math::{Speed, Surface};
use maud::{Markup, html};

/// The table of speeds goes in steps of this many answers: every 2.5 %.
const EVERY: usize = 5;
/// What stands in a cell that has no value.
const NONE: &str = "–";
const MARKS: [MarkKind; 10] = [
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

fn table([title, remark]: [&str; 2], heads: &[Head<'_>], rows: &[Vec<String>]) -> Markup {
    plain_table(title, remark, heads, rows)
}

/// What a row is, and its value for a side.
type Row<'r> = (&'r str, &'r dyn Fn(&RideSide) -> String);

/// A row: what it is, of A and of B.
fn row_of(ride: &RideReport, what: &str, value: &dyn Fn(&RideSide) -> String) -> Vec<String> {
    vec![what.to_owned(), value(&ride.sides[0]), value(&ride.sides[1])]
}

/// Every mark, for A and B, and what other lowest gears would do.
#[must_use]
pub(crate) fn ends(report: &RideSection) -> Markup {
    let of = |what: &str, value: &dyn Fn(&RideSide) -> String| row_of(&report.ride, what, value);
    let [lowest, below, from, why, foot] = words::ENDS_ROWS;
    let mut rows = vec![
        of(lowest, &|side| side.lowest.to_string()),
        of(below, &|side| units::speed(side.crossover.lowest_gear_speed)),
        of(from, &|side| end_band(&side.end)),
        of(why, &|side| side.reason().map_or(NONE, limit).to_owned()),
        of(foot, &|side| speed_or_none(side.flip().map(|flip| flip.foot))),
    ];
    rows.extend(MARKS.map(|kind| of(&words::mark_row(kind), &|side| marked(report, side, kind))));
    html! {
        (table([words::ENDS, &words::ends_remark()], &Head::SETUPS, &rows))
        p.prose { (words::over_body_weight(report.ride.inputs.rider.crank)) }
        (others(report))
    }
}

fn marked(report: &RideSection, side: &RideSide, kind: MarkKind) -> String {
    if !report.ride.inputs.looks_at(kind) {
        return words::NOT_LOOKED_AT.to_owned();
    }
    match side.marks.iter().find(|mark| mark.kind == kind) {
        Some(mark) => mark_at(kind, mark.gradient.percent()),
        None if kind == MarkKind::Ends(Reason::Energy) && side.running.earliest.is_some() => {
            words::TOO_CLOSE.to_owned()
        }
        None => whole_or_never(None),
    }
}

fn speed_or_none(speed: Option<Speed>) -> String {
    speed.map_or(NONE.to_owned(), units::speed)
}

fn others(report: &RideSection) -> Markup {
    let gear = |side: &RideSide, other: &OtherGear| {
        let own = side.others.first().and_then(|own| own.gradient);
        let gained = own.zip(other.gradient).map(|(own, other)| other.percent() - own.percent());
        vec![
            format!("{} {}", side.side, other.gear),
            units::speed(other.speed),
            whole_or_never(other.gradient),
            gained.map_or(NONE.to_owned(), |points| signed(points, 1)),
        ]
    };
    let rows: Vec<Vec<String>> = report
        .ride
        .sides
        .iter()
        .flat_map(|side| side.others.iter().map(move |other| gear(side, other)))
        .collect();
    table(words::OTHERS, &words::OTHERS_HEADS.map(Head::Figures), &rows)
}

/// The picture of speeds read the other way round: the slope that belongs to a speed.
#[must_use]
pub(crate) fn at_speed(report: &RideSection) -> Markup {
    html! { div.prose { p { (words::at_speed(report, &AtSpeed::of(report))) } } }
}

/// Speeds from the level to 45 %, folded away.
#[must_use]
pub(crate) fn speeds(report: &RideSection) -> Markup {
    let [a, b] = &report.ride.sides;
    let row = |(a, b): (&Answer, &Answer), [of_a, of_b]: [String; 2]| {
        let speed = |speed: Speed| units::speed_number(speed);
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
    let advice = [a, b].map(|side| words::this_climb(side.ascent.advice));
    rows.insert(at, row((&a.plan.answer, &b.plan.answer), advice));
    let figures = words::speeds_heads(units::speeds().symbol());
    let mut heads: Vec<Head<'_>> = figures.iter().map(|head| Head::Figures(head)).collect();
    heads.extend(words::SPEEDS_WITH.map(Head::Words));
    let [title, remark] = words::SPEEDS;
    html! {
        details id="ride-speeds-all" {
            summary { (words::SPEEDS_FOLDED) }
            (marked_table(title, remark, &heads, &rows, Some(at)))
        }
    }
}

fn band(ratio: Band) -> String {
    [ratio.low, ratio.reference, ratio.high].map(|ratio| plain(ratio, 2)).join(" – ")
}

/// The map in words.
#[must_use]
pub(crate) fn map(report: &RideSection) -> Markup {
    let rows: Vec<Vec<String>> = report
        .ride
        .map()
        .iter()
        .map(|row| {
            let mut cells = vec![ground_name(row.surface).to_owned()];
            cells.extend(row.stretches.iter().map(|stretches| words::stretches(stretches)));
            cells
        })
        .collect();
    html! {
        details id="ride-map-all" {
            summary { (words::MAP_FOLDED) }
            (table(words::MAP, &[Head::Figures(words::GROUND), Head::SetupInWords(Side::A), Head::SetupInWords(Side::B)], &rows))
            @for tyre in tyres(report) { (grounds(tyre)) }
        }
    }
}

/// The width of A's tyre, and of B's where it is another.
fn tyres(report: &RideSection) -> Vec<MountedWidth> {
    let mut tyres = Side::BOTH.map(|side| report.ride.inputs.bike(side).tyre).to_vec();
    tyres.dedup();
    tyres
}

/// The table of surfaces, with what each value rests on.
fn grounds(tyre: MountedWidth) -> Markup {
    fn range<T: Copy>(range: &Range<T>, value: fn(T) -> f64, decimals: usize) -> String {
        let (values, rests_on) = figures(range, value, decimals);
        format!("{}, {}", values.join(" – "), basis(rests_on))
    }
    let row = |&surface: &Surface| {
        vec![
            surface_name(surface).to_owned(),
            range(&surface.rolling_under(tyre), RollingCoefficient::value, 3),
            range(&surface.foot(), FootFactor::value, 2),
            range(&surface.friction(), Friction::mu, 2),
        ]
    };
    let rows: Vec<Vec<String>> = Surface::ALL.iter().map(row).collect();
    for_every_bike(&table(
        [words::GROUNDS, &words::grounds_remark()],
        &words::GROUNDS_HEADS.map(Head::Figures),
        &rows,
    ))
}

/// The climb that was asked about.
#[must_use]
pub(crate) fn climb(report: &RideSection) -> Markup {
    let ride = &report.ride;
    html! {
        (table(words::CLIMB, &Head::SETUPS, &climb_rows(report)))
        div.prose {
            @if ride.carries_alike() {
                @if let Some(line) = on_speed(report, &ride.sides[0], whose(None)) { p { (line) } }
            } @else {
                @for side in &ride.sides {
                    @if let Some(line) = on_speed(report, side, whose(Some(side.side))) { p { (line) } }
                }
            }
        }
    }
}

fn climb_rows(report: &RideSection) -> Vec<Vec<String>> {
    let time = |time: Option<Time>| time.map_or(NONE.to_owned(), seconds);
    let below = report.ride.running_wins_below();
    let rows: [Row<'_>; 16] = [
        (words::CLIMB_ADVICE, &|side| verb(side.ascent.advice).to_owned()),
        (words::CLIMB_BETTER, &|side| seconds(side.ascent.better())),
        (words::CLIMB_RIDING, &|side| time(side.paced.ride.map(|ride| ride.time))),
        (words::CLIMB_EFFORT, &|side| side.paced.ride.as_ref().map_or(NONE.to_owned(), ridden)),
        (words::CLIMB_SPENT, &|side| side.paced.ride.map_or(NONE.to_owned(), |ride| spent(ride.drawn))),
        (words::CLIMB_CARRIED, &|side| time(side.plan.carried(&side.carry))),
        (words::CLIMB_RUNNING, &|side| seconds(side.ascent.foot)),
        (words::CLIMB_SPENT_RUNNING, &|side| spent(side.paced.foot.drawn)),
        (words::CLIMB_RUNNING_LIKELY, &|side| foot_span(&side.ascent)),
        (words::CLIMB_RUNNING_WINS, &|side| units::speed(below[side.side as usize].best)),
        (words::CLIMB_WINS_LIKELY, &|side| speeds_from_to(&below[side.side as usize])),
        (words::CLIMB_PAYS_UP_TO, &|side| whole_or_never(report.ride.pays_up_to(side.side))),
        (words::CLIMB_LOWER_GEAR, &|side| words::lower_gear(side.ascent.lower_gear)),
        (words::CLIMB_STEADY, &|side| time(side.plan.ride)),
        (words::CLIMB_PAYS_FROM, &|side| words::pays_from(&side.plan)),
        (words::CLIMB_GEAR, &|side| turned(&side.plan.answer)),
    ];
    rows.map(|(what, value)| row_of(&report.ride, what, value)).into()
}

/// How far speed carries up it.
fn on_speed(report: &RideSection, side: &RideSide, whose: &str) -> Option<Line> {
    Some(carried(report, whose, side, &side.carries()?))
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
    let [input, moved] = words::SWINGS_HEADS.map(Head::Figures);
    table(words::SWINGS, &[input, moved, Head::Setup(Side::A), Head::Setup(Side::B)], &rows)
}
