#!/usr/bin/env bash
set -euo pipefail
target=wasm32-unknown-unknown; name=debian-wasm
log() { printf 'wasm-toolchain: %s\n' "$*" >&2; }
works() { # links a std program with LTO: catches a missing target, a stale std, a std without bitcode, no linker
  local d r=0; d=$(mktemp -d); echo 'fn main() { println!("{}", std::env::args().count()); }' > "$d/a.rs"
  rustc ${1:+"+$1"} --edition 2021 --target "$target" -Copt-level=1 -Clto=fat -Cpanic=abort "$d/a.rs" -o "$d/a.wasm" >/dev/null 2>&1 || r=1
  rm -rf "$d"; return $r
}
if works; then exit 0; fi
if works "$name"; then echo "export RUSTUP_TOOLCHAIN=$name"; exit 0; fi
log "rustup target add $target"
if RUST_BACKTRACE=0 timeout 120 rustup target add "$target" >&2 && works; then exit 0; fi
log "rustup has no $target here: using Debian's rustc"
sudo=; [ "$(id -u)" = 0 ] || sudo=sudo
export DEBIAN_FRONTEND=noninteractive
$sudo apt-get update -qq
$sudo apt-get install -y -qq --no-install-recommends rustc-web cargo-web rust-web-src rust-web-llvm rust-web-clippy >&2
$sudo apt-get install -y -qq --no-install-recommends "$(basename "$(readlink /usr/bin/rust-lld)")" >&2   # lld-NN, as that rustc wants
d=$(mktemp -d); mkdir "$d/src"; echo '#![no_std]' > "$d/src/lib.rs"
printf '[package]\nname = "mkstd"\nversion = "0.0.0"\nedition = "2021"\n[workspace]\n[profile.release]\ncodegen-units = 1\n' > "$d/Cargo.toml"
( cd "$d" && unset RUSTUP_TOOLCHAIN && PATH=/usr/bin:$PATH RUSTC=/usr/bin/rustc RUSTC_BOOTSTRAP=1 RUSTFLAGS=-Cembed-bitcode=yes CARGO_TARGET_DIR="$d/t" \
  /usr/bin/cargo build -q --release --target "$target" -Zbuild-std=std,panic_abort,panic_unwind,test,proc_macro ) >&2
lib=/usr/lib/rustlib/$target/lib
$sudo rm -rf "$lib"; $sudo mkdir -p "$lib"
find "$d/t/$target/release/deps" -name '*.rlib' ! -name 'libmkstd-*' -exec $sudo cp -t "$lib" {} +
rm -rf "$d"; rustup toolchain link "$name" /usr
works "$name" || { log "the Debian toolchain does not link"; exit 1; }
echo "export RUSTUP_TOOLCHAIN=$name"
