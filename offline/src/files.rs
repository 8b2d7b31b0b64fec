//! The files of a build.

use std::path::Path;
use std::{fs, io};

/// The copy of index.html for hosts that answer an unknown address with it: not part of a visit.
pub const NOT_FOUND: &str = "404.html";

/// A file of the build.
pub struct File {
    /// Its path below the build's folder, with forward slashes.
    pub path: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// Every file that a visit downloads, by path; not the compressed copies beside them.
pub fn listed(dist: &Path) -> io::Result<Vec<File>> {
    let mut found = Vec::new();
    walk(dist, "", &mut found)?;
    found.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(found)
}

fn walk(folder: &Path, prefix: &str, found: &mut Vec<File>) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let path = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            walk(&entry.path(), &format!("{path}/"), found)?;
        } else if !path.ends_with(".br") && path != NOT_FOUND {
            found.push(File {
                path,
                bytes: fs::read(entry.path())?,
            });
        }
    }
    Ok(())
}
