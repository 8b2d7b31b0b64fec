//! What the store asks of a real browser: storage, compression, files, another window.

#![cfg(target_arch = "wasm32")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by panicking"
)]

use std::cell::RefCell;
use std::rc::Rc;

use app::store::files::{self, FileRefusal};
use app::store::jobs::{self, Loaded, SaveRefusal, Seen};
use app::store::link::{self, LinkRefusal};
use app::store::local::{self, LocalShelf};
use app::store::persist::{self, Persistence};
use app::store::tabs::{Change, Listener};
use app::store::{Shelf, ShelfRefusal, base64url, bin, fresh, index, keys};
use calc::job::file::{self, MOST_BYTES};
use calc::job::{Job, Units};
use js_sys::{Array, Function, Promise, Uint8Array};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{Blob, Event, File, HtmlAnchorElement};

wasm_bindgen_test_configure!(run_in_browser);

fn job(name: &str) -> Job {
    Job::new("a", name, fresh::now(), Units::FeetInches)
}

fn clear() {
    for key in LocalShelf.keys().unwrap() {
        LocalShelf.remove(&key).unwrap();
    }
}

fn run(script: &str) -> JsValue {
    Function::new_no_args(script).call0(&JsValue::NULL).unwrap()
}

async fn wait_ms(ms: u32) {
    let script = format!("return new Promise(done => setTimeout(done, {ms}))");
    JsFuture::from(run(&script).unchecked_into::<Promise>())
        .await
        .unwrap();
}

async fn text_of(blob: &Blob) -> String {
    JsFuture::from(blob.text())
        .await
        .unwrap()
        .as_string()
        .unwrap()
}

#[wasm_bindgen_test]
fn the_browsers_shelf_keeps_texts_and_lists_only_our_keys() {
    clear();
    run("localStorage.setItem('another.app', '1')");
    let (shelf, opened) = local::open();
    assert_eq!(opened, Ok(()));
    shelf.set(keys::LANG, "es ñ 🧱").unwrap();
    assert_eq!(shelf.get(keys::LANG), Ok(Some("es ñ 🧱".to_owned())));
    assert_eq!(shelf.keys(), Ok(vec![keys::LANG.to_owned()]));
    shelf.remove(keys::LANG).unwrap();
    assert_eq!(shelf.get(keys::LANG), Ok(None));
    assert_eq!(
        run("return localStorage.getItem('another.app')"),
        JsValue::from_str("1")
    );
}

#[wasm_bindgen_test]
fn full_storage_is_told_and_the_old_text_stays() {
    clear();
    let mut seen = Seen::nothing();
    jobs::save(&LocalShelf, &job("small"), &mut seen).unwrap();
    run("localStorage.setItem('filler', 'x'.repeat(5 * 1024 * 1024 - 4000))");
    let mut large = job("large");
    large.notes = "x".repeat(5000);
    assert_eq!(
        jobs::save(&LocalShelf, &large, &mut seen),
        Err(SaveRefusal::Full)
    );
    assert_eq!(
        LocalShelf.set(keys::LANG, &"x".repeat(5000)),
        Err(ShelfRefusal::Full)
    );
    run("localStorage.removeItem('filler')");
    let Ok(Loaded::Job(kept, _)) = jobs::load(&LocalShelf, "a") else {
        panic!("not loaded");
    };
    assert_eq!(kept.name, "small");
    jobs::save(&LocalShelf, &large, &mut seen).unwrap();
    assert_eq!(index::list(&LocalShelf).unwrap()[0].name, "large");
    bin::delete(&LocalShelf, "a").unwrap();
    bin::undo(&LocalShelf, "a").unwrap();
    assert_eq!(index::list(&LocalShelf).unwrap()[0].name, "large");
    clear();
}

#[wasm_bindgen_test]
fn blocked_storage_falls_back_to_memory() {
    run("window.kept_storage = Object.getOwnPropertyDescriptor(window, 'localStorage')");
    run(
        "Object.defineProperty(window, 'localStorage', {configurable: true, get() { throw new DOMException('no', 'SecurityError') }})",
    );
    let (shelf, opened) = local::open();
    let answers = (
        LocalShelf.get("x"),
        LocalShelf.set("x", ""),
        LocalShelf.remove("x"),
    );
    run(
        "delete window.localStorage; if (window.kept_storage) Object.defineProperty(window, 'localStorage', window.kept_storage)",
    );
    assert_eq!(opened, Err(ShelfRefusal::Blocked));
    let blocked = ShelfRefusal::Blocked;
    assert_eq!(answers, (Err(blocked), Err(blocked), Err(blocked)));
    jobs::save(&*shelf, &job("in memory"), &mut Seen::nothing()).unwrap();
    assert_eq!(index::list(&*shelf).unwrap()[0].name, "in memory");
}

