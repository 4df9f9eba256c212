/** Damaged places of the shown video in seconds: stated, or by the share of bytes. */
export function damagedRanges(lesson, duration) {
  const whole = lesson.video?.[0]?.bytes || 0;
  return (lesson.damaged || []).map((range) => {
    const share = (bytes) => (whole ? (bytes / whole) * duration : 0);
    const from = range.fromSeconds === undefined || range.fromSeconds === null ? share(range.fromByte) : range.fromSeconds;
    const to = range.toSeconds === undefined || range.toSeconds === null
      ? from + Math.max(0.5, share(range.toByte - range.fromByte)) : range.toSeconds;
    return { from: Math.min(from, duration), to: Math.min(to, duration) };
  });
}
