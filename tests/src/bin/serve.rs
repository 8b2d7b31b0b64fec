//! Serves the built app: `serve [--host 127.0.0.1] [--port 8080] [DIST]`.

use std::path::PathBuf;
use std::process::ExitCode;

use tests::server::{Server, dist};

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(e) => {
            eprintln!("serve: {e}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), String> {
    let (mut host, mut port, mut folder) = ("127.0.0.1".to_owned(), 8080_u16, dist());
    let mut arguments = std::env::args().skip(1);
    while let Some(argument) = arguments.next() {
        let mut value = || arguments.next().ok_or(format!("{argument} needs a value"));
        match argument.as_str() {
            "--host" => host = value()?,
            "--port" => {
                port = value()?
                    .parse()
                    .map_err(|_| "the port is a number up to 65535")?
            }
            other if other.starts_with('-') => return Err(format!("no such option: {other}")),
            other => folder = PathBuf::from(other),
        }
    }
    let server = Server::start_at(&folder, &host, port)?;
    println!("Roomwright is at {} (Ctrl-C stops it)", server.origin());
    loop {
        std::thread::park();
    }
}
