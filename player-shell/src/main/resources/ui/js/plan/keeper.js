import { post, put } from '../api.js';

const REST_MILLIS = 350;

/**
 * Keeps the plan as one goes: one save at a time, the newest state last. `onState` is told "saving", "kept"
 * with the time, or "failed" with the error; after a failure the next change tries again.
 */
export function createKeeper(record, onState) {
  let { revision } = record;
  let waiting = null;
  let timer = 0;
  let running = null;

  async function send() {
    while (waiting) {
      const plan = waiting;
      waiting = null;
      onState('saving');
      try {
        const answer = await put(`api/plans/${record.id}`, { revision, plan });
        if (answer.problem) {
          throw Object.assign(new Error(answer.problem.message), { happened: `This plan cannot be kept: ${answer.problem.message}.`, safe: 'What was kept before is kept.', next: 'Undo the last step.' });
        }
        revision = answer.revision;
        onState('kept', answer.changed_at_millis);
      } catch (error) {
        onState('failed', error);
        return;
      }
    }
  }

  /** Sends what waits, now; resolves when nothing is under way. */
  function flush() {
    clearTimeout(timer);
    running = (running || Promise.resolve()).then(send);
    return running;
  }

  document.addEventListener('visibilitychange', () => document.hidden && flush());
  window.addEventListener('pagehide', flush);

  return {
    flush,
    later(plan) {
      waiting = plan;
      clearTimeout(timer);
      timer = setTimeout(flush, REST_MILLIS);
    },
    /** Keeps what is on the page as a plan of its own. */
    copy: (plan) => post('api/plans', { plan: { ...plan, name: `${plan.name} (copy)` } }),
    adopt(number) { revision = number; },
  };
}
