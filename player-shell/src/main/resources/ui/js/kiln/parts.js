import { button, el } from '../dom.js';
import { openPanel } from '../panel.js';
import { choice } from '../settings-form.js';
import { numberField, selectField } from '../fields.js';
import { openKilns } from './kilns.js';
import { openGlasses } from './glasses.js';
import { inWords } from './words.js';

/** What opens when a part of the cross-section is touched. */

export const BY = [['sheets', 'counting sheets'], ['volume', 'sheets and the size of the bed'], ['weight', 'weighing'], ['measured', 'measuring it']];

const care = (store, ...names) => el('div', { class: 'notice care' }, names.map((name) => el('p', {}, inWords(store.getState().known.cautions[name], store.getState().settings))));

/** A number of the setup; `patch` may change more with it. */
export function setupNumber(store, key, spec) {
  const { setup, settings } = store.getState();
  return numberField({
    id: spec.id || `field-${key}`, field: key, value: setup[key], ...spec, onChange: (value) => store.dispatch('change', { [key]: value }),
  }, settings);
}

const side = (store, key, label) => setupNumber(store, key, { label, kind: 'mm', min: 10, max: 3000, optional: true });

function stackFields(store) {
  const { setup } = store.getState();
  const count = setupNumber(store, 'sheets', { label: 'Sheets', min: 1, max: 200, whole: true, id: 'panel-sheets', says: 'A stack has' });
  const thick = setupNumber(store, 'sheet_mm', { label: 'Thickness of a sheet', kind: 'mm', min: 0.5, max: 25, id: 'panel-sheet', says: 'A sheet is' });
  const bed = [side(store, 'bed_length_mm', 'Bed between the dams, length'), side(store, 'bed_width_mm', 'Bed between the dams, width')];
  const fields = {
    sheets: [count, thick],
    volume: [count, thick, side(store, 'sheet_length_mm', 'Sheet, length'), side(store, 'sheet_width_mm', 'Sheet, width'), ...bed],
    weight: [setupNumber(store, 'grams', { label: 'All glass weighs', kind: 'g', min: 1, max: 500000 }), ...bed],
    measured: [setupNumber(store, 'measured_mm', { label: 'Thickness of the block', kind: 'mm', min: 1, max: 300, says: 'A block is', id: 'panel-measured' }), ...bed],
  };
  return fields[setup.by];
}

function glassPart(store) {
  const { setup } = store.getState();
  if (setup.task === 'enamel') {
    return [setupNumber(store, 'sheet_mm', { label: 'Thickness of the sheet', kind: 'mm', min: 0.5, max: 25, says: 'A sheet is' })];
  }
  const place = el('div', {}, stackFields(store));
  const by = choice({ key: 'by', title: 'Its thickness follows from', options: BY }, setup.by, (patch) => {
    store.dispatch('change', patch);
    place.replaceChildren(...stackFields(store));
  });
  return [by, place, el('p', { class: 'hint' }, 'Give the thickness of the finished piece. If it is uneven, add to the thickest place how much thicker it is than the thinnest.'),
    el('div', { class: 'row' }, button({ text: 'My glasses and makers’ figures', onClick: () => openGlasses(store) })), care(store, 'WEIGHT')];
}

function damsPart(store) {
  const { setup } = store.getState();
  return [
    choice({ key: 'dams', title: 'Around the glass', options: [['true', 'dams'], ['false', 'nothing']] }, String(setup.dams),
      (patch) => store.dispatch('change', { dams: patch.dams === 'true' })),
    side(store, 'bed_length_mm', 'Bed between the dams, length'), side(store, 'bed_width_mm', 'Bed between the dams, width'),
    setupNumber(store, 'liner_mm', { label: 'Liner, as thick as it stays in the fire', kind: 'mm', min: 0, max: 25 }),
    el('p', { class: 'hint' }, 'Dams stand higher than the stack and are braced; the liner ends a little below the finished glass, so that its edge rounds.'),
    care(store, 'FIBRE', 'DAMP'),
  ];
}

function shelfPart(store) {
  const { setup } = store.getState();
  const bare = setup.shelf_mm > 0;
  const thick = el('div', { hidden: !bare },
    setupNumber(store, 'shelf_mm', { label: 'Thickness of the bare shelf', kind: 'mm', min: 0, max: 100 }));
  return [
    choice({ key: 'under', title: 'The block lies on', options: [['fibre', 'fibre paper or board'], ['bare', 'the bare, washed shelf'], ['posts', 'a thin shelf on posts, air below']] },
      setup.faces === 'both' ? 'posts' : bare ? 'bare' : 'fibre', ({ under }) => {
        thick.hidden = under !== 'bare';
        store.dispatch('change', under === 'posts' ? { faces: 'both', shelf_mm: 0 } : { faces: 'one', shelf_mm: under === 'bare' ? setup.shelf_mm || 15 : 0 });
      }),
    thick,
    el('p', { class: 'hint' }, 'Posts alone do not make the block cool from below: that also needs elements in the sides or the floor. When in doubt, it cools from the top only.'),
    care(store, 'DAMP', 'DUST'),
  ];
}

function kilnPart(store) {
  const { setup, kilns } = store.getState();
  return [
    selectField({
      id: 'panel-kiln', label: 'Kiln', value: setup.kiln, options: [['', 'an ordinary kiln, not described'], ...kilns.map((kiln) => [kiln.id, kiln.name])],
      onChange: (kiln) => store.dispatch('change', { kiln }),
    }),
    choice({ key: 'faces', title: 'Heat leaves the block', options: [['one', 'from the top only'], ['both', 'from top and bottom alike']] }, setup.faces,
      (patch) => store.dispatch('change', patch.faces === 'both' ? { faces: 'both', shelf_mm: 0 } : patch)),
    el('p', { class: 'hint' }, 'Elements in the lid only, a solid shelf or fibre below: from the top only. It takes about four times as long, and it is the safe answer.'),
    el('div', { class: 'row' }, button({ text: 'My kilns', sign: 'settings', onClick: () => openKilns(store) })),
    care(store, 'ELECTRICITY'),
  ];
}

const PARTS = {
  glass: ['The glass', glassPart], dams: ['Dams and liner', damsPart], shelf: ['Below the glass', shelfPart], kiln: ['The kiln', kilnPart],
};

export function openPart(store, name) {
  const [title, content] = PARTS[name];
  const panel = openPanel(title, ...content(store));
  const first = panel.querySelector('input, select');
  if (first) {
    first.focus();
  }
}
