import { byId, button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { addNote, removeNote, saveNote, undoNote, withNote } from '../notebook/notes.js';
import { clock } from '../units.js';
import { COUNT_INS } from './count-in.js';
import { loops } from './loop.js';

/** "1:02.04": minutes, seconds, hundredths. */
const fine = (seconds) => `${clock(Math.floor(seconds + 1e-6))}.${String(Math.floor((seconds % 1) * 100 + 1e-6) % 100).padStart(2, '0')}`;

const say = (words) => { byId('said').textContent = words; };

function edge(store, which, name) {
  const time = el('span', { class: 'loop-time', id: `loop-${which}` });
  const move = (by) => () => store.dispatch('loopEdge', { edge: which, by });
  const node = el('span', { class: 'loop-edge', role: 'group', 'aria-label': name }, el('span', {}, name),
    button({ label: `${name}: one picture earlier`, sign: 'minus', kind: 'bare', onClick: move(-1) }), time,
    button({ label: `${name}: one picture later`, sign: 'plus', kind: 'bare', onClick: move(1) }));
  return { node, show: (seconds) => { time.textContent = seconds === null ? '…' : fine(seconds); } };
}

function countInChoice(store) {
  const select = el('select', { id: 'count-in', 'aria-label': 'Count-in before each turn' },
    COUNT_INS.map((seconds) => el('option', { value: seconds }, seconds ? `count ${seconds} s` : 'no count-in')));
  select.addEventListener('change', () => store.dispatch('settings', { countIn: Number(select.value) }));
  store.watch((state) => Number(state.settings.countIn) || 0, (seconds) => { select.value = String(seconds); });
  return select;
}

function content(loop, name) {
  return { text: name, pin: { where: 'second', at: Math.round(loop.from * 1000), to: Math.round(loop.to * 1000) } };
}

/** Keeps the loop under a name, or writes over the kept one. */
async function keep(store, name) {
  const { lesson, loop, notes } = store.getState();
  const place = { edition: lesson.edition, lesson: lesson.lesson.id };
  const text = name.trim() || `${clock(loop.from)}–${clock(loop.to)}`;
  const kept = loop.note ? await saveNote(loop.note, content(loop, text)) : await addNote('loop', place, content(loop, text));
  store.commit({ notes: withNote(notes, kept, loop.note), loop: { ...store.getState().loop, note: kept, open: false } });
  say(`Kept: ${text}`);
}

async function forget(store) {
  const { loop, notes } = store.getState();
  const gone = await removeNote(loop.note);
  store.commit({ notes: withNote(notes, gone, loop.note) });
  store.dispatch('loopOff');
  const back = button({ text: 'Fetch it back', onClick: async () => {
    const again = await undoNote(gone);
    store.commit({ notes: withNote(store.getState().notes, again) });
    note.remove();
  } });
  const note = el('div', { class: 'notice loop-gone', role: 'status' }, el('span', {}, `“${gone.content.text}” is put away. `), back);
  byId('loop-bar').after(note);
  setTimeout(() => note.remove(), 15000);
}

/** The edges of the loop to the picture, the count-in, and its name; open while it is being set. */
export function connectLoopBar(store) {
  const bar = byId('loop-bar');
  const set = byId('loop-set');
  set.addEventListener('click', () => store.dispatch('loopOpen'));
  const from = edge(store, 'from', 'From');
  const to = edge(store, 'to', 'To');
  const name = el('input', { type: 'text', id: 'loop-name', maxlength: '80', placeholder: 'its name', 'aria-label': 'Name of this loop', autocomplete: 'off' });
  const guard = (action) => () => action().catch((error) => bar.after(errorNotice(error)));
  const keepIt = guard(() => keep(store, name.value));
  const gone = button({ label: 'Put this kept loop away', sign: 'close', kind: 'bare', id: 'loop-forget', onClick: guard(() => forget(store)) });
  const form = el('form', { class: 'loop-keep', on: { submit: (event) => { event.preventDefault(); keepIt(); } } },
    name, el('button', { type: 'submit', id: 'loop-keep' }, 'Keep'), gone,
    button({ text: 'Hide', kind: 'bare', id: 'loop-hide', onClick: () => store.dispatch('loopOpen') }));
  bar.replaceChildren(from.node, to.node, countInChoice(store), form);
  store.watch((state) => state.loop, (loop) => {
    bar.hidden = loop.from === null || !loop.open;
    byId('bench').classList.toggle('setting-loop', !bar.hidden);
    set.hidden = !loops(loop);
    byId('last-ten').hidden = loops(loop);
    set.setAttribute('aria-expanded', String(loop.open));
    from.show(loop.from);
    to.show(loop.to);
    form.hidden = !loops(loop);
    gone.hidden = !loop.note;
  });
  store.watch((state) => state.loop.note, (note) => { name.value = note ? note.content.text : ''; });
}
