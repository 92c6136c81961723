//! Tyre, rim and pressure.

use crate::tyre::inputs::TyreInputs;
use gear_math::gears::GearStep;
use gear_math::rider::BodyMass;
use gear_math::wheel::{
    AirSpring, CalliperVerdict, Construction, FloorReason, LoadedTyre, MountedWidth, NominalWidth,
    PressureAdvice, RimCaution, RimInnerWidth, RimRange, TyreFitError, TyreGround, TyreSection, TyreWidth,
    WheelStyle, Wheels, WidthVerdict, rim_cautions,
};
use gear_math::{Development, Drivetrain, Gear, Pressure, PressureCase, TyreSize};

/// Widths that are compared, beside the tyre's own, in millimetres: what is sold for cross, gravel and road.
const WIDTHS_MM: [f64; 9] = [25.0, 28.0, 30.0, 32.0, 33.0, 35.0, 38.0, 40.0, 45.0];
/// Riders that are compared with the rider of the bench, in kilograms apart.
const RIDERS_APART_KG: [f64; 5] = [-10.0, -5.0, 0.0, 5.0, 10.0];

/// The tyre's section, before it is put in words.
#[derive(Debug)]
pub struct TyreReport {
    /// What it is worked out from.
    pub inputs: TyreInputs,
    /// The tyre by its label.
    pub size: TyreSize,
    /// The rim on which the label's width holds.
    pub measuring_rim: RimInnerWidth,
    /// The tyre on its rim, or why it cannot be put there.
    pub fit: Result<TyreFit, TyreFitError>,
    /// What speaks against the pair.
    pub cautions: Vec<RimCaution>,
    /// Rims that suit the tyre.
    pub rims: RimRange,
    /// Rims that suit it under a heavy rider.
    pub heavy_rims: RimRange,
    /// The same rim with other tyres, narrowest first; the tyre's own is among them.
    pub widths: Vec<WidthLine>,
    /// Other riders on the same tyre.
    pub riders: Vec<(BodyMass, PressureAdvice)>,
    /// Every ground with every style.
    pub grounds: Vec<(TyreGround, Vec<PressureAdvice>)>,
    /// What the tyre to compare with does to the gears.
    pub other: Option<OtherTyre>,
}

/// A tyre on its rim.
#[derive(Debug)]
pub struct TyreFit {
    /// The width as computed.
    pub width: TyreWidth,
    /// The cross-section with the width that counts.
    pub section: TyreSection,
    /// Whether that width was measured.
    pub is_measured: bool,
    /// What the race's gauge will say, when there is a limit.
    pub gauge: Option<Gauge>,
    /// Pressures to start from.
    pub advice: PressureAdvice,
    /// The case behind them.
    pub case: PressureCase,
    /// The tyre under its load at these pressures; `None` where there are no pressures.
    pub loaded: Option<Wheels<LoadedTyre>>,
}

/// What the race's gauge says of a tyre.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Gauge {
    /// What is to be expected of a width that was computed.
    Expected(WidthVerdict),
    /// What the rider's calliper says.
    Measured(CalliperVerdict),
}

/// One other tyre on the same rim.
#[derive(Debug)]
pub struct WidthLine {
    /// The tyre by its label.
    pub size: TyreSize,
    /// Width on the rim.
    pub width: MountedWidth,
    /// What the gauge will say, when there is a limit.
    pub gauge: Option<Gauge>,
    /// Pressures to start from.
    pub advice: PressureAdvice,
    /// What is dangerous about it on this rim; then no pressure is told.
    pub danger: Option<RimCaution>,
    /// How far its roll-out lies from the bench's tyre, both by their size.
    pub step: GearStep,
}

/// The gears on another tyre, both wheels by their size.
#[derive(Debug)]
pub struct OtherTyre {
    /// The other tyre.
    pub size: TyreSize,
    /// How far apart the two are.
    pub step: GearStep,
    /// Gears of A and of B, ring by ring: on this tyre and on the other.
    pub gears: [Vec<GearOnBoth>; 2],
}

