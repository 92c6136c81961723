//! Times work natively: `speed-bench WORK COUNT ROUNDS` prints the time of each round in ms, then the sum.

use speed_bench::{cages, gear_tables, verdict_maps};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let work = match arguments.next().as_deref() {
        Some("gear_tables") => gear_tables,
        Some("cages") => cages,
        Some("verdict_maps") => verdict_maps,
        _ => return Err("which work? gear_tables, cages or verdict_maps".into()),
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
