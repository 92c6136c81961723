//! What is printed can be read again, and no text does harm.

use gear_math::typed::decimal;
use gear_math::wheel::{BeadSeat, NominalWidth};
use gear_math::{Cassette, Chainset, TyreSize};
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

fn read_all(text: &str) {
    let _ = text.parse::<Cassette>().map_err(|error| error.to_string());
    let _ = text.parse::<Chainset>().map_err(|error| error.to_string());
    let _ = text.parse::<TyreSize>().map_err(|error| error.to_string());
}

proptest! {
    #[test]
    fn cassettes_round_trip(
        teeth in subsequence((9..=60).collect::<Vec<u16>>(), 1..=14),
        separator in select(vec!["-", " ", ", ", " – ", ";", "\n"]),
    ) {
        let cassette = Cassette::new(teeth.iter().copied()).unwrap();
        prop_assert_eq!(cassette.to_string().parse(), Ok(cassette));
        let typed: Vec<String> = teeth.iter().map(u16::to_string).collect();
        prop_assert_eq!(typed.join(separator).parse(), Ok(cassette));
    }

    #[test]
    fn chainsets_round_trip_in_any_order(
        teeth in subsequence((20..=60).collect::<Vec<u16>>(), 1..=3).prop_shuffle(),
        separator in select(vec!["/", "-", ", ", " "]),
    ) {
        let chainset = Chainset::new(teeth.iter().copied()).unwrap();
        prop_assert_eq!(chainset.to_string().parse(), Ok(chainset));
        let typed: Vec<String> = teeth.iter().map(u16::to_string).collect();
        prop_assert_eq!(typed.join(separator).parse(), Ok(chainset));
    }

    #[test]
    fn tyre_sizes_round_trip_in_both_orders(mm in 18.0..=65.0, bead_seat in select(BeadSeat::ALL.to_vec())) {
        let tyre = TyreSize { width: NominalWidth::new(mm).unwrap(), bead_seat };
        prop_assert_eq!(tyre.to_string().parse(), Ok(tyre));
        prop_assert_eq!(format!("{}-{mm}", bead_seat.mm()).parse(), Ok(tyre));
    }

    #[test]
    fn a_number_is_read_as_the_nearest_float(text in "[+-]?[0-9]{0,10}(\\.[0-9]{0,9})?([eE]-(1[0-2]|[0-9]))?") {
        prop_assert_eq!(decimal(&text).map(f64::to_bits), text.parse::<f64>().ok().map(f64::to_bits), "{}", text);
    }

    #[test]
    fn a_float_is_read_back_from_its_text(value in -1e6_f64..1e6) {
        prop_assert_eq!(decimal(&value.to_string()), Some(value));
    }

    #[test]
    fn other_text_is_no_number(text in "[0-9.eE+-]{0,6}|[ -~]{0,4}|\\PC{0,4}") {
        // Every word that stands for a number has an n in it.
        let known = text.parse::<f64>().ok().filter(|_| !text.bytes().any(|byte| matches!(byte, b'n' | b'N')));
        prop_assert_eq!(decimal(&text).is_some(), known.is_some(), "{}", text);
    }

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>()) {
        read_all(&text);
    }

    #[test]
    fn nearly_right_text_is_read_or_refused(text in "[0-9xX×cC./, –-]{0,60}") {
        read_all(&text);
    }
}

#[test]
fn a_megabyte_of_anything_is_read_or_refused() {
    for piece in ["1", "11-", "-", " ", "a", "×", "c", "33-622 ", "\u{0}", "<b>", "é", "🚲"] {
        read_all(&piece.repeat(1_000_000 / piece.len()));
    }
}