/// One gear on both tyres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GearOnBoth {
    /// Ring and sprocket.
    pub gear: Gear,
    /// Development on the bench's tyre.
    pub now: Development,
    /// Development on the other.
    pub then: Development,
}

impl Gauge {
    /// Whether a calliper has still to decide.
    #[must_use]
    pub const fn asks_for_a_calliper(self) -> bool {
        matches!(self, Self::Expected(WidthVerdict::Measure) | Self::Measured(CalliperVerdict::AtLimit))
    }
}

impl TyreReport {
    pub(crate) fn new(inputs: TyreInputs, size: TyreSize, drivetrains: [Drivetrain; 2]) -> Self {
        let fit = TyreFit::new(&inputs, size);
        let with = |change: &dyn Fn(&mut PressureCase)| {
            let mut case = fit.as_ref().ok()?.case;
            change(&mut case);
            Some(case.advice())
        };
        let riders = RIDERS_APART_KG.into_iter().filter_map(|apart| {
            let rider = BodyMass::new(inputs.rider.kg() + apart).ok()?;
            Some((rider, with(&|case| case.rider = rider)?))
        });
        let styles = |ground| {
            let advice = |style| {
                with(&|case| {
                    case.ground = ground;
                    case.style = style;
                })
            };
            WheelStyle::ALL.into_iter().filter_map(advice).collect()
        };
        Self {
            measuring_rim: inputs.measured_on(size.width),
            cautions: cautions(&inputs, size.width, fit.is_ok()),
            rims: RimRange::usual(size.width),
            heavy_rims: RimRange::for_heavy_riders(size.width),
            widths: widths(&inputs, size, fit.as_ref().ok()),
            riders: riders.collect(),
            grounds: TyreGround::ALL.into_iter().map(|ground| (ground, styles(ground))).collect(),
            other: inputs.other.map(|width| OtherTyre::new(drivetrains, size, TyreSize { width, ..size })),
            fit,
            inputs,
            size,
        }
    }
}

impl TyreReport {
    /// What is dangerous about the pair; then no pressure is told.
    #[must_use]
    pub fn danger(&self) -> Option<RimCaution> {
        danger(&self.cautions)
    }

    /// What the formula gives on rocks, where custom for tubes stands in for it.
    #[must_use]
    pub fn formula_on_rocks(&self) -> Option<Wheels<Pressure>> {
        let case = PressureCase { ground: TyreGround::Rocky, ..self.fit.as_ref().ok()?.case };
        let advice = case.advice();
        let start = advice.start.ok().filter(|_| advice.floor.reason == FloorReason::TubeOnRocks)?;
        start.front.limited_by.map(|_| start.map(|wheel| wheel.by_formula))
    }

    /// What has to be said before anything else: the danger, or that no table foresees the pair.
    #[must_use]
    pub fn first_of_all(&self) -> Option<RimCaution> {
        self.danger().or_else(|| self.cautions.iter().copied().find(|caution| caution.comes_first()))
    }
}

impl TyreInputs {
    /// Pressures to start from, front and rear; none where this tyre must not go on this rim, or the limits leave none.
    #[must_use]
    pub fn starting_pressures(&self, size: TyreSize) -> Option<[Pressure; 2]> {
        let fit = TyreFit::new(self, size).ok()?;
        let start = fit.advice.start.ok().filter(|_| danger(&all_cautions(self, size.width)).is_none())?;
        Some([start.front.start, start.rear.start])
    }
}

