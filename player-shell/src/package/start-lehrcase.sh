#!/bin/sh
# Starts Lehrcase from this folder, wherever it lies: no administrator rights, no internet.
# It needs no run bit:   sh start-lehrcase.sh
#   --in-place   run from this folder even if it is a stick (do not pull the stick then)
#   --remove     take away what this script put on the laptop; your own data stays
# Everything else is handed to the program.
set -u
umask 077
if (: <&0) 2>/dev/null; then exec 3<&0; else exec 3</dev/null; fi

# What lies about only while this script runs.
rest=''
trap '[ -z "$rest" ] || rm -rf "$rest"' EXIT
trap 'exit 143' TERM
trap 'exit 130' INT
trap 'exit 129' HUP
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd -P) || exit 1

# Names with letters beyond ASCII need a locale that knows them.
case "${LC_ALL:-${LC_CTYPE:-${LANG:-}}}" in
  *[Uu][Tt][Ff]*) ;;
  *) LC_ALL=C.UTF-8; export LC_ALL ;;
esac

case "$(uname -s)" in
  Darwin) kind=macos; data="$HOME/Library/Application Support" ;;
  *) kind=linux; data="${XDG_DATA_HOME:-$HOME/.local/share}" ;;
esac
case "$(uname -m)" in
  x86_64 | amd64) kind=$kind-x64 ;;
  aarch64 | arm64) kind=$kind-aarch64 ;;
  *) kind=$kind-$(uname -m) ;;
esac
copies="$data/lehrcase-program"
said="$copies/last-start.txt"
menu="$data/applications/lehrcase.desktop"

# Says what happened where the person sees it: in the terminal, or as a text that opens by itself.
trouble() {
  printf '%s\n' "$@" >&2
  [ -t 2 ] && exit 1
  slip=$(mktemp "${TMPDIR:-/tmp}/lehrcase-XXXXXX") || exit 1
  printf '%s\n' "$@" >"$slip"
  mv "$slip" "$slip.txt" && { xdg-open "$slip.txt" || open "$slip.txt"; } >/dev/null 2>&1
  exit 1
}

sha256() {
  if command -v sha256sum >/dev/null 2>&1; then sha256sum "$@"; else shasum -a 256 "$@"; fi
}

disk_of() { df -P "$1" 2>/dev/null | sed -n '2s/ .*//p'; }

# False also where everything has its run bit, but the mount forbids to run anything.
runs() { [ -x "$1/program/$kind/bin/java" ]; }

# Copies what this laptop needs, compares every file with its list, and only then names it.
copy() {
  new="$copies/new-$$"
  rest=$new
  mkdir -p "$new/program" || return 1
  cp -R "$here/program/$kind" "$new/program/" &&
    cp "$here/program/lehrcase-bench.jar" "$here/program/bench.options" "$here/program/"*.sums \
      "$here/program/lehrcase.png" "$new/program/" &&
    cp "$here/start-lehrcase.sh" "$new/" &&
    (cd "$new" && cat "program/$kind.sums" program/bench.sums | sha256 -c - >/dev/null 2>&1) &&
    chmod -R u+rwX "$new" && chmod u+x "$new/start-lehrcase.sh" "$new/program/$kind/bin/"* &&
    { [ ! -f "$new/program/$kind/lib/jspawnhelper" ] ||
      chmod u+x "$new/program/$kind/lib/jspawnhelper"; } &&
    { [ -d "$copies/$id" ] || mv "$new" "$copies/$id"; } # another start may have been quicker
  [ -d "$copies/$id" ]
  done=$?
  rm -rf "$new"
  rest=''
  return "$done"
}

