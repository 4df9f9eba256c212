import { get, post, put } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { openPanel } from '../panel.js';
import { choice } from '../settings-form.js';
import { numberField, textField, troubleAt } from '../fields.js';
import { fieldWords, inWords } from './words.js';
import { fitForm } from './fit.js';

/** My kilns: what the controller can be told, and how the kiln goes by itself. */

const NEW = { unit: 'C', highest: 900, slowest_per_h: 1, fastest_per_h: 999, rate_step_per_h: 1, lines: 8, longest_hold_min: 5999, free_code: '' };
const NEW_F = { ...NEW, unit: 'F', highest: 1650, fastest_per_h: 1799 };

const CONTROLLER = [
  ['highest', 'Highest set point', 300, 2500], ['slowest_per_h', 'Slowest rate an hour', 0.01, 500], ['fastest_per_h', 'Fastest rate an hour', 1, 9999],
  ['rate_step_per_h', 'Rates go in steps of', 0.01, 100], ['lines', 'Lines of a program', 5, 1000, true], ['longest_hold_min', 'Longest hold, minutes', 1, 60000],
];
const PACE = [
  ['cooling_h', 'Cooling by itself, hours', 0.1, 200, 'In so many hours the distance to the room falls to 37 %. Fit it below.'],
  ['heating_c_per_h', 'Fastest heating', 10, 3000, '', 'rate'],
  ['room_c', 'The room', -20, 45, '', 'C'],
  ['rated_w', 'Rated power, watts', 100, 1000000, ''],
  ['loss_w_per_k', 'Loss, watts for each kelvin', 0.01, 1000, 'For energy and cost. Fit it below.'],
];

export async function reloadKilns(store, patch) {
  store.commit({ kilns: (await get('api/kilns')).entries });
  if (patch) {
    store.dispatch('change', patch);
  } else {
    store.dispatch('compute');
  }
}

function fieldsOf(figures, list, optional, settings) {
  return list.map(([key, label, min, max, extra, kind]) => numberField({
    id: `kiln-${key}`, field: key, label, kind, min, max, whole: extra === true, hint: typeof extra === 'string' ? extra : '', optional, value: figures[key],
    onChange: (value) => { if (value === null) { delete figures[key]; } else { figures[key] = value; } },
  }, settings));
}

const UNIT_CHOICE = { key: 'kiln-unit', title: 'Its display shows', options: [['C', '°C'], ['F', '°F']] };

function editKiln(store, kiln) {
  const { settings } = store.getState();
  const figures = { ...(kiln ? kiln.figures : settings.temperatureUnit === 'F' ? NEW_F : NEW) };
  let name = kiln ? kiln.name : '';
  const said = el('div', { role: 'alert' });
  const save = async (event) => {
    event.preventDefault();
    try {
      const body = { name, figures };
      const kept = kiln ? await put(`api/kilns/${kiln.id}`, body) : await post('api/kilns', body);
      if (kept.problem) {
        said.textContent = troubleAt(kept.problem.field, fieldWords(kept.problem.said, settings)) ? 'One field needs another look; nothing is lost.' : fieldWords(kept.problem.said, settings);
        return;
      }
      await reloadKilns(store, { kiln: kept.id });
      openKilns(store);
    } catch (error) {
      said.replaceChildren(errorNotice(error));
    }
  };
  const put_ = (key, value) => {
    figures[key] = value;
    const field = document.getElementById(`kiln-${key}`);
    field.value = String(value);
  };
  const fitPlace = el('div', {}, fitForm(store, figures, put_));
  /** What nobody has changed yet follows the unit; readings are asked for in the new one. */
  const changeUnit = (unit) => {
    const [before, after] = unit === 'F' ? [NEW, NEW_F] : [NEW_F, NEW];
    figures.unit = unit;
    ['highest', 'fastest_per_h'].filter((key) => figures[key] === before[key]).forEach((key) => put_(key, after[key]));
    fitPlace.replaceChildren(fitForm(store, figures, put_));
  };
  openPanel(kiln ? kiln.name : 'A new kiln', el('form', { class: 'figures', on: { submit: save } },
    textField({ id: 'name', label: 'Its name', value: name, onChange: (value) => { name = value; } }),
    el('h3', {}, 'The controller'),
    choice(UNIT_CHOICE, figures.unit, (patch) => changeUnit(patch['kiln-unit'])),
    fieldsOf(figures, CONTROLLER, false, settings),
    textField({ id: 'free_code', label: 'What you type for free (as fast as the kiln can)', value: figures.free_code, hint: 'Empty, if the controller has no such thing.', onChange: (value) => { figures.free_code = value; } }),
    el('h3', {}, 'The kiln itself'),
    fieldsOf(figures, PACE, true, settings),
    el('div', { class: 'notice care' }, el('p', {}, inWords(store.getState().known.cautions.ELECTRICITY, settings))),
    said,
    el('div', { class: 'row' }, el('button', { type: 'submit', class: 'main' }, 'Keep this kiln'), button({ text: 'Back', kind: 'bare', onClick: () => openKilns(store) })),
    fitPlace));
}

export function openKilns(store) {
  const { kilns, setup } = store.getState();
  const line = (kiln) => el('li', {},
    el('strong', {}, kiln.name, kiln.id === setup.kiln ? ' (in use)' : ''),
    el('span', { class: 'row' },
      button({ text: 'Use', 'aria-label': `Use ${kiln.name}`, onClick: () => { store.dispatch('change', { kiln: kiln.id }); openKilns(store); } }),
      button({ text: 'Change', 'aria-label': `Change ${kiln.name}`, onClick: () => editKiln(store, kiln) }),
      button({ text: 'Forget', kind: 'bare', 'aria-label': `Forget ${kiln.name}`, onClick: async () => {
        await post(`api/kilns/${kiln.id}/forget`);
        await reloadKilns(store, kiln.id === setup.kiln ? { kiln: '' } : null);
        openKilns(store);
      } })));
  openPanel('My kilns',
    kilns.length ? el('ul', { class: 'own-list' }, kilns.map(line)) : el('p', {}, 'None yet. Without one, an ordinary controller of eight lines is taken, and its pace is guessed.'),
    button({ id: 'kiln-new', text: 'A new kiln', sign: 'plus', kind: 'main', onClick: () => editKiln(store, null) }));
}
