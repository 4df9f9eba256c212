import { post } from './api.js';
import { button, el } from './dom.js';
import { errorNotice, goodNotice } from './notice.js';
import { followJob } from './job.js';
import { bytes } from './units.js';

function told(job, stopped) {
  if (job.state === 'failed') {
    return errorNotice(job.result.error);
  }
  return goodNotice(job.state === 'stopped' ? stopped : job.message);
}

/**
 * Shows long work in a place: how far it is, a stop, and what came of it.
 * `start` begins it; `stopped` says what holds after a stop; `refresh` is called at the end.
 */
export async function followHere(place, words, start, { stopped, refresh }) {
  const line = el('p', {}, words);
  const bar = el('progress', { max: '1', value: '0', 'aria-label': words });
  try {
    const { id } = await start();
    const stop = button({ text: 'Stop', onClick: () => post(`api/jobs/${id}/stop`).catch(() => undefined) });
    place.replaceChildren(el('div', { class: 'notice' }, line, bar, el('div', { class: 'row' }, stop)));
    place.scrollIntoView({ block: 'nearest' });
    const last = await followJob(id, (job) => {
      if (job.totalBytes > 0) {
        bar.value = job.doneBytes / job.totalBytes;
        line.textContent = `${words} ${bytes(job.doneBytes)} of ${bytes(job.totalBytes)}`;
      }
    });
    place.replaceChildren(told(last, stopped));
    refresh();
  } catch (error) {
    place.replaceChildren(errorNotice(error));
  }
}
