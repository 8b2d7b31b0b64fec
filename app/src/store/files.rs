//! Files of the device: download, pick, and the share sheet of a phone.

use calc::job::file::MOST_BYTES;
use js_sys::{Array, Function, Promise, Reflect, Uint8Array};
use thiserror::Error;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, HtmlInputElement, ShareData,
    Url,
};

/// Why a file did not come in or go out.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FileRefusal {
    /// More bytes than a job file may have; nothing was read.
    #[error("{bytes} bytes, at most {most}")]
    TooLarge {
        /// The file's bytes.
        bytes: usize,
        /// Bytes allowed.
        most: usize,
    },
    /// The device did not hand the file over.
    #[error("the file could not be read")]
    NotRead,
    /// This browser can't do it.
    #[error("this browser can't do this")]
    Unsupported,
    /// The user closed the share sheet.
    #[error("the user changed their mind")]
    Dismissed,
}

fn unsupported<T>(_: T) -> FileRefusal {
    FileRefusal::Unsupported
}

/// Offers a text to the user as a download.
///
/// # Errors
/// [`FileRefusal::Unsupported`].
pub fn download(name: &str, text: &str) -> Result<(), FileRefusal> {
    download_as(name, text, "application/json")
}

/// Offers a text of a kind (`text/csv`) to the user as a download.
///
/// # Errors
/// [`FileRefusal::Unsupported`].
pub fn download_as(name: &str, text: &str, kind: &str) -> Result<(), FileRefusal> {
    let window = web_sys::window().ok_or(FileRefusal::Unsupported)?;
    let document = window.document().ok_or(FileRefusal::Unsupported)?;
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let parts = Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence_and_options(&parts, &options).map_err(unsupported)?;
    let url = Url::create_object_url_with_blob(&blob).map_err(unsupported)?;
    let anchor = document.create_element("a").map_err(unsupported)?;
    let anchor: HtmlAnchorElement = anchor.dyn_into().map_err(unsupported)?;
    anchor.set_href(&url);
    anchor.set_download(name);
    let body = document.body().ok_or(FileRefusal::Unsupported)?;
    body.append_child(&anchor).map_err(unsupported)?;
    anchor.click();
    anchor.remove();
    // Some browsers fetch the address only after the click was handled.
    const KEPT_MS: i32 = 30_000;
    let revoke = Closure::once_into_js(move || {
        let _ = Url::revoke_object_url(&url);
    });
    let revoke: &Function = revoke.unchecked_ref();
    let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(revoke, KEPT_MS);
    Ok(())
}

/// The file picked in an input, if any; the input is emptied, so that the same file can be picked again.
pub fn picked(input: &HtmlInputElement) -> Option<File> {
    let file = input.files()?.get(0);
    input.set_value("");
    file
}

/// Reads a picked file; one that is too large is refused before a byte of it is read.
///
/// # Errors
/// [`FileRefusal::TooLarge`] and [`FileRefusal::NotRead`].
pub async fn read(file: &File) -> Result<Vec<u8>, FileRefusal> {
    let bytes = file.size() as usize;
    if bytes > MOST_BYTES {
        return Err(FileRefusal::TooLarge {
            bytes,
            most: MOST_BYTES,
        });
    }
    match JsFuture::from(file.array_buffer()).await {
        Ok(buffer) => Ok(Uint8Array::new(&buffer).to_vec()),
        Err(_) => Err(FileRefusal::NotRead),
    }
}

/// Hands a file to the share sheet. Call it straight from a click: browsers ask for one.
///
/// # Errors
/// [`FileRefusal::Unsupported`] (download instead) and [`FileRefusal::Dismissed`].
pub async fn share_file(name: &str, text: &str) -> Result<(), FileRefusal> {
    // Some share sheets take no JSON; a plain text with the same content is read just as well.
    for (name, kind) in [
        (name.to_owned(), "application/json"),
        (format!("{name}.txt"), "text/plain"),
    ] {
        let options = FilePropertyBag::new();
        options.set_type(kind);
        let parts = Array::of1(&JsValue::from_str(text));
        let file = File::new_with_str_sequence_and_options(&parts, &name, &options)
            .map_err(unsupported)?;
        let data = ShareData::new();
        data.set_files(&Array::of1(&file));
        if can_share(&data) {
            return share(&data).await;
        }
    }
    Err(FileRefusal::Unsupported)
}

/// Hands a link to the share sheet. Call it straight from a click: browsers ask for one.
///
/// # Errors
/// [`FileRefusal::Unsupported`] (copy the link instead) and [`FileRefusal::Dismissed`].
pub async fn share_link(title: &str, url: &str) -> Result<(), FileRefusal> {
    let data = ShareData::new();
    data.set_title(title);
    data.set_url(url);
    share(&data).await
}

/// Hands a text to the share sheet. Call it straight from a click: browsers ask for one.
///
/// # Errors
/// [`FileRefusal::Unsupported`] (copy the text instead) and [`FileRefusal::Dismissed`].
pub async fn share_text(title: &str, text: &str) -> Result<(), FileRefusal> {
    let data = ShareData::new();
    data.set_title(title);
    data.set_text(text);
    share(&data).await
}

/// True where there is a share sheet at all.
pub fn has_share_sheet() -> bool {
    method("share").is_some()
}

/// A method of `navigator` and `navigator` itself, asked for by name: many browsers lack it.
fn method(name: &str) -> Option<(Function, JsValue)> {
    let navigator: JsValue = web_sys::window()?.navigator().into();
    let method = Reflect::get(&navigator, &JsValue::from_str(name)).ok()?;
    Some((method.dyn_into().ok()?, navigator))
}

fn can_share(data: &ShareData) -> bool {
    method("canShare")
        .and_then(|(can_share, navigator)| can_share.call1(&navigator, data).ok())
        .is_some_and(|answer| answer.is_truthy())
}

async fn share(data: &ShareData) -> Result<(), FileRefusal> {
    let (share, navigator) = method("share").ok_or(FileRefusal::Unsupported)?;
    let promise = share.call1(&navigator, data).map_err(unsupported)?;
    let promise: Promise = promise.dyn_into().map_err(unsupported)?;
    match JsFuture::from(promise).await {
        Ok(_) => Ok(()),
        Err(thrown) => {
            let name = Reflect::get(&thrown, &JsValue::from_str("name"))
                .ok()
                .and_then(|name| name.as_string());
            Err(match name.as_deref() {
                Some("AbortError") => FileRefusal::Dismissed,
                _ => FileRefusal::Unsupported,
            })
        }
    }
}
