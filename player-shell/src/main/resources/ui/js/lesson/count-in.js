import { byId, el } from '../dom.js';
import { tone } from '../tone.js';

export const COUNT_INS = [0, 3, 5, 10];

let running = null;

function show(seconds) {
  const place = byId('picture');
  place.querySelector('.count-in')?.remove();
  if (seconds > 0) {
    place.append(el('div', { class: 'count-in', 'aria-hidden': 'true' }, String(seconds)));
  }
}

/** Ends a count that runs; what was to follow does not. */
export function cancelCountIn() {
  if (running) {
    clearInterval(running);
    running = null;
    show(0);
  }
}

export const countsIn = () => running !== null;

/** Counts seconds down, shown over the picture and heard, then calls `then`. */
export function countIn(seconds, then) {
  cancelCountIn();
  if (!seconds) {
    then();
    return;
  }
  let left = seconds;
  const beat = () => {
    if (left === 0) {
      cancelCountIn();
      then();
      return;
    }
    show(left);
    byId('said').textContent = String(left);
    tone(left === 1 ? 660 : 440, 0.12);
    left -= 1;
  };
  running = setInterval(beat, 1000);
  beat();
}
