import { byId, el, svg } from '../dom.js';
import { minutes, temperature, toUnit } from '../units.js';
import { readAt, ticks } from '../lesson/curve-shape.js';
import { longTime } from './words.js';

const PAD = { left: 44, right: 14, top: 22, bottom: 32 };
const TINTS = 5;
const KEY_STEPS = 100;

function scales(mine, other, unit, width, height) {
  const hours = Math.max(0.1, mine[mine.length - 1][0], other ? other[other.length - 1][0] : 0);
  const top = Math.max(...[...mine, ...(other || [])].map((point) => toUnit(point[1], unit))) * 1.06;
  const wide = width - PAD.left - PAD.right;
  const high = height - PAD.top - PAD.bottom;
  return {
    hours, top, width, height,
    x: (hour) => PAD.left + (hour / hours) * wide,
    y: (celsius) => PAD.top + high - (toUnit(celsius, unit) / top) * high,
    yOf: (shown) => PAD.top + high - (shown / top) * high,
    hourAt: (x) => Math.max(0, Math.min(hours, ((x - PAD.left) / wide) * hours)),
  };
}

function bands(times, s) {
  const floor = s.height - PAD.bottom;
  return times.map((time, i) => {
    const left = s.x(time.start_h);
    const wide = s.x(time.end_h) - left;
    return svg('g', {},
      svg('rect', { class: `step-band tint-${i % TINTS}`, x: left, y: PAD.top, width: Math.max(0, wide), height: floor - PAD.top }),
      wide > 9 ? svg('text', { class: 'step-number', x: left + wide / 2, y: PAD.top - 7, 'text-anchor': 'middle' }, String(time.segment)) : null);
  });
}

function axes(s, unit) {
  const floor = s.height - PAD.bottom;
  return [
    ...ticks(0, s.top, 4).map((value) => svg('g', {},
      svg('line', { class: 'grid', x1: PAD.left, x2: s.width - PAD.right, y1: s.yOf(value), y2: s.yOf(value) }),
      svg('text', { x: PAD.left - 6, y: s.yOf(value) + 4, 'text-anchor': 'end' }, String(Math.round(value))))),
    ...ticks(0, s.hours, Math.max(3, Math.floor(s.width / 80)), [1, 2, 3, 4, 6, 12]).map((hour) => svg('text', { x: s.x(hour), y: floor + 15, 'text-anchor': 'middle' }, String(Math.round(hour * 10) / 10))),
    svg('line', { class: 'axis', x1: PAD.left, x2: s.width - PAD.right, y1: floor, y2: floor }),
    svg('text', { x: PAD.left - 6, y: PAD.top - 8, 'text-anchor': 'end' }, `°${unit}`),
    svg('text', { x: s.width - PAD.right, y: floor + 29, 'text-anchor': 'end' }, 'hours'),
  ];
}

const path = (curve, s) => curve.map(([hour, celsius], i) => `${i ? 'L' : 'M'}${s.x(hour).toFixed(1)} ${s.y(celsius).toFixed(1)}`).join('');

/** A line that follows the pointer, or the arrow keys once the curve has the focus. */
function reading(picture, s, { mine, other, unit, words }) {
  const line = svg('line', { class: 'reading', y1: PAD.top, y2: s.height - PAD.bottom, visibility: 'hidden' });
  const dot = svg('circle', { class: 'reading-dot', r: 4, visibility: 'hidden' });
  picture.append(line, dot);
  let at = 0;
  const show = (hour) => {
    at = Math.max(0, Math.min(s.hours, hour));
    const last = mine[mine.length - 1][0];
    line.setAttribute('x1', s.x(at));
    line.setAttribute('x2', s.x(at));
    dot.setAttribute('cx', s.x(at));
    dot.setAttribute('cy', s.y(readAt(mine, at)));
    [line, dot].forEach((node) => node.setAttribute('visibility', 'visible'));
    words.textContent = `${minutes(at * 60)} after the start: ${at <= last + 1e-6 ? temperature(readAt(mine, at), unit) : 'cold'}`
      + (other && at <= other[other.length - 1][0] ? `; beside it ${temperature(readAt(other, at), unit)}` : '');
  };
  picture.addEventListener('pointermove', (event) => show(s.hourAt(event.clientX - picture.getBoundingClientRect().left)));
  picture.addEventListener('keydown', (event) => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (step) {
      event.preventDefault();
      show(at + (step * s.hours) / KEY_STEPS);
    }
  });
}

function render(place, state) {
  const { answer, settings } = state;
  const unit = settings.temperatureUnit;
  const mine = answer.curve;
  const other = answer.other ? answer.other.curve : null;
  const width = Math.max(280, place.clientWidth);
  const s = scales(mine, other, unit, width, Math.round(Math.min(Math.max(width * 0.42, 200), 420)));
  const top = Math.max(...mine.map((point) => point[1]));
  const picture = svg('svg', {
    class: 'curve', width: s.width, height: s.height, viewBox: `0 0 ${s.width} ${s.height}`, role: 'img', tabindex: '0',
    'aria-label': `My firing: ${longTime(answer.total_h)}, highest ${temperature(top, unit)}. Arrow keys read the curve; the same lines stand in the table.`,
  }, bands(answer.times, s), axes(s, unit),
  other ? svg('path', { class: 'line behind', d: path(other, s) }) : null,
  svg('path', { class: 'line mine', d: path(mine, s) }));
  const words = el('p', { class: 'curve-words', role: 'status' }, 'Touch the curve to read it.');
  const legend = el('p', { class: 'legend' }, el('span', { class: 'key mine' }), 'my firing',
    other ? [el('span', { class: 'key behind' }), state.second ? 'the second plan' : 'the lesson’s schedule'] : null);
  place.replaceChildren(picture, el('div', { class: 'under-curve' }, words, legend));
  reading(picture, s, { mine, other, unit, words });
}

export function connectCurve(store) {
  const place = byId('curve');
  let width = 0;
  const draw = () => store.getState().answer && render(place, store.getState());
  store.watch((state) => state.answer, draw);
  store.watch((state) => state.settings.temperatureUnit, draw);
  new ResizeObserver(() => {
    if (place.clientWidth !== width) {
      width = place.clientWidth;
      draw();
    }
  }).observe(place);
}
