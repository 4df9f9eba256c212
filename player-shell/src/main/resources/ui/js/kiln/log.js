import { get, post } from '../api.js';
import { button, byId, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { several } from '../units.js';
import { requestOf } from './setup.js';
import { titleOf } from './papers.js';
import { openFiring } from './log-firing.js';
import { inWords, moment } from './words.js';

/** The log: start a firing from the plan, and everything that was fired before. */

const RESULTS = { whole: 'came out whole', cracked: 'cracked' };

function line(store, firing) {
  const result = firing.ended ? RESULTS[firing.outcome.result] || 'ended' : 'running';
  return el('li', {},
    el('span', {}, el('strong', {}, firing.name), ` ${moment(firing.started_at)}, ${result}, ${several(firing.readings.length, 'reading')}`),
    button({ text: firing.ended ? 'Look' : 'Write a reading', 'aria-label': `Open ${firing.name} of ${moment(firing.started_at)}`, onClick: () => openFiring(store, firing.id, () => load(store)) }));
}

async function begin(store) {
  const state = store.getState();
  const started = state.answer.clock.start.slice(0, 16);
  const kept = await post('api/firings', {
    name: titleOf(state).slice(0, 100), setup: { ...state.setup, place: state.place }, request: requestOf(state), started_at: started,
    ...(state.piece ? { piece: state.piece.id } : {}),
  });
  if (kept.problem) {
    throw new Error(`${kept.problem.field}: ${inWords(kept.problem.said, state.settings)}`);
  }
  await load(store);
  openFiring(store, kept.id, () => load(store));
}

async function load(store) {
  const { firings } = await get('api/firings');
  byId('log-body').replaceChildren(
    el('p', {}, 'Start it here when you start the kiln: then readings stand beside the prediction, and the kiln’s figures learn from them.'),
    el('div', { class: 'row' }, button({ id: 'log-begin', text: 'Start this firing at the time above', sign: 'firing', kind: 'main', onClick: () => begin(store).catch((error) => byId('log-trouble').replaceChildren(errorNotice(error))) })),
    el('div', { id: 'log-trouble' }),
    firings.length ? el('ul', { class: 'own-list' }, firings.map((firing) => line(store, firing))) : el('p', { class: 'quiet' }, 'No firing yet.'));
}

/** A page of a piece leads here with one firing in the address: it stands open then. */
const asked = new URLSearchParams(window.location.search).get('firing');

export function connectLog(store) {
  load(store).then(() => asked && openFiring(store, asked, () => load(store))).catch((error) => byId('log-body').replaceChildren(errorNotice(error)));
}
