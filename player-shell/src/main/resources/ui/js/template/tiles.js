/** How a template is spread over sheets of paper. Millimetres throughout. */

export const PAPERS = {
  a4: { title: 'A4', wide: 210, high: 297 },
  letter: { title: 'Letter', wide: 215.9, high: 279.4 },
  a3: { title: 'A3', wide: 297, high: 420 },
};

const MARGIN = 10;
const RULER = 24;
const OVERLAP = 10;

const NEAR = 2;

const counts = (size, room) => (size <= room ? 1 : 1 + Math.ceil((size - room) / (room - OVERLAP)));

/** A template drawn as a whole sheet of this paper goes on it edge to edge; its ruler gets a sheet of its own. */
function wholeSheet(widthMm, heightMm, paper) {
  const fits = (wide, high) => Math.abs(widthMm - wide) < NEAR && Math.abs(heightMm - high) < NEAR;
  const lying = fits(paper.high, paper.wide);
  if (!lying && !fits(paper.wide, paper.high)) {
    return null;
  }
  const [wide, high] = lying ? [paper.high, paper.wide] : [paper.wide, paper.high];
  const tile = { x: 0, y: 0, wide: Math.min(wide, widthMm), high: Math.min(high - 0.2, heightMm), name: 'one sheet' };
  return { lying, paper, margin: 0, tiles: [tile] };
}

/**
 * Upright or lying, whichever needs fewer sheets; each tile overlaps its neighbour by 10 mm.
 * @returns {{lying: boolean, paper: object, margin: number, tiles: {x: number, y: number, wide: number, high: number, name: string}[]}}
 */
export function spread(widthMm, heightMm, paper) {
  const whole = wholeSheet(widthMm, heightMm, paper);
  if (whole) {
    return whole;
  }
  const ways = [false, true].map((lying) => {
    const roomX = (lying ? paper.high : paper.wide) - 2 * MARGIN;
    const roomY = (lying ? paper.wide : paper.high) - 2 * MARGIN - RULER;
    return { lying, roomX, roomY, columns: counts(widthMm, roomX), rows: counts(heightMm, roomY) };
  });
  const best = ways[1].columns * ways[1].rows < ways[0].columns * ways[0].rows ? ways[1] : ways[0];
  const tiles = [];
  for (let row = 0; row < best.rows; row += 1) {
    for (let column = 0; column < best.columns; column += 1) {
      const x = column * (best.roomX - OVERLAP);
      const y = row * (best.roomY - OVERLAP);
      tiles.push({
        x, y, wide: Math.min(best.roomX, widthMm - x), high: Math.min(best.roomY, heightMm - y),
        name: best.columns * best.rows > 1 ? `sheet ${tiles.length + 1} of ${best.columns * best.rows}` : 'one sheet',
      });
    }
  }
  return { lying: best.lying, paper, margin: MARGIN, tiles };
}
