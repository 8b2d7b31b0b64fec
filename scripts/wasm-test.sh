#!/usr/bin/env bash
# Runs the app's own browser tests (app/tests/*.rs), if there are any.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
compgen -G 'app/tests/*.rs' >/dev/null || exit 0
browser=$(scripts/browser.sh); eval "$browser"
export CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER=wasm-bindgen-test-runner
exec scripts/with-wasm.sh cargo test --locked --target wasm32-unknown-unknown --package app --test '*'
