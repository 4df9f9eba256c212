import { byId, button, el, setIcon } from '../dom.js';
import { SLEEP_CAUTION } from '../timer-form.js';
import { runningTimers } from '../timers.js';
import { ACTS } from './acts.js';
import { loops } from './loop.js';
import { canStayAwake } from './wake.js';

export const wetEffects = {
  wet: ({ state, commit }) => commit({ wet: !state.wet }),
};

function wetButton(act, store) {
  const learned = el('kbd', {});
  const node = el('button', { type: 'button', class: 'wet-button', id: `wet-${act.id}`, on: { click: () => act.run(store) } },
    el('span', { class: 'icon', 'aria-hidden': 'true' }), el('span', { class: 'wet-words' }, act.words), learned);
  setIcon(node.querySelector('.icon'), act.sign);
  store.watch((state) => state.settings[act.setting], (own) => { learned.textContent = own ? String(own) : act.key; });
  return node;
}

const words = (id, text) => { byId(`wet-${id}`).querySelector('.wet-words').textContent = text; };

function follow(store) {
  store.watch((state) => state.paused, (paused) => {
    words('go', paused ? 'Go' : 'Stop');
    setIcon(byId('wet-go').querySelector('.icon'), paused ? 'go' : 'stop');
  });
  store.watch((state) => loops(state.loop), (on) => {
    words('again', on ? 'End the loop' : 'Again, 10 back');
    byId('wet-again').setAttribute('aria-pressed', String(on));
  });
  store.watch((state) => state.speed, (speed) => words('slow', speed === 0.5 ? 'Plain speed' : 'Slow'));
  setInterval(() => {
    const rings = store.getState().wet && runningTimers().some((timer) => timer.rest <= 0);
    words('timer', rings ? 'Stop the alarm' : 'Timer');
    byId('wet-timer').classList.toggle('rings', rings);
  }, 500);
}

const awakeWords = () => (canStayAwake()
  ? 'The screen stays on while this view is open, unless the laptop saves its battery. '
  : 'This browser cannot keep the screen on: set the laptop to never sleep while you work. ');

/** One screen with very large targets, each also on a single key, for gloves, a pedal or a clicker. */
export function connectWet(store) {
  const place = byId('wet');
  place.append(
    el('div', { class: 'wet-buttons', role: 'group', 'aria-label': 'Wet hands' }, ACTS.map((act) => wetButton(act, store))),
    el('div', { class: 'wet-foot' },
      el('p', {}, awakeWords(), SLEEP_CAUTION),
      el('a', { class: 'button', href: 'pedal.html' }, 'Teach my pedal'),
      button({ text: 'Leave (Esc)', id: 'wet-leave', sign: 'close', onClick: () => store.dispatch('wet') })));
  byId('wet-button').addEventListener('click', () => store.dispatch('wet'));
  store.watch((state) => state.wet, (on) => {
    document.body.classList.toggle('wet', on);
    byId('bench').classList.remove('wet-paper');
    place.hidden = !on;
    (on ? byId('wet-go') : byId('wet-button')).focus({ preventScroll: true });
  });
  follow(store);
}
