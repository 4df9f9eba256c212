import { byId, svg } from '../dom.js';
import { length, several } from '../units.js';
import { openPart } from './parts.js';
import { kilnOf } from './setup.js';

/** The kiln cut through, from the side; every part can be touched and says what it is. */

const W = 380;
const H = 218;
const FLOOR = 176;
const LEFT = 88;
const RIGHT = 292;

function part(store, name, words, ...shapes) {
  const open = () => openPart(store, name);
  return svg('g', {
    class: `part part-${name}`, role: 'button', tabindex: '0', 'aria-label': `${words}. Change`, 'data-part': name,
    on: {
      click: open,
      keydown: (event) => {
        if (event.key === 'Enter' || event.key === ' ') {
          event.preventDefault();
          open();
        }
      },
    },
  }, svg('title', {}, words), ...shapes);
}

const rect = (kind, x, y, width, height, more) => svg('rect', { class: kind, x, y, width: Math.max(0, width), height: Math.max(0, height), ...more });

function walls(store, setup, kilnName) {
  const elements = setup.faces === 'both'
    ? [[30, 70], [30, 100], [30, 130], [350, 70], [350, 100], [350, 130]]
    : [110, 150, 190, 230, 270].map((x) => [x, 40]);
  return part(store, 'kiln', `Kiln: ${kilnName}, ${setup.faces === 'both' ? 'heat from the sides' : 'heat from the lid'}`,
    svg('path', { class: 'wall', d: `M8 22H372V210H8ZM40 52V196H340V52Z`, 'fill-rule': 'evenodd' }),
    elements.map(([x, y]) => svg('circle', { class: 'element', cx: x, cy: y, r: 5 })),
    svg('text', { x: 14, y: 16 }, kilnName));
}

function shelf(store, setup, unit) {
  const bare = setup.shelf_mm > 0 && setup.faces === 'one';
  const words = setup.faces === 'both' ? 'on posts, air below' : bare ? `bare on a shelf of ${length(setup.shelf_mm, unit)}` : 'on fibre';
  return part(store, 'shelf', `Shelf: ${words}`,
    rect('ground', 52, FLOOR, 276, 9),
    setup.faces === 'both' ? [70, 300].map((x) => rect('post', x, FLOOR + 9, 10, 11)) : rect('ground', 52, FLOOR + 9, 276, 11),
    bare ? null : rect('fibre', LEFT - 12, FLOOR - 3, RIGHT - LEFT + 24, 3),
    svg('text', { x: 190, y: FLOOR + 33, 'text-anchor': 'middle' }, words));
}

const heightOf = (mm) => Math.min(86, Math.max(5, mm * 2.1));

function dams(store, setup, top) {
  if (!setup.dams || setup.task === 'enamel') {
    return part(store, 'dams', 'No dams', rect('ghost', LEFT - 26, top - 8, 18, FLOOR - top + 8), rect('ghost', RIGHT + 8, top - 8, 18, FLOOR - top + 8));
  }
  const lined = setup.liner_mm > 0;
  return part(store, 'dams', 'Dams and their liner',
    rect('dam', LEFT - 26, top - 10, 20, FLOOR - top + 10), rect('dam', RIGHT + 6, top - 10, 20, FLOOR - top + 10),
    lined ? [rect('fibre', LEFT - 6, top + 5, 5, FLOOR - top - 5), rect('fibre', RIGHT + 1, top + 5, 5, FLOOR - top - 5)] : null);
}

/** Sheet by sheet, so that eight look like eight; a block that is one piece looks like one. */
function glass(store, setup, mm, unit) {
  const high = heightOf(mm);
  const top = FLOOR - 3 - high;
  const counted = setup.task === 'fuse' && (setup.by === 'sheets' || setup.by === 'volume');
  const layers = counted ? setup.sheets : 1;
  const each = high / layers;
  const words = counted ? `${several(setup.sheets, 'sheet')} of ${length(setup.sheet_mm, unit)}, ${length(mm, unit)} when fused`
    : setup.task === 'enamel' ? `one sheet of ${length(mm, unit)}` : `a block of ${length(mm, unit)}`;
  return [top, part(store, 'glass', `Glass: ${words}`,
    Array.from({ length: Math.min(layers, 60) }, (unused, i) => rect(i % 2 ? 'glass odd' : 'glass', LEFT, top + i * each, RIGHT - LEFT, each - (each > 2 ? 0.8 : 0))),
    svg('text', { class: 'glass-words', x: 190, y: top - 15, 'text-anchor': 'middle' }, words)), high];
}

/** Where heat leaves the block: the way it has to go decides everything else. */
function ways(setup, top, high) {
  const down = [130, 250].map((x) => svg('path', { class: 'way', d: `M${x} ${top + high - 2}V${Math.min(top + 14, top + high / 2)}m-4 5l4-5l4 5` }));
  return svg('g', { 'aria-hidden': 'true' }, high > 16 ? down : null,
    setup.faces === 'both' && high > 30 ? [130, 250].map((x) => svg('path', { class: 'way', d: `M${x} ${top + high / 2 + 3}V${top + high - 2}m-4-5l4 5l4-5` })) : null);
}

export function connectSection(store) {
  const draw = () => {
    const { setup, answer, settings } = store.getState();
    const mm = answer ? answer.thickness_mm : setup.sheets * setup.sheet_mm;
    const kiln = kilnOf(store.getState());
    const held = document.activeElement && document.activeElement.getAttribute('data-part');
    const [top, block, high] = glass(store, setup, mm, settings.lengthUnit);
    byId('section').replaceChildren(svg('svg', {
      class: 'section', viewBox: `0 0 ${W} ${H}`, role: 'group', 'aria-label': 'The kiln cut through: touch a part to change it',
    }, walls(store, setup, kiln ? kiln.name : 'an ordinary kiln'), shelf(store, setup, settings.lengthUnit), dams(store, setup, top), block, ways(setup, top, high)));
    if (held) {
      byId('section').querySelector(`[data-part="${held}"]`).focus();
    }
  };
  store.watch((state) => state.answer, draw);
  store.watch((state) => state.setup, draw);
  store.watch((state) => state.settings, draw);
  store.watch((state) => state.kilns, draw);
}
