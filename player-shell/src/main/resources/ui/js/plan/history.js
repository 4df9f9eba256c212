/** Steps that can be taken back and taken again. States are never edited, so keeping them is cheap. */
const MOST = 200;

export function createHistory() {
  let past = [];
  let future = [];
  return {
    /** Notes the state before a change. */
    note(state) {
      past = [...past.slice(-MOST), state];
      future = [];
    },
    /** The state before, or null; `now` can be gone forward to. */
    back(now) {
      const state = past.pop();
      if (state) {
        future.push(now);
      }
      return state || null;
    },
    forward(now) {
      const state = future.pop();
      if (state) {
        past.push(now);
      }
      return state || null;
    },
    can: () => ({ back: past.length > 0, forward: future.length > 0 }),
  };
}
