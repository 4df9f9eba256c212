import { post } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { followJob } from '../job.js';
import { bytes, several } from '../units.js';

const PLAIN = { whole: 'whole', notHere: 'not in this copy', 'not here': 'not in this copy', damaged: 'damaged' };

function lessonLine(lesson) {
  const places = Number(lesson.damagedSegments || lesson.segments || 0);
  const more = places ? ` in ${several(places, 'place')}` : '';
  return el('li', {}, `Lesson ${lesson.number}, ${lesson.title}: ${PLAIN[lesson.state] || lesson.state}${more}`);
}

function showResult(place, job) {
  const lessons = (job.result && job.result.lessons) || [];
  const bad = lessons.some((lesson) => lesson.state !== 'whole') || job.state === 'failed';
  place.replaceChildren(el('div', { class: bad ? 'notice care' : 'notice', role: 'status' },
    el('p', {}, el('strong', {}, job.message || (bad ? 'This copy is not whole.' : 'Every byte of this copy is right.'))),
    lessons.length ? el('ul', {}, lessons.map(lessonLine)) : null));
}

/** Reads every byte of one copy, shows how far it is, and can be stopped. */
export async function startCheck(place, course, refresh) {
  const words = el('p', {}, 'Reading every byte …');
  const bar = el('progress', { max: '1', value: '0', 'aria-label': `Checking ${course.title}` });
  try {
    const { id } = await post('api/check', { edition: course.edition });
    const stop = button({ text: 'Stop', onClick: () => post(`api/jobs/${id}/stop`).catch(() => undefined) });
    place.replaceChildren(el('div', { class: 'notice' }, words, bar, el('div', { class: 'row' }, stop)));
    const last = await followJob(id, (job) => {
      if (job.totalBytes > 0) {
        bar.value = job.doneBytes / job.totalBytes;
        words.textContent = `Checked ${bytes(job.doneBytes)} of ${bytes(job.totalBytes)}`;
      }
    });
    showResult(place, last);
    refresh();
  } catch (error) {
    place.replaceChildren(errorNotice(error));
  }
}
