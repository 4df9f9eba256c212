import { address, get } from '../api.js';
import { byId, el } from '../dom.js';
import { frameStart, insideFrame } from './frames.js';
import { preferredRendition, rememberRendition } from './light.js';

export const SPEEDS = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2];

const video = () => byId('video');

function seek(seconds) {
  const picture = video();
  const end = Number.isFinite(picture.duration) ? picture.duration : seconds;
  picture.currentTime = Math.max(0, Math.min(seconds, end));
}

function setSpeed(speed) {
  const picture = video();
  picture.preservesPitch = true;
  picture.webkitPreservesPitch = true;
  picture.mozPreservesPitch = true;
  picture.defaultPlaybackRate = speed;
  picture.playbackRate = speed;
}

const nextSpeed = (speed, by) => {
  const near = SPEEDS.reduce((best, s, i) => (Math.abs(s - speed) < Math.abs(SPEEDS[best] - speed) ? i : best), 0);
  return SPEEDS[Math.max(0, Math.min(SPEEDS.length - 1, near + by))];
};

/** What requests do to the video element. State is not touched here: it follows the element's events. */
export const playerEffects = {
  go: () => video().play().catch(() => undefined),
  stop: () => video().pause(),
  goOrStop: ({ dispatch }) => dispatch(video().paused ? 'go' : 'stop'),
  seek: ({ detail }) => seek(detail),
  skip: ({ detail }) => seek(video().currentTime + detail),
  frame: ({ detail, state }) => {
    video().pause();
    seek(insideFrame(frameStart(video().currentTime, state.frame) + detail * state.frame, state.frame));
  },
  speed: ({ detail, dispatch }) => {
    setSpeed(detail);
    dispatch('settings', { speed: detail });
  },
  speedBy: ({ detail, state, dispatch }) => dispatch('speed', nextSpeed(state.speed, detail)),
  sound: () => { video().muted = !video().muted; },
  rendition: ({ detail, state }) => {
    const at = video().currentTime;
    const wasPaused = video().paused;
    load(state.lesson.video.find((one) => one.rendition === detail), at);
    rememberRendition(detail);
    if (!wasPaused) {
      video().play().catch(() => undefined);
    }
  },
  whole: () => {
    if (document.fullscreenElement) {
      document.exitFullscreen();
    } else {
      byId('stage').requestFullscreen?.().catch(() => undefined);
    }
  },
};

/** Puts one rendition into the video element and goes to a second. */
export function load(rendition, seconds) {
  const picture = video();
  picture.src = address(rendition.url);
  picture.dataset.rendition = rendition.rendition;
  picture.addEventListener('loadedmetadata', () => {
    seek(seconds);
    setSpeed(picture.defaultPlaybackRate);
  }, { once: true });
}

const FOLLOWED = {
  timeupdate: (v) => ({ time: v.currentTime }),
  seeking: (v) => ({ time: v.currentTime, seeking: true }),
  seeked: (v) => ({ time: v.currentTime, seeking: false }),
  durationchange: (v) => ({ duration: Number.isFinite(v.duration) ? v.duration : 0 }),
  play: () => ({ paused: false }),
  pause: () => ({ paused: true }),
  ended: () => ({ paused: true }),
  ratechange: (v) => ({ speed: v.playbackRate }),
  volumechange: (v) => ({ muted: v.muted }),
};

function startingPoint(lesson) {
  const seconds = Number((lesson.position && lesson.position.seconds) || 0);
  return seconds > 1 ? seconds : 0;
}

/** Connects the state to the video element's events and starts loading. */
export function connectPlayer(store) {
  const { lesson, speed } = store.getState();
  const picture = video();
  Object.entries(FOLLOWED).forEach(([event, read]) => {
    picture.addEventListener(event, () => store.commit(read(picture)));
  });
  picture.addEventListener('click', () => store.dispatch('goOrStop'));
  picture.setAttribute('aria-label', `Picture of the lesson ${lesson.lesson.title}`);
  if (!lesson.video || !lesson.video.length) {
    byId('picture').classList.add('none');
    picture.replaceWith(el('video', { id: 'video', hidden: true }), el('p', {}, 'This lesson has papers and no picture.'));
    return;
  }
  setSpeed(speed);
  get('api/frame', { e: lesson.edition, a: lesson.video[0].asset })
    .then(({ seconds }) => seconds && store.commit({ frame: seconds })).catch(() => undefined);
  load(preferredRendition(lesson.video), startingPoint(lesson));
}
