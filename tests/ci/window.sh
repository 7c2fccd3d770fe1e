#!/usr/bin/env bash
# Runs window stories one at a time, on a screen with a window manager and a session bus of its own.
# Without arguments all of them; or the files named.
set -euo pipefail
cd "$(dirname "$0")/../.."
[ $# -gt 0 ] || set -- tests/window/*.story.mjs
number=$(mktemp)
Xvfb -displayfd 3 -screen 0 1400x1000x24 -nolisten tcp 3>"$number" 2>/dev/null &
screen=$!
trap 'kill $screen 2>/dev/null || true; rm -f "$number"' EXIT
for _ in $(seq 200); do [ -s "$number" ] && break; kill -0 $screen || exit 1; sleep 0.05; done
export DISPLAY=":$(cat "$number")" NO_AT_BRIDGE=1 GSETTINGS_BACKEND=memory LIBGL_ALWAYS_SOFTWARE=1
# A small window manager, so that a window can be closed, moved and given the focus as on a desk.
openbox 2>/dev/null &
manager=$!
trap 'kill $manager $screen 2>/dev/null || true; rm -f "$number"' EXIT
dbus-run-session -- node --test --test-concurrency=1 --test-reporter=spec "$@"
