import { get, post, put } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { openPanel } from '../panel.js';
import { temperature } from '../units.js';
import { numberField, readNumber, textField, troubleAt } from '../fields.js';
import { fieldWords } from './words.js';

/** My glasses: figures of the maker's sheet, and the maker's own annealing table. */

const MAKERS = [
  ['expansion_e7', 'Expansion, 10⁻⁷ per kelvin', '', 1, 200, 'The number by which families are called, such as 90. No temperature follows from it.'],
  ['annealing_c', 'Annealing point', 'C', 300, 850, ''],
  ['softening_c', 'Softening point', 'C', 400, 1100, ''],
  ['strain_c', 'Strain point', 'C', 250, 800, 'Predicted if the sheet does not name it.'],
  ['soak_c', 'Soak that the maker names', 'C', 300, 850, ''],
];
const NEEDED = ['expansion_e7', 'annealing_c', 'softening_c'];

async function reload(store, patch) {
  store.commit({ glasses: (await get('api/glasses')).entries });
  store.dispatch(patch ? 'change' : 'compute', patch);
}

/** What a number of the table is in the person's units: thickness, soak in hours, three rates. */
const scales = ({ lengthUnit, temperatureUnit }) => {
  const rate = temperatureUnit === 'F' ? 1.8 : 1;
  return [lengthUnit === 'in' ? 1 / 25.4 : 1, 1, rate, rate, rate];
};

/** "19; 4; 15; 27; 60" a row, in the person's units. */
function tableOf(text, soak, settings) {
  const rows = text.split('\n').map((line) => line.trim()).filter(Boolean).map((line, i) => {
    const cells = line.split(/[;\t ]+/).map(readNumber);
    if (cells.length !== 5 || cells.some(Number.isNaN)) {
      throw new Error(`Row ${i + 1} of the maker’s table needs five numbers: thickness in ${settings.lengthUnit}; soak in hours; three rates in °${settings.temperatureUnit}/h.`);
    }
    const [mm, hours, ...rates] = cells.map((cell, k) => cell / scales(settings)[k]);
    return { thickness_mm: mm, soak_h: hours, rates_c_per_h: rates };
  });
  return rows.length ? { soak_c: soak, rows } : null;
}

const rowText = (row, settings) => [row.thickness_mm, row.soak_h, ...row.rates_c_per_h].map((cell, k) => Number((cell * scales(settings)[k]).toPrecision(6))).join('; ');
const rowsText = (table, settings) => (table ? table.rows.map((row) => rowText(row, settings)).join('\n') : '');

function figuresOf(typed, rows, settings) {
  const figures = {};
  Object.entries(typed).filter(([, value]) => value !== null && value !== undefined).forEach(([key, value]) => {
    if (key === 'expansion_e7') {
      figures.expansion_per_k = value * 1e-7;
    } else {
      figures[key] = value;
    }
  });
  const table = tableOf(rows, typed.soak_c || typed.annealing_c, settings);
  return table ? { ...figures, table } : figures;
}

function editGlass(store, glass) {
  const { settings } = store.getState();
  const own = glass ? glass.figures : {};
  const typed = { ...own, expansion_e7: own.expansion_per_k ? own.expansion_per_k * 1e7 : null };
  ['expansion_per_k', 'table', 'name'].forEach((key) => delete typed[key]);
  let name = glass ? glass.name : '';
  const rows = el('textarea', { id: 'glass-table', rows: 4, 'aria-describedby': 'glass-table-hint' });
  rows.value = rowsText(own.table, settings);
  const said = el('div', { role: 'alert' });
  const save = async (event) => {
    event.preventDefault();
    try {
      const body = { name, figures: figuresOf(typed, rows.value, settings) };
      const kept = glass ? await put(`api/glasses/${glass.id}`, body) : await post('api/glasses', body);
      if (kept.problem) {
        const field = kept.problem.field === 'expansion_per_k' ? 'expansion_e7' : kept.problem.field;
        said.textContent = troubleAt(field, fieldWords(kept.problem.said, settings)) ? 'One field needs another look; nothing is lost.' : fieldWords(kept.problem.said, settings);
        return;
      }
      await reload(store, { glass: kept.id });
      openGlasses(store);
    } catch (error) {
      said.replaceChildren(error.happened ? errorNotice(error) : el('p', {}, error.message));
    }
  };
  openPanel(glass ? glass.name : 'A glass by its maker’s sheet', el('form', { class: 'figures', on: { submit: save } },
    textField({ id: 'name', label: 'Its name', value: name, onChange: (value) => { name = value; } }),
    MAKERS.map(([key, label, kind, min, max, hint]) => numberField({
      id: `glass-${key}`, field: key, label, kind, min, max, hint, optional: !NEEDED.includes(key), value: typed[key], onChange: (value) => { typed[key] = value; },
    }, settings)),
    el('label', { for: 'glass-table' }, 'The maker’s annealing table, if there is one'), rows,
    el('p', { class: 'hint', id: 'glass-table-hint' }, `A row for each thickness: ${settings.lengthUnit}; soak in hours; three rates in °${settings.temperatureUnit}/h, for two exposed faces. It stands beside the computed one, and the slower is taken.`),
    said,
    el('div', { class: 'row' }, el('button', { type: 'submit', class: 'main' }, 'Keep this glass'), button({ text: 'Back', kind: 'bare', onClick: () => openGlasses(store) }))));
}

function knownKind(kind, settings) {
  const shown = ({ key, value }) => (key.endsWith('_c') ? temperature(value, settings.temperatureUnit) : String(value));
  return el('details', {}, el('summary', {}, kind.name), el('table', { class: 'list' }, el('tbody', {}, kind.figures.map((figure) => el('tr', {},
    el('th', { scope: 'row' }, figure.words), el('td', { class: 'number' }, shown(figure)),
    el('td', {}, figure.certainty, el('small', {}, figure.source)))))));
}

export function openGlasses(store) {
  const { glasses, setup, known, settings } = store.getState();
  openPanel('My glasses',
    el('p', {}, 'A family by its expansion number is no glass: makers within it differ by tens of degrees. Put in the figures of your maker’s sheet.'),
    el('ul', { class: 'own-list' }, glasses.map((glass) => el('li', {},
      el('strong', {}, glass.name, glass.id === setup.glass ? ' (in use)' : ''),
      el('span', { class: 'row' },
        button({ text: 'Use', 'aria-label': `Use ${glass.name}`, onClick: () => { store.dispatch('change', { glass: glass.id }); openGlasses(store); } }),
        button({ text: 'Change', 'aria-label': `Change ${glass.name}`, onClick: () => editGlass(store, glass) }),
        button({ text: 'Forget', kind: 'bare', 'aria-label': `Forget ${glass.name}`, onClick: async () => {
          await post(`api/glasses/${glass.id}/forget`);
          await reload(store, glass.id === setup.glass ? { glass: 'coe-90' } : null);
          openGlasses(store);
        } }))))),
    button({ id: 'glass-new', text: 'A glass by its maker’s sheet', sign: 'plus', kind: 'main', onClick: () => editGlass(store, null) }),
    el('h3', {}, 'What the program knows, and how surely'), known.kinds.map((kind) => knownKind(kind, settings)));
}
