#!/usr/bin/env bash
# Makes the Debian package of the window and the command line. With --check it is then installed, with the
# dependencies it declares and nothing else, into a clean Debian root, and started there.
source "$(dirname "$0")/needs.sh"
out="$root/target/package"
id=org.carryover.desk

make_package() {
  stage "build for release"
  # shellcheck disable=SC2086
  packages $build_packages dpkg-dev fakeroot appstream
  node_modules ui
  (cd ui && npm run -s build)
  cargo build --release --workspace --bins

  stage "package"
  local version arch tree
  version=$(sed -n '/^\[workspace.package\]/,/^\[/s/^version = "\(.*\)"/\1/p' Cargo.toml)
  arch=$(dpkg --print-architecture)
  tree="$out/tree"
  rm -rf "$out"
  mkdir -p "$tree/DEBIAN" "$tree/usr/share/doc/carryover" "$out/shlibs/debian"
  for program in carryover carryover-cli; do
    install -D -m 755 "target/release/$program" "$tree/usr/bin/$program"
  done
  install -D -m 644 "src-tauri/package/$id.desktop" "$tree/usr/share/applications/$id.desktop"
  install -d "$tree/usr/share/metainfo"
  local day
  day=$(git log -1 --format=%cs 2>/dev/null || date +%F)
  sed -e "s/@VERSION@/$version/" -e "s/@DATE@/$day/" "src-tauri/package/$id.metainfo.xml" \
    >"$tree/usr/share/metainfo/$id.metainfo.xml"
  install -D -m 644 ui/public/icon.svg "$tree/usr/share/icons/hicolor/scalable/apps/$id.svg"
  for size in 32 128; do
    install -D -m 644 "src-tauri/icons/${size}x$size.png" \
      "$tree/usr/share/icons/hicolor/${size}x$size/apps/$id.png"
  done
  install -D -m 644 src-tauri/icons/icon.png "$tree/usr/share/icons/hicolor/512x512/apps/$id.png"
  install -m 644 src-tauri/package/copyright "$tree/usr/share/doc/carryover/copyright"
  install -m 644 src-tauri/core/fonts/OFL-*.txt "$tree/usr/share/doc/carryover/"

  # The libraries that the programs were linked with, at the versions they need.
  printf 'Source: carryover\n\nPackage: carryover\nArchitecture: any\n' >"$out/shlibs/debian/control"
  local depends
  depends=$(cd "$out/shlibs" && dpkg-shlibdeps -O "$tree/usr/bin/carryover" "$tree/usr/bin/carryover-cli" |
    sed -n 's/^shlibs:Depends=//p')
  [ -n "$depends" ] || stop "the libraries that the programs need could not be told"
  cat >"$tree/DEBIAN/control" <<CONTROL
Package: carryover
Version: $version
Architecture: $arch
Maintainer: The Carryover project <carryover@example.org>
Installed-Size: $(du -sk --exclude=DEBIAN "$tree" | cut -f1)
Depends: $depends
Recommends: xdg-utils, default-dbus-session-bus | dbus-session-bus
Section: misc
Priority: optional
Description: carries what a student worked on into the next visit
 For a coach who teaches private racket-sport lessons to students who visit for
 a few days every few weeks or months: goals with their evidence, recording on
 court, home plans and progress letters, in one file on the coach's machine.
CONTROL
  (cd "$tree" && find usr -type f -print0 | sort -z | xargs -0 md5sum >DEBIAN/md5sums)
  find "$tree" -type d -exec chmod 755 {} +
  deb="$out/carryover_${version}_$arch.deb"
  # The window and the command line hold the same core: a dictionary that spans both finds it twice.
  fakeroot dpkg-deb -Zxz -z9 -Sextreme --build "$tree" "$deb" >/dev/null
  appstreamcli validate --no-net "$tree/usr/share/metainfo/$id.metainfo.xml"
  local bytes
  bytes=$(stat -c %s "$deb")
  echo "$deb"
  awk -v b="$bytes" 'BEGIN { printf "%.1f MB packed (%d bytes)\n", b / 1e6, b }'
  dpkg-deb -f "$deb" Depends
  [ "$bytes" -le 12000000 ] || stop "the package is larger than 12 MB"
}

