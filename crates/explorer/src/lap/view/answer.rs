//! “Round the lap”: the answer in sentences.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::chain::words::beside_lap;
use crate::lap::inputs::{CourseChoice, LapModel};
use crate::lap::report::{LapReport, Spread};
use crate::lap::section::LapSection;
use crate::lap::settled::Settled;
use crate::lap::view::forcing::forcing;
use crate::lap::view::reserve::reserve;
use crate::lap::words;
use crate::layout::line::Line;
use maud::{Markup, html};

/// Which set-up is quicker, by how much, and whether that is more than the uncertainty.
#[must_use]
pub(crate) fn answer(report: &LapSection) -> Markup {
    if let Some(fault) = report.lap_inputs.fault(report.lap.own.as_deref()) {
        return html! { p.care { (words::answer::no_times(&course_name(report), &fault)) } };
    }
    let Some(laps) = &report.lap.laps else { return html! { p { (words::answer::SOON) } } };
    if report.lap.is_stale {
        return html! {
            p.quiet { (words::reserve::WORKING_IT_OUT) }
            div.stale aria-busy="true" { (known(report, laps)) }
        };
    }
    known(report, laps)
}

/// What stands behind it: what would turn it, how the laps are ridden, and how sure that is.
#[must_use]
pub(crate) fn why(report: &LapSection) -> Markup {
    let is_known = report.lap_inputs.fault(report.lap.own.as_deref()).is_none();
    let Some(laps) = report.lap.laps.as_ref().filter(|_| is_known) else { return html! {} };
    let is_before = report.lap.is_stale;
    html! {
        div class=[is_before.then_some("stale")] aria-busy=[is_before.then_some("true")] { (reasons(report, laps)) }
    }
}

fn reasons(report: &LapSection, laps: &LapReport) -> Markup {
    html! {
        @if let Some(told) = turning(report, laps) { p.more { (told) } }
        (effort(report, laps))
        @if let Some(settled) = &laps.settled { (doubt(report, laps, settled)) }
        p.quiet { (crate::ride::words::width::counts(&report.ride)) }
    }
}

fn known(report: &LapSection, laps: &LapReport) -> Markup {
    html! {
        p { (headline(report, laps)) }
        p {
            (words::answer::course_and_times(&course_name(report), laps)) " "
            (words::answer::dismounts(&laps.laps))
        }
        @for note in beside_lap::notes(&report.chain_section()) { p.more { (note) } }
    }
}

/// How the effort is spread, and what that does.
fn effort(report: &LapSection, laps: &LapReport) -> Markup {
    let is_even = matches!(laps.question.spread, Spread::Even(_));
    html! {
        @if report.lacks_file() {} @else if is_even {
            @if let Some(settled) = &laps.settled { p.more { (forcing(laps, settled)) } }
            @if report.lap_inputs.model == LapModel::Reserve { p.more { (words::reserve::EVEN_FOR_SECONDS) } }
        } @else {
            (reserve(laps))
        }
    }
}

fn headline(report: &LapSection, laps: &LapReport) -> Markup {
    html! {
        @match &laps.settled {
            _ if report.lacks_file() => (words::answer::LACKS_FILE),
            Some(_) if laps.is_of_one_bike() => (words::answer::alike()),
            Some(settled) => (verdict(settled, laps.length_m())),
            None => (words::answer::first_look(&laps.laps)),
        }
    }
}

/// What would turn the headline.
fn turning(report: &LapSection, laps: &LapReport) -> Option<Line> {
    let settled = laps.settled.as_ref().filter(|_| !report.lacks_file() && !laps.is_of_one_bike())?;
    words::turning::turning(settled)
}

fn verdict(settled: &Settled, length_m: f64) -> Markup {
    let groups = settled.drawn.as_ref().and_then(|drawn| drawn.groups.as_ref());
    html! {
        (words::answer::verdict(settled))
        @if let Some(groups) = groups { " " (words::reserve::groups(groups, settled.gained.precision())) }
        @if let Some(place) = settled.place(length_m) { " " (words::answer::mainly(place)) }
    }
}

