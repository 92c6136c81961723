//! How the best of a box stand up to another day.

use gear_math::parts::{Combined, Condition, Regret, Robust};
use serde::Serialize;
use tsify::Tsify;

/// How the best stand up to another day and to other courses, by a first look at each lap.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RobustResult {
    /// What is otherwise, in the order of every `behindS`.
    conditions: Vec<ConditionName>,
    /// Up to 60 set-ups with different laps, in the order of `fitting`.
    choices: Vec<RegretRow>,
    /// The place in `fitting` of the choice that is least regretted.
    least_regret: usize,
}

impl RobustResult {
    pub(super) fn of(order: &[Combined], robust: &Robust) -> Option<Self> {
        let place = |it: &Regret| order.iter().position(|row| row.fit.ridden() == it.lap);
        let choice = |it: &Regret| {
            Some(RegretRow { fitting: place(it)?, behind_s: it.behind_s.to_vec(), regret_s: it.worst_s })
        };
        Some(Self {
            conditions: Condition::ALL.map(ConditionName::from).into(),
            least_regret: place(&robust.least()?)?,
            choices: robust.regrets().iter().filter_map(choice).collect(),
        })
    }
}

/// Something that is otherwise than entered.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum ConditionName {
    /// Nothing.
    AsEntered,
    /// The ground is one step wetter all round.
    WetterGround,
    /// A tenth less power.
    LessPower,
    /// A tenth more.
    MorePower,
    /// The lowest usable cadence, or on a reserve the one that is liked, is 5 rpm lower.
    LowerCadence,
    /// 5 rpm higher.
    HigherCadence,
}

impl From<Condition> for ConditionName {
    fn from(condition: Condition) -> Self {
        match condition {
            Condition::AsEntered => Self::AsEntered,
            Condition::WetterGround => Self::WetterGround,
            Condition::LessPower => Self::LessPower,
            Condition::MorePower => Self::MorePower,
            Condition::LowerCadence => Self::LowerCadence,
            Condition::HigherCadence => Self::HigherCadence,
        }
    }
}

/// By what a choice is regretted.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RegretRow {
    /// Its place in `fitting`.
    fitting: usize,
    /// What it is behind the quickest choice under each condition, in the mean over the courses.
    behind_s: Vec<f64>,
    /// The largest of these.
    regret_s: f64,
}
