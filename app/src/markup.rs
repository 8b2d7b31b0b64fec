//! What `view!` writes out: one type for all elements, so that a page carries no code of its own for building,
//! comparing and dropping each of them.
//!
//! - [`view!`](::markup::view) the framework's grammar for views;
//! - [`Tag`] an element in the making, then a view like any other of the framework;
//! - [`For`] rows that keep their elements while their key stays.
//!
//! An element drawn anew keeps its place in the page, its focus and its caret: what changed is put into it.

use std::borrow::Cow;
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

use leptos::ev::EventDescriptor;
use leptos::prelude::{
    AddAnyAttr, AnyView, Get, IntoAny, Memo, Mountable, Owner, Render, RenderEffect, RenderHtml,
    Signal, With, document,
};
use leptos::tachys::html::attribute::{
    Attribute as FrameworkAttribute, any_attribute::AnyAttribute,
};
use leptos::tachys::html::element::ElementType;
use leptos::tachys::html::event::Targeted;
use leptos::tachys::html::node_ref::NodeRefContainer;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::view::any_view::AnyViewState;
use leptos::tachys::view::{Position, PositionState};
use send_wrapper::SendWrapper;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, Event, Node};

use crate::reactive::{follow, turns};

pub use ::markup::view;

/// An element in the making.
pub struct Tag(SendWrapper<Box<Made>>);

struct Made {
    name: &'static str,
    in_svg: bool,
    parts: Vec<Part>,
    children: Vec<AnyView>,
}

type Handler = Box<dyn FnMut(Event)>;

/// What an element has beside its children.
enum Part {
    Attribute(&'static str, Text),
    Class(&'static str, bool),
    Property(&'static str, JsValue),
    /// Follows what it reads.
    Live(Box<dyn FnMut(&Element)>),
    On(Cow<'static, str>, Handler),
    Ref(Box<dyn FnOnce(&Element)>),
}

/// The text of an attribute; none: the element does not have the attribute.
pub type Text = Option<Cow<'static, str>>;

/// What can stand as an attribute's text.
pub trait IntoText {
    /// The text.
    fn into_text(self) -> Text;
}

impl IntoText for &'static str {
    fn into_text(self) -> Text {
        Some(Cow::Borrowed(self))
    }
}

impl IntoText for String {
    fn into_text(self) -> Text {
        Some(Cow::Owned(self))
    }
}

impl IntoText for bool {
    fn into_text(self) -> Text {
        self.then_some(Cow::Borrowed(""))
    }
}

impl<T: IntoText> IntoText for Option<T> {
    fn into_text(self) -> Text {
        self.and_then(T::into_text)
    }
}

macro_rules! numbers_as_text {
    ($($number:ty),*) => {
        $(impl IntoText for $number {
            fn into_text(self) -> Text {
                Some(Cow::Owned(self.to_string()))
            }
        })*
    };
}

numbers_as_text!(u8, u16, u32, usize, i32, f64);

/// What an attribute, a class or a property can be given: a value, a closure or a signal of one. `How` tells these apart.
pub trait Given<T, How> {
    /// The value, or what works it out.
    fn given(self) -> Worth<T>;
}

/// A value, or what works it out.
pub enum Worth<T> {
    /// Stays.
    Fixed(T),
    /// Follows what it reads.
    Live(Box<dyn FnMut() -> T>),
}

/// Marks a value.
pub struct AsValue;

/// Marks a closure.
pub struct AsClosure<T>(std::marker::PhantomData<T>);

/// Marks a signal.
pub struct AsSignal<T>(std::marker::PhantomData<T>);

/// Marks a memo.
pub struct AsMemo<T>(std::marker::PhantomData<T>);

/// How a value becomes what is put into the page.
pub trait ForPage<T> {
    /// The same, for the page.
    fn for_page(self) -> T;
}

impl<A: IntoText> ForPage<Text> for A {
    fn for_page(self) -> Text {
        self.into_text()
    }
}

impl ForPage<bool> for bool {
    fn for_page(self) -> bool {
        self
    }
}

impl ForPage<JsValue> for bool {
    fn for_page(self) -> JsValue {
        self.into()
    }
}

impl ForPage<JsValue> for String {
    fn for_page(self) -> JsValue {
        self.into()
    }
}

impl ForPage<JsValue> for &'static str {
    fn for_page(self) -> JsValue {
        self.into()
    }
}

impl<T, A: ForPage<T>> Given<T, AsValue> for A {
    fn given(self) -> Worth<T> {
        Worth::Fixed(self.for_page())
    }
}

impl<T, A: ForPage<T>, F: FnMut() -> A + 'static> Given<T, AsClosure<A>> for F {
    fn given(mut self) -> Worth<T> {
        Worth::Live(Box::new(move || self().for_page()))
    }
}

impl<T, A: ForPage<T> + Clone + Send + Sync + 'static> Given<T, AsSignal<A>> for Signal<A> {
    fn given(self) -> Worth<T> {
        Worth::Live(Box::new(move || self.get().for_page()))
    }
}

