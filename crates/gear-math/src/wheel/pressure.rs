//! A pressure to start from.

use crate::wheel::both_units::in_both_units;
use crate::wheel::construction::Construction;
use crate::wheel::pressure_case::PressureCase;
use crate::wheel::pressure_caution::PressureCaution;
use crate::wheel::pressure_caution::cautions;
use crate::wheel::pressure_ceiling::PressureCeiling;
use crate::wheel::pressure_floor::PressureFloor;
use crate::wheel::pressure_limits::{FloorAboveCeiling, LimitedBy};
use crate::wheel::quantity::Pressure;
use crate::wheel::wheels::Wheels;

/// A pressure to start from on each wheel, with what limits it.
#[derive(Debug, Clone, PartialEq)]
pub struct PressureAdvice {
    /// Mean of both wheels by the formula, before any limit.
    pub mean: Pressure,
    /// The lowest pressure for this tyre, rider and ground.
    pub floor: PressureFloor,
    /// The highest pressure that tyre and rim allow; `None` when no mark is known.
    pub ceiling: Option<PressureCeiling>,
    /// The pressures to start from, or why there can be none.
    pub start: Result<Wheels<WheelPressure>, FloorAboveCeiling>,
    /// What to heed.
    pub cautions: Vec<PressureCaution>,
}

/// A pressure as it is shown: to the nearest step of each scale that is neither under the floor nor over the ceiling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PressureReading {
    /// In whole psi; in tenths where no whole psi lies between floor and ceiling.
    pub psi: f64,
    /// Whether the psi are in tenths.
    pub in_tenths: bool,
    /// In hundredths of a bar.
    pub bar: f64,
}

/// The pressure to start from on one wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WheelPressure {
    /// Where to start.
    pub start: Pressure,
    /// 15 % lower, but not below the floor.
    pub low: Pressure,
    /// 15 % higher, but not above the ceiling.
    pub high: Pressure,
    /// What the formula gave.
    pub by_formula: Pressure,
    /// What moved the start away from it, if anything did.
    pub limited_by: Option<LimitedBy>,
    /// The lowest pressure that may be pumped.
    pub floor: Pressure,
    /// The highest, where it is known.
    pub ceiling: Option<Pressure>,
}

/// How far the best pressure may lie from the start, of 1 (estimate).
const SPREAD: f64 = 0.15;
/// Parts of a scale's step that only arithmetic adds.
const ROUNDING: f64 = 1e-6;

impl Construction {
    /// Pressure for 79 kg on 33 mm over mixed ground, in psi. Tubular and tube: the trade's values (common practice);
    /// tubeless between them (estimate).
    #[must_use]
    pub const fn base_psi(self) -> f64 {
        match self {
            Self::Tubular => 25.0,
            Self::Tubeless => 28.0,
            Self::Clincher => 50.0,
        }
    }
}

impl PressureCase {
    /// The pressures to start from.
    ///
    /// # Formula
    /// Mean of both wheels, then both wheels, then the limits of each:
    /// ```text
    /// p = p0 (m ÷ 79 kg) (33 mm ÷ W)^1.5 T S
    /// front = p (0.5 + x),  rear = p (1.5 − x)
    /// ```
    /// `p0` base pressure of the construction, `m` rider, kit and bike, `W` mounted width, `T` ground, `S` style, `x`
    /// front share. Mass and width follow from the same drop of the tyre ([`AirSpring`](crate::wheel::air_spring::AirSpring)); base
    /// pressures and floors are the trade's (common practice); half of the static difference between the wheels is
    /// taken, since braking loads the front (estimate). Made for 28 to 45 mm and 40 to 130 kg in all.
    #[must_use]
    pub fn advice(&self) -> PressureAdvice {
        let (mean, floor, ceiling) = (self.mean(), PressureFloor::of(self), self.marks.ceiling());
        let wheels = self.split(mean);
        let start = FloorAboveCeiling::check(floor, ceiling)
            .map(|()| wheels.map(|pressure| WheelPressure::between(pressure, floor, ceiling)));
        let mut cautions = cautions(self);
        cautions.retain(|caution| start.is_ok() || !caution.tells_of_a_start());
        PressureAdvice { mean, floor, ceiling, start, cautions }
    }

