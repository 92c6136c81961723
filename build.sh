#!/usr/bin/env bash
# The one way to build, try, test, measure and check Remount. Needs Rust by rustup, node and npm.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")"

wasm=wasm32-unknown-unknown
node_tools=crates/packer/node
lint_tools=tests/lint
built_from=target/packer/built-from

usage() {
  cat <<END
usage: ./build.sh          builds everything into dist/ and says what to open; with REMOUNT_URL=https://… the links of the
                           page that is opened as a file lead there
       ./build.sh serve    serves dist/site on this machine and prints the address
       ./build.sh test     runs every test, in Rust and in a browser, and random inputs for a minute
       ./build.sh bench    measures speed and prints a table
       ./build.sh sizes    says what each part of the program costs in the page
       ./build.sh fuzz [MINUTES]
                           gives module and page random inputs, for a minute or so many, half of the time each;
                           FUZZ_SEED=17 repeats what that seed gave
       ./build.sh mutants [FOLDER] [OPTION...]
                           changes gear-math, or one folder of it, in one place at a time and lists what no test notices;
                           takes hours: --shard 0/20 tries a twentieth, --list only counts (options of cargo mutants)
       ./build.sh check    format, lints, types and documentation of everything, warnings as errors
       ./build.sh format   puts Rust, scripts and styles into their usual form
END
}

fail() {
  echo "build.sh: $*" >&2
  exit 1
}

# rust-toolchain.toml asks for stable. Where rustup neither has it nor may fetch it, its default must do.
choose_toolchain() {
  command -v cargo >/dev/null || fail "cargo is missing: install Rust with rustup first"
  cargo --version >/dev/null 2>&1 && return
  local default
  default=$(rustup default) || fail "rustup has no toolchain: run 'rustup toolchain install stable'"
  export RUSTUP_TOOLCHAIN=${default%% *}
  echo "The stable toolchain is not installed: building with $RUSTUP_TOOLCHAIN"
}

add_wasm_target() {
  [ -d "$(rustc --print sysroot)/lib/rustlib/$wasm" ] && return
  rustup target add "$wasm" || fail "cannot add the target $wasm: install it the way Rust was installed here"
}

install_npm() { # FOLDER
  [ "$1/node_modules/.package-lock.json" -nt "$1/package-lock.json" ] && return
  command -v npm >/dev/null && (cd "$1" && npm ci --no-progress)
}

