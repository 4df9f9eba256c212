import { post } from '../api.js';
import { button, el } from '../dom.js';
import { readNumber } from '../fields.js';
import { toUnit } from '../units.js';
import { inWords } from './words.js';

/** Fit my kiln: a few looks at the clock and the display give its own pace and its loss. */

const ROWS = 4;
const HOURS = 24;

/** "7:30" or "7.5" as hours; a clock that passes midnight goes on. */
export function hoursOf(text) {
  const clock = /^\s*(\d{1,3}):(\d\d)\s*$/.exec(text);
  return clock ? Number(clock[1]) + Number(clock[2]) / 60 : readNumber(text);
}

const celsius = (shown, unit) => (unit === 'F' ? (shown - 32) / 1.8 : shown);

function readingRows(name, unit) {
  return Array.from({ length: ROWS }, (unused, i) => el('tr', {},
    el('td', {}, el('input', { type: 'text', inputmode: 'decimal', 'aria-label': `${name}, reading ${i + 1}, clock`, placeholder: i ? '' : '22:00', 'data-row': name })),
    el('td', {}, el('input', { type: 'text', inputmode: 'decimal', 'aria-label': `${name}, reading ${i + 1}, display in °${unit}`, placeholder: i ? '' : String(Math.round(toUnit(500, unit))) }))));
}

/** Readings as the bench wants them; throws the words for a row that cannot be read. */
function collect(body, unit) {
  const readings = [];
  Array.from(body.rows).forEach((row, i) => {
    const [clock, shown] = Array.from(row.querySelectorAll('input')).map((input) => input.value);
    if (!clock.trim() && !shown.trim()) {
      return;
    }
    let h = hoursOf(clock);
    const c = celsius(readNumber(shown), unit);
    if (Number.isNaN(h) || Number.isNaN(c)) {
      throw new Error(`Reading ${i + 1} needs a clock time such as 22:40 and a number from the display.`);
    }
    const last = readings[readings.length - 1];
    while (last && h < last.h && clock.includes(':')) {
      h += HOURS;
    }
    readings.push({ h, c });
  });
  return readings;
}

function table(title, name, unit) {
  const body = el('tbody', {}, readingRows(name, unit));
  return [body, el('table', { class: 'list fit-table' }, el('caption', {}, title),
    el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Clock'), el('th', { scope: 'col' }, `Display, °${unit}`))), body)];
}

/** The form; `put(key, value)` writes a fitted figure into the kiln's form. */
export function fitForm(store, figures, put) {
  const unit = figures.unit || 'C';
  const [cooling, coolingTable] = table('With the power off and the usual load, hot to warm', 'Cooling', unit);
  const [heating, heatingTable] = table('At full power, as fast as it goes', 'Heating', unit);
  const duty = el('input', { type: 'text', inputmode: 'decimal', id: 'fit-duty' });
  const hold = el('input', { type: 'text', inputmode: 'decimal', id: 'fit-hold' });
  const said = el('p', { role: 'status', class: 'fit-said' });
  const fit = async () => {
    try {
      const ask = { cooling: collect(cooling, unit), heating: collect(heating, unit) };
      if (figures.room_c !== undefined) {
        ask.room_c = figures.room_c;
      }
      if (duty.value.trim() || hold.value.trim()) {
        ask.hold = { duty: readNumber(duty.value) / 100 || 0, rated_w: figures.rated_w || 0, hold_c: celsius(readNumber(hold.value), unit) || 0 };
      }
      const found = await post('api/kiln/fit', ask);
      if (found.problem) {
        said.textContent = `${found.problem.field.replace(/[._]/g, ' ')}: ${inWords(found.problem.said, store.getState().settings)}`;
        return;
      }
      Object.entries(found).forEach(([key, value]) => put(key, value));
      said.textContent = Object.keys(found).length
        ? `Fitted and filled in above: ${Object.entries(found).map(([key, value]) => `${key.replace(/_/g, ' ')} ${value}`).join(', ')}. Keep the kiln to use it.`
        : 'Write at least two readings.';
    } catch (error) {
      said.textContent = error.happened || error.message;
    }
  };
  return el('details', { class: 'fit' }, el('summary', {}, 'Fit my kiln from a few clock readings'),
    coolingTable, heatingTable,
    el('p', {}, 'For the loss: on any long hold, which share of the time are the elements on?'),
    el('div', { class: 'pair' }, el('div', { class: 'field' }, el('label', { for: 'fit-duty' }, 'On, in %'), duty),
      el('div', { class: 'field' }, el('label', { for: 'fit-hold' }, `Held at, °${unit}`), hold)),
    button({ id: 'fit-button', text: 'Fit', onClick: fit }), said);
}
