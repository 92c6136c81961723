//! A line of words: text with parts that are strong, named or lead to a field. What a section says is made of these; the layout
//! only places them.

use crate::bench::field::Field;
use crate::side::Side;
use maud::{Escaper, Render};
use std::fmt::{self, Display, Write};
use std::ops::Range;

/// Ends the part that was begun last. Parts are kept inside the text, begun by characters that no text has (Unicode's private
/// use area), so that a whole sentence is one format string, whatever order its language puts the parts in.
const END: char = '\u{E000}';
/// Begins a part; the field that it leads to follows from here on.
const TO_FIELDS: u32 = 0xE100;

/// All marks.
const MARKS: Range<char> = '\u{E000}'..'\u{E800}';

/// How a part stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Look {
    /// What the sentence is about.
    Strong = 0xE001,
    /// A verdict that is well.
    Good,
    /// A verdict that rests on what is not known.
    Unsure,
    /// A verdict to take care over.
    Care,
    /// A verdict that forbids.
    Stop,
    /// What rests on the demo's values.
    Demo,
    /// The name of set-up A.
    A,
    /// The name of set-up B.
    B,
}

impl Look {
    const ALL: [(Self, &str, &str); 8] = [
        (Self::Strong, "<b>", "</b>"),
        (Self::Good, "<b class=\"good\">", "</b>"),
        (Self::Unsure, "<b class=\"unsure\">", "</b>"),
        (Self::Care, "<b class=\"care\">", "</b>"),
        (Self::Stop, "<b class=\"stop\">", "</b>"),
        (Self::Demo, "<span class=\"demo\">", "</span>"),
        (Self::A, "<b class=\"A\">", "</b>"),
        (Self::B, "<b class=\"B\">", "</b>"),
    ];

    fn of(mark: char) -> Option<(&'static str, &'static str)> {
        Self::ALL
            .iter()
            .find(|(look, ..)| *look as u32 == u32::from(mark))
            .map(|&(_, open, close)| (open, close))
    }

    /// A verdict that is well; unsure where it rests on the demo's values.
    pub(crate) const fn well(on_demo: bool) -> Self {
        if on_demo { Self::Unsure } else { Self::Good }
    }

    /// These words, standing out so.
    pub(crate) fn part(self, words: &str) -> String {
        begun(self as u32, words)
    }
}

fn begun(mark: u32, words: &str) -> String {
    let mut part = String::with_capacity(words.len() + 6);
    part.extend(char::from_u32(mark));
    part.push_str(words);
    part.push(END);
    part
}

/// What the sentence is about.
pub(crate) fn strong(words: &str) -> String {
    Look::Strong.part(words)
}

/// The name of a set-up.
pub(crate) const fn name(side: Side) -> &'static str {
    match side {
        Side::A => "\u{E007}A\u{E000}",
        Side::B => "\u{E008}B\u{E000}",
    }
}

/// Words that lead to a field.
pub(crate) fn link_to(field: Field, words: &str) -> String {
    begun(TO_FIELDS + field as u32, words)
}

/// One or more sentences, or a part of one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Line(String);

impl From<String> for Line {
    fn from(text: String) -> Self {
        Self(text)
    }
}

impl From<&str> for Line {
    fn from(text: &str) -> Self {
        Self(text.to_owned())
    }
}

/// Marked as it is, so that a line may be a part of another one.
impl Display for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Line {
    /// The same without its marks.
    pub(crate) fn text(&self) -> String {
        self.0.chars().filter(|mark| !MARKS.contains(mark)).collect()
    }
}

impl Render for Line {
    fn render_to(&self, html: &mut String) {
        let mut ends = Vec::new();
        let mut rest = self.0.as_str();
        while let Some(at) = rest.find(|mark| MARKS.contains(&mark)) {
            let (text, marked) = rest.split_at(at);
            escape(html, text);
            let mut chars = marked.chars();
            if let Some(mark) = chars.next() {
                begin_or_end(html, mark, &mut ends);
            }
            rest = chars.as_str();
        }
        escape(html, rest);
        ends.into_iter().rev().for_each(|end| html.push_str(end));
    }
}

fn escape(html: &mut String, text: &str) {
    // Writing to a string does not fail.
    let _ = Escaper::new(html).write_str(text);
}

fn begin_or_end(html: &mut String, mark: char, ends: &mut Vec<&'static str>) {
    if mark == END {
        html.push_str(ends.pop().unwrap_or_default());
    } else if let Some((open, close)) = Look::of(mark) {
        html.push_str(open);
        ends.push(close);
    } else if let Some(field) = Field::ALL.iter().find(|field| TO_FIELDS + **field as u32 == u32::from(mark))
    {
        html.push_str("<a href=\"#");
        html.push_str(field.spec().key);
        html.push_str("\">");
        ends.push("</a>");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn html(words: &str) -> String {
        Line::from(words).render().into_string()
    }

    #[test]
    fn parts_stand_where_the_sentence_puts_them() {
        let words = format!(
            "{} climbs to {}: {}.",
            name(Side::A),
            strong("8 km/h"),
            link_to(Field::RingsA, "its <rings>")
        );
        assert_eq!(
            html(&words),
            "<b class=\"A\">A</b> climbs to <b>8 km/h</b>: <a href=\"#rings-a\">its &lt;rings&gt;</a>."
        );
        assert_eq!(
            html(&Look::Good.part(&format!("{} fits", name(Side::B)))),
            "<b class=\"good\"><b class=\"B\">B</b> fits</b>"
        );
    }

    #[test]
    fn every_look_and_every_field_has_a_mark_of_its_own() {
        for (look, open, close) in Look::ALL {
            assert_eq!(html(&look.part("x")), format!("{open}x{close}"));
        }
        for &field in Field::ALL {
            assert_eq!(html(&link_to(field, "x")), format!("<a href=\"#{}\">x</a>", field.spec().key));
        }
    }

    /// Whoever types marks gets no markup out of order, and never anything but what a line may hold.
    #[test]
    fn marks_that_were_typed_stay_in_order() {
        assert_eq!(html("\u{E001}a\u{E101}b"), "<b>a<a href=\"#cassette-a\">b</a></b>");
        assert_eq!(html("\u{E000}<i>\u{E0FF}"), "&lt;i&gt;");
    }
}
