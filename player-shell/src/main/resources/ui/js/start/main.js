import { get } from '../api.js';
import { createStore } from '../store.js';
import { byId, el, wakeIcons } from '../dom.js';
import { errorNotice } from '../notice.js';
import { openPanel } from '../panel.js';
import { DEFAULTS, loadSettings, saveSettings } from '../settings.js';
import { timerForm } from '../timer-form.js';
import { connectTimers } from '../timers.js';
import { settingsForm } from '../settings-form.js';
import { helpSlipButton } from '../help-slip.js';
import { quit } from '../quit.js';
import { renderCourses } from './courses.js';
import { renderGoOn } from './go-on.js';
import { renderCards } from './cards.js';
import { dropPlace } from './drop.js';
import { mergeList } from './merge.js';
import { stickList } from './sticks.js';
import { renderAbout } from './about.js';
import { connectPieces } from './pieces.js';
import { connectFind } from '../find/find.js';

/** The bench measures films a few at a time; the page asks again for the rest. */
const MEASURE_MILLIS = 1000;

/** My courses: first the next step, then the courses, then what opens them. */
const store = createStore({ bench: null, settings: DEFAULTS, trouble: null }, {
  refresh: async ({ state, commit }) => {
    try {
      const bench = await get('api/state');
      const same = JSON.stringify(bench) === JSON.stringify(state.bench);
      commit({ bench: same ? state.bench : bench, trouble: null });
      if (bench.measuring) {
        window.setTimeout(refresh, MEASURE_MILLIS);
      }
    } catch (error) {
      commit({ trouble: error });
    }
  },
  settings: ({ detail, state, commit }) => {
    const settings = { ...state.settings, ...detail };
    commit({ settings });
    saveSettings(settings);
  },
});

const refresh = () => store.dispatch('refresh');

/** The opening cards stand before the courses while a course waits for them, and after them otherwise. */
function placeOpening(bench) {
  const active = bench.licenses.some((license) => license.state === 'active');
  const waits = bench.courses.length > 0 && !active;
  const order = bench.courses.length ? ['opening', 'stick-place'] : ['stick-place', 'opening'];
  order.forEach((id) => byId('opening-last').append(byId(id)));
  if (waits) {
    byId('opening-first').append(byId('opening'));
  }
}

function render(bench) {
  if (!bench) {
    return;
  }
  placeOpening(bench);
  renderGoOn(byId('go-on'), bench);
  renderCourses(byId('course-list'), bench, refresh);
  renderCards(byId('cards'), bench, refresh);
  renderAbout(byId('about-laptop'), bench, refresh);
}

function start() {
  wakeIcons();
  connectTimers();
  document.documentElement.dataset.ready = '';
  byId('quit-button').addEventListener('click', quit);
  byId('menu-button').addEventListener('click', () => openPanel('Settings',
    settingsForm(store.getState().settings, (patch) => store.dispatch('settings', patch)),
    el('h3', {}, 'Timers'), timerForm(),
    el('h3', {}, 'When something does not work'), helpSlipButton(null)));
  const lookAtSticks = stickList(byId('sticks'), refresh, mergeList(byId('merges'), refresh));
  dropPlace(byId('drop'), () => {
    refresh();
    lookAtSticks();
  });
  connectPieces(byId('pieces'));
  connectFind();
  store.watch((state) => state.bench, render);
  store.watch((state) => state.trouble, (trouble) => {
    byId('trouble').replaceChildren(...(trouble ? [errorNotice(trouble)] : []));
  });
  loadSettings().then((settings) => store.commit({ settings })).catch(() => undefined);
  window.addEventListener('pageshow', (event) => event.persisted && refresh());
  refresh();
}

start();
