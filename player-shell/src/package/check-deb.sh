#!/bin/sh
# Proves the Debian package in a clean root, as root, on a Debian machine with mmdebstrap and curl:
#   sh check-deb.sh DEB EDITION EMPTY-FOLDER [ROOT-MADE-BEFORE]
# Installs with apt, starts as an ordinary user, brings EDITION in, asks for the first page and a
# range of the first open film from outside, quits, removes, and says what is left.
set -eu
deb=$(realpath "$1"); edition=$(realpath "$2"); root=$(realpath "$3")
say() { printf '\n== %s\n' "$*"; }
inside() { chroot "$root" /usr/bin/env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin LANG=C.UTF-8 DEBIAN_FRONTEND=noninteractive "$@"; }
student() { inside su -s /bin/sh student -c "$1"; }

if [ -n "${4:-}" ]; then cp -a "$4/." "$root/"; else mmdebstrap --variant=minbase bookworm "$root"; fi
mount --bind "$root" "$root" # so that it is a disk of its own, as / is
mount -t proc proc "$root/proc"
mount --bind /dev "$root/dev"
trap 'umount "$root/dev" "$root/proc" "$root"' EXIT
cp /etc/resolv.conf "$root/etc/resolv.conf"
# how this machine reaches the archive, and nothing else of its settings
grep -ls 'Acquire' /etc/apt/apt.conf.d/* | while read -r file; do cp "$file" "$root/etc/apt/apt.conf.d/"; done
cp "$deb" "$root/tmp/lehrcase.deb"
cp -r "$edition" "$root/srv/edition"
chmod -R a+rX "$root/srv/edition"
inside apt-get -qq update
inside useradd -m student
# the root before: every path outside what any package changes
list() { (cd "$root" && find . -xdev \( -path ./proc -o -path ./dev -o -path ./var/cache -o -path ./var/lib/apt -o -path ./var/lib/dpkg -o -path ./var/log -o -path ./tmp \) -prune -o -print | sort); }

say "apt install (what it needs first, so that the list below is the package's own)"
needs=$(dpkg-deb -f "$deb" Depends | tr ',' '\n' | sed 's/|.*//; s/ *(.*)//; s/ //g' | tr '\n' ' ')
# shellcheck disable=SC2086
inside apt-get -qq -y --no-install-recommends install $needs >/dev/null
list >"$root.before"
inside apt-get -y --no-install-recommends install /tmp/lehrcase.deb 2>&1 | tail -4
inside dpkg -s lehrcase | sed -n 's/^Installed-Size/installed KiB/p'
ls -la "$root/opt/lehrcase/lib/app"

say "start as an ordinary user, bring in, open"
student '/opt/lehrcase/bin/Lehrcase bring-in /srv/edition'
student 'exec /opt/lehrcase/bin/Lehrcase open --no-browser' >"$root.said" &
child=$!
for _ in $(seq 100); do grep -q http "$root.said" && break; sleep 0.1; done
entry=$(grep -o 'http://[^ ]*' "$root.said")
base=${entry%/enter/*}
path=$(curl -s -c "$root.jar" "$entry" | sed -n 's/.*data-to="\([^"]*\)".*/\1/p')
get() { curl -s -b "$root.jar" "$@"; }
get -o /dev/null -w 'first page: %{http_code}, %{size_download} octets\n' "$base$path"
get "$base${path}api/state" >"$root.state"
course=$(grep -o '"edition":"[0-9a-f]*"' "$root.state" | head -1 | cut -d'"' -f4)
for lesson in $(grep -o '"id":"[0-9a-f]*"' "$root.state" | cut -d'"' -f4); do
  film=$(get "$base${path}api/lesson?e=$course&l=$lesson" | grep -o '"url":"[^"]*media/[^"]*"' | head -1 | cut -d'"' -f4)
  [ -z "$film" ] || break
done
case "$film" in /*) film=$base$film ;; *) film=$base$path$film ;; esac
get -r 100000-199999 -o "$root.range" -w 'range of a film: %{http_code}, %{size_download} octets, %{content_type}\n' "$film"
get -o "$root.film" "$film"
tail -c +100001 "$root.film" | head -c 100000 | cmp - "$root.range" && echo 'the range is the same as in the whole film'
head -c 12 "$root.film" | od -c | head -1
get -X POST -H 'X-Lehrcase: 1' -H 'Content-Length: 0' -o /dev/null -w 'quit: %{http_code}\n' "$base${path}api/quit"
wait "$child" && echo 'it ended by itself'

say "apt remove: what is left"
inside apt-get -y purge lehrcase 2>&1 | tail -2
list >"$root.after"
diff "$root.before" "$root.after" || true
