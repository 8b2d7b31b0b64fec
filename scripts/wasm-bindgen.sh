#!/usr/bin/env bash
# Prints the folder that holds wasm-bindgen and its test runner, of the very version that Cargo.lock names. Installs it first
# if it isn't there. Not --locked: its own lock file names versions that were withdrawn.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
version=$(awk '/^name = "wasm-bindgen"$/ {getline; gsub(/"/, "", $3); print $3}' Cargo.lock)
cargo_tool wasm-bindgen-cli "$version" wasm-bindgen
