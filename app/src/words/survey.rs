//! Words.

words! {
    stage => "survey" | "survey";
}
