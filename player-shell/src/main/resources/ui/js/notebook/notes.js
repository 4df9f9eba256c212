import { get, post, put } from '../api.js';

/** Notes, marks and loops of the open notebook, as the bench keeps them. */

/** Everything in the open notebook, the newest change first. */
export async function fetchNotes() {
  return (await get('api/notes')).notes;
}

/** Pins something to the given lesson: `kind` is note, mark or loop. */
export const addNote = (kind, place, content) => post('api/notes', { kind, ...place, content });

/** Writes over; `leaving` lets the request outlive the page. */
export const saveNote = (note, content, leaving) =>
  put(`api/notes/${note.item}`, { version: note.version, content }, leaving);

/** Puts away; {@link undoNote} fetches it back. */
export const removeNote = (note) => post(`api/notes/${note.item}/remove`, { version: note.version });

/** What stood there before. */
export const undoNote = (note) => post(`api/notes/${note.item}/undo`, { version: note.version });

const key = (note) => note.item + note.version;

/** The list with `now` in the place of `before`; gone if it was put away, first if it is new. */
export function withNote(notes, now, before) {
  const rest = notes.filter((note) => key(note) !== key(now));
  const at = before ? rest.findIndex((note) => key(note) === key(before)) : -1;
  const without = rest.filter((note) => !before || key(note) !== key(before));
  if (now.deleted) {
    return without;
  }
  const place = at < 0 ? Math.max(0, before ? notes.findIndex((note) => key(note) === key(before)) : 0) : at;
  return [...without.slice(0, place), now, ...without.slice(place)];
}
