import { address, get } from '../../api.js';
import { byId, el, wakeIcons } from '../../dom.js';
import { faultCards } from '../../kiln/fault-cards.js';
import { errorNotice } from '../../notice.js';
import { DEFAULTS, loadSettings } from '../../settings.js';
import { fetchPieces } from '../pieces.js';
import { stepLine } from '../step-line.js';
import { showPhotos } from './photos.js';
import { showSlip } from './slip.js';
import { showStates } from './states.js';

/** One piece, followed for weeks: next step, every sheet, firings, pictures, a question. */

const fail = (error) => byId('trouble').replaceChildren(errorNotice(error));
const day = (millis) => new Date(millis).toLocaleDateString();

function showHead(piece) {
  byId('piece-name').textContent = piece.name;
  document.title = `${piece.name} · Lehrcase`;
  byId('piece-begun').textContent = piece.state === 'done' ? `Finished; begun ${day(piece.begunAtMillis)}` : `Begun ${day(piece.begunAtMillis)}`;
  const follows = piece.lesson ? { e: piece.edition, l: piece.lesson } : {};
  byId('its-lesson').hidden = !piece.lesson;
  byId('its-lesson').href = address('lesson.html', follows);
  byId('its-plan').href = address('ui/sheets.html', { piece: piece.id, ...follows });
  byId('its-kiln').href = address('kiln.html', { piece: piece.id, ...follows });
}

function showBehind(piece) {
  byId('behind').replaceChildren(piece.steps.length
    ? el('ol', {}, piece.steps.map((step) => el('li', {}, `${step.text} `, el('small', {}, day(step.doneAtMillis)))))
    : el('p', { class: 'quiet' }, 'Nothing yet. “Done” puts a step here, with its day.'));
}

function showNext(state) {
  const onChange = (changed) => {
    state.piece = changed;
    showBehind(changed);
  };
  const onFinish = (changed) => {
    onChange(changed);
    showHead(changed);
    showNext(state);
  };
  byId('next-step').replaceChildren(...(state.piece.state === 'done'
    ? [el('p', {}, 'This piece is finished. It can be taken up again on the first page.')]
    : stepLine(state.piece, { id: 'step', onChange, onFinish, fail })));
}

function showFired(state) {
  const { firings } = state.follow;
  const query = { piece: state.piece.id, ...(state.piece.lesson ? { e: state.piece.edition, l: state.piece.lesson } : {}) };
  byId('fired').replaceChildren(
    firings.length ? el('ul', {}, firings.map((one) => el('li', {},
      el('a', { href: address('kiln.html', { ...query, firing: one.id }) }, one.name), ` ${day(one.startedAtMillis)}, `,
      one.ended ? 'ended' : 'running', `, ${one.readings} readings`)))
      : el('p', { class: 'quiet' }, 'Not fired yet. The kiln sheet opens with this block; its log, under “Firings”, keeps what you read.'));
}

async function showFaults(piece) {
  const cards = piece.lesson ? await faultCards({ setup: { place: { e: piece.edition, l: piece.lesson } } }) : null;
  byId('faults').hidden = !cards;
  byId('faults').replaceChildren(...(cards ? [cards] : []));
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  const id = new URLSearchParams(window.location.search).get('piece') || '';
  const [pieces, follow, settings] = await Promise.all([fetchPieces(), get(`api/pieces/${id}/follow`), loadSettings().catch(() => DEFAULTS)]);
  const state = { piece: pieces.find((one) => one.id === id), follow, settings, fail };
  showHead(state.piece);
  showNext(state);
  showBehind(state.piece);
  showStates(state);
  showFired(state);
  showPhotos(state);
  showSlip(state);
  byId('work').hidden = false;
  document.documentElement.dataset.shown = '';
  await showFaults(state.piece);
}

start().catch(fail);
