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
        capacity: A needs 35, by geometry its cage takes 33.3; B needs 33, by geometry its cage takes 33.2.
        climb: Over 60 m at your power alone: A does not ride it, B rides it in 29 s, on foot it takes 36 s.
        cross-section: 33-622 comes out 33.0 mm wide: too close to tell: measure.
        drivetrain: A · 50×30: cage 64° forward, fine. B · 44×32: cage 65° forward, fine.
        found: 
        gain: Too close to call: B 0.9 s ahead at the line by the best guess.
        gear-times: A is longest in 34×30, 77 s, and on foot for 40 s; B is longest in 32×16, 92 s, and on foot for 39 s.
        ladder: Only B reaches below 2.4 m, only A reaches above 8.6 m; 10 gears in common.
        overlap: They have 10 gears in common within 2.0 %.
        position: Saddle 735.9 mm high instead of 728 mm, bar 57 mm below the saddle, not 72 mm below the saddle.
        profile: On foot at 3 places with A and with B.
        slopes: A rides to about 8 % up (likely 6 to 10), down to 8.1 km/h; B rides to about 10 % up (likely 7 to 13), down to 7.1 km/h.
        speeds: From 55 to 110 rpm A covers 8.1 to 64.8 km/h; B covers 7.1 to 57.1 km/h.
        steps: B has the wider steps on average: 11 % against 10 %; the largest is 14 % on both.
        tornado: Rolling resistance of 0.035 to 0.065 moves the end of riding most: 10 % to 7 % with A, 11 % to 8 % with B.
        uprights: 
        verdicts: This climb, 9.0 % of wet, soft grass. A and B: force it.
        wrap: A needs 35 teeth, 2 more than its cage takes; B needs 33 teeth, all that its cage takes.
    "#]].assert_eq(&listed(&said("#r=3")));
}

#[test]
fn one_and_the_same_bike_twice_is_told_as_it_was() {
    expect![[r#"
        capacity: A needs 4, by geometry its cage takes 33.2; B needs 4, by geometry its cage takes 33.2.
        climb: Over 60 m at your power alone: A does not ride it, B does not ride it, on foot it takes 36 s.
        cross-section: 33-622 comes out 33.0 mm wide: too close to tell: measure.
        drivetrain: A · 40×15: cage 60° forward, fine. B · 40×15: cage 60° forward, fine.
        found: 
        gain: 
        gear-times: A is longest in 40×15, 8:42 min, and on foot for 98 s; B is longest in 40×15, 8:42 min, and on foot for 98 s.
        ladder: A and B have the same gears.
        overlap: 
        position: Saddle 735.9 mm high instead of 728 mm, bar 57 mm below the saddle, not 72 mm below the saddle.
        profile: On foot at 6 places with A and with B.
        slopes: A rides to the level up (likely 0 to 1), down to 19.0 km/h; B rides to the level up (likely 0 to 1), down to 19.0 km/h.
        speeds: From 55 to 110 rpm A covers 19.0 to 51.9 km/h; B covers 19.0 to 51.9 km/h.
        steps: Their steps are alike: 17 % on average, 18 % at most.
        tornado: Rolling resistance of 0.035 to 0.065 moves the end of riding most: 1 % to 0 % with A, 1 % to 0 % with B.
        uprights: 
        verdicts: This climb, 9.0 % of wet, soft grass. A and B: run.
        wrap: A needs 4 teeth, its cage takes 33; B needs 4 teeth, its cage takes 33.
    "#]].assert_eq(&listed(&said("#r=3&ra=40&rb=40&ca=11-13-15&cb=11-13-15")));
}
