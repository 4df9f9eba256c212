import { post } from '../api.js';
import { byId, el } from '../dom.js';
import { numberField } from '../fields.js';
import { fetchMade } from '../kiln/papers.js';
import { errorNotice } from '../notice.js';
import { shownPlan } from './plan.js';
import { supplyQuestion } from './shop.js';

const KINDS = [
  ['ruler', 'Ruler page: print it first'], ['plan', 'The plan on one page'], ['templates', 'A template for every sheet'],
  ['cut', 'Cut list'], ['dams', 'Stack and dams'], ['cards', 'A card for every sheet'], ['shopping', 'Shopping list'],
];

/** Every sheet of every piece, and the spare ones, from the stock. */
export const cutQuestion = (own) => ({
  stock_mm: [own.stockWidth, own.stockHeight], thickness_mm: own.thickness, goal: 'sheets',
  pieces: [{ name: 'sheet', w_mm: own.width, h_mm: own.height, count: own.sheets * own.pieces, spare: own.spare }],
});

/** What the bench is asked for a paper; `kinds` are the ticked ones if not given. */
export function paperQuestion(state, kinds) {
  const { own, ruler, rows } = state;
  const forClass = byId('for-class').checked;
  return {
    plan: shownPlan(state), cut: cutQuestion(own), from: state.from || {}, ...(rows.length ? { supplies: supplyQuestion(state) } : {}),
    paper: {
      kinds: [...(forClass ? ['class'] : []), ...kinds.filter((kind) => kind !== 'shopping' || rows.length)], copies: forClass ? own.pieces : 1, size: byId('paper-size').value === 'letter' ? 'Letter' : 'A4', mirrored: own.mirrored, length: state.unit,
      ...(ruler && ruler.advice === 'correct' ? { ruler_mm: ruler.read } : {}),
    },
  };
}

const ticked = () => Array.from(document.querySelectorAll('#paper-kinds input:checked')).map((box) => box.value);

/** Makes a paper and hands it to the browser; says what became of it in `said`. */
export async function savePaper(path, question, said, words = 'The paper is among your downloads. Print it at 100 % (“actual size”) and lay a ruler on it.') {
  try {
    const made = await post(path, question);
    if (made.problem) {
      said.replaceChildren(el('p', { class: 'notice bad' }, made.problem.message));
      return;
    }
    fetchMade(made);
    said.replaceChildren(el('p', { class: 'notice' }, words));
  } catch (error) {
    said.replaceChildren(errorNotice(error));
  }
}

/** What both rulers of a print read, and what follows from it. */
function connectRuler(state) {
  const read = [null, null];
  const ask = async () => {
    state.ruler = null;
    if (read.some((one) => one === null)) {
      byId('ruler-said').replaceChildren();
      return;
    }
    const asked = [...read];
    try {
      const answer = await post('api/sheets/ruler', { ruler_mm: asked });
      if (asked.some((one, at) => one !== read[at])) {
        return;
      }
      if (answer.problem) {
        byId('ruler-said').replaceChildren(el('p', { class: 'notice bad' }, answer.problem.message));
        return;
      }
      state.ruler = { ...answer, read: asked };
      const tone = { good: '', correct: ' care', print_again: ' bad' }[answer.advice];
      const more = answer.advice === 'correct' ? ' What you save next is corrected.' : '';
      byId('ruler-said').replaceChildren(el('p', { class: `notice${tone}` }, answer.words, more));
    } catch (error) {
      byId('ruler-said').replaceChildren(errorNotice(error));
    }
  };
  const field = (label, at) => numberField({
    id: `ruler-${at}`, label, min: 20, max: 500, optional: true, value: null, says: 'A ruler near 100 mm reads',
    onChange: (value) => { read[at] = value; ask(); },
  }, {});
  byId('ruler-fields').append(field('Across, mm', 0), field('Down, mm', 1));
}

export function connectPapers(state) {
  byId('paper-kinds').append(...KINDS.map(([kind, words]) => el('label', {}, el('input', { type: 'checkbox', value: kind, checked: true }), words)));
  connectRuler(state);
  byId('save-papers').addEventListener('click', () => {
    const kinds = ticked();
    const said = byId('papers-said');
    if (!kinds.length) {
      said.replaceChildren(el('p', { class: 'notice care' }, 'Tick what to save first.'));
    } else if (state.answer) {
      savePaper('api/sheets/paper', paperQuestion(state, kinds), said);
    }
  });
}
