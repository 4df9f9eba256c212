import { byId, el, setIcon } from '../dom.js';
import { clock, spoken } from '../units.js';
import { SPEEDS } from './player.js';

function name(control, words) {
  control.setAttribute('aria-label', words);
  control.title = words;
}

function connectSpeed(store) {
  const select = byId('speed');
  select.append(...SPEEDS.map((speed) => el('option', { value: speed }, `${speed}×`)));
  const own = el('option', { hidden: true });
  select.append(own);
  select.addEventListener('change', () => store.dispatch('speed', Number(select.value)));
  store.watch((state) => state.speed, (speed) => {
    if (!SPEEDS.includes(speed)) {
      own.value = String(speed);
      own.textContent = `${Number(speed.toFixed(2))}×`;
    }
    select.value = String(speed);
  });
}

function connectGo(store) {
  const go = byId('go');
  go.addEventListener('click', () => store.dispatch('goOrStop'));
  store.watch((state) => state.paused, (paused) => {
    name(go, paused ? 'Go' : 'Stop');
    setIcon(go.querySelector('.icon'), paused ? 'go' : 'stop');
  });
}

function connectTime(store) {
  const time = byId('time');
  const words = (state) => `${clock(state.time)} of ${clock(state.duration)}`;
  store.watch(words, (text, state) => {
    time.textContent = state.duration ? text : '';
    time.setAttribute('title', `${spoken(state.time)} of ${spoken(state.duration)}`);
  });
}

function connectSound(store) {
  const sound = byId('sound');
  sound.addEventListener('click', () => store.dispatch('sound'));
  store.watch((state) => state.muted, (muted) => {
    name(sound, muted ? 'Sound is off: switch it on' : 'Sound is on: switch it off');
    setIcon(sound.querySelector('.icon'), muted ? 'mute' : 'sound');
  });
}

function connectWhole(store) {
  const whole = byId('whole');
  whole.hidden = !document.fullscreenEnabled;
  const follow = () => name(whole, document.fullscreenElement ? 'Leave the full screen' : 'Full screen');
  whole.addEventListener('click', () => store.dispatch('whole'));
  document.addEventListener('fullscreenchange', follow);
  follow();
}

/** Buttons below the picture: each dispatches one request and shows the state, never its own wish. */
export function connectControls(store) {
  byId('back').addEventListener('click', () => store.dispatch('skip', -10));
  byId('on').addEventListener('click', () => store.dispatch('skip', 10));
  connectGo(store);
  connectTime(store);
  connectSpeed(store);
  connectSound(store);
  connectWhole(store);
  if (!store.getState().lesson.video?.length) {
    byId('controls').hidden = true;
  }
}
