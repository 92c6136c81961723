//! A picture as it goes elsewhere: with its title, both bikes, the scenario and the address written in it, so that a stranger
//! knows what A is.

use crate::drawing::letters::broken;
use crate::drawing::palette::LIGHT;
use crate::drawing::pen::{Anchor, Mark, Size, Type};
use crate::drawing::plate::Plate;
use crate::lap::view::answer::course_name;
use crate::page::board_poster;
use crate::page::pictures::Picture;
use crate::page::poster_text::PosterText;
use crate::page::questions;
use crate::page::report::Report;
use crate::page::words::poster as words;
use crate::side::Side;
use plotters::backend::SVGBackend;
use plotters_backend::{DrawingBackend, DrawingErrorKind};

/// CSS pixels: 170 mm, what paper of A4 or Letter has between usual margins; its smallest type is then printed in 9 pt.
const WIDTH: f64 = 643.0;
const MARGIN: f64 = 16.0;
const INNER: f64 = WIDTH - 2.0 * MARGIN;
const TITLE_SIZE: f64 = 16.0;
/// An address that takes more lines is written without the bench.
const ADDRESS_LINES: usize = 4;

/// A picture, or the whole board, with what must be known of it.
#[derive(Debug)]
pub struct Poster {
    /// Its heading.
    pub title: String,
    /// What it shows, in words.
    pub says: String,
    /// What a file of it is called, without the ending.
    pub file: String,
    /// Width and height, CSS pixels.
    pub size: Size,
    text: Vec<Mark>,
    picture: Vec<Mark>,
    /// Where the picture begins, CSS pixels from the top.
    top: f64,
}

impl Poster {
    /// A picture, or the board where there is none, under its title. `address` is empty where the page has none for others.
    #[must_use]
    pub fn of(picture: Option<Picture>, report: &Report, title: &str, address: &str) -> Self {
        let _in_force = report.units.enter();
        let place = (MARGIN, INNER);
        let mut text = PosterText::default();
        text.skip(MARGIN / 2.0);
        text.bold(&words::titled(title, is_demos(picture, report)), place, TITLE_SIZE, LIGHT.ink);
        for side in Side::BOTH {
            text.paragraph(&bike(report, side), place, side.ink(&LIGHT));
        }
        text.skip(8.0);
        let top = text.y;
        let drawn = picture.map_or_else(Vec::new, |picture| {
            let size = (INNER, picture.height(report, INNER));
            text.skip(size.1);
            picture.marks(report, &LIGHT, size)
        });
        if picture.is_none() {
            board_poster::write(report, &mut text, place);
        }
        text.skip(8.0);
        foot(&mut text, report, address);
        let size = (WIDTH, (text.y + MARGIN / 2.0).ceil());
        Self {
            title: title.to_owned(),
            says: says(picture, report, address),
            file: words::file(title, &report.rings.setups),
            size,
            text: text.on_paper(size),
            picture: drawn,
            top,
        }
    }

    /// Draws it with `ratio` device pixels to the CSS pixel.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn draw<B: DrawingBackend>(
        &self,
        backend: &mut B,
        ratio: f64,
    ) -> Result<(), DrawingErrorKind<B::ErrorType>> {
        self.put(backend, Plate::canvas(ratio))
    }

    fn put<B: DrawingBackend>(
        &self,
        backend: &mut B,
        plate: Plate,
    ) -> Result<(), DrawingErrorKind<B::ErrorType>> {
        self.text.iter().try_for_each(|mark| plate.draw(backend, mark))?;
        let plate = plate.from((MARGIN, self.top));
        self.picture.iter().try_for_each(|mark| plate.draw(backend, mark))
    }

    /// As an SVG document with its title and what it shows in words.
    ///
    /// # Errors
    /// What the backend reports.
    pub fn svg(&self) -> Result<String, DrawingErrorKind<std::io::Error>> {
        let mut svg = String::new();
        {
            let size = (self.size.0.round() as u32, self.size.1.round() as u32);
            let mut backend = SVGBackend::with_string(&mut svg, size);
            self.put(&mut backend, Plate::svg())?;
            backend.present()?;
        }
        let said = maud::html! { title { (self.title) } desc { (self.says) } }.into_string();
        Ok(svg.replacen("<svg", "<svg role=\"img\"", 1).replacen('>', &format!(">\n{said}"), 1))
    }
}

/// Whether what it shows rests on the demo's values.
fn is_demos(picture: Option<Picture>, report: &Report) -> bool {
    match picture {
        Some(picture) => picture.is_demos(report),
        None => questions::all().any(|it| it.decision(report).is_some() && it.is_demos(report)),
    }
}

fn bike(report: &Report, side: Side) -> String {
    let (setup, tyre) = (report.rings.setup(side), report.rings.wheels[side as usize].tyre);
    words::bike(setup, tyre, report.chain.derailleur(side).total_capacity)
}

