import { get } from './api.js';

const PAUSE_MILLIS = 400;

/** Follows long work until it ends; `report` gets every answer, the last one is returned. */
export async function followJob(id, report) {
  for (;;) {
    const job = await get(`api/jobs/${id}`);
    report(job);
    if (job.state !== 'running') {
      return job;
    }
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MILLIS));
  }
}
