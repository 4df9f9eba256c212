#!/bin/sh
# Makes an image file of a course stick, for tests: a real file system, filled and read back.
#   sh make-stick-image.sh fat32|exfat IMAGE FILE-OR-FOLDER...
# Needs dosfstools and mtools, or (as root) exfatprogs and exfat-fuse. Afterwards mount it, read-only
# say, with   mount -o loop,ro,noexec IMAGE FOLDER   or, where the kernel has no driver for exFAT,
#   mount.exfat-fuse -o ro,noexec "$(losetup -f --show IMAGE)" FOLDER
set -eu
kind=$1; image=$2; shift 2
megabytes=$(du -smc "$@" | tail -1 | cut -f1)
rm -f "$image"
truncate -s "$((megabytes + megabytes / 3 + 64))M" "$image"
back=$(mktemp -d)
trap 'rm -rf "$back"' EXIT
case "$kind" in
  fat32)
    mkfs.vfat -F 32 -n LEHRCASE "$image" >/dev/null
    mcopy -s -i "$image" "$@" ::/
    mcopy -s -n -i "$image" '::/*' "$back/" ;;
  exfat)
    mkfs.exfat -L LEHRCASE "$image" >/dev/null
    device=$(losetup -f --show "$image")
    trap 'umount "$back"; losetup -d "$device"; rmdir "$back"' EXIT
    mount.exfat-fuse "$device" "$back" >/dev/null
    cp -r "$@" "$back/"
    umount "$back"
    mount.exfat-fuse -o ro "$device" "$back" >/dev/null ;;
  *) echo 'fat32 or exfat' >&2; exit 2 ;;
esac
for each in "$@"; do
  diff -r "$each" "$back/$(basename "$each")"
done
echo "$image: every octet read back"
