//! Prints every answer of a job file as JSON, the same numbers as the screens.
//!
//! `cargo run -q --release -p calc --example answers -- job.json`
//!
//! A part that can't be answered is `{"refused": ...}` in its place. A file that is no job is refused on standard
//! error, exit code 2.

use std::env::args_os;
use std::ffi::OsString;
use std::fs;
use std::process::ExitCode;

use calc::job::file;
use calc::job::questions::answers::answers;

fn main() -> ExitCode {
    let paths: Vec<OsString> = args_os().skip(1).collect();
    let printed = match paths.as_slice() {
        [path] => print(path),
        _ => Err("one job file is wanted: answers job.json".to_owned()),
    };
    match printed {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

fn print(path: &OsString) -> Result<String, String> {
    let shown = path.display();
    let bytes = fs::read(path).map_err(|why| format!("{shown}: {why}"))?;
    let job = file::read_bytes(&bytes).map_err(|why| format!("{shown}: {why}"))?;
    serde_json::to_string_pretty(&answers(&job)).map_err(|why| format!("{shown}: {why}"))
}
