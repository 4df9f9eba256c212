/** Numbers as people read them. Inside everything is °C, mm and seconds; the switch acts only here. */

const number = (value, digits) => value.toLocaleString('en', { maximumFractionDigits: digits });

export const toUnit = (celsius, unit) => (unit === 'F' ? celsius * 1.8 + 32 : celsius);

/** "538 °C" or "1,000 °F". */
export const temperature = (celsius, unit) => `${number(toUnit(celsius, unit), 0)} °${unit}`;

/** A rate is a difference: it scales by 1.8 and never shifts by 32. */
export function rate(celsiusPerHour, unit) {
  const value = unit === 'F' ? celsiusPerHour * 1.8 : celsiusPerHour;
  return `${number(value, Math.abs(value) < 10 ? 1 : 0)} °${unit}/h`;
}

/** Millimetres as "180 mm" or "7.09 in". */
export const length = (mm, unit) => (unit === 'in' ? `${number(mm / 25.4, 2)} in` : `${number(mm, 1)} mm`);

/** "20 min", "5 h", "1 h 15 min". */
export function minutes(total) {
  const whole = Math.round(total);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (!hours) {
    return `${rest} min`;
  }
  return rest ? `${hours} h ${rest} min` : `${hours} h`;
}

/** "2:05", "1:02:05". */
export function clock(seconds) {
  const whole = Math.max(0, Math.floor(seconds || 0));
  const hours = Math.floor(whole / 3600);
  const mins = Math.floor(whole / 60) % 60;
  const secs = String(whole % 60).padStart(2, '0');
  return hours ? `${hours}:${String(mins).padStart(2, '0')}:${secs}` : `${mins}:${secs}`;
}

/** The same for ears: "2 minutes 5 seconds". */
export function spoken(seconds) {
  const whole = Math.max(0, Math.floor(seconds || 0));
  const parts = [[Math.floor(whole / 3600), 'hour'], [Math.floor(whole / 60) % 60, 'minute'], [whole % 60, 'second']];
  const said = parts.filter(([n]) => n > 0).map(([n, word]) => `${n} ${word}${n === 1 ? '' : 's'}`);
  return said.length ? said.join(' ') : 'the beginning';
}

export function bytes(count) {
  const steps = ['bytes', 'kB', 'MB', 'GB'];
  let value = count;
  let step = 0;
  while (value >= 1000 && step < steps.length - 1) {
    value /= 1000;
    step += 1;
  }
  return `${number(value, step > 1 ? 1 : 0)} ${steps[step]}`;
}

export const several = (count, word) => `${count} ${word}${count === 1 ? '' : 's'}`;
