//! Words.

words! {
    stage => "pour" | "pour";
}
