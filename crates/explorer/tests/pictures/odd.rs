//! Links that are read and yet odd: no picture breaks in the narrowest window, and nothing is not a number.

use explorer::bench::link;
use explorer::page::pictures::{Picture, as_svg};
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections::fragments;

const ODD: [&str; 3] = ["r=2&pc=150&ln=60", "r=2&pg=1e-300", "r=2&pg=1e-14&pc=40"];
/// Down to the narrowest that a window is made, CSS pixels.
const WIDTHS: [f64; 3] = [1.0, 40.0, 80.0];

#[test]
fn no_link_breaks_a_picture_or_a_number() {
    for odd in ODD {
        let opened = link::read(odd);
        assert_eq!(opened.complaints.len(), 1, "{:?}", opened.complaints);
        let report = Report::of(&Scenario::read(&opened.bench, &Scenario::default()).scenario);
        let shown = fragments(&report, &[], &[], &opened.bench, odd);
        let drawn = Picture::all().flat_map(|picture| WIDTHS.map(|width| (picture, width))).map(
            |(picture, width)| {
                let height = picture.height(&report, width);
                (picture.name().to_owned(), as_svg(picture, &report, (width, height)).unwrap())
            },
        );
        for (name, text) in shown.into_iter().chain(drawn) {
            assert!(!text.contains("NaN"), "{odd}: {name}");
        }
    }
}
