import { get, post } from './api.js';
import { button, byId, el } from './dom.js';
import { chime, mayBeHeard, wakeSound } from './tone.js';
import { clock, spoken } from './units.js';

/**
 * Timers of the bench: it keeps the time of day at which each rings, so they go on over a reload,
 * another page and a new start. Every page that shows them rings.
 */

const TICK_MILLIS = 500;
const LOOK_MILLIS = 15000;
const RING_MILLIS = 4000;

let timers = [];
let aheadMillis = 0;
let place = null;
let rangAt = 0;
const told = new Set();

const now = () => Date.now() + aheadMillis;
const say = (words) => { const said = byId('said'); if (said) { said.textContent = words; } };
const restOf = (timer) => (timer.endsAtMillis - now()) / 1000;

/** Takes the bench's answer about timers over into the page. */
export function takeTimers(answer) {
  aheadMillis = answer.nowMillis - Date.now();
  timers = answer.timers;
  draw();
}

const look = () => get('api/timers').then(takeTimers).catch(() => undefined);

const end = (timer) => post(`api/timers/${timer.id}/end`).then(takeTimers).catch(() => undefined);

/** Starts a timer that every page shows. */
export async function startTimer(words, seconds) {
  await wakeSound();
  takeTimers(await post('api/timers', { words, seconds: Math.round(seconds) }));
  say(`Timer started: ${words}, ${spoken(seconds)}`);
}

/** The timers that run or ring now, the next one first. */
export const runningTimers = () => timers.map((timer) => ({ ...timer, rest: restOf(timer) }));

function box(timer) {
  const again = button({ label: `${timer.words}: the same time again`, sign: 'again', kind: 'bare timer-again', onClick: async () => {
    await end(timer);
    await startTimer(timer.words, timer.seconds);
  } });
  return el('div', { class: 'timer', 'data-timer': timer.id }, el('span', { class: 'timer-words' }, timer.words), el('span', { role: 'timer' }), again,
    button({ label: `End the timer ${timer.words}`, sign: 'close', kind: 'bare', onClick: () => end(timer) }));
}

function draw() {
  if (!place) {
    return;
  }
  const kept = new Map(Array.from(place.querySelectorAll('.timer')).map((node) => [node.dataset.timer, node]));
  place.replaceChildren(...timers.map((timer) => kept.get(timer.id) || box(timer)));
  tick();
}

function quietNote(rings) {
  const note = place.parentElement.querySelector('.timer-quiet');
  if (!rings || mayBeHeard()) {
    note?.remove();
  } else if (!note) {
    place.after(el('p', { class: 'timer-quiet notice bad', role: 'alert' },
      'A timer rings, but this browser keeps the page silent: press a key or touch the page once.'));
  }
}

function tick() {
  let rings = false;
  timers.forEach((timer) => {
    const rest = restOf(timer);
    const node = place.querySelector(`[data-timer="${timer.id}"]`);
    node.querySelector('[role=timer]').textContent = rest > 0 ? clock(Math.ceil(rest)) : `over by ${clock(-rest)}`;
    node.classList.toggle('over', rest <= 0);
    rings = rings || rest <= 0;
    if (rest <= 0 && !told.has(timer.id)) {
      told.add(timer.id);
      say(`${timer.words}: time is up`);
    }
  });
  if (rings && Date.now() - rangAt >= RING_MILLIS) {
    rangAt = Date.now();
    chime();
  }
  document.documentElement.toggleAttribute('data-ringing', rings);
  quietNote(rings);
}

/** Shows the timers in `#timers` of a page and lets them ring there. */
export function connectTimers() {
  place = byId('timers');
  ['pointerdown', 'keydown'].forEach((event) => document.addEventListener(event, wakeSound, { passive: true }));
  document.addEventListener('visibilitychange', look);
  setInterval(tick, TICK_MILLIS);
  setInterval(look, LOOK_MILLIS);
  return look();
}
