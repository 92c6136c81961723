//! What the bench and the section on rings say, by link as a rider would open it.

use crate::common::{said, words};
use explorer::bench::complaint::Complaint;
use explorer::bench::field::Field;
use explorer::bench::link;
use explorer::page::form;
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections::fragments;

/// A fragment of the page behind a link, with its tags, and what the page complains of.
fn opened(fragment: &str, link: &str) -> (String, Vec<Complaint>) {
    let opened = link::read(link);
    assert_eq!(opened.complaints, Vec::<String>::new(), "{link}");
    let read = Scenario::read(&opened.bench, &Scenario::default());
    let fragments = crate::common::in_full(fragments(
        &Report::of(&read.scenario),
        &[],
        &read.complaints,
        &opened.bench,
        link,
    ));
    let found = fragments.into_iter().find(|(id, _)| id == fragment);
    (found.map(|(_, html)| html).unwrap_or_default(), read.complaints)
}

fn form(name: &str) -> String {
    form::by_name(name).map(maud::PreEscaped::into_string).unwrap_or_default()
}

#[track_caller]
fn says(fragment: &str, link: &str, expected: &str) {
    let (html, complaints) = opened(fragment, link);
    let said = words(&html);
    assert_eq!(complaints, [], "{link}");
    assert!(said.contains(expected), "{said}");
}

#[test]
fn a_road_bike_against_a_cross_bike_as_their_boxes_call_them() {
    let link = "#r=3&ra=50/34&ca=11-28&rb=40&cb=11-42";
    says("rings-answer", link, "A has 17 useful gears of 22");
    says(
        "rings-answer",
        link,
        "A’s 11-28 is taken as 11-12-13-14-15-17-19-21-23-25-28, a usual one with 11 sprockets. Makers differ in the middle: count yours.",
    );
    says("rings-answer", link, "B has the wider steps: 14 % on average and 18 % at most, A 10 % and 13 %.");
    says(
        "says-cassette-a",
        link,
        "11 sprockets taken, the most usual number that A and B can both have: 11-12-13-",
    );
    says(
        "says-cassette-b",
        link,
        "11 sprockets taken, the only usual 11-42: 11-13-15-17-19-21-24-28-32-37-42; makers differ in the middle",
    );
    says("sheet-page", link, "11-13-15-17-19-21-24-28-32-37-42, usual for 11-42: count yours");
}

#[test]
fn a_name_and_its_sprockets_typed_out_are_the_same_bike() {
    let (name, full) = ("#r=3&ca=12-30+10+speed", "#r=3&ca=12-13-14-15-17-19-21-24-27-30");
    for fragment in ["rings-summary", "cage-answer", "ride-answer", "rings-gears"] {
        assert_eq!(opened(fragment, name).0, opened(fragment, full).0, "{fragment}");
    }
}

