import { button, el } from './dom.js';
import { errorNotice } from './notice.js';
import { startTimer } from './timers.js';

const QUICK_MINUTES = [1, 5, 10, 15, 30];

/** What a person has to know before trusting a timer here. */
export const SLEEP_CAUTION = 'A sleeping laptop rings nothing, nor does one whose page or sound is closed. For what must not be forgotten, such as a firing, set a kitchen timer too.';

/** Name, minutes, and some usual times at one press. */
export function timerForm() {
  const said = el('div', {});
  const words = el('input', { type: 'text', id: 'timer-words', maxlength: '100', placeholder: 'what for', 'aria-label': 'What the timer is for' });
  const minutes = el('input', { type: 'number', id: 'own-timer', min: '1', max: '10080', value: '10', 'aria-label': 'Minutes' });
  const start = (length) => startTimer(words.value.trim() || 'Timer', length * 60)
    .then(() => said.replaceChildren(el('p', { role: 'status' }, 'It runs. It shows and rings on My courses, in lessons and on the kiln sheet.')))
    .catch((error) => said.replaceChildren(errorNotice(error)));
  return el('div', {},
    el('form', { class: 'row', on: { submit: (event) => {
      event.preventDefault();
      start(Math.max(1 / 60, Number(minutes.value) || 0));
    } } }, words, minutes, el('span', {}, 'min'), el('button', { type: 'submit' }, 'Start')),
    el('div', { class: 'row quick-timers' }, QUICK_MINUTES.map((length) => button({ text: `${length} min`, onClick: () => start(length) }))),
    el('p', { class: 'quiet' }, SLEEP_CAUTION), said);
}
