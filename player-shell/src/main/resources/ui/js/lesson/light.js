import { button, byId, el } from '../dom.js';
import { bytes } from '../units.js';

const WINDOW_MILLIS = 10000;
const TOO_MANY = 0.05;
const FEWEST_FRAMES = 100;
const LIGHT_LINES = 720;
const TOLD = 'lehrcase-light-told';
const CHOSEN = 'lehrcase-rendition';

/** What holds while this window is open; a browser that keeps nothing is as good as an empty one. */
const memory = {
  read: (key) => {
    try {
      return window.sessionStorage.getItem(key);
    } catch (error) {
      return null;
    }
  },
  keep: (key, value) => {
    try {
      window.sessionStorage.setItem(key, value);
    } catch (error) {
      memory.read = (other) => (other === key ? value : null);
    }
  },
};

/** Remembers which form of a film was chosen, for the next lesson too. */
export const rememberRendition = (rendition) => memory.keep(CHOSEN, rendition);

/** The form that was chosen before if this lesson has it, else the first. */
export const preferredRendition = (video) => video.find((one) => one.rendition === memory.read(CHOSEN)) || video[0];

/** The share of pictures dropped between two readings; 0 if too few came to judge by. */
export function droppedShare(before, after) {
  const frames = after.totalVideoFrames - before.totalVideoFrames;
  const dropped = after.droppedVideoFrames - before.droppedVideoFrames;
  return frames >= FEWEST_FRAMES && dropped > 0 ? dropped / frames : 0;
}

function offer(store, light) {
  const band = el('div', { class: 'notice care light-offer', role: 'status' });
  const close = () => {
    band.remove();
    byId('go').focus();
  };
  const change = () => {
    store.dispatch('rendition', light.rendition);
    close();
  };
  band.append(
    el('p', {}, el('strong', {}, 'This laptop drops pictures of this film.'), light
      ? ` The light copy is here too (${bytes(light.bytes)}): smaller pictures, the same lesson.`
      : ' Close other programs; if it stays so, ask your teacher for the light copy.'),
    el('div', { class: 'row' },
      light ? button({ text: 'Play the light copy', kind: 'main', onClick: change }) : null,
      button({ text: light ? 'Stay with this one' : 'Close', onClick: close })));
  byId('picture').after(band);
}

/** Suggests the light copy, once while the window is open, when more than 5 % of the pictures drop in ten seconds. */
export function connectLight(store) {
  const video = byId('video');
  if (!video.getVideoPlaybackQuality) {
    return;
  }
  let steady = false;
  let before = null;
  const unsteady = () => { steady = false; };
  ['pause', 'seeking', 'ratechange', 'loadedmetadata'].forEach((event) => video.addEventListener(event, unsteady));
  document.addEventListener('visibilitychange', unsteady);

  const look = () => {
    const now = video.getVideoPlaybackQuality();
    const judged = steady && before && video.playbackRate <= 1 && droppedShare(before, now) > TOO_MANY;
    before = now;
    steady = !video.paused && !document.hidden;
    const isLight = video.dataset.rendition === 'light' || Math.min(video.videoWidth, video.videoHeight) <= LIGHT_LINES;
    if (judged && !isLight && !memory.read(TOLD)) {
      memory.keep(TOLD, 'yes');
      offer(store, store.getState().lesson.video.find((one) => one.rendition === 'light'));
    }
  };
  setInterval(look, WINDOW_MILLIS);
}
