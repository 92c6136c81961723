//! The comparison as a table of comma-separated values.

use crate::layout::csv::csv;
use crate::rack::column::Column;
use crate::rack::compared::Compared;
use crate::rack::table::cells;
use crate::rack::words::compared as words;
use crate::units::Units;

impl Compared {
    /// The table as comma-separated values, heads first.
    #[must_use]
    pub fn csv(&self) -> String {
        let _points = Units::now().with_points().enter();
        let best = self.best();
        let head = Column::ALL.map(|column| words::head(column).to_owned()).to_vec();
        let row = |row| {
            let figures = cells(self, row, best).into_iter().map(|(_, text)| text);
            std::iter::once(words::bike(&row.whose)).chain(figures).collect::<Vec<_>>()
        };
        let lines = std::iter::once(head).chain(self.rows.iter().map(row));
        csv(lines)
    }
}