impl<T, A: ForPage<T> + Clone + Send + Sync + 'static> Given<T, AsMemo<A>> for Memo<A> {
    fn given(self) -> Worth<T> {
        Worth::Live(Box::new(move || self.get().for_page()))
    }
}

impl Tag {
    /// An element without anything; `in_svg` where it belongs to a drawing.
    #[inline(never)]
    pub fn new(name: &'static str, in_svg: bool) -> Self {
        Self(SendWrapper::new(Box::new(Made {
            name,
            in_svg,
            parts: Vec::new(),
            children: Vec::new(),
        })))
    }

    /// Gives it an attribute.
    pub fn attribute<How>(&mut self, name: &'static str, value: impl Given<Text, How>) {
        fn put(tag: &mut Tag, name: &'static str, value: Worth<Text>) {
            tag.put(match value {
                Worth::Fixed(text) => Part::Attribute(name, text),
                Worth::Live(mut text) => Part::Live(Box::new(move |element| {
                    set_attribute(element, name, text().as_deref())
                })),
            });
        }
        put(self, name, value.given());
    }

    /// Gives it a class while a condition holds.
    pub fn class<How>(&mut self, name: &'static str, holds: impl Given<bool, How>) {
        fn put(tag: &mut Tag, name: &'static str, holds: Worth<bool>) {
            tag.put(match holds {
                Worth::Fixed(holds) => Part::Class(name, holds),
                Worth::Live(mut holds) => {
                    Part::Live(Box::new(move |element| set_class(element, name, holds())))
                }
            });
        }
        put(self, name, holds.given());
    }

    /// Gives it a property of its object in the page, such as `value`.
    pub fn property<How>(&mut self, name: &'static str, value: impl Given<JsValue, How>) {
        fn put(tag: &mut Tag, name: &'static str, value: Worth<JsValue>) {
            tag.put(match value {
                Worth::Fixed(value) => Part::Property(name, value),
                Worth::Live(mut value) => Part::Live(Box::new(move |element| {
                    set_property(element, name, &value())
                })),
            });
        }
        put(self, name, value.given());
    }

