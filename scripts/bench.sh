#!/usr/bin/env bash
# Measures the budgets on this machine. Prints; judges nothing.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
python=$(scripts/scipy.sh); [ -z "$python" ] || export ROOMWRIGHT_PYTHON=$python
native=$(cargo run --quiet --locked --profile measure --package tests --bin bench_native | tee /dev/stderr)
ROOMWRIGHT_NATIVE_MS=$(printf '%s\n' "$native" | sed -n 's/.*native ms: //p'); export ROOMWRIGHT_NATIVE_MS
cargo run --quiet --locked --profile measure --package tests --bin bench_diagnosis -- --houses 500 --seed 1
browser=$(scripts/browser.sh); eval "$browser"
cargo run --quiet --locked --package tests --features browser --bin bench_browser
cargo run --quiet --locked --package offline -- sizes dist || true # make size judges
