//! What a person can do with a page, and what a journey may look at.
//!
//! Things are found as people find them: a field by its label, a button or link by the words on it. Everything that has to
//! appear is waited for; nothing sleeps.

use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use std::time::{Duration, Instant};

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};
use thirtyfour::{Key, TypingData, WebDriver, WebElement};

use crate::browser::Browser;
use crate::server::Server;

/// Why a journey could not go on.
pub type Failure = Box<dyn Error + Send + Sync>;

/// What a step answers.
pub type Step<T = ()> = Result<T, Failure>;

/// How long something may take to appear.
const PATIENCE: Duration = Duration::from_secs(10);

/// Finds fields (`label`, `aria-label`) or things to press (their words) by name; several may share one.
const FIND: &str = include_str!("find.js");

/// The name of what has the focus.
const FOCUSED: &str = "const plain = (text) => (text || '').replace(/\\s+/g, ' ').trim();
    const on = document.activeElement;
    if (!on || on === document.body) return '';
    if (on.hasAttribute('aria-label')) return plain(on.getAttribute('aria-label'));
    if (on.labels?.length) return plain([...on.labels].map((label) => label.textContent).join(' '));
    return plain(on.textContent);";

/// One tab on one server.
#[derive(Clone)]
pub struct Page {
    /// The session, for what this type has no word for.
    pub driver: WebDriver,
    pub(crate) server: Arc<Mutex<Server>>,
    pub(crate) downloads: PathBuf,
    pub(crate) origin: String,
    /// The heading of the part of the page that is looked in; none: all of it.
    pub(crate) part: Option<String>,
}

impl Page {
    /// The same page, but fields and things to press are looked for in the part under this heading only.
    pub fn within(&self, heading: &str) -> Self {
        Self {
            part: Some(heading.to_owned()),
            ..self.clone()
        }
    }

    /// The same server in another browser: a person who was never here.
    pub fn in_browser(&self, browser: &Browser) -> Self {
        Self {
            driver: browser.driver.clone(),
            downloads: browser.downloads.path().to_owned(),
            ..self.clone()
        }
    }

    /// Scheme, host and port of the server.
    pub fn origin(&self) -> &str {
        &self.origin
    }

    /// Opens an address of the app: `/`, `/jobs/1/floor`.
    pub async fn open(&self, path: &str) -> Step {
        Ok(self.driver.goto(format!("{}{path}", self.origin)).await?)
    }

    /// Loads the page again.
    pub async fn reload(&self) -> Step {
        Ok(self.driver.refresh().await?)
    }

    /// Waits until the app is up: the first screen is gone.
    pub async fn up(&self) -> Step {
        let up = "return document.readyState === 'complete' && !document.getElementById('first-screen') || null";
        self.until("the app to be up", up, vec![]).await.map(drop)
    }

    /// Where the tab is, without scheme and host.
    pub async fn path(&self) -> Step<String> {
        let url = self.driver.current_url().await?.to_string();
        Ok(url.strip_prefix(&self.origin).unwrap_or(&url).to_owned())
    }

    /// Waits until the page shows this text.
    pub async fn see(&self, text: &str) -> Step {
        self.until(
            &format!("the text {text:?}"),
            "return document.body.innerText.includes(arguments[0]) || null",
            vec![text.into()],
        )
        .await
        .map(drop)
    }

    /// Waits until the page no longer shows this text.
    pub async fn see_gone(&self, text: &str) -> Step {
        self.until(
            &format!("{text:?} to go"),
            "return !document.body.innerText.includes(arguments[0]) || null",
            vec![text.into()],
        )
        .await
        .map(drop)
    }

    /// Everything that the page shows, as text.
    pub async fn text(&self) -> Step<String> {
        Ok(self
            .script("return document.body.innerText", vec![])
            .await?
            .as_str()
            .unwrap_or_default()
            .to_owned())
    }

    /// The field with this label.
    pub async fn field(&self, label: &str) -> Step<WebElement> {
        self.find("field", label).await
    }

    /// Types into the field with this label, in place of what it holds, key by key.
    pub async fn type_into(&self, label: &str, text: &str) -> Step {
        let field = self.field(label).await?;
        field.scroll_into_view().await?;
        field.focus().await?;
        field.send_keys(Key::Control + "a").await?;
        field.send_keys(Key::Delete).await?;
        Ok(field.send_keys(text).await?)
    }

    /// What the field with this label holds.
    pub async fn value_of(&self, label: &str) -> Step<String> {
        Ok(self
            .field(label)
            .await?
            .prop("value")
            .await?
            .unwrap_or_default())
    }

