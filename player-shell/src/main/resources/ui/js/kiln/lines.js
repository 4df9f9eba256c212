import { byId, el } from '../dom.js';
import { minutes, rate, temperature } from '../units.js';
import { kilnOf } from './setup.js';
import { inWords } from './words.js';

const TINTS = 5;

/** What the controller wants to hear, in its own unit; without a controller, the plan itself. */
function rows({ answer, settings }) {
  const unit = settings.temperatureUnit;
  const typed = answer.controller && !answer.controller.refused ? answer.controller.type_in : null;
  return answer.segments.map((segment, i) => ({
    name: segment.name,
    rate: typed ? typed[i].rate : segment.rate_c_per_h === null ? 'free' : rate(segment.rate_c_per_h, unit),
    target: typed ? typed[i].target : temperature(segment.target_c, unit),
    hold: typed ? typed[i].hold : minutes(segment.hold_min),
    why: segment.limited_by,
    note: segment.note,
  }));
}

function row(line, i) {
  return el('tr', {},
    el('th', { scope: 'row' }, el('span', { class: `step-mark tint-${i % TINTS}` }, String(i + 1))),
    el('td', { class: 'number' }, line.rate),
    el('td', { class: 'number' }, line.target),
    el('td', { class: 'number' }, line.hold),
    el('td', {}, line.name, el('small', { title: line.note ? `${line.why}; ${line.note}` : line.why }, line.why)));
}

function unitOf(state) {
  const kiln = kilnOf(state);
  return kiln ? kiln.figures.unit || 'C' : state.settings.temperatureUnit;
}

function notes(state) {
  const { controller } = state.answer;
  if (!controller) {
    return [];
  }
  const changes = controller.changes.map((line) => el('li', {}, line));
  return [
    controller.refused ? el('div', { class: 'notice bad', role: 'alert' },
      state.answer.notes.filter((note) => note.topic === 'CONTROLLER').map((note) => el('p', {}, el('strong', {}, inWords(note, state.settings)))),
      el('p', {}, 'Below stands what the block needs, unrounded. Use another kiln, or change the block.')) : null,
    changes.length ? el('details', { class: 'changes' }, el('summary', {}, 'Fitted to the controller'), el('ul', {}, changes)) : null,
  ];
}

function draw(store) {
  const state = store.getState();
  if (!state.answer) {
    return;
  }
  const unit = unitOf(state);
  byId('lines').replaceChildren(...[...notes(state).slice(0, 1),
    el('table', { class: 'list' },
      el('caption', {}, `°${unit}, rates per hour, holds in h:min. Rounded to the safe side, and simulated as rounded.`),
      el('thead', {}, el('tr', {}, ['Line', 'Rate', 'To', 'Hold', 'For, and what limits it'].map((words, i) => el('th', { scope: 'col', class: i > 0 && i < 4 ? 'number' : null }, words)))),
      el('tbody', {}, rows(state).map((line, i) => row(line, i)))),
    ...notes(state).slice(1)].filter(Boolean));
}

export function connectLines(store) {
  store.watch((state) => state.answer, () => draw(store));
  store.watch((state) => state.settings, () => draw(store));
}
