import { svg } from '../dom.js';

const WIDE = 900;
const TEXT = 170;
const ROW = 34;
const TOP = 34;

/**
 * The stack from the side: a column a sheet, a row a subject, whose mark slides where nothing is in its way.
 * `onMove(name, sheet)` is told at the end; keys: left, right, home, end. `onTry(name, sheet)`, if given, is told
 * while a mark is dragged; the node's `follow(answer)` then moves every other mark to where it would lie.
 */
export function side(answer, pins, onMove, onTry) {
  const { sheets } = answer;
  const step = (WIDE - TEXT) / sheets;
  const middle = (sheet) => TEXT + (sheet - 0.5) * step;
  const high = TOP + ROW * answer.subjects.length + 8;
  const columns = [];
  for (let sheet = 1; sheet <= sheets; sheet += 1) {
    columns.push(
      svg('rect', { class: 'glass', x: middle(sheet) - step * 0.32, y: TOP - 6, width: step * 0.64, height: high - TOP }),
      svg('text', { class: 'soft', x: middle(sheet), y: 18, 'text-anchor': 'middle' }, sheet === 1 ? 'front 1' : sheet === sheets ? `back ${sheet}` : String(sheet)),
    );
  }
  const root = svg('svg', { class: 'side', viewBox: `0 0 ${WIDE} ${high}`, role: 'group', 'aria-label': 'The stack from the side' }, columns);
  answer.subjects.forEach((subject, row) => root.append(...line(subject, row)));

  function line(subject, row) {
    const y = TOP + ROW * (row + 0.5);
    const [first, last] = subject.may_be_on;
    const within = (sheet) => Math.min(last, Math.max(first, sheet));
    const mark = svg('circle', {
      class: subject.name in pins ? 'mark pinned' : 'mark', cx: middle(subject.sheet), cy: y, r: 11, tabindex: 0, role: 'slider',
      'aria-label': subject.name, 'aria-valuemin': first, 'aria-valuemax': last, 'aria-valuenow': subject.sheet,
      'aria-valuetext': `sheet ${subject.sheet} of ${sheets}`, 'data-name': subject.name,
    });
    const go = (sheet) => {
      if (within(sheet) !== subject.sheet) {
        onMove(subject.name, within(sheet));
      }
    };
    mark.addEventListener('keydown', (event) => {
      const to = { ArrowLeft: subject.sheet - 1, ArrowRight: subject.sheet + 1, Home: first, End: last }[event.key];
      if (to !== undefined) {
        event.preventDefault();
        go(to);
      }
    });
    const sheetAt = (event) => {
      const box = root.getBoundingClientRect();
      return Math.round(((event.clientX - box.left) * WIDE / box.width - TEXT) / step + 0.5);
    };
    let tried = subject.sheet;
    mark.addEventListener('pointerdown', (event) => mark.setPointerCapture(event.pointerId));
    mark.addEventListener('pointermove', (event) => {
      if (mark.hasPointerCapture(event.pointerId)) {
        const to = within(sheetAt(event));
        mark.setAttribute('cx', middle(to));
        if (onTry && to !== tried) {
          tried = to;
          onTry(subject.name, to);
        }
      }
    });
    mark.addEventListener('pointerup', (event) => go(sheetAt(event)));
    return [
      svg('text', { x: TEXT - 14, y: y + 4, 'text-anchor': 'end' }, subject.name.length > 22 ? `${subject.name.slice(0, 21)}…` : subject.name),
      svg('line', { class: 'room', x1: middle(first), x2: middle(last), y1: y, y2: y }),
      mark,
    ];
  }
  root.follow = (next) => next.subjects.forEach((one) => {
    const mark = Array.from(root.querySelectorAll('.mark')).find((node) => node.dataset.name === one.name);
    if (mark && !mark.matches(':active')) {
      mark.setAttribute('cx', middle(one.sheet));
    }
  });
  return root;
}