    /// Puts a text into the field with this label at once, as a paste does.
    pub async fn paste_into(&self, label: &str, text: &str) -> Step {
        let field = self.field(label).await?;
        let script = "const [field, text] = arguments;
            field.value = text;
            field.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertFromPaste' }));";
        self.script(script, vec![field.to_json()?, text.into()])
            .await
            .map(drop)
    }

    /// Picks a file in the file field with this label.
    pub async fn pick_file(&self, label: &str, file: &Path) -> Step {
        let field = self.field(label).await?;
        Ok(field.send_keys(file.display().to_string()).await?)
    }

    /// Presses keys where the focus is.
    pub async fn press(&self, keys: impl Into<TypingData>) -> Step {
        let keys = self.driver.action_chain().send_keys(keys);
        Ok(keys.perform().await?)
    }

    /// Presses the tabulator until the focus is on what has this name.
    pub async fn tab_to(&self, name: &str) -> Step {
        let mut passed = Vec::new();
        for _ in 0..120 {
            self.press(Key::Tab).await?;
            let focused = self.focused().await?;
            if focused == name || focused.starts_with(&format!("{name}, ")) {
                return Ok(());
            }
            passed.push(focused);
        }
        Err(format!("the tabulator never comes to {name:?}, only to {passed:?}").into())
    }

    /// The name of what has the focus: a field's label, a button's words, a heading's text.
    pub async fn focused(&self) -> Step<String> {
        let name = self.script(FOCUSED, vec![]).await?;
        Ok(name.as_str().unwrap_or_default().to_owned())
    }

    /// Waits until the focus is on what has this name.
    pub async fn see_focus(&self, name: &str) -> Step {
        let script = format!("return (() => {{ {FOCUSED} }})() === arguments[0] || null");
        self.until(
            &format!("the focus on {name:?}"),
            &script,
            vec![name.into()],
        )
        .await
        .map(drop)
    }

    /// What the page says beside a field that it does not take; blank where it takes it.
    pub async fn refusal_at(&self, label: &str) -> Step<String> {
        let field = self.field(label).await?;
        let script = "const ids = (arguments[0].getAttribute('aria-describedby') || '').split(/\\s+/);
            const error = ids.map((id) => document.getElementById(id)).find((e) => e && e.id.endsWith('-error'));
            return error && error.checkVisibility() ? error.textContent.trim() : ''";
        let said = self.script(script, vec![field.to_json()?]).await?;
        Ok(said.as_str().unwrap_or_default().to_owned())
    }

