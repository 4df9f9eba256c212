import { button, byId, el, wakeIcons } from '../dom.js';
import { ACTS, keyName, learnedAct } from '../lesson/acts.js';
import { DEFAULTS, loadSettings, saveSettings } from '../settings.js';
import { connectTimers } from '../timers.js';

const NOT_A_KEY = ['Shift', 'Control', 'Alt', 'Meta', 'AltGraph', 'CapsLock', 'Dead', 'Unidentified'];
const KEPT_FREE = ['Escape', 'Tab'];

let settings = DEFAULTS;
let learning = null;

const say = (words) => { byId('pedal-said').textContent = words; };

function keep(patch) {
  settings = { ...settings, ...patch };
  saveSettings(settings);
  draw();
}

function teach(act, name) {
  const taken = ACTS.filter((other) => other !== act && String(settings[other.setting] || '') === name);
  learning = null;
  keep({ [act.setting]: name, ...Object.fromEntries(taken.map((other) => [other.setting, ''])) });
  say(`“${act.words}” is on ${name} now.${taken.length ? ` It was taken from “${taken[0].words}”.` : ''}`);
  byId(`teach-${act.id}`).focus();
}

function row(act) {
  const own = settings[act.setting] ? String(settings[act.setting]) : '';
  const waits = learning === act;
  return el('li', { class: 'pedal-row', id: `row-${act.id}` },
    el('span', { class: 'pedal-act' }, act.words),
    el('span', { class: 'pedal-key' }, own ? el('kbd', {}, own) : el('span', { class: 'quiet' }, 'not taught; in the wet-hands view: ', el('kbd', {}, act.key))),
    button({
      id: `teach-${act.id}`, text: waits ? 'Now press the pedal …' : 'Teach', kind: waits ? 'main' : null, 'aria-label': waits ? null : `Teach: ${act.words}`,
      onClick: () => { learning = waits ? null : act; draw(); byId(`teach-${act.id}`).focus(); },
    }),
    own ? button({ label: `Forget the key for ${act.words}`, sign: 'close', kind: 'bare', onClick: () => keep({ [act.setting]: '' }) }) : null);
}

function draw() {
  byId('pedal-acts').replaceChildren(...ACTS.map(row));
}

function flash(act) {
  const node = byId(`row-${act.id}`);
  node.classList.add('hit');
  setTimeout(() => node.classList.remove('hit'), 700);
}

function onKey(event) {
  if (NOT_A_KEY.includes(event.key)) {
    return;
  }
  const name = keyName(event);
  byId('pedal-sent').textContent = name;
  if (learning && event.key === 'Escape') {
    learning = null;
    draw();
    return;
  }
  if (learning) {
    event.preventDefault();
    if (KEPT_FREE.includes(event.key)) {
      say('The tabulator leads through the page: choose another key.');
    } else {
      teach(learning, name);
    }
    return;
  }
  const act = learnedAct(event, settings);
  if (act) {
    event.preventDefault();
    flash(act);
    say(`That is “${act.words}”.`);
  }
}

async function start() {
  wakeIcons();
  document.documentElement.dataset.ready = '';
  connectTimers();
  settings = await loadSettings().catch(() => DEFAULTS);
  draw();
  document.addEventListener('keydown', onKey, true);
}

start();
