//! What unfolds in a section, by what it holds.

/// What a fold holds, in the order in which every section has them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Folded {
    /// What is behind the answer, and how sure it is.
    Why,
    /// Further pictures.
    Pictures,
    /// Tables.
    Numbers,
    /// Fields that few answers need.
    Settings,
    /// Lists of parts to put in.
    Parts,
    /// Everything about the course of the lap.
    Course,
    /// The search for what would be quicker.
    Search,
    /// How it was worked out.
    Working,
    /// The workshop sheet.
    Sheet,
}

impl Folded {
    const fn name(self) -> &'static str {
        match self {
            Self::Why => "why",
            Self::Pictures => "pictures",
            Self::Numbers => "numbers",
            Self::Settings => "settings",
            Self::Parts => "parts",
            Self::Course => "course",
            Self::Search => "search",
            Self::Working => "working",
            Self::Sheet => "sheet",
        }
    }

    /// The id of its panel in a section.
    pub(crate) fn id(self, section: &str) -> String {
        format!("fold-{section}-{}", self.name())
    }
}