    /// Types into a field, leaves it, and waits until the page says this beside it; what was typed is still there.
    pub async fn refused(&self, label: &str, typed: &str, words: &str) -> Step {
        self.type_into(label, typed).await?;
        self.press(Key::Tab).await?;
        let start = Instant::now();
        loop {
            let said = self.refusal_at(label).await?;
            if said == words {
                break;
            }
            if start.elapsed() > PATIENCE {
                return Err(format!(
                    "{typed:?} in {label:?}: wanted {words:?}, the page says {said:?}"
                )
                .into());
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
        let held = self.value_of(label).await?;
        if held != typed {
            return Err(format!("{label:?} held {typed:?} and now {held:?}").into());
        }
        Ok(())
    }

    /// The cells of the table row with this head, once it is there.
    pub async fn row(&self, head: &str) -> Step<Vec<String>> {
        let script = "const plain = (e) => e.textContent.replace(/\\s+/g, ' ').trim();
            const row = [...document.querySelectorAll('tr')].find((r) => {
                const head = r.querySelector('th[scope=row]');
                return head && plain(head) === arguments[0];
            });
            return row ? [...row.querySelectorAll('td')].map(plain) : null";
        let cells = self
            .until(&format!("the row {head:?}"), script, vec![head.into()])
            .await?;
        Ok(serde_json::from_value(cells)?)
    }

    /// Waits until the row has these cells.
    pub async fn see_row(&self, head: &str, cells: &[&str]) -> Step {
        let start = Instant::now();
        loop {
            let shown = self.row(head).await?;
            if shown == cells {
                return Ok(());
            }
            if start.elapsed() > PATIENCE {
                return Err(
                    format!("row {head:?}: wanted {cells:?}, the page shows {shown:?}").into(),
                );
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    /// Opens every disclosure of the page.
    pub async fn open_all(&self) -> Step {
        self.script(
            "document.querySelectorAll('details').forEach((d) => { d.open = true })",
            vec![],
        )
        .await
        .map(drop)
    }

    /// Chooses from the list with this label.
    pub async fn choose(&self, label: &str, option: &str) -> Step {
        let list = self.field(label).await?;
        let script = "const [list, wanted] = arguments;
            const found = [...list.options].find((o) => o.textContent.trim() === wanted);
            if (!found) return false;
            list.value = found.value;
            list.dispatchEvent(new Event('input', { bubbles: true }));
            list.dispatchEvent(new Event('change', { bubbles: true }));
            return true;";
        if self
            .script(script, vec![list.to_json()?, option.into()])
            .await?
            != Value::Bool(true)
        {
            return Err(format!("the list {label:?} has no {option:?}").into());
        }
        Ok(())
    }

    /// The button, link, check box, choice or summary with these words.
    pub async fn action(&self, words: &str) -> Step<WebElement> {
        self.find("action", words).await
    }

    /// Presses the button, link, check box, choice or summary with these words.
    pub async fn click(&self, words: &str) -> Step {
        let thing = self.find("action", words).await?;
        thing.scroll_into_view().await?;
        Ok(thing.click().await?)
    }

    /// Runs a script in the page and answers what it returns.
    pub async fn script(&self, script: &str, arguments: Vec<Value>) -> Step<Value> {
        Ok(self.driver.execute(script, arguments).await?.json().clone())
    }

    /// Runs the body of an async function in the page and answers what it returns.
    pub async fn script_async(&self, body: &str) -> Step<Value> {
        let script = format!(
            "const done = arguments[arguments.length - 1];
             (async () => {{ {body} }})().then((value) => done({{ value }}), (error) => done({{ error: String(error) }}));"
        );
        let answer = self
            .driver
            .execute_async(script, vec![])
            .await?
            .json()
            .clone();
        match answer.get("error") {
            Some(error) => Err(format!("script: {error}").into()),
            None => Ok(answer.get("value").cloned().unwrap_or(Value::Null)),
        }
    }

    /// Waits until the script returns something other than null.
    pub async fn until(&self, what: &str, script: &str, arguments: Vec<Value>) -> Step<Value> {
        let start = Instant::now();
        loop {
            let value = self.script(script, arguments.clone()).await?;
            if !value.is_null() {
                return Ok(value);
            }
            if start.elapsed() > PATIENCE {
                return Err(
                    format!("waited for {what}; the page shows:\n{}", self.text().await?).into(),
                );
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    /// Waits until the whole app is kept on the device.
    pub async fn kept_for_offline(&self) -> Step {
        let state = self
            .script_async(
                "const { active } = await navigator.serviceWorker.ready;
                 while (active.state !== 'activated') await new Promise((r) => active.addEventListener('statechange', r, { once: true }));
                 return active.state;",
            )
            .await?;
        if state == "activated" {
            Ok(())
        } else {
            Err(format!("the worker is {state}").into())
        }
    }

    /// Stops the server: from here on everything comes from the device.
    pub fn stop_server(&self) {
        self.server
            .lock()
            .expect("no journey failed while it held the server")
            .shutdown();
    }

    /// What the browser keeps under a key.
    pub async fn kept(&self, key: &str) -> Step<Option<String>> {
        let value = self
            .script(
                "return localStorage.getItem(arguments[0])",
                vec![key.into()],
            )
            .await?;
        Ok(value.as_str().map(str::to_owned))
    }

    /// Puts a text under a key of the browser's storage.
    pub async fn keep(&self, key: &str, text: &str) -> Step {
        self.script(
            "localStorage.setItem(arguments[0], arguments[1])",
            vec![key.into(), text.into()],
        )
        .await
        .map(drop)
    }

    /// A command of the browser's own protocol, by name.
    pub async fn command(&self, name: &str, parameters: Value) -> Step<Value> {
        Ok(self.driver.cdp().send_raw(name, parameters).await?)
    }

    /// Makes the processor this many times slower.
    pub async fn slow_down(&self, times: f64) -> Step {
        self.command("Emulation.setCPUThrottlingRate", json!({ "rate": times }))
            .await
            .map(drop)
    }

    /// Narrows the line: megabits a second down, milliseconds there and back.
    pub async fn narrow_line(&self, mbit_per_s: f64, round_trip_ms: f64) -> Step {
        let rate = mbit_per_s * 1e6 / 8.0;
        let line = json!({"offline": false, "latency": round_trip_ms, "downloadThroughput": rate, "uploadThroughput": rate});
        self.command("Network.enable", json!({})).await?;
        self.command("Network.emulateNetworkConditions", line)
            .await
            .map(drop)
    }

    /// Asks for the dark or the light colours.
    pub async fn dark(&self, dark: bool) -> Step {
        let scheme = if dark { "dark" } else { "light" };
        let features = json!([{"name": "prefers-color-scheme", "value": scheme}]);
        self.command(
            "Emulation.setEmulatedMedia",
            json!({ "features": features }),
        )
        .await
        .map(drop)
    }

    /// The page as it would be printed, a PDF.
    pub async fn print(&self) -> Step<Vec<u8>> {
        let printed = self
            .command("Page.printToPDF", json!({"printBackground": false}))
            .await?;
        Ok(STANDARD.decode(printed["data"].as_str().ok_or("no PDF")?)?)
    }

    /// Keeps a picture of the screen in tests/screenshots/NAME.png.
    pub async fn picture(&self, name: &str) -> Step {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("screenshots");
        fs::create_dir_all(&folder)?;
        Ok(self
            .driver
            .screenshot(&folder.join(format!("{name}.png")))
            .await?)
    }

    /// Keeps a picture of the whole page, however long it is, in tests/screenshots/NAME.png.
    pub async fn whole_picture(&self, name: &str) -> Step {
        let size = self
            .script("const { scrollWidth, scrollHeight } = document.documentElement; return [scrollWidth, scrollHeight, 1 / devicePixelRatio]", vec![])
            .await?;
        let clip = json!({"x": 0, "y": 0, "width": size[0], "height": size[1], "scale": size[2]});
        let shot = self
            .command(
                "Page.captureScreenshot",
                json!({"captureBeyondViewport": true, "clip": clip}),
            )
            .await?;
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("screenshots");
        fs::create_dir_all(&folder)?;
        let png = STANDARD.decode(shot["data"].as_str().ok_or("no picture")?)?;
        Ok(fs::write(folder.join(format!("{name}.png")), png)?)
    }

    /// Where a download of this name is.
    pub fn download_path(&self, name: &str) -> PathBuf {
        self.downloads.join(name)
    }

    /// Waits for a download of this name and answers what is in it.
    pub async fn downloaded(&self, name: &str) -> Step<String> {
        let start = Instant::now();
        let file = self.downloads.join(name);
        // The browser makes the file before it writes it.
        while !fs::metadata(&file).is_ok_and(|made| made.len() > 0) {
            if start.elapsed() > PATIENCE {
                return Err(format!("no download called {name}").into());
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
        Ok(fs::read_to_string(file)?)
    }

    /// Fails on anything that axe-core finds against WCAG 2.2 AA or its best practice, in light and in dark.
    pub async fn accessible(&self) -> Step {
        let axe = Path::new(env!("CARGO_MANIFEST_DIR"))
            .with_file_name("node_modules")
            .join("axe-core/axe.min.js");
        let axe = fs::read_to_string(&axe).map_err(|e| {
            format!(
                "{} ({e}): scripts/node-modules.sh installs it",
                axe.display()
            )
        })?;
        self.script(&axe, vec![]).await?;
        for dark in [false, true] {
            self.dark(dark).await?;
            let found = self.script_async(include_str!("axe.js")).await?;
            if found.as_array().is_none_or(|found| !found.is_empty()) {
                return Err(format!(
                    "axe-core ({}): {found:#}",
                    if dark { "dark" } else { "light" }
                )
                .into());
            }
        }
        self.dark(false).await
    }

    /// The console's errors since the last look: console.error, uncaught exceptions, policy violations, failed loads. Who looks
    /// takes them: the end of the journey then does not find them.
    pub async fn console_errors(&self) -> Step<Vec<String>> {
        let entries = self.driver.browser_log().await?;
        Ok(entries
            .into_iter()
            .filter(|entry| entry.level == "SEVERE")
            .map(|entry| entry.message)
            .collect())
    }

    /// Every address that the page asked for since the last look.
    pub async fn requests(&self) -> Step<Vec<String>> {
        let mut addresses = Vec::new();
        for entry in self.driver.get_log("performance").await? {
            let event: Value = serde_json::from_str(&entry.message)?;
            if event["message"]["method"] == "Network.requestWillBeSent" {
                addresses.extend(
                    event["message"]["params"]["request"]["url"]
                        .as_str()
                        .map(str::to_owned),
                );
            }
        }
        Ok(addresses)
    }

    async fn find(&self, kind: &str, name: &str) -> Step<WebElement> {
        let start = Instant::now();
        loop {
            let answer = self
                .driver
                .execute(
                    FIND,
                    vec![
                        kind.into(),
                        name.into(),
                        self.part.clone().map_or(Value::Null, Value::String),
                    ],
                )
                .await?;
            if !answer.json()["names"].is_array() {
                return Ok(answer.element()?);
            }
            if start.elapsed() > PATIENCE {
                return Err(format!(
                    "no {kind} called {name:?} on the page, only {}",
                    answer.json()["names"]
                )
                .into());
            }
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }
}
