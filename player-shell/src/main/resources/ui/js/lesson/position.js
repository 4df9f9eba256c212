import { put } from '../api.js';
import { byId } from '../dom.js';

const EVERY_MILLIS = 4000;

/** Keeps the place in the lesson: every few seconds while it plays, on stop, and when the page goes. */
export function connectPosition(store) {
  const { lesson } = store.getState();
  const video = byId('video');
  let kept = -1;
  const keep = (leaving) => {
    const seconds = Math.round(video.currentTime * 100) / 100;
    if (video.readyState < 1 || video.seeking || Math.abs(seconds - kept) < 0.2) {
      return;
    }
    kept = seconds;
    const body = { edition: lesson.edition, lesson: lesson.lesson.id, seconds };
    put('api/position', body, leaving).catch(() => { kept = -1; });
  };
  setInterval(() => !video.paused && keep(false), EVERY_MILLIS);
  video.addEventListener('pause', () => keep(false));
  video.addEventListener('seeked', () => video.paused && keep(false));
  window.addEventListener('pagehide', () => keep(true));
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && keep(true));
}
