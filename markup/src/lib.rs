//! `view!`: the framework's grammar for views, written out as calls of `crate::markup::Tag`.
//!
//! The framework's own macro makes a type of its own for every element with its attributes and children, and with it
//! code to build, compare and drop that type. Here all elements are one type, an attribute is a call with two
//! arguments, and a page is a third of the size.
//!
//! What is known: elements, components with `let:name`, texts, blocks, fragments; `name=value`, a name alone for `true`,
//! `class:name=`, `prop:name=`, `on:event=`, `on:event:target=`, `node_ref=`. Anything else is refused.

use proc_macro2::{Ident, Span, TokenStream};
use quote::{format_ident, quote, quote_spanned};
use rstml::node::{KeyedAttribute, KeyedAttributeValue, Node, NodeAttribute, NodeBlock, NodeName};
use syn::spanned::Spanned;
use syn::{Error, Expr, Result, Stmt};

type Element = rstml::node::NodeElement<rstml::Infallible>;

/// Writes a view out as calls; the result is an `AnyView`.
#[proc_macro]
pub fn view(tokens: proc_macro::TokenStream) -> proc_macro::TokenStream {
    let written = match rstml::parse(tokens) {
        Ok(nodes) => all(&nodes, false),
        Err(error) => Err(error),
    };
    written
        .unwrap_or_else(|error| error.to_compile_error())
        .into()
}