# Copies of earlier programs go, unless one of them may still be running.
tidy() {
  [ -e "$data/lehrcase/bench.running" ] && return 0
  for old in "$copies"/*; do
    case "$old" in
      "$copies/$id" | "$copies/cds-$id"* | "$said") ;;
      *) rm -rf "$old" ;;
    esac
  done
}

icon() {
  [ "${kind%-*}" = linux ] || return 0
  mkdir -p "$data/applications" || return 0
  {
    printf '[Desktop Entry]\nType=Application\nName=Lehrcase\nComment=Open your courses\n'
    printf 'Exec="%s/start-lehrcase.sh"\nIcon=%s/program/lehrcase.png\n' "$1" "$1"
    printf 'Terminal=false\nCategories=Education;\n'
  } >"$menu"
}

in_place=no
case "${1:-}" in
  --in-place) in_place=yes; shift ;;
  --remove)
    [ -e "$data/lehrcase/bench.running" ] &&
      trouble 'Lehrcase is running, or ended without Quit. Start it, choose Quit on its page, then try again.'
    rm -rf "$copies" "$menu"
    echo "The program's copy and its menu entry are gone. Your own data is still in $data/lehrcase"
    exit 0 ;;
esac

[ -d "$here/program/$kind" ] || trouble \
  "This folder has no program for a computer of the kind $kind." \
  'Nothing was changed. Ask your teacher for one that has.'
id=$(cat "$here/program/$kind.sums" "$here/program/bench.sums" | sha256 | cut -c1-16)

run=''
if [ "$in_place" = yes ] || [ "$here" = "$copies/$id" ] ||
  { [ "$(disk_of "$here")" = "$(disk_of "$HOME")" ] && runs "$here"; }; then
  run=$here
elif [ -x "$copies/$id/start-lehrcase.sh" ]; then
  run=$copies/$id
elif copy 2>/dev/null; then
  run=$copies/$id
  tidy
  icon "$run"
elif runs "$here"; then
  run=$here # no room for a copy: the stick must stay in
fi
[ -n "$run" ] && [ -x "$run/program/$kind/bin/java" ] || trouble \
  'Lehrcase could not be copied to this laptop: there is no room, or the copy on the stick is damaged.' \
  'Your courses, licenses and notes are safe.' \
  'Free 200 MB and start again. If it stays so, ask your teacher for a new copy.'

rehearsal=''
signal=''
java="$run/program/$kind/bin/java"
jar="$run/program/lehrcase-bench.jar"
# The archive of classes holds for one path of the jar only.
archive="$copies/cds-$id-$(printf '%s' "$jar" | cksum | cut -d' ' -f1).jsa"
mkdir -p "$copies" 2>/dev/null
[ -w "$copies" ] || { said=$(mktemp "${TMPDIR:-/tmp}/lehrcase-XXXXXX") && rest=$said; } || exit 1

# A child that runs while this shell waits can be ended with it; it reads what this script reads.
child=''
ended() {
  signal=$1
  [ -z "$child" ] || kill -TERM "$child" 2>/dev/null
  [ -z "$rehearsal" ] || kill -TERM "$rehearsal" 2>/dev/null
}

rehearse() {
  trap 'kill "$child" 2>/dev/null; rm -f "$archive.$$"; exit 1' TERM
  sleep "${LEHRCASE_REHEARSE_AFTER:-20}" &
  child=$!
  wait "$child"
  nice -n 19 "$java" "@$run/program/bench.options" "-XX:ArchiveClassesAtExit=$archive.$$" \
    -Xlog:disable -jar "$jar" rehearse &
  child=$!
  wait "$child" && mv "$archive.$$" "$archive"
  rm -f "$archive.$$"
}

if [ -f "$archive" ]; then
  set -- "-XX:SharedArchiveFile=$archive" -Xlog:disable -jar "$jar" "$@"
else
  if [ -w "$copies" ]; then
    rehearse </dev/null >/dev/null 2>&1 &
    rehearsal=$!
  fi
  set -- -jar "$jar" "$@"
fi
# Java takes the user's folder from the list of users; this script and the program must agree.
trap 'ended 15' TERM
trap 'ended 1' HUP
trap 'ended 2' INT
"$java" "@$run/program/bench.options" "-Duser.home=$HOME" "-Dlehrcase.folder=$here" "$@" \
  2>"$said" <&3 3<&- &
child=$!
wait "$child"
code=$?
while [ -n "$signal" ] && kill -0 "$child" 2>/dev/null; do wait "$child"; done # it ends in order
[ -z "$signal" ] || code=$((128 + signal))
cat "$said" >&2
[ "$code" -eq 0 ] || [ "$code" -gt 128 ] || [ -t 2 ] ||
  trouble 'Lehrcase did not start.' "$(cat "$said")"
exit "$code"
