//! What a first visit downloads.

use std::error::Error;
use std::fs;
use std::path::Path;

use crate::files::listed;

/// The most that a first visit may download, bytes, compressed.
const MOST: usize = 350_000;

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

/// # Errors
/// When a first visit downloads more than the budget.
pub fn judge(total: usize) -> Result<(), Box<dyn Error>> {
    if total > MOST {
        return Err(format!("a first visit downloads {total} bytes, more than {MOST}").into());
    }
    Ok(())
}
