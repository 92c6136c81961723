//! Times work natively: `speed-bench WORK COUNT ROUNDS` prints the time of each round in ms, then the sum.

use speed_bench::{boxes, cages, gear_tables, laps, reserve_pair, reserve_single, verdict_maps};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let work = match arguments.next().as_deref() {
        Some("gear_tables") => gear_tables,
        Some("boxes") => boxes,
        Some("cages") => cages,
        Some("verdict_maps") => verdict_maps,
        Some("laps") => laps,
        Some("reserve_single") => reserve_single,
        Some("reserve_pair") => reserve_pair,
        _ => return Err("which work? A function of the library by its name".into()),
    };
    let count: u32 = arguments.next().ok_or("how many?")?.parse()?;
    let rounds: u32 = arguments.next().ok_or("how many rounds?")?.parse()?;
    let mut sum = 0.0;
    for _ in 0..rounds {
        let start = Instant::now();
        sum = black_box(work(black_box(count)));
        println!("{}", start.elapsed().as_secs_f64() * 1000.0);
    }
    println!("{sum}");
    Ok(())
}
