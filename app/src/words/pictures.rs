//! Words.

words! {}
