import { byId, button, el } from '../dom.js';
import { PENS, SPAN, sketchDrawing, strokeLine } from '../notebook/sketch-drawing.js';

const WIDTHS = [4, 9];
const NEAR = 25;

/** Where the film's picture lies inside its element. */
function pictureBox() {
  const video = byId('video');
  const box = video.getBoundingClientRect();
  const shape = (video.videoWidth || 16) / (video.videoHeight || 9);
  const width = Math.min(box.width, box.height * shape);
  const height = width / shape;
  return { left: (box.width - width) / 2, top: (box.height - height) / 2, width, height };
}

function overlay(strokes) {
  const box = pictureBox();
  const node = sketchDrawing(strokes, box.width);
  node.classList.add('sketch-over');
  Object.entries(box).forEach(([name, value]) => { node.style[name] = `${value}px`; });
  return { node, wide: box.width };
}

/** Lays a kept sketch over the paused picture until the film goes on. */
export function showSketch(strokes) {
  hideSketch();
  if (strokes.length) {
    const { node } = overlay(strokes);
    byId('picture').append(node);
    ['play', 'seeking'].forEach((event) => byId('video').addEventListener(event, hideSketch, { once: true }));
  }
}

export const hideSketch = () => byId('picture').querySelectorAll('.sketch-over, .sketch-tools').forEach((node) => node.remove());

function drawable(node, wide, strokes, pen) {
  let line = null;
  const at = (event) => {
    const box = node.getBoundingClientRect();
    const within = (value) => Math.round(Math.max(0, Math.min(1, value)) * SPAN);
    return [within((event.clientX - box.left) / box.width), within((event.clientY - box.top) / box.height)];
  };
  const redraw = () => {
    node.lastChild?.remove();
    node.append(strokeLine(line, wide));
  };
  node.addEventListener('pointerdown', (event) => {
    event.preventDefault();
    node.setPointerCapture(event.pointerId);
    line = { colour: pen.colour, width: pen.width, points: at(event) };
    node.append(strokeLine(line, wide));
  });
  node.addEventListener('pointermove', (event) => {
    if (!line || line.points.length >= 4000) {
      return;
    }
    const [x, y] = at(event);
    const [px, py] = line.points.slice(-2);
    if (Math.hypot(x - px, y - py) >= NEAR) {
      line.points.push(x, y);
      redraw();
    }
  });
  const end = () => {
    if (line) {
      strokes.push(line);
      line = null;
      node.dispatchEvent(new CustomEvent('stroke'));
    }
  };
  node.addEventListener('pointerup', end);
  node.addEventListener('pointercancel', end);
}

function penButtons(pen) {
  const all = PENS.map((name, colour) => button({ label: `${name} pen`, kind: `pen pen-${colour}`, 'aria-pressed': String(colour === pen.colour), onClick: () => {
    pen.colour = colour;
    all.forEach((node, i) => node.setAttribute('aria-pressed', String(i === colour)));
  } }));
  return all;
}

/** Opens the pens over the paused picture; `kept(strokes)` gets every change. */
export function drawSketch(first, kept) {
  hideSketch();
  byId('video').pause();
  const strokes = [...first];
  const pen = { colour: 2, width: WIDTHS[0] };
  const { node, wide } = overlay(strokes);
  node.classList.add('drawing');
  drawable(node, wide, strokes, pen);
  node.addEventListener('stroke', () => kept([...strokes]));
  const redraw = () => node.replaceChildren(...strokes.map((stroke) => strokeLine(stroke, wide)));
  const thick = button({ text: 'Thick', 'aria-pressed': 'false', onClick: () => {
    pen.width = pen.width === WIDTHS[0] ? WIDTHS[1] : WIDTHS[0];
    thick.setAttribute('aria-pressed', String(pen.width === WIDTHS[1]));
  } });
  byId('picture').append(node, el('div', { class: 'sketch-tools', role: 'group', 'aria-label': 'Sketch' }, penButtons(pen), thick,
    button({ text: 'Undo', onClick: () => { strokes.pop(); redraw(); kept([...strokes]); } }),
    button({ text: 'Done', kind: 'main', id: 'sketch-done', onClick: () => { showSketch(strokes); } })));
  byId('video').addEventListener('play', hideSketch, { once: true });
}
