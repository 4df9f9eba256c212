import { address } from '../api.js';
import { svg } from '../dom.js';
import { chainMarks, outlines } from './surface-marks.js';
import { fault, simpler, tidy, wouldCross } from './shapes.js';

/**
 * The picture, to be drawn on with mouse, pen, finger or keys. `on` is told: closed(outline), said(text),
 * trouble(text or null), draft(number of corners). Units are millimetres on the sheet.
 */
const STEPS = { plain: 2, Shift: 10, Alt: 0.5 };
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const CLOSE_PIXELS = 14;
const FREE_PIXELS = 5;

export function createSurface(on, inUnit) {
  let plan = null;
  let view = {};
  let draft = [];
  let cursor = null;
  let pressed = null;
  const root = svg('svg', { class: 'surface', id: 'drawing', tabindex: 0, role: 'application', 'aria-label': 'The picture. Arrow keys move the cross, Enter sets a corner, Backspace takes it back, Escape drops the outline.' });
  const paper = svg('image', { preserveAspectRatio: 'none' });
  const over = svg('g', {});
  root.append(paper, over);
  const size = () => plan.piece.sheet_mm;
  const perPixel = () => size()[0] / Math.max(1, root.getBoundingClientRect().width);
  const within = ([x, y]) => tidy([Math.min(size()[0], Math.max(0, x)), Math.min(size()[1], Math.max(0, y))]);
  const near = (a, b, mm) => Math.hypot(a[0] - b[0], a[1] - b[1]) <= mm;
  const words = ([x, y]) => `${inUnit(x)} from the left, ${inUnit(y)} from above`;

  function at(event) {
    const place = new DOMPoint(event.clientX, event.clientY).matrixTransform(root.getScreenCTM().inverse());
    return within([place.x, place.y]);
  }

  function set(point, quiet) {
    if (draft.length > 2 && near(point, draft[0], Math.max(CLOSE_PIXELS * perPixel(), 1.5))) {
      close();
      return;
    }
    if (draft.length && near(point, draft[draft.length - 1], 0.01)) {
      return;
    }
    if (wouldCross(draft, point)) {
      on.trouble('This line would cross the outline itself, so the corner was not set.');
      return;
    }
    draft = [...draft, point];
    on.trouble(null);
    on.draft(draft.length);
    if (!quiet) {
      on.said(`Corner ${draft.length}: ${words(point)}.`);
    }
    draw();
  }

  function close() {
    const shape = simpler([...draft, draft[0]], 0.2).slice(0, -1);
    const wrong = fault(shape.length > 2 ? shape : draft);
    if (wrong) {
      on.trouble(wrong);
      return;
    }
    const outline = shape.length > 2 ? shape : draft;
    drop();
    on.closed(outline);
  }

  function drop() {
    draft = [];
    on.draft(0);
    on.trouble(null);
    draw();
  }

  function back() {
    draft = draft.slice(0, -1);
    on.draft(draft.length);
    on.trouble(null);
    on.said(draft.length ? `${draft.length} corners left.` : 'No corner left.');
    draw();
  }

  function draw() {
    if (!plan) {
      return;
    }
    const [width, height] = size();
    const points = draft.map((p) => p.join(',')).join(' ');
    const arm = 9 * perPixel();
    const cross = (kind) => cursor && document.activeElement === root
      && svg('path', { class: kind, d: `M${cursor[0] - arm} ${cursor[1]}h${2 * arm}M${cursor[0]} ${cursor[1] - arm}v${2 * arm}` });
    root.setAttribute('viewBox', `0 0 ${width} ${height}`);
    over.replaceChildren(...[
      ...outlines(plan, view, perPixel()),
      plan.horizon_mm !== undefined && svg('line', { class: 'horizon', x1: 0, x2: width, y1: plan.horizon_mm, y2: plan.horizon_mm }),
      ...chainMarks(plan, view, perPixel()),
      svg('polyline', { class: 'draft', points }), svg('polyline', { class: 'draft-line', points }),
      draft.length && svg('circle', { class: 'first', cx: draft[0][0], cy: draft[0][1], r: 5 * perPixel() }),
      cross('cross-light'), cross('cross'),
      svg('rect', { class: 'frame', x: 0, y: 0, width, height }),
    ].filter(Boolean));
  }

  root.addEventListener('pointerdown', (event) => {
    if (event.button === 0) {
      root.focus({ preventScroll: true });
      root.setPointerCapture(event.pointerId);
      pressed = { from: at(event), moved: false };
      cursor = pressed.from;
    }
  });
  root.addEventListener('pointermove', (event) => {
    if (!pressed) {
      return;
    }
    const point = at(event);
    if (near(point, pressed.last || pressed.from, FREE_PIXELS * perPixel())) {
      return;
    }
    if (!pressed.moved) {
      set(pressed.from, true);
    }
    pressed = { ...pressed, moved: true, last: point };
    if (draft.length > 8 && near(point, draft[0], 10 * perPixel())) {
      pressed = null;
      close();
      return;
    }
    set(point, true);
  });
  root.addEventListener('pointerup', () => {
    if (pressed && !pressed.moved) {
      set(pressed.from);
    } else if (pressed && draft.length > 2 && near(pressed.last, draft[0], 24 * perPixel())) {
      close();
    }
    pressed = null;
  });
  root.addEventListener('keydown', (event) => {
    const way = ARROWS[event.key];
    if (way) {
      const step = event.shiftKey ? STEPS.Shift : event.altKey ? STEPS.Alt : STEPS.plain;
      cursor = within([cursor[0] + way[0] * step, cursor[1] + way[1] * step]);
      on.said(words(cursor));
      draw();
    } else if (event.key === 'Enter') {
      set(cursor);
    } else if (event.key === 'Backspace' && draft.length) {
      back();
    } else if (event.key === 'Escape' && draft.length) {
      drop();
    } else {
      return;
    }
    event.preventDefault();
  });
  root.addEventListener('focus', draw);
  root.addEventListener('blur', draw);

  /** The picture itself is loaded once and only moved. */
  function lay({ id, on_mm: [x0, y0, x1, y1] }) {
    const href = address(`print/picture/${id}`);
    if (paper.getAttribute('href') !== href) {
      paper.setAttribute('href', href);
    }
    Object.entries({ x: x0, y: y0, width: x1 - x0, height: y1 - y0 }).forEach(([name, value]) => paper.setAttribute(name, value));
  }

  return {
    node: root, close, drop,
    show(nextPlan, nextView = {}) {
      plan = nextPlan;
      if (plan.picture) {
        lay(plan.picture);
      }
      view = nextView;
      cursor = within(cursor || [size()[0] / 2, size()[1] / 2]);
      draw();
    },
  };
}
