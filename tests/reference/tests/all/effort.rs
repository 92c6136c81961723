//! The account of effort: strength, preference, charge and recovery, worked out apart from gear-math.

use gear_math::gears::PedalRate;
use gear_math::rider::{
    Bout, CadenceCost, CriticalPower, Deficit, EffortAccount, EffortBudget, EffortTime, PeakPower,
    PowerDemand, Recovery, RepaidShare, StrengthShare, WorkReserve,
};
use gear_math::{Cadence, Power};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::error::Error;

type Outcome<T> = Result<T, Box<dyn Error>>;

fn account(sustainable_w: f64, reserve_kj: f64, peak_w: f64) -> Outcome<EffortAccount> {
    let (power, reserve) = (Power::new(sustainable_w)?, WorkReserve::new(reserve_kj)?);
    Ok(EffortAccount::new(CriticalPower::new(power, reserve, PeakPower::new(peak_w)?)?))
}

fn run(outcome: Outcome<()>) -> Result<(), String> {
    outcome.map_err(|error| error.to_string())
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct LowestRow {
    Pmax_W: f64,
    n0_rpm: f64,
    f: f64,
    P_W: f64,
    n_min_rpm: Option<f64>,
    torque_there_Nm: Option<f64>,
    T0_Nm: f64,
}

impl LowestRow {
    fn account(&self) -> Outcome<EffortAccount> {
        let usual = account(self.P_W.min(100.0), 18.0, self.Pmax_W)?;
        let (optimal, lasting) = (Cadence::new(0.5 * self.n0_rpm)?, StrengthShare::new(self.f)?);
        Ok(EffortAccount { optimal, lasting, ..usual })
    }

    fn check(&self) -> Outcome<()> {
        let account = self.account()?;
        let found = account.lowest_cadence(Power::new(self.P_W)?.into());
        let lowest = match (found, self.n_min_rpm, self.torque_there_Nm) {
            (Some(lowest), Some(expected), Some(torque)) => {
                close("torque there", torque_at(self.P_W, lowest.rpm()), torque, 1e-4)?;
                close("lowest cadence", lowest.rpm(), expected, 1e-4)
            }
            (None, None, None) => Ok(()),
            (found, expected, _) => Err(format!("found {found:?}, expected {expected:?}")),
        };
        lowest?;
        // The straight line from the stalled crank goes through the peak at half the way.
        let optimal = account.peak_at(account.optimal.into()).watts();
        close("stalled torque", 2.0 * torque_at(optimal, account.optimal.rpm()), self.T0_Nm, 1e-4)?;
        Ok(())
    }
}

/// Mean torque of a power at a cadence, N m.
fn torque_at(power: f64, rpm: f64) -> f64 {
    power / (rpm * std::f64::consts::TAU / 60.0)
}

/// Worked out from the smaller root of f P_m(n) = P.
#[test]
fn lowest_cadence() {
    let file = "lap-model/lowest-cadence.csv";
    check_all(file, &rows::<LowestRow>(file), 15, |row| run(row.check()));
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct ChargeRow {
    CP_W: f64,
    own_cadence_at_CP_rpm: Option<f64>,
    P_W: f64,
    line_rpm: f64,
    preferred_rpm: f64,
    n_rpm: f64,
    factor: f64,
    Pm_W: f64,
    h_W: f64,
}

impl ChargeRow {
    fn check(&self) -> Outcome<()> {
        let usual = account(self.CP_W, 18.0, 1000.0)?;
        let own_cadence = self.own_cadence_at_CP_rpm.map(Cadence::new).transpose()?;
        let account = EffortAccount { own_cadence, cadence_cost: CadenceCost::new(0.4)?, ..usual };
        let (power, cadence): (PowerDemand, PedalRate) =
            (Power::new(self.P_W)?.into(), Cadence::new(self.n_rpm)?.into());
        close("line", usual.preferred_cadence(power).rpm(), self.line_rpm, 1e-4)?;
        close("preferred cadence", account.preferred_cadence(power).rpm(), self.preferred_rpm, 1e-4)?;
        close("factor", account.cadence_factor(power, cadence), self.factor, 1e-4)?;
        close("peak", account.peak_at(cadence).watts(), self.Pm_W, 1e-4)?;
        let charge = account.charge(power, cadence).map_or(1e9, gear_math::rider::ChargeRate::watts);
        close("charge", charge, self.h_W, 1e-4)?;
        Ok(())
    }
}

/// Worked out from the closed forms. The measured points behind the line are MacIntosh, Neptune & Horton's (2000).
#[test]
fn cadence_and_charge() {
    let file = "lap-model/cadence-and-charge.csv";
    check_all(file, &rows::<ChargeRow>(file), 32, |row| run(row.check()));
}

/// 57, 70, 86 and 99 rpm at 100, 200, 300 and 400 W: MacIntosh, Neptune & Horton (2000), one rider 3 to 8 rpm from another.
#[test]
fn measured_cadences_of_least_activity() -> Outcome<()> {
    let account = account(250.0, 18.0, 1000.0)?;
    let table = [(100.0, 57.0), (200.0, 70.0), (300.0, 86.0), (400.0, 99.0)];
    check_all("preferred cadence", &table, 4, |&(watts, rpm)| {
        run((|| {
            let preferred = account.preferred_cadence(Power::new(watts)?.into());
            Ok(close("cadence", preferred.rpm(), rpm, 1.0)?)
        })())
    });
    Ok(())
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct DurationRow {
    CP_W: f64,
    share_J: f64,
    Pmax_W: f64,
    time_s: f64,
    P_W: f64,
    h_times_t_J: f64,
}

impl DurationRow {
    fn check(&self) -> Outcome<()> {
        let account = account(self.CP_W, 18.0, self.Pmax_W)?;
        let power = account.power_for(EffortBudget::new(self.share_J)?, EffortTime::new(self.time_s)?);
        close("power", power.watts(), self.P_W, 1e-3)?;
        let charge = account.charge_on_foot(power).ok_or("impossible")?.watts() * self.time_s;
        Ok(close("charge", charge, self.h_times_t_J, 1e-3)?)
    }
}

/// Worked out from Morton (1996); the rate gives back what the power was worked out for.
#[test]
fn power_for_a_time() {
    let file = "lap-model/duration-cap.csv";
    check_all(file, &rows::<DurationRow>(file), 10, |row| run(row.check()));
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct RecoveryRow {
    sequence: String,
    CP_W: f64,
    Wprime_J: f64,
    P_W: f64,
    duration_s: f64,
    deficit_differential_J: f64,
    balance_differential_J: f64,
    deficit_linear_J: f64,
    deficit_integral_tau_J: f64,
}

/// Of all the time below the sustainable power in a sequence, the mean that is missing to it.
fn mean_short(sequence: &[&RecoveryRow]) -> Outcome<PowerDemand> {
    let below = || sequence.iter().filter(|row| row.P_W < row.CP_W);
    let short: f64 = below().map(|row| (row.CP_W - row.P_W) * row.duration_s).sum();
    let time: f64 = below().map(|row| row.duration_s).sum();
    Ok(Power::new(short / time)?.into())
}

impl RecoveryRow {
    fn rider(&self) -> Outcome<CriticalPower> {
        let (power, reserve) = (Power::new(self.CP_W)?, WorkReserve::new(self.Wprime_J / 1000.0)?);
        Ok(CriticalPower::new(power, reserve, PeakPower::new(1000.0)?)?)
    }

    fn bout(&self) -> Outcome<Bout> {
        let coasting = self.P_W == 0.0;
        let power = if coasting { PowerDemand::NONE } else { Power::new(self.P_W)?.into() };
        Ok(Bout { power, time: EffortTime::new(self.duration_s)? })
    }

    /// What is missing after the bouts up to this one, the last of `sequence`.
    fn missing(sequence: &[&Self], form: Recovery) -> Outcome<f64> {
        let step =
            |before, row: &&Self| -> Outcome<Deficit> { Ok(form.after(&row.rider()?, before, &row.bout()?)) };
        Ok(sequence.iter().try_fold(Deficit::NONE, step)?.j())
    }

    fn check(&self, so_far: &[&Self], mean_short: PowerDemand) -> Outcome<()> {
        let differential = Self::missing(so_far, Recovery::Differential)?;
        close("differential", differential, self.deficit_differential_J, 0.1)?;
        close("balance", self.Wprime_J - differential, self.balance_differential_J, 0.1)?;
        let linear = Self::missing(so_far, Recovery::Linear(RepaidShare::new(0.5)?))?;
        close("linear", linear, self.deficit_linear_J, 0.1)?;
        let integral = Self::missing(so_far, Recovery::Integral { mean_short })?;
        Ok(close("integral", integral, self.deficit_integral_tau_J, 0.1)?)
    }
}

/// Worked out from the closed forms of the three over bouts on and off.
#[test]
fn recovery() -> Outcome<()> {
    let file = "lap-model/reserve-recovery.csv";
    let table: Vec<RecoveryRow> = rows(file);
    let sequence = |row: &RecoveryRow| -> Vec<&RecoveryRow> {
        table.iter().filter(|other| other.sequence == row.sequence).collect()
    };
    check_all(file, &table, 12, |row| {
        let all = sequence(row);
        let so_far = all.iter().take_while(|other| !std::ptr::eq(**other, row)).count() + 1;
        run(mean_short(&all).and_then(|mean| row.check(&all[..so_far], mean)))
    });
    Ok(())
}