fn doubt(report: &LapSection, laps: &LapReport, settled: &Settled) -> Markup {
    let (spread, lacks_headings) = (laps.question.spread, laps.question.lacks_headings());
    let close = settled.too_close.iter().map(Vec::len).max().unwrap_or(0);
    let wind = report.ride.inputs.air.headwind.m_per_s();
    html! {
        p.quiet {
            @match &settled.drawn {
                Some(drawn) => (words::reserve::doubt(drawn)),
                None => (words::answer::doubt()),
            }
            @if let (true, Spread::Reserve { wind, .. }) = (lacks_headings, spread) {
                " " (words::reserve::no_headings(wind.speed.m_per_s()))
            }
            @if close > 0 { " " (words::answer::too_close(close)) }
            @if wind != 0.0 { " " (words::answer::wind(wind)) }
        }
    }
}

/// A sketch that is not the rider's is not called so.
pub(crate) fn course_name(report: &LapSection) -> String {
    if report.lap_inputs.choice == CourseChoice::Sketch && report.owners.get(Field::Sketch) == Owner::Demo {
        return words::course::DEMO_SKETCH.to_owned();
    }
    report.lap_inputs.course_name(report.lap.own.as_deref())
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::lap::sent_track;
    use crate::number::clock;
    use crate::page::desk::Desk;
    use gear_math::course::{GainPart, LapGains, Precision, TimeBand};

    /// A desk with this link opened and its lap settled.
    pub(crate) fn ridden(link: &str) -> Desk {
        let mut desk = Desk::default();
        desk.open(link);
        desk.lap(true);
        desk
    }

    /// The same with these fields filled in.
    pub(crate) fn filled(edits: &[(Field, &str)]) -> Desk {
        let mut desk = Desk::default();
        let edits: Vec<_> =
            edits.iter().map(|(field, text)| (field.spec().key.into(), (*text).into())).collect();
        desk.edit(&edits);
        desk.lap(true);
        desk
    }

    pub(crate) fn plain_text(html: &Markup) -> String {
        let mut html = html.clone().into_string();
        for tag in ["<b>", "</b>", "<b class=\"A\">", "<b class=\"B\">", "<small>", "</small>"] {
            html = html.replace(tag, "");
        }
        html
    }

    const STEADY: (Field, &str) = (Field::LapModel, "steady");

    fn said(edits: &[(Field, &str)]) -> String {
        plain_text(&in_full(&filled(edits).report().lap_section()))
    }

    /// The answer followed by what is behind it.
    pub(crate) fn in_full(report: &LapSection) -> Markup {
        html! { (answer(report)) (why(report)) }
    }

    pub(crate) fn settled(gained: TimeBand) -> Settled {
        Settled {
            bands: [gained; 2],
            too_close: [Vec::new(), Vec::new()],
            gained,
            forced: [Vec::new(), Vec::new()],
            gains: LapGains { parts: Vec::new(), main: None, curve: Vec::new() }.into(),
            drawn: None,
            turners: None,
            is_final: true,
        }
    }

    const fn band(low_s: f64, time_s: f64, high_s: f64) -> TimeBand {
        TimeBand { low_s, time_s, high_s }
    }

    #[test]
    fn two_alike_are_said_to_be_alike() {
        let alike =
            [(Field::RingsA, Field::RingsB.spec().start), (Field::CassetteA, Field::CassetteB.spec().start)];
        let words = said(&alike);
        assert!(words.starts_with("<p>A and B are the same, so the lap is too."), "{words}");
        assert!(words.contains("Force it at ") && !words.contains("with A"), "{words}");
        let words = said(&[&alike[..], &[STEADY]].concat());
        assert!(words.contains("The lap is ridden at an even") && !words.contains("A on foot"), "{words}");
    }

    #[test]
    fn the_one_place_that_matters_is_named() {
        let words = said(&[STEADY, (Field::Capacity, "39")]);
        assert!(words.contains("Nearly all of what B gains, it gains at 11"), "{words}");
    }

    #[test]
    fn what_the_width_of_the_tyre_does_stands_beside_the_verdict() {
        let own = said(&[]);
        assert!(own.contains("Tyre width counts only in mud and loose sand (estimate); on grass"), "{own}");
        let wide = said(&[(Field::Tyre, "40-622")]);
        let factor = |mm| {
            gear_math::wheel::WidthFactor::on_soft_ground(gear_math::wheel::MountedWidth::new(mm).unwrap())
        };
        let off = 100.0 * (1.0 - factor(39.2).value());
        assert!((2.0..30.0).contains(&off), "{off}");
        let told = format!("there takes {off:.0}\u{a0}% off rolling resistance");
        assert!(wide.contains("39.2\u{a0}mm for 33\u{a0}mm ") && wide.contains(&told), "{told}: {wide}");
        assert!(said(&[(Field::Tyre, "28-622")]).contains("there adds "));
    }

    #[test]
    fn an_edge_close_to_zero_is_only_just_more() {
        let said = |low_s: f64| plain_text(&verdict(&settled(band(low_s, 5.7, 9.6)), 2000.0));
        assert!(said(0.4).contains("which is only just more than the uncertainty."));
        assert!(said(2.4).contains("which is more than the uncertainty."));
    }

    #[test]
    fn who_may_be_slower_or_quicker_than_whom_is_named() {
        let said = |gained: TimeBand| plain_text(&verdict(&settled(gained), 2000.0));
        assert_eq!(
            said(band(-2.9, 5.5, 9.5)),
            "Too close to call: by the best guess B gains 5.5\u{a0}s a lap, but it may be anything from 2.9\u{a0}s slower to 9.5\u{a0}s quicker than A."
        );
        assert_eq!(
            said(band(-28.6, 0.02, 2.1)),
            "Too close to call: by the best guess neither is quicker, but B may be anything from 29\u{a0}s slower to 2\u{a0}s quicker than A."
        );
        assert!(said(band(-9.5, -5.5, 2.9)).contains("A gains 5.5\u{a0}s a lap, but it may be anything from 2.9\u{a0}s slower to 9.5\u{a0}s quicker than B."));
    }

    /// Benches found at random on which neither is quicker by the best guess.
    #[test]
    fn a_link_on_which_neither_is_quicker_says_who_may_be() {
        let desk = ridden(
            "r=3&ra=50/34&ca=11-12-13-14-15-16-17-18-19-21-23&rb=48/32&cb=11-12-13-14-15-16-17-18-19-21-23&ty=32-406&cl=45&cu=95&ch=120&pw=120&ef=0.22",
        );
        let words = plain_text(&in_full(&desk.report().lap_section()));
        assert!(!words.contains("neither is quicker, but it may"), "{words}");
        let close = words.contains("Too close to call");
        assert!(
            !close || words.contains(" quicker than A.") || words.contains(" quicker than B."),
            "{words}"
        );
    }

    #[test]
    fn a_hopeless_gear_loses_by_more_than_the_uncertainty() {
        let words = said(&[(Field::RingsA, "56"), (Field::CassetteA, "11")]);
        assert!(words.starts_with("<p>B is quicker here: it gains"), "{words}");
        assert!(words.contains("more than the uncertainty"));
    }

    #[test]
    fn a_lap_good_to_half_a_minute_is_told_in_seconds() {
        let desk = ridden("");
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        let bands = laps.settled.as_ref().unwrap().bands;
        assert!(bands.iter().all(|band| band.high_s - band.low_s > 40.0));
        let words = plain_text(&in_full(&report.lap_section()));
        let told = |band: &TimeBand| format!("{} (likely ", clock(band.time_s, Precision::Second));
        assert!(bands.iter().all(|band| words.contains(&told(band))), "{words}");
    }

    #[test]
    fn wind_that_was_typed_is_said_not_to_be_in_the_lap() {
        let said = |link: &str| plain_text(&in_full(&ridden(link).report().lap_section()));
        let (with, without) = (said("r=3&wi=10"), said("r=3"));
        assert!(
            with.contains("The wind of 10.0\u{a0}m/s against you typed for “Ride or run?” is not in the lap"),
            "{with}"
        );
        assert!(said("r=3&wi=-4").contains("The wind of 4.0\u{a0}m/s behind you"));
        let before = with.find(" The wind of").unwrap();
        assert!(without.starts_with(&with[..before]), "the lap is the same");
    }

    #[test]
    fn a_part_on_foot_across_the_line_is_one() {
        let words = said(&[
            (Field::Course, "sketch"),
            (Field::Sketch, "10; 0; firm grass; foot 2\n400; 0; tarmac\n10; 0; firm grass; foot 2"),
        ]);
        assert!(words.contains("With both you dismount once."), "{words}");
    }

    #[test]
    fn who_never_rides_is_on_foot_all_the_way() {
        let words = said(&[(Field::Course, "sketch"), (Field::Sketch, "60; 0; firm grass; foot 2")]);
        assert!(words.contains("You are on foot all the way.") && !words.contains("you dismount"), "{words}");
    }

    #[test]
    fn a_quarter_of_a_lap_is_no_place() {
        let settled = |to_m| Settled {
            gains: LapGains {
                parts: Vec::new(),
                main: Some(GainPart { span: gear_math::course::Span { from_m: 529.0, to_m }, gained_s: 2.0 }),
                curve: Vec::new(),
            }
            .into(),
            ..settled(band(1.0, 2.0, 3.0))
        };
        let said = |to_m| plain_text(&verdict(&settled(to_m), 36_000.0));
        assert!(said(600.0).contains("it gains at 529 to 600"));
        assert!(!said(34_480.0).contains("at 529"));
    }

    #[test]
    fn a_flat_road_is_ridden_throughout() {
        let words = said(&[(Field::Course, "sketch"), (Field::Sketch, "1200; 0; tarmac")]);
        assert!(words.contains("You never dismount."), "{words}");
        assert!(words.contains("Your sketch, 1.20\u{a0}km with 0\u{a0}m of climbing"), "{words}");
    }

    #[test]
    fn a_sketch_that_is_the_demos_is_not_called_yours() {
        let words = said(&[(Field::Course, "sketch"), (Field::Sketch, "hello")]);
        assert!(words.contains("The sketch, 0.50") && !words.contains("Your sketch"), "{words}");
    }

    #[test]
    fn a_link_without_its_file_says_so() {
        let words = said(&[(Field::Course, "own"), (Field::Paint, "100; 900; deep mud")]);
        assert!(words.starts_with("<p>This is about a course from a file"), "{words}");
        assert!(!words.contains("quicker here") && !words.contains("Too close"), "{words}");
        let unpainted = said(&[]);
        let times = |words: &str| {
            words.split("</p>").find(|it| it.contains("Autumn meadow, 3.00")).map(str::to_owned)
        };
        assert!(times(&words).is_some());
        assert_eq!(times(&words), times(&unpainted));
    }

    /// Straight north, five metres at a time, so much higher each time.
    pub(crate) fn track(count: u32, rise_m: f64) -> String {
        let point = |i: u32| {
            let north = 50.0 + f64::from(i) * 5.0 / 111_230.0;
            format!("<trkpt lat='{north:.8}' lon='6.1'><ele>{}</ele></trkpt>", 10.0 + rise_m * f64::from(i))
        };
        let points: String = (0..count).map(point).collect();
        format!("<gpx version='1.1'><trk><trkseg>{points}</trkseg></trk></gpx>")
    }

    #[test]
    fn a_mountain_path_gets_no_times() {
        let mut desk = ridden("");
        assert!(desk.report().lap.laps.is_some());
        desk.take_track("Ridge", sent_track::read(&track(100, 3.0)));
        assert!(desk.lap(true).is_some() && desk.lap(true).is_none());
        let report = desk.report();
        assert!(report.lap.laps.is_none() && desk.course().is_none());
        let words = plain_text(&in_full(&report.lap_section()));
        assert!(words.starts_with("<p class=\"care\">Ridge cannot be used for a lap: 100\u{a0}% of its way is steeper than 45\u{a0}%"), "{words}");
        assert!(!words.contains("likely"), "{words}");
        desk.edit(&[("course".into(), "meadow".into())]);
        desk.lap(true);
        assert!(desk.report().lap.laps.is_some());
        desk.take_track("Hill", sent_track::read(&track(100, 0.4)));
        desk.lap(true);
        assert!(plain_text(&in_full(&desk.report().lap_section())).contains("Hill, 0.50\u{a0}km"));
    }
}
