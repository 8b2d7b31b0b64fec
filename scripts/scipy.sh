#!/usr/bin/env bash
# Prints a Python that has numpy and scipy, in an environment of its own. Nothing but make bench needs it: where it can't be had,
# says so and prints nothing.
set -euo pipefail
source "$(dirname "$0")/lib.sh"
home="$tools/scipy-1"
if ! "$home/bin/python" -c 'import numpy, scipy' 2>/dev/null; then
  lock scipy
  rm -rf "$home"
  if ! { python3 -m venv "$home" && "$home/bin/pip" install --quiet --disable-pip-version-check numpy scipy; } >&2 </dev/null; then
    say "no numpy and scipy here (Python with venv and pip is needed): no comparison"
    exit 0
  fi
fi
printf '%s\n' "$home/bin/python"
