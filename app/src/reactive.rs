//! Reactive pieces whose code exists once for each type of value, not once for each closure.
//!
//! The framework's own are generic over the closure, and an app of many fields then carries hundreds of copies of
//! the same machinery: half of what a first visit would download. These take the closure in a box.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::children::{ChildrenFn, ViewFn};
use leptos::prelude::*;
use send_wrapper::SendWrapper;

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

/// Work that is done now and again when something it reads changes: whoever reads the count has it done.
///
/// Everything in the page follows through one of these, never by an effect that reads for itself. An effect of the
/// framework that reads a memo, and after it what that memo is made of, is not told of a change of the latter where the
/// memo stays the same: the picture of a pour then stayed what it first was. A memo that reads both is told.
pub fn turns(work: impl FnMut() + 'static) -> ArcMemo<u32> {
    fn boxed(work: Box<dyn FnMut()>) -> ArcMemo<u32> {
        let work = SendWrapper::new(RefCell::new(work));
        ArcMemo::new(move |count: Option<&u32>| {
            (work.borrow_mut())();
            count.map_or(0, |count| count.wrapping_add(1))
        })
    }
    boxed(Box::new(work))
}

/// A view that is drawn anew when what it reads changes.
pub fn follow(draw: Box<dyn FnMut() -> AnyView>) -> AnyView {
    let drawn = Rc::new(RefCell::new(None));
    let here = SendWrapper::new(Rc::clone(&drawn));
    let mut draw = draw;
    let turns = turns(move || {
        let view = draw();
        drawn.borrow_mut().replace(view);
    });
    let shown = move || {
        turns.with(|_| ());
        here.borrow_mut().take().unwrap_or_else(|| ().into_any())
    };
    shown.into_any()
}

/// A text in a view that follows what it reads; blank where there is none.
pub fn say<T: Into<Said>>(mut text: impl FnMut() -> T + 'static) -> AnyView {
    follow(Box::new(move || text().into().0.into_any()))
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
pub fn draw<V: IntoView + 'static>(mut view: impl FnMut() -> V + 'static) -> AnyView {
    follow(Box::new(move || view().into_any()))
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
