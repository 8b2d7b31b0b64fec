//! Runs the case files of tests/cases/ and of every folder in `ROOMWRIGHT_CASES` (colons between).
//!
//! `cargo test -p tests --test cases -- WORDS` runs those whose file or name has the words.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use tests::cases::run;

fn main() -> ExitCode {
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("cases")];
    if let Some(further) = std::env::var_os("ROOMWRIGHT_CASES") {
        folders.extend(std::env::split_paths(&further).filter(|path| path != &PathBuf::new()));
    }
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| !word.starts_with('-'))
        .collect();
    let tally = run(&folders, &words.join(" "));
    println!("{tally}");
    if tally.failures.is_empty() && tally.passed > 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}