    /// Calls a closure at an event.
    pub fn on<E>(&mut self, event: E, mut call: impl FnMut(E::EventType) + 'static)
    where
        E: EventDescriptor,
        E::EventType: JsCast,
    {
        self.listen(
            event.name(),
            Box::new(move |event| call(event.unchecked_into())),
        );
    }

    /// Calls a closure at an event, with the element known as what it is.
    pub fn on_target<E, K>(
        &mut self,
        event: E,
        mut call: impl FnMut(Targeted<E::EventType, K::Output>) + 'static,
    ) where
        E: EventDescriptor,
        E::EventType: JsCast,
        K: ElementType,
    {
        self.on(event, move |event| {
            call(Targeted::<E::EventType, K::Output>::from(event));
        });
    }

    #[inline(never)]
    fn listen(&mut self, name: Cow<'static, str>, mut call: Handler) {
        let owner = Owner::current().unwrap_or_default();
        let call = Box::new(move |event| owner.with(|| call(event)));
        self.put(Part::On(name, call));
    }

    /// Keeps a reference to the element in the page.
    pub fn keep_ref<K: ElementType>(&mut self, keep: impl NodeRefContainer<K>) {
        self.put(Part::Ref(Box::new(move |element| keep.load(element))));
    }

    /// Appends a text.
    #[inline(never)]
    pub fn text(&mut self, words: &'static str) {
        self.child(text(words));
    }

    /// Appends a view.
    #[inline(never)]
    pub fn child(&mut self, view: AnyView) {
        self.0.children.push(view);
    }

    #[inline(never)]
    fn put(&mut self, part: Part) {
        self.0.parts.push(part);
    }

    /// The element as a view.
    #[inline(never)]
    pub fn done(self) -> AnyView {
        self.into_any()
    }
}

/// A text as a view.
#[inline(never)]
pub fn text(words: &'static str) -> AnyView {
    words.into_any()
}

/// What stands in a block of a view. `Block(Some(it)).shown()` finds what it is: a closure, a signal and a memo are followed
/// ([`follow`]), anything else is shown as it is.
pub struct Block<V>(pub Option<V>);

/// Something that is followed.
pub trait Followed<How> {
    /// The view.
    fn shown(self) -> AnyView;
}

impl<V: IntoAny, F: FnMut() -> V + 'static> Followed<AsClosure<V>> for Block<F> {
    fn shown(self) -> AnyView {
        match self.0 {
            Some(mut draw) => follow(Box::new(move || draw().into_any())),
            None => ().into_any(),
        }
    }
}

impl<T: IntoAny + Clone + Send + Sync + 'static> Followed<AsSignal<T>> for Block<Signal<T>> {
    fn shown(self) -> AnyView {
        match self.0 {
            Some(read) => follow(Box::new(move || read.get().into_any())),
            None => ().into_any(),
        }
    }
}

impl<T: IntoAny + Clone + Send + Sync + 'static> Followed<AsMemo<T>> for Block<Memo<T>> {
    fn shown(self) -> AnyView {
        match self.0 {
            Some(read) => follow(Box::new(move || read.get().into_any())),
            None => ().into_any(),
        }
    }
}

/// Something that stays as it is.
pub trait Still {
    /// The view.
    fn shown(self) -> AnyView;
}

impl<V: IntoAny> Still for &mut Block<V> {
    fn shown(self) -> AnyView {
        match self.0.take() {
            Some(view) => view.into_any(),
            None => ().into_any(),
        }
    }
}

/// Views side by side.
pub fn several(views: Vec<AnyView>) -> AnyView {
    views.into_any()
}

fn set_attribute(element: &Element, name: &str, text: Option<&str>) {
    let _ = match text {
        Some(text) => element.set_attribute(name, text),
        None => element.remove_attribute(name),
    };
}

fn set_class(element: &Element, name: &str, holds: bool) {
    let _ = element.class_list().toggle_with_force(name, holds);
}

fn set_property(element: &Element, name: &str, value: &JsValue) {
    let _ = js_sys::Reflect::set(element, &JsValue::from_str(name), value);
}

/// An element in the page.
pub struct Shown {
    element: Element,
    name: &'static str,
    parts: Vec<ShownPart>,
    children: Vec<AnyViewState>,
}

