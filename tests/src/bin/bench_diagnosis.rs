//! Measures how often the diagnosis of an opened box finds what is wrong, on simulated houses. Part of `make bench`: prints,
//! judges nothing.
//!
//! `--houses 500 --seed 1`; `--show` prints every house whose fault the box shows and that was not named first; `--least`
//! works out how small the answers could be at best, by the houses' own solver (a second or so a house).

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use tests::houses::drive::{Run, drive};
use tests::houses::house::House;
use tests::houses::tally::table;
use tests::houses::within::least_group;

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let number = |name: &str, otherwise: u64| {
        let at = arguments.iter().position(|a| a == name);
        at.and_then(|at| arguments.get(at + 1))
            .map_or(otherwise, |text| text.parse().expect("a number"))
    };
    let (houses, seed) = (number("--houses", 500), number("--seed", 1));
    let show = arguments.iter().any(|a| a == "--show");
    let mut runs: Vec<Run> = Vec::new();
    let least = arguments.iter().any(|a| a == "--least");
    let mut least_sizes: Vec<usize> = Vec::new();
    let mut refused = 0;
    for at in 0..houses {
        let house = House::of(seed * 1_000_000 + at);
        match drive(&house) {
            Ok(run) => {
                if least && run.tellable {
                    least_sizes.push(least_group(&house));
                }
                if show {
                    let first = run.diagnosis.answers.first().expect("an answer");
                    println!(
                        "share {:.3} {} {}",
                        first.share,
                        run.within(1),
                        run.tellable
                    );
                }
                if show && run.tellable && !run.within(1) {
                    print(&house, &run);
                }
                runs.push(run);
            }
            Err(refusal) => {
                refused += 1;
                println!("house {}: {refusal}", house.seed);
            }
        }
    }
    println!("{}", table(&runs));
    if !least_sizes.is_empty() {
        let sum: usize = least_sizes.iter().sum();
        let alone = least_sizes.iter().filter(|size| **size == 1).count();
        let count = least_sizes.len() as f64;
        println!(
            "at best, of what the box shows: mean {:.2}, alone {:.1} %",
            sum as f64 / count,
            100.0 * alone as f64 / count
        );
    }
    println!("{houses} houses from seed {seed}, {refused} refused");
}

fn print(house: &House, run: &Run) {
    println!(
        "house {} box {}: {:?} {:?}",
        house.seed,
        house.opened,
        run.kind,
        house.planted.places.first()
    );
    println!(
        "  slipped {}, the answer that has it: {:?}, of {}",
        house.slipped, run.rank, run.group
    );
    for reading in &run.readings {
        println!(
            "  {:?} {:?} -> {:?}",
            reading.situation, reading.probe, reading.outcome
        );
    }
    for answer in run.diagnosis.answers.iter().take(3) {
        let first = answer.members.first().expect("a member");
        let faults: Vec<_> = first.faults.iter().map(|f| (f.kind, &f.places)).collect();
        println!(
            "  {:.3} of {}: {:?}, unexplained {:?}",
            answer.share,
            answer.members.len(),
            faults,
            answer.unexplained
        );
    }
}
