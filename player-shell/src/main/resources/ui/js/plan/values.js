import { post } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { request } from './model.js';

/** Value studies on demand: they take a moment, and an old one is said to be old. */
export function createValues(place, getPlan) {
  const row = el('div', { class: 'study-row', id: 'studies' });
  const said = el('p', { role: 'status' });
  async function make() {
    said.textContent = 'Making the studies …';
    try {
      const answer = await post('api/sheets/values', request(getPlan()));
      if (answer.problem) {
        said.textContent = answer.problem.message;
        return;
      }
      row.replaceChildren(...answer.sheets.map((one) => el('figure', {},
        el('img', { src: one.png, alt: `Sheet ${one.sheet} in ${one.tones} tones` }),
        el('figcaption', {}, `Sheet ${one.sheet}: ${one.tones} tones`))));
      said.textContent = answer.sheets.length ? '' : 'There is nothing to study yet.';
    } catch (error) {
      said.textContent = '';
      row.replaceChildren(errorNotice(error));
    }
  }
  place.replaceChildren(el('p', { class: 'row' }, button({ text: 'Make the value study', onClick: make, id: 'make-values' })), said, row);
  return { old: () => { said.textContent = row.children.length ? 'The plan has changed since: make it again.' : ''; } };
}
