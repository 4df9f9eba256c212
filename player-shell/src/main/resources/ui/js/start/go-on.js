import { address } from '../api.js';
import { el, icon } from '../dom.js';
import { clock } from '../units.js';

export const lessonUrl = (edition, lesson) => address('lesson.html', { e: edition, l: lesson });

function find(bench, last) {
  const course = bench.courses.find((candidate) => candidate.edition === last.edition);
  const lesson = course?.lessons.find((candidate) => candidate.id === last.lesson);
  return lesson ? { course, lesson } : null;
}

/** The lesson to offer: where the person stopped, or the first that can be played. */
function choose(bench) {
  const stopped = bench.last ? find(bench, bench.last) : null;
  if (stopped) {
    return { ...stopped, seconds: bench.last.seconds || stopped.lesson.positionSeconds || 0 };
  }
  for (const course of bench.courses) {
    const lesson = course.lessons.find((candidate) => candidate.playable);
    if (lesson) {
      return { course, lesson, seconds: lesson.positionSeconds || 0 };
    }
  }
  return null;
}

/** One large next step above everything else. */
export function renderGoOn(place, bench) {
  const offer = choose(bench);
  place.hidden = !offer;
  if (!offer) {
    return;
  }
  const { course, lesson, seconds } = offer;
  const words = seconds >= 1 ? `Go on at ${clock(seconds)}` : 'Start this lesson';
  place.classList.toggle('pictured', Boolean(lesson.poster));
  place.replaceChildren(...(lesson.poster ? [el('img', { src: address(lesson.poster), alt: '' })] : []),
    el('div', {},
      el('p', {}, seconds >= 1 ? 'Where you stopped' : 'Ready on this laptop'),
      el('h2', { id: 'go-on-title' }, lesson.title),
      el('p', {}, `${course.title}, lesson ${lesson.number}`)),
    el('a', { class: 'button main', href: lessonUrl(course.edition, lesson.id), 'aria-label': `${words}: ${lesson.title}` },
      icon('go'), words));
}
