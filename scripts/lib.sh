# Sourced by the scripts beside it: where tools are kept, how to say something, how to get a Debian package.
cd "$(dirname "${BASH_SOURCE[0]}")/.."
tools="${XDG_CACHE_HOME:-$HOME/.cache}/roomwright"
export PATH="$PATH:${CARGO_HOME:-$HOME/.cargo}/bin"

say() { printf '%s: %s\n' "$(basename "$0" .sh)" "$*" >&2; }
stop() { say "$@"; exit 1; }

# One installation at a time per tool: a second make waits, then finds the tool there.
lock() { mkdir -p "$tools"; exec 9>"$tools/$1.lock"; flock 9; }

debian_packages() {
  command -v apt-get >/dev/null || stop "needs $*: install it and try again (no apt-get here)"
  local root=(); [ "$(id -u)" = 0 ] || root=(sudo)
  say "installing $*"
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get update -qq >&2 </dev/null
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >&2 </dev/null \
    || stop "could not install $*"
}

# cargo_tool CRATE VERSION BINARY [cargo install arguments]: prints the folder that holds the binary. The dev profile
# without debug information compiles in under half the time, and costs nothing that is felt in use.
cargo_tool() {
  local crate=$1 version=$2 binary=$3; shift 3
  local root="$tools/${crate%-cli}-$version"
  if [ ! -x "$root/bin/$binary" ]; then
    lock "$crate"
    if [ ! -x "$root/bin/$binary" ]; then
      command -v cargo >/dev/null || stop "needs Rust: install it with rustup and try again"
      say "compiling $crate $version, once, into $root"
      env -u CARGO_TARGET_DIR CARGO_PROFILE_DEV_DEBUG=0 cargo install "$crate" --version "$version" --profile dev --root "$root" "$@" >&2 </dev/null \
        || stop "could not install $crate $version"
    fi
  fi
  printf '%s\n' "$root/bin"
}
