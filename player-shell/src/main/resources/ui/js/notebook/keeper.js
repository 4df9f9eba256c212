import { saveNote } from './notes.js';

const SETTLE_MILLIS = 500;

/**
 * Keeps one note by itself: a moment after the last change, on leaving it, and when the page goes.
 * Requests follow each other, so that an older text never overtakes a newer one.
 */
export function noteKeeper(note, { onKept, fail }) {
  let current = note;
  let content = note.content;
  let waiting = 0;
  let line = Promise.resolve();
  let dirty = false;

  const flush = (leaving) => {
    window.clearTimeout(waiting);
    if (!dirty) {
      return line;
    }
    dirty = false;
    const wanted = content;
    const send = async () => {
      const before = current;
      current = await saveNote(current, wanted, leaving);
      onKept(current, before);
    };
    line = (leaving ? send() : line.then(send)).catch((error) => {
      dirty = true;
      fail(error);
    });
    return line;
  };

  const onHide = () => flush(true);
  window.addEventListener('pagehide', onHide);
  return {
    note: () => current,
    content: () => content,
    change: (patch) => {
      content = { ...content, ...patch };
      dirty = true;
      window.clearTimeout(waiting);
      waiting = window.setTimeout(flush, SETTLE_MILLIS, false);
    },
    flush,
    /** Takes over what the bench says, as after an undo. */
    take: (now) => { current = now; content = now.content; dirty = false; },
    end: () => { flush(false); window.removeEventListener('pagehide', onHide); },
  };
}
