//! After a build: the content policy, the offline worker, the compressed copies, the sizes.
//!
//! `offline finish` is the last step of every build (a hook in Trunk.toml) and works in the folder that Trunk names;
//! `offline sizes DIST` prints the sizes of a finished build again.

mod files;
mod policy;
mod sizes;
mod worker;

use std::error::Error;
use std::path::PathBuf;
use std::process::ExitCode;
use std::{env, fs};

fn main() -> ExitCode {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let outcome = match words.as_slice() {
        ["finish"] => finish(),
        ["sizes", dist] => sizes::print(&PathBuf::from(dist)).and_then(sizes::judge),
        _ => Err("usage: offline finish | offline sizes DIST".into()),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(e) => {
            eprintln!("offline: {e}");
            ExitCode::FAILURE
        }
    }
}

/// Finishes the build in Trunk's staging folder.
fn finish() -> Result<(), Box<dyn Error>> {
    let dist = PathBuf::from(
        env::var("TRUNK_STAGING_DIR").map_err(|_| "TRUNK_STAGING_DIR is not set: run by Trunk")?,
    );
    let development = env::var("TRUNK_PROFILE").is_ok_and(|profile| profile == "debug");
    let index = dist.join("index.html");
    let html = fs::read_to_string(&index)?;
    fs::write(&index, policy::written_into(&html, development)?)?;
    if development {
        fs::write(dist.join("sw.js"), worker::FOR_DEVELOPMENT)?;
        return Ok(());
    }
    fs::write(
        dist.join("sw.js"),
        worker::for_build(&files::listed(&dist)?)?,
    )?;
    // A host without a fallback of its own answers an unknown address with this: the app finds its way from there.
    fs::copy(&index, dist.join(files::NOT_FOUND))?;
    sizes::compress(&dist)?;
    // Too much is no reason to leave the developer without a build; `make size`, and so `make test`, fails on it.
    if let Err(e) = sizes::judge(sizes::print(&dist)?) {
        eprintln!("offline: {e}");
    }
    Ok(())
}
