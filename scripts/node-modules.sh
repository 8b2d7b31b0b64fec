#!/usr/bin/env bash
# Prints the folder that holds wasm-opt (npm binaryen); axe-core comes with it. Installs both if package-lock.json changed.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
stamp=node_modules/.lock
if ! cmp -s package-lock.json "$stamp"; then
  command -v npm >/dev/null || stop "needs npm (Node 20 or later): install it and try again"
  say "npm ci"
  npm ci --ignore-scripts --no-audit --no-fund --loglevel=error >&2 </dev/null || stop "npm ci failed"
  cp package-lock.json "$stamp"
fi
printf '%s\n' "$PWD/node_modules/.bin"
