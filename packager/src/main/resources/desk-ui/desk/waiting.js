import { get } from '../js/api.js';
import { el } from '../js/dom.js';
import { resultItem } from './result.js';

const BACKUP_DAYS = 30;

function courseSheet(course) {
  return el('section', { class: 'sheet' }, el('h3', {}, `${course.title} was changed`),
    el('p', { class: 'quiet' }, `since edition ${course.editions[course.editions.length - 1].number}`),
    el('ul', {}, course.changes.slice(0, 5).map((line) => el('li', {}, line))),
    course.changes.length > 5 ? el('p', { class: 'quiet' }, `and ${course.changes.length - 5} more`) : null,
    el('a', { class: 'button', href: '#courses' }, 'To the courses'));
}

function backupSheet(safe) {
  if (safe.daysAgo !== null && safe.daysAgo < BACKUP_DAYS) {
    return null;
  }
  return el('section', { class: 'sheet' }, el('h3', {}, 'A backup is due'),
    el('p', {}, safe.daysAgo === null
      ? 'No backup of this desk was made from its page yet.'
      : `The last one is ${safe.daysAgo} days old.`),
    el('a', { class: 'button', href: '#safe' }, 'Make a backup'));
}

/** Waiting: what needs the teacher today, and nothing else. */
export async function waitingRoom(place, context) {
  const [waiting, courses, safe] = await Promise.all([get('api/waiting'), get('api/courses'), get('api/safe')]);
  let left = waiting.items.length;
  context.tellCount(left);
  const again = { ...context, onSettled: () => { left -= 1; context.tellCount(left); } };
  const list = el('ol', { class: 'letters', id: 'waiting-list' }, waiting.items.map((item) => resultItem(
    { ...item, kind: item.kind === 'card' ? 'waits' : 'slip' }, `since ${item.day}`, again)));
  const changed = courses.courses.filter((course) => course.changes.length);
  const sheets = [...changed.map(courseSheet), backupSheet(safe)].filter(Boolean);
  place.append(
    waiting.items.length || sheets.length ? '' : el('p', { class: 'quiet' }, 'Nothing waits. A good time for glass.'),
    list, el('div', { class: 'sheets' }, sheets));
}
