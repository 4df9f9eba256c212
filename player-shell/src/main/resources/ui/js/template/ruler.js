import { svg } from '../dom.js';

const LONG_MM = 100;

/** A ruler of exactly 100 mm with inches below: what the print is measured by. */
export function ruler() {
  const marks = [];
  for (let mm = 0; mm <= LONG_MM; mm += 1) {
    const long = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.5 : 2;
    marks.push(svg('line', { x1: mm, x2: mm, y1: 0, y2: long }));
    if (mm % 10 === 0) {
      marks.push(svg('text', { x: mm, y: 8.2, 'text-anchor': 'middle' }, String(mm)));
    }
  }
  for (let sixteenth = 0; sixteenth * 25.4 / 16 <= LONG_MM; sixteenth += 1) {
    const x = (sixteenth * 25.4) / 16;
    const long = sixteenth % 16 === 0 ? 5 : sixteenth % 8 === 0 ? 3.5 : 2;
    marks.push(svg('line', { x1: x, x2: x, y1: 16, y2: 16 - long }));
    if (sixteenth % 16 === 0) {
      marks.push(svg('text', { x: x + 0.8, y: 12.2 }, `${sixteenth / 16}″`));
    }
  }
  return svg('svg', {
    class: 'ruler', viewBox: `-3 -0.5 ${LONG_MM + 6} 17`, width: `${LONG_MM + 6}mm`, height: '17mm', role: 'img', 'aria-label': 'Ruler, 100 millimetres',
  }, svg('line', { class: 'edge', x1: 0, x2: LONG_MM, y1: 0, y2: 0 }), svg('line', { class: 'edge', x1: 0, x2: LONG_MM, y1: 16, y2: 16 }), marks);
}
