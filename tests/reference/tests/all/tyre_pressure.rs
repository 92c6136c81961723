//! Starting pressures: the worked cases, and the values in print.
//!
//! The trade's values (tubular about 25 psi at 70 kg, tubes 35, 40 and 60 psi at least) are common practice without a
//! source; the others stand beside their kind of source in the table.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a table or case that cannot be read must fail the run"
)]

use gear_math::rider::{BikeMass, BodyMass, KitMass};
use gear_math::wheel::{
    Construction, FrontShare, LimitedBy, MountedWidth, NominalWidth, PressureAdvice, PressureMarks,
    TyreGround, WheelPressure, WheelStyle, Wheels,
};
use gear_math::{OutOfLimits, Pressure, PressureCase};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct Example {
    rider_kg: f64,
    bike_kg: f64,
    width_mm: f64,
    construction: String,
    terrain: String,
    style: String,
    front_share: f64,
    max_bar: Option<f64>,
    hookless: String,
    mean_psi: f64,
    front_psi: f64,
    rear_psi: f64,
    front_bar: f64,
    rear_bar: f64,
    limits: String,
}

impl Example {
    fn case(&self) -> Result<PressureCase, OutOfLimits> {
        Ok(PressureCase {
            rider: BodyMass::new(self.rider_kg)?,
            kit_and_bike: Some((KitMass::new(0.0)?, BikeMass::new(self.bike_kg)?)),
            width: MountedWidth::new(self.width_mm)?,
            label: None,
            construction: construction(&self.construction),
            ground: ground(&self.terrain),
            style: style(&self.style),
            front_share: FrontShare::new(self.front_share)?,
            marks: PressureMarks {
                tyre: self.max_bar.map(Pressure::new).transpose()?,
                rim: None,
                least: None,
                hookless: self.hookless == "yes",
            },
        })
    }

    fn check(&self) -> Result<(), String> {
        let advice = self.case().map_err(|error| error.to_string())?.advice();
        close("mean", advice.mean.psi(), self.mean_psi, 0.0051)?;
        match (&advice.start, self.limits.as_str()) {
            (Err(conflict), "conflict: floor above maximum") => {
                let ceiling = conflict.ceiling.pressure;
                close("ceiling", ceiling.psi(), self.front_psi, 0.0051)?;
                close("ceiling", ceiling.bar(), self.rear_bar, 0.00051)
            }
            (Ok(start), expected) => self.check_start(start, expected),
            (Err(conflict), _) => Err(conflict.to_string()),
        }
    }

    fn check_start(&self, start: &Wheels<WheelPressure>, limits: &str) -> Result<(), String> {
        let Wheels { front, rear } = start;
        close("front psi", front.start.psi(), self.front_psi, 0.0051)?;
        close("rear psi", rear.start.psi(), self.rear_psi, 0.0051)?;
        close("front bar", front.start.bar(), self.front_bar, 0.00051)?;
        close("rear bar", rear.start.bar(), self.rear_bar, 0.00051)?;
        let found = match (front.limited_by, rear.limited_by) {
            (None, None) => "",
            (Some(LimitedBy::Floor(_)), _) => "raised to floor",
            (_, Some(LimitedBy::Ceiling(_))) => "cut to maximum",
            other => return Err(format!("limits {other:?}")),
        };
        if found == limits { Ok(()) } else { Err(format!("limits: found {found:?}, expected {limits:?}")) }
    }
}

fn construction(name: &str) -> Construction {
    match name {
        "tubular" => Construction::Tubular,
        "tubeless" => Construction::Tubeless,
        "clincher" => Construction::Clincher,
        other => panic!("no construction {other}"),
    }
}

fn ground(name: &str) -> TyreGround {
    match name {
        "soft" => TyreGround::Soft,
        "mixed" => TyreGround::Mixed,
        "rocky" => TyreGround::Rocky,
        other => panic!("no ground {other}"),
    }
}

fn style(name: &str) -> WheelStyle {
    match name {
        "smooth" => WheelStyle::Smooth,
        "normal" => WheelStyle::Normal,
        "hard" => WheelStyle::Hard,
        other => panic!("no style {other}"),
    }
}

#[test]
fn gives_the_worked_starting_pressures() {
    const FILE: &str = "tyre-pressure-examples.csv";
    check_all(FILE, &rows(FILE), 17, Example::check);
}

#[derive(Deserialize)]
struct Published {
    what: String,
    value: String,
    role: Role,
    low: Option<f64>,
    high: Option<f64>,
    mark: String,
    source: String,
}

/// What a row is to gear-math.
#[derive(Deserialize, Clone, Copy, PartialEq)]
enum Role {
    /// A figure that was taken over: it is met by definition and proves nothing.
    #[serde(rename = "definition")]
    Definition,
    /// A figure that nothing was fitted to, and which is met.
    #[serde(rename = "evidence")]
    Evidence,
    /// A figure that is not met.
    #[serde(rename = "not met")]
    NotMet,
}

/// A 70 kg rider on 33 mm, normal style, mixed ground: what most values in print are about.
fn usual(construction: Construction) -> PressureCase {
    PressureCase {
        rider: BodyMass::new(70.0).unwrap(),
        kit_and_bike: None,
        width: MountedWidth::new(33.0).unwrap(),
        label: None,
        construction,
        ground: TyreGround::Mixed,
        style: WheelStyle::Normal,
        front_share: FrontShare::USUAL,
        marks: PressureMarks::default(),
    }
}

