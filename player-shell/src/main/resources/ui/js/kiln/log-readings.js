import { address, post } from '../api.js';
import { el } from '../dom.js';
import { numberField, textField } from '../fields.js';
import { minutes, temperature } from '../units.js';
import { inWords, moment } from './words.js';

/** Readings of a firing: typed at the kiln, or taken from a file, beside what was predicted. */

function difference(row, unit) {
  if (row.display_c === undefined) {
    return '';
  }
  const kelvin = row.display_c - row.predicted_c;
  return `${kelvin >= 0 ? '+' : '−'}${Math.round(Math.abs(kelvin) * (unit === 'F' ? 1.8 : 1))}`;
}

const sinceStart = (hours) => `${minutes(Math.abs(hours) * 60)} ${hours < 0 ? 'before' : 'after'} the start`;

export function readingsTable(firing, unit) {
  const meter = firing.outcome.meter || [];
  return el('div', {},
    firing.readings.length ? el('table', { class: 'list' },
      el('thead', {}, el('tr', {}, ['When', 'Display', 'Predicted', 'Off by', 'Note'].map((words) => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, firing.readings.map((row) => el('tr', {},
        el('th', { scope: 'row' }, moment(row.at)), el('td', {}, row.display_c === undefined ? '' : temperature(row.display_c, unit)),
        el('td', {}, temperature(row.predicted_c, unit)), el('td', {}, difference(row, unit)), el('td', {}, row.note))))) : el('p', { class: 'quiet' }, 'No reading yet.'),
    meter.length ? el('p', { id: 'meter-readings' }, `The meter: ${meter.map((one) => `${one.kwh} kWh ${sinceStart(one.after_h)}`).join(', ')}.`) : null);
}

const troubleWords = (problem, settings) => (problem.said ? `${problem.field.replace(/[._]/g, ' ')} ${inWords(problem.said, settings)}` : problem.message);

/** What the bench could not use, at the form; true if everything was kept. */
function tell(place, kept, settings) {
  place.textContent = kept.problem ? `${troubleWords(kept.problem, settings)}. Nothing was kept, and nothing that you typed is lost.` : '';
  return !kept.problem;
}

export function readingForm(store, firing, again) {
  const { settings } = store.getState();
  const reading = { celsius: null, meter_kwh: null, note: '' };
  const at = el('input', { type: 'text', id: 'reading-at', placeholder: 'now', 'aria-label': 'When, such as 2026-03-01T22:40; empty means now' });
  const said = el('p', { class: 'field-trouble', role: 'alert' });
  const save = async (event) => {
    event.preventDefault();
    const body = { ...Object.fromEntries(Object.entries(reading).filter(([, value]) => value !== null)), ...(at.value.trim() ? { at: at.value.trim().replace(' ', 'T') } : {}) };
    const kept = await post(`api/firings/${firing.id}/reading`, body).catch((error) => ({ problem: { message: error.happened } }));
    if (tell(said, kept, settings)) {
      again();
    }
  };
  const number = (key, spec) => numberField({ optional: true, value: null, onChange: (value) => { reading[key] = value; }, ...spec }, settings);
  return el('form', { class: 'reading-form', on: { submit: save } },
    number('celsius', { id: 'reading-c', field: 'celsius', label: 'The display shows', kind: 'C', min: -30, max: 1400 }),
    number('meter_kwh', { id: 'reading-kwh', field: 'meter_kwh', label: 'The electricity meter shows', kind: 'kWh', min: 0, max: 1e8 }),
    textField({ id: 'reading-note', label: 'Note (vent shut, line 3 …)', value: '', onChange: (value) => { reading.note = value; } }),
    el('div', { class: 'field' }, el('label', { for: 'reading-at' }, 'When'), at),
    el('button', { type: 'submit', class: 'main' }, 'Keep the reading'), said);
}

/** Posts a file of the person's; the answer, or what went wrong, as the bench says it. */
export async function postFile(path, file) {
  const response = await fetch(address(path), { method: 'POST', headers: { 'Content-Type': 'application/octet-stream', 'X-Lehrcase': '1' }, body: file });
  const answer = await response.json();
  if (!response.ok) {
    throw answer.error;
  }
  return answer;
}

/** Takes readings out of a file that a controller's program or a spreadsheet has written. */
export function readingsFile(store, firing, again) {
  const { settings } = store.getState();
  const file = el('input', { type: 'file', accept: '.csv,.txt,.json,text/csv,application/json', id: 'readings-file' });
  const said = el('p', { class: 'field-trouble', role: 'alert', id: 'readings-trouble' });
  file.addEventListener('change', async () => {
    const kept = await postFile(`api/firings/${firing.id}/readings`, file.files[0]).catch((error) => ({ problem: { message: error.happened } }));
    file.value = '';
    if (tell(said, kept, settings)) {
      again();
    }
  });
  return el('details', {}, el('summary', {}, 'Take readings from a file'),
    el('p', { class: 'hint' }, 'CSV with a header row, or JSON: at (2026-03-01 22:40) or after_h; display_c or display_f; note. Semicolons and decimal commas are fine.'),
    el('label', { for: 'readings-file' }, 'The file '), file, said);
}
