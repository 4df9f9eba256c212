#!/bin/sh
# Makes the small films the media tests read, and writes down what an independent reader sees in them.
# Needs ffmpeg and ffprobe with libx264, libx265, libvpx and libopus. Run it in this folder; the results are committed.
set -eu

picture='testsrc2=size=160x120:rate=10:duration=2'
tone='sine=frequency=330:duration=2:sample_rate=48000'
make() { ffmpeg -hide_banner -loglevel error -nostdin -y "$@"; }
exact='-fflags +bitexact -flags:v +bitexact -flags:a +bitexact -map_metadata -1 -threads 1'
avc='-c:v libx264 -preset veryslow -crf 40 -g 10'
aac='-c:a aac -b:a 24k -ac 1'

make -f lavfi -i "$picture" -f lavfi -i "$tone" $avc -pix_fmt yuv420p $aac $exact index-at-end.mp4
make -i index-at-end.mp4 -c copy $exact -movflags +faststart index-in-front.mp4
make -i index-at-end.mp4 -c copy $exact -movflags +frag_keyframe+empty_moov+default_base_moof in-fragments.mp4
make -i index-at-end.mp4 -c copy $exact -f mov camera.mov
make -i index-at-end.mp4 -c copy $exact wrong-box.mkv
make -f lavfi -i "$picture" -c:v libx265 -x265-params log-level=none -preset medium -crf 45 -pix_fmt yuv420p10le \
  -tag:v hvc1 $exact hevc-ten-bit.mp4
make -f lavfi -i "$picture" $avc -pix_fmt yuv422p $exact avc-four-two-two.mp4
make -f lavfi -i "$picture" $avc -pix_fmt yuv420p10le $exact avc-ten-bit.mp4
make -f lavfi -i "$picture" -f lavfi -i "$tone" $avc -pix_fmt yuv420p -c:a ac3 -b:a 32k -ac 1 $exact sound-ac3.mp4
make -f lavfi -i 'testsrc2=size=160x120:rate=60:duration=0.5' $avc -pix_fmt yuv420p $exact sixty-frames.mp4
make -f lavfi -i 'color=c=teal:size=2560x1440:rate=5:duration=0.6' $avc -pix_fmt yuv420p $exact too-large.mp4
make -f lavfi -i "$picture" -f lavfi -i "$tone" -c:v libvpx-vp9 -crf 55 -b:v 0 -c:a libopus -b:a 16k $exact vp9-opus.webm

{
  echo '# file,stream,bytes,SHA-256 of each coded packet, streams one after the other'
  for film in index-at-end.mp4 camera.mov; do
    ffmpeg -hide_banner -loglevel error -nostdin -i "$film" -map 0 -c copy -f framehash -hash sha256 - |
      grep -v '^#' | tr -d ' ' | sort -s -t, -k1,1n | cut -d, -f1,5,6 | sed "s/^/$film,/"
  done
} > packets.csv
{
  echo '# file: container, seconds, then per stream codec,width,height,pixel format,frame rate or sample rate,channels'
  for film in *.mp4 *.mov *.webm *.mkv; do
    echo "$film: $(ffprobe -loglevel error -show_entries format=duration -of csv=p=0 "$film")"
    ffprobe -loglevel error -of csv=p=0 -show_entries \
      stream=codec_name,profile,width,height,pix_fmt,level,avg_frame_rate,sample_rate,channels,bit_rate "$film" | sed 's/^/  /'
  done
} > seen-by-ffprobe.txt
