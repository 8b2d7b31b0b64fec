//! The service worker of a build: the template beside this crate with the build's files and version.

use std::collections::BTreeMap;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

use crate::files::File;

/// The worker under `make dev`: it removes itself and an earlier one.
pub const FOR_DEVELOPMENT: &str = include_str!("../worker.dev.js");

/// The worker that keeps these files; its version changes with any name or byte among them.
pub fn for_build(files: &[File]) -> Result<String, serde_json::Error> {
    let kept: BTreeMap<&str, String> = files
        .iter()
        .filter(|file| file.path != "sw.js")
        // A host may redirect /index.html to /, and a redirected answer is no answer to a navigation.
        .map(|file| {
            (
                if file.path == "index.html" {
                    "./"
                } else {
                    file.path.as_str()
                },
                hash(&file.bytes),
            )
        })
        .collect();
    let list = serde_json::to_string_pretty(&kept)?;
    let version: String = Sha256::digest(&list)
        .iter()
        .take(6)
        .map(|byte| format!("{byte:02x}"))
        .collect();
    Ok(include_str!("../worker.js")
        .replace("@version@", &version)
        .replace("@files@", &list))
}

fn hash(bytes: &[u8]) -> String {
    STANDARD.encode(Sha256::digest(bytes))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(path: &str, bytes: &str) -> File {
        File {
            path: path.into(),
            bytes: bytes.into(),
        }
    }

    fn version(files: &[File]) -> String {
        let worker = for_build(files).expect("a list of strings");
        worker
            .lines()
            .find(|line| line.starts_with("const version"))
            .expect("the version's line")
            .to_owned()
    }

    #[test]
    fn any_byte_or_name_makes_another_version() {
        let base = version(&[file("index.html", "a"), file("a.js", "b")]);
        assert_eq!(
            base,
            version(&[
                file("index.html", "a"),
                file("a.js", "b"),
                file("sw.js", "old")
            ])
        );
        assert_ne!(base, version(&[file("index.html", "a"), file("a.js", "c")]));
        assert_ne!(base, version(&[file("index.html", "a"), file("b.js", "b")]));
    }

    // SHA-256 of "abc": FIPS 180-2, appendix B.1 (ba7816bf ... 15ad), here in base64.
    #[test]
    fn lists_the_page_as_the_folder_with_its_hash() {
        let worker = for_build(&[file("index.html", "abc")]).expect("a list of strings");
        assert!(
            worker.contains(r#""./": "ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=""#),
            "{worker}"
        );
        assert!(!worker.contains("index.html\""));
    }
}
