//! Times the gear tables natively: `speed-bench COUNT ROUNDS` prints the time of each round in ms, then the sum.

use speed_bench::gear_tables;
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let count: u32 = arguments.next().ok_or("how many tables?")?.parse()?;
    let rounds: u32 = arguments.next().ok_or("how many rounds?")?.parse()?;
    let mut sum = 0.0;
    for _ in 0..rounds {
        let start = Instant::now();
        sum = black_box(gear_tables(black_box(count)));
        println!("{}", start.elapsed().as_secs_f64() * 1000.0);
    }
    println!("{sum}");
    Ok(())
}
