import { post } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { length } from '../units.js';
import { isFused, requestOf } from './setup.js';
import { inWords, longTime, stress } from './words.js';

/** One block, or two of half the height, fired one after the other? Hours go with the square of the thickness. */

/** The same glass as two blocks; an odd sheet goes into the first. Empty where halves make no sense. */
export function halvesOf(setup) {
  const share = (key, digits) => [0, 1].map(() => ({ ...setup, [key]: Number((setup[key] / 2).toFixed(digits)) }));
  switch (setup.task === 'enamel' || isFused(setup) ? '' : setup.by) {
    case 'sheets':
    case 'volume':
      return setup.sheets < 2 ? [] : [Math.ceil(setup.sheets / 2), Math.floor(setup.sheets / 2)].map((sheets) => ({ ...setup, sheets }));
    case 'weight': return setup.grams ? share('grams', 0) : [];
    case 'measured': return setup.measured_mm >= 4 ? share('measured_mm', 1) : [];
    default: return [];
  }
}

const sum = (answers, read) => answers.reduce((all, answer) => all + read(answer), 0);

function row(title, answers, settings) {
  const energy = answers.every((answer) => answer.energy);
  const cost = energy && sum(answers, (answer) => answer.energy.cost);
  return el('tr', {},
    el('th', { scope: 'row' }, title),
    el('td', {}, answers.map((answer) => length(answer.thickness_mm, settings.lengthUnit)).join(' and ')),
    el('td', {}, longTime(sum(answers, (answer) => answer.total_h))),
    el('td', {}, energy ? `${Math.round(sum(answers, (answer) => answer.energy.kwh))} kWh${cost > 0 ? `, ${cost.toFixed(2)} ${answers[0].energy.currency}` : ''}` : 'not known'),
    el('td', {}, stress(Math.max(...answers.map((answer) => answer.stress.residual_core_mpa)))));
}

async function compare(store, place) {
  const state = store.getState();
  try {
    const asked = halvesOf(state.setup).map((setup) => ({ ...state, setup, second: null, schedule: null }));
    const halves = await Promise.all(asked.map((half) => post('api/firing', requestOf(half))));
    const wrong = halves.find((answer) => answer.problem);
    if (wrong) {
      place.replaceChildren(el('p', { class: 'notice bad' }, inWords(wrong.problem.said, state.settings)));
      return;
    }
    place.replaceChildren(el('table', { class: 'list', id: 'two-thinner' },
      el('thead', {}, el('tr', {}, ['', 'Thick', 'In the kiln', 'Energy', 'Stays in the core'].map((words) => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, row('One block', [state.answer], state.settings), row('Two, one after the other', halves, state.settings))),
    el('p', { class: 'quiet' }, 'Two blocks are no longer one picture in depth: this counts kiln time only, not the joining.'));
  } catch (error) {
    place.replaceChildren(errorNotice(error));
  }
}

/** A button, and the table that it brings; nothing where the block cannot be halved. */
export function twoThinner(store) {
  const { setup, answer } = store.getState();
  if (!answer || !halvesOf(setup).length) {
    return null;
  }
  const place = el('div', { role: 'status' });
  return el('div', {}, button({ id: 'halve', text: 'One block, or two thinner?', onClick: () => compare(store, place) }), place);
}
