import { address, get, post, put } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { openPanel } from '../panel.js';
import { choice } from '../settings-form.js';
import { temperature } from '../units.js';
import { numberField, textField } from '../fields.js';
import { faultCards } from './fault-cards.js';
import { fetchMade } from './papers.js';
import { powerCutForm } from './power-cut.js';
import { reloadKilns } from './kilns.js';
import { moment, stress, longTime } from './words.js';

/** One firing of the log: readings against the prediction, the power cut, pictures, the result. */

function readingsTable(firing, unit) {
  if (!firing.readings.length) {
    return el('p', { class: 'quiet' }, 'No reading yet.');
  }
  const difference = (row) => (row.display_c === undefined ? '' : `${row.display_c >= row.predicted_c ? '+' : '−'}${Math.round(Math.abs(row.display_c - row.predicted_c) * (unit === 'F' ? 1.8 : 1))}`);
  return el('table', { class: 'list' },
    el('thead', {}, el('tr', {}, ['When', 'Display', 'Predicted', 'Off by', 'Note'].map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, firing.readings.map((row) => el('tr', {},
      el('th', { scope: 'row' }, moment(row.at)), el('td', {}, row.display_c === undefined ? '' : temperature(row.display_c, unit)),
      el('td', {}, temperature(row.predicted_c, unit)), el('td', {}, difference(row)), el('td', {}, row.note)))));
}

function readingForm(store, firing, again) {
  const { settings } = store.getState();
  const reading = { celsius: null, note: '' };
  const at = el('input', { type: 'text', id: 'reading-at', placeholder: 'now', 'aria-label': 'When, such as 2026-03-01T22:40; empty means now' });
  const said = el('p', { class: 'field-trouble', role: 'alert' });
  const save = async (event) => {
    event.preventDefault();
    const body = { note: reading.note, ...(reading.celsius === null ? {} : { celsius: reading.celsius }), ...(at.value.trim() ? { at: at.value.trim().replace(' ', 'T') } : {}) };
    const kept = await post(`api/firings/${firing.id}/reading`, body).catch((error) => ({ problem: { field: '', message: error.happened } }));
    if (kept.problem) {
      said.textContent = `${kept.problem.field} ${kept.problem.message}`;
      return;
    }
    again();
  };
  return el('form', { class: 'reading-form', on: { submit: save } },
    numberField({ id: 'reading-c', field: 'celsius', label: 'The display shows', kind: 'C', min: -30, max: 1400, optional: true, value: null, onChange: (value) => { reading.celsius = value; } }, settings),
    textField({ id: 'reading-note', label: 'Note (vent shut, line 3 …)', value: '', onChange: (value) => { reading.note = value; } }),
    el('div', { class: 'field' }, el('label', { for: 'reading-at' }, 'When'), at),
    el('button', { type: 'submit', class: 'main' }, 'Keep the reading'), said);
}

const tick = (outcome, key, label) => {
  const box = el('input', { type: 'checkbox', checked: outcome[key] === true });
  box.addEventListener('change', () => { outcome[key] = box.checked; });
  return el('label', {}, box, label);
};

function resultForm(store, firing, again) {
  const outcome = { ...firing.outcome };
  const said = el('p', { role: 'status' });
  const text = (key, label) => textField({ id: `outcome-${key}`, label, value: outcome[key] || '', onChange: (value) => { outcome[key] = value; } });
  const edge = el('div', { hidden: outcome.result !== 'cracked' },
    choice({ key: 'edge', title: 'The edge of the crack is', options: [['sharp', 'sharp: it broke while cooling'], ['rounded', 'rounded: it broke while heating']] }, outcome.edge || '', (patch) => { outcome.edge = patch.edge; }));
  return el('details', { open: firing.ended }, el('summary', {}, 'What came out of the kiln'),
    choice({ key: 'result', title: 'The piece', options: [['whole', 'is whole'], ['cracked', 'cracked']] }, outcome.result || '', (patch) => {
      outcome.result = patch.result;
      edge.hidden = patch.result !== 'cracked';
    }),
    edge,
    el('fieldset', { class: 'choices' }, el('legend', {}, 'Also seen'), tick(outcome, 'bubbles', 'bubbles'), tick(outcome, 'needles', 'needles at the rim'), tick(outcome, 'veil', 'a milky veil'), tick(outcome, 'overflow', 'glass over the dam')),
    text('polarisers', 'Between crossed polarisers'), text('later', 'Later cracks: after how many days'), text('meter_kwh', 'The meter says, kWh'), text('note', 'Anything else'),
    el('div', { class: 'notice care' }, ['LATE_CRACKS', 'FOOD', 'CHIPS'].map((name) => el('p', {}, store.getState().known.cautions[name]))),
    button({ id: 'outcome-keep', text: 'Keep the result', kind: 'main', onClick: async () => {
      try {
        await put(`api/firings/${firing.id}`, { outcome });
        again();
      } catch (error) {
        said.replaceChildren(errorNotice(error));
      }
    } }), said);
}

function pictures(firing, again, fail) {
  const file = el('input', { type: 'file', accept: 'image/jpeg,image/png,image/webp', id: 'photo-file' });
  file.addEventListener('change', async () => {
    try {
      const response = await fetch(address(`api/firings/${firing.id}/photo`), { method: 'POST', headers: { 'Content-Type': 'application/octet-stream', 'X-Lehrcase': '1' }, body: file.files[0] });
      if (!response.ok) {
        throw (await response.json()).error;
      }
      again();
    } catch (error) {
      fail(error);
    }
  });
  return el('div', {}, el('div', { class: 'photos' }, firing.photos.map((photo, i) => el('img', { src: address(photo), alt: `Picture ${i + 1} of this firing`, loading: 'lazy' }))),
    el('label', { for: 'photo-file' }, 'Add a picture (JPEG, PNG or WebP, up to 4 MB) '), file);
}

async function learn(store, firing, said) {
  try {
    const { cooling_h: hours } = await post(`api/firings/${firing.id}/fit`);
    const kiln = store.getState().kilns.find((one) => one.id === firing.setup.kiln);
    if (!kiln) {
      said.textContent = `This kiln cools with ${hours} h by itself. Describe it under My kilns to use that.`;
      return;
    }
    await put(`api/kilns/${kiln.id}`, { name: kiln.name, figures: { ...kiln.figures, cooling_h: hours } });
    await reloadKilns(store);
    said.textContent = `${kiln.name} now cools with ${hours} h by itself.`;
  } catch (error) {
    said.replaceChildren(errorNotice(error));
  }
}

/** Opens a firing; `changed` is told when something was written. */
export async function openFiring(store, id, changed) {
  const firing = await get(`api/firings/${id}`);
  const { settings } = store.getState();
  const again = () => { changed(); openFiring(store, id, changed); };
  const said = el('div', { role: 'status' });
  const fail = (error) => said.replaceChildren(errorNotice(error));
  const save = (kind) => () => post(`api/firings/${id}/paper`, { kind }).then(fetchMade).catch(fail);
  const { answer } = firing.plan;
  openPanel(firing.name,
    el('p', {}, `Started ${moment(firing.started_at)}; planned ${longTime(answer.total_h)}, ${stress(answer.stress.residual_core_mpa)} to stay.`),
    readingsTable(firing, settings.temperatureUnit),
    firing.ended ? null : readingForm(store, firing, again),
    firing.ended ? null : powerCutForm(store, firing),
    resultForm(store, firing, again),
    await faultCards(firing),
    pictures(firing, again, fail),
    said,
    el('div', { class: 'row' },
      button({ text: 'Learn the kiln’s cooling', onClick: () => learn(store, firing, said) }),
      button({ text: 'Plan it again', onClick: () => { const { place, ...setup } = firing.setup; store.dispatch('change', { ...setup, clock: store.getState().setup.clock }); } }),
      button({ text: 'CSV', sign: 'save', onClick: save('csv') }), button({ text: 'JSON', sign: 'save', onClick: save('json') })));
}
