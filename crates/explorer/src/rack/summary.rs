//! A bike in a line.

use crate::bench::field::Field;
use crate::bench::whole_bike::WholeBike;
use gear_math::Cassette;
use gear_math::gears::CassetteName;

/// Characters of what is not understood.
const MOST_TYPED: usize = 24;

/// Rings as typed, and the cassette by its smallest and largest sprocket; as typed where it is none.
#[must_use]
pub fn gears(bike: &WholeBike) -> [String; 2] {
    [shortened(bike.text(Field::RingsA)), ends(bike.text(Field::CassetteA))]
}

fn ends(typed: &str) -> String {
    let named = CassetteName::read(typed).map(|name| name.ends());
    let listed = || Some(typed.parse::<Cassette>().ok()?).map(|it| [it.smallest(), it.largest()]);
    match named.or_else(listed) {
        Some([smallest, largest]) if smallest != largest => format!("{smallest}-{largest}"),
        _ => shortened(typed),
    }
}

fn shortened(typed: &str) -> String {
    let mut text: String = typed.trim().chars().take(MOST_TYPED).collect();
    if text.len() < typed.trim().len() {
        text.push('…');
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cassette_is_told_by_its_ends() {
        assert_eq!(
            ["11-13-15-18-21-25-30", "11-32 11s", "18", "junk"].map(ends),
            ["11-30", "11-32", "18", "junk"]
        );
        assert_eq!(ends(&"é".repeat(30)).chars().count(), 25);
    }
}
