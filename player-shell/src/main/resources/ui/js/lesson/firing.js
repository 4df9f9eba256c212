import { el, icon } from '../dom.js';
import { minutes, rate, temperature } from '../units.js';
import { choice } from '../settings-form.js';
import { drawCurve } from './curve.js';
import { heatCautions } from './cautions.js';

export const TINTS = 5;

const target = (segment, unit) => (segment.targetC === null || segment.targetC === undefined ? 'off' : temperature(segment.targetC, unit));

function speed(segment, unit) {
  if (segment.targetC === null || segment.targetC === undefined) {
    return '';
  }
  return segment.rateCPerH === null || segment.rateCPerH === undefined ? 'free' : rate(Math.abs(segment.rateCPerH), unit);
}

function row(segment, i, unit) {
  const words = [segment.name && String(segment.name) !== String(i + 1) ? segment.name : '', segment.note].filter(Boolean).join(', ');
  return el('tr', {},
    el('th', { scope: 'row' }, el('span', { class: `step-mark tint-${i % TINTS}` }, String(i + 1))),
    el('td', { class: 'number' }, speed(segment, unit)),
    el('td', { class: 'number' }, target(segment, unit)),
    el('td', { class: 'number' }, segment.holdMin ? minutes(segment.holdMin) : ''),
    el('td', {}, words));
}

function table(firing, unit) {
  return el('table', { class: 'list' },
    el('caption', {}, `About ${minutes((firing.hoursTotal || 0) * 60)} by the controller. “Free” means as fast as the kiln can.`),
    el('thead', {}, el('tr', {}, ['Step', 'Rate', 'To', 'Hold', 'Note'].map((words, i) =>
      el('th', { scope: 'col', class: i > 0 && i < 4 ? 'number' : null }, words)))),
    el('tbody', {}, firing.segments.map((segment, i) => row(segment, i, unit))));
}

const problems = (firing) => (firing.problems && firing.problems.length
  ? el('div', { class: 'notice care' }, firing.problems.map((line) => el('p', {}, typeof line === 'string' ? line : line.text || line.message)))
  : null);

/** From the lesson's schedule to the one for my own block. */
function toKilnSheet(store, paper) {
  const { lesson } = store.getState();
  const query = new URLSearchParams({ e: lesson.edition, l: lesson.lesson.id, a: paper.id });
  return el('p', {}, el('a', { class: 'button main', id: 'to-kiln-sheet', href: `kiln.html?${query}` }, icon('firing'), 'For my block, in my kiln'));
}

/** A firing schedule as curve and table; the unit switch holds everywhere. */
export async function showFiring(body, paper, store) {
  const firing = paper.data;
  let stop = () => undefined;
  const unwatch = store.watch((state) => state.settings.temperatureUnit, (unit) => {
    stop();
    const picture = el('div', {});
    const choose = choice({ key: 'schedule-unit', title: 'Temperatures in', options: [['C', '°C'], ['F', '°F']] }, unit,
      (patch) => {
        store.dispatch('settings', { temperatureUnit: patch['schedule-unit'] });
        body.querySelector('input:checked')?.focus();
      });
    body.replaceChildren(...[toKilnSheet(store, paper), picture, table(firing, unit), problems(firing), choose, heatCautions()].filter(Boolean));
    stop = drawCurve(picture, firing, unit);
  });
  return {
    pages: 0,
    dispose: () => {
      unwatch();
      stop();
    },
  };
}
