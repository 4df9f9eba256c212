/**
 * One place for a page's state. State is replaced, never edited; what a request does stands in a
 * table keyed by the request's name, so that a control never touches another control.
 *
 * @param {object} initial first state
 * @param {Object<string, function>} effects name of a request -> function({detail, state, commit, dispatch})
 */
export function createStore(initial, effects) {
  let state = Object.freeze(Object.assign({}, initial));
  const listeners = new Set();

  function commit(patch) {
    state = Object.freeze(Object.assign({}, state, patch));
    listeners.forEach((listener) => listener(state));
  }

  function dispatch(type, detail) {
    const effect = effects[type];
    if (!effect) {
      throw new Error(`no effect for the request "${type}"`);
    }
    return effect({ detail, state, commit, dispatch });
  }

  function subscribe(listener) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }

  /** Calls `react(value, state)` now and whenever `pick(state)` gives another value. */
  function watch(pick, react) {
    let last = pick(state);
    react(last, state);
    return subscribe((next) => {
      const value = pick(next);
      if (!Object.is(value, last)) {
        last = value;
        react(value, next);
      }
    });
  }

  return { getState: () => state, commit, dispatch, subscribe, watch };
}
