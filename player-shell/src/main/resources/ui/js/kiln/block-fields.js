import { button, byId, el } from '../dom.js';
import { length } from '../units.js';
import { selectField } from '../fields.js';
import { BY, setupNumber, openPart } from './parts.js';
import { TASKS } from './setup.js';

/** The figures that are changed most, beside the cross-section: task, sheets, thickness, glass, top. */

function stepper(store) {
  const step = (by) => () => {
    const { setup } = store.getState();
    const sheets = Math.min(200, Math.max(1, setup.sheets + by));
    store.dispatch('change', { sheets });
    const input = byId('sheets');
    input.value = String(sheets);
    input.dispatchEvent(new Event('input'));
  };
  const field = setupNumber(store, 'sheets', { id: 'sheets', label: 'Sheets', min: 1, max: 200, whole: true, says: 'A stack has' });
  const line = field.querySelector('.field-line');
  line.prepend(button({ label: 'One sheet less', sign: 'minus', onClick: step(-1) }));
  line.append(button({ label: 'One sheet more', sign: 'plus', onClick: step(1) }));
  return field;
}

function thickness(store) {
  const { setup } = store.getState();
  if (setup.task === 'enamel') {
    return [setupNumber(store, 'sheet_mm', { id: 'sheet', label: 'The sheet is', kind: 'mm', min: 0.5, max: 25, says: 'A sheet is' })];
  }
  if (setup.by === 'measured') {
    return [setupNumber(store, 'measured_mm', { id: 'measured', label: 'Block, fused', kind: 'mm', min: 1, max: 300, says: 'A block is' })];
  }
  if (setup.by === 'weight') {
    return [setupNumber(store, 'grams', { id: 'grams', label: 'Glass weighs', kind: 'g', min: 1, max: 500000 })];
  }
  return [stepper(store), setupNumber(store, 'sheet_mm', { id: 'sheet', label: 'Each', kind: 'mm', min: 0.5, max: 25, says: 'A sheet is' })];
}

function glasses(store) {
  const { known, glasses: own, setup } = store.getState();
  return selectField({
    id: 'glass', label: 'Glass', value: setup.glass,
    options: [...own.map((glass) => [glass.id, glass.name]), ...known.kinds.map((kind) => [kind.id, kind.name])],
    onChange: (glass) => store.dispatch('change', { glass }),
  });
}

/** How the thickness is known; what was known before gives the first figures. */
function known(store) {
  const { setup } = store.getState();
  if (setup.task !== 'fuse') {
    return null;
  }
  return selectField({
    id: 'by', label: 'Thickness by', value: setup.by, options: BY,
    onChange: (by) => {
      const mm = (store.getState().answer || {}).thickness_mm || setup.sheets * setup.sheet_mm;
      const counts = by === 'sheets' && setup.by !== 'volume' ? { sheets: Math.max(1, Math.round(mm / setup.sheet_mm)) } : {};
      store.dispatch('change', { by, ...counts, measured_mm: by === 'measured' ? Math.round(mm * 10) / 10 : setup.measured_mm });
      if (by === 'volume' || by === 'weight') {
        openPart(store, 'glass');
      }
    },
  });
}

/** Where this block begins: as the lesson states it, or as it was left. */
function origin(store) {
  const { lesson, piece } = store.getState();
  if (!lesson || !lesson.block) {
    return piece ? el('p', { class: 'hint' }, `The block of ${piece.name}.`) : null;
  }
  return el('p', { class: 'hint' }, piece ? `${piece.name}. ` : '', `The lesson's block: ${lesson.block}.`);
}

/** Thickness and weight that follow, and what is missing around the glass. */
function follows(store) {
  const { answer, setup, settings } = store.getState();
  if (!answer) {
    return null;
  }
  const runs = setup.task === 'fuse' && !setup.dams && answer.thickness_mm > answer.puddle_mm;
  const weight = answer.weight_kg ? `, ${answer.weight_kg.toFixed(1)} kg` : '';
  return el('p', { class: 'hint follows' },
    setup.task === 'enamel' ? `One sheet of ${length(answer.thickness_mm, settings.lengthUnit)}${weight}.` : `${length(answer.thickness_mm, settings.lengthUnit)} when fused${weight}.`,
    runs ? el('strong', {}, ` Without dams it runs out to about ${length(answer.puddle_mm, settings.lengthUnit)}.`) : null);
}

function draw(store) {
  const { setup } = store.getState();
  byId('block-fields').replaceChildren(...[
    selectField({ id: 'task', label: 'Firing', options: TASKS, value: setup.task, onChange: (task) => store.dispatch('change', task === 'refire' || task === 'anneal' ? { task, by: 'measured', measured_mm: setup.measured_mm || (store.getState().answer || {}).thickness_mm || 18 } : { task, by: setup.by === 'measured' && task === 'fuse' ? 'sheets' : setup.by }) }),
    known(store),
    el('div', { class: 'pair' }, thickness(store)),
    glasses(store),
    setup.task === 'anneal' ? null : setupNumber(store, 'top_c', { id: 'top', label: 'Top (empty: by viscosity)', kind: 'C', min: 400, max: 1100, optional: true, says: 'The top is' }),
    el('div', { id: 'follows' }, follows(store)),
    origin(store),
  ].filter(Boolean));
}

/** Redrawn only when other fields are needed, so that nothing that is being typed is lost. */
export function connectBlockFields(store) {
  const shape = (state) => JSON.stringify([state.setup.task, state.setup.by, state.glasses, state.settings, state.piece && state.piece.id]);
  store.watch(shape, () => draw(store));
  store.watch((state) => state.answer, () => byId('follows').replaceChildren(...[follows(store)].filter(Boolean)));
  store.watch((state) => state.setup, (setup) => {
    [['sheets', setup.sheets], ['glass', setup.glass]].forEach(([id, value]) => {
      const field = byId(id);
      if (field && document.activeElement !== field && String(field.value) !== String(value) && !field.hasAttribute('aria-invalid')) {
        field.value = String(value);
      }
    });
  });
}
