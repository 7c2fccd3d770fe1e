# Sourced by the other scripts: checks Rust and Node, installs Debian packages where it may, and
# says plainly what is missing where it may not.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
root=$PWD

stop() { echo "carryover: $*" >&2; exit 1; }

at_least() { # at_least HAVE WANT
  [ "$(printf '%s\n%s\n' "$2" "$1" | sort -V | head -n 1)" = "$2" ]
}

command -v cargo >/dev/null || stop "Rust is missing. Install Rust 1.95 or newer (rustup, or your distribution), then run this again."
rust=$(rustc --version | cut -d' ' -f2)
at_least "${rust%%-*}" 1.95.0 || stop "Rust $rust is too old; 1.95 or newer is needed. With rustup: rustup update stable."
command -v node >/dev/null || stop "Node is missing. Install Node 20.19 or newer with npm, then run this again."
node=$(node --version | tr -d v)
at_least "$node" 20.19.0 || stop "Node $node is too old; 20.19 or newer is needed."

# Debian 12 packages to build the window; libclang reads SQLite's header for its session extension.
build_packages="build-essential pkg-config libssl-dev libclang-dev libwebkit2gtk-4.1-dev librsvg2-dev"
# What the tests drive and compare with.
test_packages="webkit2gtk-driver xvfb dbus-x11 xdotool openbox chromium poppler-utils qpdf imagemagick python3-venv fonts-noto-core fonts-ipafont-gothic"

packages() {
  command -v dpkg-query >/dev/null || return 0
  local missing="" p
  for p in "$@"; do
    [ "$(dpkg-query -W -f='${db:Status-Abbrev}' "$p" 2>/dev/null | cut -c1-2)" = ii ] || missing="$missing $p"
  done
  [ -z "$missing" ] && return 0
  [ "$(id -u)" = 0 ] || stop "these Debian packages are missing:$missing. Install them with: sudo apt-get install$missing"
  echo "installing:$missing"
  apt-get update -qq
  # shellcheck disable=SC2086
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
}

node_modules() { # node_modules FOLDER: installs exactly what the lock file says, once
  if [ ! -e "$1/node_modules/.package-lock.json" ] || [ "$1/package-lock.json" -nt "$1/node_modules/.package-lock.json" ]; then
    (cd "$1" && npm ci --no-audit --no-fund --loglevel=error)
  fi
}

stage() { echo; echo "== $* ($(date +%H:%M:%S))"; }
