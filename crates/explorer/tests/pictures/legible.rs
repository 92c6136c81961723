//! What is written in the pictures can be read: no type is small, no words lie on others, none are cut off.

use super::{demo, report, svg};
use explorer::bench::field::Field;
use explorer::drawing::letters::{SMALLEST, width};
use explorer::page::pictures::Picture;
use explorer::page::report::Report;

/// From the smallest phone's to a wide screen's, CSS pixels.
const WIDTHS: [f64; 4] = [296.0, 358.0, 768.0, 1000.0];

/// What words may lie over one another or beyond the edge, CSS pixels.
const SLACK: f64 = 1.0;

/// What the letters of a line of type fill of its size in height: from the tallest to the lowest in Arial.
const TALL: f64 = 0.93;

/// Words where they stand.
#[derive(Debug)]
pub(super) struct Text {
    pub(super) words: String,
    size: f64,
    pub(super) from: (f64, f64),
    pub(super) to: (f64, f64),
}

impl Text {
    fn overlap(&self, other: &Self) -> f64 {
        let along = self.to.0.min(other.to.0) - self.from.0.max(other.from.0);
        let up = self.to.1.min(other.to.1) - self.from.1.max(other.from.1);
        along.min(up)
    }

    fn beyond(&self, (width, height): (f64, f64)) -> f64 {
        (-self.from.0).max(-self.from.1).max(self.to.0 - width).max(self.to.1 - height)
    }
}

/// All words of a picture.
pub(super) fn texts(svg: &str) -> Vec<Text> {
    svg.split("<text ").skip(1).filter_map(text).collect()
}

fn text(element: &str) -> Option<Text> {
    let (head, rest) = element.split_once('>')?;
    let words = rest
        .split_once("</text>")?
        .0
        .trim_matches('\n')
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&");
    let value =
        |name: &str| head.split_once(&format!("{name}=\"")).and_then(|(_, rest)| rest.split('"').next());
    let number = |name: &str| value(name)?.parse::<f64>().ok();
    let (x, y, size) = (number("x")?, number("y")?, number("font-size")?);
    let long = width(&words, size, head.contains("bold"));
    let before = match value("text-anchor")? {
        "start" => 0.0,
        "middle" => 0.5 * long,
        _ => long,
    };
    let half = TALL * size / 2.0;
    let (from, to) = if head.contains("rotate(270") {
        ((x - half, y + before - long), (x + half, y + before))
    } else {
        ((x - before, y - half), (x - before + long, y + half))
    };
    Some(Text { words, size, from, to })
}

/// What is wrong with the words of a picture.
fn faults(report: &Report, picture: Picture, width: f64) -> Vec<String> {
    let height = picture.height(report, width);
    let texts = texts(&svg(report, picture, width));
    let mut faults = Vec::new();
    for (index, text) in texts.iter().enumerate() {
        if text.size < SMALLEST {
            faults.push(format!("{picture:?} {width}: {:?} is set in {}", text.words, text.size));
        }
        if text.beyond((width, height)) > SLACK {
            faults.push(format!(
                "{picture:?} {width}: {:?} leaves by {:.0}",
                text.words,
                text.beyond((width, height))
            ));
        }
        for other in texts.iter().skip(index + 1).filter(|other| text.overlap(other) > SLACK) {
            faults.push(format!(
                "{picture:?} {width}: {:?} lies on {:?} by {:.0}",
                text.words,
                other.words,
                text.overlap(other)
            ));
        }
    }
    faults
}

fn assert_legible(report: &Report) {
    let faults: Vec<String> = Picture::all()
        .flat_map(|picture| WIDTHS.into_iter().flat_map(move |width| faults(report, picture, width)))
        .collect();
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn the_demo_can_be_read_at_every_width() {
    assert_legible(&demo());
}

#[test]
fn other_set_ups_can_be_read_at_every_width() {
    for edits in [
        &[
            (Field::RingsA, "40"),
            (Field::RingsB, "40"),
            (Field::CassetteB, "11-13-15-17-19-21-23-25-28-32-36-42"),
        ][..],
        &[(Field::RingsA, "48/36/26"), (Field::RingsB, "50/34"), (Field::SpeedUnit, "mph")],
        &[(Field::RingsA, "46/30"), (Field::RingsB, "46/30"), (Field::Slope, "4"), (Field::Tyre, "38-622")],
        &[(Field::Slope, "30"), (Field::Ground, "deep-mud"), (Field::Power, "120"), (Field::Capacity, "")],
    ] {
        assert_legible(&report(edits));
    }
}
