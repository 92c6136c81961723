//! What the captions begin with.

use expect_test::expect;
use explorer::page::desk::Desk;
use std::collections::BTreeMap;

/// The statements of all pictures, by name, once a lap is settled on a bench.
fn said(link: &str) -> BTreeMap<String, String> {
    let mut desk = Desk::default();
    let opened = desk.open(link).html;
    let all = opened.into_iter().chain(desk.lap(true).into_iter().flat_map(|update| update.html));
    all.filter_map(|(id, html)| Some((id.strip_prefix("shows-")?.to_owned(), plain(&html)))).collect()
}

/// Without markup.
fn plain(html: &str) -> String {
    let outside = html.split('<').map(|part| part.split_once('>').map_or(part, |(_, text)| text));
    outside.collect::<String>().replace('\u{a0}', " ")
}

fn listed(said: &BTreeMap<String, String>) -> String {
    said.iter().map(|(name, says)| format!("{name}: {says}\n")).collect()
}

#[test]
fn the_demo_is_told_as_it_was() {
    expect![[r#"
        box-laps: 
        cross-section: 33-622 comes out 33.0 mm wide: too close to tell: measure.
        drivetrain: On A the cage in 34×13 stands 1° from its stop: check for slack. On B the cage in 32×11 stands 1° from its stop: check for slack.
        ladder: Only B reaches below 2.4 m, only A reaches above 8.6 m; 10 gears in common. Your bank asks for a gear of 2.3 m or less: only B has it.
        position: Saddle 736 mm high instead of 728 mm, bar 57 mm below the saddle, 15 mm higher than there.
        profile: B gains 1.9 s at 1170 to 2494 m, and keeps 0.9 s of it. On foot at 3 places with A and with B.
        slopes: A rides to about 8 % up (likely 6 to 10), down to 8.1 km/h; B rides to about 10 % up (likely 7 to 13), down to 7.1 km/h, on slopes that go on.
        uprights: 
    "#]].assert_eq(&listed(&said("#r=3")));
}

#[test]
fn one_and_the_same_bike_twice_is_told_as_it_was() {
    expect![[r#"
        box-laps: 
        cross-section: 33-622 comes out 33.0 mm wide: too close to tell: measure.
        drivetrain: On A every gear runs, with least to spare in 40×15. On B every gear runs, with least to spare in 40×15.
        ladder: A and B have the same gears. Your bank asks for a gear of 2.3 m or less: neither has it.
        position: Saddle 736 mm high instead of 728 mm, bar 57 mm below the saddle, 15 mm higher than there.
        profile: On foot at 6 places with A and with B.
        slopes: A rides to the level up (likely 0 to 1), down to 19.0 km/h; B rides to the level up (likely 0 to 1), down to 19.0 km/h, on slopes that go on.
        uprights: 
    "#]].assert_eq(&listed(&said("#r=3&ra=40&rb=40&ca=11-13-15&cb=11-13-15")));
}
