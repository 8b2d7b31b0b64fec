//! The service worker: registered in release builds where the browser has one; its updates wait for consent.

use std::cell::Cell;

use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState,
};

/// What the app knows of its copy on this device. Made once, by the app's root, and shared by context.
#[derive(Clone, Copy)]
pub struct Offline {
    /// The whole app is on this device: it opens without a signal.
    pub ready: RwSignal<bool>,
    /// A newer version is on this device and waits for [`Offline::apply_update`].
    pub update_waiting: RwSignal<bool>,
    before_update: Callback<()>,
}

impl Offline {
    /// Registers the worker. `before_update` runs before an update reloads the page: it must save what is not saved yet.
    ///
    /// Does nothing in debug builds, and where there is no worker to be had: plain http but for localhost, a private window of
    /// some browsers.
    pub fn register(before_update: Callback<()>) -> Self {
        let offline = Self {
            ready: RwSignal::new(false),
            update_waiting: RwSignal::new(false),
            before_update,
        };
        if let Some(container) = container()
            && !cfg!(debug_assertions)
        {
            spawn_local(async move {
                // A refusal leaves the app as it is without a worker: it works, while there is a signal.
                if let Ok(registration) = JsFuture::from(container.register("sw.js")).await {
                    offline.follow(&registration.unchecked_into(), &container);
                }
            });
        }
        offline
    }

    /// Changes to the newer version: saves, lets the waiting worker take over, and loads the page again when it has.
    pub fn apply_update(self) {
        self.before_update.run(());
        let Some(container) = container() else { return };
        spawn_local(async move {
            let registration: Option<ServiceWorkerRegistration> =
                JsFuture::from(container.get_registration())
                    .await
                    .ok()
                    .and_then(|found| found.dyn_into().ok());
            let Some(waiting) = registration.and_then(|registration| registration.waiting()) else {
                reload(); // another tab was first: the newer version is in charge already
                return;
            };
            let reloaded = Cell::new(false);
            listen(&container, "controllerchange", move || {
                if !reloaded.replace(true) {
                    reload();
                }
            });
            let _ = waiting.post_message(&JsValue::from_str("skip-waiting"));
        });
    }

    fn follow(self, registration: &ServiceWorkerRegistration, container: &ServiceWorkerContainer) {
        let controlled = container.controller().is_some();
        if registration.waiting().is_some() && controlled {
            self.update_waiting.set(true);
        }
        if registration
            .active()
            .is_some_and(|active| active.state() == ServiceWorkerState::Activated)
        {
            self.ready.set(true);
        }
        if let Some(coming) = registration.installing().or_else(|| registration.active()) {
            self.watch(coming, container);
        }
        let found = registration.clone();
        let container = container.clone();
        listen(registration, "updatefound", move || {
            if let Some(coming) = found.installing() {
                self.watch(coming, &container);
            }
        });
        // An installed app is opened far more often than it is loaded: look for a newer version whenever it comes to the front.
        let registration = registration.clone();
        listen(&document(), "visibilitychange", move || {
            if !document().hidden() && window().navigator().on_line() {
                let asked = registration.update();
                spawn_local(async move {
                    let _ = match asked {
                        Ok(promise) => JsFuture::from(promise).await,
                        Err(e) => Err(e),
                    };
                });
            }
        });
    }

    /// Follows a worker that is being installed.
    fn watch(self, coming: ServiceWorker, container: &ServiceWorkerContainer) {
        let container = container.clone();
        let worker = coming.clone();
        listen(&coming, "statechange", move || match worker.state() {
            ServiceWorkerState::Installed if container.controller().is_some() => {
                self.update_waiting.set(true)
            }
            ServiceWorkerState::Activated => self.ready.set(true),
            _ => {}
        });
    }
}

/// The browser's workers, where it has them: web-sys takes them for granted.
fn container() -> Option<ServiceWorkerContainer> {
    let navigator = window().navigator();
    js_sys::Reflect::get(&navigator, &JsValue::from_str("serviceWorker"))
        .ok()
        .and_then(|found| found.dyn_into().ok())
}

fn reload() {
    let _ = window().location().reload();
}

/// Listens for as long as the page lives: what is listened to here lives as long.
fn listen(target: &web_sys::EventTarget, event: &str, heard: impl Fn() + 'static) {
    let closure = Closure::<dyn Fn()>::new(heard);
    let _ = target.add_event_listener_with_callback(event, closure.as_ref().unchecked_ref());
    closure.forget();
}
