import { byId, el } from '../dom.js';
import { ACTS, learnedAct } from './acts.js';
import { noteHere } from './notes-view.js';
import { openPanel, panelIsOpen } from '../panel.js';

const follow = (id) => byId(id)?.click();

/** Single keys, as gloves are wet. The table is also what `?` shows. */
export const KEYS = [
  { keys: [' '], shown: 'Space', text: 'go, stop', run: (s) => s.dispatch('goOrStop') },
  { keys: ['ArrowLeft'], shown: '←', text: 'back 10 seconds', run: (s) => s.dispatch('skip', -10) },
  { keys: ['ArrowRight'], shown: '→', text: 'on 10 seconds', run: (s) => s.dispatch('skip', 10) },
  { keys: [','], shown: ',', text: 'one frame back', run: (s) => s.dispatch('frame', -1) },
  { keys: ['.'], shown: '.', text: 'one frame on', run: (s) => s.dispatch('frame', 1) },
  { keys: ['a', 'A'], shown: 'A', text: 'again: loop from here, to here, enough', run: (s) => s.dispatch('again') },
  { keys: ['r', 'R'], shown: 'R', text: 'repeat the last 10 seconds', run: (s) => s.dispatch('lastTen') },
  { keys: ['x', 'X'], shown: 'X', text: 'the loop begins with this picture', run: (s) => s.dispatch('loopFrom') },
  { keys: ['y', 'Y'], shown: 'Y', text: 'the loop ends with this picture', run: (s) => s.dispatch('loopTo') },
  { keys: ['l', 'L'], shown: 'L', text: 'set the loop to the picture, count-in, name', run: (s) => s.dispatch('loopOpen') },
  { keys: ['-'], shown: '-', text: 'slower', run: (s) => s.dispatch('speedBy', -1) },
  { keys: ['+', '='], shown: '+', text: 'faster', run: (s) => s.dispatch('speedBy', 1) },
  { keys: ['1'], shown: '1', text: 'plain speed', run: (s) => s.dispatch('speed', 1) },
  { keys: ['c', 'C'], shown: 'C', text: 'captions', run: () => follow('captions-button') },
  { keys: ['s', 'S'], shown: 'S', text: 'sound', run: (s) => s.dispatch('sound') },
  { keys: ['f', 'F'], shown: 'F', text: 'full screen', run: (s) => s.dispatch('whole') },
  { keys: ['h', 'H'], shown: 'H', text: 'hold the paper, let it turn', run: (s) => s.dispatch('hold') },
  { keys: ['PageDown'], shown: 'Page down', text: 'turn the paper', run: (s) => s.dispatch('turn', 1) },
  { keys: ['PageUp'], shown: 'Page up', text: 'turn the paper back', run: (s) => s.dispatch('turn', -1) },
  { keys: ['p', 'P'], shown: 'P', text: 'choose a paper', run: () => follow('papers-button') },
  { keys: ['e', 'E'], shown: 'E', text: 'my piece: its next step', run: () => (byId('piece-step') || byId('piece-begin'))?.focus() },
  { keys: ['n', 'N'], shown: 'N', text: 'next lesson', run: () => follow('lesson-after') },
  { keys: ['b', 'B'], shown: 'B', text: 'lesson before', run: () => follow('lesson-before') },
  { keys: ['w', 'W'], shown: 'W', text: 'wet hands: very large buttons, or a pedal', run: (s) => s.dispatch('wet') },
  { keys: ['k', 'K'], shown: 'K', text: 'mark this second', run: (s) => ACTS.find((act) => act.id === 'mark').run(s) },
  { keys: ['t', 'T'], shown: 'T', text: 'timer of this moment, or five minutes; stop what rings', run: (s) => ACTS.find((act) => act.id === 'timer').run(s) },
  { keys: ['j', 'J'], shown: 'J', text: 'write a note at this picture', run: (s) => noteHere(s) },
  { keys: ['m', 'M'], shown: 'M', text: 'menu', run: () => follow('menu-button') },
  { keys: [], shown: '/', text: 'find', run: () => undefined },
  { keys: ['?'], shown: '?', text: 'these keys', run: () => showKeys() },
];

export function keyTable() {
  return el('table', { class: 'keys' },
    el('thead', { class: 'heard' }, el('tr', {}, el('th', { scope: 'col' }, 'Key'), el('th', { scope: 'col' }, 'What it does'))),
    el('tbody', {}, KEYS.map((entry) => el('tr', {},
      el('th', { scope: 'row' }, el('kbd', {}, entry.shown)), el('td', {}, entry.text)))));
}

export const showKeys = () => openPanel('Keys', keyTable());

/** A key that the focused control needs itself is left to it. */
function belongsToControl(event, wet) {
  const { target, key } = event;
  if (target.matches('input, textarea, select')) {
    return true;
  }
  if (wet) {
    return target.matches('a');
  }
  if (key === ' ') {
    return target.matches('button, a, summary');
  }
  return (key.startsWith('Arrow') || key.startsWith('Page')) && target.matches('[role="slider"]');
}

/** With wet hands, keys of pedals and clickers work without being taught. */
const wetAct = (event, wet) => (wet ? ACTS.find((act) => act.keys.includes(event.key)) : undefined);

export function connectKeys(store) {
  document.addEventListener('keydown', (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || panelIsOpen() || belongsToControl(event, store.getState().wet)) {
      return;
    }
    const learned = learnedAct(event, store.getState().settings) || wetAct(event, store.getState().wet);
    if (learned) {
      event.preventDefault();
      if (!event.repeat) {
        learned.run(store);
      }
      return;
    }
    if (event.key === 'Escape' && store.getState().wet) {
      store.dispatch('wet');
      return;
    }
    const entry = KEYS.find((candidate) => candidate.keys.includes(event.key));
    if (entry) {
      event.preventDefault();
      entry.run(store);
    }
  });
}
