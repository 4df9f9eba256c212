import { address } from '../api.js';
import { el } from '../dom.js';
import { selectField } from '../fields.js';
import { shape } from '../sheets/plan.js';
import { fadeTables, meanLight } from './light.js';

/** The block as the eye sees it: sheets slide when the head moves, and fade with distance in linear light. */

const WIDE = 720;
const MOST_HEAD = 150;

export function createEye(place) {
  const canvas = el('canvas', { class: 'eye-canvas', id: 'eye-canvas', role: 'img', 'aria-label': 'The finished block' });
  const head = el('input', { type: 'range', class: 'eye-head', id: 'eye-head', min: -MOST_HEAD, max: MOST_HEAD, value: 0, step: 5, 'aria-label': 'Move your head, millimetres to the right' });
  const chosen = el('div', {});
  let layers = [];
  let only = 0;
  let paper = null;
  let asked = 0;

  function paint() {
    const pen = canvas.getContext('2d');
    pen.globalAlpha = 1;
    pen.fillStyle = '#fff';
    pen.fillRect(0, 0, canvas.width, canvas.height);
    const shown = only ? layers.filter((one) => one.sheet === only || one.sheet === only - 1) : layers;
    [...shown].reverse().forEach((one) => {
      pen.globalAlpha = only && one.sheet !== only ? 0.3 : 1;
      pen.drawImage(one.canvas, one.slides * Number(head.value) / 100, 0);
    });
    pen.globalAlpha = 1;
  }

  const soon = () => {
    cancelAnimationFrame(asked);
    asked = requestAnimationFrame(paint);
  };

  /** The picture, or, in a plan without one, a colour for each subject. */
  function fill(pen, plan, scale, number) {
    if (plan.picture) {
      const [x0, y0, x1, y1] = plan.picture.on_mm.map((mm) => mm * scale);
      pen.drawImage(paper, x0, y0, x1 - x0, y1 - y0);
    } else {
      pen.fillStyle = `hsl(${(number * 67 + 150) % 360} 45% 38%)`;
      pen.fillRect(0, 0, canvas.width, canvas.height);
    }
  }

  function layer(plan, scale, entry) {
    const own = el('canvas', { width: canvas.width, height: canvas.height });
    const pen = own.getContext('2d', { willReadFrequently: true });
    plan.subjects.forEach((one, number) => {
      if (entry.subjects.includes(one.name) && shape(one).length) {
        pen.save();
        pen.beginPath();
        shape(one).forEach(([x, y], at) => (at ? pen.lineTo(x * scale, y * scale) : pen.moveTo(x * scale, y * scale)));
        pen.closePath();
        pen.clip();
        fill(pen, plan, scale, number);
        pen.restore();
      }
    });
    return { sheet: entry.sheet, canvas: own, pen, contrast: entry.contrast, slides: entry.slides_mm_per_100_mm * scale };
  }

  function fade(one, air) {
    const tables = fadeTables(one.contrast, air);
    const pixels = one.pen.getImageData(0, 0, canvas.width, canvas.height);
    const { data } = pixels;
    for (let i = 0; i < data.length; i += 4) {
      if (data[i + 3]) {
        data[i] = tables[0][data[i]];
        data[i + 1] = tables[1][data[i + 1]];
        data[i + 2] = tables[2][data[i + 2]];
      }
    }
    one.pen.putImageData(pixels, 0, 0);
  }

  head.addEventListener('input', soon);
  canvas.addEventListener('pointermove', (event) => {
    const box = canvas.getBoundingClientRect();
    head.value = Math.round(2 * MOST_HEAD * ((event.clientX - box.left) / box.width - 0.5));
    soon();
  });
  place.replaceChildren(canvas, el('label', { class: 'hint', for: 'eye-head' }, 'Move your head: slide, arrow keys, or the pointer over the picture. White is where nothing is painted yet.'), head, chosen);

  return {
    /** Draws a plan that was found. */
    async show(plan, answer) {
      if (plan.picture && (!paper || paper.dataset.id !== plan.picture.id)) {
        paper = el('img', { src: address(`print/picture/${plan.picture.id}`), 'data-id': plan.picture.id });
        await paper.decode();
      }
      const [width, height] = plan.piece.sheet_mm;
      const scale = WIDE / Math.max(width, height);
      canvas.width = Math.round(width * scale);
      canvas.height = Math.round(height * scale);
      layers = answer.sheet_list.filter((one) => one.subjects.length).map((one) => layer(plan, scale, one));
      const air = layers.length ? meanLight(layers[layers.length - 1].pen, canvas) : [1, 1, 1];
      layers.forEach((one) => fade(one, air));
      only = layers.some((one) => one.sheet === only) ? only : 0;
      chosen.replaceChildren(selectField({ id: 'eye-sheet', label: 'Show', value: String(only),
        options: [['0', 'all sheets'], ...layers.map((one) => [String(one.sheet), `sheet ${one.sheet}${one.sheet > 1 ? ', the one in front as a ghost' : ''}`])],
        onChange: (value) => { only = Number(value); soon(); } }));
      paint();
    },
  };
}
