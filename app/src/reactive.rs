//! Reactive pieces whose code exists once for each type of value, not once for each closure.
//!
//! The framework's own are generic over the closure, and an app of many fields then carries hundreds of copies of
//! the same machinery: half of what a first visit would download. These take the closure in a box.

use leptos::children::{ChildrenFn, ViewFn};
use leptos::prelude::*;

/// A value worked out from others, kept until one of them changes.
pub fn memo<T>(work_out: impl Fn() -> T + Send + Sync + 'static) -> Memo<T>
where
    T: PartialEq + Send + Sync + 'static,
{
    fn boxed<T: PartialEq + Send + Sync + 'static>(
        work_out: Box<dyn Fn() -> T + Send + Sync>,
    ) -> Memo<T> {
        Memo::new(move |_| work_out())
    }
    boxed(Box::new(work_out))
}

/// A value worked out from others each time it is read.
pub fn derived<T>(work_out: impl Fn() -> T + Send + Sync + 'static) -> Signal<T>
where
    T: Send + Sync + 'static,
{
    fn boxed<T: Send + Sync + 'static>(work_out: Box<dyn Fn() -> T + Send + Sync>) -> Signal<T> {
        Signal::derive(work_out)
    }
    boxed(Box::new(work_out))
}

/// A text in a view that follows what it reads.
pub type Say = Box<dyn FnMut() -> String + Send>;

/// A text in a view that follows what it reads; blank where there is none.
pub fn say<T: Into<Said>>(mut text: impl FnMut() -> T + Send + 'static) -> Say {
    Box::new(move || text().into().0)
}

/// What can be said.
pub struct Said(String);

impl From<String> for Said {
    fn from(text: String) -> Self {
        Self(text)
    }
}

impl From<&str> for Said {
    fn from(text: &str) -> Self {
        Self(text.to_owned())
    }
}

impl From<Option<String>> for Said {
    fn from(text: Option<String>) -> Self {
        Self(text.unwrap_or_default())
    }
}

impl From<usize> for Said {
    fn from(count: usize) -> Self {
        Self(count.to_string())
    }
}

/// A part of a view that is drawn anew when what it reads changes.
pub type Draw = Box<dyn FnMut() -> AnyView + Send>;

/// A part of a view that is drawn anew when what it reads changes.
pub fn draw<V: IntoView + 'static>(mut view: impl FnMut() -> V + Send + 'static) -> Draw {
    Box::new(move || view().into_any())
}

/// Its children while `when` holds, else the fallback.
#[component]
pub fn When(
    /// The condition.
    #[prop(into)]
    when: Signal<bool>,
    /// What is shown while it holds.
    children: ChildrenFn,
    /// What is shown while it does not.
    #[prop(optional, into)]
    fallback: ViewFn,
) -> impl IntoView {
    let holds = memo(move || when.get());
    draw(move || {
        if holds.get() {
            children()
        } else {
            fallback.run()
        }
    })
}
