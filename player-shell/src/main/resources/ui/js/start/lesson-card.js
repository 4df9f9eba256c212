import { address } from '../api.js';
import { el, icon } from '../dom.js';
import { clock, several } from '../units.js';
import { lessonUrl } from './go-on.js';

/** What one can say about a lesson, the most pressing first. */
export function lessonState(course, lesson) {
  const damaged = Array.isArray(lesson.damaged) ? lesson.damaged.length : Number(lesson.damaged || 0);
  if (!lesson.here) {
    return { words: course.status === 'notHere' ? 'on the stick' : 'not in this copy', sign: 'stick' };
  }
  if (!lesson.playable) {
    return { words: course.status === 'shut' ? 'waits for the key letter' : 'needs a license', sign: 'shut' };
  }
  if (damaged) {
    return { words: `damaged in ${several(damaged, 'place')}, the rest plays`, sign: 'warn' };
  }
  if (lesson.positionSeconds >= 1) {
    const of = lesson.durationSeconds ? ` of ${clock(lesson.durationSeconds)}` : '';
    return { words: `watched to ${clock(lesson.positionSeconds)}${of}`, sign: 'clock' };
  }
  const long = lesson.durationSeconds ? ` · ${clock(lesson.durationSeconds)}` : '';
  return { words: `${lesson.open && course.status !== 'open' ? 'open to everybody' : 'not started'}${long}`, sign: 'moment' };
}

function progress(lesson) {
  const share = lesson.durationSeconds ? Math.min(1, (lesson.positionSeconds || 0) / lesson.durationSeconds) : 0;
  const bar = el('span', {});
  bar.style.width = `${(share * 100).toFixed(1)}%`;
  return el('div', { class: 'lesson-progress', 'aria-hidden': 'true' }, bar);
}

function picture(lesson) {
  return lesson.poster
    ? el('img', { class: 'lesson-picture', src: address(lesson.poster), alt: '', loading: 'lazy' })
    : el('div', { class: 'lesson-sheet', 'aria-hidden': 'true' }, String(lesson.number));
}

function step(course, lesson) {
  if (!lesson.playable || !lesson.here) {
    return null;
  }
  const words = lesson.positionSeconds >= 1 ? 'Go on' : 'Start';
  return el('a', { class: 'button', href: lessonUrl(course.edition, lesson.id), 'aria-label': `${words}: ${lesson.title}` },
    icon('go'), words);
}

/** One lesson as a sheet: picture, title, summary, state, next step. */
export function lessonCard(course, lesson) {
  const state = lessonState(course, lesson);
  return el('li', { class: lesson.playable && lesson.here ? 'lesson' : 'lesson shut' },
    picture(lesson),
    progress(lesson),
    el('div', { class: 'lesson-words' },
      el('h3', {}, lesson.poster ? `${lesson.number}. ${lesson.title}` : lesson.title),
      lesson.summary ? el('p', {}, lesson.summary) : null),
    el('div', { class: 'lesson-foot' },
      el('span', { class: 'lesson-state' }, icon(state.sign), state.words),
      lesson.kept ? el('span', { class: 'lesson-state' }, icon('save'), 'on this laptop') : null,
      step(course, lesson)));
}
