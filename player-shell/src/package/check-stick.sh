#!/bin/sh
# From a stick to the picture, on real file systems, with no other state (as root, with Chromium and curl):
#   sh check-stick.sh EMPTY-FOLDER PORTABLE EDITION ROUNDS CLASS-PATH [fat32|exfat]...
# Makes an image of each kind, mounts it as sticks are mounted (no run bits, no programs), read-only and
# read-write, starts the program from it as a user who never had it, and measures to the moving picture.
# Where the kernel has no driver, one outside of it serves; where nothing mounts the image, the files that are
# read out of it, on a mount that forbids to run anything, stand for it. Says which it was.
set -eu
work=$(mkdir -p "$1" && realpath "$1"); portable=$(realpath "$2"); edition=$(realpath "$3")
rounds=$4; classes=$5; shift 5
[ $# -gt 0 ] || set -- fat32 exfat
scripts=$(dirname "$(realpath "$0")")
stick=$work/stick
loop=''
let_go() {
  mountpoint -q "$stick" && umount "$stick"
  [ -z "$loop" ] || losetup -d "$loop"
  loop=''
}
trap let_go EXIT

# Mounts an image with options, by the first driver that there is; says by which. What FUSE has for FAT
# here (fusefat 0.1) takes labels for files and loses the case of names, so it is not asked.
put_in() {
  kind=$1 image=$2 how=$3
  mkdir -p "$stick"
  by='the kernel'
  case "$kind" in fat32) type=vfat ;; *) type=exfat ;; esac
  mount -t "$type" -o "loop,$how,noexec" "$image" "$stick" 2>/dev/null && return
  if [ "$kind" = exfat ] && command -v mount.exfat-fuse >/dev/null; then
    by=exfat-fuse
    loop=$(losetup -f --show "$image")
    mount.exfat-fuse -o "$how,noexec" "$loop" "$stick" >/dev/null && return
  fi
  by='NO DRIVER HERE: what the image holds, read out of it, on a mount of the same kind'
  rm -rf "$work/files" && mkdir "$work/files"
  mcopy -s -n -i "$image" '::/*' "$work/files/"
  find "$work/files" -type f -exec chmod 644 {} +
  mount --bind "$work/files" "$stick"
  mount -o "remount,bind,$how,noexec" "$stick"
}

for kind in "$@"; do
  image=$work/$kind.img
  sh "$scripts/make-stick-image.sh" "$kind" "$image" "$portable" "$edition"
  for how in ro rw; do
    put_in "$kind" "$image" "$how"
    printf '\n== %s, %s, mounted by %s\n' "$kind" "$how" "$by"
    mount | grep " $stick " || true
    before=$(find "$stick" | sort | sha256sum)
    mkdir -p "$work/$kind-$how"
    java -cp "$classes" org.lehrcase.bench.measure.FirstPicture "$work/$kind-$how" "$rounds" \
      sh "$stick/$(basename "$portable")/start-lehrcase.sh"
    [ "$before" = "$(find "$stick" | sort | sha256sum)" ] && echo 'the program left nothing on the stick'
    let_go
  done
done