# Panics name source files: without this the page would carry the paths of the machine that built it.
# The standard library's become those it was itself compiled with, which rustc writes where it has no sources of it.
shorten_paths() {
  cargo fetch --quiet --target "$wasm"
  local std commit crates
  std=$(rustc --print sysroot)/lib/rustlib/src/rust
  commit=$(rustc --version --verbose | sed -n 's/^commit-hash: //p')
  local flags
  read -ra flags <<<"${RUSTFLAGS:-}"
  flags+=("--remap-path-prefix=$std=/rustc/$commit")
  for crates in "${CARGO_HOME:-$HOME/.cargo}"/registry/src/*; do
    flags+=("--remap-path-prefix=$crates=deps")
  done
  rustflags=$(IFS=$'\x1f' && echo "${flags[*]}")
}

# Loops rewritten to spare additions pack worse and gain nothing: without that pass the page is 2 kB smaller.
compile_explorer() { # FEATURE TARGET_FOLDER
  CARGO_ENCODED_RUSTFLAGS=$rustflags$'\x1f'-Cllvm-args=-disable-lsr cargo build --release --target "$wasm" --package explorer \
    --no-default-features --features "$1" --target-dir "$2"
}

# Before minutes are spent: packer looks at the rest of it.
check_address() {
  case ${REMOUNT_URL:-https://} in
    http://* | https://*) ;;
    *) fail "REMOUNT_URL is '$REMOUNT_URL': give the whole address of the hosted page, with https:// or http://" ;;
  esac
}

build() {
  check_address
  add_wasm_target
  install_npm "$node_tools" ||
    fail "npm could not install the build's tools: install node 20 or later and npm, and connect to a network once"
  shorten_paths
  # Two folders: cargo would recompile the explorer each time its features change in one. Side by side, and what packs
  # them too, since the last crate, which takes longest, keeps only one core busy.
  local api packer
  compile_explorer api target/api &
  api=$!
  cargo build --quiet --package packer &
  packer=$!
  compile_explorer page target
  wait "$api"
  wait "$packer"
  CARGO_ENCODED_RUSTFLAGS=$rustflags cargo build --release --target "$wasm" --package unpacker
  cargo run --quiet --package packer -- target/"$wasm"/release/{explorer,unpacker}.wasm target/api/"$wasm"/release/explorer.wasm
  sources >"$built_from"
}

# All that the products are made of, as one line. Times would say nothing after a checkout.
sources() {
  find Cargo.toml Cargo.lock build.sh rust-toolchain.toml crates www -name node_modules -prune -o -type f -print0 |
    LC_ALL=C sort -z | xargs -0 sha256sum | cat - <(echo "${REMOUNT_URL:-}") | sha256sum
}

is_built() {
  [ -e dist/remount.html ] && [ -e dist/api/remount.js ] && [ "$(sources)" = "$(cat "$built_from" 2>&1)" ]
}

build_if_older() {
  is_built || build
}

build_all() {
  build
  cat <<END

Open dist/remount.html in a browser: it is the whole page in one file.
dist/site/ is the same page for any web server (./build.sh serve); dist/api/ is the JavaScript module.
END
}

serve() {
  build_if_older
  install_npm "$node_tools" || fail "npm could not install the server"
  exec node "$node_tools/serve.mjs" dist/site
}

# Puts the path of the first of these programs that there is into VARIABLE, unless it names one already.
find_program() { # VARIABLE NAME...
  [ -n "${!1:-}" ] && return
  local name path
  for name in "${@:2}"; do
    if path=$(command -v "$name"); then
      export "$1=$path"
      return
    fi
  done
  return 1
}

install_from_debian() { # PACKAGE
  echo "No $1 found: installing Debian's"
  local as_root=
  [ "$(id -u)" -eq 0 ] || as_root=sudo
  $as_root apt-get update && DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y "$1"
}

find_chromium() {
  find_program CHROMIUM chromium chromium-browser google-chrome
}

find_firefox() {
  find_program FIREFOX firefox-esr firefox
}

prepare_browser() {
  build_if_older
  install_npm tests/browser || fail "npm could not install the browser tests' tools"
  find_chromium || { install_from_debian chromium && find_chromium; } ||
    fail "cannot install Chromium: install it by hand, or name one with CHROMIUM=/path/to/it"
}

# A second engine is a check more: where it cannot be had, its tests are skipped and say so.
prepare_second_browser() {
  find_firefox || { install_from_debian firefox-esr && find_firefox; } ||
    echo "Firefox cannot be installed: its tests are skipped"
}

# The packer by itself, as it was built: beside the others cargo would compile all that it rests on once more, for one feature.
run_tests() {
  local status=0
  cargo test --workspace --exclude packer --no-fail-fast || status=1
  cargo test --package packer || status=1
  node tests/browser/run.mjs || status=1
  FUZZ_SEED=${FUZZ_SEED:-17} node tests/fuzz/fuzz.mjs 1 || status=1
  return $status
}

# Adds up what cargo and node say at the end of each of their runs.
sum_up() {
  awk '/^test result: / { passed += $4; failed += $6 }
       /^ℹ pass /       { passed += $3 }
       /^ℹ (fail|cancelled) / { failed += $3 }
       END { printf "\n%d passed, %d failed\n", passed, failed }' "$1"
}

run_all_tests() {
  prepare_browser
  prepare_second_browser
  local log=target/test.log status=0
  run_tests 2>&1 | tee "$log" || status=1
  sum_up "$log"
  return $status
}

bench() {
  prepare_browser
  install_npm tests/bench || fail "npm could not install the chart libraries to compare with"
  cargo build --release --package speed-bench
  cargo build --release --package speed-bench --lib --target "$wasm"
  node tests/bench/bench.mjs
}

sizes() {
  build_if_older
  cargo run --quiet --package packer -- shares
}

fuzz() { # [MINUTES]
  prepare_browser
  node tests/fuzz/fuzz.mjs "$@"
}

check_rust() {
  add_wasm_target
  cargo fmt --all --check
  cargo clippy --workspace --all-targets -- -D warnings
  local feature
  for feature in page api; do
    cargo clippy --target "$wasm" --package gear-math --package explorer --no-default-features \
      --features "explorer/$feature" -- -D warnings
  done
  cargo clippy --target "$wasm" --package unpacker -- -D warnings
  RUSTDOCFLAGS="-D warnings" cargo doc --workspace --no-deps
  cargo package --package gear-math --allow-dirty --quiet
  check_oldest
}

# The library with the oldest Rust that it names.
check_oldest() {
  local oldest
  oldest=$(sed -n 's/^rust-version = "\(.*\)"/\1/p' Cargo.toml)
  case $(rustc --version) in "rustc $oldest".*) return ;; esac
  rustup run --install "$oldest" cargo check --package gear-math --all-features --target-dir target/oldest
}

prepare_lint() {
  install_npm "$lint_tools" || fail "npm could not install the linter of scripts and styles"
}

# The types are those of the engine's bindings, which the build makes.
check_web() {
  prepare_lint
  "$lint_tools"/node_modules/.bin/biome check --error-on-warnings
  build_if_older
  "$lint_tools"/node_modules/.bin/tsc --project www
  "$lint_tools"/node_modules/.bin/tsc --project "$lint_tools/consumer"
}

check_shell() {
  command -v shellcheck >/dev/null || install_from_debian shellcheck || fail "cannot install shellcheck: install it by hand"
  shellcheck build.sh .ci/run
}

check() {
  check_shell
  check_rust
  check_web
}

format() {
  prepare_lint
  cargo fmt --all
  "$lint_tools"/node_modules/.bin/biome check --fix
}

install_mutation_tester() {
  local version=27.1.0
  [ "$(cargo mutants --version 2>/dev/null)" = "cargo-mutants $version" ] ||
    cargo install --locked "cargo-mutants@$version" || fail "cargo could not install cargo-mutants: connect to a network once"
}

# Fewer random cases and no shrinking: a change that a few dozen cases do not show is looked at by hand.
try_mutants() { # [FOLDER] [OPTION...]
  install_mutation_tester
  local folder=
  case ${1:-} in [!-]*) folder=$1/ && shift ;; esac
  [ -d "crates/gear-math/src/$folder" ] || fail "gear-math has no folder '$folder'"
  mkdir -p target
  PROPTEST_CASES=32 PROPTEST_MAX_SHRINK_ITERS=0 PROPTEST_DISABLE_FAILURE_PERSISTENCE=true \
    cargo mutants --package gear-math --file "crates/gear-math/src/$folder**/*.rs" --output target "$@"
}

main() {
  local arguments=()
  case "$*" in
    '') task=build_all ;;
    serve) task=serve ;;
    test) task=run_all_tests ;;
    bench) task=bench ;;
    sizes) task=sizes ;;
    fuzz | 'fuzz '*)
      task=fuzz
      arguments=("${@:2}")
      ;;
    check) task=check ;;
    mutants | 'mutants '*)
      task=try_mutants
      arguments=("${@:2}")
      ;;
    format) task=format ;;
    -h | --help | help)
      usage
      exit
      ;;
    *)
      echo "build.sh: there is no command '$*'" >&2
      usage >&2
      exit 2
      ;;
  esac
  choose_toolchain
  "$task" "${arguments[@]}"
}

main "$@"
