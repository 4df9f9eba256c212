/** Outlines while they are drawn: crossings, area, fewer points. Millimetres, pairs [x, y]. */

const turn = (a, b, c) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Whether two lines cross in a point that is an end of neither. */
export function cross(a, b, c, d) {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

/** Whether the line from the last corner to a new one crosses an earlier one. */
export function wouldCross(corners, next) {
  const last = corners[corners.length - 1];
  return corners.length > 2 && corners.slice(0, -2).some((from, at) => cross(from, corners[at + 1], last, next));
}

/** Whether closing crosses: the last line goes back to the first corner. */
export function closingCrosses(corners) {
  const last = corners[corners.length - 1];
  return corners.slice(1, -2).some((from, at) => cross(from, corners[at + 2], last, corners[0]));
}

export const area = (corners) => Math.abs(corners.reduce((sum, [x, y], at) => {
  const [nextX, nextY] = corners[(at + 1) % corners.length];
  return sum + x * nextY - nextX * y;
}, 0)) / 2;

/** What is wrong with a closed outline, or null. */
export function fault(corners) {
  if (corners.length < 3) {
    return 'An outline needs three corners; nothing lies inside fewer.';
  }
  if (area(corners) < 1) {
    return 'Nothing lies inside this outline: its corners stand in one line, or on one spot.';
  }
  return closingCrosses(corners) ? 'The last line would cross an earlier one. Take corners back, or go round the other side.' : null;
}

export function middle(corners) {
  return [0, 1].map((axis) => corners.reduce((sum, point) => sum + point[axis], 0) / corners.length);
}

const away = (p, a, b) => {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return long ? Math.abs(turn(a, b, p)) / long : Math.hypot(p[0] - a[0], p[1] - a[1]);
};

/** Fewer points, none of which is left out by more than `within` (Douglas and Peucker 1973, from memory). */
export function simpler(points, within) {
  if (points.length < 3) {
    return points;
  }
  const [first, last] = [points[0], points[points.length - 1]];
  let most = 0;
  let at = 0;
  points.forEach((point, i) => {
    const far = i > 0 && i < points.length - 1 ? away(point, first, last) : 0;
    if (far > most) {
      most = far;
      at = i;
    }
  });
  return most <= within ? [first, last] : [...simpler(points.slice(0, at + 1), within).slice(0, -1), ...simpler(points.slice(at), within)];
}

const HUNDREDTHS = 100;
export const tidy = ([x, y]) => [Math.round(x * HUNDREDTHS) / HUNDREDTHS, Math.round(y * HUNDREDTHS) / HUNDREDTHS];
