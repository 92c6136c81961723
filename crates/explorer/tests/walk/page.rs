//! The page of a bench, to be read.

use explorer::bench::bench::Bench;
use explorer::bench::link;
use explorer::lap::report::{LapQuestion, LapReport};
use explorer::lap::room::LapRoom;
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections::fragments;
use std::collections::HashMap;
use std::rc::Rc;

/// Tags that part no words.
const INLINE: [&str; 6] = ["b", "span", "a", "small", "i", "abbr"];

/// All that is said of one bench.
pub(crate) struct Page {
    pub(crate) report: Report,
    fragments: HashMap<String, String>,
}

/// Every answer followed by what is behind it, but for the tyre's, which speaks of each bike under a heading.
fn in_full(mut fragments: HashMap<String, String>) -> HashMap<String, String> {
    let why = |id: &String| Some((id.clone(), format!("{}-answer", id.strip_suffix("-why")?)));
    let merged = |(_, answer): &(String, String)| answer != "tyre-answer";
    for (why, answer) in fragments.keys().filter_map(why).filter(merged).collect::<Vec<_>>() {
        let why = fragments.get(&why).cloned().unwrap_or_default();
        fragments.entry(answer).and_modify(|html| html.push_str(&why));
    }
    fragments
}

impl Page {
    /// The page of a bench with its lap, in coarse steps or settled.
    pub(crate) fn of(bench: &Bench, settled: bool) -> Self {
        let read = Scenario::read(bench, &Scenario::default());
        assert_eq!(read.complaints, []);
        let mut scenario = read.scenario;
        let question = LapQuestion::of(&scenario.basis(), None);
        let laps = LapReport::of(question.clone(), settled).unwrap();
        let lap = LapRoom { laps: Some(Rc::new(laps)), ..LapRoom::default() };
        scenario.ride.lap_price = lap.price(&question);
        let report = Report { lap, ..Report::of(&scenario) };
        let fragments = fragments(&report, &[], &[], bench, &link::write(bench));
        Self { fragments: in_full(fragments.into_iter().collect()), report }
    }

    pub(crate) fn html(&self, id: &str) -> &str {
        &self.fragments[id]
    }

    /// What a joule is worth on either lap; nothing on laps at an even power.
    pub(crate) fn prices(&self) -> [Option<f64>; 2] {
        let laps = &self.report.lap.laps.as_ref().unwrap().laps;
        [&laps[0], &laps[1]].map(|lap| lap.reserve.as_ref().map(|reserve| reserve.price_s_per_j))
    }

    /// The words of a fragment, with a bar between blocks and cells.
    pub(crate) fn text(&self, id: &str) -> String {
        text(self.html(id))
    }

    /// The rows of a fragment's tables, cell by cell.
    pub(crate) fn rows(&self, id: &str) -> Vec<Vec<String>> {
        let cells = |row: &str| cells(row, ["<td", "<th"], ["</td>", "</th>"]);
        self.html(id).split("<tr").skip(1).map(|row| cells(row.split("</tr>").next().unwrap())).collect()
    }

    /// A row by its first cell.
    #[track_caller]
    pub(crate) fn row(&self, id: &str, head: &str) -> Vec<String> {
        let found = self.rows(id).into_iter().find(|row| row.first().is_some_and(|it| it == head));
        found.unwrap_or_else(|| panic!("no “{head}” in {:?}", self.rows(id)))[1..].to_vec()
    }

    /// A row of the sheet; none where the sheet has none.
    pub(crate) fn sheet(&self, head: &str) -> Option<String> {
        let (_, from) = self.html("sheet-page").split_once("<dl>").unwrap();
        let rows =
            from.split("<dt>").map(|row| cells(&format!("<dt>{row}"), ["<dt", "<dd"], ["</dt>", "</dd>"]));
        let mut rows = rows.filter(|row| row.first().is_some_and(|it| it == head));
        rows.next().map(|row| row[1].clone())
    }

    /// Everything that is said, fragment by fragment.
    pub(crate) fn all(&self) -> impl Iterator<Item = (&str, String)> {
        self.fragments.iter().map(|(id, html)| (id.as_str(), text(html)))
    }
}

fn cells(row: &str, starts: [&str; 2], ends: [&str; 2]) -> Vec<String> {
    let mut cells = Vec::new();
    let mut rest = row;
    while let Some(at) = starts.iter().filter_map(|start| rest.find(start)).min() {
        rest = &rest[at..];
        let end = ends.iter().filter_map(|end| rest.find(end)).min().unwrap_or(rest.len());
        cells.push(text(&rest[..end]).replace('|', "").trim().to_owned());
        rest = &rest[end..];
    }
    cells
}

/// HTML without its tags.
pub(crate) fn text(html: &str) -> String {
    let mut words = String::new();
    for (index, piece) in html.split('<').enumerate() {
        let (tag, after) =
            if index == 0 { ("", piece) } else { piece.split_once('>').unwrap_or((piece, "")) };
        let name = tag.trim_start_matches('/').split(' ').next().unwrap_or_default();
        if index > 0 && !INLINE.contains(&name) {
            words.push_str(" | ");
        }
        words.push_str(after);
    }
    let words = words.replace('\u{a0}', " ").replace("&amp;", "&");
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}