impl TyreFit {
    fn new(inputs: &TyreInputs, size: TyreSize) -> Result<Self, TyreFitError> {
        let (width, measured) = (inputs.on_rim(size.width)?, inputs.by_calliper());
        let section = TyreSection::new(measured.unwrap_or(width.mounted), inputs.rim)?;
        let case = case(inputs, section.width(), size.width);
        let advice = case.advice();
        let loaded = advice.start.as_ref().ok().map(|start| {
            let loads = case.loads();
            let under = |load, pressure| {
                AirSpring { section, outer_radius: size.outer_radius(), pressure }.under(load)
            };
            Wheels { front: under(loads.front, start.front.start), rear: under(loads.rear, start.rear.start) }
        });
        let gauge = inputs.limit.map(|limit| match measured {
            Some(measured) => Gauge::Measured(limit.by_calliper(measured)),
            None => Gauge::Expected(width.verdict(limit)),
        });
        Ok(Self { width, section, is_measured: measured.is_some(), gauge, advice, case, loaded })
    }
}

impl OtherTyre {
    fn new(drivetrains: [Drivetrain; 2], own: TyreSize, other: TyreSize) -> Self {
        let (now, then) = (own.circumference(), other.circumference());
        let gears = drivetrains.map(|drivetrain| {
            let on_both =
                |gear: Gear| GearOnBoth { gear, now: gear.development(now), then: gear.development(then) };
            drivetrain.gears().map(on_both).collect()
        });
        Self { size: other, step: now.step_to(then), gears }
    }
}

/// Of a pair that fits: that a hookless rim needs its own tyres is then among the cautions of the pressures. Of one that does
/// not, nothing else is worth saying.
fn cautions(inputs: &TyreInputs, label: NominalWidth, fits: bool) -> Vec<RimCaution> {
    let mut cautions = all_cautions(inputs, label);
    cautions.retain(|caution| fits != (*caution == RimCaution::HooklessTyre));
    cautions
}

/// Rules for wired rims say nothing about a tubular.
fn all_cautions(inputs: &TyreInputs, label: NominalWidth) -> Vec<RimCaution> {
    match inputs.construction {
        Construction::Tubular => Vec::new(),
        _ => rim_cautions(label, inputs.rim, inputs.marks.hookless),
    }
}

fn danger(cautions: &[RimCaution]) -> Option<RimCaution> {
    cautions.iter().copied().find(|caution| caution.is_danger())
}

fn case(inputs: &TyreInputs, width: MountedWidth, label: NominalWidth) -> PressureCase {
    PressureCase {
        rider: inputs.rider,
        kit_and_bike: Some((inputs.kit, inputs.bike)),
        width,
        label: Some(label),
        construction: inputs.construction,
        ground: inputs.ground,
        style: inputs.style,
        front_share: inputs.front_share,
        marks: inputs.marks,
    }
}

/// The same rim with other tyres, each by its own label and the table of its edition; the tyre's own as it fits.
fn widths(inputs: &TyreInputs, own: TyreSize, fit: Option<&TyreFit>) -> Vec<WidthLine> {
    let mut labels: Vec<f64> = WIDTHS_MM.to_vec();
    if !labels.contains(&own.width.mm()) {
        labels.insert(labels.partition_point(|label| *label < own.width.mm()), own.width.mm());
    }
    let line = |label: f64| {
        let label = NominalWidth::new(label).ok()?;
        let of_its_own =
            TyreInputs { measuring_rim: inputs.measuring_rim.filter(|_| label == own.width), ..*inputs };
        let (width, size) = (of_its_own.on_rim(label).ok()?, TyreSize { width: label, ..own });
        let own_fit = fit.filter(|_| label == own.width);
        let counts = own_fit.map_or(width.mounted, |fit| fit.section.width());
        let expected = inputs.limit.map(|limit| Gauge::Expected(width.verdict(limit)));
        Some(WidthLine {
            size,
            width: counts,
            gauge: own_fit.map_or(expected, |fit| fit.gauge),
            advice: case(inputs, counts, label).advice(),
            danger: danger(&all_cautions(inputs, label)),
            step: own.circumference().step_to(size.circumference()),
        })
    };
    labels.into_iter().filter_map(line).collect()
}
