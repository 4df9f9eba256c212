import { svg } from '../dom.js';

/** Strokes are kept as numbers from 0 to 10000 across and down the picture; no picture is kept. */
export const SPAN = 10000;
export const PENS = ['white', 'black', 'red', 'yellow', 'green', 'blue'];

const path = (points) => points.reduce((text, at, i) => text + (i % 2 ? ` ${at}` : `${i ? ' L' : 'M'}${at}`), '')
  + (points.length === 2 ? ` L${points[0] + 1} ${points[1]}` : '');

/** One stroke as a line with a halo, so that it shows on any picture. */
export function strokeLine(stroke, widePixels) {
  const thick = Math.max(2.5, (stroke.width / 1000) * widePixels);
  const d = path(stroke.points);
  return svg('g', {},
    svg('path', { d, class: 'sketch-halo', 'stroke-width': thick + 2.5 }),
    svg('path', { d, class: `sketch-pen pen-${stroke.colour}`, 'stroke-width': thick }));
}

/** A whole sketch, `widePixels` wide where it will be shown. */
export const sketchDrawing = (strokes, widePixels, label) => svg('svg', {
  class: 'sketch', viewBox: `0 0 ${SPAN} ${SPAN}`, preserveAspectRatio: 'none', role: 'img', 'aria-label': label || 'My sketch',
}, strokes.map((stroke) => strokeLine(stroke, widePixels)));
