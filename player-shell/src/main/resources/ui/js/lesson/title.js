import { address } from '../api.js';
import { byId, el, icon } from '../dom.js';

function neighbour(edition, lesson, words, sign) {
  if (!lesson) {
    return null;
  }
  const id = lesson.id || lesson;
  const name = lesson.title ? `${words}: ${lesson.title}` : words;
  return el('a', {
    class: 'button bare', id: sign === 'prev' ? 'lesson-before' : 'lesson-after', title: name, 'aria-label': name,
    href: address('lesson.html', { e: edition, l: id }),
  }, sign === 'prev' ? icon('prev') : null, el('span', { class: 'label' }, sign === 'prev' ? 'Before' : 'Next'), sign === 'next' ? icon('next') : null);
}

/** The heading and the way to the lessons beside this one. */
export function connectTitle(store) {
  const { lesson } = store.getState();
  const { number, title } = lesson.lesson;
  byId('title').textContent = title;
  byId('series').textContent = lesson.seriesTitle || lesson.courseTitle || `Lesson ${number}`;
  document.title = `${title} · Lehrcase`;
  byId('neighbours').append(...[
    neighbour(lesson.edition, lesson.previous, 'Lesson before', 'prev'),
    neighbour(lesson.edition, lesson.next, 'Next lesson', 'next'),
  ].filter(Boolean));
}
