//! Words.

words! {
    stage => "doorways" | "doorways";
}
