#!/usr/bin/env bash
# Runs a command with everything that a build for the browser needs: the wasm target, Trunk, wasm-bindgen, wasm-opt.
#   scripts/with-wasm.sh trunk build --release
set -euo pipefail
source "$(dirname "$0")/lib.sh"
toolchain=$(scripts/wasm-toolchain.sh); eval "$toolchain"
modules=$(scripts/node-modules.sh)
bindgen=$(scripts/wasm-bindgen.sh)
trunk=$(scripts/trunk.sh)
export PATH="$trunk:$bindgen:$modules:$PATH"
exec env -u NO_COLOR "$@" # Trunk takes NO_COLOR=1 for a bad argument and stops
