//! Prints the gear table of one bicycle: `cargo run --example gear_table`.

use gear_math::wheel::TyreKind;
use gear_math::{Cadence, Drivetrain, DuplicateTolerance, Setup, Wheel};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let drivetrain =
        Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-17-19-21-23-25-27-30-34".parse()? };
    let wheel = Wheel { tyre: "33-622".parse()?, kind: TyreKind::CycloCross, measured: None };
    let set_up = Setup::new(drivetrain, wheel.roll_out());
    print_table(&set_up, Cadence::new(90.0)?);
    print_summary(&set_up);
    Ok(())
}

fn print_table(set_up: &Setup, cadence: Cadence) {
    println!("{:>7}{:>8}{:>9}{:>9}{:>9} at {:.0} rpm", "gear", "ratio", "m", "inches", "km/h", cadence.rpm());
    for row in set_up.rows() {
        println!(
            "{:>7}{:>8.3}{:>9.2}{:>9.1}{:>9.1}{}",
            row.gear.to_string(),
            row.ratio.value(),
            row.development.m(),
            row.gear_inches.inches(),
            row.speed_at(cadence).km_per_h(),
            if set_up.drivetrain.is_crossed(row.gear) { "  crossed" } else { "" },
        );
    }
}

fn print_summary(set_up: &Setup) {
    let summary = set_up.summary(DuplicateTolerance::default());
    println!(
        "\nrange {:.0} %, {} of {} gears useful",
        summary.range.percent(),
        summary.useful(),
        summary.gears
    );
    for change in &summary.front_changes {
        println!("{} to {}: {:.1} % higher", change.smaller, change.larger, change.step().percent());
    }
    for shift in &summary.riding_order.shifts {
        println!("{} to {}: {:.1} %, {:?}", shift.from, shift.to, shift.step.percent(), shift.kind);
    }
}
