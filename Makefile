# Every target installs what it needs: rustup, Node 20 and a C compiler are enough to begin with.
#
#   make serve   the built app on http://127.0.0.1:8080 (HOST=, PORT=), as a static host would serve it
#   make dev     the same address, rebuilt at every save
#   make build   dist/, ready for any static host (PUBLIC_URL=/name/ for one below a path)
#   make test    everything that must hold: format, lints, arithmetic, sourced cases, real-browser journeys
#   make bench   the budgets, measured: prints, does not judge
#   make size    what a first visit downloads; last line: total brotli N bytes
#   make lint    clippy, for this machine and for the browser
#   make fmt     rewrites the Rust sources in the one format

HOST ?= 127.0.0.1
PORT ?= 8080
PUBLIC_URL ?=

export PATH := $(PATH):$(HOME)/.cargo/bin

TRUNK_BUILD := scripts/with-wasm.sh trunk build --release --offline --skip-version-check --locked
# What dist/ is made of. Folders too: their times change when a file in them goes.
SOURCES := $(shell find app calc offline style index.html Trunk.toml Cargo.toml Cargo.lock package-lock.json 2>/dev/null)

.PHONY: serve dev build test bench size lint fmt check-fmt test-calc test-cases test-houses test-app test-wasm test-browser lint-host lint-wasm
.DEFAULT_GOAL := build

serve: build
	@cargo run --locked --package tests --bin serve -- --host $(HOST) --port $(PORT)

dev:
	scripts/with-wasm.sh trunk serve --offline --skip-version-check --dist target/dev-dist --address $(HOST) --port $(PORT)

ifeq ($(PUBLIC_URL),)
build: dist/index.html
else
build: # always anew, and left marked as old: the next plain build must not take it for its own
	$(TRUNK_BUILD) --public-url $(PUBLIC_URL)
	@touch -d @0 dist/index.html
endif

dist/index.html: $(SOURCES)
	$(TRUNK_BUILD)
	@touch $@

# Quick first: what fails most often should fail soonest.
test: check-fmt test-calc lint-host test-cases test-houses test-app lint-wasm test-wasm build test-browser size

check-fmt:
	@scripts/rust-components.sh
	cargo fmt --all --check

test-calc:
	cargo test --locked --package calc --package offline

lint: lint-host lint-wasm

lint-host:
	@scripts/rust-components.sh
	cargo clippy --locked --workspace --all-targets -- -D warnings

lint-wasm: # what stands behind cfg(target_arch = "wasm32") is seen only here; unit tests run on the host
	scripts/with-wasm.sh cargo clippy --locked --package app --target wasm32-unknown-unknown --lib --bins $(if $(wildcard app/tests/*.rs),--test '*') -- -D warnings

test-cases:
	cargo test --locked --package tests --lib --test cases

test-houses: # the opened box against simulated houses
	cargo test --locked --package tests --test houses

test-app: # what of the app needs no browser
	cargo test --locked --package app --lib

test-browser: build
	@scripts/node-modules.sh >/dev/null
	eval "$$(scripts/browser.sh)" && cargo test --locked --package tests --test journeys

test-wasm:
	scripts/wasm-test.sh

bench: build
	scripts/bench.sh

size: build
	@cargo run --quiet --locked --package offline -- sizes dist

fmt:
	@scripts/rust-components.sh
	cargo fmt --all
