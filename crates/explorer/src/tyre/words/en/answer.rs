//! The answer, what loads the tyres, and which rims suit.

use crate::bench::field::Field;
use crate::layout::line::{Line, Look, link_to, strong};
use crate::number::{percent, trimmed};
use crate::tyre::inputs::TyreInputs;
use crate::tyre::report::{Gauge, TyreFit};
use crate::tyre::section::TyreSection;
use crate::tyre::words::said::no_fit;
use crate::tyre::words::width::{gauge, likely, look, mm, typed};
use crate::units::{mass, masses};
use gear_math::wheel::{Construction, RaceLimit, RimRange, TyreFitError, WidthAccuracy};

/// Where a pair is dangerous.
pub(crate) const NO_PRESSURE: &str = "No pressure is given for such a pair.";

/// Tyre and rim do not go together, and why.
pub(crate) fn cannot_go_on(error: &TyreFitError) -> Line {
    let why = no_fit(error);
    let verdict = Look::Stop.part("This tyre cannot go on this rim. ");
    format!("{verdict}{why}").into()
}

/// How wide the tyre is, and what the race says to that.
pub(crate) fn width(report: &TyreSection, fit: &TyreFit) -> Line {
    let (tyre, width) = (&report.tyre, strong(&mm(fit.section.width().mm())));
    let limit = fit.gauge.zip(tyre.inputs.limit);
    let against = limit.map_or_else(String::new, |(verdict, limit)| against(report, verdict, limit));
    let (rim, label) = (typed(tyre.inputs.rim.mm()), trimmed(tyre.size.width.mm()));
    match tyre.inputs.construction {
        _ if fit.is_measured && fit.width.explains(fit.section.width()) => {
            format!("Measured, the tyre is {width} wide{against}.")
        }
        _ if fit.is_measured => {
            let doubt = Look::Care.part("which its label does not explain");
            format!("Measured, the tyre is {width} wide, {doubt}{against}.")
        }
        Construction::Tubular => format!(
            "A tubular is about as wide as its label, {width} on any rim, give or take {}{against}.",
            mm(WidthAccuracy::Tubular.spread_mm())
        ),
        _ => format!(
            "On a rim of {rim} a tyre labelled {label} comes out about {width} wide, likely {likely}{against}.",
            likely = likely(fit),
        ),
    }
    .into()
}

fn against(report: &TyreSection, verdict: Gauge, limit: RaceLimit) -> String {
    let (limit, verdict) = (typed(limit.mm()), look(report, verdict).part(&gauge(verdict)));
    format!("; against the race limit of {limit} that is {verdict}")
}

/// The pressures to start from.
pub(crate) fn start_with(front: &str, rear: &str) -> Line {
    format!("Start with {} in front and {} behind.", strong(front), strong(rear)).into()
}

/// The way to the tyre's mark.
pub(crate) fn tyre_mark() -> Line {
    link_to(Field::TyreMark, "Tyre’s maximum").into()
}

/// The way to the rim's mark.
pub(crate) fn rim_mark() -> Line {
    link_to(Field::RimMark, "Rim’s maximum").into()
}

/// Who rides and on what; those fields stand in another section.
pub(crate) fn loaded_with(inputs: &TyreInputs) -> Line {
    let rider = link_to(Field::BodyMass, &format!("rider of {}", mass(inputs.rider.kg())));
    let kit = link_to(Field::KitMass, &format!("{} of kit", mass(inputs.kit.kg())));
    let bike = link_to(Field::BikeMass, &format!("bike of {}", mass(inputs.bike.kg())));
    let front = link_to(Field::RearWeight, &percent(100.0 * inputs.front_share.fraction(), 0));
    format!("For a {rider} with {kit} on a {bike}, and {front} of the weight on the front wheel.").into()
}

/// What decides of a tubular's rim.
pub(crate) const TUBULAR_RIM: &str = "The bed of a tubular rim has to match the curve of the tyre’s base: the makers of both say which go together.";

/// Which rims suit a tyre, and from where on under a heavy rider.
pub(crate) fn rims(label: f64, narrowest: &str, widest: &str, heavy: &str) -> Line {
    let narrowest = strong(&format!("{narrowest} to {widest}"));
    let (label, rider) = (trimmed(label), masses().print(RimRange::HEAVY_RIDER_KG, 0));
    format!("Rims that suit a {label}: {narrowest} inside, by the workshop’s rule of thumb. A rider of {rider} or more does better from {heavy} up: a wider rim keeps a soft tyre from squirming.").into()
}
