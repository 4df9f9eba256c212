import { byId, el } from '../dom.js';
import { moment } from './words.js';

const LEAST_KEYS = ['start', 'top reached', 'earliest lid time'];

function controls(store) {
  const { setup, answer } = store.getState();
  const start = answer ? answer.clock.start : '';
  const [day, time] = (setup.clock.at || start.slice(0, 16)).split('T');
  const date = el('input', { type: 'date', id: 'clock-day', value: day || '', 'aria-label': 'Day' });
  const hour = el('input', { type: 'time', id: 'clock-time', value: time || '', 'aria-label': 'Time' });
  const said = el('p', { class: 'field-trouble', id: 'clock-day-trouble', role: 'alert' });
  date.dataset.field = 'at';
  const mode = el('select', { id: 'clock-mode', 'aria-label': 'What the time means' },
    [['start', 'Start at'], ['top', 'Be there at the top at']].map(([key, words]) => el('option', { value: key, selected: key === setup.clock.mode }, words)));
  const change = () => {
    const whole = /^\d{4}-\d\d-\d\d$/.test(date.value) && /^\d\d:\d\d/.test(hour.value);
    said.textContent = whole || (!date.value && !hour.value) ? '' : 'Needed: a day and a time, such as 2026-03-01 and 08:00.';
    if (!said.textContent) {
      store.dispatch('change', { clock: { ...store.getState().setup.clock, mode: mode.value, at: whole ? `${date.value}T${hour.value.slice(0, 5)}` : '' } });
    }
  };
  [date, hour, mode].forEach((node) => node.addEventListener('change', change));
  return el('div', { class: 'clock-line' }, mode, date, hour, said);
}

function entryRow(entry) {
  return el('tr', { class: entry.be_there ? 'be-there' : null },
    el('th', { scope: 'row' }, entry.what),
    el('td', {}, moment(entry.at)),
    el('td', { class: 'quiet' }, `${moment(entry.earliest).slice(-5)} to ${moment(entry.latest)}`),
    el('td', {}, entry.be_there ? 'be there' : ''));
}

function chips(clock) {
  const keys = clock.entries.filter((entry) => LEAST_KEYS.includes(entry.what));
  const lid = clock.lid_by_day;
  const last = clock.entries[clock.entries.length - 1];
  const waits = lid && lid.slice(0, 16) !== last.at.slice(0, 16);
  return el('ul', { class: 'chips' },
    keys.map((entry) => el('li', {}, el('span', {}, entry.what), el('strong', {}, moment(entry.at)))),
    waits ? el('li', { id: 'lid-by-day' }, el('span', {}, 'lid, not at night'), el('strong', {}, moment(lid))) : null);
}

function answerPart({ clock }) {
  return el('div', {},
    clock.in_the_past ? el('p', { class: 'notice care', role: 'alert' }, `That start is over: ${moment(clock.start)}. Choose a later time.`) : null,
    chips(clock),
    el('details', { class: 'all-times' }, el('summary', {}, 'Every time, give or take a tenth'),
      el('table', { class: 'list' }, el('tbody', {}, clock.entries.map(entryRow))),
      el('p', { class: 'hint' }, `By the clock of ${clock.zone}, summer time counted. Vent, top and lid are yours to attend.`)));
}

/** The controls stay while one types; only the times below change. */
export function connectClock(store) {
  const times = el('div', { id: 'times' });
  let drawn = false;
  store.watch((state) => state.answer, (answer) => {
    if (!answer) {
      return;
    }
    if (!drawn) {
      drawn = true;
      byId('clock').replaceChildren(controls(store), times);
    }
    const open = times.querySelector('details[open]') !== null;
    times.replaceChildren(answerPart(answer));
    times.querySelector('details').open = open;
  });
}
