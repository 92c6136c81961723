//! The table of where everything goes.

use crate::position::inputs::BarShapes;

/// Over the table.
pub(crate) const TITLE: &str = "Where everything goes";
/// Its heads.
pub(crate) const HEADS: [&str; 2] = ["Road", "Cross"];

/// Bottom bracket to saddle, along the tube.
pub(crate) const SADDLE_HEIGHT: &str =
    "Saddle height, bottom bracket centre to saddle top along the seat tube";
/// The same upright.
pub(crate) const SADDLE_UPRIGHT: &str = "Saddle top above the bottom bracket, upright";
/// The saddle's setback.
pub(crate) const SADDLE_TIP: &str = "Saddle tip behind the bottom bracket, level";
/// How far the saddle slides.
pub(crate) const RAILS: &str = "Saddle forward on its rails";
/// Saddle to bar.
pub(crate) const TIP_TO_BAR: &str = "Saddle tip to bar centre, straight";
/// The bar's drop.
pub(crate) const BAR_DROP: &str = "Bar centre below saddle top";
/// The bar's place, level.
pub(crate) const BAR_FORWARD: &str = "Bar centre ahead of the bottom bracket";
/// The bar's place, upright.
pub(crate) const BAR_UP: &str = "Bar centre above the bottom bracket";
/// The crank.
pub(crate) const CRANK: &str = "Crank";
/// The leg at its longest.
pub(crate) const LEG: &str = "Saddle to sole, leg at its longest";
/// The handlebar's drops.
pub(crate) const DROPS: &str = "Drops above the bottom bracket";

/// What the bar's place holds for.
pub(crate) const fn remark(bars: &BarShapes) -> &'static str {
    match (bars.road, bars.cross) {
        (Some(_), Some(_)) => {
            "The bar’s place is that of the cross handlebar, so that the hoods stay where they were meant to be."
        }
        (None, None) if !bars.is_drop_alone => {
            "The same handlebar on both bikes. If they differ, give the reach of both under “Finer settings”."
        }
        _ => {
            "The reach of one handlebar alone says nothing, nor does a drop without it: give the reach of both under “Finer settings”. Until then the bars count as the same."
        }
    }
}
