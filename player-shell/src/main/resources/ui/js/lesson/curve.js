import { el, svg } from '../dom.js';
import { minutes, temperature, toUnit } from '../units.js';
import { readAt, stepSpans, ticks } from './curve-shape.js';

const PAD = { left: 46, right: 12, top: 26, bottom: 34 };
const TINTS = 5;

/** Pixels from hours and temperatures. */
function scales(firing, unit, width, height) {
  const hours = Math.max(0.1, ...firing.curve.map((point) => point[0]));
  const top = Math.max(...firing.curve.map((point) => toUnit(point[1], unit))) * 1.06;
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

function bandsOf(spans, s) {
  const floor = s.height - PAD.bottom;
  return spans.map((span) => {
    const left = s.x(span.from);
    const wide = s.x(span.to) - left;
    return svg('g', {},
      svg('rect', { class: `step-band tint-${span.index % TINTS}`, x: left, y: PAD.top, width: Math.max(0, wide), height: floor - PAD.top }),
      wide > 7 ? svg('text', { class: 'step-number', x: left + wide / 2, y: PAD.top - 8, 'text-anchor': 'middle' }, String(span.index + 1)) : null);
  });
}

function axes(s, unit) {
  const floor = s.height - PAD.bottom;
  const hourTicks = ticks(0, s.hours, Math.max(3, Math.floor(s.width / 80)));
  const heatTicks = ticks(0, s.top, 4);
  return [
    ...heatTicks.map((value) => svg('g', {},
      svg('line', { class: 'grid', x1: PAD.left, x2: s.width - PAD.right, y1: s.yOf(value), y2: s.yOf(value) }),
      svg('text', { x: PAD.left - 6, y: s.yOf(value) + 4, 'text-anchor': 'end' }, String(Math.round(value))))),
    ...hourTicks.map((hour) => svg('text', { x: s.x(hour), y: floor + 15, 'text-anchor': 'middle' }, String(Math.round(hour * 10) / 10))),
    svg('line', { class: 'axis', x1: PAD.left, x2: s.width - PAD.right, y1: floor, y2: floor }),
    svg('text', { x: PAD.left - 6, y: PAD.top - 10, 'text-anchor': 'end' }, `°${unit}`),
    svg('text', { x: s.width - PAD.right, y: floor + 30, 'text-anchor': 'end' }, 'hours'),
  ];
}

/** A dotted line that follows the pointer; the words say the reading. */
function reading(picture, s, firing, unit, words) {
  const line = svg('line', { class: 'reading', y1: PAD.top, y2: s.height - PAD.bottom, visibility: 'hidden' });
  const dot = svg('circle', { class: 'reading-dot', r: 4, visibility: 'hidden' });
  picture.append(line, dot);
  picture.addEventListener('pointermove', (event) => {
    const hour = s.hourAt(event.clientX - picture.getBoundingClientRect().left);
    const celsius = readAt(firing.curve, hour);
    line.setAttribute('x1', s.x(hour));
    line.setAttribute('x2', s.x(hour));
    dot.setAttribute('cx', s.x(hour));
    dot.setAttribute('cy', s.y(celsius));
    [line, dot].forEach((node) => node.setAttribute('visibility', 'visible'));
    words.textContent = `${minutes(hour * 60)} after the start: ${temperature(celsius, unit)}`;
  });
}

function render(place, firing, unit) {
  const width = Math.max(280, place.clientWidth);
  const s = scales(firing, unit, width, Math.round(Math.min(Math.max(width * 0.56, 190), 460)));
  const spans = stepSpans(firing.segments, firing.curve);
  const path = firing.curve.map(([hour, celsius], i) => `${i ? 'L' : 'M'}${s.x(hour).toFixed(1)} ${s.y(celsius).toFixed(1)}`).join('');
  const top = Math.max(...firing.curve.map((point) => point[1]));
  const picture = svg('svg', {
    class: 'curve', width: s.width, height: s.height, viewBox: `0 0 ${s.width} ${s.height}`, role: 'img',
    'aria-label': `Temperature over ${minutes(s.hours * 60)}, highest ${temperature(top, unit)}. The same steps stand in the table.`,
  }, bandsOf(spans, s), axes(s, unit), svg('path', { class: 'line', d: path }));
  const words = el('p', { class: 'curve-words' }, 'Touch the curve to read it.');
  place.replaceChildren(picture, words);
  reading(picture, s, firing, unit, words);
}

/** Draws the temperature-time curve and redraws it when its place changes width; returns how to stop. */
export function drawCurve(place, firing, unit) {
  if (!firing.curve || firing.curve.length < 2) {
    return () => undefined;
  }
  let width = 0;
  const observer = new ResizeObserver(() => {
    if (place.clientWidth !== width) {
      width = place.clientWidth;
      render(place, firing, unit);
    }
  });
  observer.observe(place);
  return () => observer.disconnect();
}
