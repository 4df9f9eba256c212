import { byId, el } from '../dom.js';
import { longTime, stress } from './words.js';

/** The caution knob: four steps, each with its price in hours and in stress. */
function step(store, level, price) {
  const { setup } = store.getState();
  return el('tr', { class: level.id === setup.caution ? 'chosen' : null },
    el('td', {}, el('label', {}, el('input', {
      type: 'radio', name: 'caution', value: level.id, checked: level.id === setup.caution, on: { change: () => store.dispatch('change', { caution: level.id }) },
    }), level.words)),
    el('td', { class: 'number' }, price ? longTime(price.total_h) : '…'),
    el('td', { class: 'number' }, price ? stress(price.peak_temporary_mpa) : '…'),
    el('td', { class: 'number' }, price ? stress(price.residual_core_mpa) : '…'));
}

export function connectCaution(store) {
  const draw = () => {
    const { known, prices } = store.getState();
    const held = document.activeElement && document.activeElement.name === 'caution';
    byId('knob').replaceChildren(
      el('table', { class: 'list knob' },
        el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Step'), ...['Time', 'On the way', 'Stays'].map((words) => el('th', { scope: 'col', class: 'number' }, words)))),
        el('tbody', {}, known.levels.map((level) => step(store, level, (prices || []).find((price) => price.caution === level.id))))),
      el('p', { class: 'hint' }, 'Faster is paid for in tension, and glass does not forgive it at once. Before rounding to the controller.'));
    if (held) {
      byId('knob').querySelector('input:checked').focus();
    }
  };
  store.watch((state) => state.prices, draw);
  store.watch((state) => state.setup.caution, draw);
}
