import { length, minutes, rate, temperature } from '../units.js';

/** The bench speaks °C and mm in its sentences; here they are put into the person's units. */

const number = (text) => Number(text.replace(/,/g, ''));

const FIGURES = {
  strain_c: 'strain point', annealing_c: 'annealing point', softening_c: 'softening point', working_c: 'working point', soak_c: 'soak', expansion_per_k: 'expansion',
};

/** Turns every "540 °C", "12 mm" and "7 °C/h" of a sentence into the unit that was chosen. */
export function inUnits(text, settings) {
  const { temperatureUnit, lengthUnit } = settings;
  return text
    .replace(/\b(strain_c|annealing_c|softening_c|working_c|soak_c|expansion_per_k)\b/g, (key) => FIGURES[key])
    .replace(/(-?\d[\d,]*(?:\.\d+)?) °C\/h/g, (all, value) => rate(number(value), temperatureUnit))
    .replace(/(\d[\d,]*(?:\.\d+)?) and (\d[\d,]*(?:\.\d+)?) °C/g, (all, one, two) => `${temperature(number(one), temperatureUnit)} and ${temperature(number(two), temperatureUnit)}`)
    .replace(/(-?\d[\d,]*(?:\.\d+)?) °C/g, (all, value) => temperature(number(value), temperatureUnit))
    .replace(/(\d[\d,]*(?:\.\d+)?) K\b/g, (all, value) => (temperatureUnit === 'F' ? `${Math.round(number(value) * 1.8)} °F` : `${value} K`))
    .replace(/(\d[\d,]*(?:\.\d+)?) mm\b/g, (all, value) => length(number(value), lengthUnit));
}

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
