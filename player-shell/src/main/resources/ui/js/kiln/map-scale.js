import { svg } from '../dom.js';

/** The scale of a map: its colors from end to end, with the figures that they stand for. */

const STEPS = 60;
const HIGH = 12;
const PAD = 26;
const APART = 62;

/** Marks that stand too close to an earlier one are left out; the ends come first. */
function roomFor(marks, x) {
  const taken = [];
  return marks.filter(([value]) => {
    const free = taken.every((other) => Math.abs(other - x(value)) >= APART);
    if (free) {
      taken.push(x(value));
    }
    return free;
  });
}

/**
 * Builds a scale. `scale`: {from, to, color: value => [r, g, b], marks: [[value, words]], width, label}.
 * Marks are given in order of importance.
 */
export function mapScale({ from, to, color, marks, width, label }) {
  const wide = width - 2 * PAD;
  const x = (value) => PAD + ((value - from) / (to - from)) * wide;
  const cell = wide / STEPS;
  return svg('svg', { class: 'map-scale', width, height: HIGH + 18, viewBox: `0 0 ${width} ${HIGH + 18}`, role: 'img', 'aria-label': `${label}: ${marks.map(([, words]) => words).join(', ')}` },
    Array.from({ length: STEPS }, (unused, i) => {
      const [r, g, b] = color(from + ((i + 0.5) / STEPS) * (to - from));
      return svg('rect', { x: (PAD + i * cell).toFixed(2), y: 0, width: (cell + 0.5).toFixed(2), height: HIGH, fill: `rgb(${r} ${g} ${b})` });
    }),
    svg('rect', { class: 'map-scale-frame', x: PAD, y: 0.5, width: wide, height: HIGH - 1 }),
    roomFor(marks, x).map(([value, words]) => svg('g', {},
      svg('line', { class: 'map-scale-tick', x1: x(value), x2: x(value), y1: HIGH - 3, y2: HIGH + 3 }),
      svg('text', { x: x(value), y: HIGH + 14, 'text-anchor': 'middle' }, words))));
}
