import { get } from '../api.js';
import { createStore } from '../store.js';
import { byId, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { connectTimers } from '../timers.js';
import { DEFAULTS, loadSettings } from '../settings.js';
import { fetchPieces } from '../pieces/pieces.js';
import { FIRST, fromLesson } from './setup.js';
import { effects } from './effects.js';
import { connectSection } from './section.js';
import { connectBlockFields } from './block-fields.js';
import { connectCurve } from './curve.js';
import { connectVerdict } from './verdict.js';
import { connectLines } from './lines.js';
import { connectClock } from './clock.js';
import { connectBar } from './bar.js';
import { connectNotes } from './notes.js';
import { connectCaution } from './caution.js';
import { connectEnergy } from './energy.js';
import { connectInside } from './inside.js';
import { connectPapers } from './papers.js';
import { connectLog } from './log.js';

const INITIAL = {
  known: null, kilns: [], glasses: [], lesson: null, schedules: [], schedule: null, piece: null, second: null,
  settings: DEFAULTS, setup: FIRST, answer: null, problem: null, trouble: null, prices: null, inside: null,
};

const place = new URLSearchParams(window.location.search);

async function fetchLesson() {
  return place.get('l') ? get('api/kiln/lesson', { e: place.get('e') || '', l: place.get('l') }) : null;
}

const fetchBlock = async (id) => (await get(`api/blocks/${id}`)).figures || null;

/** The piece that the page is for: named in the address, or the newest one of the lesson. */
function pieceFor(pieces) {
  const active = pieces.filter((piece) => piece.state === 'active');
  return active.find((piece) => piece.id === place.get('piece')) || active.find((piece) => place.get('l') && piece.lesson === place.get('l')) || null;
}

/** My piece's block first, then the lesson's, then the one of last time. */
async function firstSetup(lesson, schedule, piece) {
  const own = piece ? await fetchBlock(piece.id) : null;
  if (own) {
    return { ...FIRST, ...own };
  }
  const last = (await fetchBlock('last')) || {};
  const base = { ...FIRST, kiln: last.kiln || '', tariff: last.tariff || FIRST.tariff };
  return lesson ? fromLesson(base, lesson, schedule) : { ...FIRST, ...last, clock: FIRST.clock };
}

async function load(store) {
  const [known, kilns, glasses, settings, lesson, pieces] = await Promise.all([
    get('api/kiln'), get('api/kilns'), get('api/glasses'), loadSettings().catch(() => DEFAULTS), fetchLesson(), fetchPieces(),
  ]);
  const schedules = lesson ? lesson.schedules : [];
  const schedule = schedules.find((one) => one.asset === place.get('a')) || schedules[0] || null;
  const piece = pieceFor(pieces);
  const setup = await firstSetup(lesson, schedule, piece);
  store.commit({ known, kilns: kilns.entries, glasses: glasses.entries, settings, lesson, schedules, schedule, pieces, piece, setup });
}

async function start() {
  wakeIcons();
  connectTimers();
  document.documentElement.dataset.ready = '';
  const store = createStore({ ...INITIAL, place: { e: place.get('e'), l: place.get('l') } }, effects);
  try {
    await load(store);
  } catch (error) {
    byId('trouble').replaceChildren(errorNotice(error));
    return;
  }
  [connectBar, connectSection, connectBlockFields, connectVerdict, connectCurve, connectLines, connectClock, connectCaution, connectNotes, connectEnergy, connectInside, connectPapers, connectLog].forEach((connect) => connect(store));
  store.dispatch('compute');
}

start();
