import { address, put } from '../../api.js';
import { byId, el } from '../../dom.js';

/** What was done to each sheet. Every change is kept at once; a failure says so and shows what is kept. */

const EMPTY = { cut: false, painted: false, coats: 0, fired: 0, note: '' };

/** The sheets of the plan with their subjects, the front first. */
function sheetsOf(plan) {
  return Array.from({ length: plan ? plan.sheets : 0 }, (unused, at) => ({
    sheet: at + 1, names: plan.subjects.filter((one) => one.planned_on === at + 1).map((one) => one.name),
  }));
}

export function showStates(state) {
  const { plan, sheets } = state.follow;
  const place = byId('states');
  if (!plan) {
    place.replaceChildren(el('p', { class: 'quiet' }, 'This piece has no plan yet. ',
      el('a', { href: address('ui/sheets.html', { piece: state.piece.id, ...(state.piece.lesson ? { e: state.piece.edition, l: state.piece.lesson } : {}) }) }, 'Plan its sheets'),
      ' and keep the plan with this piece.'));
    return;
  }
  const known = new Map(sheets.map((one) => [one.sheet, one]));
  const said = byId('states-said');

  function row({ sheet, names }) {
    const now = { ...EMPTY, ...known.get(sheet), sheet };
    const keep = async (patch, input) => {
      Object.assign(now, patch);
      try {
        const kept = await put(`api/pieces/${state.piece.id}/sheet`, now);
        const trouble = kept.problem ? kept.problem.message : '';
        input.setAttribute('aria-invalid', trouble ? 'true' : 'false');
        said.textContent = trouble ? `Not kept: ${trouble}.` : `Sheet ${sheet} is kept.`;
      } catch (error) {
        said.textContent = `Not kept: ${error.happened} ${error.next || ''}`;
      }
    };
    const tick = (name, words) => {
      const input = el('input', { type: 'checkbox', checked: now[name], 'aria-label': `Sheet ${sheet} ${words}` });
      input.addEventListener('change', () => keep({ [name]: input.checked }, input));
      return el('td', {}, el('label', { class: 'tick' }, input));
    };
    const count = (name, words) => {
      const input = el('input', { type: 'number', min: 0, max: 99, step: 1, value: String(now[name]), 'aria-label': `Sheet ${sheet}, ${words}` });
      input.addEventListener('change', () => keep({ [name]: Number(input.value) }, input));
      return el('td', {}, input);
    };
    const note = el('input', { type: 'text', class: 'note', maxlength: 100, value: now.note, 'aria-label': `Sheet ${sheet}, note` });
    note.addEventListener('change', () => keep({ note: note.value }, note));
    return el('tr', {}, el('th', { scope: 'row' }, String(sheet)), el('td', {}, names.join(', ') || 'clear'),
      tick('cut', 'is cut'), tick('painted', 'is painted'), count('coats', 'coats'), count('fired', 'fired how often'), el('td', {}, note));
  }

  place.replaceChildren(el('table', { class: 'list' },
    el('thead', {}, el('tr', {}, ['Sheet', 'Subjects', 'Cut', 'Painted', 'Coats', 'Fired', 'Note'].map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, sheetsOf(plan).map(row))));
}