check_package() {
  stage "a clean Debian root with the package and what it depends on"
  [ "$(id -u)" = 0 ] || stop "checking the package needs root, to make a Debian root and to mount in it"
  packages mmdebstrap xvfb xdotool imagemagick
  local clean="$out/root"
  rm -rf "$clean"
  # The archive this machine itself is installed from; Recommends are left out, to test what is declared.
  local sources
  sources=$(apt-get indextargets --format '$(REPO_URI) $(RELEASE) $(COMPONENT)' 'Created-By: Packages' |
    awk '$1 ~ /debian\.org/ && !seen[$0]++ { print "deb", $1, $2, $3 }')
  [ -n "$sources" ] || stop "this machine's apt names no Debian archive"
  printf '%s\n' "$sources" | mmdebstrap --quiet --variant=minbase \
    --aptopt='APT::Install-Recommends "false"' \
    --customize-hook="copy-in '$deb' /srv" \
    --customize-hook='chroot "$1" sh -c "apt-get install -y -q --no-install-recommends /srv/*.deb >/dev/null"' \
    "$(. /etc/os-release && echo "$VERSION_CODENAME")" "$clean" -
  chroot "$clean" dpkg-query -W -f='${Package} ${Version} ${db:Status-Status}\n' carryover

  stage "the command line in that root"
  chroot "$clean" carryover-cli sample /srv/season.carryover --today 2026-03-12 >/dev/null
  chroot "$clean" carryover-cli --file /srv/season.carryover check

  stage "the window in that root"
  # Not local: what ends them at the exit must still know them.
  local number="$out/display"
  Xvfb -displayfd 3 -screen 0 1400x1000x24 -nolisten tcp -noreset 3>"$number" 2>/dev/null &
  screen=$!
  trap 'kill "$screen" 2>/dev/null || true' EXIT
  for _ in $(seq 200); do [ -s "$number" ] && break; kill -0 "$screen" || exit 1; sleep 0.05; done
  export DISPLAY=":$(cat "$number")"
  # Its mounts and processes are its own, and end with it. The screen is reached by its abstract socket.
  unshare --mount --pid --fork --kill-child bash -c "
    mount -t proc proc '$clean/proc' && mount --rbind /dev '$clean/dev' && mount --rbind /sys '$clean/sys'
    exec chroot '$clean' env -i HOME=/root PATH=/usr/bin:/bin DISPLAY=$DISPLAY LIBGL_ALWAYS_SOFTWARE=1 \
      NO_AT_BRIDGE=1 GSETTINGS_BACKEND=memory carryover --sample" >"$out/window.log" 2>&1 &
  window=$!
  trap 'kill -KILL "$window" 2>/dev/null || true; kill "$screen" 2>/dev/null || true' EXIT
  local seen=""
  for _ in $(seq 300); do
    kill -0 "$window" 2>/dev/null || { cat "$out/window.log"; stop "the window ended by itself"; }
    seen=$(xdotool search --onlyvisible --name 'Carryover$' 2>/dev/null | head -n 1 || true)
    # Shown is not yet drawn: the page has drawn when there are many colours on the screen.
    if [ -n "$seen" ] && import -window "$seen" "$out/window.png" 2>/dev/null; then
      [ "$(identify -format %k "$out/window.png")" -gt 50 ] && break
    fi
    seen=""
    sleep 0.1
  done
  [ -n "$seen" ] || { cat "$out/window.log"; stop "the window was not drawn within half a minute"; }
  echo "the window stands: $(xdotool getwindowname "$seen"), drawn in $out/window.png"
  # unshare waits for its child whatever it is told, and takes the child with it when it is killed.
  kill -KILL "$window" 2>/dev/null || true
  wait "$window" 2>/dev/null || true
  # What dies with it may still write its last files while they are taken away.
  for _ in $(seq 20); do rm -rf "$clean" 2>/dev/null && break; sleep 0.5; done
  [ ! -e "$clean" ] || stop "$clean could not be taken away"
  stage "the package installs and starts"
}

make_package
if [ "${1:-}" = --check ]; then check_package; fi
