import { length, minutes, rate, temperature } from '../units.js';

/** Sentences, stresses, hours and moments as people read them. */

const fixed = (value, digits) => (value < 0 ? '−' : '') + Math.abs(value).toFixed(digits);

/** A figure of the bench in the person's units; its `is` says what it is, and no text is searched for numbers. */
function figure({ value, is, digits }, { temperatureUnit, lengthUnit }) {
  switch (is) {
    case 'c': return temperature(value, temperatureUnit);
    case 'k': return temperatureUnit === 'F' ? `${Math.round(value * 1.8)} °F` : `${Math.round(value)} K`;
    case 'c_per_h': return rate(value, temperatureUnit);
    case 'mm': return length(lengthUnit === 'mm' ? Number(value.toFixed(digits)) : value, lengthUnit);
    default: return fixed(value, digits);
  }
}

/** A sentence of the bench: words with a `{}` for each figure. */
export function inWords({ words, figures }, settings) {
  const rest = [...figures];
  return words.replace(/\{\}/g, () => figure(rest.shift(), settings));
}

/** What is wrong with a field, as a sentence: "must lie between …" gets its subject. */
export const fieldWords = (said, settings, subject = 'It') => inWords(said, settings).replace(/^(must|cannot|is|are) /, `${subject} $1 `);

/** Two digits are worth something, more are not. */
export const stress = (mpa) => `${Math.max(0, mpa) < 0.095 ? Math.max(0, mpa).toFixed(2) : Number(Math.max(0, mpa).toPrecision(2))} MPa`;

/** "54 h", "2 d 6 h". */
export function longTime(hours) {
  if (hours < 10) {
    return minutes(Math.round(hours * 60));
  }
  const whole = Math.round(hours);
  return whole < 48 ? `${whole} h` : `${Math.floor(whole / 24)} days ${whole % 24} h`;
}

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** The clock of the kiln's place, read as it is written: "Fri 27 Nov 08:40". */
export function moment(iso) {
  const [, year, month, day, time] = /^(\d+)-(\d+)-(\d+)T(\d+:\d+)/.exec(iso);
  const weekday = DAYS[new Date(Date.UTC(Number(year), Number(month) - 1, Number(day))).getUTCDay()];
  return `${weekday} ${Number(day)} ${MONTHS[Number(month) - 1]} ${time}`;
}

export const hourOf = (iso) => /T(\d+:\d+)/.exec(iso)[1];
