import { button, el, icon } from '../dom.js';
import { correctionList, whereOf } from '../corrections.js';
import { minutes, several } from '../units.js';
import { lessonCard } from './lesson-card.js';
import { startCheck } from './check.js';
import { keepPanel, removePanel, repairPanel } from './copies.js';
import { lessonUrl } from './go-on.js';

const STATES = {
  open: { words: 'open on this laptop', sign: 'check', kind: '' },
  locked: { words: 'needs a license', sign: 'shut', kind: 'shut' },
  notHere: { words: 'stick is not here', sign: 'stick', kind: 'shut' },
  shut: { words: 'waits for a key letter', sign: 'shut', kind: 'shut' },
};

const NEXT = {
  locked: (course) => [
    el('p', {}, el('strong', {}, course.openLessons
      ? `${several(course.openLessons, 'lesson')} can be watched without a license.`
      : 'Hand over your license on this page to open this course.')),
    course.whereToBuy ? el('p', {}, `Where to buy: ${course.whereToBuy}`) : null,
  ],
  notHere: (course) => [el('p', {}, el('strong', {}, 'Put the stick back in.'),
    ` The course was last seen at ${course.whereIs || 'another place'}; it is found again under any drive letter.`)],
  shut: () => [el('p', {}, el('strong', {}, 'Next: your key letter.'),
    ' Send this laptop card to your teacher and hand over the letter that comes back. Open lessons play meanwhile.')],
};

/** "5 lessons · 6 h 20 min": the time only when every film's length is known. */
function amount(course) {
  const known = course.lessons.filter((lesson) => lesson.durationSeconds);
  const total = known.reduce((sum, lesson) => sum + lesson.durationSeconds, 0);
  const least = known.length < course.lessons.length ? 'more than ' : '';
  return `${several(course.lessonsTotal, 'lesson')}${total >= 60 ? ` · ${least}${minutes(total / 60)} of film` : ''}`;
}

function corrections(course) {
  const notes = course.corrections || [];
  return notes.length ? el('details', { class: 'notice bad where' },
    el('summary', {}, `${several(notes.length, 'correction')} from your teacher`),
    correctionList(notes, (note) => el('a', { href: lessonUrl(course.edition, note.lesson) },
      `Lesson ${note.number}, ${note.title}, ${whereOf(note)}`))) : null;
}

function head(course, refresh, checkPlace) {
  const state = STATES[course.status] || STATES.shut;
  const by = course.teacher ? ` · ${course.teacher}` : '';
  return el('header', { class: 'course-head' },
    el('div', {},
      el('h2', {}, course.title),
      el('p', {}, `${amount(course)} · edition ${course.number}${by}`),
      course.description ? el('p', {}, course.description) : null),
    el('div', { class: 'row' },
      el('span', { class: `badge ${state.kind}` }, icon(state.sign), state.words),
      course.status === 'notHere' ? null : copyButtons(course, refresh, checkPlace)));
}

/** What one can do with a copy as a whole. */
function copyButtons(course, refresh, place) {
  const bare = (text, action) => button({
    text, kind: 'bare', 'aria-label': `${text}: ${course.title}`, onClick: () => action(place, course, refresh),
  });
  return [
    course.lessons.some((lesson) => lesson.here && !lesson.kept) ? bare('Keep on this laptop', keepPanel) : null,
    course.lessons.some((lesson) => lesson.kept) ? bare('Remove kept lessons', removePanel) : null,
    bare('Check this copy', startCheck),
    bare('Repair this copy', repairPanel),
  ];
}

/** Where a running or finished check of an edition is told; it outlives a redrawing of the list. */
const checkPlaces = new Map();

function checkPlaceOf(course) {
  if (!checkPlaces.has(course.edition)) {
    checkPlaces.set(course.edition, el('div', { class: 'check', 'aria-live': 'polite' }));
  }
  return checkPlaces.get(course.edition);
}

function courseCase(course, refresh) {
  const checkPlace = checkPlaceOf(course);
  const next = NEXT[course.status];
  return el('article', { class: 'course', 'aria-label': course.title },
    head(course, refresh, checkPlace),
    checkPlace,
    next ? el('div', { class: 'notice where care' }, next(course)) : null,
    corrections(course),
    el('ol', { class: 'lessons' }, course.lessons.map((lesson) => lessonCard(course, lesson))));
}

const nothingYet = () => el('div', { class: 'empty' },
  el('h2', {}, 'No course is here yet'),
  el('p', {}, 'Put the course stick into this laptop and press “Look again” below, or hand over the files your teacher sent.'),
  el('p', {}, 'No internet is needed, now or later.'));

/** All courses with each lesson, its state and its next step. */
export function renderCourses(place, bench, refresh) {
  place.removeAttribute('aria-busy');
  place.replaceChildren(...(bench.courses.length
    ? bench.courses.map((course) => courseCase(course, refresh))
    : [nothingYet()]));
}
