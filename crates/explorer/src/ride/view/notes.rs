//! Ride or run: how it was worked out, and what the fields say.

use crate::bench::field::Field;
use crate::layout::pieces::worked;
use crate::number::plain;
use crate::ride::section::RideSection;
use crate::ride::words::working::Worked;
use crate::ride::words::{remarks, working as words};
use crate::side::Side;
use crate::units;
use gear_math::Speed;
use gear_math::rider::{FootFactor, Friction, Range, RollingCoefficient};
use maud::{Markup, html};

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &RideSection) -> Markup {
    let sum = |(what, formula, numbers): Worked| worked(what, formula, &numbers);
    html! {
        (sum(words::riding(report)))
        p { (words::riding_rests_on()) }
        (sum(words::engine(report)))
        (sum(words::on_foot(report)))
        p { (words::ON_FOOT) }
        (sum(words::lowest_gear(report)))
        (sum(words::reserve(report)))
        (sum(words::running_wins(report)))
        @for (head, note) in words::notes(report) { p { b { (head) } (note) } }
    }
}

/// What a field of this section says when it is in order and has more to say than its line of help.
#[must_use]
pub(crate) fn remark(report: &RideSection, field: Field) -> Option<String> {
    let inputs = &report.ride.inputs;
    let surface = inputs.surface;
    let usual = |([low, typical, high], basis): Figures| {
        Some(remarks::ground(surface, [&low, &typical, &high], basis))
    };
    match field {
        Field::Power if inputs.typed_power.is_none() => Some(remarks::power(inputs)),
        Field::PeakPower if inputs.typed_peak.is_none() => Some(remarks::peak_power(inputs)),
        Field::Reserve if inputs.typed_reserve.is_none() => Some(remarks::reserve(inputs)),
        Field::Headwind => {
            let speed = Speed::from_km_per_h(inputs.air.headwind.m_per_s().abs() * 3.6).ok()?;
            let printed = units::speed(speed);
            Some(remarks::headwind((speed.m_per_s() > 0.0).then_some(&*printed)))
        }
        Field::Rolling => {
            usual(figures(&surface.rolling_under(inputs.bike(Side::A).tyre), RollingCoefficient::value, 3))
        }
        Field::FootGround => usual(figures(&surface.foot(), FootFactor::value, 2)),
        Field::Friction => usual(figures(&surface.friction(), Friction::mu, 2)),
        _ => None,
    }
}

/// Low, typical and high value of a ground, and what they rest on.
pub(super) type Figures = ([String; 3], gear_math::rider::Basis);

pub(super) fn figures<T: Copy>(range: &Range<T>, value: fn(T) -> f64, decimals: usize) -> Figures {
    let values = [range.low, range.typical, range.high].map(|it| plain(value(it), decimals));
    (values, range.basis)
}
