import { byId } from '../dom.js';
import { clock } from '../units.js';

const LEAST_SECONDS = 0.3;
const NONE = Object.freeze({ from: null, to: null });

export const loops = (loop) => loop.from !== null && loop.to !== null;

/** One button, three presses: from here, to here, enough. */
export const loopEffects = {
  again: ({ state, commit, dispatch }) => {
    const { loop } = state;
    const now = byId('video').currentTime;
    if (loop.from === null) {
      commit({ loop: { from: now, to: null } });
    } else if (loop.to === null) {
      const from = Math.min(loop.from, now);
      const to = Math.max(loop.from, now, from + LEAST_SECONDS);
      commit({ loop: { from, to } });
      dispatch('seek', from);
      dispatch('go');
    } else {
      commit({ loop: NONE });
    }
  },
  loopOff: ({ commit }) => commit({ loop: NONE }),
  loopEdge: ({ detail, state, commit }) => {
    const moved = { ...state.loop, ...detail };
    if (loops(state.loop) && moved.to - moved.from >= LEAST_SECONDS && moved.from >= 0) {
      commit({ loop: moved });
    }
  },
};

function words(loop) {
  if (loop.from === null) {
    return { shown: 'Again', heard: 'Again: loop from here' };
  }
  if (loop.to === null) {
    return { shown: `from ${clock(loop.from)} to …`, heard: `Loop from ${clock(loop.from)} to …: to here` };
  }
  return { shown: `${clock(loop.from)}–${clock(loop.to)}`, heard: `Loop ${clock(loop.from)}–${clock(loop.to)}: end it` };
}

/** Jumps back at the end of the loop; by frames while the page is seen, by the element's own clock otherwise. */
export function connectLoop(store) {
  const video = byId('video');
  const control = byId('again');
  const turn = () => {
    const { loop } = store.getState();
    if (loops(loop) && !video.paused && (video.currentTime >= loop.to || video.ended)) {
      video.currentTime = loop.from;
    }
  };
  const eachFrame = () => {
    turn();
    if (loops(store.getState().loop)) {
      requestAnimationFrame(eachFrame);
    }
  };
  video.addEventListener('timeupdate', turn);
  video.addEventListener('ended', () => {
    const { loop } = store.getState();
    if (loops(loop)) {
      store.dispatch('seek', loop.from);
      store.dispatch('go');
    }
  });
  control.addEventListener('click', () => store.dispatch('again'));
  store.watch((state) => state.loop, (loop) => {
    const { shown, heard } = words(loop);
    byId('again-words').textContent = shown;
    control.setAttribute('aria-label', heard);
    control.title = heard;
    control.setAttribute('aria-pressed', String(loop.from !== null));
    if (loops(loop)) {
      requestAnimationFrame(eachFrame);
    }
  });
}
