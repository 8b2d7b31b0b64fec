//! The content policy of the page: nothing from elsewhere, no inline script but the build's own.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// Where index.html wants the policy.
const PLACE: &str = "@policy@";

/// The page with its policy in place.
///
/// Each inline script is allowed by the hash of its text; in development any is, because the one that reloads the page is
/// completed only while it is served.
pub fn written_into(html: &str, development: bool) -> Result<String, String> {
    if html.matches(PLACE).count() != 1 {
        return Err(format!("index.html must have {PLACE} once"));
    }
    let inline = if development {
        " 'unsafe-inline'".to_owned()
    } else {
        inline_scripts(html)?
            .into_iter()
            .map(|script| format!(" 'sha256-{}'", STANDARD.encode(Sha256::digest(script))))
            .collect()
    };
    Ok(html.replace(PLACE, &policy(&inline)))
}

fn policy(inline: &str) -> String {
    format!(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'{inline}; style-src 'self'; img-src 'self' data:; \
         font-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'self'; form-action 'none'"
    )
}

/// The texts of the scripts that have no `src`, exactly as they stand.
fn inline_scripts(html: &str) -> Result<Vec<&str>, String> {
    let mut scripts = Vec::new();
    let mut rest = html;
    while let Some((_, after)) = rest.split_once("<script") {
        let (attributes, body) = after.split_once('>').ok_or("a <script that does not end")?;
        let (text, behind) = body
            .split_once("</script>")
            .ok_or("a <script> without its end")?;
        if !attributes.contains("src=") {
            scripts.push(text);
        }
        rest = behind;
    }
    Ok(scripts)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<meta content=\"@policy@\"><script src=\"a.js\"></script><script>alert('Hello, world.');</script>";

    // The hash of this very script is the example of Content Security Policy Level 3, section 'Usage of "'unsafe-hashes'"'
    // and MDN's page on script-src.
    #[test]
    fn allows_an_inline_script_by_its_hash() {
        let page = written_into(PAGE, false).expect("a page with a place for the policy");
        assert!(page.contains("script-src 'self' 'wasm-unsafe-eval' 'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng=';"), "{page}");
        assert!(!page.contains("unsafe-inline"));
    }

    #[test]
    fn wants_its_place_once() {
        assert!(written_into("<html></html>", false).is_err());
        assert!(written_into("@policy@ @policy@", false).is_err());
    }
}
