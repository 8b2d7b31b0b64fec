#!/usr/bin/env bash
# Makes sure of Chromium and its driver for the browser tests; prints the two exports that the tests read.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
find_one() { local name; for name in "$@"; do command -v "$name" && return 0; done; return 1; }
if [ -z "${CHROMEDRIVER:-}" ] && ! find_one chromedriver >/dev/null || [ -z "${CHROMIUM:-}" ] && ! find_one chromium >/dev/null; then
  debian_packages chromium chromium-driver
fi
chromium=${CHROMIUM:-$(find_one chromium)} || stop "no chromium: install it, or set CHROMIUM to the program"
driver=${CHROMEDRIVER:-$(find_one chromedriver)} || stop "no chromedriver: install it, or set CHROMEDRIVER to the program"
printf 'export CHROMIUM=%q CHROMEDRIVER=%q\n' "$chromium" "$driver"
