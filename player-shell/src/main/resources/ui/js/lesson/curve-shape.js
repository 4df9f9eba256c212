/** The arithmetic of the temperature-time curve: steps in hours, ticks, reading. No document here. */

const NEAR_C = 0.6;

function indexWhere(curve, from, celsius) {
  for (let i = from; i < curve.length; i += 1) {
    if (Math.abs(curve[i][1] - celsius) < NEAR_C) {
      return i;
    }
  }
  return -1;
}

/**
 * Which part of the curve each segment is: `[{index, from, to, top}]` in hours and °C.
 * @param {{targetC: ?number, holdMin: number}[]} segments
 * @param {number[][]} curve points [hours, °C] in order of time
 */
export function stepSpans(segments, curve) {
  const spans = [];
  let at = 0;
  segments.forEach((segment, index) => {
    if (segment.targetC === null || segment.targetC === undefined || at >= curve.length - 1) {
      return;
    }
    const found = indexWhere(curve, at + 1, segment.targetC);
    if (found < 0) {
      return;
    }
    const from = curve[at][0];
    const until = curve[found][0] + (segment.holdMin || 0) / 60;
    at = found;
    while (at + 1 < curve.length && curve[at + 1][0] <= until + 1e-6 && Math.abs(curve[at + 1][1] - segment.targetC) < NEAR_C) {
      at += 1;
    }
    spans.push({ index, from, to: Math.max(until, curve[at][0]), top: segment.targetC });
  });
  return spans;
}

/** Round steps for an axis: about `wanted` ticks from 0 to `end`. */
export function ticks(start, end, wanted, steps = [1, 2, 4, 5, 10]) {
  const raw = (end - start) / wanted;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = (steps.map((s) => s * power).find((s) => s >= raw)) || raw;
  const found = [];
  for (let value = Math.ceil(start / step) * step; value <= end + step * 1e-6; value += step) {
    found.push(value);
  }
  return found;
}

/** Temperature on the curve at an hour. */
export function readAt(curve, hour) {
  for (let i = 1; i < curve.length; i += 1) {
    const [h0, c0] = curve[i - 1];
    const [h1, c1] = curve[i];
    if (hour <= h1) {
      return h1 === h0 ? c1 : c0 + ((c1 - c0) * (hour - h0)) / (h1 - h0);
    }
  }
  return curve.length ? curve[curve.length - 1][1] : 0;
}
