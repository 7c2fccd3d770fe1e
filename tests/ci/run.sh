#!/usr/bin/env bash
# Builds the program and opens it on the sample season.
source "$(dirname "$0")/needs.sh"
# shellcheck disable=SC2086
packages $build_packages
node_modules ui
(cd ui && npm run -s build)
cargo build -p carryover
exec target/debug/carryover --sample
