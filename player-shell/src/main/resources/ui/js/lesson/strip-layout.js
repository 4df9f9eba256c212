/** Where the tags of the work strip hang. Pure arithmetic in pixels; no document here. */

const GAP = 8;
const WIDEST = 240;

/** The narrowest a strip may be for its number of tags; wider than the screen means it scrolls. */
export const stripWidth = (count, available, least) => Math.max(available, count * (least + GAP));

/** Widths: each tag takes the room up to the next one, within bounds, and all together fit. */
function widths(centres, total, least) {
  const wanted = centres.map((x, i) => {
    const next = i + 1 < centres.length ? centres[i + 1] : total;
    return Math.min(WIDEST, Math.max(least, next - x - GAP));
  });
  const room = total - GAP * Math.max(0, centres.length - 1);
  const sum = wanted.reduce((a, b) => a + b, 0);
  const spare = sum - centres.length * least;
  if (sum <= room || spare <= 0) {
    return wanted;
  }
  const share = Math.max(0, (room - centres.length * least) / spare);
  return wanted.map((w) => least + (w - least) * share);
}

/**
 * Places tags near their times without overlap: pushed right where they would touch, then pushed
 * back from the right end.
 *
 * @param {number[]} times positions on the rail in pixels, ascending
 * @param {number} total width of the strip
 * @param {number} least narrowest tag
 * @returns {{left: number, width: number}[]}
 */
export function placeTags(times, total, least) {
  const wide = widths(times, total, least);
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
