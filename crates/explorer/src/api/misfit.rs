//! What does not fit the types of the module, in words: where it stands, what it must be and what it is.

/// Begins a message that has its place already.
const PLACED: &str = "in ";

/// A message with the place of what it is about, unless it has one.
pub(crate) fn placed(place: &str, said: &str) -> String {
    let said = said.trim_start_matches("Error: ");
    let what = in_words(said);
    if place.is_empty() || said.starts_with(PLACED) { what } else { format!("{PLACED}{place}: {what}") }
}

/// What serde says of a type, in words.
fn in_words(said: &str) -> String {
    let misfit = said.strip_prefix("invalid type: ").or_else(|| said.strip_prefix("invalid value: "));
    match misfit.and_then(|misfit| misfit.rsplit_once(", expected ")) {
        Some((found, wanted)) => format!("{} is expected, not {}", kind(wanted), value(found)),
        None => match said.strip_prefix("missing field ") {
            Some(field) => format!("{} is missing", field.trim_matches('`')),
            None => said.to_owned(),
        },
    }
}

fn kind(wanted: &str) -> &str {
    match wanted {
        "u8" | "u16" | "u32" | "u64" | "usize" => "a whole number of 0 or more",
        "i8" | "i16" | "i32" | "i64" | "isize" => "a whole number",
        "f32" | "f64" => "a number",
        "a sequence" => "a list (a sequence in square brackets)",
        "a boolean" => "true or false",
        "a string" => "a text in quotes",
        other => other,
    }
}

fn value(found: &str) -> String {
    match found {
        "unit value" | "Option value" => "null".to_owned(),
        "sequence" => "a list".to_owned(),
        "map" => "an object".to_owned(),
        other => other
            .replace("string ", "the text ")
            .replace(['`'], "")
            .replace("integer ", "")
            .replace("floating point ", ""),
    }
}

#[cfg(test)]
mod tests {
    use super::placed;

    #[test]
    fn a_misfit_is_named_by_its_place_and_says_what_to_give() {
        for (place, said, words) in [
            (
                "rings",
                "Error: invalid type: string \"44\", expected a sequence",
                "in rings: a list (a sequence in square brackets) is expected, not the text \"44\"",
            ),
            (
                "rings[1]",
                "invalid type: floating point `5.5`, expected u16",
                "in rings[1]: a whole number of 0 or more is expected, not 5.5",
            ),
            (
                "bike",
                "in bike.massKg: a number is expected, not null",
                "in bike.massKg: a number is expected, not null",
            ),
            ("", "missing field `rings`", "rings is missing"),
            ("rider", "missing field `powerW`", "in rider: powerW is missing"),
        ] {
            assert_eq!(placed(place, said), words);
        }
    }
}
