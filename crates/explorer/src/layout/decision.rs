//! The answer to a question in a few words for each bike: a row of the board.

use crate::layout::line::Look;
use crate::side::Side;

/// How a bike stands with a question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Standing {
    /// It is well.
    Well,
    /// It goes, with care.
    Care,
    /// It does not go.
    Stop,
    /// It is not known.
    Open,
    /// It stands as the other does.
    Even,
    /// There is nothing to judge, only to tell.
    Told,
}

impl Standing {
    /// How the words stand out; nothing is well on the demo's values.
    pub(crate) const fn look(self, on_demo: bool) -> Look {
        match self {
            Self::Well => Look::well(on_demo),
            Self::Care => Look::Care,
            Self::Stop => Look::Stop,
            Self::Open => Look::Unsure,
            Self::Even | Self::Told => Look::Strong,
        }
    }

    /// The same as it is shown: what is well on the demo's values is not the rider's answer yet.
    pub(crate) const fn shown(self, on_demo: bool) -> Self {
        match self {
            Self::Well if on_demo => Self::Open,
            standing => standing,
        }
    }

    /// All that has a sign, from good to bad.
    pub(crate) const SIGNED: [Self; 5] = [Self::Well, Self::Care, Self::Stop, Self::Open, Self::Even];

    /// A sign that tells it without colour.
    pub(crate) const fn sign(self) -> &'static str {
        match self {
            Self::Well => "✓",
            Self::Care => "!",
            Self::Stop => "✗",
            Self::Open => "?",
            Self::Even => "=",
            Self::Told => "",
        }
    }
}

/// What is said of one bike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Verdict {
    /// How it stands.
    pub(crate) standing: Standing,
    /// The verdict.
    pub(crate) words: String,
    /// The number that carries it, and its doubt.
    pub(crate) detail: String,
}

/// The answer to one question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Decision {
    /// Of A and of B.
    pub(crate) bikes: [Verdict; 2],
    /// The same in as few words as a narrow strip holds.
    pub(crate) short: [String; 2],
    /// What lies between them.
    pub(crate) difference: String,
    /// Whether this is the answer of before, and the one of now is still being worked out.
    pub(crate) is_before: bool,
}

impl Decision {
    /// Of both, worked out already.
    pub(crate) fn of(bikes: impl Fn(Side) -> Verdict, difference: String) -> Self {
        let bikes = Side::BOTH.map(bikes);
        let short = bikes.each_ref().map(|verdict| verdict.words.clone());
        Self { bikes, short, difference, is_before: false }
    }

    /// Whether the same is said of both.
    pub(crate) fn is_of_both(&self) -> bool {
        self.bikes[0] == self.bikes[1]
    }
}