#[wasm_bindgen_test]
async fn a_link_brings_the_job_over() {
    let mut sent = job("Baño, 2º piso 🧱");
    sent.rest
        .insert("later".to_owned(), serde_json::json!({"x": [0.1, null]}));
    let fragment = link::fragment(&sent).await.unwrap();
    assert!(fragment.starts_with("#j1."), "{fragment}");
    assert!(
        fragment.len() < file::write_compact(&sent).len(),
        "{}",
        fragment.len()
    );
    assert!(link::is_link(&fragment));
    assert_eq!(link::job(&fragment).await, Ok(sent));
}

#[wasm_bindgen_test]
async fn a_link_changed_or_cut_short_never_opens_as_another_job() {
    let sent = job("Elm Street bath");
    let fragment = link::fragment(&sent).await.unwrap();
    for cut in (4..fragment.len()).step_by(7) {
        let answer = link::job(&fragment[..cut]).await;
        assert!(
            matches!(answer, Err(LinkRefusal::Damaged { .. })),
            "cut at {cut}: {answer:?}"
        );
    }
    // Up to seven bits fill the last byte of the compressed data and mean nothing (RFC 1951: deflate), so a
    // change in them is no change of the job: they stand in at most three characters.
    let mut without_effect = 0;
    for at in 4..fragment.len() {
        let new = if &fragment[at..=at] == "A" { "B" } else { "A" };
        let changed = format!("{}{new}{}", &fragment[..at], &fragment[at + 1..]);
        match link::job(&changed).await {
            Err(LinkRefusal::Damaged { .. }) => {}
            Ok(read) if read == sent => without_effect += 1,
            answer => panic!("changed at {at}: {answer:?}"),
        }
    }
    assert!(
        without_effect <= 3,
        "{without_effect} characters do nothing"
    );
    let longer = format!("{fragment}AAAA");
    assert!(matches!(
        link::job(&longer).await,
        Err(LinkRefusal::Damaged { .. })
    ));
}

/// Any text as a link, made by the browser alone.
async fn packed(text: &str) -> String {
    let pack = Function::new_with_args(
        "text",
        "return new Response(new Blob([text]).stream().pipeThrough(new CompressionStream('deflate'))).arrayBuffer()",
    );
    let promise = pack
        .call1(&JsValue::NULL, &JsValue::from_str(text))
        .unwrap();
    let buffer = JsFuture::from(promise.unchecked_into::<Promise>())
        .await
        .unwrap();
    format!(
        "#j1.{}",
        base64url::encode(&Uint8Array::new(&buffer).to_vec())
    )
}

#[wasm_bindgen_test]
async fn a_link_that_is_no_job_of_ours_is_refused_by_kind() {
    assert_eq!(
        link::job(&packed(&file::write(&job("packed"))).await)
            .await
            .unwrap()
            .name,
        "packed"
    );
    let bomb = packed(&" ".repeat(4 * MOST_BYTES)).await;
    assert!(bomb.len() < MOST_BYTES / 10);
    assert_eq!(
        link::job(&bomb).await,
        Err(LinkRefusal::TooLarge { most: MOST_BYTES })
    );
    let newer = file::write(&job("newer")).replace("\"version\": 1", "\"version\": 9");
    assert_eq!(
        link::job(&packed(&newer).await).await,
        Err(LinkRefusal::Newer { given: 9, known: 1 })
    );
    let other = link::job(&packed("{}").await).await;
    assert_eq!(
        other,
        Err(LinkRefusal::Damaged {
            why: Some(file::JobRefusal::NotAJob)
        })
    );
    assert_eq!(link::job("#rooms").await, Err(LinkRefusal::NotALink));
    assert_eq!(
        link::job("#j1.").await,
        Err(LinkRefusal::Damaged { why: None })
    );
}

#[wasm_bindgen_test]
async fn a_browser_without_compression_says_so() {
    let fragment = link::fragment(&job("x")).await.unwrap();
    run(
        "window.kept = [CompressionStream, DecompressionStream]; CompressionStream = DecompressionStream = undefined",
    );
    let made = link::fragment(&job("x")).await;
    let opened = link::job(&fragment).await;
    run("[CompressionStream, DecompressionStream] = window.kept");
    assert_eq!(made, Err(LinkRefusal::Unsupported));
    assert_eq!(opened, Err(LinkRefusal::Unsupported));
}

#[wasm_bindgen_test]
async fn a_download_carries_the_name_and_the_text() {
    let clicked: Rc<RefCell<Option<HtmlAnchorElement>>> = Rc::default();
    let seen = clicked.clone();
    let on_click = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        event.prevent_default();
        *seen.borrow_mut() = event.target().and_then(|target| target.dyn_into().ok());
    });
    let document = web_sys::window().unwrap().document().unwrap();
    let callback = on_click.as_ref().unchecked_ref();
    document
        .add_event_listener_with_callback("click", callback)
        .unwrap();
    files::download("bath.json", "{\"ñ\": 1}").unwrap();
    document
        .remove_event_listener_with_callback("click", callback)
        .unwrap();
    let anchor = clicked.borrow_mut().take().unwrap();
    assert_eq!(anchor.download(), "bath.json");
    assert!(!anchor.is_connected());
    let fetch = Function::new_with_args("url", "return fetch(url).then(answer => answer.text())");
    let promise = fetch
        .call1(&JsValue::NULL, &JsValue::from_str(&anchor.href()))
        .unwrap();
    let text = JsFuture::from(promise.unchecked_into::<Promise>())
        .await
        .unwrap();
    assert_eq!(text.as_string().unwrap(), "{\"ñ\": 1}");
}

