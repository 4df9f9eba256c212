import { byId, el } from '../dom.js';
import { numberField } from '../fields.js';
import { kilnOf } from './setup.js';
import { openKilns } from './kilns.js';
import { twoThinner } from './two-thinner.js';

/** What the firing uses and costs, with a price by the hour of the day. */

function result(store) {
  const { answer } = store.getState();
  const energy = answer && answer.energy;
  if (!energy) {
    const described = kilnOf(store.getState());
    return el('div', {},
      el('p', {}, described ? 'The loss of this kiln is not known yet.' : 'Describe your kiln first: its rated power and its loss.'),
      el('button', { type: 'button', on: { click: () => openKilns(store) } }, 'My kilns'));
  }
  const cost = energy.cost > 0 ? `, ${energy.cost.toFixed(2)} ${energy.currency}` : '';
  return el('div', {},
    el('p', { id: 'energy-words' }, 'About ', el('strong', {}, `${Math.round(energy.kwh)} kWh${cost}`), ` (rated power times hours would say ${Math.round(energy.rated_times_hours_kwh)} kWh; in the slow stretches the elements only replace what the walls lose).`),
    energy.asked_too_much ? el('p', {}, 'Some stretch asks for more than the rated power: the kiln will lag behind.') : null);
}

function tariffForm(store) {
  const { settings, setup } = store.getState();
  const set = (patch) => store.dispatch('change', { tariff: { ...store.getState().setup.tariff, ...patch } });
  const price = (key, label) => numberField({ id: `tariff-${key}`, label, min: 0, max: 1e6, optional: true, value: setup.tariff[key], onChange: (value) => set({ [key]: value }) }, settings);
  const hour = (key, label) => numberField({ id: `tariff-${key}`, label, min: 0, max: 23, whole: true, value: setup.tariff[key], onChange: (value) => set({ [key]: value }) }, settings);
  const currency = el('input', { type: 'text', id: 'tariff-currency', maxlength: 12, value: setup.tariff.currency });
  currency.addEventListener('input', () => set({ currency: currency.value }));
  return el('details', {}, el('summary', {}, 'Price by the hour'),
    el('div', { class: 'pair' }, price('day', 'A kWh by day'), price('night', 'A kWh at night')),
    el('div', { class: 'pair' }, hour('night_from', 'Night from, hour'), hour('night_to', 'to, hour')),
    el('div', { class: 'field' }, el('label', { for: 'tariff-currency' }, 'Currency'), currency));
}

export function connectEnergy(store) {
  const place = el('div', {});
  byId('energy').replaceChildren(place, tariffForm(store));
  store.watch((state) => state.answer, () => place.replaceChildren(...[result(store), twoThinner(store)].filter(Boolean)));
}
