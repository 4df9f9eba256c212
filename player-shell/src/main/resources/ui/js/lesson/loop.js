import { byId } from '../dom.js';
import { clock } from '../units.js';
import { cancelCountIn, countIn, countsIn } from './count-in.js';
import { frameStart, insideFrame, nearestEdge } from './frames.js';
import { followFrames } from './loop-turn.js';

const BACK_SECONDS = 10;
export const NONE = Object.freeze({ from: null, to: null, note: null, open: false });

export const loops = (loop) => loop.from !== null && loop.to !== null;

const shownFrame = (frame) => frameStart(byId('video').currentTime, frame);

/** A loop between the edges of two pictures, at least one picture long. */
function between(one, other, frame) {
  const from = nearestEdge(Math.min(one, other), frame);
  return { from, to: Math.max(from + frame, nearestEdge(Math.max(one, other), frame)), note: null, open: true };
}

/** From its first picture, after the count-in. */
function start({ state, dispatch }) {
  const video = byId('video');
  const { loop, frame, settings } = state;
  const lead = Number(settings.countIn) || 0;
  if (lead) {
    video.pause();
  }
  video.currentTime = insideFrame(loop.from, frame);
  countIn(lead, () => dispatch('go'));
}

/** One button, three presses: from here, to here, enough. The edges are those of the pictures shown. */
export const loopEffects = {
  again: (asked) => {
    const { state, commit, dispatch } = asked;
    const { loop, frame } = state;
    const here = shownFrame(frame);
    if (loop.from === null) {
      commit({ loop: { ...NONE, from: here } });
    } else if (loop.to === null) {
      const first = Math.min(loop.from, here);
      const last = Math.max(loop.from, here);
      commit({ loop: between(first, last + frame, frame) });
      dispatch('loopStart');
    } else {
      dispatch('loopOff');
    }
  },
  lastTen: ({ state, commit, dispatch }) => {
    const here = shownFrame(state.frame) + state.frame;
    commit({ loop: between(Math.max(0, here - BACK_SECONDS), here, state.frame) });
    dispatch('loopStart');
  },
  loopFrom: ({ state, commit }) => {
    const from = shownFrame(state.frame);
    const to = state.loop.to !== null && state.loop.to > from ? state.loop.to : null;
    commit({ loop: { ...state.loop, from, to, open: true } });
  },
  loopTo: ({ state, commit, dispatch }) => {
    const to = shownFrame(state.frame) + state.frame;
    const from = state.loop.from !== null && state.loop.from < to ? state.loop.from : Math.max(0, to - BACK_SECONDS);
    commit({ loop: { ...between(from, to, state.frame), note: state.loop.note } });
    dispatch('loopStart');
  },
  loopStart: start,
  loopOpen: ({ state, commit }) => commit({ loop: { ...state.loop, open: !state.loop.open } }),
  loopOff: ({ commit }) => {
    cancelCountIn();
    commit({ loop: NONE });
  },
  /** Moves an edge by pictures and shows the picture at that edge. */
  loopEdge: ({ detail, state, commit, dispatch }) => {
    const { loop, frame, duration } = state;
    const moved = { ...loop, [detail.edge]: nearestEdge(loop[detail.edge] + detail.by * frame, frame) };
    if (!loops(loop) || moved.to - moved.from < frame / 2 || moved.from < 0 || moved.to > duration + frame) {
      return;
    }
    commit({ loop: moved });
    dispatch('stop');
    byId('video').currentTime = insideFrame(detail.edge === 'from' ? moved.from : moved.to - frame, frame);
  },
  loopKept: ({ detail, state, commit, dispatch }) => {
    const { pin } = detail.content;
    commit({ loop: { ...between(pin.at / 1000, pin.to / 1000, state.frame), note: detail, open: false } });
    dispatch('loopStart');
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

/** The button, and the turn at the end of the loop. */
export function connectLoop(store) {
  const control = byId('again');
  followFrames(byId('video'), store, () => store.dispatch('loopStart'));
  control.addEventListener('click', () => store.dispatch('again'));
  byId('last-ten').addEventListener('click', () => store.dispatch('lastTen'));
  store.watch((state) => state.loop, (loop) => {
    const { shown, heard } = words(loop);
    byId('again-words').textContent = shown;
    control.setAttribute('aria-label', heard);
    control.title = heard;
    control.setAttribute('aria-pressed', String(loop.from !== null));
  });
  store.watch((state) => state.paused, (paused) => !paused && countsIn() && cancelCountIn());
}
