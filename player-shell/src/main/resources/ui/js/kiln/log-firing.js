import { address, get, post, put } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { openPanel } from '../panel.js';
import { choice } from '../settings-form.js';
import { textField } from '../fields.js';
import { faultCards } from './fault-cards.js';
import { fetchMade } from './papers.js';
import { postFile, readingForm, readingsFile, readingsTable } from './log-readings.js';
import { powerCutForm } from './power-cut.js';
import { reloadKilns } from './kilns.js';
import { inWords, moment, stress, longTime } from './words.js';

/** One firing of the log: readings against the prediction, the power cut, pictures, the result. */

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
    text('polarisers', 'Between crossed polarisers'), text('later', 'Later cracks: after how many days'), text('note', 'Anything else'),
    el('div', { class: 'notice care' }, ['LATE_CRACKS', 'FOOD', 'CHIPS'].map((name) => el('p', {}, inWords(store.getState().known.cautions[name], store.getState().settings)))),
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
      await postFile(`api/firings/${firing.id}/photo`, file.files[0]);
      again();
    } catch (error) {
      fail(error);
    }
  });
  return el('div', {}, el('div', { class: 'photos' }, firing.photos.map((photo, i) => el('img', { src: address(photo), alt: `Picture ${i + 1} of this firing`, loading: 'lazy' }))),
    el('label', { for: 'photo-file' }, 'Add a picture (JPEG, PNG or WebP, up to 4 MB) '), file,
    el('p', { class: 'hint' }, 'Where and when it was taken, and by which camera, is left out; the picture stays on this laptop.'));
}

const LEARNED = { cooling_h: ['its own cooling', ' h'], loss_w_per_k: ['its loss', ' W/K'] };

/** Puts what a firing says of the kiln into the kiln's figures: its own cooling, its loss by the meter. */
async function learn(store, firing, said) {
  try {
    const { missing, ...found } = await post(`api/firings/${firing.id}/fit`);
    const words = Object.entries(found).map(([key, value]) => `${LEARNED[key][0]} ${value}${LEARNED[key][1]}`).join(', ');
    const not = missing.length ? ` Not learned: ${missing.join('; ')}.` : '';
    const kiln = store.getState().kilns.find((one) => one.id === firing.setup.kiln);
    if (kiln) {
      await put(`api/kilns/${kiln.id}`, { name: kiln.name, figures: { ...kiln.figures, ...found } });
      await reloadKilns(store);
    }
    said.textContent = kiln ? `${kiln.name} has learned: ${words}.${not}` : `This kiln: ${words}. Describe it under My kilns to use that.${not}`;
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
    readingsFile(store, firing, again),
    firing.ended ? null : powerCutForm(store, firing),
    resultForm(store, firing, again),
    await faultCards(firing),
    pictures(firing, again, fail),
    said,
    el('div', { class: 'row' },
      button({ text: 'Learn the kiln from this firing', id: 'learn', onClick: () => learn(store, firing, said) }),
      button({ text: 'Plan it again', onClick: () => { const { place, ...setup } = firing.setup; store.dispatch('change', { ...setup, clock: store.getState().setup.clock }); } }),
      button({ text: 'CSV', sign: 'save', onClick: save('csv') }), button({ text: 'JSON', sign: 'save', onClick: save('json') })));
}