/// Several nodes side by side as one view.
fn all(nodes: &[Node], in_svg: bool) -> Result<TokenStream> {
    let nodes: Vec<&Node> = nodes.iter().filter(|node| is_shown(node)).collect();
    if let [node] = nodes.as_slice() {
        return one(node, in_svg);
    }
    let views = nodes
        .iter()
        .map(|node| one(node, in_svg))
        .collect::<Result<Vec<_>>>()?;
    Ok(quote! { crate::markup::several(::std::vec![#(#views),*]) })
}

fn is_shown(node: &Node) -> bool {
    !matches!(node, Node::Comment(_) | Node::Doctype(_))
}

/// One node as a view.
fn one(node: &Node, in_svg: bool) -> Result<TokenStream> {
    match node {
        Node::Element(element) if is_component(element.name()) => component(element, in_svg),
        Node::Element(element) => tag(element, in_svg),
        Node::Text(text) => {
            let text = &text.value;
            Ok(quote! { crate::markup::text(#text) })
        }
        Node::Block(block) => Ok(match expression_in(block) {
            Some(expression) => shown(&quote! { #expression }),
            None => shown(&quote! { #block }),
        }),
        Node::Fragment(fragment) => all(&fragment.children, in_svg),
        other => Err(Error::new(other.span(), "not known in a view")),
    }
}

/// What a block holds, followed where it can be.
fn shown(held: &TokenStream) -> TokenStream {
    quote! {{
        use crate::markup::{Followed as _, Still as _};
        crate::markup::Block(::core::option::Option::Some(#held)).shown()
    }}
}

/// The expression that a block holds and nothing else.
fn expression_in(block: &NodeBlock) -> Option<&Expr> {
    let NodeBlock::ValidBlock(block) = block else {
        return None;
    };
    match block.stmts.as_slice() {
        [Stmt::Expr(expression, None)] => Some(expression),
        _ => None,
    }
}

fn is_component(name: &NodeName) -> bool {
    match name {
        NodeName::Path(path) => path.path.segments.last().is_some_and(|last| {
            last.ident
                .to_string()
                .starts_with(|first: char| first.is_uppercase())
        }),
        _ => false,
    }
}

/// An element: a tag, what it has, and its children.
fn tag(element: &Element, in_svg: bool) -> Result<TokenStream> {
    let name = element.name().to_string();
    let in_svg = in_svg || is_svg(&name);
    // A name of the macro's own: what stands in the view can't mean it.
    let this = Ident::new("tag", Span::mixed_site());
    let mut steps = Vec::new();
    for attribute in element.attributes() {
        let part = part(attribute, &name)?;
        steps.push(quote! { #this #part; });
    }
    for node in element.children.iter().filter(|node| is_shown(node)) {
        steps.push(match node {
            Node::Text(text) => {
                let text = &text.value;
                quote! { #this.text(#text); }
            }
            node => {
                let child = one(node, in_svg)?;
                quote! { #this.child(#child); }
            }
        });
    }
    Ok(quote! {{
        let mut #this = crate::markup::Tag::new(#name, #in_svg);
        #(#steps)*
        #this.done()
    }})
}

/// The call that gives a tag one of its attributes.
fn part(attribute: &NodeAttribute, tag: &str) -> Result<TokenStream> {
    let NodeAttribute::Attribute(attribute) = attribute else {
        return Err(Error::new(attribute.span(), "an attribute needs a name"));
    };
    let key = attribute.key.to_string();
    let value = match (&attribute.possible_value, attribute.value()) {
        (_, Some(value)) => quote! { #value },
        (KeyedAttributeValue::None, _) => quote! { true },
        _ => return Err(Error::new(attribute.span(), "not known on an element")),
    };
    Ok(match key.split(':').collect::<Vec<_>>().as_slice() {
        ["node_ref"] => {
            let kind = element_type(tag);
            quote! { .keep_ref::<#kind>(#value) }
        }
        [name] => quote! { .attribute(#name, #value) },
        ["class", name] => quote! { .class(#name, #value) },
        ["prop", name] => quote! { .property(#name, #value) },
        ["on", event] => {
            let event = format_ident!("{event}");
            quote! { .on(::leptos::ev::#event, #value) }
        }
        ["on", event, "target"] => {
            let (event, kind) = (format_ident!("{event}"), element_type(tag));
            quote! { .on_target::<_, #kind>(::leptos::ev::#event, #value) }
        }
        _ => return Err(Error::new(attribute.span(), "not known on an element")),
    })
}

/// The framework's type for an element: `input` is `Input`.
fn element_type(tag: &str) -> TokenStream {
    let mut letters = tag.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    let name: String = first.into_iter().chain(letters).collect();
    let name = format_ident!("{name}");
    if is_svg(tag) {
        quote! { ::leptos::svg::#name }
    } else {
        quote! { ::leptos::html::#name }
    }
}

/// A component: its properties and its children.
fn component(element: &Element, in_svg: bool) -> Result<TokenStream> {
    let name = element.name();
    let mut properties = Vec::new();
    let mut bound = Vec::new();
    for attribute in element.attributes() {
        let NodeAttribute::Attribute(attribute) = attribute else {
            return Err(Error::new(attribute.span(), "a property needs a name"));
        };
        match binding(attribute) {
            Some(name) => bound.push(name),
            None => properties.push(property(attribute)?),
        }
    }
    let children = if element.children.iter().any(is_shown) {
        let view = all(&element.children, in_svg)?;
        if bound.is_empty() {
            quote! { .children(::leptos::children::ToChildren::to_children(move || #view)) }
        } else {
            quote! { .children(move |#(#bound),*| #view) }
        }
    } else {
        TokenStream::new()
    };
    let builder =
        quote_spanned! { name.span()=> ::leptos::component::component_props_builder(&#name) };
    Ok(quote! {
        ::leptos::prelude::IntoAny::into_any(::leptos::component::component_view(
            #name,
            #builder #(#properties)* #children .build(),
        ))
    })
}

/// The name that `let:name` binds.
fn binding(attribute: &KeyedAttribute) -> Option<Ident> {
    let key = attribute.key.to_string();
    let name = key.strip_prefix("let:")?;
    let span = match &attribute.key {
        NodeName::Punctuated(parts) => parts.last().map(Spanned::span),
        _ => None,
    };
    Some(Ident::new(name, span.unwrap_or_else(Span::call_site)))
}

fn property(attribute: &KeyedAttribute) -> Result<TokenStream> {
    let NodeName::Path(path) = &attribute.key else {
        return Err(Error::new(attribute.span(), "not known on a component"));
    };
    let name = path
        .path
        .get_ident()
        .ok_or_else(|| Error::new(attribute.span(), "a property is one word"))?;
    let value = match attribute.value() {
        Some(value) => quote! { #value },
        None => quote! { #name },
    };
    Ok(quote! { .#name(#value) })
}

/// True for elements of a drawing; a name that is also one of a page (`a`, `title`) belongs to a drawing only within one.
fn is_svg(name: &str) -> bool {
    matches!(
        name,
        "svg"
            | "g"
            | "defs"
            | "pattern"
            | "marker"
            | "clipPath"
            | "use"
            | "symbol"
            | "path"
            | "line"
            | "rect"
            | "circle"
            | "ellipse"
            | "polyline"
            | "polygon"
            | "text"
            | "tspan"
            | "desc"
            | "mask"
    )
}
