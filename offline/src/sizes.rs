//! What a first visit downloads.

use std::error::Error;
use std::fs;
use std::path::Path;

use crate::files::listed;

/// What a first visit may download once the app is whole, bytes, compressed.
const BUDGET: usize = 350_000;

/// What it may download now: a ratchet. Lower it whenever the download shrinks. It was 451 kB with the floor alone and 806 kB with the
/// wiring and the open box; closing up, buying, the quote and the sheet came on top.
const CEILING: usize = 1_030_000;

/// Writes a `.br` beside each file that brotli makes smaller, for hosts that serve such copies.
pub fn compress(dist: &Path) -> Result<(), Box<dyn Error>> {
    for file in listed(dist)? {
        let mut smaller = Vec::new();
        let parameters = brotli::enc::BrotliEncoderParams {
            quality: 11,
            lgwin: 24,
            size_hint: file.bytes.len(),
            ..Default::default()
        };
        brotli::BrotliCompress(&mut file.bytes.as_slice(), &mut smaller, &parameters)?;
        if smaller.len() < file.bytes.len() {
            fs::write(dist.join(format!("{}.br", file.path)), smaller)?;
        }
    }
    Ok(())
}

/// Prints each file's size, plain and as sent, and the total, which is also the answer, on the last line.
pub fn print(dist: &Path) -> Result<usize, Box<dyn Error>> {
    let mut total = 0;
    println!("{:>9} {:>9}  file", "bytes", "brotli");
    for file in listed(dist)? {
        let sent = fs::metadata(dist.join(format!("{}.br", file.path)))
            .map_or(file.bytes.len(), |copy| copy.len() as usize);
        total += sent;
        println!("{:>9} {sent:>9}  {}", file.bytes.len(), file.path);
    }
    println!("total brotli {total} bytes");
    Ok(total)
}

/// Warns above the budget.
///
/// # Errors
/// When a first visit downloads more than the ceiling.
pub fn judge(total: usize) -> Result<(), Box<dyn Error>> {
    if total > CEILING {
        return Err(format!("a first visit downloads {total} bytes, more than {CEILING}").into());
    }
    if total > BUDGET {
        eprintln!(
            "offline: a first visit downloads {total} bytes; the budget of the whole app is {BUDGET}"
        );
    }
    Ok(())
}
