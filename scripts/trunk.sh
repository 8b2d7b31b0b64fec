#!/usr/bin/env bash
# Prints the folder that holds Trunk, which turns index.html and app/ into dist/. Installs it first if it isn't there.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
version=$(sed -n 's/^trunk-version *= *"=\{0,1\}\(.*\)"/\1/p' Trunk.toml)
cargo_tool trunk "$version" trunk --locked
