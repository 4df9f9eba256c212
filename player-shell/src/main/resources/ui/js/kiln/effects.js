import { post, put } from '../api.js';
import { saveSettings } from '../settings.js';
import { requestOf } from './setup.js';

const REST_MS = 350;
const KEEP_MS = 600;

let asked = 0;
let restTimer = 0;
let keepTimer = 0;

/** Keeps the block with the piece, or as the one of last time; quiet, the page goes on without it. */
function keepLater(state) {
  window.clearTimeout(keepTimer);
  keepTimer = window.setTimeout(() => {
    const id = state().piece ? state().piece.id : 'last';
    put(`api/blocks/${id}`, { figures: state().setup }).catch(() => undefined);
  }, KEEP_MS);
}

/** What a change of the page does. Answers that come too late are dropped. */
export const effects = {
  change: ({ detail, state, commit, dispatch }) => {
    commit({ setup: { ...state.setup, ...detail } });
    dispatch('compute');
    dispatch('keep');
  },
  keep: ({ state }) => {
    const { piece, setup } = state;
    keepLater(() => ({ piece, setup }));
  },
  compute: async ({ state, commit, dispatch }) => {
    asked += 1;
    const mine = asked;
    window.clearTimeout(restTimer);
    try {
      const answer = await post('api/firing', requestOf(state));
      if (mine !== asked) {
        return;
      }
      if (answer.problem) {
        commit({ problem: answer.problem, trouble: null });
        return;
      }
      commit({ answer, problem: null, trouble: null });
      restTimer = window.setTimeout(() => dispatch('rest'), REST_MS);
    } catch (trouble) {
      commit({ trouble });
    }
  },
  /** What may come a moment later: the price of each step of caution, and the maps if they are open. */
  rest: async ({ state, commit, dispatch }) => {
    const mine = asked;
    const prices = await post('api/firing/prices', requestOf(state)).catch(() => null);
    if (mine === asked && prices && prices.prices) {
      commit({ prices: prices.prices });
    }
    if (state.insideOpen) {
      dispatch('look');
    }
  },
  look: async ({ state, commit }) => {
    const mine = asked;
    try {
      const inside = await post('api/firing/inside', requestOf(state));
      if (mine === asked && !inside.problem) {
        commit({ inside });
      }
    } catch (trouble) {
      commit({ trouble });
    }
  },
  settings: ({ detail, state, commit, dispatch }) => {
    const settings = { ...state.settings, ...detail };
    commit({ settings });
    saveSettings(settings);
    if (!state.setup.kiln) {
      dispatch('compute');
    }
  },
  insideOpen: ({ detail, commit, dispatch }) => {
    commit({ insideOpen: detail });
    if (detail) {
      dispatch('look');
    }
  },
  /** Puts something beside my plan: a schedule of the lesson, or a second plan, or nothing. */
  beside: ({ detail, commit, dispatch }) => {
    commit({ schedule: null, second: null, ...detail });
    dispatch('compute');
  },
};
