//! Serves a build as a static host would: compressed copies where the browser takes them, the page itself for every address
//! of the app, 404 for a file that isn't there.

use std::net::{SocketAddr, TcpStream};
use std::path::{Path, PathBuf};
use std::time::Duration;

use axum::Router;
use axum::extract::Request;
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use tokio::net::TcpListener;
use tokio::runtime::Runtime;
use tower_http::services::{ServeDir, ServeFile};

/// The folder of the finished build; `ROOMWRIGHT_DIST` names another.
pub fn dist() -> PathBuf {
    std::env::var_os("ROOMWRIGHT_DIST").map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).with_file_name("dist"),
        PathBuf::from,
    )
}

/// A running server. Dropped or shut down, it is really gone: open connections are closed and new ones refused.
pub struct Server {
    address: SocketAddr,
    runtime: Option<Runtime>,
}

impl Server {
    /// Serves a folder on a free port of this machine.
    ///
    /// # Errors
    /// Where the folder holds no build.
    pub fn start(folder: &Path) -> Result<Self, String> {
        Self::start_at(folder, "127.0.0.1", 0)
    }

    /// Serves a folder at an address; port 0 is any free one.
    ///
    /// # Errors
    /// Where the folder holds no build, or the address can't be had.
    pub fn start_at(folder: &Path, host: &str, port: u16) -> Result<Self, String> {
        if !folder.join("index.html").is_file() {
            return Err(format!(
                "{} holds no build: run `make build`",
                folder.display()
            ));
        }
        let runtime = Runtime::new().map_err(|e| e.to_string())?;
        let listener = runtime
            .block_on(TcpListener::bind((host, port)))
            .map_err(|e| format!("{host}:{port} can't be had ({e}): choose another with PORT="))?;
        let address = listener.local_addr().map_err(|e| e.to_string())?;
        let app = router(folder);
        runtime.spawn(async move { axum::serve(listener, app).await });
        Ok(Self {
            address,
            runtime: Some(runtime),
        })
    }

    /// Scheme, host and port: `http://127.0.0.1:8080`.
    pub fn origin(&self) -> String {
        format!("http://{}", self.address)
    }

    /// Stops it and checks that it is gone: without that, a test of "offline" would test nothing.
    pub fn shutdown(&mut self) {
        if let Some(runtime) = self.runtime.take() {
            // From a plain thread: a runtime can't be stopped from within another.
            std::thread::spawn(move || runtime.shutdown_timeout(Duration::from_secs(2)))
                .join()
                .expect("the server's runtime stops");
            let refused =
                TcpStream::connect_timeout(&self.address, Duration::from_secs(1)).is_err();
            assert!(refused, "the server still answers at {}", self.address);
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        if let Some(runtime) = self.runtime.take() {
            let _ =
                std::thread::spawn(move || runtime.shutdown_timeout(Duration::from_secs(2))).join();
        }
    }
}

fn router(folder: &Path) -> Router {
    let page = ServeFile::new(folder.join("index.html")).precompressed_br();
    let files = ServeDir::new(folder).precompressed_br().fallback(page);
    Router::new()
        .fallback_service(files)
        .layer(axum::middleware::from_fn(as_a_host_would))
}

/// Lets the browser ask again before it uses a kept file, and answers 404 for a missing file instead of the page.
async fn as_a_host_would(request: Request, next: axum::middleware::Next) -> Response {
    let names_a_file = request
        .uri()
        .path()
        .rsplit('/')
        .next()
        .is_some_and(|last| last.contains('.'));
    let html = request.uri().path().ends_with(".html");
    let mut response = next.run(request).await;
    let is_page = response
        .headers()
        .get(header::CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes().starts_with(b"text/html"));
    if names_a_file && is_page && !html {
        return StatusCode::NOT_FOUND.into_response();
    }
    response
        .headers_mut()
        .insert(header::CACHE_CONTROL, HeaderValue::from_static("no-cache"));
    response
}
