//! Tables of comma-separated values (RFC 4180).

/// Lines of comma-separated values, ended as RFC 4180 has it.
pub(crate) fn csv(lines: impl Iterator<Item = Vec<String>>) -> String {
    lines.map(|line| line.iter().map(|text| quoted(text)).collect::<Vec<_>>().join(",") + "\r\n").collect()
}

/// A text between quotes. One that begins like a formula gets a space before it, so that no spreadsheet works it out.
fn quoted(text: &str) -> String {
    let guard = if text.starts_with(['=', '+', '-', '@', '\t']) { " " } else { "" };
    format!("\"{guard}{}\"", text.replace('\u{a0}', " ").replace('"', "\"\""))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_breaks_out_of_its_field() {
        assert_eq!(quoted("a \"b\", c"), "\"a \"\"b\"\", c\"");
        assert_eq!(quoted("=1+1"), "\" =1+1\"");
    }
}