fn foot(text: &mut PosterText, report: &Report, address: &str) {
    let place = (MARGIN, INNER);
    text.paragraph(&scenario(report), place, LIGHT.soft);
    if address.is_empty() {
        return;
    }
    let whole = broken(address, INNER);
    let home = || broken(address.split('#').next().unwrap_or_default(), INNER);
    let lines = if whole.len() > ADDRESS_LINES { home() } else { whole };
    text.lines(&lines, MARGIN, Type::new(LIGHT.soft, Anchor::Start));
}

fn scenario(report: &Report) -> String {
    let (lap, own) = (report.lap_section(), report.lap.own.as_deref());
    words::scenario(&report.ride_section(), &course_name(&lap), report.lap_inputs.course(own).as_ref())
}

/// What it shows, of which bikes, for whom, and its whole address.
fn says(picture: Option<Picture>, report: &Report, address: &str) -> String {
    let shows = picture.map(|picture| picture.label(report));
    let [a, b] = Side::BOTH.map(|side| bike(report, side));
    let said = [shows.unwrap_or_default(), a, b, scenario(report), address.to_owned()];
    said.iter().filter(|part| !part.is_empty()).map(String::as_str).collect::<Vec<_>>().join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::Field;
    use crate::drawing::letters::width;
    use crate::page::scenario::Scenario;

    const ADDRESS: &str = "https://example.org/remount/#r=3&ra=44/32";

    fn report(edits: &[(Field, &str)]) -> Report {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        Report::of(&Scenario::read(&bench, &Scenario::default()).scenario)
    }

    /// All that is written on it, in the order of the page.
    fn written(poster: &Poster) -> String {
        let texts = poster.text.iter().filter_map(|mark| match mark {
            Mark::Text(text, ..) => Some(text.replace('\u{a0}', " ")),
            _ => None,
        });
        texts.collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn a_stranger_reads_what_a_is_for_whom_and_where() {
        let report = report(&[(Field::RingsA, "48/33"), (Field::BodyMass, "58.5"), (Field::Power, "231")]);
        let told = written(&Poster::of(Picture::by_name("ladder"), &report, "Gear ladder", ADDRESS));
        assert!(told.starts_with("Gear ladder"), "{told}");
        for part in [
            "A: 48/33, 11-30 11s, 33-622",
            "B: ",
            "Rider 58.5 kg, 231 W · bank ",
            "course Autumn meadow, ",
            ADDRESS,
        ] {
            assert!(told.contains(part), "{part} in {told}");
        }
        assert!(!written(&Poster::of(None, &report, "All", "")).contains("example.org"));
    }

    #[test]
    fn a_long_address_is_left_to_the_words_that_go_with_it() {
        let address = format!("{ADDRESS}{}", "&sk=120;1.5;mud".repeat(60));
        let poster = Poster::of(None, &report(&[]), "All", &address);
        let told = written(&poster);
        assert!(told.ends_with("https://example.org/remount/"), "{told}");
        assert!(poster.says.ends_with(&address));
    }

    #[test]
    fn the_board_holds_every_decision_with_its_words() {
        let report = report(&[(Field::Capacity, "29"), (Field::RingsB, "40")]);
        let told = written(&Poster::of(None, &report, "Every decision", ADDRESS));
        let flat = |words: &str| words.replace('\u{a0}', " ");
        let mut rows = 0;
        for asked in questions::all() {
            let Some(decision) = asked.decision(&report) else { continue };
            rows += 1;
            assert!(told.contains(asked.name()), "{}", asked.name());
            for part in
                decision.bikes.iter().flat_map(|it| [&it.words, &it.detail]).chain([&decision.difference])
            {
                // Words side by side are broken into lines of their own.
                for word in flat(part).split(' ') {
                    assert!(told.contains(word), "{word} of {part}");
                }
            }
        }
        assert!(rows > 4, "{rows}");
    }

    #[test]
    fn nothing_leaves_the_paper_whatever_is_written() {
        let long = "Every ".repeat(40);
        let all = Picture::all().map(Some).chain([None]);
        for picture in all {
            let poster = Poster::of(
                picture,
                &report(&[(Field::CassetteA, "11-12-13-14-15-17-19-21-24-28-32")]),
                &long,
                ADDRESS,
            );
            let (wide, high) = poster.size;
            for mark in &poster.text {
                let Mark::Text(text, (x, y), set) = mark else { continue };
                assert!(x + width(text, set.size, set.bold) <= wide && (0.0..high).contains(y), "{text}");
            }
        }
    }

    #[test]
    fn an_svg_says_what_it_is() {
        let svg =
            Poster::of(Picture::by_name("ladder"), &report(&[]), "Gears <A> & B", ADDRESS).svg().unwrap();
        assert!(
            svg.starts_with("<svg role=\"img\" ")
                && svg.contains("\">\n<title>Gears &lt;A&gt; &amp; B</title><desc>")
        );
        assert!(svg.contains("font-family=\"system-ui, Arial, Helvetica, sans-serif\""));
        assert_eq!(svg.matches("<title>").count(), 1);
    }
}
