import { byId, button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { noteCard } from '../notebook/note-card.js';
import { addNote, undoNote, withNote } from '../notebook/notes.js';
import { clock } from '../units.js';
import { drawSketch } from './sketch.js';
import { goToNote, lineOptions } from './note-places.js';

const here = (state) => ({ edition: state.lesson.edition, lesson: state.lesson.lesson.id });
const ofLesson = (state) => state.notes.filter((note) => note.lesson === state.lesson.lesson.id && note.kind !== 'loop');
const inOrder = (a, b) => (a.content.pin.where === 'second' ? a.content.pin.at : 1e12) - (b.content.pin.where === 'second' ? b.content.pin.at : 1e12) || a.madeAtMillis - b.madeAtMillis;

/** Begins a note at a place, opens the notes, and lets the person write at once. */
export async function beginNote(store, pin) {
  const made = await addNote('note', here(store.getState()), { text: '', pin });
  store.commit({ notes: withNote(store.getState().notes, made), fresh: made.item });
  store.dispatch('open', { id: 'notes' });
}

/** A note at the picture that stands. */
export const noteHere = (store) => beginNote(store, { where: 'second', at: Math.round(byId('video').currentTime * 1000) })
  .catch((error) => { byId('said').textContent = error.happened || ''; });

function starters(store, fail) {
  const start = (pin) => beginNote(store, pin).catch(fail);
  const at = button({ text: 'Note here', id: 'note-here', kind: 'main', sign: 'plus', onClick: () => noteHere(store) });
  const page = button({ id: 'note-page', text: 'To the page', onClick: () => {
    const { lastPaper } = store.getState();
    start({ where: 'page', asset: lastPaper.id, at: lastPaper.page });
  } });
  const lines = el('select', { id: 'note-line', 'aria-label': 'Note to a line of a schedule' });
  lines.addEventListener('change', () => {
    const [asset, line] = lines.value.split(' ');
    lines.value = '';
    start({ where: 'line', asset, at: Number(line) });
  });
  const options = lineOptions(store.getState().papers);
  lines.append(el('option', { value: '' }, 'To a line …'), ...options.map(([value, words]) => el('option', { value }, words)));
  lines.hidden = !options.length;
  const ends = [
    store.watch((state) => Math.floor(state.time), (seconds) => { at.querySelector('span:last-child').textContent = `Note at ${clock(seconds)}`; }),
    store.watch((state) => state.lastPaper, (paper) => {
      page.hidden = !paper || !paper.pages;
      page.querySelector('span').textContent = paper ? `To page ${paper.page}` : '';
    }),
  ];
  const node = el('div', { class: 'note-starters' }, at, page, lines,
    button({ text: 'To the lesson', kind: 'bare', onClick: () => start({ where: 'lesson', at: 0 }) }));
  return { node, end: () => ends.forEach((end) => end()) };
}

function goneNotice(store, now, place) {
  const notice = el('div', { class: 'notice', role: 'status' }, el('span', {}, 'Put away. '), button({ text: 'Fetch it back', onClick: async () => {
    const back = await undoNote(now);
    store.commit({ notes: withNote(store.getState().notes, back) });
    notice.remove();
  } }));
  place.prepend(notice);
}

/** The student's notes of this lesson as a paper beside the picture. */
export async function showNotes(body, paper, store) {
  const trouble = el('div', {});
  const fail = (error) => trouble.replaceChildren(errorNotice(error));
  const begin = starters(store, fail);
  const list = el('div', { class: 'note-list' });
  const cards = new Map();
  const title = (id) => store.getState().papers.find((one) => one.id === id)?.title || '';
  const on = {
    jump: (note) => goToNote(store, note),
    kept: (now, before) => store.commit({ notes: withNote(store.getState().notes, now, before) }),
    gone: (now, before) => { store.commit({ notes: withNote(store.getState().notes, now, before) }); goneNotice(store, now, trouble); },
    sketch: (keeper, again) => {
      drawSketch(keeper.content().sketch, (sketch) => { keeper.change({ sketch }); again(); });
    },
  };
  const draw = (notes, state) => {
    const wanted = ofLesson(state).sort(inOrder);
    const keys = wanted.map((note) => note.item);
    cards.forEach((card, key) => { if (!keys.includes(key)) { card.end(); card.node.remove(); cards.delete(key); } });
    wanted.forEach((note, i) => {
      if (!cards.has(note.item)) {
        cards.set(note.item, noteCard(note, on, title));
      }
      const { node } = cards.get(note.item);
      if (list.children[i] !== node) {
        list.insertBefore(node, list.children[i] || null);
      }
    });
    if (state.fresh && cards.has(state.fresh)) {
      cards.get(state.fresh).write();
      store.commit({ fresh: null });
    }
  };
  body.replaceChildren(begin.node, trouble, list, el('p', {}, el('a', { href: 'notes.html' }, 'All my notes')));
  const unwatch = store.watch((state) => state.notes, draw);
  return { pages: 0, dispose: () => { unwatch(); begin.end(); cards.forEach((card) => card.end()); } };
}
