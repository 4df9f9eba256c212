/**
 * Moments of a lesson in order. What hangs on the same time with the same words becomes one moment;
 * its further papers stand in `more`.
 */
export function tidyMoments(moments) {
  const tidy = [];
  (moments || [])
    .map((moment) => ({ ...moment, target: String(moment.target || 'none').toLowerCase(), more: [] }))
    .sort((a, b) => a.atMillis - b.atMillis)
    .forEach((moment) => {
      const last = tidy[tidy.length - 1];
      if (last && last.atMillis === moment.atMillis && last.text === moment.text) {
        last.more.push(moment);
      } else {
        tidy.push(moment);
      }
    });
  return tidy;
}

/** Index of the moment that the given second belongs to, or -1 before the first. */
export function momentAt(moments, seconds) {
  let found = -1;
  moments.forEach((moment, i) => {
    if (moment.atMillis / 1000 <= seconds + 0.05) {
      found = i;
    }
  });
  return found;
}

const LENGTH = /\b(\d+(?:[.,]\d+)?)\s*(seconds?|s|minutes?|min|hours?|h)\b/i;

/** Seconds of the timer a moment asks for ("let it dry 10 min"), or 0. */
export function timerSeconds(moment) {
  const found = LENGTH.exec(moment.text);
  if (!found) {
    return 0;
  }
  const each = { s: 1, m: 60, h: 3600 }[found[2][0].toLowerCase()];
  return Math.round(Number(found[1].replace(',', '.')) * each);
}
