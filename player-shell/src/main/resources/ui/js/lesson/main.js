import { get } from '../api.js';
import { createStore } from '../store.js';
import { byId, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { DEFAULTS, loadSettings, saveSettings } from '../settings.js';
import { collectPapers, NOTES_PAPER } from './papers.js';
import { goToNote, photoPapers } from './note-places.js';
import { tidyMoments } from './moments.js';
import { playerEffects, connectPlayer } from './player.js';
import { loopEffects, connectLoop, NONE } from './loop.js';
import { connectLoopBar } from './loop-bar.js';
import { connectKeptLoops } from './kept-loops.js';
import { USUAL_FRAME_SECONDS } from './frames.js';
import { fetchNotes } from '../notebook/notes.js';
import { connectTimers } from '../timers.js';
import { paperEffects, connectPaper } from './paper.js';
import { connectCaptions } from './captions.js';
import { connectControls } from './controls.js';
import { connectStrip } from './strip.js';
import { connectPosition } from './position.js';
import { connectRecovery } from './recovery.js';
import { connectLight } from './light.js';
import { connectWake } from './wake.js';
import { connectWet, wetEffects } from './wet.js';
import { connectKeys } from './keys.js';
import { connectMenu } from './menu.js';
import { connectTitle } from './title.js';
import { connectPiece } from './piece.js';
import { connectCorrections } from './corrections.js';
import { connectFind } from '../find/find.js';
import { goToFind, openedAt } from './spot.js';

/** First state of a lesson; everything the controls show is derived from it. */
const INITIAL = {
  lesson: null, papers: [], moments: [], settings: DEFAULTS,
  time: 0, duration: 0, paused: true, speed: 1, muted: false, seeking: false,
  loop: NONE, frame: USUAL_FRAME_SECONDS, notes: [], wet: false, fresh: null, lastPaper: null,
  paperId: null, paperPage: 1, paperRow: null, held: false,
};

const settingsEffects = {
  settings: ({ detail, state, commit }) => {
    const settings = { ...state.settings, ...detail };
    commit({ settings });
    saveSettings(settings);
  },
};

const place = new URLSearchParams(window.location.search);

const fetchLesson = () => get('api/lesson', { e: place.get('e') || '', l: place.get('l') || '' });

/** Notes come after the lesson; an address that names one leads to it. */
async function bringNotes(store) {
  const papers = collectPapers(store.getState().lesson);
  store.commit({ notes: await fetchNotes().catch(() => []) });
  store.watch((state) => state.notes, (notes, state) =>
    store.commit({ papers: [...papers, NOTES_PAPER, ...photoPapers(notes, state.lesson.lesson.id)] }));
  const wanted = store.getState().notes.find((note) => note.item === place.get('n'));
  if (wanted) {
    store.dispatch('open', { id: 'notes' });
    const go = () => goToNote(store, wanted);
    store.getState().duration ? go() : byId('video').addEventListener('loadedmetadata', () => setTimeout(go, 300), { once: true });
  }
}

function begin(store, lesson, settings) {
  const papers = collectPapers(lesson);
  store.commit({
    ...openedAt(place, lesson, papers),
    lesson,
    settings,
    papers: [...papers, NOTES_PAPER],
    moments: tidyMoments(lesson.moments),
    speed: Number(settings.speed) || 1,
  });
  connectTitle(store);
  connectPlayer(store);
  connectCaptions(store);
  connectControls(store);
  connectLoop(store);
  connectLoopBar(store);
  connectPaper(store);
  connectStrip(store);
  connectKeptLoops(store);
  connectPiece(store);
  connectCorrections(store);
  connectPosition(store);
  connectRecovery(store, fetchLesson);
  connectLight(store);
  connectWet(store);
  connectWake(store);
  connectKeys(store);
  connectMenu(store);
  connectTimers();
  bringNotes(store);
  connectFind((find) => goToFind(store, find));
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  const store = createStore(INITIAL, { ...playerEffects, ...loopEffects, ...paperEffects, ...wetEffects, ...settingsEffects });
  try {
    const [lesson, settings] = await Promise.all([fetchLesson(), loadSettings().catch(() => DEFAULTS)]);
    begin(store, lesson, settings);
  } catch (error) {
    byId('bench').replaceChildren(errorNotice(error));
  }
}

start();
