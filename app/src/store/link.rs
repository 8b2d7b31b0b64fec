//! A job in a link: compressed into the URL's fragment, which no browser sends to a server.
//!
//! `#j1.` and the compact JSON in the zlib format (RFC 1950) as base64url. The browser's own compressor does the work,
//! which keeps the download small; zlib rather than bare deflate for its checksum: a link with one character changed
//! must not open with another number in it.

use calc::job::Job;
use calc::job::file::{self, JobRefusal, MOST_BYTES};
use js_sys::{Array, Function, Object, Reflect, Uint8Array};
use thiserror::Error;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, ReadableStream, ReadableStreamDefaultReader, ReadableWritablePair};

use super::base64url;

/// The version of the link's own form.
pub const LINK_VERSION: u32 = 1;

const FORMAT: &str = "deflate";

/// Why a link was not made or not opened.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum LinkRefusal {
    /// The fragment is not one of ours: an ordinary address.
    #[error("not a job link")]
    NotALink,
    /// Cut short or changed on its way.
    #[error("the link is damaged")]
    Damaged {
        /// What the text inside was refused for, where it came out whole.
        why: Option<JobRefusal>,
    },
    /// More than this many bytes inside.
    #[error("more than {most} bytes")]
    TooLarge {
        /// Bytes allowed.
        most: usize,
    },
    /// Made by a later program: the link's form or the job in it.
    #[error("version {given}, known up to {known}")]
    Newer {
        /// The version given.
        given: u64,
        /// The newest version known here.
        known: u32,
    },
    /// This browser can't compress: use a file.
    #[error("this browser can't make or open links")]
    Unsupported,
}

impl From<JobRefusal> for LinkRefusal {
    fn from(refusal: JobRefusal) -> Self {
        match refusal {
            JobRefusal::TooLarge { most, .. } => Self::TooLarge { most },
            JobRefusal::NewerVersion { given, known } => Self::Newer { given, known },
            other => Self::Damaged { why: Some(other) },
        }
    }
}

/// True for a fragment that claims to hold a job, of whatever version.
pub fn is_link(fragment: &str) -> bool {
    !matches!(payload(fragment), Err(LinkRefusal::NotALink))
}

/// The fragment for a job, with the `#`: put it behind the app's own address.
///
/// # Errors
/// [`LinkRefusal::TooLarge`] and [`LinkRefusal::Unsupported`].
pub async fn fragment(job: &Job) -> Result<String, LinkRefusal> {
    let text = file::write_compact(job);
    file::would_be_read(job, text.len())?;
    let bytes = through("CompressionStream", text.as_bytes(), usize::MAX).await?;
    Ok(format!("#j{LINK_VERSION}.{}", base64url::encode(&bytes)))
}

/// The job in a fragment, with or without the `#`.
///
/// # Errors
/// [`LinkRefusal`]. Inflating stops at [`MOST_BYTES`], however much more would come.
pub async fn job(fragment: &str) -> Result<Job, LinkRefusal> {
    let bytes = payload(fragment)?;
    let text = through("DecompressionStream", &bytes, MOST_BYTES).await?;
    Ok(file::read_bytes(&text)?)
}

/// The compressed bytes in a fragment.
fn payload(fragment: &str) -> Result<Vec<u8>, LinkRefusal> {
    let fragment = fragment.strip_prefix('#').unwrap_or(fragment);
    let (version, text) = fragment
        .strip_prefix('j')
        .and_then(|rest| rest.split_once('.'))
        .ok_or(LinkRefusal::NotALink)?;
    if version.is_empty()
        || version.starts_with('0')
        || !version.bytes().all(|c| c.is_ascii_digit())
    {
        return Err(LinkRefusal::NotALink);
    }
    if version != LINK_VERSION.to_string() {
        return Err(LinkRefusal::Newer {
            given: version.parse().unwrap_or(u64::MAX),
            known: LINK_VERSION,
        });
    }
    if text.len() > MOST_BYTES {
        return Err(LinkRefusal::TooLarge { most: MOST_BYTES });
    }
    base64url::decode(text).ok_or(LinkRefusal::Damaged { why: None })
}

/// Runs bytes through one of the browser's (de)compression streams; stops above `most` bytes.
async fn through(stream: &str, bytes: &[u8], most: usize) -> Result<Vec<u8>, LinkRefusal> {
    let pair = transform(stream).ok_or(LinkRefusal::Unsupported)?;
    let reader = piped(bytes, &pair).map_err(|_| LinkRefusal::Unsupported)?;
    let mut all = Vec::new();
    loop {
        // A stream that fails here was fed something that is not zlib, is cut short, or fails its checksum.
        let step = JsFuture::from(reader.read())
            .await
            .map_err(|_| LinkRefusal::Damaged { why: None })?;
        let field = |name: &str| Reflect::get(&step, &JsValue::from_str(name)).ok();
        if field("done").is_none_or(|done| done.is_truthy()) {
            return Ok(all);
        }
        let chunk = field("value").and_then(|value| value.dyn_into::<Uint8Array>().ok());
        let chunk = chunk.ok_or(LinkRefusal::Damaged { why: None })?;
        if all.len().saturating_add(chunk.length() as usize) > most {
            let _ = JsFuture::from(reader.cancel()).await;
            return Err(LinkRefusal::TooLarge { most });
        }
        all.extend_from_slice(&chunk.to_vec());
    }
}

/// The stream's constructor is asked for by name: older browsers have none.
fn transform(stream: &str) -> Option<ReadableWritablePair> {
    let constructor = Reflect::get(&js_sys::global(), &JsValue::from_str(stream)).ok()?;
    let constructor: Function = constructor.dyn_into().ok()?;
    let made = Reflect::construct(&constructor, &Array::of1(&JsValue::from_str(FORMAT))).ok()?;
    Some(Object::from(made).unchecked_into())
}

fn piped(
    bytes: &[u8],
    pair: &ReadableWritablePair,
) -> Result<ReadableStreamDefaultReader, JsValue> {
    let parts = Array::of1(&Uint8Array::from(bytes));
    let stream: ReadableStream = Blob::new_with_u8_array_sequence(&parts)?.stream();
    ReadableStreamDefaultReader::new(&stream.pipe_through(pair))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fragment_is_told_by_its_head() {
        for other in [
            "", "#", "#rooms", "#j.", "#jx.Zg", "#j01.Zg", "#j1", "j-1.Zg", "#J1.Zg",
        ] {
            assert_eq!(payload(other), Err(LinkRefusal::NotALink), "{other}");
            assert!(!is_link(other));
        }
        assert_eq!(payload("#j1.Zm9v"), Ok(b"foo".to_vec()));
        assert_eq!(payload("j1.Zm9v"), Ok(b"foo".to_vec()));
        assert_eq!(
            payload("#j1.Zm9v?"),
            Err(LinkRefusal::Damaged { why: None })
        );
        assert_eq!(
            payload("#j2.!"),
            Err(LinkRefusal::Newer { given: 2, known: 1 })
        );
        let huge = format!("#j{}.", "9".repeat(30));
        assert_eq!(
            payload(&huge),
            Err(LinkRefusal::Newer {
                given: u64::MAX,
                known: 1
            })
        );
        assert!(is_link("#j2.!"));
        let long = format!("#j1.{}", "A".repeat(MOST_BYTES + 1));
        assert_eq!(
            payload(&long),
            Err(LinkRefusal::TooLarge { most: MOST_BYTES })
        );
    }
}
