import { svg } from '../dom.js';
import { shape } from '../sheets/plan.js';
import { middle } from './shapes.js';

const joined = (corners) => corners.map((p) => p.join(',')).join(' ');

/** Every subject with its name; the chosen one, and those of a chain, stand out. */
export function outlines(plan, view, perPixel) {
  return plan.subjects.filter((one) => shape(one).length).flatMap((one) => {
    const points = joined(shape(one));
    const kind = (view.chain || []).includes(one.name) ? 'outline ringed' : one.name === view.chosen ? 'outline chosen' : 'outline';
    const [x, y] = middle(shape(one));
    return [
      svg('polygon', { class: kind, points }), svg('polygon', { class: 'outline-line', points }),
      svg('text', { class: 'label', x, y, 'font-size': 14 * perPixel, 'stroke-width': 4 * perPixel }, one.name),
    ];
  });
}

/** The chain of an impossible plan, drawn from subject to subject and numbered; a ring is closed. */
export function chainMarks(plan, { chain = [], ring }, perPixel) {
  const spots = chain.map((name) => plan.subjects.find((one) => one.name === name)).filter((one) => one && shape(one).length)
    .map((one) => middle(shape(one)).map((value, axis) => value - (axis ? 16 * perPixel : 0)));
  return spots.length ? [
    svg(ring ? 'polygon' : 'polyline', { class: 'chain', points: joined(spots) }),
    ...spots.flatMap(([x, y], at) => [
      svg('circle', { class: 'chain-spot', cx: x, cy: y, r: 10 * perPixel }),
      svg('text', { class: 'chain-number', x, y: y + 5 * perPixel, 'font-size': 14 * perPixel }, String(at + 1)),
    ]),
  ] : [];
}
