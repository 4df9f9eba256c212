import { byId } from '../dom.js';
import { post } from '../api.js';
import { addNote, withNote } from '../notebook/notes.js';
import { runningTimers, startTimer, takeTimers } from '../timers.js';
import { clock } from '../units.js';
import { loops } from './loop.js';
import { momentAt, timerSeconds } from './moments.js';

const USUAL_TIMER_SECONDS = 300;
const SLOW = 0.5;

const say = (words) => { byId('said').textContent = words; };

/** A mark at the second that stands, named by what the hands do there. */
async function mark(store) {
  const { lesson, moments, notes } = store.getState();
  const at = byId('video').currentTime;
  const moment = moments[momentAt(moments, at)];
  const content = { text: moment ? moment.text : clock(at), pin: { where: 'second', at: Math.round(at * 1000) } };
  const made = await addNote('mark', { edition: lesson.edition, lesson: lesson.lesson.id }, content);
  store.commit({ notes: withNote(notes, made) });
  say(`Marked ${clock(at)}`);
}

/** Ends what rings; if nothing rings, starts what this moment asks for, or five minutes. */
async function timer(store) {
  const ringing = runningTimers().filter((one) => one.rest <= 0);
  if (ringing.length) {
    await Promise.all(ringing.map((one) => post(`api/timers/${one.id}/end`).then(takeTimers)));
    return;
  }
  const { moments } = store.getState();
  const moment = moments[momentAt(moments, byId('video').currentTime)];
  const asked = moment ? timerSeconds(moment) : 0;
  await startTimer(asked ? moment.text.slice(0, 100) : 'Timer', asked || USUAL_TIMER_SECONDS);
}

const failed = (error) => say(error.happened || 'That did not work.');

/**
 * What a pedal or a wet finger can ask for, one press each. `key` works without learning while the
 * wet-hands view is open; `setting` is where a learned key is kept.
 */
export const ACTS = [
  { id: 'go', setting: 'pedalGo', keys: [' ', 'PageDown', 'Enter'], key: 'Space', words: 'Go, stop', sign: 'go', run: (s) => s.dispatch('goOrStop') },
  { id: 'back', setting: 'pedalBack', keys: ['ArrowLeft'], key: '←', words: 'Back 10', sign: 'back', run: (s) => s.dispatch('skip', -10) },
  { id: 'on', setting: 'pedalOn', keys: ['ArrowRight'], key: '→', words: 'On 10', sign: 'on', run: (s) => s.dispatch('skip', 10) },
  {
    id: 'again', setting: 'pedalAgain', keys: ['r', 'R', 'PageUp'], key: 'R', words: 'Again, 10 back', sign: 'again',
    run: (s) => s.dispatch(loops(s.getState().loop) ? 'loopOff' : 'lastTen'),
  },
  { id: 'slow', setting: 'pedalSlow', keys: ['-'], key: '-', words: 'Slow', sign: 'minus', run: (s) => s.dispatch('speed', s.getState().speed === SLOW ? 1 : SLOW) },
  { id: 'mark', setting: 'pedalMark', keys: ['k', 'K'], key: 'K', words: 'Mark here', sign: 'moment', run: (s) => mark(s).catch(failed) },
  { id: 'paper', setting: 'pedalPaper', keys: ['h', 'H'], key: 'H', words: 'Paper, picture', sign: 'page', run: () => byId('bench').classList.toggle('wet-paper') },
  { id: 'timer', setting: 'pedalTimer', keys: ['t', 'T'], key: 'T', words: 'Timer', sign: 'clock', run: (s) => timer(s).catch(failed) },
];

/** How a key is written where it is kept and shown. */
export const keyName = (event) => (event.key === ' ' ? 'Space' : event.key);

/** The act that the student has taught this key, if any. */
export const learnedAct = (event, settings) => ACTS.find((act) => settings[act.setting] && String(settings[act.setting]) === keyName(event));