    fn mean(&self) -> Pressure {
        let mass = self.total_kg() / Self::BASE_KG;
        let course = self.ground.factor() * self.style.factor();
        Pressure::computed_psi(self.construction.base_psi() * mass * self.width_factor() * course)
    }

    fn split(&self, mean: Pressure) -> Wheels<Pressure> {
        let front = 0.5 + self.front_share.fraction();
        Wheels { front, rear: 2.0 - front }.map(|part| Pressure::computed_bar(mean.bar() * part))
    }
}

impl PressureAdvice {
    /// What moved the starts away from the formula, from where, in sentences; empty where the formula stands.
    #[must_use]
    pub fn limits_told(&self) -> Vec<String> {
        let Ok(start) = &self.start else { return Vec::new() };
        match (start.front.moved(), start.rear.moved()) {
            (Some((limit, front)), Some((same, rear))) if limit == same => {
                vec![format!("Front {front}, rear {rear}: {limit}.")]
            }
            (front, rear) => {
                let told = |wheel, (limit, moved): (LimitedBy, String)| format!("{wheel} {moved}: {limit}.");
                front.map(|it| told("Front", it)).into_iter().chain(rear.map(|it| told("Rear", it))).collect()
            }
        }
    }
}

impl WheelPressure {
    fn between(by_formula: Pressure, floor: PressureFloor, ceiling: Option<PressureCeiling>) -> Self {
        let lowest = floor.pressure.bar();
        let highest = ceiling.map_or(f64::INFINITY, |ceiling| ceiling.pressure.bar());
        let within = |bar: f64| Pressure::computed_bar(bar.max(lowest).min(highest));
        let start = within(by_formula.bar());
        Self {
            start,
            low: within(start.bar() * (1.0 - SPREAD)),
            high: within(start.bar() * (1.0 + SPREAD)),
            by_formula,
            limited_by: LimitedBy::of(by_formula, floor, ceiling),
            floor: floor.pressure,
            ceiling: ceiling.map(|ceiling| ceiling.pressure),
        }
    }

    /// “raised from 3.38 bar or 49 psi”; nothing where the formula stands.
    fn moved(&self) -> Option<(LimitedBy, String)> {
        let formula = in_both_units(self.by_formula, f64::round);
        self.limited_by.map(|limit| (limit, format!("{} from {formula}", limit.verb())))
    }

    /// One of these pressures as a gauge can show it. Where floor and ceiling lie so close that even a tenth of a psi or
    /// a hundredth of a bar falls outside, it is to the nearest of them.
    #[must_use]
    pub fn reading(&self, pressure: Pressure) -> PressureReading {
        let highest = self.ceiling.map_or((f64::INFINITY, f64::INFINITY), |most| (most.psi(), most.bar()));
        let psi = |steps| on_scale(pressure.psi(), steps, self.floor.psi(), highest.0);
        let bar = on_scale(pressure.bar(), 100.0, self.floor.bar(), highest.1);
        let whole = psi(1.0);
        PressureReading {
            psi: whole.or_else(|| psi(10.0)).unwrap_or_else(|| nearest(pressure.psi(), 10.0)),
            in_tenths: whole.is_none(),
            bar: bar.unwrap_or_else(|| nearest(pressure.bar(), 100.0)),
        }
    }
}

/// The mark of a scale of `steps` to the unit that is nearest to `value`, among those from `lowest` to `highest`.
fn on_scale(value: f64, steps: f64, lowest: f64, highest: f64) -> Option<f64> {
    let (lowest, highest) = ((lowest * steps - ROUNDING).ceil(), (highest * steps + ROUNDING).floor());
    (lowest <= highest).then(|| (value * steps).round().clamp(lowest, highest) / steps)
}

fn nearest(value: f64, steps: f64) -> f64 {
    (value * steps).round() / steps
}
