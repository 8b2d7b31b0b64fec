//! Runs a journey: a server, a browser, what a person does, and what must hold on every journey.

use std::fmt::Write;
use std::future::Future;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::path::Path;
use std::sync::{Arc, Mutex};

use crate::browser::{Browser, Screen};
use crate::page::{Page, Step};
use crate::server::{Server, dist};

/// A journey on a phone over the finished build.
///
/// It fails when a step fails, and also when the console has an error that the journey did not take itself, or the page asked
/// for an address of another origin. A failed one leaves a picture, `failed-NAME.png`, in tests/screenshots/.
pub fn journey<F, Fut>(steps: F)
where
    F: FnOnce(Page) -> Fut,
    Fut: Future<Output = Step>,
{
    journey_on(Screen::Phone, &dist(), steps);
}

/// A journey on this screen over the build in this folder.
pub fn journey_on<F, Fut>(screen: Screen, folder: &Path, steps: F)
where
    F: FnOnce(Page) -> Fut,
    Fut: Future<Output = Step>,
{
    let server = Server::start(folder).unwrap_or_else(|e| panic!("{e}"));
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(1)
        .enable_all()
        .build()
        .expect("a runtime for the browser");
    let browser = runtime
        .block_on(Browser::start(screen))
        .unwrap_or_else(|e| panic!("no browser: {e}"));
    let page = Page {
        driver: browser.driver.clone(),
        origin: server.origin(),
        server: Arc::new(Mutex::new(server)),
        downloads: browser.downloads.path().to_owned(),
        part: None,
    };
    let outcome = catch_unwind(AssertUnwindSafe(|| {
        runtime.block_on(async {
            // Forget the empty tab that the browser began with.
            page.driver.goto("about:blank").await?;
            page.requests().await?;
            steps(page.clone()).await?;
            nothing_amiss(&page).await
        })
    }));
    if !matches!(outcome, Ok(Ok(()))) {
        runtime.block_on(leave_traces(&page));
    }
    drop(page);
    let ended = runtime.block_on(browser.quit());
    match outcome {
        Ok(Ok(())) => ended.expect("the browser ends"),
        Ok(Err(e)) => panic!("{e}"),
        Err(panic) => resume_unwind(panic),
    }
}

/// What must hold on every journey.
async fn nothing_amiss(page: &Page) -> Step {
    let mut amiss = String::new();
    for error in page.console_errors().await? {
        writeln!(amiss, "console: {error}")?;
    }
    let own = format!("{}/", page.origin);
    for address in page.requests().await? {
        if (address.starts_with("http") || address.starts_with("ws")) && !address.starts_with(&own)
        {
            writeln!(amiss, "asked for {address}")?;
        }
    }
    if amiss.is_empty() {
        Ok(())
    } else {
        Err(amiss.into())
    }
}

async fn leave_traces(page: &Page) {
    let name = std::thread::current()
        .name()
        .unwrap_or("journey")
        .replace("::", "-");
    let _ = page.picture(&format!("failed-{name}")).await;
    for error in page.console_errors().await.unwrap_or_default() {
        eprintln!("console: {error}");
    }
}
