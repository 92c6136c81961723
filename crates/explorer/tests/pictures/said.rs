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
        drivetrain: A · 50×30: cage 64° forward, fine. B · 44×32: cage 65° forward, fine.
        ladder: Only B reaches below 2.4 m, only A reaches above 8.6 m; 10 gears in common.
        position: Saddle 735.9 mm high instead of 728 mm, bar 57 mm below the saddle, not 72 mm below the saddle.
        profile: On foot at 3 places with A and with B.
        slopes: On long slopes A rides to about 8 % up (likely 6 to 10), down to 8.1 km/h; B rides to about 10 % up (likely 7 to 13), down to 7.1 km/h.
        uprights: 
    "#]].assert_eq(&listed(&said("#r=3")));
}

#[test]
fn one_and_the_same_bike_twice_is_told_as_it_was() {
    expect![[r#"
        box-laps: 
        cross-section: 33-622 comes out 33.0 mm wide: too close to tell: measure.
        drivetrain: A · 40×15: cage 60° forward, fine. B · 40×15: cage 60° forward, fine.
        ladder: A and B have the same gears.
        position: Saddle 735.9 mm high instead of 728 mm, bar 57 mm below the saddle, not 72 mm below the saddle.
        profile: On foot at 6 places with A and with B.
        slopes: On long slopes A rides to the level up (likely 0 to 1), down to 19.0 km/h; B rides to the level up (likely 0 to 1), down to 19.0 km/h.
        uprights: 
    "#]].assert_eq(&listed(&said("#r=3&ra=40&rb=40&ca=11-13-15&cb=11-13-15")));
}
