import { el } from './dom.js';
import { clock } from './units.js';

/** Where a correction belongs, in words. */
export const whereOf = (note) => (note.page ? `page ${note.page}` : `at ${clock(note.atMillis / 1000)}`);

/** Every correction as a list; `head(note)` gives the link or button that leads to its place. */
export function correctionList(notes, head) {
  return el('ul', { class: 'correction-list' }, notes.map((note) => el('li', {},
    head(note), note.day ? el('small', {}, ` ${note.day}`) : null, el('p', {}, note.text))));
}
