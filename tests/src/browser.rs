//! A real browser: Chromium with a profile of its own, driven through chromedriver.

use std::error::Error;
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

use serde_json::json;
use tempfile::TempDir;
use thirtyfour::common::capabilities::chromium::ChromiumLikeCapabilities;
use thirtyfour::{DesiredCapabilities, LoggingPrefsLogLevel, WebDriver};

/// What a person holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Screen {
    /// A phone held upright: 360 by 740, touch, three dots to the pixel.
    Phone,
    /// A window of 1280 by 800 and a mouse.
    Desk,
}

/// A running browser. [`Browser::quit`] ends it.
pub struct Browser {
    /// The session.
    pub driver: WebDriver,
    /// Where its downloads go.
    pub downloads: TempDir,
    _profile: TempDir,
    _chromedriver: Chromedriver,
}

impl Browser {
    /// Starts one. `CHROMIUM` and `CHROMEDRIVER` name the programs; `scripts/browser.sh` finds or installs them.
    ///
    /// # Errors
    /// When either can't be started.
    pub async fn start(screen: Screen) -> Result<Self, Box<dyn Error + Send + Sync>> {
        let chromedriver = Chromedriver::start()?;
        let profile = TempDir::new()?;
        let downloads = TempDir::new()?;
        let mut wanted = DesiredCapabilities::chrome();
        wanted.set_binary(
            &std::env::var("CHROMIUM").unwrap_or_else(|_| "/usr/bin/chromium".into()),
        )?;
        for argument in [
            "--headless=new",
            "--no-sandbox", // the checks may run as root
            "--disable-gpu",
            "--disable-dev-shm-usage",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-quic",
            "--disable-sync",
            "--no-first-run",
            "--no-proxy-server",
            "--lang=en-US",
            "--window-size=1280,800",
        ] {
            wanted.add_arg(argument)?;
        }
        wanted.add_arg(&format!("--user-data-dir={}", profile.path().display()))?;
        if screen == Screen::Phone {
            let metrics = json!({"width": 360, "height": 740, "pixelRatio": 3, "touch": true, "mobile": true});
            wanted
                .add_experimental_option("mobileEmulation", json!({ "deviceMetrics": metrics }))?;
        }
        wanted.set_logging_prefs("browser", LoggingPrefsLogLevel::All)?;
        wanted.set_logging_prefs("performance", LoggingPrefsLogLevel::All)?;
        let driver = WebDriver::new(chromedriver.address(), wanted).await?;
        let download = json!({"behavior": "allow", "downloadPath": downloads.path()});
        driver
            .cdp()
            .send_raw("Browser.setDownloadBehavior", download)
            .await?;
        Ok(Self {
            driver,
            downloads,
            _profile: profile,
            _chromedriver: chromedriver,
        })
    }

    /// Ends the browser.
    ///
    /// # Errors
    /// When it was gone already.
    pub async fn quit(self) -> Result<(), Box<dyn Error + Send + Sync>> {
        Ok(self.driver.clone().quit().await?)
    }
}

struct Chromedriver {
    process: Child,
    port: u16,
}

impl Chromedriver {
    fn start() -> Result<Self, String> {
        let program =
            std::env::var("CHROMEDRIVER").unwrap_or_else(|_| "/usr/bin/chromedriver".into());
        let mut process = Command::new(&program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|e| {
                format!("{program} does not start ({e}): scripts/browser.sh installs it")
            })?;
        let mut lines =
            BufReader::new(process.stdout.take().ok_or("no output from chromedriver")?).lines();
        let port = lines
            .by_ref()
            .map_while(Result::ok)
            .find_map(|line| {
                let (_, port) = line.split_once("started successfully on port ")?;
                port.trim_end_matches('.').parse().ok()
            })
            .ok_or("chromedriver does not say its port")?;
        std::thread::spawn(move || lines.map_while(Result::ok).for_each(drop)); // or it stops when the pipe is full
        Ok(Self { process, port })
    }

    fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Chromedriver {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}