#[test]
fn a_mechanics_bigger_cassette_takes_after_the_one_fitted() {
    let link = "#r=3&ra=48/34&ca=12-13-14-15-16-17-19-21-23-25&rb=48/34&cb=11-34&tc=29&ls=28";
    says(
        "says-cassette-b",
        link,
        "10 sprockets taken, as A has: 11-13-15-17-19-21-23-26-30-34; makers differ",
    );
    let (html, _) = opened("says-cassette-b", link);
    for offer in ["9 sprockets", "11 sprockets", "12 sprockets", "only 11 and 34"] {
        assert!(html.contains(&format!(">{offer}</button>")), "{html}");
    }
    assert!(html.contains(r#"data-write="cassette-b=11, 34""#), "{html}");
    assert!(!html.contains(">10 sprockets</button>"), "{html}");
    assert!(form("bench").contains(r#"<option value="48/34">"#));
}

#[test]
fn two_sprockets_are_told_by_a_comma() {
    says("rings-answer", "#r=3&ca=11,+28", "A has 4 useful gears of 4");
    says("says-cassette-a", "#r=3&ca=11,+28", "2 sprockets, 11 to 28");
    says("says-cassette-a", "#r=3&ca=16-18", "2 sprockets, 16 to 18");
}

#[test]
fn an_unusual_name_asks_for_its_sprockets_and_offers_what_there_is() {
    let (html, complaints) = opened("says-cassette-a", "#r=3&ca=11-42+9s");
    assert_eq!(complaints.len(), 1);
    assert!(
        words(&html).starts_with("No usual 11-42 has 9 sprockets, only one of 11: type every sprocket"),
        "{html}"
    );
    assert!(html.contains(">11 sprockets</button>") && html.contains(">only 11 and 42</button>"), "{html}");
    let (html, _) = opened("says-cassette-a", "#r=3&ca=11-33");
    assert!(words(&html).starts_with("No usual cassette is called 11-33: type every sprocket"), "{html}");
}

#[test]
fn what_was_typed_stays_in_the_link() {
    let link = "r=3&ra=50/34&ca=11–28t&rb=40&cb=11-42+11s";
    let again = link::write(&link::read(link).bench);
    let bench = link::read(&again).bench;
    assert_eq!([bench.text(Field::CassetteA), bench.text(Field::CassetteB)], ["11–28t", "11-42 11s"]);
}

#[test]
fn further_cassettes_say_what_they_are_tried_as() {
    says(
        "says-more-cassettes",
        "#r=3&mc=11-34%0A11-29",
        "11-34 is tried as 11-13-15-17-19-21-23-25-27-30-34, 11 sprockets taken, as A has. 11-29 is tried as 11-12-13-14-15-16-17-19-21-23-26-29, 12 sprockets taken, the only usual 11-29",
    );
}

#[test]
fn the_same_rings_without_one_gear_are_compared() {
    says(
        "rings-answer",
        "#r=3&rb=50/34&cb=11-12-13-14-15-17-19-21-24-27-30",
        "have the same rings and sprockets",
    );
    let without = "#r=3&tc=39&rb=50/34&cb=11-12-13-14-15-17-19-21-24-27-30&nb=34×30";
    says("rings-answer", without, "A turns 55 rpm down to 8.1 km/h, B only down to 9.0 km/h.");
}

#[test]
fn crosses_stand_on_the_sheet_only_for_what_is_known() {
    let grid = |link: &str| {
        let (sheet, _) = opened("sheet-page", link);
        let table =
            sheet.split("<th scope=\"col\"><b class=\"A\">A</b> Development").nth(1).unwrap_or_default();
        (table.split("</table>").next().unwrap_or_default().matches('×').count(), words(&sheet))
    };
    let demos_cage = "#r=3&ra=50/34&ca=11-30&ty=33-622&na=50×30";
    let (crosses, sheet) = grid(demos_cage);
    assert_eq!(crosses, 1, "{sheet}");
    assert!(sheet.contains("× switched off; what the cage forbids is not known"), "{sheet}");
    let (crosses, sheet) = grid(&format!("{demos_cage}&tc=33"));
    assert_eq!(crosses, 3, "{sheet}");
    assert!(sheet.contains("× never use"), "{sheet}");
}

/// Words and printed figures never contradict each other.
#[test]
fn steps_are_called_wider_only_where_the_figures_say_so() {
    let steps = |a: &str, b: &str| {
        said(
            "rings-answer",
            &[(Field::RingsA, "42"), (Field::RingsB, "42"), (Field::CassetteA, a), (Field::CassetteB, b)],
        )
    };
    for (a, b, expected) in [
        ("20-22-24", "20-22-24", "same rings and sprockets"),
        ("20-22", "30-33", "Their steps are alike: 10 % on average, 10 % at most."),
        (
            "20-22-24",
            "20-21-24",
            "Their steps are alike on average, 10 %; the largest is wider on B: 14 % against 10 %.",
        ),
        ("20-22", "20-23", "B has the wider steps: 15 % on average and 15 % at most, A 10 % and 10 %."),
        (
            "10-11-12-13-15",
            "20-23-26",
            "B has the wider steps on average: 14 % against 11 %; the largest is 15 % on both.",
        ),
        (
            "20-21-25",
            "20-23-26",
            "B has the wider steps on average, 14 % against 12 %, but the largest step is A’s: 19 % against 15 %.",
        ),
    ] {
        let said = steps(a, b);
        assert!(said.contains(expected), "{a} {b}: {said}");
    }
}

#[test]
fn the_bikes_whose_figures_are_printed_alike_are_called_alike() {
    says(
        "rings-answer",
        "#r=3&ra=50/37&ca=10-11-12-13-14-15-16-17-19-21-24-28&rb=44&cb=12-13-14-15-16-17-19-21-24-27",
        "Their steps are alike on average, 9 %; the largest is wider on A: 17 % against 14 %.",
    );
    says(
        "rings-answer",
        "#r=3&rb=44/34&cb=11-12-13-14-15-17-19-21-24-27-30",
        "Both turn 55 rpm down to 8.1 km/h. At the top A reaches",
    );
}

#[test]
fn the_demo_names_the_course_that_it_rides() {
    let (demo, _) = opened("scenario", "");
    let course = gear_math::course::Demo::Meadow.name();
    assert!(words(&demo).contains(course), "{demo}");
    assert!(form("first").contains(&format!("selected>{course}")));
}

#[test]
fn the_usual_parts_do_not_open_with_check_values() {
    let form = form("bench");
    let first = |list: &str| {
        let options = form.split(&format!(r#"data-sets="{list}""#)).nth(1).unwrap_or_default();
        options
            .split(r#"<option value=""#)
            .nth(2)
            .and_then(|it| it.split('"').next())
            .unwrap_or_default()
            .to_owned()
    };
    assert_eq!(first("rings-a"), "44/34");
    assert_eq!(first("cassette-a"), "9-36 13s");
}

/// Values that checks are made of are nobody's bike here: neither started with nor shown as an example.
#[test]
fn no_field_starts_with_or_suggests_a_check_value() {
    for field in Field::ALL {
        let spec = field.spec();
        let (html, _) = opened(&format!("says-{}", spec.key), "");
        for check in ["46/39", "46/36", "11-28", "12-27", "25 psi"] {
            for shown in [spec.start, spec.help, &words(&html)] {
                assert!(!shown.contains(check), "{}: {shown}", spec.key);
            }
        }
    }
}
