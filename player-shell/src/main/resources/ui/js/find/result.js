import { address } from '../api.js';
import { el, icon } from '../dom.js';
import { clock } from '../units.js';

const SIGNS = {
  series: 'page', lesson: 'go', moment: 'moment', caption: 'captions', page: 'page', section: 'page', material: 'materials', firing: 'firing', paper: 'page', correction: 'warn', note: 'letter',
};
const KINDS = {
  series: 'Course', lesson: 'Lesson', moment: 'Moment', caption: 'Captions', page: 'Handout', section: 'Text', material: 'Materials', firing: 'Firing schedule', paper: 'Paper', correction: 'Correction', note: 'My note',
};
const LATER = ['correction', 'note'];

/** Whether a result leads to a second of the film; otherwise it leads to a paper. */
export const isFilm = (find) => ['lesson', 'moment', 'caption'].includes(find.kind) || (LATER.includes(find.kind) && !find.asset);

const isPage = (find) => find.kind === 'page' || LATER.includes(find.kind);

const isRow = (find) => find.kind !== 'page';

/** Where a result leads inside its lesson: `{t}` seconds, or in a paper `{a, p}` a page, `{a, r}` a row or heading. */
export function spotOf(find) {
  if (isFilm(find)) {
    return find.kind === 'lesson' ? {} : { t: find.at / 1000 };
  }
  const page = find.at && isPage(find) ? { p: find.at } : {};
  const row = find.at && isRow(find) ? { r: find.at } : {};
  return find.asset ? { a: find.asset, ...page, ...row } : {};
}

export function urlOf(find) {
  return find.lesson ? address('lesson.html', { e: find.edition, l: find.lesson, ...spotOf(find) }) : address('');
}

function whereIn(find) {
  if (isFilm(find)) {
    return find.kind === 'lesson' ? '' : `at ${clock(find.at / 1000)}`;
  }
  const page = find.at && isPage(find) ? `page ${find.at}` : '';
  const row = find.at && ['material', 'firing'].includes(find.kind) ? `line ${find.at}` : '';
  return [find.kind === 'paper' ? '' : find.paper, page || row].filter(Boolean).join(', ');
}

/** The found words stand in every second part. */
const words = (parts) => parts.map((part, i) => (i % 2 ? el('mark', {}, part) : part));

/** One result as an option of the list. */
export function resultOption(find, id, choose) {
  const lesson = find.lesson ? `${find.number}. ${find.title}` : '';
  const where = [KINDS[find.kind], whereIn(find), lesson, find.kind === 'series' ? '' : find.course].filter(Boolean).join(' · ');
  return el('li', { id, role: 'option', 'aria-selected': 'false', on: { click: () => choose(find) } },
    icon(SIGNS[find.kind]), el('div', {}, el('p', { class: 'found-words' }, words(find.parts)), el('p', { class: 'found-where' }, where)));
}
