#!/usr/bin/env bash
# Makes sure of the formatter and the linter.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
command -v cargo >/dev/null || stop "needs Rust: install it with rustup and try again"
for component in rustfmt clippy; do
  binary=cargo-$component; [ "$component" = rustfmt ] && binary=cargo-fmt
  "$binary" --version >/dev/null 2>&1 || rustup component add "$component" >&2 </dev/null || stop "could not install $component"
done