enum ShownPart {
    Attribute(&'static str, Text),
    Class(&'static str, bool),
    Property(&'static str, JsValue),
    Live { _follows: RenderEffect<()> },
    On(Listener),
    Ref,
}

/// A closure that the page calls at an event until this is dropped.
struct Listener {
    element: Element,
    name: Cow<'static, str>,
    handler: Rc<RefCell<Option<Handler>>>,
    called: Closure<dyn FnMut(Event)>,
}

impl Listener {
    fn new(element: &Element, name: Cow<'static, str>, handler: Handler) -> Self {
        let handler = Rc::new(RefCell::new(Some(handler)));
        let kept = Rc::clone(&handler);
        let called: Handler = Box::new(move |event| {
            // Taken out while it runs: it may draw its own element anew, which puts another in its place.
            let taken = kept.borrow_mut().take();
            if let Some(mut handler) = taken {
                handler(event);
                kept.borrow_mut().get_or_insert(handler);
            }
        });
        let called = Closure::wrap(called);
        let _ = element.add_event_listener_with_callback(&name, called.as_ref().unchecked_ref());
        Self {
            element: element.clone(),
            name,
            handler,
            called,
        }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let _ = self
            .element
            .remove_event_listener_with_callback(&self.name, self.called.as_ref().unchecked_ref());
    }
}

fn show_part(element: &Element, part: Part) -> ShownPart {
    match part {
        Part::Attribute(name, text) => {
            if text.is_some() {
                set_attribute(element, name, text.as_deref());
            }
            ShownPart::Attribute(name, text)
        }
        Part::Class(name, holds) => {
            if holds {
                set_class(element, name, true);
            }
            ShownPart::Class(name, holds)
        }
        Part::Property(name, value) => {
            set_property(element, name, &value);
            ShownPart::Property(name, value)
        }
        Part::Live(mut put) => {
            let element = element.clone();
            ShownPart::Live {
                _follows: {
                    let turns = turns(move || put(&element));
                    RenderEffect::new(move |_| turns.with(|_| ()))
                },
            }
        }
        Part::On(name, handler) => ShownPart::On(Listener::new(element, name, handler)),
        Part::Ref(keep) => {
            keep(element);
            ShownPart::Ref
        }
    }
}

/// Puts a part in the place of the one that was drawn there before.
fn renew_part(element: &Element, shown: &mut ShownPart, part: Part) {
    match (&mut *shown, part) {
        (ShownPart::Attribute(before, old), Part::Attribute(name, text)) if *before == name => {
            if *old != text {
                set_attribute(element, name, text.as_deref());
                *old = text;
            }
        }
        (ShownPart::Class(before, old), Part::Class(name, holds)) if *before == name => {
            if *old != holds {
                set_class(element, name, holds);
                *old = holds;
            }
        }
        (ShownPart::Property(before, old), Part::Property(name, value)) if *before == name => {
            if *old != value {
                set_property(element, name, &value);
                *old = value;
            }
        }
        (ShownPart::On(listener), Part::On(name, handler)) if listener.name == name => {
            *listener.handler.borrow_mut() = Some(handler);
        }
        (_, part) => *shown = show_part(element, part),
    }
}

impl Render for Tag {
    type State = Shown;

    fn build(self) -> Shown {
        let Made {
            name,
            in_svg,
            parts,
            children,
        } = *self.0.take();
        #[expect(
            clippy::expect_used,
            reason = "the page refuses only names with characters that no tag has"
        )]
        let element: Element = if in_svg {
            document().create_element_ns(Some("http://www.w3.org/2000/svg"), name)
        } else {
            document().create_element(name)
        }
        .expect("a tag's name");
        // Children first: a list shows its value only once it has its options.
        let children = children
            .into_iter()
            .map(|child| {
                let mut child = child.build();
                child.mount(&element, None);
                child
            })
            .collect();
        let parts = parts
            .into_iter()
            .map(|part| show_part(&element, part))
            .collect();
        Shown {
            element,
            name,
            parts,
            children,
        }
    }

    fn rebuild(self, shown: &mut Shown) {
        let made = &self.0;
        let same_kinds = made
            .parts
            .iter()
            .zip(&shown.parts)
            .all(|(new, old)| match (new, old) {
                (Part::Attribute(new, _), ShownPart::Attribute(old, _))
                | (Part::Class(new, _), ShownPart::Class(old, _))
                | (Part::Property(new, _), ShownPart::Property(old, _)) => new == old,
                (Part::On(new, _), ShownPart::On(old)) => *new == old.name,
                (Part::Live(_), ShownPart::Live { .. }) | (Part::Ref(_), ShownPart::Ref) => true,
                _ => false,
            });
        if !(same_kinds
            && made.name == shown.name
            && made.parts.len() == shown.parts.len()
            && made.children.len() == shown.children.len())
        {
            let mut new = self.build();
            shown.insert_before_this(&mut new);
            shown.unmount();
            *shown = new;
            return;
        }
        let Made {
            parts, children, ..
        } = *self.0.take();
        for (child, shown) in children.into_iter().zip(&mut shown.children) {
            child.rebuild(shown);
        }
        for (part, old) in parts.into_iter().zip(&mut shown.parts) {
            renew_part(&shown.element, old, part);
        }
    }
}

impl Mountable for Shown {
    fn unmount(&mut self) {
        self.element.remove();
    }

