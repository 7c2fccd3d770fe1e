#!/usr/bin/env bash
# Builds what is measured as it is released, and measures it beside something bare.
source "$(dirname "$0")/needs.sh"
# shellcheck disable=SC2086
packages $build_packages $test_packages
node_modules ui
(cd ui && npm run -s build)
cargo build --release -p carryover -p carryover-cli
(cd tests/bench && CARGO_TARGET_DIR="$root/target" cargo build --release)

# A screen whose pixels lie in a file, and no window manager: nothing else draws.
CARRYOVER_SCREEN=$(mktemp -d)
number=$CARRYOVER_SCREEN/number
Xvfb -displayfd 3 -screen 0 1200x820x24 -nocursor -fbdir "$CARRYOVER_SCREEN" -nolisten tcp 3>"$number" 2>/dev/null &
screen=$!
trap 'kill $screen 2>/dev/null || true; wait $screen 2>/dev/null || true; rm -rf "$CARRYOVER_SCREEN"' EXIT
for _ in $(seq 200); do [ -s "$number" ] && break; kill -0 $screen || exit 1; sleep 0.05; done
export CARRYOVER_SCREEN DISPLAY=":$(cat "$number")" NO_AT_BRIDGE=1 GSETTINGS_BACKEND=memory LIBGL_ALWAYS_SOFTWARE=1
dbus-run-session -- node tests/bench/bench.mjs
