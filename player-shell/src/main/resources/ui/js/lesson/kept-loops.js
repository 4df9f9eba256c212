import { byId, el, icon } from '../dom.js';
import { clock } from '../units.js';

/** Kept loops of this lesson in the order of the film. */
export const keptLoops = (state) => state.notes
  .filter((note) => note.kind === 'loop' && note.lesson === state.lesson.lesson.id)
  .sort((a, b) => a.content.pin.at - b.content.pin.at);

function chip(note, store) {
  const { pin, text } = note.content;
  return el('li', {}, el('button', {
    type: 'button', class: 'loop-chip', 'data-item': note.item,
    title: `Loop ${clock(pin.at / 1000)} to ${clock(pin.to / 1000)}: ${text}`,
    on: { click: () => store.dispatch('loopKept', note) },
  }, icon('again'), el('span', {}, text), el('small', {}, clock(pin.at / 1000))));
}

/** Kept loops stand beside the piece below the work strip; one press runs one. */
export function connectKeptLoops(store) {
  const list = byId('loop-chips');
  store.watch((state) => state.notes, (notes, state) => {
    const found = keptLoops(state);
    list.hidden = !found.length;
    list.replaceChildren(...found.map((note) => chip(note, store)));
  });
  store.watch((state) => state.loop.note, (playing) => Array.from(list.querySelectorAll('.loop-chip')).forEach((node) =>
    node.setAttribute('aria-pressed', String(Boolean(playing) && node.dataset.item === playing.item))));
}