fn start(advice: &PressureAdvice) -> Wheels<WheelPressure> {
    advice.start.unwrap()
}

impl Published {
    fn check(&self) -> Result<(), String> {
        if self.source.starts_with("common practice") != (self.mark == "CP") {
            return Err(format!("marked {}, {}", self.mark, self.source));
        }
        for (place, found) in self.found()?.into_iter().enumerate() {
            let (low, high) =
                self.low.zip(self.high).unwrap_or_else(|| (self.figure(place), self.figure(place)));
            let rounding = if self.role == Role::Definition { 0.01 } else { 0.0 };
            let is_met = (low - rounding..=high + rounding).contains(&found);
            if is_met == (self.role == Role::NotMet) {
                return Err(format!("{}: {found}, in print {low} to {high}", self.what));
            }
        }
        Ok(())
    }

    /// The same figures of ours, in the unit of the row.
    fn found(&self) -> Result<Vec<f64>, String> {
        use Construction::{Clincher, Tubeless, Tubular};
        let tubular = start(&usual(Tubular).advice());
        let tube = usual(Clincher);
        let on = |ground, case: PressureCase| PressureCase { ground, ..case };
        let under = |kg: f64, case: PressureCase| PressureCase { rider: BodyMass::new(kg).unwrap(), ..case };
        let easy = PressureCase { style: WheelStyle::Smooth, ..on(TyreGround::Soft, tube) };
        let floor = |case: PressureCase| case.advice().floor.pressure.psi();
        let mean = |case: PressureCase| case.advice().mean;
        Ok(match self.what.as_str() {
            "tubular, 70 kg rider" | "tubular starting rule" => vec![mean(usual(Tubular)).psi()],
            "tubed clincher, lowest limit" => {
                [50.0, 70.0, 110.0].map(|kg| floor(under(kg, on(TyreGround::Soft, tube)))).into()
            }
            "tubed clincher, light rider, easy on the bike" => vec![floor(under(57.0, tube))],
            "tubed clincher, heavier rider or rocky ground" => {
                vec![floor(under(57.0, on(TyreGround::Rocky, tube))), floor(under(86.0, tube))]
            }
            "tubular starting value of a professional team" => vec![tubular.rear.start.psi()],
            "tubular range in races" => vec![mean(usual(Tubular)).bar()],
            "tubed clincher starting rule" | "tubed clincher, start" => vec![floor(easy)],
            "tubed clincher, amateur" => vec![mean(easy).psi()],
            "tubed clincher, new to the sport" => vec![mean(tube).psi()],
            "tubed clincher, training start" => vec![mean(tube).bar()],
            "tubeless, one rider / lighter rider" => {
                let Wheels { front, rear } = start(&usual(Tubeless).advice());
                vec![front.start.psi(), rear.start.psi()]
            }
            "front-rear difference" => vec![tubular.rear.start.psi() - tubular.front.start.psi()],
            "change that a rider can feel" => {
                vec![(tubular.front.high.psi() - tubular.front.low.psi()) / 2.0]
            }
            "minimum, ISO 5775-1, section 25 mm or less / other, road / off road" => {
                let labelled =
                    |mm: f64| PressureCase { label: NominalWidth::new(mm).ok(), ..usual(Tubeless) };
                [25.0, 26.0, 33.0].map(|mm| labelled(mm).advice().floor.pressure.bar() * 100.0).into()
            }
            "hookless rim maximum, road" => {
                let marks = PressureMarks { hookless: true, ..PressureMarks::default() };
                vec![marks.ceiling().unwrap().pressure.bar()]
            }
            "tyre stays on at" => [2.0, 4.0, 8.0].map(percent_of_the_mark).into(),
            "drop at which lower pressure starts to cost speed on tarmac" => {
                vec![100.0 * drop_of_the_usual_tubular()]
            }
            other => return Err(format!("no check for {other:?} ({})", self.source)),
        })
    }

    /// One of the numbers that the value begins with, parted by strokes.
    fn figure(&self, index: usize) -> f64 {
        let figure = self.value.split('/').nth(index).and_then(|part| part.split_whitespace().next());
        figure.unwrap().parse().unwrap()
    }
}

/// The highest pressure told for a tyre, in per cent of its mark.
fn percent_of_the_mark(bar: f64) -> f64 {
    let marks = PressureMarks { tyre: Pressure::new(bar).ok(), ..PressureMarks::default() };
    100.0 * marks.ceiling().unwrap().pressure.bar() / bar
}

/// On soft ground tyres run far below the pressure for tarmac: about a third of their height goes.
fn drop_of_the_usual_tubular() -> f64 {
    use gear_math::wheel::{AirSpring, RimInnerWidth, TyreSection, WheelRadius};
    let case = usual(Construction::Tubular);
    let section = TyreSection::new(case.width, RimInnerWidth::new(18.0).unwrap()).unwrap();
    let spring = AirSpring {
        section,
        outer_radius: WheelRadius::new(346.0).unwrap(),
        pressure: start(&case.advice()).rear.start,
    };
    spring.under(case.loads().rear).drop
}

#[test]
fn stands_by_every_value_in_print() {
    const FILE: &str = "tyre-pressure-published.csv";
    for (role, at_least) in [(Role::Definition, 8), (Role::Evidence, 5), (Role::NotMet, 6)] {
        let mut published: Vec<Published> = rows(FILE);
        published.retain(|row| row.role == role);
        check_all(FILE, &published, at_least, Published::check);
    }
}
