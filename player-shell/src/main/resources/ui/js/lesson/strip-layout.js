/** Where the tags of the work strip hang. Pure arithmetic in pixels; no document here. */

const GAP = 8;

const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);

/** How wide a strip must be for its tags' least widths; wider than the screen means it scrolls. */
export const stripWidth = (least, available) => Math.max(available, sum(least) + least.length * GAP);

/** Widths: each tag takes the room up to the next one, within bounds, and all together fit. */
function widths(centres, total, least, widest) {
  const wanted = centres.map((x, i) => {
    const next = i + 1 < centres.length ? centres[i + 1] : total;
    return Math.max(least[i], Math.min(widest, next - x - GAP));
  });
  const room = total - GAP * Math.max(0, centres.length - 1);
  const spare = sum(wanted) - sum(least);
  if (sum(wanted) <= room || spare <= 0) {
    return wanted;
  }
  const share = Math.max(0, (room - sum(least)) / spare);
  return wanted.map((w, i) => least[i] + (w - least[i]) * share);
}

/**
 * Places tags near their times without overlap: pushed right where they would touch, then pushed
 * back from the right end.
 *
 * @param {number[]} times positions on the rail in pixels, ascending
 * @param {number} total width of the strip
 * @param {number[]} least narrowest width of each tag
 * @param {number} widest widest width of a tag
 * @returns {{left: number, width: number}[]}
 */
export function placeTags(times, total, least, widest) {
  const wide = widths(times, total, least, widest);
  const left = [];
  times.forEach((x, i) => {
    const floor = i ? left[i - 1] + wide[i - 1] + GAP : 0;
    left.push(Math.max(floor, x - 16));
  });
  let ceiling = total;
  for (let i = times.length - 1; i >= 0; i -= 1) {
    left[i] = Math.max(0, Math.min(left[i], ceiling - wide[i]));
    ceiling = left[i] - GAP;
  }
  return left.map((x, i) => ({ left: x, width: wide[i] }));
}
