import { button, el, svg } from './dom.js';

const QUIET_SQUARES = 4;
const TURN_MS = 1500;

/** A QR code from rows of 0 and 1, with the light margin that readers need. */
export function codeDrawing(rows, label) {
  const side = rows.length + 2 * QUIET_SQUARES;
  const path = rows.flatMap((row, y) => Array.from(row, (square, x) => (square === '1'
    ? `M${x + QUIET_SQUARES} ${y + QUIET_SQUARES}h1v1h-1z` : ''))).join('');
  return svg('svg', { class: 'code', viewBox: `0 0 ${side} ${side}`, role: 'img', 'aria-label': label, 'shape-rendering': 'crispEdges' },
    svg('rect', { width: side, height: side, fill: '#fff' }),
    svg('path', { d: path, fill: '#000' }));
}

/** Turns by itself as long as it is on the page, and for nobody who wants no motion. */
function turning(next, box) {
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
    return;
  }
  box.checked = true;
  const timer = setInterval(() => {
    if (!box.isConnected) {
      clearInterval(timer);
    } else if (box.checked) {
      next();
    }
  }, TURN_MS);
}

function severalCodes(codes, what) {
  const place = el('div', {});
  const said = el('p', {});
  const box = el('input', { type: 'checkbox' });
  let now = 0;
  const show = (index) => {
    now = (index + codes.length) % codes.length;
    place.replaceChildren(codeDrawing(codes[now], `${what}, code ${now + 1} of ${codes.length}`));
    said.textContent = `Code ${now + 1} of ${codes.length}`;
  };
  const step = (by) => () => {
    box.checked = false;
    show(now + by);
  };
  show(0);
  turning(() => show(now + 1), box);
  return [place, said, el('div', { class: 'row' },
    button({ text: 'Code before', onClick: step(-1) }),
    button({ text: 'Next code', onClick: step(1) }),
    el('label', {}, box, 'Turn by itself'))];
}

/** A message as codes for another laptop's or telephone's camera: one, or several that take turns. */
export function codesView(codes, what, words) {
  return el('figure', { class: 'codes' },
    codes.length === 1 ? codeDrawing(codes[0], what) : severalCodes(codes, what),
    el('figcaption', {}, words));
}
