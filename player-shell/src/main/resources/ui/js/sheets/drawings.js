import { svg } from '../dom.js';
import { shape } from './plan.js';

const points = (corners) => corners.map((p) => p.map((n) => n.toFixed(3)).join(',')).join(' ');
const middleX = (corners) => corners.reduce((sum, p) => sum + p[0], 0) / corners.length;
const middleY = (corners) => corners.reduce((sum, p) => sum + p[1], 0) / corners.length;

/** One tick at the upper left, two at the upper right: no turn and no mirror maps one on the other. */
const marks = (width) => svg('path', { class: 'edge', d: `M0 5h4 M${width} 5h-4 M${width} 7h-4` });

/** Moves along the lower edge from sheet to sheet: a pile in the right order shows a staircase. */
const notch = (sheet, height) => svg('path', { class: 'edge', d: `M${10 + 7 * sheet} ${height}v-4h3v4` });

/** What the sheet in front hides: its outline, and grey where the paint goes on behind it. */
function shadows(corners, at, tuck) {
  const id = `front-${at}`;
  return [
    svg('clipPath', { id }, svg('polygon', { points: points(corners) })),
    svg('polygon', { class: 'tuck', points: points(corners), 'stroke-width': 2 * tuck, 'clip-path': `url(#${id})` }),
    svg('polygon', { class: 'shadow', points: points(corners) }),
  ];
}

/**
 * The template of a sheet at its true size.
 * @returns {{node: SVGElement, widthMm: number, heightMm: number, title: string, stated: boolean}}
 */
export function template(entry, answer, subjects, own) {
  const { width, height, mirrored } = own;
  const on = (sheet) => subjects.filter((one, at) => answer.subjects[at].sheet === sheet && shape(one).length);
  const here = on(entry.sheet);
  const front = entry.sheet > 1 ? on(entry.sheet - 1) : [];
  const picture = svg('g', mirrored ? { transform: `translate(${width} 0) scale(-1 1)` } : {},
    front.flatMap((one, at) => shadows(shape(one), `${entry.sheet}-${at}`, entry.tuck_under_mm || 0)),
    here.map((one) => svg('polygon', { class: 'subject', points: points(shape(one)) })),
    marks(width), notch(entry.sheet, height),
    svg('text', { x: 6, y: height - 2 }, 'R'));
  const x = (corners) => (mirrored ? width - middleX(corners) : middleX(corners));
  const title = `sheet ${entry.sheet} of ${answer.sheets}`;
  const face = mirrored ? 'painted on its back, seen from the painted side' : 'painted on its front, as seen';
  const node = svg('svg', { class: 'template-sheet', viewBox: `0 0 ${width} ${height}`, width: `${width}mm`, height: `${height}mm`, role: 'img', 'aria-label': `Template, ${title}` },
    picture, svg('rect', { class: 'edge', x: 0.15, y: 0.15, width: width - 0.3, height: height - 0.3 }),
    here.map((one) => svg('text', { x: x(shape(one)), y: middleY(shape(one)), 'text-anchor': 'middle' }, one.name)),
    svg('text', { x: width / 2, y: 5, 'text-anchor': 'middle' }, `top · ${title} · ${face}${own.licence ? ` · ${own.licence}` : ''}`));
  return { node, widthMm: width, heightMm: height, title, stated: true };
}

/** A stock sheet with its pieces and its scores, numbered in the order in which to make them. */
export function cutSheet(sheet, answer) {
  const number = sheet.stock_sheet;
  const size = Math.max(sheet.w_mm, sheet.h_mm) / 26;
  const mine = (list) => list.filter((one) => one.stock_sheet === number);
  return svg('svg', { class: 'cut-sheet', viewBox: `-2 -2 ${sheet.w_mm + 4} ${sheet.h_mm + 4}`, role: 'img', 'aria-label': `Stock sheet ${number}: ${sheet.pieces} pieces, ${sheet.scores} scores` },
    svg('rect', { class: 'stock', x: 0, y: 0, width: sheet.w_mm, height: sheet.h_mm }),
    mine(answer.placed).map((one) => [
      svg('rect', { class: 'piece', x: one.x_mm, y: one.y_mm, width: one.w_mm, height: one.h_mm }),
      svg('text', { x: one.x_mm + one.w_mm / 2, y: one.y_mm + one.h_mm / 2, 'text-anchor': 'middle', 'font-size': size }, `${one.w_mm} × ${one.h_mm}`),
    ]).flat(),
    mine(answer.scores).map((one) => [
      svg('line', { class: 'score', x1: one.from_mm[0], y1: one.from_mm[1], x2: one.to_mm[0], y2: one.to_mm[1] }),
      svg('text', { x: one.from_mm[0] + size * (one.direction === 'upright' ? 0.2 : 0.6), y: one.from_mm[1] + size * (one.direction === 'upright' ? 1.1 : -0.2), 'font-size': size, 'font-weight': 'bold' }, String(one.number)),
    ]).flat());
}