    fn mount(&mut self, parent: &Element, marker: Option<&Node>) {
        let _ = parent.insert_before(&self.element, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        let Some(parent) = self.element.parent_element() else {
            return false;
        };
        child.mount(&parent, Some(&self.element));
        true
    }

    fn elements(&self) -> Vec<Element> {
        vec![self.element.clone()]
    }
}

/// Views are drawn in the browser alone: nothing is written out as text or taken over from a text.
impl RenderHtml for Tag {
    type AsyncOutput = Self;
    type Owned = Self;

    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Self {
        self
    }

    fn to_html_with_buf(
        self,
        _: &mut String,
        _: &mut Position,
        _: bool,
        _: bool,
        _: Vec<AnyAttribute>,
    ) {
    }

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Shown {
        self.build()
    }

    fn into_owned(self) -> Self {
        self
    }
}

/// Every attribute is given in the view itself; none is added from outside.
impl AddAnyAttr for Tag {
    type Output<A: FrameworkAttribute> = Self;

    fn add_any_attr<A: FrameworkAttribute>(self, _: A) -> Self {
        self
    }
}

/// A row's key, by which it is known again.
pub trait RowKey {
    /// The key as a text.
    fn row_key(&self) -> String;
}

impl RowKey for u32 {
    fn row_key(&self) -> String {
        self.to_string()
    }
}

impl RowKey for usize {
    fn row_key(&self) -> String {
        self.to_string()
    }
}

impl RowKey for String {
    fn row_key(&self) -> String {
        self.clone()
    }
}

impl<A: RowKey, B: RowKey> RowKey for (A, B) {
    fn row_key(&self) -> String {
        format!("{}\u{1f}{}", self.0.row_key(), self.1.row_key())
    }
}

impl<A: RowKey, B: RowKey, C: RowKey> RowKey for (A, B, C) {
    fn row_key(&self) -> String {
        let (a, b, c) = self;
        format!("{}\u{1f}{}\u{1f}{}", a.row_key(), b.row_key(), c.row_key())
    }
}

struct Row {
    key: String,
    draw: Box<dyn FnOnce() -> AnyView + Send>,
}

/// Rows, each drawn once for its key and kept while the key stays.
#[leptos::component]
pub fn For<E, T, K, C, R>(
    /// What the rows stand for.
    each: E,
    /// What a row is known by.
    key: K,
    /// Draws a row.
    children: C,
) -> impl leptos::IntoView
where
    E: Fn() -> Vec<T> + Send + Sync + 'static,
    T: Send + 'static,
    K: Fn(&T) -> R + Send + Sync + 'static,
    C: Fn(T) -> AnyView + Send + Sync + 'static,
    R: RowKey + 'static,
{
    fn boxed(each: Box<dyn Fn() -> Vec<Row> + Send + Sync>) -> AnyView {
        let rows = Rc::new(RefCell::new(Vec::new()));
        let here = SendWrapper::new(Rc::clone(&rows));
        let turns = turns(move || {
            *rows.borrow_mut() = each();
        });
        let each = move || {
            turns.with(|_| ());
            std::mem::take(&mut *here.borrow_mut())
        };
        let props = leptos::prelude::ForProps::builder()
            .each(each)
            .key(|row: &Row| row.key.clone())
            .children(|row: Row| (row.draw)())
            .build();
        leptos::prelude::For(props).into_any()
    }
    let children = Arc::new(children);
    boxed(Box::new(move || {
        let row = |of: T| {
            let key = key(&of).row_key();
            let children = Arc::clone(&children);
            Row {
                key,
                draw: Box::new(move || children(of)),
            }
        };
        each().into_iter().map(row).collect()
    }))
}
