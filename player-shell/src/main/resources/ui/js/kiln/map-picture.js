import { el, svg } from '../dom.js';
import { ticks } from '../lesson/curve-shape.js';

/** A depth × time picture: colors on a canvas, axes and lines above it. Knows nothing of glass. */

const COLUMNS = 420;
const PAD = { left: 46, right: 10, top: 8, bottom: 22 };

const mix = (a, b, share) => a.map((value, i) => Math.round(value + (b[i] - value) * share));

/** Colors from cold to hot: pale water to ink. */
const COLD = [233, 240, 236];
const WARM = [98, 160, 152];
const HOT = [18, 58, 66];
export const heatColor = (share) => (share < 0.5 ? mix(COLD, WARM, share * 2) : mix(WARM, HOT, share * 2 - 1));

/** Colors of stress: pressure blue-green, none pale, tension violet. */
const PRESSED = [30, 110, 104];
const CALM = [246, 245, 238];
const PULLED = [116, 44, 104];
export const stressColor = (share) => (share < 0 ? mix(CALM, PRESSED, Math.min(1, -share)) : mix(CALM, PULLED, Math.min(1, share)));

/** The block from top to bottom at every sample; with two exposed faces the lower half mirrors the upper. */
export function whole(rows, bothFaces) {
  return bothFaces ? rows.map((row) => [...row, ...row.slice(0, -1).reverse()]) : rows;
}

/** Index of the sample at or before an hour. */
export function sampleAt(hours, hour) {
  let low = 0;
  let high = hours.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (hours[middle] <= hour) {
      low = middle;
    } else {
      high = middle - 1;
    }
  }
  return low;
}

function paint(rows, hours, end, color) {
  const depth = rows[0].length;
  const canvas = el('canvas', { width: COLUMNS, height: depth, 'aria-hidden': 'true' });
  const context = canvas.getContext('2d');
  const image = context.createImageData(COLUMNS, depth);
  for (let x = 0; x < COLUMNS; x += 1) {
    const row = rows[sampleAt(hours, ((x + 0.5) / COLUMNS) * end)];
    for (let y = 0; y < depth; y += 1) {
      image.data.set([...color(row[y]), 255], (y * COLUMNS + x) * 4);
    }
  }
  context.putImageData(image, 0, 0);
  return canvas;
}

/** Where a value is crossed, layer by layer, as dots of a line: an isotherm, or the limit. */
function crossing({ rows, hours, value, x, y }) {
  const parts = [];
  for (let i = 1; i < rows.length; i += 1) {
    rows[i].forEach((now, layer) => {
      const before = rows[i - 1][layer];
      if ((before - value) * (now - value) < 0) {
        const share = (value - before) / (now - before);
        parts.push(`M${x(hours[i - 1] + share * (hours[i] - hours[i - 1])).toFixed(1)} ${y(layer).toFixed(1)}v${(y(1) - y(0)).toFixed(1)}`);
      }
      const above = layer ? rows[i][layer - 1] : now;
      if ((above - value) * (now - value) < 0) {
        parts.push(`M${x(hours[i - 1]).toFixed(1)} ${y(layer).toFixed(1)}H${x(hours[i]).toFixed(1)}`);
      }
    });
  }
  return parts.join('');
}

/**
 * Builds the picture. `map`: {rows, hours, end, color, lines: [{value, kind}], depthLabels: [[share, words]], label, width, height}.
 * @returns {{node: Element, move: function(hour, layer)}} `move` puts the cross there
 */
export function mapPicture(map) {
  const wide = map.width - PAD.left - PAD.right;
  const high = map.height - PAD.top - PAD.bottom;
  const layers = map.rows[0].length;
  const x = (hour) => PAD.left + (hour / map.end) * wide;
  const y = (layer) => PAD.top + (layer / layers) * high;
  const canvas = paint(map.rows, map.hours, map.end, map.color);
  const cross = svg('g', { visibility: 'hidden' },
    svg('line', { class: 'reading', y1: PAD.top, y2: PAD.top + high }), svg('circle', { class: 'map-dot', r: 5 }));
  const picture = svg('svg', {
    class: 'map-lines', width: map.width, height: map.height, viewBox: `0 0 ${map.width} ${map.height}`, tabindex: '0', role: 'img', 'aria-label': map.label,
  },
  map.lines.map((line) => svg('path', { class: `map-line ${line.kind}`, d: crossing({ rows: map.rows, hours: map.hours, value: line.value, x, y }) })),
  map.depthLabels.map(([share, words]) => svg('text', { x: PAD.left - 5, y: PAD.top + share * high + (share ? (share === 1 ? 0 : 4) : 10), 'text-anchor': 'end' }, words)),
  ticks(0, map.end, Math.max(3, Math.floor(map.width / 90)), [1, 2, 3, 4, 6, 12]).map((hour) => svg('text', { x: x(hour), y: map.height - 6, 'text-anchor': 'middle' }, `${Math.round(hour * 10) / 10} h`)),
  cross);
  canvas.style.left = `${PAD.left}px`;
  canvas.style.top = `${PAD.top}px`;
  canvas.style.width = `${wide}px`;
  canvas.style.height = `${high}px`;
  const node = el('div', { class: 'map' }, canvas, picture);
  node.style.height = `${map.height}px`;
  return {
    node,
    picture,
    hourAt: (px) => Math.max(0, Math.min(map.end, ((px - PAD.left) / wide) * map.end)),
    layerAt: (py) => Math.max(0, Math.min(layers - 1, Math.floor(((py - PAD.top) / high) * layers))),
    move: (hour, layer) => {
      const [line, dot] = cross.children;
      line.setAttribute('x1', x(hour));
      line.setAttribute('x2', x(hour));
      dot.setAttribute('cx', x(hour));
      dot.setAttribute('cy', y(layer + 0.5));
      cross.setAttribute('visibility', 'visible');
    },
  };
}