#[wasm_bindgen_test]
async fn a_picked_file_is_read_unless_it_is_too_large() {
    let file = |text: &str| {
        File::new_with_str_sequence(&Array::of1(&JsValue::from_str(text)), "job.json").unwrap()
    };
    assert_eq!(files::read(&file("ñ")).await, Ok("ñ".as_bytes().to_vec()));
    let bytes = MOST_BYTES + 1;
    let refusal = FileRefusal::TooLarge {
        bytes,
        most: MOST_BYTES,
    };
    assert_eq!(files::read(&file(&"x".repeat(bytes))).await, Err(refusal));
    assert_eq!(
        files::read(&file(&"x".repeat(MOST_BYTES)))
            .await
            .map(|read| read.len()),
        Ok(MOST_BYTES)
    );
}

fn stub(name: &str, body: &str) {
    let stub: JsValue = if body.is_empty() {
        JsValue::UNDEFINED
    } else {
        Function::new_with_args("data", body).into()
    };
    let define = "Object.defineProperty(navigator, name, {value: stub, configurable: true})";
    let define = Function::new_with_args("name, stub", define);
    define.call2(&JsValue::NULL, &name.into(), &stub).unwrap();
}

#[wasm_bindgen_test]
async fn the_share_sheet_gets_a_file_it_takes() {
    stub("share", "");
    stub("canShare", "");
    assert!(!files::has_share_sheet());
    assert_eq!(
        files::share_file("bath.json", "{}").await,
        Err(FileRefusal::Unsupported)
    );
    assert_eq!(
        files::share_link("Bath", "https://example.org/#j1.x").await,
        Err(FileRefusal::Unsupported)
    );
    stub("share", "window.shared = data; return Promise.resolve()");
    stub("canShare", "return data.files[0].type === 'text/plain'");
    assert!(files::has_share_sheet());
    assert_eq!(files::share_file("bath.json", "{\"a\": 1}").await, Ok(()));
    let shared: File = run("return window.shared.files[0]").unchecked_into();
    assert_eq!(
        (shared.name().as_str(), text_of(&shared).await.as_str()),
        ("bath.json.txt", "{\"a\": 1}")
    );
    stub("canShare", "return true");
    assert_eq!(files::share_file("bath.json", "{}").await, Ok(()));
    assert_eq!(
        run("return window.shared.files[0].name"),
        JsValue::from_str("bath.json")
    );
    assert_eq!(
        files::share_link("Bath", "https://example.org/#j1.x").await,
        Ok(())
    );
    assert_eq!(
        run("return window.shared.url"),
        JsValue::from_str("https://example.org/#j1.x")
    );
    stub(
        "share",
        "return Promise.reject(new DOMException('', 'AbortError'))",
    );
    assert_eq!(
        files::share_file("bath.json", "{}").await,
        Err(FileRefusal::Dismissed)
    );
    stub("share", "throw new TypeError()");
    assert_eq!(
        files::share_file("bath.json", "{}").await,
        Err(FileRefusal::Unsupported)
    );
}

#[wasm_bindgen_test]
async fn another_windows_changes_are_heard_until_the_listener_is_dropped() {
    clear();
    let heard: Rc<RefCell<Vec<Change>>> = Rc::default();
    let seen = heard.clone();
    let listener = Listener::new(move |change| seen.borrow_mut().push(change)).unwrap();
    run("window.other = document.body.appendChild(document.createElement('iframe')).contentWindow");
    run(
        "other.localStorage.setItem('roomwright.job.a', 'theirs'); other.localStorage.setItem('another.app', '2')",
    );
    run("other.localStorage.removeItem('roomwright.job.a')");
    wait_ms(300).await;
    let expected = [
        Change::Job("a".to_owned(), "theirs".to_owned()),
        Change::JobGone("a".to_owned()),
    ];
    assert_eq!(*heard.borrow(), expected);
    drop(listener);
    run("other.localStorage.setItem('roomwright.job.a', 'again')");
    wait_ms(300).await;
    assert_eq!(heard.borrow().len(), 2);
    clear();
}

#[wasm_bindgen_test]
async fn the_browser_is_asked_once_to_keep_storage() {
    clear();
    let first = persist::ask(&LocalShelf).await;
    assert!(
        matches!(first, Persistence::Kept | Persistence::NotKept),
        "{first:?}"
    );
    assert_eq!(persist::ask(&LocalShelf).await, Persistence::AskedBefore);
    clear();
}

#[wasm_bindgen_test]
fn the_time_and_new_ids_are_in_their_forms() {
    let now = fresh::now();
    assert!(
        now.len() == 24 && now.ends_with('Z') && &now[10..11] == "T",
        "{now}"
    );
    let (one, two) = (fresh::job_id(), fresh::job_id());
    assert!(file::is_job_id(&one) && one != two, "{one} {two}");
}
