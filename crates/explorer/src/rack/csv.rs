//! The comparison as a table of comma-separated values (RFC 4180).

use crate::rack::column::Column;
use crate::rack::compared::Compared;
use crate::rack::table::cells;
use crate::rack::words::compared as words;

impl Compared {
    /// The table as comma-separated values, heads first, lines ended as RFC 4180 has it.
    #[must_use]
    pub fn csv(&self) -> String {
        let best = self.best();
        let head = Column::ALL.map(|column| words::head(column).to_owned()).to_vec();
        let row = |row| {
            let figures = cells(self, row, best).into_iter().map(|(_, text)| text);
            std::iter::once(words::bike(&row.whose)).chain(figures).collect::<Vec<_>>()
        };
        let lines = std::iter::once(head).chain(self.rows.iter().map(row));
        lines
            .map(|line| line.iter().map(|text| quoted(text)).collect::<Vec<_>>().join(",") + "\r\n")
            .collect()
    }
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
